using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How far the rail fell under the pressure that the regulator as planned should hold, and which part of the supply explains it.</summary>
/// <remarks>
/// The setting is the plan's, not the one that a fitted fault would give. A weak pump, a restriction and a low voltage each let the rail
/// fall along another course against flow, voltage and pressure; the evidence says which course the rail followed.
/// </remarks>
public sealed record PressureSag : IReadable
{
    internal PressureSag(
        Pressure maximum, Pressure predicted, RunPlace place, VolumeFlow? flow, int points, Statement? gap, IReadOnlyList<FaultFinding> causes) =>
        (Maximum, Predicted, Place, Flow, Points, Gap, Causes) = (maximum, predicted, place, flow, points, gap, [.. causes]);

    /// <summary>The most that the rail was under its planned setting; zero where it never clearly was.</summary>
    public Pressure Maximum { get; }

    /// <summary>How far under its setting the plan has the rail there: more than zero where the planned pump is the limit.</summary>
    public Pressure Predicted { get; }

    /// <summary>Where that was.</summary>
    public RunPlace Place { get; }

    /// <summary>Fuel injected there; none where the channels do not say.</summary>
    public VolumeFlow? Flow { get; }

    /// <summary>Points at which the rail was under its setting by more than tolerances and accuracy allow.</summary>
    public int Points { get; }

    /// <summary>Which rows were not judged, and why; none where all were.</summary>
    public Statement? Gap { get; }

    /// <summary>Weak pump, low voltage, restriction: the likeliest first; none where no fault could be looked for.</summary>
    public IReadOnlyList<FaultFinding> Causes { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Points > 0
        ? Statement.Of("run.rail-sag", $"rail up to {Maximum} below its set pressure at {Place}{Injected}{Expected}")
        : Gap is null ? Statement.Of("run.rail-held", $"the regulator held the rail everywhere")
        : Statement.Of("run.rail-held-in-part", $"the regulator held the rail where it is known, judged in part: {Gap}");

    private Statement? Injected => Flow is { } flow ? Statement.Of("run.rail-sag-flow", $", {flow:pump-flow} injected") : null;

    private Statement? Expected => Predicted > Pressure.Zero
        ? Statement.Of("run.rail-sag-predicted", $"; the plan has it {Predicted} below there, the pump being the limit")
        : null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
