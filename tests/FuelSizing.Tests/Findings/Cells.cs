using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>A recorded row, cell by cell, so that a test may change one.</summary>
internal sealed record Cells
{
    public required RotationalSpeed Speed { get; init; }

    public Duration? Time { get; init; }

    public Pressure? Manifold { get; init; }

    public Pressure? Rail { get; init; }

    public Duration? Pulse { get; init; }

    public Ratio? Duty { get; init; }

    public double? Lambda { get; init; }

    public ElectricPotential? Volts { get; init; }

    public Power? Power { get; init; }

    public Torque? Torque { get; init; }

    public Temperature? Fuel { get; init; }

    public VolumeFlow? Flow { get; init; }

    public MassFlow? Mass { get; init; }

    public static Cells Of(RunRow row) => new()
    {
        Speed = row.Speed,
        Time = row.Time,
        Manifold = row.ManifoldAbsolute,
        Rail = row.RailGauge,
        Pulse = row.InjectorPulse,
        Duty = row.DutyCycle,
        Lambda = row.Lambda,
        Volts = row.BatteryVoltage,
        Power = row.Power,
        Torque = row.Torque,
        Fuel = row.FuelTemperature,
        Flow = row.FuelVolumeFlow,
        Mass = row.FuelMassFlow,
    };

    public RunRow Row(int line) => RunRow.Of(
        line, Speed, Time, Manifold, Rail, Pulse, Duty, Lambda, Volts, Power, Torque, Fuel, Flow, Mass);
}
