using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// Figures for a controller that takes no flow as large as the injectors have: a share of the flow is typed and the controller's air is scaled by the same share, so that pulses stay right. Its load,
/// torque and air figures are then false by that share, and tables over load are read at a false load.
/// </summary>
/// <remarks>
/// <para>Derivation. A controller that calculates commands <c>t = t_d + m_a t_c/(λ(L) A N ρ Q)</c>, with air <c>m_a</c>, load <c>L</c> in proportion to it, target lambda <c>λ(L)</c>, air–fuel ratio
/// <c>A</c>, <c>N</c> injectors of flow <c>Q</c>. With <c>k Q</c> in its data and air figures (volumetric efficiency, the meter's transfer and its end) scaled by <c>k</c> it believes in <c>k m_a</c> and
/// <c>k L</c>, and commands <c>t′ = t_d + (t − t_d) · λ(L)/λ(k L)</c>: the pulse is exact, dead time included, once the load axis of the target is scaled by <c>k</c> too, or where the target is the same at
/// both loads. Dead time is not scaled.</para>
/// <para>Whatever else goes with air or load is false by <c>k − 1</c>: load, torque by air, air and fuel flow as shown or logged, limits by them. The ignition table is read at <c>k L</c>: at less load
/// most tables hold more advance, and an engine knocks by it. Scale the load axis of every table, or do not scale the flow.</para>
/// </remarks>
public sealed class FlowScaling : IReadable
{
    // Where nobody gave a target: from part load to some boost.
    private static readonly double[] DefaultLoads = [0.4, 0.8, 1.2, 1.6];

    private FlowScaling(ControllerFigures figures, VolumeFlow largest, double? factor, TargetLambda? target)
    {
        (Figures, Largest, Target) = (figures, largest, target);
        if (factor is not { } share)
        {
            Lookups = [];
            return;
        }

        Factor = Ratio.FromDecimalFractions(share);
        Flow = figures.ReferenceFlow.Flow * share;
        MassFlow = figures.ReferenceFlow.MassFlow * share;
        if (!IsNeeded)
        {
            Lookups = [];
            return;
        }

        ReferenceInstead = figures.Reference * (share * share);
        double[] loads = target is null ? DefaultLoads : [.. target.Points.Select(point => point.Load.DecimalFractions).Where(load => load > 0)];
        Lookups = Array.AsReadOnly([.. loads.Select(load => new LoadLookup(load, share, target))]);
    }

    /// <summary>What is scaled.</summary>
    public ControllerFigures Figures { get; }

    /// <summary>The largest flow that the controller takes.</summary>
    public VolumeFlow Largest { get; }

    /// <summary>The controller's target lambda over load; none where it was not given.</summary>
    public TargetLambda? Target { get; }

    /// <summary>By what the flow and the controller's air are multiplied, at most 1; none where the flow itself is not known.</summary>
    public Ratio? Factor { get; }

    /// <summary>False where the controller takes the flow as it is.</summary>
    public bool IsNeeded => Factor is { } factor && factor.DecimalFractions < 1;

    /// <summary>The flow to type, by volume of the fuel in use.</summary>
    public VolumeFlow? Flow { get; }

    /// <summary>The same by mass.</summary>
    public MassFlow? MassFlow { get; }

    /// <summary>By what the controller's load, torque, air and fuel figures are then off: less than nothing, they are low.</summary>
    public Ratio? Falsified => Factor is { } factor ? factor - Ratio.FromDecimalFractions(1) : null;

    /// <summary>
    /// With a controller that corrects for rail pressure and takes the differential pressure of its flow: the one at which the injectors have just the largest flow by the square-root law. Typed with
    /// that flow it falsifies nothing; none where nothing is to be scaled.
    /// </summary>
    public Pressure? ReferenceInstead { get; }

    /// <summary>The false load at some loads, and the target lambda that is read there.</summary>
    public IReadOnlyList<LoadLookup> Lookups { get; }

    /// <summary>Factor, flow and what it falsifies, as a code with its figures.</summary>
    public Statement Text => (Factor, Flow) is not ({ } factor, { } flow)
        ? Statement.Of("controller.scaling-unknown", $"cannot be said: {Figures.ReferenceFlow}")
        : !IsNeeded ? Statement.Of("controller.scaling-not-needed", $"type {flow.MillilitersPerMinute:N1} mL/min as it is: the controller takes up to {Largest.MillilitersPerMinute:N1} mL/min")
        : Statement.Of(
            "controller.scaling",
            $"type {flow.MillilitersPerMinute:N1} mL/min, {factor.Percent:0.0} % of the flow, and scale the controller's air by as much; its load, torque, air and fuel figures are then {-Falsified!.Value.Percent:0.0} % low, dead times stay as they are");

