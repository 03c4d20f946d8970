using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A converter between a pump's feed and its motor.</summary>
public class VoltageConverterTests
{
    private static readonly Feed Wiring = Feed.Of(
        "to the tank", Conductor.Awg(12), Length.FromMeters(4.5), Length.FromMeters(4.5), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse, Contact.DefaultRelay);

    private static readonly Pump Wired = Wren.WiredPump.WithFeed(Wiring
        .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(60))
        .WithFuse(ElectricCurrent.FromAmperes(20)));

    [Fact]
    public void ConverterOfRatioOneWithoutLoss_ChangesNothing() =>
        Gen.Select(Gen.Double[2000, 7000], Gen.Double[-50, 60], Gen.Double[12.5, 14.2]).Sample(
            (rpm, kilopascals, volts) =>
            {
                OperatingPoint point = At(rpm, kilopascals, volts);
                OperatingResult plain = With(Wired).Solve(point);
                OperatingResult converted = With(Wired.WithConverter(VoltageConverter.Times("converter", 1, Wren.Percent(100)))).Solve(point);
                PumpResult one = plain.Circuit.Pumps[0];
                PumpResult other = converted.Circuit.Pumps[0];
                Assert.Equal(one.Voltage.Volts, other.Voltage.Volts, 1e-10);
                Assert.Equal(one.Flow.LitersPerHour, other.Flow.LitersPerHour, 1e-8);
                Assert.Equal(one.Current!.Value.Amperes, other.FeedCurrent!.Value.Amperes, 1e-9);
                Assert.Equal(one.FeedDrop.Volts, other.FeedDrop.Volts, 1e-9);
                Assert.Equal(
                    plain.Margins.Select(margin => (margin.Part.Code, margin.Outcome)),
                    converted.Margins.Where(margin => margin.Part != Part.Converter).Select(margin => (margin.Part.Code, margin.Outcome)));
            },
            iter: 40);

    /// <summary>What leaves the battery is what the feed makes heat of, what the converter loses, and what the motor gets.</summary>
    [Fact]
    public void Energy_IsConserved_FromBatteryToMotor() =>
        Gen.Select(Gen.Double[11, 14.5], Gen.Double[0.6, 1], Gen.Double[12, 13.5], Gen.Double[2000, 7000]).Sample(
            (volts, efficiency, output, rpm) =>
            {
                VoltageConverter converter = VoltageConverter.Holding("converter", Wren.Volt(output), Ratio.FromDecimalFractions(efficiency));
                PumpResult pump = With(Wired.WithConverter(converter)).Solve(At(rpm, 0, volts)).Circuit.Pumps[0];
                Assert.Equal(output, pump.Voltage.Volts, 1e-10);
                double amperes = pump.FeedCurrent!.Value.Amperes;
                double motor = pump.Voltage.Volts * pump.Current!.Value.Amperes;
                Assert.Equal(
                    volts * amperes,
                    (amperes * amperes * Wiring.LoopResistance.Ohms) + (motor / efficiency),
                    1e-9 * volts * amperes);
                Assert.Equal(amperes * Wiring.LoopResistance.Ohms, pump.FeedDrop.Volts, 1e-9);
            },
            iter: 60);

    /// <summary>A pump that gets 13 V from a converter delivers what it does straight from a source of 13 V, whatever the battery has.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(14)]
    public void PumpOnAConverter_IsThePumpAtItsVoltage(double volts)
    {
        Pump converted = Wired.WithConverter(VoltageConverter.Holding("converter", Wren.Volt(13), Wren.Percent(88), ElectricCurrent.FromAmperes(30)));
        PumpResult pump = With(converted).Solve(At(5000, 20, volts)).Circuit.Pumps[0];
        PumpResult straight = With(Wren.WiredPump).Solve(At(5000, 20, 13)).Circuit.Pumps[0];
        Assert.Equal(straight.Flow.LitersPerHour, pump.Flow.LitersPerHour, 1e-8);
        Assert.Equal(straight.Current!.Value.Amperes, pump.Current!.Value.Amperes, 1e-9);
    }

    /// <summary>At its limit the motor draws what the converter gives, at a lower voltage; the check fails, and a converter of the advised size serves.</summary>
    [Fact]
    public void ConverterAtItsLimit_Fails_AndOneAsAdvisedHolds()
    {
        OperatingPoint point = At(6000, 60, 12.5);
        Pump Limited(ElectricCurrent limit) => Wired.WithConverter(VoltageConverter.Holding("converter", Wren.Volt(13.5), Wren.Percent(90), limit));
        FuelSystem small = With(Limited(ElectricCurrent.FromAmperes(6)));
        OperatingResult result = small.Solve(point);
        PumpResult pump = result.Circuit.Pumps[0];
        Assert.Equal(6, pump.Current!.Value.Amperes, 1e-9);
        Assert.True(pump.Voltage < Wren.Volt(13.5));
        Margin margin = result.Margins.Single(margin => margin.Part == Part.Converter);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        Assert.EndsWith(" of at most 6.0 A: its voltage falls, or it switches off", margin.Explanation, StringComparison.Ordinal);

        SweepResult sweep = small.Sweep([Wren.Rpm(6000)], [Wren.Kpa(60)], point.Conditions);
        ElectricCurrent advised = (ElectricCurrent)sweep.Remedies.Single(remedy => remedy.Part == Part.Converter).Needed!;
        Margin served = With(Limited(advised)).Solve(point).Margins.Single(margin => margin.Part == Part.Converter);
        Assert.Equal(Outcome.Holds, served.Outcome);
        Assert.Equal(13.5, With(Limited(advised)).Solve(point).Circuit.Pumps[0].Voltage.Volts, 1e-9);
    }

    [Fact]
    public void FeedThatCannotPassThePower_LetsTheVoltageFall_AndTheCheckSaysSo()
    {
        Feed weak = Feed.Of(
            "weak", Conductor.Awg(12), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(20), Contact.Of("corroded", ElectricResistance.FromOhms(0.9)));
        Pump pump = Wren.WiredPump.WithFeed(weak).WithConverter(VoltageConverter.Holding("converter", Wren.Volt(13.5), Wren.Percent(90), ElectricCurrent.FromAmperes(30)));
        OperatingResult result = With(pump).Solve(At(5000, 20, 12));
        Assert.True(result.Circuit.Pumps[0].Voltage < Wren.Volt(13.5));
        Margin margin = result.Margins.Single(margin => margin.Part == Part.Converter);
        Assert.Equal(Outcome.Fails, margin.Outcome);

        // 0.9 · 12²/(4 · 0.9) = 36 W, at 13.5 V 2.7 A.
        Assert.EndsWith("and its feed passes on 2.7 A at most: its voltage falls", margin.Explanation, StringComparison.Ordinal);
        Assert.Equal(Outcome.Fails, result.Margins.Single(margin => margin.Part == Part.Feed).Outcome);
    }

    /// <summary>Wire and fuse carry what the converter draws, which is more than the motor's current.</summary>
    [Fact]
    public void WireAndFuse_AreJudgedByWhatTheConverterDraws()
    {
        Pump converted = Wired.WithConverter(VoltageConverter.Holding("converter", Wren.Volt(13.5), Wren.Percent(80), ElectricCurrent.FromAmperes(30)));
        OperatingResult result = With(converted).Solve(At(6000, 60, 11.5));
        PumpResult pump = result.Circuit.Pumps[0];
        Assert.True(pump.FeedCurrent > pump.Current * 1.4);
        foreach (Part part in (Part[])[Part.Wire, Part.Fuse])
        {
            Assert.Equal(pump.FeedCurrent!.Value.Amperes, ((ElectricCurrent)result.Margins.Single(margin => margin.Part == part).Used!).Amperes, 1e-9);
        }
    }

    /// <summary>Over its highest measured voltage a pump is known between bounds, also where a converter takes it there.</summary>
    [Fact]
    public void ConverterOverTheMeasuredVoltages_LeavesBounds()
    {
        Pump one = Pump.From(Wren.WiredCurve(12, 0.85));
        OperatingPoint point = At(5000, 20, 12);
        OperatingResult raised = With(one.WithConverter(VoltageConverter.Holding("converter", Wren.Volt(15), Wren.Percent(90)))).Solve(point);
        OperatingResult straight = With(one).Solve(At(5000, 20, 15));
        Assert.Equal(
            straight.Margins.Single(margin => margin.Part == Part.Pump).Share!.Value, raised.Margins.Single(margin => margin.Part == Part.Pump).Share!.Value, 1e-9);
        Margin margin = raised.Margins.Single(margin => margin.Part == Part.Converter);
        Assert.Null(margin.Allowed);
        Assert.EndsWith("; what it can give is not known", margin.Explanation, StringComparison.Ordinal);
        Assert.NotEqual(Outcome.Holds, raised.Outcome);
        Assert.Contains(raised.NotJudged, open => open.ToString().Contains("no maximum current given of converter", StringComparison.Ordinal));
    }

    [Fact]
    public void Switch_ThatBypassesTheConverter_RunsThePumpOnTheSupplyBelow()
    {
        VoltageConverter converter = VoltageConverter.Holding("converter", Wren.Volt(13.5), Wren.Percent(90), ElectricCurrent.FromAmperes(30));
        FuelSystem staged = With(SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Wired.WithConverter(converter), PumpLowSpeed.ConverterBypassed));
        Assert.Equal(
            With(Wired).Solve(At(4000, 10, 12.5)).Circuit.Pumps[0].Voltage.Volts, staged.Solve(At(4000, 10, 12.5)).Circuit.Pumps[0].Voltage.Volts, 1e-12);
        Assert.Equal(13.5, staged.Solve(At(4000, 50, 12.5)).Circuit.Pumps[0].Voltage.Volts, 1e-12);
        Assert.Equal(Outcome.Holds, staged.Solve(At(4000, 10, 12.5)).Margins.Single(margin => margin.Part == Part.Converter).Outcome);
        Assert.Throws<ArgumentException>(() => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Wired, PumpLowSpeed.ConverterBypassed));
        Assert.Throws<ArgumentException>(() => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Wired.WithConverter(converter), PumpLowSpeed.At(Wren.Percent(80))));
        Assert.Throws<ArgumentException>(() => Pump.From(Wren.Pump).WithConverter(converter));
    }

    private static OperatingPoint At(double rpm, double kilopascals, double volts) =>
        OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(kilopascals), Wren.Hill.With(Wren.Volt(volts), Wren.Hill.FuelTemperature));

    private static FuelSystem With(PumpAssembly pumps) => Wren.System(injector: 420).With(pumps);
}
