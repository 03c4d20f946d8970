using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>What a batch refuses: columns that do not match, and a point out of range by its column and place.</summary>
public class PointBatchRefusalTests
{
    /// <summary>Every column, and what stands beside its name where a number in it is out of range.</summary>
    private static readonly (string Name, double Refused, string Value, string Allowed)[] Inputs =
    [
        ("Speed", 130, "130 rev/s of Speed", "between 13.3333 rev/s and 120 rev/s"),
        ("Boost", 401e3, "401000 Pa of Boost", "between −84321.7 Pa and 400000 Pa"),
        ("Lambda", 14.7, "14.7 air–fuel ratio ÷ stoichiometric of Lambda", "between 0.6 and 1.2"),
        ("SupplyVoltage", 5.9, "5.9 V of SupplyVoltage", "between 6 V and 20 V"),
    ];

    private static readonly PointBatch Batch = PointBatch.Of(Wren.System().Parts, Wren.Hill);

    /// <summary>Places in a first and a second block of 256, and among the last three that fill no vector.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(255)]
    [InlineData(256)]
    [InlineData(291)]
    [InlineData(300)]
    [InlineData(302)]
    public void Point_OutOfRange_IsRefusedByColumnAndPlaceAmongPointsAtTheirLimits(int place)
    {
        foreach ((string name, double refused, string value, string allowed) in Inputs)
        {
            foreach ((bool lambda, bool volts) in new[] { (true, true), (true, false), (false, true), (false, false) })
            {
                if ((name == "Lambda" && !lambda) || (name == "SupplyVoltage" && !volts))
                {
                    continue;
                }

                double[][] columns = AtTheirLimits(303, lambda, volts);
                columns[Array.FindIndex(Inputs, input => input.Name == name)][place] = refused;
                ArgumentOutOfRangeException error = Refusal(columns);
                Assert.Equal("inputs", error.ParamName);
                Assert.Contains($"{value} (place {place})", error.Message, StringComparison.Ordinal);
                Assert.Contains($"it must be {allowed}", error.Message, StringComparison.Ordinal);
            }
        }
    }

