using FuelSizing.Checks;

namespace FuelSizing.Tests;

/// <summary>Whole systems of tests leave the mixture, and mostly lines and wiring, unjudged: they hold as far as judged.</summary>
internal static class Judged
{
    /// <summary>True if nothing that was judged fails or cannot be said.</summary>
    public static bool IsHolding(Outcome outcome) => outcome is Outcome.Holds or Outcome.HoldsAsFarAsJudged;
}
