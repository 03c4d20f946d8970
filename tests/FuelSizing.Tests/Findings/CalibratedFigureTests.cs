using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Every figure of a calibration, of the stage it corrects and of the forecast it draws, on a run whose truth is known.</summary>
public class CalibratedFigureTests
{
    private static readonly OperatingPoint Point = OperatingPoint.At(Wren.Rpm(6000), Pressure.FromBars(0.5), Wren.Hill);

    /// <summary>A car without scatter: pump worn to 75 %, gain 3.3, 6 % more air, and power as of a BSFC 5 % higher.</summary>
    private static readonly RecordedRun Known = ExactRun.Changed(
        ExactRun.Of(Car()), (cells, _) => cells with { Power = Power.FromWatts((double)cells.Power!.Value.Watts / 1.05) });

    [Fact]
    public void Figures_OfAKnownCar_AreTheCars()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        (CalibratedQuantity Quantity, double Planned, double Value, double Within, string Unit)[] wanted =
        [
            (CalibratedQuantity.BrakeSpecificFuelConsumption, 315, 315 * 1.05, 0.5, "g/kWh"),
            (CalibratedQuantity.VolumetricEfficiency, 1, 1.06, 0.003, "1"),
            (CalibratedQuantity.PumpFlow, 1, 0.75, 0.006, "1"),
            (CalibratedQuantity.RegulatorGain, 3, 3.3, 0.01, "1"),
        ];
        RunModel model = PulledWren.Check.Model(Known);
        RunFit fit = Fitted(model);
        Assert.Equal(wanted.Select(one => one.Quantity), calibration.Figures.Select(one => one.Quantity));
        foreach ((CalibratedQuantity quantity, double planned, double value, double within, string unit) in wanted)
        {
            CalibratedFigure figure = calibration[quantity];
            RunQuantity own = Own[(int)quantity];
            Assert.Equal(planned, figure.Planned, 9);
            Assert.Equal(value, figure.Value, within);
            Assert.Equal(unit, figure.Unit);
            Assert.True(figure.IsDetermined);
            Assert.Null(figure.Reason);

            // The same problem by another minimiser, to the last step that either takes.
            double found = quantity == CalibratedQuantity.RegulatorGain ? 3 + fit.Value(own) : planned * Math.Exp(fit.Value(own));
            Assert.Equal(found, figure.Value, 0.002 * found);
            double error = quantity == CalibratedQuantity.RegulatorGain ? fit.Error(own) : found * fit.Error(own);
            Assert.Equal(error, figure.StandardError, 0.03 * error);
            Assert.Equal(figure.Value - (1.96 * figure.StandardError), figure.Minimum, 9);
            Assert.Equal(figure.Value + (1.96 * figure.StandardError), figure.Maximum, 9);
        }

        for (int one = 0; one < 4; one++)
        {
            for (int other = 0; other < 4; other++)
            {
                (int row, int column) = ((int)Own[one], (int)Own[other]);
                Assert.Equal(
                    fit.Covariance[row, column] / Math.Sqrt(fit.Covariance[row, row] * fit.Covariance[column, column]),
                    calibration.Correlation((CalibratedQuantity)one, (CalibratedQuantity)other),
                    0.02);
            }
        }

