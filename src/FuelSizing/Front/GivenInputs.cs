using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing;

/// <summary>What was given of an engine and its fuel system, and the whole system that it makes with assumed values for the rest.</summary>
internal sealed record GivenInputs
{
    private static readonly Part _railPressure = Part.Of("rail-pressure", "rail pressure");

    /// <summary>At the crank; none where the fuel follows from the engine's air.</summary>
    public Power? Power { get; init; }

    public Engine? Engine { get; init; }

    public required Fuel Fuel { get; init; }

    public required int Injectors { get; init; }

    public required VolumeFlow InjectorFlow { get; init; }

    public required Pressure RatedAt { get; init; }

    public RotationalSpeed? Speed { get; init; }

    public Pressure? Boost { get; init; }

    public FuelConsumption? Consumption { get; init; }

    /// <summary>A described demand; speed and boost are given with it.</summary>
    public FuelDemandModel? Demand { get; init; }

    public Injector? Injector { get; init; }

    public InjectorSet? Set { get; init; }

    public PumpAssembly? Pump { get; init; }

    public PressureRegulator? Regulator { get; init; }

    public LineLayout Layout { get; init; } = LineLayout.Return;

    public SizingLimits? Limits { get; init; }

    public Conditions? Conditions { get; init; }

    public Plumbing? Plumbing { get; init; }

    public EngineController? Controller { get; init; }

    /// <summary>True if nothing is assumed on which a figure of the system rests.</summary>
    public bool IsWhole => IsFixed && Pump is not null && Regulator is not null;

    // What bears on injectors and pump in one direction.
    private bool IsFixed => Demand is not null && Set is not null && Conditions is not null;

    // Lines are calculated with a fuel's temperature and a pump's flow.
    private bool CountsLines => Pump is not null && Conditions is not null;

    private bool JudgesPump => Pump is { } pump && (Conditions is not null || !pump.HasOwnLines);

    private FuelConsumption ConsumptionBy(AssumedValues assumed) => Consumption ?? assumed.ConsumptionOn(Fuel);

    private RotationalSpeed SpeedBy(AssumedValues assumed) => Speed ?? Engine?.SpeedLimit ?? assumed.Speed;

    /// <summary>The system and its operating point with every combination of the ends of what is assumed; one where nothing is.</summary>
    public IReadOnlyList<(FuelSystem System, OperatingPoint Point)> Cases()
    {
        AssumedValues[] sides = IsFixed ? [AssumedValues.Worst] : [AssumedValues.Worst, AssumedValues.Best];
        Pressure[] bases = Regulator is null ? [AssumedValues.Base.Low, AssumedValues.Base.High] : [AssumedValues.Base.Low];
        Pressure[] boosts = Boost is { } known ? [known] : [AssumedValues.Boost.Low, AssumedValues.Boost.High];
        return
        [
            .. from side in sides
               from basePressure in bases
               from boost in boosts
               select CaseOf(side, basePressure, boost),
        ];
    }

    /// <summary>What makes even a range of answers unknown; none where nothing does.</summary>
    /// <remarks>Between the ends of an unknown boost a pressure that does not go with boost one for one, or a pump that is switched, may be worse than at both.</remarks>
    public Statement? Unknown() =>
        Boost is null && Regulator is not null and not ManifoldReferenced
            ? Statement.Of("check.boost-for-regulator", $"the pressure across the injectors changes with boost ({Regulator}), and the boost is not given: give it by WithBoost")
        : Boost is null && Pump is { } pump && pump.Switches.Any()
            ? Statement.Of("check.boost-for-pump", $"{pump.Name} is switched by boost, and the boost is not given: give it by WithBoost")
        : Pump is null && Regulator is { HasBand: true }
            ? Statement.Of("check.pump-for-regulator", $"the pressure of the regulator ({Regulator}) changes with what returns through it, and no pump is given: give it by With(PumpAssembly)")
        : null;

