using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>One pump, or several in series or in parallel, in any nesting.</summary>
/// <remarks>
/// In series the same flow passes through all and their pressure rises add; in parallel all see the same rise and their
/// flows add, never backward.
/// </remarks>
public abstract record PumpAssembly
{
    private PumpBounds? _cached;
    private Feed[]? _shared;
    private Wetted? _wetted;

    private protected PumpAssembly()
    {
    }

    /// <summary>The name shown in results.</summary>
    public abstract string Name { get; }

    /// <summary>Every pump in the assembly.</summary>
    public abstract IReadOnlyList<Pump> Pumps { get; }

    /// <summary>
    /// The assembly's curve at a supply voltage: the minimum that it surely delivers against each pressure rise, wiring and
    /// condition included.
    /// </summary>
    /// <param name="supply">At the battery or alternator, 6 to 20 V.</param>
    /// <param name="points">How many, 2 to 1,000.</param>
    /// <returns>Points of evenly spaced pressure, from none to the highest at which something is delivered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">A pump has lines of its own (<see cref="PumpBranch"/>): ask for <see cref="CurveOf"/>.</exception>
    public IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> CurveAt(ElectricPotential supply, int points = 61)
    {
        double volts = SupplyVoltage.Within(supply, nameof(supply)).Volts;
        Guard.Count(points, 2, 1000, "Give the number of points.", nameof(points));
        RunningPumps running = Running(volts, PumpReading.Lower);
        return
        [
            .. Enumerable.Range(0, points)
                .Select(point => StraightLine.Through<Real>(0, 0, points - 1, running.Deadhead, point).Value)
                .Select(rise => (
                    Pressure.FromPascals(rise),
                    VolumeFlow.FromCubicMetersPerSecond(running.FlowAt(rise)))),
        ];
    }

