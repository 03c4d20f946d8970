using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using MathNet.Numerics;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A plan, ready to be compared with recorded runs: tolerances of sound parts, and accuracy of the sensors.</summary>
/// <remarks>Tabulates the planned pumps once; runs of one plan are best checked by one and the same check.</remarks>
public sealed class RunCheck
{
    private readonly Filter[] _filters;
    private readonly PlanRange _range;

    private RunCheck(
        FuelSystem plan, Conditions conditions, SensorAccuracy accuracy, PlanTolerance tolerance, Ratio driveLoss, ModelDiscrepancy discrepancy)
    {
        (Plan, Accuracy, Tolerance, DriveLoss, Discrepancy) = (plan, accuracy, tolerance, driveLoss, discrepancy);
        (SupplyVolts, FuelKelvins) = (conditions.SupplyVolts, conditions.FuelKelvins);
        SupplyVoltage = conditions.SupplyVoltage;
        FuelTemperature = conditions.FuelTemperature;
        DriveLossShare = driveLoss.DecimalFractions;
        _range = new(plan);
        Regulator = RegulatorModel.Of(plan.Regulator);
        Pumps = new PumpSurface(plan.Pump);
        AirOverSpeed = new(plan.Demand.VolumetricEfficiency.BySpeed);
        ReturnedAtRest = Pumps.FlowHolding(Regulator.Set(0, 0, 0, 0), SupplyVolts);
        HoldsAtRail = plan.Layout == LineLayout.Return || plan.Regulator is FuelSizing.Regulators.ElectronicReturnless;
        _filters = [.. plan.Plumbing.Suction.Concat(plan.Plumbing.Supply).OfType<Filter>()];
        RailNoise = accuracy.Rail.Pascals;
        ManifoldNoise = accuracy.Manifold.Pascals;
        PulseNoise = accuracy.Pulse.Seconds;
        LambdaNoise = accuracy.Lambda.DecimalFractions;
        MeterNoise = accuracy.FuelFlow.DecimalFractions;
        PowerNoise = accuracy.Power.DecimalFractions;
    }

    /// <summary>The plan.</summary>
    public FuelSystem Plan { get; }

    /// <summary>How well runs are recorded.</summary>
    public SensorAccuracy Accuracy { get; }

    /// <summary>How far sound parts may be off.</summary>
    public PlanTolerance Tolerance { get; }

    /// <summary>What sound cars and their recordings do that the plan's equations do not know.</summary>
    public ModelDiscrepancy Discrepancy { get; }

    /// <summary>Planned voltage of the supply; counts where a run has none.</summary>
    public ElectricPotential SupplyVoltage { get; }

    /// <summary>Fuel temperature where a run has none.</summary>
    public Temperature FuelTemperature { get; }

    /// <summary>Share of crank power lost before the recorded power; zero where runs have it at the crank.</summary>
    public Ratio DriveLoss { get; }

    internal RegulatorModel Regulator { get; }

    internal PumpSurface Pumps { get; }

    /// <summary>How air may be off over engine speed.</summary>
    internal AirOverSpeed AirOverSpeed { get; }

    /// <summary>What returns of the pumps' flow with nothing injected, at the supply's voltage and the base pressure, m³/s.</summary>
    private double ReturnedAtRest { get; }

    internal bool HoldsAtRail { get; }

    internal bool HasFilter => _filters.Length > 0;

    internal double SupplyVolts { get; }

    internal double FuelKelvins { get; }

    internal double DriveLossShare { get; }

    internal double RailNoise { get; }

    internal double ManifoldNoise { get; }

    internal double PulseNoise { get; }

    internal double LambdaNoise { get; }

    internal double MeterNoise { get; }

    internal double PowerNoise { get; }

