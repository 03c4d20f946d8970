namespace FuelSizing.Logs;

/// <summary>What stands before a number's decimals.</summary>
public enum DecimalMark
{
    /// <summary>A point.</summary>
    Point,

    /// <summary>A comma.</summary>
    Comma,
}
