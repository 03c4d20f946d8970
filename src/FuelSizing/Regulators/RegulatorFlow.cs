using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>How a regulator's pressure changes with the flow that returns through it: slope or measured curve, hysteresis, and what acts on its outlet.</summary>
/// <remarks>
/// <para>p = p_s + m (Q − Q_0) + s p_o ± h: p_s the setting, m the slope, Q the returned flow, Q_0 the flow at which the setting was found,
/// s the outlet share, p_o gauge pressure at the regulator's outlet, h the hysteresis. The rail is lower where little returns (full demand: the lean
/// side) and higher where much does (idle: the side of ratings).</para>
/// <para>Hysteresis counts to either side: on which branch the setting was found is not known. Below the first measured point the regulator
/// holds at most that pressure, beyond the last one at least that pressure; what the pumps give bounds the other side. Checks take the side that is
/// conservative for them.</para>
/// </remarks>
public sealed record RegulatorFlow : IReadable
{
    private static readonly Identity<RegulatorFlow> _identity = new Identity<RegulatorFlow>()
        .Number(flow => flow._slope)
        .Value(flow => flow._curve)
        .Number(flow => flow.StatedAt.CubicMetersPerSecond)
        .Number(flow => flow.Hysteresis.Pascals)
        .Number(flow => flow.OutletShare);

    // Over any pressure that pumps give: the other side of an end of the data, where they alone bound what there is.
    private const double Unbounded = 1e8;

    private readonly double _slope;
    private readonly double _statedAt;
    private readonly Curve? _curve;

    private RegulatorFlow(Pressure rise, VolumeFlow over, VolumeFlow statedAt, double slope, Curve? curve, IReadOnlyList<RegulatorPoint> points)
    {
        (Rise, Over, StatedAt, Points) = (rise, over, statedAt, points);
        (_slope, _statedAt, _curve) = (slope, statedAt.CubicMetersPerSecond, curve);
    }

    /// <summary>One that holds its setting at any returned flow. Attached, it has the returned flow compared with the least at which the regulator governs.</summary>
    public static RegulatorFlow Constant { get; } =
        new(Pressure.Zero, VolumeFlow.FromLitersPerHour(100), VolumeFlow.Zero, 0, null, Array.AsReadOnly<RegulatorPoint>([]));

    /// <summary>How much the pressure rises while the returned flow rises by <see cref="Over"/>; zero where a curve was measured.</summary>
    public Pressure Rise { get; }

    /// <summary>The rise of returned flow that goes with <see cref="Rise"/>.</summary>
    public VolumeFlow Over { get; }

    /// <summary>Returned flow at which the setting was found.</summary>
    public VolumeFlow StatedAt { get; }

    /// <summary>Measured points, in the order of flow; none where a slope was given.</summary>
    public IReadOnlyList<RegulatorPoint> Points { get; }

    /// <summary>By how much the pressure may differ between rising and falling flow.</summary>
    public Pressure Hysteresis { get; private init; }

    /// <summary>By how much the pressure rises for each 1 of gauge pressure at the outlet; negative where the outlet helps the seat open.</summary>
    public double OutletShare { get; private init; }

    /// <summary>One line that says how the pressure changes, in metric units.</summary>
    public string Description => Text.ToString();

    /// <summary>How the pressure changes, as a code with its figures.</summary>
    public Statement Text
    {
        get
        {
            Statement flow = Points.Count > 0
                ? Statement.Of("regulator-flow.measured", $"measured from {Points[0].Returned:pump-flow} to {Points[^1].Returned:pump-flow} returned, set at {StatedAt:pump-flow}")
                : Rise > Pressure.Zero
                    ? Statement.Of("regulator-flow.rising", $"rising {Rise} over {Over:pump-flow} more returned, set at {StatedAt:pump-flow}")
                    : Statement.Of("regulator-flow.constant", $"the same at any returned flow");
            Statement? band = Hysteresis > Pressure.Zero ? Statement.Of("regulator-flow.hysteresis", $", hysteresis {Hysteresis}") : null;
            Statement? share = OutletShare != 0 ? Statement.Of("regulator-flow.outlet", $", {OutletShare:0.###} of the outlet's pressure added") : null;
            return Statement.Of("regulator-flow.of", $"{flow}{band}{share}");
        }
    }

