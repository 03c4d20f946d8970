using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Plots of how sure a result is.</summary>
public static class UncertaintyPlots
{
    private static readonly Ratio Low = Ratio.FromPercent(5);
    private static readonly Ratio High = Ratio.FromPercent(95);

    /// <summary>How the duty cycle scatters, with its limit.</summary>
    /// <param name="result">The samples.</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">No sample has a duty cycle.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static HistogramPlot DutyCycle(MonteCarloResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        Ratio limit = result.System.Nominal.Limits.DutyCycle;
        return Distribution(
            $"How the duty cycle scatters at {result.System.Point}", new PlotAxis("Duty cycle", "%"), result.DutyCycle, duty => duty.Percent)
            .WithUpperLimit($"limit {Readable.Of(limit)}", limit.Percent);
    }

    /// <summary>How a part's reserve scatters: under zero the part fails.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="part">A part that the system has a limit for.</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">The system has no limit for the part, or no sample has its reserve.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static HistogramPlot Reserve(MonteCarloResult result, Part part)
    {
        ArgumentNullException.ThrowIfNull(result);
        PartChance chance = result.Parts.FirstOrDefault(one => one.Part == part)
            ?? throw new ArgumentException($"part was {part}, which this system does not have or has no limit for. Choose a part among its margins.", nameof(part));
        return Distribution(
            $"Margin, {part.Name}, at {result.System.Point}",
            new PlotAxis("Margin", "%"),
            chance.Reserve,
            reserve => reserve.Percent)
            .WithLowerLimit("no margin", 0);
    }

    /// <summary>How any output scatters, with the median and the ends between which 90 % of the samples lie.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">The output's axis.</param>
    /// <param name="spread">The samples.</param>
    /// <param name="figure">The output in the unit of the axis.</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">The title is refused, or no sample has a value.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static HistogramPlot Distribution<T>(string title, PlotAxis x, OutputSpread<T> spread, Func<T, double> figure)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(spread);
        ArgumentNullException.ThrowIfNull(figure);
        if (spread.Known == 0)
        {
            throw new ArgumentException("spread has no known value: nothing can be said of any sample. Show a callout instead.", nameof(spread));
        }

        double[] values = [.. spread.Sorted.Select(figure)];
        double span = Math.Abs(values[^1] - values[0]);
        double At(Ratio share) => figure(spread.Percentile(share)!.Value);
        string unknown = spread.CannotSay == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $" In {spread.CannotSay:N0} more nothing can be said of it.");
        HistogramPlot plot = new(title, x, values);
        if (span > 0)
        {
            plot = plot
                .WithMark($"5 % under {OutputFigures.Label(At(Low), span)}", At(Low))
                .WithMark($"median {OutputFigures.Label(At(Ratio.FromPercent(50)), span)}", At(Ratio.FromPercent(50)))
                .WithMark($"5 % over {OutputFigures.Label(At(High), span)}", At(High));
        }

        return plot.WithNote(string.Create(
            CultureInfo.InvariantCulture,
            $"{spread.Known:N0} samples{(span > 0 ? ". Marked: the median, and the values that 5 % of them lie under and over" : ", all alike")}.{unknown}"));
    }

    /// <summary>One output of several runs: the value under which each share of the samples lies.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="value">The output's axis.</param>
    /// <param name="figure">The output in the unit of the axis.</param>
    /// <param name="cases">Runs, each with its name in the key; 1 to 6.</param>
    /// <returns>The plot: flat is sure, steep is unsure; where a curve meets a limit, the share on the axis below keeps it.</returns>
    /// <exception cref="ArgumentException">A text or the count of cases is refused, or no sample of a case has a value.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static LinePlot Percentiles<T>(
        string title, PlotAxis value, Func<T, double> figure, params IReadOnlyList<(string Name, OutputSpread<T> Spread)> cases)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(figure);
        Named.Check(cases, PlotStyle.MaximumLines, nameof(cases));
        double[] shares = [.. Enumerable.Range(1, 99).Select(share => (double)share)];
        return new LinePlot(
            title,
            new PlotAxis("Share of samples below", "%"),
            value,
            [.. cases.Select(one => new PlotLine(
                one.Name,
                shares,
                [.. shares.Select(share => one.Spread.Percentile(Ratio.FromPercent(share)) is { } at ? figure(at) : double.NaN)]))]);
    }

    /// <summary>What each input does to an output by itself: the widest bar on top, from the value as described.</summary>
    /// <param name="result">The tornado.</param>
    /// <returns>The plot, with the output's limit where it has one; a side that cannot be said has no bar, and its row says so.</returns>
    /// <exception cref="ArgumentException">Nothing can be said of the output as described, or of every bar.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static BarPlot Tornado(TornadoResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        IQuantity nominal = result.Nominal
            ?? throw new ArgumentException("result has no output as described, so there is nothing for bars to start from. Show a callout instead.", nameof(result));
        double start = OutputFigures.Number(nominal);
        BarPlot plot = new(
            $"What each input does to the {result.Output.Name} by itself",
            OutputFigures.Axis(result.Output, nominal),
            ["with the input at its low end", "with the input at its high end"],
            [.. result.Bars.Select(bar => new PlotBarRow(
                OutputFigures.Ends(bar) + Remark(bar, nominal),
                [.. Side(0, bar.AtLow), .. Side(1, bar.AtHigh)]))]);
        plot = plot
            .WithBase($"as described {OutputFigures.Text(nominal)}", start)
            .WithNote($"{Readable.Of(result.Tail)} of each input lies under its low end and {Readable.Of(result.Tail)} over its high end; all others stay as described.");
        return result.Output.LimitIn(result.System.Nominal) is { } limit
            ? plot.WithLimit($"limit {OutputFigures.Limit(limit)}", OutputFigures.Number(limit))
            : plot;

        IEnumerable<PlotBar> Side(int kind, IQuantity? at) => at is null ? [] : [new PlotBar(kind, start, OutputFigures.Number(at))];
    }

    /// <summary>Where an output's scatter comes from: the share of each input by itself and with the others, with 95 % intervals.</summary>
    /// <param name="result">The shares.</param>
    /// <returns>The plot, the input to measure first on top.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static BarPlot Sobol(SobolResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        static PlotBar Bar(int kind, Ratio share, (Ratio Minimum, Ratio Maximum) range) =>
            new(kind, 0, share.Percent, (range.Minimum.Percent, range.Maximum.Percent));
        return new BarPlot(
            $"Where the scatter of the {result.Output.Name} comes from",
            new PlotAxis("Share of the variance", "%"),
            ["by itself (first order)", "with the others (total)"],
            [.. result.Inputs.Select(share => new PlotBarRow(
                share.Input.Name,
                Bar(0, share.FirstOrder, share.FirstOrderInterval(OutputFigures.Default)),
                Bar(1, share.Total, share.TotalInterval(OutputFigures.Default))))])
            .WithNote($"Whiskers: 95 % interval, what the number of samples leaves open. {UncertaintyTables.Drawn(result.Samples, result.Sampling, result.IsComplete)}");
    }

    private static string Remark(TornadoBar bar, IQuantity nominal) => (bar.AtLow, bar.AtHigh) switch
    {
        ({ } low, { } high) when IsSame(low, nominal) && IsSame(high, nominal) => ", no effect",
        (null, null) => ", cannot say",
        (null, _) => ", low: cannot say",
        (_, null) => ", high: cannot say",
        _ => "",
    };

    private static bool IsSame(IQuantity one, IQuantity other)
    {
        double apart = Math.Abs(OutputFigures.Number(one) - OutputFigures.Number(other));
        return apart <= 1e-9 * Math.Abs(OutputFigures.Number(other));
    }
}
