namespace FuelSizing.Notebooks;

/// <summary>An input that the command line changed.</summary>
/// <param name="Name">Of the variable.</param>
/// <param name="Was">What the notebook says.</param>
/// <param name="Is">What this run says.</param>
internal sealed record ChangedInput(string Name, string Was, string Is)
{
    public override string ToString() => $"{Name} = {Is} (in the notebook: {Was})";
}
