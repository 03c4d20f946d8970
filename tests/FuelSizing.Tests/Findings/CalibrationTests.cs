using FuelSizing.Files;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>What a run says of BSFC, volumetric efficiency, pump and regulator, and how sure.</summary>
public class CalibrationTests
{
    private static readonly Calibration Default =
        Calibration.Of(PulledWren.Check, PulledWren.With(RunFault.None, 1).Recorded(1));

    /// <summary>
    /// With a flow meter and power alone the problem is linear, and its answer is written down: ln BSFC is the weighted mean of the
    /// single ln(fuel/power), and its variance 1/Σw + τ², τ the meter's error as a whole (weighted least squares, textbook result).
    /// </summary>
    [Fact]
    public void Bsfc_FromMeterAndPowerAlone_IsTheWeightedMeanOfTheSingleRatios()
    {
        const double True = 300;
        Random random = new(3);
        List<RunRow> rows = [];
        List<double> logarithms = [];
        for (int i = 0; i < 40; i++)
        {
            double litres = 60 + i;
            double watts = litres / 3.6e6 * Density / (True / 3.6e9) * Math.Exp(Normal.Sample(random, 0, 0.01));
            logarithms.Add(Math.Log(litres / 3.6e6 * Density / watts * 3.6e9));
            rows.Add(RunRow.Of(
                i + 1,
                Wren.Rpm(3000 + (i * 100)),
                manifoldAbsolute: PulledWren.Air.Pressure + Wren.Kpa(50),
                power: Power.FromWatts(watts),
                fuelTemperature: Temperature.FromDegreesCelsius(35),
                fuelVolumeFlow: VolumeFlow.FromLitersPerHour(litres)));
        }

        RecordedRun run = RecordedRun.Of("bench", PulledWren.Air, rows);
        CalibratedFigure Bsfc(RunCheck check) => Calibration.Of(check, run)[CalibratedQuantity.BrakeSpecificFuelConsumption];
        CalibratedFigure bsfc = Bsfc(PulledWren.Check);

        // All points alike: scatter of power 1 %, of the meter 1 %, and half a per cent that the model is trusted to; of all together 1 % of
        // the meter, and by default 0.8 % of the fuel's density.
        double variance = 0.01 * 0.01 * 2 + 0.005 * 0.005;
        double mean = logarithms.Average();
        Assert.Equal(Math.Exp(mean), bsfc.Value, 0.02);
        Assert.Equal(Math.Exp(mean) * Math.Sqrt((variance / 40) + (0.01 * 0.01)), bsfc.StandardError, 0.01);
        Assert.Equal(
            Math.Exp(mean) * Math.Sqrt((variance / 40) + (0.01 * 0.01) + (0.008 * 0.008)), Bsfc(PulledWren.DefaultCheck).StandardError, 0.01);
    }

    /// <summary>
    /// The definition of a 95 % range, over cars whose parts and sensors are off as their tolerances say. The gain's holds more often,
    /// for the model is trusted to 1 kPa at each point and the cars are truer to it.
    /// </summary>
    [Fact]
    public void Ranges_HoldTheTruthInNinetyFiveOfAHundredRuns()
    {
        const int Cars = 150;
        int[] held = new int[4];
        int[] determined = new int[4];
        Parallel.For(0, Cars, seed =>
        {
            PulledWren car = PulledWren.With(RunFault.None, 1000 + seed);
            Calibration calibration = Calibration.Of(PulledWren.Check, car.Recorded(seed));
            double[] truth =
            [
                315 * Math.Exp(car.Off[(int)RunQuantity.BrakeSpecificFuelConsumption]),
                Math.Exp(car.Off[(int)RunQuantity.VolumetricEfficiency]),
                Math.Exp(car.Off[(int)RunQuantity.PumpFlow]),
                3 + car.Off[(int)RunQuantity.RegulatorGain],
            ];
            for (int figure = 0; figure < truth.Length; figure++)
            {
                CalibratedFigure found = calibration.Figures[figure];
                if (found.IsDetermined)
                {
                    Interlocked.Increment(ref determined[figure]);
                    Interlocked.Add(ref held[figure], found.Minimum <= truth[figure] && truth[figure] <= found.Maximum ? 1 : 0);
                }
            }
        });

        // A pump that is better than planned is not the limit in every run.
        Assert.All(determined, count => Assert.InRange(count, 0.85 * Cars, Cars));
        string counts = string.Join(", ", held.Zip(determined, (h, d) => $"{h} of {d}"));
        for (int figure = 0; figure < held.Length; figure++)
        {
            double share = (double)held[figure] / determined[figure];
            Assert.True(share is >= 0.90 and <= 1, counts);
        }
    }

