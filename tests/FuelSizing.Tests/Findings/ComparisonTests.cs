using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using Comparison = FuelSizing.Findings.Comparison;

namespace FuelSizing.Tests.Findings;

/// <summary>Recorded less modelled, point by point: which comparisons there are, how widely each scatters, and what each offset does to it.</summary>
public class ComparisonTests
{
    /// <summary>At 35 kPa boost the plan holds 300 + 20 + 3 · 15 = 365 kPa.</summary>
    private static readonly Cells Row = new()
    {
        Speed = Wren.Rpm(4000),
        Manifold = PulledWren.Air.Pressure + Wren.Kpa(35),
        Rail = Wren.Kpa(365),
        Pulse = Wren.Ms(9),
        Lambda = 0.82,
        Volts = Wren.Volt(13.5),
        Power = Power.FromKilowatts(110),
        Fuel = Temperature.FromDegreesCelsius(35),
        Flow = VolumeFlow.FromLitersPerHour(50),
    };

    [Fact]
    public void Comparisons_AreThoseThatTheChannelsAllow()
    {
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air, Comparison.Power], Kinds(Row));
        Assert.Equal([Comparison.Flow, Comparison.Air, Comparison.Power], Kinds(Row with { Rail = null }));
        Assert.Equal([Comparison.Rail, Comparison.Air, Comparison.Power], Kinds(Row with { Flow = null }));
        Assert.Equal([Comparison.Rail, Comparison.Air, Comparison.Power], Kinds(Row with { Pulse = null }));
        Assert.Equal([Comparison.Rail], Kinds(Row with { Pulse = null, Flow = null }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Power], Kinds(Row with { Lambda = null }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air], Kinds(Row with { Power = null }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air], Kinds(Row with { Power = Power.Zero }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air], Kinds(Row with { Power = Power.FromKilowatts(-20) }));

        // BSFC is a figure of full load; at lambda 0.5 or less, 1.5 or more, nothing burns as planned, and over it no fuel makes power.
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air], Kinds(Row with { Manifold = PulledWren.Air.Pressure * 0.84 }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Power], Kinds(Row with { Lambda = 0.5 }));
        Assert.Equal([Comparison.Rail, Comparison.Flow], Kinds(Row with { Lambda = 1.5 }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air, Comparison.Power], Kinds(Row with { Lambda = 1.49 }));
        Assert.Equal([Comparison.Rail, Comparison.Flow, Comparison.Air, Comparison.Power], Kinds(Row with { Lambda = 0.51 }));

        // A pulse that never opens injects nothing, and what the pump must hold then is not known.
        Assert.Empty(Kinds(Row with { Pulse = Wren.Ms(0.4), Flow = null }));
        RunModel model = ModelOf(Row);
        Assert.All(Enum.GetValues<Comparison>(), kind => Assert.True(model.Has(kind)));
        RunModel bare = ModelOf(Row with { Pulse = null, Flow = null });
        Assert.Equal([true, false, false, false], Enum.GetValues<Comparison>().Select(bare.Has));
        Assert.Equal(4, model.Comparisons);
        Assert.Equal((0, Comparison.Air), (model.Describe(2).Point, model.Describe(2).Kind));
    }

    /// <summary>
    /// Standard deviations of one row: rail 2 kPa, 3 times manifold 0.5 kPa and 1 kPa that the model is trusted to; of fuel by the injectors
    /// pulse 0.01 ms of what is open and pressure across the injector, half of it; 1 % of the others and half a per cent of the model.
    /// </summary>
    [Fact]
    public void Scatter_IsThatOfTheChannels()
    {
        RunModel model = ModelOf(Row);
        PointInput input = model.Inputs[0];
        Assert.Equal(Math.Sqrt((2e3 * 2e3) + (1.5e3 * 1.5e3) + (1e3 * 1e3)), model.Describe(0).Spread, 1e-6);
        double across = Math.Sqrt((2e3 * 2e3) + (500 * 500)) / (2 * 330e3);
        double injected = Math.Sqrt(Math.Pow(1e-5 / input.Open, 2) + (across * across));
        double flow = Math.Sqrt(1e-4 + (injected * injected) + 2.5e-5);
        Assert.Equal(flow, model.Describe(1).Spread, 1e-9);
        Assert.Equal(flow, model.Describe(2).Spread, 1e-9);
        Assert.Equal(Math.Sqrt(1e-4 + 1e-4 + 2.5e-5), model.Describe(3).Spread, 1e-9);

        // Without the meter, power is compared with the injectors; without a pulse, lambda with the meter.
        Assert.Equal(flow, ModelOf(Row with { Flow = null }).Describe(2).Spread, 1e-9);
        Assert.Equal(Math.Sqrt(1e-4 + 1e-4 + 2.5e-5), ModelOf(Row with { Pulse = null }).Describe(1).Spread, 1e-9);

        // Under the onset the rail follows the manifold one for one.
        RunModel low = ModelOf(Row with { Manifold = PulledWren.Air.Pressure + Wren.Kpa(20), Rail = Wren.Kpa(320) });
        Assert.Equal(Math.Sqrt((2e3 * 2e3) + (500 * 500) + (1e3 * 1e3)), low.Describe(0).Spread, 1e-6);
    }

    /// <summary>Sensors of other accuracy, each by a figure of its own.</summary>
    [Fact]
    public void Scatter_IsThatOfTheSensorsGiven()
    {
        SensorAccuracy accuracy = SensorAccuracy.Of(
            Wren.Kpa(4), Wren.Kpa(1), Wren.Ms(0.03), Ratio.FromPercent(2), Ratio.FromPercent(3), Ratio.FromPercent(5));
        RunModel model = RunCheck.Of(PulledWren.Plan, Wren.Hill, accuracy).Model(RecordedRun.Of("row", PulledWren.Air, [Row.Row(1)]));
        Assert.Equal(Math.Sqrt((4e3 * 4e3) + (3e3 * 3e3) + (1e3 * 1e3)), model.Describe(0).Spread, 1e-6);
        double across = Math.Sqrt((4e3 * 4e3) + (1e3 * 1e3)) / (2 * 330e3);
        double injected = Math.Sqrt(Math.Pow(3e-5 / model.Inputs[0].Open, 2) + (across * across));
        Assert.Equal(Math.Sqrt(9e-4 + (injected * injected) + 2.5e-5), model.Describe(1).Spread, 1e-9);
        Assert.Equal(Math.Sqrt(4e-4 + (injected * injected) + 2.5e-5), model.Describe(2).Spread, 1e-9);
        Assert.Equal(Math.Sqrt(25e-4 + 9e-4 + 2.5e-5), model.Describe(3).Spread, 1e-9);
    }

    /// <summary>
    /// Rows together scatter by 1/√n as a mean of one or two, and by √(π/2)/√n as a median of three and more (asymptotic efficiency 2/π of
    /// the median of normal noise, a standard result).
    /// </summary>
    [Theory]
    [InlineData(1, 1.0)]
    [InlineData(2, 0.7071067811865)]
    [InlineData(3, 0.7236012545583)]
    [InlineData(4, 0.6266570686578)]
    public void Scatter_FallsWithTheRowsOfAPoint(int together, double share)
    {
        // One lambda in five rows or more would be taken for the end of its sensor.
        RecordedRun run = RecordedRun.Of("rows", PulledWren.Air, Enumerable.Range(1, together * 5).Select(i => (Row with { Lambda = 0.8 + (0.01 * (i % 3)) }).Row(i)));
        RunModel model = PulledWren.Check.Model(run, 5);
        Assert.Equal(together, model.Points.RowCounts[0]);
        Assert.Equal(Math.Sqrt((share * share * ((2e3 * 2e3) + (1.5e3 * 1.5e3))) + (1e3 * 1e3)), model.Describe(0).Spread, 1e-6);
        double across = Math.Sqrt((2e3 * 2e3) + (500 * 500)) / (2 * 330e3);
        double injected = share * Math.Sqrt(Math.Pow(1e-5 / model.Inputs[0].Open, 2) + (across * across));
        Assert.Equal(Math.Sqrt((share * share * 1e-4) + (injected * injected) + 2.5e-5), model.Describe(1).Spread, 1e-9);
        Assert.Equal(Math.Sqrt((share * share * 1e-4) + (injected * injected) + 2.5e-5), model.Describe(2).Spread, 1e-9);
        Assert.Equal(Math.Sqrt((share * share * 2e-4) + 2.5e-5), model.Describe(3).Spread, 1e-9);
    }

    /// <summary>
    /// A rail over four standard deviations under its setting may be the pump's: there the scatter of the flow, as the pump's curve turns it
    /// into pressure, counts too.
    /// </summary>
    [Theory]
    [InlineData(3.99, false, true)]
    [InlineData(4.01, true, true)]
    [InlineData(4.01, true, false)]
    public void Scatter_OfASaggingRail_HasTheFlowsInIt(double deviations, bool sags, bool metered)
    {
        double spread = Math.Sqrt((2e3 * 2e3) + (1.5e3 * 1.5e3) + (1e3 * 1e3));
        RunModel model = ModelOf(Row with { Rail = Pressure.FromPascals(365e3 - (deviations * spread)), Flow = metered ? Row.Flow : null });
        PointInput input = model.Inputs[0];
        double across = Math.Sqrt((2e3 * 2e3) + (500 * 500)) / (2 * input.Differential);
        double flow = metered ? 0.01 : Math.Sqrt(Math.Pow(1e-5 / input.Open, 2) + (across * across));
        double sag = sags ? Math.Sqrt((flow * flow) + (0.005 * 0.005)) * input.RiseByFlow(PulledWren.Check) : 0;
        Assert.Equal(Math.Sqrt((spread * spread) + (sag * sag)), model.Describe(0).Spread, 1e-6);
    }

    /// <summary>What is found at rest bounds what the manifold sensor may still be off, by its scatter.</summary>
    [Fact]
    public void Tolerance_OfTheManifoldSensor_IsItsScatterWhereItsZeroWasSeen()
    {
        Cells rest = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure };
        RecordedRun run = RecordedRun.Of("rest", PulledWren.Air, [.. Enumerable.Range(1, 5).Select(rest.Row), Row.Row(6)]);
        Assert.Equal(500, PulledWren.Check.Model(run).Tolerance[(int)RunQuantity.ManifoldSensor], 1e-9);
        Assert.Equal(1000, ModelOf(Row).Tolerance[(int)RunQuantity.ManifoldSensor], 1e-9);
        SensorAccuracy rough = SensorAccuracy.Of(manifold: Wren.Kpa(3));
        Assert.Equal(1000, RunCheck.Of(PulledWren.Plan, Wren.Hill, rough).Model(run).Tolerance[(int)RunQuantity.ManifoldSensor], 1e-9);

        // In the order of the quantities: 3 %, 10 mΩ, 0.3, 5 kPa, 2 % of 3, 2 kPa, 1.5 %, 0.03 ms, 2.5 %, 4 %, 3 kPa, 1 kPa, 1 %.
        double[] wanted = [0.03, 0.01, 0.3, 5e3, 0.06, 2e3, 0.015, 3e-5, 0.025, 0.04, 3e3, 1e3, 0.01];
        Assert.Equal(wanted, ModelOf(Row).Tolerance.Take(wanted.Length).Select(tolerance => Math.Round(tolerance, 9)));
        Assert.All(ModelOf(Row).Tolerance.Skip(wanted.Length), tolerance => Assert.Equal(0, tolerance));

        // And what the plan does not know: 4 % and 13 K in 100 kPa of boost, 2 % at each speed, 10 kPa, √(0.12² + 0.05²) = 0.13 s, 0.05 s, twice
        // 0.04 s, 0.8 %.
        double[] unknown = [4e-7, 1.3e-4, .. Enumerable.Repeat(0.02, 12), 10e3, 0.13, 0.05, 0.04, 0.04, 0.008];
        Assert.Equal(unknown, PulledWren.DefaultCheck.Model(run).Tolerance.Skip(wanted.Length).Select(tolerance => Math.Round(tolerance, 9)));

        // A gain under 1 is not known better than 2 % of 1.
        RunCheck level = RunCheck.Of(PulledWren.Plan.With(Fixed.At(Wren.Kpa(400))), Wren.Hill);
        Assert.Equal(0.02, level.ToleranceOf()[(int)RunQuantity.RegulatorGain], 12);
    }

    /// <summary>A car that is just the plan differs in nothing, but for what the table of the pump rounds.</summary>
    [Fact]
    public void Differences_OfACarThatIsThePlan_AreNone()
    {
        RunModel model = PulledWren.Check.Model(ExactRun.Of(PulledWren.Plan));
        double[] plain = model.Plain();
        Assert.Equal(64 + 64 + 64 + 48, plain.Length);
        for (int row = 0; row < plain.Length; row++)
        {
            Assert.InRange(Math.Abs(plain[row]), 0, model.Describe(row).Kind == Comparison.Rail ? 800 : 1e-4);
        }
    }

    /// <summary>Nor of one whose regulator stands at the pump, so that the rail lies lower by what the line takes.</summary>
    [Fact]
    public void Differences_OfARegulatorAtThePump_AreNone()
    {
        FuelSystem plan = FuelSystem.Returnless(
            PulledWren.Plan.Demand,
            PulledWren.Plan.Injectors,
            Fixed.At(Wren.Kpa(400)),
            Pump.Of([Wren.WiredCurve(9, 1), Wren.WiredCurve(13.5, 1.6)]),
            plumbing: Plumbing.Of(supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(60))]));
        RunModel model = RunCheck.Of(plan, Wren.Hill).Model(ExactRun.Of(plan));
        Assert.True(model.Inputs.Max(input => input.SupplyLoss) > 20e3);
        Assert.All(model.Plain().Where((_, row) => model.Describe(row).Kind == Comparison.Rail), difference => Assert.InRange(difference, -800, 800));
    }

    /// <summary>Every offset by its own formula, where the regulator holds the rail over its onset, under it, and where there is no meter.</summary>
    [Theory]
    [InlineData(35, true)]
    [InlineData(12, true)]
    [InlineData(35, false)]
    public void Differences_WithOffsets_AreThoseOfTheFormulas(double kilopascals, bool metered)
    {
        double set = 300 + Math.Min(kilopascals, 20) + (3 * Math.Max(0, kilopascals - 20));
        Cells row1 = Row with
        {
            Manifold = PulledWren.Air.Pressure + Wren.Kpa(kilopascals),
            Rail = Wren.Kpa(set + 7),
            Flow = metered ? Row.Flow : null,
        };

        // One row by itself does not move, so that nothing that comes late shows.
        RunModel model = RunCheck.Of(PulledWren.Plan, Wren.Hill, discrepancy: ModelDiscrepancy.Of(lambdaDelay: Duration.Zero))
            .Model(RecordedRun.Of("row", PulledWren.Air, [row1.Row(1)]));
        PointInput input = model.Inputs[0];
        double[] off =
        [
            -0.02, 0.005, 0.2, 4e3, 0.05, 1.5e3, 0.012, 2e-5, 0.02, 0.03, 2.5e3, 0.8e3, 0.007, 3e-7, 1e-4, .. Enumerable.Repeat(0.011, AirOverSpeed.Speeds),
            6e3, 0.1, 0.02, 0.03, 0.04, 0.006,
        ];
        double[] units = [.. off.Zip(model.Tolerance, (value, tolerance) => value / tolerance)];
        double boost = (kilopascals * 1e3) - 0.8e3;
        double onset = 20e3 + 1.5e3;
        double rail = 300e3 + 4e3 + Math.Min(boost, onset) + (3.05 * Math.Max(0, boost - onset)) + 2.5e3 - (6e3 * input.InjectedShare);
        double across = ((set + 7 - kilopascals) * 1e3) - 2.5e3 + 0.8e3;
        double injected = Math.Log(PulledWren.Check.Injected(input, across, input.Open - 2e-5)) + 0.012 - 0.003;
        double burnt = (metered ? Math.Log(input.Meter) - 0.007 : injected) + 0.006;
        double air = 0.02 + (3e-7 * kilopascals * 1e3) + (1e-4 * kilopascals * 1e3 * input.AirByTemperature) + 0.011;
        double[] wanted =
        [
            ((set + 7) * 1e3) - rail,
            .. metered ? (double[])[Math.Log(input.Meter) - 0.007 - injected] : [],
            Math.Log(0.82) + injected + 0.006 - input.LogStoichiometric + (0.8e3 * input.AirByPressure) - air,
            Math.Log(110e3) - burnt - input.LogWork + 0.03,
        ];
        double[] found = new double[model.Comparisons];
        model.Differences(units, found);
        Assert.Equal(wanted.Length, found.Length);
        for (int row = 0; row < wanted.Length; row++)
        {
            double deviations = wanted[row] / model.Describe(row).Spread;

            // Over three deviations it counts as 3 √(2/3 |d| − 1), whose square is Huber's loss.
            double counted = Math.Abs(deviations) <= 3 ? deviations : Math.Sign(deviations) * Math.Sqrt((6 * Math.Abs(deviations)) - 9);
            Assert.Equal(counted, found[row], 1e-6);
        }

        Assert.Equal(rail, model.RailAt(0, units).Rail, 1e-3);
        Assert.Equal(
            PulledWren.Check.Pumps.Rise(input.Flow * Math.Exp(metered ? -0.007 : 0.012) / Math.Exp(-0.02), 13.5, 0.005)
                - input.Loss - (input.LossByFlow * (metered ? -0.007 : 0.012)) - (0.2 * input.FilterLoss * Math.Exp(metered ? -0.007 : 0.012))
                - (rail - 2.5e3),
            model.RailAt(0, units).Surplus,
            1e-3);
    }

    /// <summary>Without an injected fuel lambda is compared with the meter's.</summary>
    [Fact]
    public void Air_WithoutPulse_IsByTheMeter()
    {
        RunModel model = ModelOf(Row with { Pulse = null });
        double[] found = new double[model.Comparisons];
        double[] off = new double[RunModel.Quantities];
        off[(int)RunQuantity.FlowMeter] = 0.5;
        model.Differences(off, found);
        PointInput input = model.Inputs[0];
        double wanted = Math.Log(0.82) + Math.Log(input.Meter) - 0.005 - input.LogStoichiometric;
        Assert.Equal(wanted, model.Plain()[1] - 0.005, 1e-9);
        double deviations = wanted / model.Describe(1).Spread;
        Assert.Equal(Math.Abs(deviations) <= 3 ? deviations : Math.Sign(deviations) * Math.Sqrt((6 * Math.Abs(deviations)) - 9), found[1], 1e-6);
    }

    /// <summary>A pulse that hardly opens, and a rail hardly over the manifold, are taken at 1 µs and 1 Pa at the least.</summary>
    [Fact]
    public void Injectors_ThatHardlyOpen_HaveAnAnswerAllTheSame()
    {
        RunModel model = ModelOf(Row with { Pulse = Wren.Ms(0.93) });
        double[] off = new double[RunModel.Quantities];
        off[(int)RunQuantity.DeadTime] = 20;
        PointInput input = model.Inputs[0];
        Assert.InRange(input.Open, 1e-6, 0.59e-3);
        double[] found = new double[model.Comparisons];
        model.Differences(off, found);
        Assert.All(found, difference => Assert.True(double.IsFinite(difference)));
        double wanted = (Math.Log(input.Meter) - Math.Log(PulledWren.Check.Injected(input, input.Differential, 1e-6))) / model.Describe(1).Spread;
        Assert.Equal(Math.Sqrt((6 * wanted) - 9), found[1], 1e-6);
        off[(int)RunQuantity.DeadTime] = 0;
        off[(int)RunQuantity.RailSensor] = 200;
        model.Differences(off, found);
        wanted = (Math.Log(input.Meter) - Math.Log(PulledWren.Check.Injected(input, 1, input.Open))) / model.Describe(1).Spread;
        Assert.Equal(Math.Sqrt((6 * wanted) - 9), found[1], 1e-6);
    }

    [Fact]
    public void LowerThan_IsTheRailsThatLieUnderTheModel()
    {
        RecordedRun run = ExactRun.Changed(
            ExactRun.Of(PulledWren.Plan), (cells, i) => i is 3 or 12 ? cells with { Rail = cells.Rail - Wren.Kpa(60) } : i == 8 ? cells with { Rail = cells.Rail + Wren.Kpa(60) } : cells);
        RunModel model = PulledWren.Check.Model(run);
        double[] nothing = new double[RunModel.Quantities];
        Assert.Equal([3, 12], model.LowerThan(nothing, -3));
        double One(int point) => -60e3 / Enumerable.Range(0, model.Comparisons)
            .Select(model.Describe)
            .First(row => row.Point == point && row.Kind == Comparison.Rail).Spread;
        Assert.Equal([3, 12], model.LowerThan(nothing, Math.Max(One(3), One(12)) * 0.9));
        Assert.Empty(model.LowerThan(nothing, Math.Min(One(3), One(12)) * 1.2));
    }

    public static TheoryData<string, double> Sloped => new()
    {
        { "rising", 1.0 }, { "weak", 1.0 }, { "no meter", 1.0 }, { "weak, no meter", 1.0 }, { "no pulse", 1.0 }, { "series", 1.0 }, { "ceiling", 1.0 }, { "fixed", 1.0 }, { "electronic", 1.0 }, { "weak, restricted", 1.0 },
        { "rising", -1.0 }, { "weak", -1.0 }, { "series", -1.0 },
    };

    /// <summary>Slopes in closed form against differences of the model itself, of every comparison and every quantity.</summary>
    [Theory]
    [MemberData(nameof(Sloped))]
    public void Slopes_AreThoseOfTheDifferences(string kind, double sign)
    {
        (RunCheck check, RecordedRun run) = Kind(kind);
        RunModel model = check.Model(run);
        double[] off = [.. new[] { 0.31, 0.2, 0.4, -0.3, 0.25, -0.35, 0.15, 0.1, -0.2, 0.3, 0.27, -0.23, 0.12, 0.1, -0.2, 0.3, -0.1, 0.2, 0.15, -0.25, 0.05, 0.3, -0.2, 0.1, 0.2, -0.3, 0.15, 0.1, -0.2, 0.15, 0.2, -0.1, 0.05 }.Select(value => sign * value)];
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        Array.Fill(slopes, 77);
        model.Slopes(off, slopes);
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            // A few points may lie just at a corner of the pump's table.
            int odd = 0;
            (double[] up, double[] down) = (new double[model.Comparisons], new double[model.Comparisons]);

            // The pump's own slopes are taken over 1 % of flow and 2 mΩ, for its table has corners.
            double step = quantity <= (int)RunQuantity.FeedResistance ? 0.15 : 1e-3;
            model.Differences(Moved(off, quantity, step), up);
            model.Differences(Moved(off, quantity, -step), down);
            for (int row = 0; row < model.Comparisons; row++)
            {
                double numeric = (up[row] - down[row]) / (2 * step);
                double slope = slopes[(row * RunModel.Quantities) + quantity];
                bool rail = model.Describe(row).Kind == Comparison.Rail;
                bool close = Math.Abs(numeric - slope) <= (rail ? 1e-4 + (0.04 * Math.Abs(numeric)) : 1e-6 + (2e-4 * Math.Abs(numeric)));
                odd += close ? 0 : 1;
                Assert.True(close || (rail && odd <= 3), $"{kind}: {(RunQuantity)quantity} of {model.Describe(row).Kind} at point {model.Describe(row).Point}: {numeric:0.#####} by differences, {slope:0.#####} given");
            }
        }

        // In SI or logarithms, if nothing were off, over its tolerance.
        double[] nothing = new double[RunModel.Quantities];
        model.Slopes(nothing, slopes);
        double[] differences = new double[model.Comparisons];
        model.Differences(nothing, differences);
        for (int row = 0; row < model.Comparisons; row++)
        {
            double[] plain = model.PlainSlopes(row);
            for (int quantity = 0; quantity < RunModel.Quantities && Math.Abs(differences[row]) <= 3; quantity++)
            {
                Assert.Equal(slopes[(row * RunModel.Quantities) + quantity] * model.Describe(row).Spread, plain[quantity], 1e-6 * (1 + Math.Abs(plain[quantity])));
            }
        }
    }

    /// <summary>A regulator in series with a unit, with a ceiling: which of them sets the rail where, and how the set pressure goes with boost.</summary>
    [Fact]
    public void Regulator_InSeries_IsSetByTheHigherOfBoth()
    {
        RegulatorModel model = RegulatorModel.Of(
            RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(150), 6, Wren.Kpa(4), Wren.Kpa(600))));
        Assert.True(model.HasOnset);
        Assert.Equal((6, 1, 4e3, 150e3, 600e3), (model.Gain, model.SlopeBelow, model.Onset, model.Base, model.Ceiling));

        // The unit: 150 + 4 + 6 (b − 4); the base regulator: 300 + b. They are one where 5 b = 170, at 34 kPa; in steps of 0.5 kPa from 4 on.
        Assert.Equal(34e3, model.EffectiveOnset, 1.0);
        Assert.False(model.Governs(33.9e3, 0, 0, 0));
        Assert.True(model.Governs(34.1e3, 0, 0, 0));
        Assert.Equal(320e3, model.Set(20e3, 0, 0, 0), 1e-6);
        Assert.Equal(150e3 + 4e3 + (6 * 46e3), model.Set(50e3, 0, 0, 0), 1e-6);
        Assert.Equal(600e3, model.Set(90e3, 0, 0, 0), 1e-6);
        Assert.Equal(1, model.SlopeBefore, 9);

        // Base off by 5 kPa, gain by 0.5, onset by 2 kPa: at 50 kPa 155 + 6 + 6.5 · 44; at 20 kPa the base regulator at 325.
        Assert.Equal(155e3 + 6e3 + (6.5 * 44e3), model.Set(50e3, 5e3, 0.5, 2e3), 1e-6);
        Assert.Equal(325e3, model.Set(20e3, 5e3, 0.5, 2e3), 1e-6);
        Assert.True(model.Governs(50e3, 5e3, 0.5, 2e3));

        // A base that is off moves both alike, and so where the unit takes over not at all.
        Assert.False(model.Governs(33.9e3, 5e3, 0, 0));
        Assert.True(model.Governs(34.1e3, -5e3, 0, 0));
        Assert.Equal(0, RegulatorModel.Of(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(150), 6, Wren.Kpa(4)))).SlopeBefore, 9);
    }

    [Fact]
    public void Regulator_OfEveryKind_HasItsSlopes()
    {
        RegulatorModel rising = RegulatorModel.Of(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(20)));
        Assert.Equal((3, 1, 20e3, 300e3, double.PositiveInfinity), (rising.Gain, rising.SlopeBelow, rising.Onset, rising.Base, rising.Ceiling));
        Assert.Equal(20e3, rising.EffectiveOnset);
        Assert.True(rising.Governs(-50e3, 0, 0, 0));
        RegulatorModel follows = RegulatorModel.Of(ManifoldReferenced.From(Wren.Kpa(280)));
        Assert.Equal((1, 1, 0, 280e3), (follows.Gain, follows.SlopeBelow, follows.Onset, follows.Base));
        Assert.False(follows.HasOnset);
        Assert.Equal(320e3, follows.Set(40e3, 0, 0, 0), 1e-6);
        RegulatorModel held = RegulatorModel.Of(ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)));
        Assert.Equal((1, 1, 350e3), (held.Gain, held.SlopeBelow, held.Base));
        Assert.Equal(360e3, held.Set(10e3, 0, 0, 0), 1e-6);
        RegulatorModel level = RegulatorModel.Of(ElectronicReturnless.Holding(Wren.Kpa(350), false, Wren.Volt(6)));
        Assert.Equal((0, 0, 350e3), (level.Gain, level.SlopeBelow, level.Base));
        Assert.Equal(350e3, level.Set(10e3, 0, 0, 0), 1e-6);
        Assert.Equal(400e3, RegulatorModel.Of(Fixed.At(Wren.Kpa(400))).Set(60e3, 0, 0, 0), 1e-6);
    }

    private static (RunCheck Check, RecordedRun Run) Kind(string kind)
    {
        FuelSystem plan = kind switch
        {
            "series" or "fixed" or "electronic" => OddRunTests.Plan(kind),
            "weak, restricted" => PulledWren.Plan.With(Plumbing.Of(supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(80))])),
            "ceiling" => PulledWren.Plan.With(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(20), Wren.Kpa(380))),
            _ => PulledWren.Plan,
        };
        Pump pump = (Pump)PulledWren.Plan.Pump;
        FuelSystem car = kind.StartsWith("weak", StringComparison.Ordinal) ? plan.With(pump.WithCondition(Ratio.FromPercent(0.7 * 90))) : plan;
        RecordedRun run = ExactRun.Of(car);
        bool metered = !kind.EndsWith("no meter", StringComparison.Ordinal);
        return (RunCheck.Of(plan, Wren.Hill), ExactRun.Changed(run, (cells, i) => cells with
        {
            Flow = metered ? cells.Flow : null,
            Pulse = kind == "no pulse" ? null : cells.Pulse,
            Lambda = 0.82 + (0.002 * (i % 5)),
            Rail = cells.Rail + Wren.Kpa(0.3 * (i % 7)),
        }));
    }

    private static double[] Moved(double[] off, int quantity, double step)
    {
        double[] moved = [.. off];
        moved[quantity] += step;
        return moved;
    }

    private static IEnumerable<Comparison> Kinds(Cells row)
    {
        RunModel model = ModelOf(row);
        return Enumerable.Range(0, model.Comparisons).Select(at => model.Describe(at).Kind);
    }

    private static RunModel ModelOf(Cells row) => PulledWren.Check.Model(RecordedRun.Of("row", PulledWren.Air, [row.Row(1)]));
}
