using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The leanest mixture that is allowed on boost, against boost, and the richest.</summary>
/// <remarks>
/// No figure is assumed: which lambda an engine stands on boost depends on its fuel, compression, spark and cooling. Lambda 0.80 to 0.85 on
/// boost is common practice on petrol, no source. Under the first boost of the table the mixture is not judged for being lean.
/// </remarks>
/// <example>
/// <code>
/// MixtureLimits limits = MixtureLimits.Of(leanest: 0.88, boostOver: Pressure.FromBars(0.1), richest: 0.70);
/// Console.WriteLine(limits);   // lambda at most 0.880 from 0.10 bar, at least 0.700
/// </code>
/// </example>
public sealed record MixtureLimits
{
    private static readonly Identity<MixtureLimits> _identity = new Identity<MixtureLimits>()
        .Numbers(limits => limits._boosts)
        .Numbers(limits => limits._leanest)
        .Number(limits => limits.Richest);

    private readonly double[] _boosts;
    private readonly double[] _leanest;

    private MixtureLimits((Pressure Boost, double Lambda)[] points, double[] boosts, double[] leanest, double? richest) =>
        (Leanest, _boosts, _leanest, Richest) = (Array.AsReadOnly(points), boosts, leanest, richest);

    /// <summary>Boost and leanest lambda allowed there: straight between the points, held over the last.</summary>
    public IReadOnlyList<(Pressure Boost, double Lambda)> Leanest { get; }

    /// <summary>Richest lambda allowed, at any boost; none where that is not judged.</summary>
    public double? Richest { get; }

    /// <summary>One limit over a boost.</summary>
    /// <param name="leanest">0.6 to 1.2.</param>
    /// <param name="boostOver">Boost from which on it counts, 0 to 400 kPa; from 0 if not given.</param>
    /// <param name="richest">0.4 to the leanest; none if not given.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static MixtureLimits Of(double leanest, Pressure? boostOver = null, double? richest = null) =>
        ByBoost([(WithinBoost(boostOver ?? Pressure.Zero, nameof(boostOver)), WithinLambda(leanest, nameof(leanest)))], richest);

    /// <summary>A limit against boost.</summary>
    /// <param name="leanest">One point or more: boosts rising, 0 to 400 kPa, lambda 0.6 to 1.2.</param>
    /// <param name="richest">0.4 to the lowest of the leanest; none if not given.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the boosts do not rise.</exception>
    public static MixtureLimits ByBoost(IReadOnlyList<(Pressure Boost, double Lambda)> leanest, double? richest = null)
    {
        ArgumentNullException.ThrowIfNull(leanest);
        Guard.Count(leanest.Count, 1, 100, "Give the leanest lambda allowed at one boost or more.", nameof(leanest));
        double[] boosts = [.. leanest.Select(point => WithinBoost(point.Boost, nameof(leanest)).Pascals)];
        for (int at = 1; at < boosts.Length; at++)
        {
            if (boosts[at] <= boosts[at - 1])
            {
                throw Guard.OutOfRange(
                    nameof(leanest),
                    Readable.Boost(leanest[at].Boost),
                    $"over the {Readable.Boost(leanest[at - 1].Boost)} before it",
                    "Sort the list and give each boost once.");
            }
        }

        double[] lambdas = [.. leanest.Select(point => WithinLambda(point.Lambda, nameof(leanest)))];
        return new(
            [.. leanest],
            boosts,
            lambdas,
            richest is { } rich
                ? Guard.Number(rich, 0.4, lambdas.Min(), "Give a richest lambda under the leanest.", nameof(richest))
                : null);
    }

    /// <summary>The leanest lambda that is allowed at a boost.</summary>
    /// <param name="boost">Manifold gauge pressure, −95 to 400 kPa.</param>
    /// <returns>Lambda; none under the first boost of the table, where the mixture is not judged for being lean.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The boost is outside its range.</exception>
    public double? LeanestAllowed(Pressure boost)
    {
        double allowed = LeanestAt<Real>(ManifoldPressure.Within(boost, nameof(boost)).Pascals);
        return double.IsFinite(allowed) ? allowed : null;
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(MixtureLimits? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Leanest and richest.</summary>
    /// <returns>For instance <c>lambda at most 0.880 from 0.10 bar, at least 0.700</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"lambda at most {string.Join(", ", Leanest.Select(point => FormattableString.Invariant($"{point.Lambda:0.000} from {Readable.Boost(point.Boost)}")))}{(Richest is { } rich ? FormattableString.Invariant($", at least {rich:0.000}") : string.Empty)}");

    private static Pressure WithinBoost(Pressure boost, string name) =>
        Guard.Between(boost, Pressure.Zero, ManifoldPressure.Maximum, "Give the boost from which on the limit counts.", name);

    private static double WithinLambda(double lambda, string name) =>
        Guard.Number(lambda, 0.6, 1.2, "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.", name);

    /// <summary>The boosts of the table, Pa: the limit has a kink, or begins, at each.</summary>
    internal IReadOnlyList<double> Boosts => _boosts;

    /// <summary>Leanest lambda allowed at a boost, Pa; infinite where it is not judged.</summary>
    internal T LeanestAt<T>(T boost)
        where T : struct, IReal<T>
    {
        // The same boost in another unit may fall a last digit short of where the limit begins.
        double first = _boosts[0] - (Curve.EndTolerance * Math.Max(1, _boosts[0]));
        T allowed = T.IfLess(boost, first, double.PositiveInfinity, _leanest[0]);
        for (int at = 1; at < _boosts.Length; at++)
        {
            T line = StraightLine.Through<T>(_boosts[at - 1], _leanest[at - 1], _boosts[at], _leanest[at], T.Min(boost, _boosts[at]));
            allowed = T.IfLess(boost, _boosts[at - 1], allowed, line);
        }

        return allowed;
    }
}
