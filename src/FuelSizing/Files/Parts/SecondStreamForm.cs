using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A second stream of fuel.</summary>
internal static class SecondStreamForm
{
    private static readonly PartField<Fuel> Fuel = new("fuel", () => FuelForm.Form, "the fuel in it");

    private static readonly QuantityField<Ratio> ByMass =
        new("fuel_by_mass", Measures.Share, "share of the fuel by mass, the rest water; not with `fuel_by_volume`") { Example = "50 %", Optional = true, Range = "0 to 100 %", Default = "no water", Arguments = ["fuelShare"] };

    private static readonly QuantityField<Ratio> ByVolume =
        new("fuel_by_volume", Measures.Share, "the same by volume before mixing at 15 °C; not with `fuel_by_mass`") { Example = "50 %", Optional = true, Range = "0 to 100 %", Default = "no water", Arguments = ["fuelShare"] };

    private static readonly QuantityField<Density> MixtureDensity =
        new("density_at_15c", Measures.Density, "density of fuel and water at 15 °C, measured") { Example = "918 kg/m³", Optional = true, Range = "1 % under to 5 % over an ideal mixture", Default = "that of an ideal mixture", Arguments = ["densityAt15C"] };

    private static readonly RecordForm<StreamFluid> OfFluid = new("fluid", "the liquid of a second stream", FluidOf, OneShare, """ "not": { "required": [ "fuel_by_mass", "fuel_by_volume" ] } """)
    {
        { Fuel, fluid => fluid.Fuel },
        { ByMass, fluid => fluid is { MassShare: < 1, IsByVolume: false } ? fluid.FuelShare : null },
        { ByVolume, fluid => fluid is { MassShare: < 1, IsByVolume: true } ? fluid.FuelShare : null },
        { MixtureDensity, fluid => fluid.DensityAt15C },
    };

    private static readonly CountField Count = new("count", 1, 1, 24, "how many there are");

    private static readonly QuantityField<VolumeFlow> Flow =
        new("flow", Measures.Flow, "of one nozzle at `rated_pressure`") { Example = "390 mL/min", Range = "5 to 5,000 mL/min" };

    private static readonly QuantityField<Pressure> Rated =
        new("rated_pressure", Measures.Pressure, "across the nozzle, at which its flow is stated") { Example = "700 kPa", Range = "50 to 3,000 kPa", Arguments = ["ratedDifferential"] };

    private static readonly QuantityField<Pressure> Minimum =
        new("minimum_differential", Measures.Pressure, "lowest pressure across the nozzle from which its flow is known") { Example = "230 kPa", Optional = true, Range = "0 kPa to `rated_pressure`", Default = "a third of `rated_pressure` (common practice, no source)", Arguments = ["differential"] };

    private static readonly WordField<SprayPlace> Into = new(
        "sprays_into", "what stands against the nozzles: boost, or ambient pressure", (SprayPlace.Manifold, "manifold"), (SprayPlace.BeforeCompressor, "before-compressor"))
    { Optional = true, Default = "`manifold`" };

    private static readonly TextField Liquid =
        new("test_fluid", "water", "liquid on which the flow was measured; with `test_density`") { Optional = true, Default = "water" };

    private static readonly QuantityField<Density> LiquidDensity =
        new("test_density", Measures.Density, "its density at the temperature of the test; with `test_fluid`") { Example = "998 kg/m³", Optional = true, Range = "600 to 1,200 kg/m³", Default = "that of water at 20 °C", Arguments = [] };

    private static readonly RecordForm<SprayNozzles> OfNozzles = new(
        "nozzles", "nozzles", NozzlesOf, BothOrNeither, """ "dependentRequired": { "test_fluid": [ "test_density" ], "test_density": [ "test_fluid" ] } """)
    {
        { Count, nozzles => nozzles.Count },
        { Flow, nozzles => nozzles.Flow },
        { Rated, nozzles => nozzles.RatedDifferential },
        { Liquid, nozzles => nozzles.TestFluid.Name },
        { LiquidDensity, nozzles => nozzles.TestFluid.Density },
        { Minimum, nozzles => nozzles.IsMinimumDifferentialStated ? nozzles.MinimumDifferential : null },
        { Into, nozzles => nozzles.SpraysInto },
    };

    private static readonly NameField Name = new();

    private static readonly PartField<StreamFluid> Fluid = new("fluid", () => OfFluid, "what it sprays");

    private static readonly PartField<SprayNozzles> Nozzles = new("nozzles", () => OfNozzles, "its nozzles");

    private static readonly QuantityField<Pressure> Begin = new("begin", Measures.Pressure, "boost from which on it flows, gauge") { Example = "45 kPa", Range = "0 to 400 kPa" };

    private static readonly QuantityField<Pressure> Full =
        new("full", Measures.Pressure, "boost from which on all of it flows, in proportion between") { Example = "80 kPa", Optional = true, Range = "above `begin`, to 400 kPa", Default = "all of it from `begin` on" };

    private static readonly QuantityField<Pressure> Held =
        new("held_pressure", Measures.Pressure, "gauge, held at the nozzles; this, `pump` or both") { Example = "850 kPa", Optional = true, Range = "50 to 2,000 kPa", Default = "none is held", Arguments = ["heldPressure"] };

    private static readonly PartField<PumpAssembly> Pump = new("pump", () => PumpForm.Assembly, "its own pump or pumps; this, `held_pressure` or both") { Optional = true, Default = "not judged" };

    private static readonly QuantityField<Volume> Tank =
        new("usable_volume", Measures.Volume, "drawn from its full tank") { Example = "2 L", Optional = true, Range = "0.1 to 200 L", Default = "not judged", Arguments = ["usableVolume"] };

