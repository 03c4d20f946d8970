using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>A run's columns as the findings read them, and how its rows are gathered to points.</summary>
public class RunColumnsTests
{
    /// <summary>3,000 rev/min of a four-stroke: 40 ms from one injection to the next.</summary>
    private static readonly RotationalSpeed Speed = Wren.Rpm(3000);

    private static readonly double Kelvins = Wren.Hill.FuelTemperature.Kelvins;

    [Fact]
    public void Pulse_IsDutyCycleTimesTheTimeThereIs()
    {
        RunColumnsRead columns = Read(new Cells { Speed = Speed, Duty = Ratio.FromPercent(25) }, new Cells { Speed = Speed, Pulse = Wren.Ms(8) }, new Cells { Speed = Wren.Rpm(0), Duty = Ratio.FromPercent(25), Pulse = Wren.Ms(8) });
        Assert.Equal(0.010, columns.At(Channel.InjectorPulse, 0), 12);
        Assert.Equal(0.008, columns.At(Channel.InjectorPulse, 1), 12);
        Assert.Equal(0.20, columns.At(Channel.DutyCycle, 1), 12);
        Assert.Equal(0.25, columns.At(Channel.DutyCycle, 0), 12);
        Assert.Equal(0.010, columns.Derived(Channel.InjectorPulse, 0), 12);
        Assert.True(double.IsNaN(columns.Derived(Channel.DutyCycle, 0)));

        // At rest there is no time between injections to take a share of.
        Assert.True(double.IsNaN(columns.Derived(Channel.InjectorPulse, 2)));
        Assert.True(double.IsNaN(columns.Derived(Channel.DutyCycle, 2)));
        Assert.True(double.IsNaN(columns.At(Channel.RailGauge, 0)));
    }

    /// <summary>2π · 50/s · 100 N·m = 31.4 kW.</summary>
    [Fact]
    public void Power_IsTorqueTimesSpeed()
    {
        RunColumnsRead columns = Read(new Cells { Speed = Speed, Torque = Torque.FromNewtonMeters(100) }, new Cells { Speed = Speed, Power = Power.FromKilowatts(20), Torque = Torque.FromNewtonMeters(100) });
        Assert.Equal(2 * Math.PI * 50 * 100, columns.At(Channel.Power, 0), 6);
        Assert.Equal(20e3, columns.At(Channel.Power, 1), 6);
    }

    /// <summary>Mass over the density at the row's temperature, or at the planned one; a temperature past what fuels are given for is taken at that end.</summary>
    [Fact]
    public void Volume_IsMassOverDensity()
    {
        Cells row = new() { Speed = Speed, Mass = MassFlow.FromGramsPerSecond(10) };
        RunColumnsRead columns = Read(
            row,
            row with { Fuel = Temperature.FromDegreesCelsius(20) },
            row with { Fuel = Temperature.FromDegreesCelsius(120) },
            row with { Fuel = Temperature.FromDegreesCelsius(-45) },
            row with { Flow = VolumeFlow.FromLitersPerHour(50) });
        double[] celsius = [35, 20, 80, -30];
        for (int at = 0; at < celsius.Length; at++)
        {
            double density = PulledWren.Plan.Demand.Consumption.Fuel.DensityAt(Temperature.FromDegreesCelsius(celsius[at])).KilogramsPerCubicMeter;
            Assert.Equal(0.010 / density, columns.At(Channel.FuelVolumeFlow, at), 12);
            Assert.Equal(celsius[at] + 273.15, columns.Kelvins(at), 9);
        }

        Assert.Equal(50 / 3.6e6, columns.At(Channel.FuelVolumeFlow, 4), 12);
    }