    [Fact]
    public void Fit_ByMathNetsMinimiser_IsThatOfTheFindings()
    {
        RecordedRun run = PulledWren.With(RunFault.WeakPump, 4).Recorded(2);
        Calibration calibration = Calibration.Of(PulledWren.Check, run);
        RunModel model = PulledWren.Check.Model(run);
        double[] start = new double[RunModel.Quantities];
        start[(int)RunQuantity.PumpFlow] =
            Math.Log(calibration[CalibratedQuantity.PumpFlow].Value) / model.Tolerance[(int)RunQuantity.PumpFlow];
        RunFit fit = RunFit.From(
            model,
            start,
            RunQuantity.BrakeSpecificFuelConsumption,
            RunQuantity.VolumetricEfficiency,
            RunQuantity.PumpFlow,
            RunQuantity.RegulatorGain);
        Assert.Equal(Math.Exp(fit.Value(RunQuantity.PumpFlow)), calibration[CalibratedQuantity.PumpFlow].Value, 0.005);
        Assert.Equal(3 + fit.Value(RunQuantity.RegulatorGain), calibration[CalibratedQuantity.RegulatorGain].Value, 0.01);
        Assert.Equal(
            Math.Exp(fit.Value(RunQuantity.VolumetricEfficiency)),
            calibration[CalibratedQuantity.VolumetricEfficiency].Value,
            0.003);
    }

    [Fact]
    public void Correlation_IsOneWithItself_AndShowsTheFuelThatTwoFiguresShare()
    {
        Assert.Equal(
            1, Default.Correlation(CalibratedQuantity.PumpFlow, CalibratedQuantity.PumpFlow), 12);

        // More fuel than thought means more BSFC and more air at once.
        Assert.InRange(
            Default.Correlation(CalibratedQuantity.BrakeSpecificFuelConsumption, CalibratedQuantity.VolumetricEfficiency), 0.2, 1);
    }

    /// <summary>
    /// The plan as the run has corrected it, kept in a setup file: air and consumption are read back corrected, and what the form cannot hold (here a pump that is better than its curve) is refused, not left out.
    /// </summary>
    [Fact]
    public void Updated_WrittenToASetup_IsReadBackCorrected_OrRefused()
    {
        FuelSystem updated = Default.Updated;
        Assert.NotEqual(PulledWren.Plan.Demand.VolumetricEfficiency, updated.Demand.VolumetricEfficiency);
        InvalidOperationException refused = Assert.Throws<InvalidOperationException>(() => Setup.Of(updated).ToJson());
        Assert.Contains("cannot hold the pump (pump W", refused.Message, StringComparison.Ordinal);
        FuelSystem held = updated.With(PulledWren.Plan.Pump);
        FuelSystem read = Setup.Parse("corrected.json", Setup.Of(held).ToJson()).System;
        Assert.Equal(updated.Demand, read.Demand);
        Assert.Equal(held, read);
    }

