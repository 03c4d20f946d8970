using System.Text.Json;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Circuits;
using FuelSizing.Tests.Controllers;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The second streams that an independent program calculates too; .ci/peer runs both and compares.</summary>
public class PeerStreamsTests
{
    /// <summary>Names the file to write the systems and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_STREAMS";

    /// <summary>Fewer of a kind would say little of it.</summary>
    private const int Fewest = 15;

    /// <summary>Streams to a system.</summary>
    private const int Each = 3;

    /// <summary>Systems of the peer's mixtures on boost whose rail the regulator holds, with no lambda sensor at work, each with several streams.</summary>
    private static readonly Lazy<IReadOnlyList<(PeerMixture Mixture, SecondStreamResult Answer)>> All = new(() =>
    [
        .. PeerMixtures.All.Select((mixture, number) => (mixture, number))
            .Where(each => each.mixture.Point.Boost > Pressure.Zero && each.mixture.System.Demand.Induction.Drive == CompressorDrive.ExhaustTurbine)
            .SelectMany(each => Enumerable.Range(0, Each).Select(draw => each.mixture with { System = each.mixture.System.With(StreamOf((each.number * Each) + draw, each.mixture)) }))
            .Select(mixture => (mixture, Result: mixture.System.Solve(mixture.Point)))
            .Where(each => each.Result.Mixture is { Lambda: { } lambda, ClosedLoopFactor: 1 } && double.IsFinite(lambda)
                && each.Result.Mixture.RailState is RailState.Regulated or RailState.AtRegulatorLimit
                && each.Result.Mixture.MaximumLambda.Equals(lambda)
                && (each.mixture.System.Layout == LineLayout.Return || each.mixture.System.Plumbing.Supply.Count == 0)
                && (!each.mixture.System.Controller.IsIdeal || each.Result.DutyCycle is { DecimalFractions: < 1 })
                && each.Result.SecondStream!.Flow is not null)
            .Select(each => (each.mixture, each.Result.SecondStream!)),
    ]);

    [Fact]
    public void Streams_OfThePeer_AreOfEveryKind()
    {
        (string, Func<PeerMixture, SecondStreamResult, bool>)[] kinds =
        [
            ("held", (_, answer) => answer is { Acts: true, Stream: { HeldPressure: not null, Pump: null } }),
            ("held by a pump that can", (_, answer) => answer is { Acts: true, Stream: { HeldPressure: { } held, Pump: not null } } && answer.NozzleGauge!.Value.Pascals.Equals(held.Pascals)),
            ("a pump that cannot hold it", (_, answer) => answer is { Acts: true, Stream: { HeldPressure: { } held, Pump: not null } } && answer.NozzleGauge!.Value < held),
            ("a pump that runs free", (_, answer) => answer is { Acts: true, Stream.HeldPressure: null }),
            ("part of it", (_, answer) => answer.Share.DecimalFractions is > 0 and < 1),
            ("none of it", (_, answer) => !answer.Acts),
            ("with water", (_, answer) => answer.Acts && answer.Stream.Fluid.FuelMassShare.DecimalFractions < 1),
            ("taken back", (_, answer) => answer.TakenBack > Ratio.Zero),
            ("evaporates", (_, answer) => answer.AirGain > Ratio.Zero),
            ("before the compressor", (_, answer) => answer.Acts && answer.Stream.Nozzles.SpraysInto == SprayPlace.BeforeCompressor),
            ("recorded pulses", (mixture, answer) => answer.Acts && mixture.Recorded is not null),
            ("calculated pulses", (mixture, answer) => answer.Acts && mixture.System.Controller is CalculatingController),
            ("ideal pulses", (mixture, answer) => answer.Acts && mixture.System.Controller is IdealController),
        ];
        Assert.True(All.Value.Count >= 150, $"Only {All.Value.Count} streams.");
        Assert.Empty(kinds.Select(kind => (kind.Item1, Count: All.Value.Count(each => kind.Item2(each.Mixture, each.Answer)))).Where(kind => kind.Count < Fewest).Select(kind => $"{kind.Item1}: {kind.Count}"));
    }

    [Fact]
    public void Description_OfThePeersStreams_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(All.Value.Select(each => Of(each.Mixture, each.Answer)));
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(All.Value.Count, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }

