using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The pressure past which a fixed pulse delivers less.</summary>
internal static class TurnOver
{
    /// <summary>Pressure across the injector at which a pulse delivers most; none within the table of dead times.</summary>
    /// <param name="injector">With its dead times, and the flows measured over pressure if there are any.</param>
    /// <param name="volts">At the injector.</param>
    /// <param name="pulse">Commanded, s.</param>
    public static Pressure? Of(Injector injector, double volts, double pulse)
    {
        if (injector.DeadTime.RowAt(volts)?.Curve is not { } row)
        {
            return null;
        }

        // Between two rows the dead time is straight: t − t_d falls and 2 Δp · t_d′ grows, so that they meet once, or at the kink itself. A
        // measured flow is a kink too. The first place counts past which less is delivered.
        (double first, double last) = (row.First, row.Last);
        double[] knots =
        [
            .. row.Points.Select(point => point.X)
                .Concat(injector.MeasuredFlows.Select(point => point.Differential.Pascals).Where(pascals => pascals > first && pascals < last))
                .Distinct()
                .Order(),
        ];
        for (int piece = 1; piece < knots.Length; piece++)
        {
            (double lower, double upper) = (knots[piece - 1], knots[piece]);
            (double before, double after) = (row.At(lower), row.At(upper));
            double slope = StraightLine.Slope<Real>(lower, before, upper, after);
            double rating = injector.RatingSlopeAbove(lower);
            double Left(double pascals, double deadTime) => pulse - deadTime - (Real)DeliveredFuel.TurnOverOpenTime<Real>(
                pascals, slope, injector.RatingAt<Real>(pascals), rating);
            (double from, double to) = (Left(lower, before), Left(upper, after));
            if (from <= 0)
            {
                // Before the table's first row nothing is known.
                return piece > 1 || from.Equals(0) ? Pressure.FromPascals(lower) : null;
            }

            if (to <= 0)
            {
                double turn = rating.Equals(0)
                    ? StraightLine.Through<Real>(from, lower, to, upper, 0)
                    : lower + ((upper - lower) * Bracket.Of(
                        share => Left(lower + ((upper - lower) * share), before + ((after - before) * share)) / pulse, 0, 1));
                return Pressure.FromPascals(turn);
            }
        }

        return null;
    }
}
