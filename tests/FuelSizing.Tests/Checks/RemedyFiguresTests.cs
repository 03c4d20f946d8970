using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// The figure of a remedy by its own formula, worked from the points that were solved. Where a figure is put back and the last bit must not decide, it lies a hair, 10⁻¹² of
/// it, on the side that serves.
/// </summary>
public class RemedyFiguresTests
{
    // Heptane at 15.6 °C, 683.8 kg/m³, as the injectors are rated.
    private const double Heptane = 683.8;

    /// <summary>Q = (Q_f/z) · T/(D T − t_d), carried back to 300 kPa on heptane: the largest of three points, plus a hair.</summary>
    [Fact]
    public void LargerInjectors_AreThoseThatTheMostDemandingPointNeeds()
    {
        OperatingResult[] results = [.. new[] { (5000, 0.2), (6800, 0.6), (6000, 0.5) }.Select(at => Wren.System(injector: 150, pump: 4).Solve(Wren.At(at.Item1, at.Item2)))];
        Assert.All(results, result => Assert.Equal(Outcome.Fails, Find(result, Part.Injectors).Outcome));
        Remedy remedy = RemedyFor(Part.Injectors, results);
        double needed = results.Max(result => result.InjectedFlow.CubicMetersPerSecond / 4 * result.AvailableTime.Seconds
            / ((0.85 * result.AvailableTime.Seconds) - result.DeadTime!.Value.Seconds)
            / Math.Sqrt(result.InjectorDifferential.Kilopascals / 300 * Heptane / result.FuelDensity.KilogramsPerCubicMeter));
        Assert.InRange(((VolumeFlow)remedy.Needed!).CubicMetersPerSecond, needed * (1 + 1e-13), needed * (1 + 1e-11));
        Assert.Equal(
            $"Injectors of at least {TextStyle.Metric.Write((VolumeFlow)remedy.Needed, "injector-flow:up")} at 300 kPa on heptane, with dead times like these.".Replace("heptane", TestFluid.Heptane.Name, StringComparison.Ordinal),
            remedy.ToString());
    }

    /// <summary>
    /// A pulse of t_min + t_d passes the fuel of one injection at Q = (Q_f/z) · T/t_min, where t_min is the open time of the minimum pulse: the smallest of the points,
    /// less a hair; points at which nothing flows or the dead time is not known ask for nothing.
    /// </summary>
    [Fact]
    public void SmallerInjectors_AreThoseThatTheLightestPointNeeds()
    {
        OperatingResult[] results =
        [
            .. new[] { (850, -0.5), (850, -0.65), (1100, -0.4) }.Select(at => Wren.System(injector: 3000, pump: 1.5).Solve(Wren.At(at.Item1, at.Item2))),
            Wren.System(Fixed.At(Wren.Kpa(150)), injector: 3000, pump: 3).Solve(Wren.At(3000, 2)),
        ];
        Remedy remedy = RemedyFor(Part.MinimumPulse, results);
        double needed = results[..3].Min(result => result.InjectedFlow.CubicMetersPerSecond / 4 * result.AvailableTime.Seconds / 0.75e-3
            / Math.Sqrt(result.InjectorDifferential.Kilopascals / 300 * Heptane / result.FuelDensity.KilogramsPerCubicMeter));
        Assert.InRange(((VolumeFlow)remedy.Needed!).CubicMetersPerSecond, needed * (1 - 1e-11), needed * (1 - 1e-13));
        Assert.StartsWith(
            $"Injectors of at most {TextStyle.Metric.Write((VolumeFlow)remedy.Needed, "injector-flow:down")} at 300 kPa on ", remedy.ToString(), StringComparison.Ordinal);

        // With no point of which anything is known it is those that are fitted.
        Assert.Equal(3000, ((VolumeFlow)RemedyFor(Part.MinimumPulse, results[3]).Needed!).MillilitersPerMinute, 6);
    }

