using System.Collections.Frozen;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A regulator, in a catalogue or in a setup.</summary>
internal static class RegulatorFields
{
    /// <summary>The field that says what a rising-rate unit sits behind.</summary>
    public const string Behind = "behind";

    /// <summary>The field that says which kind of regulator it is.</summary>
    public const string Kind = "kind";

    /// <summary>The kind with one pressure.</summary>
    public const string FixedKind = "fixed";

    /// <summary>The kind that follows the manifold.</summary>
    public const string ManifoldReferencedKind = "manifold-referenced";

    /// <summary>The kind that rises faster than the manifold.</summary>
    public const string RisingRateKind = "rising-rate";

    /// <summary>The kind that holds pressure by the pump's speed.</summary>
    public const string ElectronicKind = "electronic";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["gauge"] = "base",
        ["basePressure"] = "base",
        ["gain"] = "gain",
        ["onset"] = "onset",
        ["ceiling"] = "ceiling",
        ["minimumReturnFlow"] = "minimum_return_flow",
        ["minimumVoltage"] = "minimum_voltage",
        ["unit"] = Behind,
        ["baseRegulator"] = Behind,
    }.ToFrozenDictionary();

    /// <summary>Which kind it is.</summary>
    public static string KindOf(EntryReader reader) =>
        reader.Word(Kind, required: true, FixedKind, ManifoldReferencedKind, RisingRateKind, ElectronicKind);

    /// <summary>Reads it by itself, without what it may sit behind; none if anything is wrong.</summary>
    public static PressureRegulator? Alone(EntryReader reader, string kind, bool behind)
    {
        Pressure basePressure = behind
            ? reader.Optional("base", Measures.Pressure) ?? Pressure.Zero
            : reader.Required("base", Measures.Pressure);
        return kind switch
        {
            ElectronicKind => OfElectronic(reader, basePressure),
            RisingRateKind => OfRisingRate(reader, basePressure, MinimumReturn(reader)),
            ManifoldReferencedKind => OfManifoldReferenced(reader, basePressure, MinimumReturn(reader)),
            _ => OfFixed(reader, basePressure, MinimumReturn(reader)),
        };
    }

    /// <summary>Writes it, without what it may sit behind.</summary>
    public static void Write(FieldWriter fields, PressureRegulator regulator, bool behind)
    {
        void Common(string kind, Pressure basePressure)
        {
            fields.Text(Kind, kind);
            if (!behind || basePressure > Pressure.Zero)
            {
                fields.Quantity("base", basePressure, Measures.Pressure);
            }
        }

        switch (regulator)
        {
            case Fixed only:
                Common(FixedKind, only.Gauge);
                break;
            case ManifoldReferenced following:
                Common(ManifoldReferencedKind, following.Base);
                break;
            case RisingRate rising:
                Common(RisingRateKind, rising.Base);
                fields.Number("gain", rising.Gain);
                fields.Quantity("onset", rising.Onset, Measures.Pressure);
                fields.Quantity("ceiling", rising.Ceiling, Measures.Pressure);
                break;
            case ElectronicReturnless electronic:
                Common(ElectronicKind, electronic.Base);
                fields.Truth("follows_manifold", electronic.FollowsManifold);
                fields.Quantity("minimum_voltage", electronic.MinimumVoltage, Measures.Voltage);
                break;
        }

        if (regulator.MinimumReturnFlow > VolumeFlow.Zero)
        {
            fields.Quantity("minimum_return_flow", regulator.MinimumReturnFlow, Measures.Flow);
        }
    }

    private static VolumeFlow? MinimumReturn(EntryReader reader) => reader.Optional("minimum_return_flow", Measures.Flow);

    private static PressureRegulator? OfFixed(EntryReader reader, Pressure gauge, VolumeFlow? minimum) =>
        reader.Make<PressureRegulator>(() => Fixed.At(gauge, minimum), Fields);

    private static PressureRegulator? OfManifoldReferenced(EntryReader reader, Pressure basePressure, VolumeFlow? minimum) =>
        reader.Make<PressureRegulator>(() => ManifoldReferenced.From(basePressure, minimum), Fields);

    private static PressureRegulator? OfRisingRate(EntryReader reader, Pressure basePressure, VolumeFlow? minimum)
    {
        double gain = reader.RequiredNumber("gain", "6");
        Pressure onset = reader.Required("onset", Measures.Pressure);
        Pressure? ceiling = reader.Optional("ceiling", Measures.Pressure);
        return reader.Make<PressureRegulator>(
            () => RisingRate.From(basePressure, gain, onset, ceiling, minimum), Fields);
    }

    private static PressureRegulator? OfElectronic(EntryReader reader, Pressure basePressure)
    {
        bool follows = reader.Truth("follows_manifold");
        ElectricPotential minimum = reader.Required("minimum_voltage", Measures.Voltage);
        return reader.Make<PressureRegulator>(
            () => ElectronicReturnless.Holding(basePressure, follows, minimum), Fields);
    }
}
