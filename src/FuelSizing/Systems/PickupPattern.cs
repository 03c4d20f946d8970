using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>The lift pump's pickup uncovered and covered in turn, as in the corners of a hill.</summary>
/// <remarks>A partly uncovered pickup counts as uncovered. The surge tank is full at the start.</remarks>
public sealed record PickupPattern
{
    private static readonly Identity<PickupPattern> _identity = new Identity<PickupPattern>()
        .Value(pattern => pattern.Uncovered)
        .Number(pattern => pattern.UncoveredFor.Seconds)
        .Value(pattern => pattern.Covered)
        .Number(pattern => pattern.CoveredFor.Seconds)
        .Number(pattern => pattern.Times);

    private PickupPattern(OperatingPoint uncovered, Duration uncoveredFor, OperatingPoint covered, Duration coveredFor, int times) =>
        (Uncovered, UncoveredFor, Covered, CoveredFor, Times) = (uncovered, uncoveredFor, covered, coveredFor, times);

    /// <summary>Where the engine runs while the pickup is uncovered.</summary>
    public OperatingPoint Uncovered { get; }

    /// <summary>For how long it is uncovered.</summary>
    public Duration UncoveredFor { get; }

    /// <summary>Where the engine runs while it is covered.</summary>
    public OperatingPoint Covered { get; }

    /// <summary>For how long it is covered.</summary>
    public Duration CoveredFor { get; }

    /// <summary>How often one follows the other.</summary>
    public int Times { get; }

