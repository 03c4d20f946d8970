using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>Which rising-rate unit makes the mixture right along a boost line.</summary>
public static class MixtureSizing
{
    // A grid to begin with, then ever smaller steps downhill from its best places.
    private const int GridSteps = 6;
    private const int Starts = 3;
    private const int Halvings = 16;

    // The best places lie along narrow valleys: at each halving the directions that are tried turn, so that one of them follows a valley soon.
    private const int Directions = 8;
    private const double Turn = 2.399963229728653;

    // Of the width of its bounds, to which a gain is found.
    private const double GainAccuracy = 1e-5;

    // What breaks another check is worse than any deviation.
    private const double Broken = 1e3;

    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>Finds base, gain and onset that hold lambda nearest to its target while every other check holds.</summary>
    /// <param name="system">The system, with its controller; its own regulator is exchanged.</param>
    /// <param name="line">The boost at each speed.</param>
    /// <param name="speeds">One or more, rising, that line and tables cover.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="bounds">Within which the unit is looked for; the base stays as fitted if not given.</param>
    /// <returns>The unit and what it leaves, or why none does it.</returns>
    /// <exception cref="ArgumentException">
    /// The controller is assumed to command whatever is needed, so that no unit is better than another; or the engine cannot have such a line.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">Line or tables do not cover a speed.</exception>
    public static RisingRateFit FitRisingRate(
        FuelSystem system, BoostLine line, IReadOnlyList<RotationalSpeed> speeds, Conditions conditions, RisingRateBounds? bounds = null)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(conditions);
        Guard.Count(speeds.Count, 1, 10_000, "Give at least one speed.", nameof(speeds));
        foreach (RotationalSpeed speed in speeds)
        {
            EngineSpeed.Within(speed, nameof(speeds));
        }

        if (system.Controller.IsIdeal)
        {
            throw new ArgumentException(
                "system has no controller: it is assumed to command whatever pulse is needed, and then any pressure serves. Give it one by FuelSystem.With.",
                nameof(system));
        }

