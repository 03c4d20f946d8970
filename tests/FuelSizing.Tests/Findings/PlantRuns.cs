using System.Text.Json;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// Runs that an independent program drives (<c>tests/peer/runs.py</c>): its cars as plans of this library, and its logs, with the truth beside each. All
/// cars are invented.
/// </summary>
internal sealed class PlantRuns
{
    private PlantRuns(string folder, JsonElement made)
    {
        Kind = made.GetProperty("kind").GetString()!;
        Cars = made.GetProperty("cars").EnumerateArray().ToDictionary(car => car.GetProperty("number").GetInt32(), car => new PlantCar(car));
        Cases =
        [
            .. made.GetProperty("cases").EnumerateArray().Select(each => new PlantCase(folder, Cars[each.GetProperty("car").GetInt32()], each)),
        ];
    }

    /// <summary>The folder that .ci/peer has them made in; none where it is not set.</summary>
    public static string? Folder { get; } = Environment.GetEnvironmentVariable("FUELSIZING_PEER_RUNS");

    /// <summary>What was asked for: exact, parts, sound, the name of a nuisance or of a fault, all, two or mix.</summary>
    public string Kind { get; }

    /// <summary>The cars by their number.</summary>
    public IReadOnlyDictionary<int, PlantCar> Cars { get; }

    /// <summary>The runs; each log is read when it is asked for.</summary>
    public IReadOnlyList<PlantCase> Cases { get; }

    /// <summary>Those of a folder.</summary>
    public static PlantRuns In(string folder)
    {
        using JsonDocument made = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "cases.json")));
        return new(folder, made.RootElement.Clone());
    }
}

/// <summary>A car of the independent program, as a plan; or as it is, off by what the truth says of its parts.</summary>
internal sealed class PlantCar
{
    private readonly JsonElement _plan;
    private readonly Func<string, double> _off;

    public PlantCar(JsonElement plan, Func<string, double>? off = null)
    {
        (_plan, _off) = (plan, off ?? (_ => 0));
        Number = plan.GetProperty("number").GetInt32();
        ControlledBy = plan.GetProperty("controlledBy").GetString()!;
        Air = Atmosphere.Of(Pressure.FromPascals(At("ambientPascals")), Temperature.FromKelvins(At("ambientKelvins")));
        Conditions = Conditions.Of(Air, ElectricPotential.FromVolts(At("supplyVolts")), Temperature.FromKelvins(At("fuelKelvins")));
        Plan = FuelSystem.Return(Demand(), Injectors(), Regulator(), Pump(), plumbing: Lines()).With(Controller());
        Check = RunCheck.Of(Plan, Conditions);
    }

    public int Number { get; }

    /// <summary>Speed-density, the same with a sensor for rail pressure, or throttle: it knows nothing of boost.</summary>
    public string ControlledBy { get; }

    /// <summary>The air of the day.</summary>
    public Atmosphere Air { get; }

    /// <summary>Those that were planned for.</summary>
    public Conditions Conditions { get; }

    /// <summary>What was sized, its controller included.</summary>
    public FuelSystem Plan { get; }

    /// <summary>The plan, ready to be compared with its runs, with the default accuracy and tolerances: those that the program draws from.</summary>
    public RunCheck Check { get; }

    /// <summary>The same car with parts that are off, and a controller that does not know.</summary>
    public PlantCar With(Func<string, double> off) => new(_plan, off);

    private double At(params string[] path) => path.Aggregate(_plan, (place, name) => place.GetProperty(name)).GetDouble();

    private static double Figure(JsonElement of, string name) => of.GetProperty(name).GetDouble();

    private static RotationalSpeed Speed(JsonElement of) => RotationalSpeed.FromRevolutionsPerSecond(Figure(of, "revolutionsPerSecond"));

    private static double[] Numbers(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(each => each.GetDouble())];

