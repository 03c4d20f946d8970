using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>The fuel an engine burns at one point, with every step from boost to fuel.</summary>
public sealed class FuelDemand
{
    private readonly DemandState<Real> _state;

    internal FuelDemand(in DemandState<Real> state, DemandBasis basis) => (_state, Basis) = (state, basis);

    /// <summary>Which estimate <see cref="MassFlow"/> follows.</summary>
    public DemandBasis Basis { get; }

    /// <summary>Absolute pressure in the inlet manifold: ambient + boost.</summary>
    public Pressure ManifoldAbsolute => Pressure.FromPascals(_state.ManifoldAbsolute.Value);

    /// <summary>Pressure ratio of the compressor: (manifold + cooler loss)/ambient, 1 under throttle.</summary>
    public double PressureRatio => _state.PressureRatio;

    /// <summary>At the compressor outlet: T_2 = T_1 (1 + (r^((γ−1)/γ) − 1)/η_c), γ = 1.4.</summary>
    public Temperature CompressorOutletTemperature => Temperature.FromKelvins(_state.OutletTemperature.Value);

    /// <summary>In the manifold: T_3 = T_2 − ε (T_2 − T_c).</summary>
    public Temperature ChargeTemperature => Temperature.FromKelvins(_state.ChargeTemperature.Value);

    /// <summary>Of the charge in the manifold: ρ = p/(R T).</summary>
    public Density ChargeDensity => Density.FromKilogramsPerCubicMeter(_state.ChargeDensity.Value);

    /// <summary>
    /// Of the charge after the stated share of the fuel has evaporated in it: T_4 = T_3 − x_e h_v/(AFR c_p); <see cref="ChargeTemperature"/> where none is
    /// stated (<see cref="FuelDemandModel.WithEvaporation"/>).
    /// </summary>
    public Temperature EvaporatedTemperature => Temperature.FromKelvins(_state.EvaporatedTemperature.Value);

    /// <summary>Air by speed-density: ṁ = VE · ρ · V · n/k, k turns of the crank to a cycle, ρ at <see cref="EvaporatedTemperature"/>.</summary>
    public MassFlow AirMassFlow => MassFlow.FromKilogramsPerSecond(_state.AirMassFlow.Value);

    /// <summary>Power that a belt-driven compressor takes from the crank: ṁ_a c_p (T_2 − T_1)/η_b; else zero.</summary>
    public Power CompressorDrivePower => Power.FromWatts(_state.DrivePower.Value);

    /// <summary>What the engine's own friction takes at this speed, pumping and auxiliaries included.</summary>
    public Power FrictionPower => Power.FromWatts(_state.Friction.Value);

    /// <summary>
    /// Estimated power at the crank before a belt-driven compressor takes its share: (P_m + P_fr) δ − P_fr, with δ the charge density
    /// against that of the measured pull and P_fr the friction. Spark retard and exhaust back-pressure are not in it.
    /// </summary>
    public Power GrossPower => Power.FromWatts(_state.GrossPower.Value);

    /// <summary>Estimated power at the crank: <see cref="GrossPower"/> less <see cref="CompressorDrivePower"/>.</summary>
    public Power BrakePower => Power.FromWatts(_state.BrakePower.Value);

    /// <summary>Fuel from power: P_g b. What a belt takes is burnt for too, so that it does not fall where the belt takes more.</summary>
    public MassFlow FromPower => MassFlow.FromKilogramsPerSecond(_state.FromPower.Value);

    /// <summary>Fuel from air: ṁ_air/(λ · AFR).</summary>
    public MassFlow FromAir => MassFlow.FromKilogramsPerSecond(_state.FromAir.Value);

    /// <summary>
    /// How far the figure from power is over (or under) the one from air, as a share of the latter. Over 15 % either way
    /// at full load shows that an input does not fit the others.
    /// </summary>
    public Ratio Difference =>
        Ratio.FromDecimalFractions((_state.FromPower.Value / _state.FromAir.Value) - 1);

    /// <summary>The demand that the parts are sized for, by <see cref="Basis"/>.</summary>
    public MassFlow MassFlow => MassFlow.FromKilogramsPerSecond(KilogramsPerSecond);

    /// <summary>Fuel, air and power.</summary>
    /// <returns>For instance <c>fuel 20.4 g/s, air 247.0 g/s, 221 kW</c>.</returns>
    public override string ToString() =>
        $"fuel {Readable.Of(MassFlow)}, air {Readable.Of(AirMassFlow)}, {Readable.Of(BrakePower)}";

    internal double KilogramsPerSecond => Chosen(_state, Basis);

    /// <summary>The fuel that the parts are sized for, kg/s.</summary>
    internal static double Chosen(in DemandState<Real> state, DemandBasis basis) => basis switch
    {
        DemandBasis.Air => state.FromAir,
        DemandBasis.Power => state.FromPower,
        _ => Real.Max(state.FromAir, state.FromPower),
    };

    /// <summary>What the demand would be if no fuel evaporated in the charge, as a share of it: 1 where no evaporation is stated.</summary>
    internal static double ShareWithoutEvaporation(in DemandState<Real> state, DemandBasis basis)
    {
        Real air = state.FromAir * state.EvaporatedTemperature / state.ChargeTemperature;
        return state.EvaporatedTemperature < state.ChargeTemperature ? Chosen(state with { FromAir = air }, basis) / Chosen(state, basis) : 1;
    }

    internal double ManifoldPascals => _state.ManifoldAbsolute;
}

/// <summary>Which of the two estimates of fuel demand the parts are sized for.</summary>
public enum DemandBasis
{
    /// <summary>The larger of the two at each point: the cautious choice.</summary>
    Larger = 0,

    /// <summary>Air by speed-density ÷ (lambda × stoichiometric ratio).</summary>
    Air = 1,

    /// <summary>Power × BSFC.</summary>
    Power = 2,
}