    /// <summary>Describes a pattern.</summary>
    /// <param name="uncovered">Where the engine runs while the pickup is uncovered.</param>
    /// <param name="uncoveredFor">For how long, 0 to 3,600 s.</param>
    /// <param name="covered">Where the engine runs while it is covered.</param>
    /// <param name="coveredFor">For how long, 0 to 3,600 s.</param>
    /// <param name="times">How often one follows the other, 1 to 10,000.</param>
    /// <returns>The pattern.</returns>
    /// <exception cref="ArgumentNullException">A point is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PickupPattern Of(OperatingPoint uncovered, Duration uncoveredFor, OperatingPoint covered, Duration coveredFor, int times)
    {
        ArgumentNullException.ThrowIfNull(uncovered);
        ArgumentNullException.ThrowIfNull(covered);
        return new(
            uncovered,
            Stretch(uncoveredFor, nameof(uncoveredFor)),
            covered,
            Stretch(coveredFor, nameof(coveredFor)),
            Guard.Count(times, 1, 10_000, "Give how often the pickup is uncovered.", nameof(times)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PickupPattern? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Both stretches, and how often.</summary>
    /// <returns>For instance <c>12 × 6.00 s uncovered, 9.00 s covered</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Times} × {TextStyle.Metric.Time(UncoveredFor)} uncovered, {TextStyle.Metric.Time(CoveredFor)} covered");

    private static Duration Stretch(Duration time, string name) =>
        Guard.Between(time, Duration.Zero, Duration.FromSeconds(3600), "Give the time between two changes in seconds.", name);
}

/// <summary>Whether a surge tank runs dry.</summary>
public enum DryAnswer
{
    /// <summary>The pumps' data does not say.</summary>
    CannotSay,

    /// <summary>It never does, by the conservative bound.</summary>
    StaysWet,

    /// <summary>It does, even by the optimistic bound: the main pumps take in air.</summary>
    RunsDry,
}

/// <summary>The level in a surge tank through a pattern of corners.</summary>
public sealed class PickupPatternResult : IReadable
{
    // As in checks: equal to twelve figures is equal.
    private const double SameShare = 1e-12;

    internal PickupPatternResult(PickupPattern pattern, OperatingResult uncovered, OperatingResult covered)
    {
        (Pattern, Tank) = (pattern, uncovered.Parts.SurgeTank!);
        SolvedLift emptying = uncovered.SolvedCircuit.Lift!;
        SolvedLift filling = covered.SolvedCircuit.Lift!;
        Course least = new(Tank, pattern, emptying.MaximumDrawn, filling.MinimumFilled, filling.MaximumDrawn);
        Course most = new(Tank, pattern, emptying.MinimumDrawn, filling.MaximumFilled, filling.MinimumDrawn);
        MinimumLowest = Known(least.Lowest);
        MaximumLowest = Known(most.Lowest);
        MinimumAtEnd = Known(least.Levels[^1]);
        MaximumAtEnd = Known(most.Levels[^1]);
        Answer = most.DryAt is not null ? DryAnswer.RunsDry
            : double.IsNaN(least.Lowest) || least.DryAt is not null ? DryAnswer.CannotSay
            : DryAnswer.StaysWet;
        DryIn = least.DryAt;
        Levels = [.. least.Levels.Zip(most.Levels, (low, high) => (Known(low), Known(high)))];
    }

    /// <summary>The pattern.</summary>
    public PickupPattern Pattern { get; }

    /// <summary>The tank, full at the start.</summary>
    public SurgeTank Tank { get; }

    /// <summary>Whether the tank runs dry.</summary>
    public DryAnswer Answer { get; }

    /// <summary>In which repetition it runs dry first by the conservative bound, from 1 on; none where it does not.</summary>
    public int? DryIn { get; }

    /// <summary>Lower bound of the lowest usable volume left; none where it is not known.</summary>
    public Volume? MinimumLowest { get; }

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public Volume? MaximumLowest { get; }

    /// <summary>Lower bound of the usable volume left at the end; none where it is not known.</summary>
    public Volume? MinimumAtEnd { get; }

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public Volume? MaximumAtEnd { get; }

    /// <summary>Usable volume left, lower and upper bound, at the start and after every stretch, uncovered and covered in turn.</summary>
    public IReadOnlyList<(Volume? Minimum, Volume? Maximum)> Levels { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The answer with its figures.</summary>
    public Statement Text => (Answer, MinimumLowest) switch
    {
        (DryAnswer.StaysWet, { } lowest) => Statement.Of("pickup.stays-wet", $"at least {lowest} of {Tank.UsableVolume} left in the surge tank"),
        (DryAnswer.RunsDry, _) => Statement.Of("pickup.runs-dry", $"the surge tank runs dry in repetition {DryIn ?? 1} of {Pattern.Times}: the main pumps take in air"),
        (_, { } _) => Statement.Of("pickup.may-run-dry", $"the surge tank may run dry in repetition {DryIn ?? 1} of {Pattern.Times}: the pumps' data ends before the point"),
        _ => Statement.Of("pickup.level-not-known", $"the level in the surge tank is not known: the pumps' data does not cover the points"),
    };

    /// <summary>The answer in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static Volume? Known(double cubicMetres) => double.IsFinite(cubicMetres) ? Volume.FromCubicMeters(cubicMetres) : null;

    /// <summary>One bound of the level through the pattern.</summary>
    private sealed class Course
    {
        public Course(SurgeTank tank, PickupPattern pattern, double uncovered, double lifted, double covered)
        {
            Full = tank.UsableVolume.CubicMeters;
            Level = Lowest = Full;
            Levels.Add(Full);
            double priming = Math.Min(tank.PrimingTime.Seconds, pattern.CoveredFor.Seconds);
            for (int time = 1; time <= pattern.Times; time++)
            {
                Pass(time, 0, uncovered, pattern.UncoveredFor.Seconds);
                Levels.Add(Level);
                Pass(time, 0, covered, priming);
                Pass(time, lifted, covered, pattern.CoveredFor.Seconds - priming);
                Levels.Add(Level);
            }
        }

        public List<double> Levels { get; } = [];

        public double Lowest { get; private set; }

        public int? DryAt { get; private set; }

        private double Full { get; }

        private double Level { get; set; }

        private void Pass(int repetition, double lifted, double drawn, double seconds)
        {
            // What is drawn in a stretch of no length is nothing, whatever is not known of it.
            if (seconds <= 0)
            {
                return;
            }

            bool isDry = Level + ((lifted - drawn) * seconds) < -SameShare * Full;
            DryAt ??= isDry ? repetition : null;
            Level = SurgeTankVolume.After<Real>(Level, Full, lifted, drawn, seconds);
            Lowest = double.IsNaN(Level) ? Level : Math.Min(Lowest, Level);
        }
    }
}
