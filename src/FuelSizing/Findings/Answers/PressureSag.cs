using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How far the rail fell under its set pressure, and which part of the supply explains it.</summary>
/// <remarks>
/// A weak pump, a restriction and a low voltage each let the rail fall along another course against flow, voltage and pressure.
/// The evidence says which course the rail followed.
/// </remarks>
public sealed record PressureSag : IReadable
{
    internal PressureSag(Pressure maximum, RunPlace place, VolumeFlow flow, int points, IReadOnlyList<FaultFinding> causes) =>
        (Maximum, Place, Flow, Points, Causes) = (maximum, place, flow, points, [.. causes]);

    /// <summary>The most that the rail was under its set pressure; zero where it never clearly was.</summary>
    public Pressure Maximum { get; }

    /// <summary>Where that was.</summary>
    public RunPlace Place { get; }

    /// <summary>Fuel injected there.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Points at which the pump, not the regulator, sets the pressure.</summary>
    public int Points { get; }

    /// <summary>Weak pump, low voltage, restriction: the likeliest first.</summary>
    public IReadOnlyList<FaultFinding> Causes { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Points == 0
        ? Statement.Of("run.rail-held", $"the regulator held the rail everywhere")
        : Statement.Of("run.rail-sag", $"rail up to {Maximum} below its set pressure at {Place}, {Flow:pump-flow} injected");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
