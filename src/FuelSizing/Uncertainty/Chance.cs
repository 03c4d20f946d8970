using FuelSizing.Checks;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How likely a limit is kept, by counting samples.</summary>
public sealed record Chance : IReadable
{
    internal Chance(ReadOnlySpan<Outcome> outcomes)
    {
        Samples = outcomes.Length;
        foreach (Outcome outcome in outcomes)
        {
            Holding += outcome == Outcome.Holds ? 1 : 0;
            CannotSay += outcome == Outcome.CannotSay ? 1 : 0;
            Failing += outcome == Outcome.Fails ? 1 : 0;
        }
    }

    /// <summary>All samples: holding, failing, and those of which nothing can be said.</summary>
    public int Samples { get; }

    /// <summary>Samples in which the limit is kept.</summary>
    public int Holding { get; }

    /// <summary>Samples that the parts' data does not reach. They count as neither holding nor failing.</summary>
    public int CannotSay { get; }

    /// <summary>Samples in which the limit is passed.</summary>
    public int Failing { get; }

    /// <summary>
    /// Share of all samples in which the limit is surely kept. Where <see cref="CannotSay"/> is not zero the true one may
    /// be higher by up to that share.
    /// </summary>
    public Ratio Holds => Ratio.FromDecimalFractions((double)Holding / Samples);

    /// <summary>
    /// Standard error of <see cref="Holds"/>: √(p (1 − p)/n). Zero where all samples agree, which does not make it
    /// certain: see <see cref="Interval"/>.
    /// </summary>
    public Ratio StandardError =>
        Ratio.FromDecimalFractions(Proportion.StandardError(Holds.DecimalFractions, Samples));

    /// <summary>
    /// The range in which the probability lies with some confidence, by Wilson's score: with z normal deviations,
    /// (p + z²/2n ± z √(p (1 − p)/n + z²/4n²))/(1 + z²/n).
    /// </summary>
    /// <param name="confidence">50 to 99.99 %; 95 % is usual.</param>
    /// <returns>Lower and upper end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public (Ratio Minimum, Ratio Maximum) Interval(Ratio confidence) =>
        ScoreInterval(Holding, Confidence.Deviations(confidence, nameof(confidence)));

    /// <summary>Whether the limit is kept as surely as somebody wants.</summary>
    /// <param name="wanted">The chance wanted, over 0 and up to 99.999 %.</param>
    /// <param name="confidence">How sure to be of the answer, 50 to 99.99 %; 95 % is usual.</param>
    /// <returns>
    /// Holds where the whole <see cref="Interval"/> reaches the chance wanted; fails where it lies under it, even if
    /// every sample of which nothing can be said were to hold; otherwise cannot say, for the samples are too few.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public Outcome Reaches(Ratio wanted, Ratio confidence)
    {
        double share = Guard.Above(
            wanted,
            Ratio.Zero,
            Ratio.FromPercent(99.999),
            "Give the chance wanted that the limit is kept; no number of samples shows that it is always kept.",
            nameof(wanted)).DecimalFractions;
        double deviations = Confidence.Deviations(confidence, nameof(confidence));
        return ScoreInterval(Holding, deviations).Minimum.DecimalFractions >= share ? Outcome.Holds
            : ScoreInterval(Holding + CannotSay, deviations).Maximum.DecimalFractions < share ? Outcome.Fails
            : Outcome.CannotSay;
    }

    /// <summary>The finding in words, for instance <c>holds in 97.3 % of 10,000 samples; 95 % interval 96.9 % to 97.7 %</c>.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>The finding, as a code with its figures: with the 95 % interval, rounded outward, for no number of samples makes certain.</summary>
    public Statement Text
    {
        get
        {
            (Ratio minimum, Ratio maximum) = Bounds;
            return Holding == Samples
                ? Statement.Of("chance.every-sample", $"holds in all {Samples} samples: by the {InWords} interval in at least {minimum:chance:down} of cases")
                : Holding + CannotSay == 0
                    ? Statement.Of("chance.no-sample", $"holds in none of {Samples} samples: by the {InWords} interval in at most {maximum:chance:up} of cases")
                    : CannotSay == 0
                        ? Statement.Of(
                            "chance.holds", $"holds in {Holds:chance} of {Samples} samples; {InWords} interval {minimum:chance:down} to {maximum:chance:up}")
                        : Statement.Of(
                            "chance.partly-known",
                            $"holds in {Holds:chance} of {Samples} samples, and nothing can be said of {Ratio.FromDecimalFractions((double)CannotSay / Samples):chance}; {InWords} interval {minimum:chance:down} to {maximum:chance:up}");
        }
    }

    /// <summary>The 95 % interval that the words give: where some cannot be said, the true share may be higher by all of them.</summary>
    internal (Ratio Minimum, Ratio Maximum) Bounds
    {
        get
        {
            double deviations = Confidence.Deviations(InWords, nameof(InWords));
            return (ScoreInterval(Holding, deviations).Minimum, ScoreInterval(Holding + CannotSay, deviations).Maximum);
        }
    }

    private static Ratio InWords { get; } = Ratio.FromPercent(95);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    private (Ratio Minimum, Ratio Maximum) ScoreInterval(int counted, double deviations)
    {
        double share = (double)counted / Samples;
        double middle = Proportion.ScoreMiddle(share, Samples, deviations);
        double half = Proportion.ScoreHalfWidth(share, Samples, deviations);
        return (
            Ratio.FromDecimalFractions(Math.Max(0, middle - half)),
            Ratio.FromDecimalFractions(Math.Min(1, middle + half)));
    }
}
