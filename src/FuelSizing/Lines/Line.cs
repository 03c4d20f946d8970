using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>A hose or tube of one bore, with its fittings and its rise.</summary>
/// <remarks>
/// Steady, fully developed flow: pulsation from injectors and pump is not modelled. The bore is what the flow sees: inside
/// diameter, and in a hose less at barbed ends. Lines of several bores are several lines in a row.
/// </remarks>
public sealed record Line : IFlowLoss
{
    private static readonly Identity<Line> _identity = new Identity<Line>()
        .Value(line => line.Name)
        .Number(line => line.Bore.Meters)
        .Number(line => line.Length.Meters)
        .Number(line => line.Roughness.Meters)
        .List(line => line.Fittings)
        .Number(line => line._rise);

    private readonly PipeConstants<Real> _pipe;
    private readonly double _rise;

    private Line(
        string name,
        Length bore,
        Length length,
        Length roughness,
        IReadOnlyList<Fitting> fittings,
        double lossCoefficient,
        Length rise)
    {
        (Name, Bore, Length, Roughness, Fittings, LossCoefficient, Rise) =
            (name, bore, length, roughness, [.. fittings], lossCoefficient, rise);
        _pipe = new(bore.Meters, length.Meters, roughness / bore, lossCoefficient);
        _rise = rise.Meters;
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Inside diameter.</summary>
    public Length Bore { get; }

    /// <summary>Length along the line.</summary>
    public Length Length { get; }

    /// <summary>Height of the wall's roughness.</summary>
    public Length Roughness { get; }

    /// <summary>The fittings in the line.</summary>
    public IReadOnlyList<Fitting> Fittings { get; }

    /// <summary>Sum of the fittings' loss coefficients in this bore.</summary>
    public double LossCoefficient { get; }

    /// <summary>Height of the line's end over its start; below zero where it descends.</summary>
    public Length Rise { get; }

    /// <summary>A line.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="bore">Inside diameter, 1 to 60 mm.</param>
    /// <param name="length">0 to 100 m.</param>
    /// <param name="roughness">0 to 5 % of the bore; see <see cref="Lines.Roughness"/> for typical ones.</param>
    /// <param name="fittings">None if not given.</param>
    /// <param name="rise">Height of the end over the start, −10 to 10 m; level if not given.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <example>
    /// <code>
    /// Line supply = Line.Of(
    ///     "supply", Length.FromMillimeters(8), Length.FromMeters(4.5), Roughness.DrawnTube, [Fitting.Bend90.Times(6)]);
    /// </code>
    /// </example>
    public static Line Of(
        string name,
        Length bore,
        Length length,
        Length roughness,
        IReadOnlyList<Fitting>? fittings = null,
        Length? rise = null)
    {
        Guard.Name(name, nameof(name));
        Fitting[] kept = [.. fittings ?? []];
        foreach (Fitting fitting in kept)
        {
            ArgumentNullException.ThrowIfNull(fitting, nameof(fittings));
        }

        double metres = BoreWithin(bore, nameof(bore));
        return new(
            name,
            bore,
            Guard.Between(
                length, Length.Zero, Length.FromMeters(100), "Give the length along the line.", nameof(length)),
            Guard.Between(
                roughness,
                Length.FromMillimeters(0),
                bore * 0.05,
                "Give the height of the wall's roughness, some micrometres for tube and hose.",
                nameof(roughness)),
            kept,
            kept.Sum(fitting => (double)FittingLoss.Coefficient<Real>(
                fitting.FixedCoefficient, fitting.Diameters, metres)),
            Guard.Between(
                rise ?? Length.Zero,
                Length.FromMeters(-10),
                Length.FromMeters(10),
                "Give the height of the line's end over its start.",
                nameof(rise)));
    }

    /// <summary>Pressure lost at a flow, with every intermediate.</summary>
    /// <param name="flow">0 to 10,000 L/h.</param>
    /// <param name="fuel">It must have a viscosity.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C.</param>
    /// <returns>The loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no viscosity.</exception>
    /// <remarks>
    /// Darcy–Weisbach f (l/d) ρ v²/2 along the line, K ρ v²/2 in its fittings, ρ g Δh for its rise. f = 64/Re up to
    /// Re 2040 (Avila et al., Science 333 (2011) 192), Colebrook–White from Re 4000, and between them Po = f Re = 64 + w (f Re − 64)
    /// with w = x²(3 − 2 x), x = (Re − 2040)/1960.
    /// </remarks>
    public LineLoss PressureLoss(VolumeFlow flow, Fuel fuel, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        Guard.Between(
            flow,
            VolumeFlow.FromLitersPerHour(0),
            VolumeFlow.FromLitersPerHour(10_000),
            "Give the flow through this line.",
            nameof(flow));
        double kelvins = Fuel.WithinRange(temperature, nameof(temperature)).Kelvins;
        double density = fuel.DensityAtKelvins(kelvins);
        double viscosity = fuel.KinematicViscosityAtKelvins(kelvins);
        return new(
            this,
            flow,
            PipeLoss.Evaluate<Real>(_pipe, flow.CubicMetersPerSecond, density, viscosity),
            ElevationPascals(density),
            density,
            viscosity);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Line? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, bore, length and fittings.</summary>
    /// <returns>For instance <c>supply, bore 8.0 mm, 4.5 m, K = 1.9</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Name}, bore {Bore.Millimeters:0.0} mm, {Readable.Of(Length)}, K = {LossCoefficient:0.0}");

    internal Line WithBore(Length bore) =>
        Of(Name, bore, Length, UnitMath.Min(Roughness, bore * 0.05), Fittings, Rise);

    double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) =>
        LossPascals(flow, density, kinematicViscosity);

    double IFlowLoss.ElevationPascals(double density) => ElevationPascals(density);

    /// <inheritdoc cref="IFlowLoss.LossPascals"/>
    internal double LossPascals(double flow, double density, double kinematicViscosity) =>
        Math.CopySign(
            PipeLoss.Evaluate<Real>(_pipe, Math.Abs(flow), density, kinematicViscosity).FrictionLoss, flow);

    /// <inheritdoc cref="IFlowLoss.ElevationPascals"/>
    internal double ElevationPascals(double density) => PipeFlow.Column<Real>(density, _rise);

    internal static double BoreWithin(Length bore, string name) =>
        Guard.Between(
            bore, Length.FromMillimeters(1), Length.FromMillimeters(60), "Give the inside diameter.", name).Meters;
}

/// <summary>Wall roughness of typical fuel lines, new and clean.</summary>
/// <remarks>
/// In a smooth line a fuel flow of this size hardly feels the roughness; age, swelling and deposits matter more through the
/// bore that they take away.
/// </remarks>
public static class Roughness
{
    /// <summary>Drawn metal tube, glass-smooth: 0.0015 mm (Moody 1944; White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length DrawnTube { get; } = Length.FromMillimeters(0.0015);

