using FuelSizing.Equations;
using FuelSizing.Quantities;

namespace FuelSizing.Injectors;

/// <summary>Dead time against differential pressure at one voltage, for points side by side.</summary>
/// <param name="Differentials">Rising, Pa; empty where the table holds at all pressures.</param>
/// <param name="Times">At each of them, s; one where there are none.</param>
internal sealed record DeadTimeRow(double[] Differentials, double[] Times)
{
    /// <summary>Dead times, s; not a number where the table does not cover the pressure.</summary>
    /// <param name="differential">Pa; a whole number of vectors.</param>
    /// <param name="into">Where to write them.</param>
    public void At<T>(ReadOnlySpan<double> differential, Span<double> into)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (Differentials.Length == 0)
        {
            into.Fill(Times[0]);
            return;
        }

        ReadOnlySpan<double> pressures = Differentials;
        ReadOnlySpan<double> times = Times;
        T least = pressures[0];
        T most = pressures[^1];
        double beyond = Curve.EndTolerance * (pressures[^1] - pressures[0]);
        T under = pressures[0] - beyond;
        T over = pressures[^1] + beyond;
        T none = double.NaN;
        for (int at = 0; at < differential.Length; at += T.Count)
        {
            T given = T.From(differential[at..]);
            T time = PiecewiseLine.Of(pressures, times, T.Min(most, T.Max(least, given)));
            T.IfLess(over, given, none, T.IfLess(given, under, none, time)).CopyTo(into[at..]);
        }
    }
}