    /// <summary>The surplus of the pump at the pressure set, over what is injected, and a hair; the largest of the failing points at the lowest of their pressures.</summary>
    [Fact]
    public void ReturnLine_MustPassTheLargestSurplusAtTheLowestPressureSet()
    {
        Line thin = Line.Of("return line", Length.FromMillimeters(2), Length.FromMeters(4), Roughness.RubberHose);
        OperatingResult[] results = [.. new[] { (900, 0.0), (900, -0.6), (900, -0.3) }.Select(at => Wren.System().With(Plumbing.Of(returnLine: [thin])).Solve(Wren.At(at.Item1, at.Item2)))];
        Assert.All(results, result => Assert.Equal(Outcome.Fails, Find(result, Part.ReturnLine).Outcome));
        double surplus = results.Max(result => (Wren.Pump.FlowAt(result.RailSetGauge) - result.InjectedFlow).CubicMetersPerSecond);
        Remedy remedy = RemedyFor(Part.ReturnLine, results);
        Assert.InRange(((VolumeFlow)remedy.Needed!).CubicMetersPerSecond, surplus * (1 + 1e-14), surplus * (1 + 1e-9));
        Assert.EndsWith(" at 240 kPa or less (wider, shorter, fewer fittings), or a pump that delivers less.", remedy.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The most that is required, against the highest pressure, with the lowest voltage: each of another point, for a pump with another curve may fail at any of them.</summary>
    [Fact]
    public void Pump_MustDeliverTheMostAgainstTheHighestPressureWithTheLowestVoltage()
    {
        FuelSystem system = Wren.System(pump: 0.4);
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Wren.Hill.FuelTemperature);
        OperatingResult[] results =
        [
            system.Solve(Wren.At(6800, 0.4)), system.Solve(Wren.At(3000, 0.7)), system.Solve(OperatingPoint.At(Wren.Rpm(5000), Pressure.FromBars(0.5), weak)),
        ];
        double most = results.Max(result => result.InjectedFlow.LitersPerHour) * 1.1;
        Assert.Equal(most, results[0].InjectedFlow.LitersPerHour * 1.1, 9);
        Remedy remedy = RemedyFor(Part.Pump, results);
        Assert.Equal(most, ((VolumeFlow)remedy.Needed!).LitersPerHour, 9);
        Assert.Equal(
            $"A pump, or pumps together, that deliver at least {TextStyle.Metric.Write((VolumeFlow)remedy.Needed, "pump-flow:up")} against 370 kPa with 13.5 V at the motor.",
            remedy.ToString());

        // Of two, fed through wires of their own, the lower voltage counts.
        Pump Fed(double metres) => Pump.From(Wren.WiredCurve(13.5, 0.2)).WithFeed(FuelSizing.Tests.Pumps.PumpAssemblyTests.FeedOf(metres, 16));
        OperatingResult two = Wren.System().With(PumpParallel.Of(Fed(0.5), Fed(6))).Solve(Wren.At(6800, 0.6));
        double lower = two.SolvedCircuit.LowerPumps.Min(pump => pump.Voltage);
        Assert.True(two.SolvedCircuit.LowerPumps.Max(pump => pump.Voltage) > lower + 0.3);
        Assert.EndsWith(
            $" with {TextStyle.Metric.Write(Wren.Volt(lower), "voltage:down")} at the motor.", RemedyFor(Part.Pump, two).ToString(), StringComparison.Ordinal);
    }

    /// <summary>300 + 60 kPa in the rail and what the line loses, at the point where that is highest.</summary>
    [Fact]
    public void Rating_MustBeTheHighestOfAllPoints_AndSoMustTheOpeningPressure()
    {
        Line narrow = Line.Of("supply", Length.FromMillimeters(4), Length.FromMeters(4), Roughness.DrawnTube);
        FuelSystem system = Wren.System(limits: SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(200))).With(Plumbing.Of(supply: [narrow]));
        OperatingResult[] results = [.. new[] { 0.3, 0.6, -0.4 }.Select(boost => system.Solve(Wren.At(3000, boost)))];
        Remedy rating = RemedyFor(Part.PressureRating, results);
        Assert.Equal(results[1].Circuit.OutletGauge!.Value.Pascals, ((Pressure)rating.Needed!).Pascals, 3);
        Assert.Equal(
            $"Hoses, fittings and filter rated for at least {TextStyle.Metric.Write((Pressure)rating.Needed, "pressure:up")}, or less rail pressure.", rating.ToString());

        OperatingResult[] opening = [.. new[] { 0.0, -0.6, 0.5 }.Select(boost => Wren.System(Fixed.At(Wren.Kpa(600)), pump: 4).Solve(Wren.At(3000, boost)))];
        Assert.Equal(660, ((Pressure)RemedyFor(Part.OpeningPressure, opening).Needed!).Kilopascals, 6);
        Assert.Equal("Injectors known to open against at least 660 kPa, or less rail pressure.", RemedyFor(Part.OpeningPressure, opening).ToString());
    }

