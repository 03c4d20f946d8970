namespace FuelSizing.Notebooks;

/// <summary>An input that the command line changed.</summary>
/// <param name="Name">Of the variable, or a path.</param>
/// <param name="Was">What the notebook, or the setup file, says.</param>
/// <param name="Is">What this run says.</param>
/// <param name="Assumed">What was taken for granted: a unit that was not given, or the density of a liquid; none where nothing was.</param>
/// <param name="Place">Where the input is.</param>
internal sealed record ChangedInput(string Name, string Was, string Is, string? Assumed = null, string Place = "notebook")
{
    public override string ToString() => $"{Name} = {Is} (in the {Place}: {Was}){(Assumed is null ? string.Empty : $"; {Assumed}")}";
}
