using System.Globalization;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How sure a result is, as callouts.</summary>
public static class UncertaintyCallouts
{
    /// <summary>Whether everything holds as surely as somebody wants.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="wanted">The chance wanted that every part holds, over 0 and up to 99.999 %.</param>
    /// <returns>A callout that holds, fails or cannot say (<see cref="Chance.Reaches"/>, to 95 %), with a line for each part.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The chance wanted is outside its range.</exception>
    public static Callout Verdict(MonteCarloResult result, Ratio wanted)
    {
        ArgumentNullException.ThrowIfNull(result);
        string chance = $"everything holds in {Readable.Chance(result.All.Holds)} of the samples";
        string asked = Readable.Chance(wanted);
        var (kind, title) = result.All.Reaches(wanted, OutputFigures.Usual) switch
        {
            Outcome.Holds => (CalloutKind.Holds, $"{chance}; {asked} was wanted"),
            Outcome.Fails => (CalloutKind.Fails, $"{chance}; {asked} was wanted"),
            _ => (CalloutKind.CannotSay, $"{chance}, too near to the {asked} wanted, or with too much unknown, to decide"),
        };
        return new Callout(
            kind,
            $"at {result.System.Point} {title}",
            [
                .. result.Parts.OrderBy(part => part.Chance.Holding).Select(Line),
                string.Create(CultureInfo.InvariantCulture, $"{UncertaintyTables.Drawn(result.Samples, result.Sampling, result.IsPartial)} With 95 % confidence the chance lies within {OutputFigures.Interval(result.All.Interval(OutputFigures.Usual), Readable.Chance)}, if the distributions are right."),
            ]);
    }

    private static string Line(PartChance part)
    {
        string unknown = part.Chance.CannotSay == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"; of {part.Chance.CannotSay:N0} samples nothing can be said");
        string hand = part.Chance.CannotSay == 0 && part.Reserve.Percentile(Ratio.FromPercent(5)) is { } low
            ? $"; in 19 of 20 samples it has {Readable.Change(low)} or more in hand"
            : "";
        return $"{PartNames.Of(part.Part)}: holds in {Readable.Chance(part.Chance.Holds)} of the samples{unknown}{hand}";
    }
}
