using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>Every lean stretch on boost (of an engine without compressor: near full load), and what counts as one.</summary>
public sealed record LeanExcursions : IReadable
{
    /// <summary>Share by which lambda may be over the planned: common practice, no source.</summary>
    internal const double Allowance = 0.06;

    /// <summary>Stretches that the words name one by one.</summary>
    private const int Named = 5;

    internal LeanExcursions(
        double planned, IReadOnlyList<LeanExcursion> stretches, string load, int rowsJudged, int rows, Statement? gap) =>
        (Planned, Stretches, Load, RowsJudged, Rows, Gap) = (planned, [.. stretches], load, rowsJudged, rows, gap);

    /// <summary>Lambda as planned; where that changes with speed, the richest. See <see cref="LeanExcursion.Planned"/> for that of a stretch.</summary>
    public double Planned { get; }

    /// <summary>
    /// Lambda over which a row on boost is lean: the planned one and an allowance of 6 % (common practice, no source). Where the plan allows less
    /// (<see cref="Points.MixtureLimits"/>), that counts instead: see <see cref="LeanExcursion.Limit"/>.
    /// </summary>
    public double Limit => Planned * (1 + Allowance);

    /// <summary>Rows on boost of which lambda is known.</summary>
    public int RowsJudged { get; }

    /// <summary>All rows on boost, and those that may have been.</summary>
    public int Rows { get; }

    /// <summary>Which rows were not judged, and why; none where all were.</summary>
    public Statement? Gap { get; }

    /// <summary>In the order of the run; none where no row that was judged is lean.</summary>
    public IReadOnlyList<LeanExcursion> Stretches { get; }

    /// <summary>The stretch with the highest lambda; none where there is no stretch.</summary>
    public LeanExcursion? Worst => Stretches.MaxBy(stretch => stretch.Lambda);

    /// <summary>On boost; of an engine without compressor near full load.</summary>
    internal string Load { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Stretches.Count > Named
        ? Statement.Of("run.lean-many", $"{Stretches.Take(Named).ToArray():;}; and {Stretches.Count - Named} stretches more")
        : Stretches.Count > 0 ? Statement.Of("run.lean", $"{Stretches:;}")
        : Gap is null ? Statement.Of("run.never-lean", $"no lean stretch {Load}")
        : Statement.Of("run.lean-in-part", $"not lean where lambda is known, judged in part: {Gap}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
