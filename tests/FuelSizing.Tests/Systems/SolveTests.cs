using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

public class SolveTests
{
    private static readonly Gen<(double Rpm, double Boost)> AnyPoint =
        Gen.Select(Gen.Double[800, 7200], Gen.Double[-0.7, 2]);

    /// <summary>An engine without power burns no fuel for it, and leaves no margin as a share of that.</summary>
    [Fact]
    public void Solve_WithNothingInjected_HoldsWithNothingToCompare()
    {
        FuelDemandModel weak = FuelDemandModel.Of(
            Wren.Engine,
            Induction.BeltDriven(Wren.Percent(40), Wren.Percent(50), Wren.Kpa(5), Wren.Percent(80)),
            Wren.VolumetricEfficiency,
            PowerCurve.AtCrank(Atmosphere.Standard, (Wren.Rpm(800), Power.Zero), (Wren.Rpm(7200), Power.Zero)),
            Wren.Percent(85),
            Wren.Petrol,
            DemandBasis.Power);
        OperatingResult result = FuelSystem.Return(
            weak, InjectorSet.Of(Wren.InjectorOf(360), 4), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(Wren.Pump)).Solve(Wren.At(7000, 1));

        Assert.Equal(0, result.InjectedFlow.LitersPerHour);
        Assert.All(result.Margins, margin => Assert.False(string.IsNullOrEmpty($"{margin}: {margin.Reserve}")));
        Assert.Null(result.Margins.Single(margin => margin.Part == Part.Injectors).Reserve);
        Assert.Null(result.Margins.Single(margin => margin.Part == Part.Pump).Reserve);
    }

