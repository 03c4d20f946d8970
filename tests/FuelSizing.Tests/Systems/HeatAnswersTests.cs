using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// The answers of a warming tank against a scan of its run: pressure at the tank and at each inlet, less the vapour pressure at the temperature there, minute by minute.
/// </summary>
public class HeatAnswersTests
{
    private const double Limit = 10e3;

    private static readonly (string Name, FuelSystem System)[] Systems =
    [
        ("in the tank", Of(Plumbing.None)),
        ("behind a suction line", Of(Plumbing.Of(suction: SurgeTanks.Suction))),
        ("from a surge tank", Of(Plumbing.None).With(SurgeTanks.Bare())),
        ("from a surge tank, with lines", Of(Plumbing.Of(suction: SurgeTanks.Suction)).With(SurgeTank.Of(
            Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.6)), ReturnDestination.MainTank, SurgeTanks.Suction, SurgeTanks.LiftLine, SurgeTanks.Overflow))),
    ];

    /// <summary>From cold to nearly boiling, walls or none, a minute to empty the tank or an hour: at a time that is named the margin is used up, and not before; else it is not in the whole run.</summary>
    [Fact]
    public void Answer_IsThatOfAScanOfTheRun()
    {
        Dictionary<HeatAnswer, int> answers = [];
        foreach ((string name, FuelSystem system) in Systems)
        {
            foreach ((double celsius, double rpm, double bar) in new[] { (5.0, 2200.0, -0.3), (22, 2200, -0.3), (31, 2200, -0.3), (33.5, 2200, -0.3), (5, 6000, 0.3), (22, 6000, 0.3) })
            {
                foreach (TankHeat tank in Tanks)
                {
                    HeatRun run = Longest(system, tank, Point(celsius, rpm, bar));
                    if (run.Gap is not null)
                    {
                        Assert.Equal("heat.surge-tank-not-full", run.Gap.Code);
                        continue;
                    }

                    answers[run.Answer] = answers.GetValueOrDefault(run.Answer) + 1;
                    string what = $"{name}, {celsius} °C, {tank}: {run.Text}";
                    double[] margins = [.. Enumerable.Range(0, 201).Select(step => Margin(run, run.TankTemperatureAt(Duration.FromSeconds(Math.Min(step * run.Run.Seconds / 200, run.Run.Seconds)))!.Value))];
                    int first = Array.FindIndex(margins, margin => margin <= Limit);
                    if (run.Answer == HeatAnswer.UsedUp)
                    {
                        double steps = run.TimeUntilUsedUp!.Value.Seconds / run.Run.Seconds * 200;
                        Assert.True(first < 0 ? steps > 199.5 : steps <= first + 1e-6 && steps >= first - 1 - 1e-6, what);
                        if (first > 0)
                        {
                            Assert.True(Math.Abs(Margin(run, run.TankTemperatureAt(run.TimeUntilUsedUp.Value)!.Value) - Limit) < 0.1, what);
                        }
                    }
                    else
                    {
                        Assert.True(first < 0, what);
                        Assert.Null(run.TimeUntilUsedUp);

                        // Never: not even at the temperature that it settles at, with the fuel in it for ever.
                        bool never = run.SteadyTemperature is { } steady && Margin(run, Max(steady, run.TankTemperatureAt(Duration.Zero)!.Value)) > Limit;
                        Assert.Equal(never ? HeatAnswer.Never : HeatAnswer.NotBeforeEmpty, run.Answer);
                    }
                }
            }
        }

        Assert.True(answers.Count == 3 && answers.Values.Min() > 3, string.Join(", ", answers));
    }

    /// <summary>The margin is the lowest of all places, at the start, on the way and at the end, and the place is that which has it.</summary>
    [Fact]
    public void Margin_IsTheLowestOfAllPlaces()
    {
        HashSet<HeatPlace> places = [];
        foreach ((string _, FuelSystem system) in Systems)
        {
            HeatRun run = system.WarmTank(Tanks[0], Point(22), Duration.FromMinutes(4));
            Assert.Equal(Margin(run, run.TankTemperature!.Value), run.VapourMargin!.Value.Pascals, 1e-6);
            Assert.Equal(Margin(run, Temperature.FromDegreesCelsius(22)), run.VapourMarginAtStart!.Value.Pascals, 1e-6);
            Duration half = Duration.FromMinutes(2);
            Assert.Equal(Margin(run, run.TankTemperatureAt(half)!.Value), run.VapourMarginAt(half)!.Value.Pascals, 1e-6);
            Assert.Equal(Margins(run, run.TankTemperature.Value).MinBy(place => place.Pascals).Place, run.Place);
            places.Add(run.Place);
        }

        Assert.Equal(3, places.Count);
    }

    /// <summary>Times from the first to the last moment of the run, and none outside it.</summary>
    [Fact]
    public void Times_OutsideTheRun_AreRefused()
    {
        HeatRun run = Systems[0].System.WarmTank(Tanks[0], Point(22), Duration.FromMinutes(4));
        Assert.Equal(22, run.TankTemperatureAt(Duration.Zero)!.Value.DegreesCelsius, 9);
        Assert.Equal(run.TankTemperature!.Value.Kelvins, run.TankTemperatureAt(run.Run)!.Value.Kelvins, 9);
        Assert.Equal(run.VapourMargin!.Value.Pascals, run.VapourMarginAt(run.Run)!.Value.Pascals, 6);
        foreach (Duration time in new[] { Duration.FromSeconds(-1), Duration.FromSeconds(240.1) })
        {
            Refused.OutOfRange("time", () => run.TankTemperatureAt(time));
            Refused.OutOfRange("time", () => run.VapourMarginAt(time));
        }

        Refused.OutOfRange("run", () => Systems[0].System.WarmTank(Tanks[0], Point(22), Duration.FromSeconds(0.9)));
    }

    /// <summary>Minutes are told rounded down: by then it surely has not happened.</summary>
    [Fact]
    public void Words_RoundTimesDown()
    {
        FuelSystem system = Systems[0].System;
        OperatingPoint hot = Point(31);
        HeatRun run = Longest(system, Tanks[0], hot);
        double minutes = run.TimeUntilUsedUp!.Value.Minutes;
        Assert.Contains(
            FormattableString.Invariant($" after {Math.Floor(minutes * 10) / 10:0.0} min, with the tank at "), run.Text.ToString(), StringComparison.Ordinal);
        Assert.Equal(
            FormattableString.Invariant($"tank {Readable.Of(run.TankTemperature!.Value)} after {run.Run.Minutes:#,##0.0} min: {run.Text}"), run.ToString());

        // 95 % of the fuel is used after so long, and one second more is too long.
        OperatingResult result = run.Result;
        double used = 0.95 * Tanks[0].FuelVolume.CubicMeters * Fuel.Petrol.DensityAt(hot.Conditions.TankTemperature).KilogramsPerCubicMeter
            / (result.InjectedFlow.CubicMetersPerSecond * result.FuelDensity.KilogramsPerCubicMeter);
        HeatRun late = system.WarmTank(Tanks[0], hot, Duration.FromSeconds(used + 1));
        Assert.Equal(
            FormattableString.Invariant($"95 % of the fuel is used after {Math.Floor(used / 6) / 10:0.0} min, before the run of {(used + 1) / 60:0.0} min ends"), late.ToString());
        Assert.Null(late.FuelLeft);
        Assert.Null(system.WarmTank(Tanks[0], hot, Duration.FromSeconds(used - 1)).Gap);
    }

    private static readonly TankHeat[] Tanks =
    [
        TankHeat.Of(Volume.FromLiters(20), Power.FromWatts(400)),
        TankHeat.Of(Volume.FromLiters(20), Power.FromWatts(400)).WithWalls(Area.FromSquareMeters(0.6), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(8)).WithAmbient(Temperature.FromDegreesCelsius(28)),
        TankHeat.Of(Volume.FromLiters(40), Power.FromWatts(100)),
        TankHeat.Of(Volume.FromLiters(50), Power.FromWatts(20)).WithWalls(Area.FromSquareMeters(2), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(30)).WithAmbient(Temperature.FromDegreesCelsius(12)),
        TankHeat.Of(Volume.FromLiters(50), Power.FromWatts(20)).WithWalls(Area.FromSquareMeters(2), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(30)).WithAmbient(Temperature.FromDegreesCelsius(27)),
    ];

    private static HeatRun Longest(FuelSystem system, TankHeat tank, OperatingPoint point)
    {
        OperatingResult result = system.Solve(point);
        double mass = tank.FuelVolume.CubicMeters * Fuel.Petrol.DensityAt(point.Conditions.TankTemperature).KilogramsPerCubicMeter;
        double draw = result.InjectedFlow.CubicMetersPerSecond * result.FuelDensity.KilogramsPerCubicMeter;
        return system.WarmTank(tank, point, Duration.FromSeconds(0.95 * mass / draw * (1 - 1e-9)));
    }

    private static double Margin(HeatRun run, Temperature tank) => Margins(run, tank).Min(place => place.Pascals);

    private static IEnumerable<(HeatPlace Place, double Pascals)> Margins(HeatRun run, Temperature tank)
    {
        double ambient = run.Result.Point.Conditions.Atmosphere.Pressure.Pascals;
        double warmer = run.InletTemperature!.Value.Kelvins - run.TankTemperature!.Value.Kelvins;
        // Warmer than the fuel's data reach, where petrol has long boiled.
        double Vapour(double kelvins) => kelvins > 353.15 ? double.PositiveInfinity : Fuel.Petrol.VapourPressureAt(Temperature.FromKelvins(kelvins)).Pascals;
        yield return (HeatPlace.Tank, ambient - Vapour(tank.Kelvins));

        // The lowest at the inlet of either state of a surge tank: it may be filling, at the pressure of the air over it.
        SolvedCircuit main = run.Result.SolvedCircuit;
        double inlet = main.State.InletGauge;
        if (main.Lift?.MainFull is { } full)
        {
            inlet = Math.Min(inlet, full.State.InletGauge);
        }

        yield return (HeatPlace.PumpInlet, ambient + inlet - Vapour(tank.Kelvins + warmer));
        if (main.Lift is { } lift)
        {
            yield return (HeatPlace.LiftPumpInlet, ambient + Math.Min(lift.Filling.State.InletGauge, lift.Full!.Value.State.InletGauge) - Vapour(tank.Kelvins));
        }
    }

    private static Temperature Max(Temperature one, Temperature other) => one > other ? one : other;

    private static OperatingPoint Point(double celsius, double rpm = 2200, double bar = -0.3) => OperatingPoint.At(
        Wren.Rpm(rpm), Pressure.FromBars(bar), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Temperature.FromDegreesCelsius(35)).WithTankTemperature(Temperature.FromDegreesCelsius(celsius)));

    private static FuelSystem Of(Plumbing plumbing) => FuelSystem.Return(
        Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), ManifoldReferenced.From(Wren.Kpa(300)), Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)])).With(plumbing);
}
