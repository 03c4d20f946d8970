using System.Globalization;
using FuelSizing.Electrical;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A pump's feed: its wire and contacts.</summary>
internal static class FeedForm
{
    private static readonly QuantityField<Area> Nominal = new("metric", Measures.Area, "nominal area of a standard metric wire")
    {
        Range = "0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70 or 95 mm²",
        Arguments = ["nominal"],
    };

    private static readonly QuantityField<Area> MetalArea = new("area", Measures.Area, "of the metal") { Range = "0.2 to 120 mm²" };

    private static readonly QuantityField<Ratio> Lay =
        new("lay", Measures.Share, "extra length of the strands; 0 % of a solid wire") { Example = "2 %", Range = "0 to 10 %" };

    private static readonly TextField Gauge = new("gauge", "12", "AWG size, such as `\"12\"` or `\"2/0\"`")
    {
        Range = "24 to 0, or 1/0 to 4/0",
        Arguments = ["gauge", "zeros"],
        Advice = "Give gauge (AWG size), such as \"12\" or \"2/0\", or metric, or area and lay.",
    };

    private static readonly WordField<Metal> Material =
        new("material", "the metal", (Metal.Copper, "copper"), (Metal.Aluminium, "aluminium")) { Optional = true, Default = "copper" };

    private static readonly RecordForm<Conductor> Metric = new("metric_conductor", "a metric wire", values => Conductor.Metric(values.Required(Nominal)))
    {
        { Nominal, conductor => conductor.Size.Value.Nominal },
    };

    private static readonly RecordForm<Conductor> OfArea = new(
        "conductor_of_area",
        "a wire of a given area",
        values => Conductor.OfArea(values.Required(MetalArea), MaterialOf(values), values.Required(Lay)))
    {
        { Material, MetalOf },
        { MetalArea, conductor => conductor.Size.Value.Area },
        { Lay, conductor => conductor.Size.Value.Lay },
    };

    private static readonly RecordForm<Conductor> OfGauge = new("conductor_of_gauge", "a wire of an AWG size", ByGauge)
    {
        { Material, MetalOf },
        { Gauge, conductor => conductor.Size.Value.Gauge is { } gauge ? GaugeText(gauge) : null },
    };

    private static readonly ChoiceForm<Conductor> Wire = new(
        "conductor",
        "a wire",
        Variant<Conductor>.Of(Metric, wire => wire.Size.Value.Nominal is not null, Nominal),
        Variant<Conductor>.Of(OfArea, wire => wire.Size.Value.Gauge is null, MetalArea),
        Variant<Conductor>.Of(OfGauge));

    private static readonly NameField Name = new();

    private static readonly QuantityField<ElectricResistance> Resistance = new("resistance", Measures.Resistance, "of the contact") { Range = "0 to 1 Ω" };

    private static readonly RecordForm<Contact> OneContact =
        new("contact", "a contact", values => Contact.Of(values.Required(Name), values.Required(Resistance)))
        {
            { Name, contact => contact.Name },
            { Resistance, contact => contact.Resistance },
        };

    private static readonly PartField<Conductor> OfConductor = new("conductor", () => Wire, "the wire, out and back");

    private static readonly QuantityField<Length> Outward =
        new("outward_length", Measures.Length, "of the wire from the supply to the motor") { Example = "4.5 m", Range = "0 to 100 m", Arguments = ["outwardLength"] };

    private static readonly QuantityField<Length> Return = new("return_length", Measures.Length, "of the wire from the motor back; 0 m where the chassis returns the current")
    {
        Example = "4.5 m",
        Range = "0 to 100 m",
        Arguments = ["returnLength"],
    };

    private static readonly QuantityField<Temperature> ConductorTemperature =
        new("conductor_temperature", Measures.Temperature, "of the metal under load") { Example = "60 °C", Range = "−40 to 150 °C" };

