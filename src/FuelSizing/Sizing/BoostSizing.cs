using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>Inverse questions along the line of a compressor on a belt: the most boost that the parts support, and what supports this one.</summary>
public static class BoostSizing
{
    private const int Speeds = 25;

    // A speed between those searched at which a sweep finds the answer to fail is searched too, so many times over.
    private const int Rounds = 6;

    private static readonly SizedFigure<double> TurnsPerTurn = new(
        ratio => ratio, (ratio, other) => Statement.Of("sizing.figure", $"{ratio.Towards(other):0.000}"), ratio => Math.Round(ratio, 6));

    private static readonly SizedFigure<VolumeFlow> Flow = new(
        flow => VolumeFlow.FromCubicMetersPerSecond(flow),
        (flow, other) => Statement.Of("sizing.figure", $"{flow.Towards(other):injector-flow}"),
        flow => FigureUnits.Metric.InjectorFlow.Tidy(VolumeFlow.FromCubicMetersPerSecond(flow)).CubicMetersPerSecond);

    /// <summary>The highest drive ratio, counted up from the one fitted, at which every check holds along the whole line.</summary>
    /// <param name="system">The system with its regulator, pumps, injectors and controller as they are.</param>
    /// <param name="line">The compressor as it is fitted.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>
    /// Up to twice the ratio that is fitted, 20, or 400 kPa of boost, whichever comes first; or that the system fails as it is fitted. What is
    /// known as holding is what the system's checks judge: without a controller and limits of the mixture that is not among them.
    /// </returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static MaximumBoostResult MaximumDriveRatio(
        FuelSystem system, BeltDrivenBoost line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        LineSweepResult fitted = system.Pull(line, slowest, fastest, conditions, cancellation);
        SortedSet<double> speeds =
        [
            .. Even(slowest, fastest),
            .. fitted.Standings.Select(standing => standing.Tightest.Point.Speed.RevolutionsPerSecond),
            .. SpeedKnots.Of(system).Where(speed => speed > slowest.RevolutionsPerSecond && speed < fastest.RevolutionsPerSecond),
        ];
        double most = Math.Min(BeltDrivenBoost.MaximumRatio, 2 * line.DriveRatio);
        double top = most;
        for (int halving = 0; halving < 40 && !IsWithin(top); halving++)
        {
            top = line.DriveRatio + ((top - line.DriveRatio) * 0.95);
        }

        for (int round = 0; ; round++)
        {
            RotationalSpeed[] at = [.. speeds.Select(speed => RotationalSpeed.FromRevolutionsPerSecond(speed))];
            SizingAnswer<double> answer = new SizingSearch(line.DriveRatio, top, at.Length, ratio => With(line.WithDriveRatio(ratio), at), cancellation: cancellation).Maximum(TurnsPerTurn);
            BeltDrivenBoost? with = answer.Value is { } value ? line.WithDriveRatio(value) : null;
            LineSweepResult? pull = with is null ? null : system.Pull(with, slowest, fastest, conditions, cancellation);

            // At the edge one margin is nothing: what fails there by more than a rounding was missed between the speeds.
            OperatingPoint? missed = pull?.Standings.FirstOrDefault(standing => standing is { Outcome: Outcome.Fails, Tightest.Margin.Reserve.DecimalFractions: < -1e-9 })?.Tightest.Point;
            if (missed is null || round == Rounds)
            {
                return new(line, answer, missed is null ? with : null, missed is null ? pull : null, missed);
            }

            speeds.Add(missed.Speed.RevolutionsPerSecond);
        }

        bool IsWithin(double ratio)
        {
            BeltDrivenBoost faster = line.WithDriveRatio(ratio);
            return speeds.All(speed => faster.PascalsAt(speed, system.Demand, conditions.Atmosphere) <= ManifoldPressure.Maximum.Pascals);
        }

