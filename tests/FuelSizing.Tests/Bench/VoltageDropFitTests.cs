using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Electrical;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>A resistance by voltages over currents. Intervals are checked against benches that an independent program makes (<c>tests/peer/bench_parts.py</c>).</summary>
public class VoltageDropFitTests
{
    /// <summary>
    /// Worked by hand: R = ΣUI/ΣI², s² = Σ(U − RI)²/(n − 1), deviation s/√ΣI², and t(5) = 2.5706 (NIST/SEMATECH e-Handbook, table of Student's t: 2.571).
    /// </summary>
    [Fact]
    public void Line_ThroughZero_IsAsByHand()
    {
        double[] amperes = [4, 4, 8, 8, 12, 12];
        double[] volts = [0.101, 0.098, 0.205, 0.197, 0.297, 0.304];
        VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, volts));
        double square = amperes.Sum(current => current * current);
        double ohms = amperes.Zip(volts, (current, drop) => current * drop).Sum() / square;
        double scatter = Math.Sqrt(amperes.Zip(volts, (current, drop) => Math.Pow(drop - (ohms * current), 2)).Sum() / 5);
        Assert.Equal(ohms, fit.Resistance.Ohms, 1e-14);
        Assert.Equal(scatter, fit.Scatter.Volts, 1e-12);
        Assert.Equal(2.5705818366 * scatter / Math.Sqrt(square), fit.MaximumResistance.Ohms - ohms, 1e-10);
        Assert.Equal(fit.MaximumResistance.Ohms - ohms, ohms - fit.MinimumResistance.Ohms, 1e-13);
        Assert.True(fit.IsThroughZero);
        Assert.True(fit.IsStraight);
        Assert.Empty(fit.Outliers);
        Assert.Equal(Contact.Of("joint", fit.MaximumResistance), fit.MaximumContact);
        Assert.Equal(Contact.Of("joint", fit.Resistance), fit.Contact);
    }

    /// <summary>Readings on the line to the last digit are as sure as the meters: 1.96 of 0.5 mV and of 20 mA times the resistance.</summary>
    [Fact]
    public void Readings_WithoutScatter_AreAsSureAsTheMeters()
    {
        double[] amperes = [4, 4, 8, 8, 12, 12];
        VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, [.. amperes.Select(current => 0.025 * current)], meter: 0.5e-3, ammeter: 0.02));
        double each = Math.Sqrt(Math.Pow(0.5e-3, 2) + Math.Pow(0.025 * 0.02, 2));
        Assert.Equal(0.025, fit.Resistance.Ohms, 1e-14);
        Assert.Equal(1.959963984540054 * each / Math.Sqrt(448), fit.MaximumResistance.Ohms - 0.025, 1e-10);
        Assert.Empty(fit.Outliers);
    }

    /// <summary>A meter that is off by 20 mV, with 1 mV stated, is told, and the slope is right all the same; off by what is stated, the interval is wider by it.</summary>
    [Fact]
    public void Offset_OverTheStatedOne_IsTold()
    {
        double[] amperes = [4, 4, 8, 8, 12, 12];
        double[] noise = [1e-4, -1e-4, 1e-4, -1e-4, 1e-4, -1e-4];
        VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, [.. amperes.Select((current, at) => 0.02 + (0.025 * current) + noise[at])], meter: 1e-4, offset: 1e-3));
        Assert.False(fit.IsThroughZero);
        Assert.InRange(20, fit.MinimumOffset.Millivolts, fit.MaximumOffset.Millivolts);
        Assert.InRange(0.025, fit.MinimumResistance.Ohms, fit.MaximumResistance.Ohms);
        Assert.Equal("bench.voltage-drop-offset", fit.Text.Code);

        double Half(double offset)
        {
            VoltageDropFit plain = VoltageDropFit.Of(Test(amperes, [.. amperes.Select(current => 0.025 * current)], meter: 1e-4, offset: offset));
            return (plain.MaximumResistance - plain.Resistance).Ohms / 1.959963984540054;
        }

        // What an offset does to R: off · ΣI/ΣI².
        Assert.Equal(Math.Sqrt(Math.Pow(Half(0), 2) + Math.Pow(1e-3 * 48 / 448, 2)), Half(1e-3), 1e-10);
    }

    [Fact]
    public void Calibration_OfBothMeters_WidensInProportion()
    {
        double[] amperes = [4, 4, 8, 8, 12, 12];
        VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, [.. amperes.Select(current => 0.025 * current)], meter: 1e-6, calibration: 1));
        Assert.Equal(0.025 * 0.01 * 1.959963984540054, fit.MaximumResistance.Ohms - 0.025, 1e-8);
    }

    [Fact]
    public void Blunder_IsNamed_AndAWireThatWarmsIsNotStraight()
    {
        double[] amperes = [4, 4, 4, 8, 8, 8, 12, 12, 12];
        double[] noise = [1e-4, -1e-4, 0.3e-4, -0.4e-4, 1e-4, -0.9e-4, 0.5e-4, -1e-4, 1e-4];
        double[] volts = [.. amperes.Select((current, at) => (0.025 * current) + noise[at] + (at == 4 ? 0.01 : 0))];
        VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, volts, meter: 1e-4));
        Assert.Equal([4], fit.Outliers);
        Assert.Empty(VoltageDropFit.Of(fit.Test.Without(4)).Outliers);
        Assert.False(VoltageDropFit.Of(Test(amperes, [.. amperes.Select((current, at) => (0.02 * current * (1 + (0.002 * current * current))) + noise[at])], meter: 1e-4)).IsStraight);
    }

    /// <summary>Currents that do not tell a resistance from an offset, and leads the wrong way round.</summary>
    [Fact]
    public void Tests_ThatShowNoResistance_AreRefused()
    {
        void Missing(string words, Func<object> make) => Assert.Contains(words, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        Missing("of 1 current, 10.0 A to 10.0 A", () => Test([10, 10, 10, 10, 10, 10], [0.2, 0.2, 0.2, 0.2, 0.2, 0.2]));
        Missing("of 3 currents, 10.0 A to 12.0 A", () => Test([10, 10, 11, 11, 12, 12], [0.2, 0.2, 0.22, 0.22, 0.24, 0.24]));
        Missing("Turn the meter's leads", () => VoltageDropFit.Of(Test([4, 4, 8, 8, 12, 12], [-0.1, -0.1, -0.2, -0.2, -0.3, -0.3])));
        Refused.OutOfRange("readings", () => Test([4, 4, 8, 8, 12], [0.1, 0.1, 0.2, 0.2, 0.3]));
    }

    /// <summary>The order of readings changes nothing, and twice the voltage is twice the resistance.</summary>
    [Fact]
    public void Fit_HasNoOrder_AndScalesWithVoltage() =>
        Gen.Select(Gen.Double[-1, 1].Array[8], Gen.Double[1e-3, 0.2], Gen.Double[0.5, 2], Gen.Int[0, 7]).Sample((noise, ohms, factor, turn) =>
        {
            double[] amperes = [2, 2, 5, 5, 8, 8, 11, 11];
            double[] volts = [.. amperes.Select((current, at) => (ohms * current) + (1e-3 * noise[at]))];
            VoltageDropFit fit = VoltageDropFit.Of(Test(amperes, volts, meter: 1e-3));
            VoltageDropFit turned = VoltageDropFit.Of(Test([.. amperes[turn..], .. amperes[..turn]], [.. volts[turn..], .. volts[..turn]], meter: 1e-3));
            VoltageDropFit scaled = VoltageDropFit.Of(Test(amperes, [.. volts.Select(drop => drop * factor)], meter: 1e-3 * factor));
            Assert.Equal(fit.MaximumResistance.Ohms, turned.MaximumResistance.Ohms, 1e-12);
            Assert.Equal(factor * fit.MinimumResistance.Ohms, scaled.MinimumResistance.Ohms, 1e-12);
            Assert.True(fit.MinimumResistance <= fit.Resistance && fit.Resistance <= fit.MaximumResistance);
        });

    private static VoltageDropTest Test(double[] amperes, double[] volts, double meter = 1e-6, double offset = 0, double ammeter = 0, double calibration = 0) => VoltageDropTest.Of(
        "joint",
        Wren.Volt(meter),
        Wren.Volt(offset),
        ElectricCurrent.FromAmperes(ammeter),
        Wren.Percent(calibration),
        [.. amperes.Zip(volts, (current, drop) => VoltageDropReading.Of(ElectricCurrent.FromAmperes(current), Wren.Volt(drop)))]);
}
