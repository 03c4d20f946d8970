using System.Globalization;

namespace FuelSizing.Findings;

/// <summary>One comparison of run and plan: how far apart, and how far apart they may be.</summary>
/// <remarks>
/// May: twice the standard deviation that the tolerances of the parts, the accuracy of the channels and the scatter of the run make
/// together.
/// </remarks>
public sealed record PlanAgreement
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

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Name}: {Difference:+0.0;−0.0;0.0} {Unit}, within ±{Allowed:0.0} {Unit}, {PointsBeyond} of {Points} points beyond: {(Agrees ? "agrees" : "does not agree")}");
}
