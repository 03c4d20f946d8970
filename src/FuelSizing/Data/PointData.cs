using FuelSizing.Points;

namespace FuelSizing.Data;

/// <summary>Where a result was solved: engine speed, boost, and what surrounds the fuel system.</summary>
public sealed record PointData : DataRecord
{
    /// <summary>Engine speed, revolutions of the crank a second.</summary>
    public required double SpeedRevolutionsPerSecond { get; init; }

    /// <summary>Manifold gauge pressure, negative under throttle.</summary>
    public required double BoostGaugePascals { get; init; }

    /// <summary>Ambient absolute pressure.</summary>
    public required double AmbientAbsolutePascals { get; init; }

    /// <summary>Ambient temperature.</summary>
    public required double AmbientKelvins { get; init; }

    /// <summary>Voltage at the injectors, and at the source of the pumps' wiring.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>Fuel in the rail.</summary>
    public required double RailFuelKelvins { get; init; }

    /// <summary>Fuel in the tank.</summary>
    public required double TankFuelKelvins { get; init; }

    /// <summary>Fuel at the pumps' inlet.</summary>
    public required double InletFuelKelvins { get; init; }

    /// <summary>Speed and boost in words.</summary>
    public required string Text { get; init; }

    private protected override string InOneLine => Text;

    internal static PointData Of(OperatingPoint point) => new()
    {
        SpeedRevolutionsPerSecond = point.Speed.RevolutionsPerSecond,
        BoostGaugePascals = point.Boost.Pascals,
        AmbientAbsolutePascals = point.Conditions.Atmosphere.Pressure.Pascals,
        AmbientKelvins = point.Conditions.Atmosphere.Temperature.Kelvins,
        SupplyVolts = point.Conditions.SupplyVoltage.Volts,
        RailFuelKelvins = point.Conditions.FuelTemperature.Kelvins,
        TankFuelKelvins = point.Conditions.TankTemperature.Kelvins,
        InletFuelKelvins = point.Conditions.InletTemperature.Kelvins,
        Text = point.ToString(),
    };
}