    /// <summary>Everything that is assumed, in the order in which it comes into the calculation.</summary>
    public IReadOnlyList<Assumption> Assumed()
    {
        (AssumedValues worst, AssumedValues best) = (AssumedValues.Worst, AssumedValues.Best);
        List<Assumption> assumed = [];
        if (Demand is null)
        {
            AddDemand(assumed);
        }

        if (Set is null)
        {
            if ((Demand?.Engine ?? Engine)?.Cycle != EngineCycle.TwoStroke)
            {
                Add("injections", "injections", Statement.Of("assumed.injections", $"one in each turn of the crank"), Statement.Of("assumed.injections-sequential", $"one in each working cycle"), "With(InjectorSet)");
            }
            else
            {
                Add("injections", "injections", Statement.Of("assumed.injections-two-stroke", $"one in each turn of the crank, which is the cycle of a two-stroke"), null, "With(InjectorSet)");
            }
        }

        if (Set is null && Injector is null)
        {
            (ElectricPotential at, Pressure any) = (ElectricPotential.FromVolts(14), RatedAt);
            Add("dead-time", "dead time", Statement.Of("assumed.dead-time", $"{worst.DeadTime.At(at, any)} with {at}, longer with a lower voltage"), Statement.Of("assumed.dead-time-best", $"{best.DeadTime.At(at, any)}"), "With(Injector)");
            Add("test-liquid", "test liquid of the injectors' flow", Statement.Of("assumed.test-liquid", $"{worst.TestFluid.Name}, {worst.TestFluid.Density}"), Statement.Of("assumed.test-liquid-best", $"{best.TestFluid.Density}"), "With(Injector)");
        }

        if (Regulator is null)
        {
            Add("regulator", "regulator", Statement.Of("assumed.regulator", $"manifold-referenced, base {AssumedValues.Base.Low} (for the pump {AssumedValues.Base.High})"), Statement.Of("assumed.regulator-best", $"{AssumedValues.Base.High} (for the pump {AssumedValues.Base.Low})"), "With(PressureRegulator)");
        }

        if (Pump is null)
        {
            Add("pump", "pump", Statement.Of("assumed.pump", $"adequate; not judged"), null, "With(PumpAssembly)");
        }

        if (Conditions is null)
        {
            (Conditions low, Conditions high) = (worst.Conditions, best.Conditions);
            Add("air", "ambient air", Statement.Of("assumed.air", $"{low.Atmosphere.Temperature}, {low.Atmosphere.Pressure}"), Statement.Of("assumed.air-best", $"{high.Atmosphere.Temperature}, {high.Atmosphere.Pressure}"), "With(Conditions)");
            Add("supply-voltage", "supply voltage", Statement.Of("assumed.supply-voltage", $"{low.SupplyVoltage}, a charging alternator"), Statement.Of("assumed.supply-voltage-best", $"{high.SupplyVoltage}"), "With(Conditions)");
            Add("fuel-temperature", "fuel temperature in the rail", Statement.Of("assumed.fuel-temperature", $"{low.FuelTemperature}"), Statement.Of("assumed.fuel-temperature-best", $"{high.FuelTemperature}"), "With(Conditions)");
        }

        if (Limits is null)
        {
            SizingLimits limits = SizingLimits.Default;
            Add("limits", "limits", Statement.Of("assumed.limits", $"duty cycle {limits.DutyCycle:duty-cycle}, pump reserve {limits.PumpReserve}"), null, "With(SizingLimits)");
        }

        if (Plumbing is null)
        {
            Add("lines", "lines and filter", Statement.Of("assumed.lines", $"without loss; not judged"), null, "With(Plumbing)");
        }

        if (Controller is null)
        {
            Add("controller", "engine controller", Statement.Of("assumed.controller", $"commands whatever pulse is needed; the mixture is not judged"), null, "With(EngineController)");
        }

        return assumed.AsReadOnly();

        void Add(string code, string name, Statement bad, Statement? good, string by) => assumed.Add(Of(code, name, bad, good, by));
    }

    private void AddDemand(List<Assumption> assumed)
    {
        (AssumedValues worst, AssumedValues best) = (AssumedValues.Worst, AssumedValues.Best);
        if (Speed is null && Engine is { } limited)
        {
            assumed.Add(Of("speed", "engine speed", Statement.Of("assumed.speed-limit", $"the speed limit, {limited.SpeedLimit}"), null, "WithSpeed"));
        }
        else if (Speed is null)
        {
            assumed.Add(Of("speed", "engine speed", Statement.Of("assumed.speed", $"{worst.Speed}"), Statement.Of("assumed.speed-best", $"{best.Speed}"), "WithSpeed, With(Engine)"));
        }

        if (Boost is null)
        {
            assumed.Add(Of("boost", "boost", Statement.Of("assumed.boost", $"{AssumedValues.Boost.High:boost}"), Statement.Of("assumed.boost-best", $"{AssumedValues.Boost.Low:boost}"), "WithBoost"));
        }

        if (Engine is null)
        {
            assumed.Add(Of("engine", "engine", Statement.Of("assumed.engine", $"four-stroke; its displacement draws the air that the fuel needs"), null, "With(Engine)"));
        }

        if (Consumption is null)
        {
            const string By = "With(FuelConsumption)";
            assumed.Add(Of("bsfc", Power is null ? "BSFC, for the power shown only" : "BSFC", Statement.Of("assumed.bsfc", $"{worst.ConsumptionOn(Fuel).BrakeSpecificFuelConsumption} on {Fuel.Name}{Basis(Fuel)}"), Statement.Of("assumed.bsfc-best", $"{best.ConsumptionOn(Fuel).BrakeSpecificFuelConsumption}"), By));
            assumed.Add(Of("lambda", Power is null ? "target lambda" : "target lambda, for the air shown only", Statement.Of("assumed.lambda", $"{worst.Lambda:0.00}"), Statement.Of("assumed.lambda-best", $"{best.Lambda:0.00}"), By));
        }

        if (Power is null)
        {
            assumed.Add(Of("volumetric-efficiency", "volumetric efficiency", Statement.Of("assumed.volumetric-efficiency", $"{worst.VolumetricEfficiency}"), Statement.Of("assumed.volumetric-efficiency-best", $"{best.VolumetricEfficiency}"), "With(FuelDemandModel)"));
            if (Boost is { } boost && boost > Pressure.Zero)
            {
                assumed.Add(Of("charge", "compressor and charge cooler", Charge(worst.Induction), Charge(best.Induction), "With(FuelDemandModel)"));
            }
        }

        static Statement? Basis(Fuel fuel) => fuel.Equals(Fuel.Petrol) ? null : Statement.Of("assumed.bsfc-converted", $", by heating value from petrol's");

        static Statement Charge(Induction induction) => Statement.Of(
            "assumed.charge", $"compressor {induction.CompressorEfficiency}, charge cooler {induction.CoolerEffectiveness}, losing {induction.CoolerPressureLoss}");
    }

