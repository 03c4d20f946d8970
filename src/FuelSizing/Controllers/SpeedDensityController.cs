using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>
/// A controller that calculates its air from manifold pressure and speed, up to the pressure at which its sensor or table ends: over that it
/// commands as if there were no more.
/// </summary>
/// <remarks>
/// Air by <see cref="EngineAir.MassFlow{T}"/> with its own table of volumetric efficiency, the displacement of the engine, and the lower of
/// manifold pressure and the end. It knows the charge temperature, unless it was made to believe in one.
/// </remarks>
/// <example>
/// <code>
/// SpeedDensityController controller = SpeedDensityController.Of(data, table, end: Pressure.FromKilopascals(105));
/// Console.WriteLine(controller);
/// </code>
/// </example>
public sealed record SpeedDensityController : CalculatingController
{
    private static readonly Identity<SpeedDensityController> _identity = new Identity<SpeedDensityController>()
        .Value(controller => controller.Data)
        .Value(controller => controller.VolumetricEfficiency)
        .Number(controller => controller.End.Pascals)
        .Number(controller => controller.FixedChargeTemperature?.Kelvins);

    private SpeedDensityController(ControllerData data, VolumetricEfficiency table, Pressure end, Temperature? charge)
        : base(data) =>
        (VolumetricEfficiency, End, FixedChargeTemperature) = (table, end, charge);

    /// <summary>The table that it believes in; beyond its speeds its ends hold.</summary>
    public VolumetricEfficiency VolumetricEfficiency { get; }

    /// <summary>Manifold pressure, absolute, at which its sensor or table ends.</summary>
    public Pressure End { get; }

    /// <summary>The charge temperature that it believes in; none where it measures it.</summary>
    public Temperature? FixedChargeTemperature { get; }

    /// <inheritdoc/>
    public override Statement Text => Statement.Of(
        "controller.speed-density", $"a controller by manifold pressure up to {End} absolute, {Data.Injector.Name} in its data");

    /// <summary>Describes the controller.</summary>
    /// <param name="data">What it takes for true.</param>
    /// <param name="volumetricEfficiency">Its table against speed, referred to manifold density.</param>
    /// <param name="end">Manifold pressure, absolute, at which its sensor or table ends, 10 to 500 kPa.</param>
    /// <param name="fixedChargeTemperature">Where it measures none: the one it believes in, −30 to 120 °C.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SpeedDensityController Of(
        ControllerData data, VolumetricEfficiency volumetricEfficiency, Pressure end, Temperature? fixedChargeTemperature = null)
    {
        ArgumentNullException.ThrowIfNull(volumetricEfficiency);
        return new(
            data,
            volumetricEfficiency,
            ManifoldAbsolute.Within(end, nameof(end)),
            fixedChargeTemperature is { } charge ? Induction.WithinCoolant(charge, nameof(fixedChargeTemperature)) : null);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SpeedDensityController? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<double> ManifoldKnots => base.ManifoldKnots.Append(End.Pascals);

    internal override IEnumerable<double> SpeedKnots => VolumetricEfficiency.BySpeed.Points.Select(point => point.X);

    private protected override (double Air, bool IsAtEnd) AirAt(in ControllerInput at)
    {
        double pressure = Math.Min(at.ManifoldAbsolute, End.Pascals);
        return (
            BelievedAir.From(VolumetricEfficiency, pressure, FixedChargeTemperature?.Kelvins ?? at.ChargeTemperature, at),
            at.ManifoldAbsolute > End.Pascals);
    }
}

/// <summary>The air that a table of volumetric efficiency gives.</summary>
internal static class BelievedAir
{
    /// <summary>kg/s, at a manifold pressure, Pa, and a charge temperature, K; beyond the table's speeds its ends hold.</summary>
    public static double From(VolumetricEfficiency table, double pressure, double temperature, in ControllerInput at)
    {
        Curve bySpeed = table.BySpeed;
        return EngineAir.MassFlow<Real>(
            bySpeed.At(Math.Clamp(at.Speed, bySpeed.First, bySpeed.Last)),
            StandardAir.Density<Real>(pressure, temperature),
            at.Displacement,
            at.Speed,
            at.RevolutionsPerCycle);
    }
}
