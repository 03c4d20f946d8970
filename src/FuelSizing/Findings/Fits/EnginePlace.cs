using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Findings;

/// <summary>A place of the engine's map, as far as what the plan does not know depends on it.</summary>
/// <param name="Speed">rev/s.</param>
/// <param name="Boost">Gauge, Pa.</param>
/// <param name="AirByTemperature">What the charge's temperature takes of the air, 1/K.</param>
/// <param name="InjectedShare">Of what returns with nothing injected, the share that is injected.</param>
internal readonly record struct EnginePlace(double Speed, double Boost, double AirByTemperature, double InjectedShare)
{
    /// <summary>Share of the run's highest boost from which a point is at full load.</summary>
    private const double Loaded = 0.8;

    /// <summary>An engine at full throttle without boost may seem to have a little, by scatter, Pa.</summary>
    private const double Barometric = 5e3;

    /// <summary>The middle of the run's points at full load; of a run without boost that is where the throttle is open.</summary>
    public static EnginePlace FullLoad(RunCheck check, RunModel model)
    {
        double most = model.Inputs.Select(input => input.Boost).DefaultIfEmpty(0).Max();
        PointInput[] loaded = [.. model.Inputs.Where(input => input.FullLoad && (most < Barometric || input.Boost >= Loaded * most))];
        return loaded.Length == 0
            ? new(check.Plan.Demand.VolumetricEfficiency.BySpeed.Last, 0, 0, 0)
            : new(
                loaded.Average(input => input.Speed),
                loaded.Average(input => input.Boost),
                loaded.Average(input => input.AirByTemperature),
                loaded.Average(input => input.InjectedShare));
    }

    /// <summary>An operating point of a stage.</summary>
    public static EnginePlace Point(RunCheck check, FuelSystem stage, OperatingPoint point)
    {
        FuelDemand demand = stage.Demand.At(point.Speed, point.Boost, point.Conditions.Atmosphere);
        double density = stage.Demand.Consumption.Fuel.DensityAtKelvins(check.FuelKelvins);
        double flow = FuelDemandFlow.Volume<Real>(demand.MassFlow.KilogramsPerSecond, density);
        return new(
            point.Speed.RevolutionsPerSecond, point.Boost.Pascals, -1 / demand.ChargeTemperature.Kelvins, check.InjectedShare(flow));
    }
}
