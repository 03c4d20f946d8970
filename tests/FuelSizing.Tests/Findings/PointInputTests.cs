using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Systems;
using UnitsNet;
using Comparison = FuelSizing.Findings.Comparison;

namespace FuelSizing.Tests.Findings;

/// <summary>What the plan says of a point of a run is what the forward solver says of it.</summary>
public class PointInputTests
{
    private static readonly FuelSystem Piped = PulledWren.Plan.With(Plumbing.Of(
        suction: [Filter.Of("strainer", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(3))],
        supply:
        [
            Line.Of("supply line", Length.FromMillimeters(8), Length.FromMeters(4), Roughness.DrawnTube),
            Filter.Of("filter", VolumeFlow.FromLitersPerHour(150), Wren.Kpa(15), 1.5),
        ]));

    [Fact]
    public void Point_IsWhatTheSolverHasThere()
    {
        RunCheck check = RunCheck.Of(Piped, Wren.Hill, driveLoss: Ratio.FromPercent(15), discrepancy: ModelDiscrepancy.None);
        IReadOnlyList<OperatingResult> solved = ExactRun.Solved(Piped);
        RunModel model = check.Model(ExactRun.Of(Piped));
        Assert.Equal(solved.Count, model.Inputs.Count);
        foreach ((OperatingResult at, PointInput input) in solved.Zip(model.Inputs))
        {
            double density = at.FuelDensity.KilogramsPerCubicMeter;
            Assert.Equal(at.Point.Speed.RevolutionsPerSecond, input.Speed, 9);
            Assert.Equal(at.Point.Boost.Pascals, input.Boost, 1e-3);
            Assert.Equal(at.RailGauge.Pascals, input.Rail, 1e-3);
            Assert.Equal(at.Point.Conditions.SupplyVoltage.Volts, input.Volts, 9);
            Assert.Equal(at.InjectorDifferential.Pascals, input.Differential, 1e-3);
            Assert.Equal(at.AvailableTime.Seconds, input.Available, 12);
            Assert.Equal((at.Pulse!.Value - at.DeadTime!.Value).Seconds, input.Open, 12);
            Assert.Equal(at.InjectedFlow.CubicMetersPerSecond, input.Meter, 1e-12);
            Assert.Equal(at.InjectedFlow.CubicMetersPerSecond, input.Flow, 1e-12);
            Assert.Equal(at.InjectedFlow.CubicMetersPerSecond, check.Injected(input, input.Differential, input.Open), 1e-10);
            Assert.Equal(0.82, input.Lambda);
            Assert.Equal(density, input.Density, 6);
            Assert.True(input.Injects);
            Assert.False(input.ReturnFloor);

            // Power at the wheels is 85 % of the crank's.
            double bsfc = Piped.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule;
            Assert.Equal(at.Demand.MassFlow.KilogramsPerSecond / bsfc / 0.85, input.Power, 1e-3);
            Assert.Equal(Math.Log(density / bsfc), input.LogWork, 9);

            // At lambda 0.82 the air burns 1/0.82 of the fuel that it burns at 1.
            Assert.Equal(Math.Log(at.Demand.FromAir.KilogramsPerSecond * 0.82 / density), input.LogStoichiometric, 9);
            double Air(double off) => Piped.Demand.At(at.Point.Speed, at.Point.Boost + Pressure.FromPascals(off), PulledWren.Air).AirMassFlow.KilogramsPerSecond;
            Assert.Equal(Math.Log(Air(0) / Air(-1000)) / 1000, input.AirByPressure, 1e-12);

            double flow = at.InjectedFlow.CubicMetersPerSecond;
            double Loss(double at) => at is > 0 ? Lost(Piped.Plumbing.Suction, at, density) + Lost(Piped.Plumbing.Supply, at, density) : 0;
            Assert.Equal(Loss(flow), input.Loss, 1e-6);
            Assert.Equal(Lost(Piped.Plumbing.Supply, flow, density), input.SupplyLoss, 1e-6);
            Assert.Equal((Loss(flow * 1.01) - Loss(flow * 0.99)) / 0.02, input.LossByFlow, 0.03 * input.LossByFlow);

            // New, the strainer takes what it is rated for and the filter two thirds of what it takes now.
            Assert.Equal(
                Lost([Piped.Plumbing.Suction[0]], flow, density) + (Lost([Piped.Plumbing.Supply[1]], flow, density) / 1.5), input.FilterLoss, 1e-6);
            double rise = Math.Abs(check.Pumps.Rise(flow * 1.05, input.Volts, 0) - check.Pumps.Rise(flow * 0.95, input.Volts, 0)) / 0.1;
            Assert.Equal(rise, input.RiseByFlow(check), 1e-6);
            Assert.True(rise > 10e3);
        }
    }

