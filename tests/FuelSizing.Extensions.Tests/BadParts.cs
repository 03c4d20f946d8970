using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;
using static FuelSizing.Tests.Wren;

namespace FuelSizing.Extensions.Tests;

/// <summary>A regulator by functions, each of which may be wrong.</summary>
internal sealed class RegulatorBy(Func<double, double> kilopascals, params double[] kinks) : IRegulatorLaw
{
    public Statement Text { get; init; } = Statement.Of("own.regulator.by", $"by a function");

    public IReadOnlyList<Pressure> Kinks => [.. kinks.Select(Kpa)];

    public Pressure RailGauge(Pressure boost) => Kpa(kilopascals(boost.Kilopascals));
}

/// <summary>A loss by a function of litres an hour.</summary>
internal sealed class LossBy(Func<double, double> kilopascals) : IFlowLossLaw
{
    public string Name => "loss by a function";

    public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(400);

    public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity) => Kpa(kilopascals(flow.LitersPerHour));
}

/// <summary>A pump by a function of rise (kPa) and voltage.</summary>
internal sealed class PumpBy(Func<double, double, double> litersPerHour) : IPumpLaw
{
    public string Name => "pump by a function";

    public ElectricPotential MinimumVoltage => Volt(10);

    public ElectricPotential MaximumVoltage => Volt(15);

    public Func<double, double>? Amperes { get; init; }

    public Pressure MaximumRise(ElectricPotential voltage) => Kpa(700);

    public VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage) => VolumeFlow.FromLitersPerHour(litersPerHour(rise.Kilopascals, voltage.Volts));

    public ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage) =>
        Amperes?.Invoke(rise.Kilopascals) is { } amperes && !double.IsNaN(amperes) ? ElectricCurrent.FromAmperes(amperes) : null;
}

/// <summary>A demand by a function of speed (rev/min), boost (kPa) and the library's estimate (g/s).</summary>
internal sealed class DemandBy(Func<double, double, double, double> gramsPerSecond) : IFuelDemandLaw
{
    public Statement Text { get; init; } = Statement.Of("own.demand.by", $"by a function");

    public bool FollowsEstimate { get; init; }

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> BoostKinks => [];

    public MassFlow FuelAt(DemandPlace place) =>
        MassFlow.FromGramsPerSecond(gramsPerSecond(place.Speed.RevolutionsPerMinute, place.Boost.Kilopascals, place.Estimate.MassFlow.GramsPerSecond));
}

/// <summary>A controller by a function of what it reads.</summary>
internal sealed class PulseBy(Func<ControllerReading, double> milliseconds) : IControllerLaw
{
    public Statement Text { get; init; } = Statement.Of("own.controller.by", $"by a function");

    public bool ReadsRailPressure { get; init; }

    public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

    public IReadOnlyList<Pressure> ManifoldKinks => [];

    public Duration? PulseAt(ControllerReading at) => milliseconds(at) is var pulse && double.IsNaN(pulse) ? null : Ms(pulse);
}

/// <summary>A check by a reading of the returned flow, in m³/s.</summary>
internal sealed class CheckBy(Part part, Func<double, CheckReading<Real>> read, string said = "returns a flow") : ICheck
{
    public Part Part => part;

    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Returned flow", LimitDirection.AtLeast, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    public Applicability AppliesTo(SystemParts parts) => Applicability.Judged;

    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        double returned = at.Returned is Real one ? one.Value : double.NaN;
        CheckReading<Real> reading = read(returned);
        return new(reading.Used.Value, reading.Allowed.Value, reading.Margin.Value, reading.BestMargin.Value);
    }

    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading) => Statement.Of("own.check-by", $"{said}");

    public Remedy? RemedyFor(RemedyTask task) => null;
}
