using FuelSizing.Checks;
using FuelSizing.Points;
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
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">No sample has a duty cycle.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static HistogramPlot DutyCycle(MonteCarloResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        SizingLimits limits = result.System.Nominal.Limits;
        HistogramPlot plot = Distribution(
            $"Spread of the duty cycle {PartText.Say(result.System.Where, style)}", new PlotAxis("Duty cycle", "%"), result.DutyCycle, duty => duty.Percent, style)
            .WithUpperLimit($"limit {style.Of(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}", limits.DutyCycle.Percent);
        return limits.MarkOf(RuleOfThumb.DutyCycle) is null ? plot : plot.WithNote($"{plot.Note} {RuleMark.Note}");
    }

    /// <summary>How a part's reserve scatters: under zero the part fails.</summary>
    /// <param name="result">The samples.</param>
    /// <param name="part">A part that the system has a limit for.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">The system has no limit for the part, or no sample has its reserve.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static HistogramPlot Reserve(MonteCarloResult result, Part part, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        PartChance chance = result.Parts.FirstOrDefault(one => one.Part == part)
            ?? throw new ArgumentException($"part was {part}, which this system does not have or has no limit for. Choose a part among its margins.", nameof(part));
        return Distribution(
            $"Margin, {part.Name}, {PartText.Say(result.System.Where, style)}",
            new PlotAxis("Margin", "%"),
            chance.Reserve,
            reserve => reserve.Percent,
            style)
            .WithLowerLimit("no margin", 0);
    }

    /// <summary>Lambda of the leanest cylinder along a boost line: its median and the ends between which 90 % of the samples lie, against engine speed.</summary>
    /// <param name="result">The samples of a system that is judged along a boost line.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot: a gap where lambda is not known in any sample.</returns>
    /// <exception cref="ArgumentException">The system is judged at one point, or lambda is known nowhere.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static LinePlot Lambda(MonteCarloResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        if (result.System.Line is null)
        {
            throw new ArgumentException("result is of one operating point, which makes no line. Judge the system by UncertainSystem.Along, or show Spread.", nameof(result));
        }

        FuelSystem system = result.System.Nominal;
        double[] speeds = [.. result.Mixture.Select(place => style.Units.Speed.ValueOf(place.Point.Speed))];
        PlotLine Line(string name, Ratio share) => new(
            name, speeds, [.. result.Mixture.Select(place => place.Lambda.Percentile(share) is { } at && double.IsFinite(at) ? at : double.NaN)]);
        return MixturePlots.WithFixedLimits(
            new LinePlot(
                "Lambda of the leanest cylinder along the line",
                new PlotAxis("Engine speed", style.Units.Speed.Unit),
                new PlotAxis("Lambda", "1"),
                [
                    Line("95th percentile", High),
                    Line("median", Ratio.FromPercent(50)),
                    Line("5th percentile", Low),
                    .. MixturePlots.LeanestAllowed("leanest allowed", system, result.System.NominalResults, style),
                    .. MixturePlots.Target(system, result.System.NominalResults, style),
                ]),
            system,
            style);
    }

    /// <summary>How any output scatters, with the median and the ends between which 90 % of the samples lie.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="title">What the plot shows; not empty.</param>
    /// <param name="x">The output's axis.</param>
    /// <param name="spread">The samples.</param>
    /// <param name="figure">The output in the unit of the axis.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The histogram.</returns>
    /// <exception cref="ArgumentException">The title is refused, or no sample has a value.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static HistogramPlot Distribution<T>(string title, PlotAxis x, OutputSpread<T> spread, Func<T, double> figure, TextStyle? style = null)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(spread);
        ArgumentNullException.ThrowIfNull(figure);
        style ??= Units.Current;
        if (spread.Known == 0)
        {
            throw new ArgumentException("spread has no known value: nothing can be said of any sample. Show a callout instead.", nameof(spread));
        }

        double[] values = [.. spread.Sorted.Select(figure)];
        double span = Math.Abs(values[^1] - values[0]);
        double At(Ratio share) => figure(spread.Percentile(share)!.Value);
        string unknown = spread.CannotSay == 0
            ? ""
            : $" In {style.Count(spread.CannotSay)} more nothing can be said of it.";
        HistogramPlot plot = new HistogramPlot(title, x, values).With(style);
        if (span > 0)
        {
            plot = plot
                .WithMark($"5th percentile {OutputFigures.Label(At(Low), span, style)}", At(Low))
                .WithMark($"median {OutputFigures.Label(At(Ratio.FromPercent(50)), span, style)}", At(Ratio.FromPercent(50)))
                .WithMark($"95th percentile {OutputFigures.Label(At(High), span, style)}", At(High));
        }

        return plot.WithNote(
            $"{style.Count(spread.Known)} samples{(span > 0 ? ". Marked: the median, the 5th and the 95th percentile" : ", all alike")}.{unknown}");
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
                [.. shares.Select(share => one.Spread.Percentile(Ratio.FromPercent(share)) is { } at ? figure(at) : double.NaN)]))]).With(Units.Current);
    }

    /// <summary>What each input does to an output by itself: the widest bar on top, from the value as described.</summary>
    /// <param name="result">The tornado.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot, with the output's limit where it has one; a side that cannot be said has no bar, and its row says so.</returns>
    /// <exception cref="ArgumentException">Nothing can be said of the output as described, or of every bar.</exception>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static BarPlot Tornado(TornadoResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        IQuantity nominal = result.Nominal
            ?? throw new ArgumentException("result has no output as described, so there is nothing for bars to start from. Show a callout instead.", nameof(result));
        double start = OutputFigures.Number(nominal, style);
        BarPlot plot = new(
            $"Effect of each input alone on the {result.Output.Name}",
            OutputFigures.Axis(result.Output, nominal, style),
            ["with the input at its low end", "with the input at its high end"],
            [.. result.Bars.Select(bar => new PlotBarRow(
                OutputFigures.Ends(bar, style) + Remark(bar, nominal, style),
                [.. Side(0, bar.AtLow), .. Side(1, bar.AtHigh)]))]);
        plot = plot
            .WithBase($"nominal {OutputFigures.Text(nominal, style)}", start)
            .WithNote($"{style.Of(result.Tail)} of each input lies below its low end and {style.Of(result.Tail)} above its high end; all others stay nominal.")
            .With(style);
        if (result.Output.LimitIn(result.System.Nominal) is not { } limit)
        {
            return plot;
        }

        // Of the outputs only the duty cycle has a limit that may be a rule of thumb.
        string mark = result.Output == SystemOutput.DutyCycle ? RuleMark.Of(result.System.Nominal.Limits, RuleOfThumb.DutyCycle) : string.Empty;
        plot = plot.WithLimit($"limit {OutputFigures.Limit(limit, style)}{mark}", OutputFigures.Number(limit, style));
        return mark.Length == 0 ? plot : plot.WithNote($"{plot.Note} {RuleMark.Note}");

        IEnumerable<PlotBar> Side(int kind, IQuantity? at) => at is null ? [] : [new PlotBar(kind, start, OutputFigures.Number(at, style))];
    }

    /// <summary>Where an output's scatter comes from: the share of each input by itself and with the others, with 95 % intervals.</summary>
    /// <param name="result">The shares.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot, the input to measure first on top.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static BarPlot Sobol(SobolResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        style ??= Units.Current;
        static PlotBar Bar(int kind, Ratio share, (Ratio Minimum, Ratio Maximum) range) =>
            new(kind, 0, share.Percent, (range.Minimum.Percent, range.Maximum.Percent));
        return new BarPlot(
            $"Where the spread of the {result.Output.Name} comes from",
            new PlotAxis("Share of the variance", "%"),
            ["first-order index", "total-order index"],
            [.. result.Inputs.Select(share => new PlotBarRow(
                share.Input.Name,
                Bar(0, share.FirstOrder, share.FirstOrderInterval(OutputFigures.Default)),
                Bar(1, share.Total, share.TotalInterval(OutputFigures.Default))))])
            .WithNote($"Whiskers: 95 % interval, what the number of samples leaves open. {UncertaintyTables.Drawn(result.Samples, result.Sampling, result.IsComplete, style)}")
            .With(style);
    }

    private static string Remark(TornadoBar bar, IQuantity nominal, TextStyle style) => (bar.AtLow, bar.AtHigh) switch
    {
        ({ } low, { } high) when IsSame(low, nominal, style) && IsSame(high, nominal, style) => ", no effect",
        (null, null) => ", cannot say",
        (null, _) => ", low: cannot say",
        (_, null) => ", high: cannot say",
        _ => "",
    };

    private static bool IsSame(IQuantity one, IQuantity other, TextStyle style)
    {
        double apart = Math.Abs(OutputFigures.Number(one, style) - OutputFigures.Number(other, style));
        return apart <= 1e-9 * Math.Abs(OutputFigures.Number(other, style));
    }
}
