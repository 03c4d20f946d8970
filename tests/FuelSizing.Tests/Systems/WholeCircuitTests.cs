using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>Lines, wiring and pumps as parts of a whole system: margins, remedies, limits.</summary>
public class WholeCircuitTests
{
    [Fact]
    public void Solve_WithSupplyLoss_LeavesThePumpThatMuchMoreToDo()
    {
        Line supply = LineOf(6, 4);
        OperatingResult result = System(Wren.WiredPump, Plumbing.Of(supply: [supply])).Solve(Wren.At(6000, 0.5));
        LineLoss loss = supply.PressureLoss(
            result.PumpFlow!.Value, Fuel.Petrol, Wren.Hill.FuelTemperature);
        Assert.Equal(350, result.RailGauge.Kilopascals, 6);
        Assert.Equal(350 + loss.Total.Kilopascals, result.Circuit.OutletGauge!.Value.Kilopascals, 6);
        Assert.Equal(loss.Total.Pascals, result.Circuit.Paths.Single().PressureLoss.Pascals, 3);
        Assert.Equal(result.Circuit.OutletGauge!.Value.Pascals, result.Circuit.Pumps.Single().PressureRise.Pascals, 1);
    }

    [Fact]
    public void Solve_OfAReturnlessSystem_LosesTheLinesLossAtTheRail()
    {
        Line supply = LineOf(5, 4);
        OperatingResult result = FuelSystem.Returnless(
                Wren.Demand(),
                InjectorSet.Of(Wren.InjectorOf(600), 4),
                Fixed.At(Wren.Kpa(400)),
                Wren.WiredPump,
                plumbing: Plumbing.Of(supply: [supply]))
            .Solve(Wren.At(6000, 0.5));

        // Only what is injected goes forward.
        LineLoss loss = supply.PressureLoss(result.InjectedFlow, Fuel.Petrol, Wren.Hill.FuelTemperature);
        Assert.Equal(400 - loss.Total.Kilopascals, result.RailGauge.Kilopascals, 6);
        Assert.Equal(400, result.Circuit.OutletGauge!.Value.Kilopascals, 6);
    }

    [Fact]
    public void Idle_WithANarrowReturnLine_CannotFallToTheSetPressure()
    {
        FuelSystem system = System(Wren.WiredPump, Plumbing.Of(returnLine: [LineOf(2, 4)]));
        OperatingResult idle = system.Solve(Wren.At(900, -0.6));
        Assert.Equal(RailState.ReturnFloor, idle.RailState);
        Assert.True(idle.RailGauge > idle.RailSetGauge);
        Assert.Contains("the rail cannot fall to", Find(idle, Part.ReturnLine).Explanation, StringComparison.Ordinal);

        SweepResult sweep = system.Sweep([Wren.Rpm(900)], [Pressure.FromBars(-0.6)], Wren.Hill);
        Assert.Equal(Outcome.Fails, sweep.Verdict.Outcome);
        VolumeFlow surplus = (VolumeFlow)sweep.Remedies.Single(remedy => remedy.Part == Part.ReturnLine).Needed!;

        // A return line that passes the surplus at the set pressure lets the regulator govern again.
        double wide = MathNet.Numerics.RootFinding.Brent.FindRoot(
            bore => (LineOf(bore, 4).PressureLoss(surplus, Fuel.Petrol, Wren.Hill.FuelTemperature).Total
                / idle.RailSetGauge) - 1,
            2,
            20);
        OperatingResult widened = System(Wren.WiredPump, Plumbing.Of(returnLine: [LineOf(wide * 1.0001, 4)])).Solve(Wren.At(900, -0.6));
        Assert.Equal(RailState.Regulated, widened.RailState);
        Assert.Equal(
            RailState.ReturnFloor,
            System(Wren.WiredPump, Plumbing.Of(returnLine: [LineOf(wide * 0.999, 4)])).Solve(Wren.At(900, -0.6)).RailState);
    }

