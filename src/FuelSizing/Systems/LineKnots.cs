using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>The speeds at which something about a system along its boost line has a kink.</summary>
internal static class LineKnots
{
    // Pieces between two knots of the line that are looked at for a crossing: a compressor's line rises or is flat between its knots.
    private const int Pieces = 32;

    /// <summary>Knots of engine, controller and line, and where the line crosses a boost at which something has a kink.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">Its boost line.</param>
    /// <param name="conditions">Air.</param>
    /// <param name="slowest">Lowest speed, rev/s.</param>
    /// <param name="fastest">Highest speed, rev/s.</param>
    /// <returns>Speeds, rev/s, in no order.</returns>
    public static IReadOnlyList<double> Of(FuelSystem system, BoostLine line, Conditions conditions, double slowest, double fastest)
    {
        List<double> knots = [.. SpeedKnots.Of(system).Concat(line.KnotsFor(system.Demand, conditions.Atmosphere)).Where(speed => speed > slowest && speed < fastest)];
        double[] across = [slowest, .. knots.Distinct().Order(), fastest];
        double[] speeds = [.. across.Zip(across.Skip(1), (from, to) => Enumerable.Range(0, Pieces).Select(piece => from + ((to - from) * piece / Pieces))).SelectMany(piece => piece), fastest];
        double[] boosts = Array.ConvertAll(speeds, At);
        foreach (double boost in BoostKnots.Of(system, conditions.Atmosphere.Pascals, boosts.Min(), boosts.Max()))
        {
            for (int piece = 1; piece < speeds.Length; piece++)
            {
                (double before, double after) = (boosts[piece - 1] - boost, boosts[piece] - boost);
                if (before * after < 0)
                {
                    (double from, double to) = (speeds[piece - 1], speeds[piece]);
                    double share = Bracket.Of(x => (At(from + ((to - from) * x)) - boost) / before, 0, 1);
                    knots.Add(from + ((to - from) * share));
                }
            }
        }

        return knots;

        double At(double speed) => line.PascalsAt(speed, system.Demand, conditions.Atmosphere);
    }
}
