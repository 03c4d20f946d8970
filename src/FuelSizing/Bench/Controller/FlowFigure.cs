using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>Flow of an injector to type into a controller, at one differential pressure, on the fuel in use; none where it is not known, with the reason.</summary>
public sealed class FlowFigure : IReadable
{
    private readonly double _density;

    internal FlowFigure(Pressure differential, VolumeFlow? flow, Density density, (VolumeFlow Minimum, VolumeFlow Maximum)? interval, Statement basis)
    {
        (Differential, Flow, Basis, _density) = (differential, flow, basis, density.KilogramsPerCubicMeter);
        (MinimumFlow, MaximumFlow) = (interval?.Minimum, interval?.Maximum);
    }

    /// <summary>Differential pressure across the injector.</summary>
    public Pressure Differential { get; }

    /// <summary>By volume of the fuel in use; none where it is not known.</summary>
    public VolumeFlow? Flow { get; }

    /// <summary>Lower end of its interval of 95 %; none where the flow was not weighed at this pressure.</summary>
    public VolumeFlow? MinimumFlow { get; }

    /// <summary>Upper end.</summary>
    public VolumeFlow? MaximumFlow { get; }

    /// <summary>The same by mass.</summary>
    public MassFlow? MassFlow => ByMass(Flow);

    /// <summary>Lower end of its interval by mass.</summary>
    public MassFlow? MinimumMassFlow => ByMass(MinimumFlow);

    /// <summary>Upper end.</summary>
    public MassFlow? MaximumMassFlow => ByMass(MaximumFlow);

    /// <summary>Where the figure and its interval come from, or why there is none.</summary>
    public Statement Basis { get; }

    /// <summary>Flow, interval and where it comes from, as a code with its figures.</summary>
    public Statement Text => (Flow, MinimumFlow, MaximumFlow) switch
    {
        (null, _, _) => Statement.Of("controller.flow-none", $"no flow at {Differential}: {Basis}"),
        ({ } flow, { } low, { } high) => Statement.Of(
            "controller.flow-interval",
            $"{flow.MillilitersPerMinute:N1} mL/min ({low.MillilitersPerMinute:N1} mL/min to {high.MillilitersPerMinute:N1} mL/min), {ByMass(flow)!.Value}, at {Differential}: {Basis}"),
        ({ } flow, _, _) => Statement.Of("controller.flow", $"{flow.MillilitersPerMinute:N1} mL/min, {ByMass(flow)!.Value}, at {Differential}: {Basis}"),
    };

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Flow, interval and where it comes from.</summary>
    /// <returns>For instance <c>446.2 mL/min, 5.52 g/s, at 300 kPa: the injector's description; no interval</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private MassFlow? ByMass(VolumeFlow? flow) => flow is { } known ? UnitsNet.MassFlow.FromKilogramsPerSecond(known.CubicMetersPerSecond * _density) : null;
}
