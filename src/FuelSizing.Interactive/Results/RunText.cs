using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>A recorded run's channels in words and figures.</summary>
internal static class RunText
{
    /// <summary>A channel's name.</summary>
    public static string Name(Channel channel) => channel switch
    {
        Channel.Time => "time",
        Channel.Speed => "engine speed",
        Channel.ManifoldAbsolute => "manifold pressure, absolute",
        Channel.RailGauge => "rail pressure",
        Channel.InjectorPulse => "injector pulse",
        Channel.DutyCycle => "duty cycle",
        Channel.Lambda => "lambda",
        Channel.BatteryVoltage => "battery voltage",
        Channel.Power => "power",
        Channel.Torque => "torque",
        Channel.FuelTemperature => "fuel temperature",
        Channel.FuelVolumeFlow => "fuel, by volume",
        _ => "fuel, by mass",
    };

    /// <summary>Several channels in one line.</summary>
    public static string Names(IEnumerable<Channel> channels) => string.Join("; ", channels.Select(Name));

    /// <summary>What a row holds, with the list's own symbols.</summary>
    public static IReadOnlyList<Fact> Of(RunRow row, TextStyle style)
    {
        List<Fact> facts = [];
        void Add<T>(Channel channel, string symbol, T? value, Func<T, string> text, string note = "")
            where T : struct
        {
            if (value is { } known)
            {
                string name = Name(channel);
                facts.Add(new($"{char.ToUpperInvariant(name[0])}{name[1..]}", symbol, text(known), note));
            }
        }

        Add(Channel.Time, "", row.Time, style.Time);
        Add<UnitsNet.RotationalSpeed>(Channel.Speed, "n", row.Speed, style.Of);
        Add(Channel.ManifoldAbsolute, "p_3", row.ManifoldAbsolute, style.Of);
        Add(Channel.RailGauge, "p_r", row.RailGauge, style.Of, "gauge");
        Add(Channel.InjectorPulse, "t", row.InjectorPulse, style.Of, "dead time in");
        Add(Channel.DutyCycle, "D", row.DutyCycle, style.DutyCycle);
        Add(Channel.Lambda, "λ", row.Lambda, lambda => style.Number(lambda));
        Add(Channel.BatteryVoltage, "V_s", row.BatteryVoltage, style.Of);
        Add(Channel.Power, "P", row.Power, style.Of);
        Add(Channel.Torque, "M", row.Torque, style.Of);
        Add(Channel.FuelTemperature, "T", row.FuelTemperature, style.Of);
        Add(Channel.FuelVolumeFlow, "Q_f", row.FuelVolumeFlow, style.PumpFlow);
        Add(Channel.FuelMassFlow, "ṁ_f", row.FuelMassFlow, style.Of);
        return facts;
    }
}
