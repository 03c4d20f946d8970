using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Where on the engine's map a run's figures hold, and what is off there: air over speed and boost, by hand.</summary>
public class EnginePlaceTests
{
    private static readonly Cells Row = new()
    {
        Speed = Wren.Rpm(4000),
        Manifold = PulledWren.Air.Pressure,
        Rail = Wren.Kpa(300),
        Volts = Wren.Volt(13.5),
        Flow = VolumeFlow.FromLitersPerHour(50),
    };

    /// <summary>Of boosts to 60 kPa those from 48 kPa on are at full load: the mean of 50 and 60 kPa, 4,500 and 5,500 rev/min, and of what is injected there.</summary>
    [Fact]
    public void FullLoad_IsTheMiddleOfTheHighestBoosts()
    {
        RunModel model = Model(PulledWren.Check, (3000, 20, 30), (4000, 47.9, 40), (4500, 50, 45), (5500, 60, 60), (6000, -30, 20));
        EnginePlace place = EnginePlace.FullLoad(PulledWren.Check, model);
        Assert.Equal(5000 / 60.0, place.Speed, 1e-9);
        Assert.Equal(55e3, place.Boost, 1e-6);
        Assert.Equal((model.Inputs[2].AirByTemperature + model.Inputs[3].AirByTemperature) / 2, place.AirByTemperature, 1e-12);
        Assert.Equal((model.Inputs[2].InjectedShare + model.Inputs[3].InjectedShare) / 2, place.InjectedShare, 1e-12);
        Assert.InRange(place.InjectedShare, 0.1, 0.9);
    }

    /// <summary>
    /// Without boost the throttle says where full load is: 15 % of the barometer under it and more is a part throttle. The highest pressure lies under the barometer's, or by
    /// scatter a little over it; of either the middle of the speeds is meant, not the one highest reading.
    /// </summary>
    [Theory]
    [InlineData(-1)]
    [InlineData(4)]
    public void FullLoad_WithoutBoost_IsWhereTheThrottleIsOpen(double highest)
    {
        RunCheck drawn = RunCheck.Of(OddRunTests.Plan("drawn"), Wren.Hill);
        EnginePlace place = EnginePlace.FullLoad(drawn, Model(drawn, (3000, -3, 10), (4000, highest, 12), (5000, -2, 14), (6500, -40, 8)));
        Assert.Equal(4000 / 60.0, place.Speed, 1e-9);
        Assert.Equal((highest - 5) * 1e3 / 3, place.Boost, 1e-6);
        Assert.True(place.InjectedShare > 0);
    }

    /// <summary>Of a run without full load the end of the plan's table, without boost.</summary>
    [Fact]
    public void FullLoad_OfARunWithoutAny_IsTheEndOfTheTable()
    {
        EnginePlace place = EnginePlace.FullLoad(PulledWren.Check, Model(PulledWren.Check, (3000, -30, 10), (4000, -40, 12)));
        Assert.Equal(new(PulledWren.Plan.Demand.VolumetricEfficiency.BySpeed.Last, 0, 0, 0), place);
    }

