using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The pressure past which a fixed pulse delivers less.</summary>
internal static class TurnOver
{
    /// <summary>Pressure across the injector at which a pulse delivers most; none within the table.</summary>
    /// <param name="table">Dead times.</param>
    /// <param name="volts">At the injector.</param>
    /// <param name="pulse">Commanded, s.</param>
    public static Pressure? Of(DeadTimeTable table, double volts, double pulse)
    {
        if (table.RowAt(volts)?.Curve is not { } row)
        {
            return null;
        }

        // Between two rows the dead time is straight: t − t_d falls and 2 Δp · t_d′ grows, so that they meet once, or at the kink itself.
        (double X, double Y)[] points = [.. row.Points];
        for (int piece = 1; piece < points.Length; piece++)
        {
            double slope = StraightLine.Slope<Real>(points[piece - 1].X, points[piece - 1].Y, points[piece].X, points[piece].Y);
            if (Left(points[piece - 1], slope, pulse) <= 0)
            {
                // Before the table's first row nothing is known.
                return piece > 1 || Left(points[0], slope, pulse).Equals(0) ? Pressure.FromPascals(points[piece - 1].X) : null;
            }

            (double from, double to) = (Left(points[piece - 1], slope, pulse), Left(points[piece], slope, pulse));
            if (to <= 0)
            {
                double turn = StraightLine.Through<Real>(from, points[piece - 1].X, to, points[piece].X, 0);
                return Pressure.FromPascals(turn);
            }
        }

        return null;
    }

    private static double Left((double Pascals, double DeadTime) at, double slope, double pulse) =>
        pulse - at.DeadTime - (Real)DeliveredFuel.TurnOverOpenTime<Real>(at.Pascals, slope);
}
