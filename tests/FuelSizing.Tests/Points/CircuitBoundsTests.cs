using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Circuits;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>Between which bounds a circuit's figures lie: by the states that are given, and by what each pump may give beside the others.</summary>
public class CircuitBoundsTests
{
    private static readonly WiredPlaces Nowhere = new(-1, -1, -1, -1, -1);

    /// <summary>As shown, with the least, with the most that data allow, and two more where the regulator's pressure is known between bounds.</summary>
    public static TheoryData<int> States => [0, 1, 2, 3, 4];

    /// <summary>One of five states has every figure 1 lower than the others, another every figure 1 higher: these are the bounds, whichever they are.</summary>
    [Theory]
    [MemberData(nameof(States))]
    public void Bounds_OfFiveStates_AreTheirLeastAndMost(int low)
    {
        CircuitState any = Solved(Wren.System()).State;
        CircuitState Moved(double by) => any with
        {
            RailGauge = 300 + by,
            InletGauge = -20 + by,
            OutletGauge = 320 + by,
            ReturnGauge = 10 + by,
            Flow = 5 + by,
            ReturnFlow = 3 + by,
            Held = 290 + by,
            State = by > 0 ? RailState.PumpFloor : RailState.Regulated,
        };
        CircuitState At(int state) => Moved(state == low ? -1 : state == (low + 2) % 5 ? 1 : 0);
        SolvedCircuit circuit = Open(Solved(Wren.System())) with { State = At(0), Lower = At(1), Upper = At(2), Flows = (At(3), At(4)) };
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.Bounds(circuit, null, Nowhere);
        Assert.Equal([299, -21, 319, 9, 4, 2, 289, 2, 0], Figures(minimum));
        Assert.Equal([301, -19, 321, 11, 6, 4, 291, 4, 1], Figures(maximum));
    }

    /// <summary>A regulator that holds its set pressure at any flow holds that in every state.</summary>
    [Fact]
    public void Regulated_OfARegulatorWithoutASlope_IsItsSetting()
    {
        SolvedCircuit circuit = Solved(Wren.System(Fixed.At(Wren.Kpa(310))));
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.Bounds(circuit, null, Nowhere);
        Assert.Equal((310e3, 310e3), (Math.Round((double)minimum.Regulated, 6), Math.Round((double)maximum.Regulated, 6)));
    }

