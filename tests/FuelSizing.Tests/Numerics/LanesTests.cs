using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

public class LanesTests
{
    /// <summary>Exponential and logarithm come from different code in the two number types; both claim an ulp or two.</summary>
    private const double Tolerance = 1e-14;

    private static readonly Gen<double> Positive = Gen.Double[1e-6, 1e6];

    [Fact]
    public void Arithmetic_OfBothNumberTypes_IsTheSame() =>
        Gen.Select(Positive, Positive).Sample((a, b) =>
        {
            Same(a + b, (Lanes)a + b);
            Same(a - b, (Lanes)a - b);
            Same(a * b, (Lanes)a * b);
            Same(a / b, (Lanes)a / b);
            Same(Math.Sqrt(a), Lanes.Sqrt(a));
            Same(Math.Min(a, b), Lanes.Min(a, b));
            Same(Math.Max(a, b), Lanes.Max(a, b));
            Same(a < b ? 1 : 2, Lanes.IfLess(a, b, 1, 2));
            Same(Math.Log(a), Lanes.Log(a));
            Same(Math.Exp(a / 1e6), Lanes.Exp((Lanes)a / 1e6));
        });

    [Fact]
    public void Lanes_ReadAndWritten_KeepTheirOrder()
    {
        double[] numbers = [1, 2, 3, 4, 5, 6, 7, 8];
        double[] back = new double[Lanes.Count];
        (Lanes.From(numbers) * 2).CopyTo(back);
        Assert.Equal(numbers.Select(n => 2 * n), back);
    }

    [Fact]
    public void DemandChain_InABatch_GivesWhatItGivesAlone() =>
        Points.Array[Lanes.Count].Sample(points =>
        {
            DemandState<Lanes> batch = DemandChain.Evaluate(
                Engine<Lanes>(),
                new DemandInput<Lanes>(
                    Column(points, p => p.Speed),
                    Column(points, p => p.Boost),
                    Column(points, p => p.Ambient),
                    288.15,
                    Column(points, p => p.Efficiency),
                    Column(points, p => p.Power)));
            for (int i = 0; i < points.Length; i++)
            {
                (double speed, double boost, double ambient, double efficiency, double power) = points[i];
                DemandState<Real> alone = DemandChain.Evaluate(
                    Engine<Real>(), new DemandInput<Real>(speed, boost, ambient, 288.15, efficiency, power));
                Close(alone.ChargeTemperature, batch.ChargeTemperature, i);
                Close(alone.AirMassFlow, batch.AirMassFlow, i);
                Close(alone.FromAir, batch.FromAir, i);

                // Brake power is a small difference of large indicated and friction power: the error is of their size.
                Close(alone.BrakePower, batch.BrakePower, i, 5 * power);
                Close(alone.FromPower, batch.FromPower, i, 5 * power * 9e-8);
            }
        });

    [Fact]
    public void InjectionChain_InABatch_GivesWhatItGivesAlone() =>
        Gen.Select(Gen.Double[10, 200], Gen.Double[-1e5, 8e5], Gen.Double[1e-6, 1e-4]).Array[Lanes.Count].Sample(points =>
        {
            InjectionState<Lanes> batch = InjectionChain.Evaluate(
                new InjectionConstants<Lanes>(6e-6, 3e5, 684, 4, 1, 2),
                new InjectionInput<Lanes>(
                    Column(points, p => p.Item1), Column(points, p => p.Item2), 1e-3, Column(points, p => p.Item3), 745));
            for (int i = 0; i < points.Length; i++)
            {
                InjectionState<Real> alone = InjectionChain.Evaluate(
                    new InjectionConstants<Real>(6e-6, 3e5, 684, 4, 1, 2),
                    new InjectionInput<Real>(points[i].Item1, points[i].Item2, 1e-3, points[i].Item3, 745));
                Close(alone.StaticFlow, batch.StaticFlow, i);
                Close(alone.DutyCycle, batch.DutyCycle, i);
            }
        });

    /// <summary>From rest through transition to turbulence, with the lanes in different regimes.</summary>
    [Fact]
    public void PipeLoss_InABatch_GivesWhatItGivesAlone() =>
        Gen.Select(Gen.Frequency((1, Gen.Const(0.0)), (9, Gen.Double[0, 1e-3])), Gen.Double[0.002, 0.03], Gen.Double[0, 0.05])
            .Array[Lanes.Count].Sample(points =>
            {
                PipeState<Lanes> batch = PipeLoss.Evaluate(
                    new PipeConstants<Lanes>(Column(points, p => p.Item2), 4, Column(points, p => p.Item3), 3),
                    Column(points, p => p.Item1),
                    745,
                    0.55e-6);
                for (int i = 0; i < points.Length; i++)
                {
                    PipeState<Real> alone = PipeLoss.Evaluate<Real>(
                        new PipeConstants<Real>(points[i].Item2, 4, points[i].Item3, 3), points[i].Item1, 745, 0.55e-6);
                    Close(alone.Reynolds, batch.Reynolds, i);
                    Close(alone.FrictionNumber, batch.FrictionNumber, i);
                    Close(alone.FrictionLoss, batch.FrictionLoss, i);
                }
            });

    private static Gen<(double Speed, double Boost, double Ambient, double Efficiency, double Power)> Points =>
        Gen.Select(
            Gen.Double[10, 200],
            Gen.Double[-5e4, 2e5],
            Gen.Double[7e4, 1.05e5],
            Gen.Double[0.5, 1.2],
            Gen.Double[1e4, 3e5]);

    private static DemandConstants<T> Engine<T>()
        where T : struct, IReal<T> =>
        new(2.4e-3, 2, 0.72, 0.7, 5e3, 1, 0.95, 1.225, 2e4, 110, 9e-8, 0.82 * 14.6, 0);

    private static Lanes Column<TPoint>(TPoint[] points, Func<TPoint, double> value) =>
        Lanes.From(Array.ConvertAll(points, point => value(point)));

    private static void Same(double expected, Lanes actual)
    {
        for (int lane = 0; lane < Lanes.Count; lane++)
        {
            Close(expected, actual, lane);
        }
    }

    private static void Close(double expected, Lanes actual, int lane, double? scale = null)
    {
        double[] numbers = new double[Lanes.Count];
        actual.CopyTo(numbers);
        Assert.True(
            expected.Equals(numbers[lane])
                || Math.Abs(numbers[lane] - expected) <= Tolerance * (scale ?? Math.Abs(expected)),
            $"{expected:R} alone, {numbers[lane]:R} in lane {lane}");
    }
}
