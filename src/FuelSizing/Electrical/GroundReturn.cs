using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The return path of a motor's current, where it is not of the same wire as the supply side: a ground conductor, and the body.</summary>
/// <remarks>
/// <para>Its resistance adds to that of the feed: the motor does not care on which side the voltage is lost. A ground wire carries all of the
/// current, and is judged by its own ampacity; the body is not.</para>
/// <para>Fire: a loose ground stud near fuel heats and sparks. Local codes and a licensed practitioner take precedence.</para>
/// </remarks>
public sealed record GroundReturn
{
    private static readonly Identity<GroundReturn> _identity = new Identity<GroundReturn>()
        .Value(ground => ground.Conductor)
        .Number(ground => ground.Length.Meters)
        .Number(ground => ground.ConductorTemperature.DegreesCelsius)
        .Number(ground => ground.Body.Ohms)
        .List(ground => ground.Contacts)
        .Number(ground => ground.InsulationRating?.DegreesCelsius)
        .Number(ground => ground.Ambient?.DegreesCelsius)
        .Value(ground => ground.BundledConductors);

    private GroundReturn(
        Conductor conductor, Length length, Temperature conductorTemperature, ElectricResistance body, IReadOnlyList<Contact> contacts)
    {
        (Conductor, Length, ConductorTemperature, Body) = (conductor, length, conductorTemperature, body);
        Contacts = [.. contacts];
        WireOhms = conductor.OhmsOf(length.Meters, conductorTemperature.DegreesCelsius);
        ContactOhms = VoltageDrop.Loop<Real>(Contact.Ohms(contacts, nameof(contacts)), body.Ohms);
    }

    /// <summary>The ground wire.</summary>
    public Conductor Conductor { get; }

    /// <summary>Length of the ground wire.</summary>
    public Length Length { get; }

    /// <summary>Temperature of its metal.</summary>
    public Temperature ConductorTemperature { get; }

    /// <summary>Resistance of the body or frame that carries the current on to the supply; zero where the wire goes all the way.</summary>
    public ElectricResistance Body { get; }

    /// <summary>Every joint, stud and strap in the return path.</summary>
    public IReadOnlyList<Contact> Contacts { get; }

    /// <summary>Temperature rating of the ground wire's insulation; none where it is not given.</summary>
    public Temperature? InsulationRating { get; private init; }

    /// <summary>Hottest surroundings along it; given with the insulation's rating.</summary>
    public Temperature? Ambient { get; private init; }

    /// <summary>Current-carrying conductors in the bundle, sheath or conduit that it runs in, itself included; none where it is not given.</summary>
    public int? BundledConductors { get; private init; }

    /// <summary>The current that the ground wire may carry; none where insulation and surroundings are not given.</summary>
    public Ampacity? Ampacity { get; private init; }

    /// <summary>Resistance of wire, contacts and body in series.</summary>
    public ElectricResistance Resistance => ElectricResistance.FromOhms((double)VoltageDrop.Loop<Real>(WireOhms, ContactOhms));

    internal double WireOhms { get; }

    /// <summary>Contacts and body, Ω.</summary>
    internal double ContactOhms { get; }

    /// <summary>A ground wire, and the body from where it ends.</summary>
    /// <param name="conductor">The ground wire.</param>
    /// <param name="length">Its length, 0 to 100 m.</param>
    /// <param name="conductorTemperature">Of its metal under load, −40 to 150 °C.</param>
    /// <param name="body">
    /// Resistance of the body or frame from the wire's stud to the supply, 0 to 1 Ω: drop measured along it under load ÷ current. Zero where the
    /// wire goes all the way.
    /// </param>
    /// <param name="contacts">Every joint, stud and strap in the return path.</param>
    /// <returns>The ground return.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static GroundReturn Of(
        Conductor conductor, Length length, Temperature conductorTemperature, ElectricResistance body, params Contact[] contacts)
    {
        ArgumentNullException.ThrowIfNull(conductor);
        ArgumentNullException.ThrowIfNull(contacts);
        return new(
            conductor,
            Conductor.WithinLength(length, nameof(length)),
            Conductor.WithinTemperature(conductorTemperature, nameof(conductorTemperature)),
            Guard.Between(
                body,
                ElectricResistance.Zero,
                ElectricResistance.FromOhms(1),
                "Give the drop along the body under load divided by the current.",
                nameof(body)),
            [.. contacts]);
    }

    /// <summary>The same ground return with the figures by which the ampacity of its wire is judged.</summary>
    /// <param name="insulationRating">Temperature rating of the wire's insulation as printed on it, 0 to 300 °C.</param>
    /// <param name="ambient">Hottest surroundings along the run, −40 to 200 °C; near an engine, measure it.</param>
    /// <returns>The ground return.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public GroundReturn WithInsulation(Temperature insulationRating, Temperature ambient) =>
        this with { InsulationRating = insulationRating, Ambient = ambient, Ampacity = Ampacity.Of(Conductor, insulationRating, ambient, BundledConductors ?? 1) };

    /// <summary>The same ground return in a bundle, sheath or conduit with other wires, of which each may then carry less.</summary>
    /// <param name="conductors">All current-carrying conductors in it, this one included, 1 to 1,000.</param>
    /// <returns>The ground return.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is outside its range.</exception>
    public GroundReturn WithBundle(int conductors) => this with
    {
        BundledConductors = Ampacity.WithinBundle(conductors, nameof(conductors)),
        Ampacity = (InsulationRating, Ambient) is ({ } rating, { } ambient) ? Ampacity.Of(Conductor, rating, ambient, conductors) : null,
    };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(GroundReturn? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Wire and resistance.</summary>
    /// <returns>For instance <c>ground, AWG 14, 9 mΩ</c>.</returns>
    public override string ToString() => $"ground, {Conductor}, {Readable.Of(Resistance)}";
}
