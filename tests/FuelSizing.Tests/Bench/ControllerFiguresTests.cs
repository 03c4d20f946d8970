using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Points;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>Figures for a controller: from a description and from the bench, with what covers them and what does not.</summary>
public class ControllerFiguresTests
{
    private const double Slope = 5.22e-3;
    private const double Heptane = 683.8;

    private static readonly Temperature Warm = Temperature.FromDegreesCelsius(35);

    /// <summary>
    /// 580 mL/min at 300 kPa on n-heptane of 20 °C, 0.61259/0.26211^(1 + (1 − 293.15/540.2)^0.28141) mol/L of 100.204 g/mol by Perry: 685.76 kg/m³. On ethanol of 789.45 kg/m³ at 400 kPa
    /// 580 · √(4/3 · 685.76/789.45) = 624.20 mL/min by the orifice law, times 789.45 kg/m³ = 8.2129 g/s, or 65.18 lb/h of 453.592 g. The two densities of the library are others, so what may
    /// differ is half the 0.3 % between the two equations for heptane, and 0.05 %.
    /// </summary>
    [Fact(DisplayName = "Flow to type into a controller; n-heptane to ethanol at another pressure, worked by hand from Perry")]
    public void Flow_OnAnotherFuel_IsThatWorkedByHand()
    {
        Injector injector = InjectorOf(580);
        FlowFigure flow = ControllerFigures.Of(injector, Fuel.Ethanol, Temperature.FromDegreesCelsius(20), [Wren.Kpa(400)]).ReferenceFlow;
        Published.Value(Works.PerryFlow, 624.20, flow.Flow!.Value.MillilitersPerMinute, 0.002);
        Published.Value(Works.PerryFlow.At("by mass"), 8.2129, flow.MassFlow!.Value.GramsPerSecond, 0.002);
        Published.Value(Works.PerryFlow.At("by mass, lb/h"), 65.18, flow.MassFlow.Value.PoundsPerHour, 0.002);
        Assert.Null(flow.MinimumFlow);
        Assert.Equal("controller.flow-by-root", flow.Basis.Code);
    }

    /// <summary>Flows, dead times and minimum pulses of a description are its own, at every place it covers; at others there is none, with the reason.</summary>
    [Fact]
    public void Figures_OfADescription_AreItsOwn_OrEmptyWithTheReason() => Gen.Select(Gen.Double[60, 700], Gen.Double[6, 18], Gen.Double[-10, 80]).Sample((kilopascals, volts, celsius) =>
    {
        Injector injector = InjectorOf(360);
        ControllerFigures figures = ControllerFigures.Of(injector, Fuel.E85, Temperature.FromDegreesCelsius(celsius), [Wren.Kpa(kilopascals)], voltages: [Wren.Volt(volts), Wren.Volt(12)]);
        FlowFigure flow = figures.ReferenceFlow;
        if (kilopascals is >= 100 and <= 550)
        {
            Assert.Equal(injector.StaticFlowAt(Wren.Kpa(kilopascals), Fuel.E85, Temperature.FromDegreesCelsius(celsius)), flow.Flow);
        }
        else
        {
            Assert.Null(flow.Flow);
            Assert.Null(flow.MassFlow);
            Assert.Equal(kilopascals < 100 ? "controller.none-below-minimum" : "controller.none-over-maximum", flow.Basis.Code);
            Assert.All(figures.FuelErrors, error => Assert.True(error.Error is null && error.CorrectedError is null));
            Assert.Contains("no flow at", Assert.Throws<InvalidOperationException>(() => figures.DataFor(TargetLambda.At(1))).Message, StringComparison.Ordinal);
        }

        TimeFigure time = figures.DeadTimes.Single(one => Math.Abs(one.Voltage.Volts - volts) < 1e-12 && Math.Abs(one.Differential.Kilopascals - kilopascals) < 1e-9);
        TimeFigure pulse = figures.MinimumPulses.Single(one => Math.Abs(one.Voltage.Volts - volts) < 1e-12);
        bool covered = injector.DeadTime.TryAt(Wren.Volt(volts), Wren.Kpa(kilopascals), out Duration dead);
        Assert.Equal(covered ? dead : null, time.Time);
        Assert.Null(time.Minimum);
        Assert.Equal(covered ? "controller.from-description" : volts is < 8 or > 16 ? "controller.none-voltage" : "controller.none-pressure", time.Basis.Code);
        Assert.Equal(covered, pulse.Time is not null);
        if (covered)
        {
            Assert.Equal((dead + injector.MinimumOpenTime).Seconds, pulse.Time!.Value.Seconds, 1e-15);
        }
    });

