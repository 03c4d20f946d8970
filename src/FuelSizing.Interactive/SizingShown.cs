using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Sizing;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How the answers to inverse questions are shown.</summary>
internal static class SizingShown
{
    public static void Register()
    {
        Answer<VolumeFlow>("Q_r", Readable.InjectorFlow);
        Answer<UnitsNet.Pressure>("", Readable.Of);
        Answer<double>("g", gain => PartText.Number(gain));
        Answer<Length>("D", bore => PartText.Bore(bore));
        Answer<Area>("A", Readable.Of);
        Answer<Power>("P", Readable.Of);
        Answer<RotationalSpeed>("n", Readable.Of);
        Shown.By<PumpRequirement>(required => new(
            "What the pumps must deliver",
            [.. required.Governing.Select(point => new Fact("Flow", "Q_p", Readable.PumpFlow(point.Flow), $"against {Readable.Of(point.PressureRise)}, at {point.Point}"))],
            "Each of these must lie on or under the pump's curve, at the voltage that its motor gets there."));
        Shown.By<PumpDutyPoint>(point => new(
            $"What the pumps must deliver at {point.Point}",
            [
                new("Flow", "Q_p", Readable.PumpFlow(point.Flow), "reserve and least returned flow included"),
                new("Pressure rise", "Δp_p", Readable.Of(point.PressureRise), "at that flow"),
            ]));
    }

    private static void Answer<T>(string symbol, Func<T, string> text)
        where T : struct =>
        Shown.By<SizingAnswer<T>>(answer => new(
            answer.IsFeasible ? "Answer" : "No figure serves",
            [
                new("Answer", symbol, answer.Value is { } value ? text(value) : "none", answer.ToString()),
                Fact.Words(answer.IsFeasible ? "Held there by" : "In the way", $"{answer.Binding}"),
                .. answer.Next is { } next ? (Fact[])[Fact.Words("Next", $"{next}")] : [],
            ]));
}
