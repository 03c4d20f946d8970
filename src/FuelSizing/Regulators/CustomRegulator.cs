using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>A regulator's setting of your own: rail pressure against boost, measured or calculated elsewhere.</summary>
/// <remarks>
/// <para>It must be pure: the same boost gives the same pressure, on any thread, with nothing kept in between. <see cref="CustomRegulator"/> makes a regulator of it.</para>
/// <para>The solver relies on three things, which <c>ConformanceKit.Of(IRegulatorLaw)</c> tries: the pressure is there for every boost from −95 to 400 kPa, it has no
/// jump, and every kink is named. Between two kinks it may be curved.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed record SpringInSteps : IRegulatorLaw
/// {
///     public Statement Text => Statement.Of("own.regulator.steps", $"1:1 up to {Pressure.FromKilopascals(80)} of boost, 2.5:1 above");
///
///     public IReadOnlyList&lt;Pressure&gt; Kinks => [Pressure.FromKilopascals(80)];
///
///     public Pressure RailGauge(Pressure boost) => Pressure.FromKilopascals(
///         300 + boost.Kilopascals + (1.5 * Math.Max(0, boost.Kilopascals - 80)));
/// }
/// </code>
/// </example>
public interface IRegulatorLaw
{
    /// <summary>What it does, as a code of your own with its figures.</summary>
    Statement Text { get; }

    /// <summary>Boosts at which the pressure has a kink, in any order; empty if there is none.</summary>
    IReadOnlyList<Pressure> Kinks { get; }

    /// <summary>The rail pressure that it sets.</summary>
    /// <param name="boost">Manifold gauge pressure, −95 to 400 kPa.</param>
    /// <returns>Gauge pressure in the rail, over 0 and up to 2,000 kPa.</returns>
    Pressure RailGauge(Pressure boost);
}

/// <summary>A regulator whose setting is a law of your own.</summary>
/// <remarks>
/// <para>With its reference hose off it is taken to set what it sets at no boost. Another base (<c>SystemSizing</c>) shifts the law at every boost.</para>
/// <para>Not with it: a batch of points (<c>PointBatch</c>) and the diagnosis of a recorded run, which need base, gain and onset; both refuse it with the reason. A setup file
/// cannot hold it.</para>
/// </remarks>
/// <example>
/// <code>
/// CustomRegulator regulator = CustomRegulator.Of(new OneForOne());
/// Console.WriteLine(regulator.RailGauge(Pressure.FromBars(0.6)));
///
/// sealed record OneForOne : IRegulatorLaw
/// {
///     public Statement Text => Statement.Of("own.regulator.one-for-one", $"1:1 from {Pressure.FromKilopascals(300)}");
///     public IReadOnlyList&lt;Pressure&gt; Kinks => [];
///     public Pressure RailGauge(Pressure boost) => Pressure.FromKilopascals(300) + boost;
/// }
/// </code>
/// </example>
public sealed record CustomRegulator : PressureRegulator
{
    private static readonly Identity<CustomRegulator> _identity = new Identity<CustomRegulator>()
        .Value(regulator => regulator.Law)
        .Number(regulator => regulator.OffsetPascals)
        .Number(regulator => regulator.MinimumReturnFlow.CubicMetersPerSecond)
        .Value(regulator => regulator.Flow);

    // Over any regulator's pressure.
    private const double MaximumPascals = 2e6;

    private CustomRegulator(IRegulatorLaw law, VolumeFlow minimumReturnFlow)
        : base(minimumReturnFlow, null) =>
        (Law, Kinks) = (law, [.. law.Kinks.Select(kink => ManifoldPressure.Within(kink, nameof(law)).Pascals)]);

    /// <summary>The law.</summary>
    public IRegulatorLaw Law { get; }

    /// <inheritdoc/>
    public override Statement Text => WithFlowText(Law.Text);

    /// <summary>A regulator by a law.</summary>
    /// <param name="law">What it sets.</param>
    /// <param name="minimumReturnFlow">Smallest returned flow at which it governs, 0 to 500 L/h; zero if not given.</param>
    /// <returns>The regulator.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow, or a kink of the law, is outside its range.</exception>
    public static CustomRegulator Of(IRegulatorLaw law, VolumeFlow? minimumReturnFlow = null)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(law.Text, nameof(law));
        ArgumentNullException.ThrowIfNull(law.Kinks, nameof(law));
        return new(law, WithinReturn(minimumReturnFlow, nameof(minimumReturnFlow)));
    }

    /// <summary>The same regulator with how its pressure changes with what returns through it.</summary>
    /// <param name="flow">Slope or measured curve, hysteresis, what acts on its outlet.</param>
    /// <returns>The regulator.</returns>
    public CustomRegulator WithFlow(RegulatorFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return this with { Flow = flow };
    }

    /// <summary>True if the other has an equal law and the same flow values.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CustomRegulator? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Boosts at which the law has a kink, Pa.</summary>
    internal IReadOnlyList<double> Kinks { get; }

    internal override bool IsByLaw => true;

    internal override PressureRegulator WithBase(Pressure basePressure) => Off(basePressure.Pascals - KindPascals(0));

    private protected override Real KindPascals(double boost)
    {
        double set = Law.RailGauge(Pressure.FromPascals(boost)).Pascals;
        return set is > 0 and <= MaximumPascals
            ? set
            : throw new InvalidOperationException(
                $"The regulator's law ({Law.Text}) gave {Term.Text(set)} Pa at a boost of {Readable.Boost(Pressure.FromPascals(boost))}; it must give a gauge pressure over 0 and up to 2,000 kPa. Try the law with ConformanceKit.Of.");
    }
}