    /// <summary>
    /// Of a bench at two voltages and two pressures the weighed places have the fits' intervals, on the fuel as on the test liquid; a pressure between has a figure and no interval, one past the end
    /// neither dead time nor interval.
    /// </summary>
    [Fact]
    public void Figures_OfABench_HaveTheIntervalsOfItsFits_WhereItWasWeighed()
    {
        PulseFit[] fits = [Fit(300, 12, 1.2), Fit(300, 14, 0.9), Fit(400, 12, 1.3), Fit(400, 14, 0.95)];
        ControllerFigures figures = From(fits, [Wren.Kpa(300), Wren.Kpa(350), Wren.Kpa(450)]);
        double onFuel = Math.Sqrt(Heptane / figures.FuelDensity.KilogramsPerCubicMeter);
        (FlowFigure at300, FlowFigure at350, FlowFigure at450) = (figures.Flows[0], figures.Flows[1], figures.Flows[2]);
        Assert.Equal(fits[1].Slope.CubicMetersPerSecond * onFuel, at300.Flow!.Value.CubicMetersPerSecond, 1e-18);
        Assert.Equal(fits[1].MinimumSlope.CubicMetersPerSecond * onFuel, at300.MinimumFlow!.Value.CubicMetersPerSecond, 1e-18);
        Assert.Equal(fits[1].MaximumSlope.CubicMetersPerSecond * onFuel, at300.MaximumFlow!.Value.CubicMetersPerSecond, 1e-18);
        Assert.Equal(at300.MaximumFlow!.Value.CubicMetersPerSecond * figures.FuelDensity.KilogramsPerCubicMeter, at300.MaximumMassFlow!.Value.KilogramsPerSecond, 1e-15);
        Assert.Equal(("controller.from-bench", "controller.flow-between", "controller.flow-by-root"), (at300.Basis.Code, at350.Basis.Code, at450.Basis.Code));
        Assert.True(at350.Flow is not null && at350.MinimumFlow is null && at450.Flow is not null && at450.MinimumFlow is null);

        TimeFigure Dead(double kilopascals, double volts) => figures.DeadTimes.Single(one => Math.Abs(one.Differential.Kilopascals - kilopascals) < 1e-9 && Math.Abs(one.Voltage.Volts - volts) < 1e-9);
        foreach (PulseFit fit in fits)
        {
            TimeFigure time = Dead(fit.Test.Differential.Kilopascals, fit.Test.Voltage.Volts);
            Assert.Equal((fit.TimeOffset.Seconds, fit.MinimumTimeOffset!.Value, fit.MaximumTimeOffset!.Value), (time.Time!.Value.Seconds, time.Minimum!.Value, time.Maximum!.Value));
        }

        Assert.Equal((Dead(300, 12).Time!.Value.Seconds + Dead(400, 12).Time!.Value.Seconds) / 2, Dead(350, 12).Time!.Value.Seconds, 1e-15);
        Assert.Equal(("controller.between-weighed", null), (Dead(350, 12).Basis.Code, Dead(350, 12).Minimum));
        Assert.Equal(("controller.none-pressure", null), (Dead(450, 14).Basis.Code, Dead(450, 14).Time));

        // What was weighed of the end of the linear flow range: its bracket.
        TimeFigure pulse = figures.MinimumPulses.Single(one => IsAt(one, 300, 14));
        Assert.Equal((fits[1].LinearFrom, fits[1].LinearFrom), (pulse.Time, pulse.Maximum));
        Assert.Equal(1.6, pulse.Minimum!.Value.Milliseconds, 9);
        Assert.Equal("controller.linear-from-open-time", figures.MinimumPulses.Single(one => IsAt(one, 350, 14)).Basis.Code);
    }

