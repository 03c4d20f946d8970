namespace FuelSizing.Logs;

/// <summary>What stands between two cells of a line.</summary>
public enum CellSeparator
{
    /// <summary>A comma.</summary>
    Comma,

    /// <summary>A semicolon.</summary>
    Semicolon,

    /// <summary>A tab.</summary>
    Tab,
}
