using System.Text.Json;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The runs of warming tanks that an independent program integrates too; .ci/peer runs both and compares.</summary>
public class PeerHeatTests
{
    /// <summary>Names the file to write the runs and answers to; nothing is written where it is not set.</summary>
    private const string FileVariable = "FUELSIZING_PEER_HEAT";

    private const int Seed = 31;
    private const int Count = 80;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    private static readonly HeatRun[] All = [.. Made()];

    [Fact]
    public void Runs_OfThePeer_AreOfEveryKind()
    {
        Assert.InRange(All.Length, Count / 2, Count);
        Assert.Contains(All, run => run.IsInsulated);
        Assert.Contains(All, run => !run.IsInsulated);
        Assert.Contains(All, run => run.Result.Parts.Layout == LineLayout.Returnless);
        Assert.Contains(All, run => run.Result.Parts.SurgeTank?.ReturnsTo == ReturnDestination.SurgeTank);
        Assert.Contains(All, run => run.Result.Parts.SurgeTank?.ReturnsTo == ReturnDestination.MainTank);
        Assert.Contains(All, run => run.SteadyTemperature < run.Result.Point.Conditions.TankTemperature);
    }

    [Fact]
    public void Description_OfThePeersRuns_IsWrittenWhereAskedFor()
    {
        string text = JsonSerializer.Serialize(All.Select(Described), Indented);
        using JsonDocument read = JsonDocument.Parse(text);
        Assert.Equal(All.Length, read.RootElement.GetArrayLength());
        if (Environment.GetEnvironmentVariable(FileVariable) is { Length: > 0 } file)
        {
            File.WriteAllText(file, text);
        }
    }

    private static IEnumerable<HeatRun> Made()
    {
        Random random = new(Seed);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        for (int number = 0; number < Count; number++)
        {
            Pump pump = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)]);
            InjectorSet injectors = InjectorSet.Of(Wren.InjectorOf(500), 4);
            FuelSystem plain = FuelSystem.Return(Wren.Demand(), injectors, ManifoldReferenced.From(Wren.Kpa(Between(250, 400))), pump);
            FuelSystem system = (number % 4) switch
            {
                0 => plain,
                1 => FuelSystem.Returnless(Wren.Demand(), injectors, Fixed.At(Wren.Kpa(Between(300, 400))), pump),
                2 => plain.With(SurgeTanks.Bare(scale: Between(0.8, 1.4))),
                _ => plain.With(SurgeTanks.Bare(scale: Between(1.3, 2), to: ReturnDestination.MainTank)),
            };
            Conditions conditions = Conditions
                .Of(Atmosphere.AtAltitude(Length.FromMeters(600), Celsius(Between(-5, 45))), Wren.Volt(13.5), Celsius(35))
                .WithTankTemperature(Celsius(Between(0, 45)));
            TankHeat tank = TankHeat.Of(Volume.FromLiters(Between(10, 60)), Power.FromWatts(Between(0, 500)));
            if (random.Next(4) > 0)
            {
                tank = tank.WithWalls(
                    Area.FromSquareMeters(Between(0.2, 2)), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(Between(2, 30)));
            }

            HeatRun run = system.WarmTank(
                tank, OperatingPoint.At(Wren.Rpm(Between(900, 6500)), Pressure.FromBars(Between(-0.4, 0.4)), conditions), Duration.FromMinutes(Between(1, 25)));
            if (run.Gap is null)
            {
                yield return run;
            }
        }
    }

    private static object Described(HeatRun run)
    {
        SolvedLift? lift = run.Result.SolvedCircuit.Lift;
        SolvedCircuit main = lift?.MainFull ?? run.Result.SolvedCircuit;
        Conditions conditions = run.Result.Point.Conditions;
        return new
        {
            layout = run.Result.Parts.Layout.ToString(),
            surge = run.Result.Parts.SurgeTank?.ReturnsTo.ToString(),
            litres = run.Tank.FuelVolume.Liters,
            pickupWatts = (double)run.Tank.RailPickup.Watts,
            wallSquareMetres = run.Tank.WallArea?.SquareMeters,
            wallCoefficient = run.Tank.WallCoefficient?.WattsPerSquareMeterKelvin,
            ambientKelvins = conditions.Atmosphere.Temperature.Kelvins,
            startKelvins = conditions.TankTemperature.Kelvins,
            specificHeat = 2080,
            densityInTank = run.Result.Parts.Demand.Consumption.Fuel.DensityAt(conditions.TankTemperature).KilogramsPerCubicMeter,
            density = run.Result.FuelDensity.KilogramsPerCubicMeter,
            seconds = run.Run.Seconds,
            main = Circuit(main),
            lift = lift?.Full is { } full ? Circuit(full) : null,
            tankKelvins = run.TankTemperature!.Value.Kelvins,
            inletKelvins = run.InletTemperature!.Value.Kelvins,
            railKelvins = run.RailTemperature!.Value.Kelvins,
            litresLeft = run.FuelLeft!.Value.Liters,
        };
    }

    private static object Circuit(SolvedCircuit circuit) => new
    {
        flow = circuit.State.Flow,
        returned = circuit.State.ReturnFlow,
        inlet = circuit.State.InletGauge,
        rail = circuit.State.RailGauge,
        pumps = circuit.Pumps.Select(pump => new { volts = pump.Voltage, amperes = pump.Current }),
    };

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
