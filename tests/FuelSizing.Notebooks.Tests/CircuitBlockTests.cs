using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The blocks that show a circuit with its pumps, lines and wiring.</summary>
public class CircuitBlockTests
{
    [Fact]
    public void Circuit_OfAReturnSystem_GoesRoundInTheOrderOfFlow()
    {
        var table = SizingTables.Circuit(Full(Return()));

        Assert.Equal(
            ["tank", "pump inlet", "P", "pump outlet", "filter", "supply", "rail", "injectors", "regulator", "return", "fuel in the tank"],
            table.Rows.Select(row => row[0]));
        Assert.Contains("lost in its feed", table.Rows[2][4], StringComparison.Ordinal);
        Assert.Matches(@"^warmed by the pumps with \d+ W$", table.Rows[^1][4]);
    }

    [Fact]
    public void Circuit_OfAReturnlessSystem_HasTheRegulatorBeforeTheLine()
    {
        var places = SizingTables.Circuit(Full(Returnless(Fixed.At(Kpa(300))))).Rows.Select(row => row[0]).ToList();

        Assert.True(places.IndexOf("regulator") < places.IndexOf("supply"));
        Assert.True(places.IndexOf("supply") < places.IndexOf("rail"));
    }

    [Fact]
    public void Circuit_OfAnElectronicSystem_HasNoRegulator() =>
        Assert.DoesNotContain("regulator", SizingTables.Circuit(Full(Returnless(Electronic))).Rows.Select(row => row[0]));

    [Fact]
    public void Circuit_SumsItsGainsAndLossesToTheRail()
    {
        var circuit = Full(Return()).Circuit;
        var rows = SizingTables.Circuit(Full(Return())).Rows;

        double rail = rows.TakeWhile(row => row[0] != "rail").Where(row => row[3].Length > 0).Sum(row => Number(row[3]));

        Assert.InRange(rail - circuit.RailGauge.Kilopascals, -0.2, 0.2);
    }

    [Fact]
    public void Circuit_WithoutCurrents_CannotSayItsHeat()
    {
        var bare = Pump.From(PumpCurve.At("P", Volts(13.5), (Kpa(0), Litres(215)), (Kpa(750), VolumeFlow.Zero)));

        Assert.EndsWith("cannot say", SizingTables.Circuit(Full(Return(bare))).Rows[^1][4], StringComparison.Ordinal);
    }

    [Fact]
    public void Circuits_OfSeveralSystems_HaveAColumnEach()
    {
        var table = SizingTables.Circuits("side by side", ("a", Full(Return())), ("b", Full(Returnless(Electronic))));

        Assert.Equal(["Figure", "a", "b"], table.Columns.Select(column => column.Header));
        Assert.Equal(["Governed by", "regulator", "controller"], table.Rows.Single(row => row[0] == "Governed by"));
    }

