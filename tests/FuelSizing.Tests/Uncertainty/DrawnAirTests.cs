using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Air and boost that are drawn: what the engine cannot have is refused when the system is described, not while it is sampled.</summary>
public class DrawnAirTests
{
    private static readonly Conditions Day = Conditions.Of(
        Atmosphere.Of(Wren.Kpa(97), Temperature.FromDegreesCelsius(12)), Wren.Volt(13.2), Temperature.FromDegreesCelsius(31));

    /// <summary>
    /// Boost times its factor may be 400 kPa at most, and the manifold no emptier than 10 kPa absolute: 60 kPa under ambient is 72 kPa at a factor of 1.2, too much
    /// for a day of 80 kPa, though neither the factor on a day of 97 kPa nor the day at the factor 1 is.
    /// </summary>
    [Fact]
    public void AirAndBoost_ThatLeadOutTogether_AreRefusedBeforeAnythingIsDrawn()
    {
        UncertainInput boost = UncertainInput.BoostFactor(Uniform(0.9, 1.2));
        UncertainInput day = UncertainInput.AmbientPressure(Distribution.Uniform(Wren.Kpa(80), Wren.Kpa(100)));
        OperatingPoint throttled = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(-60), Day);
        foreach (UncertainInput[] alone in new UncertainInput[][] { [boost], [day], [boost, Flow], [Flow, day] })
        {
            Assert.Equal(16, UncertainSystem.Of(Car(), throttled, alone).MonteCarlo(Sampling.Of(16)).FuelFlow.Known);
        }

        foreach (UncertainInput[] both in new UncertainInput[][] { [boost, day], [day, boost], [Flow, day, UncertainWren.Air, boost] })
        {
            ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => UncertainSystem.Of(Car(), throttled, both));
            string names = string.Join(", ", both.Where(input => input != Flow).Select(input => input.Name));
            Assert.StartsWith($"inputs has {names} that lead out of what is calculated: ", refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Boost_OverWhatIsCalculated_IsRefused()
    {
        UncertainSystem High(double factor) => UncertainSystem.Of(Car(), Wren.At(3000, 3), UncertainInput.BoostFactor(Uniform(0.9, factor)));
        Assert.NotNull(High(1.33));
        Assert.StartsWith(
            "inputs has boost that lead out of what is calculated: boost is ",
            Assert.Throws<ArgumentOutOfRangeException>(() => High(1.34)).Message,
            StringComparison.Ordinal);
    }

    /// <summary>
    /// A displacement compressor that makes 393.6 kPa of 98 kPa of air into an engine that breathes 2 % worse than described: with a factor of 1.02 that is 401.5 kPa,
    /// over the 400 kPa that are calculated. At the nominal value of any of the three it is under 400 kPa, so only all three together lead out.
    /// </summary>
    [Fact]
    public void BoostOfABelt_ThatIsTooHighAtAllEndsTogether_IsRefused()
    {
        RotationalSpeed slowest = Wren.Rpm(5400), fastest = Wren.Rpm(6300);
        double Kilopascals(double liters, double ambient, double breathing) => Line(liters).PascalsAt(
            fastest.RevolutionsPerSecond,
            Dunnock.Demand(Dunnock.VolumetricEfficiency.Scaled(breathing)),
            Atmosphere.Of(Wren.Kpa(ambient), Temperature.FromDegreesCelsius(12))) / 1000;
        (double small, double large) = (1.0, 4.0);
        for (int halving = 0; halving < 40; halving++)
        {
            double middle = (small + large) / 2;
            (small, large) = Kilopascals(middle, 98, 0.98) < 393.6 ? (middle, large) : (small, middle);
        }

        DisplacementBoost line = Line(small);
        Assert.Equal(401.5, Kilopascals(small, 98, 0.98) * 1.02, 0.1);
        Assert.InRange(Kilopascals(small, 97, 0.98) * 1.02, 390, 399);
        Assert.InRange(Kilopascals(small, 98, 1) * 1.02, 380, 399);
        UncertainInput boost = UncertainInput.BoostFactor(Uniform(0.97, 1.02));
        UncertainInput day = UncertainInput.AmbientPressure(Distribution.Uniform(Wren.Kpa(92), Wren.Kpa(98)));
        UncertainInput breathing = UncertainInput.VolumetricEfficiencyFactor(Uniform(0.98, 1.03));
        UncertainInput warmth = UncertainInput.AmbientTemperature(
            Distribution.Uniform(Temperature.FromDegreesCelsius(11), Temperature.FromDegreesCelsius(13)));
        foreach (UncertainInput[] some in new UncertainInput[][] { [boost, day], [day, breathing], [breathing, boost], [warmth, boost, day], [breathing] })
        {
            Assert.Same(line, Along(some).Line);
        }

        foreach (UncertainInput[] all in new UncertainInput[][] { [boost, day, breathing], [breathing, warmth, boost, day], [day, Flow, breathing, boost] })
        {
            ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => Along(all));
            string names = string.Join(", ", all.Where(input => input != Flow).Select(input => input.Name));
            Assert.StartsWith($"inputs has {names} that lead out of what is calculated: ", refused.Message, StringComparison.Ordinal);
        }

        UncertainSystem Along(UncertainInput[] inputs) => UncertainSystem.Along(
            Belted(), line, slowest, fastest, Day, inputs);

        static DisplacementBoost Line(double liters) => DisplacementBoost.Of(1.83, Volume.FromLiters(liters), Wren.Percent(87));

        static FuelSystem Belted() => FuelSystem.Return(
            Dunnock.Demand(), InjectorSet.Of(Wren.InjectorOf(900), 6), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(Wren.PumpOf(3)));
    }

    /// <summary>A point that the car as described does not have is no fault of its inputs.</summary>
    [Fact]
    public void Point_OutsideTheCarsOwnRange_IsRefusedAsThat()
    {
        OperatingPoint empty = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(-90), Day);
        foreach (UncertainInput input in new[] { Flow, UncertainInput.BoostFactor(Uniform(0.9, 1.05)) })
        {
            ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => UncertainSystem.Of(Car(), empty, input));
            Assert.DoesNotContain("inputs has", refused.Message, StringComparison.Ordinal);
            Assert.StartsWith("boost is −90", refused.Message, StringComparison.Ordinal);
        }
    }
}
