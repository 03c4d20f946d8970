using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>The next stage from one run: what was measured enters once, and the stated chances are those of the cars.</summary>
public class ForecastTests
{
    private static readonly OperatingPoint Point = OperatingPoint.At(Wren.Rpm(6200), Pressure.FromBars(0.55), Wren.Hill);

    private static readonly PulledWren Worn = PulledWren.With(RunFault.WeakPump, 6);

    private static readonly Calibration Found = Calibration.Of(PulledWren.Check, Worn.Recorded(3));

    /// <summary>The rail that the car truly has at the next stage, pump worn to some 70 %, not the one of a sound pump.</summary>
    [Fact]
    public void WornPump_ThatTheRunMeasured_IsInTheForecast()
    {
        double truth = Worn.Car.Solve(Point).RailGauge.Kilopascals;
        double planned = PulledWren.Plan.Solve(Point).RailGauge.Kilopascals;
        OutputSpread<Pressure> rail = Found.Forecast(PulledWren.Plan, Point).MonteCarlo(Sampling.Of(300, seed: 4)).RailGauge;
        Assert.True(planned - truth > 60, $"{planned:0} kPa planned, {truth:0} kPa in truth");
        Assert.InRange(truth, rail.Percentile(Ratio.FromPercent(1))!.Value.Kilopascals, rail.Percentile(Ratio.FromPercent(99))!.Value.Kilopascals);
        Assert.True(rail.StandardDeviation!.Value.Kilopascals < 15);
    }

