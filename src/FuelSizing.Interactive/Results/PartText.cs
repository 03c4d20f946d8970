using FuelSizing.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Interactive;

/// <summary>Words and figures of parts that a style alone does not settle.</summary>
internal static class PartText
{
    /// <summary>A statement, a point or anything else in a style; what has no style of its own as it is.</summary>
    public static string Say(object thing, TextStyle style) => thing is IReadable readable ? readable.In(style) : thing.ToString()!;

    /// <summary>A diameter or a roughness with so many decimals, for instance <c>0.0015 mm</c>.</summary>
    public static string Bore(Length bore, int decimals, TextStyle style) =>
        $"{style.Number(style.Units.Bore.ValueOf(bore), $"N{decimals}")} {style.Units.Bore.Unit}";

    /// <summary>A cost in whatever money it was given, for instance <c>120</c>; a dash if there is none.</summary>
    public static string Cost(decimal? cost, TextStyle style) => cost is { } known ? style.Number((double)known, "N0") : "–";

    /// <summary>A difference of temperature or pressure takes no sign of its own here: ± before the figure.</summary>
    public static string Within(string figure) => $"±{figure}";

    /// <summary>Any quantity of a margin, a remedy or an uncertain input.</summary>
    public static string Of(IQuantity? quantity, TextStyle style) => quantity switch
    {
        null => CircuitText.Unknown,
        VolumeFlow flow => style.PumpFlow(flow),
        Duration time => style.Of(time),
        Length bore => style.Bore(bore),
        Area area => style.Of(area),
        Power power => style.Of(power),
        RotationalSpeed speed => style.Of(speed),
        ElectricCurrent current => style.Of(current),
        ElectricResistance resistance => style.Of(resistance),
        Ratio { Unit: RatioUnit.DecimalFraction } ratio => style.DutyCycle(ratio),
        _ => OutputFigures.Text(quantity, style),
    };
}
