using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// How fast channels change within a point, worked by hand on ten rows, 0.1 s apart, of which every channel goes straight: a point of all ten has the values of 0.45 s,
/// and 0.5 s from the middle of its first half, row 2, to that of the second, row 7.
/// </summary>
public class RatesTests
{
    private const double Middle = 4.5;

    /// <summary>Row i: each s 200 rev/min, 10 kPa of boost, 33 kPa of rail, 0.5 ms of pulse, 10 L/h, 0.02 of lambda and 20 kW more.</summary>
    private static Cells Row(double i) => new()
    {
        Speed = Wren.Rpm(3000 + (20 * i)),
        Time = Duration.FromSeconds(0.1 * i),
        Manifold = PulledWren.Air.Pressure + Wren.Kpa(35 + i),
        Rail = Wren.Kpa(365 + (3.3 * i)),
        Pulse = Wren.Ms(9 + (0.05 * i)),
        Lambda = 0.82 + (0.002 * i),
        Volts = Wren.Volt(13.5),
        Power = Power.FromKilowatts(110 + (2 * i)),
        Fuel = Temperature.FromDegreesCelsius(35),
        Flow = VolumeFlow.FromLitersPerHour(50 + i),
    };

    [Fact]
    public void Rates_AreThoseOfTheChannels()
    {
        RunModel model = ModelOf(cells => cells);
        Assert.Equal([0.5], model.Points.Spans);
        Assert.Equal([10.0], model.Points.RowCounts);
        double Rate(Channel channel) => model.Points.Rate(channel)[0];
        Assert.Equal(200 / 60.0, Rate(Channel.Speed), 1e-9);
        Assert.Equal(10e3, Rate(Channel.ManifoldAbsolute), 1e-6);
        Assert.Equal(33e3, Rate(Channel.RailGauge), 1e-6);
        Assert.Equal(0.5e-3, Rate(Channel.InjectorPulse), 1e-12);
        Assert.Equal(0.02, Rate(Channel.Lambda), 1e-12);
        Assert.Equal(20e3, Rate(Channel.Power), 1e-6);
        Assert.Equal(10 / 3.6e6, Rate(Channel.FuelVolumeFlow), 1e-15);
        Assert.Equal(0, Rate(Channel.BatteryVoltage), 1e-12);
        PointInput input = model.Inputs[0];
        Assert.Equal(3090 / 60.0, input.Speed, 1e-9);
        Assert.Equal((10e3, 33e3), (Math.Round(input.BoostRate, 6), Math.Round(input.RailRate, 6)));
        Assert.Equal(10 / 54.5, input.MeterRate, 1e-9);
        Assert.Equal(0.02 / 0.829, input.LambdaRate, 1e-9);
    }

    /// <summary>Lambda that comes 0.15 s late is that of one and a half rows later: of the ten rows eight have one, of rows 1.5 to 8.5, in the middle 0.82 + 0.002 · 5.</summary>
    [Fact]
    public void Lambda_IsReadAsLateAsItComes()
    {
        Assert.Equal(0.829, ModelOf(cells => cells).Inputs[0].Lambda, 1e-12);
        RunCheck late = RunCheck.Of(PulledWren.Plan, Wren.Hill, discrepancy: ModelDiscrepancy.Of(lambdaDelay: Duration.FromMilliseconds(150)));
        Assert.Equal(0.830, late.Model(RunOf(cells => cells), 1).Inputs[0].Lambda, 1e-12);
    }

    /// <summary>Without times nothing is said of how fast anything changes; nor of a point of one row.</summary>
    [Fact]
    public void Rates_WithoutTimes_AreNone()
    {
        foreach (RunModel model in new[] { ModelOf(cells => cells with { Time = null }), PulledWren.Check.Model(RecordedRun.Of("row", PulledWren.Air, [Row(0).Row(1)])) })
        {
            PointInput input = model.Inputs[0];
            Assert.Equal(0, model.Points.Spans[0]);
            Assert.Equal(
                [0.0, 0, 0, 0, 0, 0, 0, 0],
                [input.BoostRate, input.RailRate, input.LambdaRate, input.MeterRate, input.RailUnsteady, input.FlowUnsteady, input.LambdaUnsteady, input.PowerUnsteady]);
        }
    }

