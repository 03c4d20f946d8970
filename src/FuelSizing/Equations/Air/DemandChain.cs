using System.Runtime.CompilerServices;
using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The engine, as the demand chain sees it: SI numbers that do not change along a sweep.</summary>
/// <param name="Displacement">m³.</param>
/// <param name="RevolutionsPerCycle">2 for four strokes, 1 for two.</param>
/// <param name="CompressorEfficiency">Isentropic.</param>
/// <param name="CoolerEffectiveness">0 to 1.</param>
/// <param name="CoolerLoss">Pa.</param>
/// <param name="BeltShare">1 where the crank drives the compressor, else 0.</param>
/// <param name="DriveEfficiency">Mechanical, of the belt.</param>
/// <param name="MeasuredDensity">Of the air of the measured pull, kg/m³.</param>
/// <param name="StatedFriction">Friction power at <paramref name="StatedSpeed"/>, W.</param>
/// <param name="StatedSpeed">The speed at which the mechanical efficiency of the measured pull is stated, rev/s.</param>
/// <param name="BrakeSpecificFuelConsumption">kg/J.</param>
/// <param name="AirFuelRatio">As burnt, kg/kg.</param>
/// <param name="Coolant">Temperature of what cools the charge, K; 0 where that is the ambient air.</param>
/// <param name="EvaporatedShare">Share of the fuel that evaporates in the charge.</param>
/// <param name="HeatOfVaporisation">Of the fuel, J/kg.</param>
internal readonly record struct DemandConstants<T>(
    T Displacement,
    Divisor<T> RevolutionsPerCycle,
    Divisor<T> CompressorEfficiency,
    T CoolerEffectiveness,
    T CoolerLoss,
    T BeltShare,
    Divisor<T> DriveEfficiency,
    Divisor<T> MeasuredDensity,
    T StatedFriction,
    T StatedSpeed,
    T BrakeSpecificFuelConsumption,
    Divisor<T> AirFuelRatio,
    T Coolant,
    T EvaporatedShare = default,
    T HeatOfVaporisation = default)
    where T : struct, IReal<T>
{
    /// <summary>False where no share is stated: then the charge is not cooled by the fuel, and nothing is calculated for it.</summary>
    public bool Evaporates { get; init; } = true;
}

/// <summary>One point at which demand is wanted, in SI numbers.</summary>
/// <param name="Speed">rev/s.</param>
/// <param name="Boost">Manifold gauge pressure, Pa.</param>
/// <param name="Ambient">Absolute, Pa.</param>
/// <param name="AmbientTemperature">K.</param>
/// <param name="VolumetricEfficiency">At this speed.</param>
/// <param name="MeasuredPower">Crank power of the measured pull at this speed, W.</param>
internal readonly record struct DemandInput<T>(
    T Speed, T Boost, T Ambient, T AmbientTemperature, T VolumetricEfficiency, T MeasuredPower)
    where T : struct, IReal<T>;

/// <summary>Every step from boost to fuel, in SI numbers.</summary>
/// <param name="ManifoldAbsolute">Pa.</param>
/// <param name="PressureRatio">Of the compressor.</param>
/// <param name="OutletTemperature">Behind the compressor, K.</param>
/// <param name="ChargeTemperature">In the manifold, K.</param>
/// <param name="ChargeDensity">In the manifold, kg/m³, before fuel evaporates in it.</param>
/// <param name="EvaporatedTemperature">Of the charge after that, K.</param>
/// <param name="AirMassFlow">kg/s.</param>
/// <param name="DrivePower">Taken from the crank, W.</param>
/// <param name="Friction">Friction power, W.</param>
/// <param name="GrossPower">At the crank, the compressor drive's share included, W.</param>
/// <param name="BrakePower">At the crank, W.</param>
/// <param name="FromPower">Fuel, kg/s.</param>
/// <param name="FromAir">Fuel, kg/s.</param>
internal readonly record struct DemandState<T>(
    T ManifoldAbsolute,
    T PressureRatio,
    T OutletTemperature,
    T ChargeTemperature,
    T ChargeDensity,
    T EvaporatedTemperature,
    T AirMassFlow,
    T DrivePower,
    T Friction,
    T GrossPower,
    T BrakePower,
    T FromPower,
    T FromAir)
    where T : struct, IReal<T>;

/// <summary>The charge in the manifold, in SI numbers.</summary>
/// <param name="ManifoldAbsolute">Pa.</param>
/// <param name="PressureRatio">Of the compressor.</param>
/// <param name="OutletTemperature">Behind the compressor, K.</param>
/// <param name="ChargeTemperature">In the manifold, K.</param>
internal readonly record struct ChargeState<T>(T ManifoldAbsolute, T PressureRatio, T OutletTemperature, T ChargeTemperature)
    where T : struct, IReal<T>;

/// <summary>What the charge brings and takes, in SI numbers.</summary>
/// <param name="ChargeDensity">In the manifold, kg/m³, before fuel evaporates in it.</param>
/// <param name="EvaporatedTemperature">Of the charge after that, K.</param>
/// <param name="AirMassFlow">kg/s.</param>
/// <param name="DrivePower">Taken from the crank, W.</param>
/// <param name="Friction">Friction power, W.</param>
/// <param name="GrossPower">At the crank, the compressor drive's share included, W.</param>
/// <param name="BrakePower">At the crank, W.</param>
/// <param name="FromPower">Fuel, kg/s.</param>
/// <param name="FromAir">Fuel, kg/s.</param>
internal readonly record struct BurningState<T>(
    T ChargeDensity, T EvaporatedTemperature, T AirMassFlow, T DrivePower, T Friction, T GrossPower, T BrakePower, T FromPower, T FromAir)
    where T : struct, IReal<T>;