    /// <summary>With a slope of 0.3 kPa for each L/h over the 60 L/h at which it is stated, what it holds at what returns; and at the least no more than stated.</summary>
    [Fact]
    public void Regulated_OfARegulatorWithASlope_FollowsWhatReturns()
    {
        RegulatorFlow slope = RegulatorFlow.Rising(Wren.Kpa(30), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60));
        SolvedCircuit circuit = Solved(Wren.System(Fixed.At(Wren.Kpa(310)).WithFlow(slope)));
        double returned = circuit.State.ReturnFlow * 3.6e6;
        Assert.True(returned > 70);
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.Bounds(circuit, null, Nowhere);
        Assert.Equal(310e3 + (300 * (returned - 60)), maximum.Regulated, 1e-3);
        Assert.Equal(310e3, minimum.Regulated, 1e-6);
    }

    /// <summary>
    /// With a tank that fills and one that is full a limit has to be kept in both states: of each figure the more counts, but for the inlet, which is lowest while the tank fills, and for what
    /// the regulator holds and passes, of which the less does.
    /// </summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 1)]
    public void Bounds_OfAFillingAndAFullTank_AreThoseThatALimitHasToKeep(double filling, double full)
    {
        CircuitValues<Real> Of(double value) => new()
        {
            Rail = value,
            Differential = value,
            InletGauge = value,
            OutletGauge = value,
            ReturnGauge = value,
            PumpFlow = value,
            Returned = value,
            Regulated = value,
            ThroughRegulator = value,
            FilterFlow = value,
            FeedDrop = value,
            WireCurrent = value,
            FuseCurrent = value,
            RelayCurrent = value,
            ConverterCurrent = value,
            AtPumpFloor = value,
        };
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.AlsoFull((Of(filling), Of(filling + 10)), (Of(full), Of(full + 10)));
        Assert.Equal([2, filling, 2, 2, 2, 2, 1, 1, 2], Figures(minimum));
        Assert.Equal([12, filling + 10, 12, 12, 12, 12, 12, 12, 12], Figures(maximum));

        // What is known of one state alone is the lower bound; an upper bound needs both.
        (minimum, maximum) = CircuitReading.AlsoFull((Of(filling), Of(filling)), (Of(double.NaN), Of(double.NaN)));
        Assert.Equal((filling, double.NaN), ((double)minimum.Rail, (double)maximum.Rail));
    }

    /// <summary>The relay of the first pump, and of the only one, is read as that of any other.</summary>
    [Fact]
    public void Relay_OfTheFirstPump_IsRead()
    {
        Feed feed = FeedOf().WithRelay(ElectricCurrent.FromAmperes(30));
        OperatingResult result = Wren.System().With(Wren.WiredPump.WithFeed(feed)).Solve(Wren.At(5500, 0.3));
        PointValues<Real> values = PointReading.Of(result);
        double current = result.SolvedCircuit.Pumps[0].Current!.Value;
        Assert.Equal((current, current, 30), ((double)values.Minimum.RelayCurrent, (double)values.Maximum.RelayCurrent, (double)values.RelayRating));
        LiftValues<Real> lift = PointReading.Of(Wren.System().With(SurgeTank.Of(
            Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve()).WithFeed(feed), ReturnDestination.SurgeTank)).Solve(Wren.At(2500, -0.2))).Lift;
        Assert.Equal((30, feed.AmpacityAmperes), ((double)lift.RelayRating, (double)lift.WireAmpacity));
    }

    /// <summary>Past the pumps' data not even a converter's current is known, and injectors are judged at the pressure that is set, which nothing raises.</summary>
    [Fact]
    public void Figures_PastThePumpsData_AreNotBounded()
    {
        PointValues<Real> values = PointReading.Of(Wren.System().With(Pump.From(Wren.WiredCurve(20, 1)).WithFeed(FeedOf())).Solve(Wren.At(5500, 0.3)));
        Assert.Equal((double.NaN, double.NaN), ((double)values.Minimum.ConverterCurrent, (double)values.Maximum.ConverterCurrent));
        Assert.Equal(((double)values.Differential, (double)values.Differential), ((double)values.Minimum.Differential, (double)values.Maximum.Differential));
        PointValues<Real> known = PointReading.Of(Wren.System().Solve(Wren.At(5500, 0.3)));
        Assert.Equal((0, 0), ((double)known.Minimum.ConverterCurrent, (double)known.Maximum.ConverterCurrent));
    }

    /// <summary>A regulator at the tank sets the pressure before the supply line: injectors see it less what that loses, at the least and at the most.</summary>
    [Fact]
    public void Differential_BehindALineFromTheRegulator_IsLessItsLoss()
    {
        SquareLawResistance supply = new(20e3 / (1e-5 * 1e-5));
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(), FuelSizing.Injectors.InjectorSet.Of(Wren.InjectorOf(360), 4), Fixed.At(Wren.Kpa(380)), Pump.From(Wren.Pump), plumbing: Plumbing.Of([], [supply], []));
        OperatingResult result = system.Solve(Wren.At(3000, 0.2));
        PointValues<Real> values = PointReading.Of(result);
        double injected = values.Injected;
        double differential = 380e3 - (20e3 * injected * injected / 1e-10) - 20e3;
        Assert.InRange(differential, 250e3, 355e3);
        Assert.Equal(differential, values.Minimum.Differential, 1e-3);
        Assert.Equal(differential, values.Maximum.Differential, 1e-3);
    }

    /// <summary>
    /// While a surge tank is full the return line into it begins at the tank's pressure, so that one which forces the rail up forces it higher: injectors may see that, and are judged at the
    /// pressure while it fills.
    /// </summary>
    [Fact]
    public void Differential_WithAFullSurgeTank_IsBoundedByTheRailThen()
    {
        Line thin = Line.Of("thin return", Length.FromMillimeters(3.2), Length.FromMeters(3), Roughness.DrawnTube);
        OperatingResult result = Wren.System(Fixed.At(Wren.Kpa(250)), pump: 1.2).With(Plumbing.Of([], [], [thin])).With(SurgeTank.Of(
            Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.4)), ReturnDestination.SurgeTank, overflow: SurgeTanks.Overflow)).Solve(Wren.At(3000, 0.2));
        PointValues<Real> values = PointReading.Of(result);
        double full = result.SolvedCircuit.Lift!.MainFull!.Value.State.RailGauge;
        Assert.True(full > result.SolvedCircuit.Rail + 500);
        Assert.Equal(result.SolvedCircuit.Rail - 20e3, values.Minimum.Differential, 1e-6);
        Assert.Equal(full - 20e3, values.Maximum.Differential, 1e-6);
    }

    /// <summary>One description of a filter may stand in two branches: it is read by the branch that passes more, whichever is named first.</summary>
    [Theory]
    [InlineData(1, 0.7)]
    [InlineData(0.7, 1)]
    public void Filter_InTwoBranches_IsReadByTheOneThatPassesMore(double first, double second)
    {
        Filter strainer = Filter.Of("strainer", VolumeFlow.FromLitersPerHour(260), Wren.Kpa(6));
        PumpBranch Of(double scale) => PumpBranch.Of(Pump.From(Wren.PumpOf(scale)), [], [strainer]);
        OperatingResult result = Wren.System().With(PumpParallel.Of(Of(first), Of(second))).Solve(Wren.At(5000, 0.4));
        double[] flows = [.. result.Circuit.Branches.Select(branch => branch.Flow.CubicMetersPerSecond)];
        Assert.True(flows.Max() > flows.Min() * 1.2);
        PointValues<Real> values = PointReading.Of(result);
        Assert.Equal(flows.Max(), values.Minimum.FilterFlow, 1e-15);
        Assert.Equal(flows.Max(), values.Maximum.FilterFlow, 1e-15);
    }

    /// <summary>
    /// Two pumps on more voltage than they were measured at, each behind lines of its own: each may give what it did at its own voltage or what the affinity laws make of that, and the one may do
    /// the one thing while the other does the other. All four cars, solved with pumps whose data covers the point, lie within the bounds; and no bound is wider by more than the range of the four.
    /// </summary>
    [Theory]
    [InlineData(300, 0.3, 64)]
    [InlineData(430, 0.5, 64)]
    [InlineData(100, 0.05, 300)]
    public void Bounds_OfBranches_HoldEveryPairOfTheirReadings(double kilopascals, double boost, double back)
    {
        Filter strainer = Filter.Of("strainer", VolumeFlow.FromLitersPerHour(400), Wren.Kpa(20));
        SquareLawResistance suction = new(8e3 / (5e-5 * 5e-5));
        SquareLawResistance discharge = new(15e3 / (5e-5 * 5e-5));
        SquareLawResistance line = new(back * 1e3 / (2e-5 * 2e-5));
        Pump one = Pump.From(CurveOf([(0, 3.1e-5), (300e3, 2.3e-5), (700e3, 0)], 12));
        Pump other = Pump.From(CurveOf([(0, 3.4e-5), (250e3, 2.9e-5), (800e3, 0)], 12));
        FuelSystem Car(Pump first, Pump second) => Wren.System(Fixed.At(Wren.Kpa(kilopascals)))
            .With(PumpParallel.Of(PumpBranch.Of(first, [suction], [discharge]), PumpBranch.Of(second, [suction], [strainer])))
            .With(Plumbing.Of([new SquareLawResistance(2e3 / (5e-5 * 5e-5))], [], [line]));
        OperatingPoint point = Wren.At(3000, boost);
        OperatingResult open = Car(one, other).Solve(point);
        Assert.False(open.SolvedCircuit.IsExact);
        Assert.DoesNotContain(open.SolvedCircuit.States, state => state.State == RailState.NotCovered);
        PointValues<Real> values = PointReading.Of(open);
        PumpReading[] readings = [PumpReading.Lower, PumpReading.Upper];
        CircuitValues<Real>[] four =
        [
            .. readings.SelectMany(first => readings.Select(second => Car(
                Pump.From(CurveOf(Points(one, 13.5, first), 13.5)), Pump.From(CurveOf(Points(other, 13.5, second), 13.5))).Solve(point)))
                .Select(result =>
                {
                    Assert.True(result.SolvedCircuit.IsExact);
                    return PointReading.Of(result).Maximum;
                }),
        ];
        foreach (Func<CircuitValues<Real>, double> figure in (Func<CircuitValues<Real>, double>[])[of => of.InletGauge, of => of.OutletGauge, of => of.FilterFlow])
        {
            (double least, double most) = (four.Min(figure), four.Max(figure));
            double trace = 1e-6 * Math.Abs(most);
            Assert.InRange(figure(values.Minimum), least - (most - least) - trace, least + trace);
            Assert.InRange(figure(values.Maximum), most - trace, most + (most - least) + trace);
        }
    }

    /// <summary>Past the data of a pump in a branch nothing is claimed of its inlet, its outlet and its filter; nor of pumps that a controller slows.</summary>
    [Fact]
    public void Bounds_OfBranchesPastTheirData_AreNotKnown()
    {
        Filter strainer = Filter.Of("strainer", VolumeFlow.FromLitersPerHour(400), Wren.Kpa(20));
        PumpBranch Of(Pump pump) => PumpBranch.Of(pump, [new SquareLawResistance(8e3 / (5e-5 * 5e-5))], [strainer]);

        // Open at 200 kPa: against 300 kPa the least is nothing, and the most not known.
        Pump endsEarly = Pump.From(CurveOf([(0, 3e-5), (200e3, 2.5e-5)], 13.5));
        SolvedCircuit circuit = Wren.System(Fixed.At(Wren.Kpa(300))).With(PumpParallel.Of(Of(Pump.From(Wren.Pump)), Of(endsEarly))).Solve(Wren.At(3000, 0.2)).SolvedCircuit;
        Assert.False(circuit.IsExact);
        Assert.True(circuit.IsCovered);
        SolvedCircuit partly = circuit with { Upper = circuit.Upper with { State = RailState.NotCovered } };
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.Bounds(partly, strainer, Nowhere);
        Assert.All(
            (double[])[minimum.InletGauge, minimum.OutletGauge, minimum.FilterFlow, maximum.InletGauge, maximum.OutletGauge, maximum.FilterFlow],
            figure => Assert.Equal(double.NaN, figure));
        (minimum, maximum) = CircuitReading.Bounds(circuit with { Task = circuit.Task with { MinimumSupply = 7 } }, strainer, Nowhere);
        Assert.Equal((double.NaN, double.NaN), ((double)minimum.InletGauge, (double)maximum.OutletGauge));
        Assert.True(double.IsFinite(minimum.Rail));
    }

    /// <summary>What lines lose is that of the coldest fuel, wherever it is: in the tank, at the pump's inlet or in the rail.</summary>
    [Theory]
    [InlineData(20, 30, 40)]
    [InlineData(30, 20, 40)]
    [InlineData(40, 30, 20)]
    [InlineData(30, 40, 20)]
    public void Viscosity_IsThatOfTheColdestFuel(double tank, double inlet, double rail)
    {
        Conditions conditions = Conditions.Of(Atmosphere.Standard, Wren.Volt(13.5), Celsius(rail)).WithTankTemperature(Celsius(tank)).WithInletTemperature(Celsius(inlet));
        Assert.Equal(293.15, conditions.ColdestKelvins, 1e-9);
    }

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);

    private static SolvedCircuit Solved(FuelSystem system) => system.Solve(Wren.At(3000, 0.2)).SolvedCircuit;

    /// <summary>The same with lists of pumps of their own for each bound, as where data leaves several states open.</summary>
    private static SolvedCircuit Open(in SolvedCircuit circuit) => circuit with { LowerPumps = [.. circuit.Pumps], UpperPumps = [.. circuit.Pumps] };

    private static double[] Figures(in CircuitValues<Real> of) =>
        [of.Rail, of.InletGauge, of.OutletGauge, of.ReturnGauge, of.PumpFlow, of.Returned, of.Regulated, of.ThroughRegulator, of.AtPumpFloor];

    /// <summary>What a pump delivers at a voltage by one reading of its data: at its corners and between.</summary>
    private static (double Pascals, double Flow)[] Points(Pump pump, double volts, PumpReading reading)
    {
        RunningPumps running = pump.Running(volts, reading);
        return
        [
            .. Enumerable.Range(0, 400).Select(step => running.Deadhead * step / 400).Select(rise => (rise, running.FlowAt(rise))),
            (running.Deadhead, 0),
        ];
    }

    private static PumpCurve CurveOf((double Pascals, double Flow)[] points, double volts) => PumpCurve.At(
        "pump", Wren.Volt(volts), [.. points.Select(point => (Pressure.FromPascals(point.Pascals), VolumeFlow.FromCubicMetersPerSecond(point.Flow)))]);

    private static Feed FeedOf() => Feed.Of(
        "feed", Conductor.Awg(12), Length.FromMeters(2), Length.FromMeters(2), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse)
        .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(45));
}
