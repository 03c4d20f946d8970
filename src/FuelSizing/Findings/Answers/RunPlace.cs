using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A place in a run.</summary>
public sealed record RunPlace : IReadable
{
    internal RunPlace(long line, double time, double speed, double boost)
    {
        Line = line;
        Time = double.IsNaN(time) ? null : Duration.FromSeconds(time);
        Speed = RotationalSpeed.FromRevolutionsPerSecond(speed);
        Boost = double.IsNaN(boost) ? null : Pressure.FromPascals(boost);
    }

    /// <summary>Line of the file; of a run made in code, the row's number.</summary>
    public long Line { get; }

    /// <summary>Time, if it was recorded.</summary>
    public Duration? Time { get; }

    /// <summary>Of the crank.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Manifold gauge pressure, if it was recorded.</summary>
    public Pressure? Boost { get; }

    /// <summary>The place, as a code with its figures.</summary>
    public Statement Text => Boost is { } boost ? Statement.Of("run.place", $"{Speed}, {boost:boost}") : Statement.Of("run.place-without-boost", $"{Speed}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