    /// <summary>Describes a check.</summary>
    /// <param name="plan">What was sized.</param>
    /// <param name="conditions">
    /// Planned supply voltage, and the fuel temperature where a run has none; <see cref="Conditions.Default"/> if not given. The air
    /// is the run's own.
    /// </param>
    /// <param name="accuracy">How well runs are recorded; <see cref="SensorAccuracy.Default"/> if not given.</param>
    /// <param name="tolerance">How far sound parts may be off; <see cref="PlanTolerance.Default"/> if not given.</param>
    /// <param name="driveLoss">
    /// Share of crank power lost before the recorded power, 0 to 40 %; zero if not given: recorded at the crank.
    /// </param>
    /// <param name="discrepancy">What the plan's equations do not know of; <see cref="ModelDiscrepancy.Default"/> if not given.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">
    /// A pump of the plan is switched by boost or has lines of its own, or there are parts between the pumps and a regulator before the rail, or a secondary set of injectors, or a second stream; or its regulator or fuel demand is a
    /// law of your own.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The loss is outside its range.</exception>
    public static RunCheck Of(
        FuelSystem plan,
        Conditions? conditions = null,
        SensorAccuracy? accuracy = null,
        PlanTolerance? tolerance = null,
        Ratio? driveLoss = null,
        ModelDiscrepancy? discrepancy = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        plan.RequireOneSet(nameof(plan), "a comparison with a recorded run");
        if (plan.Pump.Switches.FirstOrDefault() is { } switched)
        {
            // Faults are told apart by how the rail falls with flow, which a pump that comes in on the way would be taken for.
            throw new ArgumentException(
                $"{nameof(plan)} has a pump that is switched by boost, {switched.Name}, which a run is not yet compared with. Give the plan with its pumps as they run at full boost, and only the part of a run above {Readable.Boost(switched.On)}.",
                nameof(plan));
        }

        if (plan.Regulator.IsByLaw)
        {
            throw new ArgumentException(
                $"{nameof(plan)} has a regulator by a law of its own ({plan.Regulator.Description}), which has no base, gain and onset that a run could show to be off. Give the plan with the nearest regulator of the library's kinds.",
                nameof(plan));
        }

        if (plan.Demand.Law is { } law)
        {
            throw new ArgumentException(
                $"{nameof(plan)} has a fuel demand by a law of its own ({law.Text}), of which it is not known how it follows air and BSFC that a run shows to be off. Give the plan without it (FuelDemandModel.WithoutLaw).",
                nameof(plan));
        }

        if (plan.SecondStream is { } stream)
        {
            throw new ArgumentException(
                $"{nameof(plan)} has a second stream, {stream.Name}, which a run is not yet compared with: its fuel would be taken for the injectors'. Give the plan by FuelSystem.WithoutSecondStream, and only the part of a run below {Readable.Boost(stream.Begin)}.",
                nameof(plan));
        }

        if (plan.Pump.HasOwnLines)
        {
            throw new ArgumentException(
                $"{nameof(plan)} has a pump with lines of its own, {plan.Pump.OwnBranches.First().Name}, which a run is not yet compared with. Give the pumps without them, and what they lose as part of the supply line.",
                nameof(plan));
        }

        if (plan.Plumbing.HasToRegulator)
        {
            throw new ArgumentException(
                $"{nameof(plan)} has {plan.Plumbing.ToRegulator[0].Name} between the pumps and a regulator before the rail, which a run is not yet compared with. Give the plan with the regulator at the pump.",
                nameof(plan));
        }

        return new(
            plan,
            conditions ?? Conditions.Default,
            accuracy ?? SensorAccuracy.Default,
            tolerance ?? PlanTolerance.Default,
            Guard.Between(
                driveLoss ?? Ratio.Zero,
                Ratio.Zero,
                Ratio.FromPercent(40),
                "Give the share of crank power lost on the way to the wheels; zero for power at the crank.",
                nameof(driveLoss)),
            discrepancy ?? ModelDiscrepancy.Default);
    }

    /// <summary>The plan at the speed, manifold pressure, voltage and fuel temperature of a recorded row.</summary>
    /// <param name="row">The row; a voltage or temperature that it does not hold is the planned one.</param>
    /// <param name="atmosphere">The air in which the run was recorded.</param>
    /// <returns>
    /// What the plan does there; none where the row holds no manifold pressure, or lies outside what the plan's tables, or fuels and
    /// supplies, are known for.
    /// </returns>
    /// <exception cref="ArgumentNullException">There is no air.</exception>
    public OperatingResult? PlanAt(RunRow row, Atmosphere atmosphere)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        if (row == default || row.ManifoldAbsolute is not { } manifold)
        {
            return null;
        }

