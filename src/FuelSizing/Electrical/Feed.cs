using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The circuit that feeds a pump's motor: wire out and back, and every contact in the path.</summary>
/// <remarks>
/// A steady current in a closed loop: starting current and ripple are not in it. The figures replace neither local codes
/// nor a licensed practitioner.
/// </remarks>
public sealed record Feed
{
    private static readonly Identity<Feed> _identity = new Identity<Feed>()
        .Value(feed => feed.Name)
        .Value(feed => feed.Conductor)
        .Number(feed => feed.OutwardLength.Meters)
        .Number(feed => feed.ReturnLength.Meters)
        .Number(feed => feed._celsius)
        .List(feed => feed.Contacts)
        .Number(feed => feed.InsulationRating?.DegreesCelsius)
        .Number(feed => feed.Ambient?.DegreesCelsius)
        .Number(feed => feed.Fuse?.Amperes)
        .Number(feed => feed.Relay?.Amperes)
        .Value(feed => feed.BundledConductors)
        .Value(feed => feed.Ground)
        .Value(feed => feed.Shared)
        .Number(feed => feed.LoopOhms)
        .Value(feed => feed.FuseTimes)
        .Value(feed => feed.Start);

    private readonly double _celsius;

    private Feed(
        string name,
        Conductor conductor,
        Length outwardLength,
        Length returnLength,
        Temperature conductorTemperature,
        IReadOnlyList<Contact> contacts)
    {
        (Name, Conductor, OutwardLength, ReturnLength) = (name, conductor, outwardLength, returnLength);
        ConductorTemperature = conductorTemperature;
        Contacts = [.. contacts];
        _celsius = conductorTemperature.DegreesCelsius;
        WireOhms = conductor.OhmsOf((outwardLength + returnLength).Meters, _celsius);
        ContactOhms = Contact.Ohms(contacts, nameof(contacts));
        LoopOhms = VoltageDrop.Loop<Real>(WireOhms, ContactOhms);
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>The wire.</summary>
    public Conductor Conductor { get; }

    /// <summary>Length of wire from the supply to the motor.</summary>
    public Length OutwardLength { get; }

    /// <summary>Length of wire from the motor back; zero where the chassis, or a ground conductor of its own, carries the current back.</summary>
    public Length ReturnLength { get; }

    /// <summary>Temperature of the metal.</summary>
    public Temperature ConductorTemperature { get; }

    /// <summary>Joints, fuse, relay, switch, and the chassis if it carries the current back.</summary>
    public IReadOnlyList<Contact> Contacts { get; }

    /// <summary>Resistance of the whole loop, its ground return included: R = R_w + Σ R_c.</summary>
    public ElectricResistance LoopResistance => ElectricResistance.FromOhms(LoopOhms);

    /// <summary>Temperature rating of the wire's insulation; none where it is not given.</summary>
    public Temperature? InsulationRating { get; private init; }

    /// <summary>Hottest surroundings along the run; given with the insulation's rating.</summary>
    public Temperature? Ambient { get; private init; }

    /// <summary>Rating of the fuse at the source of the feed; none where it is not given.</summary>
    public ElectricCurrent? Fuse { get; private init; }

    /// <summary>How long that fuse carries a multiple of its rating; none where it is not given.</summary>
    public FuseTimeCurrent? FuseTimes { get; private init; }

    /// <summary>What its motor draws at a start and with its rotor locked; none where it is not given.</summary>
    public MotorStart? Start { get; private init; }

    /// <summary>Continuous current that the contacts of the relay in the feed are rated for; none where it is not given.</summary>
    public ElectricCurrent? Relay { get; private init; }

    /// <summary>The current that the wire may carry; none where insulation and surroundings are not given.</summary>
    public Ampacity? Ampacity { get; private init; }

    /// <summary>Current-carrying conductors in the bundle, sheath or conduit that the wire runs in, itself included; none where it is not given.</summary>
    public int? BundledConductors { get; private init; }

    /// <summary>The ground return, where it is described by itself; none where it is of the same wire, or a contact.</summary>
    public GroundReturn? Ground { get; private init; }

    /// <summary>
    /// The part between the supply and a splice that other pumps hang on too, with its own wire, contacts, fuse and ground return; none where the feed is the
    /// pump's alone. It carries the sum of their currents, so that each lowers the voltage of all.
    /// </summary>
    public Feed? Shared { get; private init; }

    internal double WireOhms { get; private init; }

    internal double ContactOhms { get; private init; }

    internal double LoopOhms { get; private init; }

    /// <summary>The same feed with so many Ω more in its loop, or less: a figure found, not a contact given.</summary>
    internal Feed Plus(double ohms) => this with { LoopOhms = Math.Max(0, LoopOhms + ohms) };

    /// <summary>A feed with wire out and back.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="conductor">The wire, out and back.</param>
    /// <param name="outwardLength">Length from the supply to the motor, 0 to 100 m.</param>
    /// <param name="returnLength">Length from the motor back, 0 to 100 m.</param>
    /// <param name="conductorTemperature">
    /// Of the metal under load, −40 to 150 °C. Its insulation's rating is the worst that a sound choice allows.
    /// </param>
    /// <param name="contacts">Every joint, fuse, relay and switch, each as often as the current passes one.</param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Feed Of(
        string name,
        Conductor conductor,
        Length outwardLength,
        Length returnLength,
        Temperature conductorTemperature,
        params Contact[] contacts)
    {
        ArgumentNullException.ThrowIfNull(conductor);
        ArgumentNullException.ThrowIfNull(contacts);
        return new(
            Guard.Name(name, nameof(name)),
            conductor,
            Conductor.WithinLength(outwardLength, nameof(outwardLength)),
            Conductor.WithinLength(returnLength, nameof(returnLength)),
            Conductor.WithinTemperature(conductorTemperature, nameof(conductorTemperature)),
            [.. contacts]);
    }