    /// <summary>
    /// Over the onset a regulator of gain 3 explains 30 of the 33 kPa/s: 3 kPa/s over 0.5 s are 1.5 kPa. Fuel by the injectors, by the forward equations at the ends of
    /// the course, explains part of the meter's and of power's change; air and fuel part of lambda's. A quarter of what is left may be off in a comparison.
    /// </summary>
    [Fact]
    public void WhatIsNotExplained_WidensTheComparison()
    {
        RunModel model = ModelOf(cells => cells);
        PointInput input = model.Inputs[0];
        Assert.Equal(1500, input.RailUnsteady, 1e-3);
        (double fuel, double air) = (LogOver(Fuel), LogOver(Air));
        double speed = LogOver(i => 3000 + (20 * i));
        Assert.Equal(0.5 * Math.Abs((10 / 54.5) - fuel), input.FlowUnsteady, 2e-5);
        Assert.Equal(0.5 * Math.Abs((20 / 119.0) - fuel), input.PowerUnsteady, 2e-5);
        Assert.Equal(0.5 * Math.Abs((0.02 / 0.829) - ((air - speed) - (fuel - speed))), input.LambdaUnsteady, 2e-4);

        // Ten readings together scatter by √(π/2)/√10.
        double share = Math.Sqrt(Math.PI / 2 / 10);
        Assert.Equal(Math.Sqrt((share * share * ((2e3 * 2e3) + (1.5e3 * 1.5e3))) + (1e3 * 1e3) + (375 * 375)), model.Describe(0).Spread, 1e-3);
        double across = share * Math.Sqrt((2e3 * 2e3) + (500 * 500)) / (2 * input.Differential);
        double injected = Math.Sqrt(Math.Pow(share * 1e-5 / input.Open, 2) + (across * across));
        double[] unsteady = [input.FlowUnsteady, input.LambdaUnsteady, input.PowerUnsteady];
        double[] other = [injected, injected, share * 0.01];
        for (int row = 1; row < 4; row++)
        {
            Assert.Equal(
                Math.Sqrt((share * share * 1e-4) + (other[row - 1] * other[row - 1]) + 2.5e-5 + Math.Pow(0.25 * unsteady[row - 1], 2)), model.Describe(row).Spread, 1e-9);
        }
    }

    /// <summary>Read too seldom, five times in a point, lambda is taken to change as air and fuel do; without either it is not known to.</summary>
    [Fact]
    public void Lambda_ReadTooSeldom_GoesAsAirAndFuelDo()
    {
        double planned = LogOver(Air) - LogOver(Fuel);
        int row = 0;
        PointInput seldom = ModelOf(cells => cells with { Lambda = row++ % 2 == 0 ? cells.Lambda : null }).Inputs[0];
        Assert.Equal(planned, seldom.LambdaRate, 4e-4);
        row = 0;
        PointInput often = ModelOf(cells => cells with { Lambda = row++ < 6 ? cells.Lambda : null }).Inputs[0];
        Assert.NotEqual(planned, often.LambdaRate, 0.01);

        // By the meter where there is no pulse, and as the regulator sets it where there is no rail: 30 kPa/s.
        row = 0;
        PointInput metered = ModelOf(cells => cells with { Pulse = null, Lambda = row++ % 2 == 0 ? cells.Lambda : null }).Inputs[0];
        Assert.Equal(LogOver(Air) - (10 / 54.5), metered.LambdaRate, 4e-4);
        PointInput bare = ModelOf(cells => cells with { Pulse = null, Flow = null, Lambda = row++ % 2 == 0 ? cells.Lambda : null }).Inputs[0];
        Assert.Equal(0, bare.LambdaRate);
        Assert.Equal(0, bare.MeterRate);
        Assert.Equal(30e3, ModelOf(cells => cells with { Rail = null }).Inputs[0].RailRate, 1e-3);
    }