    private static readonly ListField<Contact> Contacts =
        new("contacts", () => OneContact, "every joint, fuse, relay and switch, each as often as the current passes one") { IsTable = true, Optional = true, Default = "no contacts" };

    private static readonly QuantityField<Temperature> InsulationRating = new("insulation_rating", Measures.Temperature, "temperature rating of the wire's insulation, as printed on it; with `ambient`")
    {
        Example = "105 °C",
        Range = "0 to 300 °C",
        Optional = true,
        Default = "not given: ampacity is not judged",
        Arguments = ["insulationRating"],
    };

    private static readonly QuantityField<Temperature> Ambient = new("ambient", Measures.Temperature, "hottest surroundings along the run; with `insulation_rating`")
    {
        Example = "60 °C",
        Range = "−40 to 200 °C",
        Optional = true,
        Default = "not given: ampacity is not judged",
        Arguments = ["ambient"],
    };

    private static readonly QuantityField<ElectricCurrent> Fuse = new("fuse", Measures.Current, "rating of the fuse at the source")
    {
        Example = "15 A",
        Range = "0.5 to 200 A",
        Optional = true,
        Default = "not given: the fuse is not judged",
        Arguments = [],
    };

    private static readonly NumberField Multiple = new("multiple", 2.5, 1, 50, "current as a multiple of the rating, rising from row to row") { Arguments = ["multiple"] };

    private static readonly QuantityField<Duration> Shortest =
        new("minimum", Measures.Time, "the shortest time after which it may open there") { Example = "0.2 s", Range = "10 ms to 1,000 h", Arguments = ["minimum"] };

    private static readonly QuantityField<Duration> Longest =
        new("maximum", Measures.Time, "the longest within which it opens there") { Example = "6 s", Range = "`minimum` to 1,000 h", Arguments = ["maximum"] };

    private static readonly RecordForm<FuseTime> OneTime = new(
        "fuse_time", "opening times at one current", values => FuseTime.Of(values.Required(Multiple), values.Required(Shortest), values.Required(Longest)))
    {
        { Multiple, time => time.Multiple },
        { Shortest, time => time.Minimum },
        { Longest, time => time.Maximum },
    };

    private static readonly ListField<FuseTime> FuseTimes = new("fuse_times", () => OneTime, "its opening times, by its data sheet or standard; with `fuse`")
    {
        IsTable = true,
        Optional = true,
        Default = "not given: start and locked rotor are not judged",
        Arguments = ["points"],
    };

    private static readonly QuantityField<ElectricCurrent> LockedRotor =
        new("locked_rotor", Measures.Current, "drawn with the rotor locked") { Example = "46 A", Range = "0.5 to 500 A", Arguments = ["lockedRotor"] };

    private static readonly QuantityField<Duration> StartTime =
        new("time", Measures.Time, "that a start takes") { Example = "80 ms", Optional = true, Range = "10 ms to 60 s", Default = "not given: the start is not judged", Arguments = ["time"] };

    private static readonly QuantityField<Duration> OpensWithin = new("opens_within", Measures.Time, "within what a fuse has to open on a locked rotor")
    {
        Example = "10 s",
        Optional = true,
        Range = "10 ms to 1 h",
        Default = "not given: the locked rotor is not judged",
        Arguments = ["opensWithin"],
    };

    private static readonly RecordForm<MotorStart> StartForm = new(
        "motor_start",
        "the start of a motor",
        values => MotorStart.Of(values.Required(LockedRotor), values.Optional(StartTime), values.Optional(OpensWithin)))
    {
        { LockedRotor, start => start.LockedRotor },
        { StartTime, start => start.Time },
        { OpensWithin, start => start.OpensWithin },
    };

    private static readonly PartField<MotorStart> Start = new("start", () => StartForm, "what its motor draws at a start and with its rotor locked")
    {
        Optional = true,
        Default = "not given: start and locked rotor are not judged",
        Arguments = ["start"],
    };

