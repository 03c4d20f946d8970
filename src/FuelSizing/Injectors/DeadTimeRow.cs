using FuelSizing.Equations;
using FuelSizing.Quantities;

namespace FuelSizing.Injectors;

/// <summary>Dead time against differential pressure at one voltage, for points side by side.</summary>
/// <param name="Differentials">Rising, Pa; empty where the table holds at all pressures.</param>
/// <param name="Times">At each of them, s; one where there are none.</param>
internal sealed record DeadTimeRow(double[] Differentials, double[] Times)
{
    /// <summary>Dead time, s; not a number where the table does not cover the pressure.</summary>
    /// <param name="differential">Pa.</param>
    public T At<T>(T differential)
        where T : struct, IReal<T>
    {
        double[] pressures = Differentials;
        double[] times = Times;
        if (pressures.Length == 0)
        {
            return times[0];
        }

        (double least, double most) = (pressures[0], pressures[^1]);
        T inside = T.Min(most, T.Max(least, differential));
        T x0 = least;
        T y0 = times[0];
        T x1 = pressures[1];
        T y1 = times[1];
        for (int next = 1; next + 1 < pressures.Length; next++)
        {
            // The row of the pressure belongs to the piece before it, as in the table.
            T from = pressures[next];
            T to = pressures[next + 1];
            x0 = T.IfLess(from, inside, from, x0);
            y0 = T.IfLess(from, inside, times[next], y0);
            x1 = T.IfLess(from, inside, to, x1);
            y1 = T.IfLess(from, inside, times[next + 1], y1);
        }

        T time = StraightLine.Through(x0, y0, x1, y1, inside);
        double beyond = Curve.EndTolerance * (most - least);
        time = T.IfLess(differential, least - beyond, double.NaN, time);
        return T.IfLess(most + beyond, differential, double.NaN, time);
    }
}