        Assert.Equal(FormattableString.Invariant($"factor on the pump's flow: 0.750 ± {calibration[CalibratedQuantity.PumpFlow].StandardError:0.000}, planned 1.000"), calibration[CalibratedQuantity.PumpFlow].ToString());
        Assert.StartsWith("BSFC: 330.8 g/kWh ± ", calibration[CalibratedQuantity.BrakeSpecificFuelConsumption].ToString(), StringComparison.Ordinal);
        Assert.EndsWith(", planned 315.0 g/kWh", calibration[CalibratedQuantity.BrakeSpecificFuelConsumption].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("factor on volumetric efficiency: 1.060 ± ", calibration[CalibratedQuantity.VolumetricEfficiency].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("regulator gain: 3.30", calibration[CalibratedQuantity.RegulatorGain].ToString(), StringComparison.Ordinal);
        Assert.Equal("exact: 4 figures", calibration.ToString());
        Assert.Same(PulledWren.Check, calibration.Check);
        Assert.Same(Known, calibration.Run);
        Assert.Throws<ArgumentOutOfRangeException>("quantity", () => calibration[(CalibratedQuantity)4]);
        Assert.Throws<ArgumentOutOfRangeException>("first", () => calibration.Correlation((CalibratedQuantity)4, CalibratedQuantity.PumpFlow));
        Assert.Throws<ArgumentOutOfRangeException>("other", () => calibration.Correlation(CalibratedQuantity.PumpFlow, (CalibratedQuantity)(-1)));
    }

    /// <summary>More scatter than stated widens all errors by its root.</summary>
    [Fact]
    public void Errors_GrowWithTheScatter()
    {
        RecordedRun wild = ExactRun.Changed(Known, (cells, i) => cells with
        {
            Rail = cells.Rail + Wren.Kpa(i % 2 == 0 ? 12 : -12),
            Power = Power.FromWatts((double)cells.Power!.Value.Watts * (i % 4 < 2 ? 1.05 : 0.95)),
            Flow = cells.Flow * (i % 3 == 0 ? 1.06 : 0.97),
        });
        RunModel model = PulledWren.Check.Model(wild);
        RunFit fit = Fitted(model);
        double lack = fit.Cost / model.Comparisons;
        int gain = (int)RunQuantity.RegulatorGain;
        Assert.True(lack > 1.5);
        Calibration calibration = Calibration.Of(PulledWren.Check, wild);
        Assert.Equal(Math.Sqrt(lack * fit.Covariance[gain, gain]) * model.Tolerance[gain], calibration[CalibratedQuantity.RegulatorGain].StandardError, 0.03 * calibration[CalibratedQuantity.RegulatorGain].StandardError);
    }

    /// <summary>A run that determines nothing leaves every figure as planned, within its tolerance, and says what each needs.</summary>
    [Fact]
    public void Figures_ThatTheRunLeavesOpen_StayAsPlanned()
    {
        RecordedRun bare = RecordedRun.Of("bare", PulledWren.Air, Known.Rows.Take(8).Select(row => (Cells.Of(row) with { Rail = null, Lambda = null, Power = null }).Row((int)row.Line)));
        Calibration calibration = Calibration.Of(PulledWren.Check, bare);
        (double Value, double Error, string Text)[] wanted =
        [
            (315, 315 * 0.04, "BSFC: 315.0 g/kWh as planned; it needs power or torque, and fuel by a meter or by the pulse"),
            (1, 0.025, "factor on volumetric efficiency: 1.000 as planned; it needs lambda, and fuel by a meter or by the pulse"),
            (1, 0.03, "factor on the pump's flow: 1.000 as planned; the pump was never the limit while rail pressure was recorded"),
            (3, 0.06, "regulator gain: 3.000 as planned; it needs rail pressure at boost over the onset"),
        ];
        for (int i = 0; i < wanted.Length; i++)
        {
            CalibratedFigure figure = calibration.Figures[i];
            Assert.False(figure.IsDetermined);
            Assert.Equal(wanted[i].Value, figure.Value, 9);
            Assert.Equal(wanted[i].Error, figure.StandardError, 9);
            Assert.Equal(wanted[i].Text, figure.ToString());
        }

        // What is corrected by it is the plan, though as a table times one; draws are the tolerances, and not correlated.
        Assert.Equal(
            PulledWren.Plan.Solve(Point).Demand.MassFlow.KilogramsPerSecond, calibration.Updated.Solve(Point).Demand.MassFlow.KilogramsPerSecond, 1e-12);
        NormalShape[] shapes = Shapes(calibration.Forecast(PulledWren.Plan, Point));
        Assert.Equal(0.025, shapes[1].Deviation, 9);
        Assert.Equal(0.03, shapes[4].Deviation, 9);
        Assert.Equal(0.02, shapes[8].Deviation, 9);
    }

    /// <summary>A worn pump of a plan that has capacity needs a start of its own, for the plan has no slope to follow.</summary>
    [Fact]
    public void Pump_OfAPlanWithCapacity_IsFoundFromItsOwnStart()
    {
        Calibration calibration = Calibration.Of(PumpSurfaceTests.Ample, ExactRun.Of(PumpSurfaceTests.Off(RunFault.WeakPump)));
        Assert.Equal(0.34, calibration[CalibratedQuantity.PumpFlow].Value, 0.005);
        Assert.Equal(3, calibration[CalibratedQuantity.RegulatorGain].Value, 0.02);
    }

    /// <summary>Told 10, 25, 60, 90 and 100 %; stopped at any of them, the work ends with an exception.</summary>
    [Fact]
    public void Calibration_TellsHowFarItIs_AndStops()
    {
        List<double> told = [];
        Calibration.Of(PulledWren.Check, Known, new Told(share => told.Add(Math.Round(share, 9))));
        Assert.Equal([0.1, 0.25, 0.6, 0.9, 1], told);
        for (int stop = 0; stop < 4; stop++)
        {
            using CancellationTokenSource source = new();
            int count = 0;
            int at = stop;
            Assert.Throws<OperationCanceledException>(() => Calibration.Of(
                PulledWren.Check,
                Known,
                new Told(_ =>
                {
                    if (count++ == at)
                    {
                        source.Cancel();
                    }
                }),
                source.Token));
            Assert.Equal(stop + 1, count);
        }
    }

    [Fact]
    public void Nothing_IsRefusedByName()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        Assert.Throws<ArgumentNullException>("check", () => Calibration.Of((RunCheck)null!, Known));
        Assert.Throws<ArgumentNullException>("run", () => Calibration.Of(PulledWren.Check, null!));
        Assert.Throws<ArgumentNullException>("next", () => calibration.Corrected(null!));
        Assert.Throws<ArgumentNullException>("next", () => calibration.Carried(null!));
        Assert.Throws<ArgumentNullException>("next", () => calibration.Forecast(null!, Point));
        Assert.Throws<ArgumentNullException>("point", () => calibration.Forecast(PulledWren.Plan, null!));
        Assert.Throws<ArgumentNullException>("further", () => calibration.Forecast(PulledWren.Plan, Point, null!));
        Assert.Throws<ArgumentNullException>("further", () => calibration.Forecast(PulledWren.Plan, Point, [null!]));
        Assert.Throws<ArgumentNullException>("check", () => RunFindings.Of((RunCheck)null!, Known));
        Assert.Throws<ArgumentNullException>("run", () => RunFindings.Of(PulledWren.Check, null!));
        Assert.Throws<ArgumentNullException>("plan", () => RunCheck.Of(null!));
    }

