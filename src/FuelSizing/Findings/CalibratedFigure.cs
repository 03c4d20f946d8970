using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A figure as a run calibrates it.</summary>
public sealed record CalibratedFigure : IReadable
{
    internal CalibratedFigure(
        CalibratedQuantity quantity, double planned, double value, double standardError, string unit, Statement? reason)
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
    public bool IsDetermined => Reason is null;

    /// <summary>Why it does not; none where it does.</summary>
    public Statement? Reason { get; }

    /// <summary>Lower end of the 95 % range.</summary>
    public double Minimum => Value - (1.96 * StandardError);

    /// <summary>Upper end of the 95 % range.</summary>
    public double Maximum => Value + (1.96 * StandardError);

    /// <summary>The figure, as a code with its numbers.</summary>
    public Statement Text => IsDetermined
        ? Statement.Of("run.calibrated", $"{Name}: {Of(Value)} ± {Of(StandardError)}, planned {Of(Planned)}")
        : Statement.Of("run.not-calibrated", $"{Name}: {Of(Planned)} as planned; {Reason}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    private string Name => Quantity switch
    {
        CalibratedQuantity.BrakeSpecificFuelConsumption => "BSFC",
        CalibratedQuantity.VolumetricEfficiency => "factor on volumetric efficiency",
        CalibratedQuantity.PumpFlow => "factor on the pump's flow",
        _ => "regulator gain",
    };

    private Statement Of(double value) => Quantity == CalibratedQuantity.BrakeSpecificFuelConsumption
        ? Statement.Of("run.consumption", $"{BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(value):consumption-estimate}")
        : Statement.Of("run.factor", $"{value:0.000}");
}
