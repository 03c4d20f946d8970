using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.WholeCases;

/// <summary>
/// Exercises of textbooks as checks from a few numbers: power and efficiency in, fuel and duty cycle out. The expected numbers are worked here from
/// the book's inputs, in plain arithmetic that calls nothing of the library.
/// </summary>
public class FewNumbersCaseTests
{
    /// <summary>Gupta: 120 kW on 43.16 kg/h; Mathur and Sharma: 149.7 kW on 54.9 kg/h. With four injectors of 350 and 450 mL/min held open 69 and 68 %.</summary>
    [Theory(DisplayName = "Boosted engine by its power alone, fuel and duty cycle; Gupta, Mathur and Sharma")]
    [InlineData(true, 3.0, 4000, 12, 0.25, 0.91, 350)]
    [InlineData(false, 3.3, 4500, 12.1, 0.248, 0.90, 450)]
    public void Fuel_OfAPower_IsWorkedApart(bool gupta, double litres, double rpm, double bar, double indicated, double mechanical, double flow)
    {
        Source source = gupta ? Works.GuptaBoosted : Works.MathurBoosted;
        double power = bar * 1e5 * litres * 1e-3 * rpm / 120;
        double fuel = power / mechanical / (indicated * 44e6);
        double duty = fuel / 745 / (4 * flow * 1e-6 / 60);

        QuickCheck check = QuickCheck.FromPower(Power.FromWatts(power), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(flow), Wren.Kpa(300), Wren.Rpm(rpm))
            .With(FuelConsumption.Of(Fuel.Petrol, 1, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(3.6e9 / (indicated * mechanical * 44e6))))
            .With(Injector.Of(
                "instant",
                VolumeFlow.FromMillilitersPerMinute(flow),
                Wren.Kpa(300),
                TestFluid.Of("petrol", Fuel.Petrol.DensityAt15C),
                DeadTimeTable.ByVoltage((Wren.Volt(8), Duration.Zero), (Wren.Volt(16), Duration.Zero)),
                Wren.Ms(0.1),
                Wren.Kpa(500)))
            .With(ManifoldReferenced.From(Wren.Kpa(300)))
            .With(Conditions.Of(Atmosphere.Standard, Wren.Volt(13.5), Temperature.FromDegreesCelsius(15)));

        foreach (OperatingResult end in new[] { check.WorstCase, check.BestCase })
        {
            Published.Value(source.At("by its power alone, fuel, kg/h"), fuel * 3600, end.Demand.MassFlow.KilogramsPerHour, 1e-3);
            Published.Value(source.At("by its power alone, duty cycle of four injectors"), duty, end.DutyCycle!.Value.DecimalFractions, 1e-3);
        }
    }
}