    /// <summary>
    /// One point worked by hand in plain numbers, each line an equation of the textbooks named in the library's own docs:
    /// 6,000 rev/min, 0.6 bar at 600 m (94,321.7 Pa, 284.25 K: ISO 2533 table 5), petrol at 35 °C.
    /// </summary>
    [Fact]
    public void Solve_OfOnePoint_IsTheHandCalculation()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(6000, 0.6));

        double manifold = 94_321.7 + 60_000;
        double ratio = (manifold + 5_000) / 94_321.7;
        double outlet = 284.25 * (1 + ((Math.Pow(ratio, 2.0 / 7) - 1) / 0.72));
        double charge = outlet - (0.70 * (outlet - 284.25));
        double air = 1.01 * manifold / (287.05287 * charge) * 2.4e-3 * 100 / 2;
        double stoichiometric = (1 + (1.87 / 4)) * 31.998 / (12.011 + (1.87 * 1.008)) / 0.2314;
        double fromAir = air / (0.82 * stoichiometric);
        double measured = (double)Wren.Power.At(Wren.Rpm(6000)).Watts;
        double density = manifold / charge * 288.15 / 101_325;

        // 85 % at the 6,800 rev/min of the highest power; friction to 6,000 by 0.97 + 0.15 N/1000 + 0.05 (N/1000)² bar, and by speed.
        double highest = 132e3 / 0.85;
        double friction = highest * ((1 / 0.85) - 1) * (6 * (0.97 + (0.15 * 6) + (0.05 * 36))) / (6.8 * (0.97 + (0.15 * 6.8) + (0.05 * 46.24)));
        double power = ((measured + friction) * density) - friction;
        double fromPower = power * 0.315 / 3.6e6;
        double fuel = Math.Max(fromAir, fromPower);
        double alpha = (346.4228 / (745.0 * 745)) + (0.4388 / 745);
        double rho = 745 * Math.Exp(-alpha * 20 * (1 + (0.8 * alpha * 20)));
        double volume = fuel / rho;
        double flow = 360e-6 / 60 * Math.Sqrt(683.8 / rho);
        double dead = Wren.DeadTime.At(Wren.Volt(13.5), Wren.Kpa(300)).Seconds;
        double pulse = dead + (volume / 4 * 0.020 / flow);

        Assert.Equal(360, result.RailGauge.Kilopascals, 6);
        Assert.Equal(300, result.InjectorDifferential.Kilopascals, 6);
        Assert.Equal(charge, result.Demand.ChargeTemperature.Kelvins, 4);
        Assert.Equal(air, result.Demand.AirMassFlow.KilogramsPerSecond, 6);
        Assert.Equal(fromAir, result.Demand.FromAir.KilogramsPerSecond, 6);
        Assert.Equal(power / 1000, (double)result.Demand.BrakePower.Kilowatts, 1e-3);
        Assert.Equal(fromPower, result.Demand.FromPower.KilogramsPerSecond, 6);
        Assert.Equal(rho, result.FuelDensity.KilogramsPerCubicMeter, 9);
        Assert.Equal(volume * 3.6e6, result.InjectedFlow.LitersPerHour, 1e-3);
        Assert.Equal(20, result.AvailableTime.Milliseconds, 9);
        Assert.Equal(pulse, result.Pulse!.Value.Seconds, 6);
        Assert.Equal(pulse / 0.020, result.DutyCycle!.Value.DecimalFractions, 4);
        Assert.Equal(
            Wren.Pump.FlowAt(Wren.Kpa(360)).LitersPerHour - (volume * 3.6e6), result.ReturnedFlow!.Value.LitersPerHour, 2);
    }

    [Fact]
    public void Solve_AnySystemAnywhere_GivesFiniteNumbersAndAVerdict() =>
        Gen.Select(AnyPoint, Gen.Double[100, 1500], Gen.Double[0.05, 3], Regulators, Gen.Double[0, 100]).Sample(
            (at, injector, pump, regulator, ethanol) =>
            {
                OperatingResult result = Wren.System(
                        regulator,
                        injector,
                        pump,
                        FuelConsumption.Of(
                            FuelBlend.EthanolInPetrol(Ratio.FromPercent(ethanol)),
                            0.8,
                            BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(500)),
                        SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(700)))
                    .Solve(Wren.At(at.Rpm, at.Boost));
                double?[] numbers =
                [
                    result.RailGauge.Pascals,
                    result.InjectorDifferential.Pascals,
                    result.StaticFlow?.CubicMetersPerSecond,
                    result.DeadTime?.Seconds,
                    result.Pulse?.Seconds,
                    result.DutyCycle?.DecimalFractions,
                    result.PumpFlow?.CubicMetersPerSecond,
                    result.ReturnedFlow?.CubicMetersPerSecond,
                    .. result.Margins.Select(margin => margin.Reserve?.DecimalFractions),
                ];
                return numbers.All(number => number is null || double.IsFinite(number.Value))
                    && result.Margins.Count == 6
                    && result.Margins.All(margin =>
                        margin.Outcome != Outcome.Holds || margin.Reserve is null or { DecimalFractions: >= 0 })
                    && (result.Limiting.Margin.Outcome == Outcome.Holds ? Outcome.HoldsAsFarAsJudged : result.Limiting.Margin.Outcome) == result.Outcome
                    && !result.Limiting.ToString().Contains("NaN", StringComparison.Ordinal);
            });

    [Fact]
    public void Rail_ThatSags_SitsWhereThePumpMeetsTheDemand() =>
        Gen.Select(Gen.Double[3000, 7200], Gen.Double[0, 1.5], Gen.Double[0.2, 0.8]).Sample((rpm, boost, pump) =>
        {
            OperatingResult result = Wren.System(pump: pump).Solve(Wren.At(rpm, boost));
            double atSet = Wren.PumpOf(pump).FlowAt(result.RailSetGauge).LitersPerHour;
            double injected = result.InjectedFlow.LitersPerHour;
            return result.RailState switch
            {
                RailState.Regulated => atSet >= injected && result.RailGauge.Pascals == result.RailSetGauge.Pascals,
                RailState.Sagging => atSet < injected
                    && result.RailGauge < result.RailSetGauge
                    && Math.Abs(result.PumpFlow!.Value.LitersPerHour - injected) < 1e-9 * injected,
                RailState.Starved => Wren.PumpOf(pump).FlowAt(Pressure.Zero).LitersPerHour < injected
                    && result.RailGauge.Pascals == 0,
                _ => false,
            };
        });

    [Fact]
    public void Returnless_AtTheSameReference_IsTheReturnSystem() =>
        AnyPoint.Sample(at =>
        {
            InjectorSet injectors = InjectorSet.Of(Wren.InjectorOf(500), 4);
            Fixed regulator = Fixed.At(Wren.Kpa(400));
            OperatingResult back = FuelSystem.Return(Wren.Demand(), injectors, regulator, Pump.From(Wren.Pump))
                .Solve(Wren.At(at.Rpm, at.Boost));
            OperatingResult dead = FuelSystem.Returnless(Wren.Demand(), injectors, regulator, Pump.From(Wren.Pump))
                .Solve(Wren.At(at.Rpm, at.Boost));
            return back.RailGauge.Pascals == dead.RailGauge.Pascals
                && back.DutyCycle?.DecimalFractions == dead.DutyCycle?.DecimalFractions;
        });

    [Fact]
    public void Differential_UnderAFixedRegulator_FallsByTheBoost() =>
        Gen.Double[0, 2].Sample(boost =>
        {
            OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(400)), pump: 4).Solve(Wren.At(4000, boost));
            return Math.Abs(result.InjectorDifferential.Bars - (4 - boost)) < 1e-9;
        });

    [Fact]
    public void Duty_WithLargerInjectors_IsLower() =>
        Gen.Select(AnyPoint, Gen.Double[200, 1000], Gen.Double[1, 200]).Sample((at, flow, more) =>
            Wren.System(pump: 5, injector: flow + more).Solve(Wren.At(at.Rpm, at.Boost)).DutyCycle
                < Wren.System(pump: 5, injector: flow).Solve(Wren.At(at.Rpm, at.Boost)).DutyCycle);

    [Fact]
    public void Duty_WithMoreGain_IsNoHigherWhileThePumpHasCapacity() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[1, 5], Gen.Double[0.1, 1]).Sample((boost, gain, more) =>
        {
            // Dead time is taken as constant here, since it grows with pressure and works the other way.
            Injector steady = Injector.Of(
                "steady",
                VolumeFlow.FromMillilitersPerMinute(360),
                Wren.Kpa(300),
                TestFluid.Heptane,
                DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(16), Wren.Ms(1))),
                Wren.Ms(1.6),
                Wren.Kpa(1000));
            double Duty(double g) => FuelSystem.Return(
                    Wren.Demand(),
                    InjectorSet.Of(steady, 4),
                    RisingRate.From(Wren.Kpa(300), g, Pressure.Zero),
                    Pump.From(Wren.PumpOf(5)))
                .Solve(Wren.At(5000, boost)).DutyCycle!.Value.DecimalFractions;
            return Duty(gain + more) <= Duty(gain) + 1e-12;
        });

    [Fact]
    public void Injectors_AgainstAManifoldAboveTheRail_PassNothingAndSayWhy()
    {
        OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(150)), pump: 3).Solve(Wren.At(3000, 2));
        Assert.Equal(0, result.StaticFlow!.Value.CubicMetersPerSecond);
        Assert.Null(result.DutyCycle);
        Margin margin = result.Margins.Single(m => m.Part == Part.Injectors);
        Assert.Equal(Outcome.Fails, margin.Outcome);
        Assert.Contains("no flow", margin.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Pump_ThatCannotFeedTheEngineAtAll_LeavesTheRailStarved()
    {
        OperatingResult result = Wren.System(pump: 0.2).Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.Starved, result.RailState);
        Assert.Equal(Outcome.Fails, result.Outcome);
        Assert.Contains("even against no pressure", Explain(result, Part.Pump), StringComparison.Ordinal);
    }

    [Fact]
    public void Pump_PastTheEndOfItsCurveWithFlowToSpare_CannotBeJudged()
    {
        PumpCurve shortCurve = PumpCurve.At(
            "short",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(250)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(200)));
        OperatingResult result = Of(shortCurve).Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.NotCovered, result.RailState);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Pump).Outcome);
        Assert.Contains("0 kPa to 300 kPa", Explain(result, Part.Pump), StringComparison.Ordinal);
    }

    [Fact]
    public void Pump_PastTheEndOfItsCurveAndShortAlreadyThere_Fails()
    {
        PumpCurve small = PumpCurve.At(
            "small",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(120)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(60)));
        OperatingResult result = Of(small).Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(Outcome.Fails, Find(result, Part.Pump).Outcome);
        Assert.Contains("at most 60 L/h", Explain(result, Part.Pump), StringComparison.Ordinal);
    }

    [Fact]
    public void Pump_OnFarLessVoltageThanItsCurve_CannotBeJudged()
    {
        Conditions low = Conditions.Of(Atmosphere.Standard, Wren.Volt(9), Temperature.FromDegreesCelsius(20));
        OperatingResult result = Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, low));
        Assert.Equal(Outcome.CannotSay, result.Outcome);
        Assert.Contains("13.5 V", Explain(result, Part.Pump), StringComparison.Ordinal);
        Assert.Null(result.PumpFlow);
    }

    [Fact]
    public void Pump_OnSomewhatLessVoltageThanItsCurve_IsScaledAndSaysSo()
    {
        Conditions low = Conditions.Of(Atmosphere.Standard, Wren.Volt(12), Temperature.FromDegreesCelsius(20));
        OperatingResult result = Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, low));

        // Affinity laws: 300 kPa at 12 V answers to 300 (13.5/12)² at 13.5 V; flow goes with voltage.
        double expected = Wren.Pump.FlowAt(Wren.Kpa(300 * 13.5 / 12 * 13.5 / 12)).LitersPerHour * 12 / 13.5;
        Assert.Equal(expected, result.PumpFlow!.Value.LitersPerHour, 6);
        Assert.Contains(result.Notes, note => note.ToString().Contains("affinity laws: an estimate", StringComparison.Ordinal));
    }

    [Fact]
    public void DeadTime_OffItsTable_CannotBeJudged()
    {
        // Gain 6 asks for 660 kPa at the rail and 600 kPa across the injector.
        OperatingResult result = Wren.System(RisingRate.From(Wren.Kpa(300), 6, Pressure.Zero), pump: 5)
            .Solve(Wren.At(3000, 0.7));
        Assert.Null(result.DutyCycle);
        Assert.Equal(Outcome.CannotSay, Find(result, Part.Injectors).Outcome);
        Assert.Contains("gives no data", Explain(result, Part.Injectors), StringComparison.Ordinal);
        Assert.Equal(Outcome.Fails, Find(result, Part.OpeningPressure).Outcome);
    }

    [Fact]
    public void Idle_OfLargeInjectors_FailsByItsMinimumPulse()
    {
        OperatingResult result = Wren.System(injector: 3000).Solve(Wren.At(850, -0.65));
        Assert.Equal(Part.MinimumPulse, result.Limiting.Part);
        Assert.Equal(Outcome.Fails, result.Outcome);
    }

    [Fact]
    public void ReturnedFlow_BelowTheRegulatorsMinimum_IsNoted()
    {
        OperatingResult comfortable = Wren.System(ManifoldReferenced.From(Wren.Kpa(300))).Solve(Wren.At(6000, 0.6));
        VolumeFlow returned = comfortable.ReturnedFlow!.Value;
        OperatingResult tight = Wren.System(ManifoldReferenced.From(Wren.Kpa(300), returned * 1.01))
            .Solve(Wren.At(6000, 0.6));
        Assert.Equal(RailState.AtRegulatorLimit, tight.RailState);
        Assert.Equal(Outcome.Fails, Find(tight, Part.Pump).Outcome);
        Assert.Contains(tight.Notes, note => note.ToString().Contains("rail pressure is uncertain", StringComparison.Ordinal));
    }

    [Fact]
    public void RailRating_BelowTheSetPressure_Fails()
    {
        OperatingResult result = Wren.System(limits: SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(350)))
            .Solve(Wren.At(3000, 0.6));
        Assert.Equal(Part.PressureRating, result.Limiting.Part);
        Assert.Contains("360 kPa at the pump outlet, 360 kPa in the rail, rated for only 350 kPa", result.Limiting.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Limiting_ReadsAsASentence() =>
        Assert.Matches(
            @"^injectors: duty cycle \d+\.\d % over the 85\.0 % limit \(common practice, no source\) at 6,800 rev/min, 0\.60 bar$",
            Wren.System().Solve(Wren.At(6800, 0.6)).Limiting.ToString());

    [Fact]
    public void Notes_WhereTheTwoEstimatesDiffer_SayWhatToCheck()
    {
        FuelConsumption greedy = FuelConsumption.Of(
            Fuel.Petrol, 0.95, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(420));
        Assert.Contains(
            Wren.System(consumption: greedy).Solve(Wren.At(6000, 0.3)).Notes,
            note => note.ToString().Contains("does not fit the others", StringComparison.Ordinal));
    }

    [Fact]
    public void System_WithALoneUnitOfNoBase_IsRefused() =>
        Assert.Contains(
            "RegulatorSeries.Of",
            Assert.Throws<ArgumentException>(() => Wren.System(RisingRate.From(Pressure.Zero, 6, Pressure.Zero))).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Returnless_WithAUnitOnTheReturnLine_IsRefused() =>
        Assert.Contains(
            "no return line",
            Assert.Throws<ArgumentException>(() => FuelSystem.Returnless(
                Wren.Demand(),
                InjectorSet.Of(Wren.InjectorOf(360), 4),
                RegulatorSeries.Of(
                    ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero)),
                Pump.From(Wren.Pump))).Message,
            StringComparison.Ordinal);

    private static Gen<PressureRegulator> Regulators =>
        Gen.OneOf(
            Gen.Double[100, 900].Select(p => (PressureRegulator)Fixed.At(Wren.Kpa(p))),
            Gen.Double[100, 900].Select(p => (PressureRegulator)ManifoldReferenced.From(Wren.Kpa(p))),
            Gen.Select(Gen.Double[100, 600], Gen.Double[1, 12], Gen.Double[0, 100]).Select(
                (p, gain, onset) => (PressureRegulator)RisingRate.From(Wren.Kpa(p), gain, Wren.Kpa(onset))),
            Gen.Select(Gen.Double[100, 600], Gen.Double[1, 12]).Select((p, gain) => (PressureRegulator)RegulatorSeries.Of(
                ManifoldReferenced.From(Wren.Kpa(p), VolumeFlow.FromLitersPerHour(15)),
                RisingRate.From(Pressure.Zero, gain, Pressure.Zero))));

    private static FuelSystem Of(PumpCurve pump) =>
        FuelSystem.Return(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(600), 4), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(pump));

    private static string Explain(OperatingResult result, Part part) => Find(result, part).Explanation;
}
