using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Tests.Checks;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Wren;

namespace FuelSizing.Extensions.Tests;

/// <summary>A spring in two steps: one for one, and 2.5 for one above 80 kPa of boost.</summary>
internal sealed record SpringInSteps : IRegulatorLaw
{
    public Statement Text => Statement.Of("own.regulator.steps", $"1:1 up to {Kpa(80):boost} of boost, 2.5:1 above");

    public IReadOnlyList<Pressure> Kinks => [Kpa(80)];

    public Pressure RailGauge(Pressure boost) => Kpa(300 + boost.Kilopascals + (1.5 * Math.Max(0, boost.Kilopascals - 80)));
}

/// <summary>A curve without any kink: rising faster the more boost there is.</summary>
internal sealed record CurvedSetting : IRegulatorLaw
{
    public Statement Text => Statement.Of("own.regulator.curve", $"a curve from {Kpa(300)} at no boost");

    public IReadOnlyList<Pressure> Kinks => [];

    public Pressure RailGauge(Pressure boost) => Kpa(300 + boost.Kilopascals + (0.002 * boost.Kilopascals * boost.Kilopascals));
}

/// <summary>The library's manifold-referenced regulator, written as a law.</summary>
internal sealed record OneForOne : IRegulatorLaw
{
    public Statement Text => Statement.Of("own.regulator.one-for-one", $"1:1 from {Kpa(300)}");

    public IReadOnlyList<Pressure> Kinks => [];

    public Pressure RailGauge(Pressure boost) => Pressure.FromPascals(300e3 + boost.Pascals);
}

/// <summary>A cooler, measured at 200 L/h: with the square of the flow and with density.</summary>
internal sealed record FuelCooler : IFlowLossLaw
{
    public string Name => "fuel cooler";

    public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(300);

    public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity)
    {
        double share = flow / VolumeFlow.FromLitersPerHour(200);
        return Kpa(12 * share * share) * (density / Density.FromKilogramsPerCubicMeter(745));
    }
}

/// <summary>A pump whose flow falls straight with the rise; rises and deadhead with the square of the voltage.</summary>
internal sealed record StraightPump : IPumpLaw
{
    public string Name => "straight pump";

    public ElectricPotential MinimumVoltage => Volt(9);

    public ElectricPotential MaximumVoltage => Volt(15);

    public Pressure MaximumRise(ElectricPotential voltage) => Kpa(750) * (voltage.Volts / 13.5) * (voltage.Volts / 13.5);

    public VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage) =>
        VolumeFlow.FromLitersPerHour(210) * (voltage.Volts / 13.5) * (1 - (rise / MaximumRise(voltage)));

    public ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage) =>
        ElectricCurrent.FromAmperes((4 * voltage.Volts / 13.5) + (0.008 * rise.Kilopascals));
}

/// <summary>The library's estimate, and up to 4 % more on boost.</summary>
internal sealed record RicherOnBoost : IFuelDemandLaw
{
    public Statement Text => Statement.Of("own.demand.richer", $"the library's estimate, {Percent(4)} more from {Kpa(50):boost} of boost on");

    public bool FollowsEstimate => true;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> BoostKinks => [Kpa(40), Kpa(50)];

    public MassFlow FuelAt(DemandPlace place) => place.Estimate.MassFlow * (1 + (0.04 * Math.Clamp((place.Boost.Kilopascals - 40) / 10, 0, 1)));
}

/// <summary>A plane over speed and manifold pressure, from a dynamometer; it knows nothing of the library's estimate.</summary>
internal sealed record MeasuredPlane : IFuelDemandLaw
{
    public Statement Text => Statement.Of("own.demand.plane", $"a plane over speed and manifold pressure");

    public bool FollowsEstimate => false;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> BoostKinks => [];

    public MassFlow FuelAt(DemandPlace place) => MassFlow.FromGramsPerSecond(
        1.5e-5 * place.Speed.RevolutionsPerMinute * (place.Boost + place.Atmosphere.Pressure).Kilopascals);
}

/// <summary>A pulse in proportion to manifold pressure, up to the end of its sensor; it does not read rail pressure.</summary>
internal sealed record PulseByManifold : IControllerLaw
{
    public Statement Text => Statement.Of("own.controller.map", $"a pulse in proportion to manifold pressure up to {Kpa(150)}");

    public bool ReadsRailPressure => false;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> ManifoldKinks => [Kpa(150)];

    public Duration? PulseAt(ControllerReading at) => at.Differential is null
        ? Ms(1 + (0.075 * Math.Min(150, at.ManifoldAbsolute.Kilopascals)))
        : throw new InvalidOperationException("It was given a pressure that it does not read.");
}

/// <summary>The same, corrected for the pressure that it reads; no data under 40 kPa absolute.</summary>
internal sealed record PulseByRail : IControllerLaw
{
    public Statement Text => Statement.Of("own.controller.rail", $"a pulse by manifold and rail pressure");

    public bool ReadsRailPressure => true;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> ManifoldKinks => [];

    public Duration? PulseAt(ControllerReading at) =>
        Ms(0.9 + (0.08 * at.ManifoldAbsolute.Kilopascals * Math.Sqrt(300 / Math.Max(50, at.Differential!.Value.Kilopascals))));
}

/// <summary>What needs no type of one's own: a fuel from a data sheet, an input by a function.</summary>
internal static class GoodParts
{
    public static Fuel RaceFuel { get; } = Fuel.Of(
            "oxygenated race fuel",
            ElementalComposition.OfMolecule(13, 26, 1),
            SpecificEnergy.FromMegajoulesPerKilogram(41.3),
            Density.FromKilogramsPerCubicMeter(752),
            CoefficientOfThermalExpansion.FromPerKelvin(1.15e-3))
        .WithViscosity((Temperature.FromDegreesCelsius(-20), KinematicViscosity.FromCentistokes(1.05)), (Temperature.FromDegreesCelsius(40), KinematicViscosity.FromCentistokes(0.55)))
        .WithReidVapourPressure(Kpa(52))
        .WithHeatOfVaporisation(SpecificEnergy.FromKilojoulesPerKilogram(410));

    /// <summary>Enough fuel must return to keep the rail cool.</summary>
    public static ReturnFlowForCooling Cooling { get; } = new(VolumeFlow.FromLitersPerHour(15));

    public static UncertainInput Condition { get; } = UncertainInput.Of(
        "condition of the pump",
        Percent(100),
        Distribution.Uniform(Percent(90), Percent(100)),
        (system, share) => system.With(((Pump)system.Pump).WithCondition(share)));
}
