namespace FuelSizing.Interactive;

/// <summary>How the cells of one table column line up.</summary>
public enum CellAlignment
{
    /// <summary>Words: to the left.</summary>
    Text,

    /// <summary>Numbers: to the right, in figures of equal width.</summary>
    Number,
}