    private static readonly QuantityField<ElectricCurrent> Relay = new("relay", Measures.Current, "continuous current of the closed contacts of its relay")
    {
        Example = "30 A",
        Range = "0.5 to 500 A",
        Optional = true,
        Default = "not given: no relay is judged",
        Arguments = [],
    };

    private static readonly CountField Bundle = new("bundled_conductors", 4, 1, 1000, "current-carrying conductors in its bundle, sheath or conduit, itself and returns included")
    {
        Optional = true,
        Default = "1: by itself, or beside its own return",
        Arguments = ["conductors"],
    };

    private static readonly PartField<Conductor> GroundConductor = new("conductor", () => Wire, "the ground wire");

    private static readonly QuantityField<Length> GroundLength =
        new("length", Measures.Length, "of the ground wire") { Example = "0.4 m", Range = "0 to 100 m", Arguments = ["length"] };

    private static readonly QuantityField<ElectricResistance> Body =
        new("body", Measures.Resistance, "of the body or frame from the wire's stud to the supply") { Example = "4 mΩ", Range = "0 to 1 Ω", Optional = true, Default = "0 Ω: the wire goes all the way", Arguments = ["body"] };

    private static readonly RecordForm<GroundReturn> GroundForm = new(
        "ground_return",
        "a ground return",
        GroundOf,
        BothOrNeither,
        """ "dependentRequired": { "insulation_rating": [ "ambient" ], "ambient": [ "insulation_rating" ] } """)
    {
        { GroundConductor, ground => ground.Conductor },
        { GroundLength, ground => ground.Length },
        { ConductorTemperature, ground => ground.ConductorTemperature },
        { Body, ground => ground.Body },
        { Contacts, ground => ground.Contacts },
        { InsulationRating, ground => ground.InsulationRating },
        { Ambient, ground => ground.Ambient },
        { Bundle, ground => ground.BundledConductors },
    };

    private static readonly PartField<GroundReturn> Ground = new("ground", () => GroundForm, "the ground return, where it is not of the same wire; with a `return_length` of 0 m")
    {
        Optional = true,
        Default = "by `return_length`, or the chassis among `contacts`",
        Arguments = ["ground"],
    };

    private static readonly RecordForm<Feed> SharedForm = new(
        "shared_feed",
        "a shared part of feeds",
        FeedOf,
        BothOrNeither,
        """ "dependentRequired": { "insulation_rating": [ "ambient" ], "ambient": [ "insulation_rating" ] } """)
    {
        { Name, feed => feed.Name },
        { OfConductor, feed => feed.Conductor },
        { Outward, feed => feed.OutwardLength },
        { Return, feed => feed.ReturnLength },
        { ConductorTemperature, feed => feed.ConductorTemperature },
        { Contacts, feed => feed.Contacts },
        { InsulationRating, feed => feed.InsulationRating },
        { Ambient, feed => feed.Ambient },
        { Fuse, feed => feed.Fuse },
        { Relay, feed => feed.Relay },
        { Bundle, feed => feed.BundledConductors },
        { Ground, feed => feed.Ground },
        { FuseTimes, feed => feed.FuseTimes is { } times ? times.Points : [] },
    };

    private static readonly PartField<Feed> Shared = new("shared", () => SharedForm, "the part from the supply to a splice that other pumps hang on too, written the same in each of their feeds; the feed's own fields are then those of the branch")
    {
        Optional = true,
        Default = "none: the feed is the pump's alone",
        Arguments = ["shared"],
    };

    /// <summary>The feed.</summary>
    public static RecordForm<Feed> Form { get; } = new(
        "feed",
        "a feed",
        WholeOf)
    {
        { SharedForm, feed => feed },
        { Shared, feed => feed.Shared },
        { Start, feed => feed.Start },
    };

