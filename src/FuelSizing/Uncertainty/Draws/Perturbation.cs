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

    /// <summary>The system with the drawn inputs.</summary>
    public readonly FuelSystem Of(FuelSystem nominal)
    {
        FuelDemandModel demand = nominal.Demand;
        FuelConsumption consumption = demand.Consumption;
        if (BrakeSpecificFuelConsumption is { } specific)
        {
            consumption = consumption.Using(UnitsNet.BrakeSpecificFuelConsumption.FromKilogramsPerJoule(specific));
        }

        if (Fuel is { } blend)
        {
            consumption = consumption.With(blend);
        }

        Real flow = InjectorFlow ?? 1;
        if (Matching.Length > 0)
        {
            flow *= InjectorMatching.Mean<Real>(Matching);
        }

        FuelSystem system = nominal.With(
            demand.With(
                VolumetricEfficiency is { } factor
                    ? demand.VolumetricEfficiency.Scaled(factor)
                    : demand.VolumetricEfficiency,
                DrivetrainLoss is { } loss ? demand.MeasuredPower.WithLoss(loss) : demand.MeasuredPower,
                consumption),
            flow == 1 ? nominal.Injectors : nominal.Injectors.Scaled(flow),
            RegulatorOffset is { } offset ? nominal.Regulator.Off(offset) : nominal.Regulator);
        foreach ((Func<FuelSystem, double, FuelSystem> change, double value) in Changes)
        {
            system = change(system, value);
        }

        return system;
    }

    /// <summary>The conditions with the drawn inputs.</summary>
    public readonly Conditions Of(Conditions nominal) => nominal.With(
        nominal.Atmosphere.With(AmbientPascals ?? nominal.Atmosphere.Pascals, AmbientKelvins ?? nominal.Atmosphere.Kelvins),
        SupplyVolts is { } volts ? ElectricPotential.FromVolts(volts) : nominal.SupplyVoltage,
        FuelKelvins is { } kelvins ? Temperature.FromKelvins(kelvins) : nominal.FuelTemperature);

    /// <summary>A boost with the drawn inputs.</summary>
    public readonly Pressure Of(Pressure nominal) => Boost is { } factor ? nominal * factor : nominal;
}
