using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>
/// The boost line of a centrifugal compressor on a belt, from one known point: r^((γ−1)/γ) − 1 goes with the square of its speed and with the
/// reciprocal of its absolute inlet temperature (<see cref="CentrifugalCompressor.RatioAtSpeed{T}"/>).
/// </summary>
/// <remarks>
/// <para>
/// r = (manifold + charge-cooler pressure drop)/ambient, with the drop of the engine's <see cref="Induction"/>, at the known point as elsewhere. The
/// drop is taken as constant: where the compressor makes less than it, boost is zero.
/// </para>
/// <para>
/// Work coefficient and efficiency stay as at the known point. Nearer to surge or choke a compressor makes less than that: give a point near
/// the speeds in question, and measure again after a change of pulley.
/// </para>
/// </remarks>
public sealed record CentrifugalBoost : BeltDrivenBoost
{
    private static readonly Identity<CentrifugalBoost> _identity = new Identity<CentrifugalBoost>()
        .Number(line => line.DriveRatio)
        .Number(line => line.MaximumCompressorSpeed?.RevolutionsPerSecond)
        .Number(line => line.KnownSpeed.RevolutionsPerSecond)
        .Number(line => line.KnownBoost.Pascals)
        .Number(line => line.KnownDriveRatio)
        .Value(line => line.MeasuredIn);

    private readonly double _knownBoost;
    private readonly double _knownCompressorSpeed;

    private CentrifugalBoost(double driveRatio, RotationalSpeed knownSpeed, Pressure knownBoost, Atmosphere measuredIn)
        : base(driveRatio)
    {
        (KnownSpeed, KnownBoost, KnownDriveRatio, MeasuredIn) = (knownSpeed, knownBoost, driveRatio, measuredIn);
        (_knownBoost, _knownCompressorSpeed) = (knownBoost.Pascals, knownSpeed.RevolutionsPerSecond * driveRatio);
    }

    /// <summary>Engine speed of the known point.</summary>
    public RotationalSpeed KnownSpeed { get; }

    /// <summary>Boost of the known point.</summary>
    public Pressure KnownBoost { get; }

    /// <summary>Drive ratio at which the known point was measured.</summary>
    public double KnownDriveRatio { get; }

    /// <summary>The ambient air in which the known point was measured.</summary>
    public Atmosphere MeasuredIn { get; }

    /// <inheritdoc/>
    public override Statement Text => Statement.Of(
        "boost-line.centrifugal",
        $"centrifugal compressor at {DriveRatio:0.00} × engine speed, known: {KnownBoost:boost} at {KnownSpeed} and {KnownDriveRatio:0.00}");

    private protected override string Cure => "Check known point, drive ratio and pulley.";

    /// <summary>The line by a known point, at the drive ratio at which it was measured; a change of pulley comes after it.</summary>
    /// <param name="driveRatio">Turns of the impeller to one of the crank when the point was measured, 0.2 to 20.</param>
    /// <param name="knownSpeed">Engine speed of the point, 100 to 25,000 rev/min.</param>
    /// <param name="knownBoost">Manifold gauge pressure of the point, full throttle, 1 to 400 kPa.</param>
    /// <param name="measuredIn">The ambient air in which it was measured.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CentrifugalBoost From(
        double driveRatio, RotationalSpeed knownSpeed, Pressure knownBoost, Atmosphere measuredIn)
    {
        ArgumentNullException.ThrowIfNull(measuredIn);
        return new(
            WithinRatio(driveRatio, nameof(driveRatio)),
            EngineSpeed.Checked(knownSpeed, nameof(knownSpeed)),
            Guard.Between(
                knownBoost,
                Pressure.FromKilopascals(1),
                ManifoldPressure.Maximum,
                "Give the gauge pressure that was measured in the manifold at full throttle.",
                nameof(knownBoost)),
            measuredIn);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CentrifugalBoost? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override double PascalsAt(double revolutionsPerSecond, FuelDemandModel demand, Atmosphere atmosphere)
    {
        Real loss = demand.Constants.CoolerLoss;
        Real ratio = CentrifugalCompressor.RatioAtSpeed<Real>(
            KnownRatio(loss), _knownCompressorSpeed, MeasuredIn.Kelvins, revolutionsPerSecond * DriveRatio, atmosphere.Kelvins);
        return Math.Max(0, (ratio * atmosphere.Pascals) - loss - atmosphere.Pascals);
    }

    internal override (double First, double Last) SpeedsFor(FuelDemandModel demand) => (EngineSpeed.Minimum, EngineSpeed.Maximum);

    // Where the compressor just makes up for the cooler's pressure drop.
    internal override IReadOnlyList<double> KnotsFor(FuelDemandModel demand, Atmosphere atmosphere)
    {
        Real loss = demand.Constants.CoolerLoss;
        if (loss <= 0)
        {
            return [];
        }

        double needed = Compression.IsentropicRatio(Compression.PressureRatio<Real>(atmosphere.Pascals, loss, atmosphere.Pascals)) - 1;
        double known = Compression.IsentropicRatio(KnownRatio(loss)) - 1;
        return [_knownCompressorSpeed / DriveRatio * Math.Sqrt(needed / known * atmosphere.Kelvins / MeasuredIn.Kelvins)];
    }

    private Real KnownRatio(Real loss) => Compression.PressureRatio<Real>(MeasuredIn.Pascals + _knownBoost, loss, MeasuredIn.Pascals);
}
