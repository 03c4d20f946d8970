using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Systems;
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
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no system.</exception>
    public static Table Inputs(UncertainSystem system)
    {
        ArgumentNullException.ThrowIfNull(system);
        return new Table(
            "What is not known exactly",
            [TableColumn.Text("Input"), TableColumn.Number("5 % lie under"), TableColumn.Number("Median"), TableColumn.Number("5 % lie over")],
            [.. system.Inputs.Select(input => (IReadOnlyList<string>)
            [
                input.Name,
                OutputFigures.Text(input, input.ValueAt(Low)),
                OutputFigures.Text(input, input.ValueAt(Middle)),
                OutputFigures.Text(input, input.ValueAt(High)),
            ])],
            "×: a factor on what is described.");
    }

    /// <summary>How likely everything and each part holds, the least likely before the others.</summary>
    /// <param name="result">The samples.</param>
    /// <returns>The table, a line a part.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Chances(MonteCarloResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        bool unknown = result.Parts.Any(part => part.Chance.CannotSay > 0);
        IReadOnlyList<string> Row(string name, Chance chance, OutputSpread<Ratio> reserve) =>
        [
            name,
            Readable.Chance(chance.Holds),
            OutputFigures.Interval(chance.Interval(OutputFigures.Default), Readable.Chance),
            .. unknown ? (string[])[chance.CannotSay == 0 ? "–" : Readable.Chance(Ratio.FromDecimalFractions((double)chance.CannotSay / chance.Samples))] : [],
            reserve.Percentile(Low) is { } low ? OutputFigures.ReserveOf(low) : "–",
            reserve.Percentile(Middle) is { } middle ? OutputFigures.ReserveOf(middle) : "–",
        ];
        return new Table(
            $"How likely each part holds at {result.System.Point}",
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
            $"{Drawn(result.Samples, result.Sampling, result.IsComplete)} 95 % interval: what the number of samples leaves open. It does not know whether the distributions were guessed well.");
    }

    /// <summary>How the outputs scatter: percentiles, mean and standard deviation of each.</summary>
    /// <param name="result">The samples.</param>
    /// <returns>The table, a line an output; those of single injectors only where they differ.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Spread(MonteCarloResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
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
            .. unknown ? (string[])[spread.CannotSay == 0 ? "–" : spread.CannotSay.ToString("N0", CultureInfo.InvariantCulture)] : [],
        ];
        return new Table(
            $"How the results scatter at {result.System.Point}",
            [
                TableColumn.Text("Result"),
                TableColumn.Number("5 % under"),
                TableColumn.Number("Median"),
                TableColumn.Number("5 % over"),
                TableColumn.Number("Mean"),
                TableColumn.Number("Standard deviation"),
                .. Unknown(unknown),
            ],
            [
                Row("duty cycle", result.DutyCycle, Readable.DutyCycle),
                Row("fuel flow", result.FuelFlow, Readable.Of),
                Row("rail pressure, gauge", result.RailGauge, Readable.Of),
                Row("tightest margin of all components", result.MinimumReserve, OutputFigures.ReserveOf, Readable.DutyCycle),
                .. InjectorsDiffer(result)
                    ? (IReadOnlyList<string>[])
                    [
                        Row("duty cycle that the weakest injector needs", result.Injectors.MaximumDutyCycle, Readable.DutyCycle),
                        Row("lambda of the leanest cylinder", result.Injectors.LeanestLambda, OutputFigures.Lambda),
                        Row("lambda of the richest cylinder", result.Injectors.RichestLambda, OutputFigures.Lambda),
                    ]
                    : [],
            ],
            Drawn(result.Samples, result.Sampling, result.IsComplete));
    }

    /// <summary>What each input does to an output by itself, the widest before the others.</summary>
    /// <param name="result">The tornado.</param>
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Tornado(TornadoResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new Table(
            $"What each input does to the {result.Output.Name} by itself",
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
                OutputFigures.Text(bar.Input, bar.Low),
                OutputFigures.Text(bar.Input, bar.High),
                OutputFigures.Known(bar.AtLow),
                OutputFigures.Known(bar.AtHigh),
            ])],
            $"As described: {OutputFigures.Known(result.Nominal)}. {Readable.Of(result.Tail)} of each input lies under its low and {Readable.Of(result.Tail)} over its high; all others stay as described.{(result.IsComplete ? "" : $" Stopped: {result.Bars.Count} of {result.System.Inputs.Count} inputs were looked at.")}");
    }

    /// <summary>Where an output's scatter comes from, the input to measure first before the others.</summary>
    /// <param name="result">The shares.</param>
    /// <returns>The table, a line an input.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static Table Sobol(SobolResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        string scatter = result.StandardDeviation is { } deviation ? $" Standard deviation {OutputFigures.Text(deviation)}." : "";
        string unknown = result.CannotSay == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $" In {result.CannotSay:N0} of them nothing can be said; they are left out.");
        return new Table(
            $"Where the scatter of the {result.Output.Name} comes from",
            [
                TableColumn.Text("Input"),
                TableColumn.Number("By itself"),
                TableColumn.Number("95 % interval"),
                TableColumn.Number("With others"),
                TableColumn.Number("95 % interval"),
            ],
            [.. result.Inputs.Select(share => (IReadOnlyList<string>)
            [
                share.Input.Name,
                Readable.DutyCycle(share.FirstOrder),
                OutputFigures.Interval(share.FirstOrderInterval(OutputFigures.Default), Readable.DutyCycle),
                Readable.DutyCycle(share.Total),
                OutputFigures.Interval(share.TotalInterval(OutputFigures.Default), Readable.DutyCycle),
            ])],
            $"Shares of the variance.{scatter} {Drawn(result.Samples, result.Sampling, result.IsComplete)}{unknown} 95 % interval: what the number of samples leaves open. Where the true share is near zero, its estimate may be a little under it.");
    }

    /// <summary>A column for what cannot be said, where there is any such thing.</summary>
    private static TableColumn[] Unknown(bool any) => any ? [TableColumn.Number("Cannot say")] : [];

    /// <summary>True where the matching of the injectors is among the inputs.</summary>
    internal static bool InjectorsDiffer(MonteCarloResult result) =>
        result.Injectors.LeanestLambda.Percentile(Ratio.FromPercent(100)) is { } leanest
        && result.Injectors.RichestLambda.Percentile(Ratio.Zero) is { } richest
        && leanest > richest;

    /// <summary>How the samples were drawn, so that a reader can draw them again.</summary>
    internal static string Drawn(int samples, Sampling sampling, bool isComplete) => string.Create(
        CultureInfo.InvariantCulture,
        $"{samples:N0} samples{(isComplete ? "" : string.Create(CultureInfo.InvariantCulture, $" of the {sampling.Samples:N0} asked for"))}, seed {sampling.Seed}.");
}
