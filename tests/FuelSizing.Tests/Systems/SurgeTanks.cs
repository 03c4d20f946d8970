using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Invented surge tanks for the invented car. Nothing here is the expected value of a test of correctness.</summary>
internal static class SurgeTanks
{
    /// <summary>A lift pump's curve, its flow scaled: much flow against little pressure.</summary>
    public static PumpCurve LiftCurve(double scale = 1, double volts = 13.5) => PumpCurve.WithCurrent(
        "lift pump L",
        Tests.Wren.Volt(volts),
        (Kpa(0), Litres(232 * scale), Amperes(2.7)),
        (Kpa(20), Litres(208 * scale), Amperes(3.1)),
        (Kpa(45), Litres(171 * scale), Amperes(3.6)),
        (Kpa(75), Litres(104 * scale), Amperes(4.3)),
        (Kpa(95), VolumeFlow.Zero, Amperes(4.9)));

    public static IFlowLoss[] Suction => [Filter.Of("lift strainer", Litres(310), Kpa(3)), Hose("lift suction", 12, 0.5, -0.1)];

    public static IFlowLoss[] LiftLine => [Hose("lift line", 9, 2.3, 0.25)];

    public static IFlowLoss[] Overflow => [Hose("overflow line", 8, 2.1, 0.05)];

    /// <summary>A lift pump alone: no lines, no wiring.</summary>
    public static SurgeTank Bare(double litres = 1.3, double scale = 1, ReturnDestination to = ReturnDestination.SurgeTank) =>
        SurgeTank.Of(Volume.FromLiters(litres), Pump.From(LiftCurve(scale)), to);

    /// <summary>All that can be judged is given.</summary>
    public static SurgeTank Everything { get; } = SurgeTank.Of(
        Volume.FromLiters(1.3),
        Pump.Of([LiftCurve(0.9, 12), LiftCurve()], feed: PumpAssemblyTests.FeedOf(4, 12)),
        ReturnDestination.MainTank,
        Suction,
        LiftLine,
        Overflow,
        Kpa(70));

    /// <summary>The car with a surge tank.</summary>
    public static FuelSystem Wren(SurgeTank tank, double pump = 0.8, SizingLimits? limits = null) =>
        Tests.Wren.System(pump: pump, limits: limits).With(tank);

    public static Line Hose(string name, double millimetres, double metres, double rise = 0) => Line.Of(
        name, Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.RubberHose, [Fitting.Elbow90.Times(2)], Length.FromMeters(rise));

    public static VolumeFlow Litres(double perHour) => VolumeFlow.FromLitersPerHour(perHour);

    public static Pressure Kpa(double pressure) => Tests.Wren.Kpa(pressure);

    private static ElectricCurrent Amperes(double current) => ElectricCurrent.FromAmperes(current);
}