    [Fact]
    public void Circuits_OfASaggingRail_SaySo()
    {
        var weak = Pump.From(PumpCurve.At("P", Volts(13.5), (Kpa(0), Litres(120)), (Kpa(400), VolumeFlow.Zero)));

        Assert.Contains("sags", SizingTables.Circuits("sagging", ("a", Full(Return(weak)))).ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Wiring_OfAFedPump_AddsUpToTheSource()
    {
        var table = SizingTables.Wiring("wiring", ("a", Full(Return())));
        double Of(string figure) => Number(table.Rows.Single(row => row[0] == figure)[1]);

        Assert.InRange(Of("Voltage at the motor") + Of("Lost in the wire") + Of("Lost in the contacts") - Of("Voltage at the source"), -0.1, 0.1);
    }

    [Fact]
    public void Wiring_OfTwoPumps_HasAColumnForEach()
    {
        var two = PumpParallel.Of(Wired, Wired);

        Assert.Equal(
            ["Figure", "a: P, 1 of 2", "a: P, 2 of 2"],
            SizingTables.Wiring("wiring", ("a", Full(Return(two)))).Columns.Select(column => column.Header));
    }

    [Fact]
    public void Wiring_WithoutAFeed_IsRefused()
    {
        var refused = Assert.Throws<ArgumentException>(() => SizingTables.Wiring("wiring", ("a", Full(Return(Unwired)))));

        Assert.Contains("Pump.WithFeed", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SystemCurve_MeetsThePumpCurveAtTheOperatingPoint()
    {
        var result = Full(Return());
        var plot = SizingPlots.SystemCurve("curves", ("full", result));
        var point = Assert.Single(plot.Points);

        Assert.Equal(result.PumpFlow!.Value.LitersPerHour, point.X, 6);
        Assert.All(plot.Lines, line => Assert.InRange(At(line, point.X) - point.Y, -3, 3));
    }

    [Fact]
    public void SystemCurve_OfAReturnlessSystem_IsThatOfItsRegulator()
    {
        var system = SizingPlots.SystemCurve("curves", ("full", Full(Returnless(Fixed.At(Kpa(300)))))).Lines[1];

        Assert.All(system.Y, rise => Assert.Equal(300, rise, 6));
    }

    [Fact]
    public void SystemCurve_OfASlowedPump_DrawsItSlowed()
    {
        var plot = SizingPlots.SystemCurve("curves", ("full", Full(Returnless(Electronic))));

        Assert.DoesNotContain("on 13.5 V", plot.Lines[0].Name, StringComparison.Ordinal);
        Assert.InRange(At(plot.Lines[0], plot.Points[0].X) - plot.Points[0].Y, -3, 3);
    }

    [Fact]
    public void SystemCurve_OfTheSamePumpTwice_DrawsItOnce()
    {
        var plot = SizingPlots.SystemCurve("curves", ("full", Full(Return())), ("idle", Return().Solve(Point(900, -0.6))));

        Assert.Equal(3, plot.Lines.Count);
        Assert.Equal(2, plot.Points.Count);
    }

    [Fact]
    public void SystemCurve_WhoseMarkLiesOnBothCurves_SaysNothing() =>
        Assert.Null(SizingPlots.SystemCurve("curves", ("full", Full(Return()))).Note);

    /// <summary>A mark beside a curve looks like a fault of the drawing, unless the page says what it is.</summary>
    [Fact]
    public void SystemCurve_WhoseMarkLiesOffACurve_SaysHowFarAndWhy()
    {
        OperatingResult result = Return().With(ManifoldReferenced.From(Kpa(620))).Solve(Point(6800, 0.4));
        Assert.Equal(RailState.Sagging, result.RailState);

        LinePlot plot = SizingPlots.SystemCurve("curves", TextStyle.Metric, ("full", result));

        PlotPoint mark = Assert.Single(plot.Points);
        double below = At(plot.Lines[1], mark.X) - mark.Y;
        Assert.True(below > 10);
        Assert.Equal(
            $"\"full\" lies {TextStyle.Metric.Of(Kpa(below))} below its system curve: the pumps cannot hold the rail at its set pressure, and it sags to {TextStyle.Metric.Of(result.RailGauge)}.",
            plot.Note);
    }

    /// <summary>Pumps switched by boost: the curve is that of those that run, so that the mark lies on it below the switch and above.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.6)]
    public void SystemCurve_OfSwitchedPumps_IsThatOfThoseThatRun(double boost)
    {
        FuelSystem system = Return(PumpParallel.Of(Wired, SwitchedPump.Above(Pressure.FromBars(0.5), Pressure.FromBars(0.45), Unwired)));

        LinePlot plot = SizingPlots.SystemCurve("curves", TextStyle.Metric, ("full", system.Solve(Point(6800, boost))));

        PlotPoint mark = Assert.Single(plot.Points);
        Assert.All(plot.Lines, line => Assert.InRange(At(line, mark.X) - mark.Y, -3, 3));
        Assert.Null(plot.Note);
    }

    [Fact]
    public void PumpAgainstDemand_OfSwitchedPumps_HasACurveForEachState()
    {
        FuelSystem system = Return(PumpParallel.Of(Wired, SwitchedPump.Above(Pressure.FromBars(0.5), Pressure.FromBars(0.45), Unwired)));

        LinePlot plot = SizingPlots.PumpAgainstDemand(system.Sweep([Rpm(6000)], [Pressure.Zero, Pressure.FromBars(0.3), Pressure.FromBars(0.6)]), TextStyle.Metric);

        Assert.Equal(4, plot.Lines.Count);
        Assert.EndsWith(", at 0 kPa of boost", plot.Lines[0].Name, StringComparison.Ordinal);
        Assert.True(plot.Lines[1].Y[0] > plot.Lines[0].Y[0] + 150);
    }

    [Fact]
    public void SystemCurve_OfTooManyCases_IsRefused()
    {
        var full = Full(Return());

        Assert.Throws<ArgumentException>(() => SizingPlots.SystemCurve("curves", ("a", full), ("b", full), ("c", full), ("d", full)));
    }

    [Fact]
    public void AcrossBoost_OfTwoSystems_HasALineEach()
    {
        RotationalSpeed[] speeds = [Rpm(3000), Rpm(6000)];
        Pressure[] boosts = [Pressure.Zero, Pressure.FromBars(0.6)];
        var plot = SizingPlots.AcrossBoost(
            "rail",
            new PlotAxis("Rail", "kPa"),
            result => result.RailGauge.Kilopascals,
            1,
            ("a", Return().Sweep(speeds, boosts)),
            ("b", Returnless(Fixed.At(Kpa(300))).Sweep(speeds, boosts)));

        Assert.Equal([300.0, 360.0], plot.Lines[0].Y.Select(value => Math.Round(value, 6)));
        Assert.Equal("kPa", plot.X.Unit);
        Assert.Equal([0.0, 60.0], plot.Lines[0].X.Select(value => Math.Round(value, 6)));
        Assert.True(plot.Lines[1].Y[1] < 300);
    }

    /// <summary>Boost and rail are both pressures: one plot says both in one unit, whichever that is.</summary>
    [Theory]
    [InlineData("kPa", "kPa", 60)]
    [InlineData("bar", "bar", 0.6)]
    [InlineData("psi", "psi", 8.702264)]
    [InlineData("%", "bar", 0.6)]
    public void AcrossBoost_HasOneUnitOfPressure(string value, string boost, double last)
    {
        LinePlot plot = SizingPlots.AcrossBoost(
            "rail", new PlotAxis("Rail", value), result => result.RailGauge.Bars, 0, ("a", Return().Sweep([Rpm(6000)], [Pressure.Zero, Pressure.FromBars(0.6)])));

        Assert.Equal(boost, plot.X.Unit);
        Assert.Equal(last, plot.Lines[0].X[^1], 5);
    }

    [Fact]
    public void Across_AScan_HasAGapWhereTheFigureIsNotKnown()
    {
        var full = Full(Return());
        var plot = SizingPlots.Across(
            "rail",
            new PlotAxis("Bore", "mm"),
            new PlotAxis("Rail", "kPa"),
            result => result.Point.Boost > Pressure.Zero ? result.RailGauge.Kilopascals : null,
            ("a", [(4, full), (5, Return().Solve(Point(900, -0.6))), (6, full)]));

        Assert.Equal([4.0, 5, 6], plot.Lines[0].X);
        Assert.Equal([false, true, false], plot.Lines[0].Y.Select(double.IsNaN));
    }

    [Fact]
    public void Cases_ThatAreMissing_AreRefused()
    {
        Assert.Throws<ArgumentNullException>(() => SizingTables.Circuit(null!));
        Assert.Throws<ArgumentNullException>(() => SizingTables.Circuits("a", ("b", null!)));
        Assert.Throws<ArgumentException>(() => SizingTables.Circuits("a"));
        Assert.Throws<ArgumentException>(() => SizingTables.Circuits("a", ("", Full(Return()))));
        Assert.Throws<ArgumentNullException>(() => SizingPlots.AcrossBoost("a", new PlotAxis("b", "c"), null!, 0));
    }

    private static ElectronicReturnless Electronic => ElectronicReturnless.Holding(Kpa(300), true, Volts(9));

    private static Pump Unwired => Pump.Of(
    [
        PumpCurve.WithCurrent("P", Volts(9), (Kpa(0), Litres(138), Amperes(4)), (Kpa(300), Litres(92), Amperes(6)), (Kpa(570), VolumeFlow.Zero, Amperes(9))),
        PumpCurve.WithCurrent("P", Volts(13.5), (Kpa(0), Litres(215), Amperes(5)), (Kpa(400), Litres(155), Amperes(8)), (Kpa(800), VolumeFlow.Zero, Amperes(13))),
    ]);

    private static Pump Wired => Unwired.WithFeed(Feed.Of(
        "feed", Conductor.Awg(14), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse, Contact.DefaultRelay));

    private static Line Pipe(string name) =>
        Line.Of(name, Length.FromMillimeters(6), Length.FromMeters(4), Roughness.PlasticTube, [Fitting.Bend90.Times(4)]);

    private static Filter Filter => Filter.Of("filter", Litres(200), Kpa(15));

    private static FuelSystem Return(PumpAssembly? pump = null) => FuelSystem.Return(
        Demand,
        Injectors,
        ManifoldReferenced.From(Kpa(300)),
        pump ?? Wired,
        plumbing: Plumbing.Of(supply: [Filter, Pipe("supply")], returnLine: [Pipe("return")]));

    private static FuelSystem Returnless(PressureRegulator regulator) =>
        FuelSystem.Returnless(Demand, Injectors, regulator, Wired, plumbing: Plumbing.Of(supply: [Filter, Pipe("supply")]));

    private static FuelDemandModel Demand => FuelDemandModel.Of(
        Engine.Of("2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200)),
        Induction.Turbocharged(Ratio.FromPercent(72), Ratio.FromPercent(70), Kpa(5)),
        VolumetricEfficiency.Of((Rpm(800), Ratio.FromPercent(72)), (Rpm(7200), Ratio.FromPercent(91))),
        PowerCurve.AtCrank(Atmosphere.Standard, (Rpm(800), Power.FromKilowatts(10)), (Rpm(7200), Power.FromKilowatts(151))),
        Ratio.FromPercent(85),
        FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));

    private static InjectorSet Injectors => InjectorSet.Of(
        Injector.Of(
            "A",
            VolumeFlow.FromMillilitersPerMinute(580),
            Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Volts(8), Duration.FromMilliseconds(2)), (Volts(16), Duration.FromMilliseconds(0.7))),
            Duration.FromMilliseconds(1.6),
            Kpa(500)),
        4);

    private static OperatingResult Full(FuelSystem system) => system.Solve(Point(7000, 0.6));

    private static OperatingPoint Point(double speed, double bars) => OperatingPoint.At(Rpm(speed), Pressure.FromBars(bars));

    private static double Number(string cell) => double.Parse(
        cell.Split(' ')[0].Replace('−', '-').Replace("+", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A drawn line's height at a place between its points.</summary>
    private static double At(PlotLine line, double x)
    {
        var (from, to) = line.X.Zip(line.Y).Zip(line.X.Zip(line.Y).Skip(1))
            .First(pair => Math.Min(pair.First.First, pair.Second.First) <= x && x <= Math.Max(pair.First.First, pair.Second.First));
        return from.Second + ((to.Second - from.Second) * (x - from.First) / (to.First - from.First));
    }

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    private static ElectricPotential Volts(double voltage) => ElectricPotential.FromVolts(voltage);

    private static ElectricCurrent Amperes(double current) => ElectricCurrent.FromAmperes(current);

    private static VolumeFlow Litres(double perHour) => VolumeFlow.FromLitersPerHour(perHour);
}
