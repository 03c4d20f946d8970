using FuelSizing.Checks;

namespace FuelSizing.Samples;

/// <summary>What the program tells its caller.</summary>
internal static class ExitCode
{
    public const int BadInput = 2;

    public const int Implausible = 6;

    // From the best to the worst.
    private static readonly Outcome[] Order = [Outcome.Holds, Outcome.HoldsAsFarAsJudged, Outcome.CannotSay, Outcome.Fails];

    /// <summary>The code of the worst outcome; 0 only where everything was judged and holds.</summary>
    public static int Of(IEnumerable<Outcome> outcomes) => Order[outcomes.Max(outcome => Array.IndexOf(Order, outcome))] switch
    {
        Outcome.Holds => 0,
        Outcome.HoldsAsFarAsJudged => 5,
        Outcome.Fails => 3,
        _ => 4,
    };
}
