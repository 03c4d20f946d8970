using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// What a pump delivers at each pressure and voltage at which it filled a vessel, with intervals, and the curves that a fuel system takes.
/// <para><c>Q = m/(ρ t)</c></para>
/// </summary>
/// <remarks>
/// <para><c>Q</c> (m³/s): delivered; <c>m</c> (kg): collected; <c>ρ</c> (kg/m³): density of the liquid; <c>t</c> (s): time.</para>
/// <para>Intervals hold the truth in 95 of 100 tests. A reading's deviation is what scale, clock and pressure setting make of it; where repeats differ by more, the pump's own scatter is added, as one share
/// of flow at all set points, and Student's t by the repeats of all of them together counts. What all readings have in common (density, calibration, and the gauge's through the slope of the
/// curve) widens them further and does not average out.</para>
/// <para>Range: the pressures and voltages of the test, and the liquid. Outside: nothing is said; a thicker or thinner liquid leaks less or more inside the pump.</para>
/// </remarks>
public sealed class PumpFlowFit : IReadable
{
    private readonly double _reach;

    private PumpFlowFit(PumpFlowTest test, PumpFlowPoint[] points, PooledMeans pooled)
    {
        (Test, Points, Outliers, _reach) = (test, Array.AsReadOnly(points), Array.AsReadOnly(pooled.Outliers), pooled.Reach);
        Scatter = Ratio.FromDecimalFractions(pooled.Extra);
        Rising = Array.AsReadOnly<PumpFlowPoint>([.. points.Where(point => points.Any(lower => IsUnder(lower, point)))]);
    }

    /// <summary>The test.</summary>
    public PumpFlowTest Test { get; }

    /// <summary>Each set point, voltages rising and at each the pressures rising.</summary>
    public IReadOnlyList<PumpFlowPoint> Points { get; }

    /// <summary>By how much flow scatters besides what scale, clock and pressure setting explain, as a share: the pump's own, or an accuracy that was stated too well.</summary>
    public Ratio Scatter { get; }

    /// <summary>Places in <see cref="PumpFlowTest.Readings"/> of readings further from their repeats than chance brings one in a hundred tests. Of two repeats either may be the blunder, and both are named.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Set points that deliver more than one at a lower pressure and the same voltage, by more than readings scatter: no pump does, so pressures or readings are mixed up, or air was drawn.</summary>
    public IReadOnlyList<PumpFlowPoint> Rising { get; }

    /// <summary>Number of set points, and the flow at both ends of the highest voltage, as a code with its figures.</summary>
    public Statement Text
    {
        get
        {
            PumpFlowPoint first = Points.First(point => point.Voltage.Equals(Points[^1].Voltage, ElectricPotential.FromMillivolts(1)));
            return Rising.Count > 0
                ? Statement.Of("bench.pump-flow-rising", $"{Test.Name}: flow that rises with pressure, {Rising[0].Text}")
                : Statement.Of("bench.pump-flow", $"{Test.Name}: {Points.Count} set points, from {first.Text} to {Points[^1].Text}");
        }
    }

    /// <summary>Calculates flows and intervals.</summary>
    /// <param name="test">The readings.</param>
    /// <returns>The fit.</returns>
    public static PumpFlowFit Of(PumpFlowTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        (double Pascals, double Millivolts)[] sets = [.. test.Readings.Select(reading => reading.SetPoint).Distinct().OrderBy(set => set.Millivolts).ThenBy(set => set.Pascals)];
        int[] places = [.. test.Readings.Select(reading => Array.IndexOf(sets, reading.SetPoint))];
        double[] flows = [.. test.Readings.Select(reading => test.CubicMetres(reading) / reading.Time.Seconds)];
        double[] plain = [.. sets.Select((_, place) => flows.Where((_, reading) => places[reading] == place).Average())];
        double[] slopes = [.. sets.Select((_, place) => SlopeAt(sets, plain, place))];
        double[] stated =
        [
            .. test.Readings.Select((reading, at) => Norm(
                test.CubicMetresOff / reading.Time.Seconds,
                plain[places[at]] * test.Clock.Seconds / reading.Time.Seconds,
                slopes[places[at]] * test.Gauge.Reading.Pascals)),
        ];
        PooledMeans pooled = PooledMeans.Of(flows, stated, places);
        PooledMeans? currents = test.Ammeter is { } ammeter
            ? PooledMeans.Of([.. test.Readings.Select(reading => reading.Current!.Value.Amperes)], [.. test.Readings.Select(_ => ammeter.Amperes)], places)
            : null;
        return new(
            test,
            [
                .. sets.Select((set, place) => new PumpFlowPoint(
                    test.Readings[Array.IndexOf(places, place)],
                    places.Count(other => other == place),
                    pooled,
                    place,
                    Norm(pooled.Means[place] * Norm(test.Density.DecimalFractions, test.Calibration.DecimalFractions), slopes[place] * test.Gauge.SharedPascals(set.Pascals)),
                    currents,
                    test.Ammeter?.Amperes ?? 0)),
            ],
            pooled);
    }

