using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>A check valve by its opening (cracking) pressure, and what it loses while it passes fuel.</summary>
/// <remarks>
/// <para>It opens where the pressure before it is over that behind it by its opening pressure, and loses at least so much then. What it loses more is known by
/// one drop measured at a flow: Δp = p_o + (Δp_r − p_o) max(x, x²), x = (Q/Q_r) √(ρ/ρ_r), in proportion to the flow below the measured one, where its spring
/// may hold it partly shut, and with the square above; or by a loss coefficient, Δp = p_o + K ρ v²/2, which is that of the fully open valve and reads low while it is
/// partly shut.</para>
/// <para>Shut it lets nothing back: leaking seats are not modelled.</para>
/// </remarks>
/// <example>
/// <code>
/// CheckValve valve = CheckValve.Of(
///     "check valve", Pressure.FromKilopascals(6), VolumeFlow.FromLitersPerHour(180), Pressure.FromKilopascals(14));
/// </code>
/// </example>
public sealed record CheckValve : IFlowLoss
{
    private static readonly Identity<CheckValve> _identity = new Identity<CheckValve>()
        .Value(valve => valve.Name)
        .Number(valve => valve._opening)
        .Number(valve => valve.RatedFlow?.CubicMetersPerSecond)
        .Number(valve => valve.RatedLoss?.Pascals)
        .Number(valve => valve.RatedDensity?.KilogramsPerCubicMeter)
        .Number(valve => valve.LossCoefficient)
        .Number(valve => valve.Bore?.Meters);

    private readonly double _opening;
    private readonly double _ratedFlow;
    private readonly double _ratedLoss;
    private readonly double _ratedDensity;
    private readonly double _coefficient;
    private readonly double _bore;

    private CheckValve(string name, Pressure opening, VolumeFlow? flow, Pressure? loss, Density? density, double? coefficient, Length? bore)
    {
        (Name, OpeningPressure, RatedFlow, RatedLoss, RatedDensity, LossCoefficient, Bore) = (name, opening, flow, loss, density, coefficient, bore);
        _opening = opening.Pascals;
        (_ratedFlow, _ratedLoss, _ratedDensity) = (flow?.CubicMetersPerSecond ?? 0, loss?.Pascals ?? 0, density?.KilogramsPerCubicMeter ?? 0);
        (_coefficient, _bore) = (coefficient ?? 0, bore?.Meters ?? 0);
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Pressure over that behind it at which it opens.</summary>
    public Pressure OpeningPressure { get; }

    /// <summary>Flow at which its drop was measured; none where a loss coefficient is given.</summary>
    public VolumeFlow? RatedFlow { get; }

    /// <summary>Pressure drop at that flow, the opening pressure included; none where a loss coefficient is given.</summary>
    public Pressure? RatedLoss { get; }

    /// <summary>Density of the liquid with which it was measured; none where a loss coefficient is given.</summary>
    public Density? RatedDensity { get; }

    /// <summary>Loss coefficient K of the open valve, on the velocity in <see cref="Bore"/>; none where a drop was measured.</summary>
    public double? LossCoefficient { get; }

    /// <summary>Bore that the loss coefficient belongs to; none where a drop was measured.</summary>
    public Length? Bore { get; }

    /// <summary>A check valve by one measured drop.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="opening">Opening (cracking) pressure, 0 to 500 kPa.</param>
    /// <param name="flow">At which its drop was measured, 1 to 10,000 L/h.</param>
    /// <param name="pressureLoss">Drop at that flow, the opening pressure included: from that to 1,000 kPa.</param>
    /// <param name="ratedDensity">Of the liquid of the measurement, 500 to 1,200 kg/m³; if not given, that of petrol at 20 °C.</param>
    /// <returns>The valve.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CheckValve Of(string name, Pressure opening, VolumeFlow flow, Pressure pressureLoss, Density? ratedDensity = null) => new(
        Guard.Name(name, nameof(name)),
        WithinOpening(opening, nameof(opening)),
        Guard.Between(
            flow,
            VolumeFlow.FromLitersPerHour(1),
            VolumeFlow.FromLitersPerHour(10_000),
            "Give the flow at which the valve's drop was measured.",
            nameof(flow)),
        Guard.Between(
            pressureLoss,
            opening,
            Pressure.FromKilopascals(1000),
            "Give the whole drop at that flow; it is no less than the opening pressure.",
            nameof(pressureLoss)),
        Guard.Between(
            ratedDensity ?? Density.FromKilogramsPerCubicMeter(Fuel.Petrol.DensityAtKelvins(Temperature.FromDegreesCelsius(20).Kelvins)),
            Density.FromKilogramsPerCubicMeter(500),
            Density.FromKilogramsPerCubicMeter(1200),
            "Give the density of the liquid with which the valve was measured.",
            nameof(ratedDensity)),
        null,
        null);

    /// <summary>A check valve by its loss coefficient.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="opening">Opening (cracking) pressure, 0 to 500 kPa.</param>
    /// <param name="lossCoefficient">K of the open valve, on the velocity in the bore, 0 to 1,000.</param>
    /// <param name="bore">That the coefficient belongs to, 1 to 60 mm.</param>
    /// <returns>The valve.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CheckValve OfCoefficient(string name, Pressure opening, double lossCoefficient, Length bore)
    {
        Line.BoreWithin(bore, nameof(bore));
        return new(
            Guard.Name(name, nameof(name)),
            WithinOpening(opening, nameof(opening)),
            null,
            null,
            null,
            Guard.Number(lossCoefficient, 0, 1000, "Give K of the open valve, on the velocity in the bore.", nameof(lossCoefficient)),
            bore);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CheckValve? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, opening pressure and loss.</summary>
    /// <returns>For instance <c>check valve, opens at 6.00 kPa, 14.0 kPa at 180 L/h</c>.</returns>
    public override string ToString() => RatedFlow is { } flow
        ? $"{Name}, opens at {Readable.PressureLoss(OpeningPressure)}, {Readable.PressureLoss(RatedLoss!.Value)} at {Readable.PumpFlow(flow)}"
        : FormattableString.Invariant($"{Name}, opens at {Readable.PressureLoss(OpeningPressure)}, K = {LossCoefficient:0.##}");

    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => LossPascals(flow, density);

    double IFlowLoss.ElevationPascals(double density) => 0;

    /// <inheritdoc cref="IFlowLoss.LossPascals"/>
    internal double LossPascals(double flow, double density)
    {
        if (RatedFlow is not null)
        {
            return CheckValveLoss.Loss<Real>(_opening, _ratedLoss, CheckValveLoss.Share<Real>(flow, _ratedFlow, density, _ratedDensity));
        }

        Real velocity = PipeFlow.Velocity<Real>(flow, _bore);
        return PipeFlow.FittingsLoss<Real>(_coefficient, density, velocity) + _opening;
    }

    private static Pressure WithinOpening(Pressure opening, string name) => Guard.Between(
        opening,
        Pressure.Zero,
        Pressure.FromKilopascals(500),
        "Give the pressure over that behind the valve at which it begins to pass fuel.",
        name);
}
