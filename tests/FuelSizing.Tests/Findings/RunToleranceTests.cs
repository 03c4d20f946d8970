using FuelSizing.Findings;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>What sound parts and sensors may be off: what is given counts, and what is not is as documented.</summary>
public class RunToleranceTests
{
    [Fact]
    public void Tolerance_KeepsWhatIsGiven()
    {
        PlanTolerance given = PlanTolerance.Of(
            Ratio.FromPercent(4), ElectricResistance.FromMilliohms(12), Ratio.FromPercent(50), Wren.Kpa(6), Ratio.FromPercent(3), Wren.Kpa(2.5), Ratio.FromPercent(1.2), Wren.Ms(0.05),
            Ratio.FromPercent(3.5), Ratio.FromPercent(5), Wren.Volt(0.4));
        double[] wanted = [4, 12, 50, 6, 3, 2.5, 1.2, 0.05, 3.5, 5, 0.4];
        Assert.Equal(wanted, Figures(given), (one, other) => Math.Abs(one - other) < 1e-9);
        double[] standard = [3, 10, 30, 5, 2, 2, 1.5, 0.03, 2.5, 4, 0.3];
        Assert.Equal(standard, Figures(PlanTolerance.Of()), (one, other) => Math.Abs(one - other) < 1e-9);
        Assert.Equal(PlanTolerance.Default, PlanTolerance.Of());
        Assert.Equal("pump flow 4 %, injector flow 1.2 %, regulator 6.0 kPa", given.ToString());
    }

    [Fact]
    public void Accuracy_KeepsWhatIsGiven()
    {
        SensorAccuracy given = SensorAccuracy.Of(
            Wren.Kpa(2.5), Wren.Kpa(0.7), Wren.Ms(0.02), Ratio.FromPercent(1.5), Ratio.FromPercent(2), Ratio.FromPercent(2.5), Wren.Kpa(4), Wren.Kpa(1.5), Ratio.FromPercent(3));
        double[] wanted = [2.5, 0.7, 0.02, 1.5, 2, 2.5, 4, 1.5, 3];
        Assert.Equal(wanted, Figures(given), (one, other) => Math.Abs(one - other) < 1e-9);
        double[] standard = [2, 0.5, 0.01, 1, 1, 1, 3, 1, 1];
        Assert.Equal(standard, Figures(SensorAccuracy.Of()), (one, other) => Math.Abs(one - other) < 1e-9);
        Assert.Equal(SensorAccuracy.Default, SensorAccuracy.Of());
    }

    private static double[] Figures(PlanTolerance tolerance) =>
    [
        tolerance.PumpFlow.Percent, tolerance.FeedResistance.Milliohms, tolerance.FilterLoss.Percent, tolerance.RegulatorBase.Kilopascals, tolerance.RegulatorGain.Percent,
        tolerance.RegulatorOnset.Kilopascals, tolerance.InjectorFlow.Percent, tolerance.DeadTime.Milliseconds, tolerance.VolumetricEfficiency.Percent,
        tolerance.BrakeSpecificFuelConsumption.Percent, tolerance.SupplyVoltage.Volts,
    ];

    private static double[] Figures(SensorAccuracy accuracy) =>
    [
        accuracy.Rail.Kilopascals, accuracy.Manifold.Kilopascals, accuracy.Pulse.Milliseconds, accuracy.Lambda.Percent, accuracy.FuelFlow.Percent, accuracy.Power.Percent,
        accuracy.RailOffset.Kilopascals, accuracy.ManifoldOffset.Kilopascals, accuracy.FuelFlowFactor.Percent,
    ];
}
