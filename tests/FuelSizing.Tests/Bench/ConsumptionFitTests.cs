using FuelSizing.Bench;
using FuelSizing.Fuels;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>Specific consumption by tanks weighed before and after. Intervals are checked against benches that an independent program makes (<c>tests/peer/bench_parts.py</c>).</summary>
public class ConsumptionFitTests
{
    /// <summary>
    /// Runs of 900, 909 and 891 g in 60 s at 180 kW: 300, 303 and 297 g/kWh. Their standard deviation is 3 g/kWh, far over what the instruments explain; t(2) = 4.3027 (NIST/SEMATECH e-Handbook: 4.303).
    /// </summary>
    [Fact]
    public void Consumption_OfThreeRuns_IsAsByHand()
    {
        ConsumptionFit fit = ConsumptionFit.Of(Test([900, 909, 891]));
        Assert.Equal(300, fit.Value.GramsPerKiloWattHour, 1e-9);
        Assert.Equal(300 + (4.30265272975 * 3 / Math.Sqrt(3)), fit.Maximum.GramsPerKiloWattHour, 1e-3);
        Assert.Equal(300 - (4.30265272975 * 3 / Math.Sqrt(3)), fit.Minimum.GramsPerKiloWattHour, 1e-3);
        Assert.Equal(0.01, fit.Scatter.DecimalFractions, 1e-4);
        Assert.Empty(fit.Outliers);
        Assert.Equal(fit.Maximum.KilogramsPerJoule, fit.MaximumConsumption(Fuel.Petrol, 0.82).BrakeSpecificFuelConsumption.KilogramsPerJoule, 1e-20);
        Assert.Equal(fit.Value.KilogramsPerJoule, fit.Consumption(Fuel.Petrol, 0.82).BrakeSpecificFuelConsumption.KilogramsPerJoule, 1e-20);
    }

    /// <summary>Runs that all agree are as sure as the instruments: two weighings of 5 g in 900 g, 0.2 s in 60 s, power to 0.5 %, over √3; and the dynamometer's 1 %, which does not average out.</summary>
    [Fact]
    public void Runs_ThatAllAgree_AreAsSureAsTheInstruments()
    {
        ConsumptionFit fit = ConsumptionFit.Of(Test([900, 900, 900], scale: 5, clock: 0.2, power: 0.5, calibration: 1));
        double each = (2 * Math.Pow(5.0 / 900, 2)) + Math.Pow(0.2 / 60, 2) + Math.Pow(0.005, 2);
        Assert.Equal(300 * 1.959963984540054 * Math.Sqrt((each / 3) + (0.01 * 0.01)), fit.Maximum.GramsPerKiloWattHour - 300, 1e-6);
    }

    /// <summary>As an uncertain input: what the interval says, at 2.5 and 97.5 % of a normal.</summary>
    [Fact]
    public void UncertainInput_HasTheInterval()
    {
        ConsumptionFit fit = ConsumptionFit.Of(Test([900, 901, 899], scale: 5, clock: 0.2, power: 0.5, calibration: 1));
        UncertainInput input = fit.ToUncertainInput();
        Assert.Equal(fit.Minimum.GramsPerKiloWattHour, ((BrakeSpecificFuelConsumption)input.ValueAt(Wren.Percent(2.5))).GramsPerKiloWattHour, 0.02);
        Assert.Equal(fit.Maximum.GramsPerKiloWattHour, ((BrakeSpecificFuelConsumption)input.ValueAt(Wren.Percent(97.5))).GramsPerKiloWattHour, 0.02);
        Assert.Equal(300, ((BrakeSpecificFuelConsumption)input.ValueAt(Wren.Percent(50))).GramsPerKiloWattHour, 0.01);
    }

    [Fact]
    public void Blunder_IsNamed()
    {
        ConsumptionFit fit = ConsumptionFit.Of(Test([900, 901, 899, 900.5, 940, 899.5, 900.2]));
        Assert.Equal([4], fit.Outliers);
        Assert.Empty(ConsumptionFit.Of(fit.Test.Without(4)).Outliers);
    }

    /// <summary>What instruments cannot tell, and runs of several powers, are refused with what to do.</summary>
    [Fact]
    public void Tests_ThatTellNothing_AreRefused()
    {
        void Missing(string words, Func<object> make) => Assert.Contains(words, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        Missing("less than 10 times the 100.00 g of a weighing (common practice, no source). Run longer", () => Test([900, 900, 900], scale: 100));
        Missing("shorter than 10 times the 7.00 s of a timing", () => Test([900, 900, 900], clock: 7));
        Missing("specific consumption changes with load", () => ConsumptionTest.Of(
            "Wren",
            Mass.FromGrams(1),
            Duration.FromSeconds(0.1),
            Ratio.Zero,
            Ratio.Zero,
            [.. new[] { 150, 160, 180 }.Select(kilowatts => ConsumptionReading.Of(Mass.FromKilograms(20), Mass.FromKilograms(19), Duration.FromSeconds(60), Power.FromKilowatts(kilowatts)))]));
        Refused.OutOfRange("readings", () => Test([900, 900]));
        Refused.OutOfRange("after", () => ConsumptionReading.Of(Mass.FromKilograms(19), Mass.FromKilograms(20), Duration.FromSeconds(60), Power.FromKilowatts(150)));
    }

    private static ConsumptionTest Test(double[] grams, double scale = 0.01, double clock = 0.001, double power = 0, double calibration = 0) => ConsumptionTest.Of(
        "Wren",
        Mass.FromGrams(scale),
        Duration.FromSeconds(clock),
        Wren.Percent(power),
        Wren.Percent(calibration),
        [.. grams.Select(burnt => ConsumptionReading.Of(Mass.FromGrams(30_000), Mass.FromGrams(30_000 - burnt), Duration.FromSeconds(60), Power.FromKilowatts(180)))]);
}
