using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>One comparison of run and plan: the difference, and the allowed difference.</summary>
/// <remarks>
/// Allowed: twice the standard deviation that the tolerances of the parts, the accuracy of the channels and the scatter of the run make
/// together.
/// </remarks>
public sealed record PlanAgreement : IReadable
{
    /// <summary>Share of points that may be beyond by chance.</summary>
    private const double Few = 0.05;

    internal PlanAgreement(string name, double difference, double allowed, string unit, int points, int beyond) =>
        (Name, Difference, Allowed, Unit, Points, PointsBeyond) = (name, difference, allowed, unit, points, beyond);

    /// <summary>What is compared.</summary>
    public string Name { get; }

    /// <summary>Measured − predicted, the median over the run, in <see cref="Unit"/>.</summary>
    public double Difference { get; }

    /// <summary>Difference that is within tolerances and accuracy, in <see cref="Unit"/>.</summary>
    public double Allowed { get; }

    /// <summary>kPa or %.</summary>
    public string Unit { get; }

    /// <summary>Points compared.</summary>
    public int Points { get; }

    /// <summary>Points whose own difference is over three of its standard deviations.</summary>
    public int PointsBeyond { get; }

    /// <summary>True if the difference is within what is allowed, and no more than 5 % of the points are beyond.</summary>
    public bool Agrees => Math.Abs(Difference) <= Allowed && PointsBeyond <= Few * Points;

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Agrees
        ? Statement.Of("run.agrees", $"{Name}: {Signed(Difference)}, within ±{Unsigned(Allowed)}, {PointsBeyond} of {Points} points beyond: agrees")
        : Statement.Of(
            "run.does-not-agree",
            $"{Name}: {Signed(Difference)}, within ±{Unsigned(Allowed)}, {PointsBeyond} of {Points} points beyond: does not agree");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    private Statement Signed(double value) => Unit == "kPa"
        ? Statement.Of("run.difference-pressure", $"{Pressure.FromKilopascals(value):pressure-change}")
        : Statement.Of("run.difference", $"{value:+0.0;−0.0;0.0} {Unit}");

    private Statement Unsigned(double value) => Unit == "kPa"
        ? Statement.Of("run.difference-pressure", $"{Pressure.FromKilopascals(value):pressure-loss}")
        : Statement.Of("run.difference", $"{value:0.0} {Unit}");
}
