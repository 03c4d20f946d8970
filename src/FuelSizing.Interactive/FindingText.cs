using FuelSizing.Findings;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Figures that a run is told by, which carry their unit as a word, in the units of the day.</summary>
internal static class FindingText
{
    /// <summary>A figure, for instance <c>−3.4 kPa</c>, <c>331.2 g/kWh</c> or <c>1.012</c>.</summary>
    public static string Figure(double value, string unit) => unit switch
    {
        "kPa" => Readable.PressureLoss(UnitsNet.Pressure.FromKilopascals(value)),
        "g/kWh" => Consumption(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(value)),
        "1" => Unsigned(PartText.Number(value, 3)),
        _ => $"{Unsigned(PartText.Number(value, 1))} {unit}",
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
    public static string ByRun(CalibratedFigure figure) => Figure(figure.IsDetermined ? figure.Value : figure.Planned, figure.Unit);

    /// <summary>Its standard error; empty where the run does not say.</summary>
    public static string Error(CalibratedFigure figure) => figure.IsDetermined ? PartText.Within(Figure(figure.StandardError, figure.Unit)) : "";

    /// <summary>Where it comes from.</summary>
    public static string Source(CalibratedFigure figure) => figure.IsDetermined ? "by the run" : $"as planned; {figure.Reason}";

    private static string Consumption(BrakeSpecificFuelConsumption consumption) =>
        $"{PartText.Number(DisplayUnits.Consumption.ValueOf(consumption), DisplayUnits.Style == UnitStyle.Metric ? 1 : 3)} {DisplayUnits.Consumption.Unit}";

    // A rounded zero carries no sign.
    private static string Unsigned(string digits) => digits.Any(c => c is >= '1' and <= '9') ? digits : digits.TrimStart('−');
}
