using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A whole setup.</summary>
internal static class SetupForm
{
    private static readonly WordField<LineLayout> Layout =
        new("layout", "whether fuel returns to the tank", (LineLayout.Return, "return"), (LineLayout.Returnless, "returnless"));

    private static readonly PartField<InjectorSet> Injectors = new("injectors", () => InjectorForm.Set, "the injectors");

    private static readonly PartField<PressureRegulator> Regulator = new("regulator", () => RegulatorForm.Form, "what sets the rail's pressure");

    private static readonly PartField<PumpAssembly> Pump = new("pump", () => PumpForm.Assembly, "the pump or pumps");

    private static readonly PartField<Plumbing> Lines =
        new("plumbing", () => PlumbingForm.Form, "lines and filters") { Optional = true, Default = "no loss" };

    private static readonly PartField<SurgeTank> Tank =
        new("surge_tank", () => SurgeTankForm.Form, "a surge tank that the pumps draw from, and its lift circuit") { Optional = true, Default = "none: the pumps draw from the main tank", Arguments = ["surgeTank"] };

    private static readonly PartField<StagedInjectors> Staged =
        new("staged_injectors", () => StagedInjectorsForm.Form, "a secondary set of injectors on the same rail, and when it takes part of the fuel; not with `controller`") { Optional = true, Default = "none: `injectors` inject all the fuel", Arguments = ["stagedInjectors"] };

    private static readonly PartField<SecondStream> Stream =
        new("second_stream", () => SecondStreamForm.Form, "a second stream of fuel, with its own pump and nozzles") { Optional = true, Default = "none", Arguments = ["secondStream"] };

    private static readonly PartField<EngineController> Controller =
        new("controller", () => ControllerForm.Form, "who decides the pulse") { Optional = true, Default = "one that commands whatever is needed" };

    private static readonly PartField<SizingLimits> Limits =
        new("limits", () => PointForm.Limits, "what the system is held to") { Optional = true, Default = "`SizingLimits.Default`" };

    private static readonly TextField WaivedPart = new("part", "pressure-rating", "code of what is not judged, once in a setup")
    {
        Range = string.Join(", ", StandardChecks.All.Select(check => $"`{check.Part.Code}`")),
        Arguments = [],
    };

    private static readonly TextField Reason = new("reason", "all hoses are new", "why that is in order; results show it") { Arguments = ["reason"] };

    private static readonly RecordForm<Waiver> OneWaiver = new("waiver", "a waiver", WaiverOf)
    {
        { WaivedPart, waiver => waiver.Part.Code },
        { Reason, waiver => waiver.Reason },
    };

    private static readonly ListField<Waiver> Waivers = new("waivers", () => OneWaiver, "what the system does without a judgement of")
    {
        IsTable = true,
        Optional = true,
        Default = "no waivers",
    };

    private static readonly ListField<NamedPoint> Points =
        new("points", () => PointForm.Form, "operating points; each name once") { Optional = true, Default = "no points" };

    private static readonly PartField<BoostLine> Line =
        new("boost_line", () => BoostLineForm.Form, "boost against engine speed at full throttle") { Optional = true, Default = "none" };

    private static readonly QuantityField<RotationalSpeed> Slowest =
        new("slowest", Measures.Speed, "lowest engine speed of the pull") { Example = "3000 rpm", Range = "100 to 25,000 rev/min" };

    private static readonly QuantityField<RotationalSpeed> Fastest =
        new("fastest", Measures.Speed, "highest engine speed of the pull") { Example = "6300 rpm", Range = "above `slowest`, to 25,000 rev/min" };

    private static readonly RecordForm<PullRange> OfPull = new(
        "pull", "a pull", values => PullRange.Of(values.Required(Slowest), values.Required(Fastest), values.Optional(PointForm.At)))
    {
        { Slowest, pull => pull.Slowest },
        { Fastest, pull => pull.Fastest },
        { PointForm.At, pull => pull.Conditions },
    };

    private static readonly PartField<PullRange> Pull =
        new("pull", () => OfPull, "the pull that is looked at along the boost line, which it needs") { Optional = true, Default = "none" };

