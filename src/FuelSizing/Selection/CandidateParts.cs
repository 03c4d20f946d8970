using System.Globalization;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;

namespace FuelSizing.Selection;

/// <summary>The parts to choose from: every injector with every pump and every regulator.</summary>
public sealed record CandidateParts
{
    private static readonly Identity<CandidateParts> _identity = new Identity<CandidateParts>()
        .List(parts => parts.Injectors)
        .List(parts => parts.Pumps)
        .List(parts => parts.Regulators);

    private const int Maximum = 10_000_000;

    private CandidateParts(
        IReadOnlyList<Candidate<Injector>> injectors,
        IReadOnlyList<Candidate<PumpAssembly>> pumps,
        IReadOnlyList<Candidate<PressureRegulator>> regulators) =>
        (Injectors, Pumps, Regulators) = ([.. injectors], [.. pumps], [.. regulators]);

    /// <summary>Injectors; none where each stage keeps its own.</summary>
    public IReadOnlyList<Candidate<Injector>> Injectors { get; }

    /// <summary>Pumps; none where each stage keeps its own.</summary>
    public IReadOnlyList<Candidate<PumpAssembly>> Pumps { get; }

    /// <summary>Regulators; none where each stage keeps its own.</summary>
    public IReadOnlyList<Candidate<PressureRegulator>> Regulators { get; }

    /// <summary>How many combinations there are.</summary>
    public int Combinations => Math.Max(1, Injectors.Count) * Math.Max(1, Pumps.Count) * Math.Max(1, Regulators.Count);

    /// <summary>Describes the parts to choose from.</summary>
    /// <param name="injectors">Injectors; each stage keeps its own if none are given.</param>
    /// <param name="pumps">Pumps, alone or arranged (<see cref="PumpArrangement"/>); each stage keeps its own if none are given.</param>
    /// <param name="regulators">Regulators; each stage keeps its own if none are given.</param>
    /// <returns>The parts.</returns>
    /// <exception cref="ArgumentException">Nothing is given to choose from, or two of a list have one name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are more than 10,000,000 combinations.</exception>
    public static CandidateParts Of(
        IReadOnlyList<Candidate<Injector>>? injectors = null,
        IReadOnlyList<Candidate<PumpAssembly>>? pumps = null,
        IReadOnlyList<Candidate<PressureRegulator>>? regulators = null)
    {
        CandidateParts parts = new(
            NamedOnce(injectors, nameof(injectors)),
            NamedOnce(pumps, nameof(pumps)),
            NamedOnce(regulators, nameof(regulators)));
        if (parts.Injectors.Count + parts.Pumps.Count + parts.Regulators.Count == 0)
        {
            throw new ArgumentException("injectors, pumps and regulators were all empty; give parts to choose from.", nameof(injectors));
        }

        double combinations = Math.Max(1.0, parts.Injectors.Count)
            * Math.Max(1, parts.Pumps.Count)
            * Math.Max(1, parts.Regulators.Count);
        return combinations <= Maximum
            ? parts
            : throw Guard.OutOfRange(
                nameof(injectors),
                string.Create(CultureInfo.InvariantCulture, $"one list of three that make {combinations:N0} combinations"),
                string.Create(CultureInfo.InvariantCulture, $"up to {Maximum:N0}"),
                "Leave out parts that cannot serve.");
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CandidateParts? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many there are of each.</summary>
    /// <returns>For instance <c>3 injectors, 2 pumps, 1 regulators: 6 combinations</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Injectors.Count} injectors, {Pumps.Count} pumps, {Regulators.Count} regulators: {Combinations:N0} combinations");

    private static Candidate<T>[] NamedOnce<T>(IReadOnlyList<Candidate<T>>? candidates, string name)
        where T : notnull
    {
        Candidate<T>[] kept = [.. candidates ?? []];
        HashSet<string> names = [];
        foreach (Candidate<T> candidate in kept)
        {
            ArgumentNullException.ThrowIfNull(candidate, name);
            if (!names.Add(candidate.Name))
            {
                throw new ArgumentException($"{name} held \"{candidate.Name}\" twice; give each its own name.", name);
            }
        }

        return kept;
    }
}
