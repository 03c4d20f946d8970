using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>What if one thing fails: the mixture and the rail along a boost line with each single failure.</summary>
/// <remarks>
/// <para>Failures: each pump of several dead (or its relay), each reference hose off, a regulator stuck shut or open, each filter half blocked,
/// the alternator off (12 V). A dead pump in series passes fuel without pressure where it has a check valve around it; where it has none,
/// nobody knows what it lets through, and the answer says so.</para>
/// <para>With a regulator stuck shut, or a pump that its controller does not slow, the rail is what the pumps give at the flow that is injected.
/// Checks that compare with the pressure set then mean nothing and are left out: look at <see cref="FailureResult.HighestRail"/>. How far a
/// regulator stands open that is stuck so, nobody knows either: of one in series with a rising-rate unit the other still governs, of one alone
/// the answer says that it is not known.</para>
/// </remarks>
public static class SingleFailures
{
    // Over what any pump gives, so that a regulator that is set to it never opens.
    private const double Shut = 5e6;

    // No boost lies above the one pair, none below the other.
    private static readonly (Pressure On, Pressure Off) Never = (ManifoldPressure.Maximum, ManifoldPressure.Maximum - Pressure.FromPascals(1));
    private static readonly (Pressure On, Pressure Off) Always = (ManifoldPressure.Minimum + Pressure.FromPascals(1), ManifoldPressure.Minimum);

    private static readonly ElectricPotential Battery = ElectricPotential.FromVolts(12);

    // What they judge is what there is, whatever the pressure set.
    private static readonly Part[] Judged = [Part.Mixture, Part.RichMixture, Part.Suction, Part.Filter, Part.Feed, Part.Wire, Part.Fuse, Part.Relay,
        Part.LiftSuction, Part.LiftFilter, Part.LiftFeed, Part.LiftWire, Part.LiftFuse, Part.LiftRelay, Part.SurgeTank,
        Part.FuseStart, Part.LockedRotor, Part.LiftFuseStart, Part.LiftLockedRotor];

