using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>How the charge reaches the manifold: drawn, or compressed and perhaps cooled.</summary>
public sealed record Induction
{
    private static readonly Identity<Induction> _identity = new Identity<Induction>()
        .Value(induction => induction.Drive)
        .Number(induction => induction.CompressorEfficiency.DecimalFractions)
        .Number(induction => induction.CoolerEffectiveness.DecimalFractions)
        .Number(induction => induction.CoolerPressureLoss.Pascals)
        .Number(induction => induction.DriveEfficiency.DecimalFractions)
        .Number(induction => induction.CoolantTemperature?.Kelvins ?? 0);

    private Induction(
        CompressorDrive drive,
        Ratio efficiency,
        Ratio effectiveness,
        Pressure coolerLoss,
        Ratio mechanicalEfficiency,
        Temperature? coolant = null)
    {
        CoolantTemperature = coolant;
        Drive = drive;
        CompressorEfficiency = efficiency;
        CoolerEffectiveness = effectiveness;
        CoolerPressureLoss = coolerLoss;
        DriveEfficiency = mechanicalEfficiency;
    }

    /// <summary>No compressor: the manifold is never above ambient pressure.</summary>
    public static Induction NaturallyAspirated { get; } =
        new(CompressorDrive.None, Ratio.FromPercent(100), Ratio.Zero, Pressure.Zero, Ratio.FromPercent(100));

    /// <summary>What turns the compressor.</summary>
    public CompressorDrive Drive { get; }

    /// <summary>Isentropic efficiency of the compressor.</summary>
    public Ratio CompressorEfficiency { get; }

    /// <summary>Effectiveness of the charge cooler: temperature drop ÷ the maximum possible; zero without one.</summary>
    public Ratio CoolerEffectiveness { get; }

    /// <summary>
    /// Temperature of what cools the charge, the water of its own circuit for instance; none where that is the ambient air, whatever its
    /// temperature.
    /// </summary>
    public Temperature? CoolantTemperature { get; }

    /// <summary>Pressure lost between compressor and manifold.</summary>
    public Pressure CoolerPressureLoss { get; }

    /// <summary>Mechanical efficiency of the belt drive.</summary>
    public Ratio DriveEfficiency { get; }

