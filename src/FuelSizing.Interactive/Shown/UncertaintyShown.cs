using FuelSizing.Quantities;
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
        Shown.By<UncertainInput>((input, style) => new(
            $"Uncertain input: {input.Name}",
            [.. Shares.Select(share => new Fact($"{style.Of(share)} lie below", "", PartText.Of(input.ValueAt(share), style), input.IsFactor ? "a factor on what is described" : ""))]));
        Shown.By<CorrelatedInputs>((pair, style) => new(
            "Two inputs measured together",
            [
                Fact.Words("Inputs", $"{pair.One.Name} and {pair.Other.Name}"),
                Fact.Words("Correlation of their normal scores", style.Number(pair.Correlation.DecimalFractions)),
            ]));
        Shown.By<SystemOutput>((output, style) => new("An output to look at", [Fact.Words("Output", output.Name)]));
        Shown.By<Sampling>((sampling, style) => new(
            "How samples are drawn",
            [
                new("Samples", "N_s", style.Count(sampling.Samples)),
                new("Seed", "", sampling.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture), "the same seed draws the same samples"),
                new("Threads", "", style.Count(sampling.Threads)),
            ]));
        Shown.By<Chance>((chance, style) => new("Chance that it holds", Of(chance, style)));
        Shown.By<PartChance>((part, style) => new(
            $"Chance that it holds: {part.Part.Name}",
            [.. Of(part.Chance, style), .. Of(part.Reserve, reserve => OutputFigures.ReserveOf(reserve, style), style).Select(fact => fact with { Name = $"Margin: {fact.Name}" })]));
        Spread<Ratio>(style => style.DutyCycle);
        Spread<UnitsNet.Pressure>(style => style.Of);
        Spread<MassFlow>(style => style.Of);
        Spread<double>(style => lambda => OutputFigures.Lambda(lambda, style));
        Shown.By<MixtureSpread>((spread, style) => new(
            $"Spread of lambda at {PartText.Say(spread.Point, style)}",
            [.. Of(spread.Lambda, lambda => OutputFigures.Lambda(lambda, style), style).Select(fact => fact with { Symbol = "λ" })]));
        Shown.By<InjectorSpread>((spread, style) => new(
            "Spread of single injectors",
            [
                .. Of(spread.MaximumDutyCycle, style.DutyCycle, style).Select(fact => fact with { Name = $"Duty cycle of the weakest: {fact.Name}", Symbol = "D" }),
                .. Of(spread.LeanestLambda, lambda => OutputFigures.Lambda(lambda, style), style).Select(fact => fact with { Name = $"Leanest cylinder: {fact.Name}", Symbol = "λ" }),
                .. Of(spread.RichestLambda, lambda => OutputFigures.Lambda(lambda, style), style).Select(fact => fact with { Name = $"Richest cylinder: {fact.Name}", Symbol = "λ" }),
            ]));
        Distribution<BrakeSpecificFuelConsumption>(style => style.Of);
        Distribution<ElectricPotential>(style => style.Of);
        Distribution<Duration>(style => style.PulseChange);
        Distribution<ElectricResistance>(style => style.Of);
        Distribution<UnitsNet.Pressure>(style => style.Of);
        Distribution<Ratio>(style => style.DutyCycle);
        Distribution<Temperature>(style => style.Of);
        Shown.By<TornadoBar>((bar, style) => new(
            $"Effect of {bar.Input.Name} alone",
            [
                new("Low", "", PartText.Of(bar.Low, style)),
                new("Nominal", "", PartText.Of(bar.Nominal, style)),
                new("High", "", PartText.Of(bar.High, style)),
                new("Result at low", "", PartText.Of(bar.AtLow, style)),
                new("Result at high", "", PartText.Of(bar.AtHigh, style)),
            ]));
        Shown.By<VarianceOfInput>((share, style) => new(
            $"Share of the variance: {share.Input.Name}",
            [
                new("First-order index", "S_1", style.DutyCycle(share.FirstOrder), $"± {style.DutyCycle(share.FirstOrderStandardError)} (standard error)"),
                new("Total-order index", "S_T", style.DutyCycle(share.Total), $"± {style.DutyCycle(share.TotalStandardError)} (standard error)"),
            ]));
    }

    private static void Spread<T>(Func<TextStyle, Func<T, string>> text)
        where T : struct =>
        Shown.By<OutputSpread<T>>((spread, style) => new("Spread", Of(spread, text(style), style)));

    private static void Distribution<T>(Func<TextStyle, Func<T, string>> text)
        where T : struct, IQuantity, IComparable<T> =>
        Shown.By<Distribution<T>>((distribution, style) => new(
            "Distribution", [new("Minimum", "", text(style)(distribution.Minimum)), new("Maximum", "", text(style)(distribution.Maximum))]));

    private static Fact[] Of(Chance chance, TextStyle style)
    {
        (Ratio minimum, Ratio maximum) = chance.Interval(OutputFigures.Default);
        return
        [
            new("Holds", "", style.Chance(chance.Holds), $"95 % interval {OutputFigures.Interval((minimum, maximum), style, "chance")}"),
            new("Samples", "N_s", style.Count(chance.Samples)),
            new("Of them hold", "", style.Count(chance.Holding)),
            new("Of them fail", "", style.Count(chance.Failing)),
            new("Of them cannot be said", "", style.Count(chance.CannotSay)),
        ];
    }

    private static Fact[] Of<T>(OutputSpread<T> spread, Func<T, string> text, TextStyle style)
        where T : struct =>
    [
        .. Shares.Select(share => new Fact($"{style.Of(share)} lie below", "", CircuitText.Known(spread.Percentile(share), text))),
        new("Mean", "", CircuitText.Known(spread.Mean, text)),
        new("Standard deviation", "", CircuitText.Known(spread.StandardDeviation, text)),
        new("Known in", "", style.Count(spread.Known), "samples"),
    ];
}
