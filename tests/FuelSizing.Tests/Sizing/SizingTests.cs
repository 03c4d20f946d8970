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
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>Each inverse answer is put back into the forward solver; where it says none, a scan must find none.</summary>
public class SizingTests
{
    private const int Goals = 60;

    private static readonly Gen<(double Rpm, double Boost, double Ethanol)> Goal =
        Gen.Select(Gen.Double[2500, 7200], Gen.Double[0, 1], Gen.Double[0, 85]);

    private static readonly Gen<((double Rpm, double Boost, double Ethanol)[] Goals, double Metres, double Minimum, double Gain)> PumpTask =
        Gen.Select(Goal.Array[1, 5], Gen.Double[0.5, 6], Gen.Double[0, 20], Gen.Double[1, 6]);

    [Fact]
    public void MinimumStaticFlow_PutBack_IsAtTheDutyLimit() =>
        Gen.Select(Goal, Gen.Double[0.6, 2]).Sample(
            (goal, pump) =>
            {
                FuelSystem system = SystemOf(goal.Ethanol, 360, pump);
                OperatingPoint point = Wren.At(goal.Rpm, goal.Boost);
                SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(system, point);
                return answer.Value is { } flow
                    ? Holds(With(system, flow), point)
                        && Fails(With(system, flow * (1 - 1e-9)), point)
                        && Math.Abs(With(system, flow).Solve(point).DutyCycle!.Value.Percent - 85) <= 85e-9
                    : NoneOf(Scan(20e-6 / 60, 10e-3 / 60), flow => Holds(With(system, VolumeFlow.FromCubicMetersPerSecond(flow)), point));
            },
            iter: Goals);

    [Fact]
    public void MinimumStaticFlow_InClosedForm_IsTheSame() =>
        Goal.Sample(
            goal =>
            {
                FuelSystem system = SystemOf(goal.Ethanol, 360, 4);
                OperatingPoint point = Wren.At(goal.Rpm, goal.Boost);
                OperatingResult result = system.Solve(point);

                // Q = (Q_f/z) · T/(D T − t_d) at this pressure and fuel, carried back to the rating.
                double needed = result.InjectedFlow.CubicMetersPerSecond / 4 * result.AvailableTime.Seconds
                    / ((0.85 * result.AvailableTime.Seconds) - result.DeadTime!.Value.Seconds);
                double rated = needed / Math.Sqrt(
                    result.InjectorDifferential.Kilopascals / 300 * 683.8 / result.FuelDensity.KilogramsPerCubicMeter);
                double answer = SystemSizing.MinimumStaticFlow(system, point).Value!.Value.CubicMetersPerSecond;
                return Math.Abs(answer - rated) <= 1e-9 * rated;
            },
            iter: Goals);

    [Fact]
    public void MinimumBasePressure_PutBack_IsTheMinimumThatHolds() =>
        Gen.Select(Goal, Gen.Double[350, 900], Gen.Double[1, 3]).Sample(
            (goal, injector, pump) =>
            {
                FuelSystem system = SystemOf(goal.Ethanol, injector, pump);
                OperatingPoint point = Wren.At(goal.Rpm, goal.Boost);
                FuelSystem At(double pascals) => system.With(ManifoldReferenced.From(Pressure.FromPascals(pascals)));
                SizingAnswer<Pressure> answer = SystemSizing.MinimumBasePressure(system, point);
                return answer.Value is { } pressure
                    ? Holds(At(pressure.Pascals), point)
                        && (pressure.Kilopascals <= 100
                            || (Fails(At(pressure.Pascals * (1 - 1e-9)), point)
                                && NoneOf(Scan(1e5, pressure.Pascals * (1 - 1e-6)), pascals => Holds(At(pascals), point))))
                    : NoneOf(Scan(1e5, 1.5e6), pascals => Holds(At(pascals), point));
            },
            iter: Goals);

