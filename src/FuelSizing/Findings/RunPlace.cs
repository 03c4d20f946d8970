using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A place in a run.</summary>
public sealed record RunPlace
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

    /// <summary>The place in words, for instance <c>6,800 rev/min, 0.60 bar</c>.</summary>
    /// <returns>Speed and boost.</returns>
    public override string ToString() =>
        Boost is { } boost ? $"{Readable.Of(Speed)}, {Readable.Boost(boost)}" : Readable.Of(Speed);
}
