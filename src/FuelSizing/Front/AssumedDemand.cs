using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing;

/// <summary>Demand models of which one estimate is known, power or air, and the other is fitted to it at a point.</summary>
/// <remarks>
/// The model asks for a pull, a volumetric efficiency and a displacement. What is not known of them is chosen so that both estimates of fuel agree at the
/// point: then no figure that a result shows is unlike what the fuel says. Both are proportional to what is fitted, so one probe of the model gives it.
/// </remarks>
internal static class AssumedDemand
{
    private static readonly RotationalSpeed Slowest = RotationalSpeed.FromRevolutionsPerMinute(100);
    private static readonly RotationalSpeed Fastest = RotationalSpeed.FromRevolutionsPerMinute(25_000);

    /// <summary>An engine that makes a power at a point.</summary>
    /// <param name="power">At the crank.</param>
    /// <param name="engine">None where it was not given.</param>
    /// <param name="injectors">As many cylinders has an engine that was not given.</param>
    /// <param name="induction">Any: the pull is fitted to it.</param>
    /// <param name="consumption">Fuel, lambda and BSFC.</param>
    /// <param name="speed">Of the point.</param>
    /// <param name="boost">Of the point.</param>
    /// <param name="air">Of the point.</param>
    public static FuelDemandModel FromPower(
        Power power,
        Engine? engine,
        int injectors,
        Induction induction,
        FuelConsumption consumption,
        RotationalSpeed speed,
        Pressure boost,
        Atmosphere air)
    {
        Engine probed = engine ?? EngineOf(1, injectors, speed);
        FuelDemand probe = ModelOf(probed, induction, 1, power, consumption, DemandBasis.Power).At(speed, boost, air);
        double pulled = (double)power.Watts / (double)probe.GrossPower.Watts;
        double asPower = probe.FromPower / probe.FromAir * pulled;
        return ModelOf(
            engine ?? EngineOf(Math.Clamp(asPower, 0.02, 30), injectors, speed),
            induction,
            engine is null ? 1 : Math.Clamp(asPower, 0.2, 1.5),
            Power.FromWatts((double)power.Watts * pulled),
            consumption,
            DemandBasis.Power);
    }

    /// <summary>An engine that draws air at a point.</summary>
    /// <param name="engine">Its size.</param>
    /// <param name="volumetricEfficiency">At the point.</param>
    /// <param name="induction">Which makes the charge hot or dense.</param>
    /// <param name="consumption">Fuel, lambda and BSFC.</param>
    /// <param name="speed">Of the point.</param>
    /// <param name="boost">Of the point.</param>
    /// <param name="air">Of the point.</param>
    public static FuelDemandModel FromAir(
        Engine engine,
        Ratio volumetricEfficiency,
        Induction induction,
        FuelConsumption consumption,
        RotationalSpeed speed,
        Pressure boost,
        Atmosphere air)
    {
        double efficiency = volumetricEfficiency.DecimalFractions;
        Power probed = Power.FromKilowatts(10);
        FuelDemand probe = ModelOf(engine, induction, efficiency, probed, consumption, DemandBasis.Air).At(speed, boost, air);
        Power pulled = Power.FromKilowatts(Math.Min((double)probed.Kilowatts * (probe.FromAir / probe.FromPower), 3000));
        return ModelOf(engine, induction, efficiency, pulled, consumption, DemandBasis.Air);
    }

    private static Engine EngineOf(double litres, int injectors, RotationalSpeed speed) =>
        Engine.Of("engine", Volume.FromLiters(litres), Math.Min(injectors, 24), EngineCycle.FourStroke, speed);

    // With a mechanical efficiency of 100 % there is no friction, so that power grows with the density of the charge alone.
    private static FuelDemandModel ModelOf(
        Engine engine, Induction induction, double volumetricEfficiency, Power pull, FuelConsumption consumption, DemandBasis basis)
    {
        Ratio efficiency = Ratio.FromDecimalFractions(volumetricEfficiency);
        return FuelDemandModel.Of(
            engine,
            induction,
            VolumetricEfficiency.Of((Slowest, efficiency), (Fastest, efficiency)),
            PowerCurve.AtCrank(Atmosphere.Standard, (Slowest, pull), (Fastest, pull)),
            Ratio.FromPercent(100),
            consumption,
            basis);
    }
}