        double boost = manifold.Pascals - atmosphere.Pascals;
        ElectricPotential supply = row.BatteryVoltage ?? SupplyVoltage;
        Temperature temperature = row.FuelTemperature ?? FuelTemperature;
        return _range.Covers(row.Speed.RevolutionsPerSecond, boost, atmosphere.Pascals)
            && Quantities.SupplyVoltage.IsDefault(supply)
            && temperature >= Fuel.MinimumTemperature && temperature <= Fuel.MaximumTemperature
            ? Plan.Solve(OperatingPoint.At(
                row.Speed, Pressure.FromPascals(_range.Computed(boost)), Conditions.Of(atmosphere, supply, temperature)))
            : null;
    }

    /// <summary>The plan.</summary>
    /// <returns>For instance <c>plan: return: 4 × injector A, 580 mL/min each; pump R; fixed at 300 kPa</c>.</returns>
    public override string ToString() =>
        $"plan: {Plan}";

    /// <summary>Gathers a run and sets up its model.</summary>
    internal RunModel Model(RecordedRun run, int maximumPoints = 64)
    {
        RunPoints points = RunPoints.Of(Plan, run, FuelKelvins, Discrepancy.LambdaDelay.Seconds, maximumPoints);
        return RunModel.Of(this, points, run.Atmosphere.Pascals, run.Atmosphere);
    }

    /// <summary>Demand at a point that the tables are known to cover.</summary>
    internal FuelDemand DemandAt(double speed, double boost, Atmosphere atmosphere)
    {
        double minimum = ManifoldPressure.MinimumAbsolute.Pascals - atmosphere.Pascals;
        double maximum = Plan.Demand.Induction.Drive == CompressorDrive.None ? 0 : 400e3;
        return Plan.Demand.At(
            RotationalSpeed.FromRevolutionsPerSecond(speed),
            Pressure.FromPascals(Math.Clamp(boost, Math.Max(minimum + 1, -95e3), maximum)),
            atmosphere);
    }

    /// <summary>Of what returns with nothing injected, the share that a flow is; none where the pumps do not reach the base pressure, and nothing ever returns.</summary>
    internal double InjectedShare(double flow) => ReturnedAtRest > 0 ? flow / ReturnedAtRest : 0;

    /// <summary>Change of ln volumetric efficiency with engine speed, 1/(rev/s).</summary>
    internal double LogEfficiencySlope(double speed)
    {
        Curve table = Plan.Demand.VolumetricEfficiency.BySpeed;
        const double Step = 1;
        (double lower, double upper) = (Math.Max(table.First, speed - Step), Math.Min(table.Last, speed + Step));
        return upper > lower ? (Math.Log(table.At(upper)) - Math.Log(table.At(lower))) / (upper - lower) : 0;
    }

    /// <summary>Fuel by the planned injectors, m³/s.</summary>
    internal double Injected(in PointInput input, double across, double open)
    {
        Real flow = Plan.Injectors.Injector.StaticAt(across, input.Density);
        return InjectorFlow.Capacity<Real>(
            flow, Plan.Injectors.Count, input.Available, InjectorFlow.DutyCycle<Real>(open, input.Available), 0);
    }

    /// <summary>Loss of the planned filters, were they new; of a restriction with 10 kPa at the most flow where there are none, Pa.</summary>
    internal double NewFilterLoss(double flow, double density, double viscosity)
    {
        double loss = 0;
        foreach (Filter filter in _filters)
        {
            loss += filter.LossPascals(flow, density, viscosity) / filter.Clogging;
        }

        return HasFilter ? loss : FilterLoss.Loss<Real>(1, 10_000, Pumps.MaximumFlow, 1, flow, 1, 1);
    }

    /// <summary>True if the return line could hold the rail over its set pressure at the point.</summary>
    internal bool MayBeReturnFloor(double flow, double boost, double volts, double density, double viscosity)
    {
        if (Plan.Plumbing.ReturnLine.Count == 0)
        {
            return false;
        }

        double set = Regulator.Set(boost, 0, 0, 0);
        double back = PathLoss.Of(Plan.Plumbing.ReturnLine, Math.Max(0, Pumps.MaximumFlow - flow), density, viscosity);
        if (back < set)
        {
            return false;
        }

        CircuitTask task = new(
            Plan.Layout, Plan.Pump, Plan.Plumbing, volts, null, set, 0, flow, density, viscosity);
        return CircuitSolver.Solve(task).State == RailState.ReturnFloor;
    }

    /// <summary>Standard deviation that each quantity may be off, SI, in the order of <see cref="RunQuantity"/>.</summary>
    internal double[] ToleranceOf() =>
    [
        Tolerance.PumpFlow.DecimalFractions,
        Tolerance.FeedResistance.Ohms,
        Tolerance.FilterLoss.DecimalFractions,
        Tolerance.RegulatorBase.Pascals,
        Tolerance.RegulatorGain.DecimalFractions * Math.Max(1, Regulator.Gain),
        Tolerance.RegulatorOnset.Pascals,
        Tolerance.InjectorFlow.DecimalFractions,
        Tolerance.DeadTime.Seconds,
        Tolerance.VolumetricEfficiency.DecimalFractions,
        Tolerance.BrakeSpecificFuelConsumption.DecimalFractions,
        Accuracy.RailOffset.Pascals,
        Accuracy.ManifoldOffset.Pascals,
        Accuracy.FuelFlowFactor.DecimalFractions,
        Discrepancy.AirByBoost.DecimalFractions / 100e3,
        Discrepancy.ChargeTemperature.Kelvins / 100e3,
        .. Enumerable.Repeat(Discrepancy.AirBySpeed.DecimalFractions, AirOverSpeed.Speeds),
        HoldsBySpeed ? 0 : Discrepancy.RegulatorSlope.Pascals,
        SpecialFunctions.Hypotenuse(Discrepancy.LambdaDelayDeviation.Seconds, Discrepancy.Clock.Seconds),
        Discrepancy.Clock.Seconds,
        Discrepancy.PressureLag.Seconds,
        Discrepancy.PressureLag.Seconds,
        Discrepancy.FuelDensity.DecimalFractions,
    ];

    /// <summary>True where a controller holds the rail by the pump's speed, and no fuel returns.</summary>
    private bool HoldsBySpeed => Plan.Regulator is FuelSizing.Regulators.ElectronicReturnless;
}
