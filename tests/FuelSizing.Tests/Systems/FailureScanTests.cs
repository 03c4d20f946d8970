using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// Each single failure against the failed system as it is described by hand, through public constructors alone, solved at 401 speeds. What a
/// regulator then sets is written here as a formula, and given to a fixed one point by point.
/// </summary>
public class FailureScanTests(ITestOutputHelper output)
{
    private const int Speeds = 401;

    [Fact]
    public void Failures_OfRandomCars_EqualTheFailedSystemsDescribedByHand()
    {
        int cars = RandomCars.Count(3);
        object gate = new();
        Dictionary<string, int> seen = [];
        long compared = 0;
        RandomCars.Any.Sample(
            car =>
            {
                foreach (FailureResult failure in car.System.WithEachFailure(car.Line, car.Slowest, car.Fastest, car.Conditions))
                {
                    string code = failure.Failure.Code;
                    if (failure.Sweep is null)
                    {
                        Assert.Equal("failure.open", code);
                        continue;
                    }

                    int points = Compare(car, failure);
                    lock (gate)
                    {
                        seen[code] = seen.GetValueOrDefault(code) + (points > 0 ? 1 : 0);
                        compared += points;
                    }
                }
            },
            iter: cars);
        output.WriteLine($"{cars} cars, {compared} points; {string.Join(", ", seen.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} {pair.Value}"))}");
        Assert.True(seen.Count >= (cars >= 100 ? 9 : 5), $"only {seen.Count} kinds of failure");
    }

    /// <summary>How many points were compared.</summary>
    private static int Compare(RandomCar car, FailureResult failure)
    {
        int compared = 0;
        double leanest = double.NegativeInfinity;
        double lowest = double.PositiveInfinity;
        foreach (RotationalSpeed speed in car.Speeds(Speeds))
        {
            if (ByHand(car, failure.Failure.ToString(), speed) is not { } expected)
            {
                continue;
            }

            OperatingResult own = car.Solve(failure.Sweep!.System, speed, failure.Sweep.Results[0].Point.Conditions);
            Near(expected.Mixture.Lambda, own.Mixture.Lambda, failure, expected);
            // A regulator that shuts cannot be described: one set to 1,500 kPa would still hold down what the pumps give at the most by their data.
            if (failure.Failure.Code != "failure.shut")
            {
                Near(expected.Mixture.MaximumLambda, own.Mixture.MaximumLambda, failure, expected);
            }

            Near(expected.Mixture.RailGauge.Kilopascals, own.Mixture.RailGauge.Kilopascals, failure, expected);
            leanest = Math.Max(leanest, expected.Mixture.MaximumLambda ?? double.NegativeInfinity);
            lowest = Math.Min(lowest, expected.Mixture.RailGauge.Kilopascals);
            compared++;
        }

        if (double.IsFinite(lowest))
        {
            Assert.True((failure.Leanest?.Mixture.MaximumLambda ?? double.NegativeInfinity) >= leanest * (1 - 1e-6) || failure.NotKnown > 0, $"{failure}: the scan has {leanest}: {car}");
            Assert.True(failure.LowestRail!.Mixture.RailGauge.Kilopascals <= lowest + 1e-3, $"{failure}: the scan has {lowest} kPa: {car}");
        }

        return compared;
    }

    private static void Near(double? expected, double? actual, FailureResult failure, OperatingResult at)
    {
        bool near = (expected, actual) switch
        {
            (null, null) => true,
            ({ } one, { } other) => one.Equals(other) || Math.Abs(one - other) <= 1e-9 * Math.Max(1, Math.Abs(one)),
            _ => false,
        };
        Assert.True(near, $"{failure.Failure}: {actual}, by hand {expected} at {at.Point}, {at.System}");
    }

    /// <summary>The failed car at a speed; none where this test cannot describe it.</summary>
    private static OperatingResult? ByHand(RandomCar car, string failure, RotationalSpeed speed)
    {
        FuelSystem system = car.System;
        double boost = car.Line.At(speed, system.Demand, car.Conditions.Atmosphere).Kilopascals;
        (double pressure, double gain, double onset, double ceiling) = (car.Setting.Base, car.Setting.Gain, 100 * car.Setting.Onset, car.Setting.Ceiling);
        if (failure.EndsWith(" dead, or its relay", StringComparison.Ordinal))
        {
            return Solve(system.With(car.Without(failure[..^" dead, or its relay".Length])));
        }

        if (failure.EndsWith(" half blocked", StringComparison.Ordinal))
        {
            string name = failure[..^" half blocked".Length];
            IFlowLoss[] Twice(IReadOnlyList<IFlowLoss> line) =>
                [.. line.Select(part => part is Filter filter && filter.Name == name ? Filter.Of(name, filter.RatedFlow, filter.RatedLoss, 2 * filter.Clogging) : part)];
            return Solve(system.With(Plumbing.Of(Twice(system.Plumbing.Suction), Twice(system.Plumbing.Supply), Twice(system.Plumbing.ReturnLine))));
        }

        return failure switch
        {
            "alternator off, 12.0 V" => car.Solve(system, speed, Conditions.Of(car.Conditions.Atmosphere, Wren.Volt(12), car.Conditions.FuelTemperature)),
            "reference hose off" => Set(pressure),
            "reference hose of the rising-rate unit off" => car.Setting.Kind == 3 ? Set(pressure + boost) : Set(pressure + onset),
            "reference hose of the base regulator off" => Set(Math.Max(pressure, Math.Min(ceiling, gain * boost))),
            "rising-rate unit stuck open" => Set(car.Setting.Kind == 3 ? pressure + boost : pressure),
            "base regulator stuck open" => car.Setting.Kind == 3
                ? Set(Math.Min(ceiling, gain * boost))
                : Set(Math.Min(ceiling, pressure + onset + Math.Min(boost, onset) + (gain * Math.Max(0, boost - onset)))),

            // A regulator that is set out of the pumps' reach is shut: where they do not reach 1,500 kPa.
            "regulator stuck shut" => Set(1500) is { Mixture.RailState: RailState.Sagging or RailState.Starved } shut ? shut : null,
            _ => throw new InvalidOperationException($"No description of {failure}."),
        };

        OperatingResult? Set(double kilopascals) => kilopascals >= 100 ? Solve(system.With(Fixed.At(Wren.Kpa(kilopascals)))) : null;

        OperatingResult Solve(FuelSystem failed) => car.Solve(failed, speed, car.Conditions);
    }
}
