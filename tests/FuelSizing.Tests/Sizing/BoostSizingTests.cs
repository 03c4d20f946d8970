using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>The most boost that a system supports, and the injectors that support this one: on the car Dunnock, against a scan.</summary>
public class BoostSizingTests
{
    private static readonly RotationalSpeed Slowest = Wren.Rpm(2600);

    private static readonly RotationalSpeed Fastest = Wren.Rpm(6100);

    private static readonly BeltDrivenBoost Line = MixtureSizingTests.Line;

    private static readonly FuelSystem Built = MixtureSizingTests.Boosted.With(RisingRate.From(Wren.Kpa(300), 7.5, Pressure.Zero));

    [Fact]
    public void MaximumDriveRatio_IsTheLastOfAScanAtWhichEverythingHolds()
    {
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Built, Line, Slowest, Fastest, Wren.Hill);
        double answer = most.DriveRatio.Value!.Value;

        // Steps of 0.2 % of the ratio, 71 speeds each, which the search knows nothing of.
        double first = double.NaN;
        double last = double.NaN;
        for (int step = 0; step < 300 && double.IsNaN(first); step++)
        {
            double ratio = Line.DriveRatio * (1 + (0.002 * step));
            bool holds = Enumerable.Range(0, 71).All(at =>
            {
                RotationalSpeed speed = Wren.Rpm(2600 + (50 * at));
                return Built.Solve(OperatingPoint.At(speed, Line.WithDriveRatio(ratio).At(speed, Built.Demand, Wren.Hill.Atmosphere), Wren.Hill))
                    .Margins.All(margin => margin.Outcome == Outcome.Holds);
            });
            (first, last) = holds ? (first, ratio) : (ratio, last);
        }

        Assert.InRange(answer, last * (1 - 1e-9), first);
        Assert.True(answer > Line.DriveRatio * 1.005, most.ToString());
        Assert.Equal((Line.DriveRatio / answer) - 1, most.CompressorPulleyChange!.Value.DecimalFractions, 1e-12);