    /// <summary>Dead time that was weighed at one pressure is empty at every other, for it grows; one that a description takes to hold at all is an estimate, and says which way it errs.</summary>
    [Fact]
    public void DeadTime_OfOnePressure_IsEmptyOrAnEstimateElsewhere()
    {
        ControllerFigures bench = From([Fit(300, 12, 1.2), Fit(300, 14, 0.9)], [Wren.Kpa(300), Wren.Kpa(380)]);
        Assert.Equal([false, false, true, true], bench.DeadTimes.Select(time => time.Time is null));
        Assert.All(bench.DeadTimes.Skip(2), time => Assert.Equal("controller.none-one-pressure", time.Basis.Code));
        Assert.All(bench.FuelErrors.Where(error => error.Differential > Wren.Kpa(301)), error => Assert.Equal((null, "controller.none-one-pressure"), (error.Error, error.Basis.Code)));
        Assert.True(bench.DataFor(TargetLambda.At(1), correctsForRailPressure: true).Injector.DeadTime.IgnoresPressure);

        Injector described = Injector.Of(
            "injector A", VolumeFlow.FromMillilitersPerMinute(360), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.7))), Wren.Ms(1.6), Wren.Kpa(550));
        ControllerFigures estimate = ControllerFigures.Of(described, Fuel.Petrol, Warm, [Wren.Kpa(300), Wren.Kpa(380)]);
        Assert.All(estimate.DeadTimes, time => Assert.Equal((true, "controller.estimate-one-pressure"), (time.Time is not null, time.Basis.Code)));
        Assert.All(estimate.FuelErrors.Where(error => error.Differential > Wren.Kpa(301)), error => Assert.Contains("leaner", error.ToString(), StringComparison.Ordinal));
        Assert.Contains(estimate.Notes, note => note.Code == "controller.note-one-pressure");
    }

    /// <summary>
    /// Delivered where the line would have delivered: for every pulse that the line does not go through, the pulse to command is the one that was weighed, and the fuel of it is what flow and dead
    /// time promise for the calculated one.
    /// </summary>
    [Fact]
    public void ShortPulses_Corrected_DeliverWhatTheLineWould()
    {
        PulseFit fit = Fit(300, 14, 0.9);
        ControllerFigures figures = From([Fit(300, 12, 1.2), fit], [Wren.Kpa(300)]);
        ShortPulseFigure[] corrections = [.. figures.ShortPulses.Where(figure => figure.Voltage > Wren.Volt(13))];
        Assert.NotEmpty(corrections);
        foreach (ShortPulseFigure figure in corrections)
        {
            double commanded = figure.Calculated.Seconds + figure.Added!.Value.Seconds;
            Assert.Equal(Bent(commanded, 0.9e-3), fit.Slope.CubicMetersPerSecond * Heptane * (figure.Calculated.Seconds - fit.TimeOffset.Seconds), 1e-9 * Slope);
            Assert.Equal(commanded - fit.TimeOffset.Seconds, figure.OpenTime.Seconds * figure.Factor!.Value.DecimalFractions, 1e-15);
            Assert.Equal(figure.Commanded.Seconds, commanded, 1e-15);
            Assert.True(figure.Minimum < figure.Added && figure.Added < figure.Maximum);
            Assert.Equal(figure.Commanded < Wren.Ms(1.7), figure.Added > Wren.Ms(0.001));
        }

        // Of weighings on the line alone there are none, and a note says so.
        double Line(double seconds) => Slope * (seconds - 0.9e-3);
        PulseFit Straight(double volts) => PulseFit.Of(Test(300, volts, Line, [1.8, 2.4, 3, 4, 6, 8, 10]));
        ControllerFigures straight = From([Straight(12), Straight(14)], [Wren.Kpa(300)]);
        Assert.Empty(straight.ShortPulses);
        Assert.Contains(straight.Notes, note => note.Code == "controller.note-no-short-pulses");

        // At 1.3 ms of 0.9 ms dead time 20 % too little: 0.4 ms open do the work of 0.32 ms.
        Assert.Equal((1.22, 0.08, 1.25), (Math.Round(corrections[0].Calculated.Milliseconds, 3), Math.Round(corrections[0].Added!.Value.Milliseconds, 3), Math.Round(corrections[0].Factor!.Value.DecimalFractions, 3)));
    }

    /// <summary>Where a pulse delivers nothing, or less than a shorter one, there is no correction, and the reason.</summary>
    [Fact]
    public void ShortPulses_WithoutACorrection_SayWhy()
    {
        double Delivered(double seconds) => seconds < 1.15e-3 ? 0 : seconds < 1.35e-3 ? Slope * 0.75e-3 : seconds < 1.55e-3 ? Slope * 0.45e-3 : Slope * (seconds - 0.9e-3);
        PulseFit fit = PulseFit.Of(Test(300, 14, Delivered, [1.1, 1.3, 1.5, 1.8, 2.4, 3, 4, 6, 8, 10]));
        ShortPulseFigure[] corrections = [.. From([Fit(300, 12, 1.2), fit], [Wren.Kpa(300)]).ShortPulses.Where(figure => figure.Voltage > Wren.Volt(13))];
        Assert.Equal(["controller.none-nothing-delivered", "controller.none-not-rising", "controller.from-bench"], corrections.Take(3).Select(figure => figure.Basis.Code));
        Assert.All(corrections.Take(2), figure => Assert.True(figure.Added is null && figure.Factor is null && figure.Minimum is null));
    }

    /// <summary>
    /// Half an interval at a pulse is t of the standard deviation of the line there, known from any book on regression: s √(1/n + (t − t̄)²/S_tt), as a share of what the line delivers.
    /// </summary>
    [Fact]
    public void FuelInterval_IsThatOfTheLine()
    {
        double[] widths = [2, 3, 4, 5, 6, 8, 10];
        double[] off = [1e-5, -1e-5, 2e-5, 0, -2e-5, 1e-5, -1e-5];
        PulseFit Noisy(double volts, double calibration) => PulseFit.Of(PulseTest.Of(
            "injector on the bench",
            TestFluid.Heptane,
            Wren.Kpa(300),
            Wren.Volt(volts),
            Mass.FromMilligrams(10),
            Wren.Percent(calibration),
            [.. widths.Select((width, at) => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromKilograms((1000 * Slope * ((width / 1000) - 1e-3)) + off[at])))]));
        PulseFit fit = Noisy(14, 0);
        double mean = widths.Average() / 1000;
        double sxx = widths.Sum(width => Math.Pow((width / 1000) - mean, 2));
        foreach (double pulse in new[] { 2.2, 5.0, 9.5 })
        {
            double Half(double calibration) =>
                From([Noisy(12, calibration), Noisy(14, calibration)], [Wren.Kpa(300)], pulses: [Wren.Ms(pulse)]).FuelErrors.Single().Maximum!.Value.DecimalFractions;
            double deviation = fit.Scatter.Kilograms / 1000 * Math.Sqrt((1.0 / 7) + (Math.Pow((pulse / 1000) - mean, 2) / sxx));
            double line = fit.Slope.CubicMetersPerSecond * Heptane * ((pulse / 1000) - fit.TimeOffset.Seconds);
            Assert.Equal(2.5705818366 * deviation / line, Half(0), 2e-4 * deviation / line);
            Assert.Equal(Math.Sqrt(Math.Pow(Half(0), 2) + Math.Pow(0.0195996, 2)), Half(1), 1e-6);
        }

        // Of pulses past the longest that was weighed the bench says nothing.
        Assert.Null(From([Noisy(12, 0), Noisy(14, 0)], [Wren.Kpa(300)], pulses: [Wren.Ms(10.1)]).FuelErrors.Single().Maximum);
    }

    /// <summary>
    /// What is told to be wrong at another differential pressure is what the model of the mixture finds for a car whose controller has these figures: lambda of the target over one plus the error.
    /// </summary>
    [Fact]
    public void FuelError_AtAnotherPressure_IsThatOfTheMixture() => Gen.Select(Gen.Double[200, 520], Gen.Double[200, 520], Gen.Double[2500, 6000]).Sample((reference, there, rpm) =>
    {
        FuelSystem car = MixtureCar.Car(Fixed.At(Wren.Kpa(there)), MixtureCar.Ample);
        Injector injector = car.Injectors.Injector.WithMeasuredFlows((Wren.Kpa(500), VolumeFlow.FromMillilitersPerMinute(450)));
        car = car.With(InjectorSet.Of(injector, 4));
        foreach (bool corrects in new[] { false, true })
        {
            ControllerFigures Figures(Duration pulse) => ControllerFigures.Of(
                injector, car.Demand.Consumption.Fuel, Wren.Hill.FuelTemperature, [Wren.Kpa(reference), Wren.Kpa(there)], Wren.Kpa(reference), [Wren.Volt(11), Wren.Volt(13.5), Wren.Volt(14), Wren.Volt(16)], [pulse]);
            FuelSystem typed = car.With(SpeedDensityController.Of(
                Figures(Wren.Ms(5)).DataFor(TargetLambda.At(0.82), corrects), Wren.VolumetricEfficiency, Wren.Kpa(300)));
            DeliveredMixture mixture = typed.Solve(OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(-20), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14), Wren.Hill.FuelTemperature))).Mixture;
            if (mixture.IsDutyLimited || mixture.IsHeldOpen)
            {
                return;
            }

            // The manifold is 20 kPa under ambient pressure, so that the injector has as much more.
            double differential = mixture.InjectorDifferential.Kilopascals;
            FuelErrorFigure error = ControllerFigures.Of(
                injector, car.Demand.Consumption.Fuel, Wren.Hill.FuelTemperature, [Wren.Kpa(differential)], Wren.Kpa(reference), pulses: [mixture.CommandedPulse!.Value])
                .FuelErrors.Single(one => Math.Abs(one.Differential.Kilopascals - differential) < 1e-9);
            Assert.Equal(0.82 / (1 + (corrects ? error.CorrectedError : error.Error)!.Value.DecimalFractions), mixture.Lambda!.Value, 2e-9);
        }
    });

    /// <summary>Exact weighings of an injector that bends, typed into a controller, give the target: the whole way from the scale to lambda.</summary>
    [Fact]
    public void Data_OfExactWeighings_GivesTheTarget()
    {
        PulseFit[] fits = [Fit(300, 12, 1.2), Fit(300, 14, 0.9)];
        FuelSystem car = MixtureCar.Car(ManifoldReferenced.From(Wren.Kpa(300)), MixtureCar.Ample);
        ControllerFigures figures = ControllerFigures.From(fits, Wren.Kpa(300), Wren.Kpa(550), car.Demand.Consumption.Fuel, Wren.Hill.FuelTemperature, [Wren.Kpa(300)]);
        Injector asItIs = Injector.Of(
            "as it is", VolumeFlow.FromCubicMetersPerSecond(Slope / Heptane), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage((Wren.Volt(12), Wren.Ms(1.2)), (Wren.Volt(14), Wren.Ms(0.9))), Wren.Ms(1.8), Wren.Kpa(550));
        foreach (bool corrects in new[] { false, true })
        {
            FuelSystem typed = car.With(InjectorSet.Of(asItIs, 4)).With(SpeedDensityController.Of(figures.DataFor(TargetLambda.At(0.82), corrects), Wren.VolumetricEfficiency, Wren.Kpa(300)));
            foreach (double volts in new[] { 12.0, 13.1, 14 })
            {
                DeliveredMixture mixture = typed.Solve(OperatingPoint.At(Wren.Rpm(4000), Wren.Kpa(20), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature))).Mixture;
                Assert.Equal(0.82, mixture.Lambda!.Value, 1e-9);
            }
        }
    }

    /// <summary>The lowest differential pressure is the reference, whatever the order; asked for another, the reason says where the engine leans.</summary>
    [Fact]
    public void Reference_IsTheLowest_UnlessAskedFor()
    {
        Injector injector = InjectorOf(360);
        ControllerFigures Of(Pressure? reference) => ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(400), Wren.Kpa(250), Wren.Kpa(300)], reference);
        Assert.Equal((Wren.Kpa(250), "controller.reference-lowest"), (Of(null).Reference, Of(null).ReferenceReason.Code));
        Assert.All(Of(null).FuelErrors.Where(error => error.Pulse > Wren.Ms(9)), error => Assert.True(error.Error!.Value >= Ratio.Zero));
        Assert.Equal((Wren.Kpa(400), "controller.reference-given"), (Of(Wren.Kpa(400)).Reference, Of(Wren.Kpa(400)).ReferenceReason.Code));
        Assert.All(Of(Wren.Kpa(400)).FuelErrors.Where(error => error.Pulse > Wren.Ms(9) && error.Differential < Wren.Kpa(399)), error => Assert.True(error.Error!.Value < Ratio.Zero));
        Assert.Equal(4, Of(Wren.Kpa(350)).Flows.Count);

        // Where it leans a note says so.
        Assert.Contains("% of fuel at 250 kPa, 10.00 ms: there the engine is lean", string.Join(' ', Of(Wren.Kpa(400)).Notes), StringComparison.Ordinal);

        // One pulse within the dead time: nothing was wanted, so nothing can be off.
        Assert.Equal(
            "controller.none-within-dead-time",
            ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)], pulses: [Wren.Ms(0.5)]).FuelErrors.Single().Basis.Code);
    }

    /// <summary>Hot fuel is lighter: more of it by volume, less by mass, by the root of its density either way; the note says how much a warmer rail leans.</summary>
    [Fact]
    public void Flow_OfHotFuel_IsMoreByVolumeAndLessByMass()
    {
        FlowFigure At(double celsius) => ControllerFigures.Of(InjectorOf(360), Fuel.Petrol, Temperature.FromDegreesCelsius(celsius), [Wren.Kpa(300)]).ReferenceFlow;
        double ratio = Fuel.Petrol.DensityAt(Temperature.FromDegreesCelsius(80)) / Fuel.Petrol.DensityAt(Temperature.FromDegreesCelsius(20));
        Assert.Equal(1 / Math.Sqrt(ratio), At(80).Flow!.Value / At(20).Flow!.Value, 1e-12);
        Assert.Equal(Math.Sqrt(ratio), At(80).MassFlow!.Value / At(20).MassFlow!.Value, 1e-12);
        string Note(double celsius) => string.Join(' ', ControllerFigures.Of(InjectorOf(360), Fuel.Petrol, Temperature.FromDegreesCelsius(celsius), [Wren.Kpa(300)]).Notes);
        double warmer = Math.Sqrt(Fuel.Petrol.DensityAt(Temperature.FromDegreesCelsius(40)) / Fuel.Petrol.DensityAt(Temperature.FromDegreesCelsius(20))) - 1;
        Assert.Contains(FormattableString.Invariant($"delivers −{-100 * warmer:0.0} % of fuel by mass"), Note(20), StringComparison.Ordinal);
        Assert.DoesNotContain("by mass", Note(80), StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_OfWhatCannotBe_AreRefused()
    {
        Injector injector = InjectorOf(360);
        Refused.OutOfRange("differentials", () => ControllerFigures.Of(injector, Fuel.Petrol, Warm, []));
        Refused.OutOfRange("voltages", () => ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)], voltages: []));
        Refused.OutOfRange("pulses", () => ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)], pulses: [.. Enumerable.Range(1, 11).Select(width => Wren.Ms(width))]));
        Refused.OutOfRange("maximumDifferential", () => ControllerFigures.From([Fit(300, 12, 1.2), Fit(300, 14, 0.9)], Wren.Kpa(300), Wren.Kpa(250), Fuel.Petrol, Warm, [Wren.Kpa(300)]));
        Assert.Contains("are all at 12.0 V", Assert.Throws<ArgumentException>(() => From([Fit(300, 12, 1.2), Fit(400, 12, 1.2)], [Wren.Kpa(300)])).Message, StringComparison.Ordinal);

        // One voltage asked for is no table.
        Assert.Contains(
            "dead times at 1 voltages",
            Assert.Throws<InvalidOperationException>(() => ControllerFigures.Of(injector, Fuel.Petrol, Warm, [Wren.Kpa(300)], voltages: [Wren.Volt(6), Wren.Volt(12)]).DataFor(TargetLambda.At(1))).Message,
            StringComparison.Ordinal);
    }

    internal static ControllerFigures From(PulseFit[] fits, Pressure[] differentials, Duration[]? pulses = null) =>
        ControllerFigures.From(fits, Wren.Kpa(300), Wren.Kpa(550), Fuel.Petrol, Warm, differentials, pulses: pulses);

    internal static PulseFit Fit(double kilopascals, double volts, double offset) => PulseFit.Of(
        Test(kilopascals, volts, seconds => Bent(seconds - (offset * 1e-3) + 0.9e-3, 0.9e-3) * Math.Sqrt(kilopascals / 300), [.. new[] { 1.3, 1.6, 1.9, 2.5, 3, 4, 6, 8, 10 }.Select(width => width + offset - 0.9)]));

    internal static Injector InjectorOf(double flow) => Wren.InjectorOf(flow);

    private static bool IsAt(TimeFigure time, double kilopascals, double volts) => Math.Abs(time.Differential.Kilopascals - kilopascals) < 1e-9 && Math.Abs(time.Voltage.Volts - volts) < 1e-9;

    private static double Bent(double seconds, double offset) =>
        Slope * (seconds - offset) * (seconds - offset < 0.55e-3 ? 0.8 : seconds - offset < 0.8e-3 ? 0.92 : 1);

    private static PulseTest Test(double kilopascals, double volts, Func<double, double> each, double[] milliseconds) => PulseTest.Of(
        "injector on the bench",
        TestFluid.Heptane,
        Wren.Kpa(kilopascals),
        Wren.Volt(volts),
        Mass.FromMilligrams(10),
        Ratio.Zero,
        [.. milliseconds.Select((width, at) => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromKilograms((1000 * each(width / 1000)) + (each(width / 1000) > 0 && width > 1.7 ? 1e-10 * (at % 2) : 0))))]);
}
