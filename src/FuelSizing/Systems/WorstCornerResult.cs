using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>The worst corner of ranges: where lambda is leanest, and where the margin of each check is tightest.</summary>
public sealed class WorstCornerResult : IReadable
{
    internal WorstCornerResult(
        FuelSystem system, OperatingRanges ranges, WorstPlace? leanest, WorstPlace[] checks, int notKnown, int pointsSolved)
    {
        (System, Ranges, Leanest, Checks) = (system, ranges, leanest, Array.AsReadOnly(checks));
        (NotKnown, PointsSolved) = (notKnown, pointsSolved);
    }

    /// <summary>The system that was asked of; along a line with a check of the compressor's speed.</summary>
    public FuelSystem System { get; }

    /// <summary>What varied.</summary>
    public OperatingRanges Ranges { get; }

    /// <summary>
    /// Where lambda can be leanest (<see cref="DeliveredMixture.MaximumLambda"/>) of all that was solved and where it is known; none where it is
    /// known nowhere.
    /// </summary>
    public WorstPlace? Leanest { get; }

    /// <summary>Where the margin of each check is tightest, the most urgent first.</summary>
    public IReadOnlyList<WorstPlace> Checks { get; }

    /// <summary>The most urgent of them.</summary>
    public WorstPlace Limiting => Checks[0];

    /// <summary>At how many of the points solved lambda is not known: the mixture may be leaner there.</summary>
    public int NotKnown { get; }

    /// <summary>How many points were solved.</summary>
    public int PointsSolved { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Leanest place and limiting check, as a code with its figures.</summary>
    public Statement Text => (Leanest, NotKnown) switch
    {
        ({ } leanest, 0) => Statement.Of("corner.worst", $"{leanest}; limiting: {Limiting.Margin!.Part.Name}"),
        ({ } leanest, _) => Statement.Of(
            "corner.worst-known", $"{leanest}; not known at {NotKnown} of {PointsSolved} points, where it may be leaner; limiting: {Limiting.Margin!.Part.Name}"),
        _ => Statement.Of("corner.not-known", $"lambda is known nowhere; {Limiting}"),
    };

    /// <summary>Leanest place and limiting check.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>The worst place of a mixture or of a check, and at which end of its range each input is there.</summary>
public sealed class WorstPlace : IReadable
{
    private readonly int? _check;

    internal WorstPlace(OperatingResult result, int? check, RangeInput[] inputs) =>
        (Result, _check, Inputs) = (result, check, Array.AsReadOnly(inputs));

    /// <summary>The whole result there; its system has the fuel of that place, its point the conditions.</summary>
    public OperatingResult Result { get; }

    /// <summary>The tightest margin; none where lambda was looked for.</summary>
    public Margin? Margin => _check is { } check ? Result.Margins[check] : null;

    /// <summary>The inputs that vary, and at which end of its range each is.</summary>
    public IReadOnlyList<RangeInput> Inputs { get; }

    /// <summary>True if every input is at an end of its range, or has no effect here.</summary>
    public bool IsAtCorner => Inputs.All(input => input.End != RangeEnd.Inside);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>What is worst there, and with which inputs, as a code with its figures.</summary>
    public Statement Text => Statement.Of("corner.place", $"{What} at {Result.Point}{With}");

    /// <summary>What is worst there, and with which inputs.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private Statement? With => Inputs.Count == 0 ? null : Statement.Of("corner.with", $" with {Inputs:,}");

    private IReadable What =>
        Margin is { } margin ? margin
        : Result.Mixture.MaximumLambda is { } lambda && double.IsFinite(lambda)
            ? Statement.Of("corner.leanest", $"leanest lambda {lambda:0.000}")
        : Statement.Of("corner.no-fuel", $"no fuel is delivered");
}

/// <summary>An input that varies, at the worst place.</summary>
public sealed class RangeInput : IReadable
{
    internal RangeInput(Statement name, IQuantity value, RangeEnd end) => (Name, Value, End) = (name, value, end);

    /// <summary>Which input, and its value.</summary>
    public Statement Name { get; }

    /// <summary>Its value at the worst place.</summary>
    public IQuantity Value { get; }

    /// <summary>Where in its range that is.</summary>
    public RangeEnd End { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Input, value and end, as a code with its figures.</summary>
    public Statement Text => End switch
    {
        RangeEnd.Lowest => Statement.Of("range.lowest", $"{Name} (lowest)"),
        RangeEnd.Highest => Statement.Of("range.highest", $"{Name} (highest)"),
        RangeEnd.Inside => Statement.Of("range.inside", $"{Name} (inside its range)"),
        _ => Statement.Of("range.no-effect", $"{Name} (no effect here)"),
    };

    /// <summary>Input, value and end.</summary>
    /// <returns>For instance <c>ambient temperature −10 °C (lowest)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>Where in its range an input is.</summary>
public enum RangeEnd
{
    /// <summary>Inside: neither end is worst.</summary>
    Inside,

    /// <summary>At the lowest.</summary>
    Lowest,

    /// <summary>At the highest.</summary>
    Highest,

    /// <summary>With all else as it is there, both ends and the middle come to the same.</summary>
    NoEffect,
}
