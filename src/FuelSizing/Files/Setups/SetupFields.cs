using System.Collections.Frozen;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;

namespace FuelSizing.Files;

/// <summary>A whole setup's fields.</summary>
internal static class SetupFields
{
    private const string VersionField = "setup";
    private const int Version = 1;

    private static readonly Words<LineLayout> Layouts =
        new((LineLayout.Return, "return"), (LineLayout.Returnless, "returnless"));

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["regulator"] = "regulator",
        ["plumbing"] = "plumbing",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> InjectorSetFields = new Dictionary<string, string>
    {
        ["count"] = "count",
        ["injectionsPerCycle"] = "injections_per_cycle",
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Setup? Read(in FileText text, ProblemList problems)
    {
        if (JsonText.Read(text, VersionField, Version, problems) is not { } fields)
        {
            return null;
        }

        EntryReader reader = new(text.Name, string.Empty, fields, problems);
        LineLayout layout = Layouts.Read(reader, "layout");
        FuelDemandModel? demand = DemandFields.Read(reader);
        InjectorSet? injectors = reader.RequiredPart("injectors", "Give the injectors.") is { } set ? InjectorsOf(set) : null;
        PressureRegulator? regulator = reader.RequiredPart("regulator", "Give the regulator.") is { } holds
            ? RegulatorOf(holds)
            : null;
        PumpAssembly? pump = reader.RequiredPart("pump", "Give the pump or pumps.") is { } pumps
            ? PumpAssemblyFields.Read(pumps)
            : null;
        Plumbing? plumbing = reader.OptionalPart("plumbing") is { } ways ? PlumbingFields.Read(ways) : null;
        SizingLimits? limits = reader.OptionalPart("limits") is { } maximum ? LimitFields.Read(maximum) : null;
        IReadOnlyList<NamedPoint> points = PointFields.Read(reader.OptionalRows("points"));
        return reader.Make(
            () => Setup.Of(
                layout == LineLayout.Return
                    ? FuelSystem.Return(demand!, injectors!, regulator!, pump!, limits, plumbing)
                    : FuelSystem.Returnless(demand!, injectors!, regulator!, pump!, limits, plumbing),
                points),
            Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, Setup setup)
    {
        FuelSystem system = setup.System;
        fields.Count(VersionField, Version);
        fields.Text("layout", Layouts.Of(system.Layout));
        DemandFields.Write(fields, system.Demand);
        fields.Part("injectors", part =>
        {
            part.Count("count", system.Injectors.Count);
            part.Count("injections_per_cycle", system.Injectors.InjectionsPerCycle);
            part.Part("injector", injector => InjectorFields.Write(injector, system.Injectors.Injector));
        });
        fields.Part("regulator", part => Write(part, system.Regulator));
        fields.Part("pump", part => PumpAssemblyFields.Write(part, system.Pump));
        if (system.Plumbing.NeedsViscosity)
        {
            fields.Part("plumbing", part => PlumbingFields.Write(part, system.Plumbing));
        }

        fields.Part("limits", part => LimitFields.Write(part, system.Limits));
        fields.List("points", setup.Points, PointFields.Write);
    }

    private static InjectorSet? InjectorsOf(EntryReader reader)
    {
        int count = reader.RequiredCount("count", "4");
        int perCycle = reader.Count("injections_per_cycle", "1") ?? 1;
        Injector? injector = reader.RequiredPart("injector", "Give the injector of which there are so many.") is { } part
            ? InjectorFields.Read(part)
            : null;
        return reader.Make(() => InjectorSet.Of(injector!, count, perCycle), InjectorSetFields);
    }

    // Behind what a unit sits is a name in a catalogue's list, and the regulator itself here, where there is no list.
    private static PressureRegulator? RegulatorOf(EntryReader reader)
    {
        string kind = RegulatorFields.KindOf(reader);
        if (kind != RegulatorFields.RisingRateKind || reader.OptionalPart(RegulatorFields.Behind) is not { } before)
        {
            return RegulatorFields.Alone(reader, kind, behind: false);
        }

        PressureRegulator? first = RegulatorOf(before);
        return RegulatorFields.Alone(reader, kind, behind: true) is RisingRate unit && first is not null
            ? RegulatorSeries.Of(first, unit)
            : null;
    }

    private static void Write(FieldWriter fields, PressureRegulator regulator)
    {
        if (regulator is not RegulatorSeries series)
        {
            RegulatorFields.Write(fields, regulator, behind: false);
            return;
        }

        RegulatorFields.Write(fields, series.Unit, behind: true);
        fields.Part(RegulatorFields.Behind, part => Write(part, series.BaseRegulator));
    }
}
