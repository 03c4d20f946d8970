using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>A measured pull without boost: crank power against speed, and the air in which it was measured.</summary>
public sealed record PowerCurve
{
    private static readonly Identity<PowerCurve> _identity = new Identity<PowerCurve>()
        .Value(curve => curve.MeasuredIn)
        .Number(curve => curve.Loss)
        .Value(curve => curve.BySpeed);

    private PowerCurve(
        Curve bySpeed,
        Atmosphere measuredIn,
        Ratio lossGiven,
        IReadOnlyList<(RotationalSpeed Speed, Power Power)> points,
        double loss)
    {
        (BySpeed, MeasuredIn, Loss) = (bySpeed, measuredIn, loss);
        (LossGiven, Points) = (lossGiven, points);
    }

    /// <summary>The air to which the power belongs: that of the day, or the standard one it was corrected to.</summary>
    public Atmosphere MeasuredIn { get; }

    /// <summary>The points as they were given, measured after <see cref="LossGiven"/>.</summary>
    internal IReadOnlyList<(RotationalSpeed Speed, Power Power)> Points { get; }

    /// <summary>The loss as it was given.</summary>
    internal Ratio LossGiven { get; }

    /// <summary>The lowest speed that the curve covers.</summary>
    public RotationalSpeed MinimumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.First);

    /// <summary>The highest speed that the curve covers.</summary>
    public RotationalSpeed MaximumSpeed => RotationalSpeed.FromRevolutionsPerSecond(BySpeed.Last);

    /// <summary>The speed of the highest of its points.</summary>
    internal RotationalSpeed Peak => Points.MaxBy(point => point.Power).Speed;

    internal Curve BySpeed { get; }

    /// <summary>Share of crank power lost before the measurement; zero where it was taken at the crank.</summary>
    internal double Loss { get; }

    /// <summary>Power at the crank against speed, full throttle, no boost.</summary>
    /// <param name="measuredIn">The air of the day, or the standard air that the figures were corrected to.</param>
    /// <param name="points">Two points or more, speeds rising, power 0 to 3,000 kW.</param>
    /// <returns>The curve, which gives no data beyond its first and last speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static PowerCurve AtCrank(Atmosphere measuredIn, params (RotationalSpeed Speed, Power Power)[] points) =>
        AtWheels(measuredIn, Ratio.Zero, points);

    /// <summary>Power at the wheels against speed, full throttle, no boost; kept as crank power.</summary>
    /// <param name="measuredIn">The air of the day, or the standard air that the figures were corrected to.</param>
    /// <param name="loss">Drivetrain loss as a share of crank power: see <see cref="Drivetrain.ToCrank"/>.</param>
    /// <param name="points">Two points or more, speeds rising, power 0 to 3,000 kW.</param>
    /// <returns>The curve, which gives no data beyond its first and last speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static PowerCurve AtWheels(
        Atmosphere measuredIn, Ratio loss, params (RotationalSpeed Speed, Power Power)[] points)
    {
        ArgumentNullException.ThrowIfNull(measuredIn);
        ArgumentNullException.ThrowIfNull(points);
        return new(
            new(
                Guard.Rising(Array.ConvertAll(points, point => EngineSpeed.Within(point.Speed, nameof(points))), nameof(points)),
                Array.ConvertAll(
                    points,
                    point => (double)Drivetrain.ToCrank(Drivetrain.Within(point.Power, nameof(points)), loss).Watts),
                Interpolation.Monotone),
            measuredIn,
            loss,
            [.. points],
            loss.DecimalFractions);
    }

    /// <summary>Crank power at a speed.</summary>
    /// <param name="speed">Within the table.</param>
    /// <returns>Power at the crank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed lies outside the table.</exception>
    public Power At(RotationalSpeed speed) =>
        Power.FromWatts(BySpeed.At(EngineSpeed.Covered(speed, BySpeed, "power curve", nameof(speed))));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PowerCurve? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Maximum power and the speeds covered.</summary>
    /// <returns>For instance <c>up to 155 kW at the crank, 800 rev/min to 7,200 rev/min</c>.</returns>
    public override string ToString() =>
        $"up to {Readable.Of(Power.FromWatts(BySpeed.Points.Max(point => point.Y)))} at the crank, {Readable.Of(MinimumSpeed)} to {Readable.Of(MaximumSpeed)}";

    /// <summary>The same measurement with another share lost before it.</summary>
    internal PowerCurve WithLoss(double loss) =>
        new(BySpeed.Scaled(BoostedPower.CrankFromWheel<Real>(1, loss) / BoostedPower.CrankFromWheel<Real>(1, Loss)), MeasuredIn, LossGiven, Points, loss);
}

/// <summary>Between crank and wheels.</summary>
public static class Drivetrain
{
    /// <summary>Crank power from power measured at the wheels: P = P_w/(1 − ζ).</summary>
    /// <param name="wheelPower">At the wheels, 0 to 3,000 kW.</param>
    /// <param name="loss">
    /// Share of crank power that gearbox, final drive and tyres take, 0 to 40 %. 12 to 18 % is common practice, no
    /// source.
    /// </param>
    /// <returns>Power at the crank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Power ToCrank(Power wheelPower, Ratio loss) =>
        Power.FromWatts((double)BoostedPower.CrankFromWheel<Real>(
            (double)Within(wheelPower, nameof(wheelPower)).Watts,
            WithinLoss(loss, nameof(loss)).DecimalFractions));

    internal static Ratio WithinLoss(Ratio loss, string name) =>
        Guard.Between(
            loss, Ratio.Zero, Ratio.FromPercent(40), "Give the share of crank power lost between crank and wheels.", name);

    internal static Power Within(Power power, string name) =>
        Guard.Between(
            power, Power.Zero, Power.FromKilowatts(3000), "Give the power of the whole engine.", name);
}
