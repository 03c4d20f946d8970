using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Injectors;

public class InjectorTests
{
    private static readonly Temperature At15 = Temperature.FromDegreesCelsius(15);

    private static Injector Rated(double flow, TestFluid? fluid = null, DeadTimeTable? deadTime = null) => Injector.Of(
        "injector A",
        VolumeFlow.FromMillilitersPerMinute(flow),
        Injector.DefaultRatedDifferential,
        fluid ?? TestFluid.Of("petrol", Fuel.Petrol.DensityAt15C),
        deadTime ?? Wren.DeadTime,
        Wren.Ms(1.5),
        Wren.Kpa(1200));

    /// <summary>
    /// Q = C_d A √(2 Δp/ρ), the orifice equation (ISO 5167 family): with the area and coefficient that the rating implies,
    /// the written equation must give the same flow.
    /// </summary>
    [Fact]
    public void StaticFlow_AgainstTheOrificeEquation_IsTheSame() =>
        Gen.Select(Gen.Double[10, 1000], Gen.Double[0, 100], Gen.Double[-30, 80]).Sample((kilopascals, ethanol, celsius) =>
        {
            Fuel fuel = FuelBlend.EthanolInPetrol(Ratio.FromPercent(ethanol));
            Injector injector = Rated(360, TestFluid.Heptane).WithMinimumDifferential(Wren.Kpa(10));
            double dischargeArea = 360e-6 / 60 / Math.Sqrt(2 * 300e3 / 683.8);
            Temperature temperature = Temperature.FromDegreesCelsius(celsius);
            double orifice = dischargeArea
                * Math.Sqrt(2 * kilopascals * 1e3 / fuel.DensityAt(temperature).KilogramsPerCubicMeter);
            double actual = injector.StaticFlowAt(Wren.Kpa(kilopascals), fuel, temperature).CubicMetersPerSecond;
            return Math.Abs(actual - orifice) < 1e-12 * orifice;
        });

    /// <summary>Methanol through an orifice under 11 cm of mercury (13,825 Pa): 3.09 L/s with C_d 0.61, d 3 cm in 4 cm.</summary>
    [Fact(DisplayName = "Orifice flow; Çengel and Cimbala, example 8-10")]
    public void StaticFlow_OfCengelsOrificeMeter_IsHis()
    {
        // The meter's own geometry gives C_d A/√(1 − β⁴) for the rating at 300 kPa; the square-root law must carry it down.
        const double density = 788.4;
        double area = 0.61 * Math.PI / 4 * 0.03 * 0.03 / Math.Sqrt(1 - Math.Pow(0.75, 4));
        double rated = area * Math.Sqrt(2 * 300e3 / density);
        FuelSizing.Numerics.Real flow = FuelSizing.Equations.InjectorFlow.Static<FuelSizing.Numerics.Real>(
            rated, 300e3, density, 13_825, density);
        Published.Value(
            Works.CengelOrifice, 3.09e-3, flow, 2e-3);
    }

    /// <summary>From 300 to 400 kPa the flow grows by √(4/3) = 1.1547: the square-root law of the orifice.</summary>
    [Fact(DisplayName = "Static flow at 4/3 of the rated differential pressure")]
    public void StaticFlow_AtFourThirdsOfThePressure_GrowsByItsRoot() =>
        Published.Value(
            Works.OrificeLaw,
            360 * 1.1547005,
            Rated(360).StaticFlowAt(Wren.Kpa(400), Fuel.Petrol, At15).MillilitersPerMinute,
            1e-7);

    [Fact]
    public void StaticFlow_AtTheRatedPointOnTheTestFluid_IsTheRatedFlow() =>
        Assert.Equal(
            360,
            Rated(360).StaticFlowAt(Injector.DefaultRatedDifferential, Fuel.Petrol, At15).MillilitersPerMinute,
            9);

    [Fact]
    public void MassFlow_OnADenserFuel_GrowsByTheRootOfDensityWhileVolumeFalls() =>
        Gen.Double[1, 100].Sample(share =>
        {
            Fuel blend = FuelBlend.EthanolInPetrol(Ratio.FromPercent(share));
            double density = blend.DensityAt15C / Fuel.Petrol.DensityAt15C;
            double volume = Rated(360).StaticFlowAt(Wren.Kpa(300), blend, At15).MillilitersPerMinute / 360;
            double mass = Rated(360).StaticMassFlowAt(Wren.Kpa(300), blend, At15)
                / Rated(360).StaticMassFlowAt(Wren.Kpa(300), Fuel.Petrol, At15);
            return Math.Abs(volume - (1 / Math.Sqrt(density))) < 1e-9 && Math.Abs(mass - Math.Sqrt(density)) < 1e-9;
        });

