using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How parts to choose from, and what was chosen, are shown.</summary>
internal static class SelectionShown
{
    public static void Register()
    {
        Shown.As<Ranking>(ranking => ranking.Combinations.Count > 0 ? SelectionTables.Best(ranking) : SizingCallouts.Verdict(ranking.Verdict));
        Shown.As<Combination>(SelectionTables.Margins);
        Shown.Listed<Combination>(one => new(
            $"{one}",
            [
                new("Cost", "", PartText.Cost(one.Cost)),
                new("Turndown at idle", "", one.Turndown is { } turndown ? Readable.Change(turndown) : "–"),
                new("Reserve", "", one.Reserve is { } reserve ? Readable.Change(reserve) : "–"),
                Fact.Words("Tightest margin", $"{one.Weakest}"),
            ]));
        Shown.As<Catalogue>(catalogue => Parts("Catalogue", catalogue.Injectors, catalogue.Pumps, catalogue.Regulators));
        Shown.As<CandidateParts>(parts => Parts(
            $"Parts to choose from: {PartText.Count(parts.Combinations)} combinations", parts.Injectors, parts.Pumps, parts.Regulators));
        Candidate<Injector>(Figure);
        Candidate<Pump>(pump => Figure(pump));
        Candidate<PumpAssembly>(Figure);
        Candidate<PressureRegulator>(regulator => regulator.Description);
        Shown.By<LeftOut>(left => new($"Left out: {left.Name}", [Fact.Words("Why", left.Reason)]));
        Shown.By<Stage>(stage => new(
            $"Stage: {stage.Name}",
            [.. SystemShown.Of(stage.System), .. stage.Points.Select(point => Fact.Words("Judged at", $"{point}"))]));
        Shown.By<FileProblem>(problem => new(
            $"Problem in {problem.File}",
            [new("Line", "", PartText.Count(problem.Line), problem.Message), Fact.Words("Field", problem.Field.Length > 0 ? problem.Field : "none")]));
    }

    private static void Candidate<T>(Func<T, string> figure)
        where T : class =>
        Shown.By<Candidate<T>>(candidate => new(
            $"Candidate: {candidate.Name}",
            [new("Cost", "", PartText.Cost(candidate.Cost)), Fact.Words("Part", figure(candidate.Part))]));

    private static Table Parts<TPump>(
        string title,
        IReadOnlyList<Candidate<Injector>> injectors,
        IReadOnlyList<Candidate<TPump>> pumps,
        IReadOnlyList<Candidate<PressureRegulator>> regulators)
        where TPump : PumpAssembly
    {
        IReadOnlyList<string>[] rows =
        [
            .. Rows("injector", injectors, Figure),
            .. Rows("pump", pumps, Figure),
            .. Rows("regulator", regulators, regulator => regulator.Description),
        ];
        return new Table(
            title,
            [TableColumn.Text("Kind"), TableColumn.Text("Name"), TableColumn.Number("Cost"), TableColumn.Text("Note")],
            rows.Length > 0 ? rows : [["–", "–", "–", "there are no parts in it"]]);
    }

    private static IEnumerable<IReadOnlyList<string>> Rows<T>(string kind, IReadOnlyList<Candidate<T>> parts, Func<T, string> figure)
        where T : notnull =>
        parts.Select(part => (IReadOnlyList<string>)[kind, VisibleText.Of(part.Name), PartText.Cost(part.Cost), VisibleText.Of(figure(part.Part))]);

    private static string Figure(Injector injector) =>
        $"{Readable.InjectorFlow(injector.StaticFlow)} at {Readable.Of(injector.RatedDifferential)} on {injector.TestFluid.Name}";

    private static string Figure(PumpAssembly pumps)
    {
        if (pumps.Pumps is not [var pump])
        {
            return $"{PartText.Count(pumps.Pumps.Count)} pumps together";
        }

        PumpCurve curve = pump.Curves[^1];
        return $"{Readable.PumpFlow(curve.FlowAt(curve.MinimumPressure))} against {Readable.Of(curve.MinimumPressure)} to "
            + $"{Readable.PumpFlow(curve.FlowAt(curve.MaximumPressure))} against {Readable.Of(curve.MaximumPressure)}, at {Readable.Of(curve.Voltage)}";
    }
}
