using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;

namespace FuelSizing.Controllers;

/// <summary>A controller that calculates its pulse: the air that it believes in, by its target and its injector data.</summary>
public abstract record CalculatingController : EngineController
{
    // Air that fills the displacement at 101.325 kPa and 15 °C is a load of 1.
    private static readonly double FullDensity =
        StandardAir.Density<Real>(StandardAir.SeaLevelPressure, StandardAir.SeaLevelTemperature);

    private readonly double _density;
    private readonly double _longest;

    private protected CalculatingController(ControllerData data)
    {
        ArgumentNullException.ThrowIfNull(data);
        Data = data;
        _density = data.Fuel.DensityAtKelvins(data.FuelTemperature.Kelvins);
        _longest = data.MaximumDutyCycle.DecimalFractions;
    }

    /// <summary>What it takes for true.</summary>
    public ControllerData Data { get; }

    /// <summary>Density that it takes for granted without a sensor of the fuel, kg/m³.</summary>
    internal double AssumedDensity => _density;

    internal sealed override ClosedLoop? Loop => Data.ClosedLoop;

    internal sealed override bool FollowsDifferential => Data.CorrectsForRailPressure;

    internal sealed override FuelWanted Want(in ControllerInput at)
    {
        (double air, bool isAtEnd) = AirAt(at);
        double load = air * at.RevolutionsPerCycle / (at.Speed * at.Displacement * FullDensity);
        double lambda = Data.Target.AtLoad(load);
        double ratio = Data.HasEthanolSensor ? at.StoichiometricRatio : Data.Fuel.AirFuelRatio;
        return new(FuelDemandFlow.FromAir<Real>(air, Combustion.AirFuelRatio<Real>(lambda, ratio)), lambda, air, isAtEnd);
    }

    internal sealed override PulseCommanded Command(in ControllerInput at, in FuelWanted wanted, double trim, double differential)
    {
        Injector injector = Data.Injector;
        double pressure = Data.CorrectsForRailPressure ? differential : Data.Differential.Pascals;
        double density = Data.HasEthanolSensor ? at.Density : _density;
        return PulseCommanded.For(
            at,
            wanted.Fuel * trim / density,
            injector.StaticAt(pressure, density),
            injector.DeadTime.Nearest(Data.FixedVoltage?.Volts ?? at.Volts, pressure),
            _longest * at.AvailableTime);
    }

    /// <summary>The air that it believes in, kg/s, and whether its sensor or table ends before what there is.</summary>
    private protected abstract (double Air, bool IsAtEnd) AirAt(in ControllerInput at);
}