    /// <summary>The same at the joint of pumps that have lines of their own: less what a fuel loses in those.</summary>
    /// <param name="fuel">In the lines; where there are any, it must have a viscosity.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <param name="supply">At the battery or alternator, 6 to 20 V.</param>
    /// <param name="points">How many, 2 to 1,000.</param>
    /// <returns>Points of evenly spaced pressure, from none to the highest at which something is delivered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">There are lines, and the fuel has no viscosity.</exception>
    public IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> CurveOf(Fuel fuel, Temperature temperature, ElectricPotential supply, int points = 61)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        double kelvins = Fuel.WithinRange(temperature, nameof(temperature)).Kelvins;
        return (HasOwnLines ? InLiquid(new(fuel.DensityAtKelvins(kelvins), fuel.KinematicViscosityAtKelvins(kelvins))) : this).CurveAt(supply, points);
    }

    /// <summary>The same at a boost that has risen: of pumps that are switched by boost, those that run then, at the speed at which they run (<see cref="SwitchedPump"/>).</summary>
    /// <param name="fuel">In the lines; where there are any, it must have a viscosity.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <param name="supply">At the battery or alternator, 6 to 20 V.</param>
    /// <param name="boost">Manifold gauge pressure, −95 to 400 kPa. A curve of no boost is that of each switched pump at its low speed, which is sure at any boost.</param>
    /// <param name="points">How many, 2 to 1,000.</param>
    /// <returns>Points of evenly spaced pressure, from none to the highest at which something is delivered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">There are lines, and the fuel has no viscosity.</exception>
    public IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> CurveAtBoost(
        Fuel fuel, Temperature temperature, ElectricPotential supply, Pressure boost, int points = 61) =>
        At(ManifoldPressure.Within(boost, nameof(boost)).Pascals, falling: false).CurveOf(fuel, temperature, supply, points);

    /// <summary>Name, and the flow against no pressure at the voltage of each pump's highest curve.</summary>
    /// <returns>For instance <c>pump R, up to 215 L/h at 13.5 V</c>; of several pumps their names.</returns>
    public sealed override string ToString() => this is Pump pump
        ? $"{Name}, up to {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(pump.Curves[^1].Flow.FirstValue))} at {Readable.Of(pump.Curves[^1].Voltage)}"
        : Name;

    /// <summary>Every pump in it that is switched by boost.</summary>
    internal abstract IEnumerable<SwitchedPump> Switches { get; }

    /// <summary>True if there is a boost at which no pump in it runs that could pass anything on.</summary>
    internal abstract bool MayStop { get; }

    /// <summary>The same arrangement with each branch that has lines of its own exchanged for another; asked in the order of <see cref="OwnBranches"/>.</summary>
    internal virtual PumpAssembly WithOwn(Func<PumpBranch, PumpBranch> exchange) => this;

    /// <summary>The same arrangement with each of its pumps, switched or not, exchanged for another.</summary>
    /// <param name="exchange">Gives what takes a pump's place; asked in the order of <see cref="Pumps"/>.</param>
    internal virtual PumpAssembly WithEach(Func<PumpAssembly, PumpAssembly> exchange) => exchange(this);

    /// <summary>The same pumps with every switch set; itself where there is none.</summary>
    /// <param name="boost">Pa.</param>
    /// <param name="falling">True where boost has come down from above the switches, false where it has risen from below.</param>
    internal virtual PumpAssembly At(double boost, bool falling) => Switches.Any() ? WithEach(pump => pump.At(boost, falling)) : this;

    /// <summary>True if a pump has lines of its own, whose loss depends on the fuel.</summary>
    internal virtual bool HasOwnLines => false;

    /// <summary>True if a pump has a suction line of its own.</summary>
    internal virtual bool HasOwnSuction => false;

    /// <summary>Every branch with lines of its own, in the order of <see cref="Pumps"/>.</summary>
    internal virtual IEnumerable<PumpBranch> OwnBranches => [];

    /// <summary>The same pumps with a fuel in their own lines; themselves where they have none.</summary>
    /// <param name="liquid">The fuel.</param>
    /// <remarks>Cached from the last call where the fuel is the same: a sweep asks for one at all its points, and what is worked out of them stays with them.</remarks>
    internal PumpAssembly InLiquid(in Liquid liquid)
    {
        if (!HasOwnLines)
        {
            return this;
        }

        Wetted? wetted = Volatile.Read(ref _wetted);
        if (wetted?.Liquid != liquid)
        {
            wetted = new(liquid, In(liquid));
            Volatile.Write(ref _wetted, wetted);
        }

        return wetted!.Pumps;
    }

    private protected virtual PumpAssembly In(in Liquid liquid) => this;

    /// <summary>True if a curve ends above zero flow, so that nothing is known of higher pressures.</summary>
    internal abstract bool HasOpenEnd { get; }

    /// <summary>True if the voltage at each motor is within the measured ones whatever the pumps deliver.</summary>
    /// <param name="supply">At the source, V.</param>
    internal abstract bool IsMeasuredAt(double supply);

    /// <summary>The same pumps with each feed exchanged for another.</summary>
    /// <param name="exchange">Gives the feed that takes a feed's place.</param>
    internal PumpAssembly Rewired(Func<Feed, Feed> exchange) => WithPumps(pump => pump.Feed is { } feed ? pump.WithFeed(exchange(feed)) : pump);

    /// <summary>The same arrangement with each pump changed; of a switched one the pump that it switches.</summary>
    /// <param name="change">Gives the pump that takes a pump's place; asked in the order of <see cref="Pumps"/>.</param>
    internal virtual PumpAssembly WithPumps(Func<Pump, Pump> change) => WithEach(pump => pump.WithPumps(change));

    /// <summary>The pumps fed with a voltage.</summary>
    /// <param name="supply">At the source, V.</param>
    /// <param name="reading">How their curves are read where they end.</param>
    internal RunningPumps Running(double supply, PumpReading reading = PumpReading.Estimate) => SharedFeeds.Length == 0
        ? Fed(SpliceVoltages.None(supply), reading)
        : new SharedRunning(this, SharedFeeds, supply, reading);

    /// <summary>The pumps with the voltage known at which each one's own part of its feed begins.</summary>
    /// <param name="volts">By pump.</param>
    /// <param name="reading">How their curves are read where they end.</param>
    internal abstract RunningPumps Fed(SpliceVoltages volts, PumpReading reading);

    /// <summary>The parts of feeds that several pumps share and that resist; those that do not are as good as none.</summary>
    internal Feed[] SharedFeeds => _shared ??= [.. Pumps.Select(pump => pump.Feed?.Shared).OfType<Feed>().Where(shared => shared.LoopOhms > 0).Distinct()];

    /// <summary>The lowest voltage at any splice: with the most current that was measured of every pump, V.</summary>
    internal double LowestSplice(double supply) => SharedFeeds.Select(shared => VoltageDrop.AtMotor<Real>(
        supply, Pumps.Where(pump => shared.Equals(pump.Feed?.Shared)).Sum(pump => pump.HighestCurrent(supply)), shared.LoopOhms).Value).Min();

    /// <summary>True if the voltage at each motor is within the measured ones whatever the pumps deliver, and whatever they leave each other.</summary>
    /// <param name="supply">At the source, V.</param>
    internal bool IsMeasured(double supply) =>
        IsMeasuredAt(supply) && (SharedFeeds.Length == 0 || (LowestSplice(supply) is > 0 and var lowest && IsMeasuredAt(lowest)));

    /// <summary>
    /// <see cref="Running"/> by every reading, cached from the last call where the voltage is the same: what
    /// runs is immutable, and a sweep asks for one voltage at all its points.
    /// </summary>
    /// <param name="supply">At the source, V.</param>
    internal PumpBounds Bounds(double supply)
    {
        PumpBounds? bounds = Volatile.Read(ref _cached);
        if (bounds?.Supply != supply)
        {
            RunningPumps estimate = Running(supply);
            bool measured = IsMeasured(supply);
            bounds = new(
                supply,
                estimate,
                measured ? estimate : Running(supply, PumpReading.Lower),
                measured && !HasOpenEnd ? estimate : Running(supply, PumpReading.Upper));
            Volatile.Write(ref _cached, bounds);
        }

        return bounds;
    }

    // Two pumps hang on one splice if what they share is the same: under one name there must not be two.
    internal static void OneOfEachName(IEnumerable<Pump> pumps, string name)
    {
        Dictionary<string, Feed> known = new(StringComparer.Ordinal);
        foreach (Pump pump in pumps)
        {
            if (pump.Feed?.Shared is { } shared && !known.TryAdd(shared.Name, shared) && !known[shared.Name].Equals(shared))
            {
                throw new ArgumentException(
                    $"{name} has pumps whose feeds share {shared.Name}, described in two ways: {known[shared.Name]} and {shared}. Give all of them the same, or each its own name.",
                    name);
            }
        }
    }

    /// <summary>The members of an assembly: two to eight, none missing.</summary>
    private protected static PumpAssembly[] Members(PumpAssembly[] members, string name)
    {
        ArgumentNullException.ThrowIfNull(members, name);
        Guard.Count(members.Length, 2, 8, "Give two pumps or more; a single one needs no assembly.", name);
        foreach (PumpAssembly member in members)
        {
            ArgumentNullException.ThrowIfNull(member, name);
        }

        OneOfEachName(members.SelectMany(member => member.Pumps), name);
        return [.. members];
    }
}