    /// <summary>The planned lambda 0.82 and 6 %, 0.8692; or the leanest that the plan allows at the boost, where that is richer.</summary>
    [Fact]
    public void Lean_IsOverTheAllowance_OrWhatThePlanAllows()
    {
        FuelSystem limited = PulledWren.Plan.With(SizingLimits.Default.With(MixtureLimits.Of(0.85, Pressure.FromBars(0.3))));
        RunColumnsRead columns = ReadBy(limited, Boosted(0.4), Boosted(0.2), new Cells { Speed = Speed });
        Assert.Equal(0.82, columns.Planned);
        Assert.All([0, 1, 2], row => Assert.Equal(0.82, columns.PlannedAt(row)));
        Assert.All([0, 1, 2], row => Assert.Equal(0.8692, columns.LeanFrom(row), 12));
        Assert.Equal(0.85, columns.AllowedAt(0), 12);
        Assert.Equal(double.PositiveInfinity, columns.AllowedAt(1));
        Assert.Equal(double.PositiveInfinity, columns.AllowedAt(2));
        Assert.Equal(0.85, columns.LeanFromAt(0), 12);
        Assert.Equal(0.8692, columns.LeanFromAt(1), 12);
        Assert.Equal(double.PositiveInfinity, Read(Boosted(0.4)).AllowedAt(0));
    }

