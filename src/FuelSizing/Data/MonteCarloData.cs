using System.Text.Json.Serialization;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Data;

/// <summary>What many draws of the uncertain inputs gave; along a boost line, each figure at the worst place of each sample.</summary>
public sealed record MonteCarloData : DataRecord
{
    /// <summary>Samples done.</summary>
    public required int Samples { get; init; }

    /// <summary>False if the run was stopped.</summary>
    public required bool IsComplete { get; init; }

    /// <summary>How likely every part holds at once.</summary>
    public required ChanceData All { get; init; }

    /// <summary>How likely each part holds, in the order of the system's checks.</summary>
    public required DataList<PartChanceData> Parts { get; init; }

    /// <summary>Duty cycle of the common pulse.</summary>
    public required SpreadData DutyCycle { get; init; }

    /// <summary>Fuel that the engine is to burn.</summary>
    public required SpreadData FuelFlow { get; init; }

    /// <summary>Gauge pressure in the rail.</summary>
    public required SpreadData RailGauge { get; init; }

    /// <summary>The smallest margin of all parts.</summary>
    public required SpreadData MinimumMargin { get; init; }

    /// <summary>Lambda of the leanest cylinder at each place that is looked at.</summary>
    public required DataList<MixtureSpreadData> Mixture { get; init; }

    /// <summary>The finding in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static MonteCarloData Of(MonteCarloResult result) => new()
    {
        Samples = result.Samples,
        IsComplete = result.IsComplete,
        All = ChanceData.Of(result.All),
        Parts = [.. result.Parts.Select(PartChanceData.Of)],
        DutyCycle = SpreadData.Of(result.DutyCycle, share => share.DecimalFractions, null),
        FuelFlow = SpreadData.Of(result.FuelFlow, flow => flow.KilogramsPerSecond, "kg/s"),
        RailGauge = SpreadData.Of(result.RailGauge, pressure => pressure.Pascals, "Pa"),
        MinimumMargin = SpreadData.Of(result.MinimumReserve, share => share.DecimalFractions, null),
        Mixture = [.. result.Mixture.Select(MixtureSpreadData.Of)],
        Text = StatementData.Of(result.Text),
    };
}

/// <summary>How likely a limit is kept, by counting samples.</summary>
public sealed record ChanceData : DataRecord
{
    /// <summary>Samples in which the limit is kept.</summary>
    public required int Holding { get; init; }

    /// <summary>Samples in which it is passed.</summary>
    public required int Failing { get; init; }

    /// <summary>Samples of which nothing can be said.</summary>
    public required int CannotSay { get; init; }

    /// <summary>Lower end of the 95 % interval of the share that holds, those of which nothing can be said counted as failing.</summary>
    public required double MinimumHoldingShare { get; init; }

    /// <summary>Upper end of it, those of which nothing can be said counted as holding.</summary>
    public required double MaximumHoldingShare { get; init; }

    /// <summary>The finding in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static ChanceData Of(Chance chance)
    {
        (Ratio minimum, Ratio maximum) = chance.Bounds;
        return new()
        {
            Holding = chance.Holding,
            Failing = chance.Failing,
            CannotSay = chance.CannotSay,
            MinimumHoldingShare = minimum.DecimalFractions,
            MaximumHoldingShare = maximum.DecimalFractions,
            Text = StatementData.Of(chance.Text),
        };
    }
}

/// <summary>How likely one part keeps its limit, and by how much.</summary>
public sealed record PartChanceData : DataRecord
{
    /// <summary>Code of the part.</summary>
    public required string Part { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>How likely it holds.</summary>
    public required ChanceData Chance { get; init; }

    /// <summary>Its margin over the samples that have one.</summary>
    public required SpreadData Margin { get; init; }

    private protected override string InOneLine => $"{Name}: {Chance.Text.Text}";

    internal static PartChanceData Of(PartChance part) => new()
    {
        Part = part.Part.Code,
        Name = part.Part.Name,
        Chance = ChanceData.Of(part.Chance),
        Margin = SpreadData.Of(part.Reserve, share => share.DecimalFractions, null),
    };
}

/// <summary>How lambda scatters at one place.</summary>
public sealed record MixtureSpreadData : DataRecord
{
    /// <summary>The place.</summary>
    public required PointData Point { get; init; }

    /// <summary>Lambda of the leanest cylinder over the samples.</summary>
    public required SpreadData LeanestCylinder { get; init; }

    private protected override string InOneLine => $"{Point}: {LeanestCylinder}";

    internal static MixtureSpreadData Of(MixtureSpread mixture) => new()
    {
        Point = PointData.Of(mixture.Point),
        LeanestCylinder = SpreadData.Of(mixture.Lambda, lambda => lambda, null),
    };
}

/// <summary>How one figure scatters over the samples.</summary>
public sealed record SpreadData : PartlyKnownData
{
    /// <summary>Unit of the figures; none of a ratio or lambda.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unit { get; init; }

    /// <summary>Samples in which the figure is known; the numbers below are of these alone.</summary>
    public required int Known { get; init; }

    /// <summary>Samples in which it is not.</summary>
    public required int CannotSay { get; init; }

    /// <summary>Mean.</summary>
    public required double? Mean { get; init; }

    /// <summary>Standard deviation of one sample.</summary>
    public required double? StandardDeviation { get; init; }

    /// <summary>5th percentile.</summary>
    public required double? Percentile5 { get; init; }

    /// <summary>Median.</summary>
    public required double? Median { get; init; }

    /// <summary>95th percentile.</summary>
    public required double? Percentile95 { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"median {Median:G6} {Unit}, 5th to 95th percentile {Percentile5:G6} to {Percentile95:G6}");

    internal static SpreadData Of<T>(OutputSpread<T> spread, Func<T, double> number, string? unit)
        where T : struct
    {
        Gaps gaps = new();
        Statement reason = Statement.Of("data.too-few-samples", $"too few samples have a value, or one has no bound");
        double? Share(double percent) => spread.Percentile(Ratio.FromPercent(percent)) is { } value ? number(value) : null;
        return new()
        {
            Unit = unit,
            Known = spread.Known,
            CannotSay = spread.CannotSay,
            Mean = gaps.Figure(nameof(Mean), spread.Mean is { } mean ? number(mean) : null, reason),
            StandardDeviation = gaps.Figure(nameof(StandardDeviation), spread.StandardDeviation is { } deviation ? number(deviation) : null, reason),
            Percentile5 = gaps.Figure(nameof(Percentile5), Share(5), reason),
            Median = gaps.Figure(nameof(Median), Share(50), reason),
            Percentile95 = gaps.Figure(nameof(Percentile95), Share(95), reason),
            NotKnown = gaps.Found,
        };
    }
}
