namespace FuelSizing.Interactive;

/// <summary>What a <see cref="Callout"/> says about the question the notebook asks.</summary>
public enum CalloutKind
{
    /// <summary>The answer is yes: every limit checked is kept.</summary>
    Holds,

    /// <summary>The answer is no: at least one limit is passed.</summary>
    Fails,

    /// <summary>The inputs do not allow an answer.</summary>
    CannotSay,

    /// <summary>Something to bear in mind; not an answer.</summary>
    Caution,
}
