using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Data;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Conformance;

/// <summary>Tries whether parts of your own keep what the library relies on: for a test project of yours.</summary>
/// <remarks>
/// Each question tries its rules at fixed places, so that it says the same each time. A part that conforms gives solved systems whose claims hold as those of the library's own
/// parts do, as far as it was tried; whether its figures are right, only a measurement can say.
/// </remarks>
/// <example>
/// <code>
/// ConformanceReport report = ConformanceKit.Of(Fuel.Petrol);
/// Console.WriteLine(report);                        // petrol keeps all 6 rules
/// </code>
/// </example>
public static class ConformanceKit
{
    private const int Places = 200;

    private static readonly double LowestBoost = ManifoldPressure.Minimum.Pascals;
    private static readonly double HighestBoost = ManifoldPressure.Maximum.Pascals;

    /// <summary>A regulator's law: pure, over 0 and up to 2,000 kPa at every boost, without jumps, its kinks named.</summary>
    /// <param name="law">The law.</param>
    /// <returns>What it keeps.</returns>
    public static ConformanceReport Of(IRegulatorLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        double At(double boost) => law.RailGauge(Pressure.FromPascals(boost)).Pascals;
        return new RuleTrial(law.Text ?? Named(nameof(IRegulatorLaw)))
            .That(Statement.Of("conformance.rule-says", $"it says what it is"), () => Said(law.Text))
            .IsPure(Places, place => At(Between(LowestBoost, HighestBoost, place)))
            .That(
                Statement.Of("conformance.rule-regulator-range", $"it gives a pressure over 0 and up to {Pressure.FromKilopascals(2000)} at every boost from {ManifoldPressure.Minimum} to {ManifoldPressure.Maximum}"),
                () => Outside(LowestBoost, HighestBoost, At, CustomRegulator.Of(law).SetPascals, Boost))
            .That(
                Statement.Of("conformance.rule-smooth", $"it has no jump, and every kink is named"),
                () => new LineOfFigures(At, LowestBoost, HighestBoost, [.. law.Kinks.Select(kink => kink.Pascals)]).Fault(Boost))
            .Report;
    }

    /// <summary>A pressure loss's law: pure, never below zero, never falling as the flow grows, without jumps, and there past the end of its data too.</summary>
    /// <param name="law">The law.</param>
    /// <returns>What it keeps, for thin and thick, light and heavy fuels.</returns>
    public static ConformanceReport Of(IFlowLossLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        double most = VolumeFlow.FromLitersPerHour(3000).CubicMetersPerSecond;
        (double Density, double Viscosity)[] fuels = [(700, 0.4e-6), (745, 0.7e-6), (800, 1.6e-6), (850, 6e-6)];
        RuleTrial trial = new RuleTrial(Named(law.Name))
            .That(Statement.Of("conformance.rule-described", $"it can be described"), () => CustomLoss.Of(law) is null ? Nothing : null)
            .IsPure(Places, place => Loss(fuels[place % fuels.Length], Between(0, most, place)));
        foreach ((double Density, double Viscosity) fuel in fuels)
        {
            Statement of = Statement.Of("conformance.of-fuel", $"of fuel of {Density.FromKilogramsPerCubicMeter(fuel.Density)} and {KinematicViscosity.FromSquareMetersPerSecond(fuel.Viscosity).Centistokes:0.0} mm²/s");
            LineOfFigures line = new(flow => Loss(fuel, flow), 0, most, []);
            trial
                .That(Statement.Of("conformance.rule-loss-range", $"its loss {of} is not below zero, and ends"), () =>
                {
                    CustomLoss part = CustomLoss.Of(law);
                    return Outside(0, most, flow => Loss(fuel, flow), flow => part.LossPascals(flow, fuel.Density, fuel.Viscosity), Flow);
                })
                .That(Statement.Of("conformance.rule-loss-rises", $"its loss {of} does not fall as the flow grows"), () => line.FirstFall() is { } fall ? Statement.Of("conformance.falls", $"it falls from {Flow(fall)} on") : null)
                .That(Statement.Of("conformance.rule-loss-smooth", $"its loss {of} has no jump"), () => line.FirstJump() is { } jump ? Statement.Of("conformance.jump", $"it jumps at {Flow(jump)}") : null);
        }

        return trial.Report;

        double Loss((double Density, double Viscosity) fuel, double flow) => law.LossAt(
            VolumeFlow.FromCubicMetersPerSecond(flow), Density.FromKilogramsPerCubicMeter(fuel.Density), KinematicViscosity.FromSquareMetersPerSecond(fuel.Viscosity)).Pascals;
    }

