namespace FuelSizing.Systems;

/// <summary>What a check found.</summary>
public enum Outcome
{
    /// <summary>The limit is kept.</summary>
    Holds,

    /// <summary>The given data does not cover the point, so the library gives no answer.</summary>
    CannotSay,

    /// <summary>The limit is passed.</summary>
    Fails,
}
