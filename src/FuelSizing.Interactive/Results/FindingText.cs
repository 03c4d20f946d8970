using FuelSizing.Findings;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Figures that a run is told by, which carry their unit as a word, in the units of a style.</summary>
internal static class FindingText
{
    /// <summary>A figure, for instance <c>−3.4 kPa</c>, <c>331.2 g/kWh</c> or <c>1.012</c>.</summary>
    public static string Figure(double value, string unit, TextStyle style) => unit switch
    {
        "kPa" => style.PressureLoss(UnitsNet.Pressure.FromKilopascals(value)),
        "g/kWh" => Consumption(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(value), style),
        "1" => style.Number(value, "N3"),
        _ => $"{style.Number(value, "N1")} {unit}",
    };

    /// <summary>The name of a figure that a run brings up to date.</summary>
    public static string Name(CalibratedQuantity quantity) => quantity switch
    {
        CalibratedQuantity.BrakeSpecificFuelConsumption => "BSFC",
        CalibratedQuantity.VolumetricEfficiency => "Factor on volumetric efficiency",
        CalibratedQuantity.PumpFlow => "Factor on the pump's flow",
        _ => "Regulator's gain",
    };

    /// <summary>The figure by the run; as planned where the run does not say.</summary>
    public static string ByRun(CalibratedFigure figure, TextStyle style) => Figure(figure.IsDetermined ? figure.Value : figure.Planned, figure.Unit, style);

    /// <summary>Its standard error; empty where the run does not say.</summary>
    public static string Error(CalibratedFigure figure, TextStyle style) => figure.IsDetermined ? PartText.Within(Figure(figure.StandardError, figure.Unit, style)) : "";

    /// <summary>Where it comes from.</summary>
    public static string Source(CalibratedFigure figure, TextStyle style) => figure.IsDetermined ? "from the log" : $"as planned; {PartText.Say(figure.Reason!, style)}";

    // One figure more than a consumption by itself: what is compared is a small difference.
    private static string Consumption(BrakeSpecificFuelConsumption consumption, TextStyle style) =>
        $"{style.Number(style.Units.Consumption.ValueOf(consumption), style.Units.Consumption.Format == "N0" ? "N1" : style.Units.Consumption.Format)} {style.Units.Consumption.Unit}";
}
