using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>Something in a line that costs pressure by its shape: Δp_K = K ρ v²/2, v the mean velocity in the line's bore.</summary>
/// <remarks>
/// <para>K = K_0 + n_d f_T: either a fixed coefficient or n_d diameters of clean steel pipe in fully turbulent flow,
/// f_T = (2 log10(3.7 d/0.04572 mm))^−2 (Crane, Flow of Fluids, Technical Paper 410). The ready-made values are Crane's of
/// 1976, as reprinted in Ludwig, Applied Process Design for Chemical and Petrochemical Plants, volume 1, 3rd edition,
/// page 76.</para>
/// <para>Crane's pipes are of 15 mm bore and more; in smaller ones, and in slow (laminar) flow, K is an estimate and may be
/// twice too small. A fitting whose own bore is narrower than the line's costs more: give its K by measurement.</para>
/// </remarks>
public sealed record Fitting
{
    private static readonly Identity<Fitting> _identity = new Identity<Fitting>()
        .Value(fitting => fitting.Name)
        .Number(fitting => fitting.FixedCoefficient)
        .Number(fitting => fitting.Diameters);

    private Fitting(string name, double fixedCoefficient, double diameters) =>
        (Name, FixedCoefficient, Diameters) = (name, fixedCoefficient, diameters);

    /// <summary>Threaded 90° elbow, a sharp turn: K = 30 f_T (Crane TP-410).</summary>
    public static Fitting Elbow90 { get; } = OfDiameters("90° elbow", 30);

    /// <summary>Threaded 45° elbow: K = 16 f_T (Crane TP-410).</summary>
    public static Fitting Elbow45 { get; } = OfDiameters("45° elbow", 16);

    /// <summary>Tube bent by 90° with a bend radius of two to three bores: K = 12 f_T (Crane TP-410).</summary>
    public static Fitting Bend90 { get; } = OfDiameters("90° bend", 12);

    /// <summary>Tee, straight through: K = 20 f_T (Crane TP-410).</summary>
    public static Fitting TeeThrough { get; } = OfDiameters("tee, straight through", 20);

    /// <summary>Tee, through its branch: K = 60 f_T (Crane TP-410).</summary>
    public static Fitting TeeBranch { get; } = OfDiameters("tee, through the branch", 60);

    /// <summary>Entrance from a tank, sharp-edged and flush with the wall: K = 0.5 (Crane TP-410).</summary>
    public static Fitting Entrance { get; } = Of("sharp entrance", 0.5);

    /// <summary>Entrance from a tank, the pipe standing into it: K = 0.78 (Crane TP-410).</summary>
    public static Fitting ProjectingEntrance { get; } = Of("projecting entrance", 0.78);

    /// <summary>Exit into a tank or rail: K = 1.0, the whole velocity head (Crane TP-410).</summary>
    public static Fitting Exit { get; } = Of("exit", 1.0);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>The single fitting and how many there are of it; none for a fitting given by itself.</summary>
    internal Given<(Fitting Single, int Count)?> Counted { get; private init; }

    internal double FixedCoefficient { get; }

    internal double Diameters { get; }

    /// <summary>A fitting by its loss coefficient.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="lossCoefficient">K on the velocity in the line's bore, 0 to 1,000.</param>
    /// <returns>The fitting.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient is outside its range.</exception>
    public static Fitting Of(string name, double lossCoefficient) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Number(
                lossCoefficient,
                0,
                1000,
                "Give K from the maker or a handbook, on the velocity in the line's bore.",
                nameof(lossCoefficient)),
            0);

    /// <summary>A fitting by the length of straight pipe, in bores, that costs as much: K = n f_T (Crane TP-410).</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="diameters">n, the equivalent length ÷ bore, 0 to 5,000.</param>
    /// <returns>The fitting.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static Fitting OfDiameters(string name, double diameters) =>
        new(
            Guard.Name(name, nameof(name)),
            0,
            Guard.Number(
                diameters, 0, 5000, "Give the equivalent length of straight pipe in bores.", nameof(diameters)));

    /// <summary>Several of the same.</summary>
    /// <param name="count">1 to 50.</param>
    /// <returns>One entry for all of them.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is outside its range.</exception>
    public Fitting Times(int count)
    {
        Guard.Count(count, 1, 50, "Count the fittings of this kind in the line.", nameof(count));
        return new(
            string.Create(CultureInfo.InvariantCulture, $"{count} × {Name}"),
            FixedCoefficient * count,
            Diameters * count)
        {
            Counted = new((this, count)),
        };
    }

    /// <summary>K in a line of some bore.</summary>
    /// <param name="bore">1 to 60 mm.</param>
    /// <returns>The loss coefficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bore is outside its range.</exception>
    public double LossCoefficientIn(Length bore) =>
        FittingLoss.Coefficient<Real>(FixedCoefficient, Diameters, Line.BoreWithin(bore, nameof(bore)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Fitting? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and coefficient.</summary>
    /// <returns>For instance <c>90° elbow, K = 30 f_T</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Name}, K = {(Diameters > 0 ? $"{Diameters:0.##} f_T" : $"{FixedCoefficient:0.##}")}");
}