    /// <summary>The form of its file.</summary>
    public static FileForm<Setup> File { get; } = new(
        "setup",
        "A whole fuel system and named operating points; see setups.md.",
        new("setup", "a setup", SetupOf, Together, """ "dependentRequired": { "pull": [ "boost_line" ] } """)
        {
            { Layout, setup => setup.System.Layout },
            { DemandForm.Form, setup => setup.System.Demand },
            { Injectors, setup => setup.System.Injectors },
            { Regulator, setup => setup.System.Regulator },
            { Pump, setup => setup.System.Pump },
            { Lines, setup => setup.System.Plumbing is { NeedsViscosity: true } plumbing ? plumbing : null },
            { Tank, setup => setup.System.SurgeTank },
            { Limits, setup => setup.System.Limits },
            { Controller, setup => setup.System.Controller.IsIdeal ? null : setup.System.Controller },
            { Line, setup => setup.BoostLine },
            { Pull, setup => setup.PullRange },
            { Waivers, setup => [.. setup.System.Waivers.Where(waiver => PartOf(waiver.Part.Code) is not null)] },
            { Points, setup => setup.Points },
            { Staged, setup => setup.System.StagedInjectors },
            { Stream, setup => setup.System.SecondStream },
        });

    private static Setup? SetupOf(FieldValues values)
    {
        if (DemandForm.Form.Make(values) is not { } demand)
        {
            return null;
        }

        InjectorSet injectors = values.Required(Injectors);
        PressureRegulator regulator = values.Required(Regulator);
        PumpAssembly pump = values.Required(Pump);
        SizingLimits? limits = values.Optional(Limits);
        Plumbing? plumbing = values.Optional(Lines);
        FuelSystem system = values.Required(Layout) == LineLayout.Return
            ? FuelSystem.Return(demand, injectors, regulator, pump, limits, plumbing)
            : FuelSystem.Returnless(demand, injectors, regulator, pump, limits, plumbing);
        system = values.Optional(Tank) is { } tank ? system.With(tank) : system;
        system = values.Optional(Controller) is { } controller ? system.With(controller) : system;
        system = values.Optional(Staged) is { } staged ? system.With(staged) : system;
        system = values.Optional(Stream) is { } stream ? system.With(stream) : system;
        BoostLine? line = values.Optional(Line);
        if (line is not null && !values.Fits(Line, () => line.RequireCompressor(demand)))
        {
            return null;
        }

        return Setup.Of(
            values.Required(Waivers).Aggregate(system, (waived, waiver) => waived.Waive(waiver.Part, waiver.Reason)),
            values.Required(Points),
            line,
            values.Optional(Pull));
    }

    // A check of one's own is not in the file, and neither is a waiver of it.
    private static Part? PartOf(string code) => StandardChecks.All.FirstOrDefault(check => check.Part.Code == code)?.Part;

    private static Waiver? WaiverOf(FieldValues values)
    {
        string code = values.Required(WaivedPart);
        if (PartOf(code) is { } part)
        {
            return Waiver.Of(part, values.Required(Reason));
        }

        values.Wrong(WaivedPart, Statement.Of(
            "file.no-such-part",
            $"was \"{ProblemList.Shown(code)}\". Give one of {string.Join(", ", StandardChecks.All.Select(check => check.Part.Code))}."));
        return null;
    }

    private static void Together(FieldValues values)
    {
        NamedOnce(values);
        if (values.Reader.Has(Pull.Name) && !values.Reader.Has(Line.Name))
        {
            values.Wrong(Pull, Statement.Of("file.pull-without-line", $"needs a boost line. Give boost_line, or take it out."));
        }
    }

    private static void NamedOnce(FieldValues values)
    {
        Dictionary<string, int> seen = [];
        foreach (EntryReader row in values.Rows(Points).Where(row => row.IsText("name")))
        {
            int line = row.LineOf("name");
            string name = row.Text("name")!;
            if (!seen.TryAdd(name, line))
            {
                row.Wrong("name", line, Statement.Of(
                    "file.point-named-twice", $"\"{ProblemList.Shown(name)}\" is in line {seen[name]:ordinal} already. Give each point its own name."));
            }
        }
    }
}
