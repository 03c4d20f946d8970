using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>What a flow costs in a line, step by step.</summary>
public sealed class LineLoss
{
    private readonly Line _line;

    internal LineLoss(
        Line line, VolumeFlow flow, in PipeState<Real> state, double elevation, double density, double kinematicViscosity)
    {
        _line = line;
        Flow = flow;
        Velocity = Speed.FromMetersPerSecond(state.Velocity.Value);
        ReynoldsNumber = state.Reynolds;
        Regime = state.Reynolds.Value switch
        {
            0 => FlowRegime.Still,
            <= PipeFriction.TurbulenceOnset => FlowRegime.Laminar,
            < PipeFriction.TurbulenceComplete => FlowRegime.Transitional,
            _ => FlowRegime.Turbulent,
        };
        FrictionFactor = Regime == FlowRegime.Still
            ? null
            : PipeFriction.Factor(state.FrictionNumber, state.Reynolds);
        Straight = Pressure.FromPascals(state.StraightLoss.Value);
        Fittings = Pressure.FromPascals(state.FittingsLoss.Value);
        Elevation = Pressure.FromPascals(elevation);
        Density = Density.FromKilogramsPerCubicMeter(density);
        KinematicViscosity = KinematicViscosity.FromSquareMetersPerSecond(kinematicViscosity);
    }

    /// <summary>The flow asked for.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Mean velocity in the bore.</summary>
    public Speed Velocity { get; }

    /// <summary>Reynolds number, v d/ν.</summary>
    public double ReynoldsNumber { get; }

    /// <summary>How the fuel flows.</summary>
    public FlowRegime Regime { get; }

    /// <summary>Darcy friction factor; none when nothing flows.</summary>
    public double? FrictionFactor { get; }

    /// <summary>Lost along the straight line.</summary>
    public Pressure Straight { get; }

    /// <summary>Lost in the fittings.</summary>
    public Pressure Fittings { get; }

    /// <summary>Lost to flow: straight line and fittings together.</summary>
    public Pressure Friction => Straight + Fittings;

    /// <summary>Lost to the line's rise; below zero where it descends.</summary>
    public Pressure Elevation { get; }

    /// <summary>Lost in all.</summary>
    public Pressure Total => Friction + Elevation;

    /// <summary>Of the fuel at its temperature.</summary>
    public Density Density { get; }

    /// <summary>Of the fuel at its temperature.</summary>
    public KinematicViscosity KinematicViscosity { get; }

    /// <summary>How the loss came about, line by line; written when it is asked for.</summary>
    public Working Working => WorkingIn(TextStyle.Metric);

    /// <summary>The same with figures in a style beside their SI values.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>The working.</returns>
    public Working WorkingIn(TextStyle style)
    {
        Derivation working = new(style);
        PathWorking.Loss(
            working,
            _line,
            string.Empty,
            working.Given("flow", "Q", Flow.CubicMetersPerSecond, "m³/s", style.PumpFlow(Flow), "asked for"),
            working.Given("density of the fuel", "ρ", Density.KilogramsPerCubicMeter, "kg/m³", style.Of(Density), "the fuel, at its temperature"),
            working.Given(
                "kinematic viscosity of the fuel",
                "ν",
                KinematicViscosity.SquareMetersPerSecond,
                "m²/s",
                string.Create(CultureInfo.InvariantCulture, $"{KinematicViscosity.Centistokes:0.000} mm²/s"),
                "the fuel, at its temperature"));
        return working.Of($"{_line.Name}, {style.PumpFlow(Flow)}");
    }

    /// <summary>The loss in one line.</summary>
    /// <returns>For instance <c>3.4 kPa at 118 L/h</c>.</returns>
    public override string ToString() => $"{Readable.PressureLoss(Total)} at {Readable.PumpFlow(Flow)}";
}

/// <summary>How the fuel flows in a line.</summary>
public enum FlowRegime
{
    /// <summary>Not at all.</summary>
    Still,

    /// <summary>In smooth layers, Re up to 2040.</summary>
    Laminar,

    /// <summary>Now smooth, now turbulent, Re 2040 to 4000; the loss is a blend of the two, not a law.</summary>
    Transitional,

    /// <summary>Turbulent, Re of 4000 and more.</summary>
    Turbulent,
}
