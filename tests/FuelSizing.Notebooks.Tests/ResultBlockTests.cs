using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The blocks made of the library's own results.</summary>
public class ResultBlockTests
{
    [Fact]
    public void Steps_OfAResult_ShowItsFiguresWithUnits()
    {
        var result = System(360).Solve(OperatingPoint.At(Rpm(6000), Pressure.FromBars(0.5)));

        var steps = SizingTables.Steps(result);

        Assert.Equal(["Name", "Symbol", "Value", "Unit", "Note"], steps.Columns.Select(column => column.Header));
        Assert.Contains(steps.Rows, row => row is ["Rail pressure", "p_r", "350", "kPa", _]);
        Assert.Contains(steps.Rows, row => row is ["Time for a pulse", "t_c", "20.00", "ms", _]);
        Assert.Contains(steps.Rows, row => row[1] == "D" && $"{row[2]} {row[3]}" == Quantities.Readable.DutyCycle(result.DutyCycle!.Value));
    }

    [Fact]
    public void Steps_WhereTheDataEnds_SayThatTheyCannotSay()
    {
        var cold = Conditions.Of(Atmosphere.Standard, ElectricPotential.FromVolts(7), Temperature.FromDegreesCelsius(20));

        var text = SizingTables.Steps(System(360).Solve(OperatingPoint.At(Rpm(2000), Pressure.Zero, cold))).ToPlainText();

        Assert.Contains("cannot say", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Standings_OfASweep_PutTheLimitingPartOnTop()
    {
        var table = SizingTables.Standings(Sweep(300));

        Assert.Equal("injectors", table.Rows[0][0]);
        Assert.Equal("FAILS", table.Rows[0][1]);
        Assert.Equal(5, table.Rows.Count(row => row[1] is "holds" or "FAILS"));
        Assert.Equal(
            ["return line", "filter", "pump feed", "wire ampacity", "fuse", "hoses, fittings and filter", "supply line", "mixture"],
            table.Rows.Where(row => row[1] == "not judged").Select(row => row[0]));
    }

    [Fact]
    public void Demand_OfASweep_HasALineABoost() => Assert.Equal(3, SizingTables.Demand(Sweep(300)).Rows.Count);

    [Fact]
    public void Remedies_OfAFailingSweep_NameTheInjectors() =>
        Assert.Contains("Injectors of at least", SizingCallouts.Remedies(Sweep(300)).ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void Remedies_OfAHoldingSweep_SayThatNothingFails() =>
        Assert.Contains("Nothing fails", SizingCallouts.Remedies(Sweep(900)).ToPlainText(), StringComparison.Ordinal);

    [Theory]
    [InlineData(300, CalloutKind.Fails)]
    [InlineData(900, CalloutKind.HoldsAsFarAsJudged)]
    public void Verdict_OfASweep_IsOfItsKind(double flow, CalloutKind kind) =>
        Assert.Equal(kind, SizingCallouts.Verdict(Sweep(flow).Verdict).Kind);

    [Fact]
    public void DutyCycle_OfASweep_IsTheMapOfItsResults()
    {
        var sweep = Sweep(300);

        var map = SizingPlots.DutyCycle(sweep);

        Assert.Equal(sweep.At(1, 2).DutyCycle!.Value.Percent, map.At(1, 2), 9);
        Assert.Equal(85, map.Limit!.Value);
    }

    [Fact]
    public void RailPressure_OfASweep_ShowsAConstantDifferenceUnderAReferencedRegulator()
    {
        var across = SizingPlots.RailPressure(Sweep(300), 0).Lines.Single(line => line.Name == "across the injector");

        Assert.All(across.Y, value => Assert.Equal(300, value, 6));
    }

    /// <summary>One plot has one unit of pressure, in whichever system of units.</summary>
    [Fact]
    public void RailPressure_OfASweep_HasOneUnitOfPressure()
    {
        LinePlot metric = SizingPlots.RailPressure(Sweep(300), 0, TextStyle.Metric);
        LinePlot customary = SizingPlots.RailPressure(Sweep(300), 0, TextStyle.UsCustomary);

        Assert.Equal(("kPa", "kPa"), (metric.X.Unit, metric.Y.Unit));
        Assert.Equal(60, metric.Lines[0].X[^1], 9);
        Assert.Equal(("psi", "psi"), (customary.X.Unit, customary.Y.Unit));
        Assert.DoesNotContain(" bar", metric.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain(" bar", SizingPlots.PumpAgainstDemand(Sweep(300), TextStyle.Metric).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>The pump is judged by what is required of it, not by what is injected: the plot that shows whether it is adequate must have that.</summary>
    [Fact]
    public void PumpAgainstDemand_OfASweep_HasTheFlowByWhichThePumpIsJudged()
    {
        SweepResult sweep = Sweep(300);
        Margin margin = sweep.At(2, 2).Margins.Single(one => one.Part == Part.Pump);

        LinePlot plot = SizingPlots.PumpAgainstDemand(sweep, TextStyle.Metric);

        PlotLine judged = plot.Lines[1];
        PlotLine injected = plot.Lines[2];
        Assert.StartsWith("required, by which the pump is judged: injected with 10 % in reserve*", judged.Name, StringComparison.Ordinal);
        Assert.Equal(((VolumeFlow)margin.Used!).LitersPerHour, injected.Y[2], 6);

        // Over the pump's curve at the same rise just where its check fails.
        Assert.All(Enumerable.Range(0, 3), boost => Assert.Equal(
            sweep.At(2, boost).Margins.Single(one => one.Part == Part.Pump).Reserve!.Value > Ratio.Zero,
            judged.Y[boost] < OnCurve(plot.Lines[0], judged.X[boost])));
        Assert.All(judged.Y.Zip(injected.Y), pair => Assert.InRange(pair.First, 1.0999 * pair.Second, 3 * pair.Second));
        Assert.Contains("* common practice, no source", plot.ToHtml().Replace('\u00A0', ' '), StringComparison.Ordinal);

        static double OnCurve(PlotLine curve, double rise)
        {
            int after = curve.X.TakeWhile(place => place < rise).Count();
            return after == curve.X.Count ? 0 : curve.Y[after - 1] + ((curve.Y[after] - curve.Y[after - 1]) * (rise - curve.X[after - 1]) / (curve.X[after] - curve.X[after - 1]));
        }
    }

    [Fact]
    public void PumpAgainstDemand_OfASweep_StartsAtTheCurvesEnd()
    {
        var pump = SizingPlots.PumpAgainstDemand(Sweep(300)).Lines[0];

        Assert.Equal(215, pump.Y[0], 6);
        Assert.Equal(0, pump.Y[^1], 6);
    }

    [Fact]
    public void Cautions_AreTheLibrarys() => Assert.Equal(Cautions.Lines, SizingCallouts.Cautions().Lines);

    internal static SweepResult Sweep(double flow, SizingLimits? limits = null) =>
        System(flow, limits).Sweep([Rpm(2000), Rpm(4000), Rpm(6000)], [Pressure.Zero, Pressure.FromBars(0.3), Pressure.FromBars(0.6)]);

    private static FuelSystem System(double flow, SizingLimits? limits = null)
    {
        var engine = Engine.Of("2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200));
        var demand = FuelDemandModel.Of(
            engine,
            Induction.Turbocharged(Ratio.FromPercent(72), Ratio.FromPercent(70), Pressure.FromKilopascals(5)),
            VolumetricEfficiency.Of((Rpm(2000), Ratio.FromPercent(84)), (Rpm(7200), Ratio.FromPercent(91))),
            PowerCurve.AtCrank(Atmosphere.Standard, (Rpm(2000), Power.FromKilowatts(39)), (Rpm(7200), Power.FromKilowatts(151))),
            Ratio.FromPercent(85),
            FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));
        var deadTime = DeadTimeTable.ByVoltage(
            (ElectricPotential.FromVolts(8), Duration.FromMilliseconds(2)), (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(0.7)));
        var injector = Injector.Of(
            "A",
            VolumeFlow.FromMillilitersPerMinute(flow),
            Pressure.FromKilopascals(300),
            TestFluid.Heptane,
            deadTime,
            Duration.FromMilliseconds(1.6),
            Pressure.FromKilopascals(500));
        var pump = PumpCurve.At(
            "P",
            ElectricPotential.FromVolts(13.5),
            (Pressure.FromKilopascals(0), VolumeFlow.FromLitersPerHour(215)),
            (Pressure.FromKilopascals(400), VolumeFlow.FromLitersPerHour(160)),
            (Pressure.FromKilopascals(750), VolumeFlow.Zero));
        return FuelSystem.Return(demand, InjectorSet.Of(injector, 4), ManifoldReferenced.From(Pressure.FromKilopascals(300)), Pump.From(pump), limits);
    }

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
}
