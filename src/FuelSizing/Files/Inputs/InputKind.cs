using System.Globalization;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A kind of quantity that an input may be, and how a person types it.</summary>
/// <param name="Word">The quantity with its article.</param>
/// <param name="Examples">Values as people type them.</param>
/// <param name="AnyUnit">One of its units, which says the enumeration of them.</param>
/// <param name="Read">The quantity of a number and a unit; none where it is no unit of it.</param>
/// <param name="Text">Number and unit, to the last bit.</param>
internal sealed record InputKind(
    string Word, string Examples, Enum AnyUnit, Func<string, string, IQuantity?> Read, Func<IQuantity, string> Text)
{
    /// <summary>Every kind.</summary>
    public static IReadOnlyList<InputKind> All { get; } =
    [
        Of("a pressure", "8 psi, 0.55 bar or 55 kPa", Measures.Pressure),
        Of("a volume flow", "360 mL/min or 140 L/h", Measures.Flow),
        Of("a mass flow", "118 g/s or 36 lb/h", Measures.MassFlow),
        Of("a time", "1.6 ms", Measures.Time),
        Of("a voltage", "13.5 V", Measures.Voltage),
        Of("a current", "15 A", Measures.Current),
        Of("a resistance", "5 mΩ", Measures.Resistance),
        Of("a density", "684 kg/m³", Measures.Density),
        Of("a share", "85 %", Measures.Share),
        Of("a volume", "2.4 L or 146 cu in", Measures.Volume),
        Of("a mass", "12.4 g", Measures.Mass),
        Of("an engine speed", "6800 rpm", Measures.Speed),
        Of("a power", "132 kW or 177 hp", Measures.Power),
        Of("a temperature", "35 °C or 95 °F", Measures.Temperature),
        Of("a length", "8 mm, 5/16 in or 14 ft", Measures.Length),
        Of("an area", "2.5 mm²", Measures.Area),
        Of("a heating value", "44 MJ/kg", Measures.HeatingValue),
        Of("an expansion", "0.0011 1/K", Measures.Expansion),
        Of("a kinematic viscosity", "0.6 cSt", Measures.KinematicViscosity),
        Of("a dynamic viscosity", "0.45 mPa·s", Measures.DynamicViscosity),
        Of("a specific fuel consumption", "320 g/kWh or 0.52 lb/hp·h", Measures.Consumption),
    ];

    /// <summary>The kind of which a unit is one.</summary>
    public static InputKind? Of(Enum unit) => All.FirstOrDefault(kind => kind.AnyUnit.GetType() == unit.GetType());

    /// <summary>How a unit is written.</summary>
    public static string TextOf(Enum unit) => Of(unit) is { } kind ? kind.Text(Quantity.From(1, unit)).Split(' ', 2)[1] : unit.ToString();

    /// <summary>The kinds of which a text is a unit.</summary>
    public static IEnumerable<InputKind> ThatKnow(string unit) => All.Where(kind => kind.TryRead("1", unit) is not null);

    /// <summary>The quantity of a number and a unit; none where it is no unit of it, or far too large.</summary>
    public IQuantity? TryRead(string number, string unit)
    {
        try
        {
            return Read(number, unit);
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    /// <summary>The quantity of a number and a unit; none where it is no unit of it, or far too large.</summary>
    public IQuantity? TryRead(double number, string unit) => TryRead(number.ToString("R", CultureInfo.InvariantCulture), unit);

    private static InputKind Of<T>(string word, string examples, Measure<T> measure)
        where T : struct, IQuantity =>
        new(word, examples, default(T).Unit, (number, unit) => measure.Read(number, unit), quantity => measure.Text((T)quantity));
}