    /// <summary>A feed whose current returns through the vehicle's metal.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="conductor">The wire out.</param>
    /// <param name="outwardLength">Length from the supply to the motor, 0 to 100 m.</param>
    /// <param name="chassis">
    /// Resistance of the return path, its straps and studs included, 0 to 1 Ω: drop measured along it under load ÷ current.
    /// </param>
    /// <param name="conductorTemperature">Of the metal under load, −40 to 150 °C.</param>
    /// <param name="contacts">Every joint, fuse, relay and switch.</param>
    /// <returns>The feed; the chassis is the last of its contacts.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Feed WithChassisReturn(
        string name,
        Conductor conductor,
        Length outwardLength,
        ElectricResistance chassis,
        Temperature conductorTemperature,
        params Contact[] contacts)
    {
        ArgumentNullException.ThrowIfNull(contacts);
        Guard.Between(
            chassis,
            ElectricResistance.Zero,
            ElectricResistance.FromOhms(1),
            "Give the drop along the chassis under load divided by the current.",
            nameof(chassis));
        return Of(
            name,
            conductor,
            outwardLength,
            Length.Zero,
            conductorTemperature,
            [.. contacts, Contact.Of("chassis", chassis)]);
    }

    /// <summary>The same feed with the figures by which its ampacity is judged.</summary>
    /// <param name="insulationRating">Temperature rating of the wire's insulation as printed on it, 0 to 300 °C.</param>
    /// <param name="ambient">Hottest surroundings along the run, −40 to 200 °C; near an engine, measure it.</param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <example>
    /// <code>
    /// Feed feed = Feed.Of(
    ///     "to the tank", Conductor.Awg(12), Length.FromMeters(4.5), Length.FromMeters(4.5), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse);
    /// Feed judged = feed.WithInsulation(Temperature.FromDegreesCelsius(105), ambient: Temperature.FromDegreesCelsius(60));
    /// Console.WriteLine(judged.Ampacity);
    /// </code>
    /// </example>
    public Feed WithInsulation(Temperature insulationRating, Temperature ambient) =>
        this with { InsulationRating = insulationRating, Ambient = ambient, Ampacity = Ampacity.Of(Conductor, insulationRating, ambient, BundledConductors ?? 1) };

    /// <summary>The same feed with the rating of the relay in it.</summary>
    /// <param name="rating">
    /// Continuous current of its closed contacts at the temperature where it sits, for a motor, 0.5 to 500 A. Its resistance is one of the contacts.
    /// </param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rating is outside its range.</exception>
    /// <remarks>Fire: contacts over their rating heat, weld or burn. A lamp's or a heater's rating is not a motor's.</remarks>
    public Feed WithRelay(ElectricCurrent rating) => this with
    {
        Relay = Guard.Between(
            rating,
            ElectricCurrent.FromAmperes(0.5),
            ElectricCurrent.FromAmperes(500),
            "Give the continuous current of the relay's closed contacts, by its data sheet.",
            nameof(rating)),
    };

    /// <summary>The same feed in a bundle, sheath or conduit with other wires, of which each may then carry less.</summary>
    /// <param name="conductors">
    /// All current-carrying conductors in it, this one and returns included, 1 to 1,000. One or two: the wire by itself, or beside its own return.
    /// </param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is outside its range.</exception>
    /// <remarks>Fire: a bundle that is too hot chafes and burns where nobody looks. Local codes and a licensed practitioner take precedence.</remarks>
    public Feed WithBundle(int conductors) => this with
    {
        BundledConductors = Ampacity.WithinBundle(conductors, nameof(conductors)),
        Ampacity = (InsulationRating, Ambient) is ({ } rating, { } ambient) ? Ampacity.Of(Conductor, rating, ambient, conductors) : null,
    };

    /// <summary>The same feed with a ground return of its own size and length, or by the body.</summary>
    /// <param name="ground">The ground conductor with its contacts; its resistance adds to the loop, and its ampacity is judged too.</param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentException">The feed has wire back already, or a ground return.</exception>
    /// <example>
    /// <code>
    /// Feed feed = Feed.Of(
    ///         "to the tank", Conductor.Awg(12), Length.FromMeters(4.5), returnLength: Length.Zero, Temperature.FromDegreesCelsius(60), Contact.DefaultFuse)
    ///     .WithGround(GroundReturn.Of(
    ///         Conductor.Awg(14), Length.FromMeters(0.4), Temperature.FromDegreesCelsius(60), body: ElectricResistance.FromMilliohms(4), Contact.DefaultJoint));
    /// Console.WriteLine(feed.LoopResistance);
    /// </code>
    /// </example>
    public Feed WithGround(GroundReturn ground)
    {
        ArgumentNullException.ThrowIfNull(ground);
        if (ReturnLength.Meters > 0 || Ground is not null)
        {
            throw new ArgumentException(
                $"{nameof(ground)} was given to {Name}, whose current returns {(Ground is null ? $"by {Readable.Of(ReturnLength)} of its own wire" : "by another ground return")} already. Give the feed a return length of 0 m.",
                nameof(ground));
        }

        double wire = (Real)WireOhms + ground.WireOhms;
        double contacts = (Real)ContactOhms + ground.ContactOhms;
        return this with { Ground = ground, WireOhms = wire, ContactOhms = contacts, LoopOhms = VoltageDrop.Loop<Real>(wire, contacts) };
    }

    /// <summary>The same feed with the fuse at its source.</summary>
    /// <param name="rating">The fuse's rating, 0.5 to 200 A. Its resistance is one of the contacts.</param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rating is outside its range.</exception>
    public Feed WithFuse(ElectricCurrent rating) => this with
    {
        Fuse = Guard.Between(
            rating, ElectricCurrent.FromAmperes(0.5), ElectricCurrent.FromAmperes(200), "Give the rating printed on the fuse.", nameof(rating)),
    };

    /// <summary>The same feed with the fuse at its source, and how long that carries a multiple of its rating.</summary>
    /// <param name="rating">The fuse's rating, 0.5 to 200 A. Its resistance is one of the contacts.</param>
    /// <param name="times">The limits of its opening times, from its data sheet or standard.</param>
    /// <returns>The feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rating is outside its range.</exception>
    public Feed WithFuse(ElectricCurrent rating, FuseTimeCurrent times)
    {
        ArgumentNullException.ThrowIfNull(times);
        return WithFuse(rating) with { FuseTimes = times };
    }

    /// <summary>The same feed with what its motor draws at a start and with its rotor locked.</summary>
    /// <param name="start">The start.</param>
    /// <returns>The feed.</returns>
    public Feed WithStart(MotorStart start)
    {
        ArgumentNullException.ThrowIfNull(start);
        return this with { Start = start };
    }

    /// <summary>The same feed, from a splice on: what lies before the splice is shared with other pumps.</summary>
    /// <param name="shared">
    /// The part from the supply to the splice, and back from where the grounds meet. Pumps whose feeds share the same part, by name and figures, hang on one splice.
    /// </param>
    /// <returns>The feed; its own figures are those of the branch.</returns>
    /// <exception cref="ArgumentException">The shared part has a shared part itself, or a motor's start.</exception>
    /// <remarks>
    /// Fire: the shared part's fuse must protect the branches too, or each branch needs its own. Local codes and a licensed practitioner take precedence.
    /// </remarks>
    /// <example>
    /// <code>
    /// Temperature warm = Temperature.FromDegreesCelsius(60);
    /// Feed trunk = Feed.Of(
    ///     "relay to splice", Conductor.Awg(8), Length.FromMeters(4), Length.FromMeters(4), warm, Contact.DefaultFuse, Contact.DefaultRelay);
    /// Feed branch = Feed.Of("branch", Conductor.Awg(14), Length.FromMeters(0.5), Length.FromMeters(0.5), warm);
    /// Feed shared = branch.WithShared(trunk);
    /// Console.WriteLine(shared.Shared);
    /// </code>
    /// </example>
    public Feed WithShared(Feed shared)
    {
        ArgumentNullException.ThrowIfNull(shared);
        if (shared.Start is not null)
        {
            throw new ArgumentException(
                $"{nameof(shared)} was {shared.Name}, which has a motor's start: what several pumps share has no motor of its own. Give each pump's feed its start.", nameof(shared));
        }

        return shared.Shared is null
            ? this with { Shared = shared }
            : throw new ArgumentException(
                $"{nameof(shared)} was {shared.Name}, which shares {shared.Shared.Name} itself: a splice behind a splice is not modelled. Give one shared part.", nameof(shared));
    }

    /// <summary>The same feed with wire of another nominal area, standard or not, counted with the most that it may resist; its ground return stays.</summary>
    internal Feed WithNominalArea(Area area)
    {
        Feed other = new(
            Name,
            Conductor.OfNominal(area, Conductor.Material),
            OutwardLength,
            ReturnLength,
            ConductorTemperature,
            Contacts)
        {
            Fuse = Fuse,
            FuseTimes = FuseTimes,
            Start = Start,
            Relay = Relay,
            BundledConductors = BundledConductors,
        };
        other = (InsulationRating, Ambient) is ({ } rating, { } ambient) ? other.WithInsulation(rating, ambient) : other;
        other = Ground is { } ground ? other.WithGround(ground) : other;
        return Shared is { } shared ? other.WithShared(shared.WithNominalArea(area)) : other;
    }

    /// <summary>The same feed with no more resistance, wire and contacts together; itself where it has no more.</summary>
    /// <param name="ohms">Up to 1 Ω.</param>
    internal Feed WithLoopOfAtMost(double ohms)
    {
        Feed other = LoopOhms <= ohms ? this : this with { WireOhms = 0, ContactOhms = ohms, LoopOhms = ohms };
        return Shared is { } shared ? other with { Shared = shared.WithLoopOfAtMost(ohms) } : other;
    }

    /// <summary>The same feed whose wire loses nothing, nor that of its shared part.</summary>
    internal Feed WithoutWire() => Shared is { } shared
        ? (this with { Shared = null }).WithLoopOfAtMost(ContactOhms) with { Shared = shared.WithoutWire() }
        : WithLoopOfAtMost(ContactOhms);

    /// <summary>The fuse that opens first where its wire is shorted: its own, or that of its shared part.</summary>
    internal ElectricCurrent? ProtectingFuse => Fuse ?? Shared?.Fuse;

    /// <summary>The least ampacity of its wires that is known, in A: 0 where surroundings leave none, not a number where the source covers none.</summary>
    internal double AmpacityAmperes => LimitingWire.Amperes;

    /// <summary>The wire out, or the ground wire where its ampacity is less or the only one known: what it is called, its surroundings, its ampacity in A.</summary>
    internal (string Name, Temperature? Ambient, double Amperes) LimitingWire
    {
        get
        {
            double outward = Ampacity?.Amperes ?? double.NaN;
            double back = Ground?.Ampacity?.Amperes ?? double.NaN;
            return back < outward || double.IsNaN(outward) && !double.IsNaN(back)
                ? ($"the ground wire of {Name}", Ground!.Ambient, back)
                : (Name, Ambient, outward);
        }
    }

    /// <summary>True if the ampacity of one of its wires is not known.</summary>
    internal bool HasUnknownAmpacity => double.IsNaN(Ampacity?.Amperes ?? double.NaN) || Ground is { } ground && double.IsNaN(ground.Ampacity?.Amperes ?? double.NaN);

    /// <summary>True if one of its wires runs in a bundle that costs it ampacity.</summary>
    internal bool IsDeratedByBundle => AmpacityTable.BundleFactor(BundledConductors ?? 1) < 1 || AmpacityTable.BundleFactor(Ground?.BundledConductors ?? 1) < 1;

    /// <summary>What the motor gets: V_m = V_s − I R, and the heat I² R that the rest becomes.</summary>
    /// <param name="supply">V_s, at the battery or alternator, 5 to 30 V.</param>
    /// <param name="current">I, 0 to 200 A, and no more than the loop lets through, V_s/R.</param>
    /// <returns>The voltage at the motor and every drop along it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public FeedResult VoltageAtMotor(ElectricPotential supply, ElectricCurrent current)
    {
        Guard.Between(
            supply,
            ElectricPotential.FromVolts(5),
            ElectricPotential.FromVolts(30),
            "Give the voltage at the battery or alternator with the engine running.",
            nameof(supply));
        Guard.Between(
            current,
            ElectricCurrent.Zero,
            ElectricCurrent.FromAmperes(200),
            "Give the motor's current at its pressure and voltage.",
            nameof(current));
        ElectricCurrent maximum =
            ElectricCurrent.FromAmperes(supply.Volts / LoopOhms);
        return current <= maximum
            ? new(this, supply, current, Conductor.OhmsPerMetreAt(_celsius))
            : throw Guard.OutOfRange(
                nameof(current),
                Readable.Of(current),
                $"up to {Readable.Of(maximum)}",
                $"The loop of {Readable.Of(LoopResistance)} lets no more through at {Readable.Of(supply)}; check lengths and contacts.");
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Feed? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, wire and resistance of the loop.</summary>
    /// <returns>For instance <c>feed, AWG 12, 45 mΩ</c>.</returns>
    public override string ToString() =>
        $"{Name}, {Conductor}, {Readable.Of(LoopResistance)}";
}

