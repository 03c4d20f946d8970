using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Asks how long a surge tank carries the engine while the lift pump's pickup is uncovered, and how long it takes to refill.</summary>
/// <remarks>
/// The tank is full when the pickup is uncovered, free of air, and its level falls uniformly. A partly uncovered pickup brings nothing, the cautious reading. While
/// the tank refills the engine goes on drawing.
/// </remarks>
public static class UncoveredPickup
{
    /// <summary>Seconds of uncovered pickup that the surge tank carries at one operating point, and the time to refill it afterwards at the same point.</summary>
    /// <param name="system">A system with a surge tank.</param>
    /// <param name="point">Speed, boost and conditions.</param>
    /// <returns>Both times, as bounds where pump data ends; that it never refills is an answer with its reason.</returns>
    /// <exception cref="ArgumentException">The system has no surge tank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    /// <example>
    /// <code>
    /// Pump lift = Pump.From(PumpCurve.At(
    ///     "lift pump",
    ///     ElectricPotential.FromVolts(13.5),
    ///     (Pressure.Zero, VolumeFlow.FromLitersPerHour(196)),
    ///     (Pressure.FromKilopascals(62), VolumeFlow.Zero)));
    /// FuelSystem fed = system.With(SurgeTank.Of(Volume.FromLiters(1.4), lift, ReturnDestination.SurgeTank));
    /// UncoveredPickupResult corner = fed.UncoverPickup(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6400), Pressure.FromBars(0.6)));
    /// Console.WriteLine(corner);   // seconds that it carries, and to refill
    /// </code>
    /// </example>
    public static UncoveredPickupResult UncoverPickup(this FuelSystem system, OperatingPoint point)
    {
        Require(system);
        ArgumentNullException.ThrowIfNull(point);
        return new(WorstAt(system, point));
    }

    /// <summary>The same along a boost line: where the tank carries the shortest, and where it refills slowest.</summary>
    /// <param name="system">A system with a surge tank.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that the line and the engine's tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <returns>Both places, looked for between the speeds that are shown too.</returns>
    /// <exception cref="ArgumentException">The system has no surge tank, or the engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    public static UncoveredPickupAlongLine UncoverPickup(
        this FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions? conditions = null)
    {
        Require(system);
        LineSweepResult pull = system.Pull(line, slowest, fastest, conditions);
        return new([.. pull.Results.Select(result => new UncoveredPickupResult(result))], new(pull.LargestDraw!), new(pull.SmallestSurplus!));
    }

    /// <summary>A pattern of corners, the pickup uncovered and covered in turn: the lowest level, and whether the tank runs dry.</summary>
    /// <param name="system">A system with a surge tank.</param>
    /// <param name="pattern">For how long and where, and how often.</param>
    /// <returns>The level after every stretch, as bounds where pump data ends, from the full tank on.</returns>
    /// <exception cref="ArgumentException">The system has no surge tank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    /// <example>
    /// <code>
    /// Pump lift = Pump.From(PumpCurve.At(
    ///     "lift pump",
    ///     ElectricPotential.FromVolts(13.5),
    ///     (Pressure.Zero, VolumeFlow.FromLitersPerHour(196)),
    ///     (Pressure.FromKilopascals(62), VolumeFlow.Zero)));
    /// FuelSystem fed = system.With(SurgeTank.Of(Volume.FromLiters(1.4), lift, ReturnDestination.SurgeTank));
    /// OperatingPoint corner = OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(5200), Pressure.FromBars(0.4));
    /// OperatingPoint straight = OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6400), Pressure.FromBars(0.6));
    /// PickupPatternResult hill = fed.UncoverPickup(PickupPattern.Of(
    ///     corner, Duration.FromSeconds(6), straight, Duration.FromSeconds(9), times: 12));
    /// Console.WriteLine(hill);
    /// </code>
    /// </example>
    public static PickupPatternResult UncoverPickup(this FuelSystem system, PickupPattern pattern)
    {
        Require(system);
        ArgumentNullException.ThrowIfNull(pattern);
        return new(pattern, WorstAt(system, pattern.Uncovered), WorstAt(system, pattern.Covered));
    }

    // A switched pump may still run as boost falls: of both states that which draws more.
    private static OperatingResult WorstAt(FuelSystem system, OperatingPoint point) =>
        system.Solve(point).States.MaxBy(state => state.SolvedCircuit.Lift!.MaximumDrawn is var drawn && double.IsNaN(drawn) ? double.PositiveInfinity : drawn)!;

    private static void Require(FuelSystem system)
    {
        ArgumentNullException.ThrowIfNull(system);
        if (system.SurgeTank is null)
        {
            throw new ArgumentException("system has no surge tank; its pumps take in air as soon as their pickup is uncovered. Give one by FuelSystem.With(SurgeTank).", nameof(system));
        }
    }
}

/// <summary>Whether a surge tank refills once the pickup is covered again.</summary>
public enum RefillAnswer
{
    /// <summary>The pumps' data does not say whether more is lifted than drawn.</summary>
    CannotSay,

    /// <summary>More is lifted than drawn.</summary>
    Refills,

    /// <summary>No more is lifted than drawn: at this demand the tank does not refill, and it empties where less is.</summary>
    NeverRefills,
}

/// <summary>How long a surge tank carries an uncovered pickup at one operating point, and how long it takes to refill.</summary>
public sealed class UncoveredPickupResult : IReadable
{
    // As in checks: equal to twelve figures is equal.
    private const double SameShare = 1e-12;

