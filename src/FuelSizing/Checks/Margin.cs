using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>How one check came out at one point.</summary>
public sealed class Margin : IReadable
{
    private readonly SolvedPoint _point;
    private readonly CheckReading<Real> _reading;

    internal Margin(ICheck check, SolvedPoint point, in CheckReading<Real> reading)
    {
        (Check, _point, _reading) = (check, point, reading);
        Outcome = CheckReading.OutcomeOf(reading);
        Share = CheckReading.MarginOf(reading);
    }

    /// <summary>What was judged.</summary>
    public Part Part => Check.Part;

    /// <summary>Whether its limit is kept.</summary>
    public Outcome Outcome { get; }

    /// <summary>
    /// What is left before the limit, as a share of what is used: +10 % means that the demand could grow by a tenth; negative
    /// means that it falls short. None where there is nothing to compare with or where it cannot be said.
    /// </summary>
    public Ratio? Reserve => Share is { } share ? Ratio.FromDecimalFractions(share) : null;

    /// <summary>What is used; none where it cannot be said.</summary>
    public IQuantity? Used => Check.Figure.Quantity(_reading.Used);

    /// <summary>What is allowed, in the unit of <see cref="Used"/>; none where it cannot be said.</summary>
    public IQuantity? Allowed => Check.Figure.Quantity(_reading.Allowed);

    /// <summary>Whether <see cref="Used"/> may be at most or must be at least <see cref="Allowed"/>.</summary>
    public LimitDirection Direction => Check.Figure.Direction;

    /// <summary>The check that was made.</summary>
    public ICheck Check { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Finding => _point.Parts.StillOn is { } pumps
        ? Statement.Of("margin.falling", $"{Check.Explain(_point, _reading)}, as boost falls and {pumps} may still be at full speed")
        : Check.Explain(_point, _reading);

    /// <summary>The finding in words, with units.</summary>
    public string Explanation => Finding.ToString();

    /// <summary>What is left, as a share; null where there is nothing to compare with or to say.</summary>
    internal double? Share { get; }

    /// <summary>The reading in SI.</summary>
    internal CheckReading<Real> Reading => _reading;

    /// <summary>True where it judges a set of injectors that is idle.</summary>
    internal bool IsOfIdleSet => _point.Judged.Secondary is { IsIdle: true } && JudgedSet.Secondary.Judges(Part);

    /// <summary>True where it was judged with switched pumps as they still run while boost falls.</summary>
    internal bool IsFalling => _point.Parts.IsFalling;

    /// <summary>Where it was judged.</summary>
    internal OperatingPoint Point => _point.Point;

    /// <summary>What it was judged by.</summary>
    internal SolvedPoint Solved => _point;

    /// <inheritdoc/>
    public string In(TextStyle style) => $"{Part}: {Finding.In(style)}";

    /// <summary>Part and finding.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>A check's margin and the place where it was found.</summary>
public sealed class Limit : IReadable
{
    internal Limit(Margin margin) => Margin = margin;

    /// <summary>How it came out there.</summary>
    public Margin Margin { get; }

    /// <summary>Where.</summary>
    public OperatingPoint Point => Margin.Point;

    /// <summary>What was judged.</summary>
    public Part Part => Margin.Part;

    /// <inheritdoc/>
    public string In(TextStyle style) => $"{Margin.In(style)} at {Point.In(style)}";

    /// <summary>Part, finding and place in one line.</summary>
    /// <returns>For instance <c>injectors: duty cycle 93.1 % over the 85.0 % limit at 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>The order of urgency: failing, then what cannot be said, then by the smallest margin.</summary>
internal static class Urgency
{
    /// <summary>The one order of margins, the most urgent first.</summary>
    public static IComparer<Margin> Order { get; } =
        Comparer<Margin>.Create((x, y) => Compare(x.Outcome, x.Share, y.Outcome, y.Share));

    /// <summary>Under zero where the first is more urgent.</summary>
    public static int Compare(Outcome first, double? firstMargin, Outcome second, double? secondMargin)
    {
        int byOutcome = Rank(second).CompareTo(Rank(first));
        return byOutcome != 0
            ? byOutcome
            : (firstMargin ?? double.PositiveInfinity).CompareTo(secondMargin ?? double.PositiveInfinity);
    }

    /// <summary>How bad an outcome is: 0 holds, 1 holds as far as judged, 2 cannot be said, 3 fails.</summary>
    public static int Rank(Outcome outcome) => outcome switch
    {
        Outcome.Holds => 0,
        Outcome.HoldsAsFarAsJudged => 1,
        Outcome.CannotSay => 2,
        _ => 3,
    };

    /// <summary>True where nothing that was judged fails or cannot be said.</summary>
    public static bool IsHolding(Outcome outcome) => Rank(outcome) < 2;

    /// <summary>The worse of two outcomes.</summary>
    public static Outcome Worse(Outcome first, Outcome second) => Rank(first) >= Rank(second) ? first : second;
}

/// <summary>How a check came out, in numbers alone: for searches that judge by the thousand.</summary>
/// <param name="Part">What was judged.</param>
/// <param name="Outcome">Whether its limit is kept.</param>
/// <param name="Share">What is left, as a share; null where there is nothing to compare with or to say.</param>
internal readonly record struct Judgement(Part Part, Outcome Outcome, double? Share)
{
    /// <summary>What a reading amounts to.</summary>
    public static Judgement Of(Part part, in CheckReading<Real> reading) =>
        new(part, CheckReading.OutcomeOf(reading), CheckReading.MarginOf(reading));
}