    /// <summary>Every part of the next stage with what the fit has of it: air, BSFC, injectors and dead time, pump, feed, filter, regulator.</summary>
    [Fact]
    public void Corrected_HasEverythingThatTheRunHasMeasured()
    {
        // A car of which everything is off a little, so that each shows.
        FuelSystem car = Car();
        car = car.With(car.Demand, car.Injectors.Scaled(1.012).Later(2e-5), RisingRate.From(Wren.Kpa(304), 3.3, Wren.Kpa(21.5)));
        RecordedRun run = ExactRun.Of(MeasuredCar.Filtering(car.With(((Pump)car.Pump).WithFeed(((Pump)car.Pump).Feed!.Plus(0.012))), 0.5));
        Calibration calibration = Calibration.Of(PulledWren.Check, run);
        RunFit fit = Fitted(PulledWren.Check.Model(run));
        FuelSystem corrected = calibration.Corrected(PulledWren.Plan);
        Assert.Equal(corrected, calibration.Updated);
        Assert.Equal(315 * Math.Exp(Value(RunQuantity.BrakeSpecificFuelConsumption)), corrected.Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour, 0.05);
        Assert.Equal(
            Math.Exp(Value(RunQuantity.VolumetricEfficiency)) * Wren.VolumetricEfficiency.At(Wren.Rpm(5000)).DecimalFractions,
            corrected.Demand.VolumetricEfficiency.At(Wren.Rpm(5000)).DecimalFractions,
            0.0005);
        Assert.Equal(PulledWren.Plan.Demand.MeasuredPower, corrected.Demand.MeasuredPower);
        double Value(RunQuantity quantity) => fit.Value(quantity);
        Injector planned = PulledWren.Plan.Injectors.Injector;
        Assert.Equal(
            Math.Exp(Value(RunQuantity.InjectorFlow)), corrected.Injectors.Injector.StaticFlow / planned.StaticFlow, 0.001);
        Assert.Equal(
            Value(RunQuantity.DeadTime), (corrected.Injectors.Injector.DeadTime.At(Wren.Volt(12), Wren.Kpa(300)) - planned.DeadTime.At(Wren.Volt(12), Wren.Kpa(300))).Seconds, 1e-6);
        Pump pump = (Pump)corrected.Pump;
        Assert.Equal(0.9 * Math.Exp(Value(RunQuantity.PumpFlow)), pump.Condition.DecimalFractions, 0.002);
        Assert.Equal(((Pump)PulledWren.Plan.Pump).Feed!.Plus(Value(RunQuantity.FeedResistance)).LoopResistance.Ohms, pump.Feed!.LoopResistance.Ohms, 5e-5);
        Filter Filter(FuelSystem of) => of.Plumbing.Supply.OfType<Filter>().Single();
        Assert.Equal(Filter(PulledWren.Plan).Found(Value(RunQuantity.FilterLoss)).Clogging, Filter(corrected).Clogging, 0.01);
        RisingRate regulator = (RisingRate)corrected.Regulator;
        Assert.Equal(300e3 + Value(RunQuantity.RegulatorBase), regulator.Base.Pascals, 60.0);
        Assert.Equal(3 + Value(RunQuantity.RegulatorGain), regulator.Gain, 0.002);
        Assert.Equal(20e3 + Value(RunQuantity.RegulatorOnset), regulator.Onset.Pascals, 30.0);

        Assert.All(
            [RunQuantity.InjectorFlow, RunQuantity.DeadTime, RunQuantity.FeedResistance, RunQuantity.FilterLoss, RunQuantity.RegulatorBase, RunQuantity.RegulatorOnset],
            quantity => Assert.True(Math.Abs(Value(quantity)) > 0.1 * PulledWren.Check.ToleranceOf()[(int)quantity], $"{quantity}"));

        // A regulator without a gain of its own takes the base alone.
        RunCheck level = RunCheck.Of(PulledWren.Plan.With(ManifoldReferenced.From(Wren.Kpa(300))), Wren.Hill);
        RecordedRun high = ExactRun.Changed(ExactRun.Of(level.Plan), (cells, _) => cells with { Rail = cells.Rail + Wren.Kpa(6) });
        FuelSystem plain = Calibration.Of(level, high).Updated;
        Assert.IsType<ManifoldReferenced>(plain.Regulator);
        Assert.InRange(plain.Regulator.OffsetPascals, 2e3, 6e3);
    }

