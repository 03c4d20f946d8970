using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

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
        Assert.Contains("between 0 kPa and 750 kPa", error.Message, StringComparison.Ordinal);
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

    [Fact]
    public void Curve_OfNonsense_IsRefusedByName()
    {
        (Pressure, VolumeFlow)[] good =
            [(Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)), (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150))];
        Refused.Missing("points", () => PumpCurve.At("p", Wren.Volt(13.5), null!));
        Refused.Missing("points", () => PumpCurve.WithCurrent("p", Wren.Volt(13.5), null!));
        Refused.Missing("name", () => PumpCurve.At(null!, Wren.Volt(13.5), good));
        Refused.OutOfRange("voltage", () => PumpCurve.At("p", Wren.Volt(4.9), good));
        Refused.OutOfRange("points", () => PumpCurve.At("p", Wren.Volt(13.5), good[0]));
    }

    [Fact]
    public void Current_OfACurve_IsThePointsOrRefused()
    {
        PumpCurve wired = Wren.WiredCurve(13.5, 1);
        Assert.Equal(8, wired.CurrentAt(Wren.Kpa(400)).Amperes, 9);
        Assert.Equal(8, wired.Points[2].Current!.Value.Amperes, 9);
        Assert.Null(Wren.Pump.Points[2].Current);
        Refused.OutOfRange("pressureRise", () => wired.CurrentAt(Wren.Kpa(751)));
        Assert.Throws<InvalidOperationException>(() => Wren.Pump.CurrentAt(Wren.Kpa(400)));
        Assert.Equal(0, wired.MinimumPressure.Kilopascals, 9);
    }

    /// <summary>Two points of one flow are taken as falling by a billionth, so that a flow has one pressure.</summary>
    [Fact]
    public void Flow_TheSameAtTwoPressures_FallsByABillionth()
    {
        PumpCurve curve = PumpCurve.At(
            "flat",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(200)));
        Assert.Equal(200 * (1 - 1e-9), curve.FlowAt(Wren.Kpa(300)).LitersPerHour, 1e-10);
        Assert.Equal(200, curve.Points[1].Flow.LitersPerHour, 12);
    }
}
