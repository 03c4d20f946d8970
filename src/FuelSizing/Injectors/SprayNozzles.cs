using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>The nozzles of a second stream: alike, always open, and fed with one pressure.</summary>
/// <remarks>
/// Flow goes with the square root of the pressure across a nozzle and with 1/√ρ, as an injector's does (<see cref="InjectorFlow.Static{T}"/>), from
/// <see cref="MinimumDifferential"/> on. Between no pressure and that one the flow is not known: nothing at the least, and at the most what passes there.
/// </remarks>
/// <example>
/// <code>
/// SprayNozzles nozzles = SprayNozzles.Of(
///     count: 1, flow: VolumeFlow.FromMillilitersPerMinute(390), ratedDifferential: Pressure.FromKilopascals(700), testFluid: SprayNozzles.Water);
/// Console.WriteLine(nozzles);   // 1 nozzle, 390 mL/min each at 700 kPa, into the manifold
/// </code>
/// </example>
public sealed record SprayNozzles
{
    private static readonly Identity<SprayNozzles> _identity = new Identity<SprayNozzles>()
        .Value(nozzles => nozzles.Count)
        .Number(nozzles => nozzles.RatedFlow)
        .Number(nozzles => nozzles.RatedPascals)
        .Value(nozzles => nozzles.TestFluid)
        .Value(nozzles => nozzles.SpraysInto)
        .Number(nozzles => nozzles.MinimumPascals)
        .Value(nozzles => nozzles.IsMinimumDifferentialStated);

    // Of the rated differential, where no minimum was stated, as for injectors: common practice, no source.
    private const double DefaultMinimumShare = 1.0 / 3;

    private SprayNozzles(int count, VolumeFlow flow, Pressure ratedDifferential, TestFluid testFluid, SprayPlace spraysInto)
    {
        (Count, Flow, RatedDifferential, TestFluid, SpraysInto) = (count, flow, ratedDifferential, testFluid, spraysInto);
        MinimumDifferential = ratedDifferential * DefaultMinimumShare;
    }

    /// <summary>Water of 20 °C, the typical test liquid of nozzles: 998.2 kg/m³.</summary>
    public static TestFluid Water { get; } = TestFluid.Of("water", Density.FromKilogramsPerCubicMeter(998.2));

    /// <summary>How many there are.</summary>
    public int Count { get; }

    /// <summary>Of one nozzle at <see cref="RatedDifferential"/> on <see cref="TestFluid"/>.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Pressure across the nozzle at which its flow was stated.</summary>
    public Pressure RatedDifferential { get; }

    /// <summary>The liquid on which its flow was stated.</summary>
    public TestFluid TestFluid { get; }

    /// <summary>What they spray into, whose pressure they have against them.</summary>
    public SprayPlace SpraysInto { get; }

    /// <summary>The lowest pressure across a nozzle at which the flow is known to go with the square root of pressure; a third of the rated one if nobody said (common practice, no source).</summary>
    public Pressure MinimumDifferential { get; private init; }

    /// <summary>False where nobody stated <see cref="MinimumDifferential"/>, so that it is a third of the rated one.</summary>
    public bool IsMinimumDifferentialStated { get; private init; }

    internal double RatedFlow => Flow.CubicMetersPerSecond;

    internal double RatedPascals => RatedDifferential.Pascals;

    internal double MinimumPascals => MinimumDifferential.Pascals;

    /// <summary>Describes nozzles.</summary>
    /// <param name="count">1 to 24.</param>
    /// <param name="flow">Of one, 5 to 5,000 mL/min.</param>
    /// <param name="ratedDifferential">At which that was stated, 50 to 3,000 kPa.</param>
    /// <param name="testFluid">On which it was stated; water, as a rule: <see cref="Water"/>.</param>
    /// <param name="spraysInto">The manifold, or the air before the compressor; the manifold if not given.</param>
    /// <returns>The nozzles.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SprayNozzles Of(
        int count, VolumeFlow flow, Pressure ratedDifferential, TestFluid testFluid, SprayPlace spraysInto = SprayPlace.Manifold)
    {
        ArgumentNullException.ThrowIfNull(testFluid);
        return new(
            Guard.Count(count, 1, 24, "Give how many nozzles spray.", nameof(count)),
            Guard.Between(
                flow, VolumeFlow.FromMillilitersPerMinute(5), VolumeFlow.FromMillilitersPerMinute(5000), "Give the flow of one nozzle at its rated pressure.", nameof(flow)),
            Guard.Between(
                ratedDifferential, Pressure.FromKilopascals(50), Pressure.FromKilopascals(3000), "Give the pressure at which the nozzle's flow is stated.", nameof(ratedDifferential)),
            testFluid,
            Guard.Member(spraysInto, "Choose where the nozzles spray.", nameof(spraysInto)));
    }

    /// <summary>The same nozzles with another pressure from which their flow is known.</summary>
    /// <param name="differential">0 to the rated differential.</param>
    /// <returns>The nozzles.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    public SprayNozzles WithMinimumDifferential(Pressure differential) => this with
    {
        IsMinimumDifferentialStated = true,
        MinimumDifferential = Guard.Between(
            differential, Pressure.Zero, RatedDifferential, "Give the lowest pressure at which the nozzle's flow was measured to go with the square root of pressure.", nameof(differential)),
    };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SprayNozzles? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Count, flow and place.</summary>
    /// <returns>For instance <c>2 nozzles, 390 mL/min each at 700 kPa, into the manifold</c>.</returns>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Count} {(Count == 1 ? "nozzle" : "nozzles")}, {Readable.InjectorFlow(Flow)} each at {Readable.Of(RatedDifferential)}, {(SpraysInto == SprayPlace.Manifold ? "into the manifold" : "before the compressor")}");

    /// <summary>What all of them pass by the law, m³/s.</summary>
    /// <param name="differential">Across each, Pa.</param>
    /// <param name="density">Of the liquid, kg/m³.</param>
    internal double FlowAt(double differential, double density) =>
        Count * (double)InjectorFlow.Static<Real>(RatedFlow, RatedPascals, TestFluid.Density.KilogramsPerCubicMeter, differential, density);
}

/// <summary>What nozzles spray into.</summary>
public enum SprayPlace
{
    /// <summary>The manifold, or a pipe behind the compressor: boost stands against them.</summary>
    Manifold,

    /// <summary>The air before the compressor: ambient pressure stands against them.</summary>
    BeforeCompressor,
}