    /// <summary>Common practice, no source: 1 lb/h of petrol is about 10.5 cc/min (at 0.72).</summary>
    [Fact]
    public void PoundPerHour_OfPetrol_IsAboutTenAndAHalfMillilitresAMinute() =>
        Assert.InRange(
            (MassFlow.FromPoundsPerHour(1) / Density.FromKilogramsPerCubicMeter(720)).MillilitersPerMinute, 10.45, 10.55);

    /// <summary>
    /// The definition by hand, on invented figures: 217 hp × 0.523 lb/(hp·h) ÷ (6 injectors × 0.81) = 23.352 lb/h each.
    /// </summary>
    [Fact]
    public void ForPower_InPoundsAnHour_IsPowerTimesConsumptionSharedOverTheInjectors()
    {
        FuelConsumption consumption = FuelConsumption.Of(
            Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(0.523));
        VolumeFlow flow = SizeInjector.ForPower(
            Power.FromMechanicalHorsepower(217), consumption, 6, Wren.Percent(81));
        Assert.Equal(23.352, (flow * Fuel.Petrol.DensityAt15C).PoundsPerHour, 3);
    }

    [Fact]
    public void AvailableTime_OfAFourStroke_IsTwoMinutesOverTheSpeed()
    {
        Assert.Equal(20, DutyCycle.AvailableTime(Wren.Rpm(6000), EngineCycle.FourStroke).Milliseconds, 9);
        Assert.Equal(10, DutyCycle.AvailableTime(Wren.Rpm(6000), EngineCycle.TwoStroke).Milliseconds, 9);
        Assert.Equal(10, DutyCycle.AvailableTime(Wren.Rpm(6000), EngineCycle.FourStroke, 2).Milliseconds, 9);
        Assert.Equal(85, DutyCycle.Of(Wren.Ms(17), Wren.Rpm(6000), EngineCycle.FourStroke).Percent, 9);
    }