/// <summary>Pumps in parallel, each with a check valve: the same pressure rise over all, flows added.</summary>
public sealed record PumpParallel : PumpAssembly
{
    private static readonly Identity<PumpParallel> _identity = new Identity<PumpParallel>()
        .List(pumps => pumps.Branches);

    private readonly PumpAssembly[] _branches;

    private PumpParallel(PumpAssembly[] branches) =>
        (_branches, Branches) = (branches, Array.AsReadOnly(branches));

    /// <summary>The branches.</summary>
    public IReadOnlyList<PumpAssembly> Branches { get; }

    /// <inheritdoc/>
    public override string Name => $"({string.Join(" in parallel with ", _branches.Select(branch => branch.Name))})";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [.. _branches.SelectMany(branch => branch.Pumps)];

    /// <summary>Puts branches in parallel, each with a check valve.</summary>
    /// <param name="branches">Two to eight.</param>
    /// <returns>The assembly.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many branches.</exception>
    public static PumpParallel Of(params PumpAssembly[] branches) => new(Members(branches, nameof(branches)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpParallel? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<SwitchedPump> Switches => _branches.SelectMany(branch => branch.Switches);

    internal override bool MayStop => Array.TrueForAll(_branches, branch => branch.MayStop);

    internal override bool HasOwnLines => Array.Exists(_branches, branch => branch.HasOwnLines);

    internal override bool HasOwnSuction => Array.Exists(_branches, branch => branch.HasOwnSuction);

    internal override IEnumerable<PumpBranch> OwnBranches => _branches.SelectMany(branch => branch.OwnBranches);

    internal override PumpAssembly WithOwn(Func<PumpBranch, PumpBranch> exchange) =>
        new PumpParallel(Array.ConvertAll(_branches, branch => branch.WithOwn(exchange)));

    private protected override PumpAssembly In(in Liquid liquid)
    {
        Liquid inside = liquid;
        return new PumpParallel(Array.ConvertAll(_branches, branch => branch.InLiquid(inside)));
    }

    internal override PumpAssembly WithEach(Func<PumpAssembly, PumpAssembly> exchange) =>
        new PumpParallel(Array.ConvertAll(_branches, branch => branch.WithEach(exchange)));

    internal override bool HasOpenEnd => _branches.Any(branch => branch.HasOpenEnd);

    internal override bool IsMeasuredAt(double supply) => Array.TrueForAll(_branches, branch => branch.IsMeasuredAt(supply));

    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) =>
        new RunningParallel(Array.ConvertAll(_branches, branch => branch.Fed(volts, reading)));
}

/// <summary>Pumps in series: the same flow through all, pressure rises added.</summary>
public sealed record PumpSeries : PumpAssembly
{
    private static readonly Identity<PumpSeries> _identity = new Identity<PumpSeries>()
        .Value(pumps => pumps.Bypass)
        .List(pumps => pumps.Stages);

