using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>Fuel systems with parts that not every car has, each beside a plain one with as many pumps, lines and feeds.</summary>
internal static class BuiltSystems
{
    private static readonly OperatingPoint _point = OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50));

    /// <summary>Every pair.</summary>
    public static BuiltPair[] All()
    {
        Pump wired = Wired(Harness("feed", 5), 10, 12, 14);
        Pump spliced = Wired(Harness("feed", 1).WithShared(Harness("shared", 4)), 10, 12, 14);
        Pump once = Wired(Harness("feed", 5), 13.5);
        Pump Converted(ElectricCurrent? limit) =>
            wired.WithConverter(VoltageConverter.Holding("converter", InventedCar.Volt(13.8), Ratio.FromPercent(88), limit));
        Pump DrivenBy(Pump pump, PumpKind kind, ElectricResistance? winding) => pump.WithDrive(PumpDrive.Of(kind, winding));
        ElectricResistance ohms = ElectricResistance.FromMilliohms(200);
        Pump low = Wired(Harness("feed", 5), 6, 8, 10, 12, 14);
        SwitchedPump Switched(double on, Pump pump, PumpLowSpeed? slow = null) =>
            SwitchedPump.Above(InventedCar.Kpa(on), InventedCar.Kpa(on - 5), pump, slow);
        PumpLowSpeed resistor = PumpLowSpeed.Through(ElectricResistance.FromOhms(0.3));
        PumpLowSpeed pulses = PumpLowSpeed.At(Ratio.FromPercent(75));

        FuelSystem bare = InventedCar.System.With(InventedCar.Plumbing);
        FuelSystem two = bare.With(Two(wired));
        FuelSystem three = bare.With(PumpParallel.Of(wired, wired, wired));
        FuelSystem twoOnce = bare.With(Two(once));
        RisingRate unit = RisingRate.From(InventedCar.Kpa(300), 2, InventedCar.Kpa(10), InventedCar.Kpa(480));
        RisingRate sloped = unit.WithFlow(Slope);
        RegulatorSeries series = RegulatorSeries.Of(
            ManifoldReferenced.From(InventedCar.Kpa(300)).WithFlow(Slope), RisingRate.From(InventedCar.Kpa(0), 6, InventedCar.Kpa(10), InventedCar.Kpa(480)).WithFlow(Slope));
        IFlowLoss[] before = [.. InventedCar.Plumbing.Supply];
        Plumbing shared = Plumbing.Of(supply: [before[0]], returnLine: InventedCar.Plumbing.ReturnLine);
        PumpBranch branch = PumpBranch.Of(
            wired,
            discharge: [before[1], CheckValve.Of("valve", InventedCar.Kpa(5), VolumeFlow.FromLitersPerHour(200), InventedCar.Kpa(12)), Own("own line")]);
        SurgeTank Tank(ReturnDestination destination, params Line[] overflow) => SurgeTank.Of(
            Volume.FromLiters(1.4), destination == ReturnDestination.SurgeTank ? wired : Two(wired), destination, [], InventedCar.Plumbing.Supply, overflow is [] ? InventedCar.Plumbing.ReturnLine : overflow);
        return
        [
            new("regulator that changes with flow", two, two.With(sloped)),
            new("the same with hysteresis", two, two.With(unit.WithFlow(Slope.WithHysteresis(InventedCar.Kpa(8))))),
            new("the same with pressure on its outlet", two, two.With(unit.WithFlow(Slope.WithOutletShare(0.2)))),
            new("regulator with a measured curve", two, two.With(unit.WithFlow(Measured()))),
            new("base regulator and rising-rate unit in series", two, two.With(series)),
            new("the same with its gain only quoted", two, two.With(series.WithQuotedGain())),
            new("returnless, regulator before the rail", two, Returnless(two, wired)),
            new("pumps that share a feed", two, bare.With(Two(spliced))),
            new("pumps behind converters", two, bare.With(Two(Converted(null)))),
            new("pumps behind converters at their limit", two, bare.With(Two(Converted(ElectricCurrent.FromAmperes(9))))),
            new("displacement pumps", two, bare.With(Two(DrivenBy(wired, PumpKind.Displacement, ohms)))),
            new("turbine pumps", two, bare.With(Two(DrivenBy(wired, PumpKind.Turbine, ohms)))),
            new("pumps of unknown kind", two, bare.With(Two(DrivenBy(wired, PumpKind.Unknown, ohms)))),
            new("displacement pumps, winding not known", two, bare.With(Two(DrivenBy(wired, PumpKind.Displacement, null)))),
            new("turbine pumps, winding not known", two, bare.With(Two(DrivenBy(wired, PumpKind.Turbine, null)))),
            new("pumps of unknown kind, measured at one voltage", twoOnce, bare.With(Two(DrivenBy(once, PumpKind.Unknown, ohms)))),
            new("turbine pumps, winding not known, measured at one voltage", twoOnce, bare.With(Two(DrivenBy(once, PumpKind.Turbine, null)))),
            new("a pump switched on by boost", two, bare.With(PumpParallel.Of(wired, Switched(20, wired)))),
            new("the same where it may be on or off", two, bare.With(PumpParallel.Of(wired, Switched(52, wired)))),
            new("a pump on low speed through a resistor", bare.With(Two(low)), bare.With(PumpParallel.Of(low, Switched(70, low, resistor)))),
            new("a pump on low speed by pulses", bare.With(Two(low)), bare.With(PumpParallel.Of(low, Switched(70, low, pulses)))),
            new("a pump on low speed under its measured voltages", two, bare.With(PumpParallel.Of(wired, Switched(70, wired, pulses)))),
            new("branches with line, filter and check valve of their own", two, bare.With(Two(branch)).With(shared)),
            new("pumps in series, bypassed", two, bare.With(PumpSeries.Of(SeriesBypass.CheckValve, wired, wired))),
            new("pumps in series, not bypassed", two, bare.With(PumpSeries.Of(SeriesBypass.None, wired, wired))),
            new("surge tank", three, two.With(Tank(ReturnDestination.SurgeTank))),
            new("surge tank, return to the main tank, two lift pumps", bare.With(PumpParallel.Of(wired, wired, wired, wired)), two.With(Tank(ReturnDestination.MainTank))),
            new("surge tank, overflow that rises", three, two.With(Tank(ReturnDestination.SurgeTank, Own("overflow", 0.6)))),
            new("surge tank, shared feed, slope", three, bare.With(Two(spliced)).With(sloped).With(Tank(ReturnDestination.SurgeTank))),
            new("staged injectors", two, two.With(StagedInjectors.Of(InjectorSet.Of(InventedCar.Injector, 4), HandOver.ByDutyCycle(Ratio.FromPercent(50), Ratio.FromPercent(40)))), WithInjectors: true),
            new("second stream with its own pump", three, two.With(Stream(wired)), WithInjectors: true),
        ];
    }

    private static RegulatorFlow Slope { get; } =
        RegulatorFlow.Rising(InventedCar.Kpa(12), VolumeFlow.FromLitersPerHour(150), VolumeFlow.FromLitersPerHour(60));

    private static RegulatorFlow Measured() => RegulatorFlow.Measured(
        VolumeFlow.FromLitersPerHour(60),
        [.. new[] { (20.0, 295.0), (60, 300), (120, 304), (220, 311), (350, 322), (600, 350) }.Select(point => (VolumeFlow.FromLitersPerHour(point.Item1), InventedCar.Kpa(point.Item2)))]);

    private static FuelSystem Returnless(FuelSystem like, Pump pump)
    {
        IFlowLoss[] parts = [.. InventedCar.Plumbing.Supply];
        return FuelSystem.Returnless(
            like.Demand,
            like.Injectors,
            Fixed.At(InventedCar.Kpa(400)),
            Two(pump),
            plumbing: Plumbing.Of(supply: [parts[0]], returnLine: InventedCar.Plumbing.ReturnLine, toRegulator: [parts[1], Own("to the regulator")]));
    }

    private static SecondStream Stream(Pump pump) => SecondStream.Of(
        "methanol",
        StreamFluid.Of(Fuel.Methanol),
        SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(390), InventedCar.Kpa(500), SprayNozzles.Water),
        InventedCar.Kpa(35),
        pump: pump);

    private static PumpParallel Two(PumpAssembly pump) => PumpParallel.Of(pump, pump);

    private static Line Own(string name, double rise = 0) => Line.Of(
        name, Length.FromMillimeters(8), Length.FromMeters(1.2), Roughness.DrawnTube, [Fitting.Bend90.Times(2)], Length.FromMeters(rise));

    private static Pump Wired(Feed feed, params double[] voltages) => Pump.Of(
        [
            .. voltages.Select(volts => PumpCurve.WithCurrent(
                "pump",
                InventedCar.Volt(volts),
                [.. Enumerable.Range(0, 6).Select(i => (
                    InventedCar.Kpa(150 * i * volts * volts / 182),
                    VolumeFlow.FromLitersPerHour((330 - (11 * i * i) - (11 * i)) * volts / 13.5),
                    ElectricCurrent.FromAmperes((5 + (1.6 * i)) * volts * volts / 182)))])),
        ],
        feed: feed);

    private static Feed Harness(string name, double metres) => Feed.Of(
        name,
        Conductor.Metric(Area.FromSquareMillimeters(2.5)),
        Length.FromMeters(metres),
        Length.FromMeters(2),
        Temperature.FromDegreesCelsius(60),
        Contact.Of("fuse and relay", ElectricResistance.FromMilliohms(6)));

    /// <summary>Where they are timed.</summary>
    public static OperatingPoint Point => _point;
}

/// <summary>A system and a plain one with as many pumps.</summary>
/// <param name="Name">What is not plain.</param>
/// <param name="Plain">The plain one.</param>
/// <param name="Built">The other.</param>
/// <param name="WithInjectors">True if the part is one of demand or injectors, so that these are timed with the circuit.</param>
internal sealed record BuiltPair(string Name, FuelSystem Plain, FuelSystem Built, bool WithInjectors = false);