    /// <summary>A rail that is set higher than a weak pump brings it: hoses see the pressure set once the pump is replaced.</summary>
    [Fact]
    public void Rating_OfARailThatSags_IsForThePressureSet()
    {
        OperatingResult result = Wren.System(pump: 0.5, limits: SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(200))).Solve(Wren.At(6500, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(360, ((Pressure)RemedyFor(Part.PressureRating, result).Needed!).Kilopascals, 6);
    }

    /// <summary>At an open time equal to the limit, a pulse just as long as the minimum holds with nothing to spare, and says so.</summary>
    [Fact]
    public void MinimumPulse_OfAnInjectorWithoutAnOpenTime_IsNotJudged()
    {
        Injector Of(double minimum) => Injector.Of(
            "injector", VolumeFlow.FromMillilitersPerMinute(800), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(minimum), Wren.Kpa(600));
        Assert.Equal(
            "not judged: the minimum pulse width stated, 0.85 ms, is no longer than the dead time at 14.0 V",
            new MinimumPulseCheck(JudgedSet.Primary).AppliesTo(Wren.System().With(InjectorSet.Of(Of(0.85), 4)).Parts).ToString());
        Assert.Equal("judged", new MinimumPulseCheck(JudgedSet.Primary).AppliesTo(Wren.System().With(InjectorSet.Of(Of(0.86), 4)).Parts).ToString());
    }

    /// <summary>Of points at which the supply differs the lowest counts.</summary>
    [Fact]
    public void Pump_OverPointsOfUnlikeSupply_IsForTheLowest()
    {
        OperatingResult[] results =
        [
            .. new[] { 13.5, 12.6, 13 }.Select(volts => Wren.System().With(Wren.WiredPump).Solve(OperatingPoint.At(
                Wren.Rpm(6800), Pressure.FromBars(0.9), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature)))),
        ];
        Assert.EndsWith(" with 12.6 V at the motor.", RemedyFor(Part.Pump, results).ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// 10 kPa across injectors whose flow is known from 100 kPa on: they pass no more than there, so that the best that can be said is the capacity at 100 kPa with the dead
    /// time that they have, 4 Q (0.85 T − t_d)/T.
    /// </summary>
    [Fact]
    public void Injectors_BelowTheirKnownFlow_AreAtBestWhatTheyAreAtTheLowestKnown()
    {
        Injector steady = Injector.Of(
            "steady", VolumeFlow.FromMillilitersPerMinute(900), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage((Wren.Volt(6), Wren.Ms(4)), (Wren.Volt(16), Wren.Ms(4))), Wren.Ms(5), Wren.Kpa(550));
        OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(210)), pump: 3).With(InjectorSet.Of(steady, 4)).Solve(Wren.At(5000, 2));
        double at100 = 900e-6 / 60 * Math.Sqrt(100.0 / 300 * Heptane / result.FuelDensity.KilogramsPerCubicMeter);
        double capacity = 4 * at100 * ((0.85 * 24) - 4) / 24;
        Assert.Equal((capacity / result.InjectedFlow.CubicMetersPerSecond) - 1, Find(result, Part.Injectors).Reading.BestMargin.Value, 9);
        Assert.True(double.IsNaN(Find(result, Part.Injectors).Reading.Margin.Value));
    }