        SizedSystem With(BeltDrivenBoost faster, RotationalSpeed[] at) => SizedSystem.Of(
            system.JudgedBy(new CompressorSpeedCheck(faster)),
            speed => OperatingPoint.At(at[speed], faster.At(at[speed], system.Demand, conditions.Atmosphere), conditions));
    }

    /// <summary>
    /// The injectors and the controller data that serve along a boost line with a regulator that only follows the manifold: no rising-rate unit.
    /// </summary>
    /// <param name="system">The system; its injectors are taken with every other property as it is, its regulator and controller are exchanged.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature: those that the controller is calibrated in.</param>
    /// <param name="basePressure">Of the regulator; what the fitted one sets without boost if not given, 100 to 1,500 kPa.</param>
    /// <param name="controllerOf">
    /// The controller with such data; one that knows the air that the engine takes, whatever the boost, if not given
    /// (<see cref="AirflowMeterController"/> without an end).
    /// </param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>The range of static flows that holds duty, minimum pulse, mixture and all else; and the data that go with the lowest of them.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static InjectorRequirement InjectorsInstead(
        FuelSystem system,
        BoostLine line,
        RotationalSpeed slowest,
        RotationalSpeed fastest,
        Conditions conditions,
        Pressure? basePressure = null,
        Func<ControllerData, EngineController>? controllerOf = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(conditions);
        system.RequireOneSet(nameof(system), "a controller with data of one set of injectors");
        ManifoldReferenced regulator = ManifoldReferenced.From(
            basePressure ?? Pressure.FromPascals(Math.Clamp(system.Regulator.SetPascals(0), 100e3, 1500e3)), system.Regulator.MinimumReturnFlow).With(system.Regulator.FlowAtRail);
        FuelSystem following = system.With(regulator);
        LineSweepResult pull = following.Pull(line, slowest, fastest, conditions, cancellation);
        OperatingPoint[] points =
        [
            .. Even(slowest, fastest)
                .Concat(pull.Standings.Select(standing => standing.Tightest.Point.Speed.RevolutionsPerSecond))
                .Concat(LineKnots.Of(following, line, conditions, slowest.RevolutionsPerSecond, fastest.RevolutionsPerSecond))
                .Distinct().Order()
                .Select(speed => RotationalSpeed.FromRevolutionsPerSecond(speed))
                .Select(speed => OperatingPoint.At(speed, line.At(speed, system.Demand, conditions.Atmosphere), conditions)),
        ];
        Injector own = system.Injectors.Injector;
        SizingAnswer<VolumeFlow> answer = new SizingSearch(
            VolumeFlow.FromMillilitersPerMinute(20).CubicMetersPerSecond,
            VolumeFlow.FromMillilitersPerMinute(10_000).CubicMetersPerSecond,
            points.Length,
            flow => SizedSystem.Of(With(VolumeFlow.FromCubicMetersPerSecond(flow)).System, point => points[point]),
            cancellation: cancellation).Minimum(Flow);
        if (answer.Value is not { } minimum)
        {
            return new(answer, null, null, points);
        }

        (FuelSystem serves, ControllerData data) = With(minimum);
        return new(answer, serves, data, points);

        (FuelSystem System, ControllerData Data) With(VolumeFlow flow)
        {
            Injector injector = own.WithStaticFlow(flow);
            // A controller's target goes with load, not with speed.
            ControllerData controller = ControllerData.Of(injector, system.Demand.Consumption.Fuel, TargetLambda.At(system.Demand.RichestTargetLambda))
                .WithDifferential(regulator.Base)
                .WithFuelTemperature(conditions.FuelTemperature);
            return (
                following
                    .With(InjectorSet.Of(injector, system.Injectors.Count, system.Injectors.InjectionsPerCycle))
                    .With(controllerOf?.Invoke(controller) ?? AirflowMeterController.Of(controller)),
                controller);
        }
    }

    private static IEnumerable<double> Even(RotationalSpeed slowest, RotationalSpeed fastest)
    {
        (double from, double to) = (slowest.RevolutionsPerSecond, fastest.RevolutionsPerSecond);
        return Enumerable.Range(0, Speeds).Select(step => step == Speeds - 1 ? to : from + ((to - from) * step / (Speeds - 1)));
    }
}

/// <summary>The most boost that the parts support along the line of a compressor on a belt.</summary>
public sealed class MaximumBoostResult : IReadable
{
    internal MaximumBoostResult(BeltDrivenBoost fitted, SizingAnswer<double> driveRatio, BeltDrivenBoost? line, LineSweepResult? pull, OperatingPoint? missed) =>
        (Fitted, DriveRatio, Line, Pull, Missed) = (fitted, driveRatio, line, pull, missed);

    /// <summary>The compressor as it is fitted.</summary>
    public BeltDrivenBoost Fitted { get; }