/// <summary>A place in the feed that resists without being wire: a joint, fuse, relay or switch.</summary>
/// <remarks>
/// Typical values are common practice, no source: good parts, clean and tight. Measure the drop across your own under
/// load; a corroded joint can take more than all the wire.
/// </remarks>
public sealed record Contact
{
    private static readonly Identity<Contact> _identity = new Identity<Contact>()
        .Value(contact => contact.Name)
        .Number(contact => contact.Resistance.Ohms);

    private Contact(string name, ElectricResistance resistance) => (Name, Resistance) = (name, resistance);

    /// <summary>A crimped terminal with its mating part, 1 mΩ: common practice, no source.</summary>
    public static Contact DefaultJoint { get; } = Of("joint", ElectricResistance.FromMilliohms(1));

    /// <summary>A blade fuse of 15 to 30 A in its holder, 5 mΩ: common practice, no source.</summary>
    public static Contact DefaultFuse { get; } = Of("fuse and holder", ElectricResistance.FromMilliohms(5));

    /// <summary>A relay's closed contacts and its socket, 5 mΩ: common practice, no source.</summary>
    public static Contact DefaultRelay { get; } = Of("relay", ElectricResistance.FromMilliohms(5));

    /// <summary>A switch, for instance an inertia or master switch, 10 mΩ: common practice, no source.</summary>
    public static Contact DefaultSwitch { get; } = Of("switch", ElectricResistance.FromMilliohms(10));

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Resistance when closed and warm.</summary>
    public ElectricResistance Resistance { get; }

