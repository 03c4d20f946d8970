using System.Globalization;

namespace FuelSizing.Findings;

/// <summary>A figure as a run calibrates it.</summary>
public sealed record CalibratedFigure
{
    internal CalibratedFigure(
        CalibratedQuantity quantity, double planned, double value, double standardError, string unit, string reason)
    {
        (Quantity, Planned, Value, StandardError, Unit, Reason) = (quantity, planned, value, standardError, unit, reason);
    }

    /// <summary>Which.</summary>
    public CalibratedQuantity Quantity { get; }

    /// <summary>As planned, in <see cref="Unit"/>.</summary>
    public double Planned { get; }

    /// <summary>As calibrated, in <see cref="Unit"/>; as planned where the run does not determine it.</summary>
    public double Value { get; }

    /// <summary>Standard error of the value, in <see cref="Unit"/>; what tolerances and accuracy leave open is in it.</summary>
    public double StandardError { get; }

    /// <summary>g/kWh for BSFC, 1 for a factor and for the gain.</summary>
    public string Unit { get; }

    /// <summary>True if the run determines it.</summary>
    public bool IsDetermined => Reason.Length == 0;

    /// <summary>Why it does not; empty where it does.</summary>
    public string Reason { get; }

    /// <summary>Lower end of the 95 % range.</summary>
    public double Minimum => Value - (1.96 * StandardError);

    /// <summary>Upper end of the 95 % range.</summary>
    public double Maximum => Value + (1.96 * StandardError);

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString()
    {
        string format = Quantity == CalibratedQuantity.BrakeSpecificFuelConsumption ? "0.0" : "0.000";
        string Text(double value) => value.ToString(format, CultureInfo.InvariantCulture);
        string unit = Unit == "1" ? string.Empty : $" {Unit}";
        return IsDetermined
            ? $"{Name}: {Text(Value)} ± {Text(StandardError)}{unit}, planned {Text(Planned)}{unit}"
            : $"{Name}: {Text(Planned)}{unit} as planned; {Reason}";
    }

    private string Name => Quantity switch
    {
        CalibratedQuantity.BrakeSpecificFuelConsumption => "BSFC",
        CalibratedQuantity.VolumetricEfficiency => "factor on volumetric efficiency",
        CalibratedQuantity.PumpFlow => "factor on the pump's flow",
        _ => "regulator gain",
    };
}
