using FuelSizing.Engines;

namespace FuelSizing.Systems;

/// <summary>The speeds at which something about an engine has a kink.</summary>
internal static class SpeedKnots
{
    /// <summary>Speeds strictly between two others at which a table of the engine has a point, rev/min.</summary>
    public static IEnumerable<double> Between(FuelDemandModel demand, double from, double to) =>
        demand.VolumetricEfficiency.BySpeed.Points.Concat(demand.MeasuredPower.BySpeed.Points)
            .Select(point => point.X * 60)
            .Where(speed => speed > from && speed < to);
}