    /// <summary>A pressure that rises in proportion to the returned flow.</summary>
    /// <param name="rise">How much it rises, 0 to 500 kPa.</param>
    /// <param name="over">While the returned flow rises by so much, 1 to 500 L/h.</param>
    /// <param name="statedAt">Returned flow at which the setting was found, 0 to 500 L/h.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RegulatorFlow Rising(Pressure rise, VolumeFlow over, VolumeFlow statedAt)
    {
        Guard.Between(rise, Pressure.Zero, Pressure.FromKilopascals(500), "Give the difference of pressure between two returned flows.", nameof(rise));
        Guard.Between(over, VolumeFlow.FromLitersPerHour(1), VolumeFlow.FromLitersPerHour(500), "Give the difference between those two returned flows.", nameof(over));
        return new(
            rise,
            over,
            WithinStated(statedAt, VolumeFlow.Zero, VolumeFlow.FromLitersPerHour(500)),
            StraightLine.Slope<Real>(0, 0, over.CubicMetersPerSecond, rise.Pascals),
            null,
            Array.AsReadOnly<RegulatorPoint>([]));
    }

    /// <summary>A pressure as it was measured over the returned flow, at no boost and with the outlet at ambient pressure.</summary>
    /// <param name="statedAt">Returned flow at which the setting was found, within the measured flows. The curve counts by its differences from the pressure there.</param>
    /// <param name="points">Two to 50 points: returned flow, 0 to 1,000 L/h, each over the one before; pressure, 1 to 2,000 kPa, none below the one before.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentException">There are too few or too many points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RegulatorFlow Measured(VolumeFlow statedAt, params (VolumeFlow Returned, Pressure Gauge)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Length is < 2 or > 50)
        {
            throw new ArgumentException($"points has {points.Length}; it must have 2 to 50. Give measured points of returned flow and pressure.", nameof(points));
        }

        RegulatorPoint[] all = Array.ConvertAll(points, point => new RegulatorPoint(point.Returned, point.Gauge));
        for (int at = 0; at < all.Length; at++)
        {
            VolumeFlow above = at == 0 ? VolumeFlow.Zero : all[at - 1].Returned + VolumeFlow.FromLitersPerHour(0.01);
            Guard.Between(all[at].Returned, above, VolumeFlow.FromLitersPerHour(1000), "Give the returned flows in rising order.", nameof(points));
            Guard.Between(
                all[at].Gauge,
                at == 0 ? Pressure.FromKilopascals(1) : all[at - 1].Gauge,
                Pressure.FromKilopascals(2000),
                "Give pressures that do not fall as the returned flow rises: with one that falls no flow is steady. Take the mean of both branches, and give their difference as hysteresis.",
                nameof(points));
        }

