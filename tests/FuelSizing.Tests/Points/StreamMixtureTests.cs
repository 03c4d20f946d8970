using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>
/// Lambda with a second stream, by hand: air over what the two fuels of it would burn, λ = A ÷ (A/λ₁ + r₂ ṁ₂), of which A/λ₁ is what the main fuel burns with; each bound from the bound of the
/// main mixture, of the stream and of what evaporates that belongs to it.
/// </summary>
public class StreamMixtureTests
{
    private static readonly double Methanol = Fuel.Methanol.StoichiometricAirFuelRatio;

    /// <summary>
    /// Main lambda between 0.75 and 0.85, of which the richest leaves out that fuel evaporates in the charge; the stream between none and 1.1 times what is shown, and 4 % more air by its own
    /// evaporation.
    /// </summary>
    [Fact]
    public void Lambda_OfBothStreams_IsBoundedByTheBoundsOfEach()
    {
        FuelSystem car = SecondStreams.Car();
        car = car.With(car.Demand.WithEvaporation(Wren.Percent(40))).Aiming(0.82).With(SecondStreams.Held(SecondStreams.Half));
        OperatingResult result = car.Solve(Wren.At(5000, 0.5));
        PointDemand alone = result.SolvedDemand.Alone;
        double without = FuelDemand.ShareWithoutEvaporation(alone.Chain, alone.Basis);
        Assert.InRange(without, 0.85, 0.99);
        SolvedStream solved = result.SolvedDemand.Stream!.Solved;
        Assert.True(solved.MaximumMassFlow > solved.MassFlow);
        const double Gain = 1.04;
        SolvedMixture mixture = result.SolvedMixture with { Lambda = 0.8, MinimumLambda = 0.75, MaximumLambda = 0.85 };
        StreamMixture both = StreamMixture.Of(car.Parts, new(alone, solved, Gain), mixture);

        // What is needed at 0.82 burns with so much air.
        double air = alone.Required * alone.Density * 0.82 * Fuel.Petrol.StoichiometricAirFuelRatio;
        double second = Methanol * SecondStreams.Half.MassShare;
        double Of(double drawn, double main, double mass) => drawn / ((drawn / main) + (second * mass));
        Close(air, both.Air);
        Close(Of(air, 0.8, solved.MassFlow), both.Lambda);
        Close(Of(air * without, 0.75, solved.MaximumMassFlow), both.Richest);
        Close(Gain * Of(air, 0.85, solved.MinimumMassFlow), both.Leanest);

        // The other end of each: no evaporation with the least sprayed, and all of it with the most.
        Close(Of(air * without, 0.85 * without, solved.MinimumMassFlow), both.RichAtMost);
        Close(Gain * Of(air, 0.75 / without, solved.MaximumMassFlow), both.LeanAtLeast);
        Close(0.75 / without, both.StoppedAtLeast);
        Close(0.85, both.Stopped);

        // A main mixture that is not known gives none with the stream.
        StreamMixture unknown = StreamMixture.Of(car.Parts, new(alone, solved, Gain), mixture with { Lambda = double.NaN, MinimumLambda = double.NaN });
        Assert.Equal((double.NaN, double.NaN, double.NaN), (unknown.Lambda, unknown.Richest, unknown.LeanAtLeast));
        Close(both.Leanest, unknown.Leanest);

        // One that does not flow leaves the main mixture as it is, evaporation counted or not.
        StreamMixture off = StreamMixture.Of(car.Parts, new(alone, SolvedStream.Of(solved.Stream, 0, 13.5, 300), 1), mixture);
        Close(0.8, off.Lambda);
        Assert.Equal((0.75, 0.85, 0.85, 0.85), (off.Richest, off.RichAtMost, off.Leanest, off.Stopped));
        Close(0.75 / without, off.LeanAtLeast, off.StoppedAtLeast);
    }