    [Fact]
    public void DeadTime_AtATablePoint_IsTheTables() =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4]).Sample((column, row) =>
        {
            double[] volts = [8, 10, 12, 14, 16];
            double[] kilopascals = [100, 200, 300, 400, 600];
            double[,] times =
            {
                { 2.05, 1.42, 1.00, 0.76, 0.62 },
                { 2.20, 1.50, 1.05, 0.80, 0.65 },
                { 2.40, 1.60, 1.10, 0.85, 0.70 },
                { 2.60, 1.75, 1.20, 0.90, 0.75 },
                { 3.20, 2.10, 1.40, 1.05, 0.85 },
            };
            double actual = Wren.DeadTime.At(Wren.Volt(volts[column]), Wren.Kpa(kilopascals[row])).Milliseconds;
            return Math.Abs(actual - times[row, column]) < 1e-9;
        });

    [Fact]
    public void DeadTime_WithMoreVoltageOrLessPressure_IsNoLonger() =>
        Gen.Select(Gen.Double[8, 15.5], Gen.Double[100, 590], Gen.Double[0.01, 0.5], Gen.Double[0.1, 10])
            .Sample((volts, kilopascals, moreVolts, moreKilopascals) =>
                Wren.DeadTime.At(Wren.Volt(volts + moreVolts), Wren.Kpa(kilopascals))
                    <= Wren.DeadTime.At(Wren.Volt(volts), Wren.Kpa(kilopascals)) + Duration.FromNanoseconds(1)
                && Wren.DeadTime.At(Wren.Volt(volts), Wren.Kpa(kilopascals))
                    <= Wren.DeadTime.At(Wren.Volt(volts), Wren.Kpa(kilopascals + moreKilopascals)) + Duration.FromNanoseconds(1));

    [Fact]
    public void DeadTime_BetweenTwoPressures_IsLinear() =>
        Assert.Equal(
            (1.10 + 1.20) / 2, Wren.DeadTime.At(Wren.Volt(12), Wren.Kpa(350)).Milliseconds, 9);

    [Fact]
    public void DeadTime_BeyondTheTable_IsRefused()
    {
        Assert.Equal(
            "voltage",
            Assert.Throws<ArgumentOutOfRangeException>(() => Wren.DeadTime.At(Wren.Volt(7), Wren.Kpa(300))).ParamName);
        Assert.Equal(
            "differential",
            Assert.Throws<ArgumentOutOfRangeException>(() => Wren.DeadTime.At(Wren.Volt(12), Wren.Kpa(700))).ParamName);
        Assert.False(Wren.DeadTime.TryAt(Wren.Volt(12), Wren.Kpa(700), out _));
    }

    [Fact]
    public void DeadTime_ByVoltageAlone_SaysThatItIgnoresPressure()
    {
        DeadTimeTable table = DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.6)));
        Assert.True(table.IgnoresPressure);
        Assert.Equal(table.At(Wren.Volt(12), Wren.Kpa(200)), table.At(Wren.Volt(12), Wren.Kpa(900)));
    }

    [Fact]
    public void DeadTime_OutOfOrder_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(
            () => DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(12), Wren.Ms(1.2))));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => DeadTimeTable.ByVoltage((Wren.Volt(12), Wren.Ms(1)), (Wren.Volt(8), Wren.Ms(0.9))));
        Assert.Throws<ArgumentException>(
            () => DeadTimeTable.Of([Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(200), Wren.Kpa(300)], [[Wren.Ms(1), Wren.Ms(1)]]));
        Assert.Throws<ArgumentException>(
            () => DeadTimeTable.Of(
                [Wren.Volt(8), Wren.Volt(12)], [Wren.Kpa(200), Wren.Kpa(300)], [[Wren.Ms(1)], [Wren.Ms(1), Wren.Ms(1)]]));
    }

    [Fact]
    public void WithStaticFlow_ChangesTheFlowAlone()
    {
        Injector injector = Wren.InjectorOf(360).WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(440));
        Assert.Equal(440, injector.StaticFlow.MillilitersPerMinute, 9);
        Assert.Equal(
            440 / 360.0,
            injector.StaticFlowAt(Wren.Kpa(400), Fuel.Petrol, At15)
                / Wren.InjectorOf(360).StaticFlowAt(Wren.Kpa(400), Fuel.Petrol, At15),
            9);
        Assert.Equal(
            ("injector A", Wren.Kpa(300), TestFluid.Heptane, Wren.Ms(1.6), Wren.Kpa(550)),
            (injector.Name, injector.RatedDifferential, injector.TestFluid, injector.MinimumLinearPulse, injector.MaximumDifferential));
    }

    [Fact]
    public void Scaled_Set_HasEachInjectorsFlowTimesTheFactor()
    {
        InjectorSet set = InjectorSet.Of(Wren.InjectorOf(400), 6, 2).Scaled(0.97);
        Assert.Equal(388, set.Injector.StaticFlow.MillilitersPerMinute, 9);
        Assert.Equal((6, 2), (set.Count, set.InjectionsPerCycle));
    }

    /// <summary>Two pulses in a cycle have half the time each, so the same pulse is twice the duty.</summary>
    [Fact]
    public void DutyCycle_OfTwoInjectionsInACycle_IsTwice() =>
        Assert.Equal(
            2 * DutyCycle.Of(Wren.Ms(4), Wren.Rpm(6000), EngineCycle.FourStroke).Percent,
            DutyCycle.Of(Wren.Ms(4), Wren.Rpm(6000), EngineCycle.FourStroke, 2).Percent,
            9);

    [Fact]
    public void Injector_WithAPieceMissing_IsRefusedByName()
    {
        Refused.Missing(
            "testFluid",
            () => Injector.Of("i", Rated(360).StaticFlow, Wren.Kpa(300), null!, Wren.DeadTime, Wren.Ms(1), Wren.Kpa(500)));
        Refused.Missing(
            "deadTime",
            () => Injector.Of("i", Rated(360).StaticFlow, Wren.Kpa(300), TestFluid.Heptane, null!, Wren.Ms(1), Wren.Kpa(500)));
        Refused.Missing("fuel", () => Rated(360).StaticFlowAt(Wren.Kpa(300), null!, At15));
        Refused.Missing("fuel", () => Rated(360).StaticMassFlowAt(Wren.Kpa(300), null!, At15));
        Refused.Missing("injector", () => InjectorSet.Of(null!, 4));
        Refused.Missing("consumption", () => SizeInjector.ForPower(Power.FromKilowatts(200), null!, 4, Wren.Percent(85)));
    }

    [Fact]
    public void StaticFlow_AboveTheMaximumDifferential_IsRefused()
    {
        Assert.True(Rated(360).StaticFlowAt(Wren.Kpa(1200), Fuel.Petrol, At15).MillilitersPerMinute > 700);
        Refused.OutOfRange("differential", () => Rated(360).StaticFlowAt(Wren.Kpa(1200.1), Fuel.Petrol, At15));
    }
}
