using CsCheck;
using FuelSizing.Pressure;

namespace FuelSizing.Tests.Regulators;

using Pressure = UnitsNet.Pressure;

public class RegulatorTests
{
    private static readonly Gen<double> Boost = Gen.Double[-0.9, 3];

    /// <summary>Common practice, no source: a unit of gain 6 raises the rail by 6 for each 1 of boost.</summary>
    [Fact]
    public void RisingRate_OfGainSix_RaisesTheRailBySixForEachOne()
    {
        RisingRate unit = RisingRate.From(Pressure.FromPoundsForcePerSquareInch(43.5), 6, Pressure.Zero);
        for (int boost = 0; boost <= 8; boost++)
        {
            Assert.Equal(
                43.5 + (6 * boost),
                unit.RailGauge(Pressure.FromPoundsForcePerSquareInch(boost)).PoundsForcePerSquareInch,
                9);
        }
    }

    [Fact]
    public void RisingRate_AboveItsOnset_RaisesTheDifferentialByGainLessOne() =>
        Gen.Select(Gen.Double[1, 12], Gen.Double[0.1, 1], Gen.Double[0.01, 1]).Sample((gain, onset, more) =>
        {
            RisingRate unit = RisingRate.From(Pressure.FromBars(3), gain, Pressure.FromBars(onset));
            double Differential(double boost) => unit.RailGauge(Pressure.FromBars(boost)).Bars - boost;
            return Math.Abs(Differential(onset + more) - Differential(onset) - ((gain - 1) * more)) < 1e-9;
        });

    [Fact]
    public void RisingRate_OfGainOneAndOnsetZero_IsManifoldReferenced() =>
        Boost.Sample(boost =>
            RisingRate.From(Pressure.FromBars(3), 1, Pressure.Zero).RailGauge(Pressure.FromBars(boost)).Pascals
                == ManifoldReferenced.From(Pressure.FromBars(3)).RailGauge(Pressure.FromBars(boost)).Pascals);

    [Fact]
    public void ManifoldReferenced_AtAnyBoost_KeepsTheDifferential() =>
        Boost.Sample(boost =>
            Math.Abs(ManifoldReferenced.From(Pressure.FromBars(3)).RailGauge(Pressure.FromBars(boost)).Bars - boost - 3) < 1e-9);

    [Fact]
    public void Fixed_AtAnyBoost_KeepsTheRail() =>
        Boost.Sample(boost => Fixed.At(Pressure.FromBars(4)).RailGauge(Pressure.FromBars(boost)).Bars == 4);

    [Fact]
    public void RisingRate_AboveItsCeiling_StaysThere() =>
        Boost.Sample(boost =>
            RisingRate.From(Pressure.FromBars(3), 8, Pressure.Zero, ceiling: Pressure.FromBars(6))
                .RailGauge(Pressure.FromBars(boost)) <= Pressure.FromBars(6));

    [Fact]
    public void Series_AtAnyBoost_FollowsTheHigher() =>
        Gen.Select(Boost, Gen.Double[1, 12], Gen.Double[0, 3]).Sample((boost, gain, start) =>
        {
            ManifoldReferenced first = ManifoldReferenced.From(Pressure.FromBars(3));
            RisingRate unit = RisingRate.From(Pressure.FromBars(start), gain, Pressure.Zero);
            Pressure at = Pressure.FromBars(boost);
            return RegulatorSeries.Of(first, unit).RailGauge(at).Pascals
                == Math.Max(first.RailGauge(at).Pascals, unit.RailGauge(at).Pascals);
        });

    [Fact]
    public void RailGauge_WithMoreBoost_NeverFalls() =>
        Gen.Select(Boost, Gen.Double[0, 1], Gen.Double[1, 12]).Sample((boost, more, gain) =>
        {
            RisingRate unit = RisingRate.From(Pressure.FromBars(3), gain, Pressure.FromBars(0.2));
            return unit.RailGauge(Pressure.FromBars(boost + more)) >= unit.RailGauge(Pressure.FromBars(boost));
        });
}
