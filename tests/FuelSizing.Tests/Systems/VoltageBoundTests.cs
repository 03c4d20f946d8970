using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>A supply beyond the measured voltages: each check takes the bound that is conservative for it.</summary>
public class VoltageBoundTests
{
    // The pump as measured at 12 V, and what the affinity laws make of it at 14.5 V.
    private static readonly PumpCurve AtTwelve = Wren.WiredCurve(12, 1);
    private static readonly PumpCurve Scaled = AtVoltage(14.5);

    private static readonly Line Narrow = Line.Of("return", Length.FromMillimeters(3.1), Length.FromMeters(4), Roughness.RubberHose);

    private static PumpCurve AtVoltage(double volts)
    {
        double speed = volts / 12;
        return PumpCurve.WithCurrent(
            "pump W",
            Wren.Volt(volts),
            [
                .. Enumerable.Range(0, 9).Select(point => AtTwelve.MaximumPressure * (point / 8.0)).Select(rise => (
                    rise * (speed * speed), AtTwelve.FlowAt(rise) * speed, AtTwelve.CurrentAt(rise) * (speed * speed))),
            ]);
    }

    private static OperatingResult Solve(PumpCurve[] curves, double volts, FuelSystem system, double boost = 0) =>
        system.With(Pump.Of(curves)).Solve(OperatingPoint.At(
            Wren.Rpm(3000), Pressure.FromBars(boost), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature)));

    [Fact]
    public void ReturnLine_AboveTheMeasuredVoltages_IsJudgedByTheMostThatMayFlow()
    {
        FuelSystem system = Wren.System().With(Plumbing.Of(returnLine: [Narrow]));
        OperatingResult measured = Solve([AtTwelve, Scaled], 14.5, system);
        OperatingResult guessed = Solve([AtTwelve], 14.5, system);
        Assert.Equal(Outcome.Fails, Find(measured, Part.ReturnLine).Outcome);
        Assert.NotEqual(Outcome.Holds, Find(guessed, Part.ReturnLine).Outcome);
        Assert.Contains("the pump's data ends before the point", Find(guessed, Part.ReturnLine).Explanation, StringComparison.Ordinal);

        // A line wide enough for the most that may flow holds also where only a bound is known.
        Line wide = Line.Of("return", Length.FromMillimeters(9), Length.FromMeters(4), Roughness.RubberHose);
        Assert.Equal(Outcome.Holds, Find(Solve([AtTwelve], 14.5, system.With(Plumbing.Of(returnLine: [wide]))), Part.ReturnLine).Outcome);
    }

    [Fact]
    public void Inlet_AboveTheMeasuredVoltages_IsJudgedByTheMostThatMayFlow()
    {
        Line suction = Line.Of("suction", Length.FromMillimeters(6), Length.FromMeters(1), Roughness.RubberHose);
        FuelSystem system = Wren.System().With(Plumbing.Of(suction: [suction]));
        double known = Pascals(Solve([AtTwelve, Scaled], 14.5, system));
        Assert.True(Pascals(Solve([AtTwelve], 14.5, system)) <= known);
        Assert.True(Pascals(Solve([AtTwelve], 12, system)) > known);

        static double Pascals(OperatingResult result) => ((Pressure)Find(result, Part.Suction).Used!).Pascals;
    }

    [Fact]
    public void FilterRatingAndWiring_AboveTheMeasuredVoltages_AreJudgedByTheMostThatMayBe()
    {
        Filter filter = Filter.Of("filter F", VolumeFlow.FromLitersPerHour(300), Wren.Kpa(15));
        FuelSystem system = Wren.System(limits: SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(900)))
            .With(Plumbing.Of(supply: [filter]));
        OperatingResult measured = Solve([AtTwelve, Scaled], 14.5, system);
        OperatingResult guessed = Solve([AtTwelve], 14.5, system);
        foreach (Part part in new[] { Part.Filter, Part.PressureRating })
        {
            Assert.True(guessed.Margins.Single(margin => margin.Part == part).Reserve <= measured.Margins.Single(margin => margin.Part == part).Reserve, part.Name);
        }
    }

    [Fact]
    public void Pump_BelowTheMeasuredVoltages_HoldsOnlyByTheLeastThatItMayDeliver()
    {
        // Just enough by the affinity laws, which a motor that loses voltage in its winding does not reach.
        FuelSystem system = Wren.System();
        Outcome At(double scale, double boost) =>
            Find(Solve([Wren.WiredCurve(13.5, scale)], 11.5, system, boost), Part.Pump).Outcome;
        Outcome[] found = [.. Enumerable.Range(0, 80).Select(step => At(0.2 + (0.05 * step), 0.3)).Distinct()];
        Assert.Equal([Outcome.Fails, Outcome.CannotSay, Outcome.Holds], found);
        for (double scale = 0.2; scale < 3; scale += 0.05)
        {
            OperatingResult result = Solve([Wren.WiredCurve(13.5, scale)], 11.5, system, 0.3);
            if (Find(result, Part.Pump).Outcome == Outcome.CannotSay)
            {
                Assert.Contains("was measured at 13.5 V", Find(result, Part.Pump).Explanation, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Bounds_AtAMeasuredVoltage_AreTheEstimate()
    {
        OperatingResult result = Solve([AtTwelve, Scaled], 13, Wren.System().With(Plumbing.Of(returnLine: [Narrow])));
        Assert.True(result.SolvedCircuit.IsExact);
        PointValues<FuelSizing.Numerics.Real> values = PointReading.Of(result);
        Assert.Equal(values.Minimum, values.Maximum);
        Assert.Equal<double>(values.ReturnGauge, values.Maximum.ReturnGauge);
        Assert.Equal(RailState.ReturnFloor, result.RailState);
    }

    /// <summary>A curve that ends above zero flow leaves nothing open as long as the regulator governs before its end; in parallel past it, it does.</summary>
    [Fact]
    public void Bounds_OfAPumpWithAnOpenEnd_AreOneAnswerBeforeIt_AndTwoPastIt()
    {
        Pump open = Pump.From(PumpCurve.At(
            "open",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(100))));
        FuelSystem system = Wren.System().With(Plumbing.Of(returnLine: [Narrow]));
        OperatingResult within = system.With(open).Solve(Wren.At(3000, 0));
        Assert.Equal(RailState.Regulated, within.RailState);
        Assert.True(within.SolvedCircuit.IsExact);

        OperatingResult past = Wren.System(FuelSizing.Regulators.Fixed.At(Wren.Kpa(450)))
            .With(Plumbing.Of(returnLine: [Narrow]))
            .With(PumpParallel.Of(open, Pump.From(Wren.Pump)))
            .Solve(Wren.At(3000, 0));
        Assert.False(past.SolvedCircuit.IsExact);
        Assert.True(past.SolvedCircuit.Upper.ReturnFlow > past.SolvedCircuit.State.ReturnFlow);
    }

    /// <summary>
    /// The feed's words go with the bound that decides: what the motor gets and what its feed takes are the supply.
    /// </summary>
    [Fact]
    public void Feed_PastTheMeasuredVoltages_IsToldInFiguresThatAddUp()
    {
        OperatingResult result = Wren.System()
            .With(Pump.From(AtTwelve).WithFeed(FuelSizing.Tests.Pumps.PumpAssemblyTests.FeedOf(2)))
            .Solve(Wren.At(3000, 0));
        Margin feed = Find(result, Part.Feed);
        ElectricPotential drop = (ElectricPotential)feed.Used!;
        Assert.True(drop.Volts > 13.5 - result.Circuit.Pumps[0].Voltage.Volts);
        Assert.Contains($"gets {FuelSizing.Quantities.Readable.Of(Wren.Volt(13.5) - drop)} at ", feed.Explanation, StringComparison.Ordinal);
    }

    /// <summary>
    /// A returnless rail that the pump's data does not cover is taken as its regulator at the tank sets it, less what the line to the rail
    /// takes: the injectors must not be judged at the pressure before the line.
    /// </summary>
    [Fact]
    public void Injectors_OfAReturnlessRailThatIsNotCovered_AreJudgedBeyondTheLine()
    {
        Line line = Line.Of("supply", Length.FromMillimeters(4), Length.FromMeters(4), Roughness.RubberHose);
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(), Wren.System().Injectors, FuelSizing.Regulators.Fixed.At(Wren.Kpa(400)), Pump.From(AtTwelve), plumbing: Plumbing.Of(supply: [line]));
        OperatingResult known = system.Solve(Wren.At(6000, 0.3));
        OperatingResult open = system
            .With(Pump.From(PumpCurve.WithCurrent(
                "short",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(300), ElectricCurrent.FromAmperes(5)),
                (Wren.Kpa(100), VolumeFlow.FromLitersPerHour(280), ElectricCurrent.FromAmperes(6)))))
            .Solve(Wren.At(6000, 0.3));
        Assert.Equal(RailState.NotCovered, open.RailState);
        Assert.Equal(known.RailGauge.Pascals, open.RailGauge.Pascals, 1e-6);
        Assert.Equal(known.DutyCycle!.Value.DecimalFractions, open.DutyCycle!.Value.DecimalFractions, 1e-12);
        Assert.Equal(open.RailGauge.Pascals, open.Circuit.RailGauge.Pascals);
        Assert.True(open.RailGauge < Wren.Kpa(395));
    }
}