    private Fuel Petrol() => Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(At("fuelKilogramsPerCubicMetreAt15C")));

    private VolumetricEfficiency Efficiency() => VolumetricEfficiency.Of(
        [.. _plan.GetProperty("volumetricEfficiency").EnumerateArray().Select(point => (Speed(point), Ratio.FromDecimalFractions(Figure(point, "share"))))]);

    private FuelDemandModel Demand() => FuelDemandModel.Of(
        Engine.Of(
            $"invented engine {Number}",
            Volume.FromCubicMeters(At("displacementCubicMetres")),
            (int)At("cylinders"),
            EngineCycle.FourStroke,
            RotationalSpeed.FromRevolutionsPerSecond(At("speedLimitRevolutionsPerSecond"))),
        Induction.Turbocharged(
            Ratio.FromDecimalFractions(At("compressorEfficiency")),
            Ratio.FromDecimalFractions(At("coolerEffectiveness")),
            Pressure.FromPascals(At("coolerLossPascals"))),
        Efficiency().Scaled(Math.Exp(_off("volumetricEfficiency"))),
        PowerCurve.AtCrank(
            Atmosphere.Standard, [.. _plan.GetProperty("power").EnumerateArray().Select(point => (Speed(point), Power.FromWatts(Figure(point, "watts"))))]),
        Ratio.FromDecimalFractions(At("mechanicalEfficiency")),
        FuelConsumption.Of(
            Petrol(), At("targetLambda"), BrakeSpecificFuelConsumption.FromKilogramsPerJoule(At("consumptionKilogramsPerJoule"))),
        DemandBasis.Air);

    private Injector Injector(double flow = 0, double later = 0)
    {
        JsonElement of = _plan.GetProperty("injectors");
        JsonElement[] rows = [.. of.GetProperty("deadTime").EnumerateArray()];
        ElectricPotential[] volts = [.. Numbers(rows[0], "volts").Select(volt => ElectricPotential.FromVolts(volt))];
        Duration[][] times = [.. rows.Select(row => Numbers(row, "seconds").Select(time => Duration.FromSeconds(time + later)).ToArray())];
        return FuelSizing.Injectors.Injector.Of(
            "invented injector",
            VolumeFlow.FromCubicMetersPerSecond(Figure(of, "staticCubicMetresPerSecond")) * Math.Exp(flow),
            Pressure.FromPascals(Figure(of, "ratedPascals")),
            TestFluid.Of("test liquid", Density.FromKilogramsPerCubicMeter(Figure(of, "testKilogramsPerCubicMetre"))),
            rows.Length == 1
                ? DeadTimeTable.ByVoltage([.. volts.Zip(times[0])])
                : DeadTimeTable.Of(volts, [.. rows.Select(row => Pressure.FromPascals(Figure(row, "differentialPascals")))], times),
            Duration.FromMilliseconds(1.4),
            Pressure.FromKilopascals(1000));
    }

    private InjectorSet Injectors() => InjectorSet.Of(
        Injector(_off("injectorFlow"), _off("deadTimeSeconds")), (int)At("injectors", "count"));

    private PressureRegulator Regulator()
    {
        JsonElement of = _plan.GetProperty("regulator");
        Pressure set = Pressure.FromPascals(Figure(of, "basePascals") + _off("regulatorBasePascals"));
        return of.GetProperty("kind").GetString() == "rising"
            ? RisingRate.From(
                set,
                Figure(of, "gain") * (1 + _off("regulatorGain")),
                Pressure.FromPascals(Math.Max(0, Figure(of, "onsetPascals") + _off("regulatorOnsetPascals"))))
            : ManifoldReferenced.From(set);
    }

    private Pump Pump()
    {
        PumpCurve[] curves =
        [
            .. _plan.GetProperty("pump").GetProperty("curves").EnumerateArray().Select(curve =>
            {
                ElectricPotential volts = ElectricPotential.FromVolts(Figure(curve, "volts"));
                Pressure[] rises = [.. Numbers(curve, "risesPascals").Select(rise => Pressure.FromPascals(rise))];
                VolumeFlow[] flows = [.. Numbers(curve, "flowsCubicMetresPerSecond").Select(flow => VolumeFlow.FromCubicMetersPerSecond(flow * Math.Exp(_off("pumpFlow"))))];
                return curve.GetProperty("currentsAmperes").ValueKind == JsonValueKind.Null
                    ? PumpCurve.At("invented pump", volts, [.. rises.Zip(flows)])
                    : PumpCurve.WithCurrent("invented pump", volts, [.. rises.Zip(flows, Numbers(curve, "currentsAmperes").Select(current => ElectricCurrent.FromAmperes(current)))]);
            }),
        ];
        JsonElement feed = _plan.GetProperty("feed");
        return FuelSizing.Pumps.Pump.Of(curves, feed: feed.ValueKind == JsonValueKind.Null ? null : Feed.Of(
            "feed",
            Conductor.OfArea(Area.FromSquareMeters(Figure(feed, "areaSquareMetres")), ConductorMaterial.Copper, Conductor.DefaultLay),
            Length.FromMeters(Figure(feed, "outwardMetres")),
            Length.FromMeters(Figure(feed, "returnMetres")),
            Temperature.FromKelvins(Figure(feed, "kelvins")),
            Contact.Of("contacts", ElectricResistance.FromOhms(Figure(feed, "contactsOhms")))).Plus(_off("feedOhms")));
    }

    private Plumbing Lines() => Plumbing.Of(supply:
    [
        Line.Of(
            "supply line",
            Length.FromMeters(At("line", "boreMetres")),
            Length.FromMeters(At("line", "lengthMetres")),
            Length.FromMeters(At("line", "roughnessMetres"))),
        Filter.Of(
            "filter",
            VolumeFlow.FromCubicMetersPerSecond(At("filter", "ratedFlowCubicMetresPerSecond")),
            Pressure.FromPascals(At("filter", "ratedLossPascals")),
            At("filter", "cloggingFactor") + _off("filterLoss"),
            DynamicViscosity.FromPascalSeconds(At("filter", "ratedPascalSeconds"))),
    ]);

    private EngineController Controller()
    {
        JsonElement of = _plan.GetProperty("controller");
        ControllerData data = ControllerData
            .Of(
                Injector(),
                Petrol(),
                TargetLambda.Of(
                    [.. of.GetProperty("target").EnumerateArray().Select(each => (Ratio.FromDecimalFractions(Figure(each, "load")), Figure(each, "lambda")))]))
            .WithFuelTemperature(Temperature.FromKelvins(Figure(of, "fuelKelvins")))
            .WithMaximumDutyCycle(Ratio.FromDecimalFractions(Figure(of, "maximumDutyCycle")));
        data = of.GetProperty("correctsForRailPressure").GetBoolean()
            ? data.WithRailPressureCorrection()
            : data.WithDifferential(Pressure.FromPascals(Figure(of, "differentialPascals")));
        return of.GetProperty("kind").GetString() == "throttle"
            ? ThrottleController.Of(data, Efficiency(), Air, hasBarometer: true, hasAirTemperature: true)
            : SpeedDensityController.Of(data, Efficiency(), Pressure.FromPascals(Figure(of, "endPascals")));
    }
}

