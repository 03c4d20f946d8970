using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How sure a result is, as callouts.</summary>
public static class UncertaintyCallouts
{
    /// <summary>Whether everything holds as surely as somebody wants.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="wanted">The chance wanted that every part holds, over 0 and up to 99.999 %.</param>
    /// <param name="name">What was sampled, to tell several verdicts apart; none if left out.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>A callout that holds, fails or cannot say (<see cref="Chance.Reaches"/>, to 95 %), with a line for each part.</returns>
    /// <exception cref="ArgumentException">The name is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The chance wanted is outside its range.</exception>
    public static Callout Verdict(MonteCarloResult result, Ratio wanted, string? name = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        string asked = OutputFigures.Round(style.Chance(wanted), style);

        NotJudged[] open = [.. result.System.NominalResults.SelectMany(one => one.NotJudged).DistinctBy(one => one.Part)];
        bool isWhole = open.All(one => one.Waiver is not null);
        string everything = isWhole ? "everything" : "everything that was judged";

        // Samples cannot show certainty, so a full count is told as what it is.
        string chance = result.All.Holding == result.Samples
            ? $"{everything} holds {PartText.Say(result.System.Where, style)} in every sample"
            : $"the chance that {everything} holds {PartText.Say(result.System.Where, style)} is {style.Chance(result.All.Holds)}";
        var (kind, end) = result.All.Reaches(wanted, OutputFigures.Default) switch
        {
            Outcome.Holds => (isWhole ? CalloutKind.Holds : CalloutKind.HoldsAsFarAsJudged, $"; {asked} was required"),
            Outcome.Fails => (CalloutKind.Fails, $"; {asked} was required"),
            _ => (CalloutKind.CannotSay, $"; whether that reaches the {asked} required cannot be said from these samples"),
        };
        PartChance[] always = [.. result.Parts.Where(part => part.Chance.Holding == result.Samples)];
        string[] hold = always.Length == 0
            ? []
            : [$"in every sample {(always.Length == 1 ? "holds" : "hold")}: {string.Join(", ", always.Select(part => part.Part.Name))}"];
        return new Callout(
            kind,
            $"{(name is null ? "" : $"{Require.Text(name, nameof(name))}: ")}{chance}{end}",
            [
                .. result.Parts.Except(always).OrderBy(part => part.Chance.Holding).Select(part => Line(part, style)),
                .. hold,
                .. open.Select(one => $"Not judged: {PartText.Say(one, style)}."),
                $"{UncertaintyTables.Drawn(result.Samples, result.Sampling, result.IsComplete, style)} With 95 % confidence the chance lies within {OutputFigures.Interval(result.All.Interval(OutputFigures.Default), style, "chance")}, if the distributions are right.",
            ]);
    }

    private static string Line(PartChance part, TextStyle style)
    {
        string unknown = part.Chance.CannotSay == 0
            ? ""
            : $"; of {style.Count(part.Chance.CannotSay)} samples nothing can be said";
        string hand = part.Chance.CannotSay == 0 && part.Reserve.Percentile(Ratio.FromPercent(5)) is { } low
            ? $"; 5th percentile of the tightest margin: {OutputFigures.ReserveOf(low, style)}"
            : "";
        return $"{part.Part.Name}: holds in {style.Chance(part.Chance.Holds)} of the samples{unknown}{hand}";
    }
}