    /// <summary>Solves a boost line once for each single failure.</summary>
    /// <param name="system">The system, with its controller.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the work, which has no result before its end.</param>
    /// <returns>Each failure, the leanest first; those whose mixture cannot be said at some point before them.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<FailureResult> WithEachFailure(
        this FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(conditions);
        return Array.AsReadOnly<FailureResult>(
        [
            .. Of(system, conditions)
                .Select(failure => new FailureResult(
                    failure.Text, failure.System is null ? null : failure.System.Pull(line, slowest, fastest, failure.Conditions, cancellation)))
                .OrderByDescending(failure => failure.NotKnown > 0 ? double.PositiveInfinity : failure.Leanest?.Mixture.MaximumLambda ?? double.PositiveInfinity),
        ]);
    }

    /// <summary>Each single failure, the system with it and the conditions; no system where nobody knows what the dead part lets through.</summary>
    internal static IEnumerable<(Statement Text, FuelSystem? System, Conditions Conditions)> Of(FuelSystem system, Conditions conditions)
    {
        if (system.Pump.Pumps.Count > 1)
        {
            foreach (Pump pump in system.Pump.Pumps.Distinct())
            {
                Statement dead = Statement.Of("failure.pump", $"{pump.Name} dead, or its relay");
                yield return (dead, Without(system.Pump, pump) is { } rest ? system.With(rest) : null, conditions);
            }
        }

        foreach (SwitchedPump pump in system.Pump.Switches.Distinct())
        {
            yield return (
                Statement.Of("failure.not-switched", $"{pump.Pump.Name} not switched on, its switch or relay stuck open"),
                system.With(Stuck(system.Pump, pump, Never)),
                conditions);
            yield return (
                Statement.Of("failure.always-on", $"{pump.Pump.Name} always at full speed, its switch or relay stuck shut"),
                system.With(Stuck(system.Pump, pump, Always)),
                conditions);
        }

        foreach ((Statement text, PressureRegulator? regulator) in Regulators(system.Regulator))
        {
            yield return (text, regulator is null ? null : system.With(system.Demand, system.Injectors, regulator), conditions);
        }

        yield return (
            system.Regulator is ElectronicReturnless
                ? Statement.Of("failure.full-speed", $"pump not slowed by its controller")
                : Statement.Of("failure.shut", $"regulator stuck shut"),
            system.With(system.Demand, system.Injectors, StandingAt(ShutFor(system, conditions), VolumeFlow.Zero)).JudgedOnlyBy(Judged),
            conditions);

        foreach ((Plumbing plumbing, string name) in Blocked(system.Plumbing))
        {
            yield return (Statement.Of("failure.filter", $"{name} half blocked"), system.With(plumbing), conditions);
        }

        foreach ((PumpAssembly pump, string name) in Blocked(system.Pump))
        {
            yield return (Statement.Of("failure.filter", $"{name} half blocked"), system.With(pump), conditions);
        }

        if (conditions.SupplyVoltage > Battery)
        {
            yield return (
                Statement.Of("failure.alternator", $"alternator off, {Battery}"),
                system,
                conditions.With(Battery, conditions.FuelTemperature));
        }
    }

    /// <summary>An assembly with one of its switches moved to where no boost reaches it; the first of those that are alike.</summary>
    private static PumpAssembly Stuck(PumpAssembly pumps, SwitchedPump pump, (Pressure On, Pressure Off) moved)
    {
        bool done = false;
        return pumps.WithEach(part =>
        {
            if (done || !part.Equals(pump))
            {
                return part;
            }

            done = true;
            return SwitchedPump.Above(moved.On, moved.Off, pump.Pump, pump.LowSpeed);
        });
    }

    /// <summary>An assembly with a pump dead; none where it is not known what that lets through.</summary>
    private static PumpAssembly? Without(PumpAssembly pumps, Pump dead)
    {
        if (pumps is PumpBranch branch)
        {
            return Without(branch.Pump, dead) is { } left ? branch.With(left) : null;
        }

        IReadOnlyList<PumpAssembly> members = pumps switch
        {
            PumpParallel parallel => parallel.Branches,
            PumpSeries { Bypass: SeriesBypass.CheckValve } series => series.Stages,
            _ => [],
        };
        if (members.FirstOrDefault(member => member.Pumps.Contains(dead)) is not { } with)
        {
            return null;
        }

        // The check valve of a dead branch shuts, and that around a dead stage opens; deeper in, the member goes on without the pump.
        bool isAlone = Inside(with) is Pump or SwitchedPump;
        PumpAssembly? rest = isAlone ? null : Without(with, dead);
        PumpAssembly[] others = [.. members];

        // Two of a kind may be one description: the first of them is the dead one.
        int place = Array.IndexOf(others, with);
        others = [.. others[..place], .. rest is null ? Array.Empty<PumpAssembly>() : [rest], .. others[(place + 1)..]];
        return rest is null && !isAlone ? null
            : others.Length == 1 ? others[0]
            : pumps is PumpSeries row ? PumpSeries.Of(row.Bypass, others) : PumpParallel.Of(others);
    }

    // The check valve of a branch shuts with the pump in it.
    private static PumpAssembly Inside(PumpAssembly pumps) => pumps is PumpBranch branch ? Inside(branch.Pump) : pumps;

    /// <summary>What governs with a hose off, or with a regulator stuck open; none where that is not known.</summary>
    private static IEnumerable<(Statement Text, PressureRegulator? Regulator)> Regulators(PressureRegulator regulator)
    {
        if (regulator is RegulatorSeries pair)
        {
            yield return (Statement.Of("failure.unit-hose", $"reference hose of the rising-rate unit off"), Paired(pair, pair.BaseRegulator, Standing(pair.Unit)));
            yield return (Statement.Of("failure.unit-open", $"rising-rate unit stuck open"), pair.BaseRegulator);
            yield return (Statement.Of("failure.base-open", $"base regulator stuck open"), pair.Unit);
            if (HoseOff(pair.BaseRegulator) is { } baseStill)
            {
                yield return (Statement.Of("failure.base-hose", $"reference hose of the base regulator off"), Paired(pair, baseStill, pair.Unit));
            }

            yield break;
        }

        if (HoseOff(regulator) is { } still)
        {
            yield return (Statement.Of("failure.hose", $"reference hose off"), still);
        }

        if (regulator is not ElectronicReturnless)
        {
            yield return (Statement.Of("failure.open", $"regulator stuck open"), null);
        }
    }

    /// <summary>A pair with one of the two exchanged: a gain that is only quoted stays so.</summary>
    private static RegulatorSeries Paired(RegulatorSeries pair, PressureRegulator baseRegulator, RisingRate unit)
    {
        RegulatorSeries changed = RegulatorSeries.Of(baseRegulator, unit);
        return pair.IsGainQuoted ? changed.WithQuotedGain() : changed;
    }

    /// <summary>The regulator with the ambient air at its reference; none where it has no hose.</summary>
    private static PressureRegulator? HoseOff(PressureRegulator regulator) => regulator switch
    {
        ManifoldReferenced or RisingRate or CustomRegulator => StandingAt(regulator.SetPascals(0), regulator.MinimumReturnFlow, regulator.Flow),
        ElectronicReturnless { FollowsManifold: true } electronic =>
            ElectronicReturnless.Holding(Pressure.FromPascals(regulator.SetPascals(0)), false, electronic.MinimumVoltage),
        _ => null,
    };

    /// <summary>A unit whose boost is none: its ceiling is where it stands, and its base so far over it that no vacuum draws it down.</summary>
    private static RisingRate Standing(RisingRate unit)
    {
        Pressure still = Pressure.FromPascals(unit.Setting!.Value.At<Real>(0).Value);
        return (RisingRate)RisingRate.From(still, RisingRate.MinimumGain, Pressure.Zero, still, unit.MinimumReturnFlow).With(unit.Flow).Off(unit.OffsetPascals)
            .Found(-ManifoldPressure.Minimum.Pascals, 0, 0);
    }

    /// <summary>A pressure, Pa, that the pumps do not reach.</summary>
    private static double ShutFor(FuelSystem system, Conditions conditions)
    {
        const double Over = 1e5;
        Fuel fuel = system.Demand.Consumption.Fuel;
        PumpAssembly pumps = !system.Pump.HasOwnLines ? system.Pump
            : system.Pump.InLiquid(new(fuel.DensityAtKelvins(conditions.FuelKelvins), fuel.KinematicViscosityAtKelvins(conditions.ColdestKelvins)));
        double most = pumps.Bounds(conditions.SupplyVolts).Upper.Deadhead;
        return most < Shut - Over ? most + Over : Shut;
    }

    /// <summary>A regulator that stands at a pressure, Pa, whatever the boost: also at one lower or higher than a fixed one is described with.</summary>
    private static PressureRegulator StandingAt(double pascals, VolumeFlow minimumReturn, RegulatorFlow? flow = null)
    {
        const double Lowest = 100e3;
        const double Highest = 1500e3;
        double described = Math.Clamp(pascals, Lowest, Highest);
        return Fixed.At(Pressure.FromPascals(described), minimumReturn).With(flow).Off(pascals - described);
    }

    private static IEnumerable<(Plumbing Plumbing, string Name)> Blocked(Plumbing plumbing)
    {
        IReadOnlyList<IFlowLoss>[] lines = [plumbing.Suction, plumbing.ToRegulator, plumbing.Supply, plumbing.ReturnLine];
        for (int line = 0; line < lines.Length; line++)
        {
            foreach ((IFlowLoss[] blocked, string name) in Blocked(lines[line]))
            {
                yield return (
                    Plumbing.Of(
                        line == 0 ? blocked : plumbing.Suction,
                        line == 2 ? blocked : plumbing.Supply,
                        line == 3 ? blocked : plumbing.ReturnLine,
                        line == 1 ? blocked : plumbing.ToRegulator),
                    name);
            }
        }
    }

    /// <summary>The pumps with each filter of their own half blocked.</summary>
    private static IEnumerable<(PumpAssembly Pump, string Name)> Blocked(PumpAssembly pumps)
    {
        PumpBranch[] branches = [.. pumps.OwnBranches];
        for (int at = 0; at < branches.Length; at++)
        {
            int own = at;
            PumpAssembly With(Func<PumpBranch, PumpBranch> change)
            {
                int place = 0;
                return pumps.WithOwn(branch => place++ == own ? change(branch) : branch);
            }

            foreach ((IFlowLoss[] blocked, string name) in Blocked(branches[at].Suction))
            {
                yield return (With(branch => PumpBranch.Of(branch.Pump, blocked, branch.Discharge)), name);
            }

            foreach ((IFlowLoss[] blocked, string name) in Blocked(branches[at].Discharge))
            {
                yield return (With(branch => PumpBranch.Of(branch.Pump, branch.Suction, blocked)), name);
            }
        }
    }

    private static IEnumerable<(IFlowLoss[] Blocked, string Name)> Blocked(IReadOnlyList<IFlowLoss> path)
    {
        for (int part = 0; part < path.Count; part++)
        {
            if (path[part] is Filter filter)
            {
                IFlowLoss[] blocked = [.. path];
                blocked[part] = filter.HalfBlocked();
                yield return (blocked, filter.Name);
            }
        }
    }
}