    private static SecondStream StreamOf(int number, PeerMixture mixture)
    {
        Random random = new(number + 4_000);
        double Any(double from, double to) => from + ((to - from) * random.NextDouble());
        Fuel fuel = random.Next(3) == 0 ? Fuel.Ethanol : Fuel.Methanol;
        StreamFluid fluid = random.Next(3) switch
        {
            0 => StreamFluid.Of(fuel),
            1 => StreamFluid.WithWaterByMass(fuel, Wren.Percent(Any(5, 95))),
            _ => StreamFluid.WithWaterByVolume(fuel, Wren.Percent(Any(5, 95))),
        };
        if (fluid.FuelMassShare.DecimalFractions < 1 && random.Next(2) == 0)
        {
            fluid = fluid.WithDensity(fluid.DensityAt(Temperature.FromDegreesCelsius(15)) * Any(0.995, 1.04));
        }

        double boost = mixture.Point.Boost.Kilopascals;
        SprayNozzles nozzles = SprayNozzles.Of(
            random.Next(1, 5),
            VolumeFlow.FromMillilitersPerMinute(Any(60, 900)),
            Wren.Kpa(Any(300, 900)),
            random.Next(2) == 0 ? SprayNozzles.Water : TestFluid.Heptane,
            random.Next(4) == 0 ? SprayPlace.BeforeCompressor : SprayPlace.Manifold).WithMinimumDifferential(Wren.Kpa(Any(0, 60)));
        Pressure held = Wren.Kpa(boost + Any(150, 900));
        int pumped = random.Next(4);
        double free = Any(30, 400);
        Pump pump = Pump.From(PumpCurve.At(
            "own",
            mixture.Point.Conditions.SupplyVoltage,
            (Pressure.Zero, VolumeFlow.FromLitersPerHour(free)),
            (Wren.Kpa(boost + 100), VolumeFlow.FromLitersPerHour(free * Any(0.5, 0.95))),
            (Wren.Kpa(boost + Any(300, 1200)), VolumeFlow.Zero)));
        Pressure begin = Wren.Kpa(boost * (random.Next(8) == 0 ? Any(1.01, 1.5) : Any(0.1, 0.95)));
        SecondStream stream = SecondStream.Of(
            "stream", fluid, nozzles, begin, pumped == 0 ? null : held, pumped == 1 ? null : pump, random.Next(3) == 0 ? begin + Wren.Kpa(Any(2, 80)) : null);
        stream = random.Next(2) == 0 && stream.HeldPressure is not null ? stream.WithEvaporation(Wren.Percent(Any(1, 100))) : stream;
        return random.Next(2) == 0 && mixture.Recorded is null ? stream.WithMainFuelTakenBack(Wren.Percent(Any(1, 40))) : stream;
    }

    private static object Of(PeerMixture mixture, SecondStreamResult answer)
    {
        SecondStream stream = answer.Stream;
        return new
        {
            main = PeerMixtureDescription.Of(mixture),
            mainHeatingValueJoulesPerKilogram = mixture.System.Demand.Consumption.Fuel.LowerHeatingValue.JoulesPerKilogram,
            fuel = PeerMixtureDescription.Of(stream.Fluid.Fuel),
            fuelShare = stream.Fluid.FuelShare.DecimalFractions,
            isShareByVolume = stream.Fluid.IsByVolume,
            densityAt15CKilogramsPerCubicMetre = stream.Fluid.DensityAt15C?.KilogramsPerCubicMeter,
            heatingValueJoulesPerKilogram = stream.Fluid.Fuel.LowerHeatingValue.JoulesPerKilogram,
            vaporisationJoulesPerKilogram = stream.Fluid.Fuel.HeatOfVaporisation!.Value.JoulesPerKilogram,
            nozzles = stream.Nozzles.Count,
            nozzleCubicMetresPerSecond = stream.Nozzles.Flow.CubicMetersPerSecond,
            ratedPascals = stream.Nozzles.RatedDifferential.Pascals,
            testFluidKilogramsPerCubicMetre = stream.Nozzles.TestFluid.Density.KilogramsPerCubicMeter,
            againstBoost = stream.Nozzles.SpraysInto == SprayPlace.Manifold,
            heldPascals = stream.HeldPressure?.Pascals,
            pump = stream.Pump is { } pump ? PeerDescription.Of(pump) : null,
            beginPascals = stream.Begin.Pascals,
            fullPascals = stream.Full?.Pascals,
            evaporatedShare = stream.EvaporatedShare.DecimalFractions,
            takenBackShare = stream.MainFuelTakenBack.DecimalFractions,
            answers = new
            {
                nozzlePascals = answer.NozzleGauge?.Pascals,
                flowCubicMetresPerSecond = answer.Flow!.Value.CubicMetersPerSecond,
                massKilogramsPerSecond = answer.LiquidMassFlow!.Value.KilogramsPerSecond,
                fuelKilogramsPerSecond = answer.FuelMassFlow!.Value.KilogramsPerSecond,
                mainKilogramsPerSecond = answer.MainFuelMassFlow!.Value.KilogramsPerSecond,
                fuelFraction = answer.ShareOfFuel!.Value.DecimalFractions,
                heatFraction = answer.ShareOfHeat!.Value.DecimalFractions,
                lambda = answer.Lambda,
                richestLambda = answer.MinimumLambda,
                leanestLambda = answer.MaximumLambda,
                stoppedLambda = answer.LambdaIfStopped,
                airGain = answer.AirGain.DecimalFractions,
            },
        };
    }
}
