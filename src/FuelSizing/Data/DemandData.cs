using FuelSizing.Engines;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>What the engine asks for, with every step from boost to fuel.</summary>
public sealed record DemandData : PartlyKnownData
{
    /// <summary>Which of the two estimates counts.</summary>
    public required DemandBasis Basis { get; init; }

    /// <summary>The demand that the parts are sized for.</summary>
    public required double FuelKilogramsPerSecond { get; init; }

    /// <summary>Fuel by air.</summary>
    public required double FromAirKilogramsPerSecond { get; init; }

    /// <summary>Fuel by power.</summary>
    public required double FromPowerKilogramsPerSecond { get; init; }

    /// <summary>How far the figure from power is over the one from air, as a share of the latter.</summary>
    public required double? DifferenceShare { get; init; }

    /// <summary>Air by speed-density.</summary>
    public required double AirKilogramsPerSecond { get; init; }

    /// <summary>Absolute pressure in the inlet manifold.</summary>
    public required double ManifoldAbsolutePascals { get; init; }

    /// <summary>Pressure ratio of the compressor.</summary>
    public required double PressureRatio { get; init; }

    /// <summary>At the compressor outlet.</summary>
    public required double CompressorOutletKelvins { get; init; }

    /// <summary>In the manifold.</summary>
    public required double ChargeKelvins { get; init; }

    /// <summary>Of the charge after the stated share of the fuel has evaporated in it.</summary>
    public required double EvaporatedKelvins { get; init; }

    /// <summary>Of the charge in the manifold.</summary>
    public required double ChargeKilogramsPerCubicMeter { get; init; }

    /// <summary>Estimated power at the crank before a belt-driven compressor takes its share.</summary>
    public required double GrossWatts { get; init; }

    /// <summary>Power that a belt-driven compressor takes from the crank.</summary>
    public required double CompressorDriveWatts { get; init; }

    /// <summary>What the engine's own friction takes.</summary>
    public required double FrictionWatts { get; init; }

    /// <summary>Estimated power at the crank.</summary>
    public required double BrakeWatts { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"fuel {FuelKilogramsPerSecond:G6} kg/s, air {AirKilogramsPerSecond:G6} kg/s, {BrakeWatts:G6} W");

    internal static DemandData Of(FuelDemand demand)
    {
        Gaps gaps = new();
        return new()
        {
            Basis = demand.Basis,
            FuelKilogramsPerSecond = demand.MassFlow.KilogramsPerSecond,
            FromAirKilogramsPerSecond = demand.FromAir.KilogramsPerSecond,
            FromPowerKilogramsPerSecond = demand.FromPower.KilogramsPerSecond,
            DifferenceShare = gaps.Figure(
                nameof(DifferenceShare), demand.Difference.DecimalFractions, Statement.Of("data.no-air", $"by air the engine burns no fuel to compare with")),
            AirKilogramsPerSecond = demand.AirMassFlow.KilogramsPerSecond,
            ManifoldAbsolutePascals = demand.ManifoldAbsolute.Pascals,
            PressureRatio = demand.PressureRatio,
            CompressorOutletKelvins = demand.CompressorOutletTemperature.Kelvins,
            ChargeKelvins = demand.ChargeTemperature.Kelvins,
            EvaporatedKelvins = demand.EvaporatedTemperature.Kelvins,
            ChargeKilogramsPerCubicMeter = demand.ChargeDensity.KilogramsPerCubicMeter,
            GrossWatts = (double)demand.GrossPower.Watts,
            CompressorDriveWatts = (double)demand.CompressorDrivePower.Watts,
            FrictionWatts = (double)demand.FrictionPower.Watts,
            BrakeWatts = (double)demand.BrakePower.Watts,
            NotKnown = gaps.Found,
        };
    }
}
