using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>What a pump delivers, and the current it draws, against pressure at the voltage at which it was measured.</summary>
/// <remarks>
/// Between its points the curve is monotone; beyond them it gives no data, except that a pump delivers no more at a higher
/// pressure. A curve that ends at zero flow shows the deadhead pressure.
/// </remarks>
public sealed record PumpCurve
{
    private static readonly Identity<PumpCurve> _identity = new Identity<PumpCurve>()
        .Value(curve => curve.Name)
        .Number(curve => curve.Volts)
        .Value(curve => curve.Flow)
        .Value(curve => curve.Current);

    // Equal flows at two pressures would leave the pressure at that flow open; a real pump leaks more than this.
    private const double MinimumFall = 1e-9;

    private PumpCurve(string name, ElectricPotential voltage, Curve flow, Curve? current, MeasuredPoint[] points)
    {
        (Name, Voltage, Flow, Current, Volts, Points) = (name, voltage, flow, current, voltage.Volts, points);
        MaximumCurrent = current?.Points.Max(point => point.Y) ?? 0;
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Voltage at the pump's terminals when the curve was measured.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>The lowest pressure rise of the curve.</summary>
    public Pressure MinimumPressure => Pressure.FromPascals(Flow.First);

    /// <summary>The highest pressure rise of the curve.</summary>
    public Pressure MaximumPressure => Pressure.FromPascals(Flow.Last);

    /// <summary>Pressure at which the pump delivers nothing, if the curve was measured that far.</summary>
    public Pressure? Deadhead => EndsAtDeadhead ? MaximumPressure : null;

    /// <summary>True if the current was measured too.</summary>
    public bool HasCurrent => Current is not null;

    /// <summary>The points as they were given.</summary>
    internal IReadOnlyList<MeasuredPoint> Points { get; }

    internal Curve Flow { get; }

    internal Curve? Current { get; }

    /// <summary>The maximum current that was measured, A; zero where none was.</summary>
    internal double MaximumCurrent { get; }

    internal double Volts { get; }

    internal bool EndsAtDeadhead => Flow.LastValue <= MinimumFall * Flow.FirstValue;

    /// <summary>A pump's measured flow.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="voltage">At the pump's terminals when measured, 5 to 30 V.</param>
    /// <param name="points">
    /// Two or more: pressure rise rising, 0 to 2,000 kPa; flow never growing with it, 0 to 3,000 L/h.
    /// </param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static PumpCurve At(
        string name, ElectricPotential voltage, params (Pressure PressureRise, VolumeFlow Flow)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return Of(
            name,
            voltage,
            Array.ConvertAll(points, point => point.PressureRise),
            Array.ConvertAll(points, point => point.Flow),
            null,
            nameof(points));
    }