        return new(
            Pressure.Zero,
            VolumeFlow.FromLitersPerHour(100),
            WithinStated(statedAt, all[0].Returned, all[^1].Returned),
            0,
            new(Array.ConvertAll(all, point => point.Returned.CubicMetersPerSecond), Array.ConvertAll(all, point => point.Gauge.Pascals), Interpolation.Monotone),
            Array.AsReadOnly(all));
    }

    /// <summary>The same with hysteresis.</summary>
    /// <param name="hysteresis">By how much the pressure may differ between rising and falling flow, 0 to 200 kPa.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public RegulatorFlow WithHysteresis(Pressure hysteresis) => this with
    {
        Hysteresis = Guard.Between(
            hysteresis,
            Pressure.Zero,
            Pressure.FromKilopascals(200),
            "Give the difference between the pressures at one returned flow, reached from above and from below.",
            nameof(hysteresis)),
    };

    /// <summary>The same with what the pressure at its outlet does.</summary>
    /// <remarks>
    /// By the balance of forces on the moving part: where the outlet's pressure helps the spring, seat area ÷ diaphragm area; where it helps the rail open the
    /// seat, as of a diaphragm that closes the end of the outlet's pipe, −seat area ÷ (diaphragm area − seat area).
    /// </remarks>
    /// <param name="share">Rise of the pressure held for each 1 of gauge pressure at the outlet, −0.5 to 1.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public RegulatorFlow WithOutletShare(double share) => this with
    {
        OutletShare = Guard.Number(share, -0.5, 1, "Give seat area ÷ diaphragm area, negative where the outlet's pressure helps the seat open.", nameof(share)),
    };

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>How the pressure changes.</summary>
    /// <returns><see cref="Description"/>.</returns>
    public override string ToString() => Description;

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RegulatorFlow? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>True if the pressure is the same at any returned flow.</summary>
    internal bool IsConstant => _slope == 0 && _curve is null && OutletShare == 0 && !HasBand;

    /// <summary>True if the pressure is known between two bounds only.</summary>
    internal bool HasBand => Hysteresis > Pressure.Zero || _curve is not null;

    /// <summary>Rise of the pressure for each m³/s more that returns, Pa·s/m³; none where a curve was measured.</summary>
    internal double? SlopePascals => _curve is null ? _slope : null;

    /// <summary>True if a returned flow, m³/s, lies past an end of the measured curve.</summary>
    internal bool IsPastEnd(double returned) => _curve is not null && !_curve.Covers(returned);

    /// <summary>How far the pressure is over the setting with so much returned, m³/s, the outlet apart, Pa.</summary>
    internal double RisePascals(double returned, RegulatorReading reading)
    {
        double band = BandPascals(reading);
        if (_curve is null)
        {
            return RailPressure.FlowRise<Real>(_slope, returned, _statedAt) + (Real)band;
        }

        return reading == RegulatorReading.Lower && returned < _curve.First ? -Unbounded
            : reading == RegulatorReading.Upper && returned > _curve.Last ? Unbounded
            : _curve.Nearest(returned) - (Real)_curve.Nearest(_statedAt) + (Real)band;
    }

    /// <summary>What hysteresis adds, Pa.</summary>
    internal double BandPascals(RegulatorReading reading) => reading switch
    {
        RegulatorReading.Lower => -Hysteresis.Pascals,
        RegulatorReading.Upper => Hysteresis.Pascals,
        _ => 0,
    };

    private static VolumeFlow WithinStated(VolumeFlow statedAt, VolumeFlow minimum, VolumeFlow maximum) =>
        Guard.Between(statedAt, minimum, maximum, "Give the returned flow at which the regulator was set.", nameof(statedAt));
}

/// <summary>A measured point of a regulator.</summary>
public sealed record RegulatorPoint
{
    private static readonly Identity<RegulatorPoint> _identity = new Identity<RegulatorPoint>()
        .Number(point => point.Returned.CubicMetersPerSecond)
        .Number(point => point.Gauge.Pascals);

    internal RegulatorPoint(VolumeFlow returned, Pressure gauge) => (Returned, Gauge) = (returned, gauge);

    /// <summary>Flow that returns through it.</summary>
    public VolumeFlow Returned { get; }

    /// <summary>Pressure that it holds, gauge, at no boost.</summary>
    public Pressure Gauge { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RegulatorPoint? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Flow and pressure.</summary>
    /// <returns>For instance <c>60 L/h: 300 kPa</c>.</returns>
    public override string ToString() => $"{Readable.PumpFlow(Returned)}: {Readable.Of(Gauge)}";
}

/// <summary>By which side of a regulator's data a circuit is solved.</summary>
internal enum RegulatorReading
{
    /// <summary>As results show it.</summary>
    Estimate,

    /// <summary>With the lowest pressure that the data allow.</summary>
    Lower,

    /// <summary>With the highest.</summary>
    Upper,
}

/// <summary>What a regulator holds at one boost, by what returns through it.</summary>
/// <param name="Regulator">The regulator, whose pressure changes with flow.</param>
/// <param name="Boost">Pa.</param>
internal sealed record HeldPressure(PressureRegulator Regulator, double Boost)
{
    /// <summary>True if the pressure is known between two bounds only.</summary>
    public bool HasBand => Regulator.HasBand;

    /// <summary>Pressure held, gauge, Pa.</summary>
    /// <param name="returned">m³/s.</param>
    /// <param name="outlet">Pressure at the outlet, gauge, Pa.</param>
    /// <param name="reading">By which side of its data.</param>
    public double At(double returned, double outlet, RegulatorReading reading) => Regulator.HeldPascals(Boost, returned, outlet, reading);

    /// <summary>Pressure held at the flow at which the setting was found, with the outlet at ambient pressure, gauge, Pa.</summary>
    /// <param name="reading">By which side of its data.</param>
    public double Stated(RegulatorReading reading) => Regulator.StatedPascals(Boost, reading);
}
