using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How pumps and their curves are shown.</summary>
internal static class PumpShown
{
    // A curve is told by so many of its points; its ends are among them.
    private const int CurvePoints = 5;

    public static void Register()
    {
        Shown.By<Pump>((pump, style) => new($"Pump: {pump.Name}", Of(pump, style)));
        Shown.By<PumpSeries>((series, style) => Of(series, style, "one after the other", series.Bypass == SeriesBypass.CheckValve
            ? "a check valve round each opens where more flows than it passes"
            : "no more flows than the weakest lets through"));
        Shown.By<PumpParallel>((parallel, style) => Of(parallel, style, "side by side", "a check valve at each keeps fuel from running back"));
        Shown.By<SwitchedPump>((switched, style) => new(
            $"Switched pump: {switched.Pump.Name}",
            [
                new("On", "", style.Boost(switched.On), "as boost rises"),
                new("Off", "", style.Boost(switched.Off), "as boost falls; between the two, results are judged both ways"),
                Fact.Words("Until then", switched.LowSpeed.In(style)),
                .. Of(switched.Pump, style),
            ]));
        Shown.By<PumpBranch>((branch, style) => new(
            $"Pump with lines of its own: {branch.Name}",
            [
                .. branch.Suction.Count > 0 ? SystemShown.Way("Before it", branch.Suction, style) : [],
                .. SystemShown.Way("Up to the joint", branch.Discharge, style),
                .. branch.Pump is Pump alone ? Of(alone, style) : [Fact.Words("Pumps", branch.Pump.Name)],
            ]));
        Shown.By<BranchResult>((branch, style) => new(
            $"Branch of {branch.Branch.Name}",
            [
                new("Flow", "Q", style.PumpFlow(branch.Flow), branch.IsShut ? "shut: its pump is off, or does not lift its check valve" : ""),
                new("Pump inlet", "p_pi", style.Of(branch.InletGauge), "gauge"),
                new("Pump outlet", "p_po", style.Of(branch.OutletGauge), "gauge"),
                new("Joint", "p_po", style.Of(branch.JointGauge), "gauge, where the branches meet"),
                .. branch.Suction.Concat(branch.Discharge).Select(part => new Fact(part.Name, "Δp", style.PressureChange(-part.PressureLoss))),
            ]));
        Shown.By<VoltageConverter>((converter, style) => new($"Voltage converter: {converter.Name}", [Fact.Words("Gives", converter.In(style))]));
        Shown.By<PumpLowSpeed>((low, style) => new("Switched pump, until it is switched on", [Fact.Words("Speed", low.In(style))]));
        Shown.Listed<PumpAssembly>((pumps, style) => new($"Pumps: {pumps.Name}", [new("Pumps", "", style.Count(pumps.Pumps.Count))]));
        Shown.By<PumpDrive>((drive, style) => new("Drive of a pump", [Fact.Words("Drive", drive.In(style))]));
        Shown.By<PumpKindFit>((fit, style) => new("Drive of a pump, as fitted", Fitted(fit, style)));
        Shown.By<PumpDriveFit>((fit, style) => new(
            "Drive of a pump, from two curves",
            [
                Fact.Words("Found", fit.In(style)),
                .. Fitted(fit.Turbine, style),
                .. fit.Displacement is { } displacement ? Fitted(displacement, style) : [],
            ]));
        Shown.By<PumpCurve>((curve, style) => new(
            $"Curve of {curve.Name} at {style.Of(curve.Voltage)}",
            [.. Points(curve, style)],
            curve.Deadhead is { } end ? $"It passes nothing from {style.Of(end)}." : "It was not measured to its end."));
    }

    private static Fact[] Of(Pump pump, TextStyle style) =>
    [
        .. pump.Curves.SelectMany(curve => (Fact[])
        [
            new($"Flow at {style.Of(curve.Voltage)}", "Q_p", style.PumpFlow(curve.FlowAt(curve.MinimumPressure)), $"against {style.Of(curve.MinimumPressure)}"),
            new($"Flow at {style.Of(curve.Voltage)}", "Q_p", style.PumpFlow(curve.FlowAt(curve.MaximumPressure)), $"against {style.Of(curve.MaximumPressure)}"),
        ]),
        new("Condition", "", style.Of(pump.Condition), "of the flow of a new one"),
        .. pump.Relief is { } relief ? (Fact[])[new("Relief valve", "", style.Of(relief), "begins to open")] : [],
        Fact.Words("Drive", pump.Drive is { } drive ? drive.In(style) : "nothing said of it: the widest bounds at voltages that were not measured"),
        .. pump.Converter is { } converter ? (Fact[])[Fact.Words("Voltage converter", converter.In(style))] : [],
        Fact.Words("Feed", pump.Feed is { } feed ? $"{feed.Name}: {feed.Conductor}, {style.Of(feed.LoopResistance)}" : "none described: the supply's voltage reaches the motor"),
    ];

    private static Facts Of(PumpAssembly pumps, TextStyle style, string how, string valves) => new(
        $"Pumps: {pumps.Name}",
        [
            Fact.Words("Together", $"{style.Count(pumps.Pumps.Count)} pumps {how}; {valves}"),
            .. pumps.Pumps.Select(pump => Fact.Words(pump.Name, pump.Feed is { } feed ? $"fed through {feed.Conductor}" : "fed without loss")),
        ]);

    private static IEnumerable<Fact> Points(PumpCurve curve, TextStyle style)
    {
        for (int point = 0; point < CurvePoints; point++)
        {
            // The ends themselves, for between them a sum may round to just outside.
            Pressure rise = point == 0 ? curve.MinimumPressure
                : point == CurvePoints - 1 ? curve.MaximumPressure
                : curve.MinimumPressure + ((curve.MaximumPressure - curve.MinimumPressure) * ((double)point / (CurvePoints - 1)));
            yield return new(
                $"Against {style.Of(rise)}",
                "Q_p",
                style.PumpFlow(curve.FlowAt(rise)),
                curve.HasCurrent ? $"I = {style.Of(curve.CurrentAt(rise))}" : "");
        }
    }

    private static Fact[] Fitted(PumpKindFit fit, TextStyle style) =>
    [
        Fact.Words(fit.Kind == PumpKind.Turbine ? "As a turbine" : "As a displacement pump", $"{fit.In(style)}; {(fit.Fits ? "fits" : "excluded")}, {style.Number(fit.Deviations)} deviations of a reading off"),
    ];
}
