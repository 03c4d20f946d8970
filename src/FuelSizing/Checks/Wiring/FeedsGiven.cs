using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>Of how many of a system's pumps the wiring, or a figure of it, is given.</summary>
internal static class FeedsGiven
{
    /// <summary>Judged where it is given of every pump, in part where of some.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="isGiven">Whether it is given of a pump.</param>
    /// <param name="what">What it is called, for instance <c>feed</c>.</param>
    public static Applicability Of(SystemParts parts, Func<Pump, bool> isGiven, string what)
    {
        Pump[] missing = [.. parts.Pump.Pumps.Where(pump => !isGiven(pump))];
        return missing.Length == 0 ? Applicability.Judged
            : missing.Length == parts.Pump.Pumps.Count ? Applicability.NotJudged(Statement.Of("feed.none-given", $"no {what} given"))
            : Applicability.JudgedInPart(Statement.Of("feed.some-not-given", $"no {what} given of {string.Join(", ", missing.Select(pump => pump.Name))}"));
    }
}
