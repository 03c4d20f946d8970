using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>A fuel-pressure regulator: the rail pressure it sets at a given boost.</summary>
/// <remarks>
/// <para>Rail pressure is gauge (above ambient pressure), boost is manifold gauge pressure, and an injector sees the
/// differential: rail gauge + ambient − manifold absolute.</para>
/// <para>Kinds: <see cref="Fixed"/>, <see cref="ManifoldReferenced"/>, <see cref="RisingRate"/>,
/// <see cref="RegulatorSeries"/>, <see cref="ElectronicReturnless"/>; of a law of your own <see cref="CustomRegulator"/>.</para>
/// </remarks>
public abstract record PressureRegulator : IReadable
{
    // The setting is worked out once: a solver asks for it at every point.
    private protected PressureRegulator(VolumeFlow minimumReturnFlow, RailSetting? setting) =>
        (MinimumReturnFlow, Setting) = (minimumReturnFlow, setting);

    /// <summary>The smallest returned flow at which the regulator still governs; below it, it is shut.</summary>
    public VolumeFlow MinimumReturnFlow { get; }

    /// <summary>How its pressure changes with what returns through it; none where it is taken to hold its setting whatever returns.</summary>
    public RegulatorFlow? Flow { get; private protected init; }

    /// <summary>One line that says what the regulator does, in metric units.</summary>
    public string Description => Text.ToString();

    /// <summary>What the regulator does, as a code with its figures.</summary>
    public abstract Statement Text { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The rail pressure that the regulator sets, if the pump has the capacity.</summary>
    /// <param name="boost">Manifold gauge pressure, negative under throttle, −95 to 400 kPa.</param>
    /// <returns>Gauge pressure in the rail.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The boost is outside its range.</exception>
    public Pressure RailGauge(Pressure boost) =>
        Pressure.FromPascals(SetPascals(ManifoldPressure.Within(boost, nameof(boost)).Pascals));

    /// <summary>What the regulator does.</summary>
    /// <returns><see cref="Description"/>.</returns>
    public sealed override string ToString() => Description;

    /// <summary>How far this unit is off what its kind sets, gauge, Pa.</summary>
    internal double OffsetPascals { get; private protected init; }

    /// <summary>The pressure that this unit sets, its own offset included, Pa.</summary>
    internal double SetPascals(double boost) => KindPascals(boost) + OffsetPascals;

    /// <summary>What its kind sets, its own offset apart, Pa.</summary>
    private protected virtual Real KindPascals(double boost) => Setting!.Value.At<Real>(boost);

    /// <summary>True if what it sets is a law of one's own, which may be curved and has no base, gain and onset.</summary>
    internal virtual bool IsByLaw => false;

    /// <summary>True if its pressure is not its setting at every returned flow and outlet pressure.</summary>
    internal virtual bool ChangesWithFlow => Flow is { IsConstant: false };

    /// <summary>True if its pressure is known between two bounds only.</summary>
    internal virtual bool HasBand => Flow is { HasBand: true };

    /// <summary>True if something is stated of how its pressure changes with flow.</summary>
    internal virtual bool IsFlowStated => Flow is not null;

    /// <summary>What it holds at a boost, Pa, by what returns; none where that is its setting.</summary>
    internal HeldPressure? HeldAt(double boost) => ChangesWithFlow ? new(this, boost) : null;

    /// <summary>Pressure that it holds at a boost, Pa, with so much returned, m³/s, against so much pressure at its outlet, Pa, its own offset included, Pa.</summary>
    internal virtual double HeldPascals(double boost, double returned, double outlet, RegulatorReading reading) => Flow is { } flow
        ? RailPressure.Held<Real>(SetPascals(boost), flow.RisePascals(returned, reading), flow.OutletShare, outlet)
        : SetPascals(boost);

    /// <summary>The same at the flow at which the setting was found, with the outlet at ambient pressure, Pa.</summary>
    internal virtual double StatedPascals(double boost, RegulatorReading reading) =>
        SetPascals(boost) + (Real)(Flow?.BandPascals(reading) ?? 0);

    /// <summary>True if a returned flow, m³/s, lies past an end of what was measured.</summary>
    internal virtual bool IsPastEnd(double returned) => Flow?.IsPastEnd(returned) == true;

    /// <summary>The flow description of what is at the rail, for another regulator in its place.</summary>
    internal virtual RegulatorFlow? FlowAtRail => Flow;

    /// <summary>What the kind does, and how its pressure changes with flow where that is stated.</summary>
    private protected Statement WithFlowText(Statement kind) =>
        Flow is { } flow ? Statement.Of("regulator.with-flow", $"{kind}, {flow.Text}") : kind;

    /// <summary>The same regulator, off by so many Pa.</summary>
    internal PressureRegulator Off(double pascals) => this with { OffsetPascals = pascals };

    /// <summary>The same regulator as found: its pressure, gain and onset off by so much (Pa, 1, Pa); those that have neither gain nor onset leave them.</summary>
    internal virtual PressureRegulator Found(double offBase, double offGain, double offOnset) => Off(OffsetPascals + offBase);

    /// <summary>The rising-rate unit in it, if there is one.</summary>
    internal virtual RisingRate? RisingUnit => null;

    /// <summary>What its kind sets, its own offset apart; none where two of them, or a law of one's own, make it.</summary>
    internal RailSetting? Setting { get; }

    /// <summary>The same regulator with another base pressure.</summary>
    internal abstract PressureRegulator WithBase(Pressure basePressure);

    private protected static Pressure WithinBase(Pressure pressure, string name) =>
        Guard.Between(
            pressure,
            Pressure.FromKilopascals(100),
            Pressure.FromKilopascals(1500),
            "Give the rail's gauge pressure with the manifold at atmospheric pressure (hose off).",
            name);

    private protected static VolumeFlow WithinReturn(VolumeFlow? flow, string name) =>
        Guard.Between(
            flow ?? VolumeFlow.Zero,
            VolumeFlow.Zero,
            VolumeFlow.FromLitersPerHour(500),
            "Give the smallest returned flow at which the regulator still holds its pressure.",
            name);
}

/// <summary>What tells one regulator's setting from another's, in SI numbers.</summary>
/// <param name="Base">With the manifold at atmospheric pressure, gauge, Pa.</param>
/// <param name="GainBelowOnset">Rise of rail pressure for each 1 of boost below the onset.</param>
/// <param name="Gain">The same above it.</param>
/// <param name="Onset">Boost, Pa.</param>
/// <param name="Ceiling">Highest pressure set, gauge, Pa; infinite if there is none.</param>
internal readonly record struct RailSetting(
    double Base, double GainBelowOnset, double Gain, double Onset, double Ceiling = double.PositiveInfinity)
{
    /// <summary>The pressure set at a boost.</summary>
    public T At<T>(T boost)
        where T : struct, IReal<T> => RailPressure.Set(Base, GainBelowOnset, Gain, Onset, Ceiling, boost);
}