    /// <summary>0.6 is bar and 160 is kPa; 60,000 is Pa, and points without boost beside it are in order.</summary>
    [Theory]
    [InlineData(new[] { 0, 0.6 }, "0.6 Pa of Boost (place 1)")]
    [InlineData(new[] { 160.0, 120 }, "160 Pa of Boost (place 0)")]
    [InlineData(new[] { -0.4 }, "−0.4 Pa of Boost (place 0)")]
    [InlineData(new[] { 0.0, 0.0 }, null)]
    [InlineData(new[] { 200.0, 0, 60_000 }, null)]
    [InlineData(new[] { -1000.0 }, null)]
    public void Boosts_ThatLookLikeBarOrKilopascals_AreRefused(double[] boosts, string? refused)
    {
        double[] speeds = [.. boosts.Select(_ => 100.0)];
        void Evaluate() => Batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = new double[boosts.Length] });
        if (refused is null)
        {
            Evaluate();
            return;
        }

        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(Evaluate);
        Assert.Equal("inputs", error.ParamName);
        Assert.Contains(refused, error.Message, StringComparison.Ordinal);
        Assert.Contains("Give gauge pressure in Pa, 60000 for 0.6 bar.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Points_AtTheirLimits_AreAllTaken()
    {
        double[][] columns = AtTheirLimits(303, lambda: true, volts: true);
        double[] rail = new double[303];
        Assert.Equal(303, Batch.Evaluate(Given(columns), new() { RailGauge = rail }));
        Assert.All(rail.Zip(columns[1]), point => Assert.Equal(300e3 + point.Second, point.First, 6));
    }

    [Fact]
    public void Point_OutOfRangeInSeveralColumns_IsToldOfTheFirst()
    {
        double[][] columns = AtTheirLimits(5, lambda: true, volts: true);
        (columns[0][4], columns[1][4], columns[2][4], columns[3][4]) = (130, 401e3, 2, 30);
        Assert.Contains("of Speed (place 4)", Refusal(columns).Message, StringComparison.Ordinal);
        columns[0][4] = 100;
        Assert.Contains("of Boost (place 4)", Refusal(columns).Message, StringComparison.Ordinal);
        columns[1][4] = 0;
        Assert.Contains("of Lambda (place 4)", Refusal(columns).Message, StringComparison.Ordinal);
        columns[2][4] = 1;
        Assert.Contains("of SupplyVoltage (place 4)", Refusal(columns).Message, StringComparison.Ordinal);
    }

    /// <summary>Threads take 2,048 points at a time here; whoever finds one first, the first in the columns is told.</summary>
    [Theory]
    [InlineData(2048, 4096)]
    [InlineData(2058, 4106)]
    [InlineData(0, 5999)]
    [InlineData(5999, 5999)]
    public void Points_OutOfRangeInSeveralThreads_AreToldOfByTheFirst(int first, int other)
    {
        double[][] columns = AtTheirLimits(6_000, lambda: true, volts: true);
        columns[0][first] = double.NaN;
        columns[3][other] = 5;
        Assert.Contains($"NaN rev/s of Speed (place {first})", Refusal(columns, threads: 2).Message, StringComparison.Ordinal);
    }

    /// <summary>Work that is watched goes on in steps; the place still counts from the first point of all.</summary>
    [Fact]
    public void Point_OutOfRangeInALaterStep_IsRefusedByItsPlaceInTheWhole()
    {
        double[][] columns = AtTheirLimits(60_000, lambda: false, volts: false);
        columns[1][50_001] = double.NaN;
        List<double> heard = [];
        Assert.Contains(
            "NaN Pa of Boost (place 50001)",
            Refusal(columns, progress: new Listener(share => heard.Add(share.DecimalFractions))).Message,
            StringComparison.Ordinal);
        Assert.Single(heard);
    }

    [Theory]
    [InlineData("inputs", "Boost")]
    [InlineData("inputs", "Lambda")]
    [InlineData("inputs", "SupplyVoltage")]
    [InlineData("outputs", "RailGauge")]
    [InlineData("outputs", "Differential")]
    [InlineData("outputs", "FuelFlow")]
    [InlineData("outputs", "StaticFlow")]
    [InlineData("outputs", "Pulse")]
    [InlineData("outputs", "DutyCycle")]
    [InlineData("outputs", "PumpReserve")]
    [InlineData("outputs", "InjectorReserve")]
    public void Column_OfAnotherLength_IsRefusedByName(string argument, string column)
    {
        foreach (int length in new[] { 1, 3 })
        {
            double[] Of(string name) => name == column ? new double[length] : name == "Boost" ? [0, 0] : [];
            ArgumentException error = Assert.Throws<ArgumentException>(() => Batch.Evaluate(
                new() { Speed = [50, 60], Boost = Of("Boost"), Lambda = Of("Lambda"), SupplyVoltage = Of("SupplyVoltage") },
                new()
                {
                    RailGauge = Of("RailGauge"),
                    Differential = Of("Differential"),
                    FuelFlow = Of("FuelFlow"),
                    StaticFlow = Of("StaticFlow"),
                    Pulse = Of("Pulse"),
                    DutyCycle = Of("DutyCycle"),
                    PumpReserve = Of("PumpReserve"),
                    InjectorReserve = Of("InjectorReserve"),
                }));
            Assert.Equal(argument, error.ParamName);
            Assert.Contains(
                $"{argument}.{column} had {length} numbers for 2 speeds; give one for each.", error.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>Tables of 800 to 7,200 and 1,500 to 6,500 rev/min leave what both cover, up to the engine's limit.</summary>
    [Theory]
    [InlineData(800, 7200, 1500, 6500, 7200, 1500, 6500)]
    [InlineData(1500, 6500, 800, 7200, 7200, 1500, 6500)]
    [InlineData(800, 6500, 1500, 7200, 7200, 1500, 6500)]
    [InlineData(1500, 7200, 800, 6500, 7200, 1500, 6500)]
    [InlineData(800, 7200, 800, 7200, 6000, 800, 6000)]
    [InlineData(800, 7200, 800, 7200, 8000, 800, 7200)]
    public void Speeds_AreThoseOfBothTablesUpToTheLimit(
        double efficiencyFrom, double efficiencyTo, double powerFrom, double powerTo, double limit, double minimum, double maximum)
    {
        PointBatch batch = PointBatch.Of(SystemOf((efficiencyFrom, efficiencyTo), (powerFrom, powerTo), limit).Parts, Wren.Hill);
        void Takes(double rpm) => Assert.Equal(1, batch.Evaluate(new() { Speed = [rpm / 60], Boost = [0] }, default));
        void Refuses(double rpm) => Assert.Contains(
            "of Speed (place 0)",
            Assert.Throws<ArgumentOutOfRangeException>(() => Takes(rpm)).Message,
            StringComparison.Ordinal);
        Takes(minimum);
        Takes(maximum);

        // Other units may miss an end by its last digits.
        Takes(minimum * (1 - 5e-10));
        Takes(maximum * (1 + 5e-10));
        Refuses(minimum - 1);
        Refuses(maximum + 1);
    }

    [Fact]
    public void Tables_WithoutASpeedInCommon_MakeNoBatch()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => PointBatch.Of(SystemOf((800, 3000), (4000, 7200), 7200).Parts));
        Assert.Equal("parts", error.ParamName);
        Assert.Contains("without a speed in common", error.Message, StringComparison.Ordinal);
    }

    /// <summary>At sea level −91 kPa leave 10.3 kPa absolute; at 600 m, in 94.3 kPa of air, they leave less than the 10 that are asked.</summary>
    [Fact]
    public void Boost_LeavesTenKilopascalsAbsolute()
    {
        PointBatch sea = PointBatch.Of(Wren.System().Parts);
        Assert.Equal(1, sea.Evaluate(new() { Speed = [50], Boost = [-91e3] }, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => sea.Evaluate(new() { Speed = [50], Boost = [-92e3] }, default));
        Assert.Equal(1, Batch.Evaluate(new() { Speed = [50], Boost = [-84e3] }, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => Batch.Evaluate(new() { Speed = [50], Boost = [-91e3] }, default));
    }

    private static FuelSystem SystemOf((double From, double To) efficiency, (double From, double To) power, double limit) =>
        FuelSystem.Return(
            FuelDemandModel.Of(
                Engine.Of("Wren 2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Wren.Rpm(limit)),
                Wren.Turbocharger,
                VolumetricEfficiency.Of(
                    (Wren.Rpm(efficiency.From), Wren.Percent(80)), (Wren.Rpm(efficiency.To), Wren.Percent(95))),
                PowerCurve.AtCrank(
                    Atmosphere.Standard,
                    (Wren.Rpm(power.From), Power.FromKilowatts(12)),
                    (Wren.Rpm(power.To), Power.FromKilowatts(140))),
                Wren.Percent(85),
                Wren.Petrol),
            InjectorSet.Of(Wren.InjectorOf(360), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.Pump));

    /// <summary>Columns whose every number is the least or the most that is allowed.</summary>
    private static double[][] AtTheirLimits(int points, bool lambda, bool volts)
    {
        double[] Column(double minimum, double maximum, int every) =>
            [.. Enumerable.Range(0, points).Select(place => place / every % 2 == 0 ? minimum : maximum)];
        return
        [
            Column(800 / 60.0, 120, 1),
            Column(10e3 - Wren.Hill.Atmosphere.Pressure.Pascals, 400e3, 2),
            lambda ? Column(0.6, 1.2, 4) : [],
            volts ? Column(6, 20, 8) : [],
        ];
    }

    private static PointInputs Given(double[][] columns) =>
        new() { Speed = columns[0], Boost = columns[1], Lambda = columns[2], SupplyVoltage = columns[3] };

    private static ArgumentOutOfRangeException Refusal(double[][] columns, int threads = 1, IProgress<Ratio>? progress = null) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Batch.Evaluate(
            Given(columns), new() { DutyCycle = new double[columns[0].Length] }, threads, progress));
}
