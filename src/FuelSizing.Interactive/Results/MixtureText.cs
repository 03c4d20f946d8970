using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Figures of a mixture as tables word them.</summary>
internal static class MixtureText
{
    /// <summary>Lambda with three decimals; infinite where nothing is delivered.</summary>
    public static string Lambda(double? lambda, TextStyle style) => lambda switch
    {
        null => CircuitText.Unknown,
        { } none when double.IsInfinity(none) => "no fuel",
        { } known => style.Number(known, "N3"),
    };

    /// <summary>A deviation from the target.</summary>
    public static string Deviation(Ratio? deviation, TextStyle style) => CircuitText.Known(deviation, style.Change);

    /// <summary>What contributes most to the deviation; that the controller is assumed, or that lambda is not known, where it is so.</summary>
    public static string MainCause(DeliveredMixture mixture, TextStyle style) =>
        mixture.Controller is Controllers.IdealController assumed ? PartText.Say(assumed, style)
        : mixture.Lambda is null || double.IsInfinity(mixture.Lambda.Value) ? PartText.Say(mixture, style)
        : mixture.Causes.Count > 0 ? PartText.Say(mixture.Causes[0], style)
        : "–";
}