    /// <summary>Lambda 0.9 at 1,200 rev/min to 0.8 at 6,500: the richest is 0.8, at 3,850 rev/min it is 0.85, past the ends that of the end.</summary>
    [Fact]
    public void PlannedLambda_GoesBySpeed()
    {
        FuelSystem plan = PulledWren.Plan.With(
            PulledWren.Plan.Demand.With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1200), lambda: 0.9), SpeedRow.Of(Wren.Rpm(6500), lambda: 0.8))));
        RunColumnsRead columns = ReadBy(plan, new Cells { Speed = Wren.Rpm(3850) }, new Cells { Speed = Wren.Rpm(0) }, new Cells { Speed = Wren.Rpm(7000) });
        Assert.Equal(0.8, columns.Planned);
        Assert.Equal([0.85, 0.9, 0.8], [.. new[] { 0, 1, 2 }.Select(row => Math.Round(columns.PlannedAt(row), 12))]);
    }

    /// <summary>
    /// A sensor is at its rich end at 0.70 or less (common practice, no source), where the plan is richer at 0.9 of the planned: of 0.7
    /// planned at 0.63. There it does not say how rich; over the limit for lean a reading says enough.
    /// </summary>
    [Theory]
    [InlineData(0.82, 0.70, true)]
    [InlineData(0.82, 0.71, false)]
    [InlineData(0.70, 0.62, true)]
    [InlineData(0.70, 0.64, false)]
    public void Lambda_AtTheRichEndOfItsSensor_IsNone(double planned, double end, bool hides)
    {
        FuelDemandModel demand = PulledWren.Plan.Demand;
        FuelSystem plan = PulledWren.Plan.With(demand.With(
            demand.VolumetricEfficiency,
            demand.MeasuredPower,
            FuelConsumption.Of(Fuel.Petrol, planned, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315))));
        RunColumnsRead columns = ReadBy(plan, [.. new[] { 0.9, end, end, end, 0.8 }.Select(lambda => Boosted(0.4) with { Lambda = lambda })]);
        Assert.Equal(hides, columns.HidesLambda(1));
        Assert.Equal(hides, double.IsNaN(columns.At(Channel.Lambda, 1)));
        Assert.False(columns.HidesLambda(0));
        Assert.Equal(0.9, columns.At(Channel.Lambda, 0));
    }

    /// <summary>A channel that never moves has a reading to show, though it hides the mixture; stuck lean it hides nothing.</summary>
    [Fact]
    public void Lambda_ThatNeverMoves_HidesTheMixtureUnlessItIsLean()
    {
        Cells[] Rows(double lambda) => [.. Enumerable.Range(0, 24).Select(i => Boosted(0.4) with { Speed = Wren.Rpm(3000 + (50 * i)), Lambda = lambda })];
        RunColumnsRead stuck = Read(Rows(0.8));
        Assert.True(stuck.StuckLambda.NeverMoves);
        Assert.True(stuck.HidesLambda(3));
        Assert.Equal(0.8, stuck.At(Channel.Lambda, 3));
        Assert.True(Read(Rows(0.8692)).HidesLambda(3));
        Assert.False(Read(Rows(0.87)).HidesLambda(3));
    }

    /// <summary>Under 1 rev/s the engine is at rest.</summary>
    [Fact]
    public void Rest_IsUnderOneRevolutionASecond()
    {
        Cells still = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure };
        RunColumnsRead columns = Read(
            still, still with { Speed = Wren.Rpm(59) }, still with { Speed = Wren.Rpm(60) }, new Cells { Speed = RotationalSpeed.Zero }, new Cells { Speed = Speed, Manifold = PulledWren.Air.Pressure });
        Assert.Equal([true, true, false, false, false], Enumerable.Range(0, 5).Select(columns.IsAtRest));
        Assert.Equal([false, false, true, false, true], Enumerable.Range(0, 5).Select(columns.IsTurning));
        Assert.Equal([false, false, false, false, true], Enumerable.Range(0, 5).Select(columns.Covers));
        Assert.True(Read(new Cells { Speed = Speed, Manifold = Wren.Kpa(480) }).Covers(0));
    }

    /// <summary>Rows within 10 rev/s and 15 kPa of each other stand for one point.</summary>
    [Theory]
    [InlineData(599, 14.9, true)]
    [InlineData(-599, -14.9, true)]
    [InlineData(601, 0, false)]
    [InlineData(-601, 0, false)]
    [InlineData(0, 15.1, false)]
    [InlineData(0, -15.1, false)]
    public void Near_IsWithinTenRevolutionsASecondAndFifteenKilopascals(double rpm, double kilopascals, bool near)
    {
        Cells one = new() { Speed = Speed, Manifold = Wren.Kpa(120) };
        Assert.Equal(near, Read(one, new Cells { Speed = Wren.Rpm(3000 + rpm), Manifold = Wren.Kpa(120 + kilopascals) }).Near(0, 1));
    }

    /// <summary>The middle of those that are there, where at least half are.</summary>
    [Fact]
    public void Median_IsOfTheRowsThatHaveTheChannel()
    {
        double?[] lambda = [0.9, 0.7, null, 0.8, null, null, 0.84];
        RunColumnsRead columns = Read([.. lambda.Select(value => new Cells { Speed = Speed, Lambda = value })]);
        List<int> rows = [0, 1, 2, 3, 4, 5, 6];
        Assert.Equal(0.8, columns.Median(Channel.Lambda, rows, 0, 4), 12);
        Assert.Equal(0.8, columns.Median(Channel.Lambda, rows, 0, 2), 12);
        Assert.Equal(0.75, columns.Median(Channel.Lambda, rows, 1, 5), 12);
        Assert.True(double.IsNaN(columns.Median(Channel.Lambda, rows, 2, 6)));
        Assert.Equal(0.82, columns.Median(Channel.Lambda, rows, 0, 7), 12);
        Assert.True(double.IsNaN(columns.Median(Channel.Lambda, rows, 4, 6)));
        Assert.Equal(0.9, columns.Median(Channel.Lambda, rows, 0, 1), 12);
        Assert.True(double.IsNaN(columns.Median(Channel.Lambda, rows, 2, 2)));
    }

    /// <summary>
    /// Ten rows alike and a leap, then ten more; at the most five points, so four rows together: 4, 4 and 2, and again.
    /// </summary>
    [Fact]
    public void Points_AreNeighbouringRowsTogether()
    {
        Cells Row(int i) => new()
        {
            Speed = Wren.Rpm(i < 10 ? 3000 + i : 5000 + i),
            Manifold = PulledWren.Air.Pressure + Wren.Kpa(30),
            Rail = Wren.Kpa(300 + i),
            Pulse = Wren.Ms(5 + (0.1 * i)),
            Lambda = 0.8 + (0.001 * i),
            Volts = Wren.Volt(13 + (0.01 * i)),
            Power = Power.FromKilowatts(50 + i),
            Fuel = Temperature.FromDegreesCelsius(30 + i),
            Flow = VolumeFlow.FromLitersPerHour(40 + i),
        };
        RunPoints points = RunPoints.Of(PulledWren.Plan, RunOf([.. Enumerable.Range(0, 20).Select(Row)]), Kelvins, 0, 5);
        Assert.Equal([0, 4, 8, 10, 14, 18], points.FirstRows);
        Assert.Equal([4, 4, 2, 4, 4, 2], points.RowCounts);
        Assert.Equal(6, points.Count);
        Assert.Equal(20, points.RowsUsed);
        Assert.Equal(0, points.RowsOutside);
        Assert.Null(points.ManifoldAtRest);
        double[] middles = [1.5, 5.5, 8.5, 11.5, 15.5, 18.5];
        for (int i = 0; i < middles.Length; i++)
        {
            double middle = middles[i];
            Assert.Equal(((middle < 10 ? 3000 : 5000) + middle) / 60, points.Speed[i], 9);
            Assert.Equal(PulledWren.Air.Pressure.Pascals + 30e3, points.Manifold[i], 6);
            Assert.Equal((300 + middle) * 1e3, points.Rail[i], 6);
            Assert.Equal((5 + (0.1 * middle)) * 1e-3, points.Pulse[i], 12);
            Assert.Equal(0.8 + (0.001 * middle), points.Lambda[i], 12);
            Assert.Equal(13 + (0.01 * middle), points.Volts[i], 9);
            Assert.Equal((50 + middle) * 1e3, points.Power[i], 6);
            Assert.Equal(303.15 + middle, points.FuelKelvins[i], 9);
            Assert.Equal((40 + middle) / 3.6e6, points.Meter[i], 12);
        }
    }

    /// <summary>Of groups of four, one alone between two leaps is not steady; two are half a group, and count.</summary>
    [Fact]
    public void Rows_FewerThanHalfAGroup_AreLeftOut()
    {
        double[] rpm = [3000, 3000, 3000, 3000, 4000, 5000, 5000, 6000, 6000, 6000];
        RunPoints points = RunPoints.Of(PulledWren.Plan, RunOf([.. rpm.Select(speed => Boosted(0.3) with { Speed = Wren.Rpm(speed) })]), Kelvins, 0, 3);
        Assert.Equal([0, 5, 7], points.FirstRows);
        Assert.Equal([4, 2, 3], points.RowCounts);
        Assert.Equal(9, points.RowsUsed);
        Assert.Equal(0, points.RowsOutside);
    }

    /// <summary>Nine rows in up to three points are three together, ten are four.</summary>
    [Theory]
    [InlineData(9, 3)]
    [InlineData(10, 4)]
    [InlineData(2, 1)]
    [InlineData(0, 0)]
    public void Group_IsAsLargeAsItMustBe(int rows, int first)
    {
        RunPoints points = RunPoints.Of(PulledWren.Plan, RunOf([.. Enumerable.Range(0, rows).Select(_ => Boosted(0.3))]), Kelvins, 0, 3);
        Assert.Equal(first, points.Count == 0 ? 0 : points.RowCounts[0]);
    }

    /// <summary>Five rows at rest show the manifold sensor's zero, their median; four do not.</summary>
    [Fact]
    public void ManifoldAtRest_IsTheMedianOfFiveRows()
    {
        double[] off = [1.0, 3.0, 2.0, 9.0, 2.5];
        Cells[] rest = [.. off.Select(kilopascals => new Cells { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure + Wren.Kpa(kilopascals) })];
        RunPoints points = RunPoints.Of(PulledWren.Plan, RunOf([.. rest, Boosted(0.3), Boosted(0.3)]), Kelvins, 0, 64);
        Assert.Equal(2500, points.ManifoldAtRest!.Value, 6);
        Assert.Equal(5, points.RowsOutside);
        Assert.Equal(2, points.RowsUsed);
        Assert.Null(RunPoints.Of(PulledWren.Plan, RunOf([.. rest.Skip(1), Boosted(0.3)]), Kelvins, 0, 64).ManifoldAtRest);
    }

    private static Cells Boosted(double bars) => new() { Speed = Speed, Manifold = PulledWren.Air.Pressure + Pressure.FromBars(bars) };

    private static RunColumnsRead Read(params Cells[] rows) => ReadBy(PulledWren.Plan, rows);

    private static RunColumnsRead ReadBy(FuelSystem plan, params Cells[] rows) => new(plan, RunOf(rows), Kelvins);

    private static RecordedRun RunOf(Cells[] rows) => RecordedRun.Of("rows", PulledWren.Air, rows.Select((cells, i) => cells.Row(i + 1)));
}
