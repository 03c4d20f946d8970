using FuelSizing.Pumps;
using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>Of how many of a circuit's pumps the wiring, or a figure of it, is given.</summary>
internal static class FeedsGiven
{
    /// <summary>Judged where it is given of every pump, in part where of some.</summary>
    /// <param name="pumps">The pumps; none where the system has no such circuit.</param>
    /// <param name="isGiven">Whether it is given of a pump.</param>
    /// <param name="what">What it is called, for instance <c>feed</c>.</param>
    public static Applicability Of(PumpAssembly? pumps, Func<Pump, bool> isGiven, string what)
    {
        if (pumps is null)
        {
            return Applicability.NotApplicable;
        }

        Pump[] missing = [.. pumps.Pumps.Where(pump => !isGiven(pump))];
        return missing.Length == 0 ? Applicability.Judged
            : missing.Length == pumps.Pumps.Count ? Applicability.NotJudged(Statement.Of("feed.none-given", $"no {what} given"))
            : Applicability.JudgedInPart(Statement.Of("feed.some-not-given", $"no {what} given of {string.Join(", ", missing.Select(pump => pump.Name))}"));
    }

    /// <summary>A pump's feed, and the part of it that it shares with others.</summary>
    public static IEnumerable<Electrical.Feed> PartsOf(Pump pump) =>
        pump.Feed is not { } feed ? [] : feed.Shared is { } shared ? [feed, shared] : [feed];

    /// <summary>The same with another gap beside what is left out already: a waiver of the one must not hide the other.</summary>
    /// <param name="given">What is judged.</param>
    /// <param name="gap">What is not judged besides.</param>
    public static Applicability Lacking(this Applicability given, Statement gap) => Applicability.JudgedInPart(
        given.Gap is { } first ? Statement.Of("feed.two-gaps", $"{first}; {gap}") : gap);
}
