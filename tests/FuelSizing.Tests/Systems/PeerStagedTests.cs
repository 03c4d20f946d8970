using System.Text.Json;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Controllers;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The points with two sets of injectors that an independent program calculates too; .ci/peer runs both and compares.</summary>
public class PeerStagedTests
{
    /// <summary>Names the file to write the points and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_STAGED";

    private const int Seed = 47;
    private const int Count = 400;

    // Fewer of a kind would say little of it.
    private const int Few = 20;

    private static readonly (FuelSystem System, OperatingPoint Point)[] All = [.. Made()];

    [Fact]
    public void Points_OfThePeer_AreOfEveryKind()
    {
        OperatingResult[] results = [.. All.Select(one => one.System.Solve(one.Point))];
        Assert.All(results, result => Assert.Equal(RailState.Regulated, result.RailState));
        Assert.InRange(results.Length, 150, Count);
        foreach (bool byDuty in new[] { false, true })
        {
            SecondaryInjection[] own = [.. results.Select(result => result.SecondaryInjection!).Where(one => one.Staged.HandOver.IsByDutyCycle == byDuty)];
            Assert.True(own.Count(one => one.IsIdle) >= Few);
            Assert.True(own.Count(one => Near(one.Share, one.Staged.HandOver.Share)) >= Few);
            Assert.True(own.Count(one => !one.IsIdle && !Near(one.Share, one.Staged.HandOver.Share) && !Near(one.Share, one.Staged.HandOver.ShareAtBegin)) >= Few);
        }

        foreach (Part part in (Part[])[Part.SecondaryInjectors, Part.SecondaryMinimumPulse])
        {
            Assert.True(results.Count(result => ByPart.Find(result, part).Outcome == Outcome.Fails) >= Few / 2, part.Name);
        }

        static bool Near(Ratio? one, Ratio other) => one is { } share && Math.Abs(share.DecimalFractions - other.DecimalFractions) < 1e-9;
    }

    [Fact]
    public void Description_OfThePeersPoints_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(All.Select((one, number) => Described($"staged {number}", one.System, one.Point)));
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(All.Length, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }

    private static IEnumerable<(FuelSystem System, OperatingPoint Point)> Made()
    {
        Random random = new(Seed);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        for (int number = 0; number < Count; number++)
        {
            double begin = Between(-0.1, 0.4);
            Ratio share = Wren.Percent(Between(20, 80));
            Ratio atBegin = share * (random.Next(3) == 0 ? 0 : Between(0, 1));
            HandOver handOver = number % 2 == 0
                ? HandOver.ByBoost(Pressure.FromBars(begin), Pressure.FromBars(begin + Between(0.05, 0.5)), share, atBegin)
                : HandOver.ByDutyCycle(Wren.Percent(Between(25, 60)), share, atBegin);
            double boost = number % 2 == 0 ? begin + Between(-0.25, 0.6) : Between(0, 0.9);
            FuelSystem system = Wren.System(
                (number % 3) switch
                {
                    0 => ManifoldReferenced.From(Wren.Kpa(Between(260, 420))),
                    1 => Fixed.At(Wren.Kpa(Between(330, 450))),
                    _ => RisingRate.From(Wren.Kpa(Between(260, 320)), Between(1.2, 3), Pressure.FromBars(Between(0, 0.2)), Wren.Kpa(600)),
                },
                Between(250, 500),
                2.6).With(Staged.Of(handOver, Between(120, 1100), random.Next(1, 9), random.Next(1, 3)));
            OperatingPoint point = OperatingPoint.At(
                Wren.Rpm(Between(1200, 7000)),
                Pressure.FromBars(boost),
                Conditions.Of(Atmosphere.AtAltitude(Length.FromMeters(Between(0, 1500))), Wren.Volt(Between(12, 14.5)), Temperature.FromDegreesCelsius(Between(5, 50))));
            OperatingResult result = system.Solve(point);
            if (result.RailState == RailState.Regulated && result is { Pulse: not null, SecondaryInjection.Pulse: not null })
            {
                yield return (system, point);
            }
        }
    }

    private static object Described(string name, FuelSystem system, OperatingPoint point)
    {
        OperatingResult result = system.Solve(point);
        SecondaryInjection secondary = result.SecondaryInjection!;
        HandOver handOver = secondary.Staged.HandOver;
        return new
        {
            name,
            car = PeerMixtureDescription.Of(new PeerMixture(name, system.WithoutStagedInjectors(), point, null)),
            secondary = PeerMixtureDescription.Of(secondary.Staged.Secondary.Injector),
            secondaryInjectors = secondary.Staged.Secondary.Count,
            secondaryInjectionsPerCycle = secondary.Staged.Secondary.InjectionsPerCycle,
            beginPascals = handOver.BeginBoost?.Pascals,
            fullPascals = handOver.FullBoost?.Pascals,
            beginDutyCycle = handOver.BeginDutyCycle?.DecimalFractions,
            share = handOver.Share.DecimalFractions,
            shareAtBegin = handOver.ShareAtBegin.DecimalFractions,
            dutyLimit = system.Limits.DutyCycle.DecimalFractions,
            minimumPulses = new[] { Minimum(system.Injectors.Injector), Minimum(secondary.Staged.Secondary.Injector) },
            answers = new
            {
                shareOfSecondary = secondary.Share!.Value.DecimalFractions,
                primaryFlow = result.PrimaryFlow!.Value.CubicMetersPerSecond,
                secondaryFlow = secondary.Flow!.Value.CubicMetersPerSecond,
                primaryStatic = result.StaticFlow!.Value.CubicMetersPerSecond,
                secondaryStatic = secondary.StaticFlow!.Value.CubicMetersPerSecond,
                primaryPulse = result.Pulse!.Value.Seconds,
                secondaryPulse = secondary.Pulse!.Value.Seconds,
                primaryDuty = result.DutyCycle!.Value.DecimalFractions,
                secondaryDuty = secondary.DutyCycle!.Value.DecimalFractions,
                primaryReserve = Left(result, Part.Injectors),
                secondaryReserve = Left(result, Part.SecondaryInjectors),
                primaryOpen = Left(result, Part.MinimumPulse),
                secondaryOpen = Left(result, Part.SecondaryMinimumPulse),
            },
        };
    }

    private static double? Left(OperatingResult result, Part part) => ByPart.Find(result, part).Share;

    private static object Minimum(Injector injector) => new
    {
        seconds = injector.MinimumLinearPulse.Seconds,
        volts = injector.MinimumPulseVoltage.Volts,
    };
}
