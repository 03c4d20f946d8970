using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Warming runs at their edges: an engine that burns nothing, pumps that stand still, fuel at the end of its data. By the laws of a mass that takes up heat.</summary>
public class HeatBoundsTests
{
    private const double SpecificHeat = 2080;

    /// <summary>
    /// An engine that is sized for the fuel from power burns none under a closed throttle: all that is pumped returns, with all its heat, to a tank that stays full.
    /// Without walls it warms in proportion to time, Φ t/(m c); with walls of 5 W/K it nears T_0 + Φ/G with the time constant m c/G.
    /// </summary>
    [Fact]
    public void Tank_OfAnEngineThatBurnsNothing_WarmsAsAFixedMass()
    {
        OperatingPoint point = At(7000, -0.83, 20);
        HeatRun run = Overrun().WarmTank(Insulated, point, Duration.FromHours(2));
        Assert.Equal(0, run.Result.InjectedFlow.CubicMetersPerSecond);
        Assert.Equal(20, run.FuelLeft!.Value.Liters, 1e-9);
        double heat = (double)run.HeatToTank!.Value.Watts;
        Assert.Equal((double)run.PumpPower!.Value.Watts + 300, heat, 1e-9);

        double capacity = 0.020 * Fuel.Petrol.DensityAt(Celsius(20)).KilogramsPerCubicMeter * SpecificHeat;
        Assert.Equal(293.15 + (heat * 1200 / capacity), run.TankTemperatureAt(Duration.FromMinutes(20))!.Value.Kelvins, 1e-9);
        Assert.Equal(HeatAnswer.UsedUp, run.Answer);
        Duration used = run.TimeUntilUsedUp!.Value;
        Assert.Equal(10e3, run.VapourMarginAt(used)!.Value.Pascals, 0.1);
        double reached = 293.15 + (heat * used.Seconds / capacity);

        HeatRun walled = Overrun().WarmTank(Walled(1, 5, 15), point, Duration.FromMinutes(20));
        double steady = 288.15 + (heat / 5);
        double constant = capacity / 5;
        Assert.Equal(steady + ((293.15 - steady) * Math.Exp(-1200 / constant)), walled.TankTemperature!.Value.Kelvins, 1e-9);
        Assert.Equal(constant * Math.Log((293.15 - steady) / (reached - steady)), walled.TimeUntilUsedUp!.Value.Seconds, 1e-3);

        // 300 W and the pumps' power over 200 W/K are few kelvins, for ever.
        HeatRun cooled = Overrun().WarmTank(Walled(2, 100, 15), point, Duration.FromMinutes(20));
        Assert.Equal(288.15 + (heat / 200), cooled.SteadyTemperature!.Value.Kelvins, 1e-9);
        Assert.Equal(HeatAnswer.Never, cooled.Answer);
    }

    /// <summary>Volts times amperes of each pump that runs; between the boosts of a switch the state with more pumps, which brings more heat.</summary>
    [Fact]
    public void Pumps_OfSeveral_AllHeat_AndOneThatIsSwitchedOnlyWhereItMayRun()
    {
        HeatRun Run(PumpAssembly pumps, double bar) => With(pumps).WarmTank(Insulated, At(2500, bar, 20), Duration.FromMinutes(2));
        PumpAssembly both = PumpParallel.Of(Wired(1), Wired(0.8));
        PumpAssembly switched = PumpParallel.Of(Wired(1), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Wired(0.8)));
        HeatRun two = Run(both, 0.35);
        Assert.Equal(two.Result.Circuit.Pumps.Sum(pump => pump.Voltage.Volts * pump.Current!.Value.Amperes), (double)two.PumpPower!.Value.Watts, 1e-9);
        Assert.Equal(two.HeatToTank, Run(switched, 0.35).HeatToTank);
        Assert.Equal(Run(Wired(1), 0.2).HeatToTank, Run(switched, 0.2).HeatToTank);
        Assert.Equal(Run(Wired(1), 0.2).PumpPower, Run(switched, 0.2).PumpPower);