    /// <summary>A pump's law: pure, in range, flow never growing with the rise nor falling with the voltage, and smooth enough to be read into curves.</summary>
    /// <param name="law">The law.</param>
    /// <returns>What it keeps.</returns>
    public static ConformanceReport Of(IPumpLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        (double low, double high) = (law.MinimumVoltage.Volts, law.MaximumVoltage.Volts);
        double Flow(double share, double volts) => law.FlowAt(law.MaximumRise(ElectricPotential.FromVolts(volts)) * share, ElectricPotential.FromVolts(volts)).CubicMetersPerSecond;
        return new RuleTrial(Named(law.Name))
            .IsPure(Places, place => Flow(place % 7 / 7.0, Between(low, high, place)))
            .That(
                Statement.Of("conformance.rule-pump-rise", $"it delivers no more at a higher rise"),
                () => FirstOf(low, high, 20, volts => new LineOfFigures(share => -Flow(share, volts), 0, 1, []).FirstFall() is { } share
                    ? Statement.Of("conformance.pump-grows", $"at {ElectricPotential.FromVolts(volts)} it delivers more past {law.MaximumRise(ElectricPotential.FromVolts(volts)) * share}")
                    : null))
            .That(
                Statement.Of("conformance.rule-pump-voltage", $"it delivers no less at a higher voltage"),
                () => FirstOf(0, 1, 20, share =>
                {
                    Pressure rise = law.MaximumRise(law.MinimumVoltage) * share;
                    return new LineOfFigures(volts => law.FlowAt(rise, ElectricPotential.FromVolts(volts)).CubicMetersPerSecond, low, high, []).FirstFall() is { } volts
                        ? Statement.Of("conformance.pump-falls", $"against {rise} it delivers less past {ElectricPotential.FromVolts(volts)}")
                        : null;
                }))
            .That(Statement.Of("conformance.rule-pump-curves", $"it can be read into curves"), () => PumpLaw.Tabulated(law) is null ? Nothing : null)
            .Report;
    }

    /// <summary>A law of fuel demand: pure, over 0 and up to 1 kg/s wherever the engine's tables reach, without jumps, its kinks named.</summary>
    /// <param name="law">The law.</param>
    /// <param name="engine">The engine that it belongs to.</param>
    /// <returns>What it keeps.</returns>
    public static ConformanceReport Of(IFuelDemandLaw law, FuelDemandModel engine)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(engine);
        (double slow, double fast) = Speeds(engine);
        (double low, double high) = Boosts(engine);
        FuelDemandModel own = engine.With(law);

        // The estimate has kinks of its own, where one of its two ways overtakes the other: of a law that follows it, only what the law adds is looked at.
        double At(double speed, double boost) => Fuel(own, speed, boost) / (law.FollowsEstimate ? Fuel(engine.WithoutLaw(), speed, boost) : 1);
        double[] speedKinks = [.. SpeedKnots.Of(own)];
        double[] boostKinks = [.. law.BoostKinks.Select(kink => kink.Pascals), 0];
        return new RuleTrial(law.Text ?? Named(nameof(IFuelDemandLaw)))
            .That(Statement.Of("conformance.rule-says", $"it says what it is"), () => Said(law.Text))
            .IsPure(Places, place => At(Between(slow, fast, place), Between(low, high, place * 37 % Places)))
            .That(
                Statement.Of("conformance.rule-smooth-speed", $"along speed it has no jump, and every kink is named"),
                () => FirstOf(low, high, 9, boost => new LineOfFigures(speed => At(speed, boost), slow, fast, speedKinks).Fault(Speed)))
            .That(
                Statement.Of("conformance.rule-smooth-boost", $"along boost it has no jump, and every kink is named"),
                () => FirstOf(slow, fast, 9, speed => new LineOfFigures(boost => At(speed, boost), low, high, boostKinks).Fault(Boost)))
            .That(
                Statement.Of("conformance.rule-demand-follows", $"it follows the library's estimate where it says so, and only there"),
                () => Follows(law, engine, (slow + fast) / 2, high / 2))
            .Report;

