using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>The units in which tables, plots and reports are written.</summary>
/// <remarks>
/// One line changes them all: <c>DisplayUnits.Style = UnitStyle.UsCustomary;</c>. Set it once, at the start of a program or in a
/// notebook's first cell: it is one setting for the whole process. Numbers that a program reads are not touched by it, for
/// every quantity carries its own unit. Injectors' flows stay in mL/min and wires in mm² or AWG, as their sheets state them.
/// </remarks>
public static class DisplayUnits
{
    private static volatile int _style;

    /// <summary>The style in which results are written; metric unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not one of the styles.</exception>
    public static UnitStyle Style
    {
        get => (UnitStyle)_style;
        set => _style = (int)Guard.Member(value, "Choose metric or US customary.", nameof(value));
    }

    /// <summary>Rail pressure and everything of its size.</summary>
    public static DisplayUnit<Pressure> Pressure { get; } = new(
        ("kPa", "N0", p => p.Kilopascals, v => UnitsNet.Pressure.FromKilopascals(v)),
        ("psi", "N1", p => p.PoundsForcePerSquareInch, v => UnitsNet.Pressure.FromPoundsForcePerSquareInch(v)));

    /// <summary>Boost.</summary>
    public static DisplayUnit<Pressure> Boost { get; } = new(
        ("bar", "N2", p => p.Bars, v => UnitsNet.Pressure.FromBars(v)),
        ("psi", "N1", p => p.PoundsForcePerSquareInch, v => UnitsNet.Pressure.FromPoundsForcePerSquareInch(v)));

    /// <summary>A pump's or a line's flow.</summary>
    public static DisplayUnit<VolumeFlow> PumpFlow { get; } = new(
        ("L/h", "N0", q => q.LitersPerHour, v => VolumeFlow.FromLitersPerHour(v)),
        ("US gal/h", "N1", q => q.UsGallonsPerHour, v => VolumeFlow.FromUsGallonsPerHour(v)));

    /// <summary>An injector's flow: mL/min in both styles.</summary>
    public static DisplayUnit<VolumeFlow> InjectorFlow { get; } = new(
        ("mL/min", "N0", q => q.MillilitersPerMinute, v => VolumeFlow.FromMillilitersPerMinute(v)),
        ("mL/min", "N0", q => q.MillilitersPerMinute, v => VolumeFlow.FromMillilitersPerMinute(v)));

    /// <summary>Air or fuel by mass.</summary>
    public static DisplayUnit<MassFlow> MassFlow { get; } = new(
        ("g/s", "N1", m => m.GramsPerSecond, v => UnitsNet.MassFlow.FromGramsPerSecond(v)),
        ("lb/h", "N0", m => m.PoundsPerHour, v => UnitsNet.MassFlow.FromPoundsPerHour(v)));

    /// <summary>An engine's power.</summary>
    public static DisplayUnit<Power> Power { get; } = new(
        ("kW", "N0", p => (double)p.Kilowatts, v => UnitsNet.Power.FromKilowatts(v)),
        ("hp", "N0", p => (double)p.MechanicalHorsepower, v => UnitsNet.Power.FromMechanicalHorsepower(v)));

    /// <summary>Temperature.</summary>
    public static DisplayUnit<Temperature> Temperature { get; } = new(
        ("°C", "N0", t => t.DegreesCelsius, v => UnitsNet.Temperature.FromDegreesCelsius(v)),
        ("°F", "N0", t => t.DegreesFahrenheit, v => UnitsNet.Temperature.FromDegreesFahrenheit(v)));

    /// <summary>A liquid's density.</summary>
    public static DisplayUnit<Density> Density { get; } = new(
        ("kg/m³", "N0", d => d.KilogramsPerCubicMeter, v => UnitsNet.Density.FromKilogramsPerCubicMeter(v)),
        ("lb/ft³", "N2", d => d.PoundsPerCubicFoot, v => UnitsNet.Density.FromPoundsPerCubicFoot(v)));

    /// <summary>Heating value.</summary>
    public static DisplayUnit<SpecificEnergy> HeatingValue { get; } = new(
        ("MJ/kg", "N1", e => e.MegajoulesPerKilogram, v => SpecificEnergy.FromMegajoulesPerKilogram(v)),
        ("Btu/lb", "N0", e => e.BtuPerPound, v => SpecificEnergy.FromBtuPerPound(v)));

    /// <summary>Specific fuel consumption.</summary>
    public static DisplayUnit<BrakeSpecificFuelConsumption> Consumption { get; } = new(
        ("g/kWh", "N0", b => b.GramsPerKiloWattHour, v => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(v)),
        ("lb/(hp·h)", "N3", b => b.PoundsPerMechanicalHorsepowerHour, v => BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(v)));

    /// <summary>A length of line or wire.</summary>
    public static DisplayUnit<Length> Length { get; } = new(
        ("m", "0.0", l => l.Meters, v => UnitsNet.Length.FromMeters(v)),
        ("ft", "0.0", l => l.Feet, v => UnitsNet.Length.FromFeet(v)));
}