    /// <summary>The highest drive ratio, what limits it, and every range over which all holds.</summary>
    public SizingAnswer<double> DriveRatio { get; }

    /// <summary>The line at that ratio; none if the system fails as it is fitted.</summary>
    public BeltDrivenBoost? Line { get; }

    /// <summary>The system along that line.</summary>
    public LineSweepResult? Pull { get; }

    /// <summary>
    /// Change of the compressor pulley's diameter that gives the ratio, negative for a smaller one; zero where the one fitted is the limit, none
    /// where it fails.
    /// </summary>
    public Ratio? CompressorPulleyChange => Line is { } line ? Ratio.FromDecimalFractions((Fitted.DriveRatio / line.DriveRatio) - 1) : null;

    /// <summary>The highest boost on that line.</summary>
    public Pressure? HighestBoost => Pull?.Results.Max(result => result.Point.Boost);

    private OperatingPoint? Missed { get; }

    // What was not judged may fail at less.
    private Statement? NotJudged => Pull is { } pull && Verdict.Open(pull.System.NotJudged) is { Count: > 0 } open
        ? Statement.Of("maximum-boost.not-judged", $". Not judged: {open:,}")
        : null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The answer, as a code with its figures.</summary>
    public Statement Text => (CompressorPulleyChange, Missed) switch
    {
        ({ } change, _) => Statement.Of(
            "maximum-boost.ratio",
            $"Compressor pulley {change:change:up}, drive ratio {DriveRatio.Figure}, up to {HighestBoost!.Value:boost:down} of boost; then tightest: {DriveRatio.Binding.Part.Name}{NotJudged}"),
        (_, { } missed) => Statement.Of("maximum-boost.not-settled", $"Not settled: too near to a limit at {missed} to say how far the boost can rise."),
        _ => Statement.Of("maximum-boost.none", $"None: it fails with the pulley fitted: {DriveRatio.Binding}"),
    };

    /// <summary>The answer.</summary>
    /// <returns>One or two sentences.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>Injectors, and the data of a controller that knows the air, with which no rising-rate unit is needed.</summary>
public sealed class InjectorRequirement : IReadable
{
    internal InjectorRequirement(SizingAnswer<VolumeFlow> staticFlow, FuelSystem? system, ControllerData? data, OperatingPoint[] points)
    {
        (StaticFlow, System, Data) = (staticFlow, system, data);
        OperatingResult[] results = system is null ? [] : Array.ConvertAll(points, system.Solve);
        StaticMassFlow = results.Length > 0 && results[0].StaticFlow is { } flow
            ? MassFlow.FromKilogramsPerSecond(flow.CubicMetersPerSecond * results[0].SolvedDemand.Density)
            : null;
        HighestManifoldAbsolute = points.Max(point => point.Boost + point.Conditions.Atmosphere.Pressure);
        DeadTime = results.Length > 0 ? results[0].DeadTime : null;
    }

    /// <summary>Static flow at the rated differential on the test fluid: the lowest that serves, and every range that does.</summary>
    public SizingAnswer<VolumeFlow> StaticFlow { get; }

    /// <summary>The system with the lowest of them, its regulator and its controller; none if no injectors serve.</summary>
    public FuelSystem? System { get; }

    /// <summary>What the controller has to take for true with them.</summary>
    public ControllerData? Data { get; }

    /// <summary>Injector constant: fuel through one injector held open, at the differential of <see cref="Data"/>, of the fuel in the rail.</summary>
    public MassFlow? StaticMassFlow { get; }

    /// <summary>Dead time at that differential and at the supply's voltage; the whole table goes with <see cref="Data"/>.</summary>
    public Duration? DeadTime { get; }

    /// <summary>Highest manifold pressure on the line, absolute: a sensor or a table of pressure has to reach it.</summary>
    public Pressure HighestManifoldAbsolute { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Flow and controller data, as a code with their figures.</summary>
    public Statement Text => Data is { } data && DeadTime is { } deadTime
        ? Statement.Of(
            "injectors-instead.data",
            $"At least {StaticFlow.Figure} each at {data.Injector.RatedDifferential}; in the controller's data {data.Differential} across the injector, dead time {deadTime} there, air up to {HighestManifoldAbsolute} absolute in the manifold")
        : Statement.Of("injectors-instead.none", $"No injectors serve: {StaticFlow}");

    /// <summary>Flow and controller data.</summary>
    /// <returns>One or two sentences.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