        Pressure fitted = Pressure.FromPascals(Math.Clamp(system.Regulator.SetPascals(0), 100e3, 1500e3));
        Search search = new(
            system,
            [.. speeds.Select(speed => OperatingPoint.At(speed, line.At(speed, system.Demand, conditions.Atmosphere), conditions))],
            bounds ?? RisingRateBounds.Of(fitted, fitted));
        return search.Best();
    }

    private readonly record struct Setting(double Base, double Gain, double Onset, double Badness);

    private sealed class Search(FuelSystem system, OperatingPoint[] points, RisingRateBounds bounds)
    {
        // Places beside one are looked at again from the next, and the second start often ends where the first did.
        private readonly Dictionary<(double Base, double Onset), Setting> _best = [];

        private readonly double _minimumBase = bounds.MinimumBase.Pascals;
        private readonly double _maximumBase = bounds.MaximumBase.Pascals;

        // An onset over every boost is none: the unit would never act.
        private readonly double _maximumOnset = Math.Min(
            bounds.MaximumOnset.Pascals, Math.Max(0, points.Max(point => point.Boost.Pascals)));

        public RisingRateFit Best()
        {
            (double Base, double Onset)[] grid =
            [
                .. from at in Steps(_minimumBase, _maximumBase)
                   from onset in Steps(0, _maximumOnset)
                   select (at, onset),
            ];
            Setting[] starts = [.. grid.Select(place => WithBestGain(place.Base, place.Onset)).OrderBy(setting => setting.Badness).Take(Starts)];
            Setting best = starts.Select(Downhill).MinBy(setting => setting.Badness);
            FuelSystem with = With(best);
            OperatingResult[] results = [.. points.Select(with.Solve)];
            double deviation = Deviation(results);
            return new(
                with,
                (RisingRate)with.Regulator,
                [.. results.Select(result => new FittedPoint(result, MixtureSolver.RailFor(with.Parts, result.SolvedDemand, result.Mixture.TargetLambda)))],
                deviation,
                Obstacle(results));
        }

        // What is not known is no mixture within its target, whatever the other checks say.
        private static Statement? Obstacle(OperatingResult[] results) =>
            results.SelectMany(result => result.Margins).Where(margin => IsOther(margin) && margin.Outcome != Outcome.Holds)
                .OrderBy(margin => margin, Urgency.Order).FirstOrDefault() is { } broken
                ? Statement.Of("fit.obstacle", $"{broken}")
            : results.FirstOrDefault(result => result.Mixture.Deviation is null) is { } unknown
                ? Statement.Of("fit.mixture-unknown", $"{unknown.Mixture.Text} at {unknown.Point}")
                : null;

        private static IEnumerable<double> Steps(double from, double to) => from < to
            ? Enumerable.Range(0, GridSteps).Select(step => from + ((to - from) * step / (GridSteps - 1)))
            : [from];

        private Setting Downhill(Setting start)
        {
            Setting best = start;
            double stepBase = (_maximumBase - _minimumBase) / (GridSteps - 1);
            double stepOnset = _maximumOnset / (GridSteps - 1);
            for (int halving = 0; halving < Halvings; halving++)
            {
                bool better = true;
                while (better)
                {
                    better = false;
                    foreach ((double across, double up) in Around(halving, stepBase > 0))
                    {
                        double at = Math.Clamp(best.Base + (across * stepBase), _minimumBase, _maximumBase);
                        double onset = Math.Clamp(best.Onset + (up * stepOnset), 0, _maximumOnset);
                        if ((at, onset) != (best.Base, best.Onset) && WithBestGain(at, onset) is var next && next.Badness < best.Badness * (1 - 1e-9))
                        {
                            (best, better) = (next, true);
                        }
                    }
                }

                (stepBase, stepOnset) = (stepBase / 2, stepOnset / 2);
            }

            return best;
        }

        // With more gain the largest deviation falls, and rises again once a point is rich; past some gain another check breaks.
        /// <summary>Directions of base and onset in units of their steps; where the base stays, of the onset alone.</summary>
        private static IEnumerable<(double Base, double Onset)> Around(int halving, bool isFree) => isFree
            ? Enumerable.Range(0, Directions).Select(way => Math.SinCos((halving * Turn) + (way * 2 * Math.PI / Directions))).Select(way => (way.Cos, way.Sin))
            : [(0, 1), (0, -1)];

        private Setting WithBestGain(double at, double onset)
        {
            if (!_best.TryGetValue((at, onset), out Setting best))
            {
                best = BestGainAt(at, onset);
                _best.Add((at, onset), best);
            }

            return best;
        }

        private Setting BestGainAt(double at, double onset)
        {
            double low = RisingRate.MinimumGain;
            double high = bounds.MaximumGain;
            Setting left = At(at, high - (Golden * (high - low)), onset);
            Setting right = At(at, low + (Golden * (high - low)), onset);
            while (high - low > GainAccuracy * bounds.MaximumGain)
            {
                if (left.Badness <= right.Badness)
                {
                    (high, right) = (right.Gain, left);
                    left = At(at, high - (Golden * (high - low)), onset);
                }
                else
                {
                    (low, left) = (left.Gain, right);
                    right = At(at, low + (Golden * (high - low)), onset);
                }
            }

            Setting[] ends = [left, right, At(at, RisingRate.MinimumGain, onset), At(at, bounds.MaximumGain, onset)];
            return ends.MinBy(setting => setting.Badness);
        }

        private Setting At(double at, double gain, double onset)
        {
            FuelSystem with = With(new(at, gain, onset, 0));
            OperatingResult[] results = [.. points.Select(with.Solve)];
            double broken = 0;
            foreach (Margin margin in results.SelectMany(result => result.Margins).Where(IsOther))
            {
                broken += margin.Outcome switch
                {
                    Outcome.Holds => 0,
                    Outcome.Fails => Math.Min(1, -(margin.Share ?? -1)),
                    _ => 1,
                };
            }

            double deviation = Math.Min(Broken / 2, Deviation(results));
            return new(at, gain, onset, broken > 0 ? Broken + broken + (deviation / Broken) : deviation);
        }

        private FuelSystem With(in Setting setting) => system.With(RisingRate.From(
            Pressure.FromPascals(setting.Base),
            Math.Clamp(setting.Gain, RisingRate.MinimumGain, RisingRate.MaximumGain),
            Pressure.FromPascals(setting.Onset),
            bounds.Ceiling,
            system.Regulator.MinimumReturnFlow));

        private static double Deviation(OperatingResult[] results)
        {
            double largest = 0;
            foreach (OperatingResult result in results)
            {
                double share = result.Mixture.Lambda is { } lambda && lambda > 0 ? Math.Abs((lambda / result.Mixture.TargetLambda) - 1) : double.PositiveInfinity;
                largest = Math.Max(largest, share);
            }

            return largest;
        }

        private static bool IsOther(Margin margin) => margin.Part != Part.Mixture && margin.Part != Part.RichMixture;
    }
}