/// <summary>The open-form chain from an operating point to fuel demand: one text for one point and for batches.</summary>
internal static class DemandChain
{
    /// <summary>Evaluates the chain: manifold → charge → air → power → fuel, both ways.</summary>
    public static DemandState<T> Evaluate<T>(in DemandConstants<T> engine, in DemandInput<T> point)
        where T : struct, IReal<T>
    {
        ChargeState<T> charge = Charge(engine, point.Boost, point.Ambient, point.AmbientTemperature);
        BurningState<T> burning = Burn(engine, point, charge.ManifoldAbsolute, charge.OutletTemperature, charge.ChargeTemperature);
        return new(
            charge.ManifoldAbsolute,
            charge.PressureRatio,
            charge.OutletTemperature,
            charge.ChargeTemperature,
            burning.ChargeDensity,
            burning.EvaporatedTemperature,
            burning.AirMassFlow,
            burning.DrivePower,
            burning.Friction,
            burning.GrossPower,
            burning.BrakePower,
            burning.FromPower,
            burning.FromAir);
    }

    /// <summary>The same where the liquid of a second stream evaporates in the charge too: more air, and fuel for it.</summary>
    /// <param name="state">Without it.</param>
    /// <param name="share">Of the liquid that evaporates.</param>
    /// <param name="heat">Of its vaporisation, J/kg.</param>
    /// <param name="flow">Of the liquid, kg/s.</param>
    public static DemandState<T> AlsoCooled<T>(in DemandState<T> state, T share, T heat, T flow)
        where T : struct, IReal<T>
    {
        T gain = ChargeCooling.AirGain(state.EvaporatedTemperature, share, heat, flow, state.AirMassFlow);
        T drive = state.DrivePower * gain;
        return state with
        {
            EvaporatedTemperature = state.EvaporatedTemperature / gain,
            AirMassFlow = state.AirMassFlow * gain,
            DrivePower = drive,
            BrakePower = BoostedPower.Brake(state.GrossPower, drive),
            FromAir = state.FromAir * gain,
        };
    }

    /// <summary>The first half: manifold → charge.</summary>
    public static ChargeState<T> Charge<T>(in DemandConstants<T> engine, T boost, Divisor<T> ambient, T ambientTemperature)
        where T : struct, IReal<T>
    {
        T manifold = ambient.Value + boost;
        T ratio = PressureRatio(engine, manifold, ambient);
        (T outlet, T charge) = Temperatures(engine, Compression.IsentropicRatio(ratio), ambientTemperature);
        return new(manifold, ratio, outlet, charge);
    }

    /// <summary>Of the first half: manifold → pressure ratio of the compressor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T PressureRatio<T>(in DemandConstants<T> engine, T manifold, Divisor<T> ambient)
        where T : struct, IReal<T> => Compression.PressureRatio(manifold, engine.CoolerLoss, ambient);

    /// <summary>Of the first half: isentropic temperature ratio → temperatures behind compressor and cooler, K.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (T Outlet, T Charge) Temperatures<T>(in DemandConstants<T> engine, T isentropicRatio, T ambientTemperature)
        where T : struct, IReal<T>
    {
        T outlet = Compression.Heated(ambientTemperature, isentropicRatio, engine.CompressorEfficiency);
        T coolant = T.IfLess(0, engine.Coolant, engine.Coolant, ambientTemperature);
        return (outlet, Compression.CooledTemperature(outlet, coolant, engine.CoolerEffectiveness));
    }

    /// <summary>The second half: charge → air → power → fuel, both ways.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BurningState<T> Burn<T>(
        in DemandConstants<T> engine, in DemandInput<T> point, T manifold, T outlet, T charge)
        where T : struct, IReal<T>
    {
        T density = StandardAir.Density(manifold, charge);

        // Air alone: the power of the measured pull was made with its own fuel's evaporation in it.
        T evaporated = engine.Evaporates ? ChargeCooling.Temperature(charge, engine.EvaporatedShare, engine.HeatOfVaporisation, engine.AirFuelRatio) : charge;
        T air = EngineAir.MassFlow(
            point.VolumetricEfficiency,
            engine.Evaporates ? StandardAir.Density(manifold, evaporated) : density,
            engine.Displacement,
            point.Speed,
            engine.RevolutionsPerCycle);
        T drive = engine.BeltShare
            * Compression.DrivePower(air, point.AmbientTemperature, outlet, engine.DriveEfficiency);
        T ratio = density / engine.MeasuredDensity;
        T friction = EngineFriction.AtSpeed(engine.StatedFriction, engine.StatedSpeed, point.Speed);

        // What the compressor's belt takes is burnt for too: fuel follows the power before it.
        T gross = BoostedPower.Gross(point.MeasuredPower, friction, ratio);
        return new(
            density,
            evaporated,
            air,
            drive,
            friction,
            gross,
            BoostedPower.Brake(gross, drive),
            FuelDemandFlow.FromPower(gross, engine.BrakeSpecificFuelConsumption),
            FuelDemandFlow.FromAir(air, engine.AirFuelRatio));
    }
}
