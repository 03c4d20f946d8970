using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>How much fuel an engine burns at any speed and boost, calculated from its air and from its power.</summary>
/// <remarks>
/// The two estimates share only the charge density; they should agree within some 15 % at full load. Where they do not,
/// find out which input is wrong (volumetric efficiency, BSFC, lambda, drivetrain loss) before buying parts.
/// </remarks>
public sealed record FuelDemandModel
{
    private static readonly Identity<FuelDemandModel> _identity = new Identity<FuelDemandModel>()
        .Value(model => model.Engine)
        .Value(model => model.Induction)
        .Value(model => model.VolumetricEfficiency)
        .Value(model => model.MeasuredPower)
        .Number(model => model.MechanicalEfficiency.DecimalFractions)
        .Number(model => model.MechanicalEfficiencySpeed.RevolutionsPerSecond)
        .Value(model => model.Consumption)
        .Value(model => model.AlongSpeed)
        .Number(model => model.EvaporatedShare.DecimalFractions)
        .Value(model => model.Basis)
        .Value(model => model.Law);

    // Nearer to a bound than this share of it, the comparison is left to the units.
    private const double Hair = 1e-9;

    private readonly double _minimum;
    private readonly double _maximum;
    private readonly double _maximumBoost;
    private readonly double _minimumManifold;

    private FuelDemandModel(
        Engine engine,
        Induction induction,
        VolumetricEfficiency volumetricEfficiency,
        PowerCurve measuredPower,
        Ratio mechanicalEfficiency,
        RotationalSpeed mechanicalEfficiencySpeed,
        FuelConsumption consumption,
        DemandBasis basis,
        AlongSpeed? alongSpeed = null,
        Ratio evaporatedShare = default,
        IFuelDemandLaw? law = null)
    {
        Law = law;
        EvaporatedShare = evaporatedShare;
        (Engine, Induction, Consumption, Basis, AlongSpeed) = (engine, induction, consumption, basis, alongSpeed);
        (VolumetricEfficiency, MeasuredPower) = (volumetricEfficiency, measuredPower);
        (MechanicalEfficiency, MechanicalEfficiencySpeed) = (mechanicalEfficiency, mechanicalEfficiencySpeed);
        Constants = ConstantsOf<Real>();
        Curve[] tables = [volumetricEfficiency.BySpeed, measuredPower.BySpeed, .. alongSpeed is null ? (Curve[])[] : [alongSpeed.Any]];
        _minimum = tables.Max(table => table.First) * (1 + Hair);
        _maximum = Math.Min(engine.SpeedLimit.RevolutionsPerSecond, tables.Min(table => table.Last)) * (1 - Hair);
        _maximumBoost = induction.Drive == CompressorDrive.None ? 0 : double.PositiveInfinity;
        _minimumManifold = ManifoldPressure.MinimumAbsolute.Pascals * (1 + Hair);
    }

    /// <summary>Size and limits.</summary>
    public Engine Engine { get; }

    /// <summary>How the charge reaches the manifold.</summary>
    public Induction Induction { get; }

    /// <summary>Fuel, lambda and BSFC.</summary>
    public FuelConsumption Consumption { get; }

    /// <summary>What changes with engine speed; none where target lambda, compressor and cooler are the same at every speed.</summary>
    public AlongSpeed? AlongSpeed { get; }

    /// <summary>Which estimate the parts are sized for.</summary>
    public DemandBasis Basis { get; }

    /// <summary>The share of the fuel that evaporates in the charge by the charge's own heat, before the inlet valve closes; zero where none is stated.</summary>
    public Ratio EvaporatedShare { get; }

    /// <summary>Volumetric efficiency against speed.</summary>
    public VolumetricEfficiency VolumetricEfficiency { get; }

    /// <summary>The measured pull without boost.</summary>
    public PowerCurve MeasuredPower { get; }

    /// <summary>Brake ÷ indicated power of the measured pull, at <see cref="MechanicalEfficiencySpeed"/>.</summary>
    /// <remarks>
    /// Friction power there, P_m (1/η_m − 1), is carried to other speeds by the shape of friction mean effective pressure against speed
    /// (<see cref="EngineFriction.AtSpeed{T}(T, T, T)"/>): the efficiency is better at lower speeds and worse at higher ones.
    /// </remarks>
    public Ratio MechanicalEfficiency { get; }