    /// <summary>What becomes dangerous by it; none where nothing is to be scaled.</summary>
    public Statement? Caution => IsNeeded
        ? Statement.Of(
            "controller.scaling-caution",
            $"Ignition, target lambda, boost and limits are read at {Factor!.Value.Percent:0.0} % of the load. At less load ignition tables hold more advance: the engine may knock. Scale the load axis of every table by the same factor before the engine runs; torque figures that another unit uses stay false.")
        : null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Factor, flow and what it falsifies.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>The controller's table of volumetric efficiency with its air scaled, as it has to be typed.</summary>
    /// <param name="table">As it is right, for the engine.</param>
    /// <returns>The table times the factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A scaled efficiency is under 20 %.</exception>
    /// <exception cref="InvalidOperationException">The factor is not known.</exception>
    public VolumetricEfficiency TableFor(VolumetricEfficiency table)
    {
        ArgumentNullException.ThrowIfNull(table);
        double factor = Known;
        return VolumetricEfficiency.Of(
            [.. table.Points.Select(point => (point.Speed, VolumetricEfficiency.Within(point.Efficiency * factor, nameof(table))))]);
    }

    /// <summary>The controller's target lambda with its load axis scaled, so that every load reads its own lambda again.</summary>
    /// <param name="target">As it is right, over true load.</param>
    /// <returns>The table over the load that the controller believes in.</returns>
    /// <exception cref="InvalidOperationException">The factor is not known.</exception>
    public TargetLambda TargetFor(TargetLambda target)
    {
        ArgumentNullException.ThrowIfNull(target);
        double factor = Known;
        return TargetLambda.Of([.. target.Points.Select(point => (point.Load * factor, point.Lambda))]);
    }

    /// <summary>What the controller takes for true once the scaled figures are typed.</summary>
    /// <param name="target">The target as it is typed: by <see cref="TargetFor"/> where its load axis is scaled.</param>
    /// <param name="correctsForRailPressure">True if it corrects for rail pressure.</param>
    /// <returns>The data; the air is to be scaled apart, by <see cref="TableFor"/>.</returns>
    /// <exception cref="InvalidOperationException">A figure that it needs is not known; the message says why.</exception>
    public ControllerData DataFor(TargetLambda target, bool correctsForRailPressure = false) => Figures.DataFor(target, correctsForRailPressure, Known);

    internal static FlowScaling Of(ControllerFigures figures, VolumeFlow largest, TargetLambda? target) =>
        new(figures, largest, figures.ReferenceFlow.Flow is { } flow ? Math.Min(1, largest / flow) : null, target);

    private double Known => Factor?.DecimalFractions ?? throw new InvalidOperationException($"The factor {Text}.");
}

/// <summary>What a controller with a scaled flow reads at a load.</summary>
public sealed class LoadLookup : IReadable
{
    internal LoadLookup(double load, double factor, TargetLambda? target)
    {
        (Load, Believed) = (Ratio.FromDecimalFractions(load), Ratio.FromDecimalFractions(load * factor));
        (Lambda, Read) = (target?.AtLoad(load), target?.AtLoad(load * factor));
    }

    /// <summary>The true load.</summary>
    public Ratio Load { get; }

    /// <summary>The load that the controller believes in, at which it reads every table.</summary>
    public Ratio Believed { get; }

    /// <summary>Target lambda of the true load; none without a target.</summary>
    public double? Lambda { get; }

    /// <summary>Target lambda that is read, and that the engine then runs on, where the load axis is not scaled.</summary>
    public double? Read { get; }

    /// <summary>By what the mixture is off by it: more than nothing is lean.</summary>
    public Ratio? Error => Read / Lambda is { } share ? Ratio.FromDecimalFractions(share - 1) : null;

    /// <summary>Loads and lambdas, as a code with its figures.</summary>
    public Statement Text => (Lambda, Read) is ({ } lambda, { } read)
        ? Statement.Of("controller.lookup-lambda", $"a load of {Load} is read as {Believed}: lambda {read:0.000} instead of {lambda:0.000}")
        : Statement.Of("controller.lookup", $"a load of {Load} is read as {Believed}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Loads and lambdas.</summary>
    /// <returns>For instance <c>a load of 150 % is read as 94 %: lambda 0.880 instead of 0.820</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
