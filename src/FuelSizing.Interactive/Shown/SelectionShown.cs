using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;

namespace FuelSizing.Interactive;

/// <summary>How parts to choose from, and what was chosen, are shown.</summary>
internal static class SelectionShown
{
    public static void Register()
    {
        Shown.As<Ranking>((ranking, style) => ranking.Combinations.Count > 0 ? SelectionTables.Best(ranking, style: style) : SizingCallouts.Verdict(ranking.Verdict, style));
        Shown.As<Combination>(SelectionTables.Margins);
        Shown.Listed<Combination>((one, style) => new(
            $"{one}",
            [
                new("Cost", "", PartText.Cost(one.Cost, style)),
                new("Turndown at idle", "", one.Turndown is { } turndown ? style.Change(turndown) : "–"),
                new("Reserve", "", one.Reserve is { } reserve ? style.Change(reserve) : "–"),
                Fact.Words("Tightest margin", PartText.Say(one.SolveWeakest(), style)),
            ]));
        Shown.As<Catalogue>((catalogue, style) => Parts("Catalogue", style, catalogue.Injectors, catalogue.Pumps, catalogue.Regulators));
        Shown.As<CandidateParts>((parts, style) => Parts(
            $"Parts to choose from: {style.Count(parts.Combinations)} combinations", style, parts.Injectors, parts.Pumps, parts.Regulators));
        Candidate<Injector>(Figure);
        Candidate<Pump>(Figure);
        Candidate<PumpAssembly>(Figure);
        Candidate<PressureRegulator>(PartText.Say);
        Shown.By<LeftOut>((left, style) => new($"Left out: {left.Name}", [Fact.Words("Why", PartText.Say(left.Reason, style))]));
        Shown.By<Stage>((stage, style) => new(
            $"Stage: {stage.Name}",
            [.. SystemShown.Of(stage.System, style), .. stage.Points.Select(point => Fact.Words("Judged at", PartText.Say(point, style)))]));
        Shown.By<FileProblem>((problem, style) => new(
            $"Problem in {problem.File}",
            [new("Line", "", style.Count(problem.Line), PartText.Say(problem.Reason, style)), Fact.Words("Field", problem.Field.Length > 0 ? problem.Field : "none")]));
    }

    private static void Candidate<T>(Func<T, TextStyle, string> figure)
        where T : class =>
        Shown.By<Candidate<T>>((candidate, style) => new(
            $"Candidate: {candidate.Name}",
            [new("Cost", "", PartText.Cost(candidate.Cost, style)), Fact.Words("Part", figure(candidate.Part, style))]));

    private static Table Parts<TPump>(
        string title,
        TextStyle style,
        IReadOnlyList<Candidate<Injector>> injectors,
        IReadOnlyList<Candidate<TPump>> pumps,
        IReadOnlyList<Candidate<PressureRegulator>> regulators)
        where TPump : PumpAssembly
    {
        IReadOnlyList<string>[] rows =
        [
            .. Rows("injector", injectors, Figure, style),
            .. Rows("pump", pumps, Figure, style),
            .. Rows("regulator", regulators, PartText.Say, style),
        ];
        return new Table(
            title,
            [TableColumn.Text("Kind"), TableColumn.Text("Name"), TableColumn.Number("Cost"), TableColumn.Text("Note")],
            rows.Length > 0 ? rows : [["–", "–", "–", "there are no parts in it"]]);
    }

    private static IEnumerable<IReadOnlyList<string>> Rows<T>(string kind, IReadOnlyList<Candidate<T>> parts, Func<T, TextStyle, string> figure, TextStyle style)
        where T : notnull =>
        parts.Select(part => (IReadOnlyList<string>)[kind, VisibleText.Of(part.Name), PartText.Cost(part.Cost, style), VisibleText.Of(figure(part.Part, style))]);

    private static string Figure(Injector injector, TextStyle style) =>
        $"{style.InjectorFlow(injector.StaticFlow)} at {style.Of(injector.RatedDifferential)} on {injector.TestFluid.Name}";

    private static string Figure(PumpAssembly pumps, TextStyle style)
    {
        if (pumps.Pumps is not [var pump])
        {
            return $"{style.Count(pumps.Pumps.Count)} pumps together";
        }

        PumpCurve curve = pump.Curves[^1];
        return $"{style.PumpFlow(curve.FlowAt(curve.MinimumPressure))} against {style.Of(curve.MinimumPressure)} to "
            + $"{style.PumpFlow(curve.FlowAt(curve.MaximumPressure))} against {style.Of(curve.MaximumPressure)}, at {style.Of(curve.Voltage)}";
    }
}
