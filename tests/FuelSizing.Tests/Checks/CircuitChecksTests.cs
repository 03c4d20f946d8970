using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>What each part is compared with at one point, at the limit itself and where there is nothing to compare.</summary>
public class CircuitChecksTests
{
    private static readonly ElectronicReturnless Control =
        ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(6));

    // Measured down to the lowest voltage that the controller gives it.
    private static readonly Pump Slowed = Pump.Of([Wren.WiredCurve(6, 0.4), Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)]);

    /// <summary>A hose bears what the regulator asks for also while a weak pump does not bring it: 300 + 60 kPa against 400.</summary>
    [Fact]
    public void RailRating_OfARailThatSags_IsComparedWithTheSetPressure()
    {
        OperatingResult result = Wren.System(pump: 0.55, limits: RatedFor(400)).Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.True(result.RailGauge < result.RailSetGauge);
        Assert.Equal((400.0 / 360) - 1, Reserve(result, Part.PressureRating)!.Value, 9);
    }

    [Fact]
    public void RailRating_OfARailThatCannotFallToTheSet_IsComparedWithItsPressure()
    {
        Line narrow = Line.Of("back", Length.FromMillimeters(2), Length.FromMeters(4), Roughness.RubberHose);
        OperatingResult result = Wren.System(limits: RatedFor(400)).With(Plumbing.Of(returnLine: [narrow])).Solve(Wren.At(900, -0.6));
        Assert.Equal(RailState.ReturnFloor, result.RailState);
        Assert.True(result.RailGauge > result.RailSetGauge);
        Assert.Equal((400 / result.RailGauge.Kilopascals) - 1, Reserve(result, Part.PressureRating)!.Value, 9);
    }

    /// <summary>The same flow passes both, so the one rated for less is nearer to its end: three times 60 L/h.</summary>
    [Fact]
    public void Filter_OfTwoInARow_IsTheOneRatedForLess()
    {
        Filter large = Filter.Of("large", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(5));
        Filter small = Filter.Of("small", VolumeFlow.FromLitersPerHour(60), Wren.Kpa(5));
        foreach (Plumbing plumbing in new[] { Plumbing.Of(supply: [large, small]), Plumbing.Of(suction: [small], supply: [large]) })
        {
            OperatingResult result = Wren.System().With(plumbing).Solve(Wren.At(3000, 0));
            Assert.Equal(Outcome.Holds, Find(result, Part.Filter).Outcome);
            Assert.Equal((180 / result.PumpFlow!.Value.LitersPerHour) - 1, Reserve(result, Part.Filter)!.Value, 9);
        }
    }

    /// <summary>A rail that sags sends nothing back, so that a filter in the return line has nothing to pass.</summary>
    [Fact]
    public void Filter_WithNothingThroughIt_HoldsWithNothingToCompare()
    {
        Filter filter = Filter.Of("back", VolumeFlow.FromLitersPerHour(60), Wren.Kpa(5));
        OperatingResult result = Wren.System(pump: 0.55).With(Plumbing.Of(returnLine: [filter])).Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(0, result.ReturnedFlow!.Value.LitersPerHour);
        Assert.Equal(Outcome.Holds, Find(result, Part.Filter).Outcome);
        Assert.Null(Reserve(result, Part.Filter));
    }

    [Fact]
    public void Filter_LoadedToTheEndOfItsData_IsStillKnown()
    {
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(20), Wren.Kpa(5));
        FuelSystem system = Returnless(Fixed.At(Wren.Kpa(400))).With(Plumbing.Of(supply: [filter]));
        OperatingResult solved = system.Solve(Wren.At(3000, 0));

        // Without a return line what is injected is what passes the filter.
        Judgement Through(double flow) => Judged(
            solved, Part.Filter, solved.SolvedCircuit with { Task = solved.SolvedCircuit.Task with { Injected = flow } });
        double maximum = filter.MaximumFlow.CubicMetersPerSecond;
        Assert.Equal(new Judgement(Part.Filter, Outcome.Holds, 0), Through(maximum));
        Assert.Equal(new Judgement(Part.Filter, Outcome.CannotSay, null), Through(maximum * 1.001));
    }

    [Fact]
    public void PumpControl_ThatGoverns_HoldsWithNothingToCompare()
    {
        OperatingResult result = Returnless(Control).With(Slowed).Solve(Wren.At(5000, 0.3));
        Assert.Equal(RailState.Regulated, result.RailState);
        Assert.Equal(Outcome.Holds, Find(result, Part.PumpControl).Outcome);
        Assert.Null(Reserve(result, Part.PumpControl));
    }

    /// <summary>Without its curve at 6 V it is not known what the pump still does there.</summary>
    [Fact]
    public void PumpControl_WithNoCurveAtTheLowestVoltage_CannotBeJudged()
    {
        OperatingResult result = Returnless(Control).With(Wren.WiredPump).Solve(Wren.At(5000, 0.3));
        Assert.Equal(Outcome.CannotSay, Find(result, Part.PumpControl).Outcome);
    }

    [Fact]
    public void PumpControl_WhereThePumpsDataEnds_CannotBeJudged()
    {
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature);
        OperatingResult result = Returnless(Control).Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, weak));
        Assert.Equal(RailState.NotCovered, result.RailState);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.PumpControl).Outcome);
    }

    /// <summary>Where a pump's curve ends, it delivers something between two flows; it fails only if the larger is too little.</summary>
    [Theory]
    [InlineData(1, 1.2, Outcome.Holds)]
    [InlineData(0.9, 1, Outcome.CannotSay)]
    [InlineData(0.9, 0.999, Outcome.Fails)]
    public void Pump_ThatMayJustDeliver_CannotBeSaidToFail(double minimum, double maximum, Outcome expected)
    {
        FuelSystem system = Wren.System();
        OperatingResult solved = system.Solve(Wren.At(3000, 0));
        double injected = solved.SolvedDemand.Injected;
        SolvedCircuit circuit = solved.SolvedCircuit with { MinimumInjectable = injected * minimum, MaximumInjectable = injected * maximum };
        Assert.Equal(expected, Judged(solved, Part.Pump, circuit).Outcome);
    }

    /// <summary>150 kPa in the rail against 200 in the manifold: the dead time is known at any pressure, but there is no pulse.</summary>
    [Fact]
    public void Injectors_WithNoPressureAcrossThem_FailByAllOfTheFlowAndHaveNoPulse()
    {
        Injector steady = Injector.Of(
            "steady",
            VolumeFlow.FromMillilitersPerMinute(360),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(16), Wren.Ms(1))),
            Wren.Ms(1.6),
            Wren.Kpa(550));
        OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(150)), pump: 3)
            .With(InjectorSet.Of(steady, 4))
            .Solve(Wren.At(3000, 2));
        Assert.Equal(-50, result.InjectorDifferential.Kilopascals, 6);
        Assert.Equal(0, result.StaticFlow!.Value.CubicMetersPerSecond);
        Assert.Equal(1, result.DeadTime!.Value.Milliseconds, 9);
        Assert.Null(result.Pulse);
        Assert.Null(result.DutyCycle);
        Assert.Equal(Outcome.Fails, Find(result, Part.Injectors).Outcome);
        Assert.Equal(-1, Reserve(result, Part.Injectors));
        Assert.Equal(Outcome.Holds, Find(result, Part.MinimumPulse).Outcome);
        Assert.Null(Reserve(result, Part.MinimumPulse));
    }

    /// <summary>300 + 6 · 70 kPa in the rail stand against 70 kPa in the manifold: 650 kPa, and the table ends at 600.</summary>
    [Fact]
    public void Injectors_OffTheirDeadTimeTable_HaveFlowButNoPulseToJudge()
    {
        OperatingResult result = Wren.System(RisingRate.From(Wren.Kpa(300), 6, Pressure.Zero), pump: 5).Solve(Wren.At(3000, 0.7));
        Assert.Equal(650, result.InjectorDifferential.Kilopascals, 6);
        Assert.True(result.StaticFlow!.Value.CubicMetersPerSecond > 0);
        Assert.Null(result.DeadTime);
        Assert.Null(result.Pulse);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Injectors).Outcome);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.MinimumPulse).Outcome);
    }

    /// <summary>A weak pump is not attributed to the injectors: they are judged at the 300 kPa that the regulator holds above the manifold.</summary>
    [Fact]
    public void Injection_InARailThatSags_IsComputedThereAndJudgedAtThePressureSet()
    {
        FuelSystem system = Wren.System(pump: 0.55);
        OperatingResult result = system.Solve(Wren.At(6000, 0.6));
        (Injection actual, Injection judged) = system.Parts.InjectionAt(result.SolvedDemand, result.SolvedCircuit);
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(result.RailGauge.Pascals - 60e3, actual.Differential, 6);
        Assert.Equal(300e3, judged.Differential, 6);
        Assert.True(actual.StaticFlow < judged.StaticFlow);
        Assert.True(actual.DutyCycle > judged.DutyCycle);
    }

    private static SizingLimits RatedFor(double kilopascals) =>
        SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(kilopascals));

    private static FuelSystem Returnless(PressureRegulator regulator) =>
        FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), regulator, Wren.WiredPump);

    private static Judgement Judged(OperatingResult solved, Part part, in SolvedCircuit circuit)
    {
        ICheck check = solved.System.Checks.Single(check => check.Part == part);
        PointValues<Real> values = PointReading.Of(solved.Parts, solved.SolvedDemand, circuit, solved.Judged);
        return Judgement.Of(part, check.Read(solved.Parts, values));
    }

    private static double? Reserve(OperatingResult result, Part part) => Find(result, part).Reserve?.DecimalFractions;
}
