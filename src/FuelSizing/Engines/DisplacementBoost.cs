using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>
/// The boost line of a displacement compressor on a belt (Roots, screw, vane): what it passes at inlet density is what the engine draws at
/// manifold density (<see cref="DisplacementCompressor.ChargeDensity{T}"/>).
/// </summary>
/// <remarks>
/// <para>
/// Engine speed cancels, so that boost follows the reciprocal of the engine's volumetric efficiency. Where the compressor passes less than the engine
/// draws at ambient pressure, the bypass valve opens and boost is zero. Elsewhere the valve is shut: all air goes to the engine.
/// </para>
/// <para>
/// The compressor's volumetric efficiency is taken as constant. In truth more leaks back at a higher pressure ratio and at a lower speed: state it at
/// the highest ratio in question; stated at a lower one, the line is an upper bound there.
/// </para>
/// </remarks>
public sealed record DisplacementBoost : BeltDrivenBoost
{
    private static readonly Identity<DisplacementBoost> _identity = new Identity<DisplacementBoost>()
        .Number(line => line.DriveRatio)
        .Number(line => line.MaximumCompressorSpeed?.RevolutionsPerSecond)
        .Number(line => line.DisplacementPerRevolution.CubicMeters)
        .Number(line => line.VolumetricEfficiency.DecimalFractions);

    private readonly double _displacement;
    private readonly double _efficiency;

    private DisplacementBoost(double driveRatio, Volume displacementPerRevolution, Ratio volumetricEfficiency)
        : base(driveRatio)
    {
        (DisplacementPerRevolution, VolumetricEfficiency) = (displacementPerRevolution, volumetricEfficiency);
        (_displacement, _efficiency) = (displacementPerRevolution.CubicMeters, volumetricEfficiency.DecimalFractions);
    }

    /// <summary>The volume that the compressor would pass with each turn if nothing leaked.</summary>
    public Volume DisplacementPerRevolution { get; }

    /// <summary>What it passes ÷ its displacement, at inlet density.</summary>
    public Ratio VolumetricEfficiency { get; }

    /// <inheritdoc/>
    public override Statement Text => Statement.Of(
        "boost-line.displacement",
        $"displacement compressor of {DisplacementPerRevolution} a revolution, volumetric efficiency {VolumetricEfficiency}, at {DriveRatio:0.00} × engine speed");

    private protected override string Cure => "Check displacement, drive ratio and the engine's volumetric efficiency.";

    /// <summary>The line of a displacement compressor.</summary>
    /// <param name="driveRatio">Turns of the compressor to one of the crank, 0.2 to 20.</param>
    /// <param name="displacementPerRevolution">What it passes with each of its turns if nothing leaks, 0.02 to 20 L.</param>
    /// <param name="volumetricEfficiency">Of the compressor: what it passes ÷ its displacement, at inlet density, 20 to 100 %.</param>
    /// <returns>The line, which covers the speeds of the engine's table of volumetric efficiency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static DisplacementBoost Of(double driveRatio, Volume displacementPerRevolution, Ratio volumetricEfficiency) => new(
        WithinRatio(driveRatio, nameof(driveRatio)),
        Guard.Between(
            displacementPerRevolution,
            Volume.FromLiters(0.02),
            Volume.FromLiters(20),
            "Give the compressor's displacement with one turn of its own, not of the crank.",
            nameof(displacementPerRevolution)),
        Guard.Between(
            volumetricEfficiency,
            Ratio.FromPercent(20),
            Ratio.FromPercent(100),
            "Give what the compressor passes ÷ its displacement at the planned pressure ratio and speed.",
            nameof(volumetricEfficiency)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(DisplacementBoost? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override double PascalsAt(double revolutionsPerSecond, FuelDemandModel demand, Atmosphere atmosphere)
    {
        Curve efficiency = demand.VolumetricEfficiency.BySpeed;
        if (!efficiency.Covers(revolutionsPerSecond) || demand.AlongSpeed?.Any.Covers(revolutionsPerSecond) == false)
        {
            return double.NaN;
        }

        // In units of ambient pressure the boost is of the order of one, as the solver wants it.
        double maximum = ManifoldPressure.Maximum.Pascals / atmosphere.Pascals;
        double boost = Bracket.Of(
            new Surplus(demand.ConstantsAt(revolutionsPerSecond), atmosphere.Pascals, atmosphere.Kelvins, Wanted(demand, atmosphere, efficiency.At(revolutionsPerSecond))),
            0,
            maximum);
        return boost < maximum ? boost * atmosphere.Pascals : double.PositiveInfinity;
    }

    internal override (double First, double Last) SpeedsFor(FuelDemandModel demand)
    {
        Curve efficiency = demand.VolumetricEfficiency.BySpeed;
        Curve other = demand.AlongSpeed?.Any ?? efficiency;
        return (Math.Max(efficiency.First, other.First), Math.Min(efficiency.Last, other.Last));
    }

    // Those of the table of volumetric efficiency, and where the bypass valve begins to open.
    internal override IReadOnlyList<double> KnotsFor(FuelDemandModel demand, Atmosphere atmosphere)
    {
        Curve efficiency = demand.VolumetricEfficiency.BySpeed;
        (double X, double Y)[] points = [.. efficiency.Points];
        List<double> knots = [points[0].X];
        foreach (((double X, double Y) from, (double X, double Y) to) in points.Zip(points.Skip(1)))
        {
            if ((from.Y < OpensAt(from.X)) != (to.Y < OpensAt(to.X)))
            {
                double sign = from.Y < OpensAt(from.X) ? 1 : -1;
                knots.Add(from.X + ((to.X - from.X) * Bracket.Of(
                    share => sign * (1 - (efficiency.At(from.X + ((to.X - from.X) * share)) / OpensAt(from.X + ((to.X - from.X) * share)))), 0, 1)));
            }

            knots.Add(to.X);
        }

        return [.. knots.Distinct()];

        // The volumetric efficiency at which the engine draws all that the compressor passes without boost.
        double OpensAt(double speed) =>
            Wanted(demand, atmosphere, 1) / Surplus.Density(demand.ConstantsAt(speed), 0, atmosphere.Pascals, atmosphere.Kelvins);
    }

    /// <summary>The density in the manifold at which the engine draws what the compressor passes, kg/m³.</summary>
    private double Wanted(FuelDemandModel demand, Atmosphere atmosphere, double volumetricEfficiency) =>
        DisplacementCompressor.ChargeDensity<Real>(
            StandardAir.Density<Real>(atmosphere.Pascals, atmosphere.Kelvins),
            _efficiency,
            _displacement,
            DriveRatio,
            demand.Engine.RevolutionsPerCycle,
            volumetricEfficiency,
            demand.Constants.Displacement);

    /// <summary>
    /// What the compressor passes beyond what the engine draws, as a share, against boost in units of ambient pressure. It falls: compressed air
    /// warms by less than in proportion to its pressure at any efficiency over (γ − 1)/γ, 29 %, and the library's compressors have 30 % or more.
    /// </summary>
    private readonly struct Surplus(in DemandConstants<Real> engine, double ambient, double kelvins, double wanted) : IFalling
    {
        private readonly DemandConstants<Real> _engine = engine;

        public static double Density(in DemandConstants<Real> engine, double boost, double ambient, double kelvins)
        {
            ChargeState<Real> charge = DemandChain.Charge<Real>(engine, boost, ambient, kelvins);
            return StandardAir.Density(charge.ManifoldAbsolute, charge.ChargeTemperature);
        }

        public double At(double x) => (wanted / Density(_engine, x * ambient, ambient, kelvins)) - 1;
    }
}
