using FuelSizing.Bench;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How figures for a controller are shown.</summary>
internal static class ControllerFiguresShown
{
    public static void Register()
    {
        Shown.By<FlowFigure>((flow, style) => new("Flow for a controller", Of(flow, style)));
        Shown.By<TimeFigure>((time, style) => new("Time for a controller", [Of(time, style)]));
        Shown.By<ShortPulseFigure>((figure, style) => new(
            "Correction of a short pulse",
            [
                new("Calculated", "t", Milliseconds(figure.Calculated, style)),
                new("Command", "", Milliseconds(figure.Commanded, style)),
                figure is { Added: { } added, Minimum: { } low, Maximum: { } high }
                    ? new("Add", "", Milliseconds(added, style), $"{Milliseconds(low, style)} to {Milliseconds(high, style)}, 95 %")
                    : Fact.Words("Add", "no correction"),
                .. figure.Factor is { } factor ? [Fact.Words("Or factor of the open time", style.Number(factor.DecimalFractions, "0.000"))] : Array.Empty<Fact>(),
                Fact.Words("Rests on", PartText.Say(figure.Basis, style)),
            ]));
        Shown.By<FuelErrorFigure>((error, style) => new("Fuel at another differential pressure", [Fact.Words("Fuel", PartText.Say(error, style))]));
        Shown.By<LoadLookup>((lookup, style) => new("Load that a scaled controller reads", [Fact.Words("Load", PartText.Say(lookup, style))]));
        Shown.By<FlowScaling>((scaling, style) => new(
            $"Scaled figures for {scaling.Figures.Injector.Name}",
            [
                Fact.Words("Scaling", PartText.Say(scaling, style)),
                .. scaling.ReferenceInstead is { } instead
                    ? [new Fact("Reference to type instead", "Δp", style.Of(instead), "with the same flow, where the controller corrects for rail pressure: it falsifies nothing")]
                    : Array.Empty<Fact>(),
                .. scaling.Lookups.Select(lookup => Fact.Words("Load", PartText.Say(lookup, style))),
            ],
            scaling.Caution?.In(style)));
        Shown.By<ControllerFigures>((figures, style) => new(
            $"Figures for the controller: {figures.Injector.Name}",
            [
                Fact.Words("Fuel", $"{figures.Fuel.Name} at {style.Of(figures.FuelTemperature)}, {style.Of(figures.FuelDensity)}"),
                new("Reference", "Δp", style.Of(figures.Reference), PartText.Say(figures.ReferenceReason, style)),
                .. figures.Flows.SelectMany(flow => Of(flow, style)),
                .. figures.DeadTimes.Select(time => Of(time, style)),
                .. figures.MinimumPulses.Select(time => Of(time, style)),
                .. figures.ShortPulses.Select(figure => Fact.Words("Short pulse", PartText.Say(figure, style))),
                .. figures.FuelErrors.Select(error => Fact.Words("Fuel", PartText.Say(error, style))),
            ],
            string.Join(" ", figures.Notes.Select(note => note.In(style)))));
    }

    private static Fact[] Of(FlowFigure flow, TextStyle style) =>
        flow.Flow is not { } known
            ? [Fact.Words($"Flow at {style.Of(flow.Differential)}", $"none: {PartText.Say(flow.Basis, style)}")]
            :
            [
                new(
                    $"Flow at {style.Of(flow.Differential)}",
                    "Q_s",
                    $"{style.Number(known.MillilitersPerMinute, "N1")} mL/min",
                    $"{(flow is { MinimumFlow: { } low, MaximumFlow: { } high } ? $"{style.Number(low.MillilitersPerMinute, "N1")} mL/min to {style.Number(high.MillilitersPerMinute, "N1")} mL/min; " : string.Empty)}{PartText.Say(flow.Basis, style)}"),
                new($"By mass at {style.Of(flow.Differential)}", "", style.Of(flow.MassFlow!.Value)),
            ];

    private static Fact Of(TimeFigure time, TextStyle style)
    {
        string name = $"{(time.Kind == TimeFigureKind.DeadTime ? "Dead time" : "Minimum pulse")} at {style.Of(time.Voltage)}, {style.Of(time.Differential)}";
        return time.Time is not { } known
            ? Fact.Words(name, $"none: {PartText.Say(time.Basis, style)}")
            : new(
                name,
                "",
                Milliseconds(known, style),
                $"{(time is { Minimum: { } low, Maximum: { } high } ? $"{Milliseconds(low, style)} to {Milliseconds(high, style)}; " : string.Empty)}{PartText.Say(time.Basis, style)}");
    }

    // A controller takes more digits than a report shows.
    private static string Milliseconds(Duration time, TextStyle style) => $"{style.Number(time.Milliseconds, "0.000;−0.000;0.000")} ms";
}
