using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>What if one thing fails: the mixture and the rail along a boost line with each single failure.</summary>
/// <remarks>
/// Failures: each pump of several dead (or its relay), the reference hose off, each filter half blocked, the alternator off (12 V). A dead
/// pump in series passes fuel without pressure where it has a check valve around it; where it has none, nobody knows what it lets through, and
/// the answer says so.
/// </remarks>
public static class SingleFailures
{
    private static readonly ElectricPotential Battery = ElectricPotential.FromVolts(12);

    /// <summary>Solves a boost line once for each single failure.</summary>
    /// <param name="system">The system, with its controller.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <returns>Each failure, the leanest first; those whose mixture cannot be said at some point before them.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    public static IReadOnlyList<FailureResult> WithEachFailure(
        this FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(conditions);
        return Array.AsReadOnly<FailureResult>(
        [
            .. Of(system, conditions)
                .Select(failure => new FailureResult(
                    failure.Text, failure.System is null ? null : failure.System.Pull(line, slowest, fastest, failure.Conditions)))
                .OrderByDescending(failure => failure.NotKnown > 0 ? double.PositiveInfinity : failure.Leanest?.Mixture.MaximumLambda ?? double.PositiveInfinity),
        ]);
    }

    private static IEnumerable<(Statement Text, FuelSystem? System, Conditions Conditions)> Of(FuelSystem system, Conditions conditions)
    {
        if (system.Pump.Pumps.Count > 1)
        {
            foreach (Pump pump in system.Pump.Pumps.Distinct())
            {
                Statement dead = Statement.Of("failure.pump", $"{pump.Name} dead, or its relay");
                yield return (dead, Without(system.Pump, pump) is { } rest ? system.With(rest) : null, conditions);
            }
        }

        if (HoseOff(system.Regulator) is { } still)
        {
            yield return (Statement.Of("failure.hose", $"reference hose off"), system.With(still), conditions);
        }

        foreach ((Plumbing plumbing, string name) in Blocked(system.Plumbing))
        {
            yield return (Statement.Of("failure.filter", $"{name} half blocked"), system.With(plumbing), conditions);
        }

        if (conditions.SupplyVoltage > Battery)
        {
            yield return (
                Statement.Of("failure.alternator", $"alternator off, {Battery}"),
                system,
                conditions.With(Battery, conditions.FuelTemperature));
        }
    }

    /// <summary>An assembly with a pump dead; none where it is not known what that lets through.</summary>
    private static PumpAssembly? Without(PumpAssembly pumps, Pump dead)
    {
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
        bool isAlone = with.Equals(dead);
        PumpAssembly? rest = isAlone ? null : Without(with, dead);
        PumpAssembly[] left = [.. members];

        // Two of a kind may be one description: the first of them is the dead one.
        int place = Array.IndexOf(left, with);
        left = [.. left[..place], .. rest is null ? Array.Empty<PumpAssembly>() : [rest], .. left[(place + 1)..]];
        return rest is null && !isAlone ? null
            : left.Length == 1 ? left[0]
            : pumps is PumpSeries row ? PumpSeries.Of(row.Bypass, left) : PumpParallel.Of(left);
    }

    /// <summary>The regulator with the ambient air at its reference; none where it has no hose.</summary>
    private static PressureRegulator? HoseOff(PressureRegulator regulator) => regulator switch
    {
        // The unit is off its hose; the base regulator keeps its own.
        RegulatorSeries pair => pair.Unit.SetPascals(0) <= pair.BaseRegulator.SetPascals(0)
            ? pair.BaseRegulator
            : StandingAt(pair.Unit.SetPascals(0), pair.MinimumReturnFlow),
        ManifoldReferenced or RisingRate => StandingAt(regulator.SetPascals(0), regulator.MinimumReturnFlow),
        ElectronicReturnless { FollowsManifold: true } electronic =>
            ElectronicReturnless.Holding(Pressure.FromPascals(regulator.SetPascals(0)), false, electronic.MinimumVoltage),
        _ => null,
    };

    /// <summary>A regulator that stands at a pressure, Pa, whatever the boost: also at one lower than a fixed one is described with.</summary>
    private static PressureRegulator StandingAt(double pascals, VolumeFlow minimumReturn)
    {
        const double Lowest = 100e3;
        return Fixed.At(Pressure.FromPascals(Math.Max(Lowest, pascals)), minimumReturn).Off(Math.Min(0, pascals - Lowest));
    }

    private static IEnumerable<(Plumbing Plumbing, string Name)> Blocked(Plumbing plumbing)
    {
        IReadOnlyList<IFlowLoss>[] lines = [plumbing.Suction, plumbing.Supply, plumbing.ReturnLine];
        for (int line = 0; line < lines.Length; line++)
        {
            for (int part = 0; part < lines[line].Count; part++)
            {
                if (lines[line][part] is Filter filter)
                {
                    IFlowLoss[] blocked = [.. lines[line]];
                    blocked[part] = filter.HalfBlocked();
                    yield return (
                        Plumbing.Of(
                            line == 0 ? blocked : plumbing.Suction,
                            line == 1 ? blocked : plumbing.Supply,
                            line == 2 ? blocked : plumbing.ReturnLine),
                        filter.Name);
                }
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

    /// <summary>Where the mixture can be leanest of the points shown at which it is known; none where it is known at none.</summary>
    public OperatingResult? Leanest => Sweep?.Leanest;

    /// <summary>At how many of the points shown lambda is not known: the mixture may be leaner there.</summary>
    public int NotKnown => Sweep?.Results.Count(result => result.Mixture.MaximumLambda is null) ?? 0;

    /// <summary>Where the rail stands lowest of the points shown.</summary>
    public OperatingResult? LowestRail => Sweep?.Results.MinBy(result => result.Mixture.RailGauge);

    /// <inheritdoc/>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return Text.In(style);
    }

    /// <summary>The failure and its leanest point, as a code with its figures.</summary>
    public Statement Text => Leanest is { } leanest
        ? NotKnown > 0
            ? Statement.Of(
                "failure.leanest-known",
                $"{Failure}: lambda {leanest.Mixture.MaximumLambda!.Value:0.000} at {leanest.Point}, rail {leanest.Mixture.RailGauge}; not known at {NotKnown} of {Sweep!.Results.Count} points, where it may be leaner")
            : Statement.Of("failure.leanest", $"{Failure}: lambda {leanest.Mixture.MaximumLambda!.Value:0.000} at {leanest.Point}, rail {leanest.Mixture.RailGauge}")
        : Statement.Of("failure.unknown", $"{Failure}: what then reaches the engine is not known");

    /// <summary>The failure and its leanest point.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