    /// <summary>The pump's curves as measured, one for each voltage, in the order that a pump takes them.</summary>
    /// <remarks>Set points whose flow rises with pressure by no more than readings scatter get their common mean.</remarks>
    /// <returns>The curves, with current where it was measured.</returns>
    /// <exception cref="InvalidOperationException">Flow rises with pressure: see <see cref="Rising"/>.</exception>
    public IReadOnlyList<PumpCurve> Curves() => Described(Falling, point => point.Current);

    /// <summary>Curves of the lower ends of the intervals, with the upper ends of the currents: for what the pump must supply.</summary>
    /// <returns>The curves.</returns>
    /// <exception cref="InvalidOperationException">Flow rises with pressure: see <see cref="Rising"/>.</exception>
    public IReadOnlyList<PumpCurve> MinimumCurves() => Described(
        points =>
        {
            double[] flows = [.. points.Select(point => point.MinimumFlow.CubicMetersPerSecond)];
            for (int at = 1; at < flows.Length; at++)
            {
                flows[at] = Math.Min(flows[at], flows[at - 1]);
            }

            return flows;
        },
        point => point.MaximumCurrent);

    /// <summary>Curves of the upper ends of the intervals, with the lower ends of the currents: for what returns to the tank.</summary>
    /// <returns>The curves.</returns>
    /// <exception cref="InvalidOperationException">Flow rises with pressure: see <see cref="Rising"/>.</exception>
    public IReadOnlyList<PumpCurve> MaximumCurves() => Described(
        points =>
        {
            double[] flows = [.. points.Select(point => point.MaximumFlow.CubicMetersPerSecond)];
            for (int at = flows.Length - 2; at >= 0; at--)
            {
                flows[at] = Math.Max(flows[at], flows[at + 1]);
            }

            return flows;
        },
        point => point.MinimumCurrent);