    /// <summary>
    /// What is drawn: as much about the corrected figure as the fit leaves open, ended at four standard deviations or where physics ends, in the
    /// unit in which it is told.
    /// </summary>
    [Fact]
    public void Forecast_DrawsEachFigureAsWideAsItIsOpen()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        RunModel model = PulledWren.Check.Model(Known);
        RunFit fit = Fitted(model);
        UncertainSystem forecast = calibration.Forecast(PulledWren.Plan, Point);
        Assert.Equal(
            [
                "BSFC", "volumetric efficiency", "injector flow", "dead time", "pump flow", "resistance of the pump's feed", "filter's loss over that of a new one", "regulator pressure",
                "regulator gain", "regulator onset",
            ],
            forecast.Inputs.Select(input => input.Name));
        double specific = calibration.Updated.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule;
        double gain = ((RisingRate)calibration.Updated.Regulator).Gain;
        (RunQuantity Quantity, double Mean, double Scale)[] wanted =
        [
            (RunQuantity.BrakeSpecificFuelConsumption, specific, specific), (RunQuantity.VolumetricEfficiency, 1, 1), (RunQuantity.InjectorFlow, 1, 1), (RunQuantity.DeadTime, 0, 1),
            (RunQuantity.PumpFlow, 1, 1), (RunQuantity.FeedResistance, 0, 1), (RunQuantity.FilterLoss, 0, 1), (RunQuantity.RegulatorBase, 0, 1), (RunQuantity.RegulatorGain, 1, 1 / gain),
            (RunQuantity.RegulatorOnset, 0, 1),
        ];
        NormalShape[] shapes = Shapes(forecast);
        for (int i = 0; i < wanted.Length; i++)
        {
            double deviation = fit.Error(wanted[i].Quantity) * wanted[i].Scale;
            Assert.Equal(wanted[i].Mean, shapes[i].Mean, 1e-12);
            Assert.Equal(deviation, shapes[i].Deviation, 0.03 * deviation);
            Assert.Equal(shapes[i].Mean - (4 * shapes[i].Deviation), shapes[i].Minimum, 1e-9 * shapes[i].Deviation);
            Assert.Equal(shapes[i].Mean + (4 * shapes[i].Deviation), shapes[i].Maximum, 1e-9 * shapes[i].Deviation);
        }

