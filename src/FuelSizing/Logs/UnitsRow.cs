namespace FuelSizing.Logs;

/// <summary>Whether the line below the heading holds units, and what is done with it.</summary>
public enum UnitsRow
{
    /// <summary>There is none: the line below the heading holds numbers.</summary>
    None,

    /// <summary>There is one, and it is not looked at.</summary>
    Skipped,

    /// <summary>There is one: it gives the unit of a column that the mapping gives none, and must not gainsay the others.</summary>
    Used,
}
