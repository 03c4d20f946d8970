using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A point is covered where it can be solved, and only there.</summary>
public class CoveredPointTests
{
    private static readonly FuelSystem[] Systems =
    [
        Wren.System(),
        Wren.System().With(Wren.Demand().With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1500), 0.9), SpeedRow.Of(Wren.Rpm(6500), 0.8)))),
        FuelSystem.Return(Wren.Demand(induction: Induction.NaturallyAspirated), Wren.System().Injectors, Wren.System().Regulator, Wren.System().Pump),
    ];

    [Fact]
    public void Point_IsCovered_WhereSolveAnswers() => Gen.Select(
        Gen.Int[0, Systems.Length - 1],
        Gen.OneOf(Gen.Double[100, 9000], Gen.OneOfConst(800.0, 1500, 6500, 7200, 7200.0001, 799.999)),
        Gen.OneOf(Gen.Double[-95, 400], Gen.OneOfConst(-95.0, -84, -84.3, 0, 0.001, 400)),
        Gen.Double[60, 105])
        .Sample((system, rpm, kilopascals, barometer) =>
        {
            OperatingPoint point = OperatingPoint.At(
                Wren.Rpm(rpm), Wren.Kpa(kilopascals), Conditions.Of(Atmosphere.Of(Wren.Kpa(barometer), Temperature.FromDegreesCelsius(20)), Wren.Volt(13.5), Temperature.FromDegreesCelsius(30)));
            bool answers;
            try
            {
                _ = Systems[system].Solve(point);
                answers = true;
            }
            catch (ArgumentOutOfRangeException)
            {
                answers = false;
            }

            Assert.Equal(answers, Systems[system].Covers(point));
        });
}