    /// <summary>A contact by its resistance: drop measured across it ÷ current through it.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="resistance">0 to 1 Ω.</param>
    /// <returns>The contact.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is outside its range.</exception>
    public static Contact Of(string name, ElectricResistance resistance) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                resistance,
                ElectricResistance.Zero,
                ElectricResistance.FromOhms(1),
                "Give the drop across the closed contact divided by the current through it.",
                nameof(resistance)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Contact? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and resistance.</summary>
    /// <returns>For instance <c>relay, 5 mΩ</c>.</returns>
    public override string ToString() =>
        $"{Name}, {Readable.Of(Resistance)}";

    internal static double Ohms(IReadOnlyList<Contact> contacts, string name)
    {
        double ohms = 0;
        foreach (Contact contact in contacts)
        {
            ArgumentNullException.ThrowIfNull(contact, name);
            ohms = VoltageDrop.Loop<Real>(ohms, contact.Resistance.Ohms);
        }

        return ohms;
    }
}

/// <summary>What reaches the motor through a feed, and what is lost along it.</summary>
public sealed class FeedResult : IReadable
{
    private const string Ohm = "Ohm's law";
    private const string Joule = "Joule's law";

    internal FeedResult(Feed feed, ElectricPotential supply, ElectricCurrent current, double ohmsPerMetre)
    {
        double volts = supply.Volts;
        double amperes = current.Amperes;
        Real drop = VoltageDrop.Of<Real>(amperes, feed.LoopOhms);
        (Feed, Supply, Current) = (feed, supply, current);
        AtMotor = Volts(VoltageDrop.AtMotor<Real>(volts, amperes, feed.LoopOhms));
        Drop = Volts(drop);
        DropInWire = Volts(VoltageDrop.Of<Real>(amperes, feed.WireOhms));
        DropInContacts = Volts(VoltageDrop.Of<Real>(amperes, feed.ContactOhms));
        ShareOfSupply = Ratio.FromDecimalFractions((double)drop / volts);
        HeatInWire = Power.FromWatts((double)VoltageDrop.Heat<Real>(amperes, feed.WireOhms));
        HeatInContacts = Power.FromWatts((double)VoltageDrop.Heat<Real>(amperes, feed.ContactOhms));
        HeatOfWirePerLength = LinearPowerDensity.FromWattsPerMeter((double)VoltageDrop.Heat<Real>(amperes, ohmsPerMetre));
    }

