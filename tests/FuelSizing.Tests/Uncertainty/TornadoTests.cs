using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>One input at a time: its ends, what the system gives there, and the order of the bars.</summary>
public class TornadoTests
{
    private static readonly Conditions Day = Conditions.Of(
        Atmosphere.Of(Wren.Kpa(97), Temperature.FromDegreesCelsius(12)), Wren.Volt(13.2), Temperature.FromDegreesCelsius(31));

    /// <summary>Every input of a car that has all that they belong to: rising rate, wheels, a blend. The 5th and the 95th percentile of a uniform are a tenth of it apart from its ends.</summary>
    [Theory]
    [InlineData("BSFC", 300, 400, 315, "g/kWh")]
    [InlineData("volumetric efficiency", 90, 130, 100, "%")]
    [InlineData("drivetrain loss", 10, 30, 15, "%")]
    [InlineData("injector flow", 90, 130, 100, "%")]
    [InlineData("injector matching", 90, 130, 100, "%")]
    [InlineData("regulator pressure", -10, 30, 0, "kPa")]
    [InlineData("regulator gain", 90, 130, 100, "%")]
    [InlineData("regulator onset", -2, 18, 0, "kPa")]
    [InlineData("boost", 90, 130, 100, "%")]
    [InlineData("ambient pressure", 90, 100, 97, "kPa")]
    [InlineData("ambient temperature", 0, 20, 12, "°C")]
    [InlineData("supply voltage", 12, 14, 13.2, "V")]
    [InlineData("fuel temperature", 20, 40, 31, "°C")]
    [InlineData("ethanol content", 0, 10, 10, "%")]
    public void Bar_OfEachInput_HasItsEndsAndTheNominal(string name, double from, double to, double nominal, string unit)
    {
        UncertainInput input = Inputs(name, from, to);
        Assert.Equal(name, input.Name);
        Assert.Equal(name, input.ToString());
        TornadoBar bar = Assert.Single(UncertainSystem.Of(Rising(name), OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(40), Day), input)
            .Tornado(SystemOutput.FuelFlow).Bars);
        Assert.Same(input, bar.Input);
        Assert.Equal(FormattableString.Invariant($"{from + (0.05 * (to - from)):G6} {unit}"), Text(bar.Low));
        Assert.Equal(FormattableString.Invariant($"{nominal} {unit}"), Text(bar.Nominal));
        Assert.Equal(FormattableString.Invariant($"{from + (0.95 * (to - from)):G6} {unit}"), Text(bar.High));
        Assert.Equal(name is "volumetric efficiency" or "injector flow" or "injector matching" or "regulator gain" or "boost", input.IsFactor);