    /// <summary>A compressor turned by the exhaust.</summary>
    /// <param name="compressorEfficiency">Isentropic, 30 to 90 %.</param>
    /// <param name="coolerEffectiveness">0 (no cooler) to 95 %.</param>
    /// <param name="coolerPressureLoss">Between compressor and manifold, 0 to 50 kPa.</param>
    /// <returns>The induction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Induction Turbocharged(
        Ratio compressorEfficiency, Ratio coolerEffectiveness, Pressure coolerPressureLoss) =>
        Compressed(
            CompressorDrive.ExhaustTurbine,
            compressorEfficiency,
            coolerEffectiveness,
            coolerPressureLoss,
            Ratio.FromPercent(100));

    /// <summary>A compressor turned by a belt from the crank; its drive power is taken from the crank's.</summary>
    /// <param name="compressorEfficiency">Isentropic, 30 to 90 %.</param>
    /// <param name="coolerEffectiveness">0 (no cooler) to 95 %.</param>
    /// <param name="coolerPressureLoss">Between compressor and manifold, 0 to 50 kPa.</param>
    /// <param name="driveEfficiency">Mechanical, belt and gears, 50 to 100 %.</param>
    /// <returns>The induction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Induction BeltDriven(
        Ratio compressorEfficiency, Ratio coolerEffectiveness, Pressure coolerPressureLoss, Ratio driveEfficiency) =>
        Compressed(
            CompressorDrive.Belt,
            compressorEfficiency,
            coolerEffectiveness,
            coolerPressureLoss,
            Guard.Between(
                driveEfficiency,
                Ratio.FromPercent(50),
                Ratio.FromPercent(100),
                "Give the mechanical efficiency of belt and gears.",
                nameof(driveEfficiency)));

    /// <summary>
    /// The same induction with a charge cooler that is cooled by something else than ambient air. Air behind a radiator, and water that has been
    /// warmed, is warmer than that and the charge thinner; iced water makes it denser and asks for more fuel.
    /// </summary>
    /// <param name="coolantTemperature">Where it enters the cooler, −30 to 120 °C.</param>
    /// <returns>The induction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public Induction WithCoolant(Temperature coolantTemperature) => new(
        Drive,
        CompressorEfficiency,
        CoolerEffectiveness,
        CoolerPressureLoss,
        DriveEfficiency,
        WithinCoolant(coolantTemperature, nameof(coolantTemperature)));

    internal static Temperature WithinCoolant(Temperature coolant, string name) => Guard.Between(
        coolant,
        Temperature.FromDegreesCelsius(-30),
        Temperature.FromDegreesCelsius(120),
        "Give the temperature at which air or water enters the charge cooler.",
        name);

    internal static Ratio WithinEfficiency(Ratio efficiency, string name) => Guard.Between(
        efficiency,
        Ratio.FromPercent(30),
        Ratio.FromPercent(90),
        "Read the isentropic efficiency off the compressor's map at the planned flow.",
        name);

    internal static Ratio WithinEffectiveness(Ratio effectiveness, string name) => Guard.Between(
        effectiveness,
        Ratio.Zero,
        Ratio.FromPercent(95),
        "Give the temperature drop ÷ the maximum possible; zero where there is no cooler.",
        name);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Induction? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Drive, compressor and charge cooler.</summary>
    /// <returns>For instance <c>turbocharged, compressor 72 %, charge cooler 70 %</c>.</returns>
    public override string ToString() =>
        Drive == CompressorDrive.None
            ? "naturally aspirated"
            : $"{(Drive == CompressorDrive.Belt ? "belt-driven" : "turbocharged")}, compressor {Readable.Of(CompressorEfficiency)}, charge cooler {Readable.Of(CoolerEffectiveness)}{(CoolantTemperature is { } coolant ? $" at {Readable.Of(coolant)}" : string.Empty)}";

    private static Induction Compressed(
        CompressorDrive drive,
        Ratio compressorEfficiency,
        Ratio coolerEffectiveness,
        Pressure coolerPressureLoss,
        Ratio driveEfficiency) =>
        new(
            drive,
            WithinEfficiency(compressorEfficiency, nameof(compressorEfficiency)),
            WithinEffectiveness(coolerEffectiveness, nameof(coolerEffectiveness)),
            Guard.Between(
                coolerPressureLoss,
                Pressure.Zero,
                Pressure.FromKilopascals(50),
                "Give the loss between compressor and manifold at the planned flow.",
                nameof(coolerPressureLoss)),
            driveEfficiency);
}

/// <summary>What turns the compressor.</summary>
public enum CompressorDrive
{
    /// <summary>There is no compressor: the engine draws its own air.</summary>
    None = 0,

    /// <summary>A turbine in the exhaust: takes no power from the crank (its back-pressure is not modelled).</summary>
    ExhaustTurbine = 1,

    /// <summary>A belt from the crank: the compressor's power is taken from the crank's.</summary>
    Belt = 2,
}

/// <summary>Checks on the gauge pressure in the inlet manifold.</summary>
internal static class ManifoldPressure
{
    /// <summary>The minimum gauge pressure.</summary>
    public static Pressure Minimum { get; } = Pressure.FromKilopascals(-95);

    /// <summary>The maximum gauge pressure.</summary>
    public static Pressure Maximum { get; } = Pressure.FromKilopascals(400);

    /// <summary>The deepest vacuum that the library calculates with, absolute.</summary>
    public static Pressure MinimumAbsolute { get; } = Pressure.FromKilopascals(10);

    // Well within the bounds nothing need be compared in units, which costs as much as solving a point.
    private static readonly (double From, double To) _inside = (Minimum.Pascals + 1, Maximum.Pascals - 1);

    /// <summary>Boost, or vacuum if negative, that a spark-ignition engine may see.</summary>
    public static Pressure Within(Pressure boost, string name) =>
        boost.Pascals is var pascals && pascals > _inside.From && pascals < _inside.To
            ? boost
            : Guard.Between(
                boost,
                Minimum,
                Maximum,
                "Give gauge pressure in the manifold: negative under throttle, positive on boost.",
                name);
}
