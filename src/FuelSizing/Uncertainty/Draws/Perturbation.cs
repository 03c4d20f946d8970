using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>One drawn set of inputs in SI numbers; what is not drawn stays as the nominal system has it.</summary>
internal struct Perturbation
{
    /// <summary>kg/J.</summary>
    public double? BrakeSpecificFuelConsumption { get; set; }

    /// <summary>Factor.</summary>
    public double? VolumetricEfficiency { get; set; }

    /// <summary>Share of crank power.</summary>
    public double? DrivetrainLoss { get; set; }

    /// <summary>Factor.</summary>
    public double? InjectorFlow { get; set; }

    /// <summary>A factor for each injector; empty where they are alike.</summary>
    public Real[] Matching { get; set; }

    /// <summary>Pa.</summary>
    public double? RegulatorOffset { get; set; }

    /// <summary>V.</summary>
    public double? SupplyVolts { get; set; }

    /// <summary>K.</summary>
    public double? FuelKelvins { get; set; }

    /// <summary>Pa.</summary>
    public double? AmbientPascals { get; set; }

    /// <summary>K.</summary>
    public double? AmbientKelvins { get; set; }

    /// <summary>Factor.</summary>
    public double? Boost { get; set; }

    /// <summary>The blend with its drawn ethanol content.</summary>
    public Fuel? Fuel { get; set; }

    /// <summary>Nothing drawn.</summary>
    public static Perturbation None => new() { Matching = [], Changes = [] };

    /// <summary>Changes that the inputs know themselves.</summary>
    public (Func<FuelSystem, double, FuelSystem> Change, double Value)[] Changes { get; set; }

    /// <summary>The parts of the system with the drawn inputs, and the checks that apply to it.</summary>
    public readonly (ICheck[] Checks, SystemParts Parts) Of(FuelSystem nominal)
    {
        SystemParts parts = nominal.Parts;
        if (Demand(parts.Demand) is var demand && !ReferenceEquals(demand, parts.Demand))
        {
            parts = parts.With(demand);
        }

        Real flow = InjectorFlow ?? 1;
        if (Matching.Length > 0)
        {
            flow *= InjectorMatching.Mean<Real>(Matching);
        }

        if (flow != 1)
        {
            parts = parts.With(parts.Injectors.Scaled(flow));
        }

        if (RegulatorOffset is { } offset)
        {
            parts = parts.With(parts.Regulator.Off(offset));
        }

        if (Changes.Length == 0)
        {
            return (nominal.Applicable, parts);
        }

        FuelSystem system = nominal.With(parts);
        foreach ((Func<FuelSystem, double, FuelSystem> change, double value) in Changes)
        {
            system = change(system, value);
        }

        return (system.Applicable, system.Parts);
    }

    /// <summary>The conditions with the drawn inputs.</summary>
    public readonly Conditions Of(Conditions nominal) => nominal.With(
        nominal.Atmosphere.With(AmbientPascals ?? nominal.Atmosphere.Pascals, AmbientKelvins ?? nominal.Atmosphere.Kelvins),
        SupplyVolts is { } volts ? ElectricPotential.FromVolts(volts) : nominal.SupplyVoltage,
        FuelKelvins is { } kelvins ? Temperature.FromKelvins(kelvins) : nominal.FuelTemperature);

    /// <summary>A boost with the drawn inputs.</summary>
    public readonly Pressure Of(Pressure nominal) => Boost is { } factor ? nominal * factor : nominal;

    private readonly FuelDemandModel Demand(FuelDemandModel nominal)
    {
        if ((VolumetricEfficiency, DrivetrainLoss, BrakeSpecificFuelConsumption, Fuel) is (null, null, null, null))
        {
            return nominal;
        }

        FuelConsumption consumption = nominal.Consumption;
        if (BrakeSpecificFuelConsumption is { } specific)
        {
            consumption = consumption.Using(UnitsNet.BrakeSpecificFuelConsumption.FromKilogramsPerJoule(specific));
        }

        return nominal.With(
            VolumetricEfficiency is { } factor ? nominal.VolumetricEfficiency.Scaled(factor) : nominal.VolumetricEfficiency,
            DrivetrainLoss is { } loss ? nominal.MeasuredPower.WithLoss(loss) : nominal.MeasuredPower,
            Fuel is { } blend ? consumption.With(blend) : consumption);
    }
}
