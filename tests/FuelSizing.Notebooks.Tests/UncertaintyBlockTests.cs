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
using FuelSizing.Uncertainty;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>The blocks that say how sure a result is.</summary>
public class UncertaintyBlockTests
{
    private static readonly UncertainInput Consumption = UncertainInput.BrakeSpecificFuelConsumption(Distribution.Normal(
        Grams(315), Grams(12), Grams(280), Grams(350)));

    private static readonly UncertainInput Flow = UncertainInput.InjectorFlowFactor(Distribution.Uniform(Percent(96), Percent(104)));

    private static readonly UncertainInput Matching = UncertainInput.InjectorMatchingFactor(Distribution.Uniform(Percent(97), Percent(103)));

    private static readonly UncertainInput Air = UncertainInput.VolumetricEfficiencyFactor(Distribution.Uniform(Percent(97), Percent(100)));

    private static readonly UncertainSystem Unsure = Of(Consumption, Flow, Matching, Air);

    private static readonly MonteCarloResult Sampled = Unsure.MonteCarlo(Sampling.Of(400, seed: 3));

    /// <summary>A battery that falls under the dead-time table, which ends at 8 V.</summary>
    private static readonly UncertainSystem Weak = Of(UncertainInput.SupplyVoltage(Distribution.Uniform(Volts(7), Volts(13.5))));

    [Fact]
    public void Inputs_OfASystem_MarkThoseThatAreFactors()
    {
        var table = UncertaintyTables.Inputs(Unsure);

        Assert.Equal(["BSFC", "295 g/kWh", "315 g/kWh", "335 g/kWh"], table.Rows[0]);
        Assert.Equal(["injector flow", "× 96.4 %", "× 100.0 %", "× 103.6 %"], table.Rows[1]);
    }

    [Fact]
    public void Chances_OfSamples_PutEverythingOnTopAndTheMinimumLikelyNext()
    {
        var table = UncertaintyTables.Chances(Sampled);

        Assert.Equal("everything at once", table.Rows[0][0]);
        Assert.Equal(Readable.Chance(Sampled.All.Holds), table.Rows[0][1]);
        Assert.Equal(Sampled.MinimumChance.Part.Name, table.Rows[1][0]);
        Assert.Equal(1 + Sampled.Parts.Count, table.Rows.Count);
        Assert.DoesNotContain(table.Columns, column => column.Header == "Cannot say");
        (Ratio minimum, Ratio maximum) = Sampled.All.Interval(Percent(95));
        Assert.Equal($"{TextStyle.Metric.Write(minimum, "chance:down")} to {TextStyle.Metric.Write(maximum, "chance:up")}".Replace(" % to", " to", StringComparison.Ordinal), table.Rows[0][2]);
        Assert.Contains("400 samples, seed 3", table.Note, StringComparison.Ordinal);
        Assert.NotInRange(Sampled.All.Holding, 0, 40);
        Assert.NotInRange(Sampled.All.Failing, 0, 40);
    }

