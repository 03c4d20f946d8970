using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Selection;

/// <summary>One stage of a plan: a build of the car, and the operating points that its fuel system must serve.</summary>
/// <remarks>
/// A plan is one stage or several (now, more boost later, another fuel later). Parts chosen for a plan are bought once and
/// serve every stage; what a stage has of its own (demand, fuel, lines, limits) stays as its system has it.
/// </remarks>
public sealed record Stage
{
    private static readonly Identity<Stage> _identity = new Identity<Stage>()
        .Value(stage => stage.Name)
        .Value(stage => stage.System)
        .List(stage => stage.Points);

    private Stage(string name, FuelSystem system, IReadOnlyList<OperatingPoint> points, IReadOnlyList<PointDemand> demands) =>
        (Name, System, Points, Demands) = (name, system, [.. points], demands);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>The build; parts to be chosen take the place of its own.</summary>
    public FuelSystem System { get; }

    /// <summary>The points to serve.</summary>
    public IReadOnlyList<OperatingPoint> Points { get; }

    internal IReadOnlyList<PointDemand> Demands { get; }

    /// <summary>Describes a stage.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="system">The build, with its limits; give the parts that are fitted, or any, where they are to be chosen.</param>
    /// <param name="points">
    /// The points to serve, 1 to 10,000: full load over the speed range, and idle for the shortest pulse.
    /// </param>
    /// <returns>The stage.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no points, or the engine's tables do not cover one.</exception>
    public static Stage Of(string name, FuelSystem system, params OperatingPoint[] points)
    {
        Guard.Name(name, nameof(name));
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(points);
        Guard.Count(points.Length, 1, 10_000, "Give the operating points to serve.", nameof(points));
        foreach (OperatingPoint point in points)
        {
            ArgumentNullException.ThrowIfNull(point, nameof(points));
        }

        return new(name, system, [.. points], Array.ConvertAll(points, system.Parts.DemandAt));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Stage? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of points.</summary>
    /// <returns>For instance <c>now, operating points: 12</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Name}, operating points: {Points.Count}");
}
