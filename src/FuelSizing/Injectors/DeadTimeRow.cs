using System.Runtime.CompilerServices;
using FuelSizing.Numerics;

namespace FuelSizing.Injectors;

/// <summary>Dead time against differential pressure at one voltage, for points side by side.</summary>
/// <param name="Curve">Against differential pressure in Pa; null where the table holds at all pressures.</param>
/// <param name="Time">At all pressures where there is no curve, s.</param>
internal sealed record DeadTimeRow(Curve? Curve, double Time)
{
    /// <summary>Dead times, s; not a number where the table does not cover the pressure.</summary>
    /// <param name="differential">Pa; a whole number of vectors.</param>
    /// <param name="into">Where to write them.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At<T>(ReadOnlySpan<double> differential, Span<double> into)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (Curve is null)
        {
            into.Fill(Time);
            return;
        }

        Curve.At<T>(differential, into);
        double beyond = Curve.EndTolerance * (Curve.Last - Curve.First);
        T under = Curve.First - beyond;
        T over = Curve.Last + beyond;
        T none = double.NaN;
        for (int at = 0; at < differential.Length; at += T.Count)
        {
            T given = T.From(differential[at..]);
            T.IfLess(over, given, none, T.IfLess(given, under, none, T.From(into[at..]))).CopyTo(into[at..]);
        }
    }
}