    private static readonly QuantityField<Duration> Lasts =
        new("required_duration", Measures.Time, "at full flow, that its tank has to last; needs `usable_volume`") { Example = "150 s", Optional = true, Range = "1 s to 24 h", Default = "not judged", Arguments = ["requiredDuration"] };

    private static readonly QuantityField<Ratio> Evaporated =
        new("evaporated_share", Measures.Share, "of the liquid that evaporates in the charge; needs `held_pressure`") { Example = "20 %", Optional = true, Range = "0 to 100 %", Default = "0 %", Arguments = [] };

    private static readonly QuantityField<Ratio> TakenBack =
        new("main_fuel_taken_back", Measures.Share, "of the main fuel, by the controller, while all of it flows") { Example = "10 %", Optional = true, Range = "0 to 60 %", Default = "0 %", Arguments = [] };

    /// <summary>The stream.</summary>
    public static RecordForm<SecondStream> Form { get; } = new("second_stream", "a second stream", StreamOf, Needs, """ "anyOf": [ { "required": [ "held_pressure" ] }, { "required": [ "pump" ] } ], "dependentRequired": { "required_duration": [ "usable_volume" ], "evaporated_share": [ "held_pressure" ] } """)
    {
        { Name, stream => stream.Name },
        { Fluid, stream => stream.Fluid },
        { Nozzles, stream => stream.Nozzles },
        { Begin, stream => stream.Begin },
        { Full, stream => stream.Full },
        { Held, stream => stream.HeldPressure },
        { Tank, stream => stream.UsableVolume },
        { Lasts, stream => stream.RequiredDuration },
        { Evaporated, stream => stream.EvaporatedShare > Ratio.Zero ? stream.EvaporatedShare : null },
        { TakenBack, stream => stream.TakesBack ? stream.MainFuelTakenBack : null },
        { Pump, stream => stream.Pump },
    };

    private static StreamFluid? FluidOf(FieldValues values)
    {
        Fuel fuel = values.Required(Fuel);
        StreamFluid? fluid = values.Optional(ByMass) is { } mass
            ? values.Checked(() => StreamFluid.WithWaterByMass(fuel, mass), ("fuelShare", ByMass), ("fuel", Fuel))
            : values.Optional(ByVolume) is { } volume
                ? values.Checked(() => StreamFluid.WithWaterByVolume(fuel, volume), ("fuelShare", ByVolume), ("fuel", Fuel))
                : StreamFluid.Of(fuel);
        return fluid is not null && values.Optional(MixtureDensity) is { } density
            ? values.Checked(() => fluid.WithDensity(density), ("densityAt15C", MixtureDensity))
            : fluid;
    }

    private static void OneShare(FieldValues values)
    {
        if (values.Reader.Has(ByMass.Name) && values.Reader.Has(ByVolume.Name))
        {
            values.Wrong(ByVolume, Statement.Of("file.two-shares", $"is given together with fuel_by_mass. Give one of the two."));
        }
    }

    private static void BothOrNeither(FieldValues values) =>
        values.BothOrNeither(Liquid, LiquidDensity, Statement.Of("file.nozzle-fluid-half", $"is missing. Give test_fluid and test_density both, or neither for water."));

    private static SprayNozzles? NozzlesOf(FieldValues values)
    {
        TestFluid? liquid = values.Optional(LiquidDensity) is { } density
            ? values.Checked(() => TestFluid.Of(values.Required(Liquid), density), ("name", Liquid), ("density", LiquidDensity))
            : SprayNozzles.Water;
        if (liquid is null)
        {
            return null;
        }

        SprayNozzles nozzles = SprayNozzles.Of(
            values.Required(Count), values.Required(Flow), values.Required(Rated), liquid, values.Optional(Into) ?? SprayPlace.Manifold);
        return values.Optional(Minimum) is { } minimum ? nozzles.WithMinimumDifferential(minimum) : nozzles;
    }

    private static void Needs(FieldValues values)
    {
        if (!values.Reader.Has(Held.Name) && !values.Reader.Has(Pump.Name))
        {
            values.Wrong(Held, Statement.Of("file.stream-without-pressure", $"is missing, and so is pump. Give the pressure that is held at the nozzles, the pump, or both."));
        }

        if (values.Reader.Has(Lasts.Name) && !values.Reader.Has(Tank.Name))
        {
            values.Wrong(Lasts, Statement.Of("file.duration-without-tank", $"needs the size of the tank. Give usable_volume, or take it out."));
        }

        if (values.Reader.Has(Evaporated.Name) && !values.Reader.Has(Held.Name))
        {
            values.Wrong(Evaporated, Statement.Of("file.evaporation-without-pressure", $"needs a pressure that is held. Give held_pressure, or take it out."));
        }
    }

    private static SecondStream? StreamOf(FieldValues values)
    {
        SecondStream stream = SecondStream.Of(
            values.Required(Name),
            values.Required(Fluid),
            values.Required(Nozzles),
            values.Required(Begin),
            values.Optional(Held),
            values.Optional(Pump),
            values.Optional(Full));
        stream = values.Optional(Tank) is { } tank ? stream.WithTank(tank, values.Optional(Lasts)) : stream;
        SecondStream? evaporating = values.Optional(Evaporated) is { } share
            ? values.Checked(() => stream.WithEvaporation(share), ("share", Evaporated))
            : stream;
        return evaporating is not null && values.Optional(TakenBack) is { } back
            ? values.Checked(() => evaporating.WithMainFuelTakenBack(back), ("share", TakenBack))
            : evaporating;
    }
}