    [Fact]
    public void Gain_ThatTheRunMeasured_IsInTheForecast()
    {
        PulledWren car = PulledWren.With(RunFault.WrongGain, 3);
        Calibration found = Calibration.Of(PulledWren.Check, car.Recorded(1));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(4000), Pressure.FromBars(0.5), Wren.Hill);
        double truth = car.Car.Solve(point).RailGauge.Kilopascals;
        Assert.True(Math.Abs(PulledWren.Plan.Solve(point).RailGauge.Kilopascals - truth) > 15);
        Assert.Equal(truth, found.Corrected(PulledWren.Plan).Solve(point).RailGauge.Kilopascals, 8.0);
    }

    [Fact]
    public void System_ThatTheRunHasCorrectedAlready_IsRefused()
    {
        FuelSystem[] corrected =
        [
            Found.Updated,
            Found.Corrected(PulledWren.Plan),
            Found.Updated.With(ManifoldReferenced.From(Wren.Kpa(300))),
            PulledWren.Plan.With(Found.Updated.Pump),
            PulledWren.Plan.With(PulledWren.Plan.Demand.With(
                PulledWren.Plan.Demand.VolumetricEfficiency, PulledWren.Plan.Demand.MeasuredPower, Found.Updated.Demand.Consumption)),
            PulledWren.Plan.With(PulledWren.Plan.Demand.With(
                PulledWren.Plan.Demand.VolumetricEfficiency, PulledWren.Plan.Demand.MeasuredPower, Found.Updated.Demand.Consumption.With(Fuel.E85))),

            // Of another recording of the same car.
            Calibration.Of(PulledWren.Check, Worn.Recorded(5)).Updated,
        ];
        foreach (FuelSystem next in corrected)
        {
            string message = Assert.Throws<ArgumentException>(() => Found.Forecast(next, Point)).Message;
            Assert.Contains("corrected twice", message, StringComparison.Ordinal);
            Assert.Throws<ArgumentException>(() => Found.Corrected(next));
            Assert.Throws<ArgumentException>(() => Found.Carried(next));
        }
    }

    [Fact]
    public void Parts_ThatAreNewInTheNextStage_AreAsDescribed()
    {
        Pump fresh = ((Pump)PulledWren.Plan.Pump).WithCondition(Ratio.FromPercent(100));
        FuelSystem next = PulledWren.Plan.With(fresh).With(InjectorSet.Of(Wren.InjectorOf(700), 4)).With(ManifoldReferenced.From(Wren.Kpa(300)));
        FuelSystem corrected = Found.Corrected(next);
        Assert.Equal(next.Pump, corrected.Pump);
        Assert.Equal(next.Injectors, corrected.Injectors);
        Assert.Equal(next.Regulator, corrected.Regulator);
        Assert.NotEqual(next.Demand.VolumetricEfficiency, corrected.Demand.VolumetricEfficiency);
        Assert.Equal(
            ["BSFC", "volumetric efficiency", "filter's loss over that of a new one", "injector flow"],
            Found.Forecast(next, Point, UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(98), Ratio.FromPercent(102)))).Inputs.Select(input => input.Name));
        Assert.Equal(2, Found.Carried(next).Count(line => line.Code == "forecast.other-part"));
    }

    /// <summary>Of two alike in parallel one was measured; the other is new.</summary>
    [Fact]
    public void SecondPump_BesideTheWornOne_IsNew()
    {
        FuelSystem next = PulledWren.Plan.With(PumpParallel.Of(PulledWren.Plan.Pump, PulledWren.Plan.Pump));
        double[] conditions = [.. Found.Corrected(next).Pump.Pumps.Select(pump => pump.Condition.DecimalFractions)];
        Assert.Equal(0.9 * Found[CalibratedQuantity.PumpFlow].Value, conditions[0], 9);
        Assert.Equal(0.9, conditions[1], 9);
    }

    /// <summary>A BSFC that was converted by heating value keeps saying so, and a stated minimum differential pressure of the injectors stays.</summary>
    [Fact]
    public void Corrected_KeepsWhatWasStated()
    {
        FuelDemandModel demand = PulledWren.Plan.Demand;
        FuelSystem next = PulledWren.Plan.With(demand.With(demand.VolumetricEfficiency, demand.MeasuredPower, demand.Consumption.With(Fuel.E85)));
        FuelConsumption corrected = Found.Corrected(next).Demand.Consumption;
        Assert.True(corrected.IsConverted);
        Assert.Equal(
            Found[CalibratedQuantity.BrakeSpecificFuelConsumption].Value / 315 * demand.Consumption.With(Fuel.E85).BrakeSpecificFuelConsumption.GramsPerKiloWattHour,
            corrected.BrakeSpecificFuelConsumption.GramsPerKiloWattHour,
            1e-6);
        Injector stated = PulledWren.Plan.Injectors.Injector.WithMinimumDifferential(Wren.Kpa(150));
        Assert.Equal(Wren.Kpa(150).Pascals, stated.Later(1e-5).MinimumDifferential.Pascals, 1e-6);
        Assert.True(stated.Later(1e-5).IsMinimumDifferentialStated);
    }

    [Fact]
    public void Input_ThatTheRunHasMeasured_IsRefusedAmongTheFurtherOnes()
    {
        UncertainInput injectors = UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(98), Ratio.FromPercent(102)));
        string message = Assert.Throws<ArgumentException>(() => Found.Forecast(PulledWren.Plan, Point, injectors)).Message;
        Assert.Contains("has measured", message, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => Found.Forecast(PulledWren.Plan, Point).Sobol(SystemOutput.DutyCycle, Sampling.Of(16)));
        Assert.Equal(10, Found.Forecast(PulledWren.Plan, Point).Tornado(SystemOutput.DutyCycle).Bars.Count);
    }

    /// <summary>BSFC 300 ± 12 % and more is legal; where the draws are cut by physics, the forecast says so.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(20)]
    [InlineData(30)]
    public void Tolerances_ThatAreLegal_NeitherThrowNorAreCapped(double percent)
    {
        FuelDemandModel demand = PulledWren.Plan.Demand;
        FuelSystem plan = PulledWren.Plan.With(demand.With(
            demand.VolumetricEfficiency,
            demand.MeasuredPower,
            FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(300))));
        RunCheck check = RunCheck.Of(
            plan, Wren.Hill, tolerance: PlanTolerance.Of(brakeSpecificFuelConsumption: Ratio.FromPercent(percent), volumetricEfficiency: Ratio.FromPercent(percent)));
        RecordedRun run = Worn.Recorded(3);
        Calibration open = Calibration.Of(check, RecordedRun.Of("no power, no lambda", run.Atmosphere, run.Rows.Select((row, i) => RunRow.Of(
            i + 1, row.Speed, row.Time, row.ManifoldAbsolute, row.RailGauge, row.InjectorPulse, batteryVoltage: row.BatteryVoltage))));
        UncertainSystem forecast = open.Forecast(plan, Point);
        UncertainInput bsfc = forecast.Inputs.Single(input => input.Name == "BSFC");

        // Φ(1) of the untruncated normal is 84.13 %, so that percentile lies one standard deviation over the mean.
        double above = ((BrakeSpecificFuelConsumption)bsfc.ValueAt(Ratio.FromPercent(84.134))).GramsPerKiloWattHour;
        Assert.InRange(above, 300 * (1 + (0.97 * percent / 100)), 300 * (1 + (1.1 * percent / 100)));
        Assert.InRange(forecast.MonteCarlo(Sampling.Of(100)).FuelFlow.StandardDeviation!.Value.KilogramsPerHour, 1, 100);
        Assert.Equal(
            percent > 11.4,
            open.Carried(plan).Any(line => line.Code == "forecast.cut" && line.ToString().StartsWith("BSFC: ", StringComparison.Ordinal)));
    }

    /// <summary>A share of the cars of the 500 of <c>.ci/full forecast</c>, pinned.</summary>
    [Fact]
    public void StatedChances_OfSomeCars_AreCalibrated() => AssertCalibrated(Cars);

    private static readonly int Cars = int.TryParse(Environment.GetEnvironmentVariable("FUELSIZING_FORECAST_CARS"), out int cars) ? cars : 40;

    /// <summary>
    /// The definition of a calibrated forecast: of all cars as many stay under a percentile of their forecast as it says (probability
    /// integral transform, Dawid 1984, from memory), and as many hold as the chances add up to. Allowed is what counting so many cars
    /// scatters, three standard deviations of a binomial.
    /// </summary>
    private static void AssertCalibrated(int cars)
    {
        double[][] places = [new double[cars], new double[cars], new double[cars]];
        double[] stated = new double[cars];
        bool[] holds = new bool[cars];
        Parallel.For(0, cars, seed =>
        {
            // Pumps worn by up to a third, or gains off by up to 30 %, or neither: everything else within its tolerance.
            RunFault fault = (seed % 3) switch { 0 => RunFault.WeakPump, 1 => RunFault.WrongGain, _ => RunFault.None };
            PulledWren car = PulledWren.With(fault, 5000 + seed);
            Calibration found = Calibration.Of(PulledWren.Check, car.Recorded(seed));

            // The next stage: up to 0.72 bar where the run went to 0.6, every second car with larger injectors, which are as described.
            OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000 + (200 * (seed % 11))), Pressure.FromBars(0.3 + (0.06 * (seed % 8))), Wren.Hill);
            FuelSystem Next(FuelSystem today) => seed % 2 == 0 ? today.With(InjectorSet.Of(Wren.InjectorOf(720), 4)) : today;
            MonteCarloResult forecast = found.Forecast(Next(PulledWren.Plan), point).MonteCarlo(Sampling.Of(200, seed: 1, threads: 1));
            OperatingResult truth = Next(car.Car).Solve(point);
            places[0][seed] = PlaceIn(p => forecast.DutyCycle.Percentile(p)!.Value.Percent, truth.DutyCycle!.Value.Percent);
            places[1][seed] = PlaceIn(p => forecast.RailGauge.Percentile(p)!.Value.Kilopascals, truth.RailGauge.Kilopascals);
            places[2][seed] = PlaceIn(p => forecast.FuelFlow.Percentile(p)!.Value.KilogramsPerHour, truth.Demand.MassFlow.KilogramsPerHour);
            stated[seed] = forecast.All.Holds.DecimalFractions;
            holds[seed] = truth.Margins.All(margin => margin.Outcome == Outcome.Holds);
        });

        string[] names = ["duty cycle", "rail pressure", "fuel"];
        for (int output = 0; output < places.Length; output++)
        {
            foreach (double share in new[] { 0.1, 0.25, 0.5, 0.75, 0.9 })
            {
                double counted = places[output].Count(place => place <= share) / (double)cars;
                double allowed = 3 * Math.Sqrt(share * (1 - share) / cars);
                Assert.True(
                    Math.Abs(counted - share) <= allowed,
                    $"{names[output]}: {counted:0.000} of {cars} cars are under the {share:P0} percentile of their forecast; {string.Join(' ', places[output].Order().Chunk(Math.Max(1, cars / 10)).Select(chunk => $"{chunk[0]:0.00}"))}");
            }
        }

        double expected = stated.Sum();
        double scatter = 3 * Math.Sqrt(stated.Sum(chance => chance * (1 - chance)) + 1);
        int held = holds.Count(held => held);
        Assert.True(Math.Abs(held - expected) <= scatter, $"{held} of {cars} cars hold, {expected:0.0} ± {scatter:0.0} were stated");
        Assert.True(stated.Any(chance => chance is > 0.02 and < 0.98), "no chance is in doubt, so nothing was tried");
    }

    /// <summary>Share of a forecast that lies under the truth, by its percentiles.</summary>
    private static double PlaceIn(Func<Ratio, double> percentile, double truth)
    {
        (double low, double high) = (0.0005, 0.9995);
        for (int step = 0; step < 14; step++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = percentile(Ratio.FromDecimalFractions(middle)) < truth ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
