using FuelSizing.Quantities;
using FuelSizing.Sizing;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How the answers to inverse questions are shown.</summary>
internal static class SizingShown
{
    public static void Register()
    {
        Statements();
        Answer<VolumeFlow>("Q_r");
        Answer<UnitsNet.Pressure>("");
        Answer<double>("G");
        Answer<Length>("d");
        Answer<Area>("A");
        Answer<Power>("P");
        Answer<RotationalSpeed>("n");
        Shown.By<PumpRequirement>((required, style) => new(
            "What the pumps must deliver",
            [.. required.Governing.Select(point => new Fact("Flow", "Q_req", style.Write(point.Flow, "pump-flow:up"), $"against {style.Write(point.PressureRise, "pressure:up")}, at {PartText.Say(point.Point, style)}"))],
            "Each of these must lie on or under the pump's curve, at the voltage that its motor gets there."));
        Shown.By<PumpDutyPoint>((point, style) => new(
            $"What the pumps must deliver at {PartText.Say(point.Point, style)}",
            [
                new("Flow", "Q_req", style.Write(point.Flow, "pump-flow:up"), "reserve and minimum return flow included"),
                new("Pressure rise", "Δp_p", style.Write(point.PressureRise, "pressure:up"), "at that flow"),
            ]));
    }

    private static void Statements() => Shown.By<Statement>((statement, style) => new(
        $"Statement: {statement.Code}", [Fact.Words("Says", statement.In(style))]));

    private static void Answer<T>(string symbol)
        where T : struct
    {
        Shown.By<SizingRange<T>>((range, style) => new("Where everything holds", [Fact.Words("Range", PartText.Say(range, style))]));
        Shown.By<SizingAnswer<T>>((answer, style) => new(
            answer.IsFeasible ? "Answer" : answer.Ranges.Count > 0 ? "No such value; see the range that holds" : "No value is adequate",
            [
                new("Answer", symbol, answer.Figure is { } figure ? PartText.Say(figure, style) : "none", PartText.Say(answer, style)),
                Fact.Words(answer.IsFeasible ? "Limited by" : "Prevented by", PartText.Say(answer.Binding, style)),
                .. answer.Next is { } next ? (Fact[])[Fact.Words("Next", PartText.Say(next, style))] : [],
            ]));
    }
}
