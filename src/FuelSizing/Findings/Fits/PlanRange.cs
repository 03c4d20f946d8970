using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Systems;

namespace FuelSizing.Findings;

/// <summary>Speeds and manifold pressures at which a plan's tables hold.</summary>
internal sealed class PlanRange
{
    // An engine without compressor at full throttle may seem to have a little boost, by scatter.
    private const double Barometric = 5e3;

    private readonly bool _compressed;
    private readonly double _minimum;
    private readonly double _maximum;

    /// <summary>The range of a plan.</summary>
    public PlanRange(FuelSystem plan)
    {
        FuelDemandModel demand = plan.Demand;
        _compressed = demand.Induction.Drive != CompressorDrive.None;
        Curve[] tables = [demand.VolumetricEfficiency.BySpeed, demand.MeasuredPower.BySpeed, .. demand.AlongSpeed is { } table ? [table.Any] : (Curve[])[]];
        _minimum = tables.Max(table => table.First);
        _maximum = Math.Min(demand.Engine.SpeedLimit.RevolutionsPerSecond, tables.Min(table => table.Last));
    }

    /// <summary>True where the tables hold; false for what is not a number.</summary>
    public bool Covers(double speed, double boost, double ambient) =>
        speed >= _minimum && speed <= _maximum
        && boost >= ManifoldPressure.Minimum.Pascals && boost <= ManifoldPressure.Maximum.Pascals
        && boost + ambient >= ManifoldPressure.MinimumAbsolute.Pascals && (_compressed || boost <= Barometric);

    /// <summary>The boost to calculate with: without a compressor none that is only scatter.</summary>
    public double Computed(double boost) => _compressed ? boost : Math.Min(boost, 0);
}
