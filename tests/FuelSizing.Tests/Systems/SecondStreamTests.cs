using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Points;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>A second stream of fuel: its flow, its share, the mixture with it and without it, and what is judged of it.</summary>
public class SecondStreamTests
{
    /// <summary>A boost under its begin: no bit of anything else changes, whatever is stated of it.</summary>
    [Fact]
    public void BeginNeverReached_ChangesNoBit() =>
        Gen.Select(Gen.Double[2000, 6800], Gen.Double[-0.5, 0.59], Gen.Int[0, 3]).Sample((rpm, bar, kind) =>
        {
            FuelSystem without = kind switch
            {
                0 => SecondStreams.Car(),
                1 => SecondStreams.Car().Aiming(0.85),
                2 => Wren.System(injector: 620),
                _ => Wren.System(consumption: Wren.Petrol, injector: 450).Aiming(0.9),
            };
            without = without.With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.7)));
            SecondStream never = SecondStream.Of("m", SecondStreams.Half, SecondStreams.Nozzles, Wren.Kpa(60), Wren.Kpa(850), SecondStreams.OwnPump(60), Wren.Kpa(80))
                .WithEvaporation(Wren.Percent(50)).WithMainFuelTakenBack(Wren.Percent(30));
            OperatingResult one = without.Solve(Wren.At(rpm, bar));
            OperatingResult other = without.With(never).Solve(Wren.At(rpm, bar));
            Assert.False(other.SecondStream!.Acts);
            Assert.Equal(one.SolvedMixture, other.SolvedMixture);
            Assert.Equal(one.SolvedCircuit.State, other.SolvedCircuit.State);
            Assert.Equal(one.SolvedDemand.Chain, other.SolvedDemand.Chain);
            Assert.Equal((one.Judged, one.Actual, one.SolvedDemand.Injected), (other.Judged, other.Actual, other.SolvedDemand.Injected));
            foreach (Margin margin in one.Margins)
            {
                Margin same = Find(other, margin.Part);
                Assert.Equal((margin.Outcome, margin.Reserve, margin.Finding.ToString()), (same.Outcome, same.Reserve, same.Finding.ToString()));
            }
        });

    /// <summary>Where it acts and nothing is taken back or evaporates, it changes nothing of the fuel system itself.</summary>
    [Fact]
    public void WithoutTakingBack_TheFuelSystemIsJudgedAsWithoutIt() =>
        Gen.Select(Gen.Double[3000, 6800], Gen.Double[0.35, 0.6], Gen.Double[200, 900]).Sample((rpm, bar, flow) =>
        {
            FuelSystem without = SecondStreams.Car().Aiming(0.9).With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5)));
            OperatingResult one = without.Solve(Wren.At(rpm, bar));
            OperatingResult other = without.With(SecondStreams.Held(millilitresPerMinute: flow)).Solve(Wren.At(rpm, bar));
            Assert.Equal(one.SolvedMixture, other.SolvedMixture);
            foreach (Margin margin in one.Margins.Where(margin => margin.Part != Part.RichMixture))
            {
                Margin same = Find(other, margin.Part);
                Assert.Equal((margin.Outcome, margin.Reserve), (same.Outcome, same.Reserve));
            }

            // The lean side fails though both together are rich enough; the rich side counts it.
            Assert.Equal(Outcome.Fails, Find(other, Part.Mixture).Outcome);
            Assert.True(other.SecondStream!.Lambda < one.Mixture.Lambda);
            Assert.True(Find(other, Part.RichMixture).Reserve!.Value < Find(one, Part.RichMixture).Reserve!.Value);
        });

    /// <summary>Nozzles that are an injector held open, on the main fuel: one more injector's fuel, by mass, heat and lambda.</summary>
    [Fact]
    public void MainFuelAsSecondFuel_IsOneMoreInjector() =>
        Gen.Select(Gen.Double[3000, 6800], Gen.Double[0.35, 0.6], Gen.Double[200, 700], Gen.Int[1, 4]).Sample((rpm, bar, flow, count) =>
        {
            FuelSystem car = SecondStreams.Car();
            SprayNozzles nozzles = SprayNozzles.Of(count, VolumeFlow.FromMillilitersPerMinute(flow), Wren.Kpa(300), TestFluid.Heptane).WithMinimumDifferential(Wren.Kpa(60));
            OperatingResult result = car.With(SecondStream.Of("s", StreamFluid.Of(Fuel.Petrol), nozzles, Wren.Kpa(20), Pressure.FromBars(bar) + Wren.Kpa(300))).Solve(Wren.At(rpm, bar));
            double one = MixtureCar.Injector(flow, 300, MixtureCar.Density(car));
            SecondStreamResult stream = result.SecondStream!;
            Near(count * one, stream.Flow!.Value.CubicMetersPerSecond, 1e-12);
            double main = result.Mixture.InjectedFlow!.Value.CubicMetersPerSecond;
            double alone = result.Mixture.Lambda!.Value;
            double share = count * one / (main + (count * one));
            Near(share, stream.ShareOfFuel!.Value.DecimalFractions, 1e-12);
            Near(share, stream.ShareOfHeat!.Value.DecimalFractions, 1e-12);
            Near(alone * (1 - share), stream.Lambda!.Value, 1e-12);
            Near(alone, stream.LambdaIfStopped!.Value, 1e-12);
            Near(stream.Lambda.Value, stream.MinimumLambda!.Value, 1e-12);
            Near(stream.Lambda.Value, stream.MaximumLambda!.Value, 1e-12);
        });

    /// <summary>Air is burnt by both fuels, mass and heat add up, and what both leave over is the mixture.</summary>
    [Fact]
    public void MassHeatAndAir_AreConserved() =>
        Gen.Select(Gen.Double[3000, 6800], Gen.Double[0.35, 0.6], Gen.Double[0, 1], Gen.Double[0, 0.4], Gen.Double[100, 900]).Sample((rpm, bar, share, back, flow) =>
        {
            FuelSystem car = SecondStreams.Car().Aiming(0.84);
            SecondStream stream = SecondStreams.Held(StreamFluid.WithWaterByMass(Fuel.Methanol, Ratio.FromDecimalFractions(share)), millilitresPerMinute: flow).WithMainFuelTakenBack(Ratio.FromDecimalFractions(back));
            OperatingResult result = car.With(stream).Solve(Wren.At(rpm, bar));
            SecondStreamResult both = result.SecondStream!;
            double main = both.MainFuelMassFlow!.Value.KilogramsPerSecond;
            double own = both.FuelMassFlow!.Value.KilogramsPerSecond;
            double air = result.Demand.AirMassFlow.KilogramsPerSecond;
            Near(air, both.Lambda!.Value * ((main * Fuel.Petrol.StoichiometricAirFuelRatio) + (own * Fuel.Methanol.StoichiometricAirFuelRatio)), 1e-12);
            Near(air, both.LambdaIfStopped!.Value * main * Fuel.Petrol.StoichiometricAirFuelRatio, 1e-12);
            Near(share * both.LiquidMassFlow!.Value.KilogramsPerSecond, own, 1e-12);
            double heat = (main * 44.0) + (own * 20.0);
            Near(own * 20.0, both.ShareOfHeat!.Value.DecimalFractions * heat, 1e-12);
            Near(own, both.ShareOfFuel!.Value.DecimalFractions * (main + own), 1e-12);
            Near(both.Flow!.Value.CubicMetersPerSecond * stream.Fluid.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter, both.LiquidMassFlow!.Value.KilogramsPerSecond, 1e-12);
        });

    /// <summary>√(Δp/Δp_r) and √(ρ_r ρ), with Δp = 850 − 50 kPa; lambda by hand.</summary>
    [Fact]
    public void Flow_OfHeldPressure_IsWorkedByHand()
    {
        OperatingResult result = SecondStreams.Car().With(SecondStreams.Held()).Solve(Wren.At(5000, 0.5));
        double density = Fuel.Methanol.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
        double flow = 390 / 60e6 * Math.Sqrt(800.0 / 700 * 998.2 / density);
        Near(flow, result.SecondStream!.Flow!.Value.CubicMetersPerSecond, 1e-12);
        double air = result.Demand.AirMassFlow.KilogramsPerSecond;
        double petrol = air / (0.82 * Fuel.Petrol.StoichiometricAirFuelRatio);
        Near(
            air / ((petrol * Fuel.Petrol.StoichiometricAirFuelRatio) + (flow * density * Fuel.Methanol.StoichiometricAirFuelRatio)),
            result.SecondStream.Lambda!.Value,
            1e-12);
        Assert.Equal(800, result.SecondStream.NozzleDifferential!.Value.Kilopascals, 1e-9);

        // Before the compressor nothing but ambient pressure stands against it, at any boost.
        SecondStream before = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Spraying(390, SprayPlace.BeforeCompressor), Wren.Kpa(30), Wren.Kpa(850));
        Near(390 / 60e6 * Math.Sqrt(850.0 / 700 * 998.2 / density), SecondStreams.Car().With(before).Solve(Wren.At(5000, 0.5)).SecondStream!.Flow!.Value.CubicMetersPerSecond, 1e-12);
    }

    /// <summary>A pump's straight curve against √Δp is a quadratic equation.</summary>
    [Fact]
    public void FreePump_MeetsTheNozzlesWhereTheQuadraticSays() =>
        Gen.Select(Gen.Double[10, 60], Gen.Double[200, 1200], Gen.Double[0.35, 0.6], Gen.Double[500, 1500]).Sample((litres, flow, bar, deadhead) =>
        {
            Pump pump = SecondStreams.OwnPump(litres, deadhead);
            SecondStream free = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Spraying(flow).WithMinimumDifferential(Pressure.Zero), Wren.Kpa(20), pump: pump);
            SecondStreamResult result = SecondStreams.Car().With(free).Solve(Wren.At(5000, bar)).SecondStream!;

            // Q0 (1 − p/p0) = c √(p − b); with s = √(p − b): Q0/p0 s² + c s − Q0 (1 − b/p0) = 0.
            double density = Fuel.Methanol.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
            (double q0, double p0, double b) = (litres / 3.6e6, deadhead * 1e3, bar * 1e5);
            double c = flow / 60e6 * Math.Sqrt(998.2 / density / 700e3);
            double s = ((-c) + Math.Sqrt((c * c) + (4 * q0 / p0 * q0 * (1 - (b / p0))))) / (2 * q0 / p0);
            Near(c * s, result.Flow!.Value.CubicMetersPerSecond, 1e-9);
            Near(b + (s * s), result.NozzleGauge!.Value.Pascals, 1e-9);

            // The same pump with more held than it can give runs just so, and its check says that it is too small.
            OperatingResult held = SecondStreams.Car().With(SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Spraying(flow).WithMinimumDifferential(Pressure.Zero), Wren.Kpa(20), Wren.Kpa(Math.Min(1900, (result.NozzleGauge.Value.Kilopascals * 1.02) + 50)), pump)).Solve(Wren.At(5000, bar));
            Near(result.Flow.Value.CubicMetersPerSecond, held.SecondStream!.Flow!.Value.CubicMetersPerSecond, 1e-12);
            Assert.Equal(Outcome.Fails, Find(held, Part.StreamPump).Outcome);
        });

    [Fact]
    public void Remedies_FittedAsPrinted_Serve()
    {
        SecondStream weak = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), Wren.Kpa(850), SecondStreams.OwnPump(40, 1000));
        SweepResult sweep = SecondStreams.Car().With(weak).Sweep([Wren.Rpm(5000)], [Wren.Kpa(40), Wren.Kpa(60)], Wren.Hill);
        Remedy larger = sweep.Standings.Single(standing => standing.Part == Part.StreamPump).RemedyAmong(sweep.Results)!;
        VolumeFlow flow = (VolumeFlow)larger.Needed!;
        Pump fitted = SecondStreams.OwnPump(flow.LitersPerHour / (1 - (850.0 / 1000)), 1000);
        Assert.Equal(Outcome.Holds, Find(SecondStreams.Car().With(SecondStream.Of("m", weak.Fluid, weak.Nozzles, weak.Begin, weak.HeldPressure, fitted)).Solve(Wren.At(5000, 0.6)), Part.StreamPump).Outcome);

        FuelSystem lean = SecondStreams.Car().Aiming(0.8).With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5)));
        SweepResult taken = lean.With(SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(20))).Sweep([Wren.Rpm(5000)], [Wren.Kpa(40), Wren.Kpa(60)], Wren.Hill);
        PartStanding stopped = taken.Standings.Single(standing => standing.Part == Part.StreamStopped);
        Assert.Equal(Outcome.Fails, stopped.Outcome);
        Ratio most = (Ratio)stopped.RemedyAmong(taken.Results)!.Needed!;
        Assert.Equal(1 - (0.8 / 0.88), most.DecimalFractions, 1e-9);
        SweepResult less = lean.With(SecondStreams.Held().WithMainFuelTakenBack(most)).Sweep([Wren.Rpm(5000)], [Wren.Kpa(40), Wren.Kpa(60)], Wren.Hill);
        Assert.Equal(Outcome.Holds, less.Standings.Single(standing => standing.Part == Part.StreamStopped).Outcome);
    }

    /// <summary>The controller injects so much less; with the stream the engine gets its target or near it, without it λ/(1 − x).</summary>
    [Fact]
    public void TakenBack_IsJudgedBothWays() =>
        Gen.Select(Gen.Double[3000, 6500], Gen.Double[0.31, 0.6], Gen.Double[0.02, 0.5], Gen.Bool).Sample((rpm, bar, back, ideal) =>
        {
            FuelSystem car = SecondStreams.Car().With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5)));
            car = ideal ? car : car.Aiming(0.82);
            SecondStream ramp = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), Wren.Kpa(850), full: Wren.Kpa(50)).WithMainFuelTakenBack(Ratio.FromDecimalFractions(back));
            OperatingResult without = car.Solve(Wren.At(rpm, bar));
            OperatingResult result = car.With(ramp).Solve(Wren.At(rpm, bar));
            double share = Math.Min(1, ((bar * 100) - 30) / 20);
            Near(share, result.SecondStream!.Share.DecimalFractions, 1e-9);
            Near(without.InjectedFlow.CubicMetersPerSecond * (1 - (share * back)), result.InjectedFlow.CubicMetersPerSecond, 1e-12);
            Near(0.82 / (1 - (share * back)), result.SecondStream.LambdaIfStopped!.Value, 1e-9);
            Assert.Equal(0.82 / (1 - (share * back)) <= 0.88 ? Outcome.Holds : Outcome.Fails, Find(result, Part.StreamStopped).Outcome);
            if (!ideal)
            {
                Assert.Equal(result.SecondStream.MaximumLambda <= 0.88 ? Outcome.Holds : Outcome.Fails, Find(result, Part.Mixture).Outcome);
                Assert.Equal(MixtureCauseKind.TakenBack, result.Mixture.Causes[0].Kind);
                Near(1 / (1 - (share * back)), result.Mixture.Causes[0].Factor, 1e-9);
            }

            // Less is injected, so that more returns and duty falls.
            Assert.True(result.DutyCycle < without.DutyCycle);
        });

    [Fact]
    public void NoLimitGiven_IsNotJudged_AndSaysSo()
    {
        FuelSystem car = SecondStreams.Car().With(SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(10)));
        Part[] open = [.. car.NotJudged.Select(gap => gap.Part)];
        Assert.Contains(Part.StreamStopped, open);
        Assert.Contains(Part.RichMixture, open);
        Assert.Contains(Part.StreamPump, open);
        Assert.Contains(Part.StreamTank, open);
        Assert.Contains(Part.StreamLines, open);
        Assert.Contains("lean on boost at once", string.Join(" ", car.Solve(Wren.At(5000, 0.5)).Notes));
        Assert.Contains("without the help", string.Join(" ", SecondStreams.Car().With(SecondStreams.Held()).Solve(Wren.At(5000, 0.5)).Notes));
    }

    /// <summary>Boost over the pressure at the nozzles: nothing flows, which is said; just under it the flow is not known.</summary>
    [Theory]
    [InlineData(90, Outcome.Fails)]
    [InlineData(70, Outcome.CannotSay)]
    [InlineData(45, Outcome.Holds)]
    public void NozzlePressure_AgainstBoost(double kilopascals, Outcome expected)
    {
        SecondStream low = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles.WithMinimumDifferential(Wren.Kpa(25)), Wren.Kpa(30), Wren.Kpa(80));
        OperatingResult result = SecondStreams.Car().With(low).Solve(Wren.At(5000, kilopascals / 100));
        Assert.Equal(expected, Find(result, Part.StreamNozzles).Outcome);
        SecondStreamResult stream = result.SecondStream!;
        Assert.Equal(expected == Outcome.CannotSay, stream.Flow is null);
        Assert.True(stream.MaximumFlow is not null);
        switch (expected)
        {
            case Outcome.Fails:
                Assert.Equal(0, stream.Flow!.Value.CubicMetersPerSecond);
                Near(stream.LambdaIfStopped!.Value, stream.Lambda!.Value, 1e-12);
                break;
            case Outcome.CannotSay:
                Assert.Equal(0, stream.MinimumFlow.CubicMetersPerSecond);
                Assert.Null(stream.Lambda);
                Assert.True(stream.MinimumLambda < stream.MaximumLambda);
                Assert.Equal(stream.LambdaIfStopped!.Value, stream.MaximumLambda!.Value, 1e-12);
                break;
        }
    }

    /// <summary>Voltage under the pump's curves: its flow lies between its bounds, and the mixture between those of both.</summary>
    [Fact]
    public void PumpDataThatEnds_GivesBounds() =>
        Gen.Select(Gen.Double[11.1, 13.4], Gen.Double[0.35, 0.6], Gen.Bool).Sample((volts, bar, held) =>
        {
            SecondStream stream = SecondStream.Of("m", SecondStreams.Half, SecondStreams.Nozzles, Wren.Kpa(30), held ? Wren.Kpa(850) : null, SecondStreams.OwnPump(34));
            OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000), Pressure.FromBars(bar), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature));
            OperatingResult result = SecondStreams.Car().With(stream).With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5))).Solve(point);
            SecondStreamResult both = result.SecondStream!;
            Assert.True(both.MinimumFlow.CubicMetersPerSecond <= (both.Flow?.CubicMetersPerSecond ?? double.PositiveInfinity) * (1 + 1e-12));
            Assert.True((both.Flow?.CubicMetersPerSecond ?? 0) <= (both.MaximumFlow?.CubicMetersPerSecond ?? double.PositiveInfinity) * (1 + 1e-12));
            if (held)
            {
                // What is held bounds the flow whatever the pump does.
                double atHeld = SecondStreams.Nozzles.FlowAt(850e3 - (bar * 1e5), SecondStreams.Half.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter);
                Assert.True(both.MaximumFlow!.Value.CubicMetersPerSecond <= atHeld * (1 + 1e-12));
                Assert.True(both.MinimumLambda <= (both.Lambda ?? 2));
                Assert.True((both.Lambda ?? 0) <= both.MaximumLambda);
            }
        });

    [Fact]
    public void ClosedLoopThatSeesBoth_CannotBeSaid()
    {
        FuelSystem car = SecondStreams.Car();
        AirflowMeterController loop = AirflowMeterController.Of(
            ControllerData.Of(car.Injectors.Injector, Fuel.Petrol, TargetLambda.At(0.85)).WithFuelTemperature(Wren.Hill.FuelTemperature)
                .WithRailPressureCorrection().WithClosedLoop(ClosedLoop.Of(Wren.Percent(15), Wren.Kpa(250))));
        car = car.With(loop).With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5)));
        OperatingResult result = car.With(SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(5))).Solve(Wren.At(5000, 0.5));
        Assert.Equal(Outcome.CannotSay, Find(result, Part.StreamStopped).Outcome);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.RichMixture).Outcome);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Mixture).Outcome);
        Assert.Equal(Outcome.Holds, Find(car.With(SecondStreams.Held()).Solve(Wren.At(5000, 0.5)), Part.Mixture).Outcome);
    }

    /// <summary>T₃/(1 + x h ṁ_s/(c_p T₃ ṁ_a)): more air and main fuel, with the most that is sprayed; the mixture is bounded by all of it and none.</summary>
    [Fact]
    public void Evaporation_RaisesTheDemand_AndHelpsNoVerdict() =>
        Gen.Select(Gen.Double[3000, 6500], Gen.Double[0.35, 0.6], Gen.Double[0.01, 1], Gen.Bool).Sample((rpm, bar, share, back) =>
        {
            FuelSystem car = SecondStreams.Car().Aiming(0.82).With(SizingLimits.Default.With(MixtureLimits.Of(0.88, richest: 0.5)));
            SecondStream dry = SecondStreams.Held(SecondStreams.Half).WithMainFuelTakenBack(Wren.Percent(back ? 5 : 0));
            OperatingResult none = car.With(dry).Solve(Wren.At(rpm, bar));
            OperatingResult all = car.With(dry.WithEvaporation(Ratio.FromDecimalFractions(share))).Solve(Wren.At(rpm, bar));
            SolvedStream solved = all.SolvedDemand.Stream!.Solved;
            double air = none.Demand.AirMassFlow.KilogramsPerSecond;
            double heat = (SecondStreams.Half.FuelMassShare.DecimalFractions * 1168e3) + ((1 - SecondStreams.Half.FuelMassShare.DecimalFractions) * 2442e3);
            double gain = 1 + (share * heat * solved.MaximumMassFlow / (1004.685 * none.Demand.ChargeTemperature.Kelvins * air));
            Near(gain, all.Demand.AirMassFlow.KilogramsPerSecond / air, 1e-6);
            Near(gain, all.InjectedFlow.CubicMetersPerSecond / none.InjectedFlow.CubicMetersPerSecond, 1e-6);
            Near(none.Demand.ChargeTemperature.Kelvins / gain, all.Demand.EvaporatedTemperature.Kelvins, 1e-6);

            // What cools is bound to what is drawn: T₃ − T₄ = x h ṁ_s/(c_p ṁ_a′).
            Near(share * heat * solved.MaximumMassFlow / (1004.685 * all.Demand.AirMassFlow.KilogramsPerSecond), none.Demand.ChargeTemperature.Kelvins - all.Demand.EvaporatedTemperature.Kelvins, 1e-5);
            Assert.Equal(none.SolvedMixture, all.SolvedMixture);
            Assert.Equal(none.SecondStream!.MinimumLambda, all.SecondStream!.MinimumLambda);
            Near(none.SecondStream.MaximumLambda!.Value * gain, all.SecondStream.MaximumLambda!.Value, 1e-6);
            Assert.True(Find(all, Part.Injectors).Reserve < Find(none, Part.Injectors).Reserve);
            Assert.True(Find(all, Part.Pump).Reserve < Find(none, Part.Pump).Reserve);
            Assert.True(Find(all, Part.Mixture).Reserve <= Find(none, Part.Mixture).Reserve);
            Assert.True(Find(all, Part.RichMixture).Reserve <= Find(none, Part.RichMixture).Reserve);
        });

    [Fact]
    public void Tank_AndRun_AreWorkedByHand()
    {
        FuelSystem car = SecondStreams.Car().With(SecondStreams.Held().WithTank(Volume.FromLiters(0.5), Duration.FromSeconds(60)));
        OperatingPoint on = Wren.At(5000, 0.5);
        double flow = car.Solve(on).SecondStream!.Flow!.Value.CubicMetersPerSecond;
        Near(0.5e-3 / flow, car.Solve(on).SecondStream!.MinimumTankDuration!.Value.Seconds, 1e-12);
        Assert.Equal(0.5e-3 / flow >= 60 ? Outcome.Holds : Outcome.Fails, Find(car.Solve(on), Part.StreamTank).Outcome);
        StreamConsumption run = car.ConsumeStream([(on, Duration.FromSeconds(20)), (Wren.At(3000, 0), Duration.FromSeconds(100)), (on, Duration.FromSeconds(10))]);
        Near(30 * flow, run.Used!.Value.CubicMeters, 1e-12);
        Near(0.5e-3 - (30 * flow), run.MinimumLeft!.Value.CubicMeters, 1e-9);
        Assert.Null(run.EmptyAfter);
        StreamConsumption longer = car.ConsumeStream([(on, Duration.FromSeconds(20)), (Wren.At(3000, 0), Duration.FromSeconds(100)), (on, Duration.FromSeconds(1000))]);
        Near(100 + (0.5e-3 / flow), longer.EmptyAfter!.Value.Seconds, 1e-12);
        Assert.Null(longer.MinimumLeft);
    }

    /// <summary>Where what flows is not known at one of the points, as on a voltage for which its pump has no data, no size of a tank is enough for sure: none is named.</summary>
    [Fact]
    public void TankRemedy_WithAPointWhoseFlowIsNotKnown_IsNone()
    {
        SecondStream free = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), pump: SecondStreams.OwnPump(40))
            .WithTank(Volume.FromLiters(0.2), Duration.FromSeconds(120));
        FuelSystem car = SecondStreams.Car().With(free);
        OperatingResult At(double volts) => car.Solve(OperatingPoint.At(
            Wren.Rpm(5000), Pressure.FromBars(0.5), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature)));
        OperatingResult known = At(13.5);
        Margin tank = Find(known, Part.StreamTank);
        Assert.Equal(Outcome.Fails, tank.Outcome);
        Assert.NotNull(tank.Check.RemedyFor(new([known], [known])));
        Assert.Null(tank.Check.RemedyFor(new([known, At(6)], [known])));
        Assert.Null(tank.Check.RemedyFor(new([At(6), known], [known])));
    }

    /// <summary>The steps of a stream that begins all at once are seen by a sweep: what is tightest just under its begin is found.</summary>
    [Fact]
    public void Sweep_SeesJustUnderTheBegin()
    {
        FuelSystem car = SecondStreams.Car().With(SecondStreams.Held(begin: 50).WithMainFuelTakenBack(Wren.Percent(30)));
        SweepResult sweep = car.Sweep([Wren.Rpm(5000)], [Wren.Kpa(0), Wren.Kpa(60)], Wren.Hill);
        PartStanding injectors = sweep.Standings.Single(standing => standing.Part == Part.Injectors);
        double under = SecondStreams.Car().Solve(Wren.At(5000, 0.4999)).Margins.Single(margin => margin.Part == Part.Injectors).Reserve!.Value.DecimalFractions;
        Assert.Equal(under, injectors.Tightest.Margin.Reserve!.Value.DecimalFractions, 1e-3);
    }

    [Fact]
    public void Batch_TakesItOnlyWhereItChangesNothing()
    {
        FuelSystem car = SecondStreams.Car();
        double[] duty = new double[1];
        double[] with = new double[1];
        PointBatch.Of(car.Parts, Wren.Hill).Evaluate(new() { Speed = [5000 / 60.0], Boost = [5e4] }, new() { DutyCycle = duty });
        PointBatch.Of(car.With(SecondStreams.Held()).Parts, Wren.Hill).Evaluate(new() { Speed = [5000 / 60.0], Boost = [5e4] }, new() { DutyCycle = with });
        Assert.Equal(duty, with);
        foreach (SecondStream changing in new[] { SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(1)), SecondStreams.Held().WithEvaporation(Wren.Percent(1)) })
        {
            ArgumentException refused = Assert.Throws<ArgumentException>(() => PointBatch.Of(car.With(changing).Parts, Wren.Hill));
            Assert.Contains("WithoutSecondStream", refused.Message);
        }
    }

    /// <summary>Candidates are judged as the systems that they make, with the stream.</summary>
    [Fact]
    public void Ranking_JudgesAsSolvingDoes()
    {
        foreach (FuelSystem car in new[] { SecondStreams.Car(), SecondStreams.Car().Aiming(0.82) })
        {
            FuelSystem with = car.With(SizingLimits.Default.With(MixtureLimits.Of(0.9, richest: 0.6)))
                .With(SecondStreams.Held(SecondStreams.Half).WithEvaporation(Wren.Percent(20)).WithMainFuelTakenBack(Wren.Percent(5)));
            OperatingPoint point = Wren.At(5000, 0.5);
            Combination only = Ranking.Of(
                [Stage.Of("now", with, point)], CandidateParts.Of(injectors: [Candidate.Of("A", MixtureCar.InjectorOf(360))]), threads: 1).Combinations.Single();
            OperatingResult solved = with.Solve(point);
            Assert.Equal(solved.Limiting.Margin.Part, only.WeakestPart);
            Assert.Equal(solved.Limiting.Margin.Outcome, only.Outcome == Outcome.HoldsAsFarAsJudged ? Outcome.Holds : only.Outcome);
            Assert.Equal(
                solved.Margins.Where(margin => margin.Part != Part.MinimumPulse).Min(margin => margin.Reserve?.DecimalFractions ?? 9), only.Reserve!.Value.DecimalFractions, 1e-9);
        }
    }

    [Fact]
    public void Refusals_NameTheStreamAndTheCure()
    {
        FuelSystem car = SecondStreams.Car();
        SecondStream taken = SecondStreams.Held().WithMainFuelTakenBack(Wren.Percent(10));
        FuelSystem recorded = car.With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(8))));
        Refused("recorded", () => recorded.With(taken));
        Refused("WithoutSecondStream", () => MixtureSizing.FitRisingRate(
            car.Aiming(0.82).With(taken), FuelSizing.Engines.HeldBoost.Of(Wren.Kpa(50), Wren.Rpm(3000), Wren.Rpm(7000)), [Wren.Rpm(5000)], Wren.Hill));
        Refused("recorded", () => car.With(taken).With(recorded.Controller));
        Refused("WithoutSecondStream", () => FuelSizing.Findings.RunCheck.Of(car.With(SecondStreams.Held())));
        Refused("switch", () => SecondStream.Of("m", SecondStreams.Half, SecondStreams.Nozzles, Wren.Kpa(30), pump: SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), SecondStreams.OwnPump(50))));
        Refused("heldPressure", () => SecondStream.Of("m", SecondStreams.Half, SecondStreams.Nozzles, Wren.Kpa(30)));
        Refused("heldPressure", () => SecondStream.Of("m", SecondStreams.Half, SecondStreams.Nozzles, Wren.Kpa(30), pump: SecondStreams.OwnPump(50)).WithEvaporation(Wren.Percent(10)));
        Refused("does not mix with water", () => StreamFluid.WithWaterByMass(Fuel.Petrol, Wren.Percent(50)));
        Refused("density of its own", () => StreamFluid.Of(Fuel.Methanol).WithDensity(Density.FromKilogramsPerCubicMeter(800)));
        Refused("no second stream", () => car.ConsumeStream([(Wren.At(5000, 0.5), Duration.FromSeconds(1))]));

        static void Refused(string cure, Action act) => Assert.Contains(cure, Assert.ThrowsAny<ArgumentException>(act).Message);
    }

    private static void Near(double expected, double actual, double tolerance) => Assert.Equal(expected, actual, tolerance * Math.Max(Math.Abs(expected), 1e-300));
}
