using System.Text;
using UnitsNet.Units;

namespace FuelSizing.Logs;

/// <summary>What a unit measures, to tell a unit of another quantity from a text that is none.</summary>
internal enum UnitOf
{
    /// <summary>Time.</summary>
    Time,

    /// <summary>Engine speed.</summary>
    Speed,

    /// <summary>Pressure.</summary>
    Pressure,

    /// <summary>A share.</summary>
    Share,

    /// <summary>Lambda.</summary>
    Lambda,

    /// <summary>Air–fuel ratio by mass.</summary>
    AirFuelRatio,

    /// <summary>Voltage.</summary>
    Voltage,

    /// <summary>Power.</summary>
    Power,

    /// <summary>Torque.</summary>
    Torque,

    /// <summary>Temperature.</summary>
    Temperature,

    /// <summary>Flow by volume.</summary>
    VolumeFlow,

    /// <summary>Flow by mass.</summary>
    MassFlow,
}

/// <summary>A unit as a file's heading or units row writes it, in whichever spelling.</summary>
/// <param name="Of">What it measures.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Reference">For a pressure whether it says gauge or absolute; null where it says neither.</param>
internal readonly record struct WrittenUnit(UnitOf Of, ChannelUnit Unit, PressureReference? Reference)
{
    /// <summary>Spellings without case, blanks, points, brackets and hyphens; a degree sign stands for "deg", u for µ, / for "per".</summary>
    private static readonly (UnitOf Of, ChannelUnit Unit, string Spellings)[] Table =
    [
        (UnitOf.Time, ChannelUnits.Of(DurationUnit.Second), "s sec secs second seconds"),
        (UnitOf.Time, ChannelUnits.Of(DurationUnit.Millisecond), "ms msec msecs millisec millisecond milliseconds"),
        (UnitOf.Time, ChannelUnits.Of(DurationUnit.Microsecond), "us usec usecs microsec microsecond microseconds"),
        (UnitOf.Time, ChannelUnits.Of(DurationUnit.Minute), "min mins minute minutes"),
        (UnitOf.Time, ChannelUnits.Of(DurationUnit.Hour), "h hr hrs hour hours"),
        (UnitOf.Speed, ChannelUnits.Of(RotationalSpeedUnit.RevolutionPerMinute), "rpm r/min rev/min revs/min 1/min min1 revolutions/minute u/min"),
        (UnitOf.Speed, ChannelUnits.Of(RotationalSpeedUnit.RevolutionPerSecond), "rps r/s rev/s revs/s"),
        (UnitOf.Speed, ChannelUnits.Of(RotationalSpeedUnit.RadianPerSecond), "rad/s rad/sec"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Kilopascal), "kpa kilopascal kilopascals kn/m2"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Bar), "bar bars"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Millibar), "mbar mbars millibar millibars"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Hectopascal), "hpa hectopascal hectopascals"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Pascal), "pa pascal pascals n/m2"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Megapascal), "mpa megapascal megapascals n/mm2"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.PoundForcePerSquareInch), "psi lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin lbf/sqin lbs/squareinch pounds/squareinch #/in2"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.InchOfMercury), "inhg inchhg incheshg inchofmercury inchesofmercury \"hg"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.MillimeterOfMercury), "mmhg torr"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.Atmosphere), "atm"),
        (UnitOf.Pressure, ChannelUnits.Of(PressureUnit.KilogramForcePerSquareCentimeter), "kgf/cm2 kg/cm2 kp/cm2"),
        (UnitOf.Share, ChannelUnits.Of(RatioUnit.Percent), "% pct percent %dc %duty dc% duty%"),
        (UnitOf.Share, ChannelUnits.Of(RatioUnit.DecimalFraction), "1 fraction"),
        (UnitOf.Lambda, ChannelUnits.Plain, "1 lambda λ lam la"),
        (UnitOf.AirFuelRatio, new("air-fuel ratio", 1, 0), "afr a/f af air/fuel airfuel airfuelratio air/fuelratio a/fratio afratio :1 kg/kg lambdaafr"),
        (UnitOf.Voltage, ChannelUnits.Of(ElectricPotentialUnit.Volt), "v volt volts vdc vdcs"),
        (UnitOf.Voltage, ChannelUnits.Of(ElectricPotentialUnit.Millivolt), "mv millivolt millivolts mvdc"),
        (UnitOf.Power, ChannelUnits.Of(PowerUnit.Kilowatt), "kw kilowatt kilowatts"),
        (UnitOf.Power, ChannelUnits.Of(PowerUnit.Watt), "w watt watts"),
        (UnitOf.Power, ChannelUnits.Of(PowerUnit.MechanicalHorsepower), "hp bhp whp horsepower"),
        (UnitOf.Power, ChannelUnits.Of(PowerUnit.MetricHorsepower), "ps"),
        (UnitOf.Torque, ChannelUnits.Of(TorqueUnit.NewtonMeter), "nm newtonmeter newtonmeters newtonmetre newtonmetres"),
        (UnitOf.Torque, ChannelUnits.Of(TorqueUnit.PoundForceFoot), "lbft lbsft lbfft ftlb ftlbs ftlbf poundfoot poundfeet footpound footpounds"),
        (UnitOf.Temperature, ChannelUnits.Of(TemperatureUnit.DegreeCelsius), "°c c celsius °celsius centigrade"),
        (UnitOf.Temperature, ChannelUnits.Of(TemperatureUnit.DegreeFahrenheit), "°f f fahrenheit °fahrenheit"),
        (UnitOf.Temperature, ChannelUnits.Of(TemperatureUnit.Kelvin), "k °k kelvin kelvins"),
        (UnitOf.VolumeFlow, ChannelUnits.Of(VolumeFlowUnit.LiterPerHour), "l/h l/hr lph litre/hour litres/hour liter/hour liters/hour"),
        (UnitOf.VolumeFlow, ChannelUnits.Of(VolumeFlowUnit.LiterPerMinute), "l/min lpm litre/minute litres/minute liter/minute liters/minute"),
        (UnitOf.VolumeFlow, ChannelUnits.Of(VolumeFlowUnit.LiterPerSecond), "l/s l/sec"),
        (UnitOf.VolumeFlow, ChannelUnits.Of(VolumeFlowUnit.MilliliterPerMinute), "ml/min cc/min ccm cm3/min cc/minute ml/minute"),
        (UnitOf.VolumeFlow, ChannelUnits.Of(VolumeFlowUnit.UsGallonPerHour), "gal/h gal/hr gph usgal/h usgal/hr gallons/hour usgallons/hour"),
        (UnitOf.MassFlow, ChannelUnits.Of(MassFlowUnit.GramPerSecond), "g/s g/sec grams/second gram/second"),
        (UnitOf.MassFlow, ChannelUnits.Of(MassFlowUnit.KilogramPerHour), "kg/h kg/hr"),
        (UnitOf.MassFlow, ChannelUnits.Of(MassFlowUnit.KilogramPerSecond), "kg/s kg/sec"),
        (UnitOf.MassFlow, ChannelUnits.Of(MassFlowUnit.PoundPerHour), "lb/h lb/hr lbs/h lbs/hr pph pounds/hour"),
        (UnitOf.MassFlow, ChannelUnits.Of(MassFlowUnit.PoundPerMinute), "lb/min lbs/min"),
    ];

    private static readonly ILookup<string, (UnitOf Of, ChannelUnit Unit)> BySpelling = Table
        .SelectMany(row => row.Spellings.Split(' ').Select(spelling => (Spelling: spelling, row.Of, row.Unit)))
        .ToLookup(row => row.Spelling, row => (row.Of, row.Unit), StringComparer.Ordinal);

    // The longer first, for "bar abs" ends in "s" and "psia" in "a".
    private static readonly (string Mark, PressureReference Reference)[] Marks =
    [
        ("absolute", PressureReference.Absolute), ("abs", PressureReference.Absolute),
        ("gauge", PressureReference.Gauge), ("gage", PressureReference.Gauge), ("relative", PressureReference.Gauge), ("rel", PressureReference.Gauge),
        ("a", PressureReference.Absolute), ("g", PressureReference.Gauge),
    ];

    /// <summary>Whether a cell of the units row says nothing: blank, or dashes.</summary>
    public static bool SaysNothing(ReadOnlySpan<char> text) => text.Trim(" \t\u00A0[](){}-–—−\u2010\u2011").IsEmpty;

    /// <summary>Understands a text; a unit of the channel's own quantity goes before one of another that is written alike.</summary>
    public static bool TryFind(Channel channel, string text, out WrittenUnit unit)
    {
        string plain = Plain(text);
        if (TryWhole(channel, plain, null, out unit))
        {
            return true;
        }

        foreach ((string mark, PressureReference reference) in Marks)
        {
            if (plain.EndsWith(mark, StringComparison.Ordinal) && TryWhole(channel, plain[..^mark.Length], reference, out unit) && unit.Of == UnitOf.Pressure)
            {
                return true;
            }

            if (mark.Length > 1 && plain.StartsWith(mark, StringComparison.Ordinal)
                && TryWhole(channel, plain[mark.Length..], reference, out unit) && unit.Of == UnitOf.Pressure)
            {
                return true;
            }
        }

        unit = default;
        return false;
    }

    /// <summary>A text that says gauge or absolute and no unit; null where it does not.</summary>
    public static PressureReference? ReferenceIn(string text)
    {
        string plain = Plain(text);
        foreach ((string mark, PressureReference reference) in Marks)
        {
            if (mark.Length > 1 && plain == mark)
            {
                return reference;
            }
        }

        return null;
    }

    /// <summary>What a channel's units measure.</summary>
    public static UnitOf QuantityOf(Channel channel) => channel switch
    {
        Channel.Time or Channel.InjectorPulse => UnitOf.Time,
        Channel.Speed => UnitOf.Speed,
        Channel.ManifoldAbsolute or Channel.RailGauge => UnitOf.Pressure,
        Channel.DutyCycle => UnitOf.Share,
        Channel.Lambda => UnitOf.Lambda,
        Channel.BatteryVoltage => UnitOf.Voltage,
        Channel.Power => UnitOf.Power,
        Channel.Torque => UnitOf.Torque,
        Channel.FuelTemperature => UnitOf.Temperature,
        Channel.FuelVolumeFlow => UnitOf.VolumeFlow,
        _ => UnitOf.MassFlow,
    };

    private static bool TryWhole(Channel channel, string plain, PressureReference? reference, out WrittenUnit unit)
    {
        UnitOf wanted = QuantityOf(channel);
        foreach ((UnitOf of, ChannelUnit found) in BySpelling[plain].OrderByDescending(one => one.Of == wanted))
        {
            unit = new(of, found, reference);
            return true;
        }

        unit = default;
        return false;
    }

    private static string Plain(string text)
    {
        StringBuilder plain = new();
        foreach (char letter in text.ToLowerInvariant().Replace(" per ", "/", StringComparison.Ordinal))
        {
            switch (letter)
            {
                case '[' or ']' or '(' or ')' or '{' or '}' or '.' or '·' or '⋅' or '∙' or '*' or '_' or '^' or '-' or '–' or '−' or ',':
                    break;
                case 'µ' or 'μ':
                    plain.Append('u');
                    break;
                case '²':
                    plain.Append('2');
                    break;
                case '³':
                    plain.Append('3');
                    break;
                case 'º' or '˚' or '⁰':
                    plain.Append('°');
                    break;
                case '℃':
                    plain.Append("°c");
                    break;
                case '℉':
                    plain.Append("°f");
                    break;
                case '″' or '”':
                    plain.Append('"');
                    break;
                case '\\' or '⁄' or '∕':
                    plain.Append('/');
                    break;
                default:
                    if (!char.IsWhiteSpace(letter))
                    {
                        plain.Append(letter);
                    }

                    break;
            }
        }

        string found = plain.ToString();
        foreach (string degrees in new[] { "degrees", "degree", "degs", "deg" })
        {
            if (found.StartsWith(degrees, StringComparison.Ordinal))
            {
                return $"°{found[degrees.Length..]}";
            }
        }

        return found;
    }
}
