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
        Answer<VolumeFlow>("Q_r", style => style.InjectorFlow);
        Answer<UnitsNet.Pressure>("", style => style.Of);
        Answer<double>("G", style => gain => style.Number(gain));
        Answer<Length>("d", style => style.Bore);
        Answer<Area>("A", style => style.Of);
        Answer<Power>("P", style => style.Of);
        Answer<RotationalSpeed>("n", style => style.Of);
        Shown.By<PumpRequirement>((required, style) => new(
            "What the pumps must deliver",
            [.. required.Governing.Select(point => new Fact("Flow", "Q_req", style.PumpFlow(point.Flow), $"against {style.Of(point.PressureRise)}, at {PartText.Say(point.Point, style)}"))],
            "Each of these must lie on or under the pump's curve, at the voltage that its motor gets there."));
        Shown.By<PumpDutyPoint>((point, style) => new(
            $"What the pumps must deliver at {PartText.Say(point.Point, style)}",
            [
                new("Flow", "Q_req", style.PumpFlow(point.Flow), "reserve and minimum return flow included"),
                new("Pressure rise", "Δp_p", style.Of(point.PressureRise), "at that flow"),
            ]));
    }

    private static void Statements() => Shown.By<Statement>((statement, style) => new(
        $"Statement: {statement.Code}", [Fact.Words("Says", statement.In(style))]));

    private static void Answer<T>(string symbol, Func<TextStyle, Func<T, string>> text)
        where T : struct =>
        Shown.By<SizingAnswer<T>>((answer, style) => new(
            answer.IsFeasible ? "Answer" : "No value is adequate",
            [
                new("Answer", symbol, answer.Value is { } value ? text(style)(value) : "none", PartText.Say(answer, style)),
                Fact.Words(answer.IsFeasible ? "Limited by" : "Prevented by", PartText.Say(answer.Binding, style)),
                .. answer.Next is { } next ? (Fact[])[Fact.Words("Next", PartText.Say(next, style))] : [],
            ]));
}
