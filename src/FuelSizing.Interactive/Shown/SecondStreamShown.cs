using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How a second stream, what it brings and what it uses are shown.</summary>
internal static class SecondStreamShown
{
    private const string Caution = "Methanol is toxic by mouth, skin and vapour, burns with a flame that daylight hides, and attacks some seals and aluminium. If the stream stops, the engine has the main fuel alone.";

    public static void Register()
    {
        Shown.By<StreamFluid>((fluid, style) => new($"Liquid of a second stream: {fluid.Name}", Of(fluid, style)));
        Shown.By<SprayNozzles>((nozzles, style) => new("Nozzles of a second stream", Of(nozzles, style)));
        Shown.By<SecondStream>((stream, style) => new($"Second stream: {stream.Name}", Of(stream, style), Caution));
        Shown.By<SecondStreamResult>((result, style) => new($"Second stream: {result.Stream.Name}", Of(result, style), Caution));
        Shown.By<StreamConsumption>((run, style) => new(
            $"Second stream over a run: {run.Stream.Name}",
            [
                Fact.Words("Answer", PartText.Say(run.Text, style)),
                new("Run", "", style.Time(run.Time)),
                new("Used", "", CircuitText.Known(run.Used, style.Of)),
                new("Used, at the least", "", style.Of(run.MinimumUsed)),
                new("Used, at the most", "", CircuitText.Known(run.MaximumUsed, style.Of)),
            ]));
    }

    /// <summary>A stream in one line.</summary>
    public static string Text(SecondStream stream, TextStyle style) =>
        $"{stream.Name}: {stream.Fluid.Name}, {style.Count(stream.Nozzles.Count)} × {style.InjectorFlow(stream.Nozzles.Flow)}, from {style.Boost(stream.Begin)} on{(stream.MainFuelTakenBack > Ratio.Zero ? $", {style.Of(stream.MainFuelTakenBack)} of the main fuel taken back" : string.Empty)}";

    private static Fact[] Of(StreamFluid fluid, TextStyle style) =>
    [
        new("Fuel in it", "", style.DutyCycle(fluid.FuelMassShare), $"{fluid.Fuel.Name}, by mass"),
        new($"Density at {style.Of(Temperature.FromDegreesCelsius(15))}", "", style.Of(fluid.DensityAt(Temperature.FromDegreesCelsius(15))), fluid.IsDensityAssumed ? "ideal mixture, an assumption: up to 3.5 % more" : ""),
        new("Lower heating value", "H_s", style.Of(fluid.LowerHeatingValue), "of a mass of the liquid"),
        new("Stoichiometric air–fuel ratio", "AFR_s", style.Number(fluid.StoichiometricAirFuelRatio), "kg of air to a kg of the liquid"),
        new("Heat of vaporisation", "h_s", CircuitText.Known(fluid.HeatOfVaporisation, style.Of)),
    ];

    private static Fact[] Of(SprayNozzles nozzles, TextStyle style) =>
    [
        new("Nozzles", "", style.Count(nozzles.Count)),
        new("Flow of one", "", style.InjectorFlow(nozzles.Flow), $"at {style.Of(nozzles.RatedDifferential)} on {nozzles.TestFluid.Name}"),
        new("Flow known from", "", style.Of(nozzles.MinimumDifferential), nozzles.IsMinimumDifferentialStated ? "" : "a third of the rated pressure: common practice, no source"),
        Fact.Words("Spray into", nozzles.SpraysInto == SprayPlace.Manifold ? "the manifold, against boost" : "the air before the compressor"),
    ];

    private static Fact[] Of(SecondStream stream, TextStyle style) =>
    [
        .. Of(stream.Fluid, style),
        .. Of(stream.Nozzles, style),
        new("Held at the nozzles", "", stream.HeldPressure is { } held ? style.Of(held) : "nothing", "gauge"),
        Fact.Words("Pump", stream.Pump?.Name ?? "none given"),
        new("Begins at", "", style.Boost(stream.Begin), "gauge"),
        new("All of it from", "", style.Boost(stream.Full ?? stream.Begin), "gauge"),
        new("Tank", "", CircuitText.Known(stream.UsableVolume, style.Of), stream.RequiredDuration is { } time ? $"has to last {style.Time(time)}" : ""),
        new("Evaporates in the charge", "x_es", style.Of(stream.EvaporatedShare)),
        new("Main fuel taken back", "x_tb", style.Of(stream.MainFuelTakenBack), stream.MainFuelTakenBack > Ratio.Zero ? "stays taken back if the stream stops" : ""),
    ];

    private static Fact[] Of(SecondStreamResult result, TextStyle style) =>
    [
        Fact.Words("Answer", PartText.Say(result.Text, style)),
        new("Share of it that flows", "", style.Of(result.Share)),
        new("At the nozzles", "", CircuitText.Known(result.NozzleGauge, style.Of), "gauge"),
        new("Across the nozzles", "", CircuitText.Known(result.NozzleDifferential, style.Of)),
        new("Liquid", "", CircuitText.Known(result.Flow, style.InjectorFlow), $"{style.InjectorFlow(result.MinimumFlow)} to {CircuitText.Known(result.MaximumFlow, style.InjectorFlow)}"),
        new("Liquid, by mass", "ṁ_s", CircuitText.Known(result.LiquidMassFlow, style.Of)),
        new("Fuel in it", "", CircuitText.Known(result.FuelMassFlow, style.Of)),
        new("Main fuel", "ṁ_m", CircuitText.Known(result.MainFuelMassFlow, style.Of), result.TakenBack > Ratio.Zero ? $"{style.Of(result.TakenBack)} taken back" : ""),
        new("Share of all fuel", "", CircuitText.Known(result.ShareOfFuel, style.DutyCycle), "by mass"),
        new("Share of heat", "z_s", CircuitText.Known(result.ShareOfHeat, style.DutyCycle)),
        new("Lambda with it", "λ", MixtureText.Lambda(result.Lambda, style), $"{MixtureText.Lambda(result.MinimumLambda, style)} to {MixtureText.Lambda(result.MaximumLambda, style)}"),
        new("Lambda if it stops", "", MixtureText.Lambda(result.LambdaIfStopped, style), "main fuel alone, as injected"),
        new("Air gained by its evaporation", "", style.Change(result.AirGain), "at the most"),
        new("Tank lasts", "", CircuitText.Known(result.MinimumTankDuration, style.Time), "at this flow, at the least"),
    ];
}