    internal UncoveredPickupResult(OperatingResult result)
    {
        Result = result;
        SolvedLift lift = result.SolvedCircuit.Lift!;
        SurgeTank tank = result.Parts.SurgeTank!;
        double volume = tank.UsableVolume.CubicMeters;
        double priming = tank.PrimingTime.Seconds;

        // Once the pickup is covered again the engine still draws on the tank alone until the lift pump has primed.
        MinimumCarried = Time(Math.Max(0, SurgeTankVolume.TimeToEmpty<Real>(volume, lift.MaximumDrawn).Value - priming));
        MaximumCarried = Time(Math.Max(0, SurgeTankVolume.TimeToEmpty<Real>(volume, lift.MinimumDrawn).Value - priming));
        double same = SameShare * lift.MaximumDrawn;
        Refill = lift.SurplusOfAtLeast > same ? RefillAnswer.Refills
            : lift.SurplusOfAtMost <= same ? RefillAnswer.NeverRefills
            : RefillAnswer.CannotSay;
        MinimumRefill = lift.SurplusOfAtMost > same
            ? Time(SurgeTankVolume.TimeToRefill<Real>(volume, lift.MaximumFilled, lift.MinimumDrawn) + priming)
            : null;
        MaximumRefill = Refill == RefillAnswer.Refills
            ? Time(SurgeTankVolume.TimeToRefill<Real>(volume, lift.MinimumFilled, lift.MaximumDrawn) + priming)
            : null;
    }

    /// <summary>The solved point.</summary>
    public OperatingResult Result { get; }

    /// <summary>Where.</summary>
    public OperatingPoint Point => Result.Point;

    /// <summary>
    /// Seconds of uncovered pickup that the full tank surely carries, what the lift pump needs to prime afterwards taken off; none where the draw is not known, or where
    /// nothing is drawn and it carries without end.
    /// </summary>
    public Duration? MinimumCarried { get; }

    /// <summary>Seconds that it carries at the most; the same where data covers the point; none where that is not known or without end.</summary>
    public Duration? MaximumCarried { get; }

    /// <summary>Whether the tank refills once the pickup is covered again and the engine draws on.</summary>
    public RefillAnswer Refill { get; }

    /// <summary>
    /// Time at the least, from the moment at which the pickup is covered again, to refill the tank from empty with the engine drawing on, priming of the lift pump included;
    /// none where it never refills or is not known.
    /// </summary>
    public Duration? MinimumRefill { get; }

    /// <summary>Time at the most; none unless it surely refills.</summary>
    public Duration? MaximumRefill { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Both times, or why there is none, as a code with its figures.</summary>
    public Statement Text => Statement.Of("pickup.uncovered", $"{Carried}, {Refilled}");

    /// <summary>What the tank carries.</summary>
    internal Statement CarriedText => Carried;

    /// <summary>Whether it refills, and when.</summary>
    internal Statement RefilledText => Refilled;

    /// <summary>Both times in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private Statement Carried => MinimumCarried is { } least
        ? MaximumCarried is { } most && most.Seconds <= least.Seconds * (1 + 1e-9)
            ? Statement.Of("pickup.carries", $"carries {least:time} of uncovered pickup")
            : Statement.Of("pickup.carries-at-least", $"carries at least {least:time} of uncovered pickup")
        : Result.SolvedCircuit.Lift!.MaximumDrawn == 0
            ? Statement.Of("pickup.nothing-drawn", $"carries the uncovered pickup without end, for nothing is drawn")
            : Statement.Of("pickup.draw-not-known", $"how long it carries an uncovered pickup is not known, for the main pump's data does not cover the point");

    private Statement Refilled
    {
        get
        {
            SolvedLift lift = Result.SolvedCircuit.Lift!;
            return Refill switch
            {
                RefillAnswer.Refills when MinimumRefill is { } least && MaximumRefill is { } most && most.Seconds <= least.Seconds * (1 + 1e-9) =>
                    Statement.Of("pickup.refills", $"refills in {most:time}"),
                RefillAnswer.Refills => Statement.Of("pickup.refills-at-most", $"refills in at most {MaximumRefill!.Value:time}"),
                RefillAnswer.NeverRefills => Statement.Of(
                    "pickup.never-refills",
                    $"never refills at this demand: at most {Flow(lift.MaximumFilled):pump-flow} is lifted and at least {Flow(lift.MinimumDrawn):pump-flow} drawn"),
                _ => Statement.Of("pickup.refill-not-known", $"whether it refills at this demand is not known: the pumps' data ends before the point"),
            };
        }
    }

    private static VolumeFlow Flow(double flow) => VolumeFlow.FromCubicMetersPerSecond(flow);

    private static Duration? Time(double seconds) => double.IsFinite(seconds) ? Duration.FromSeconds(seconds) : null;
}

/// <summary>How long a surge tank carries an uncovered pickup along a boost line, at its worst.</summary>
public sealed class UncoveredPickupAlongLine : IReadable
{
    internal UncoveredPickupAlongLine(UncoveredPickupResult[] results, UncoveredPickupResult shortest, UncoveredPickupResult slowestRefill) =>
        (Results, Shortest, SlowestRefill) = (Array.AsReadOnly(results), shortest, slowestRefill);

    /// <summary>At the speeds that are shown, rising.</summary>
    public IReadOnlyList<UncoveredPickupResult> Results { get; }

    /// <summary>Where the tank carries the shortest, or where that is not known; between the speeds that are shown too.</summary>
    public UncoveredPickupResult Shortest { get; }

    /// <summary>Where least is left to refill it, or where that is not known; between the speeds that are shown too.</summary>
    public UncoveredPickupResult SlowestRefill { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Both places in words, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "pickup.along-line", $"{Shortest.CarriedText} at {Shortest.Point}; {SlowestRefill.RefilledText} at {SlowestRefill.Point}");

    /// <summary>Both places in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