    private readonly PumpAssembly[] _stages;

    private PumpSeries(PumpAssembly[] stages, SeriesBypass bypass) =>
        (_stages, Stages, Bypass) = (stages, Array.AsReadOnly(stages), bypass);

    /// <summary>What a stage does when more flows than it can pass by itself.</summary>
    public SeriesBypass Bypass { get; }

    /// <summary>The stages, from tank to rail.</summary>
    public IReadOnlyList<PumpAssembly> Stages { get; }

    /// <inheritdoc/>
    public override string Name => $"({string.Join(" in series with ", _stages.Select(stage => stage.Name))})";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [.. _stages.SelectMany(stage => stage.Pumps)];

    /// <summary>Puts stages in series.</summary>
    /// <param name="bypass">What a stage does when more flows than it can pass by itself.</param>
    /// <param name="stages">Two to eight, from tank to rail.</param>
    /// <returns>The assembly.</returns>
    /// <exception cref="ArgumentException">A stage may stand still, or has lines of its own, and nothing leads past it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many stages.</exception>
    public static PumpSeries Of(SeriesBypass bypass, params PumpAssembly[] stages)
    {
        PumpAssembly[] members = Members(stages, nameof(stages));
        Guard.Member(bypass, "Say how a stage is by-passed.", nameof(bypass));
        if (bypass == SeriesBypass.None && Array.Find(members, stage => stage.HasOwnLines) is { } lined)
        {
            throw new ArgumentException(
                $"{nameof(bypass)} was {bypass}, and {lined.Name} has lines of its own (PumpBranch): what another stage pulls or pushes through them past its free flow is not modelled. Give it a check valve around it, or give the lines to the plumbing.",
                nameof(bypass));
        }

        return bypass == SeriesBypass.None && Array.Find(members, stage => stage.MayStop) is { } still
            ? throw new ArgumentException(
                $"{nameof(bypass)} was {bypass}, and {still.Name} stands still below that boost: what a pump at rest lets through is not known. Give it a check valve around it, or run it at low speed.",
                nameof(bypass))
            : new(members, bypass);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpSeries? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<SwitchedPump> Switches => _stages.SelectMany(stage => stage.Switches);

    internal override bool MayStop => Array.TrueForAll(_stages, stage => stage.MayStop);

    internal override bool HasOwnLines => Array.Exists(_stages, stage => stage.HasOwnLines);

    internal override bool HasOwnSuction => Array.Exists(_stages, stage => stage.HasOwnSuction);

    internal override IEnumerable<PumpBranch> OwnBranches => _stages.SelectMany(stage => stage.OwnBranches);

    internal override PumpAssembly WithOwn(Func<PumpBranch, PumpBranch> exchange) =>
        new PumpSeries(Array.ConvertAll(_stages, stage => stage.WithOwn(exchange)), Bypass);

    private protected override PumpAssembly In(in Liquid liquid)
    {
        Liquid inside = liquid;
        return new PumpSeries(Array.ConvertAll(_stages, stage => stage.InLiquid(inside)), Bypass);
    }

    internal override PumpAssembly WithEach(Func<PumpAssembly, PumpAssembly> exchange) =>
        new PumpSeries(Array.ConvertAll(_stages, stage => stage.WithEach(exchange)), Bypass);

    internal override bool HasOpenEnd => _stages.Any(stage => stage.HasOpenEnd);

    internal override bool IsMeasuredAt(double supply) => Array.TrueForAll(_stages, stage => stage.IsMeasuredAt(supply));

    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) =>
        new RunningSeries(Array.ConvertAll(_stages, stage => stage.Fed(volts, reading)), Bypass);
}

/// <summary>What a pump in series does when more flows than it can pass by itself.</summary>
public enum SeriesBypass
{
    /// <summary>A check valve around it opens: the rest bypasses it, and it adds no pressure.</summary>
    CheckValve = 0,

    /// <summary>Nothing: no more passes than the weakest stage lets through.</summary>
    None = 1,
}

/// <summary>Pumps fed with one voltage, by every reading of where their curves end.</summary>
/// <param name="Supply">At the source, V.</param>
/// <param name="Estimate">As results show them.</param>
/// <param name="Lower">The least that the curves allow; the estimate itself where the measured voltages cover the supply's.</param>
/// <param name="Upper">The most that they allow; the estimate itself where moreover no curve ends above zero flow.</param>
internal sealed record PumpBounds(double Supply, RunningPumps Estimate, RunningPumps Lower, RunningPumps Upper)
{
    /// <summary>True where data covers the supply's voltage and every curve's end, so that all three are one.</summary>
    public bool IsKnown => ReferenceEquals(Lower, Estimate) && ReferenceEquals(Upper, Estimate);

    /// <summary>True if tangents are much the faster for one of them.</summary>
    public bool IsNested { get; } = Estimate.IsNested || Lower.IsNested || Upper.IsNested;
}

/// <summary>Pumps with a fuel in their own lines.</summary>
/// <param name="Liquid">The fuel.</param>
/// <param name="Pumps">The pumps.</param>
internal sealed record Wetted(Liquid Liquid, PumpAssembly Pumps);
