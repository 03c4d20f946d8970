using FuelSizing.Checks;
using FuelSizing.Circuits;
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

namespace FuelSizing.Tests.Checks;

/// <summary>What a margin says in words, where the part keeps its limit, where it does not, and where nobody can say.</summary>
public class MarginTests
{
    /// <summary>Measured up to 280 kPa only, with 70 L/h left.</summary>
    private static readonly Pump Ended = Pump.From(PumpCurve.At(
        "pump E",
        Wren.Volt(13.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(115)),
        (Wren.Kpa(280), VolumeFlow.FromLitersPerHour(70))));

    [Fact]
    public void DutyCycle_InWords_IsComparedWithItsLimit()
    {
        OperatingResult wide = Wren.System(injector: 800).Solve(Wren.At(3000, 0));
        Assert.Equal($"duty cycle {Readable.DutyCycle(wide.DutyCycle!.Value)} of at most 85.0 % (common practice, no source)", Text(wide, Part.Injectors));
        OperatingResult narrow = Wren.System(injector: 300, pump: 3).Solve(Wren.At(6800, 0.6));
        Assert.Equal($"duty cycle {Readable.DutyCycle(narrow.DutyCycle!.Value)} over the 85.0 % limit (common practice, no source)", Text(narrow, Part.Injectors));
    }

    [Fact]
    public void Pulse_InWords_IsComparedWithTheMinimumLinearPulse()
    {
        OperatingResult load = Wren.System().Solve(Wren.At(3000, 0));
        Margin held = Find(load, Part.MinimumPulse);
        Duration open = load.Pulse!.Value - load.DeadTime!.Value;
        Assert.Equal($"pulse {Readable.Of(load.Pulse!.Value)}, open for {Readable.Of(open)} of it after the dead time, of at least 0.75 ms", held.Explanation);
        Assert.Equal(open.Seconds, ((Duration)held.Used!).Seconds, 12);
        Assert.Equal(0.75, ((Duration)held.Allowed!).Milliseconds, 12);
        Assert.Equal(held.Used!.Unit, held.Allowed!.Unit);

        OperatingResult idle = Wren.System(injector: 3000).Solve(Wren.At(850, -0.65));
        Assert.Equal(
            $"pulse {Readable.Of(idle.Pulse!.Value)}, open for {Readable.Of(idle.Pulse!.Value - idle.DeadTime!.Value)} of it after the dead time, below the 0.75 ms of the minimum linear pulse width",
            Text(idle, Part.MinimumPulse));

        // 150 kPa against 2 bar of boost leaves nothing to inject with.
        OperatingResult none = Wren.System(Fixed.At(Wren.Kpa(150)), pump: 4).Solve(Wren.At(3000, 2));
        Assert.Equal("no pulse to judge: the injectors pass nothing", Text(none, Part.MinimumPulse));
        Assert.Equal("no flow: the pressure across the injector is −50 kPa", Text(none, Part.Injectors));
    }