    /// <summary>Near full load is down to 15 % of the ambient pressure under it.</summary>
    [Theory]
    [InlineData(-0.149, true)]
    [InlineData(-0.151, false)]
    public void FullLoad_IsDownToFifteenPerCentOfAmbient(double share, bool full) =>
        Assert.Equal(full, Input(Row with { Manifold = PulledWren.Air.Pressure * (1 + share) }).FullLoad);

    /// <summary>Without rail pressure, the regulator's: 300 + 20 + 3 · 15 = 365 kPa at 35 kPa boost, 330 kPa across the injector.</summary>
    [Fact]
    public void Differential_WithoutRailPressure_IsAtTheRegulatorsSetting() =>
        Assert.Equal(330e3, Input(Row with { Rail = null }).Differential, 1e-3);

    /// <summary>Without a compressor a little boost is scatter: the air is that of none.</summary>
    [Fact]
    public void Air_OfADrawingEngine_IsThatWithoutBoost()
    {
        RunCheck drawn = RunCheck.Of(OddRunTests.Plan("drawn"), Wren.Hill);
        PointInput At(double kilopascals) => Assert.Single(drawn.Model(RecordedRun.Of(
            "row", PulledWren.Air, [(Row with { Manifold = PulledWren.Air.Pressure + Wren.Kpa(kilopascals) }).Row(1)])).Inputs);
        Assert.Equal(At(0).LogStoichiometric, At(3).LogStoichiometric, 12);
        Assert.True(At(-3).LogStoichiometric < At(0).LogStoichiometric);
        Assert.True(Input(Row with { Manifold = PulledWren.Air.Pressure + Wren.Kpa(3) }).LogStoichiometric > Input(Row with { Manifold = PulledWren.Air.Pressure }).LogStoichiometric);
    }

    /// <summary>Voltage and fuel temperature that were not recorded are the planned ones; a temperature beyond what fuels are given for is taken at that end.</summary>
    [Fact]
    public void Conditions_ThatWereNotRecorded_AreThePlanned()
    {
        PointInput bare = Input(Row with { Volts = null, Fuel = null });
        Assert.Equal(13.5, bare.Volts);
        Assert.Equal(Density(35), bare.Density, 6);
        Assert.Equal(Density(10), Input(Row with { Fuel = Temperature.FromDegreesCelsius(10) }).Density, 6);
        Assert.Equal(Density(80), Input(Row with { Fuel = Temperature.FromDegreesCelsius(120) }).Density, 6);
        Assert.Equal(Density(-30), Input(Row with { Fuel = Temperature.FromDegreesCelsius(-45) }).Density, 6);
        Assert.Equal(12.1, Input(Row with { Volts = Wren.Volt(12.1) }).Volts, 9);
    }

    /// <summary>The flow meter counts first, then the injectors; without pulse the plan's demand; a pulse that never opens says nothing.</summary>
    [Fact]
    public void Flow_IsByMeterElseByInjectorsElseAsPlanned()
    {
        Assert.Equal(47 / 3.6e6, Input(Row with { Flow = VolumeFlow.FromLitersPerHour(47) }).Flow, 12);
        foreach (double reading in new[] { -3.0, 0.0 })
        {
            PointInput dead = Input(Row with { Flow = VolumeFlow.FromLitersPerHour(reading) });
            Assert.True(double.IsNaN(dead.Meter));
            Assert.Equal(PulledWren.Check.Injected(dead, dead.Differential, dead.Open), dead.Flow, 15);
        }

        PointInput still = Input(Row with { Pulse = null });
        Assert.False(still.Injects);
        Assert.True(double.IsNaN(still.Open));
        OperatingResult at = PulledWren.Check.PlanAt(Row.Row(1), PulledWren.Air)!;
        Assert.Equal(at.InjectedFlow.CubicMetersPerSecond, still.Flow, 1e-12);

        PointInput closed = Input(Row with { Pulse = Wren.Ms(0.4) });
        Assert.False(closed.Injects);
        Assert.True(closed.Open < 0);
        Assert.True(double.IsNaN(closed.Flow));
        Assert.Equal(0, closed.Loss);
        Assert.Equal(0, closed.FilterLoss);

        // A rail that lies under the manifold injects nothing, however long the pulse.
        PointInput under = Input(Row with { Rail = Wren.Kpa(20) });
        Assert.False(under.Injects);
        Assert.True(double.IsNaN(under.Flow));

        // Nor can a voltage that the dead time's table does not cover be told.
        PointInput low = Input(Row with { Volts = Wren.Volt(7) });
        Assert.False(low.Injects);
        Assert.True(double.IsNaN(low.Flow));
    }

