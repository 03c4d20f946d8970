using CsCheck;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>Each number type against plain doubles, operation by operation and lane by lane.</summary>
public class WidthTests
{
    private static readonly Gen<double> Number =
        Gen.OneOf(Gen.Double[-10, 10], Gen.Double[-1e9, 1e9], Gen.Int[-3, 3].Select(whole => (double)whole));

    [Fact]
    public void Eight_OfAnything_AreEightDoubles() => Check<Lanes>();

    [Fact]
    public void Four_OfAnything_AreFourDoubles() => Check<FourLanes>();

    [Fact]
    public void Two_OfAnything_AreTwoDoubles() => Check<TwoLanes>();

    [Fact]
    public void One_OfAnything_IsADouble() => Check<Real>();

    [Fact]
    public void AllWithin_IsOnlyTrueIfEachIs()
    {
        AllWithin<Lanes>();
        AllWithin<FourLanes>();
        AllWithin<TwoLanes>();
        AllWithin<Real>();
    }

    /// <summary>Every number is its fraction of √½ to √2 times two to its power.</summary>
    [Fact]
    public void Fraction_AndPower_MakeTheNumber()
    {
        Fraction<Lanes>();
        Fraction<FourLanes>();
        Fraction<TwoLanes>();
        Fraction<Real>();
    }

    /// <summary>Each lane reads the place that its own rank says.</summary>
    [Fact]
    public void Rank_AndPick_ReadEachLanesOwnPlace()
    {
        RankAndPick<Lanes>();
        RankAndPick<FourLanes>();
        RankAndPick<TwoLanes>();
        RankAndPick<Real>();
    }

    private static void RankAndPick<T>()
        where T : struct, ILanes<T>, IReal<T> =>
        Gen.Select(Gen.Int[0, 15], Gen.Int[-1, 16].Array[T.Count]).Sample((count, places) =>
        {
            double[] rising = [.. Enumerable.Range(1, count).Select(place => (double)place)];
            double[] column = [.. Enumerable.Range(0, 16).Select(place => 100.0 + place)];
            double[] picked = new double[T.Count];
            T rank = T.Rank(rising, T.From([.. places.Select(place => place + (0.5 * (place & 1)))]));
            T.Pick(in column[0], rank, count < 8).CopyTo(picked);
            for (int lane = 0; lane < T.Count; lane++)
            {
                Assert.Equal(100 + Math.Clamp(places[lane], 0, count), picked[lane]);
            }
        });

    private static void Check<T>()
        where T : struct, ILanes<T>, IReal<T> =>
        Gen.Select(Number.Array[T.Count], Number.Array[T.Count], Number.Array[T.Count]).Sample((a, b, c) =>
        {
            (T x, T y, T z) = (T.From(a), T.From(b), T.From(c));
            Same(x + y, i => a[i] + b[i]);
            Same(x - y, i => a[i] - b[i]);
            Same(x * y, i => a[i] * b[i]);
            Same(x / y, i => a[i] / b[i]);
            Same(T.Divide(x, 4, 0.25), i => a[i] / 4);
            Same(T.MultiplyAdd(x, y, z), i => Math.FusedMultiplyAdd(a[i], b[i], c[i]));
            Same(T.Sqrt(x * x), i => Math.Sqrt(a[i] * a[i]));
            Same(T.Min(x, y), i => Math.Min(a[i], b[i]));
            Same(T.Max(x, y), i => Math.Max(a[i], b[i]));
            Same(T.IfLess(x, y, z, x), i => a[i] < b[i] ? c[i] : a[i]);
            Same(T.IfLess(x, x, z, y), i => b[i]);
            Same(2.5, _ => 2.5);

            void Same(T actual, Func<int, double> expected)
            {
                double[] numbers = new double[T.Count];
                actual.CopyTo(numbers);
                for (int lane = 0; lane < T.Count; lane++)
                {
                    Assert.Equal(expected(lane), numbers[lane]);
                }
            }
        });

    private static void AllWithin<T>()
        where T : struct, ILanes<T>, IReal<T>
    {
        double[] numbers = new double[T.Count];
        Array.Fill(numbers, 1);
        Assert.True(T.AllWithin(T.From(numbers), 1, 1));
        for (int lane = 0; lane < T.Count; lane++)
        {
            foreach ((double number, bool within) in new[] { (0.0, true), (2, true), (-1e-9, false), (2.000001, false), (double.NaN, false) })
            {
                double[] one = [.. numbers];
                one[lane] = number;
                Assert.Equal(within, T.AllWithin(T.From(one), 0, 2));
            }
        }
    }

    private static void Fraction<T>()
        where T : struct, ILanes<T>, IReal<T> =>
        Gen.Select(Gen.Double[1, 2], Gen.Int[-1000, 1000], Math.ScaleB).Array[T.Count].Sample(values =>
        {
            double[] fractions = new double[T.Count];
            double[] powers = new double[T.Count];
            T.Fraction(T.From(values), out T power).CopyTo(fractions);
            power.CopyTo(powers);
            for (int lane = 0; lane < T.Count; lane++)
            {
                Assert.InRange(fractions[lane], Math.Sqrt(0.5) * (1 - 1e-6), Math.Sqrt(2) * (1 + 1e-6));
                Assert.Equal(values[lane], Math.ScaleB(fractions[lane], (int)powers[lane]));
            }
        });
}
