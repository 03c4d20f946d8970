using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>What is drawn of a system, and which inputs it cannot have.</summary>
public class UncertainSystemTests
{
    private static readonly Atmosphere Air = Atmosphere.Of(Wren.Kpa(97), Temperature.FromDegreesCelsius(12));

    /// <summary>The day and the boost of a sample are those drawn: 90 % of a uniform from 90 to 100 kPa is 99 kPa, and so on.</summary>
    [Fact]
    public void DayAndBoost_OfASample_AreThoseDrawn()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6000), Wren.Kpa(50), Conditions.Of(Air, Wren.Volt(13.2), Temperature.FromDegreesCelsius(31)));
        Same(
            UncertainInput.AmbientPressure(Distribution.Uniform(Wren.Kpa(90), Wren.Kpa(100))),
            Atmosphere.Of(Wren.Kpa(99), Temperature.FromDegreesCelsius(12)),
            50);
        Same(
            UncertainInput.AmbientTemperature(Distribution.Uniform(Temperature.FromDegreesCelsius(0), Temperature.FromDegreesCelsius(30))),
            Atmosphere.Of(Wren.Kpa(97), Temperature.FromDegreesCelsius(27)),
            50);
        Same(UncertainInput.BoostFactor(Uniform(0.8, 1.3)), Air, 50 * 1.25);

        void Same(UncertainInput input, Atmosphere air, double boost)
        {
            UncertainSystem unsure = UncertainSystem.Of(Car(), point, input);
            OperatingResult drawn = Solved(unsure, unsure.Drawn(input, 0.9));
            OperatingResult expected = Car().Solve(OperatingPoint.At(
                Wren.Rpm(6000), Wren.Kpa(boost), Conditions.Of(air, Wren.Volt(13.2), Temperature.FromDegreesCelsius(31))));
            Assert.Equal(expected.Demand.FromAir.KilogramsPerSecond, drawn.Demand.FromAir.KilogramsPerSecond, 12);
            Assert.Equal(expected.Demand.FromPower.KilogramsPerSecond, drawn.Demand.FromPower.KilogramsPerSecond, 12);
            Assert.Equal(expected.RailGauge.Pascals, drawn.RailGauge.Pascals, 4);
            Assert.Equal(expected.DutyCycle!.Value.DecimalFractions, drawn.DutyCycle!.Value.DecimalFractions, 9);
            Assert.Equal(boost, drawn.Point.Boost.Kilopascals, 9);
        }
    }

    /// <summary>Injectors 2 % weak as a kind and 1 % strong as matched are injectors of 0.98 · 1.01, the cylinders all alike.</summary>
    [Fact]
    public void FlowAndMatching_OfASample_Multiply()
    {
        UncertainSystem system = Of(
            UncertainInput.InjectorFlowFactor(Distribution.Fixed(Fraction(0.98))), UncertainInput.InjectorMatchingFactor(Distribution.Fixed(Fraction(1.01))));
        SampledPoint drawn = system.At([0.5, 0.5, 0.5, 0.5, 0.5]).Points[0];
        double duty = Car(injector: 570 * 0.98 * 1.01).Solve(Point).DutyCycle!.Value.DecimalFractions;
        Assert.Equal(duty, drawn.DutyCycle, 9);
        Assert.Equal(duty, drawn.MaximumDutyCycle, 9);
        Assert.Equal(0.82, drawn.LeanestLambda, 12);
        Assert.Equal(0.82, drawn.RichestLambda, 12);
    }

    /// <summary>A tornado takes one injector of four to its end, 4 % weak: f̄ = 0.99, so its cylinder has λ f̄/0.96 and the others λ f̄.</summary>
    [Fact]
    public void Matching_AtAPercentile_IsOneInjectorOfTheSet()
    {
        UncertainInput matching = UncertainInput.InjectorMatchingFactor(Uniform(0.95, 1.05));
        SampledPoint point = Of(matching).At(matching, 0.1).Points[0];
        Assert.Equal(0.82 * 0.99 / 0.96, point.LeanestLambda, 12);
        Assert.Equal(0.82 * 0.99, point.RichestLambda, 12);
    }

    /// <summary>
    /// Eight injectors, two a cylinder: the cylinders' means are 1, 1.1, 0.9 and 1 of a whole mean of 1, so lambda is 0.82/0.9 in the leanest and 0.82/1.1 in the
    /// richest. An even share asks of the weakest, 0.75, an opening of 1/0.75.
    /// </summary>
    [Fact]
    public void TwoInjectorsACylinder_MakeItsMixtureTogether()
    {
        OperatingResult result = With(8, 290).Solve(Point);
        SampledPoint point = Sampled(result, 1.2, 0.8, 1.15, 1.05, 0.75, 1.05, 1, 1);
        Assert.Equal(0.82 / 0.9, point.LeanestLambda, 12);
        Assert.Equal(0.82 / 1.1, point.RichestLambda, 12);
        double dead = result.DeadTime!.Value.Seconds / result.AvailableTime.Seconds;
        Assert.Equal(dead + ((result.DutyCycle!.Value.DecimalFractions - dead) / 0.75), point.MaximumDutyCycle, 9);

        SampledPoint alike = Sampled(result);
        Assert.Equal((0.82, 0.82), (Math.Round(alike.LeanestLambda, 12), Math.Round(alike.RichestLambda, 12)));
        Assert.Equal(result.DutyCycle!.Value.DecimalFractions, alike.MaximumDutyCycle, 12);
    }

    /// <summary>Six injectors on four cylinders have no share each: no lambda of a cylinder, matched or not, but a duty cycle.</summary>
    [Fact]
    public void Injectors_ThatCannotBeSharedOut_HaveNoLambdaOfACylinder()
    {
        OperatingResult result = With(6, 390).Solve(Point);
        SampledPoint matched = Sampled(result, 1, 1, 1, 1, 1, 0.94);
        double dead = result.DeadTime!.Value.Seconds / result.AvailableTime.Seconds;
        Assert.True(double.IsNaN(matched.LeanestLambda) && double.IsNaN(matched.RichestLambda));
        Assert.Equal(dead + ((result.DutyCycle!.Value.DecimalFractions - dead) * 0.99 / 0.94), matched.MaximumDutyCycle, 9);
        SampledPoint alike = Sampled(result);
        Assert.True(double.IsNaN(alike.LeanestLambda) && double.IsNaN(alike.RichestLambda));
        Assert.Equal(result.DutyCycle!.Value.DecimalFractions, alike.MaximumDutyCycle, 12);
    }

    /// <summary>Where the data ends nothing is said: 6 to 14 V from a dead-time table that begins at 8 V, of duty cycle and of what hangs on it.</summary>
    [Fact]
    public void Outputs_PastTheData_AreNone_AndOthersStay()
    {
        UncertainInput volts = UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(6), Wren.Volt(14)));
        UncertainSystem system = Of(volts);
        SampledSystem past = system.At(volts, 0.1), within = system.At(volts, 0.9);
        OperatingResult expected = Car().Solve(OperatingPoint.At(
            Point.Speed, Point.Boost, Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.2), Wren.Hill.FuelTemperature)));
        foreach (SystemOutput output in new[] { SystemOutput.DutyCycle, SystemOutput.MinimumReserve, SystemOutput.ReserveOf(Part.Injectors) })
        {
            Assert.True(double.IsNaN(output.Of(past)));
            Assert.True(double.IsFinite(output.Of(within)));
            Assert.Null(output.Typed(output.Of(past)));
        }

        Assert.Equal(expected.DutyCycle!.Value.DecimalFractions, SystemOutput.DutyCycle.Of(within), 9);
        Assert.Equal(expected.Margins.Min(margin => margin.Reserve?.DecimalFractions)!.Value, SystemOutput.MinimumReserve.Of(within), 9);
        Assert.Equal(
            expected.Margins.Single(margin => margin.Part == Part.Injectors).Reserve!.Value.DecimalFractions, SystemOutput.ReserveOf(Part.Injectors).Of(within), 9);
        Assert.Equal(expected.Demand.KilogramsPerSecond, SystemOutput.FuelFlow.Of(past), 12);
        Assert.True(double.IsNaN(SystemOutput.ReserveOf(Part.ReturnLine).Of(within)));
        Assert.True(double.IsNaN(past.Points[0].MaximumDutyCycle));

        // Of two places, one past the data: a worst figure of both is none, on whichever side it stands.
        foreach (SampledPoint[] both in new[] { new[] { past.Points[0], within.Points[0] }, [within.Points[0], past.Points[0]] })
        {
            Assert.True(double.IsNaN(SystemOutput.DutyCycle.Of(new(both))));
            Assert.True(double.IsNaN(SystemOutput.MinimumReserve.Of(new(both))));
        }
    }

    /// <summary>The greatest of several places is the worst of what has an upper limit, the smallest of what must be kept.</summary>
    [Fact]
    public void Outputs_OfSeveralPlaces_AreTheWorst()
    {
        SampledPoint[] places = [.. new[] { 4000, 6500, 5000 }.Select(rpm => Sampled(Car().Solve(Wren.At(rpm, 0.6))))];
        SampledSystem system = new(places);
        double[] duty = [.. places.Select(place => place.DutyCycle)];
        double[] margin = [.. places.Select(place => place.Readings.Min(reading => CheckReading.MarginOf(reading)!.Value))];
        Assert.Equal(duty.Max(), SystemOutput.DutyCycle.Of(system));
        Assert.Equal(margin.Min(), SystemOutput.MinimumReserve.Of(system), 12);
        Assert.Equal(3, duty.Distinct().Count());
        Assert.Equal(
            places.Min(place => Reserve(place, Part.Pump)!.Value),
            SystemOutput.ReserveOf(Part.Pump).Of(system),
            12);
    }

    /// <summary>A pump whose curve ends at 250 kPa gives no data for 360 kPa: no rail pressure is said.</summary>
    [Fact]
    public void RailPressure_PastThePumpsData_IsNone()
    {
        FuelSystem car = FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(570), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(PumpCurve.At(
                "short", Wren.Volt(13.5), (Wren.Kpa(150), VolumeFlow.FromLitersPerHour(240)), (Wren.Kpa(250), VolumeFlow.FromLitersPerHour(220)))));
        SampledPoint place = Sampled(car.Solve(Point));
        Assert.Equal(RailState.NotCovered, car.Solve(Point).RailState);
        Assert.True(double.IsNaN(place.RailGauge));
        Assert.True(double.IsNaN(SystemOutput.RailGauge.Of(new([place]))));
        Assert.True(double.IsFinite(SystemOutput.RailGauge.Of(new([Sampled(Car().Solve(Point))]))));
    }

    /// <summary>
    /// Each number of an input has a stream of its own, of which the input's kind is the number (times 256), so that its draws are the same whatever else is unknown:
    /// 4 is injector flow, 5 the matching, of four injectors.
    /// </summary>
    [Fact]
    public void Streams_OfInputs_AreTheirOwn()
    {
        Assert.Equal([1280u, 1281u, 1282u, 1283u, 1024u], Of(Matching, Flow).Streams);
        UncertainInput weak = UncertainInput.InjectorFlowFactor(Uniform(0.84, 1.04));
        MonteCarloResult result = Of(weak, Warmth).MonteCarlo(Sampling.Of(64, 3));
        Assert.Equal(64, result.DutyCycle.Sorted.Select(duty => duty.DecimalFractions).Distinct().Count());

        // Injectors of 570 mL/min run short, the pump of 1.2 times its size does not.
        Assert.Equal(Part.Injectors, result.MinimumChance.Part);
        Assert.Equal(result.Parts.Min(part => part.Chance.Holding), result.MinimumChance.Chance.Holding);
        Assert.InRange(result.MinimumChance.Chance.Holding, 1, 63);
        Assert.Equal($"everything {result.All}; least likely injectors: {result.MinimumChance.Chance}", result.ToString());
        Assert.Equal(result.MinimumChance.ToString(), $"injectors: {result.MinimumChance.Chance}");
    }

    /// <summary>What a value may be, at either end, and that a hair more is refused by the distribution's end.</summary>
    [Theory]
    [InlineData("BSFC", 150, 1500)]
    [InlineData("factor", 50, 150)]
    [InlineData("loss", 0, 40)]
    [InlineData("pressure", -100, 100)]
    [InlineData("ambient pressure", 40, 110)]
    [InlineData("ambient temperature", -50, 60)]
    [InlineData("voltage", 6, 20)]
    [InlineData("fuel temperature", -30, 80)]
    [InlineData("ethanol", 0, 100)]
    public void Range_OfAnInput_HasBothItsEnds(string kind, double minimum, double maximum)
    {
        foreach (Func<double, double, UncertainInput> make in Makers(kind))
        {
            Assert.NotNull(make(minimum, maximum));
            Refused.OutOfRange("distribution", () => make(minimum - 0.01, maximum));
            Refused.OutOfRange("distribution", () => make(minimum, maximum + 0.01));
        }

        static Func<double, double, UncertainInput>[] Makers(string kind)
        {
            Distribution<Ratio> Share(double a, double b) => Distribution.Uniform(Wren.Percent(a), Wren.Percent(b));
            Distribution<Pressure> Kilopascals(double a, double b) => Distribution.Uniform(Wren.Kpa(a), Wren.Kpa(b));
            Distribution<Temperature> Celsius(double a, double b) =>
                Distribution.Uniform(Temperature.FromDegreesCelsius(a), Temperature.FromDegreesCelsius(b));
            return kind switch
            {
                "BSFC" => [(a, b) => UncertainInput.BrakeSpecificFuelConsumption(Distribution.Uniform(Grams(a), Grams(b)))],
                "factor" =>
                [
                    (a, b) => UncertainInput.VolumetricEfficiencyFactor(Share(a, b)), (a, b) => UncertainInput.InjectorFlowFactor(Share(a, b)),
                    (a, b) => UncertainInput.InjectorMatchingFactor(Share(a, b)), (a, b) => UncertainInput.RegulatorGainFactor(Share(a, b)),
                    (a, b) => UncertainInput.BoostFactor(Share(a, b)),
                ],
                "loss" => [(a, b) => UncertainInput.DrivetrainLoss(Share(a, b))],
                "pressure" =>
                    [(a, b) => UncertainInput.RegulatorOffset(Kilopascals(a, b)), (a, b) => UncertainInput.RegulatorOnsetOffset(Kilopascals(a, b))],
                "ambient pressure" => [(a, b) => UncertainInput.AmbientPressure(Kilopascals(a, b))],
                "ambient temperature" => [(a, b) => UncertainInput.AmbientTemperature(Celsius(a, b))],
                "voltage" => [(a, b) => UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(a), Wren.Volt(b)))],
                "fuel temperature" => [(a, b) => UncertainInput.FuelTemperature(Celsius(a, b))],
                _ => [(a, b) => UncertainInput.EthanolContent(Share(a, b))],
            };
        }
    }

    [Fact]
    public void Value_OfAnInput_IsAskedForBetweenItsEndsOnly()
    {
        Assert.Equal(96.8, ((Ratio)Flow.ValueAt(Wren.Percent(10))).Percent, 9);
        Assert.Equal(96, ((Ratio)Flow.ValueAt(Fraction(1e-9))).Percent, 6);
        Assert.Equal(104, ((Ratio)Flow.ValueAt(Fraction(1 - 1e-9))).Percent, 6);
        Refused.OutOfRange("probability", () => Flow.ValueAt(Ratio.Zero));
        Refused.OutOfRange("probability", () => Flow.ValueAt(Fraction(1)));
        Refused.Missing("distribution", () => UncertainInput.InjectorFlowFactor(null!));
        Assert.Equal(Fuel.Petrol, UncertainInput.EthanolContent(Uniform(0, 0.1)).Petrol);
        Fuel own = Fuel.Petrol.WithReidVapourPressure(Wren.Kpa(70));
        Assert.Equal(own, UncertainInput.EthanolContent(Uniform(0, 0.1), own).Petrol);
    }

    /// <summary>Work is half of the fuel's heat at most: 3600/(0.5 · LHV) g/kWh, LHV in MJ/kg.</summary>
    [Fact]
    public void Consumption_ThatMakesMoreThanHalfTheHeatWork_IsRefused()
    {
        double half = 3600 / (0.5 * Fuel.Petrol.LowerHeatingValue.MegajoulesPerKilogram);
        Assert.NotNull(Of(UncertainInput.BrakeSpecificFuelConsumption(Distribution.Uniform(Grams(half + 0.01), Grams(350)))));
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            () => Of(UncertainInput.BrakeSpecificFuelConsumption(Distribution.Uniform(Grams(half - 0.5), Grams(350)))));
        Assert.Matches("^inputs is BSFC down to 1[0-9]{2} g/kWh; it must be a brake efficiency of at most 50 %. Check that the figure belongs to petrol.", refused.Message);
    }

    /// <summary>A manifold-referenced 100 kPa at 70 kPa under ambient sets 30 kPa, of which 10 kPa must be left.</summary>
    [Fact]
    public void RegulatorOffset_ThatLeavesNoPressure_IsRefused()
    {
        FuelSystem low = Wren.System(ManifoldReferenced.From(Wren.Kpa(100)));
        UncertainSystem Off(double by) => UncertainSystem.Of(
            low, Wren.At(1000, -0.7), UncertainInput.RegulatorOffset(Distribution.Uniform(Wren.Kpa(by), Wren.Kpa(50))));
        Assert.NotNull(Off(-19.9));
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Off(-21));
        Assert.StartsWith("inputs is 9", refused.Message, StringComparison.Ordinal);
        Assert.Contains("It is what regulator pressure leaves of the pressure set at this point.", refused.Message, StringComparison.Ordinal);

        // Along a line the place of the lowest boost counts: none at 2,000 rev/min, where 100 kPa are set.
        HeldBoost line = HeldBoost.Of(Wren.Kpa(60), Wren.Rpm(3300), Wren.Rpm(6900), Wren.Rpm(2000));
        UncertainSystem Along(double by) => UncertainSystem.Along(
            low, line, Wren.Rpm(2000), Wren.Rpm(6000), Wren.Hill, UncertainInput.RegulatorOffset(Distribution.Uniform(Wren.Kpa(by), Wren.Kpa(50))));
        Assert.Equal(0, line.At(Wren.Rpm(2000), low.Demand, Wren.Hill.Atmosphere).Kilopascals, 9);
        Assert.NotNull(Along(-89.9));
        Refused.OutOfRange("inputs", () => Along(-90.1));
    }

    /// <summary>An onset of 5 kPa may be 5 kPa early, and no more: the gain cannot set in before there is boost.</summary>
    [Fact]
    public void RegulatorOnset_BeforeBoost_IsRefused()
    {
        FuelSystem rising = Car().With(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(5)));
        UncertainSystem Early(double by) => UncertainSystem.Of(
            rising, Point, UncertainInput.RegulatorOnsetOffset(Distribution.Uniform(Wren.Kpa(-by), Wren.Kpa(5))));
        Assert.NotNull(Early(4.99));
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Early(6));
        Assert.StartsWith("inputs is −1 kPa; it must be between 0 kPa and 400 kPa. It is the onset that regulator onset leaves of the one described.", refused.Message, StringComparison.Ordinal);
        foreach (UncertainInput input in new[]
        {
            UncertainInput.RegulatorGainFactor(Uniform(0.9, 1.1)), UncertainInput.RegulatorOnsetOffset(Distribution.Uniform(Wren.Kpa(0), Wren.Kpa(5))),
        })
        {
            ArgumentException none = Assert.Throws<ArgumentException>(() => Of(input));
            Assert.StartsWith($"inputs has a {input.Name}, but the regulator has none: ", none.Message, StringComparison.Ordinal);
            Assert.NotNull(UncertainSystem.Of(rising, Point, input));
        }
    }

    private static FuelSystem With(int injectors, double size) => FuelSystem.Return(
        Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(size), injectors), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(Wren.PumpOf(1.2)));
}
