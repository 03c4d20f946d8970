using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>At which rail pressure a cut-out has to act, so that the mixture is never leaner than its limit.</summary>
/// <remarks>
/// Steady state: how fast a pump loses its pressure, or a switch acts, is not in it. The pulse is as commanded at the point; where the loop is
/// closed the sensor's correction is left out.
/// </remarks>
public static class CutOut
{
    // Between the speeds shown and the knots, so that no hump is missed; the highest few of them are then searched.
    private const int PiecesBetween = 8;
    private const int Humps = 3;
    private const int SearchSteps = 40;

    // (√5 − 1)/2.
    private const double Golden = 0.6180339887498949;

    /// <summary>Finds the pressures for a system as built, along its boost line.</summary>
    /// <param name="system">The system, with its controller and the leanest mixture that is allowed (<see cref="MixtureLimits"/>).</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>The pressures speed by speed, and whether one fixed pressure, or one difference to the manifold, can serve.</returns>
    /// <exception cref="ArgumentException">
    /// The controller is assumed to command whatever is needed, no leanest mixture is given, it counts nowhere on the line, or the engine cannot
    /// have such a line.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static CutOutResult PressuresFor(
        FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(conditions);
        if (system.Controller.IsIdeal)
        {
            throw new ArgumentException(
                "system has no controller: it is assumed to command whatever pulse is needed at any pressure. Give it one by FuelSystem.With.", nameof(system));
        }

        if (system.Limits.Mixture is not { } limits)
        {
            throw new ArgumentException(
                "system has no leanest mixture, which a cut-out has to keep. Give it by SizingLimits.With(MixtureLimits).", nameof(system));
        }

        if (system.SecondStream is { TakesBack: true } stream)
        {
            throw new ArgumentException(
                $"system has main fuel taken back for {stream.Name}: no rail pressure keeps the mixture if the second stream stops, which needs a safeguard of its own. Place the cut-out by FuelSystem.WithoutSecondStream.",
                nameof(system));
        }

        LineSweepResult sound = system.Pull(line, slowest, fastest, conditions, cancellation);
        double[] places =
        [
            .. sound.Results.Select(result => result.Point.RevolutionsPerSecond)
                .Concat(LineKnots.Of(system, line, conditions, slowest.RevolutionsPerSecond, fastest.RevolutionsPerSecond))
                .Distinct().Order(),
        ];
        double[] speeds = [.. places.Zip(places.Skip(1), (from, to) => Enumerable.Range(0, PiecesBetween).Select(piece => from + ((to - from) * piece / PiecesBetween))).SelectMany(piece => piece), places[^1]];
        Dictionary<double, CutOutPoint?> solved = [];
        CutOutPoint[] armed = [.. speeds.Select(At).OfType<CutOutPoint>()];
        if (armed.Length == 0)
        {
            throw new ArgumentException(
                $"system allows a leanest mixture from {Readable.Boost(limits.Leanest[0].Boost)} of boost on, which {line} does not reach. Give a limit that counts on the line.",
                nameof(system));
        }

        return new(
            system,
            [.. sound.Results.Select(result => At(result.Point.RevolutionsPerSecond)).OfType<CutOutPoint>()],
            SwitchOf(false),
            SwitchOf(true));

        CutOutSwitch SwitchOf(bool isDifferential)
        {
            double Against(CutOutPoint point) => isDifferential ? point.Result.Point.Boost.Pascals : 0;
            CutOutPoint? unknown = armed.FirstOrDefault(point => point.RequiredRail is null);
            CutOutPoint lowest = Lowest(point => point.Result.Mixture.RailGauge.Pascals - Against(point));
            CutOutPoint highest = unknown ?? Lowest(point => point.RequiredRail is { } rail ? Against(point) - rail.Pascals : double.PositiveInfinity);
            return new(
                isDifferential,
                highest,
                highest.RequiredRail is { } required ? Pressure.FromPascals(required.Pascals - Against(highest)) : null,
                lowest,
                Pressure.FromPascals(lowest.Result.Mixture.RailGauge.Pascals - Against(lowest)));
        }

        CutOutPoint? At(double speed)
        {
            if (!solved.TryGetValue(speed, out CutOutPoint? point))
            {
                cancellation.ThrowIfCancellationRequested();
                RotationalSpeed engine = RotationalSpeed.FromRevolutionsPerSecond(speed);
                OperatingResult result = system.Solve(OperatingPoint.At(engine, line.At(engine, system.Demand, conditions.Atmosphere), conditions));
                double allowed = limits.LeanestAt<Real>(result.Point.Boost.Pascals).Value;
                point = double.IsFinite(allowed) ? new(result, allowed, RequiredAt(result, allowed)) : null;
                solved.Add(speed, point);
            }

            return point;
        }