    [Fact]
    public void Pulse_WhereTheDeadTimeIsUnknown_SaysWhatTheTableCovers()
    {
        OperatingResult cold = Wren.System().Solve(OperatingPoint.At(
            Wren.Rpm(3000), Pressure.Zero, Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(7.5), Wren.Hill.FuelTemperature)));
        string unknown = $"the dead-time table covers {Wren.DeadTime.Coverage} and gives no data for 7.5 V, 300 kPa";
        Assert.Equal((Outcome.CannotSay, unknown), (Find(cold, Part.MinimumPulse).Outcome, Text(cold, Part.MinimumPulse)));
        Assert.Equal((Outcome.CannotSay, unknown), (Find(cold, Part.Injectors).Outcome, Text(cold, Part.Injectors)));
    }

    [Fact]
    public void PressureRating_InWords_SaysOnlyWhereItIsPassed()
    {
        Assert.Equal(
            "pressure across the injector 300 kPa, known to open against 550 kPa",
            Text(Wren.System().Solve(Wren.At(3000, 0)), Part.OpeningPressure));
        Assert.Equal(
            "pressure across the injector 600 kPa, known to open against only 550 kPa",
            Text(Wren.System(Fixed.At(Wren.Kpa(600)), pump: 4).Solve(Wren.At(3000, 0)), Part.OpeningPressure));
    }

    /// <summary>Hoses are checked against the maximum pressure they may see: what the rail rises to, or the set pressure once the pump is fixed.</summary>
    [Fact]
    public void RailRating_IsComparedWithTheHigherOfRailAndSetPressure()
    {
        SizingLimits rated = SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(500));
        Line thin = Line.Of("return line", Length.FromMillimeters(2), Length.FromMeters(4), Roughness.RubberHose);
        OperatingResult floating = FuelSystem.Return(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(600), 4), ManifoldReferenced.From(Wren.Kpa(300)), Wren.WiredPump, rated, Plumbing.Of(returnLine: [thin]))
            .Solve(Wren.At(900, -0.6));
        Assert.True(floating.RailGauge > floating.RailSetGauge);
        Assert.Equal(floating.RailGauge, Find(floating, Part.PressureRating).Used);

        OperatingResult sagging = Wren.System(pump: 0.5, limits: rated).Solve(Wren.At(6500, 0.6));
        Assert.True(sagging.RailGauge < sagging.RailSetGauge);
        Assert.Equal(360, ((Pressure)Find(sagging, Part.PressureRating).Used!).Kilopascals, 6);
        Assert.Equal("360 kPa at the pump outlet, 360 kPa in the rail, rated for 500 kPa", Text(sagging, Part.PressureRating));
    }

    /// <summary>The curve of pump P gives 165 L/h at 300 kPa; six tenths of it are 99 L/h.</summary>
    [Fact]
    public void Pump_CoveredByItsCurve_DeliversJustWhatTheCurveSays()
    {
        OperatingResult enough = Wren.System().Solve(Wren.At(3000, 0));
        Assert.Equal($"delivers 165 L/h at 300 kPa in the rail, {Wanted(enough)} required, with 10 % in reserve (common practice, no source)", Text(enough, Part.Pump));

        OperatingResult weak = Wren.System(Fixed.At(Wren.Kpa(300)), pump: 0.6).Solve(Wren.At(6800, 0.6));
        Assert.Equal(
            $"delivers 99 L/h at 300 kPa in the rail, {Wanted(weak)} required, with 10 % in reserve (common practice, no source): the regulator shuts and the rail sags to {Readable.Of(weak.RailGauge)}",
            Text(weak, Part.Pump));

        OperatingResult relieved = Wren.System().With(Pump.Of([Wren.Pump], relief: Wren.Kpa(320))).Solve(Wren.At(5000, 0.6));
        Assert.Equal(
            $"delivers 0 L/h at 360 kPa in the rail, {Wanted(relieved)} required, with 10 % in reserve (common practice, no source): pump P deadheads below the pressure set: the regulator shuts and the rail sags to 320 kPa",
            Text(relieved, Part.Pump));
    }

    /// <summary>In parallel with 165 L/h of a pump whose curve covers 300 kPa, one whose curve ends before gives between 0 and 70 L/h.</summary>
    [Fact]
    public void Pump_WhoseCurveEnds_DeliversAtLeastOrAtMost()
    {
        FuelSystem pair = Wren.System(Fixed.At(Wren.Kpa(300)), injector: 3000).With(PumpParallel.Of(Pump.From(Wren.Pump), Ended));
        OperatingResult little = pair.Solve(Wren.At(3000, 0));
        Assert.Equal($"delivers at least 165 L/h at 300 kPa in the rail, {Wanted(little)} required, with 10 % in reserve (common practice, no source)", Text(little, Part.Pump));
        OperatingResult much = pair.Solve(Wren.At(6800, 3));
        Assert.StartsWith(
            $"delivers at most 235 L/h at 300 kPa in the rail, {Wanted(much)} required, with 10 % in reserve (common practice, no source)", Text(much, Part.Pump), StringComparison.Ordinal);

        // In between the data decides nothing, and the pump whose data it is that lacks is named, though it is the second.
        OperatingResult between = pair.Solve(Wren.At(6800, 1.8));
        Assert.InRange(between.InjectedFlow.LitersPerHour * 1.1, 166, 234);
        Assert.Equal("the curve of pump E covers 0 kPa to 280 kPa, too little for 300 kPa in the rail", Text(between, Part.Pump));
        Assert.Equal(Outcome.CannotSay, Find(between, Part.Pump).Outcome);
    }

    /// <summary>A supply line so thin that it eats what the curve knows of before anything reaches the rail.</summary>
    [Fact]
    public void Pump_WhoseCurveEndsBeforeTheLinesLoss_IsNotJudged()
    {
        Line thin = Line.Of("supply", Length.FromMillimeters(1), Length.FromMeters(4), Roughness.DrawnTube);
        OperatingResult result = Wren.System().With(Plumbing.Of(supply: [thin])).With(Ended).Solve(Wren.At(3500, 0));
        Assert.True(thin.PressureLoss(result.InjectedFlow, result.System.Demand.Consumption.Fuel, Wren.Hill.FuelTemperature).Total > Wren.Kpa(280));
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Pump).Outcome);
        Assert.Equal("the curve of pump E covers 0 kPa to 280 kPa, too little for 300 kPa in the rail", Text(result, Part.Pump));
    }

    [Fact]
    public void Pump_WhoseCurveBeginsLater_SaysWhere()
    {
        Pump late = Pump.From(PumpCurve.At(
            "pump L",
            Wren.Volt(13.5),
            (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(185)),
            (Wren.Kpa(600), VolumeFlow.Zero)));
        Assert.Equal(
            "the curve of pump L begins at 200 kPa and gives no data below it",
            Text(Wren.System(Fixed.At(Wren.Kpa(150))).With(late).Solve(Wren.At(3000, 0)), Part.Pump));
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature);
        Assert.Equal(
            "the lowest curve of pump P was measured at 13.5 V and gives no data for 8.0 V",
            Text(Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, weak)), Part.Pump));
    }

    [Fact]
    public void ReturnLine_InWords_SaysWhatItPassesAndAtWhatPressure()
    {
        Line wide = Line.Of("return line", Length.FromMillimeters(7), Length.FromMeters(3), Roughness.RubberHose);
        OperatingResult result = Wren.System().With(Plumbing.Of(returnLine: [wide])).Solve(Wren.At(3000, 0));
        CircuitResult circuit = result.Circuit;
        Assert.True(circuit.ReturnedFlow!.Value.LitersPerHour > 100);
        Assert.Equal(
            $"passes {Readable.PumpFlow(circuit.ReturnedFlow!.Value)} at {Readable.Of(circuit.ReturnGauge!.Value)}, below the 300 kPa set",
            Text(result, Part.ReturnLine));
    }

    [Fact]
    public void PumpControl_InWords_NamesTheVoltageOrTheRailItCannotLower()
    {
        OperatingResult Held(double minimum, OperatingPoint point) => FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(minimum)),
            Pump.Of([Wren.WiredCurve(9, 0.6), .. Wren.WiredPump.Curves])).Solve(point);
        OperatingResult load = Held(9, Wren.At(5000, 0.3));
        Margin held = Find(load, Part.PumpControl);
        Assert.Equal(RailState.Regulated, load.RailState);
        Assert.Equal($"the pump runs on {Readable.Of(load.Circuit.Pumps.Single().Voltage)}", held.Explanation);
        Assert.Equal((330, 330), (((Pressure)held.Used!).Kilopascals, ((Pressure)held.Allowed!).Kilopascals));

        OperatingResult idle = Held(12, Wren.At(900, -0.6));
        Assert.Equal(
            $"at its lowest speed the pump still holds {Readable.Of(idle.RailGauge)}, over the 240 kPa target", Text(idle, Part.PumpControl));
    }

    [Fact]
    public void Filter_InWords_SaysHowFarItsLossIsKnown()
    {
        Filter filter = Filter.Of("filter F", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(15));
        OperatingResult result = Wren.System().With(Plumbing.Of(supply: [filter])).Solve(Wren.At(3000, 0));
        Assert.Equal(
            $"filter F passes {Readable.PumpFlow(result.PumpFlow!.Value)}, its loss is known up to 600 L/h", Text(result, Part.Filter));
    }

    [Fact]
    public void Feed_InWords_NamesVoltageAndCurrent()
    {
        OperatingResult result = Wren.System().With(Wren.WiredPump.WithFeed(PumpAssemblyTests.FeedOf(3))).Solve(Wren.At(3000, 0.3));
        PumpResult pump = result.Circuit.Pumps.Single();
        Assert.Equal(
            $"pump W gets {Readable.Of(pump.Voltage)} at {Readable.Of(pump.Current!.Value)}: {Readable.VoltageDrop(pump.FeedDrop)} lost of at most 0.68 V, 5 % of the supply (common practice, no source)",
            Text(result, Part.Feed));
    }

    private static string Wanted(OperatingResult result) => Readable.PumpFlow(result.InjectedFlow * 1.1);

    private static string Text(OperatingResult result, Part part) => Find(result, part).Explanation;
}