    [Fact]
    public void Updated_HasTheFiguresInIt()
    {
        FuelSystem updated = Default.Updated;
        Assert.Equal(
            Default[CalibratedQuantity.BrakeSpecificFuelConsumption].Value,
            updated.Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour,
            6);
        Assert.Equal(
            Default[CalibratedQuantity.VolumetricEfficiency].Value * Wren.VolumetricEfficiency.At(Wren.Rpm(5000)).Percent,
            updated.Demand.VolumetricEfficiency.At(Wren.Rpm(5000)).Percent,
            6);
        Assert.Equal(Default[CalibratedQuantity.RegulatorGain].Value, ((RisingRate)updated.Regulator).Gain, 9);
        Assert.Equal(
            0.9 * Default[CalibratedQuantity.PumpFlow].Value, ((Pump)updated.Pump).Condition.DecimalFractions, 9);
    }

    [Fact]
    public void Updated_PlanOfAWeakPump_GivesTheRailThatWasRecorded()
    {
        PulledWren car = PulledWren.With(RunFault.WeakPump, 6);
        FuelSystem updated = Calibration.Of(PulledWren.Check, car.Recorded(3)).Updated;
        OperatingResult worst = car.Solved.MinBy(at => at.InjectorDifferential.Pascals)!;
        double planned = PulledWren.Plan.Solve(worst.Point).RailGauge.Kilopascals;
        double again = updated.Solve(worst.Point).RailGauge.Kilopascals;
        Assert.True(planned - worst.RailGauge.Kilopascals > 50);
        Assert.InRange(again, worst.RailGauge.Kilopascals - 25, worst.RailGauge.Kilopascals + 25);
    }

    [Fact]
    public void Forecast_OfTheNextStage_DrawsWhatTheRunLeavesOpen()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6800), Pressure.FromBars(0.4), Wren.Hill);
        UncertainSystem forecast = Default.Forecast(PulledWren.Plan, point);
        MonteCarloResult result = forecast.MonteCarlo(Sampling.Of(400, seed: 2));
        double duty = Default.Corrected(PulledWren.Plan).Solve(point).DutyCycle!.Value.Percent;
        Assert.Equal(duty, result.DutyCycle.Mean!.Value.Percent, 0.5);

        // What the run leaves open of the air is mostly the injectors' flow, and the next stage has the same injectors: the duty cycle that
        // they need is known better than either. Drawn independently it would spread like the air.
        CalibratedFigure air = Default[CalibratedQuantity.VolumetricEfficiency];
        Assert.InRange(
            result.DutyCycle.StandardDeviation!.Value.Percent / duty,
            0.1 * air.StandardError / air.Value,
            0.5 * air.StandardError / air.Value);
    }

    [Fact]
    public void Run_WithoutPowerOrLowRail_SaysWhatItLacks()
    {
        RecordedRun full = PulledWren.With(RunFault.None, 2).Recorded(5);
        RecordedRun run = RecordedRun.Of("no power", PulledWren.Air, full.Rows.Take(60).Select((row, i) =>
            RunRow.Of(i + 1, row.Speed, row.Time, row.ManifoldAbsolute, row.RailGauge, row.InjectorPulse, lambda: row.Lambda, batteryVoltage: row.BatteryVoltage)));
        Calibration calibration = Calibration.Of(PulledWren.Check, run);
        Assert.False(calibration[CalibratedQuantity.BrakeSpecificFuelConsumption].IsDetermined);
        Assert.Contains("power", calibration[CalibratedQuantity.BrakeSpecificFuelConsumption].Reason!.ToString(), StringComparison.Ordinal);
        Assert.False(calibration[CalibratedQuantity.PumpFlow].IsDetermined);
        Assert.Equal(1, calibration[CalibratedQuantity.PumpFlow].Value);
        Assert.True(calibration[CalibratedQuantity.VolumetricEfficiency].IsDetermined);
    }

    private static double Density => PulledWren.Plan.Demand.Consumption.Fuel
        .DensityAt(Temperature.FromDegreesCelsius(35)).KilogramsPerCubicMeter;
}
