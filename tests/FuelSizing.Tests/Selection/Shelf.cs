using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Tests.Selection;

/// <summary>Invented parts and stages for tests of choosing. Nothing here is the expected value of a test of correctness.</summary>
internal static class Shelf
{
    public static Stage Petrol { get; } = Stage.Of("0.6 bar on petrol", Wren.System(), Wren.At(900, -0.6), Wren.At(5000, 0.6), Wren.At(6800, 0.6));

    public static Stage Ethanol { get; } = Stage.Of(
        "0.9 bar on E85",
        Wren.System(consumption: FuelConsumption.Of(
            Fuel.E85, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(440))),
        Wren.At(900, -0.6),
        Wren.At(6800, 0.9));

    public static Candidate<Injector> Injector(double millilitresPerMinute, decimal? cost) =>
        Candidate.Of($"injector {millilitresPerMinute:0}", Wren.InjectorOf(millilitresPerMinute), cost);

    public static Candidate<PumpAssembly> Pump(double scale, decimal? cost) =>
        Candidate.Of<PumpAssembly>($"pump × {scale:0.00}", FuelSizing.Pumps.Pump.From(Wren.PumpOf(scale)), cost);

    public static Candidate<PressureRegulator> Regulator(PressureRegulator regulator, decimal? cost) =>
        Candidate.Of(regulator.Description, regulator, cost);

    public static IReadOnlyList<Candidate<PressureRegulator>> Regulators { get; } =
    [
        Regulator(Fixed.At(Wren.Kpa(300)), 40),
        Regulator(ManifoldReferenced.From(Wren.Kpa(300)), 60),
        Regulator(ManifoldReferenced.From(Wren.Kpa(400)), 75),
        Regulator(RisingRate.From(Wren.Kpa(300), 4, Pressure.FromBars(0.1), Wren.Kpa(600)), 120),
    ];
}
