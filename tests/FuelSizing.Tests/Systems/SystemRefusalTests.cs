using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What a system does not take: wiring that feeds pumps of two circuits, fuels that lack what lines need, a hand-over beyond the limit; and what it does.</summary>
public class SystemRefusalTests
{
    /// <summary>Each circuit is solved with feeds of its own: a part that feeds pumps of both is refused, whichever of the pumps it feeds.</summary>
    [Fact]
    public void LiftPump_OnAFeedOfAMainPump_IsRefused()
    {
        SurgeTank Tank(string trunk) => SurgeTank.Of(Volume.FromLiters(1), Pump.Of([SurgeTanks.LiftCurve()], feed: On(trunk)), ReturnDestination.SurgeTank);
        FuelSystem main = Wren.System().With(PumpParallel.Of(Wired(On("trunk A")), Wired(Named("own feed"))));
        ArgumentException refused = Assert.Throws<ArgumentException>(() => main.With(Tank("trunk A")));
        Assert.Equal("surgeTank", refused.ParamName);
        Assert.Contains("lift pump L on trunk A, which feeds the main pumps too", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(main.With(Tank("trunk B")).SurgeTank);
        Assert.NotNull(Wren.System().With(Tank("trunk A")).SurgeTank);
    }

    /// <summary>Neither with a main pump nor with the lift pump.</summary>
    [Fact]
    public void StreamPump_OnAFeedOfTheSystem_IsRefused()
    {
        SecondStream Stream(string trunk) => SecondStream.Of("stream M", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), pump: Wired(On(trunk)));
        FuelSystem main = Wren.System().With(PumpParallel.Of(Wired(Named("own feed")), Wired(On("trunk A"))))
            .With(SurgeTank.Of(Volume.FromLiters(1), Pump.Of([SurgeTanks.LiftCurve()], feed: On("trunk B")), ReturnDestination.SurgeTank));
        foreach (string trunk in new[] { "trunk A", "trunk B" })
        {
            ArgumentException refused = Assert.Throws<ArgumentException>(() => main.With(Stream(trunk)));
            Assert.Equal("secondStream", refused.ParamName);
            Assert.Contains($"pump W on {trunk}, which feeds pumps of the fuel system too", refused.Message, StringComparison.Ordinal);
        }

        Assert.NotNull(main.With(Stream("trunk C")).SecondStream);
        Assert.NotNull(Wren.System().With(Wired(On("trunk A"))).With(Stream("trunk B")).SecondStream);
        Assert.Throws<ArgumentException>(() => Wren.System().With(Wired(On("trunk A"))).With(Stream("trunk A")));
    }

    /// <summary>A fuel without a viscosity serves no pump with lines of its own; one without a vapour pressure none with a line before it, in either circuit.</summary>
    [Fact]
    public void Fuel_WithoutWhatItsLinesNeed_IsRefused()
    {
        Fuel bare = Fuel.Of("own", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        Fuel thick = bare.WithViscosity(
            (Temperature.FromDegreesCelsius(0), KinematicViscosity.FromCentistokes(0.7)), (Temperature.FromDegreesCelsius(40), KinematicViscosity.FromCentistokes(0.45)));
        FuelSystem On(Fuel fuel) => Wren.System().With(Wren.Demand(FuelConsumption.Of(fuel, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))));
        PumpBranch behind = PumpBranch.Of(Pump.From(Wren.Pump), discharge: [SurgeTanks.Hose("riser", 8, 1)]);
        PumpBranch before = PumpBranch.Of(Pump.From(Wren.Pump), suction: SurgeTanks.Suction);
        SurgeTank Lift(IFlowLoss[]? suction, IFlowLoss[]? line) => SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve()), ReturnDestination.SurgeTank, suction, line);
        string? Refusal(Func<FuelSystem> made) => Record.Exception(made) is ArgumentException refused ? refused.ParamName : null;
        Assert.Equal(("pump", "pump"), (Refusal(() => On(bare).With(behind)), Refusal(() => On(bare).With(before))));
        Assert.Equal((null, "pump"), (Refusal(() => On(thick).With(behind)), Refusal(() => On(thick).With(before))));
        Assert.Equal((null, (string?)null), (Refusal(() => On(Fuel.Petrol).With(behind)), Refusal(() => On(Fuel.Petrol).With(before))));
        Assert.Equal("surgeTank", Refusal(() => On(bare).With(Lift(null, SurgeTanks.LiftLine))));
        Assert.Null(Refusal(() => On(thick).With(Lift(null, SurgeTanks.LiftLine))));
        Assert.Equal("surgeTank", Refusal(() => On(thick).With(Lift(SurgeTanks.Suction, null))));
        Assert.Null(Refusal(() => On(Fuel.Petrol).With(Lift(SurgeTanks.Suction, SurgeTanks.LiftLine))));
        Assert.Null(Refusal(() => On(bare).With(Lift(null, null))));
    }

    /// <summary>A hand-over may begin at the limit of the duty cycle, 85 %, and not over it.</summary>
    [Fact]
    public void HandOver_OverTheLimitOfTheDutyCycle_IsRefused()
    {
        StagedInjectors At(double percent) => Staged.Of(HandOver.ByDutyCycle(Wren.Percent(percent), Wren.Percent(50)));
        Assert.NotNull(Wren.System().With(At(85)).StagedInjectors);
        Refused.OutOfRange("stagedInjectors", () => Wren.System().With(At(85.1)));
    }

    [Fact]
    public void Question_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem system = Wren.System();
        Refused.Missing("point", () => system.Covers(null!));
        Refused.Missing("surgeTank", () => system.With((SurgeTank)null!));
        Refused.Missing("stagedInjectors", () => system.With((StagedInjectors)null!));
        Refused.Missing("secondStream", () => system.With((SecondStream)null!));
        Refused.Missing("part", () => system.Waive(null!, "no matter"));
        Refused.Missing("style", () => system.Solve(Wren.At(3000, 0)).In(null!));

        // A hand-over by duty cycle moves with the inputs: a corner is not looked for, along a line either.
        HeldBoost line = HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3000), Wren.Rpm(6000));
        Assert.Equal(
            "system",
            Assert.Throws<ArgumentException>(() => system.With(Staged.Of(Staged.ByDutyCycle)).FindWorstCorner(line, Wren.Rpm(3000), Wren.Rpm(6000), OperatingRanges.Around(Wren.Hill))).ParamName);
    }

    [Fact]
    public void Words_OfASystem_NameItsLayoutAndItsParts()
    {
        Assert.Equal("return system: 4 × injector A, manifold-referenced, base 300 kPa, pump P", Wren.System().ToString());
        FuelSystem tank = FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), Fixed.At(Wren.Kpa(400)), Pump.From(Wren.Pump));
        Assert.Equal("returnless system: 4 × injector A and secondary 4 × injector C, fixed at 400 kPa, pump P", tank.With(Staged.Of()).ToString());
    }

    private static Pump Wired(Feed feed) => Pump.Of([Wren.WiredCurve(10, 0.7), Wren.WiredCurve(12, 0.85), Wren.WiredCurve(14.5, 1.1)]).WithFeed(feed);

    private static Feed On(string trunk) => Named("branch").WithShared(Named(trunk));

    private static Feed Named(string name) => Feed.Of(
        name, Conductor.Awg(8), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all of it", ElectricResistance.FromMilliohms(5)));
}
