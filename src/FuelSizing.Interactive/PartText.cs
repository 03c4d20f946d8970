using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Interactive;

/// <summary>Figures of parts that <see cref="Readable"/> has no word for.</summary>
/// <remarks>Bores, wires and displacement stay in mm, mm² and L in both styles, as sheets state them.</remarks>
internal static class PartText
{
    private static bool IsMetric => DisplayUnits.Style == UnitStyle.Metric;

    /// <summary>A pure number with so many decimals, for instance <c>0.82</c>.</summary>
    public static string Number(double value, int decimals = 2) =>
        value.ToString($"N{decimals}", CultureInfo.InvariantCulture).Replace('-', '−');

    /// <summary>A count, for instance <c>12,400</c>.</summary>
    public static string Count(long count) => count.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>A displacement, for instance <c>2.40 L</c>.</summary>
    public static string Of(Volume volume) => $"{Number(volume.Liters)} L";

    /// <summary>A bore, a diameter or a roughness, for instance <c>8.0 mm</c>.</summary>
    public static string Bore(Length bore, int decimals = 1) => $"{Number(bore.Millimeters, decimals)} mm";

    /// <summary>A mean velocity, for instance <c>0.84 m/s</c>.</summary>
    public static string Of(Speed speed) => IsMetric ? $"{Number(speed.MetersPerSecond)} m/s" : $"{Number(speed.FeetPerSecond)} ft/s";

    /// <summary>A torque, for instance <c>212 N·m</c>.</summary>
    public static string Of(Torque torque) => $"{Number(ValueOf(torque), 0)} {TorqueUnit}";

    /// <summary>The unit of a torque.</summary>
    public static string TorqueUnit => IsMetric ? "N·m" : "lbf·ft";

    /// <summary>A torque's number before that unit.</summary>
    public static double ValueOf(Torque torque) => IsMetric ? torque.NewtonMeters : torque.PoundForceFeet;

    /// <summary>A dynamic viscosity, for instance <c>0.52 mPa·s</c>.</summary>
    public static string Of(DynamicViscosity viscosity) => $"{Number(viscosity.MillipascalSeconds)} mPa·s";

    /// <summary>A kinematic viscosity, for instance <c>0.70 mm²/s</c>.</summary>
    public static string Of(KinematicViscosity viscosity) => $"{Number(viscosity.SquareMetersPerSecond * 1e6)} mm²/s";

    /// <summary>A resistivity, for instance <c>17.2 nΩ·m</c>.</summary>
    public static string Of(ElectricResistivity resistivity) => $"{Number(resistivity.NanoohmMeters, 1)} nΩ·m";

    /// <summary>A thermal expansion, for instance <c>0.00120 1/K</c>.</summary>
    public static string Of(CoefficientOfThermalExpansion expansion) =>
        IsMetric ? $"{Number(expansion.PerKelvin, 5)} 1/K" : $"{Number(expansion.PerDegreeFahrenheit, 5)} 1/°F";

    /// <summary>A length of time on a log, for instance <c>12.40 s</c>.</summary>
    public static string Seconds(Duration time) => $"{Number(time.Seconds)} s";

    /// <summary>A cost in whatever money it was given, for instance <c>120</c>; a dash if there is none.</summary>
    public static string Cost(decimal? cost) => cost?.ToString("N0", CultureInfo.InvariantCulture) ?? "–";

    /// <summary>A difference of temperature or pressure takes no sign of its own here: ± before the figure.</summary>
    public static string Within(string figure) => $"±{figure}";

    /// <summary>Any quantity of a margin, a remedy or an uncertain input.</summary>
    public static string Of(IQuantity? quantity) => quantity switch
    {
        null => CircuitText.Unknown,
        VolumeFlow flow => Readable.PumpFlow(flow),
        Duration time => Readable.Of(time),
        Length bore => Bore(bore),
        Area area => Readable.Of(area),
        Power power => Readable.Of(power),
        RotationalSpeed speed => Readable.Of(speed),
        ElectricCurrent current => Readable.Of(current),
        ElectricResistance resistance => Readable.Of(resistance),
        Ratio { Unit: RatioUnit.DecimalFraction } ratio => Readable.DutyCycle(ratio),
        _ => OutputFigures.Text(quantity),
    };
}
