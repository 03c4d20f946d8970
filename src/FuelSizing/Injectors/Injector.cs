using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>One injector: what it passes when held open, and how it opens.</summary>
public sealed record Injector
{
    private static readonly Identity<Injector> _identity = new Identity<Injector>()
        .Value(injector => injector.Name)
        .Number(injector => injector.RatedFlow)
        .Number(injector => injector.RatedPascals)
        .Value(injector => injector.TestFluid)
        .Value(injector => injector.DeadTime)
        .Number(injector => injector.MinimumLinearPulse.Seconds)
        .Number(injector => injector.MinimumPulseVoltage.Volts)
        .Number(injector => injector.MaximumDifferential.Pascals)
        .Number(injector => injector.MinimumPascals)
        .Value(injector => injector.IsMinimumDifferentialStated)
        .Value(injector => injector._measured);

    // Of the rated differential, where no minimum was stated: common practice, no source.
    private const double DefaultMinimumShare = 1.0 / 3;

    private readonly MeasuredFlows? _measured;

    private Injector(
        string name,
        VolumeFlow staticFlow,
        Pressure ratedDifferential,
        TestFluid testFluid,
        DeadTimeTable deadTime,
        Duration minimumLinearPulse,
        Pressure maximumDifferential,
        ElectricPotential minimumPulseVoltage,
        Pressure? minimumDifferential = null,
        MeasuredFlows? measured = null)
    {
        _measured = measured;
        Name = name;
        StaticFlow = staticFlow;
        RatedDifferential = ratedDifferential;
        TestFluid = testFluid;
        DeadTime = deadTime;
        MinimumLinearPulse = minimumLinearPulse;
        MaximumDifferential = maximumDifferential;
        MinimumPulseVoltage = minimumPulseVoltage;
        IsMinimumDifferentialStated = minimumDifferential is not null;
        MinimumDifferential = minimumDifferential ?? ratedDifferential * DefaultMinimumShare;
        MinimumPascals = MinimumDifferential.Pascals;
        MinimumOpenSeconds = minimumLinearPulse.Seconds - deadTime.Nearest(minimumPulseVoltage.Volts, ratedDifferential.Pascals);
        RatedFlow = staticFlow.CubicMetersPerSecond;
        RatedPascals = ratedDifferential.Pascals;
        TestDensity = testFluid.Density.KilogramsPerCubicMeter;
    }

    /// <summary>
    /// The differential pressure at which static flow is typically stated, 300 kPa (43.5 psi): common practice, no source.
    /// </summary>
    public static Pressure DefaultRatedDifferential { get; } = Pressure.FromKilopascals(300);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Static flow rate at <see cref="RatedDifferential"/> on <see cref="TestFluid"/>.</summary>
    public VolumeFlow StaticFlow { get; }

    /// <summary>Differential pressure at which the static flow was measured.</summary>
    public Pressure RatedDifferential { get; }

    /// <summary>The liquid on which the static flow was measured.</summary>
    public TestFluid TestFluid { get; }

    /// <summary>
    /// Static flows measured at several differential pressures, the rated one among them, pressures rising; none where the rating is all there is.
    /// </summary>
    public IReadOnlyList<(Pressure Differential, VolumeFlow Flow)> MeasuredFlows => _measured?.Points ?? [];

    /// <summary>Dead time against voltage and differential pressure.</summary>
    public DeadTimeTable DeadTime { get; }

    /// <summary>Shortest commanded pulse, dead time included, at which the delivered fuel is still linear in the pulse.</summary>
    public Duration MinimumLinearPulse { get; }

    /// <summary>The highest differential pressure against which the injector is known to open.</summary>
    public Pressure MaximumDifferential { get; }

    /// <summary>
    /// The lowest differential pressure at which the flow is known to go with the square root of pressure: stated by
    /// <see cref="WithMinimumDifferential"/>, else a third of <see cref="RatedDifferential"/> (common practice, no source). Between zero and
    /// this the flow is not known, so that duty cycle and pulse cannot be said.
    /// </summary>
    public Pressure MinimumDifferential { get; }

