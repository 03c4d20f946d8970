using FuelSizing.Electrical;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>
/// One pump at a voltage, by hand. Its curves are straight lines through two points, so that every figure can be calculated in the
/// head: Q = Q0 (1 − p/p0). Carried to s times the voltage Q0 becomes s Q0, p0 becomes s² p0, and the current s² times as much.
/// </summary>
public class RunningPumpTests
{
    // 200 L/h against nothing, none against 800 kPa.
    private static readonly PumpCurve Straight = Line("straight", 12, (0, 200), (800, 0));

    // Ends at half of that flow and pressure: an open end.
    private static readonly PumpCurve Open = Line("open", 12, (0, 200), (400, 100));

    // Begins at 200 kPa.
    private static readonly PumpCurve Late = Line("late", 14, (200, 180), (600, 0));

    // As the first, and draws 4 A against nothing, 12 A against 800 kPa: 8 A halfway.
    private static readonly PumpCurve Wired = PumpCurve.WithCurrent(
        "wired",
        Wren.Volt(12),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200), ElectricCurrent.FromAmperes(4)),
        (Wren.Kpa(800), VolumeFlow.Zero, ElectricCurrent.FromAmperes(12)));

    /// <summary>
    /// At 9.6 V, s = 0.8, the 8 A of 400 kPa are 5.12 A at 256 kPa and 80 L/h; 0.1 Ω takes 0.512 V, so the supply has 10.112 V.
    /// </summary>
    [Fact]
    public void WiredPump_BelowItsVoltage_DrawsAndDeliversByTheAffinityLaws()
    {
        RunningPumps running = Pump.Of([Wired], feed: Ohms(0.1)).Running(10.112);
        Assert.Equal(80, Litres(running.FlowAt(256e3)), 1e-9);
        Assert.Equal(256e3, running.RiseAt(80 / 3.6e6), 1e-4);
        PumpPoint point = At(running, 80, 256e3);
        Assert.Equal(9.6, point.Voltage, 1e-12);
        Assert.Equal(5.12, point.Current!.Value, 1e-12);
        Assert.Equal(PumpCoverage.Scaled, point.Coverage);
        Assert.Equal((80 / 3.6e6, 256e3), (point.Flow, point.Rise));
    }

    /// <summary>Over 12 V the curve stays as it is: 8 A at 400 kPa through 50 mΩ leave 13.6 V of 14 V, and 100 L/h.</summary>
    [Fact]
    public void WiredPump_AboveItsVoltage_HasTheSupplyLessAStraightDrop()
    {
        Pump pump = Pump.Of([Wired], feed: Ohms(0.05));
        PumpPoint point = At(pump.Running(14), 100, 400e3);
        Assert.Equal(13.6, point.Voltage, 1e-12);
        Assert.Equal(8, point.Current!.Value, 1e-12);
        Assert.Equal(PumpCoverage.VoltageAbove, point.Coverage);
        Assert.Equal(100, Litres(pump.Running(14).FlowAt(400e3)), 1e-9);
        Assert.Equal(200, Litres(pump.Running(14).FreeFlow), 1e-9);
        Assert.Equal(800e3, pump.Running(14).Deadhead, 1e-3);
        for (double rise = 0; rise <= 800e3; rise += 100e3)
        {
            // 4 A and 1 A for each 100 kPa.
            Assert.Equal(14 - (0.05 * (4 + (rise / 1e5))), pump.MotorVoltage(rise, 14), 1e-12);
        }
    }

    /// <summary>
    /// At 9.6 V the deadhead is 0.64 × 800 = 512 kPa and the current there 0.64 × 12 = 7.68 A: the supply has 10.368 V. Against
    /// nothing, V + 0.1 × 4 (V/12)² = 10.368 V, a square equation: V = 180 (√1.1152 − 1).
    /// </summary>
    [Fact]
    public void WiredPump_AtItsEnds_HasTheCurvesEndsAtTheMotorsVoltageThere()
    {
        RunningPumps running = Pump.Of([Wired], feed: Ohms(0.1)).Running(10.368);
        Assert.Equal(512e3, running.Deadhead, 1e-3);
        Assert.Equal(0, running.FlowAt(512_001));
        Assert.True(running.FlowAt(511_999) > 0);
        Assert.Equal(200.0 / 12 * 180 * (Math.Sqrt(1.1152) - 1), Litres(running.FreeFlow), 1e-9);
        Assert.Equal(0, running.RiseAt(running.FreeFlow));
        Assert.Equal(512e3, running.RiseAt(0), 1e-3);
    }

    /// <summary>The same pump measured to 400 kPa only; at 10.112 V its curve ends at 256 kPa, still delivering 80 L/h.</summary>
    [Fact]
    public void WiredPump_WithAnOpenEnd_EndsAtTheMotorsVoltageOrGoesOn()
    {
        Pump pump = Pump.Of(
            [
                PumpCurve.WithCurrent(
                    "wired, open",
                    Wren.Volt(12),
                    (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200), ElectricCurrent.FromAmperes(4)),
                    (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(100), ElectricCurrent.FromAmperes(8))),
            ],
            feed: Ohms(0.1));
        Assert.Equal(10.112, pump.Bounds(10.112).Supply);
        RunningPumps estimate = pump.Bounds(10.112).Estimate;
        RunningPumps beyond = pump.Running(10.112, PumpReading.EstimateBeyondEnd);
        Assert.Equal(256e3, estimate.Deadhead, 1e-3);
        Assert.Equal(0, estimate.FlowAt(257e3));

        // Past the last point the current stays that of the last point, and so does the flow.
        Assert.Equal(80, Litres(beyond.FlowAt(257e3)), 1e-9);
        Assert.Equal(80, Litres(beyond.FlowAt(2e6)), 1e-9);
        Assert.True(beyond.Deadhead > 2e6);
        Assert.True(beyond.RiseAt(79 / 3.6e6) > 2e6);
        Assert.Equal(PumpCoverage.Scaled | PumpCoverage.PressureAbove, At(estimate, 79, 256e3).Coverage);
        Assert.Equal(PumpCoverage.PressureAbove, estimate.UncoveredAt(79 / 3.6e6, 256e3, ends: true));
        Assert.Equal(PumpCoverage.Measured, estimate.UncoveredAt(79 / 3.6e6, 256e3, ends: false));
    }

    /// <summary>
    /// At 9 V the motor of the 12 V curve turns at 9/12 of its speed if it loses nothing in its winding, and at (9/12 − 1/2)/(1/2) = 1/2 if
    /// it loses half. Half speed: 100 L/h, none against 200 kPa; 50 L/h against 100 kPa. The most is the 12 V curve itself.
    /// </summary>
    [Fact]
    public void Pump_BelowItsVoltage_LiesBetweenTheSlowestMotorAndItsCurve()
    {
        PumpBounds bounds = Pump.From(Straight).Bounds(9);
        Assert.Equal(50, Litres(bounds.Lower.FlowAt(100e3)), 1e-9);
        Assert.Equal(100e3, bounds.Lower.RiseAt(50 / 3.6e6), 1e-3);
        Assert.Equal(200e3, bounds.Lower.Deadhead, 1e-3);
        Assert.Equal(175, Litres(bounds.Upper.FlowAt(100e3)), 1e-9);
        Assert.Equal(800e3, bounds.Upper.Deadhead, 1e-3);
        Assert.InRange(bounds.Estimate.FlowAt(100e3), bounds.Lower.FlowAt(100e3), bounds.Upper.FlowAt(100e3));
    }

    /// <summary>
    /// At 15 V it turns at (15/12 − 1/2)/(1/2) = 1.5 times its speed at the most: 300 L/h, none against 1,800 kPa. The least is the 12 V
    /// curve itself, and so is the estimate.
    /// </summary>
    [Fact]
    public void Pump_AboveItsVoltage_LiesBetweenItsCurveAndTheFastestMotor()
    {
        PumpBounds bounds = Pump.From(Straight).Bounds(15);
        Assert.Equal(100, Litres(bounds.Lower.FlowAt(400e3)), 1e-9);
        Assert.Equal(100, Litres(bounds.Estimate.FlowAt(400e3)), 1e-9);
        Assert.Equal(300, Litres(bounds.Upper.FreeFlow), 1e-9);
        Assert.Equal(1800e3, bounds.Upper.Deadhead, 1e-3);
        Assert.Equal(300 * (1 - (400.0 / 1800)), Litres(bounds.Upper.FlowAt(400e3)), 1e-9);
    }

    /// <summary>
    /// The wired pump at 15 V through 0.05 Ω, against 400 kPa: at the least its 8 A, which leave 14.6 V. At the most the motor has those 14.6 V,
    /// turns 2 × 14.6/12 − 1 = 1.4333 times as fast, and draws 1.4333² × (4 + 8 × 400/(800 × 1.4333²)) = 8.2178 + 4 A.
    /// </summary>
    [Fact]
    public void Current_AboveTheVoltage_LiesBetweenTheCurveAndTheFastestMotor()
    {
        Pump pump = Pump.Of([Wired], feed: Ohms(0.05));
        PumpPoint upper = At(pump.Running(15, PumpReading.Upper), 100, 400e3);
        Assert.Equal(14.6, upper.Voltage, 1e-12);
        Assert.Equal(8, upper.MinimumCurrent!.Value, 1e-12);
        Assert.Equal((4 * Math.Pow((2 * 14.6 / 12) - 1, 2)) + 4, upper.MaximumCurrent!.Value, 1e-12);
    }

    /// <summary>Where the supply is measured, the three readings are one.</summary>
    [Fact]
    public void Bounds_AtAMeasuredVoltage_AreOneAnswer()
    {
        PumpBounds bounds = Pump.From(Straight).Bounds(12);
        Assert.Same(bounds.Estimate, bounds.Lower);
        Assert.Same(bounds.Estimate, bounds.Upper);
        Assert.NotSame(bounds.Estimate, Pump.From(Straight).Bounds(11.9).Lower);
        Assert.NotSame(bounds.Estimate, Pump.From(Straight).Bounds(12.1).Upper);
    }

    /// <summary>Current was measured from 200 to 600 kPa: 5 A and 9 A; nearer to nothing and beyond it is taken as at the end.</summary>
    [Theory]
    [InlineData(100, 5)]
    [InlineData(200, 5)]
    [InlineData(400, 7)]
    [InlineData(600, 9)]
    [InlineData(700, 9)]
    public void Current_BeyondItsPoints_IsThatOfTheNearest(double kilopascals, double amperes)
    {
        Pump pump = Pump.From(PumpCurve.WithCurrent(
            "late",
            Wren.Volt(12),
            (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(180), ElectricCurrent.FromAmperes(5)),
            (Wren.Kpa(600), VolumeFlow.Zero, ElectricCurrent.FromAmperes(9))));
        Assert.Equal(amperes, pump.CurrentAtMotor(kilopascals * 1000, 12)!.Value, 1e-12);
    }

    /// <summary>
    /// 170 L/h and 640 kPa at 12 V, 200 L/h and 810 kPa at 13.5 V; 12.75 V is midway, 17/16 of the one, 17/18 of the other. 289 kPa
    /// are 256 kPa of the lower and 324 kPa of the upper, 0.4 of either's deadhead: 0.6 × 170 × 17/16 = 108.375 and
    /// 0.6 × 200 × 17/18 = 113.333; the mean is 110.854 L/h. Both deadheads meet at 722.5 kPa.
    /// </summary>
    [Fact]
    public void Flow_MidwayBetweenTwoVoltages_IsTheMeanOfBothCarriedCurves()
    {
        RunningPumps running =
            Pump.Of([Line("pair", 12, (0, 170), (640, 0)), Line("pair", 13.5, (0, 200), (810, 0))]).Running(12.75);
        double expected = (108.375 + (340.0 / 3)) / 2;
        Assert.Equal(expected, Litres(running.FlowAt(289e3)), 1e-9);
        Assert.Equal(289e3, running.RiseAt(expected / 3.6e6), 1e-3);
        Assert.Equal(722.5e3, running.Deadhead, 1e-6);
    }

    /// <summary>
    /// 4 A at 12 V and 9 A at 13.5 V, whatever the rise; midway 4 × (17/16)² = 4.5156 A and 9 × (17/18)² = 8.0278 A, in the mean
    /// 6.2717 A. At 12 V and under, by the lower alone: 4 × 0.75² = 2.25 A at 9 V.
    /// </summary>
    [Theory]
    [InlineData(12.75, 6.2717013888888889)]
    [InlineData(12, 4)]
    [InlineData(13.5, 9)]
    [InlineData(9, 2.25)]
    [InlineData(15, 9)]
    public void Current_BetweenTwoVoltages_IsTheMeanOfBothCarriedCurves(double volts, double amperes)
    {
        static PumpCurve Drawing(double at, double current) => PumpCurve.WithCurrent(
            "pair",
            Wren.Volt(at),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200), ElectricCurrent.FromAmperes(current)),
            (Wren.Kpa(800), VolumeFlow.Zero, ElectricCurrent.FromAmperes(current)));
        Assert.Equal(amperes, Pump.Of([Drawing(12, 4), Drawing(13.5, 9)]).CurrentAtMotor(300e3, volts)!.Value, 1e-12);
    }

    /// <summary>Between two voltages with ends that do not meet, the further one counts: 713.58 kPa, for 451.56 kPa of the lower.</summary>
    [Fact]
    public void Deadhead_WhereTheCurvesEndsDoNotMeet_IsTheFurther()
    {
        Pump pump = Pump.Of([Line("pair", 12, (0, 150), (400, 0)), Line("pair", 13.5, (0, 200), (800, 0))]);
        Assert.Equal(800e3 * 289 / 324, pump.Running(12.75).Deadhead, 1e-6);
        Assert.True(pump.Running(12.75).FlowAt(713e3) > 0);

        // On the lowest voltage it is that curve alone, though the other, scaled to it, goes on to 632 kPa.
        Assert.Equal(400e3, pump.Running(12).Deadhead, 1e-6);
        Assert.Equal(800e3, pump.Running(13.5).Deadhead, 1e-6);
    }

    /// <summary>
    /// On a measured voltage the pump ends where it was measured to: at 800 kPa on 13.5 V, though the 700 kPa of 12 V, carried there,
    /// would be 886 kPa, and the 900 kPa of 14 V 837 kPa.
    /// </summary>
    [Theory]
    [InlineData(12, 700)]
    [InlineData(13.5, 800)]
    [InlineData(14, 900)]
    public void Deadhead_OnAMeasuredVoltage_IsTheMeasured(double volts, double kilopascals)
    {
        RunningPumps running = Pump.Of(
            [Line("three", 12, (0, 150), (700, 0)), Line("three", 13.5, (0, 200), (800, 0)), Line("three", 14, (0, 210), (900, 0))])
            .Running(volts);
        Assert.Equal(kilopascals * 1000, running.Deadhead, 1e-6);
        Assert.Equal(kilopascals * 1000, running.RiseAt(0), 1e-6);
    }

    /// <summary>On a measured voltage the flow is the measured one: of three curves each, and midway of none.</summary>
    [Theory]
    [InlineData(10, 40)]
    [InlineData(12, 80)]
    [InlineData(14, 110)]
    [InlineData(15, 110)]
    public void Flow_OnAMeasuredVoltage_IsTheMeasured(double volts, double litres)
    {
        Pump pump = Pump.Of(
            [Line("three", 10, (0, 80), (800, 0)), Line("three", 12, (0, 160), (800, 0)), Line("three", 14, (0, 220), (800, 0))]);
        Assert.Equal(litres, Litres(pump.Running(volts).FlowAt(400e3)), 1e-9);
    }

    /// <summary>Beginning at 100 kPa (12 V) and 200 kPa (13.5 V), at 12.75 V by the later: 200 × (17/18)² = 178.4 kPa.</summary>
    [Fact]
    public void BeginsAt_BetweenTwoVoltages_IsTheLaterOfBothCurves()
    {
        Pump pump = Pump.Of([Line("pair", 12, (100, 150), (400, 0)), Line("pair", 13.5, (200, 180), (800, 0))]);
        double first = 200e3 * 289 / 324;
        Assert.Equal(first - 0.5, pump.BeginsAt(12.75), 1e-6);
        Assert.Equal(PumpCoverage.PressureBelow, pump.CoverageAt(first - 1, 12.75));
        Assert.Equal(PumpCoverage.Measured, pump.CoverageAt(first, 12.75));
        Assert.Equal(100e3 - 0.5, pump.BeginsAt(12), 1e-6);
    }

    /// <summary>The ends themselves still belong to what is said: 70 % of 12 V, 50 mV under and over the measured voltages.</summary>
    [Theory]
    [InlineData(0.7 * 12, PumpCoverage.Scaled)]
    [InlineData(12 - 0.05, PumpCoverage.Measured)]
    [InlineData(14 + 0.05, PumpCoverage.Measured)]
    public void Coverage_AtTheEndsOfVoltage_TakesTheEndIn(double volts, object coverage)
    {
        Pump pump = Pump.Of([Straight, Line("straight", 14, (0, 220), (900, 0))]);
        Assert.Equal((PumpCoverage)coverage, pump.CoverageAt(100e3, volts));
    }

    /// <summary>A curve from no rise on says something of no rise; one from 200 kPa on from half a pascal less.</summary>
    [Fact]
    public void Coverage_AtTheBeginningOfPressure_TakesTheBeginningIn()
    {
        Assert.Equal(PumpCoverage.Measured, Pump.From(Straight).CoverageAt(0, 12));
        Assert.Equal(PumpCoverage.Measured, Pump.From(Late).CoverageAt(199_999.5, 14));
        Assert.Equal(PumpCoverage.PressureBelow, Pump.From(Late).CoverageAt(199_999, 14));
    }

    /// <summary>
    /// With all the flow of its first point a late curve only says that there is no less, whatever the rise; with less it says all.
    /// A curve from no rise on says all at its free flow too.
    /// </summary>
    [Fact]
    public void Describe_WithTheFirstPointsFlow_SaysThatLittleIsKnownUnderIt()
    {
        RunningPumps late = Pump.From(Late).Running(14);
        Assert.Equal(PumpCoverage.PressureBelow, At(late, 180, 200e3).Coverage);
        Assert.Equal(PumpCoverage.PressureBelow, late.UncoveredAt(180 / 3.6e6, 200e3, ends: true));
        Assert.Equal(PumpCoverage.Measured, At(late, 179, 201e3).Coverage);
        Assert.Equal(PumpCoverage.Measured, At(Pump.From(Straight).Running(12), 200, 0).Coverage);

        // A part in a thousand million less is the same flow.
        List<PumpPoint> points = [];
        late.Describe(late.FreeFlow * (1 - 1e-9), 200e3, points);
        late.Describe(late.FreeFlow * (1 - 3e-9), 200e3, points);
        Assert.Equal([PumpCoverage.PressureBelow, PumpCoverage.Measured], points.Select(point => point.Coverage));
    }

    /// <summary>Up to a pascal less than its curve's rise is the curve; from there on something else holds the pump down.</summary>
    [Fact]
    public void Describe_UnderAnOpenCurve_LeavesAPascalToRounding()
    {
        RunningPumps open = Pump.From(Open).Running(12);

        // 150 L/h: a quarter of the way, 200 kPa.
        Assert.Equal(200e3, open.RiseAt(150 / 3.6e6), 1e-6);
        Assert.Equal(PumpCoverage.Measured, At(open, 150, 200e3 - 0.9).Coverage);
        Assert.Equal(PumpCoverage.PressureAbove, At(open, 150, 200e3 - 1.1).Coverage);
        Assert.Equal(PumpCoverage.Measured, At(open, 150, open.RiseAt(150 / 3.6e6) - 1).Coverage);
        Assert.Equal(PumpCoverage.Measured, At(Pump.From(Straight).Running(12), 150, 100e3).Coverage);
    }

    /// <summary>What is lacking leaves out what is only an estimate: a scaled voltage.</summary>
    [Fact]
    public void LackingAt_OfALatePumpAtALowerVoltage_IsThePressureAlone()
    {
        RunningPumps late = Pump.From(Late).Running(12);
        Assert.Equal(PumpCoverage.Scaled | PumpCoverage.PressureBelow, At(late, 10, 100e3).Coverage);
        Assert.Equal(PumpCoverage.PressureBelow, late.UncoveredAt(10 / 3.6e6, 100e3, ends: true));
        Assert.Equal(PumpCoverage.Measured, late.UncoveredAt(10 / 3.6e6, 300e3, ends: true));
        Assert.Equal(PumpCoverage.VoltageBelow, Pump.From(Straight).Running(8).UncoveredAt(10 / 3.6e6, 100e3, ends: false));
    }

    /// <summary>From 70 % of the lowest voltage on, unless a curve begins late, or ends open and that matters.</summary>
    [Fact]
    public void IsSurelyCovered_OfAPump_AsksForVoltageBeginningAndEnd()
    {
        static (bool Begins, bool Covered) Sure(Pump pump, double supply) =>
            (pump.Running(supply).IsFullyCovered(ends: false), pump.Running(supply).IsFullyCovered(ends: true));
        Assert.Equal((true, true), Sure(Pump.From(Straight), 0.7 * 12));
        Assert.Equal((false, false), Sure(Pump.From(Straight), 8.39));
        Assert.Equal((true, false), Sure(Pump.From(Open), 12));
        Assert.Equal((false, false), Sure(Pump.From(Late), 14));

        // One late or open curve of two is enough.
        Assert.Equal((false, false), Sure(Pump.Of([Straight, Line("straight", 14, (100, 210), (900, 0))]), 13));
        Assert.Equal((true, false), Sure(Pump.Of([Straight, Line("straight", 14, (0, 220), (400, 120))]), 13));

        // At 10 V of supply no more than 12 A × (10/12)² = 8.33 A: 1.67 V by 0.2 Ω leave 8.33 V, under 8.4 V; by 0.15 Ω 8.75 V.
        Assert.Equal((false, false), Sure(Pump.Of([Wired], feed: Ohms(0.2)), 10));
        Assert.Equal((true, true), Sure(Pump.Of([Wired], feed: Ohms(0.15)), 10));

        // Over 12 V no more than 12 A: 0.6 Ω take 7.2 V and leave 7.8 V of 15 V, 8.8 V of 16 V.
        Assert.Equal((false, false), Sure(Pump.Of([Wired], feed: Ohms(0.6)), 15));
        Assert.Equal((true, true), Sure(Pump.Of([Wired], feed: Ohms(0.6)), 16));
    }

    /// <summary>A relief valve that opens at 400 kPa holds until then, and any flow under the 100 L/h there is at 400 kPa.</summary>
    [Fact]
    public void Relief_AtItsPressure_IsStillClosed()
    {
        Pump pump = Pump.Of([Straight], relief: Wren.Kpa(400));
        RunningPumps running = pump.Running(12);
        Assert.Equal(100, Litres(running.FlowAt(400e3)), 1e-9);
        Assert.Equal(0, running.FlowAt(400_000.001));
        Assert.Equal(400e3, running.Deadhead);
        Assert.Equal(400e3, running.RiseAt(50 / 3.6e6), 1e-6);
        Assert.Equal(200e3, running.RiseAt(150 / 3.6e6), 1e-6);
        Assert.True(running.IsFullyCovered(ends: true));

        // Wired, the valve opens at the same pressure.
        Assert.Equal(400e3, Pump.Of([Wired], Wren.Kpa(400), feed: Ohms(0.05)).Running(14).Deadhead, 1e-3);
    }

    /// <summary>Half of the flow is left of a worn pump: 50 L/h at 400 kPa; and 400 kPa, not more, hold 50 L/h.</summary>
    [Fact]
    public void Rise_OfAWornPump_IsThatOfTheWholeFlow() =>
        Assert.Equal(
            400e3, Pump.Of([Straight], condition: Ratio.FromPercent(50)).Running(12).RiseAt(50 / 3.6e6), 1e-6);

    /// <summary>One curve of two that ends with flow left leaves the pump's end open; 10 L/h of 200 counts as flow left.</summary>
    [Fact]
    public void OpenEnd_OfOneCurve_IsThatOfThePump()
    {
        PumpCurve nearly = Line("straight", 14, (0, 220), (800, 10));
        Assert.Null(nearly.Deadhead);
        Assert.True(Pump.Of([Straight, nearly]).HasOpenEnd);
        Assert.True(Pump.Of([Open, Line("open", 14, (0, 220), (800, 0))]).HasOpenEnd);
        Assert.False(Pump.Of([Straight, Line("straight", 14, (0, 220), (900, 0))]).HasOpenEnd);
    }

    /// <summary>A stuck pump, measured to deliver nothing, ends at deadhead, and adds no rise.</summary>
    [Fact]
    public void StuckPump_DeliversNothing()
    {
        PumpCurve stuck = Line("stuck", 12, (0, 0), (100, 0));
        Assert.Equal(100, stuck.Deadhead!.Value.Kilopascals, 1e-9);
        RunningPumps running = Pump.From(stuck).Running(12);
        Assert.Equal((0, 0), (running.FreeFlow, running.RiseAt(0)));

        // Nor does a higher voltage free it: no less than nothing is delivered.
        Assert.Equal(0, Pump.Of([stuck, Line("stuck", 14, (0, 0), (100, 0))]).Running(13).FreeFlow);
    }

    private static double Litres(double flow) => flow * 3.6e6;

    private static PumpPoint At(RunningPumps running, double litres, double rise)
    {
        List<PumpPoint> points = [];
        running.Describe(litres / 3.6e6, rise, points);
        return Assert.Single(points);
    }

    private static Feed Ohms(double ohms) => Feed.Of(
        "bench lead",
        Conductor.Awg(10),
        Length.Zero,
        Length.Zero,
        Temperature.FromDegreesCelsius(20),
        Contact.Of("lead", ElectricResistance.FromOhms(ohms)));

    private static PumpCurve Line(string name, double volts, params (double Kilopascals, double Litres)[] points) => PumpCurve.At(
        name,
        Wren.Volt(volts),
        Array.ConvertAll(points, point => (Wren.Kpa(point.Kilopascals), VolumeFlow.FromLitersPerHour(point.Litres))));
}
