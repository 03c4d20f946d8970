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
    public static DisplayUnit<Pressure> Pressure => Units.Pressure;

    /// <summary>Boost.</summary>
    public static DisplayUnit<Pressure> Boost => Units.Boost;

    /// <summary>A pump's or a line's flow.</summary>
    public static DisplayUnit<VolumeFlow> PumpFlow => Units.PumpFlow;

    /// <summary>An injector's flow: mL/min in both styles.</summary>
    public static DisplayUnit<VolumeFlow> InjectorFlow => Units.InjectorFlow;

    /// <summary>Air or fuel by mass.</summary>
    public static DisplayUnit<MassFlow> MassFlow => Units.MassFlow;

    /// <summary>An engine's power.</summary>
    public static DisplayUnit<Power> Power => Units.Power;

    /// <summary>Temperature.</summary>
    public static DisplayUnit<Temperature> Temperature => Units.Temperature;

    /// <summary>A liquid's density.</summary>
    public static DisplayUnit<Density> Density => Units.Density;

    /// <summary>Heating value.</summary>
    public static DisplayUnit<SpecificEnergy> HeatingValue => Units.HeatingValue;

    /// <summary>Specific fuel consumption.</summary>
    public static DisplayUnit<BrakeSpecificFuelConsumption> Consumption => Units.Consumption;

    /// <summary>A length of line or wire.</summary>
    public static DisplayUnit<Length> Length => Units.Length;

    private static FigureUnits Units => Style == UnitStyle.Metric ? FigureUnits.Metric : FigureUnits.UsCustomary;
}
