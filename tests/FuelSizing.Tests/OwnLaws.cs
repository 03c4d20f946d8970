using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>A regulator's law with one figure: one for one above it.</summary>
internal sealed record OwnSetting(double Kilopascals) : IRegulatorLaw
{
    public Statement Text => Statement.Of("own.regulator", $"1:1 from {Wren.Kpa(Kilopascals)}");

    public IReadOnlyList<Pressure> Kinks => [];

    public Pressure RailGauge(Pressure boost) => Wren.Kpa(Kilopascals) + boost;
}

/// <summary>A loss's law with one figure: in proportion to the flow.</summary>
internal sealed record OwnLoss(double Kilopascals) : IFlowLossLaw
{
    public string Name => "sieve";

    public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(310);

    public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity) => Wren.Kpa(Kilopascals) * (flow / VolumeFlow.FromLitersPerHour(100));
}

/// <summary>A controller's law with one figure: always the same pulse.</summary>
internal sealed record OwnPulse(double Milliseconds) : IControllerLaw
{
    public Statement Text => Statement.Of("own.controller", $"a pulse of {Wren.Ms(Milliseconds)}");

    public bool ReadsRailPressure => false;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> ManifoldKinks => [];

    public Duration? PulseAt(ControllerReading at) => Wren.Ms(Milliseconds);
}

/// <summary>A law of demand with one figure: a factor on the library's estimate.</summary>
internal sealed record OwnDemand(double Factor) : IFuelDemandLaw
{
    public Statement Text => Statement.Of("own.demand", $"{Factor:0.00} times the library's estimate");

    public bool FollowsEstimate => true;

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> BoostKinks => [];

    public MassFlow FuelAt(DemandPlace place) => place.Estimate.MassFlow * Factor;
}

/// <summary>A pump's law with one figure: its flow against no rise at 13.5 V.</summary>
internal sealed record OwnPump(double LitersPerHour) : IPumpLaw
{
    public string Name => "own pump";

    public ElectricPotential MinimumVoltage => Wren.Volt(10);

    public ElectricPotential MaximumVoltage => Wren.Volt(15);

    public Pressure MaximumRise(ElectricPotential voltage) => Wren.Kpa(750) * Math.Pow(voltage.Volts / 13.5, 2);

    public VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage) =>
        VolumeFlow.FromLitersPerHour(LitersPerHour) * (voltage.Volts / 13.5) * (1 - (rise / MaximumRise(voltage)));

    public ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage) => null;
}
