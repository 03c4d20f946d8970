using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// A pump measured at 12 V alone, on 14.5 V: what it delivers, and all that follows from it, is known between two bounds. Each check holds by the bound that is
/// conservative for it, fails by the other, and with a limit between the two says both and the limit.
/// </summary>
public class BoundedChecksTests
{
    private static readonly Conditions Strong = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14.5), Wren.Hill.FuelTemperature);

    private static readonly Line Narrow = Line.Of("return", Length.FromMillimeters(2.4), Length.FromMeters(4), Roughness.RubberHose);

    private static readonly Line Suction = Line.Of("suction", Length.FromMillimeters(5), Length.FromMeters(1.5), Roughness.RubberHose);

    /// <summary>A return line so narrow that it, and with it the pump's flow, says what the rail has.</summary>
    private static FuelSystem Floating(SizingLimits? limits = null, double opensAgainst = 1500) => Wren.System(limits: limits)
        .With(Plumbing.Of(suction: [Suction], returnLine: [Narrow]))
        .With(InjectorSet.Of(InjectorOf(opensAgainst), 4))
        .With(Pump.From(Wren.WiredCurve(12, 1)));

    private static OperatingResult Solved(FuelSystem system) => system.Solve(OperatingPoint.At(Wren.Rpm(1200), Pressure.FromBars(-0.5), Strong));

    private static Injector InjectorOf(double opensAgainst, double minimum = 1.6) => Injector.Of(
        "injector",
        VolumeFlow.FromMillilitersPerMinute(800),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.2)), (Wren.Volt(16), Wren.Ms(0.8))),
        Wren.Ms(minimum),
        Wren.Kpa(opensAgainst));

    private static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) Bounds(OperatingResult result) =>
        PointReading.Of(result) is var at ? (at.Minimum, at.Maximum) : default;

    private static string Between(double least, double most, double limit) =>
        $"the pump's data ends before the point: known only to lie between {Kpa(least)} and {Kpa(most)}, with a limit of {Kpa(limit)}";

    private static string Kpa(double pascals) => Readable.Of(Pressure.FromPascals(pascals));

    private static void Is(OperatingResult result, Part part, Outcome outcome, string words) =>
        Assert.Equal((outcome, words), (Find(result, part).Outcome, Find(result, part).Explanation));

    [Fact]
    public void Bounds_OfThisPump_AreApart()
    {
        OperatingResult result = Solved(Floating());
        (CircuitValues<Real> least, CircuitValues<Real> most) = Bounds(result);
        Assert.Equal(RailState.ReturnFloor, result.RailState);
        Assert.True(most.Rail.Value > least.Rail.Value + 10e3);
        Assert.True(most.Differential.Value > least.Differential.Value + 10e3);
        Assert.True(most.InletGauge.Value > least.InletGauge.Value + 100);
    }

    [Fact]
    public void OpeningPressure_IsJudgedByTheHighestThatMayBe()
    {
        OperatingResult open = Solved(Floating());
        (CircuitValues<Real> least, CircuitValues<Real> most) = Bounds(open);
        Is(open, Part.OpeningPressure, Outcome.Holds, $"pressure across the injector {Kpa(most.Differential)}, known to open against 1,500 kPa");

        double between = (least.Differential.Value + most.Differential.Value) / 2e3;
        Is(Solved(Floating(opensAgainst: between)), Part.OpeningPressure, Outcome.CannotSay, Between(open.Judged.Differential, most.Differential, between * 1e3));
        Is(
            Solved(Floating(opensAgainst: 310)),
            Part.OpeningPressure,
            Outcome.Fails,
            $"pressure across the injector {Kpa(least.Differential)}, known to open against only 310 kPa");
    }

    [Fact]
    public void Rating_IsJudgedByTheHighestThatMayBe()
    {
        OperatingResult open = Solved(Floating(Rated(1500)));
        (CircuitValues<Real> least, CircuitValues<Real> most) = Bounds(open);
        Is(open, Part.PressureRating, Outcome.Holds, $"{Kpa(most.OutletGauge)} at the pump outlet, {Kpa(open.RailGauge.Pascals)} in the rail, rated for 1,500 kPa");
        double between = (open.RailGauge.Pascals + most.OutletGauge) / 2e3;
        Is(Solved(Floating(Rated(between))), Part.PressureRating, Outcome.CannotSay, Between(open.RailGauge.Pascals, most.OutletGauge, between * 1e3));
        double low = least.Rail.Value / 1e3 * 0.9;
        OperatingResult fails = Solved(Floating(Rated(low)));
        Assert.Equal(Outcome.Fails, Find(fails, Part.PressureRating).Outcome);
        Assert.EndsWith($" in the rail, rated for only {Kpa(low * 1e3)}", Find(fails, Part.PressureRating).Explanation, StringComparison.Ordinal);

        // What would remedy it stands the highest that may be.
        Remedy remedy = Find(fails, Part.PressureRating).Check.RemedyFor(new([fails], [fails]))!;
        Assert.Equal(most.OutletGauge.Value, ((Pressure)remedy.Needed!).Pascals, 3);
        Assert.Equal(Outcome.Holds, Find(Solved(Floating(Rated(((Pressure)remedy.Needed).Kilopascals))), Part.PressureRating).Outcome);
    }

    [Fact]
    public void Inlet_IsJudgedByTheLowestThatMayBe()
    {
        OperatingResult open = Solved(Floating());
        (CircuitValues<Real> least, CircuitValues<Real> most) = Bounds(open);
        double ambient = Wren.Hill.Atmosphere.Pressure.Pascals;
        double vapour = FuelSizing.Fuels.Fuel.Petrol.VapourPressureAt(Wren.Hill.FuelTemperature).Pascals;
        double between = ambient + ((least.InletGauge.Value + most.InletGauge.Value) / 2) - vapour;
        OperatingResult straddled = Solved(Floating(Margin(between)));
        Is(straddled, Part.Suction, Outcome.CannotSay, Between(ambient + least.InletGauge.Value, ambient + most.InletGauge.Value, vapour + between));

        double under = ambient + least.InletGauge.Value - vapour - 100;
        OperatingResult holds = Solved(Floating(Margin(under)));
        Is(
            holds,
            Part.Suction,
            Outcome.Holds,
            $"{Kpa(ambient + least.InletGauge.Value)} absolute at the inlet, {Kpa(vapour + under)} required over the vapour pressure of petrol at 35 °C");
        double over = ambient + most.InletGauge.Value - vapour + 1500;
        OperatingResult fails = Solved(Floating(Margin(over)));
        Assert.Equal(Outcome.Fails, Find(fails, Part.Suction).Outcome);
        Remedy remedy = Find(fails, Part.Suction).Check.RemedyFor(new([fails], [fails]))!;
        Assert.Equal(1500, ((Pressure)remedy.Needed!).Pascals, 1e-3);
        Assert.Equal("2 kPa more at the pump inlet: a wider or shorter suction line, a lower pump, or cooler fuel.", remedy.ToString());

        static SizingLimits Margin(double pascals) =>
            SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), null, null, Pressure.FromPascals(pascals));
    }

    [Fact]
    public void ReturnLine_IsJudgedByTheMostThatMayFlow()
    {
        OperatingResult open = Solved(Floating());
        (CircuitValues<Real> least, CircuitValues<Real> most) = Bounds(open);
        Is(
            open,
            Part.ReturnLine,
            Outcome.Fails,
            $"passes {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(least.Returned.Value))} only at {Kpa(least.ReturnGauge)}: the rail cannot fall to the 250 kPa set");
        double between = (least.ReturnGauge.Value + most.ReturnGauge.Value) / 2;
        OperatingResult straddled = Solved(Floating().With(Fixed.At(Pressure.FromPascals(between))));
        (least, most) = Bounds(straddled);
        Is(straddled, Part.ReturnLine, Outcome.CannotSay, Between(least.ReturnGauge, most.ReturnGauge, between));
        OperatingResult holds = Solved(Floating().With(Fixed.At(Pressure.FromPascals(most.ReturnGauge.Value * 1.1))));
        most = Bounds(holds).Maximum;
        Is(
            holds,
            Part.ReturnLine,
            Outcome.Holds,
            $"passes {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(most.Returned.Value))} at {Kpa(most.ReturnGauge)}, below the {Kpa(holds.RailSetGauge.Pascals)} set");
    }

    /// <summary>A rail that may be higher passes the same fuel in less time: open time goes with the reciprocal of the root of the differential.</summary>
    [Fact]
    public void MinimumPulse_IsJudgedByTheHighestRailThatMayBe()
    {
        OperatingResult open = Solved(Floating());
        (_, CircuitValues<Real> most) = Bounds(open);
        double longest = open.Judged.Pulse!.Value - open.Judged.DeadTime!.Value;
        double shortest = longest * Math.Sqrt(open.Judged.Differential / most.Differential.Value);
        Assert.True(shortest < longest * 0.99);
        double between = (shortest + longest) / 2;

        // 0.9 ms is the dead time at 14 V, at which the minimum is stated.
        OperatingResult straddled = Solved(Floating().With(InjectorSet.Of(InjectorOf(1500, (between * 1e3) + 0.9), 4)));
        Is(
            straddled,
            Part.MinimumPulse,
            Outcome.CannotSay,
            $"the pump's data ends before the point: known only to lie between {Ms(shortest)} and {Ms(longest)}, with a limit of {Ms(between)}");
        CheckReading<Real> reading = Find(straddled, Part.MinimumPulse).Reading;
        Assert.Equal((shortest / between) - 1, reading.Margin.Value, 9);
        Assert.Equal((longest / between) - 1, reading.BestMargin.Value, 9);

        static string Ms(double seconds) => Readable.Of(Duration.FromSeconds(seconds));
    }

    /// <summary>Nothing is known of the rest where the pump's curves begin after the voltage it gets.</summary>
    [Fact]
    public void Pressures_WhereNothingIsKnown_SayThatTheDataDoesNotCoverThePoint()
    {
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature);
        OperatingResult result = Floating(Rated(900)).With(Wren.WiredPump).With(
            Plumbing.Of(suction: [Suction], supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(15))], returnLine: [Narrow])).Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, weak));
        foreach (Part part in new[] { Part.ReturnLine, Part.Suction, Part.Filter })
        {
            Is(result, part, Outcome.CannotSay, "the pump's data does not cover the point");
        }

        Assert.Equal(Outcome.CannotSay, Find(result, Part.PressureRating).Outcome);
        Assert.Equal("300 kPa in the rail, rated for 900 kPa; the pressure at the pump outlet is not known", Find(result, Part.PressureRating).Explanation);

        // Over its rating in the rail alone it fails, whatever the pump outlet has.
        OperatingResult over = result.System.With(Rated(250)).Solve(result.Point);
        Is(over, Part.PressureRating, Outcome.Fails, "300 kPa in the rail, rated for only 250 kPa");
        Assert.Equal(300, ((Pressure)Find(over, Part.PressureRating).Check.RemedyFor(new([over], [over]))!.Needed!).Kilopascals, 9);
    }

    private static SizingLimits Rated(double kilopascals) => SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(kilopascals));
}