    /// <summary>A point of a stage: its charge's temperature, and the share of what returns at rest that its fuel is, by the forward solver.</summary>
    [Fact]
    public void Point_IsThatOfTheSolver()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(40), Wren.Hill);
        OperatingResult result = PulledWren.Plan.Solve(point);
        EnginePlace place = EnginePlace.Point(PulledWren.Check, PulledWren.Plan, point);
        Assert.Equal(5000 / 60.0, place.Speed, 1e-9);
        Assert.Equal(40e3, place.Boost, 1e-6);
        Assert.Equal(-1 / result.Demand.ChargeTemperature.Kelvins, place.AirByTemperature, 1e-12);

        // Nothing injected, at the base pressure, all returns.
        RunCheck check = PulledWren.Check;
        double returned = check.Pumps.FlowHolding(300e3, check.SupplyVolts);
        Assert.Equal(300e3, check.Pumps.Rise(returned, check.SupplyVolts, 0), 100.0);
        Assert.Equal(result.InjectedFlow.CubicMetersPerSecond / returned, place.InjectedShare, 1e-4);
    }

    /// <summary>Twelve speeds from end to end of the table, straight between them: off by a straight line, it is one; past the ends it stays.</summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.13)]
    [InlineData(0.5)]
    [InlineData(0.97)]
    [InlineData(1.0)]
    [InlineData(-0.2)]
    [InlineData(1.4)]
    public void AirOverSpeed_IsStraightBetweenItsSpeeds(double along)
    {
        AirOverSpeed air = new(new Curve([20, 60, 130], [0.8, 0.9, 0.7], Interpolation.Linear));
        double speed = 20 + (110 * along);
        Shift straight = default;
        Shift bent = default;
        for (int i = 0; i < AirOverSpeed.Speeds; i++)
        {
            straight[(int)RunQuantity.AirAtFirstSpeed + i] = 0.02 + (0.011 * i);
            bent[(int)RunQuantity.AirAtFirstSpeed + i] = 0.01 * i * i;
        }

        Assert.Equal(12, AirOverSpeed.Speeds);
        double held = Math.Clamp(along, 0, 1);
        Assert.Equal(0.02 + (0.121 * held), air.At(speed, straight), 1e-12);
        int lower = Math.Min((int)(11 * held), 10);
        double share = (11 * held) - lower;
        Assert.Equal(0.01 * (((1 - share) * lower * lower) + (share * (lower + 1) * (lower + 1))), air.At(speed, bent), 1e-12);

        // The shares are what a change of each makes, and stand where nothing else is.
        double[] line = new double[RunModel.Quantities];
        air.Share(speed, line, -1);
        Assert.Equal(-1, line.Sum(), 1e-12);
        Assert.Equal(-air.At(speed, bent), Enumerable.Range(0, RunModel.Quantities).Sum(i => line[i] * bent[i]), 1e-12);
        Assert.All(Enumerable.Range(0, (int)RunQuantity.AirAtFirstSpeed), i => Assert.Equal(0, line[i]));
    }

    /// <summary>
    /// Air at a place is what is off at any speed, and in each 100 kPa of boost, and by the charge's temperature, 13 K in 100 kPa: a quarter of the way between two speeds
    /// three quarters of one and a quarter of the other; under the barometer nothing goes with boost.
    /// </summary>
    [Theory]
    [InlineData(50e3)]
    [InlineData(-20e3)]
    public void Posterior_AtAPlace_HasTheAirOverSpeedAndBoost(double boost)
    {
        RunCheck check = PulledWren.DefaultCheck;
        RunModel model = check.Model(RecordedRun.Of("row", PulledWren.Air, [Row.Row(1)]));
        Curve table = PulledWren.Plan.Demand.VolumetricEfficiency.BySpeed;
        double speed = table.First + ((table.Last - table.First) * 3.25 / 11);
        double[] off = new double[RunModel.Quantities];
        int first = (int)RunQuantity.AirAtFirstSpeed;
        (off[first + 3], off[first + 4], off[first + 5]) = (1, 2, 7);
        (off[(int)RunQuantity.VolumetricEfficiency], off[(int)RunQuantity.AirByBoost], off[(int)RunQuantity.ChargeTemperature]) = (0.5, 1.5, -2);
        RunPosterior at = new RunPosterior(off, Matrix<double>.Build.DenseIdentity(RunModel.Quantities)).At(check, model, new(speed, boost, -1 / 320.0, 0.3));
        double over = Math.Max(0, boost);
        double[] each = [0.75 * 0.02, 0.25 * 0.02, 0.04 * over / 1e5, -13 / 320.0 * over / 1e5];
        double air = (0.5 * 0.025) + each[0] + (2 * each[1]) + (1.5 * each[2]) - (2 * each[3]);
        Assert.Equal(air / 0.025, at.Off[(int)RunQuantity.VolumetricEfficiency], 1e-9);
        int place = (int)RunQuantity.VolumetricEfficiency;
        Assert.Equal(1 + each.Sum(part => part * part / (0.025 * 0.025)), at.Covariance[place, place], 1e-9);

        // What is known of the unknown itself stays as it was.
        Assert.Equal((1.0, 2.0, 1.5), (at.Off[first + 3], at.Off[first + 4], at.Off[(int)RunQuantity.AirByBoost]));
    }

    /// <summary>A voltage that a point lacks is that of the point nearest to it that has one, before what was planned; a run without any leaves it open.</summary>
    [Fact]
    public void Voltage_ThatAPointLacks_IsThatOfTheNearest()
    {
        double?[] volts = [null, 13.1, null, null, null, 12.2, null];
        double[] kelvins = [.. Points(volts.Select(one => Row with { Volts = one is { } v ? Wren.Volt(v) : null, Fuel = one is { } ? Temperature.FromKelvins(300 + one.Value) : null })).FuelKelvins];
        Assert.Equal([13.1, 13.1, 13.1, 13.1, 12.2, 12.2, 12.2], Points(volts.Select(one => Row with { Volts = one is { } v ? Wren.Volt(v) : null })).Volts);
        Assert.Equal([313.1, 313.1, 313.1, 313.1, 312.2, 312.2, 312.2], kelvins.Select(one => Math.Round(one, 6)));
        Assert.All(Points(volts.Select(_ => Row with { Volts = null })).Volts, one => Assert.True(double.IsNaN(one)));
        static RunPoints Points(IEnumerable<Cells> rows) =>
            PulledWren.Check.Model(RecordedRun.Of("rows", PulledWren.Air, rows.Select((row, i) => row.Row(i + 1)))).Points;
    }

    /// <summary>Rows within 600 rev/min and 15 kPa of the first of them are one point; a little further apart they are two.</summary>
    [Theory]
    [InlineData(600, 0, 1)]
    [InlineData(600.6, 0, 2)]
    [InlineData(0, 15, 1)]
    [InlineData(0, 15.01, 2)]
    public void Rows_ThatLieNear_AreOnePoint(double rpm, double kilopascals, int points)
    {
        Cells[] rows = [Row with { Speed = Wren.Rpm(3000), Manifold = Wren.Kpa(100) }, Row with { Speed = Wren.Rpm(3000 + rpm), Manifold = Wren.Kpa(100 + kilopascals) }];
        RunPoints gathered = PulledWren.Check.Model(RecordedRun.Of("rows", PulledWren.Air, rows.Select((row, i) => row.Row(i + 1))), 1).Points;
        Assert.Equal(points, gathered.Count);
    }

    private static RunModel Model(RunCheck check, params (double Rpm, double Kilopascals, double LitresPerHour)[] rows) =>
        check.Model(RecordedRun.Of("rows", PulledWren.Air, rows.Select((row, i) => (Row with
        {
            Speed = Wren.Rpm(row.Rpm),
            Manifold = PulledWren.Air.Pressure + Wren.Kpa(row.Kilopascals),
            Flow = VolumeFlow.FromLitersPerHour(row.LitresPerHour),
        }).Row(i + 1))));
}
