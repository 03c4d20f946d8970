using System.Text.Json;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Controllers;

/// <summary>The mixtures that an independent program calculates too; .ci/peer runs both and compares.</summary>
public class PeerMixturesTests
{
    /// <summary>Names the file to write the systems and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_MIXTURES";

    /// <summary>Fewer of a kind would say little of it.</summary>
    private const int Least = 20;

    [Fact]
    public void Systems_OfThePeer_AreFiveHundredAndOfEveryKind()
    {
        Assert.Equal(500, PeerMixtures.All.Count);
        Dictionary<string, int> counts = Kinds.ToDictionary(kind => kind.Name, _ => 0);
        foreach (PeerMixture each in PeerMixtures.All)
        {
            DeliveredMixture mixture = each.System.Solve(each.Point).Mixture;
            foreach ((string name, Func<PeerMixture, DeliveredMixture, bool> isOfIt) in Kinds)
            {
                counts[name] += isOfIt(each, mixture) ? 1 : 0;
            }
        }

        Assert.Empty(counts.Where(kind => kind.Value < Least).Select(kind => $"{kind.Key}: {kind.Value}"));
    }

    [Fact]
    public void Description_OfThePeersSystems_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(PeerMixtures.All.Select(PeerMixtureDescription.Of));
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(PeerMixtures.All.Count, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }

    private static (string Name, Func<PeerMixture, DeliveredMixture, bool> IsOfIt)[] Kinds { get; } =
    [
        ("ideal", (each, _) => each.System.Controller is IdealController),
        ("speed-density within its end", (each, mixture) => each.System.Controller is SpeedDensityController && !mixture.IsPastSensor),
        ("speed-density past its end", (each, mixture) => each.System.Controller is SpeedDensityController && mixture.IsPastSensor),
        ("throttle with barometer", (each, _) => each.System.Controller is ThrottleController { HasBarometer: true }),
        ("throttle without barometer", (each, _) => each.System.Controller is ThrottleController { HasBarometer: false }),
        ("throttle with air temperature", (each, _) => each.System.Controller is ThrottleController { HasAirTemperature: true }),
        ("throttle without air temperature", (each, _) => each.System.Controller is ThrottleController { HasAirTemperature: false }),
        ("meter at its end", (each, mixture) => each.System.Controller is AirflowMeterController && mixture.IsPastSensor),
        ("meter within its range", (each, mixture) => each.System.Controller is AirflowMeterController && !mixture.IsPastSensor),
        ("recorded over speed, corrected", (each, _) => each.Recorded is { Manifold.Count: 0, Correction: not null }),
        ("recorded over speed, uncorrected", (each, _) => each.Recorded is { Manifold.Count: 0, Correction: null }),
        ("recorded over manifold pressure, corrected", (each, _) => each.Recorded is { Manifold.Count: > 0, Correction: not null }),
        ("recorded over manifold pressure, uncorrected", (each, _) => each.Recorded is { Manifold.Count: > 0, Correction: null }),
        ("regulated", (_, mixture) => Known(mixture, RailState.Regulated)),
        ("sagging", (_, mixture) => Known(mixture, RailState.Sagging)),
        ("starved", (_, mixture) => mixture.RailState == RailState.Starved),
        ("return floor", (_, mixture) => Known(mixture, RailState.ReturnFloor)),
        ("held open", (_, mixture) => mixture.IsHeldOpen),
        ("cut off by the duty limit", (_, mixture) => mixture.IsDutyLimited && !mixture.IsHeldOpen),
        ("rail-pressure correction", (each, _) => DataOf(each) is { CorrectsForRailPressure: true }),
        ("fixed voltage", (each, _) => DataOf(each) is { FixedVoltage: not null }),
        ("closed loop within its authority", (each, mixture) => Loop(each, mixture) is { } share && Math.Abs(share) < 0.999999),
        ("closed loop at its limit", (each, mixture) => Loop(each, mixture) is { } share && Math.Abs(share) >= 0.999999),
        ("ethanol sensor on a blend", (each, _) => DataOf(each) is { HasEthanolSensor: true } && !IsPetrol(each)),
        ("blend without a sensor", (each, _) => DataOf(each) is { HasEthanolSensor: false } && !IsPetrol(each)),
        ("two injections a cycle", (each, _) => each.System.Injectors.InjectionsPerCycle == 2),
        ("two-stroke", (each, _) => each.System.Demand.Engine.Cycle == EngineCycle.TwoStroke),
        ("lambda not known", (_, mixture) => mixture.Lambda is null),
    ];

    private static bool Known(DeliveredMixture mixture, RailState state) => mixture.RailState == state && mixture.Lambda is not null;

    private static ControllerData? DataOf(PeerMixture each) => (each.System.Controller as CalculatingController)?.Data;

    private static bool IsPetrol(PeerMixture each) => each.System.Demand.Consumption.Fuel.Name == "petrol";

    /// <summary>How much of its authority the closed loop takes, with its sign; none where it is open or lambda is not known.</summary>
    private static double? Loop(PeerMixture each, DeliveredMixture mixture) =>
        DataOf(each)?.ClosedLoop is { } loop && mixture.Lambda is not null && !mixture.ClosedLoopFactor.Equals(1)
            ? (mixture.ClosedLoopFactor - 1) / loop.Authority.DecimalFractions
            : null;
}