        // The change of pulley gives that line, along which all holds; a little more does not.
        BeltDrivenBoost smaller = Line.WithCompressorPulley(most.CompressorPulleyChange.Value);
        Assert.Equal(answer, smaller.DriveRatio, 1e-9);
        Assert.All(most.Pull!.Standings, standing => Assert.NotEqual(Outcome.Fails, standing.Outcome));
    }

    /// <summary>
    /// A margin that dips beside 4,423 rev/min, halfway between two of the speeds that are asked at first, the deeper the more boost there is: it is gone there where these two still
    /// have most of it. The pull that follows finds that, and the speed is asked from then on.
    /// </summary>
    [Fact]
    public void MaximumDriveRatio_WhereAMarginDipsBetweenTheSpeedsAsked_IsThatAtTheDip()
    {
        const double At = 4423;
        double fitted = Line.At(Wren.Rpm(At), Built.Demand, Wren.Hill.Atmosphere).Kilopascals;
        double limit = 1.15 * fitted;
        FuelSystem dips = Dipping(_ => At, fitted, limit);
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(dips, Line, Slowest, Fastest, Wren.Hill);
        Assert.Equal(limit, most.Line!.At(Wren.Rpm(At), Built.Demand, Wren.Hill.Atmosphere).Kilopascals, 1e-3);
        Assert.Equal(most.DriveRatio.Value!.Value, most.Line.DriveRatio);
        Assert.NotNull(most.Pull);
        Assert.Equal(At, most.DriveRatio.Binding.Point.Speed.RevolutionsPerMinute, 0.5);
    }

    /// <summary>A dip that moves with the boost: whichever speed is asked, it is elsewhere at another ratio. After some rounds it says so, and gives no line.</summary>
    [Fact]
    public void MaximumDriveRatio_WhereADipMovesWithTheBoost_SaysThatItIsNotSettled()
    {
        double fitted = Line.At(Wren.Rpm(4423), Built.Demand, Wren.Hill.Atmosphere).Kilopascals;
        FuelSystem dips = Dipping(boost => 4423 + (20 * (boost - fitted)), fitted, 1.6 * fitted);
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(dips, Line, Slowest, Fastest, Wren.Hill);
        Assert.StartsWith("Not settled: too near to a limit at ", most.ToString(), StringComparison.Ordinal);
        Assert.Null(most.Line);
        Assert.Null(most.Pull);
        Assert.Null(most.HighestBoost);
        Assert.Null(most.CompressorPulleyChange);
    }

    // 6 % everywhere but beside a speed, over 100 rev/min on each side: there nothing is left at a boost, kPa.
    private static FuelSystem Dipping(Func<double, double> at, double from, double limit) => ShapedCheck.Judging(
        point =>
        {
            (double rpm, double boost) = (point.Speed * 60, point.Boost / 1e3);
            return 0.06 * (1 - (Math.Max(0, 1 - (Math.Abs(rpm - at(boost)) / 100)) * (boost - from) / (limit - from)));
        },
        Built);

    /// <summary>In whole per cent, from pulleys a third of a per cent apart, so that one of them would be rounded past what serves.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(0.9967)]
    [InlineData(0.9934)]
    public void CompressorPulley_AsItIsPrinted_Serves(double fitted)
    {
        BeltDrivenBoost line = Line.WithDriveRatio(Line.DriveRatio * fitted);
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(Built, line, Slowest, Fastest, Wren.Hill);
        Match printed = Regex.Match(most.ToString(), @"Compressor pulley ([−+]?\d+) %");
        BeltDrivenBoost asPrinted = line.WithCompressorPulley(
            Ratio.FromPercent(double.Parse(printed.Groups[1].Value.Replace('−', '-'), CultureInfo.InvariantCulture)));
        Assert.True(asPrinted.DriveRatio <= most.Line!.DriveRatio * (1 + 1e-9), most.ToString());
        Assert.All(Built.Pull(asPrinted, Slowest, Fastest, Wren.Hill).Standings, standing => Assert.NotEqual(Outcome.Fails, standing.Outcome));
    }

    [Fact]
    public void MaximumDriveRatio_OfACarThatFailsAsItIs_IsNone()
    {
        MaximumBoostResult most = BoostSizing.MaximumDriveRatio(
            MixtureSizingTests.Boosted.With(ManifoldReferenced.From(Wren.Kpa(300))), Line, Slowest, Fastest, Wren.Hill);
        Assert.Null(most.CompressorPulleyChange);
        Assert.Equal(Part.Mixture, most.DriveRatio.Binding.Part);
        Assert.StartsWith("None: it fails with the pulley fitted", most.ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// A margin that small injectors lose within 60 rev/min of 3,329, the sixth of 25 speeds from 2,600 to 6,100, and that those fitted have everywhere: the pull with these does not
    /// show it, the answer is the flow at which nothing is left there.
    /// </summary>
    [Fact]
    public void InjectorsInstead_AreAskedAtSpeedsBetween()
    {
        const double At = 2600 + (3500 * 5 / 24.0);
        double fitted = Built.With(ManifoldReferenced.From(Wren.Kpa(300))).Solve(Wren.At(At, 0)).StaticFlow!.Value.CubicMetersPerSecond;
        double least = 0.4 * fitted;
        FuelSystem dips = ShapedCheck.Judging(
            point => 0.5 - (Math.Max(0, 1 - (Math.Abs((point.Speed * 60) - At) / 60)) * Math.Max(0, 1 - (point.StaticFlow / (2 * least)))),
            MixtureSizingTests.Boosted);
        InjectorRequirement answer = BoostSizing.InjectorsInstead(dips, Line, Slowest, Fastest, Wren.Hill, Wren.Kpa(300));
        Assert.Equal(1, answer.System!.Solve(Wren.At(At, 0)).StaticFlow!.Value.CubicMetersPerSecond / least, 1e-6);
        Assert.Equal(At, answer.StaticFlow.Binding.Point.Speed.RevolutionsPerMinute, 1e-6);
    }

    [Fact]
    public void InjectorsInstead_PutBack_GiveTheTargetAndHold()
    {
        InjectorRequirement answer = BoostSizing.InjectorsInstead(MixtureSizingTests.Boosted, Line, Slowest, Fastest, Wren.Hill, Wren.Kpa(300));
        VolumeFlow flow = answer.StaticFlow.Value!.Value;
        FuelSystem put = MixtureSizingTests.Boosted
            .With(ManifoldReferenced.From(Wren.Kpa(300)))
            .With(InjectorSet.Of(answer.Data!.Injector, 6))
            .With(FuelSizing.Controllers.AirflowMeterController.Of(answer.Data));
        Assert.Equal(flow, answer.Data.Injector.StaticFlow);
        for (int at = 0; at <= 100; at++)
        {
            OperatingResult result = Solve(put, 2600 + (35 * at));
            Assert.Equal(0.83, result.Mixture.Lambda!.Value, 1e-9);
            Assert.All(result.Margins, margin => Assert.True(margin.Outcome == Outcome.Holds || margin.Reserve > Wren.Percent(-1e-4), margin.ToString()));
        }

        // A little less static flow does not serve.
        FuelSystem less = put.With(InjectorSet.Of(answer.Data.Injector.WithStaticFlow(flow * 0.998), 6));
        Assert.Contains(Enumerable.Range(0, 101).SelectMany(at => Solve(less, 2600 + (35 * at)).Margins), margin => margin.Part == Part.Injectors && margin.Outcome == Outcome.Fails);

        // Q = Q_ref √(Δp/Δp_ref) √(ρ_ref/ρ), of fuel ρ Q: the injector constant, Δp = 300 kPa = Δp_ref.
        double density = FuelSizing.Fuels.Fuel.Petrol.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
        Assert.Equal(
            flow.CubicMetersPerSecond * Math.Sqrt(TestFluid.Heptane.Density.KilogramsPerCubicMeter / density) * density,
            answer.StaticMassFlow!.Value.KilogramsPerSecond,
            1e-12);
        Assert.Equal(
            Enumerable.Range(0, 101).Max(at => Solve(put, 2600 + (35 * at)).Point.Boost.Kilopascals) + Wren.Hill.Atmosphere.Pressure.Kilopascals,
            answer.HighestManifoldAbsolute.Kilopascals,
            1e-6);
    }

    [Fact]
    public void InjectorsInstead_WhereNoneServe_SaysWhy()
    {
        // Hoses that do not stand the base pressure.
        FuelSystem weak = MixtureSizingTests.Boosted.With(SizingLimits.Of(Wren.Percent(90), Wren.Percent(5), Wren.Kpa(310)));
        InjectorRequirement answer = BoostSizing.InjectorsInstead(weak, Line, Slowest, Fastest, Wren.Hill, Wren.Kpa(300));
        Assert.Null(answer.System);
        Assert.StartsWith("No injectors serve", answer.ToString(), StringComparison.Ordinal);
        Assert.Equal(Part.PressureRating, answer.StaticFlow.Binding.Part);
    }

    private static OperatingResult Solve(FuelSystem system, double rpm) =>
        system.Solve(OperatingPoint.At(Wren.Rpm(rpm), Line.At(Wren.Rpm(rpm), system.Demand, Wren.Hill.Atmosphere), Wren.Hill));
}