        static double Fuel(FuelDemandModel model, double speed, double boost) =>
            model.At(RotationalSpeed.FromRevolutionsPerSecond(speed), Pressure.FromPascals(boost), Atmosphere.Standard).KilogramsPerSecond;
    }

    /// <summary>A controller's law: pure, 0 to 500 ms or no data, without jumps, its kinks named.</summary>
    /// <param name="law">The law.</param>
    /// <param name="system">A system that it controls.</param>
    /// <returns>What it keeps, at no pressure in particular where it reads the one across the injectors: at 200 to 500 kPa.</returns>
    public static ConformanceReport Of(IControllerLaw law, FuelSystem system)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(system);
        (double slow, double fast) = Speeds(system.Demand);
        (double low, double high) = Boosts(system.Demand);
        CustomController controller = CustomController.Of(law);
        double At(double speed, double boost, double differential) => controller.Command(
            MixtureSolver.InputOf(system.Parts, system.Parts.DemandAt(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerSecond(speed), Pressure.FromPascals(boost)))),
            default,
            1,
            differential).Unlimited is var pulse && double.IsNaN(pulse) ? 0 : pulse;
        double ambient = Atmosphere.Standard.Pascals;
        double[] manifolds = [.. law.ManifoldKinks.Select(kink => kink.Pascals - ambient), 0];
        double[] speeds = [.. SpeedKnots.Of(system.Demand), .. law.SpeedKinks.Select(kink => kink.RevolutionsPerSecond)];
        return new RuleTrial(law.Text ?? Named(nameof(IControllerLaw)))
            .That(Statement.Of("conformance.rule-says", $"it says what it is"), () => Said(law.Text))
            .IsPure(Places, place => At(Between(slow, fast, place), Between(low, high, place * 37 % Places), Differential(place)))
            .That(
                Statement.Of("conformance.rule-smooth-speed", $"along speed it has no jump, and every kink is named"),
                () => FirstOf(low, high, 7, boost => new LineOfFigures(speed => At(speed, boost, Differential(2)), slow, fast, speeds).Fault(Speed)))
            .That(
                Statement.Of("conformance.rule-smooth-boost", $"along boost it has no jump, and every kink is named"),
                () => FirstOf(slow, fast, 7, speed => new LineOfFigures(boost => At(speed, boost, Differential(2)), low, high, manifolds).Fault(Boost)))
            .That(
                Statement.Of("conformance.rule-smooth-differential", $"along the pressure across the injectors it has no jump"),
                () => new LineOfFigures(differential => At((slow + fast) / 2, high / 2, differential), 200e3, 500e3, []).FirstJump() is { } jump
                    ? Statement.Of("conformance.jump", $"it jumps at {PressureAt(jump)}")
                    : null)
            .Report;

        static double Differential(int place) => 200e3 + (place % 4 * 100e3);
    }

    /// <summary>A fuel: every property that a check may need is there, and goes the way that a liquid's does from −30 to 80 °C.</summary>
    /// <param name="fuel">The fuel.</param>
    /// <returns>What it keeps. A fuel without viscosity or vapour pressure can be used where there are no lines; those checks are then not judged.</returns>
    public static ConformanceReport Of(Fuel fuel)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        (double cold, double warm) = (Fuel.MinimumTemperature.Kelvins, Fuel.MaximumTemperature.Kelvins);
        Statement? Falls(Func<double, double> of) =>
            new LineOfFigures(kelvins => -of(kelvins), cold, warm, []).FirstFall() is { } at ? Statement.Of("conformance.fuel-rises", $"it rises past {Temperature.FromKelvins(at)}") : null;
        return new RuleTrial(Named(fuel.Name))
            .That(Statement.Of("conformance.rule-fuel-ratio", $"its stoichiometric air–fuel ratio is that of a fuel, 3 to 20"), () => fuel.AirFuelRatio is >= 3 and <= 20 ? null : Statement.Of("conformance.fuel-ratio", $"it is {fuel.AirFuelRatio:0.00}"))
            .That(Statement.Of("conformance.rule-fuel-density", $"its density falls with temperature"), () => Falls(fuel.DensityAtKelvins))
            .That(Statement.Of("conformance.rule-fuel-viscosity", $"its viscosity is known, which lines need, and falls with temperature"), () => fuel.HasViscosity ? Falls(fuel.KinematicViscosityAtKelvins) : Missing("viscosity"))
            .That(
                Statement.Of("conformance.rule-fuel-vapour", $"its vapour pressure is known, which the pump's inlet needs, and rises with temperature"),
                () => fuel.HasVapourPressure ? Falls(kelvins => -fuel.VapourPressureAtKelvins(kelvins)) : Missing("vapour pressure"))
            .That(Statement.Of("conformance.rule-fuel-heat", $"its heat of vaporisation is known, which evaporation in the charge needs"), () => fuel.HeatOfVaporisation is null ? Missing("heat of vaporisation") : null)
            .IsPure(Places, place => fuel.DensityAtKelvins(Between(cold, warm, place)))
            .Report;
    }

    /// <summary>A check: it says the same twice, its margin agrees with what it uses and allows, it has a code of its own and words, and its remedies can be said.</summary>
    /// <param name="check">The check.</param>
    /// <param name="system">A system that it judges.</param>
    /// <param name="points">Where it is tried; one or more.</param>
    /// <returns>What it keeps.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    public static ConformanceReport Of(ICheck check, FuelSystem system, params OperatingPoint[] points)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(points);
        if (points.Length == 0)
        {
            throw new ArgumentException("points was empty; give at least one place at which the check is tried.", nameof(points));
        }

        FuelSystem judged = system.With(check);
        Margin? At(int place) => judged.Solve(points[place]).Margins.FirstOrDefault(margin => ReferenceEquals(margin.Check, check));
        IEnumerable<Margin> Margins() => Enumerable.Range(0, points.Length).Select(place => At(place)).OfType<Margin>();
        return new RuleTrial(Named(check.Part.Name))
            .That(
                Statement.Of("conformance.rule-check-code", $"its code is none of the library's"),
                () => StandardChecks.All.Any(own => own.Part == check.Part) ? Statement.Of("conformance.code-taken", $"{check.Part.Name} has the code of a check of the library") : null)
            .That(
                Statement.Of("conformance.rule-check-applies", $"it judges this system, or says why not"),
                () => check.AppliesTo(judged.Parts) is { IsJudged: false, Gap: null } ? Statement.Of("conformance.not-applicable", $"it does not apply to this system, so that nothing of it was tried") : null)
            .IsPure(points.Length, place => At(place)?.Reserve?.DecimalFractions ?? double.NaN)
            .That(Statement.Of("conformance.rule-check-margin", $"what it uses and allows, and its margin, agree"), () => Margins().Select(Disagrees).FirstOrDefault(fault => fault is not null))
            .That(Statement.Of("conformance.rule-check-words", $"it can say what it found"), () => Margins().Any(margin => string.IsNullOrWhiteSpace(margin.Explanation)) ? Nothing : null)
            .That(
                Statement.Of("conformance.rule-check-remedies", $"its remedies can be said"),
                () => points.Any(point => judged.Sweep([point.Speed], [point.Boost], point.Conditions).Remedies.Any(remedy => string.IsNullOrWhiteSpace(remedy.ToString()))) ? Nothing : null)
            .Report;
    }

    /// <summary>An uncertain input: the nominal value changes nothing, any other changes something, and it is pure and solvable over its distribution.</summary>
    /// <param name="input">The input.</param>
    /// <param name="system">A system that it belongs to.</param>
    /// <param name="point">A place where that is solved.</param>
    /// <returns>What it keeps.</returns>
    public static ConformanceReport Of(UncertainInput input, FuelSystem system, OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(point);
        FuelSystem At(double value) => input.Change is { } change
            ? change(system, value)
            : throw new ArgumentException($"input was {input.Name}, which is the library's own. Give one that UncertainInput.Of made.", nameof(input));
        double ValueOf(int place) => input.Shape.ValueAt((place + 0.5) / Places);
        return new RuleTrial(Named(input.Name))
            .That(Statement.Of("conformance.rule-input-nominal", $"its nominal value changes nothing"), () => At(input.Nominal).Equals(system) ? null : Statement.Of("conformance.nominal-changes", $"its nominal value gives another system"))
            .That(
                Statement.Of("conformance.rule-input-changes", $"its other values change something"),
                () => Enumerable.Range(0, Places).All(place => At(ValueOf(place)).Equals(system)) ? Statement.Of("conformance.changes-nothing", $"no value of its distribution gives another system") : null)
            .That(
                Statement.Of("conformance.rule-input-pure", $"the same value gives an equal system"),
                () => Enumerable.Range(0, Places).Any(place => !At(ValueOf(place)).Equals(At(ValueOf(place)))) ? Statement.Of("conformance.not-pure-system", $"asked again, a value gives another system") : null)
            .IsPure(Places, place => At(ValueOf(place)).Solve(point).Limiting.Margin.Reserve?.DecimalFractions ?? double.NaN)
            .Report;
    }

    /// <summary>
    /// A whole system with parts of your own: solved twice and on several threads it is the same to the last bit, fuel is neither made nor lost, a coarse sweep claims nothing that a
    /// dense scan finds wrong, and its results leave the process and come back.
    /// </summary>
    /// <param name="system">The system.</param>
    /// <param name="slowest">Lowest speed that the engine's tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="lowest">Lowest boost.</param>
    /// <param name="highest">Highest boost.</param>
    /// <returns>What it keeps.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A speed or a boost is outside its range, or the first is not under the second.</exception>
    public static ConformanceReport Of(FuelSystem system, RotationalSpeed slowest, RotationalSpeed fastest, Pressure lowest, Pressure highest)
    {
        ArgumentNullException.ThrowIfNull(system);
        EngineSpeed.Within(slowest, nameof(slowest));
        ManifoldPressure.Within(lowest, nameof(lowest));
        Guard.Above(fastest, slowest, RotationalSpeed.FromRevolutionsPerSecond(EngineSpeed.Maximum), "Give a range of speeds.", nameof(fastest));
        Guard.Above(highest, lowest, ManifoldPressure.Maximum, "Give a range of boosts.", nameof(highest));
        OperatingResult At(int place) => system.Solve(PointAt(slowest, fastest, lowest, highest, place));
        return new RuleTrial(Statement.Of("conformance.system", $"the system with {system.Pump.Name} and a regulator, {system.Regulator},"))
            .IsPure(Grid * Grid, place => At(place) is var result ? result.RailGauge.Pascals + (result.Limiting.Margin.Reserve?.DecimalFractions ?? 0) : 0)
            .That(
                Statement.Of("conformance.rule-balance", $"no fuel is made or lost: the pumps deliver what is injected and what returns"),
                () => Enumerable.Range(0, Grid * Grid).Select(place => At(place)).FirstOrDefault(Leaks) is { } leaking
                    ? Statement.Of("conformance.balance", $"the pumps deliver {leaking.Circuit.PumpFlow!.Value:pump-flow} at {leaking.Point}, and {leaking.InjectedFlow:pump-flow} is injected")
                    : null)
            .That(Statement.Of("conformance.rule-claims", $"a coarse sweep claims nothing that a dense scan finds wrong"), () => Claims(system, (slowest, fastest), (lowest, highest)))
            .That(
                Statement.Of("conformance.rule-json", $"its results leave the process as JSON and come back"),
                () => ResultData.Of(At(Grid)) is var data && ResultData.Parse("result", data.ToJson()).Equals(data) ? null : Statement.Of("conformance.json", $"what is read back is another result"))
            .That(Statement.Of("conformance.rule-working", $"its working can be written"), () => At(Grid).Working.Steps.Count > 0 ? null : Nothing)
            .Report;
    }

    // Places along speed and boost at which a system is tried.
    private const int Grid = 12;

    private static Statement Named(string name) => Statement.Of("conformance.named", $"{name}");

    private static Statement Nothing => Statement.Of("conformance.nothing", $"there is nothing");

    private static Statement? Said(Statement? text) =>
        text is null ? Nothing
        : text.Code.StartsWith("own.", StringComparison.Ordinal) ? null
        : Statement.Of("conformance.code", $"its code is {text.Code}; begin it with own., so that it is none of the library's");

    private static Statement Missing(string property) => Statement.Of("conformance.fuel-lacks", $"no {property} is given");

    private static Statement? Outside(double first, double last, Func<double, double> figure, Func<double, double> guarded, Func<double, Statement> place)
    {
        for (int at = 0; at <= Places * 5; at++)
        {
            double x = first + ((last - first) * at / (Places * 5));
            try
            {
                _ = guarded(x);
            }
            catch (InvalidOperationException)
            {
                return Statement.Of("conformance.outside", $"it gives {figure(x):G6} in SI at {place(x)}");
            }
        }

        return null;
    }

    private static Statement? Follows(IFuelDemandLaw law, FuelDemandModel engine, double speed, double boost)
    {
        FuelDemandModel more = engine.With(
            engine.VolumetricEfficiency.Scaled(1.1), engine.MeasuredPower, engine.Consumption.Using(engine.Consumption.BrakeSpecificFuelConsumption * 1.1));
        double Of(FuelDemandModel model) => model.With(law).At(RotationalSpeed.FromRevolutionsPerSecond(speed), Pressure.FromPascals(boost), Atmosphere.Standard).KilogramsPerSecond;
        return Of(more).Equals(Of(engine)) != law.FollowsEstimate ? null
            : law.FollowsEstimate ? Statement.Of("conformance.does-not-follow", $"with a tenth more air and BSFC it gives the same fuel")
            : Statement.Of("conformance.follows", $"with a tenth more air and BSFC it gives another fuel");
    }

    private static Statement? Disagrees(Margin margin)
    {
        if (margin.Outcome == Outcome.CannotSay || margin is not { Reserve: { } reserve, Used: { } used, Allowed: { } allowed })
        {
            return null;
        }

        double share = (double)(margin.Direction == LimitDirection.AtMost ? allowed.As(used.Unit) - used.As(used.Unit) : used.As(used.Unit) - allowed.As(used.Unit));
        return Math.Sign(share) * Math.Sign(reserve.DecimalFractions) < 0
            ? Statement.Of("conformance.margin", $"at {margin.Point} its margin is {reserve}, and it uses {margin.Finding}")
            : null;
    }

    private static bool Leaks(OperatingResult result) =>
        result.Circuit is { PumpFlow: { } pumped, ReturnedFlow: { } returned }
        && result.RailState is RailState.Regulated or RailState.Sagging
        && Math.Abs(pumped.LitersPerHour - returned.LitersPerHour - result.InjectedFlow.LitersPerHour) > 1e-6 * pumped.LitersPerHour;

    private static Statement? Claims(FuelSystem system, (RotationalSpeed Slowest, RotationalSpeed Fastest) speeds, (Pressure Lowest, Pressure Highest) boosts)
    {
        const int Dense = 60;
        if (system.Sweep([speeds.Slowest, speeds.Fastest], [boosts.Lowest, boosts.Highest]).Verdict.Outcome is not (Outcome.Holds or Outcome.HoldsAsFarAsJudged))
        {
            return null;
        }

        for (int speed = 0; speed <= Dense; speed++)
        {
            for (int boost = 0; boost <= Dense; boost++)
            {
                OperatingResult result = system.Solve(OperatingPoint.At(
                    speeds.Slowest + ((speeds.Fastest - speeds.Slowest) * ((double)speed / Dense)), boosts.Lowest + ((boosts.Highest - boosts.Lowest) * ((double)boost / Dense))));
                if (result.Outcome == Outcome.Fails)
                {
                    return Statement.Of("conformance.claim", $"the sweep holds over the whole range, and fails at {result.Point}: {result.Limiting.Margin.Finding}");
                }
            }
        }

        return null;
    }

    private static OperatingPoint PointAt(RotationalSpeed slowest, RotationalSpeed fastest, Pressure lowest, Pressure highest, int place) => OperatingPoint.At(
        slowest + ((fastest - slowest) * (place % Grid / (Grid - 1.0))), lowest + ((highest - lowest) * (place / Grid / (Grid - 1.0))));

    private static (double Slow, double Fast) Speeds(FuelDemandModel engine)
    {
        double slow = Math.Max(engine.VolumetricEfficiency.BySpeed.First, engine.MeasuredPower.BySpeed.First);
        double fast = Math.Min(engine.Engine.SpeedLimit.RevolutionsPerSecond, Math.Min(engine.VolumetricEfficiency.BySpeed.Last, engine.MeasuredPower.BySpeed.Last));
        return engine.AlongSpeed is { } along ? (Math.Max(slow, along.Any.First), Math.Min(fast, along.Any.Last)) : (slow, fast);
    }

    private static (double Low, double High) Boosts(FuelDemandModel engine) => (-50e3, engine.Induction.Drive == CompressorDrive.None ? 0 : 300e3);

    private static Statement? FirstOf(double first, double last, int count, Func<double, Statement?> fault) =>
        Enumerable.Range(0, count).Select(place => fault(first + ((last - first) * place / (count - 1.0)))).FirstOrDefault(found => found is not null);

    private static double Between(double first, double last, int place) => first + ((last - first) * place / (Places - 1.0));

    private static Statement Boost(double pascals) => Statement.Of("conformance.at-boost", $"a boost of {Pressure.FromPascals(pascals):boost}");

    private static Statement Flow(double flow) => Statement.Of("conformance.at-flow", $"{VolumeFlow.FromCubicMetersPerSecond(flow):pump-flow}");

    private static Statement Speed(double speed) => Statement.Of("conformance.at-speed", $"{RotationalSpeed.FromRevolutionsPerSecond(speed)}");

    private static Statement PressureAt(double pascals) => Statement.Of("conformance.at-pressure", $"{Pressure.FromPascals(pascals)} across the injectors");
}