/// <summary>A boost line with one thing failed.</summary>
public sealed class FailureResult : IReadable
{
    internal FailureResult(Statement failure, LineSweepResult? sweep) => (Failure, Sweep) = (failure, sweep);

    /// <summary>What failed.</summary>
    public Statement Failure { get; }

    /// <summary>The line with it; none where nobody knows what the dead part lets through.</summary>
    public LineSweepResult? Sweep { get; }

    /// <summary>Where along the line the mixture can be leanest of all that was solved and is known; none where it is known nowhere.</summary>
    public OperatingResult? Leanest => Sweep?.Leanest;

    /// <summary>At how many of the points shown lambda is not known: the mixture may be leaner there.</summary>
    public int NotKnown => Sweep?.Results.Count(result => result.States.Any(state => state.Mixture.MaximumLambda is null)) ?? 0;

    /// <summary>Where along the line the rail stands lowest.</summary>
    public OperatingResult? LowestRail => Sweep?.LowestRail;

    /// <summary>Where along the line the rail stands highest: for what hoses and fittings are rated for.</summary>
    public OperatingResult? HighestRail => Sweep?.HighestRail;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The failure and its leanest point, as a code with its figures.</summary>
    public Statement Text => Leanest is { } leanest
        ? NotKnown > 0
            ? Statement.Of(
                "failure.leanest-known",
                $"{Failure}: lambda {leanest.Mixture.MaximumLambda!.Value:0.000} at {leanest.Point}, rail {leanest.Mixture.RailGauge}; not known at {NotKnown} of {Sweep!.Results.Count} points, where it may be leaner{OverRating}")
            : Statement.Of(
                "failure.leanest",
                $"{Failure}: lambda {leanest.Mixture.MaximumLambda!.Value:0.000} at {leanest.Point}, rail {leanest.Mixture.RailGauge}{OverRating}")
        : Statement.Of("failure.unknown", $"{Failure}: what then reaches the engine is not known");

    private Statement? OverRating => Sweep?.System.Limits.RailCeiling is { } rating && HighestRail is { } highest && highest.Mixture.RailGauge > rating
        ? Statement.Of("failure.over-rating", $"; rail up to {highest.Mixture.RailGauge}, over the rating of {rating}")
        : null;

    /// <summary>The failure and its leanest point.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
