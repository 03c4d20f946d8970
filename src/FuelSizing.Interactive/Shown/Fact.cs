namespace FuelSizing.Interactive;

/// <summary>One line of what is known of a thing: a figure with its symbol and unit, or words.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Symbol">That of the list of symbols, the same as in the working; empty if there is none.</param>
/// <param name="Figure">Number and unit as <see cref="Quantities.TextStyle"/> writes them; empty for words.</param>
/// <param name="Note">Where it comes from, or the words.</param>
internal readonly record struct Fact(string Name, string Symbol, string Figure, string Note = "")
{
    /// <summary>The figure without its unit.</summary>
    public string Value => Figure[..Gap];

    /// <summary>The unit; empty where the figure has none.</summary>
    public string Unit => Gap < Figure.Length ? Figure[(Gap + 1)..] : "";

    // A unit may hold spaces, a number holds none; what does not begin with a number is a word, such as "cannot say".
    private int Gap
    {
        get
        {
            // A culture may group its digits by a space of its own kind; the one before a unit is plain.
            int space = Figure.IndexOf(' ', StringComparison.Ordinal);
            return space > 0 && Figure[..space].All(letter => !char.IsLetter(letter)) && Figure[..space].Any(char.IsAsciiDigit)
                ? space
                : Figure.Length;
        }
    }

    /// <summary>A line of words.</summary>
    public static Fact Words(string name, string text) => new(name, "", "", text);
}
