using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>A question that is stopped while it works ends soon, and without an answer.</summary>
public class StoppedQuestionsTests
{
    private static readonly BoostLine Hump = MeasuredBoost.Of((Wren.Rpm(2500), Wren.Kpa(10)), (Wren.Rpm(4100), Wren.Kpa(50)), (Wren.Rpm(6000), Wren.Kpa(30)));

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void StaticFlow_StoppedOnTheWay_HasNoAnswer(double share) =>
        Stops(share, (system, stop) => SystemSizing.MinimumStaticFlow(system, [Wren.At(4000, 0.3), Wren.At(5500, 0.4)], stop));

    /// <summary>The speeds along the line come first, those between them last.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public void CutOut_StoppedOnTheWay_HasNoAnswer(double share) =>
        Stops(share, (system, stop) => CutOut.PressuresFor(system, Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill, stop));

    /// <summary>First each point answers for all pressures that come into question; then settings are looked through, which asks no circuit.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void RisingRate_StoppedOnTheWay_HasNoAnswer(double share) =>
        Stops(share, (system, stop) => MixtureSizing.FitRisingRate(system, Hump, [Wren.Rpm(3000), Wren.Rpm(4100), Wren.Rpm(5200)], Wren.Hill, cancellation: stop));

    // The line counts how often its loss is asked for: what a question asks in all, and how much more it asks once it is stopped.
    private static void Stops(double share, Func<FuelSystem, CancellationToken, object> ask)
    {
        using CancellationTokenSource never = new();
        StoppingLine counted = new(never, int.MaxValue);
        _ = ask(With(counted), never.Token);

        using CancellationTokenSource source = new();
        StoppingLine line = new(source, (int)(share * counted.Asked));
        Assert.ThrowsAny<OperationCanceledException>(() => ask(With(line), source.Token));
        Assert.True(source.IsCancellationRequested);
        Assert.InRange(line.Asked, (int)(share * counted.Asked), (int)((share + 0.35) * counted.Asked));
    }

    private static FuelSystem With(IFlowLoss returnLine)
    {
        FuelSystem system = EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)), SizingLimits.Default.With(MixtureLimits.Of(0.9, Pressure.FromBars(0.05))))
            .With(Plumbing.Of(returnLine: [returnLine]));
        return system.With(AirflowMeterController.Of(
            ControllerData.Of(system.Injectors.Injector, Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature)));
    }

    private sealed class StoppingLine(CancellationTokenSource source, int at) : IFlowLoss
    {
        public string Name => "return";

        public int Asked { get; private set; }

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity)
        {
            Asked++;
            if (Asked == at)
            {
                source.Cancel();
            }

            return 1e10 * flow * Math.Abs(flow);
        }

        double IFlowLoss.ElevationPascals(double density) => 0;
    }
}