    /// <summary>
    /// The measurement as an uncertain input of a system with such pumps: a factor on flow about <see cref="Curves"/>, normal, with the widest relative deviation that an interval of <see cref="Points"/> has, cut off at four of them.
    /// </summary>
    /// <returns>The input.</returns>
    /// <exception cref="InvalidOperationException">No set point delivers for sure.</exception>
    /// <exception cref="ArgumentOutOfRangeException">It reaches beyond 50 to 150 %.</exception>
    public UncertainInput ToUncertainInput()
    {
        double[] shares = [.. Points.Where(point => point.MinimumFlow > VolumeFlow.Zero).Select(point => (point.MaximumFlow - point.MinimumFlow) / point.Flow / 2 / PooledMeans.StatedReach)];
        return shares.Length > 0
            ? UncertainInput.PumpFlowFactor(MeasuredDistribution.Share(1, shares.Max()))
            : throw new InvalidOperationException($"{Test.Name} delivers for sure at no set point: its curve cannot be drawn about. Collect longer, or at lower pressures.");
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Number of set points, and the flow at both ends of the highest voltage.</summary>
    /// <returns>For instance <c>pump S: 8 set points, from 0 kPa, 13.5 V: 213 L/h (211 L/h to 214 L/h) to 600 kPa, 13.5 V: 114 L/h (112 L/h to 116 L/h)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private bool IsUnder(PumpFlowPoint lower, PumpFlowPoint point) =>
        lower.Millivolts.Equals(point.Millivolts) && lower.PressureRise < point.PressureRise
        && point.Flow.CubicMetersPerSecond - lower.Flow.CubicMetersPerSecond > _reach * Norm(lower.Deviation, point.Deviation);

    private PumpCurve[] Described(Func<PumpFlowPoint[], double[]> flowsOf, Func<PumpFlowPoint, ElectricCurrent?> currentOf) => Rising.Count > 0
        ? throw new InvalidOperationException($"{Text}. No pump delivers more against more pressure: look for readings that were mixed up or air that was drawn, and collect there once more.")
        :
        [
            .. Points.GroupBy(point => point.Millivolts).Select(voltage =>
            {
                PumpFlowPoint[] points = [.. voltage];
                double[] flows = flowsOf(points);
                VolumeFlow Flow(int at) => VolumeFlow.FromCubicMetersPerSecond(flows[at]);
                return Test.Ammeter is null
                    ? PumpCurve.At(Test.Name, points[0].Voltage, [.. points.Select((point, at) => (point.PressureRise, Flow(at)))])
                    : PumpCurve.WithCurrent(Test.Name, points[0].Voltage, [.. points.Select((point, at) => (point.PressureRise, Flow(at), currentOf(point)!.Value))]);
            }),
        ];

    // Neighbours that rise are pooled, by their weights, until none does: the nearest falling figures.
    private static double[] Falling(PumpFlowPoint[] points)
    {
        List<(double Flow, double Weight, int Count)> blocks = [];
        foreach (PumpFlowPoint point in points)
        {
            blocks.Add((point.Flow.CubicMetersPerSecond, 1 / (point.Deviation * point.Deviation), 1));
            while (blocks.Count > 1 && blocks[^1].Flow > blocks[^2].Flow)
            {
                ((double Flow, double Weight, int Count) one, (double Flow, double Weight, int Count) other) = (blocks[^2], blocks[^1]);
                double weight = one.Weight + other.Weight;
                blocks.RemoveRange(blocks.Count - 2, 2);
                blocks.Add((((one.Flow * one.Weight) + (other.Flow * other.Weight)) / weight, weight, one.Count + other.Count));
            }
        }

        return [.. blocks.SelectMany(block => Enumerable.Repeat(block.Flow, block.Count))];
    }

    /// <summary>How flow changes with pressure at a set point: the mean of both neighbours' chords, at an end the one there is.</summary>
    private static double SlopeAt((double Pascals, double Millivolts)[] sets, double[] flows, int place)
    {
        double[] chords =
        [
            .. new[] { place - 1, place }
                .Where(from => from >= 0 && from + 1 < sets.Length && sets[from].Millivolts.Equals(sets[from + 1].Millivolts))
                .Select(from => (flows[from + 1] - flows[from]) / (sets[from + 1].Pascals - sets[from].Pascals)),
        ];
        return chords.Average();
    }

    private static double Norm(params ReadOnlySpan<double> parts)
    {
        double square = 0;
        foreach (double part in parts)
        {
            square += part * part;
        }

        return Math.Sqrt(square);
    }
}

/// <summary>What a pump was found to deliver at a pressure and a voltage.</summary>
public sealed class PumpFlowPoint : IReadable
{
    internal PumpFlowPoint(PumpFlowReading one, int readings, PooledMeans flows, int place, double shared, PooledMeans? currents, double sharedAmperes)
    {
        (PressureRise, Voltage, Readings, Deviation, Millivolts) = (one.PressureRise, one.Voltage, readings, flows.Deviations[place], one.SetPoint.Millivolts);
        (double flow, double half) = (flows.Means[place], flows.Half(place, shared));
        (Flow, MinimumFlow, MaximumFlow) = (
            VolumeFlow.FromCubicMetersPerSecond(flow), VolumeFlow.FromCubicMetersPerSecond(Math.Max(0, flow - half)), VolumeFlow.FromCubicMetersPerSecond(flow + half));
        if (currents is not null)
        {
            (double drawn, double off) = (currents.Means[place], currents.Half(place, sharedAmperes));
            (Current, MinimumCurrent, MaximumCurrent) = (
                ElectricCurrent.FromAmperes(drawn), ElectricCurrent.FromAmperes(Math.Max(MinimumAmperes, drawn - off)), ElectricCurrent.FromAmperes(drawn + off));
        }
    }

    /// <summary>Pressure rise over the pump.</summary>
    public Pressure PressureRise { get; }

    /// <summary>Voltage at the pump's terminals.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>How many readings it is the mean of.</summary>
    public int Readings { get; }

    /// <summary>Delivered.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public VolumeFlow MinimumFlow { get; }

    /// <summary>Upper end.</summary>
    public VolumeFlow MaximumFlow { get; }

    /// <summary>Current drawn, if it was measured.</summary>
    public ElectricCurrent? Current { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public ElectricCurrent? MinimumCurrent { get; }

    /// <summary>Upper end.</summary>
    public ElectricCurrent? MaximumCurrent { get; }

    /// <summary>Set point and flow, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "bench.pump-flow-point", $"{PressureRise}, {Voltage}: {Flow:pump-flow} ({MinimumFlow:pump-flow} to {MaximumFlow:pump-flow})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Set point and flow.</summary>
    /// <returns>For instance <c>200 kPa, 13.5 V: 183 L/h (182 L/h to 185 L/h)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>Standard deviation of the mean by the scatter, without what all have in common, m³/s.</summary>
    internal double Deviation { get; }

    internal double Millivolts { get; }

    // What a pump's curve takes at the least.
    private const double MinimumAmperes = 0.1;
}