    /// <summary>A pump's measured flow and current.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="voltage">At the pump's terminals when measured, 5 to 30 V.</param>
    /// <param name="points">
    /// Two or more: pressure rise rising, 0 to 2,000 kPa; flow never growing with it, 0 to 3,000 L/h; current 0.1 to 100 A.
    /// </param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static PumpCurve WithCurrent(
        string name,
        ElectricPotential voltage,
        params (Pressure PressureRise, VolumeFlow Flow, ElectricCurrent Current)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return Of(
            name,
            voltage,
            Array.ConvertAll(points, point => point.PressureRise),
            Array.ConvertAll(points, point => point.Flow),
            Array.ConvertAll(points, point => point.Current),
            nameof(points));
    }

    /// <summary>Delivered flow at a pressure rise.</summary>
    /// <param name="pressureRise">Within the curve.</param>
    /// <returns>The flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The curve does not cover the pressure.</exception>
    public VolumeFlow FlowAt(Pressure pressureRise) =>
        VolumeFlow.FromCubicMetersPerSecond(Flow.At(Covered(pressureRise, nameof(pressureRise))));

    /// <summary>Current drawn at a pressure rise.</summary>
    /// <param name="pressureRise">Within the curve.</param>
    /// <returns>The current.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The curve does not cover the pressure.</exception>
    /// <exception cref="InvalidOperationException">The current was not measured.</exception>
    public ElectricCurrent CurrentAt(Pressure pressureRise)
    {
        double pascals = Covered(pressureRise, nameof(pressureRise));
        return Current is { } current
            ? ElectricCurrent.FromAmperes(current.At(pascals))
            : throw new InvalidOperationException(
                $"The curve of {Name} has no current. Describe it with PumpCurve.WithCurrent.");
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpCurve? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, voltage and both ends.</summary>
    /// <returns>For instance <c>pump R at 13.5 V: 215 L/h against 0 kPa, 0 L/h against 750 kPa</c>.</returns>
    public override string ToString() =>
        $"{Name} at {Readable.Of(Voltage)}: {End(Flow.First, Flow.FirstValue)}, {End(Flow.Last, Flow.LastValue)}";

    private static string End(double rise, double flow) =>
        $"{Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow))} against {Readable.Of(Pressure.FromPascals(rise))}";

    internal static ElectricPotential WithinVoltage(ElectricPotential voltage, string name) =>
        Guard.Between(
            voltage,
            ElectricPotential.FromVolts(5),
            ElectricPotential.FromVolts(30),
            "Give the voltage at the pump's terminals for which the curve was measured.",
            name);

    internal static Pressure WithinRise(Pressure pressureRise, string name) =>
        Guard.Between(
            pressureRise, Pressure.Zero, Pressure.FromKilopascals(2000), "Give the pressure rise over the pump.", name);

    internal static VolumeFlow WithinFlow(VolumeFlow flow, string name) =>
        Guard.Between(
            flow,
            VolumeFlow.Zero,
            VolumeFlow.FromLitersPerHour(3000),
            "Give the delivered flow at that pressure rise.",
            name);

    internal static ElectricCurrent WithinCurrent(ElectricCurrent current, string name) =>
        Guard.Between(
            current,
            ElectricCurrent.FromAmperes(0.1),
            ElectricCurrent.FromAmperes(100),
            "Give the current that the pump draws at that pressure rise.",
            name);

    private static PumpCurve Of(
        string name,
        ElectricPotential voltage,
        Pressure[] pressures,
        VolumeFlow[] flows,
        ElectricCurrent[]? currents,
        string pointsName)
    {
        Guard.Name(name, nameof(name));
        WithinVoltage(voltage, nameof(voltage));
        double[] pascals = Array.ConvertAll(pressures, pressure => WithinRise(pressure, pointsName).Pascals);
        double[] flow = Array.ConvertAll(flows, value => WithinFlow(value, pointsName).CubicMetersPerSecond);
        for (int point = 1; point < flow.Length; point++)
        {
            if (flows[point] > flows[point - 1])
            {
                throw Guard.OutOfRange(
                    pointsName,
                    Readable.PumpFlow(flows[point]),
                    $"at most {Readable.PumpFlow(flows[point - 1])}, the flow at the lower pressure before it",
                    "A pump delivers no more at a higher pressure; check the order of the points.");
            }

            flow[point] = Math.Min(flow[point], flow[point - 1] * (1 - MinimumFall));
        }

        double[]? amperes = currents is null
            ? null
            : Array.ConvertAll(currents, current => WithinCurrent(current, pointsName).Amperes);
        return new(
            name,
            voltage,
            new(Guard.Rising(pascals, pointsName), flow, Interpolation.Monotone),
            amperes is null ? null : new(pascals, amperes, Interpolation.Monotone),
            [.. pressures.Select((pressure, point) => new MeasuredPoint(pressure, flows[point], currents?[point]))]);
    }

    /// <summary>Pressure rise at a flow, Pa, the inverse of the curve; its first or last where the flow lies beyond.</summary>
    /// <param name="flow">m³/s.</param>
    internal double RiseAt(double flow)
    {
        ReadOnlySpan<CubicPiece<Real>> pieces = Flow.Pieces;
        int at = 0;
        while (at + 1 < pieces.Length && flow <= pieces[at + 1].Value)
        {
            at++;
        }

        ref readonly CubicPiece<Real> piece = ref pieces[at];
        (double start, double value) = (piece.Start, piece.Value);
        bool last = at + 1 == pieces.Length;
        double end = last ? Flow.Last : pieces[at + 1].Start;
        double minimum = last ? Flow.LastValue : pieces[at + 1].Value;
        return flow >= value ? start
            : flow <= minimum ? end
            : start + (Real)FallingCubic.Along(piece, end - start, minimum, flow);
    }

    /// <summary>Far over any rail pressure, and finite so that sums and root finding stay so, Pa.</summary>
    internal const double EndlessRise = 1e9;

    /// <summary>Flow at a rise, m³/s: under the curve its first; over it none, or the last of a curve that goes on.</summary>
    internal double FlowBeyond(double rise, bool goesOn) =>
        rise <= Flow.First ? Flow.FirstValue
        : Flow.Covers(rise) ? Flow.At(rise)
        : goesOn && !EndsAtDeadhead ? Flow.LastValue
        : 0;

    /// <summary>Current at a rise, A; beyond the curve that at its end.</summary>
    internal double CurrentNear(double rise) => Current!.At(Math.Clamp(rise, Current.First, Current.Last));

    /// <summary>The same, and how it changes with the rise, A/Pa.</summary>
    internal (double Current, double ByRise) CurrentWithSlope(double rise) => Current!.NearestWithSlope(rise);

    private double Covered(Pressure pressureRise, string name) =>
        Flow.Covers(pressureRise.Pascals)
            ? pressureRise.Pascals
            : throw Guard.OutOfRange(
                name,
                Readable.Of(pressureRise),
                $"between {Readable.Of(MinimumPressure)} and {Readable.Of(MaximumPressure)}",
                "The pump's curve covers no more; extend it by measured points.");
}

/// <summary>A measured point of a pump's curve.</summary>
/// <param name="PressureRise">Over the pump.</param>
/// <param name="Flow">Delivered.</param>
/// <param name="Current">Drawn, if it was measured.</param>
internal readonly record struct MeasuredPoint(Pressure PressureRise, VolumeFlow Flow, ElectricCurrent? Current);
