using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>A boost line that a controller or a wastegate spring holds: one boost between two speeds, perhaps with a run-up to it.</summary>
/// <remarks>It holds gauge pressure, whatever the ambient air.</remarks>
public sealed record HeldBoost : BoostLine
{
    private static readonly Identity<HeldBoost> _identity = new Identity<HeldBoost>()
        .Number(line => line.Boost.Pascals)
        .Number(line => line.From.RevolutionsPerSecond)
        .Number(line => line.To.RevolutionsPerSecond)
        .Number(line => line.Threshold?.RevolutionsPerSecond);

    private readonly Curve _bySpeed;

    private HeldBoost(Pressure boost, RotationalSpeed from, RotationalSpeed to, RotationalSpeed? threshold)
    {
        (Boost, From, To, Threshold) = (boost, from, to, threshold);
        (double held, double start, double end) = (boost.Pascals, from.RevolutionsPerSecond, to.RevolutionsPerSecond);
        _bySpeed = threshold is { } speed
            ? new([speed.RevolutionsPerSecond, start, end], [0, held, held], Interpolation.Linear)
            : new([start, end], [held, held], Interpolation.Linear);
    }

    /// <summary>The boost that is held.</summary>
    public Pressure Boost { get; }

    /// <summary>The lowest speed at which it is held.</summary>
    public RotationalSpeed From { get; }

    /// <summary>The highest speed at which it is held.</summary>
    public RotationalSpeed To { get; }

    /// <summary>The speed at which boost sets in, from where it rises in a straight line; none without a run-up.</summary>
    public RotationalSpeed? Threshold { get; }

    /// <inheritdoc/>
    public override Statement Text => Threshold is { } threshold
        ? Statement.Of("boost-line.held-after-run-up", $"held at {Boost:boost}, {From} to {To}, rising from none at {threshold}")
        : Statement.Of("boost-line.held", $"held at {Boost:boost}, {From} to {To}");

    private protected override string Cure => Threshold is null
        ? "Give the speeds between which the boost is held, and the threshold from which it rises."
        : "Give the speeds between which the boost is held.";

    /// <summary>A boost that is held between two speeds.</summary>
    /// <param name="boost">Manifold gauge pressure, 0 to 400 kPa.</param>
    /// <param name="from">The lowest engine speed at which it is held, 100 to 25,000 rev/min.</param>
    /// <param name="to">The highest, above <paramref name="from"/>.</param>
    /// <param name="threshold">
    /// The engine speed below which there is no boost, under <paramref name="from"/>: between the two it rises in a straight line. Without
    /// it the line gives no data below <paramref name="from"/>.
    /// </param>
    /// <returns>The line, which gives no data above <paramref name="to"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the speeds do not rise.</exception>
    public static HeldBoost Of(Pressure boost, RotationalSpeed from, RotationalSpeed to, RotationalSpeed? threshold = null)
    {
        Guard.Between(
            boost, Pressure.Zero, ManifoldPressure.Maximum, "Give the gauge pressure that is held in the manifold.", nameof(boost));
        EngineSpeed.Within(from, nameof(from));
        EngineSpeed.Within(to, nameof(to));
        if (!(to > from))
        {
            throw Guard.OutOfRange(nameof(to), Readable.Of(to), $"above {Readable.Of(from)}", "Give the highest speed at which the boost is held.");
        }

        if (threshold is { } speed && !(EngineSpeed.Checked(speed, nameof(threshold)) < from))
        {
            throw Guard.OutOfRange(
                nameof(threshold),
                Readable.Of(speed),
                $"below {Readable.Of(from)}",
                "Give the speed at which boost sets in, from where it rises to the boost that is held.");
        }

        return new(boost, from, to, threshold);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(HeldBoost? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override double PascalsAt(double revolutionsPerSecond, FuelDemandModel demand, Atmosphere atmosphere) =>
        Threshold is not null && revolutionsPerSecond < _bySpeed.First ? 0
        : _bySpeed.Covers(revolutionsPerSecond) ? _bySpeed.At(revolutionsPerSecond)
        : double.NaN;

    internal override (double First, double Last) SpeedsFor(FuelDemandModel demand) =>
        (Threshold is null ? _bySpeed.First : EngineSpeed.Minimum, _bySpeed.Last);

    internal override IReadOnlyList<double> KnotsFor(FuelDemandModel demand, Atmosphere atmosphere) =>
        [.. _bySpeed.Points.Select(point => point.X)];
}