        // The lowest of a figure along the line, from its humps by dividing in the golden ratio.
        CutOutPoint Lowest(Func<CutOutPoint, double> figure)
        {
            double Of(double speed) => At(speed) is { } point ? figure(point) : double.PositiveInfinity;
            int[] humps =
            [
                .. Enumerable.Range(0, speeds.Length)
                    .Where(at => (at == 0 || Of(speeds[at]) < Of(speeds[at - 1])) && (at == speeds.Length - 1 || Of(speeds[at]) <= Of(speeds[at + 1])))
                    .OrderBy(at => Of(speeds[at])).Take(Humps),
            ];
            List<double> found = [.. humps.Select(at => speeds[at])];
            foreach (int at in humps)
            {
                (double low, double high) = (speeds[Math.Max(0, at - 1)], speeds[Math.Min(speeds.Length - 1, at + 1)]);
                for (int step = 0; step < SearchSteps; step++)
                {
                    double left = high - (Golden * (high - low));
                    double right = low + (Golden * (high - low));
                    found.Add(left);
                    found.Add(right);
                    (low, high) = Of(left) <= Of(right) ? (low, right) : (left, high);
                }
            }

            return At(found.MinBy(Of))!;
        }
    }

    /// <summary>The rail pressure that gives a lambda; none where no pressure does, or where the injectors' data does not reach it.</summary>
    private static Pressure? RequiredAt(OperatingResult result, double lambda)
    {
        SystemParts parts = result.Parts;
        double rail = MixtureSolver.RailFor(parts, result.SolvedDemand, lambda);
        double differential = rail - result.Point.Boost.Pascals;
        return !double.IsNaN(rail)
            && parts.Injectors.Injector.DeadTime.TryAt(result.Point.Conditions.SupplyVoltage.Volts, differential, out _)
            && !(differential < parts.Injectors.Injector.MinimumPascals)
                ? Pressure.FromPascals(rail)
                : null;
    }
}

/// <summary>The rail pressures at which a cut-out has to act, along a boost line.</summary>
public sealed class CutOutResult : IReadable
{
    internal CutOutResult(FuelSystem system, CutOutPoint[] points, CutOutSwitch fixedSwitch, CutOutSwitch differential) =>
        (System, Points, FixedSwitch, DifferentialSwitch) = (system, Array.AsReadOnly(points), fixedSwitch, differential);

    /// <summary>The system as built.</summary>
    public FuelSystem System { get; }

    /// <summary>Speeds of the line at which the leanest mixture counts.</summary>
    public IReadOnlyList<CutOutPoint> Points { get; }

    /// <summary>A switch that acts below one fixed rail pressure, armed where the leanest mixture counts.</summary>
    public CutOutSwitch FixedSwitch { get; }

    /// <summary>A switch that acts below one difference of rail and manifold pressure.</summary>
    public CutOutSwitch DifferentialSwitch { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Both switches, as a code with its figures.</summary>
    public Statement Text => Statement.Of("cut-out.switches", $"On rail pressure: {FixedSwitch}; on rail less manifold pressure: {DifferentialSwitch}");

    /// <summary>Both switches.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>A cut-out's pressure at one speed of the line.</summary>
public sealed class CutOutPoint : IReadable
{
    internal CutOutPoint(OperatingResult result, double lambda, Pressure? required) => (Result, Lambda, RequiredRail) = (result, lambda, required);

    /// <summary>The system as built there.</summary>
    public OperatingResult Result { get; }

    /// <summary>The leanest lambda that is allowed there.</summary>
    public double Lambda { get; }

    /// <summary>
    /// Rail pressure below which the mixture is leaner than that, gauge; none where no pressure gives it up to the highest at which the injectors
    /// open, or where their data, or that of the pulses, does not reach it.
    /// </summary>
    public Pressure? RequiredRail { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Point, pressure and what there is, as a code with its figures.</summary>
    public Statement Text => RequiredRail is { } required
        ? Statement.Of("cut-out.point", $"{Result.Point}: lambda {Lambda:0.000} at {required} in the rail, {Result.Mixture.RailGauge} as built")
        : Statement.Of("cut-out.point-none", $"{Result.Point}: no rail pressure is known that gives lambda {Lambda:0.000}, {Result.Mixture.RailGauge} as built");

    /// <summary>Point, pressure and what there is.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>Whether one setting of a switch can serve along the whole line.</summary>
public sealed class CutOutSwitch : IReadable
{
    internal CutOutSwitch(bool isDifferential, CutOutPoint latest, Pressure? minimum, CutOutPoint earliest, Pressure maximum) =>
        (IsDifferential, MinimumAt, Minimum, MaximumAt, Maximum) = (isDifferential, latest, minimum, earliest, maximum);

    /// <summary>True of a switch that compares the rail with the manifold.</summary>
    public bool IsDifferential { get; }

    /// <summary>The lowest setting that keeps the mixture everywhere; none where that is not known.</summary>
    public Pressure? Minimum { get; }

    /// <summary>Where it is needed, or where it is not known.</summary>
    public CutOutPoint MinimumAt { get; }

    /// <summary>The highest setting that does not act in sound operation: what the rail has at the least.</summary>
    public Pressure Maximum { get; }

    /// <summary>Where the rail has that.</summary>
    public CutOutPoint MaximumAt { get; }

    /// <summary>True if a setting between the two serves everywhere.</summary>
    public bool Serves => Minimum is { } minimum && minimum < Maximum;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The settings that serve, or why none does, as a code with its figures.</summary>
    public Statement Text => Minimum switch
    {
        null => Statement.Of("cut-out.not-known", $"none: {MinimumAt}"),
        { } minimum when Serves => Statement.Of("cut-out.serves", $"a setting between {minimum:pressure:up} and {Maximum:pressure:down} serves"),
        { } minimum => Statement.Of(
            "cut-out.none",
            $"none: a switch at one setting comes too late at {MinimumAt.Result.Point} below {minimum}, and trips in sound operation at {MaximumAt.Result.Point} above {Maximum}"),
    };

    /// <summary>The settings that serve, or why none does.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