    private static Assumption Of(string code, string name, Statement worst, Statement? best, string by) => new(
        code, name, worst, best, Statement.Of("assumed.common-practice", $"common practice, no source"), Statement.Of("assumed.by", $"{by}"));

    private (FuelSystem System, OperatingPoint Point) CaseOf(AssumedValues assumed, Pressure basePressure, Pressure boost)
    {
        Conditions conditions = Conditions ?? assumed.Conditions;
        RotationalSpeed speed = SpeedBy(assumed);
        FuelDemandModel demand = Demand ?? DemandBy(assumed, speed, boost, conditions.Atmosphere);
        InjectorSet set = Set ?? InjectorSet.Of(
            Injector ?? assumed.InjectorOf(InjectorFlow, RatedAt), Injectors, demand.Engine.Cycle == EngineCycle.TwoStroke ? 1 : assumed.InjectionsOfFourStroke);
        PressureRegulator regulator = Regulator ?? ManifoldReferenced.From(basePressure);
        PumpAssembly pump = Pump ?? AssumedValues.StandInPump;
        Plumbing? lines = CountsLines ? Plumbing : null;
        FuelSystem system = Layout == LineLayout.Return
            ? FuelSystem.Return(demand, set, regulator, pump, Limits, lines)
            : FuelSystem.Returnless(demand, set, regulator, pump, Limits, lines);
        OperatingPoint point = OperatingPoint.At(speed, boost, conditions);
        if (IsWhole)
        {
            return (Controller is null ? system : system.With(Controller), point);
        }

        return (NotJudging(system), point);
    }

    private FuelDemandModel DemandBy(AssumedValues assumed, RotationalSpeed speed, Pressure boost, Atmosphere air) => Power is { } power
        ? AssumedDemand.FromPower(power, Engine, Injectors, assumed.Induction, ConsumptionBy(assumed), speed, boost, air)
        : AssumedDemand.FromAir(
            Engine!,
            assumed.VolumetricEfficiency,
            boost > Pressure.Zero ? assumed.Induction : Induction.NaturallyAspirated,
            ConsumptionBy(assumed),
            speed,
            boost,
            air);

    // The ends of what is assumed are those of the injectors' flow and of the pump's. What of it is worst for another check, a shorter pulse or a
    // higher voltage, may be the other end: such a check waits until nothing is assumed.
    private FuelSystem NotJudging(FuelSystem system)
    {
        FuelSystem judged = system;
        foreach (ICheck check in system.Applicable)
        {
            if (check.Part != Part.Injectors && !(check.Part == Part.Pump && JudgesPump))
            {
                Statement gap = check.Part == Part.Pump && Pump is null
                    ? Statement.Of("pump.none-given", $"none given")
                    : Statement.Of("check.while-assumed", $"not before engine, injectors, regulator, pump and conditions are given");
                judged = judged.JudgedBy(new AssumptionCheck(check.Part, _ => gap));
            }
        }

        if (Regulator is null)
        {
            judged = judged.With((ICheck)new AssumptionCheck(
                _railPressure,
                _ => Statement.Of("rail-pressure.no-regulator", $"no regulator given: whether rail pressure follows that of the manifold is not judged")));
        }

        return judged;
    }
}
