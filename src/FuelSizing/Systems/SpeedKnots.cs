using FuelSizing.Engines;

namespace FuelSizing.Systems;

/// <summary>The speeds at which something about an engine has a kink.</summary>
internal static class SpeedKnots
{
    /// <summary>Speeds at which a table of the engine has a point, rev/s, in no order.</summary>
    public static IEnumerable<double> Of(FuelDemandModel demand) =>
        demand.VolumetricEfficiency.BySpeed.Points.Concat(demand.MeasuredPower.BySpeed.Points).Select(point => point.X)
            .Concat(demand.AlongSpeed?.Speeds ?? [])
            .Concat(demand.Law?.SpeedKinks.Select(speed => speed.RevolutionsPerSecond) ?? []);

    /// <summary>The same, and those of the controller's tables.</summary>
    public static IEnumerable<double> Of(FuelSystem system) => Of(system.Demand).Concat(system.Controller.SpeedKnots);
}
