using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Quantities of uncertain inputs and outputs as numbers on an axis and as text in a table.</summary>
internal static class OutputFigures
{
    /// <summary>The 95 % that intervals are shown for, as is usual.</summary>
    public static Ratio Default { get; } = Ratio.FromPercent(95);

    /// <summary>The axis of an output.</summary>
    public static PlotAxis Axis(SystemOutput output, IQuantity shown) =>
        new($"{char.ToUpperInvariant(output.Name[0])}{output.Name[1..]}", Unit(shown));

    /// <summary>The number in the unit of <see cref="Unit"/>.</summary>
    public static double Number(IQuantity quantity) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? ratio.DecimalFractions : ratio.Percent,
        UnitsNet.Pressure pressure => DisplayUnits.Pressure.ValueOf(pressure),
        MassFlow flow => DisplayUnits.MassFlow.ValueOf(flow),
        ElectricPotential voltage => voltage.Volts,
        Temperature temperature => DisplayUnits.Temperature.ValueOf(temperature),
        BrakeSpecificFuelConsumption consumption => DisplayUnits.Consumption.ValueOf(consumption),
        _ => throw Unforeseen(quantity),
    };

    /// <summary>The unit shown.</summary>
    public static string Unit(IQuantity quantity) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? "1" : "%",
        UnitsNet.Pressure => DisplayUnits.Pressure.Unit,
        MassFlow => DisplayUnits.MassFlow.Unit,
        ElectricPotential => "V",
        Temperature => DisplayUnits.Temperature.Unit,
        BrakeSpecificFuelConsumption => DisplayUnits.Consumption.Unit,
        _ => throw Unforeseen(quantity),
    };

    /// <summary>Number and unit, for instance <c>84.6 %</c>; a pure ratio such as lambda with three decimals and no unit.</summary>
    public static string Text(IQuantity quantity) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? Lambda(ratio.DecimalFractions) : Readable.DutyCycle(ratio),
        UnitsNet.Pressure pressure => Readable.Of(pressure),
        MassFlow flow => Readable.Of(flow),
        ElectricPotential voltage => Readable.Of(voltage),
        Temperature temperature => Readable.Of(temperature),
        BrakeSpecificFuelConsumption consumption => Readable.Of(consumption),
        _ => throw Unforeseen(quantity),
    };

    /// <summary>A value, or that it cannot be said.</summary>
    public static string Known(IQuantity? quantity) => quantity is null ? CircuitText.Unknown : Text(quantity);

    /// <summary>A limit, which is most often a round number: <c>85 %</c>, not <c>85.0 %</c>.</summary>
    public static string Limit(IQuantity limit) => Text(limit).Replace(".0 ", " ", StringComparison.Ordinal);

    /// <summary>A reserve with its sign; one that nobody could use up is not told to the last figure.</summary>
    public static string ReserveOf(Ratio reserve) =>
        reserve.Percent > MaximumReserve ? $"over {Readable.Change(Ratio.FromPercent(MaximumReserve))}" : Readable.Change(reserve);

    /// <summary>A lambda, for instance <c>0.832</c>.</summary>
    public static string Lambda(double lambda) => lambda.ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>What an input may be; a factor with the sign of one.</summary>
    public static string Text(UncertainInput input, IQuantity value) => input.IsFactor ? $"× {Text(value)}" : Text(value);

    /// <summary>An input and its ends, for instance <c>BSFC, 299 to 331 g/kWh</c> or <c>injector flow × 96.4 to 103.6 %</c>.</summary>
    public static string Ends(TornadoBar bar) => $"{bar.Input.Name}{(bar.Input.IsFactor ? " ×" : ",")} {Range(bar.Low, bar.High)}";

    /// <summary>Two values with the unit once, for instance <c>299 to 331 g/kWh</c>.</summary>
    private static string Range(IQuantity low, IQuantity high)
    {
        string unit = $" {Unit(low)}";
        string from = Text(low);
        return $"{(from.EndsWith(unit, StringComparison.Ordinal) ? from[..^unit.Length] : from)} to {Text(high)}";
    }

    /// <summary>A chance with its interval, for instance <c>95.1 to 96.9 %</c>.</summary>
    public static string Interval((Ratio Minimum, Ratio Maximum) range, Func<Ratio, string> text) =>
        $"{text(range.Minimum).Replace(" %", "", StringComparison.Ordinal)} to {text(range.Maximum)}";

    /// <summary>A value on an axis as a label writes it: as many decimals as can be told apart over the span shown.</summary>
    public static string Label(double value, double span)
    {
        const double Steps = 50;
        int decimals = span > 0 ? Math.Clamp((int)Math.Ceiling(Math.Log10(Steps / span)), 0, 6) : 1;
        return value.ToString($"N{decimals}", CultureInfo.InvariantCulture).Replace('-', '−');
    }

    private const double MaximumReserve = 500;

    /// <summary>A ratio that is not told in per cent, as lambda.</summary>
    private static bool IsPlain(Ratio ratio) => ratio.Unit == UnitsNet.Units.RatioUnit.DecimalFraction;

    private static NotSupportedException Unforeseen(IQuantity quantity) =>
        new($"No unit is chosen for showing {quantity.QuantityInfo.Name}. Add it here.");
}
