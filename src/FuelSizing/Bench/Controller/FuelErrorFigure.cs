using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// How far the fuel of a pulse is off at one differential pressure, where flow and dead time are typed for the reference differential: with a controller that does not correct for rail pressure, and
/// with one that does. More than nothing is rich, less is lean.
/// </summary>
/// <remarks>
/// At the reference itself the error is none, and the interval is what flow and dead time together leave open in fuel: <c>h² = h_s² + (h_o/τ)² − 2 r h_s h_o/τ + h_c²</c>, with <c>τ</c> (s): open time,
/// <c>h_s</c> (1) and <c>h_o</c> (s): half the intervals of slope and offset by scatter, <c>r</c> (1): their correlation, <c>h_c</c> (1): calibration in common. Derived from
/// <c>m = s (t − t_o)</c> by its first derivatives.
/// </remarks>
public sealed class FuelErrorFigure : IReadable
{
    internal FuelErrorFigure(Pressure differential, ElectricPotential voltage, Duration pulse, Statement basis, double? error = null, double? corrected = null, double? interval = null)
    {
        (Differential, Voltage, Pulse, Basis) = (differential, voltage, pulse, basis);
        Error = Share(error);
        CorrectedError = Share(corrected);
        (Minimum, Maximum) = (Share(error - interval), Share(error + interval));
    }

    /// <summary>Across the injector.</summary>
    public Pressure Differential { get; }

    /// <summary>At the injector's driver.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Commanded pulse, dead time included.</summary>
    public Duration Pulse { get; }

    /// <summary>Fuel delivered over fuel wanted, less one, with a controller that does not correct for rail pressure; none where it cannot be said.</summary>
    public Ratio? Error { get; }

    /// <summary>Lower end of the interval of 95 % that flow and dead time leave; at the reference only, and where they were weighed.</summary>
    public Ratio? Minimum { get; }

    /// <summary>Upper end.</summary>
    public Ratio? Maximum { get; }

    /// <summary>
    /// The same with a controller that corrects: flow by the square root of pressure from the reference, dead time by the table over pressure. What is left is how far the injector departs from the
    /// root; none where it cannot be said.
    /// </summary>
    public Ratio? CorrectedError { get; }

    /// <summary>What the figure rests on, or why there is none.</summary>
    public Statement Basis { get; }

    /// <summary>The error, as a code with its figures.</summary>
    public Statement Text => (Error, CorrectedError, Minimum, Maximum) switch
    {
        ({ } error, _, { } low, { } high) => Statement.Of(
            "controller.fuel-interval",
            $"{error.Percent:+0.0;−0.0;0.0} % of fuel ({low.Percent:+0.0;−0.0;0.0} % to {high.Percent:+0.0;−0.0;0.0} %) at {Differential}, {Pulse}: {Basis}"),
        ({ } error, { } corrected, _, _) => Statement.Of(
            "controller.fuel-error",
            $"{error.Percent:+0.0;−0.0;0.0} % of fuel without pressure correction, {corrected.Percent:+0.0;−0.0;0.0} % with it, at {Differential}, {Pulse}: {Basis}"),
        _ => Statement.Of("controller.fuel-error-none", $"the error of fuel at {Differential}, {Pulse} cannot be said: {Basis}"),
    };

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The error.</summary>
    /// <returns>For instance <c>+14.2 % of fuel without pressure correction, 0.0 % with it, at 400 kPa, 5.00 ms: by flow and dead time there</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static Ratio? Share(double? share) => share is { } known ? Ratio.FromDecimalFractions(known) : null;
}