    [Fact]
    public void Inlet_FarAboveTheTankWithHotFuel_FailsByItsVapourPressure()
    {
        Line up = Line.Of("suction", Length.FromMillimeters(6), Length.FromMeters(2), Roughness.RubberHose, rise: Length.FromMeters(1));
        Conditions hot = Conditions.Of(
            Wren.Hill.Atmosphere, Wren.Volt(13.5), Temperature.FromDegreesCelsius(45));
        FuelSystem system = System(Wren.WiredPump, Plumbing.Of(suction: [up]));
        OperatingResult result = system.Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, hot));
        Margin inlet = Find(result, Part.Suction);
        double absolute = hot.Atmosphere.Pressure.Pascals
            - up.PressureLoss(result.PumpFlow!.Value, Fuel.Petrol, hot.FuelTemperature).Total.Pascals;
        double wanted = Fuel.Petrol.VapourPressureAt(hot.FuelTemperature).Pascals + 10_000;
        Assert.Equal((absolute / wanted) - 1, inlet.Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(absolute < wanted ? Outcome.Fails : Outcome.Holds, inlet.Outcome);

        SweepResult sweep = system.Sweep([Wren.Rpm(3000)], [Pressure.Zero], hot);
        if (inlet.Outcome == Outcome.Fails)
        {
            Assert.Equal(
                wanted - absolute,
                ((Pressure)sweep.Remedies.Single(remedy => remedy.Part == Part.Suction).Needed!).Pascals,
                3);
        }

        Assert.Equal(Outcome.Fails, inlet.Outcome);
    }

    [Fact]
    public void Feed_LongAndThin_FailsAndNamesTheResistanceThatServes()
    {
        FuelSystem With(Feed feed) => System(Wren.WiredPump.WithFeed(feed), Plumbing.None);
        RotationalSpeed[] speeds = [Wren.Rpm(3000)];
        Pressure[] boosts = [Pressure.FromBars(0.5)];
        SweepResult before = With(PumpAssemblyTests.FeedOf(6, 18)).Sweep(speeds, boosts, Wren.Hill);
        Assert.Equal(Outcome.Fails, before.Standings.Single(s => s.Part == Part.Feed).Outcome);
        ElectricResistance maximum = (ElectricResistance)before.Remedies.Single(r => r.Part == Part.Feed).Needed!;

        // The remedy is given to two figures in words; a feed 2 % under it must hold.
        Feed better = Feed.Of(
            "better", Conductor.Awg(10), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all", maximum * 0.98));
        Assert.Equal(
            Outcome.Holds,
            With(better).Sweep(speeds, boosts, Wren.Hill).Standings.Single(s => s.Part == Part.Feed).Outcome);
        Feed worse = Feed.Of(
            "worse", Conductor.Awg(10), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all", maximum * 1.02));
        Assert.Equal(
            Outcome.Fails,
            With(worse).Sweep(speeds, boosts, Wren.Hill).Standings.Single(s => s.Part == Part.Feed).Outcome);
    }

    /// <summary>The pump's remedy counts the lines: a pump scaled to it holds with the same plumbing.</summary>
    [Fact]
    public void PumpRemedy_WithLines_MakesTheSweepHold()
    {
        Plumbing plumbing = Plumbing.Of(
            supply: [LineOf(6, 4), Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(15))], returnLine: [LineOf(7, 3)]);
        RotationalSpeed[] speeds = [Wren.Rpm(5000), Wren.Rpm(6800)];
        Pressure[] boosts = [Pressure.FromBars(0.6)];
        FuelSystem With(double scale) => FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(700), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.PumpOf(scale)),
            plumbing: plumbing);
        SweepResult before = With(0.6).Sweep(speeds, boosts, Wren.Hill);
        Remedy remedy = before.Remedies.Single(r => r.Part == Part.Pump && r.Needed is VolumeFlow);
        double wanted = ((VolumeFlow)remedy.Needed!).CubicMetersPerSecond;
        double rise = before.Results.Max(result => result.SolvedCircuit.Task.RiseToDeliver(result.SolvedCircuit.Required));
        double scale = wanted / Pump.From(Wren.Pump).Running(13.5).FlowAt(rise);
        Assert.Equal(Outcome.Holds, With(scale * (1 + 1e-9)).Sweep(speeds, boosts, Wren.Hill).Standings.Single(s => s.Part == Part.Pump).Outcome);
        Assert.Equal(Outcome.Fails, With(scale * 0.999).Sweep(speeds, boosts, Wren.Hill).Standings.Single(s => s.Part == Part.Pump).Outcome);
    }

    [Fact]
    public void Filter_FarAboveItsRating_CannotBeJudged()
    {
        Filter small = Filter.Of("small filter", VolumeFlow.FromLitersPerHour(30), Wren.Kpa(2));
        OperatingResult result = System(Wren.WiredPump, Plumbing.Of(supply: [small])).Solve(Wren.At(3000, 0));
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Filter).Outcome);
        Assert.Contains("known only up to 90 L/h", Find(result, Part.Filter).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Circuit_WhereThePumpsDataEnds_GivesNothingForIt()
    {
        FuelSystem system = System(
            Wren.WiredPump.WithFeed(PumpAssemblyTests.FeedOf(4)),
            Plumbing.Of(
                suction: [LineOf(8, 0.5)],
                supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(15))],
                returnLine: [LineOf(7, 3)]));
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature);
        OperatingResult result = system.Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, weak));
        Assert.Equal(RailState.NotCovered, result.RailState);
        Assert.Null(result.Circuit.OutletGauge);
        Assert.Null(result.Circuit.HeatToTank);
        Assert.Empty(result.Circuit.Pumps);
        Assert.All(
            new[] { Part.Pump, Part.ReturnLine, Part.Suction, Part.Filter, Part.Feed },
            part => Assert.Equal(Outcome.CannotSay, Find(result, part).Outcome));
    }

    [Fact]
    public void Pump_ThatDeadheadsBelowTheSetPressure_SaysSo()
    {
        OperatingResult result = System(
            Pump.Of([Wren.Pump], relief: Wren.Kpa(320)), Plumbing.None).Solve(Wren.At(5000, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(320, result.RailGauge.Kilopascals, 3);
        Assert.Contains("deadheads below the pressure set", Find(result, Part.Pump).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void PumpControl_AtItsMinimumSpeed_IsNamedWhereItHoldsTooMuch()
    {
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(12)),
            Wren.WiredPump);
        OperatingResult idle = system.Solve(Wren.At(900, -0.6));
        Assert.Equal(RailState.PumpFloor, idle.RailState);
        Assert.Equal(Outcome.Fails, Find(idle, Part.PumpControl).Outcome);
        Assert.Contains(
            "slows the pump further",
            system.Sweep([Wren.Rpm(900)], [Pressure.FromBars(-0.6)], Wren.Hill).Remedies[0].Text.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void PumpControl_InAReturnSystem_IsRefused() =>
        Assert.Contains(
            "FuelSystem.Returnless",
            Assert.Throws<ArgumentException>(() => Wren.System(
                ElectronicReturnless.Holding(Wren.Kpa(300), true, Wren.Volt(6)))).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Plumbing_OnAFuelWithoutViscosity_IsRefused()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => FuelSystem.Return(
            Bare(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Wren.WiredPump,
            plumbing: Plumbing.Of(supply: [LineOf(6, 4)])));
        Assert.Equal("plumbing", error.ParamName);
    }

    /// <summary>Nothing asks for a viscosity where no line is: the petrol with its viscosity left out gives petrol's numbers.</summary>
    [Fact]
    public void NoPlumbing_OnAFuelWithoutViscosity_IsComputedLikeAnyOther()
    {
        InjectorSet injectors = InjectorSet.Of(Wren.InjectorOf(500), 4);
        ManifoldReferenced regulator = ManifoldReferenced.From(Wren.Kpa(300));
        OperatingPoint point = Wren.At(6000, 0.5);
        OperatingResult known = FuelSystem.Return(Wren.Demand(), injectors, regulator, Wren.WiredPump).Solve(point);
        foreach (FuelSystem system in new[]
            {
                FuelSystem.Return(Bare(), injectors, regulator, Wren.WiredPump),
                FuelSystem.Returnless(Bare(), injectors, regulator, Wren.WiredPump),
            })
        {
            Assert.Equal(known.DutyCycle!.Value.Percent, system.Solve(point).DutyCycle!.Value.Percent, 9);
            double[] duty = new double[1];
            PointBatch.Of(system.Parts, Wren.Hill).Evaluate(
                new() { Speed = [point.Speed.RevolutionsPerSecond], Boost = [point.Boost.Pascals] }, new() { DutyCycle = duty });
            Assert.Equal(known.DutyCycle!.Value.DecimalFractions, duty[0], 9);
        }
    }

    /// <summary>
    /// Energy: the motor's losses go into the pumped fuel and its work on the returned fuel becomes heat at the regulator; what the injected
    /// share took up is burnt.
    /// </summary>
    [Fact]
    public void Heat_ThatComesBackToTheTank_IsThatOfTheReturnedFuel() =>
        Gen.Select(Gen.Double[900, 7000], Gen.Double[-0.5, 0.5]).Sample((rpm, boost) =>
        {
            OperatingResult result = System(Wren.WiredPump, Plumbing.None).Solve(Wren.At(rpm, boost));
            PumpResult pump = result.Circuit.Pumps.Single();
            double electrical = pump.Voltage.Volts * pump.Current!.Value.Amperes;
            double work = pump.PressureRise.Pascals * pump.Flow.CubicMetersPerSecond;
            double returned = result.ReturnedFlow!.Value / result.PumpFlow!.Value;
            double motor = (electrical - work) * returned;
            double regulator = pump.PressureRise.Pascals * result.ReturnedFlow!.Value.CubicMetersPerSecond;
            return Math.Abs((double)result.Circuit.HeatToTank!.Value.Watts - (motor + regulator)) < 1e-6 * electrical;
        });

    /// <summary>What two pumps in parallel inject together leaves with the fuel once, not once for each.</summary>
    [Fact]
    public void Heat_OfParallelPumps_CountsTheInjectedFuelOnce()
    {
        OperatingResult result = System(PumpParallel.Of(Wren.WiredPump, Wren.WiredPump), Plumbing.None).Solve(Wren.At(6800, 0.6));
        double electrical = result.Circuit.Pumps.Sum(pump => pump.Voltage.Volts * pump.Current!.Value.Amperes);
        Assert.Equal(electrical * (result.ReturnedFlow!.Value / result.PumpFlow!.Value), (double)result.Circuit.HeatToTank!.Value.Watts, 6);
    }

    /// <summary>A pump that a controller slows returns nothing: its heat goes with the fuel that is injected.</summary>
    [Fact]
    public void Heat_OfAnElectronicReturnlessSystem_DoesNotComeBack()
    {
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)), Wren.WiredPump);
        OperatingResult result = system.Solve(Wren.At(5500, 0.2));
        Assert.Equal(0, result.ReturnedFlow!.Value.LitersPerHour, 6);
        Assert.Equal(0, (double)result.Circuit.HeatToTank!.Value.Watts, 6);
    }

    [Fact]
    public void Feed_WithoutAnyResistance_HoldsWithNothingToCompare()
    {
        Feed none = Feed.Of(
            "none", Conductor.Awg(10), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40));
        OperatingResult result = System(Wren.WiredPump.WithFeed(none), Plumbing.None).Solve(Wren.At(3000, 0.3));
        Assert.Equal(Outcome.Holds, Find(result, Part.Feed).Outcome);
        Assert.Null(Find(result, Part.Feed).Reserve);
    }

    /// <summary>Where the pumps run, the system curve asks for what they give; a filter ends it.</summary>
    [Fact]
    public void PressureAsked_WhereThePumpsRun_IsTheirRise()
    {
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(15));
        CircuitResult circuit = System(Wren.WiredPump, Plumbing.Of(supply: [LineOf(6, 4), filter], returnLine: [LineOf(4, 4)]))
            .Solve(Wren.At(900, -0.6)).Circuit;
        Assert.Equal(
            (circuit.OutletGauge!.Value - circuit.InletGauge!.Value).Pascals,
            circuit.PressureAsked(circuit.PumpFlow!.Value).Pascals,
            3);
        Assert.Equal(300, circuit.MaximumKnownFlow.LitersPerHour, 9);
    }

    [Fact]
    public void GainOne_WithOnsetZero_IsManifoldReferencedThroughTheWholeCircuit() =>
        Gen.Select(Gen.Double[900, 7000], Gen.Double[-0.6, 1]).Sample((rpm, boost) =>
        {
            Plumbing plumbing = Plumbing.Of(supply: [LineOf(6, 4)], returnLine: [LineOf(5, 4)]);
            OperatingResult rising = System(Wren.WiredPump, plumbing, RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero)).Solve(Wren.At(rpm, boost));
            OperatingResult following = System(Wren.WiredPump, plumbing).Solve(Wren.At(rpm, boost));
            return rising.RailGauge.Pascals == following.RailGauge.Pascals
                && rising.DutyCycle?.DecimalFractions == following.DutyCycle?.DecimalFractions;
        });

    private static FuelSystem System(PumpAssembly pump, Plumbing plumbing, PressureRegulator? regulator = null) =>
        FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(600), 4),
            regulator ?? ManifoldReferenced.From(Wren.Kpa(300)),
            pump,
            plumbing: plumbing);

    /// <summary>The demand on petrol of which nobody gave viscosity and vapour pressure.</summary>
    private static FuelDemandModel Bare()
    {
        Fuel bare = Fuel.Of(
            "bare",
            Fuel.Petrol.Composition,
            Fuel.Petrol.LowerHeatingValue,
            Fuel.Petrol.DensityAt15C,
            Fuel.Petrol.ExpansionAt15C);
        return Wren.Demand(FuelConsumption.Of(bare, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
    }

    private static Line LineOf(double millimetres, double metres) => Line.Of(
        "line", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.RubberHose, [Fitting.Elbow90.Times(3)]);
}
