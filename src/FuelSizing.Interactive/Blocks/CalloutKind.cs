namespace FuelSizing.Interactive;

/// <summary>What a <see cref="Callout"/> says about the question the notebook asks.</summary>
public enum CalloutKind
{
    /// <summary>The inputs do not allow an answer.</summary>
    CannotSay,

    /// <summary>The answer is yes: every limit is judged, or waived with a reason, and kept.</summary>
    Holds,

    /// <summary>Every limit that was judged is kept, and something was not judged.</summary>
    HoldsAsFarAsJudged,

    /// <summary>The answer is no: at least one limit is passed.</summary>
    Fails,

    /// <summary>Something to bear in mind; not an answer.</summary>
    Caution,
}
