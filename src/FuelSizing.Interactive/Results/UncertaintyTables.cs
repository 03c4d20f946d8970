using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Tables of how sure a result is.</summary>
public static class UncertaintyTables
{
    private static readonly Ratio Low = Ratio.FromPercent(5);
    private static readonly Ratio Middle = Ratio.FromPercent(50);
    private static readonly Ratio High = Ratio.FromPercent(95);

    /// <summary>The inputs that are not known exactly: where 90 % of each lie, and its median.</summary>
    /// <param name="system">The uncertain system.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no system.</exception>
    public static Table Inputs(UncertainSystem system, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(system);
        style ??= Units.Current;
        return new Table(
            "What is not known exactly",
            [TableColumn.Text("Input"), TableColumn.Number("5th percentile"), TableColumn.Number("Median"), TableColumn.Number("95th percentile")],
            [.. system.Inputs.Select(input => (IReadOnlyList<string>)
            [
                input.Name,
                OutputFigures.Text(input, input.ValueAt(Low), style),
                OutputFigures.Text(input, input.ValueAt(Middle), style),
                OutputFigures.Text(input, input.ValueAt(High), style),
            ])],
            "×: a factor on the nominal value.");
    }

    /// <summary>How likely everything and each part holds, the least likely before the others.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a part.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Chances(MonteCarloResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        bool unknown = result.Parts.Any(part => part.Chance.CannotSay > 0);
        IReadOnlyList<string> Row(string name, Chance chance, OutputSpread<Ratio> reserve) =>
        [
            name,
            style.Chance(chance.Holds),
            OutputFigures.Interval(chance.Interval(OutputFigures.Default), style, "chance"),
            .. unknown ? (string[])[chance.CannotSay == 0 ? "–" : style.Chance(Ratio.FromDecimalFractions((double)chance.CannotSay / chance.Samples))] : [],
            reserve.Percentile(Low) is { } low ? OutputFigures.ReserveOf(low, style) : "–",
            reserve.Percentile(Middle) is { } middle ? OutputFigures.ReserveOf(middle, style) : "–",
        ];
        return new Table(
            $"How likely each part holds {PartText.Say(result.System.Where, style)}",
            [
                TableColumn.Text("Part"),
                TableColumn.Number("Holds"),
                TableColumn.Number("95 % interval"),
                .. Unknown(unknown),
                TableColumn.Number("Margin, 5th percentile"),
                TableColumn.Number("Margin, median"),
            ],
            [
                Row("everything at once", result.All, result.MinimumReserve),
                .. result.Parts.OrderBy(part => part.Chance.Holding).Select(part => Row(part.Part.Name, part.Chance, part.Reserve)),
            ],
            $"{Drawn(result.Samples, result.Sampling, result.IsComplete, style)} 95 % interval: what the number of samples leaves open. It does not know whether the distributions were guessed well.");
    }

    /// <summary>How the outputs scatter: percentiles, mean and standard deviation of each.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line an output; those of single injectors only where they differ.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Spread(MonteCarloResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        bool unknown = result.DutyCycle.CannotSay + result.RailGauge.CannotSay + result.MinimumReserve.CannotSay + result.Injectors.LeanestLambda.CannotSay > 0;
        IReadOnlyList<string> Row<T>(string name, OutputSpread<T> spread, Func<T, string> text, Func<T, string>? deviation = null)
            where T : struct =>
        [
            name,
            CircuitText.Known(spread.Percentile(Low), text),
            CircuitText.Known(spread.Percentile(Middle), text),
            CircuitText.Known(spread.Percentile(High), text),
            CircuitText.Known(spread.Mean, text),
            CircuitText.Known(spread.StandardDeviation, deviation ?? text),
            .. unknown ? (string[])[spread.CannotSay == 0 ? "–" : style.Count(spread.CannotSay)] : [],
        ];
        return new Table(
            $"Spread of the results {PartText.Say(result.System.Where, style)}",
            [
                TableColumn.Text("Result"),
                TableColumn.Number("5th percentile"),
                TableColumn.Number("Median"),
                TableColumn.Number("95th percentile"),
                TableColumn.Number("Mean"),
                TableColumn.Number("Standard deviation"),
                .. Unknown(unknown),
            ],
            [
                Row("duty cycle", result.DutyCycle, style.DutyCycle),
                Row("fuel flow", result.FuelFlow, style.Of),
                Row("rail pressure, gauge", result.RailGauge, style.Of),
                Row("tightest margin of all components", result.MinimumReserve, reserve => OutputFigures.ReserveOf(reserve, style), style.DutyCycle),
                .. InjectorsDiffer(result) || result.System.Nominal.Controller is not FuelSizing.Controllers.IdealController
                    ? (IReadOnlyList<string>[])
                    [
                        Row("duty cycle that the weakest injector needs", result.Injectors.MaximumDutyCycle, style.DutyCycle),
                        Row("lambda of the leanest cylinder", result.Injectors.LeanestLambda, lambda => OutputFigures.Lambda(lambda, style)),
                        Row("lambda of the richest cylinder", result.Injectors.RichestLambda, lambda => OutputFigures.Lambda(lambda, style)),
                    ]
                    : [],
            ],
            Drawn(result.Samples, result.Sampling, result.IsComplete, style));
    }

    /// <summary>What each input does to an output by itself, the widest before the others.</summary>
    /// <param name="result">The tornado.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Tornado(TornadoResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        return new Table(
            $"Effect of each input alone on the {result.Output.Name}",
            [
                TableColumn.Text("Input"),
                TableColumn.Number("Low"),
                TableColumn.Number("High"),
                TableColumn.Number("Result at low"),
                TableColumn.Number("Result at high"),
            ],
            [.. result.Bars.Select(bar => (IReadOnlyList<string>)
            [
                bar.Input.Name,
                OutputFigures.Text(bar.Input, bar.Low, style),
                OutputFigures.Text(bar.Input, bar.High, style),
                OutputFigures.Known(bar.AtLow, style),
                OutputFigures.Known(bar.AtHigh, style),
            ])],
            $"Nominal: {OutputFigures.Known(result.Nominal, style)}. {style.Of(result.Tail)} of each input lies below its low end and {style.Of(result.Tail)} above its high end; all others stay nominal.{(result.IsComplete ? "" : $" Stopped: {result.Bars.Count} of {result.System.Inputs.Count} inputs were looked at.")}");
    }

    /// <summary>Where an output's scatter comes from, the input to measure first before the others.</summary>
    /// <param name="result">The shares.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Sobol(SobolResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        string scatter = result.StandardDeviation is { } deviation ? $" Standard deviation {OutputFigures.Text(deviation, style)}." : "";
        string unknown = result.CannotSay == 0
            ? ""
            : $" In {style.Count(result.CannotSay)} of them nothing can be said; they are left out.";
        return new Table(
            $"Where the spread of the {result.Output.Name} comes from",
            [
                TableColumn.Text("Input"),
                TableColumn.Number("First-order index"),
                TableColumn.Number("95 % interval"),
                TableColumn.Number("Total-order index"),
                TableColumn.Number("95 % interval"),
            ],
            [.. result.Inputs.Select(share => (IReadOnlyList<string>)
            [
                share.Input.Name,
                style.DutyCycle(share.FirstOrder),
                OutputFigures.Interval(share.FirstOrderInterval(OutputFigures.Default), style, "duty-cycle"),
                style.DutyCycle(share.Total),
                OutputFigures.Interval(share.TotalInterval(OutputFigures.Default), style, "duty-cycle"),
            ])],
            $"Shares of the variance.{scatter} {Drawn(result.Samples, result.Sampling, result.IsComplete, style)}{unknown} 95 % interval: what the number of samples leaves open. Where the true share is near zero, its estimate may be a little under it.");
    }

    /// <summary>A column for what cannot be said, where there is any such thing.</summary>
    private static TableColumn[] Unknown(bool any) => any ? [TableColumn.Number("Cannot say")] : [];

    /// <summary>True where the matching of the injectors is among the inputs.</summary>
    internal static bool InjectorsDiffer(MonteCarloResult result) =>
        result.Injectors.LeanestLambda.Percentile(Ratio.FromPercent(100)) is { } leanest
        && result.Injectors.RichestLambda.Percentile(Ratio.Zero) is { } richest
        && leanest > richest;

    /// <summary>How the samples were drawn, so that a reader can draw them again.</summary>
    internal static string Drawn(int samples, Sampling sampling, bool isComplete, TextStyle style) =>
        $"{style.Count(samples)} samples{(isComplete ? "" : $" of the {style.Count(sampling.Samples)} requested")}, seed {sampling.Seed}.";
}