    [Fact]
    public void Chances_WhereTheDataEnds_CountWhatCannotBeSaid()
    {
        var result = Weak.MonteCarlo(Sampling.Of(400));
        var injectors = result.Parts.Single(part => part.Part == Part.Injectors).Chance;

        Assert.Contains(
            UncertaintyTables.Chances(result).Rows,
            row => row[0] == "injectors" && row.Count == 6 && row[3] == Readable.Chance(Ratio.FromDecimalFractions(injectors.CannotSay / 400.0)));
        Assert.Contains($"of {injectors.CannotSay} samples nothing can be said", UncertaintyCallouts.Verdict(result, Percent(95)).ToPlainText(), StringComparison.Ordinal);
        Assert.Contains($"In {injectors.CannotSay} more nothing can be said", UncertaintyPlots.DutyCycle(result).Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Spread_OfSamples_ShowsCylindersOnlyWhereInjectorsDiffer()
    {
        Assert.Contains(UncertaintyTables.Spread(Sampled).Rows, row => row[0] == "lambda of the leanest cylinder");
        Assert.DoesNotContain(
            UncertaintyTables.Spread(Of(Flow).MonteCarlo(Sampling.Of(50))).Rows, row => row[0].StartsWith("lambda", StringComparison.Ordinal));
    }

    [Fact]
    public void DutyCycle_OfSamples_MarksMedianAndLimit()
    {
        var plot = UncertaintyPlots.DutyCycle(Sampled);

        Assert.Equal(400, plot.Samples);
        Assert.Equal(85, plot.Limit!.Value);
        Assert.Equal(Sampled.DutyCycle.Percentile(Percent(50))!.Value.Percent, plot.Marks[1].Value, 9);
        Assert.Equal(Sampled.DutyCycle.Sorted.Count(duty => duty.Percent > 85) / 4.0, plot.Beyond.Percent, 9);
    }

    [Fact]
    public void Reserve_OfAPart_FailsUnderZeroAsOftenAsThePart()
    {
        var plot = UncertaintyPlots.Reserve(Sampled, Part.Injectors);

        Assert.Equal(Sampled.Parts.Single(part => part.Part == Part.Injectors).Chance.Failing / 4.0, plot.Beyond.Percent, 9);
        Assert.Equal("part", Assert.Throws<ArgumentException>(() => UncertaintyPlots.Reserve(Sampled, Part.ReturnLine)).ParamName);
    }

    [Fact]
    public void Percentiles_OfTwoRuns_AreALineEach()
    {
        var plot = UncertaintyPlots.Percentiles("Duty cycle", new PlotAxis("Duty cycle", "%"), duty => duty.Percent, ("all", Sampled.DutyCycle), ("again", Sampled.DutyCycle));

        Assert.Equal(Sampled.DutyCycle.Percentile(Percent(50))!.Value.Percent, plot.Lines[1].Y[49], 9);
        Assert.Equal(50, plot.Lines[1].X[49]);
    }

    [Fact]
    public void Tornado_OfASystem_StartsFromTheDescribedValueWidestFirst()
    {
        var tornado = Unsure.Tornado(SystemOutput.DutyCycle);
        var plot = UncertaintyPlots.Tornado(tornado);

        Assert.Equal(Unsure.NominalResult.DutyCycle!.Value.Percent, plot.Base!.Value, 9);
        Assert.Equal(85, plot.Limit!.Value);
        double[] swings = [.. plot.Rows.Select(row => row.Bars.Max(bar => bar.To) - row.Bars.Min(bar => bar.To))];
        Assert.Equal(swings.OrderDescending(), swings);
        Assert.Contains(plot.Rows, row => row.Label.StartsWith("injector flow × 96.4 to 103.6 %", StringComparison.Ordinal));

        // Air asks for less fuel than power does here, so a little less of it changes nothing.
        Assert.EndsWith(", no effect", plot.Rows[^1].Label, StringComparison.Ordinal);
        Assert.Equal(OutputFigures.Text(tornado.Bars[0].AtHigh!, TextStyle.Metric), UncertaintyTables.Tornado(tornado).Rows[0][4]);
    }

    [Fact]
    public void Tornado_WhereTheDataEnds_SaysWhichSideCannotBeSaid()
    {
        var row = Assert.Single(UncertaintyPlots.Tornado(Weak.Tornado(SystemOutput.DutyCycle)).Rows);

        Assert.EndsWith(", low: cannot say", row.Label, StringComparison.Ordinal);
        Assert.Equal(1, Assert.Single(row.Bars).Kind);
        Assert.Contains("cannot say", UncertaintyTables.Tornado(Weak.Tornado(SystemOutput.DutyCycle)).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>Each kind of output and of input has a unit to be shown in.</summary>
    [Fact]
    public void EveryOutput_HasAUnitOfItsOwn()
    {
        SystemOutput[] outputs = [SystemOutput.DutyCycle, SystemOutput.FuelFlow, SystemOutput.RailGauge, SystemOutput.MinimumReserve, SystemOutput.LeanestLambda, SystemOutput.ReserveOf(Part.Pump)];
        UncertainInput[] inputs =
        [
            Consumption,
            Matching,
            UncertainInput.RegulatorOffset(Distribution.Uniform(Pressure.FromKilopascals(-10), Pressure.FromKilopascals(10))),
            UncertainInput.SupplyVoltage(Distribution.Uniform(Volts(12), Volts(14))),
            UncertainInput.FuelTemperature(Distribution.Uniform(Temperature.FromDegreesCelsius(10), Temperature.FromDegreesCelsius(40))),
            UncertainInput.EthanolContent(Distribution.Uniform(Percent(0), Percent(10))),
        ];
        var system = Of(inputs);

        Assert.Equal(
            ["Duty cycle (%)", "Fuel flow (g/s)", "Rail pressure (kPa)", "Minimum margin (%)", "Leanest lambda", "Margin of pump (%)"],
            outputs.Select(output => UncertaintyPlots.Tornado(system.Tornado(output)).X.Title));
        Assert.All(inputs, input => Assert.DoesNotContain("NaN", UncertaintyTables.Inputs(Of(input)).ToPlainText(), StringComparison.Ordinal));
    }

    [Fact]
    public void Sobol_OfASystem_PutsTheInputToMeasureFirstOnTop()
    {
        var shares = Unsure.Sobol(SystemOutput.DutyCycle, Sampling.Of(200));
        var plot = UncertaintyPlots.Sobol(shares);

        Assert.Equal(shares.MeasureFirst!.Name, plot.Rows[0].Label);
        Assert.Equal(shares.MeasureFirst.Name, UncertaintyTables.Sobol(shares).Rows[0][0]);
        Assert.Equal(shares.Inputs[0].Total.Percent, plot.Rows[0].Bars[1].To, 9);
        Assert.Equal(shares.Inputs[0].TotalInterval(Percent(95)).Maximum.Percent, plot.Rows[0].Bars[1].Interval!.Value.Maximum, 9);
    }

    [Theory]
    [InlineData(50, CalloutKind.HoldsAsFarAsJudged)]
    [InlineData(99.9, CalloutKind.Fails)]
    public void Verdict_OfSamples_IsOfItsKindAndNamesWhatFails(double wanted, CalloutKind kind)
    {
        var verdict = UncertaintyCallouts.Verdict(Sampled, Percent(wanted), "as fitted");

        Assert.Equal(kind, verdict.Kind);
        Assert.StartsWith("as fitted: ", verdict.Title, StringComparison.Ordinal);
        Assert.Contains(Readable.Chance(Sampled.All.Holds), verdict.Title, StringComparison.Ordinal);
        Assert.StartsWith("injectors: holds in", verdict.Lines[0], StringComparison.Ordinal);
        Assert.Contains(verdict.Lines, line => line.StartsWith("in every sample hold: ", StringComparison.Ordinal) && line.Contains("pump", StringComparison.Ordinal));
    }

    [Fact]
    public void Verdict_OfTooFewSamples_CannotSay()
    {
        var few = Of(UncertainInput.InjectorFlowFactor(Distribution.Uniform(Percent(105), Percent(110)))).MonteCarlo(Sampling.Of(16));
        var verdict = UncertaintyCallouts.Verdict(few, Percent(99));

        Assert.Equal(CalloutKind.CannotSay, verdict.Kind);
        Assert.Contains("in every sample", verdict.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Register_ShowsTheResultsAsTheirTables()
    {
        FuelSizingExtension.Register();
        var tornado = Unsure.Tornado(SystemOutput.DutyCycle);
        var shares = Unsure.Sobol(SystemOutput.DutyCycle, Sampling.Of(50));

        Assert.Equal(UncertaintyTables.Chances(Sampled).ToPlainText(), Sampled.ToDisplayString("text/plain"));
        Assert.Equal(UncertaintyTables.Tornado(tornado).ToHtml(), tornado.ToDisplayString("text/html"));
        Assert.Equal(UncertaintyTables.Sobol(shares).ToHtml(), shares.ToDisplayString("text/html"));
        Assert.Equal(["text/html", "text/plain"], Formatter.GetPreferredMimeTypesFor(typeof(SobolResult)));
    }

    private static UncertainSystem Of(params UncertainInput[] inputs) =>
        UncertainSystem.Of(System(), OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)), inputs);

    private static FuelSystem System()
    {
        static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
        var demand = FuelDemandModel.Of(
            Engine.Of("2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200)),
            Induction.Turbocharged(Percent(72), Percent(70), Pressure.FromKilopascals(5)),
            VolumetricEfficiency.Of((Rpm(2000), Percent(84)), (Rpm(7200), Percent(91))),
            PowerCurve.AtCrank(Atmosphere.Standard, (Rpm(2000), Power.FromKilowatts(39)), (Rpm(7200), Power.FromKilowatts(165))),
            Percent(85),
            FuelConsumption.Of(Fuel.Petrol, 0.82, Grams(315)));
        var deadTime = DeadTimeTable.ByVoltage((Volts(8), Duration.FromMilliseconds(2)), (Volts(16), Duration.FromMilliseconds(0.7)));
        var injector = Injector.Of(
            "A",
            VolumeFlow.FromMillilitersPerMinute(585),
            Pressure.FromKilopascals(300),
            TestFluid.Heptane,
            deadTime,
            Duration.FromMilliseconds(1.6),
            Pressure.FromKilopascals(500));
        var pump = PumpCurve.At(
            "P",
            Volts(13.5),
            (Pressure.FromKilopascals(0), VolumeFlow.FromLitersPerHour(260)),
            (Pressure.FromKilopascals(400), VolumeFlow.FromLitersPerHour(200)),
            (Pressure.FromKilopascals(750), VolumeFlow.Zero));
        return FuelSystem.Return(demand, InjectorSet.Of(injector, 4), ManifoldReferenced.From(Pressure.FromKilopascals(300)), Pump.From(pump));
    }

    private static Ratio Percent(double share) => Ratio.FromPercent(share);

    private static BrakeSpecificFuelConsumption Grams(double grams) => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(grams);

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts);
}