    /// <summary>
    /// What comes late, by hand: 0.03 s of the rail's sensor at 33 kPa/s are 990 Pa more, 0.04 s of the manifold's at 10 kPa/s 400 Pa of boost, three times that in the
    /// rail; 0.1 s of lambda 0.1 of its rate, 0.02 s of the meter 0.02 of its.
    /// </summary>
    [Fact]
    public void Differences_OfWhatComesLate_AreTheRatesTimesTheDelay()
    {
        RunModel model = RunCheck.Of(PulledWren.Plan, Wren.Hill, discrepancy: ModelDiscrepancy.Of(lambdaDelay: Duration.Zero)).Model(RunOf(cells => cells), 1);
        PointInput input = model.Inputs[0];
        double[] Moved(params (RunQuantity Quantity, double By)[] moves)
        {
            double[] off = new double[RunModel.Quantities];
            foreach ((RunQuantity quantity, double by) in moves)
            {
                off[(int)quantity] = by / model.Tolerance[(int)quantity];
            }

            double[] found = new double[model.Comparisons];
            model.Differences(off, found);
            double[] none = new double[model.Comparisons];
            model.Differences(new double[RunModel.Quantities], none);

            // What counts over three deviations is their root; undone, the difference itself.
            double Whole(double counted) => Math.Abs(counted) <= 3 ? counted : Math.Sign(counted) * ((counted * counted) + 9) / 6;
            return [.. found.Select((each, row) => (Whole(each) - Whole(none[row])) * model.Describe(row).Spread)];
        }

        double half = 1 / (2 * input.Differential);
        double[] rail = Moved((RunQuantity.RailLag, 0.03));
        Assert.Equal(990, rail[0], 1e-6);
        Assert.Equal(-990 * half, rail[1], 5e-6);
        Assert.Equal(990 * half, rail[2], 5e-6);
        Assert.Equal(0, rail[3]);
        double[] manifold = Moved((RunQuantity.ManifoldLag, 0.04));
        Assert.Equal(-1200, manifold[0], 0.5);
        Assert.Equal(400 * half, manifold[1], 1e-6);
        Assert.Equal((-400 * half) - (0.04 * -input.AirByPressure * -10e3), manifold[2], 2e-6);
        double[] lambda = Moved((RunQuantity.LambdaDelay, 0.1));
        Assert.Equal(0.1 * 0.02 / 0.829, lambda[2], 1e-9);
        Assert.Equal((0.0, 0.0), (Math.Round(lambda[0], 6), Math.Round(lambda[1], 12)));
        double[] clock = Moved((RunQuantity.FlowClock, 0.02));
        Assert.Equal(0.02 * 10 / 54.5, clock[1], 1e-9);
        Assert.Equal(-0.02 * 10 / 54.5, clock[3], 1e-9);
    }

    /// <summary>Slopes of all comparisons against central differences where every channel moves, with fuel by the meter, the injectors or both.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void Slopes_WhereChannelsMove_AreThoseOfTheDifferences(bool pulse, bool meter)
    {
        RunModel model = PulledWren.DefaultCheck.Model(RunOf(cells => cells with { Pulse = pulse ? cells.Pulse : null, Flow = meter ? cells.Flow : null }), 1);
        double[] off = [.. Enumerable.Range(0, RunModel.Quantities).Select(i => 0.05 * ((i * 7 % 11) - 5))];
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        model.Slopes(off, slopes);
        (double[] up, double[] down) = (new double[model.Comparisons], new double[model.Comparisons]);
        const double Step = 1e-4;
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            double[] moved = [.. off];
            moved[quantity] += Step;
            model.Differences(moved, up);
            moved[quantity] -= 2 * Step;
            model.Differences(moved, down);
            for (int row = 0; row < model.Comparisons; row++)
            {
                Assert.Equal((up[row] - down[row]) / (2 * Step), slopes[(row * RunModel.Quantities) + quantity], 1e-5);
            }
        }
    }

    private static double LogOver(Func<double, double> figure) =>
        (Math.Log(figure(Middle + 0.01)) - Math.Log(figure(Middle - 0.01))) / 0.002;

    /// <summary>Fuel by the injectors at a row's speed, pulse and pressures, m³/s: static flow for the open share of the time.</summary>
    private static double Fuel(double i)
    {
        Cells cells = Row(i);
        FuelSizing.Injectors.InjectorSet set = PulledWren.Plan.Injectors;
        Pressure across = cells.Rail!.Value + PulledWren.Air.Pressure - cells.Manifold!.Value;
        double dead = set.Injector.DeadTime.At(Wren.Volt(13.5), Wren.Kpa(364.5 + (3.3 * Middle) - 35 - Middle + 0.5)).Seconds;
        double density = PulledWren.Plan.Demand.Consumption.Fuel.DensityAtKelvins(308.15);
        return set.Injector.StaticAt(across.Pascals, density) * (cells.Pulse!.Value.Seconds - dead) * cells.Speed.RevolutionsPerSecond;
    }

    private static double Air(double i)
    {
        Cells cells = Row(i);
        return PulledWren.Plan.Demand.At(cells.Speed, cells.Manifold!.Value - PulledWren.Air.Pressure, PulledWren.Air).AirMassFlow.KilogramsPerSecond;
    }

    private static RunModel ModelOf(Func<Cells, Cells> change) => PulledWren.Check.Model(RunOf(change), 1);

    private static RecordedRun RunOf(Func<Cells, Cells> change) =>
        RecordedRun.Of("rates", PulledWren.Air, [.. Enumerable.Range(0, 10).Select(i => change(Row(i)).Row(i + 1))]);
}
