using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>The boost line: the boost that the engine has at each speed at full throttle.</summary>
/// <remarks>
/// <para>
/// Kinds: <see cref="MeasuredBoost"/>, <see cref="HeldBoost"/>, and of a compressor on a belt <see cref="CentrifugalBoost"/> and
/// <see cref="DisplacementBoost"/>. Where a line gives no data it is not carried on.
/// </para>
/// <para>Not modelled: surge and choke of a compressor, its map, and slip of its belt.</para>
/// </remarks>
public abstract record BoostLine : IReadable
{
    private protected BoostLine()
    {
    }

    /// <summary>One line that says what the boost follows, in metric units.</summary>
    public string Description => Text.ToString();

    /// <summary>What the boost follows, as a code with its figures.</summary>
    public abstract Statement Text { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The boost at a speed, at full throttle.</summary>
    /// <param name="speed">Engine speed, within what the line covers, 100 to 25,000 rev/min.</param>
    /// <param name="demand">The engine and its induction, which has a compressor, for a belt-driven line one on a belt.</param>
    /// <param name="atmosphere">The ambient air.</param>
    /// <returns>Manifold gauge pressure.</returns>
    /// <exception cref="ArgumentException">The induction has no such compressor.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The line gives no data at the speed, or it means more boost there than the library calculates with, 400 kPa.
    /// </exception>
    public Pressure At(RotationalSpeed speed, FuelDemandModel demand, Atmosphere atmosphere)
    {
        ArgumentNullException.ThrowIfNull(demand);
        ArgumentNullException.ThrowIfNull(atmosphere);
        RequireCompressor(demand);
        double revolutions = EngineSpeed.Within(speed, nameof(speed));
        double pascals = PascalsAt(revolutions, demand, atmosphere);
        if (double.IsNaN(pascals))
        {
            (double first, double last) = SpeedsFor(demand);
            throw Guard.OutOfRange(
                nameof(speed), Readable.Of(speed), $"between {Text(first)} and {Text(last)}", $"The boost line covers no more. {Cure}");
        }

        return pascals <= ManifoldPressure.Maximum.Pascals
            ? Pressure.FromPascals(pascals)
            : throw Guard.OutOfRange(
                nameof(speed),
                Readable.Of(speed),
                $"one at which the boost line stays up to {Readable.Boost(ManifoldPressure.Maximum)}",
                $"It passes that here. {Cure}");

        static string Text(double revolutionsPerSecond) => Readable.Of(RotationalSpeed.FromRevolutionsPerSecond(revolutionsPerSecond));
    }

    /// <summary>What the boost follows.</summary>
    /// <returns><see cref="Description"/>.</returns>
    public sealed override string ToString() => Description;

    /// <summary>What to look at where the line gives no data or no sense.</summary>
    private protected abstract string Cure { get; }

    /// <summary>Refuses an engine that cannot have such a line; asked once, before <see cref="PascalsAt"/>.</summary>
    /// <exception cref="ArgumentException">The induction has no such compressor.</exception>
    internal virtual void RequireCompressor(FuelDemandModel demand)
    {
        if (demand.Induction.Drive == CompressorDrive.None)
        {
            throw new ArgumentException(
                $"demand is {demand.Engine.Name}, {demand.Induction}; it must have a compressor to have a boost line. Describe its induction as turbocharged or belt-driven.",
                nameof(demand));
        }
    }

    /// <summary>
    /// The boost, gauge, Pa, without allocating: not a number where the line gives no data, and positive infinity where no boost up to the
    /// library's maximum balances a displacement compressor. The other kinds are not bounded: compare with
    /// <see cref="ManifoldPressure.Maximum"/>.
    /// </summary>
    /// <param name="revolutionsPerSecond">Engine speed.</param>
    /// <param name="demand">One that <see cref="RequireCompressor"/> has taken.</param>
    /// <param name="atmosphere">The ambient air.</param>
    internal abstract double PascalsAt(double revolutionsPerSecond, FuelDemandModel demand, Atmosphere atmosphere);

    /// <summary>The engine speeds that the line covers, rev/s.</summary>
    internal abstract (double First, double Last) SpeedsFor(FuelDemandModel demand);

    /// <summary>The engine speeds, rev/s, rising, at which the line has a knot or a kink.</summary>
    internal abstract IReadOnlyList<double> KnotsFor(FuelDemandModel demand, Atmosphere atmosphere);
}