    /// <summary>A closed loop reads both streams: nothing can be said with the stream, and without it only where no main fuel was taken back; past the loop's pressure all can.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 10)]
    [InlineData(1, 0)]
    [InlineData(1, 10)]
    public void ClosedLoop_UpToItsPressure_LeavesTheMixtureOpen(double over, double takenBack)
    {
        OperatingPoint point = Wren.At(5000, 0.5);
        FuelSystem car = SecondStreams.Car();
        ControllerData data = ControllerData.Of(car.Injectors.Injector, Fuel.Petrol, TargetLambda.At(0.85)).WithFuelTemperature(Wren.Hill.FuelTemperature)
            .WithRailPressureCorrection().WithClosedLoop(ClosedLoop.Of(Wren.Percent(15), point.Boost + point.Conditions.Atmosphere.Pressure - Pressure.FromPascals(over)));
        OperatingResult solved = car.With(AirflowMeterController.Of(data)).With(SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(takenBack))).Solve(point);
        SecondStreamResult result = solved.SecondStream!;
        bool trimmed = over == 0;
        Assert.Equal(!trimmed, result.Lambda is not null);
        Assert.Equal(!trimmed, result.MinimumLambda is not null);
        Assert.Equal(!trimmed, result.MaximumLambda is not null);
        Assert.Equal(!(trimmed && takenBack > 0), result.LambdaIfStopped is not null);
        Assert.Equal(!(trimmed && takenBack > 0), double.IsFinite(PointReading.Of(solved).Stream.MinimumStoppedLambda));
    }

    /// <summary>20 % of the liquid evaporates: its heat of vaporisation times its mass, and as much more air as the engine takes with it; none where none is stated.</summary>
    [Fact]
    public void Evaporation_TakesItsHeatAndDrawsMoreAir()
    {
        OperatingPoint point = Wren.At(5000, 0.5);
        SecondStream wet = SecondStreams.Held().WithEvaporation(Wren.Percent(20));
        OperatingResult result = SecondStreams.Car().With(wet).Solve(point);
        double heat = wet.Fluid.HeatOfVaporisation!.Value.JoulesPerKilogram;
        Close(0.2 * heat * result.SecondStream!.LiquidMassFlow!.Value.KilogramsPerSecond, (double)result.SecondStream.EvaporationHeat!.Value.Watts);
        OperatingResult dry = SecondStreams.Car().With(SecondStreams.Held()).Solve(point);
        Close(result.Demand.AirMassFlow.KilogramsPerSecond / dry.Demand.AirMassFlow.KilogramsPerSecond - 1, result.SecondStream.AirGain.DecimalFractions);
        Assert.True(result.SecondStream.AirGain > Wren.Percent(1));
        Assert.Equal((0, 0), ((double)dry.SecondStream!.EvaporationHeat!.Value.Watts, dry.SecondStream.AirGain.DecimalFractions));
        Assert.Equal(Power.Zero, SecondStreams.Car().With(SecondStreams.Held()).Solve(Wren.At(5000, 0.2)).SecondStream!.EvaporationHeat);

        // Not known what flows: not known what evaporates; where the share is stated.
        SecondStream low = SecondStream.Of("m", wet.Fluid, SecondStreams.Nozzles, Wren.Kpa(30), Wren.Kpa(200));
        Assert.Null(SecondStreams.Car().With(low.WithEvaporation(Wren.Percent(20))).Solve(point).SecondStream!.EvaporationHeat);
        Assert.Equal(Power.Zero, SecondStreams.Car().With(low).Solve(point).SecondStream!.EvaporationHeat);
    }

    /// <summary>With a controller the main fuel is that of the engine without the stream's evaporation: the causes of its mixture make up all of its deviation.</summary>
    [Fact]
    public void Causes_WithAStreamThatEvaporates_MakeTheWholeDeviation()
    {
        DeliveredMixture mixture = SecondStreams.Car().Aiming(0.9).With(SecondStreams.Held().WithEvaporation(Wren.Percent(50)).WithMainFuelTakenBack(Wren.Percent(8)))
            .Solve(Wren.At(5000, 0.5)).Mixture;
        Assert.Contains(mixture.Causes, cause => cause.Kind == MixtureCauseKind.TakenBack && Math.Abs(cause.Factor - (1 / 0.92)) < 1e-9);
        Assert.Equal(mixture.Lambda!.Value / 0.82, mixture.Causes.Aggregate(1.0, (all, cause) => all * cause.Factor), 1e-9);
    }

    private static void Close(double expected, params double[] actual) => Assert.All(actual, figure => Assert.Equal(expected, figure, Math.Abs(expected) * 1e-9));
}
