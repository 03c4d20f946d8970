using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How the answers to "how sure are we?" are shown.</summary>
internal static class UncertaintyShown
{
    private static readonly Ratio[] Shares = [Ratio.FromPercent(5), Ratio.FromPercent(50), Ratio.FromPercent(95)];

    public static void Register()
    {
        Shown.As<MonteCarloResult>(UncertaintyTables.Chances);
        Shown.As<TornadoResult>(UncertaintyTables.Tornado);
        Shown.As<SobolResult>(UncertaintyTables.Sobol);
        Shown.As<UncertainSystem>(UncertaintyTables.Inputs);
        Shown.By<UncertainInput>(input => new(
            $"Uncertain input: {input.Name}",
            [.. Shares.Select(share => new Fact($"{Readable.Of(share)} lie under", "", PartText.Of(input.ValueAt(share)), input.IsFactor ? "a factor on what is described" : ""))]));
        Shown.By<SystemOutput>(output => new("An output to look at", [Fact.Words("Output", output.Name)]));
        Shown.By<Sampling>(sampling => new(
            "How samples are drawn",
            [
                new("Samples", "N", PartText.Count(sampling.Samples)),
                new("Seed", "", sampling.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture), "the same seed draws the same samples"),
                new("Threads", "", PartText.Count(sampling.Threads)),
            ]));
        Shown.By<Chance>(chance => new("Chance that it holds", Of(chance)));
        Shown.By<PartChance>(part => new(
            $"Chance that it holds: {part.Part.Name}",
            [.. Of(part.Chance), .. Of(part.Reserve, OutputFigures.ReserveOf).Select(fact => fact with { Name = $"Margin: {fact.Name}" })]));
        Spread<Ratio>(Readable.DutyCycle);
        Spread<UnitsNet.Pressure>(Readable.Of);
        Spread<MassFlow>(Readable.Of);
        Spread<double>(OutputFigures.Lambda);
        Shown.By<InjectorSpread>(spread => new(
            "How single injectors scatter",
            [
                .. Of(spread.MaximumDutyCycle, Readable.DutyCycle).Select(fact => fact with { Name = $"Duty cycle of the weakest: {fact.Name}", Symbol = "D" }),
                .. Of(spread.LeanestLambda, OutputFigures.Lambda).Select(fact => fact with { Name = $"Leanest cylinder: {fact.Name}", Symbol = "λ" }),
                .. Of(spread.RichestLambda, OutputFigures.Lambda).Select(fact => fact with { Name = $"Richest cylinder: {fact.Name}", Symbol = "λ" }),
            ]));
        Distribution<BrakeSpecificFuelConsumption>(Readable.Of);
        Distribution<ElectricPotential>(Readable.Of);
        Distribution<UnitsNet.Pressure>(Readable.Of);
        Distribution<Ratio>(Readable.DutyCycle);
        Distribution<Temperature>(Readable.Of);
        Shown.By<TornadoBar>(bar => new(
            $"What {bar.Input.Name} does by itself",
            [
                new("Low", "", PartText.Of(bar.Low)),
                new("As described", "", PartText.Of(bar.Nominal)),
                new("High", "", PartText.Of(bar.High)),
                new("Result at low", "", PartText.Of(bar.AtLow)),
                new("Result at high", "", PartText.Of(bar.AtHigh)),
            ]));
        Shown.By<VarianceOfInput>(share => new(
            $"Share of the variance: {share.Input.Name}",
            [
                new("By itself", "S_1", Readable.DutyCycle(share.FirstOrder), $"± {Readable.DutyCycle(share.FirstOrderStandardError)} (standard error)"),
                new("With others", "S_T", Readable.DutyCycle(share.Total), $"± {Readable.DutyCycle(share.TotalStandardError)} (standard error)"),
            ]));
    }

    private static void Spread<T>(Func<T, string> text)
        where T : struct =>
        Shown.By<OutputSpread<T>>(spread => new("How it scatters", Of(spread, text)));

    private static void Distribution<T>(Func<T, string> text)
        where T : struct, IQuantity, IComparable<T> =>
        Shown.By<Distribution<T>>(distribution => new(
            "Distribution", [new("Least", "", text(distribution.Minimum)), new("Most", "", text(distribution.Maximum))]));

    private static Fact[] Of(Chance chance)
    {
        (Ratio minimum, Ratio maximum) = chance.Interval(OutputFigures.Default);
        return
        [
            new("Holds", "P", Readable.Chance(chance.Holds), $"95 % interval {OutputFigures.Interval((minimum, maximum), Readable.Chance)}"),
            new("Samples", "N", PartText.Count(chance.Samples)),
            new("Of them hold", "", PartText.Count(chance.Holding)),
            new("Of them fail", "", PartText.Count(chance.Failing)),
            new("Of them cannot be said", "", PartText.Count(chance.CannotSay)),
        ];
    }

    private static Fact[] Of<T>(OutputSpread<T> spread, Func<T, string> text)
        where T : struct =>
    [
        .. Shares.Select(share => new Fact($"{Readable.Of(share)} lie under", "", CircuitText.Known(spread.Percentile(share), text))),
        new("Mean", "", CircuitText.Known(spread.Mean, text)),
        new("Standard deviation", "σ", CircuitText.Known(spread.StandardDeviation, text)),
        new("Known in", "N", PartText.Count(spread.Known), "samples"),
    ];
}