    /// <summary>False where nobody stated <see cref="MinimumDifferential"/>, so that it is a third of the rated one.</summary>
    public bool IsMinimumDifferentialStated { get; }

    /// <summary>
    /// Voltage at which the minimum linear pulse was stated, at the rated differential; 14 V where it was not said (common practice, no source).
    /// </summary>
    public ElectricPotential MinimumPulseVoltage { get; }

    /// <summary>
    /// What the minimum linear pulse leaves when its dead time is taken off, at the voltage and differential at which it was stated: the
    /// open time below which the delivered fuel is not linear in the pulse, at any voltage. Not over zero where the two contradict each other.
    /// </summary>
    public Duration MinimumOpenTime => Duration.FromSeconds(MinimumOpenSeconds);

    internal double MinimumOpenSeconds { get; }

    internal double MinimumPascals { get; }

    internal double RatedFlow { get; }

    internal double RatedPascals { get; }

    internal double TestDensity { get; }

    /// <summary>Describes an injector.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="staticFlow">At the rated differential on the test fluid, 20 to 10,000 mL/min.</param>
    /// <param name="ratedDifferential">At which the static flow was measured, 50 to 2,000 kPa.</param>
    /// <param name="testFluid">On which it was measured.</param>
    /// <param name="deadTime">Against voltage and differential pressure.</param>
    /// <param name="minimumLinearPulse">Commanded, dead time included, 0.1 to 10 ms.</param>
    /// <param name="maximumDifferential">
    /// Against which it is known to open, from the rated differential to 2,000 kPa. A valve that opens against the
    /// pressure needs more force as it rises; past this the injector may not open at all.
    /// </param>
    /// <param name="minimumPulseVoltage">
    /// At which the minimum linear pulse was stated, at the rated differential, 5 to 20 V; 14 V if not given (common practice, no source).
    /// </param>
    /// <returns>The injector.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Injector Of(
        string name,
        VolumeFlow staticFlow,
        Pressure ratedDifferential,
        TestFluid testFluid,
        DeadTimeTable deadTime,
        Duration minimumLinearPulse,
        Pressure maximumDifferential,
        ElectricPotential? minimumPulseVoltage = null)
    {
        ArgumentNullException.ThrowIfNull(testFluid);
        ArgumentNullException.ThrowIfNull(deadTime);
        return new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                staticFlow,
                VolumeFlow.FromMillilitersPerMinute(20),
                VolumeFlow.FromMillilitersPerMinute(10_000),
                "Give the flow of one injector held open.",
                nameof(staticFlow)),
            Guard.Between(
                ratedDifferential,
                Pressure.FromKilopascals(50),
                Pressure.FromKilopascals(2000),
                "Give the pressure at which the flow was measured; 300 kPa is typical.",
                nameof(ratedDifferential)),
            testFluid,
            deadTime,
            Guard.Between(
                minimumLinearPulse,
                Duration.FromMilliseconds(0.1),
                Duration.FromMilliseconds(10),
                "Give the commanded pulse, dead time included.",
                nameof(minimumLinearPulse)),
            Guard.Between(
                maximumDifferential,
                ratedDifferential,
                Pressure.FromKilopascals(2000),
                "Give the highest pressure across the injector at which it is known to open.",
                nameof(maximumDifferential)),
            DeadTimeTable.WithinVoltage(minimumPulseVoltage ?? ElectricPotential.FromVolts(14), nameof(minimumPulseVoltage)));
    }

    /// <summary>The same injector, whose flow is known down to a differential pressure: the lowest at which it was measured.</summary>
    /// <param name="minimumDifferential">From 10 kPa to the rated differential.</param>
    /// <returns>The injector.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    public Injector WithMinimumDifferential(Pressure minimumDifferential) => Changed(
        StaticFlow,
        DeadTime,
        _measured,
        Guard.Between(
            minimumDifferential,
            Pressure.FromKilopascals(10),
            RatedDifferential,
            "Give the lowest pressure across the injector at which its flow was measured.",
            nameof(minimumDifferential)));

    /// <summary>
    /// The same injector, with static flows that were measured at other pressures than the rated one: each is met, and between two the flow follows
    /// the square-root law, Q_s = Q_r(Δp) · √(Δp/Δp_r · ρ_r/ρ), with a rating Q_r(Δp) that runs straight from the one of the point below to the
    /// one of the point above. Past the ends the rating stays that of the end.
    /// </summary>
    /// <remarks>
    /// The rated flow stays the name of the injector's size: a question that asks for other injectors takes every point to grow with it. A
    /// point below <see cref="MinimumDifferential"/> brings that down, for the flow is known there.
    /// </remarks>
    /// <param name="flows">
    /// One or more beside the rated point, on the test liquid, pressures rising from 10 kPa to <see cref="MaximumDifferential"/>. A flow within 0.6 to 1.6 of what the
    /// square-root law gives there from the rated point, rising with pressure.
    /// </param>
    /// <returns>The injector.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A point is outside its range or out of order, or differs from the rating at the rated pressure.</exception>
    public Injector WithMeasuredFlows(params (Pressure Differential, VolumeFlow Flow)[] flows)
    {
        ArgumentNullException.ThrowIfNull(flows);
        MeasuredFlows measured = Injectors.MeasuredFlows.Of((RatedDifferential, StaticFlow), flows, MaximumDifferential, nameof(flows));
        return Changed(StaticFlow, DeadTime, measured, measured.Lowest < MinimumDifferential ? measured.Lowest : null);
    }

    /// <summary>
    /// Static volume flow on a fuel: Q_s = Q_r · √(Δp/Δp_r) · √(ρ_r/ρ), with Q_r, Δp_r and ρ_r of the rating. It is the
    /// orifice equation Q_s = C_d A √(2 Δp/ρ) with C_d A taken from the rating.
    /// </summary>
    /// <param name="differential">Across the injector, from the minimum at which its flow is known to the highest at which it opens.</param>
    /// <param name="fuel">The fuel.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <returns>Flow of one injector held open.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public VolumeFlow StaticFlowAt(Pressure differential, Fuel fuel, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return VolumeFlow.FromCubicMetersPerSecond(StaticAt(
            Guard.Between(
                differential,
                MinimumDifferential,
                MaximumDifferential,
                $"{Name} is not known to open above that, and its flow is not known below; extend it by measured points.",
                nameof(differential)).Pascals,
            fuel.DensityAt(temperature).KilogramsPerCubicMeter));
    }

    /// <summary>Static mass flow on a fuel: the volume flow of <see cref="StaticFlowAt"/> times its density.</summary>
    /// <param name="differential">Across the injector, from the minimum at which its flow is known to the highest at which it opens.</param>
    /// <param name="fuel">The fuel.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <returns>Flow of one injector held open.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public MassFlow StaticMassFlowAt(Pressure differential, Fuel fuel, Temperature temperature) =>
        StaticFlowAt(differential, fuel, temperature) * fuel.DensityAt(temperature);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Injector? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and rating.</summary>
    /// <returns>For instance <c>injector A, 580 mL/min at 300 kPa</c>.</returns>
    public override string ToString() =>
        $"{Name}, {Readable.InjectorFlow(StaticFlow)} at {Readable.Of(RatedDifferential)}";

    internal Injector WithStaticFlow(VolumeFlow staticFlow)
    {
        Injector sized = Of(Name, staticFlow, RatedDifferential, TestFluid, DeadTime, MinimumLinearPulse, MaximumDifferential, MinimumPulseVoltage);
        return Changed(sized.StaticFlow, DeadTime, _measured?.Scaled(staticFlow / StaticFlow));
    }

    /// <summary>The same injector, passing a multiple of its flow.</summary>
    internal Injector Scaled(double factor) => Changed(StaticFlow * factor, DeadTime, _measured?.Scaled(factor));

    /// <summary>The same injector with so many s more dead time, or less, at every voltage and pressure.</summary>
    internal Injector Later(double seconds) => Changed(StaticFlow, DeadTime.Later(seconds), _measured);

    // Everything else stays, a minimum that was stated among it.
    private Injector Changed(VolumeFlow staticFlow, DeadTimeTable deadTime, MeasuredFlows? measured, Pressure? minimumDifferential = null) => new(
        Name,
        staticFlow,
        RatedDifferential,
        TestFluid,
        deadTime,
        MinimumLinearPulse,
        MaximumDifferential,
        MinimumPulseVoltage,
        minimumDifferential ?? (IsMinimumDifferentialStated ? MinimumDifferential : null),
        measured);

    /// <summary>Static flow on a fuel, by the measured points or by the rating, m³/s.</summary>
    internal double StaticAt(double differential, double fuelDensity) =>
        InjectorFlow.Static<Real>(RatingAt<Real>(differential), RatedPascals, TestDensity, differential, fuelDensity);

    /// <summary>The rating that the square-root law has at a differential pressure, m³/s: one number where no other flow was measured.</summary>
    internal T RatingAt<T>(T differential)
        where T : struct, IReal<T> => _measured is { } measured ? measured.At(differential) : RatedFlow;

    /// <summary>Static flow at another differential pressure, of a flow at one and the same fuel, m³/s: by the measured points or the root of pressure.</summary>
    internal T StaticFrom<T>(T flow, T differential, T other, T fuelDensity)
        where T : struct, IReal<T> =>
        InjectorFlow.Static(flow * (RatingAt(other) / RatingAt(differential)), differential, fuelDensity, other, fuelDensity);

    /// <summary>The flow to rate the injector by, m³/s, so that it has a rating at a differential pressure: all points grow alike.</summary>
    internal double RatedFor(double rating, double differential) => _measured is { } measured ? rating * RatedFlow / measured.At<Real>(differential) : rating;

    /// <summary>Rise of that rating with pressure, (m³/s)/Pa.</summary>
    internal double RatingSlopeAbove(double differential) => _measured?.SlopeAbove(differential) ?? 0;

    /// <summary>The measured points between which a pressure lies; none where only the rating is known.</summary>
    internal ((Pressure Differential, VolumeFlow Flow) Under, (Pressure Differential, VolumeFlow Flow) Over)? MeasuredAround(double differential) => _measured?.Around(differential);
}

