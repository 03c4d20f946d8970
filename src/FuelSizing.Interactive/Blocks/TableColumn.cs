namespace FuelSizing.Interactive;

/// <summary>The head of one column of a <see cref="Table"/>.</summary>
public sealed class TableColumn
{
    private TableColumn(string header, CellAlignment alignment)
    {
        Header = Require.Text(header, nameof(header));
        Alignment = alignment;
    }

    /// <summary>The column's heading, with the unit where the cells do not carry it.</summary>
    public string Header { get; }

    /// <summary>How its cells line up.</summary>
    public CellAlignment Alignment { get; }

    /// <summary>Creates a column of words.</summary>
    /// <param name="header">The heading; not empty.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentException">The heading is empty, too long, or cannot be written as XML.</exception>
    public static TableColumn Text(string header) => new(header, CellAlignment.Text);

    /// <summary>Creates a column of numbers.</summary>
    /// <param name="header">The heading; not empty.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentException">The heading is empty, too long, or cannot be written as XML.</exception>
    public static TableColumn Number(string header) => new(header, CellAlignment.Number);
}
