namespace FuelSizing.Interactive;

/// <summary>Something a notebook shows as one block: a table, a plot or a verdict.</summary>
/// <remarks>
/// A value of this kind shows itself as HTML where the front end can render it and as text where it cannot,
/// once <see cref="FuelSizingExtension.Register"/> has run. Both forms say the same thing.
/// </remarks>
public interface IDisplayBlock
{
    /// <summary>Renders the block as one self-contained HTML element.</summary>
    /// <returns>Well-formed HTML with no script and no reference to anything outside itself; every text in it is escaped.</returns>
    string ToHtml();

    /// <summary>Renders the block as text for a terminal or a log.</summary>
    /// <returns>One or more lines separated by a line feed, without a trailing line feed.</returns>
    string ToPlainText();
}