        // Of a second pump whose current nobody knows the heat is known only where it surely stands still.
        PumpAssembly unknown = PumpParallel.Of(Wired(1), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.Pump)));
        Assert.Equal("heat.no-current", Run(unknown, 0.35).Gap!.Code);
        Assert.Null(Run(unknown, 0.2).Gap);
    }

    [Fact]
    public void Run_WithoutFlowOrBeyondThePumpsData_SaysSo()
    {
        Assert.Equal(
            "heat.no-flow",
            With(SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Wired(1))).WarmTank(Insulated, At(2500, 0.2, 20), Duration.FromMinutes(2)).Gap!.Code);

        // A curve that ends at 200 kPa says nothing of 300 kPa.
        Pump cut = Pump.From(PumpCurve.WithCurrent(
            "pump C",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215), ElectricCurrent.FromAmperes(4.5)),
            (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(185), ElectricCurrent.FromAmperes(6))));
        Assert.Equal("heat.not-covered", With(cut).WarmTank(Insulated, At(2500, 0.2, 20), Duration.FromMinutes(2)).Gap!.Code);
    }

    /// <summary>
    /// What returns from the rail brings its share of the rail's heat; what returns at the tank never was there, and the injected fuel carries all of that heat away.
    /// </summary>
    [Fact]
    public void HeatOfTheRail_ComesBackOnlyWhereTheReturnPassesIt()
    {
        FuelSystem atRail = With(Wired(1));
        FuelSystem atTank = FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), Fixed.At(Wren.Kpa(350)), Wired(1));
        foreach ((FuelSystem system, bool passes) in new[] { (atRail, true), (atTank, false) })
        {
            HeatRun run = system.WarmTank(Insulated, At(3500, 0.1, 20), Duration.FromMinutes(1));
            CircuitState state = run.Result.SolvedCircuit.State;
            double pumps = (double)run.PumpPower!.Value.Watts;
            double flowing = run.Result.FuelDensity.KilogramsPerCubicMeter * SpecificHeat;
            Assert.Equal((pumps + (passes ? 300 : 0)) * state.ReturnFlow / state.Flow, (double)run.HeatToTank!.Value.Watts, 1e-9);

            // In the rail the part of the power that is pressure is not heat yet.
            double asHeat = pumps - ((state.RailGauge - state.InletGauge) * state.Flow);
            double warmer = passes
                ? (asHeat + 300) / (flowing * state.Flow)
                : (asHeat / (flowing * state.Flow)) + (300 / (flowing * run.Result.InjectedFlow.CubicMetersPerSecond));
            Assert.Equal(warmer, run.RailTemperature!.Value.Kelvins - run.TankTemperature!.Value.Kelvins, 1e-9);
        }
    }

    /// <summary>A regulator that holds 400 kPa give or take 60: the power is that at 460 kPa, and the share that returns is that at 340 kPa.</summary>
    [Fact]
    public void Heat_OfARegulatorWithHysteresis_TakesEachFactorAtItsHighest()
    {
        HeatRun Run(double kilopascals, double band) => With(Pump.From(Wren.WiredCurve(13.5, 1.4)))
            .With(Fixed.At(Wren.Kpa(kilopascals)).WithFlow(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(band))))
            .WarmTank(Insulated, At(3000, 0.1, 20), Duration.FromMinutes(5));
        HeatRun low = Run(340, 0);
        double returned = low.Result.ReturnedFlow!.Value / low.Result.PumpFlow!.Value;
        Assert.Equal(((double)Run(460, 0).PumpPower!.Value.Watts + 300) * returned, (double)Run(400, 60).HeatToTank!.Value.Watts, 1e-6);
    }

    /// <summary>Nothing returns from a pump that its controller slows: the tank settles where it began, at once or never without margin.</summary>
    [Fact]
    public void Tank_ThatNothingComesBackTo_StaysAsItBegan()
    {
        FuelSystem slowed = FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(7)),
            Pump.Of([Wren.WiredCurve(7, 0.42), Wren.WiredCurve(9, 0.6), Wren.WiredCurve(11, 0.78), Wren.WiredCurve(13.5, 1)]));
        HeatRun cold = slowed.WarmTank(Insulated, At(5500, 0.2, 21), Duration.FromMinutes(5));
        Assert.Equal((0, 294.15), ((double)cold.HeatToTank!.Value.Watts, Math.Round(cold.SteadyTemperature!.Value.Kelvins, 9)));
        Assert.Equal((HeatAnswer.Never, (Duration?)null), (cold.Answer, cold.TimeUntilUsedUp));
        HeatRun hot = slowed.WarmTank(Insulated, At(5500, 0.2, 60), Duration.FromMinutes(5));
        Assert.Equal((HeatAnswer.UsedUp, Duration.Zero), (hot.Answer, hot.TimeUntilUsedUp));
    }

    /// <summary>
    /// Fuel in the surge tank is some 4 K warmer than in the main tank: where that takes it past the 80 °C up to which vapour pressures are known, the margin is not
    /// known, though the main tank stays under 80 °C.
    /// </summary>
    [Fact]
    public void Margin_OfAnInletBeyondTheData_IsNotKnown()
    {
        FuelSystem system = With(Wired(1)).With(SurgeTanks.Bare())
            .With(Wren.Demand(FuelConsumption.Of(Fuel.Petrol.WithReidVapourPressure(Wren.Kpa(7)), 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))));
        HeatRun Run(double celsius, TankHeat? tank = null) => system.WarmTank(tank ?? Insulated, At(1500, -0.4, celsius), Duration.FromMinutes(1));
        HeatRun warm = Run(60);
        double rise = warm.InletTemperature!.Value.Kelvins - warm.TankTemperature!.Value.Kelvins;
        Assert.InRange(rise, 3.5, 4.9);
        Assert.NotNull(warm.VapourMargin);
        Assert.NotNull(warm.VapourMarginAtStart);

        // The inlet passes 80 °C in the run; and has passed it before.
        HeatRun during = Run(80 - rise - 0.1);
        Assert.True(during.TankTemperature < Celsius(80));
        Assert.Equal((true, false, HeatAnswer.CannotSay), (during.VapourMargin is null, during.VapourMarginAtStart is null, during.Answer));
        HeatRun before = Run(80 - rise + 0.1);
        Assert.Equal((true, true, HeatAnswer.CannotSay), (before.VapourMargin is null, before.VapourMarginAtStart is null, before.Answer));

        // Walls with which the main tank settles at 78 °C, the inlet at 82; or at 68 and 72.
        double conductance = (double)warm.HeatToTank!.Value.Watts / 8;
        Assert.Equal(HeatAnswer.CannotSay, Run(60, Walled(1, conductance, 70)).Answer);
        Assert.Equal(HeatAnswer.Never, Run(60, Walled(1, conductance, 60)).Answer);
    }

    /// <summary>A strainer and hose of a pump's own take pressure from its inlet alone: fuel boils there first.</summary>
    [Fact]
    public void Margin_BehindAPumpsOwnSuctionLine_IsThatAtItsInlet()
    {
        HeatRun run = With(PumpBranch.Of(Wired(1), suction: SurgeTanks.Suction)).WarmTank(Insulated, At(2500, 0.2, 20), Duration.FromMinutes(1));
        BranchResult own = Assert.Single(run.Result.Circuit.Branches);
        Assert.True(own.InletGauge < Pressure.FromPascals(-500));
        Assert.Equal(HeatPlace.PumpInlet, run.Place);
        Assert.Equal(
            Wren.Hill.Atmosphere.Pressure.Pascals + own.InletGauge.Pascals - Fuel.Petrol.VapourPressureAt(run.InletTemperature!.Value).Pascals,
            run.VapourMargin!.Value.Pascals,
            1e-6);
    }

    /// <summary>
    /// Over the highest voltage of its data a pump is known between bounds, and with a line of its own and a controller that may slow it its inlet is not followed: the
    /// tank's temperature is known all the same.
    /// </summary>
    [Fact]
    public void Margin_AtAnInletThatIsNotKnown_IsNotKnown()
    {
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(400), true, Wren.Volt(6)),
            PumpBranch.Of(Pump.From(Wren.WiredCurve(13.5, 0.7)), suction: SurgeTanks.Suction));
        HeatRun run = system.WarmTank(
            Insulated,
            OperatingPoint.At(Wren.Rpm(6500), Wren.Kpa(60), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14.5), Celsius(35)).WithTankTemperature(Celsius(20))),
            Duration.FromMinutes(1));
        Assert.Null(run.Gap);
        Assert.Equal("heat.no-inlet-pressure", run.VapourGap!.Code);
        Assert.Equal((HeatAnswer.CannotSay, true), (run.Answer, run.VapourMargin is null));
        Assert.Equal(20, run.TankTemperature!.Value.DegreesCelsius, 1e-9);
        Assert.Equal("the pressure at a pump's inlet is not known there", run.Text.ToString());
        Refused.Missing("style", () => run.In(null!));
    }

    private static readonly TankHeat Insulated = TankHeat.Of(Volume.FromLiters(20), Power.FromWatts(300));

    private static TankHeat Walled(double squareMetres, double coefficient, double ambient) => Insulated
        .WithWalls(Area.FromSquareMeters(squareMetres), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(coefficient)).WithAmbient(Celsius(ambient));

    private static FuelSystem Overrun() => FuelSystem.Return(
        FuelDemandModel.Of(Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Power),
        InjectorSet.Of(Wren.InjectorOf(500), 4),
        ManifoldReferenced.From(Wren.Kpa(300)),
        Wired(1));

    private static FuelSystem With(PumpAssembly pump) =>
        FuelSystem.Return(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), ManifoldReferenced.From(Wren.Kpa(300)), pump);

    private static Pump Wired(double scale) => Pump.Of([Wren.WiredCurve(12, 0.85 * scale), Wren.WiredCurve(13.5, scale)]);

    private static OperatingPoint At(double rpm, double bar, double tank) => OperatingPoint.At(
        Wren.Rpm(rpm), Pressure.FromBars(bar), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Celsius(35)).WithTankTemperature(Celsius(tank)));

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