    /// <summary>What the manifold sensor showed at rest is taken off: 2 kPa, so that 37 kPa as read are 35.</summary>
    [Fact]
    public void Boost_IsLessTheSensorsZero()
    {
        Cells rest = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure + Wren.Kpa(2) };
        RunModel model = PulledWren.Check.Model(RecordedRun.Of(
            "rest", PulledWren.Air, [.. Enumerable.Range(1, 5).Select(rest.Row), (Row with { Manifold = Row.Manifold + Wren.Kpa(2) }).Row(6)]));
        Assert.Equal(35e3, Assert.Single(model.Inputs).Boost, 1e-3);
        Assert.Equal(Input(Row).Differential, model.Inputs[0].Differential, 1e-3);
    }

    /// <summary>A plan without filters may have a restriction: 10 kPa at the pump's most flow, with the flow's square.</summary>
    [Fact]
    public void Restriction_OfAPlanWithoutFilter_IsTenKilopascalsAtTheMostFlow()
    {
        RunCheck bare = RunCheck.Of(PulledWren.Plan.With(Plumbing.None), Wren.Hill);
        Assert.False(bare.HasFilter);
        Assert.True(PulledWren.Check.HasFilter);
        double most = bare.Pumps.MaximumFlow;
        Assert.Equal(10e3, bare.NewFilterLoss(most, 740, 6e-7), 1e-6);
        Assert.Equal(0, bare.Model(ExactRun.Of(PulledWren.Plan)).Inputs[3].Loss);
        Assert.InRange(bare.NewFilterLoss(most / 2, 740, 6e-7), 2.4e3, 5.1e3);
    }

    /// <summary>A return line so narrow that it holds the rail over the setting where hardly any fuel is burnt: the solver's own state says where.</summary>
    [Theory]
    [InlineData(2.0)]
    [InlineData(5.0)]
    public void ReturnFloor_IsWhereTheSolverHasOne(double millimetres)
    {
        FuelSystem plan = PulledWren.Plan.With(Plumbing.Of(
            returnLine: [Line.Of("return line", Length.FromMillimeters(millimetres), Length.FromMeters(4), Roughness.DrawnTube)]));
        RunCheck check = RunCheck.Of(plan, Wren.Hill);
        RunModel model = check.Model(ExactRun.Of(plan));
        bool[] floor = [.. ExactRun.Solved(plan).Select(at => at.RailState == RailState.ReturnFloor)];
        Assert.Equal(floor, model.Inputs.Select(input => input.ReturnFloor));
        Assert.Equal(millimetres < 4, floor.Contains(true));
        Assert.Contains(false, floor);
        int rails = Enumerable.Range(0, model.Comparisons).Count(row => model.Describe(row).Kind == Comparison.Rail);
        Assert.Equal(floor.Count(one => !one), rails);
    }

    private static readonly Cells Row = new()
    {
        Speed = Wren.Rpm(4000),
        Manifold = PulledWren.Air.Pressure + Wren.Kpa(35),
        Rail = Wren.Kpa(365),
        Pulse = Wren.Ms(9),
        Volts = Wren.Volt(13.5),
    };

    private static double Density(double celsius) =>
        PulledWren.Plan.Demand.Consumption.Fuel.DensityAt(Temperature.FromDegreesCelsius(celsius)).KilogramsPerCubicMeter;

    private static PointInput Input(Cells row) =>
        Assert.Single(RunCheck.Of(PulledWren.Plan, Wren.Hill).Model(RecordedRun.Of("row", PulledWren.Air, [row.Row(1)])).Inputs);

    private static double Lost(IReadOnlyList<IFlowLoss> path, double flow, double density) => path.Sum(part => part.LossPascals(
        flow, density, PulledWren.Plan.Demand.Consumption.Fuel.KinematicViscosityAtKelvins(ExactRun.Fuel.Kelvins)));
}
