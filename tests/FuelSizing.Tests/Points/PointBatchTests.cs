using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>Points by the column come out as points one by one.</summary>
public class PointBatchTests
{
    /// <summary>
    /// Of the larger of the terms that make up a result: exponential and logarithm come from different code in the two
    /// number types, and each is good to an ulp or two.
    /// </summary>
    private const double Bound = 1e-14;

    private static readonly FuelSystem[] Systems =
    [
        Wren.System(),
        Wren.System(Fixed.At(Wren.Kpa(400)), injector: 550),
        Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10), Wren.Kpa(480))),
        Wren.System(RegulatorSeries.Of(Fixed.At(Wren.Kpa(250)), RisingRate.From(Wren.Kpa(0), 6, Wren.Kpa(20), Wren.Kpa(450)))),
        FuelSystem.Return(
            Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(60), Wren.Percent(0), Wren.Kpa(3), Wren.Percent(92))),
            InjectorSet.Of(InjectorWithout(), 8, injectionsPerCycle: 2),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.PumpOf(3))),
        Wren.System(RisingRate.From(Wren.Kpa(250), 4, Wren.Kpa(5), Wren.Kpa(520))).With(InjectorSet.Of(
            Wren.InjectorOf(470).WithMeasuredFlows(
                (Wren.Kpa(180), VolumeFlow.FromMillilitersPerMinute(352)),
                (Wren.Kpa(380), VolumeFlow.FromMillilitersPerMinute(540)),
                (Wren.Kpa(450), VolumeFlow.FromMillilitersPerMinute(562))),
            4)),
        FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(440), 4),
            Fixed.At(Wren.Kpa(420)),
            Pump.From(Wren.PumpOf(3)),
            plumbing: Plumbing.Of(supply:
            [
                Line.Of("supply", Length.FromMillimeters(7), Length.FromMeters(4), Roughness.DrawnTube),
                Filter.Of("filter", VolumeFlow.FromLitersPerHour(120), Wren.Kpa(12)),
            ])),
    ];

    private static readonly Gen<(double Speed, double Boost, double Lambda, double Volts)> Point = Gen.Select(
        Gen.Frequency((1, Gen.Const(800 / 60.0)), (1, Gen.Const(120.0)), (20, Gen.Double[800 / 60.0, 120])),
        Gen.Double[-70e3, 120e3].Select(InPascals),
        Gen.Double[0.6, 1.2],
        Gen.Double[6, 20]);

    [Fact]
    public void Evaluate_OfAnyPoints_GivesWhatSolveGives() =>
        Gen.Select(Gen.OneOfConst(Systems), Point.Array[1, 20]).Sample(
            (system, points) =>
            {
                Columns batch = new(points.Length);
                PointBatch.Of(system.Parts, Wren.Hill).Evaluate(
                    new() { Speed = Array.ConvertAll(points, p => p.Speed), Boost = Array.ConvertAll(points, p => p.Boost) },
                    batch.Outputs);
                for (int i = 0; i < points.Length; i++)
                {
                    OperatingResult alone = system.Solve(OperatingPoint.At(
                        RotationalSpeed.FromRevolutionsPerSecond(points[i].Speed), Pressure.FromPascals(points[i].Boost), Wren.Hill));
                    if (alone.RailState != RailState.Regulated)
                    {
                        continue;
                    }

                    // Power is what friction leaves of indicated power: the error is of their size.
                    double power = (double)alone.Demand.BrakePower.Kilowatts;
                    double scale = Math.Max(1, (power + 40) / Math.Max(1e-3, power));
                    double fuel = alone.InjectedFlow.CubicMetersPerSecond;
                    Close(fuel, batch.FuelFlow[i], scale);
                    Close(alone.RailGauge.Pascals, batch.RailGauge[i], scale);
                    Close(alone.InjectorDifferential.Pascals, batch.Differential[i], scale * 2);
                    Close(alone.StaticFlow?.CubicMetersPerSecond ?? double.NaN, batch.StaticFlow[i], scale * 2);
                    Close(alone.Pulse?.Seconds ?? double.NaN, batch.Pulse[i], scale * 2);
                    Close(alone.DutyCycle?.DecimalFractions ?? double.NaN, batch.DutyCycle[i], scale * 2);
                    double reserve = alone.Margins.First(margin => margin.Part == Part.Injectors).Share ?? double.NaN;
                    Close(1 + reserve, 1 + batch.InjectorReserve[i], scale * 2);
                }
            },
            iter: 1_000);

    [Fact]
    public void Evaluate_WithItsOwnLambdaAndVoltage_GivesWhatASystemOfThemGives() =>
        Point.Array[1, 12].Sample(
            points =>
            {
                Columns batch = new(points.Length);
                PointBatch.Of(Systems[0].Parts, Wren.Hill).Evaluate(Inputs(points), batch.Outputs);
                for (int i = 0; i < points.Length; i++)
                {
                    (double speed, double boost, double lambda, double volts) = points[i];
                    FuelConsumption rich = FuelConsumption.Of(
                        Wren.Petrol.Fuel, lambda, Wren.Petrol.BrakeSpecificFuelConsumption);
                    Conditions fed = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature);
                    Columns alone = new(1);
                    PointBatch.Of(Wren.System(consumption: rich).Parts, fed).Evaluate(
                        new() { Speed = [speed], Boost = [boost] }, alone.Outputs);
                    Close(alone.FuelFlow[0], batch.FuelFlow[i], 1);
                    Close(alone.DutyCycle[0], batch.DutyCycle[i], 1);
                }
            },
            iter: 200);

    [Fact]
    public void Evaluate_InEveryWidth_GivesTheSame() =>
        Gen.Select(Gen.OneOfConst(Systems), Point.Array[1, 40]).Sample(
            (system, points) =>
            {
                PointKernel kernel = new(system.Parts, Wren.Hill);
                Columns one = new(points.Length);
                Assert.Equal(-1, kernel.Evaluate<Real>(new(Inputs(points), one.Outputs)));
                Columns two = new(points.Length);
                Assert.Equal(-1, kernel.Evaluate<TwoLanes>(new(Inputs(points), two.Outputs)));
                Columns four = new(points.Length);
                Assert.Equal(-1, kernel.Evaluate<FourLanes>(new(Inputs(points), four.Outputs)));
                Columns eight = new(points.Length);
                Assert.Equal(-1, kernel.Evaluate<Lanes>(new(Inputs(points), eight.Outputs)));
                for (int i = 0; i < points.Length; i++)
                {
                    // Power may be a small difference; fuel from air is not, and these systems take the larger.
                    foreach (Columns other in new[] { two, four, eight })
                    {
                        Close(one.FuelFlow[i], other.FuelFlow[i], 3);
                        Close(one.DutyCycle[i], other.DutyCycle[i], 10);
                    }
                }
            },
            iter: 1_000);

    [Fact]
    public void Evaluate_OfAPoint_GivesTheSameBitsWhereverItStands() =>
        Gen.Select(Point.Array[33], Gen.Int[0, 33], Gen.Int[0, 33]).Sample(
            (points, one, other) =>
            {
                PointBatch batch = PointBatch.Of(Systems[3].Parts, Wren.Hill);
                Columns all = new(points.Length);
                batch.Evaluate(Inputs(points), all.Outputs);
                (int from, int to) = (Math.Min(one, other), Math.Max(one, other));
                Columns some = new(to - from);
                batch.Evaluate(Inputs(points[from..to]), some.Outputs);
                for (int column = 0; column < all.All.Length; column++)
                {
                    Assert.Equal(all.All[column][from..to], some.All[column]);
                }
            },
            iter: 500);

    [Fact]
    public void Evaluate_OnTwoThreads_GivesTheSameBits()
    {
        (double, double, double, double)[] points = Many(50_001);
        PointBatch batch = PointBatch.Of(Systems[0].Parts, Wren.Hill);
        Columns alone = new(points.Length);
        batch.Evaluate(Inputs(points), alone.Outputs);
        Columns shared = new(points.Length);
        batch.Evaluate(Inputs(points), shared.Outputs, threads: 2);
        for (int column = 0; column < alone.All.Length; column++)
        {
            Assert.Equal(alone.All[column], shared.All[column]);
        }
    }

    /// <summary>Threads take 2,048 points at a time: the last take is one short, full, a single point, or there are more threads than takes.</summary>
    [Theory]
    [InlineData(4_095, 2)]
    [InlineData(4_096, 2)]
    [InlineData(4_097, 2)]
    [InlineData(6_003, 3)]
    [InlineData(6_003, 256)]
    public void Evaluate_OnThreadsThatShareUnevenly_GivesTheSameBits(int count, int threads)
    {
        (double, double, double, double)[] points = Many(count);
        PointBatch batch = PointBatch.Of(Systems[0].Parts, Wren.Hill);
        (Columns alone, Columns shared) = (new(count), new(count));
        Assert.Equal(count, batch.Evaluate(Inputs(points), alone.Outputs));
        Assert.Equal(count, batch.Evaluate(Inputs(points), shared.Outputs, threads));
        Assert.All(alone.All.Zip(shared.All), column => Assert.Equal(column.First, column.Second));
    }

    [Theory]
    [InlineData(11, 1)]
    [InlineData(5_003, 2)]
    public void Evaluate_WithSomeColumnsOnly_WritesThose(int count, int threads)
    {
        (double, double, double, double)[] points = Many(count);
        PointBatch batch = PointBatch.Of(Systems[0].Parts, Wren.Hill);
        double[][] columns = Split(points);
        (Columns all, Columns plain) = (new(count), new(count));
        (double[] duty, double[] rail) = (new double[count], new double[count]);
        batch.Evaluate(Inputs(points), all.Outputs);
        batch.Evaluate(Inputs(points), new() { DutyCycle = duty }, threads);
        Assert.Equal(all.DutyCycle, duty);
        batch.Evaluate(new() { Speed = columns[0], Boost = columns[1] }, plain.Outputs);
        batch.Evaluate(new() { Speed = columns[0], Boost = columns[1] }, new() { DutyCycle = duty, RailGauge = rail }, threads);
        Assert.Equal(plain.DutyCycle, duty);
        Assert.Equal(plain.RailGauge, rail);
    }

    /// <summary>The cautious demand is the larger of the two estimates; of a system that takes one, a batch takes that one.</summary>
    [Theory]
    [InlineData(DemandBasis.Larger)]
    [InlineData(DemandBasis.Air)]
    [InlineData(DemandBasis.Power)]
    public void Evaluate_ByEitherComputeing_GivesItsFuel(DemandBasis basis)
    {
        // The greedy engine burns more by its power than by its air, the frugal one less.
        foreach (double consumption in new[] { 420, 250 })
        {
            FuelDemandModel demand = FuelDemandModel.Of(
                Wren.Engine,
                Wren.Turbocharger,
                Wren.VolumetricEfficiency,
                Wren.Power,
                Wren.Percent(85),
                FuelConsumption.Of(Wren.Petrol.Fuel, 0.9, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(consumption)),
                basis);
            FuelSystem system = FuelSystem.Return(demand, Systems[0].Injectors, Systems[0].Regulator, Systems[0].Pump);
            FuelDemand alone = system.Solve(Wren.At(6000, 0.3)).Demand;
            (double air, double power) = (alone.FromAir.KilogramsPerSecond, alone.FromPower.KilogramsPerSecond);
            Assert.True(consumption > 400 ? power > air * 1.05 : air > power * 1.05);
            double[] fuel = new double[1];
            PointBatch.Of(system.Parts, Wren.Hill).Evaluate(new() { Speed = [100], Boost = [30e3] }, new() { FuelFlow = fuel });
            double mass = basis == DemandBasis.Air ? air : basis == DemandBasis.Power ? power : Math.Max(air, power);
            double density = Wren.Petrol.Fuel.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
            Assert.Equal(1, fuel[0] * density / mass, 9);
        }
    }

    /// <summary>The lower bound of the pumps' margin, as <c>Solve</c> has it, wherever a point stands and on however many threads.</summary>
    [Fact]
    public void PumpReserve_OfAnyPoints_IsTheMarginOfThePump() =>
        Gen.Select(Gen.OneOfConst(Systems), Gen.Double[0.3, 1.5], Point.Array[1, 12], Gen.Int[1, 2]).Sample(
            (system, scale, points, threads) =>
            {
                FuelSystem fed = system.With(Pump.From(Wren.PumpOf(scale)));
                double[] reserve = new double[points.Length];
                PointBatch.Of(fed.Parts, Wren.Hill).Evaluate(
                    new()
                    {
                        Speed = Array.ConvertAll(points, p => p.Speed),
                        Boost = Array.ConvertAll(points, p => p.Boost),
                        SupplyVoltage = Array.ConvertAll(points, p => p.Volts),
                    },
                    new() { PumpReserve = reserve },
                    threads);
                for (int i = 0; i < points.Length; i++)
                {
                    OperatingResult alone = fed.Solve(OperatingPoint.At(
                        RotationalSpeed.FromRevolutionsPerSecond(points[i].Speed),
                        Pressure.FromPascals(points[i].Boost),
                        Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(points[i].Volts), Wren.Hill.FuelTemperature)));
                    double margin = alone.Margins.Single(m => m.Part == Part.Pump).Reading.Margin;
                    Close(1 + margin, 1 + reserve[i], 1e4);
                }
            },
            iter: 300);

    // A column of less than 1,000 Pa alone is refused as one of bar or kPa.
    private static double InPascals(double boost) => Math.Abs(boost) < 1_000 ? 0 : boost;

    /// <summary>A pump of a quarter of Wren's: the injectors have a reserve, and the pump cannot feed them.</summary>
    [Fact]
    public void PumpReserve_OfAPumpTooSmall_IsUnderZeroWhereTheInjectorsHold()
    {
        double[] injectors = new double[1];
        double[] pump = new double[1];
        PointBatch.Of(Wren.System(injector: 900, pump: 0.25).Parts, Wren.Hill).Evaluate(
            new() { Speed = [100], Boost = [60e3] }, new() { InjectorReserve = injectors, PumpReserve = pump });
        Assert.True(injectors[0] > 0);
        Assert.True(pump[0] < 0);
    }

    /// <summary>A speed-controlled pump holds the pressure at the rail: its supply line takes nothing off. A regulator at the tank does not.</summary>
    [Fact]
    public void Evaluate_OfASpeedControlledPump_HasItsPressureAtTheRail()
    {
        Plumbing lines = Plumbing.Of(supply: [Line.Of("supply", Length.FromMillimeters(6), Length.FromMeters(4), Roughness.DrawnTube)]);
        double Rail(PressureRegulator regulator)
        {
            double[] rail = new double[1];
            PointBatch.Of(FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(440), 4), regulator, Pump.From(Wren.PumpOf(3)), plumbing: lines).Parts)
                .Evaluate(new() { Speed = [80], Boost = [40e3] }, new() { RailGauge = rail });
            return rail[0];
        }

        Assert.Equal(380e3, Rail(ElectronicReturnless.Holding(Wren.Kpa(380), followsManifold: false, Wren.Volt(8))), 1e-6);
        Assert.InRange(Rail(Fixed.At(Wren.Kpa(380))), 300e3, 379e3);
    }

    /// <summary>At 17 V, over the 16 V at which the dead times end, no pulse is known, by the column or for all; the flow of an injector held open is.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Evaluate_PastTheDeadTimes_HasNoPulse(bool byColumn)
    {
        double[] speeds = [.. Enumerable.Repeat(80.0, 9)];
        double[] boosts = [.. Enumerable.Repeat(40e3, 9)];
        double[] volts = byColumn ? [.. Enumerable.Range(0, 9).Select(place => place == 4 ? 13.5 : 17)] : [];
        double[] flows = new double[9];
        double[] pulses = new double[9];
        double[] duties = new double[9];
        double[] reserves = new double[9];
        Conditions conditions = Conditions.Of(Atmosphere.Standard, Wren.Volt(17), Temperature.FromDegreesCelsius(20));
        PointBatch.Of(Wren.System().Parts, conditions).Evaluate(
            new() { Speed = speeds, Boost = boosts, SupplyVoltage = volts },
            new() { StaticFlow = flows, Pulse = pulses, DutyCycle = duties, InjectorReserve = reserves });
        Assert.All(flows, flow => Assert.Equal(flows[0], flow));
        Assert.True(flows[0] > 0);
        for (int place = 0; place < 9; place++)
        {
            bool known = byColumn && place == 4;
            Assert.Equal((known, known, known), (double.IsFinite(pulses[place]), double.IsFinite(duties[place]), double.IsFinite(reserves[place])));
        }
    }

    /// <summary>150 kPa in the rail against 200 in the manifold of one point and 0 in that of the other.</summary>
    [Fact]
    public void Evaluate_WhereNothingFlows_HasNoPulseAndNoReserve()
    {
        Columns batch = new(2);
        PointBatch.Of(Wren.System(Fixed.At(Wren.Kpa(150))).Parts, Wren.Hill)
            .Evaluate(new() { Speed = [50, 50], Boost = [200e3, 0] }, batch.Outputs);
        Assert.Equal(-50e3, batch.Differential[0], 6);
        Assert.Equal(0, batch.StaticFlow[0]);
        Assert.Equal((double.NaN, double.NaN), (batch.Pulse[0], batch.DutyCycle[0]));
        Assert.Equal(-1, batch.InjectorReserve[0]);
        Assert.True(batch is { StaticFlow: [_, > 0], Pulse: [_, > 0], DutyCycle: [_, > 0], InjectorReserve: [_, > -1] });
    }

    /// <summary>A thread takes four shares of 8,192 points between two looks at who watches: 32,768, or twice that by two.</summary>
    [Theory]
    [InlineData(1, new[] { 32_768, 65_536, 70_000 })]
    [InlineData(2, new[] { 65_536, 70_000 })]
    public void Evaluate_ThatIsWatched_TellsTheShareThatIsDone(int threads, int[] steps)
    {
        const int Points = 70_000;
        double[] speeds = [.. Enumerable.Repeat(100.0, Points)];
        List<double> heard = [];
        double[] duty = new double[Points];
        int done = PointBatch.Of(Systems[0].Parts, Wren.Hill).Evaluate(
            new() { Speed = speeds, Boost = new double[Points] },
            new() { DutyCycle = duty },
            threads,
            new Listener(share => heard.Add(share.DecimalFractions)));
        Assert.Equal(Points, done);
        Assert.Equal(steps, heard.Select(share => (int)Math.Round(share * Points)));
        Assert.DoesNotContain(0, duty);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Evaluate_OfAPointOutOfRange_IsRefusedWithItsPlace(int threads) =>
        Gen.Select(
            Gen.Int[1, 20_000],
            Gen.Double[0, 1],
            Gen.OneOfConst(0, 1, 2, 3),
            Gen.OneOfConst(double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e6, 1e6)).Sample(
                (count, share, column, nonsense) =>
                {
                    (double, double, double, double)[] points = Many(count);
                    int place = Math.Min(count - 1, (int)(share * count));
                    double[][] columns = Split(points);
                    columns[column][place] = nonsense;

                    // A second one further on does not hide the first.
                    columns[column][^1] = nonsense;
                    ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() =>
                        PointBatch.Of(Systems[0].Parts, Wren.Hill).Evaluate(
                            new()
                            {
                                Speed = columns[0],
                                Boost = columns[1],
                                Lambda = columns[2],
                                SupplyVoltage = columns[3],
                            },
                            new() { DutyCycle = new double[count] },
                            threads));
                    Assert.Equal("inputs", error.ParamName);
                    Assert.Contains(string.Create(global::System.Globalization.CultureInfo.InvariantCulture, $"(place {place})"), error.Message, StringComparison.Ordinal);
                    Assert.Contains("it must be ", error.Message, StringComparison.Ordinal);
                },
                iter: 50);

    [Fact]
    public void Evaluate_WithColumnsOfOtherLengths_IsRefused()
    {
        PointBatch batch = PointBatch.Of(Systems[0].Parts);
        Assert.Throws<ArgumentException>(() => batch.Evaluate(new() { Speed = [100], Boost = [] }, default));
        Assert.Throws<ArgumentException>(() => batch.Evaluate(new() { Speed = [100], Boost = [0] }, new() { Pulse = new double[2] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Evaluate(new() { Speed = [100], Boost = [0] }, default, threads: 0));
    }

    [Fact]
    public void Evaluate_WithoutACompressor_RefusesBoost()
    {
        FuelSystem drawn = FuelSystem.Return(
            Wren.Demand(induction: Induction.NaturallyAspirated),
            Systems[0].Injectors,
            Systems[0].Regulator,
            Systems[0].Pump);
        Assert.Throws<ArgumentOutOfRangeException>(() => PointBatch.Of(drawn.Parts).Evaluate(new() { Speed = [100], Boost = [1] }, default));
    }

    /// <summary>Points that would be one share for a thread are not handed over to another either.</summary>
    [Theory]
    [InlineData(1, 5_000)]
    [InlineData(2, 2_048)]
    public void Evaluate_OnThisThread_AllocatesNothing(int threads, int count)
    {
        (double, double, double, double)[] points = Many(count);
        double[][] columns = Split(points);
        Columns outputs = new(points.Length);
        PointBatch batch = PointBatch.Of(Systems[0].Parts, Wren.Hill);
        long Allocated()
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            batch.Evaluate(
                new() { Speed = columns[0], Boost = columns[1], Lambda = columns[2], SupplyVoltage = columns[3] },
                outputs.Outputs,
                threads);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Allocated();
        Assert.Equal(0, Allocated());
    }

    private static Injector InjectorWithout() => Injector.Of(
        "injector with one row",
        VolumeFlow.FromMillilitersPerMinute(300),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2.3)), (Wren.Volt(12), Wren.Ms(1)), (Wren.Volt(16), Wren.Ms(0.7))),
        Wren.Ms(1.2),
        Wren.Kpa(600));

    private static (double, double, double, double)[] Many(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i => (
            14 + (105.0 * (i * 7919 % 10_007) / 10_007),
            -60e3 + (170e3 * (i * 104_729L % 10_009) / 10_009),
            0.7 + (0.4 * (i * 31 % 101) / 101),
            8 + (7.0 * (i * 17 % 103) / 103))),
    ];

    private static double[][] Split((double Speed, double Boost, double Lambda, double Volts)[] points) =>
    [
        Array.ConvertAll(points, p => p.Speed),
        Array.ConvertAll(points, p => p.Boost),
        Array.ConvertAll(points, p => p.Lambda),
        Array.ConvertAll(points, p => p.Volts),
    ];

    private static PointInputs Inputs((double Speed, double Boost, double Lambda, double Volts)[] points)
    {
        double[][] columns = Split(points);
        return new() { Speed = columns[0], Boost = columns[1], Lambda = columns[2], SupplyVoltage = columns[3] };
    }

    private static void Close(double expected, double actual, double scale) =>
        Assert.True(
            expected.Equals(actual) || Math.Abs(actual - expected) <= Bound * scale * Math.Abs(expected),
            $"{expected:R} alone, {actual:R} in the batch");

    private sealed class Columns(int count)
    {
        public double[][] All { get; } = [.. Enumerable.Range(0, 7).Select(_ => new double[count])];

        public double[] RailGauge => All[0];

        public double[] Differential => All[1];

        public double[] FuelFlow => All[2];

        public double[] StaticFlow => All[3];

        public double[] Pulse => All[4];

        public double[] DutyCycle => All[5];

        public double[] InjectorReserve => All[6];

        public PointOutputs Outputs => new()
        {
            RailGauge = RailGauge,
            Differential = Differential,
            FuelFlow = FuelFlow,
            StaticFlow = StaticFlow,
            Pulse = Pulse,
            DutyCycle = DutyCycle,
            InjectorReserve = InjectorReserve,
        };
    }
}
