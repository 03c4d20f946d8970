namespace FuelSizing.Interactive;

/// <summary>How a check from a few numbers is shown, and what it assumes.</summary>
internal static class FrontShown
{
    public static void Register()
    {
        Shown.By<QuickCheck>((check, style) => new(
            "Check from a few numbers",
            [
                Fact.Words("Verdict", PartText.Say(check.Verdict, style)),
                .. check.Margins.Select(range => Fact.Words(range.Part.Name, PartText.Say(range, style))),
                .. check.Verdict.NotJudged.Select(open => Fact.Words("Not judged", PartText.Say(open, style))),
                .. check.Assumed.Select(assumed => Fact.Words("Assumed", PartText.Say(assumed, style))),
            ],
            Cautions.OneLine));
        Shown.By<MarginRange>((range, style) => new(
            $"Margin over what is assumed: {range.Part.Name}",
            [
                Fact.Words("At worst", PartText.Say(range.Worst, style)),
                Fact.Words("At best", PartText.Say(range.Best, style)),
            ]));
        Shown.By<Assumption>((assumed, style) => new(
            $"Assumed: {assumed.Name}",
            [
                Fact.Words(assumed.Best is null ? "Value" : "At worst", PartText.Say(assumed.Worst, style)),
                .. assumed.Best is { } best ? (Fact[])[Fact.Words("At best", PartText.Say(best, style))] : [],
                Fact.Words("Source", PartText.Say(assumed.Source, style)),
                Fact.Words("Replaced by", PartText.Say(assumed.ReplacedBy, style)),
            ]));
    }
}
