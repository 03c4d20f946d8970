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
    public static PlotAxis Axis(SystemOutput output, IQuantity shown, TextStyle style) =>
        new($"{char.ToUpperInvariant(output.Name[0])}{output.Name[1..]}", Unit(shown, style));

    /// <summary>The number in the unit of <see cref="Unit"/>.</summary>
    public static double Number(IQuantity quantity, TextStyle style) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? ratio.DecimalFractions : ratio.Percent,
        UnitsNet.Pressure pressure => style.Units.Pressure.ValueOf(pressure),
        MassFlow flow => style.Units.MassFlow.ValueOf(flow),
        ElectricPotential voltage => voltage.Volts,
        Temperature temperature => style.Units.Temperature.ValueOf(temperature),
        BrakeSpecificFuelConsumption consumption => style.Units.Consumption.ValueOf(consumption),
        _ => throw Unforeseen(quantity),
    };

    /// <summary>The unit shown.</summary>
    public static string Unit(IQuantity quantity, TextStyle style) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? "1" : "%",
        UnitsNet.Pressure => style.Units.Pressure.Unit,
        MassFlow => style.Units.MassFlow.Unit,
        ElectricPotential => "V",
        Temperature => style.Units.Temperature.Unit,
        BrakeSpecificFuelConsumption => style.Units.Consumption.Unit,
        _ => throw Unforeseen(quantity),
    };

    /// <summary>Number and unit, for instance <c>84.6 %</c>; a pure ratio such as lambda with three decimals and no unit.</summary>
    public static string Text(IQuantity quantity, TextStyle style) => quantity switch
    {
        Ratio ratio => IsPlain(ratio) ? Lambda(ratio.DecimalFractions, style) : style.DutyCycle(ratio),
        UnitsNet.Pressure pressure => style.Of(pressure),
        MassFlow flow => style.Of(flow),
        ElectricPotential voltage => style.Of(voltage),
        Temperature temperature => style.Of(temperature),
        BrakeSpecificFuelConsumption consumption => style.Of(consumption),
        _ => throw Unforeseen(quantity),
    };

    /// <summary>A value, or that it cannot be said.</summary>
    public static string Known(IQuantity? quantity, TextStyle style) => quantity is null ? CircuitText.Unknown : Text(quantity, style);

    /// <summary>A limit, which is most often a round number: <c>85 %</c>, not <c>85.0 %</c>.</summary>
    public static string Limit(IQuantity limit, TextStyle style) => Round(Text(limit, style), style);

    /// <summary>A round number without its decimal: <c>85 %</c>, not <c>85.0 %</c>.</summary>
    public static string Round(string figure, TextStyle style) =>
        figure.Replace($"{style.Culture.NumberFormat.NumberDecimalSeparator}0 ", " ", StringComparison.Ordinal);

    /// <summary>A reserve with its sign; one that nobody could use up is not told to the last figure.</summary>
    public static string ReserveOf(Ratio reserve, TextStyle style) =>
        reserve.Percent > MaximumReserve ? $"over {style.Change(Ratio.FromPercent(MaximumReserve))}" : style.Change(reserve);

    /// <summary>A lambda, for instance <c>0.832</c>.</summary>
    public static string Lambda(double lambda, TextStyle style) => style.Number(lambda, "0.000");

    /// <summary>What an input may be; a factor with the sign of one.</summary>
    public static string Text(UncertainInput input, IQuantity value, TextStyle style) => input.IsFactor ? $"× {Text(value, style)}" : Text(value, style);

    /// <summary>An input and its ends, for instance <c>BSFC, 299 to 331 g/kWh</c> or <c>injector flow × 96.4 to 103.6 %</c>.</summary>
    public static string Ends(TornadoBar bar, TextStyle style) => $"{bar.Input.Name}{(bar.Input.IsFactor ? " ×" : ",")} {Range(bar.Low, bar.High, style)}";

    /// <summary>Two values with the unit once, for instance <c>299 to 331 g/kWh</c>.</summary>
    private static string Range(IQuantity low, IQuantity high, TextStyle style)
    {
        string unit = $" {Unit(low, style)}";
        string from = Text(low, style);
        return $"{(from.EndsWith(unit, StringComparison.Ordinal) ? from[..^unit.Length] : from)} to {Text(high, style)}";
    }

    /// <summary>An interval, its ends rounded outward, for instance <c>95.1 to 96.9 %</c>.</summary>
    public static string Interval((Ratio Minimum, Ratio Maximum) range, TextStyle style, string kind) =>
        $"{style.Write(range.Minimum, $"{kind}:down").Replace(" %", "", StringComparison.Ordinal)} to {style.Write(range.Maximum, $"{kind}:up")}";

    /// <summary>A value on an axis as a label writes it: as many decimals as can be told apart over the span shown.</summary>
    public static string Label(double value, double span, TextStyle style)
    {
        const double Steps = 50;
        int decimals = span > 0 ? Math.Clamp((int)Math.Ceiling(Math.Log10(Steps / span)), 0, 6) : 1;
        return style.Number(value, $"N{decimals}");
    }

    private const double MaximumReserve = 500;

    /// <summary>A ratio that is not told in per cent, as lambda.</summary>
    private static bool IsPlain(Ratio ratio) => ratio.Unit == UnitsNet.Units.RatioUnit.DecimalFraction;

    private static NotSupportedException Unforeseen(IQuantity quantity) =>
        new($"No unit is chosen for showing {quantity.QuantityInfo.Name}. Add it here.");
}
