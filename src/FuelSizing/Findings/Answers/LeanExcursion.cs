using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A stretch on boost in which lambda was over the planned by more than the allowance.</summary>
public sealed record LeanExcursion : IReadable
{
    internal LeanExcursion(RunPlace from, RunPlace worst, double lambda, double planned, double limit, bool isPlanLimit, int rows, Duration? length) =>
        (From, Worst, Lambda, Planned, Limit, IsPlanLimit, Rows, Length) = (from, worst, lambda, planned, limit, isPlanLimit, rows, length);

    /// <summary>Where it begins.</summary>
    public RunPlace From { get; }

    /// <summary>Where lambda was highest.</summary>
    public RunPlace Worst { get; }

    /// <summary>The highest lambda.</summary>
    public double Lambda { get; }

    /// <summary>Lambda as planned at that place's speed.</summary>
    public double Planned { get; }

    /// <summary>Lambda over which that place is lean.</summary>
    public double Limit { get; }

    /// <summary>True if that is the leanest which the plan allows there; false if it is the planned lambda with its allowance.</summary>
    public bool IsPlanLimit { get; }

    /// <summary>Rows that it lasts.</summary>
    public int Rows { get; }

    /// <summary>Time that it lasts, if time was recorded.</summary>
    public Duration? Length { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Length is { } length
        ? Statement.Of("run.lean-stretch", $"lambda {Lambda:0.00} at {Worst}, {length:time} long")
        : Statement.Of("run.lean-rows", $"lambda {Lambda:0.00} at {Worst}, {Rows} rows long");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