    /// <summary>The speed at which the mechanical efficiency is stated; that of the highest measured power where it was not said.</summary>
    public RotationalSpeed MechanicalEfficiencySpeed { get; }

    internal static Ratio WithinMechanical(Ratio efficiency, string name) =>
        Guard.Between(
            efficiency,
            Ratio.FromPercent(50),
            Ratio.FromPercent(100),
            "Give brake power ÷ indicated power of the measured pull; 80 to 90 % at full load is common practice, no source.",
            name);

    /// <summary>Describes how the engine burns fuel.</summary>
    /// <param name="engine">Size and limits.</param>
    /// <param name="induction">How the charge reaches the manifold.</param>
    /// <param name="volumetricEfficiency">Against speed, referred to manifold density.</param>
    /// <param name="measuredPower">A measured pull without boost.</param>
    /// <param name="mechanicalEfficiency">Brake ÷ indicated power of that pull, 50 to 100 %.</param>
    /// <param name="consumption">Fuel, lambda and BSFC at full load.</param>
    /// <param name="basis">Which estimate to size for; the larger of the two if not given.</param>
    /// <param name="mechanicalEfficiencySpeed">
    /// The speed at which the mechanical efficiency is stated, within the power curve; that of its highest point if not given.
    /// </param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static FuelDemandModel Of(
        Engine engine,
        Induction induction,
        VolumetricEfficiency volumetricEfficiency,
        PowerCurve measuredPower,
        Ratio mechanicalEfficiency,
        FuelConsumption consumption,
        DemandBasis basis = DemandBasis.Larger,
        RotationalSpeed? mechanicalEfficiencySpeed = null)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(induction);
        ArgumentNullException.ThrowIfNull(volumetricEfficiency);
        ArgumentNullException.ThrowIfNull(measuredPower);
        ArgumentNullException.ThrowIfNull(consumption);
        return new(
            engine,
            induction,
            volumetricEfficiency,
            measuredPower,
            WithinMechanical(mechanicalEfficiency, nameof(mechanicalEfficiency)),
            mechanicalEfficiencySpeed is { } speed ? Within(speed, measuredPower, nameof(mechanicalEfficiencySpeed)) : measuredPower.Peak,
            consumption,
            Guard.Member(basis, "Choose which estimate to size for.", nameof(basis)));
    }

    /// <summary>What the chain of equations is given, the same at every point.</summary>
    internal DemandConstants<Real> Constants { get; }

    /// <summary>A law of your own that says how much fuel the engine burns; none where it follows from air and power.</summary>
    public IFuelDemandLaw? Law { get; }

    /// <summary>The same engine, whose fuel is a law of your own: measured on a dynamometer, or calculated elsewhere.</summary>
    /// <remarks>
    /// Charge, air's temperature and power are calculated as without it and shown; what the parts are sized for, and the air that burns with it at the target lambda, are
    /// the law's. Not with it: a batch of points (<c>PointBatch</c>) and the diagnosis of a recorded run, which refuse it with the reason.
    /// </remarks>
    /// <param name="law">How much fuel it burns.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentException">A share of the fuel is stated to evaporate in the charge: put that into the law.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A kink of the law is outside the range of speed or boost.</exception>
    public FuelDemandModel With(IFuelDemandLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(law.Text, nameof(law));
        foreach (RotationalSpeed speed in law.SpeedKinks)
        {
            EngineSpeed.Within(speed, nameof(law));
        }

        foreach (Pressure boost in law.BoostKinks)
        {
            ManifoldPressure.Within(boost, nameof(law));
        }

        return EvaporatedShare > Ratio.Zero
            ? throw new ArgumentException(
                $"law is {law.Text}, and {Readable.Of(EvaporatedShare)} of the fuel is stated to evaporate in the charge, of which it is not known whether the law has it. Put it into the law, and state no share (WithEvaporation).",
                nameof(law))
            : new(Engine, Induction, VolumetricEfficiency, MeasuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, Consumption, Basis, AlongSpeed, EvaporatedShare, law);
    }

    /// <summary>The same engine, whose fuel follows from its air and its power.</summary>
    /// <returns>The model.</returns>
    public FuelDemandModel WithoutLaw() =>
        new(Engine, Induction, VolumetricEfficiency, MeasuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, Consumption, Basis, AlongSpeed, EvaporatedShare);

    /// <summary>The same engine, of which target lambda, the compressor's efficiency or the cooler's effectiveness change with speed.</summary>
    /// <param name="alongSpeed">The table; where it holds no data the demand is not known.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentException">The table has a compressor or a cooler, and the engine has none.</exception>
    public FuelDemandModel With(AlongSpeed alongSpeed)
    {
        ArgumentNullException.ThrowIfNull(alongSpeed);
        return Induction.Drive == CompressorDrive.None && (alongSpeed.Compressor ?? alongSpeed.Cooler) is not null
            ? throw new ArgumentException(
                $"alongSpeed has a compressor or a cooler, and {Engine.Name} is {Induction}. Leave these columns out, or describe the induction as turbocharged or belt-driven.",
                nameof(alongSpeed))
            : new(Engine, Induction, VolumetricEfficiency, MeasuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, Consumption, Basis, alongSpeed, EvaporatedShare, Law);
    }

    /// <summary>
    /// The same engine, in whose charge a share of the fuel evaporates: it cools the charge by x_e h_v/(AFR c_p), so that the engine draws more air and
    /// needs more fuel for it (<see cref="ChargeCooling.Temperature{T}(T, T, T, Divisor{T})"/>).
    /// </summary>
    /// <remarks>
    /// <para>It is counted where it raises the demand, never where it would help a verdict: fuel and power from the measured pull stay as they are, a
    /// displacement compressor's boost is not brought down by it, and the mixture that a controller gives lies between none of it and all of it.</para>
    /// <para>A volumetric efficiency that was measured with fuel in the port has that fuel's evaporation in it already: state here what another fuel, or more of
    /// it, adds. How much evaporates before the valve closes depends on spray, port and temperature; the rest evaporates later, or by heat from the walls.</para>
    /// </remarks>
    /// <param name="share">0 to 100 % of the fuel's mass.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <exception cref="ArgumentException">The fuel's heat of vaporisation is not known, or the fuel demand is a law of your own.</exception>
    public FuelDemandModel WithEvaporation(Ratio share) => new(
        Engine,
        Induction,
        VolumetricEfficiency,
        MeasuredPower,
        MechanicalEfficiency,
        MechanicalEfficiencySpeed,
        Consumption,
        Basis,
        AlongSpeed,
        Law is { } law && share > Ratio.Zero
            ? throw new ArgumentException(
                $"share was {Readable.Of(share)}, and the fuel demand is a law of its own ({law.Text}), of which it is not known whether it has evaporation in it. Put it into the law.",
                nameof(share))
            : Guard.Between(share, Ratio.Zero, Ratio.FromPercent(100), "Give the share of the fuel that evaporates in the charge before the inlet valve closes.", nameof(share)),
        Law);

    /// <summary>The lambda that the engine is meant to have at a speed.</summary>
    /// <param name="speed">Within the table by speed, if there is one.</param>
    /// <returns>Air–fuel ratio ÷ stoichiometric ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed lies outside the table.</exception>
    public double TargetLambdaAt(RotationalSpeed speed) => AlongSpeed?.Lambda is { } table
        ? table.At(EngineSpeed.Covered(speed, table, "table by speed", nameof(speed)))
        : Consumption.Lambda;

    /// <summary>The same at a speed in rev/s; past the ends of the table that of its end.</summary>
    internal double TargetLambdaAt(double speed) => AlongSpeed?.Lambda?.Nearest(speed) ?? Consumption.Lambda;

    /// <summary>The target; where it changes with speed, the richest.</summary>
    internal double RichestTargetLambda => AlongSpeed?.Lambda is { } table ? table.Points.Min(point => point.Y) : Consumption.Lambda;

    /// <summary>What the chain of equations is given at a speed, rev/s; past the ends of the table what it is given at its end.</summary>
    internal DemandConstants<Real> ConstantsAt(double speed) => AlongSpeed is null
        ? Constants
        : Constants with
        {
            CompressorEfficiency = AlongSpeed.Compressor?.Nearest(speed) ?? Induction.CompressorEfficiency.DecimalFractions,
            CoolerEffectiveness = AlongSpeed.Cooler?.Nearest(speed) ?? Induction.CoolerEffectiveness.DecimalFractions,
            AirFuelRatio = Combustion.AirFuelRatio<Real>(TargetLambdaAt(speed), Consumption.Fuel.AirFuelRatio),
        };

    /// <summary>The same engine on another fuel: its BSFC goes with 1/heating value (<see cref="FuelConsumption.With"/>).</summary>
    /// <param name="fuel">What the engine burns then.</param>
    /// <returns>The model.</returns>
    public FuelDemandModel With(Fuel fuel) => With(VolumetricEfficiency, MeasuredPower, Consumption.With(fuel));

    /// <summary>The same demand of another engine: another size or cycle, or another speed limit.</summary>
    /// <param name="engine">Size and limits.</param>
    /// <returns>The model; tables and measured pull stay as they are.</returns>
    public FuelDemandModel With(Engine engine)
    {
        ArgumentNullException.ThrowIfNull(engine);
        return new(engine, Induction, VolumetricEfficiency, MeasuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, Consumption, Basis, AlongSpeed, EvaporatedShare, Law);
    }

    /// <summary>The same engine with another compressor or charge cooler, or without.</summary>
    /// <param name="induction">How the charge reaches the manifold.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentException">What changes with speed has a compressor or a cooler, and the engine then has none.</exception>
    public FuelDemandModel With(Induction induction)
    {
        ArgumentNullException.ThrowIfNull(induction);
        return induction.Drive == CompressorDrive.None && (AlongSpeed?.Compressor ?? AlongSpeed?.Cooler) is not null
            ? throw new ArgumentException(
                $"induction is {induction}, and {Engine.Name} has a table by speed of a compressor or a cooler. Give a table without these columns first (With).",
                nameof(induction))
            : new(Engine, induction, VolumetricEfficiency, MeasuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, Consumption, Basis, AlongSpeed, EvaporatedShare, Law);
    }

    /// <summary>The same engine by another measured pull without boost.</summary>
    /// <param name="measuredPower">The pull.</param>
    /// <returns>
    /// The model. Its mechanical efficiency stays; stated at the highest point of the pull before, it is now stated at that of this one.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The pull does not cover the speed at which the mechanical efficiency is stated.</exception>
    public FuelDemandModel With(PowerCurve measuredPower)
    {
        ArgumentNullException.ThrowIfNull(measuredPower);
        RotationalSpeed stated = MechanicalEfficiencySpeed.RevolutionsPerSecond.Equals(MeasuredPower.Peak.RevolutionsPerSecond) ? measuredPower.Peak : Within(MechanicalEfficiencySpeed, measuredPower, nameof(measuredPower));
        return new(Engine, Induction, VolumetricEfficiency, measuredPower, MechanicalEfficiency, stated, Consumption, Basis, AlongSpeed, EvaporatedShare, Law);
    }

    /// <summary>The same engine with another volumetric efficiency.</summary>
    /// <param name="volumetricEfficiency">Against speed, referred to manifold density.</param>
    /// <returns>The model.</returns>
    public FuelDemandModel With(VolumetricEfficiency volumetricEfficiency)
    {
        ArgumentNullException.ThrowIfNull(volumetricEfficiency);
        return With(volumetricEfficiency, MeasuredPower, Consumption);
    }

    /// <summary>The same engine with another lambda or BSFC, or with both on another fuel.</summary>
    /// <param name="consumption">Fuel, lambda and BSFC at full load.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentException">A share of the fuel evaporates in the charge, and the fuel's heat of vaporisation is not known.</exception>
    public FuelDemandModel With(FuelConsumption consumption)
    {
        ArgumentNullException.ThrowIfNull(consumption);
        return With(VolumetricEfficiency, MeasuredPower, consumption);
    }

    /// <summary>The same engine, sized for by another of the two estimates.</summary>
    /// <param name="basis">Which estimate to size for.</param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such estimate.</exception>
    public FuelDemandModel WithBasis(DemandBasis basis) => new(
        Engine,
        Induction,
        VolumetricEfficiency,
        MeasuredPower,
        MechanicalEfficiency,
        MechanicalEfficiencySpeed,
        Consumption,
        Guard.Member(basis, "Choose which estimate to size for.", nameof(basis)),
        AlongSpeed,
        EvaporatedShare,
        Law);

    internal FuelDemandModel With(
        VolumetricEfficiency volumetricEfficiency, PowerCurve measuredPower, FuelConsumption consumption) =>
        new(Engine, Induction, volumetricEfficiency, measuredPower, MechanicalEfficiency, MechanicalEfficiencySpeed, consumption, Basis, AlongSpeed, EvaporatedShare, Law);

    /// <summary>The model in SI numbers, for one number or for many at once.</summary>
    internal DemandConstants<T> ConstantsOf<T>()
        where T : struct, IReal<T> => new(
            Engine.Displacement.CubicMeters,
            Engine.RevolutionsPerCycle,
            Induction.CompressorEfficiency.DecimalFractions,
            Induction.CoolerEffectiveness.DecimalFractions,
            Induction.CoolerPressureLoss.Pascals,
            Induction.Drive == CompressorDrive.Belt ? 1 : 0,
            Induction.DriveEfficiency.DecimalFractions,
            StandardAir.Density<T>(MeasuredPower.MeasuredIn.Pascals, MeasuredPower.MeasuredIn.Kelvins),
            EngineFriction.OfMeasuredPull<T>(
                MeasuredPower.BySpeed.At(MechanicalEfficiencySpeed.RevolutionsPerSecond), MechanicalEfficiency.DecimalFractions),
            MechanicalEfficiencySpeed.RevolutionsPerSecond,
            Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule,
            Combustion.AirFuelRatio<T>(Consumption.Lambda, Consumption.Fuel.AirFuelRatio),
            Induction.CoolantTemperature?.Kelvins ?? 0,
            EvaporatedShare.DecimalFractions,
            HeatOfVaporisation)
        {
            Evaporates = EvaporatedShare > Ratio.Zero,
        };

    /// <summary>Of the fuel, J/kg; not asked for where no share evaporates.</summary>
    private double HeatOfVaporisation => EvaporatedShare > Ratio.Zero
        ? Consumption.Fuel.HeatOfVaporisation?.JoulesPerKilogram ?? throw new ArgumentException(
            $"{Consumption.Fuel.Name} has no heat of vaporisation, which the evaporated share of {Readable.Of(EvaporatedShare)} needs. Give it by Fuel.WithHeatOfVaporisation, or state no share.")
        : 0;

    /// <summary>The demand at a speed and boost.</summary>
    /// <param name="speed">Within the tables of volumetric efficiency and power, and up to the engine's limit.</param>
    /// <param name="boost">
    /// Manifold gauge pressure, negative under throttle: −95 to 400 kPa, leaving at least 10 kPa absolute; at most zero
    /// without a compressor.
    /// </param>
    /// <param name="atmosphere">The ambient air.</param>
    /// <returns>Fuel both ways, with every step.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public FuelDemand At(RotationalSpeed speed, Pressure boost, Atmosphere atmosphere)
    {
        DemandInput<Real> input = InputAt(speed, boost, atmosphere);
        return new(Lawful(DemandChain.Evaluate(ConstantsAt(input.Speed), input), speed, boost, atmosphere), Basis);
    }

    /// <summary>Whether there is a demand at a speed and boost: whether <see cref="At(RotationalSpeed, Pressure, Atmosphere)"/> answers, and does not refuse.</summary>
    /// <param name="speed">Any speed.</param>
    /// <param name="boost">Any manifold gauge pressure.</param>
    /// <param name="atmosphere">The ambient air.</param>
    /// <returns>True within the engine's tables, its speed limit, and the boost that it may have.</returns>
    public bool Covers(RotationalSpeed speed, Pressure boost, Atmosphere atmosphere)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        double revolutions = speed.RevolutionsPerSecond;
        return speed <= Engine.SpeedLimit
            && revolutions >= EngineSpeed.Minimum
            && VolumetricEfficiency.BySpeed.Covers(revolutions)
            && MeasuredPower.BySpeed.Covers(revolutions)
            && AlongSpeed?.Any.Covers(revolutions) != false
            && boost >= ManifoldPressure.Minimum
            && boost <= ManifoldPressure.Maximum
            && (Induction.Drive != CompressorDrive.None || boost <= Pressure.Zero)
            && boost + atmosphere.Pressure >= ManifoldPressure.MinimumAbsolute;
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuelDemandModel? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Engine, fuel and lambda.</summary>
    /// <returns>For instance <c>engine A on petrol at lambda 0.82, 315 g/kWh</c>.</returns>
    public override string ToString() =>
        $"{Engine.Name} on {Consumption}{(AlongSpeed is null ? string.Empty : $"; {AlongSpeed}")}";

    /// <summary>What the chain of equations is given at a point.</summary>
    internal DemandInput<Real> InputAt(RotationalSpeed speed, Pressure boost, Atmosphere atmosphere)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        if (speed > Engine.SpeedLimit)
        {
            throw Guard.OutOfRange(
                nameof(speed),
                Readable.Of(speed),
                $"up to {Readable.Of(Engine.SpeedLimit)}",
                $"It is the speed limit of {Engine.Name}.");
        }

        double airSpeed = EngineSpeed.Covered(
            speed, VolumetricEfficiency.BySpeed, "volumetric-efficiency table", nameof(speed));
        double powerSpeed = EngineSpeed.Covered(speed, MeasuredPower.BySpeed, "power curve", nameof(speed));
        if (AlongSpeed is not null)
        {
            EngineSpeed.Covered(speed, AlongSpeed.Any, "table by speed", nameof(speed));
        }

        ManifoldPressure.Within(boost, nameof(boost));
        if (Induction.Drive == CompressorDrive.None && boost > Pressure.Zero)
        {
            throw Guard.OutOfRange(
                nameof(boost), Readable.Boost(boost), "up to 0 bar", "This engine has no compressor.");
        }

        if (boost + atmosphere.Pressure < ManifoldPressure.MinimumAbsolute)
        {
            throw Guard.OutOfRange(
                nameof(boost),
                Readable.Of(boost),
                $"at least {Readable.Of(ManifoldPressure.MinimumAbsolute - atmosphere.Pressure)} with the barometer at {Readable.Of(atmosphere.Pressure)}",
                "No engine pulls a deeper vacuum; check that the figure is gauge pressure.");
        }

        return Input(airSpeed, powerSpeed, boost.Pascals, atmosphere);
    }

    /// <summary>Every step from boost to fuel at a speed and boost that are at hand in SI numbers too.</summary>
    /// <param name="speed">As in <see cref="At(RotationalSpeed, Pressure, Atmosphere)"/>.</param>
    /// <param name="revolutions">The same, rev/s.</param>
    /// <param name="boost">Within the library's range.</param>
    /// <param name="pascals">The same, Pa.</param>
    /// <param name="atmosphere">The ambient air.</param>
    internal DemandState<Real> ChainAt(
        RotationalSpeed speed, double revolutions, Pressure boost, double pascals, Atmosphere atmosphere)
    {
        // Well within all bounds nothing need be compared in units.
        bool inside = revolutions > _minimum && revolutions < _maximum
            && pascals < _maximumBoost && pascals + (Real)atmosphere.Pascals > _minimumManifold;
        DemandState<Real> state = DemandChain.Evaluate(
            AlongSpeed is null ? Constants : ConstantsAt(revolutions),
            inside ? Input(revolutions, revolutions, pascals, atmosphere) : InputAt(speed, boost, atmosphere));
        return Law is null ? state : Lawful(state, speed, boost, atmosphere);
    }

    /// <summary>The same with the fuel of a law, if there is one, and the air that burns with it.</summary>
    private DemandState<Real> Lawful(in DemandState<Real> state, RotationalSpeed speed, Pressure boost, Atmosphere atmosphere)
    {
        if (Law is null)
        {
            return state;
        }

        double fuel = Law.FuelAt(new(speed, boost, atmosphere, Consumption, TargetLambdaAt(speed), new(state, Basis))).KilogramsPerSecond;
        return fuel is > 0 and <= MaximumFuel
            ? state with { FromAir = fuel, FromPower = fuel, AirMassFlow = fuel * Combustion.AirFuelRatio<Real>(TargetLambdaAt(speed), Consumption.Fuel.AirFuelRatio) }
            : throw new InvalidOperationException(
                $"The law of fuel demand ({Law.Text}) gave {Term.Text(fuel)} kg/s at {Readable.Of(speed)}, {Readable.Boost(boost)}; it must give over 0 and up to 1 kg/s. Try the law with ConformanceKit.Of.");
    }

    // Over any engine's that this library is for, kg/s.
    private const double MaximumFuel = 1;

    private static RotationalSpeed Within(RotationalSpeed speed, PowerCurve power, string name)
    {
        EngineSpeed.Covered(speed, power.BySpeed, "power curve", name);
        return speed;
    }

    private DemandInput<Real> Input(double airSpeed, double powerSpeed, double boost, Atmosphere atmosphere) => new(
        airSpeed,
        boost,
        atmosphere.Pascals,
        atmosphere.Kelvins,
        VolumetricEfficiency.BySpeed.At(airSpeed),
        MeasuredPower.BySpeed.At(powerSpeed));
}