    private static Feed? WholeOf(FieldValues values)
    {
        if (FeedOf(values) is not { } feed)
        {
            return null;
        }

        feed = values.Optional(Start) is { } start ? feed.WithStart(start) : feed;
        return values.Optional(Shared) is { } shared ? feed.WithShared(shared) : feed;
    }

    private static void BothOrNeither(FieldValues values) =>
        values.BothOrNeither(InsulationRating, Ambient, Statement.Of("file.insulation-half", $"is missing. Give insulation_rating and ambient both, or neither."));

    private static Feed? FeedOf(FieldValues values)
    {
        Feed feed = Feed.Of(
            values.Required(Name),
            values.Required(OfConductor),
            values.Required(Outward),
            values.Required(Return),
            values.Required(ConductorTemperature),
            [.. values.Required(Contacts)]);
        Temperature? rating = values.Optional(InsulationRating);
        Temperature? ambient = values.Optional(Ambient);
        feed = (rating, ambient) is ({ } given, { } around) ? feed.WithInsulation(given, around) : feed;
        feed = values.Optional(Bundle) is { } bundled ? feed.WithBundle(bundled) : feed;
        feed = values.Optional(Relay) is { } relay ? feed.WithRelay(relay) : feed;
        feed = values.Optional(Ground) is { } ground ? feed.WithGround(ground) : feed;
        IReadOnlyList<FuseTime> times = values.Required(FuseTimes);
        if (times.Count > 0 && !values.Reader.Has(Fuse.Name))
        {
            values.Wrong(FuseTimes, Statement.Of("file.times-without-fuse", $"needs the rating that its multiples are of. Give fuse, or take it out."));
            return null;
        }

        return values.Optional(Fuse) is not { } fuse ? feed
            : times.Count > 0 ? feed.WithFuse(fuse, FuseTimeCurrent.From([.. times]))
            : feed.WithFuse(fuse);
    }

    private static GroundReturn GroundOf(FieldValues values)
    {
        GroundReturn ground = GroundReturn.Of(
            values.Required(GroundConductor),
            values.Required(GroundLength),
            values.Required(ConductorTemperature),
            values.Optional(Body) ?? ElectricResistance.Zero,
            [.. values.Required(Contacts)]);
        ground = (values.Optional(InsulationRating), values.Optional(Ambient)) is ({ } rating, { } ambient) ? ground.WithInsulation(rating, ambient) : ground;
        return values.Optional(Bundle) is { } bundled ? ground.WithBundle(bundled) : ground;
    }

    private enum Metal
    {
        Copper,
        Aluminium,
    }

    private static ConductorMaterial MaterialOf(FieldValues values) =>
        values.Required(Material) == Metal.Copper ? ConductorMaterial.Copper : ConductorMaterial.Aluminium;

    private static Metal? MetalOf(Conductor conductor) => conductor.Material == ConductorMaterial.Copper ? Metal.Copper : Metal.Aluminium;

    private static Conductor? ByGauge(FieldValues values)
    {
        string text = values.Required(Gauge);
        bool zeros = text.EndsWith("/0", StringComparison.Ordinal);
        if (!int.TryParse(zeros ? text[..^2] : text, NumberStyles.None, CultureInfo.InvariantCulture, out int number))
        {
            values.Wrong(Gauge, Statement.Of("file.no-awg-size", $"was \"{ProblemList.Shown(text)}\". Give an AWG size such as \"12\" or \"2/0\"."));
            return null;
        }

        // 1/0 is the size 0 that single numbers end with.
        return zeros && number != 1
            ? Conductor.AwgZeros(number, MaterialOf(values))
            : Conductor.Awg(zeros ? 0 : number, MaterialOf(values));
    }

    private static string GaugeText(int gauge) =>
        gauge < 0
            ? string.Create(CultureInfo.InvariantCulture, $"{1 - gauge}/0")
            : gauge.ToString(CultureInfo.InvariantCulture);
}
