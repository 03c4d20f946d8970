using FuelSizing.Points;

namespace FuelSizing.Interactive;

/// <summary>How a limit that is a rule of thumb is marked where there is no room for the words behind the figure.</summary>
internal static class RuleMark
{
    /// <summary>The line that goes with a mark.</summary>
    public const string Note = "* common practice, no source";

    /// <summary>A star behind a rule of thumb, nothing behind a figure of the user's own.</summary>
    public static string Of(SizingLimits limits, RuleOfThumb rule) => limits.MarkOf(rule) is null ? string.Empty : "*";
}
