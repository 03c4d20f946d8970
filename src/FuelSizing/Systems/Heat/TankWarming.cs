using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Asks how warm the fuel gets while an engine runs on at one operating point.</summary>
/// <remarks>
/// All that the pumps take of electrical power ends as heat in the fuel that returns, or leaves with the fuel that is injected; so does what the fuel takes up at the rail.
/// The tank warms up until its walls lose as much as comes back, the faster the less is in it.
/// </remarks>
public static class TankWarming
{
    /// <summary>Temperatures at the end of a run, and until when the fuel stays clear of boiling.</summary>
    /// <param name="system">The system, with a surge tank or without.</param>
    /// <param name="tank">Fuel in the main tank, heat at the rail, walls.</param>
    /// <param name="point">Speed, boost and conditions; the temperature of the tank there is that at the start of the run.</param>
    /// <param name="run">How long, 1 s to 24 h.</param>
    /// <returns>Upper bounds of the temperatures; what data does not cover is an answer with its reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The run is outside its range, or the engine's tables do not cover the point.</exception>
    /// <example>
    /// <code>
    /// TankHeat tank = TankHeat.Of(Volume.FromLiters(32), Power.FromWatts(150));
    /// HeatRun run = system.WarmTank(tank, point, Duration.FromMinutes(20));
    /// Console.WriteLine(run);
    /// </code>
    /// </example>
    public static HeatRun WarmTank(this FuelSystem system, TankHeat tank, OperatingPoint point, Duration run)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(point);
        Guard.Between(run, Duration.FromSeconds(1), Duration.FromHours(24), "Give the length of the run.", nameof(run));

        // A switched pump may still run as boost falls: of both states that which brings more heat, or whose heat is not known.
        return system.Solve(point).States
            .Select(state => new HeatRun(state, tank, run, FuelHeat.Of(state, tank, out Statement? gap), gap))
            .MaxBy(heat => heat.HeatToTank is { } watts && heat.Gap is null ? (double)watts.Watts : double.PositiveInfinity)!;
    }
}
