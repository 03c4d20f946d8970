using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>What results of inverse questions make of an answer, by hand; and questions that a hand-over by duty cycle cannot be asked.</summary>
public class SizingResultsTests
{
    private static readonly FuelSystem Built = EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)));

    private static readonly OperatingPoint[] Points = [Wren.At(3000, 0.2), Wren.At(5000, 0.6), Wren.At(4000, 0.4)];

    /// <summary>
    /// 640 mL/min of heptane at 300 kPa; held open at the same 300 kPa it passes Q √(ρ_ref/ρ) of the fuel, ρ times that by mass. At 13.5 V the dead time lies 5.5 of 7 V on the way from 1.9 to 0.8 ms. The
    /// most air is at 0.60 bar.
    /// </summary>
    [Fact]
    public void InjectorRequirement_IsOfTheFirstPoint_AndOfTheHighestBoost()
    {
        InjectorRequirement answer = new(Answer(), Built, null, Points);
        double density = FuelSizing.Fuels.Fuel.Petrol.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
        Assert.Equal(640 / 60e6 * Math.Sqrt(TestFluid.Heptane.Density.KilogramsPerCubicMeter / density) * density, answer.StaticMassFlow!.Value.KilogramsPerSecond, 1e-12);
        Assert.Equal(1.9 - (1.1 * 5.5 / 7), answer.DeadTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(60 + Wren.Hill.Atmosphere.Pressure.Kilopascals, answer.HighestManifoldAbsolute.Kilopascals, 1e-9);

        // Without injectors that serve there is neither, but the air is what it is.
        InjectorRequirement none = new(Answer(), null, null, Points);
        Assert.Equal((null, null), (none.StaticMassFlow, none.DeadTime));
        Assert.Equal(answer.HighestManifoldAbsolute, none.HighestManifoldAbsolute);
        Assert.StartsWith("No injectors serve: ", none.ToString(), StringComparison.Ordinal);
    }

    /// <summary>From a ratio of 8 to 10 the compressor's pulley is smaller by a fifth; a centrifugal compressor's boost rises with speed, so that its highest is that at the fastest.</summary>
    [Fact]
    public void MaximumBoost_IsSaidByPulleyAndByItsHighest()
    {
        BeltDrivenBoost fitted = CentrifugalBoost.From(8, Wren.Rpm(6000), Pressure.FromBars(0.2), Wren.Hill.Atmosphere);
        FuelSystem belted = Built.With(Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95))));
        BeltDrivenBoost faster = fitted.WithDriveRatio(10);
        LineSweepResult pull = belted.Sweep(faster, [Wren.Rpm(3000), Wren.Rpm(6000)], Wren.Hill);
        MaximumBoostResult most = new(fitted, RatioOf(), faster, pull, null);
        Assert.Equal(-20, most.CompressorPulleyChange!.Value.Percent, 1e-9);
        Assert.Equal(faster.At(Wren.Rpm(6000), belted.Demand, Wren.Hill.Atmosphere).Pascals, most.HighestBoost!.Value.Pascals, 1e-6);
        Assert.True(most.HighestBoost > faster.At(Wren.Rpm(3000), belted.Demand, Wren.Hill.Atmosphere) * 1.5);
        MaximumBoostResult none = new(fitted, RatioOf(), null, null, null);
        Assert.Equal((null, null), (none.CompressorPulleyChange, none.HighestBoost));
    }

    /// <summary>A switch serves where what it needs lies under what there is, and not where both are the same.</summary>
    [Fact]
    public void Switch_WithNothingBetween_DoesNotServe()
    {
        CutOutPoint point = new(Built.Solve(Points[0]), 0.9, Wren.Kpa(300));
        Assert.True(new CutOutSwitch(false, point, Wren.Kpa(300), point, Wren.Kpa(301)).Serves);
        Assert.False(new CutOutSwitch(false, point, Wren.Kpa(300), point, Wren.Kpa(300)).Serves);
        Assert.False(new CutOutSwitch(false, point, null, point, Wren.Kpa(300)).Serves);
    }

    /// <summary>Where a hand-over by duty cycle lies moves with the figure that is searched: each question that would have to allow for that says so by its name.</summary>
    [Fact]
    public void HandOverByDutyCycle_IsRefusedByEachQuestionByName()
    {
        FuelSystem staged = Staged.Wren2(Staged.Of(Staged.ByDutyCycle));
        OperatingPoint point = Points[0];
        void Refused(string question, Func<object> ask)
        {
            string message = Assert.Throws<ArgumentException>("system", ask).Message;
            Assert.Contains($"and which {question} does not take", message, StringComparison.Ordinal);
        }

        Refused(nameof(SystemSizing.MinimumStaticFlow), () => SystemSizing.MinimumStaticFlow(staged, point));
        Refused(nameof(SystemSizing.MinimumBasePressure), () => SystemSizing.MinimumBasePressure(staged, point));
        Refused(nameof(SystemSizing.MinimumGain), () => SystemSizing.MinimumGain(staged, Pressure.Zero, point));
        Refused(nameof(SystemSizing.MaximumBoost), () => SystemSizing.MaximumBoost(staged, [Wren.Rpm(3000)], Wren.Hill));
        Refused(nameof(SystemSizing.MaximumPower), () => SystemSizing.MaximumPower(staged, Wren.Rpm(3000), Wren.Hill));
        Refused(nameof(SystemSizing.MaximumSpeed), () => SystemSizing.MaximumSpeed(staged, Pressure.Zero, Wren.Rpm(3000), Wren.Hill));
    }

    /// <summary>The lowest speed is named as it is called in the question, whether it is no speed of an engine or over this one's.</summary>
    [Fact]
    public void MaximumSpeed_FromNoSpeedAtAll_IsRefusedByName() =>
        Refused.OutOfRange("from", () => SystemSizing.MaximumSpeed(Built, Pressure.Zero, Wren.Rpm(0), Wren.Hill));

    private static Limit Binding() => new(Built.Solve(Points[0]).Margins[0]);

    private static SizingAnswer<VolumeFlow> Answer() =>
        new(VolumeFlow.FromMillilitersPerMinute(640), null, [], Binding(), null, Statement.Of("answer", $"an answer"));

    private static SizingAnswer<double> RatioOf() => new(10, null, [], Binding(), null, Statement.Of("answer", $"an answer"));
}
