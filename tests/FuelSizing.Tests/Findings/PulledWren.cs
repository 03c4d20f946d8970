using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// Recorded runs of the invented car: four pulls to rising boost and a stretch of part throttle, by the forward solver of a car that
/// is off the plan within its tolerances, with or without one fault, and sensors that scatter as stated.
/// </summary>
internal sealed class PulledWren
{
    private readonly List<(double Rpm, double Boost, double Volts)> _course = [];
    private readonly List<OperatingResult> _solved = [];
    /// <summary>Readings at each speed that the dynamometer holds.</summary>
    private const int Readings = 4;

    private readonly Random _random;

    private PulledWren(RunFault fault, int seed)
    {
        Fault = fault;
        _random = new Random((seed * 31) + (int)fault);
        Severity = _random.NextDouble();
        Build();
    }

    /// <summary>The air of the day.</summary>
    public static Atmosphere Air => Wren.Hill.Atmosphere;

    /// <summary>The plan: a thin reserve, so that a weak part shows.</summary>
    public static FuelSystem Plan { get; } = FuelSystem.Return(
        FuelDemandModel.Of(
            Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Air),
        InjectorSet.Of(Wren.InjectorOf(540), 4),
        RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(20)),
        PumpOf(0.9, 20),
        plumbing: PlumbingOf(1.5));

    /// <summary>Of runs that the plan's own equations have made, and nothing else: what can be worked by hand.</summary>
    public static RunCheck Check { get; } = RunCheck.Of(Plan, Wren.Hill, discrepancy: ModelDiscrepancy.None);

    /// <summary>As a log of a real car is compared.</summary>
    public static RunCheck DefaultCheck { get; } = RunCheck.Of(Plan, Wren.Hill);

    public RunFault Fault { get; }

    /// <summary>0 to 1.</summary>
    public double Severity { get; }

    /// <summary>What was truly off, SI.</summary>
    public double[] Off { get; private set; } = [];

    public double SupplyVolts { get; private set; }

    public FuelSystem Car { get; private set; } = Plan;

    public IReadOnlyList<OperatingResult> Solved => _solved;

    public static PulledWren With(RunFault fault, int seed) => new(fault, seed);

    /// <summary>The run as the logger recorded it.</summary>
    public RecordedRun Recorded(int seed, double outliers = 0.01)
    {
        Random random = new((seed * 7919) + 17);
        double Scatter(double spread) => Normal.Sample(random, 0, spread);
        List<RunRow> rows = [];
        for (int i = 0; i < 12; i++)
        {
            rows.Add(RunRow.Of(
                rows.Count + 1,
                RotationalSpeed.Zero,
                Duration.FromSeconds(rows.Count * 0.05),
                Air.Pressure + Pressure.FromPascals(Off[(int)RunQuantity.ManifoldSensor] + Scatter(500))));
        }

        for (int i = 0; i < _solved.Count; i++)
        {
            OperatingResult at = _solved[i];
            double mass = at.Demand.MassFlow.KilogramsPerSecond;
            double bsfc = Plan.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule
                * Math.Exp(Off[(int)RunQuantity.BrakeSpecificFuelConsumption]);
            bool glitch = random.NextDouble() < outliers;
            rows.Add(RunRow.Of(
                rows.Count + 1,
                Wren.Rpm(_course[i].Rpm + Scatter(8)),
                Duration.FromSeconds(rows.Count * 0.05),
                Air.Pressure + Pressure.FromPascals(
                    (_course[i].Boost * 1e5) + Off[(int)RunQuantity.ManifoldSensor] + Scatter(500)),
                Pressure.FromPascals(
                    at.RailGauge.Pascals + Off[(int)RunQuantity.RailSensor] + Scatter(2000) + (glitch ? Scatter(60_000) : 0)),
                Duration.FromSeconds(at.Pulse!.Value.Seconds + Off[(int)RunQuantity.DeadTime] + Scatter(1e-5)),
                lambda: 0.82 * Math.Exp(Scatter(0.01)) * (glitch ? 1.3 : 1),
                batteryVoltage: ElectricPotential.FromVolts(_course[i].Volts + Scatter(0.05)),
                power: Power.FromWatts(mass / bsfc * Math.Exp(Scatter(0.01))),
                fuelTemperature: Temperature.FromDegreesCelsius(35 + Scatter(0.3)),
                fuelVolumeFlow: at.InjectedFlow * Math.Exp(Off[(int)RunQuantity.FlowMeter] + Scatter(0.01))));
        }

        return RecordedRun.Of($"Wren, {Fault}", Air, rows);
    }

    /// <summary>The run as it was, without sensors between.</summary>
    public RecordedRun Exact() => RecordedRun.Of(
        $"Wren, {Fault}, exact",
        Air,
        _solved.Select((at, i) => RunRow.Of(
            i + 1,
            at.Point.Speed,
            Duration.FromSeconds(i * 0.05),
            at.Demand.ManifoldAbsolute,
            at.RailGauge,
            at.Pulse,
            lambda: 0.82,
            batteryVoltage: at.Point.Conditions.SupplyVoltage,
            fuelTemperature: Temperature.FromDegreesCelsius(35),
            fuelVolumeFlow: at.InjectedFlow)));

    private static Pump PumpOf(double condition, double milliohms) => FuelSizing.Pumps.Pump.Of(
        [Wren.WiredCurve(9, 0.62), Wren.WiredCurve(13.5, 1.02)],
        condition: Ratio.FromDecimalFractions(condition),
        feed: Feed.Of(
            "pump feed",
            Conductor.Metric(Area.FromSquareMillimeters(2.5)),
            Length.FromMeters(5),
            Length.FromMeters(1),
            Temperature.FromDegreesCelsius(50),
            Contact.Of("joints", ElectricResistance.FromMilliohms(milliohms))));

    private static Plumbing PlumbingOf(double clogging) => Plumbing.Of(
        supply:
        [
            Line.Of("supply line", Length.FromMillimeters(8), Length.FromMeters(4), Roughness.DrawnTube),
            Filter.Of("filter", VolumeFlow.FromLitersPerHour(150), Wren.Kpa(15), clogging),
        ]);

    private double Between(double minimum, double maximum) => minimum + ((maximum - minimum) * Severity);

    private double Either(double minimum, double maximum) => Between(minimum, maximum) * (_random.Next(2) == 0 ? -1 : 1);

    private void Build()
    {
        // Parts and sensors; what the plan's equations do not know is not in these runs, which they have made.
        double[] tolerance = Check.ToleranceOf()[..((int)RunQuantity.FlowMeter + 1)];
        Off = [.. tolerance.Select(t => t * Math.Clamp(Normal.Sample(_random, 0, 1), -2.5, 2.5)), .. new double[RunModel.Quantities - tolerance.Length]];
        SupplyVolts = 13.5 + (0.3 * Math.Clamp(Normal.Sample(_random, 0, 1), -2, 2));
        switch (Fault)
        {
            case RunFault.WeakPump:
                Off[(int)RunQuantity.PumpFlow] = Math.Log(Between(0.82, 0.66));
                break;
            case RunFault.VoltageDrop when _random.Next(2) == 0:
                SupplyVolts = Between(12.3, 11.7);
                break;
            case RunFault.VoltageDrop:
                Off[(int)RunQuantity.FeedResistance] = Between(0.09, 0.2);
                break;
            case RunFault.CloggedFilter:
                Off[(int)RunQuantity.FilterLoss] = Between(8, 16);
                break;
            case RunFault.WrongGain:
                Off[(int)RunQuantity.RegulatorGain] = 3 * Either(0.12, 0.3);
                break;
            case RunFault.WrongOnset:
                Off[(int)RunQuantity.RegulatorOnset] = Between(12e3, 25e3);
                break;
            case RunFault.WrongInjectorSize:
                Off[(int)RunQuantity.InjectorFlow] = Math.Log(1 + Either(0.08, 0.2));
                break;
            case RunFault.RailSensorOffset:
                Off[(int)RunQuantity.RailSensor] = Either(35e3, 70e3);
                break;
            case RunFault.ManifoldSensorOffset:
                Off[(int)RunQuantity.ManifoldSensor] = Either(6e3, 15e3);
                break;
            default:
                break;
        }

        RisingRate set = (RisingRate)Plan.Regulator;
        FuelDemandModel demand = Plan.Demand.With(
            Plan.Demand.VolumetricEfficiency.Scaled(Math.Exp(Off[(int)RunQuantity.VolumetricEfficiency])),
            Plan.Demand.MeasuredPower,
            Plan.Demand.Consumption);
        Car = Plan
            .With(
                demand,
                Plan.Injectors.Scaled(Math.Exp(Off[(int)RunQuantity.InjectorFlow])),
                RisingRate.From(
                    set.Base + Pressure.FromPascals(Off[(int)RunQuantity.RegulatorBase]),
                    set.Gain + Off[(int)RunQuantity.RegulatorGain],
                    set.Onset + Pressure.FromPascals(Off[(int)RunQuantity.RegulatorOnset])))
            .With(PumpOf(
                0.9 * Math.Exp(Off[(int)RunQuantity.PumpFlow]), Math.Max(0, 20 + (1e3 * Off[(int)RunQuantity.FeedResistance]))))
            .With(PlumbingOf(Math.Max(1, 1.5 + Off[(int)RunQuantity.FilterLoss])));
        Drive();
    }

    private void Drive()
    {
        const int Rows = 12;
        List<(double Rpm, double Boost, double Volts)> wanted = [];
        foreach ((double maximum, double volts) in new[] { (0.15, 0.0), (0.6, 0.0), (0.4, -1.3), (0.6, -0.6) })
        {
            for (int row = 0; row < Rows; row++)
            {
                double rpm = 2400 + (row * 4600.0 / (Rows - 1));
                wanted.Add((rpm, (maximum * (1 - Math.Exp(-(rpm - 2200) / 600))) - (0.1 * Math.Exp(-(rpm - 2400) / 400)), SupplyVolts + volts));
            }
        }

        for (int row = 0; row < Rows / 2; row++)
        {
            wanted.Add((3000 + (row * 80), -0.5 + (row * 0.08), SupplyVolts));
        }

        foreach ((double rpm, double boost, double volts) in wanted)
        {
            Conditions conditions = Conditions.Of(
                Air, ElectricPotential.FromVolts(volts), Temperature.FromDegreesCelsius(35));
            OperatingResult at = Car.Solve(OperatingPoint.At(Wren.Rpm(rpm), Pressure.FromBars(boost), conditions));

            // Out of injector, the driver lifts.
            for (int reading = 0; reading < Readings && at.DutyCycle is { Percent: < 98 }; reading++)
            {
                _course.Add((rpm, boost, volts));
                _solved.Add(at);
            }
        }
    }
}