    [Fact]
    public void MinimumGain_PutBack_IsTheMinimumThatHolds() =>
        Gen.Select(Goal, Gen.Double[300, 600], Gen.Double[1, 3], Gen.Double[0, 30]).Sample(
            (goal, injector, pump, onset) =>
            {
                FuelSystem system = SystemOf(goal.Ethanol / 3, injector, pump);
                OperatingPoint point = Wren.At(goal.Rpm, 0.1 + (0.5 * goal.Boost));
                FuelSystem At(double gain) => system.With(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(onset)));
                SizingAnswer<double> answer = SystemSizing.MinimumGain(system, Wren.Kpa(onset), point);
                return answer.Value is { } minimum
                    ? Holds(At(minimum), point)
                        && (minimum <= 1 || Fails(At(Math.Max(1, minimum * (1 - 1e-9))), point))
                        && (minimum <= 1 || NoneOf(Scan(1, minimum * (1 - 1e-6)), gain => Holds(At(gain), point)))
                    : NoneOf(Scan(1, 15), gain => Holds(At(gain), point));
            },
            iter: Goals);

    [Fact]
    public void MaximumBoost_PutBack_IsTheMaximumThatHolds() =>
        Gen.Select(Gen.Double[2500, 7200], Gen.Double[350, 1500], Gen.Double[0.5, 2.5], Gen.Double[0, 85]).Sample(
            (rpm, injector, pump, ethanol) =>
            {
                FuelSystem system = SystemOf(ethanol, injector, pump);
                SizingAnswer<Pressure> answer = SystemSizing.MaximumBoost(system, [Wren.Rpm(rpm)], Wren.Hill);
                return answer.Value is { } boost
                    ? Holds(system, Wren.At(rpm, boost.Bars * (1 - 1e-12)))
                        && (boost.Bars >= 4 || Fails(system, Wren.At(rpm, boost.Bars * (1 + 1e-8))))
                        && Scan(0, boost.Bars * (1 - 1e-9)).All(bar => Holds(system, Wren.At(rpm, bar)))
                    : Fails(system, Wren.At(rpm, 0));
            },
            iter: Goals);

    /// <summary>
    /// A rising-rate unit without base takes over from a fixed regulator at the boost at which it asks for as much. There the pressure across the
    /// injectors is lowest, so that injectors a hair too small fail at that boost and hold on either side of it: the gap is far narrower than any step.
    /// </summary>
    [Fact]
    public void MaximumBoost_WithAGapWhereTheUnitTakesOver_EndsBeforeIt() =>
        Gen.Select(Gen.Double[3000, 7200], Gen.Double[250, 350], Gen.Double[4, 9], Gen.Double[-6, -3]).Sample(
            (rpm, basePressure, gain, digits) =>
            {
                double kink = basePressure / gain / 100;
                FuelSystem system = SystemOf(0, 360, 6).With(RegulatorSeries.Of(
                    Fixed.At(Wren.Kpa(basePressure)), RisingRate.From(Pressure.Zero, gain, Pressure.Zero)));
                VolumeFlow enough = SystemSizing.MinimumStaticFlow(system, Wren.At(rpm, kink)).Value!.Value;
                FuelSystem small = With(system, enough * (1 - Math.Pow(10, digits)));
                SizingAnswer<Pressure> answer = SystemSizing.MaximumBoost(small, [Wren.Rpm(rpm)], Wren.Hill);
                return answer.Value is { } boost && boost.Bars < kink && boost.Bars > kink - 0.05
                    && answer.Ranges.Count == 2
                    && Fails(small, Wren.At(rpm, kink))
                    && Holds(small, Wren.At(rpm, answer.Ranges[1].Minimum.Bars));
            },
            iter: 30);

    /// <summary>A compressor that takes more than it brings: with boost the power falls, and the most is reached with none.</summary>
    [Fact]
    public void MaximumPower_WherePowerFallsWithBoost_IsReachedBeforeTheMaximumBoost()
    {
        Induction poor = Induction.BeltDriven(Ratio.FromPercent(30), Ratio.Zero, Wren.Kpa(20), Ratio.FromPercent(50));
        FuelSystem system = SystemOf(0, 2000, 6).With(Wren.Demand(induction: poor));
        double At(double bar) => (double)system.Demand.At(Wren.Rpm(5000), Pressure.FromBars(bar), Wren.Hill.Atmosphere).BrakePower.Kilowatts;
        SizingAnswer<Power> answer = SystemSizing.MaximumPower(system, Wren.Rpm(5000), Wren.Hill);
        double most = Enumerable.Range(0, 401).Max(step => At(SystemSizing.MaximumBoost(system, [Wren.Rpm(5000)], Wren.Hill).Value!.Value.Bars * step / 400));
        Assert.Equal(most, (double)answer.Value!.Value.Kilowatts, 1e-3);
        Assert.Contains("reached at ", answer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void MaximumPower_AtASpeed_IsThePowerAtTheMaximumBoost() =>
        Gen.Select(Gen.Double[2500, 7200], Gen.Double[450, 1200]).Sample(
            (rpm, injector) =>
            {
                FuelSystem system = SystemOf(0, injector, 2);
                Pressure boost = SystemSizing.MaximumBoost(system, [Wren.Rpm(rpm)], Wren.Hill).Value!.Value;
                Power power = SystemSizing.MaximumPower(system, Wren.Rpm(rpm), Wren.Hill).Value!.Value;
                double expected = (double)system.Solve(OperatingPoint.At(Wren.Rpm(rpm), boost, Wren.Hill)).Demand.BrakePower.Watts;
                return Math.Abs((double)power.Watts - expected) <= 1e-9 * expected;
            },
            iter: 20);

    [Fact]
    public void MaximumSpeed_PutBack_IsTheMaximumThatHolds() =>
        Gen.Select(Gen.Double[0, 0.9], Gen.Double[350, 1000], Gen.Double[0.5, 2]).Sample(
            (boost, injector, pump) =>
            {
                FuelSystem system = SystemOf(0, injector, pump);
                SizingAnswer<RotationalSpeed> answer = SystemSizing.MaximumSpeed(system, Pressure.FromBars(boost), Wren.Rpm(2000), Wren.Hill);
                return answer.Value is { } speed
                    ? Holds(system, Wren.At(Math.Min(7200, speed.RevolutionsPerMinute), boost))
                        && (speed.RevolutionsPerMinute >= 7200 * (1 - 1e-12)
                            || Fails(system, Wren.At(speed.RevolutionsPerMinute * (1 + 1e-8), boost)))
                    : Fails(system, Wren.At(2000, boost));
            },
            iter: Goals);

    [Fact]
    public void MinimumBore_PutBack_IsTheMinimumThatHolds() =>
        Gen.Select(Gen.Double[0.2, 0.8], Gen.Double[1, 6], Gen.Double[1, 1.6]).Sample(
            (boost, metres, pump) =>
            {
                Line line = LineOf(8, metres);
                FuelSystem system = SystemOf(0, 800, pump).With(Plumbing.Of(supply: [line]));
                OperatingPoint point = Wren.At(6800, boost);
                FuelSystem At(double bore) => system.With(Plumbing.Of(supply: [LineOf(bore, metres)]));
                SizingAnswer<Length> answer = SystemSizing.MinimumBore(system, line, point);
                return answer.Value is { } bore
                    ? Holds(At(bore.Millimeters * (1 + 1e-12)), point) && Fails(At(bore.Millimeters * (1 - 1e-8)), point)
                    : NoneOf(Scan(1, 30), millimetres => Holds(At(millimetres), point));
            },
            iter: 30);

    /// <summary>Of two lines in a row the one asked for changes, and the other stays as it is.</summary>
    [Fact]
    public void MinimumBore_OfOneLineAmongOthers_LeavesTheOthers()
    {
        Line other = LineOf(7, 1);
        Line line = LineOf(8, 5);
        FuelSystem At(double bore) => SystemOf(0, 800, 1.2).With(Plumbing.Of(supply: [other, LineOf(bore, 5), other]));
        FuelSystem system = SystemOf(0, 800, 1.2).With(Plumbing.Of(supply: [other, line, other]));
        OperatingPoint point = Wren.At(6800, 0.5);
        double minimum = SystemSizing.MinimumBore(system, line, point).Value!.Value.Millimeters;
        Assert.InRange(minimum, 1.1, 29);
        Assert.True(Holds(At(minimum * (1 + 1e-12)), point));
        Assert.True(Fails(At(minimum * (1 - 1e-8)), point));
    }

    /// <summary>A pump in parallel that has no wiring of its own is left unchanged.</summary>
    [Fact]
    public void MinimumWireArea_WithOnePumpFedOfTwo_IsForThatOne()
    {
        Pump pump = Pump.From(Wren.WiredCurve(13.5, 1));
        FuelSystem At(double squareMillimetres) =>
            SystemOf(0, 800, 1).With(PumpParallel.Of(pump, pump.WithFeed(FeedOf(squareMillimetres, 5))));
        OperatingPoint point = Wren.At(6500, 0.3);
        double minimum = SystemSizing.MinimumWireArea(At(4), point).Value!.Value.SquareMillimeters;
        Assert.InRange(minimum, 0.3, 119);
        Assert.True(Holds(At(minimum * (1 + 1e-12)), point));
        Assert.True(Fails(At(minimum * (1 - 1e-8)), point));
    }

    [Fact]
    public void MinimumWireArea_PutBack_IsTheMinimumThatHolds() =>
        Gen.Select(Gen.Double[0.1, 0.7], Gen.Double[0.5, 8], Gen.Double[0.9, 1.5], Gen.Bool).Sample(
            (boost, metres, scale, pair) =>
            {
                Pump pump = Pump.From(Wren.WiredCurve(13.5, scale));
                FuelSystem At(double squareMillimetres)
                {
                    Pump wired = pump.WithFeed(FeedOf(squareMillimetres, metres));
                    return SystemOf(0, 800, 1).With(pair ? PumpParallel.Of(wired, wired) : (PumpAssembly)wired);
                }

                OperatingPoint point = Wren.At(6500, boost);
                SizingAnswer<Area> answer = SystemSizing.MinimumWireArea(At(4), point);
                return answer.Value is { } area
                    ? Holds(At(area.SquareMillimeters * (1 + 1e-12)), point)
                        && (area.SquareMillimeters <= 0.2 || Fails(At(Math.Max(0.2, area.SquareMillimeters * (1 - 1e-8))), point))
                    : NoneOf(Scan(0.2, 120), squareMillimetres => Holds(At(squareMillimetres), point));
            },
            iter: 20);

    [Fact]
    public void RequiredPump_FittedExactly_HoldsWithNothingToSpare() =>
        PumpTask.Sample(task => ExactlyEnough(task.Goals, task.Metres, task.Minimum, task.Gain), iter: 40);

    /// <summary>
    /// Two of these points ask for 101 and 114 L/h at rises 0.14 kPa apart, so the curve through both falls steeply there;
    /// a solver that gauges its steps by the set pressure alone stops 10⁻⁸ of the flow early.
    /// </summary>
    [Fact]
    public void RequiredPump_FittedWhereTheCurveFallsSteeply_HoldsWithZeroMargin() =>
        PumpTask.Sample(
            task => ExactlyEnough(task.Goals, task.Metres, task.Minimum, task.Gain), seed: "emhNcARzLwd7");

    [Fact]
    public void RequiredPump_InWords_NamesFlowPressureAndPlace() =>
        Assert.Matches(
            @"^A pump, or pumps together, that deliver at least \d+ L/h against \d+ kPa at 6,800 rev/min, 0\.60 bar\.$",
            SystemSizing.RequiredPump(SystemOf(0, 800, 1), Wren.At(6800, 0.6), Wren.At(3000, 0.2)).ToString());

    [Fact]
    public void Answer_ThatServes_NamesWhatBindsAndWhatComesNext()
    {
        SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(SystemOf(0, 360, 1), Wren.At(6800, 0.6), Wren.At(900, -0.6));
        Assert.Equal(Part.Injectors, answer.Binding.Part);
        Assert.Equal(Part.Pump, answer.Next!.Part);
        Assert.Matches(@"^At least \d+ mL/min: limited by injectors .* next, pump: ", answer.Text.ToString());
    }

    [Fact]
    public void Answer_WhereNothingServes_NamesWhatStandsInTheWay()
    {
        SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(SystemOf(85, 360, 0.4), Wren.At(6800, 0.9));
        Assert.False(answer.IsFeasible);
        Assert.Equal(Part.Pump, answer.Binding.Part);
        Assert.StartsWith("Nothing from 20 mL/min to 10,000 mL/min is adequate", answer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Questions_ThatMakeNoSense_AreRefused()
    {
        FuelSystem system = SystemOf(0, 360, 1);
        Assert.Equal("points", Assert.Throws<ArgumentException>(() => SystemSizing.MinimumStaticFlow(system)).ParamName);
        Assert.Equal(
            "system",
            Assert.Throws<ArgumentException>(
                () => SystemSizing.MinimumGain(system.With(Fixed.At(Wren.Kpa(400))), Pressure.Zero, Wren.At(3000, 0.2))).ParamName);
        Assert.Equal("line", Assert.Throws<ArgumentException>(() => SystemSizing.MinimumBore(system, LineOf(8, 2), Wren.At(3000, 0))).ParamName);
        Assert.Equal("system", Assert.Throws<ArgumentException>(() => SystemSizing.MinimumWireArea(system, Wren.At(3000, 0))).ParamName);
        Assert.Throws<ArgumentException>(() => SystemSizing.MinimumBasePressure(
            system.With(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero))),
            Wren.At(3000, 0)));
    }

    /// <summary>A pump whose curve runs through the required points just holds at all of them.</summary>
    private static bool ExactlyEnough((double Rpm, double Boost, double Ethanol)[] goals, double metres, double minimum, double gain)
    {
        FuelSystem system = SystemOf(goals[0].Ethanol, 5000, 1)
            .With(Plumbing.Of(supply: [LineOf(7, metres)]))
            .With(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(20), Wren.Kpa(1200), VolumeFlow.FromLitersPerHour(minimum)));
        OperatingPoint[] points = [.. goals.Select(goal => Wren.At(goal.Rpm, goal.Boost))];
        PumpRequirement required = SystemSizing.RequiredPump(system, points);

        FuelSystem With(double scale) => system.With(Pump.From(PumpCurve.At(
            "fitted",
            Wren.Volt(13.5),
            [
                (Pressure.Zero, required.LargestFlow * (1.1 * scale)),
                .. required.Governing.Reverse().Select(duty => (duty.PressureRise, duty.Flow * scale)),
                (required.MaximumPressureRise + Wren.Kpa(100), VolumeFlow.Zero),
            ])));
        double Reserve(double scale, OperatingPoint point) =>
            With(scale).Solve(point).Margins.Single(margin => margin.Part == Part.Pump).Reserve!.Value.DecimalFractions;
        return points.All(point => Reserve(1, point) >= -1e-9)
            && required.Governing.All(duty => Reserve(1, duty.Point) <= 1e-9 && Reserve(1 - 1e-6, duty.Point) < 0);
    }

    private static FuelSystem SystemOf(double ethanol, double injector, double pump)
    {
        Injector wide = Injector.Of(
            "injector",
            VolumeFlow.FromMillilitersPerMinute(injector),
            Wren.Kpa(300),
            TestFluid.Heptane,
            Wren.DeadTime,
            Wren.Ms(0.5),
            Wren.Kpa(600));
        return FuelSystem.Return(
            Wren.Demand(FuelConsumption.Of(
                FuelBlend.EthanolInPetrol(Ratio.FromPercent(ethanol)),
                0.82,
                BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315 + (1.6 * ethanol)))),
            InjectorSet.Of(wide, 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.PumpOf(pump)));
    }

    private static FuelSystem With(FuelSystem system, VolumeFlow flow) =>
        system.With(InjectorSet.Of(system.Injectors.Injector.WithStaticFlow(flow), 4));

    private static Feed FeedOf(double squareMillimetres, double metres) => Feed.Of(
        "pump feed",
        Conductor.OfNominal(Area.FromSquareMillimeters(squareMillimetres), ConductorMaterial.Copper),
        Length.FromMeters(metres),
        Length.FromMeters(metres),
        Temperature.FromDegreesCelsius(60),
        Contact.Of("relay", ElectricResistance.FromMilliohms(5)));

    private static Line LineOf(double millimetres, double metres) =>
        Line.Of("supply", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.DrawnTube);

    private static bool Holds(FuelSystem system, OperatingPoint point) => Judged.IsHolding(system.Solve(point).Outcome);

    private static bool Fails(FuelSystem system, OperatingPoint point) => !Holds(system, point);

    private static IEnumerable<double> Scan(double from, double to) =>
        Enumerable.Range(0, 41).Select(step => from + ((to - from) * step / 40));

    private static bool NoneOf(IEnumerable<double> values, Func<double, bool> holds) => !values.Any(holds);
}
