using System.Collections.Frozen;
using FuelSizing.Equations;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The fields of what a system is held to.</summary>
internal static class LimitFields
{
    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["dutyCycle"] = "duty_cycle",
        ["pumpReserve"] = "pump_reserve",
        ["railCeiling"] = "rail_ceiling",
        ["feedDrop"] = "feed_drop",
        ["suctionMargin"] = "suction_margin",
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static SizingLimits? Read(EntryReader reader)
    {
        Ratio duty = reader.Required("duty_cycle", Measures.Share);
        Ratio reserve = reader.Required("pump_reserve", Measures.Share);
        Pressure? ceiling = reader.Optional("rail_ceiling", Measures.Pressure);
        Ratio? drop = reader.Optional("feed_drop", Measures.Share);
        Pressure? suction = reader.Optional("suction_margin", Measures.Pressure);
        return reader.Make(() => SizingLimits.Of(duty, reserve, ceiling, drop, suction), Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, SizingLimits limits)
    {
        fields.Quantity("duty_cycle", limits.DutyCycle, Measures.Share);
        fields.Quantity("pump_reserve", limits.PumpReserve, Measures.Share);
        fields.Quantity("rail_ceiling", limits.RailCeiling, Measures.Pressure);
        fields.Quantity("feed_drop", limits.FeedDrop, Measures.Share);
        fields.Quantity("suction_margin", limits.SuctionMargin, Measures.Pressure);
    }
}
