using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>Circuits with a part that not every car has, against a plain one with as many pumps, in turns of processor time.</summary>
internal static class BuiltContest
{
    private const int Turns = 31;

    private static SolvedCircuit _last;

    public static void Run()
    {
        Pump wired = Wired(Harness("feed", 5));
        Pump spliced = Wired(Harness("feed", 1).WithShared(Harness("shared", 4)));
        Pump converted = wired.WithConverter(VoltageConverter.Holding("converter", InventedCar.Volt(13.8), Ratio.FromPercent(88)));
        Pump DrivenBy(PumpKind kind) => wired.WithDrive(PumpDrive.Of(kind, ElectricResistance.FromMilliohms(200)));
        PumpAssembly Two(Pump pump) => PumpParallel.Of(pump, pump);
        PressureRegulator sloped = RisingRate.From(InventedCar.Kpa(300), 2, InventedCar.Kpa(10), InventedCar.Kpa(480))
            .WithFlow(RegulatorFlow.Rising(InventedCar.Kpa(12), VolumeFlow.FromLitersPerHour(150), VolumeFlow.FromLitersPerHour(60)));
        SurgeTank Tank(Pump lift) => SurgeTank.Of(
            Volume.FromLiters(1.4), lift, ReturnDestination.SurgeTank, [], InventedCar.Plumbing.Supply, InventedCar.Plumbing.ReturnLine);

        FuelSystem bare = InventedCar.System.With(InventedCar.Plumbing);
        FuelSystem two = bare.With(Two(wired));
        FuelSystem three = bare.With(PumpParallel.Of(wired, wired, wired));
        (string Name, FuelSystem Plain, FuelSystem Built)[] contests =
        [
            ("regulator that changes with flow", two, two.With(sloped)),
            ("pumps that share a feed", two, bare.With(Two(spliced))),
            ("pumps behind converters", two, bare.With(Two(converted))),
            ("displacement pumps", two, bare.With(Two(DrivenBy(PumpKind.Displacement)))),
            ("turbine pumps", two, bare.With(Two(DrivenBy(PumpKind.Turbine)))),
            ("pumps of unknown kind", two, bare.With(Two(DrivenBy(PumpKind.Unknown)))),
            ("a pump switched on by boost", two, bare.With(PumpParallel.Of(wired, SwitchedPump.Above(InventedCar.Kpa(20), InventedCar.Kpa(15), wired)))),
            ("surge tank", three, two.With(Tank(wired))),
            ("surge tank, shared feed, slope", three, bare.With(Two(spliced)).With(sloped).With(Tank(wired))),
        ];
        foreach ((string name, FuelSystem plain, FuelSystem built) in contests)
        {
            PointDemand demand = plain.Parts.DemandAt(OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50)));
            PointDemand again = built.Parts.DemandAt(OperatingPoint.At(InventedCar.Rpm(6000), InventedCar.Kpa(50)));
            void Plain() => _last = plain.Parts.CircuitAt(demand);
            void Built() => _last = built.Parts.CircuitAt(again);
            int repeats = RepeatsOf(Plain);
            int fewer = RepeatsOf(Built);
            double[] ours = new double[Turns];
            double[] theirs = new double[Turns];
            for (int turn = 0; turn < Turns; turn++)
            {
                ours[turn] = ThreadClock.Of(Built, fewer) / fewer * 1e6;
                theirs[turn] = ThreadClock.Of(Plain, repeats) / repeats * 1e6;
            }

            Console.WriteLine(FormattableString.Invariant(
                $"{name}: {Medians.Of(ours):F1} µs a circuit, plain {Medians.Of(theirs):F1} µs; {Medians.Of([.. ours.Zip(theirs, (a, b) => a / b)]):F2} times as long"));
        }
    }

    // Ten milliseconds a turn, after half a second that lets the runtime compile for good.
    private static int RepeatsOf(Action run)
    {
        double spent = 0;
        int count = 0;
        for (; spent < 0.5; count++)
        {
            spent += ThreadClock.Of(run, 1);
        }

        return Math.Max(1, (int)(0.01 * count / spent));
    }

    private static Pump Wired(Feed feed) => Pump.Of(
        [
            .. new[] { 10.0, 12, 14 }.Select(volts => PumpCurve.WithCurrent(
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
}