        string[] units = ["g/kWh", "%", "%", "ms", "%", "mΩ", "%", "kPa", "%", "kPa"];
        for (int i = 0; i < units.Length; i++)
        {
            Assert.EndsWith(units[i], forecast.Inputs[i].ValueAt(Ratio.FromPercent(50)).ToString(null, System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
        }

        // One standard deviation more of BSFC moves the air by their correlation, of the corrected system.
        double[] draws = [.. Enumerable.Repeat(0.5, 10)];
        draws[0] = Normal.CDF(0, 1, 1);
        FuelSystem drawn = Uncertainty.UncertainWren.Solved(forecast, forecast.Drawn(draws)).System;
        double moved = drawn.Demand.VolumetricEfficiency.At(Wren.Rpm(5000)) / calibration.Updated.Demand.VolumetricEfficiency.At(Wren.Rpm(5000));
        Assert.Equal(
            calibration.Correlation(CalibratedQuantity.BrakeSpecificFuelConsumption, CalibratedQuantity.VolumetricEfficiency) * shapes[1].Deviation, moved - 1, 0.05 * shapes[1].Deviation);

        // Drawn higher, each quantity is so in the system.
        FuelSystem High(int input) => Uncertainty.UncertainWren.Solved(forecast, forecast.Drawn(forecast.Inputs[input], Normal.CDF(0, 1, 2))).System;
        FuelSystem updated = calibration.Updated;
        Assert.Equal(2 * shapes[3].Deviation, (High(3).Injectors.Injector.DeadTime.At(Wren.Volt(12), Wren.Kpa(300)) - updated.Injectors.Injector.DeadTime.At(Wren.Volt(12), Wren.Kpa(300))).Seconds, 1e-7);
        Assert.Equal(1 + (2 * shapes[4].Deviation), ((Pump)High(4).Pump).Condition / ((Pump)updated.Pump).Condition, 1e-3 * shapes[4].Deviation + 1e-6);
        Assert.Equal(2 * shapes[5].Deviation, ((Pump)High(5).Pump).Feed!.LoopResistance.Ohms - ((Pump)updated.Pump).Feed!.LoopResistance.Ohms, 1e-5);
        Assert.Equal(2 * shapes[7].Deviation, High(7).Regulator.SetPascals(0) - updated.Regulator.SetPascals(0), 2e-3 * shapes[7].Deviation);
        Assert.Equal(2 * shapes[8].Deviation * gain, ((RisingRate)High(8).Regulator).Gain - gain, 1e-4);
        Assert.Equal(2 * shapes[9].Deviation, (((RisingRate)High(9).Regulator).Onset - ((RisingRate)updated.Regulator).Onset).Pascals, 2e-3 * shapes[9].Deviation);
    }

    /// <summary>One line a figure; what another part has instead; and where draws are cut by physics, that they are.</summary>
    [Fact]
    public void Carried_SaysLineByLineWhatGoesIn()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        Assert.Equal(
            calibration.Figures.Select(figure => figure.ToString()), calibration.Carried(PulledWren.Plan).Select(line => line.ToString()));
        FuelSystem next = PulledWren.Plan.With(Pump.From(Wren.Pump)).With(ManifoldReferenced.From(Wren.Kpa(300)));
        Assert.Equal(
            [
                calibration.Figures[0].ToString(), calibration.Figures[1].ToString(), "the pump is not the one of the plan: as described, not as measured",
                "the regulator is not the one of the plan: as described, not as measured",
            ],
            calibration.Carried(next).Select(line => line.ToString()));

        // A BSFC that nobody knows to better than 12 %, of an engine that is at 27 % efficiency: draws end at four deviations, but not past a half of the heat.
        RunCheck open = RunCheck.Of(PulledWren.Plan, Wren.Hill, tolerance: PlanTolerance.Of(brakeSpecificFuelConsumption: Ratio.FromPercent(25)));
        Calibration unknown = Calibration.Of(open, ExactRun.Changed(Known, (cells, _) => cells with { Power = null }));
        Statement cut = Assert.Single(unknown.Carried(PulledWren.Plan), line => line.Code == "forecast.cut");
        FuelConsumption consumption = PulledWren.Plan.Demand.Consumption;
        double best = 315 * consumption.BrakeEfficiency.DecimalFractions / 0.5;
        NormalShape shape = Shapes(unknown.Forecast(PulledWren.Plan, Point))[0];
        Assert.Equal(best / 3.6e9, shape.Minimum, 1e-6 * shape.Minimum);
        Assert.Equal(315 * 2 / 3.6e9, shape.Maximum, 1e-6 * shape.Maximum);
        Assert.StartsWith("BSFC: the run leaves it so open that draws end at ", cut.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(", where an engine or a part ends", cut.ToString(), StringComparison.Ordinal);
    }

    /// <summary>An input of a part that is new may be given; of a part that was measured it may not.</summary>
    [Fact]
    public void Forecast_TakesFurtherInputsOfNewPartsOnly()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        UncertainInput flow = UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(98), Ratio.FromPercent(102)));
        FuelSystem next = PulledWren.Plan.With(InjectorSet.Of(Wren.InjectorOf(700), 4));
        UncertainSystem forecast = calibration.Forecast(next, Point, flow);
        Assert.Same(flow, forecast.Inputs[^1]);
        Assert.Equal(9, forecast.Inputs.Count);
        ArgumentException refused = Assert.Throws<ArgumentException>("further", () => calibration.Forecast(PulledWren.Plan, Point, flow));
        Assert.StartsWith(
            $"further has {flow.Name}, which the run has measured of a part that the next stage still has. Leave it out; give it for a new part only.", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A stage whose volumetric efficiency or BSFC is the plan's times a factor within what the run found has been corrected by it; a little
    /// further off it is another stage.
    /// </summary>
    [Fact]
    public void Stage_WithinWhatTheRunFound_IsTakenAsCorrected()
    {
        Calibration calibration = Calibration.Of(PulledWren.Check, Known);
        FuelDemandModel demand = PulledWren.Plan.Demand;
        CalibratedFigure air = calibration[CalibratedQuantity.VolumetricEfficiency];
        FuelSystem Breathing(double factor) => PulledWren.Plan.With(demand.With(demand.VolumetricEfficiency.Scaled(factor), demand.MeasuredPower, demand.Consumption));
        AssertRefused("volumetric efficiency", Breathing(air.Minimum * 1.0001), Breathing(air.Value), Breathing(air.Maximum * 0.9999));
        AssertTaken(Breathing(air.Minimum * 0.9999), Breathing(air.Maximum * 1.0001));

        CalibratedFigure specific = calibration[CalibratedQuantity.BrakeSpecificFuelConsumption];
        FuelSystem Burning(double grams) => PulledWren.Plan.With(demand.With(
            demand.VolumetricEfficiency, demand.MeasuredPower, demand.Consumption.Using(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(grams))));
        AssertRefused("BSFC", Burning(specific.Minimum * 1.0001), Burning(specific.Value), Burning(specific.Maximum * 0.9999));
        AssertTaken(Burning(specific.Minimum * 0.9999), Burning(specific.Maximum * 1.0001), PulledWren.Plan);

        // On another fuel only the very factor tells: BSFC then goes by efficiency, and may be near by chance.
        FuelSystem Other(double grams) => PulledWren.Plan.With(demand.With(
            demand.VolumetricEfficiency,
            demand.MeasuredPower,
            demand.Consumption.Using(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(grams)).With(FuelSizing.Fuels.Fuel.E85)));
        AssertRefused("BSFC", Other(specific.Value));
        AssertTaken(Other(specific.Value * 1.0005));
        Pump pump = (Pump)PulledWren.Plan.Pump;
        AssertRefused("the pump's flow", PulledWren.Plan.With(pump.WithCondition(pump.Condition * calibration[CalibratedQuantity.PumpFlow].Value)));
        AssertTaken(PulledWren.Plan.With(pump.WithCondition(Ratio.FromPercent(60))));

        // What the run does not determine it cannot have corrected.
        Calibration open = Calibration.Of(PulledWren.Check, ExactRun.Changed(Known, (cells, _) => cells with { Power = null }));
        Assert.Equal(330, open.Corrected(Burning(330)).Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour, 1e-6);

        void AssertRefused(string what, params FuelSystem[] stages) => Assert.All(stages, stage => Assert.StartsWith(
            $"next has {what} already corrected by a run, and would be corrected twice. Describe the next stage from the plan, not from Updated or Corrected.",
            Assert.Throws<ArgumentException>("next", () => calibration.Corrected(stage)).Message,
            StringComparison.Ordinal));
        void AssertTaken(params FuelSystem[] stages) => Assert.All(stages, stage => Assert.NotNull(calibration.Corrected(stage)));
    }

    /// <summary>Where the pump's own start leads to a worse fit, the other one counts: a gain of 2.3 is no weak pump.</summary>
    [Fact]
    public void Gain_OfAPlanWithCapacity_IsNotTakenForThePump()
    {
        FuelSystem car = PumpSurfaceTests.Ample.Plan.With(RisingRate.From(Wren.Kpa(300), 2.3, Wren.Kpa(20)));
        Calibration calibration = Calibration.Of(PumpSurfaceTests.Ample, ExactRun.Of(car));
        Assert.Equal(2.3, calibration[CalibratedQuantity.RegulatorGain].Value, 0.02);
        Assert.Equal(1, calibration[CalibratedQuantity.PumpFlow].Value, 0.03);
    }

    private static readonly RunQuantity[] Own =
        [RunQuantity.BrakeSpecificFuelConsumption, RunQuantity.VolumetricEfficiency, RunQuantity.PumpFlow, RunQuantity.RegulatorGain];

    private static RunFit Fitted(RunModel model)
    {
        double[] start = new double[RunModel.Quantities];
        start[(int)RunQuantity.PumpFlow] = Math.Log(0.75) / 0.03;
        RunFit near = RunFit.From(model, start, Own);
        return RunFit.From(model, near.Off, Own);
    }

    private static FuelSystem Car()
    {
        FuelSystem plan = PulledWren.Plan;
        return plan
            .With(plan.Demand.With(plan.Demand.VolumetricEfficiency.Scaled(1.06), plan.Demand.MeasuredPower, plan.Demand.Consumption))
            .With(((Pump)plan.Pump).WithCondition(Ratio.FromPercent(0.75 * 90)))
            .With(RisingRate.From(Wren.Kpa(300), 3.3, Wren.Kpa(20)));
    }

    private static NormalShape[] Shapes(UncertainSystem forecast) => [.. forecast.Inputs.Select(input => (NormalShape)input.Shape)];

    private sealed class Told(Action<double> tell) : IProgress<Ratio>
    {
        public void Report(Ratio value) => tell(value.DecimalFractions);
    }
}