/// <summary>The liquid on which an injector's static flow was measured.</summary>
/// <remarks>
/// At the same pressure a lighter liquid flows faster by volume, a heavier one more by mass:
/// volume flow ∝ 1/√ρ, mass flow ∝ √ρ. Differences of viscosity are not corrected for.
/// </remarks>
public sealed record TestFluid
{
    private static readonly Identity<TestFluid> _identity = new Identity<TestFluid>()
        .Value(fluid => fluid.Name)
        .Number(fluid => fluid.Density.KilogramsPerCubicMeter);

    private TestFluid(string name, Density density) => (Name, Density) = (name, density);

    /// <summary>n-Heptane of 20 °C, the typical test liquid: 683.8 kg/m³ (Span and Wagner equation of state); <see cref="HeptaneAt"/> if warmer or colder.</summary>
    public static TestFluid Heptane { get; } = Of("n-heptane", Density.FromKilogramsPerCubicMeter(683.8));

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Density at the temperature of the test.</summary>
    public Density Density { get; }

    /// <summary>n-Heptane of another temperature than 20 °C: by volume an injector passes more of a warmer, lighter liquid.</summary>
    /// <param name="temperature">Of the liquid in the test, −30 to 80 °C.</param>
    /// <returns>The test liquid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public static TestFluid HeptaneAt(Temperature temperature) => Of(
        Heptane.Name,
        Density.FromKilogramsPerCubicMeter(FuelDensity.Heptane<Real>(Fuel.WithinRange(temperature, nameof(temperature)).Kelvins).Value));

    /// <summary>A test liquid by its density.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="density">At the temperature of the test, 600 to 1,200 kg/m³.</param>
    /// <returns>The test liquid.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The density is outside its range.</exception>
    public static TestFluid Of(string name, Density density) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                density,
                Density.FromKilogramsPerCubicMeter(600),
                Density.FromKilogramsPerCubicMeter(1200),
                "Give the liquid's density at the temperature of the test.",
                nameof(density)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(TestFluid? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and density.</summary>
    /// <returns>For instance <c>n-heptane, 684 kg/m³</c>.</returns>
    public override string ToString() =>
        $"{Name}, {Readable.Of(Density)}";
}