/// <summary>One recorded run of the independent program, and the truth about it.</summary>
internal sealed class PlantCase
{
    private readonly string _file;

    public PlantCase(string folder, PlantCar car, JsonElement made)
    {
        (_file, Car) = (Path.Combine(folder, made.GetProperty("file").GetString()!), car);
        Name = made.GetProperty("name").GetString()!;
        Shape = made.GetProperty("shape");
        Truth = made.GetProperty("truth");
        Faults = [.. Truth.GetProperty("faults").EnumerateArray().Select(fault => FaultOf(fault.GetProperty("name").GetString()!))];
    }

    public string Name { get; }

    public PlantCar Car { get; }

    /// <summary>How it was logged: hertz, slowChannels, slowEvery, gaps, quantised, clipped, meter, power, duty, manifold.</summary>
    public JsonElement Shape { get; }

    /// <summary>Faults with their sizes, nuisances, how far each part and sensor is off, and facts of the run; in SI.</summary>
    public JsonElement Truth { get; }

    /// <summary>What is wrong with the car; empty where it is sound.</summary>
    public IReadOnlyList<RunFault> Faults { get; }

    /// <summary>How it was logged, in words.</summary>
    public string ShapeText => string.Join(", ", Shape.EnumerateObject().Select(each => $"{each.Name} {each.Value}"));

    /// <summary>How its log is to be read.</summary>
    public RunMapping Mapping
    {
        get
        {
            List<RunColumn> columns =
            [
                RunColumn.Time("Time (s)", DurationUnit.Second),
                RunColumn.Speed("Speed (rev/min)", RotationalSpeedUnit.RevolutionPerMinute),
                Shape.GetProperty("manifold").GetString() == "boost"
                    ? RunColumn.Boost("Boost (kPa)", PressureUnit.Kilopascal)
                    : RunColumn.ManifoldAbsolute("Manifold (kPa)", PressureUnit.Kilopascal),
                RunColumn.RailGauge("Rail (kPa)", PressureUnit.Kilopascal),
                Is("duty")
                    ? RunColumn.DutyCycle("Duty (%)", RatioUnit.Percent)
                    : RunColumn.InjectorPulse("Pulse (ms)", DurationUnit.Millisecond),
                RunColumn.Lambda("Lambda"),
                RunColumn.BatteryVoltage("Battery (V)", ElectricPotentialUnit.Volt),
                RunColumn.FuelTemperature("Fuel (°C)", TemperatureUnit.DegreeCelsius),
            ];
            if (Is("meter"))
            {
                columns.Add(RunColumn.FuelVolumeFlow("Flow (L/h)", VolumeFlowUnit.LiterPerHour));
            }

            if (Is("power"))
            {
                columns.Add(RunColumn.Power("Power (kW)", PowerUnit.Kilowatt));
            }

            return RunMapping.Of([.. columns]);
        }
    }

    /// <summary>The log, read anew at each call.</summary>
    public RecordedRun Run() => RunReader.Read(_file, Mapping, Car.Air);

    /// <summary>How far a part or sensor is off, in SI, by its name in the truth; zero where it is not.</summary>
    public double Off(string name) => Truth.GetProperty("off").TryGetProperty(name, out JsonElement off) ? off.GetDouble() : 0;

    private bool Is(string name) => Shape.GetProperty(name).GetBoolean();

    private static RunFault FaultOf(string name) => name switch
    {
        "weak_pump" => RunFault.WeakPump,
        "voltage_drop" => RunFault.VoltageDrop,
        "clogged_filter" => RunFault.CloggedFilter,
        "wrong_base" => RunFault.WrongBasePressure,
        "wrong_gain" => RunFault.WrongGain,
        "wrong_onset" => RunFault.WrongOnset,
        "wrong_injectors" => RunFault.WrongInjectorSize,
        "rail_sensor" => RunFault.RailSensorOffset,
        "manifold_sensor" => RunFault.ManifoldSensorOffset,
        "flow_meter" => RunFault.FlowMeterOff,
        "air" => RunFault.AirOffPlan,
        _ => throw new InvalidOperationException($"The runs have a fault {name}, which is none of the library's; add it here."),
    };
}