        static string Text(IQuantity value) => value.ToString("S6", CultureInfo.InvariantCulture);
    }

    /// <summary>What the system gives at each end is what a system built with the end gives: a fixed rail of 300 kPa under a unit of gain 3 and onset 0.</summary>
    [Fact]
    public void Bar_OfTheRisingUnit_IsTheSystemBuiltWithItsEnds()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(40), Day);
        double Rail(double gain, double onset, double boost = 40) =>
            Unit(gain, onset).Solve(OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(boost), Day)).RailGauge.Kilopascals;
        TornadoResult tornado = UncertainSystem.Of(
            Unit(3, 5), point, Inputs("regulator onset", -5, 15), Inputs("regulator gain", 80, 120), Inputs("boost", 90, 110))
            .Tornado(SystemOutput.RailGauge, Wren.Percent(10));
        Ends("regulator gain", Rail(3 * 0.84, 5), Rail(3 * 1.16, 5));
        Ends("regulator onset", Rail(3, 2), Rail(3, 18));
        Ends("boost", Rail(3, 5, 0.92 * 40), Rail(3, 5, 1.08 * 40));
        Assert.Equal(Rail(3, 5), ((Pressure)tornado.Nominal!).Kilopascals, 6);
        Assert.Equal(10, tornado.Tail.Percent, 12);

        void Ends(string name, double low, double high)
        {
            TornadoBar bar = tornado.Bars.Single(bar => bar.Input.Name == name);
            Assert.Equal(low, ((Pressure)bar.AtLow!).Kilopascals, 6);
            Assert.Equal(high, ((Pressure)bar.AtHigh!).Kilopascals, 6);
            Assert.Equal(1000 * Math.Abs(high - low), bar.SwingInSi, 1e-3);
            Assert.NotEqual(low, high, 1.0);
        }
    }

    /// <summary>
    /// First the input that leads where nothing can be said (6 to 7 V is under the dead-time table), then the widest; those that change nothing in the order that
    /// their kinds are listed in.
    /// </summary>
    [Fact]
    public void Bars_StandWidestFirst_AndWhatCannotBeSaidBeforeThem()
    {
        UncertainInput low = UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(6), Wren.Volt(14)));
        UncertainInput still = UncertainInput.RegulatorOffset(Distribution.Fixed(Pressure.Zero));
        UncertainInput loss = UncertainInput.DrivetrainLoss(Distribution.Fixed(Fraction(0.15)));
        UncertainInput little = UncertainInput.InjectorFlowFactor(Uniform(0.99, 1.01));
        UncertainInput warm = UncertainInput.FuelTemperature(Distribution.Fixed(Wren.Hill.FuelTemperature));
        UncertainInput much = UncertainInput.VolumetricEfficiencyFactor(Uniform(0.9, 1.1));
        TornadoResult tornado = Of(warm, still, little, loss, much, low).Tornado(SystemOutput.DutyCycle);
        Assert.Equal([low, much, little, loss, still, warm], tornado.Bars.Select(bar => bar.Input));
        Assert.Null(tornado.Bars[0].AtLow);
        Assert.NotNull(tornado.Bars[0].AtHigh);
        Assert.True(double.IsNaN(tornado.Bars[0].SwingInSi));
        Assert.Equal(0, tornado.Bars[^1].SwingInSi);
        Assert.True(tornado.IsComplete);
        Assert.Equal(5, tornado.Tail.Percent, 12);
        Assert.StartsWith("duty cycle: 6 inputs; supply voltage: cannot say to ", tornado.ToString(), StringComparison.Ordinal);
        string ends = string.Create(CultureInfo.InvariantCulture, $"{tornado.Bars[2].AtLow:S4} to {tornado.Bars[2].AtHigh:S4}");
        Assert.Equal($"injector flow: {ends}", tornado.Bars[2].ToString());
    }

    [Fact]
    public void Work_ThatIsStopped_KeepsTheBarsOfTheFirstInputs()
    {
        using CancellationTokenSource stop = new();
        List<double> shares = [];
        Listener listener = new(share =>
        {
            shares.Add(share.Percent);
            if (shares.Count == 2)
            {
                stop.Cancel();
            }
        });
        TornadoResult partial = Of(Volts, Warmth, Flow, Bsfc).Tornado(SystemOutput.DutyCycle, null, listener, stop.Token);
        Assert.False(partial.IsComplete);
        Assert.Equal(["fuel temperature", "supply voltage"], partial.Bars.Select(bar => bar.Input.Name).Order());
        Assert.Equal([25, 50], shares);
        Assert.Throws<OperationCanceledException>(() => Of(Volts).Tornado(SystemOutput.DutyCycle, null, null, stop.Token));
        List<double> all = [];
        Assert.True(Of(Volts, Flow).Tornado(SystemOutput.DutyCycle, null, new Listener(share => all.Add(share.Percent))).IsComplete);
        Assert.Equal([50, 100], all);
    }

    [Theory]
    [InlineData(0.09, false)]
    [InlineData(0.1, true)]
    [InlineData(49, true)]
    [InlineData(49.1, false)]
    public void Tail_OfAnInput_IsOneOfATenthToFortyNinePercent(double percent, bool isGood)
    {
        if (isGood)
        {
            Assert.Equal(percent, Of(Flow).Tornado(SystemOutput.FuelFlow, Wren.Percent(percent)).Tail.Percent, 9);
        }
        else
        {
            Refused.OutOfRange("tail", () => Of(Flow).Tornado(SystemOutput.FuelFlow, Wren.Percent(percent)));
        }
    }

    /// <summary>A part's margin is the margin that the system built with the end has; the smallest of all is that of the tightest part.</summary>
    [Fact]
    public void Bar_OfAMargin_IsThatOfTheSystemBuiltWithItsEnd()
    {
        TornadoBar of = Assert.Single(Of(Flow).Tornado(SystemOutput.ReserveOf(Part.Injectors), Wren.Percent(10)).Bars);
        TornadoBar all = Assert.Single(Of(Flow).Tornado(SystemOutput.MinimumReserve, Wren.Percent(10)).Bars);
        foreach ((double flow, IQuantity own, IQuantity least) in new[] { (0.968, of.AtLow!, all.AtLow!), (1.032, of.AtHigh!, all.AtHigh!) })
        {
            OperatingResult built = Car(injector: 570 * flow).Solve(Point);
            Assert.Equal(built.Margins.Single(margin => margin.Part == Part.Injectors).Reserve!.Value.Percent, ((Ratio)own).Percent, 9);
            Assert.Equal(built.Margins.Where(margin => margin.Reserve is not null).Min(margin => margin.Reserve!.Value.Percent), ((Ratio)least).Percent, 9);
        }

        Assert.Equal("margin of injectors", SystemOutput.ReserveOf(Part.Injectors).ToString());
        Refused.Missing("part", () => SystemOutput.ReserveOf(null!));
        Refused.Missing("system", () => SystemOutput.DutyCycle.LimitIn(null!));
        Assert.Equal(SystemOutput.ReserveOf(Part.Injectors), SystemOutput.ReserveOf(Part.Injectors));
        Assert.NotEqual(SystemOutput.ReserveOf(Part.Injectors), SystemOutput.ReserveOf(Part.Pump));
    }

    private static UncertainInput Inputs(string name, double from, double to) => name switch
    {
        "BSFC" => UncertainInput.BrakeSpecificFuelConsumption(Distribution.Uniform(Grams(from), Grams(to))),
        "volumetric efficiency" => UncertainInput.VolumetricEfficiencyFactor(Uniform(from / 100, to / 100)),
        "drivetrain loss" => UncertainInput.DrivetrainLoss(Uniform(from / 100, to / 100)),
        "injector flow" => UncertainInput.InjectorFlowFactor(Uniform(from / 100, to / 100)),
        "injector matching" => UncertainInput.InjectorMatchingFactor(Uniform(from / 100, to / 100)),
        "regulator pressure" => UncertainInput.RegulatorOffset(Distribution.Uniform(Wren.Kpa(from), Wren.Kpa(to))),
        "regulator gain" => UncertainInput.RegulatorGainFactor(Uniform(from / 100, to / 100)),
        "regulator onset" => UncertainInput.RegulatorOnsetOffset(Distribution.Uniform(Wren.Kpa(from), Wren.Kpa(to))),
        "boost" => UncertainInput.BoostFactor(Uniform(from / 100, to / 100)),
        "ambient pressure" => UncertainInput.AmbientPressure(Distribution.Uniform(Wren.Kpa(from), Wren.Kpa(to))),
        "ambient temperature" => UncertainInput.AmbientTemperature(
            Distribution.Uniform(Temperature.FromDegreesCelsius(from), Temperature.FromDegreesCelsius(to))),
        "supply voltage" => UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(from), Wren.Volt(to))),
        "fuel temperature" => UncertainInput.FuelTemperature(
            Distribution.Uniform(Temperature.FromDegreesCelsius(from), Temperature.FromDegreesCelsius(to))),
        _ => UncertainInput.EthanolContent(Uniform(from / 100, to / 100)),
    };

    private static FuelSystem Unit(double gain, double onset) => Car().With(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(onset)));

    private static FuelSystem Rising(string input) => input == "ethanol content"
        ? Wren.System(consumption: FuelConsumption.Of(FuelBlend.EthanolInPetrol(Fraction(0.10)), 0.82, Grams(320)), injector: 570)
        : Unit(3, 5);
}
