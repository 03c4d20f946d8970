using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

using Pressure = UnitsNet.Pressure;

public class PumpCurveTests
{
    [Fact]
    public void Flow_AtAGivenPoint_IsThePoints() =>
        Assert.Equal(140, Wren.Pump.FlowAt(Wren.Kpa(400)).LitersPerHour, 9);

    /// <summary>
    /// A shape-preserving cubic never leaves the box of its two neighbours (Fritsch and Carlson, SIAM J. Numer. Anal. 17
    /// (1980) 238), for any curve that falls.
    /// </summary>
    [Fact]
    public void Flow_BetweenPointsOfAnyFallingCurve_StaysBetweenThem() =>
        Gen.Select(Gen.Double[1, 100].Array[4, 8], Gen.Double[0, 40].Array[8], Gen.Double[0, 1]).Sample((steps, drops, share) =>
        {
            (Pressure, VolumeFlow)[] points = new (Pressure, VolumeFlow)[steps.Length];
            double pressure = 0;
            double flow = 400;
            for (int i = 0; i < steps.Length; i++)
            {
                points[i] = (Pressure.FromKilopascals(pressure), VolumeFlow.FromLitersPerHour(flow));
                pressure += steps[i];
                flow -= drops[i];
            }

            PumpCurve pump = PumpCurve.At("any", Wren.Volt(13.5), points);
            for (int i = 1; i < points.Length; i++)
            {
                double at = points[i - 1].Item1.Kilopascals
                    + (share * (points[i].Item1.Kilopascals - points[i - 1].Item1.Kilopascals));
                double between = pump.FlowAt(Pressure.FromKilopascals(at)).LitersPerHour;

                // Equal neighbours are read as falling by a billionth each.
                Assert.InRange(
                    between, points[i].Item2.LitersPerHour - 1e-5, points[i - 1].Item2.LitersPerHour + 1e-6);
            }
        });

    [Fact]
    public void Flow_BeyondTheCurve_IsRefused()
    {
        ArgumentOutOfRangeException error =
            Assert.Throws<ArgumentOutOfRangeException>(() => Wren.Pump.FlowAt(Wren.Kpa(800)));
        Assert.Contains("800 kPa", error.Message, StringComparison.Ordinal);
        Assert.Contains("0 kPa to 750 kPa", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Deadhead_OfACurveThatEndsAtNoFlow_IsItsEnd()
    {
        Assert.Equal(750, Wren.Pump.Deadhead!.Value.Kilopascals, 9);
        Assert.Null(PumpCurve.At(
            "short",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150))).Deadhead);
    }

    [Fact]
    public void Curve_ThatRises_IsRefused() =>
        Assert.Contains(
            "no more at a higher pressure",
            Assert.Throws<ArgumentOutOfRangeException>(() => PumpCurve.At(
                "rising",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(100)),
                (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150)))).Message,
            StringComparison.Ordinal);
}