    /// <summary>The feed.</summary>
    public Feed Feed { get; }

    /// <summary>Voltage at the battery or alternator.</summary>
    public ElectricPotential Supply { get; }

    /// <summary>The motor's current.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage at the motor: V_s − I R.</summary>
    public ElectricPotential AtMotor { get; }

    /// <summary>Lost in all: I R.</summary>
    public ElectricPotential Drop { get; }

    /// <summary>Lost in the wire, out and back.</summary>
    public ElectricPotential DropInWire { get; }

    /// <summary>Lost in joints, fuse, relay, switch and chassis.</summary>
    public ElectricPotential DropInContacts { get; }

    /// <summary>The whole drop as a share of the supply.</summary>
    public Ratio ShareOfSupply { get; }

    /// <summary>Heat made in the wire, out and back: I² R.</summary>
    public Power HeatInWire { get; }

    /// <summary>Heat made in the contacts.</summary>
    public Power HeatInContacts { get; }

    /// <summary>Heat made in each metre of wire.</summary>
    public LinearPowerDensity HeatOfWirePerLength { get; }

    /// <summary>How the losses came about, line by line; written when it is asked for.</summary>
    public Working Working => WorkingIn(TextStyle.Metric);

    /// <summary>The same with figures in a style beside their SI values.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>The working.</returns>
    public Working WorkingIn(TextStyle style)
    {
        Derivation to = new(style);
        Traced supply = to.Given("voltage at the source", "V_s", Supply.Volts, "V", style.Of(Supply), "operating point");
        Traced current = to.Given("current", "I", Current.Amperes, "A", style.Of(Current), "the motor");
        Traced Ohms(string name, string symbol, double ohms, string source) =>
            to.Given(name, symbol, ohms, "Ω", style.Of(ElectricResistance.FromOhms(ohms)), source);
        Traced wire = Ohms("resistance of the wire", "R_w", Feed.WireOhms, Feed.Name);
        Traced contacts = Ohms("resistance of the contacts", "R_c", Feed.ContactOhms, Feed.Name);
        Traced loop = to.Step(
            "resistance of the loop", "R", VoltageDrop.Loop(wire, contacts), "Ω", style.Of(Feed.LoopResistance), "resistances in series", law: "VoltageDrop.Loop");
        to.Step("voltage lost in the wire", "ΔV_w", VoltageDrop.Of(current, wire), "V", style.VoltageDrop(DropInWire), Ohm, law: "VoltageDrop.Of");
        to.Step("voltage lost in the contacts", "ΔV_c", VoltageDrop.Of(current, contacts), "V", style.VoltageDrop(DropInContacts), Ohm, law: "VoltageDrop.Of");
        Traced drop = to.Step("voltage lost in all", "ΔV", VoltageDrop.Of(current, loop), "V", style.VoltageDrop(Drop), Ohm, law: "VoltageDrop.Of");
        to.Step("share of the supply that is lost", "x_V", drop / supply, "1", style.DutyCycle(ShareOfSupply), "definition");
        to.Step("voltage at the motor", "V_m", VoltageDrop.AtMotor(supply, current, loop), "V", style.Of(AtMotor), Ohm, law: "VoltageDrop.AtMotor");
        to.Step("heat in the wire", "P_Rw", VoltageDrop.Heat(current, wire), "W", style.Of(HeatInWire), Joule, law: "VoltageDrop.Heat");
        to.Step("heat in the contacts", "P_Rc", VoltageDrop.Heat(current, contacts), "W", style.Of(HeatInContacts), Joule, law: "VoltageDrop.Heat");
        return to.Of($"{Feed.Name}, {style.Of(Current)}");
    }

    /// <summary>The result in one line.</summary>
    /// <returns>For instance <c>12.9 V at the motor: 0.62 V (5 %) lost, 0.41 V in wire and 0.21 V in contacts</c>.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>The result, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "feed.loss",
        $"{AtMotor} at the motor: {Drop:voltage-drop} ({ShareOfSupply}) lost, {DropInWire:voltage-drop} in wire and {DropInContacts:voltage-drop} in contacts");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    private static ElectricPotential Volts(Real volts) => ElectricPotential.FromVolts((double)volts);
}