    /// <summary>Plastic tube: 0.0015 mm (White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length PlasticTube { get; } = Length.FromMillimeters(0.0015);

    /// <summary>Stainless steel tube: 0.002 mm (White, Fluid Mechanics, table 6.1: from memory).</summary>
    public static Length StainlessTube { get; } = Length.FromMillimeters(0.002);

    /// <summary>
    /// Smooth rubber hose: 0.01 mm (White, Fluid Mechanics, table 6.1: from memory); tables range from 0.006 to 0.07 mm.
    /// </summary>
    public static Length RubberHose { get; } = Length.FromMillimeters(0.01);
}

/// <summary>A part of a circuit that fuel flows through and loses pressure in: <see cref="Line"/>, <see cref="Filter"/>, <see cref="CheckValve"/>, <see cref="CustomLoss"/>.</summary>
/// <remarks>Closed: a solver calls it without checking or allocating. A loss of your own is an <see cref="IFlowLossLaw"/>, which <see cref="CustomLoss"/> checks as it reads it.</remarks>
public interface IFlowLoss
{
    /// <summary>The name shown in results.</summary>
    string Name { get; }

    /// <summary>
    /// Pressure lost to flow, Pa: zero at rest, or a check valve's opening pressure, never falling as the flow grows. Nothing is checked or
    /// allocated, so that a solver may call it in a loop.
    /// </summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="kinematicViscosity">m²/s.</param>
    internal double LossPascals(double flow, double density, double kinematicViscosity);

    /// <summary>Pressure lost to height, Pa, whatever the flow; below zero where the part descends.</summary>
    /// <param name="density">kg/m³.</param>
    internal double ElevationPascals(double density);
}

/// <summary>A part whose loss is known up to a flow only.</summary>
internal interface ILimitedLoss : IFlowLoss
{
    /// <summary>Flow up to which the loss is known.</summary>
    VolumeFlow MaximumFlow { get; }

    /// <summary>The same, m³/s.</summary>
    internal double MaximumKnownFlow { get; }
}