    /// <summary>In a return system there is no speed to control; held down to 12 V a pump that still brings more than is asked for fails, and slower measured ones are not known.</summary>
    [Fact]
    public void PumpControl_InWords_SaysWhetherThePumpCanBeSlowed()
    {
        Assert.Equal("not applicable", new PumpControlCheck().AppliesTo(Wren.System().Parts).ToString());
        FuelSystem Held(double volts) => FuelSystem.Returnless(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(volts)), Wren.WiredPump);
        Assert.Equal("judged", new PumpControlCheck().AppliesTo(Held(12).Parts).ToString());
        OperatingResult floor = Held(12).Solve(Wren.At(900, -0.6));
        Margin fails = Find(floor, Part.PumpControl);
        Assert.Equal((Outcome.Fails, "pump-control.at-lowest-speed"), (fails.Outcome, fails.Finding.Code));
        Assert.Equal((240 / floor.RailGauge.Kilopascals) - 1, fails.Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(
            "A controller that slows the pump further, a smaller pump, or a regulator that returns the surplus.", RemedyFor(Part.PumpControl, floor).ToString());

        Margin open = Find(Held(6).Solve(Wren.At(5000, 0.3)), Part.PumpControl);
        Assert.Equal(
            (Outcome.CannotSay, "the pump's data ends before its lowest speed: whether it still holds more than the target there is not known"), (open.Outcome, open.Explanation));
        Margin none = Find(
            Held(6).Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature))), Part.PumpControl);
        Assert.Equal((Outcome.CannotSay, "the pump's data does not cover the point"), (none.Outcome, none.Explanation));
    }

    /// <summary>Of two pumps in parallel on 13.5 V, one measured at just that and one at 14 V alone: it is the second whose data is missing.</summary>
    [Fact]
    public void Pump_BelowTheVoltageOfItsLowestCurve_IsTheOneThatIsNamed()
    {
        string[] open =
        [
            .. Enumerable.Range(0, 40).Select(step => Wren.System()
                    .With(PumpParallel.Of(Pump.From(Renamed("exact", 13.5, 0.02 * step)), Pump.From(Renamed("late", 14.2, 0.02 * step)))).Solve(Wren.At(6000, 0.5)))
                .Select(result => Find(result, Part.Pump)).Where(margin => margin.Outcome == Outcome.CannotSay).Select(margin => margin.Explanation),
        ];
        Assert.NotEmpty(open);
        Assert.All(open, words => Assert.StartsWith("the lowest curve of late was measured at 14.2 V: with 13.5 V at its motor it is known only that ", words, StringComparison.Ordinal));

        static PumpCurve Renamed(string name, double volts, double scale) => PumpCurve.WithCurrent(
            name,
            Wren.Volt(volts),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(20 + (215 * scale)), ElectricCurrent.FromAmperes(5)),
            (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(15 + (140 * scale)), ElectricCurrent.FromAmperes(8)),
            (Wren.Kpa(750), VolumeFlow.Zero, ElectricCurrent.FromAmperes(11)));
    }

    /// <summary>Two bounds are said only where both are known.</summary>
    [Fact]
    public void Bounds_OfWhichOneIsNotKnown_AreNotSaid()
    {
        Assert.Same(CircuitFinding.PumpNotCovered, CircuitFinding.PressureNotDecided((1e5, double.NaN), 2e5));
        Assert.Same(CircuitFinding.PumpNotCovered, CircuitFinding.CurrentNotDecided((double.NaN, 3), 2));
        Assert.Same(CircuitFinding.PumpNotCovered, CircuitFinding.DropNotDecided((double.NaN, double.NaN), 2));
        Assert.Same(CircuitFinding.PumpNotCovered, CircuitFinding.OpenTimeNotDecided((1e-3, double.PositiveInfinity), 2e-3));
        Assert.Equal(
            "the pump's data ends before the point: known only to lie between 100 kPa and 300 kPa, with a limit of 200 kPa",
            CircuitFinding.PressureNotDecided((1e5, 3e5), 2e5).ToString());
    }

    private static Remedy RemedyFor(Part part, params OperatingResult[] failing) =>
        Find(failing[0], part).Check.RemedyFor(new RemedyTask(failing, failing))!;
}
