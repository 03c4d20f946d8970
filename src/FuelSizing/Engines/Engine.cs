using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>The engine's size and limits.</summary>
public sealed record Engine
{
    private static readonly Identity<Engine> _identity = new Identity<Engine>()
        .Value(engine => engine.Name)
        .Number(engine => engine.Displacement.CubicMeters)
        .Value(engine => engine.Cylinders)
        .Value(engine => engine.Cycle)
        .Number(engine => engine.SpeedLimit.RevolutionsPerSecond);

    private Engine(string name, Volume displacement, int cylinders, EngineCycle cycle, RotationalSpeed speedLimit)
    {
        (Name, Displacement, Cylinders, Cycle, SpeedLimit) = (name, displacement, cylinders, cycle, speedLimit);
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Swept volume of all cylinders.</summary>
    public Volume Displacement { get; }

    /// <summary>Number of cylinders.</summary>
    public int Cylinders { get; }

    /// <summary>Two- or four-stroke.</summary>
    public EngineCycle Cycle { get; }

    /// <summary>The highest speed at which the engine is run.</summary>
    public RotationalSpeed SpeedLimit { get; }

    internal double RevolutionsPerCycle => (int)Cycle;

    /// <summary>Describes an engine.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="displacement">Swept volume of all cylinders, 0.02 to 30 L.</param>
    /// <param name="cylinders">1 to 24.</param>
    /// <param name="cycle">Two- or four-stroke.</param>
    /// <param name="speedLimit">500 to 25,000 rev/min.</param>
    /// <returns>The engine.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Engine Of(
        string name, Volume displacement, int cylinders, EngineCycle cycle, RotationalSpeed speedLimit) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                displacement,
                Volume.FromLiters(0.02),
                Volume.FromLiters(30),
                "Give the swept volume of all cylinders together.",
                nameof(displacement)),
            Guard.Count(cylinders, 1, 24, "Count the engine's cylinders.", nameof(cylinders)),
            Guard.Member(cycle, "Say whether the engine has two or four strokes to a cycle.", nameof(cycle)),
            Guard.Between(
                speedLimit,
                RotationalSpeed.FromRevolutionsPerMinute(500),
                RotationalSpeed.FromRevolutionsPerMinute(25_000),
                "Give the highest speed that the engine is run at.",
                nameof(speedLimit)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Engine? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, displacement, cylinders and cycle.</summary>
    /// <returns>For instance <c>engine A: 2.40 L, 4 cylinders, four-stroke</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Name}: {Displacement.Liters:0.00} L, {Cylinders} cylinders, {(Cycle == EngineCycle.TwoStroke ? "two-stroke" : "four-stroke")}");
}

/// <summary>How many turns of the crank make one working cycle.</summary>
public enum EngineCycle
{
    /// <summary>One turn: intake, compression, power and exhaust in two strokes.</summary>
    TwoStroke = 1,

    /// <summary>Two turns: intake, compression, power and exhaust in four strokes.</summary>
    FourStroke = 2,
}

/// <summary>Checks on engine speeds, given back in revolutions per second or as they are.</summary>
internal static class EngineSpeed
{
    private static readonly RotationalSpeed Slowest = RotationalSpeed.FromRevolutionsPerMinute(100);
    private static readonly RotationalSpeed Fastest = RotationalSpeed.FromRevolutionsPerMinute(25_000);

    // Well within the bounds nothing need be compared in units, which costs as much as solving a point.
    private static readonly (double From, double To) _inside = (Minimum * (1 + 1e-9), Maximum * (1 - 1e-9));

    /// <summary>The minimum speed, rev/s.</summary>
    public static double Minimum => Slowest.RevolutionsPerSecond;

    /// <summary>The maximum speed, rev/s.</summary>
    public static double Maximum => Fastest.RevolutionsPerSecond;

    /// <summary>A speed that an engine can turn at, rev/s.</summary>
    public static double Within(RotationalSpeed speed, string name)
    {
        double turns = speed.RevolutionsPerSecond;
        if (!(turns > _inside.From && turns < _inside.To))
        {
            Guard.Between(speed, Slowest, Fastest, "Give the crankshaft's speed.", name);
        }

        return turns;
    }

    /// <summary>The speed itself, checked.</summary>
    public static RotationalSpeed Checked(RotationalSpeed speed, string name)
    {
        Within(speed, name);
        return speed;
    }

    /// <summary>A speed that a table covers.</summary>
    public static double Covered(RotationalSpeed speed, Curve table, string what, string name)
    {
        double revolutions = Within(speed, name);
        return table.Covers(revolutions)
            ? revolutions
            : throw Guard.OutOfRange(
                name,
                Readable.Of(speed),
                $"between {Text(table.First)} and {Text(table.Last)}",
                $"The {what} covers no more; extend the table by measured points.");
    }

    private static string Text(double revolutionsPerSecond) =>
        Readable.Of(RotationalSpeed.FromRevolutionsPerSecond(revolutionsPerSecond));
}
