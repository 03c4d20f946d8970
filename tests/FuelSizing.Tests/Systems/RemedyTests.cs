using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>A remedy must serve the whole sweep: of several points that fail, the one that asks for most decides.</summary>
public class RemedyTests
{
    /// <summary>From 0 to 3.2 bar of boost: 400 kPa across the injector, then 80 kPa, where the dead-time table has not begun.</summary>
    [Fact]
    public void InjectorRemedy_WhereADeadTimeIsUnknown_NamesNoSize()
    {
        SweepResult sweep = Wren.System(Fixed.At(Wren.Kpa(400)), pump: 4)
            .With(InjectorSet.Of(Wren.InjectorOf(50).WithMinimumDifferential(Wren.Kpa(60)), 4))
            .Sweep([Wren.Rpm(3000)], [Pressure.Zero, Pressure.FromBars(3.2)], Wren.Hill);
        Assert.Equal(Outcome.Fails, Find(sweep.At(0, 0), Part.Injectors).Outcome);
        Assert.Equal(Outcome.CannotSay, Find(sweep.At(0, 1), Part.Injectors).Outcome);
        Remedy remedy = For(sweep, Part.Injectors);
        Assert.Null(remedy.Needed);
        Assert.Contains("or no dead time known", remedy.Text.ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Two injections a cycle and a duty cycle of 10 %: 3 ms at 2,000 rev/min, and 0.83 ms at 7,200, which the dead time of over
    /// 1 ms takes up alone.
    /// </summary>
    [Fact]
    public void InjectorRemedy_WithNoTimeLeftAtSomePoint_NamesNoSize()
    {
        FuelSystem system = FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(100), 4, 2),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.PumpOf(4)),
            SizingLimits.Of(Wren.Percent(10), Wren.Percent(10)));
        Assert.Null(For(system.Sweep([Wren.Rpm(2000), Wren.Rpm(7200)], [Pressure.Zero], Wren.Hill), Part.Injectors).Needed);
        Assert.NotNull(For(system.Sweep([Wren.Rpm(2000)], [Pressure.Zero], Wren.Hill), Part.Injectors).Needed);
    }

    [Fact]
    public void MinimumPulseRemedy_OverSeveralIdles_ServesTheLightest()
    {
        RotationalSpeed[] idle = [Wren.Rpm(850), Wren.Rpm(1100)];
        Pressure[] vacuum = [Pressure.FromBars(-0.7), Pressure.FromBars(-0.5), Pressure.FromBars(-0.3)];
        VolumeFlow maximum = (VolumeFlow)For(Wren.System(injector: 3000).Sweep(idle, vacuum, Wren.Hill), Part.MinimumPulse).Needed!;
        double ShortestOf(double share) => Wren.System(injector: maximum.MillilitersPerMinute * share)
            .Sweep(idle, vacuum, Wren.Hill).Results.Min(OpenTime);

        // 1.60 ms at 14 V and 300 kPa, of which 0.85 ms are dead time.
        Assert.Equal(0.75, ShortestOf(1), 9);
        Assert.True(ShortestOf(1 + 1e-6) < 0.75);
    }

    /// <summary>
    /// A fixed regulator at 580 kPa: with the throttle closed there are 645 kPa across the injector, where the table has ended;
    /// what it does not know cannot ask for smaller injectors.
    /// </summary>
    [Fact]
    public void MinimumPulseRemedy_WhereADeadTimeIsUnknown_RestsOnTheOthers()
    {
        FuelSystem With(double injector) => Wren.System(Fixed.At(Wren.Kpa(580)), injector: injector);
        SweepResult Sweep(double injector) => With(injector).Sweep([Wren.Rpm(850)], [Pressure.FromBars(-0.65), Pressure.Zero], Wren.Hill);
        SweepResult before = Sweep(10_000);
        Assert.Equal(Outcome.CannotSay, Find(before.At(0, 0), Part.MinimumPulse).Outcome);
        Assert.Equal(Outcome.Fails, Find(before.At(0, 1), Part.MinimumPulse).Outcome);
        VolumeFlow maximum = (VolumeFlow)For(before, Part.MinimumPulse).Needed!;

        // Between the two the table has not ended everywhere, and asks for smaller ones than at no boost; it holds wherever it is known.
        FuelSystem fitted = With(maximum.MillilitersPerMinute * (1 - 1e-6));
        Assert.True(OpenTime(Sweep(maximum.MillilitersPerMinute).At(0, 1)) > 0.75);
        double[] known =
        [
            .. Enumerable.Range(0, 66).Select(step => fitted.Solve(Wren.At(850, step * -0.01)))
                .Where(result => result.DeadTime is not null).Select(OpenTime),
        ];
        Assert.InRange(known.Min(), 0.75 - 1e-4, 0.76);
    }

    /// <summary>
    /// An injector that opens late against pressure: 1.9 ms of the 3 ms of its shortest linear pulse at 300 kPa, so that it must stay open for
    /// 1.1 ms at any pressure, however long it takes to open there.
    /// </summary>
    [Fact]
    public void MinimumPulseRemedy_OfAnInjectorThatOpensLate_LeavesItOpenAsLongAtEveryPressure()
    {
        Injector Late(double flow) => Injector.Of(
            "late",
            VolumeFlow.FromMillilitersPerMinute(flow),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(16)],
                [Wren.Kpa(100), Wren.Kpa(600)],
                [[Wren.Ms(0.5), Wren.Ms(0.5)], [Wren.Ms(4), Wren.Ms(4)]]),
            Wren.Ms(3),
            Wren.Kpa(550));
        SweepResult Sweep(double flow) => Wren.System(Fixed.At(Wren.Kpa(400)))
            .With(InjectorSet.Of(Late(flow), 4))
            .Sweep([Wren.Rpm(850)], [Pressure.FromBars(-0.65), Pressure.Zero], Wren.Hill);
        SweepResult before = Sweep(10_000);
        Assert.Equal(Outcome.Fails, Find(before.At(0, 0), Part.MinimumPulse).Outcome);
        VolumeFlow maximum = (VolumeFlow)For(before, Part.MinimumPulse).Needed!;
        SweepResult after = Sweep(maximum.MillilitersPerMinute);
        Assert.Equal(1.1, after.Results.Min(OpenTime), 9);
    }

    private static double OpenTime(OperatingResult result) => result.Pulse!.Value.Milliseconds - result.DeadTime!.Value.Milliseconds;

    /// <summary>Two boosts fail, and of two pumps one is fed through a long wire.</summary>
    [Fact]
    public void PumpRemedy_OverSeveralPoints_NamesTheMaximumPressureAndTheMinimumVoltage()
    {
        Pump Fed(double metres) => Pump.From(Wren.WiredCurve(13.5, 0.3)).WithFeed(PumpAssemblyTests.FeedOf(metres, 16));
        SweepResult sweep = Wren.System()
            .With(PumpParallel.Of(Fed(0.5), Fed(6)))
            .Sweep([Wren.Rpm(6000), Wren.Rpm(6800)], [Pressure.FromBars(0.4), Pressure.FromBars(0.6), Pressure.FromBars(0.9)], Wren.Hill);
        OperatingResult[] failing = [.. sweep.Results.Where(result => Find(result, Part.Pump).Outcome == Outcome.Fails)];
        Assert.True(failing.Length > 3);
        VolumeFlow maximum = failing.Max(result => result.InjectedFlow) * 1.1;

        // The voltage by the lower bound of the pumps' data, over the points between the sweep's too.
        double[] volts = [.. failing.Select(result => result.SolvedCircuit.LowerPumps.Min(pump => pump.Voltage))];
        Assert.True(volts.Max() > volts.Min() + 0.2);
        string text = For(sweep, Part.Pump).Text.ToString();
        Assert.StartsWith($"A pump, or pumps together, that deliver at least {TextStyle.Metric.Write(maximum, "pump-flow:up")} against 390 kPa with ", text, StringComparison.Ordinal);
        double stated = double.Parse(text.Split("with ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(stated, volts.Min() - 0.3, volts.Min());
    }

    [Fact]
    public void ReturnLineRemedy_OverSeveralPoints_PassesTheLargestSurplus()
    {
        Line thin = Line.Of("return line", Length.FromMillimeters(2), Length.FromMeters(4), Roughness.RubberHose);
        SweepResult sweep = Wren.System()
            .With(Plumbing.Of(returnLine: [thin]))
            .Sweep([Wren.Rpm(900)], [Pressure.FromBars(-0.6), Pressure.FromBars(-0.3), Pressure.Zero], Wren.Hill);
        Assert.All(sweep.Results, result => Assert.Equal(Outcome.Fails, Find(result, Part.ReturnLine).Outcome));

        // The lower the set pressure, the more the pump delivers, and the less is burnt of it.
        Remedy remedy = For(sweep, Part.ReturnLine);
        double surplus = (Wren.Pump.FlowAt(Wren.Kpa(240)) - sweep.At(0, 0).InjectedFlow).LitersPerHour;
        Assert.Equal(surplus, ((VolumeFlow)remedy.Needed!).LitersPerHour, 6);
        Assert.Contains(" at 240 kPa or less ", remedy.Text.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Two boosts fail and at a third the pump's curve has ended: the remedy is the most that is missing of what is known.</summary>
    [Fact]
    public void InletRemedy_OverSeveralPoints_IsTheMaximumThatIsMissing()
    {
        Line up = Line.Of("suction", Length.FromMillimeters(6), Length.FromMeters(2), Roughness.RubberHose, rise: Length.FromMeters(1));
        Conditions hot = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Temperature.FromDegreesCelsius(50));
        SweepResult sweep = Wren.System(injector: 900)
            .With(Plumbing.Of(suction: [up]))
            .With(Pump.From(PumpCurve.At(
                "ended",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215)),
                (Wren.Kpa(380), VolumeFlow.FromLitersPerHour(150)))))
            .Sweep([Wren.Rpm(3000)], [Pressure.Zero, Pressure.FromBars(0.5), Pressure.FromBars(0.9)], hot);
        Assert.Equal(
            [Outcome.Fails, Outcome.Fails, Outcome.CannotSay], sweep.Results.Select(result => Find(result, Part.Suction).Outcome));
        double Missing(OperatingResult result) => Fuel.Petrol.VapourPressureAt(hot.FuelTemperature).Pascals + 10_000
            - (hot.Atmosphere.Pressure.Pascals - up.PressureLoss(result.PumpFlow!.Value, Fuel.Petrol, hot.FuelTemperature).Total.Pascals);
        Assert.True(Missing(sweep.At(0, 0)) > Missing(sweep.At(0, 1)) + 100);
        Assert.Equal(Missing(sweep.At(0, 0)), ((Pressure)For(sweep, Part.Suction).Needed!).Pascals, 3);
    }

    /// <summary>In parallel with a pump of high current on a short wire, the one on the long wire has the lowest voltage: its current decides.</summary>
    [Fact]
    public void FeedRemedy_OfTwoPumps_IsForTheWorseFed()
    {
        Pump thirsty = Pump.From(PumpCurve.WithCurrent(
            "thirsty",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215), ElectricCurrent.FromAmperes(9)),
            (Wren.Kpa(750), VolumeFlow.Zero, ElectricCurrent.FromAmperes(25))));
        thirsty = Pump.Of([Lower(thirsty.Curves[0], 10), thirsty.Curves[0]]).WithFeed(PumpAssemblyTests.FeedOf(0.2, 10));
        SweepResult With(Feed feed) => Wren.System()
            .With(PumpParallel.Of(thirsty, Pump.Of([Wren.WiredCurve(10, 0.7), Wren.WiredCurve(13.5, 1)]).WithFeed(feed)))
            .Sweep([Wren.Rpm(3000)], [Pressure.Zero, Pressure.FromBars(0.5)], Wren.Hill);
        SweepResult before = With(PumpAssemblyTests.FeedOf(6, 18));
        Assert.All(before.Results, result => Assert.Equal(Outcome.Fails, Find(result, Part.Feed).Outcome));
        ElectricResistance maximum = (ElectricResistance)For(before, Part.Feed).Needed!;

        Feed Of(ElectricResistance all) => Feed.Of(
            "wire", Conductor.Awg(10), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all", all));
        Outcome Fitted(double share) => With(Of(maximum * share)).Standings.Single(standing => standing.Part == Part.Feed).Outcome;
        Assert.Equal((Outcome.Holds, Outcome.Fails), (Fitted(0.98), Fitted(1.02)));
    }

    // By the affinity laws, so that the voltages met are measured ones.
    private static PumpCurve Lower(PumpCurve curve, double volts)
    {
        double speed = volts / curve.Voltage.Volts;
        return PumpCurve.WithCurrent(
            curve.Name,
            Wren.Volt(volts),
            [
                .. new[] { curve.MinimumPressure, curve.MaximumPressure }.Select(
                    rise => (rise * (speed * speed), VolumeFlow.FromLitersPerHour(Math.Max(0, curve.FlowAt(rise).LitersPerHour)) * speed, curve.CurrentAt(rise) * (speed * speed))),
            ]);
    }

    private static Remedy For(SweepResult sweep, Part part) => sweep.Remedies.First(remedy => remedy.Part == part);
}
