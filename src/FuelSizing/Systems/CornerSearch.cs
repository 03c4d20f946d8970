using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Looks through ranges of the conditions for where lambda is leanest and each margin tightest.</summary>
/// <remarks>
/// A place has a coordinate for speed (rev/s), boost (Pa) and each input that varies (SI). Every corner of the inputs, and their middle, is
/// solved over a grid of speed and boost with the knots that are known; from the worst humps of these grids a compass search goes on in all
/// coordinates. Speed is a coordinate like the others, for the worst speed moves with the air. Places are judged in numbers; those that are
/// answered with are solved in full.
/// </remarks>
internal sealed class CornerSearch
{
    // The worst place of the grids need not lead to the worst one: two humps along the speed may be almost as high, and two corners.
    private const int Starts = 6;

    // First steps are half a range (of speed and boost half a step of the grid); the last ones a 16,000th of that.
    private const int Halvings = 14;

    private const int MaximumSteps = 400;

    // Two margins as near as this are one: the input has no effect.
    private const double Same = 1e-12;

    private readonly FuelSystem _system;
    private readonly OperatingRanges _ranges;
    private readonly BoostLine? _line;
    private readonly double[] _speeds;
    private readonly double[] _boosts;
    private readonly CancellationToken _cancellation;
    private readonly EthanolBlend? _blend;
    private readonly Axis[] _axes;
    private readonly int _checks;
    private readonly Dictionary<(double Volts, double Ethanol), (FuelSystem System, PointJudge Judge)> _systems = [];
    private readonly Dictionary<Place, int> _numbers = [];
    private readonly List<Place> _places = [];

    // Of each place how each check came out, then how lean the mixture can be, and one if that is known.
    private readonly List<double> _figures = [];
    private readonly Dictionary<int, OperatingResult> _shown = [];
    private (Place Inputs, Conditions Conditions)? _lastConditions;

    public CornerSearch(FuelSystem system, OperatingRanges ranges, BoostLine? line, double[] speeds, double[] boosts, CancellationToken cancellation)
    {
        (_system, _ranges, _line, _speeds, _boosts, _cancellation) = (system, ranges, line, speeds, boosts, cancellation);
        _checks = system.Applicable.Length;
        _blend = ranges.Petrol is { } petrol ? new EthanolBlend(system.Demand.Consumption.Fuel, petrol, nameof(ranges)) : null;
        Conditions conditions = ranges.Conditions;
        _axes =
        [
            Axis.Of(
                ranges.AmbientPressure is { } pressure ? (pressure.Lowest.Pascals, pressure.Highest.Pascals) : null,
                conditions.Atmosphere.Pascals,
                AmbientPressure),
            Axis.Of(
                ranges.AmbientTemperature is { } air ? (air.Lowest.Kelvins, air.Highest.Kelvins) : null,
                conditions.Atmosphere.Kelvins,
                AmbientTemperature),
            Axis.Of(
                ranges.SupplyVoltage is { } supply ? (supply.Lowest.Volts, supply.Highest.Volts) : null,
                conditions.SupplyVolts,
                SupplyVoltage),
            Axis.Of(
                ranges.FuelTemperature is { } fuel ? (fuel.Lowest.Kelvins, fuel.Highest.Kelvins) : null,
                conditions.FuelKelvins,
                FuelTemperature),
            Axis.Of(
                ranges.EthanolContent is { } ethanol ? (ethanol.Lowest.DecimalFractions, ethanol.Highest.DecimalFractions) : null,
                0,
                EthanolContent),
        ];
    }

    public WorstCornerResult Find()
    {
        int[][] grids = [.. Corners().Select(corner => GridAt(corner).Select(At).ToArray())];
        WorstPlace[] checks =
        [
            .. Enumerable.Range(0, _checks)
                .Select(check => Shown(Worst(grids, (one, other) => JudgedFigure.Compare(Figure(check, one), Figure(check, other))), check))
                .OrderBy(place => place.Margin!, Urgency.Order),
        ];
        int leanest = Worst(grids, (one, other) => Lean(other).CompareTo(Lean(one)));
        WorstPlace shown = Shown(leanest, null);
        return new(
            _system,
            _ranges,
            double.IsNegativeInfinity(Lean(leanest)) ? null : shown,
            checks,
            Enumerable.Range(0, _places.Count).Count(place => Figure(_checks + 1, place) == 0),
            _places.Count);
    }

    private static (Statement, IQuantity) AmbientPressure(double pascals)
    {
        Pressure value = Pressure.FromPascals(pascals);
        return (Statement.Of("range.ambient-pressure", $"ambient pressure {value}"), value);
    }

    private static (Statement, IQuantity) AmbientTemperature(double kelvins)
    {
        Temperature value = Temperature.FromKelvins(kelvins);
        return (Statement.Of("range.ambient-temperature", $"ambient temperature {value}"), value);
    }

    private static (Statement, IQuantity) SupplyVoltage(double volts)
    {
        ElectricPotential value = ElectricPotential.FromVolts(volts);
        return (Statement.Of("range.supply-voltage", $"supply voltage {value}"), value);
    }

    private static (Statement, IQuantity) FuelTemperature(double kelvins)
    {
        Temperature value = Temperature.FromKelvins(kelvins);
        return (Statement.Of("range.fuel-temperature", $"fuel temperature {value}"), value);
    }

    private static (Statement, IQuantity) EthanolContent(double share)
    {
        Ratio value = Ratio.FromDecimalFractions(share);
        return (Statement.Of("range.ethanol-content", $"ethanol content {value:share}"), value);
    }

    private double Figure(int column, int place) => _figures[(place * (_checks + 2)) + column];

    // What is not known comes last: it is counted apart.
    private double Lean(int place) => Figure(_checks, place);

    /// <summary>Every corner of the inputs, and their middle.</summary>
    private IEnumerable<double[]> Corners()
    {
        int[] varying = [.. Enumerable.Range(0, _axes.Length).Where(axis => _axes[axis].Varies)];
        for (int corner = 0; corner < 1 << varying.Length; corner++)
        {
            double[] at = [.. _axes.Select(axis => axis.Low)];
            for (int input = 0; input < varying.Length; input++)
            {
                if ((corner >> input & 1) == 1)
                {
                    at[varying[input]] = _axes[varying[input]].High;
                }
            }

            yield return at;
        }

        if (varying.Length > 0)
        {
            yield return [.. _axes.Select(axis => axis.Middle)];
        }
    }

    private IEnumerable<Place> GridAt(double[] inputs)
    {
        Place first = new(_speeds[0], _boosts[0], inputs);
        (FuelSystem system, Conditions conditions) = (SystemAt(first).System, ConditionsAt(first));
        double[] speeds = [.. _speeds.Concat(_line is { } line
            ? LineKnots.Of(system, line, conditions, _speeds[0], _speeds[^1])
            : SpeedKnots.Of(system).Where(speed => speed > _speeds[0] && speed < _speeds[^1])).Distinct().Order()];
        double[] boosts = [.. _boosts.Concat(BoostKnots.Of(system, conditions.Atmosphere.Pascals, _boosts[0], _boosts[^1])).Distinct().Order()];
        return from boost in boosts
               from speed in speeds
               select new Place(speed, boost, inputs);
    }

    /// <summary>The worst place by an order.</summary>
    private int Worst(int[][] grids, Comparison<int> order)
    {
        Comparer<int> byFigure = Comparer<int>.Create(order);
        return grids.SelectMany(grid => grid.Where((_, at) => IsHump(grid, at, order))).Order(byFigure).Take(Starts).ToArray()
            .Select(start => Downhill(start, order)).Min(byFigure);
    }

    /// <summary>A place as it is answered with, solved in full.</summary>
    private WorstPlace Shown(int worst, int? check)
    {
        if (!_shown.TryGetValue(worst, out OperatingResult? result))
        {
            (FuelSystem system, OperatingPoint point, _) = Stated(_places[worst]);
            result = system.Solve(point);
            _shown.Add(worst, result);
        }

        return new(result, check, [.. Enumerable.Range(0, _axes.Length).Where(axis => _axes[axis].Varies).Select(axis => Input(axis, worst, check))]);
    }

    /// <summary>True where neither neighbour of a grid, speed by speed, is worse.</summary>
    private static bool IsHump(int[] grid, int at, Comparison<int> order) =>
        (at == 0 || order(grid[at - 1], grid[at]) > 0) && (at == grid.Length - 1 || order(grid[at + 1], grid[at]) >= 0);

    private int Downhill(int start, Comparison<int> order)
    {
        int best = start;
        double[] steps =
        [
            Half(_speeds),
            Half(_boosts),
            .. _axes.Select(axis => (axis.High - axis.Low) / 2),
        ];
        int halvings = Halvings;
        for (int step = 0; step < MaximumSteps && halvings > 0; step++)
        {
            int next = best;
            foreach (Place place in Beside(_places[best], steps))
            {
                int beside = At(place);
                next = order(beside, next) < 0 ? beside : next;
            }

            if (next == best)
            {
                steps = Array.ConvertAll(steps, each => each / 2);
                halvings--;
            }

            best = next;
        }

        return best;

        static double Half(double[] lines) => lines.Length > 1 ? (lines[^1] - lines[0]) / (lines.Length - 1) / 2 : 0;
    }

    private IEnumerable<Place> Beside(Place place, double[] steps)
    {
        for (int coordinate = 0; coordinate < steps.Length; coordinate++)
        {
            // A coordinate without width has nothing beside it.
            foreach (int way in (int[])[-1, 1])
            {
                double step = way * steps[coordinate];
                Place beside = coordinate switch
                {
                    0 => place with { Speed = Math.Clamp(place.Speed + step, _speeds[0], _speeds[^1]) },
                    1 => place with { Boost = Math.Clamp(place.Boost + step, _boosts[0], _boosts[^1]) },
                    _ => place.Moved(coordinate - 2, Math.Clamp(place[coordinate - 2] + step, _axes[coordinate - 2].Low, _axes[coordinate - 2].High)),
                };
                if (beside != place)
                {
                    yield return beside;
                }
            }
        }
    }

    private RangeInput Input(int axis, int worst, int? check)
    {
        Axis range = _axes[axis];
        Place place = _places[worst];
        double value = place[axis];
        (Statement name, IQuantity quantity) = range.Written(value);
        bool hasEffect = new[] { range.Low, range.Middle, range.High }.Any(other => !IsSame(worst, At(place.Moved(axis, other)), check));
        return new(
            name,
            quantity,
            !hasEffect ? RangeEnd.NoEffect
            : value.Equals(range.Low) ? RangeEnd.Lowest
            : value.Equals(range.High) ? RangeEnd.Highest
            : RangeEnd.Inside);
    }

    private bool IsSame(int one, int other, int? check) => check is { } by
        ? JudgedFigure.IsOneOutcome(Figure(by, one), Figure(by, other))
            && IsNear(JudgedFigure.Share(Figure(by, one)), JudgedFigure.Share(Figure(by, other)))
        : IsNear(Lean(one), Lean(other));

    private static bool IsNear(double? one, double? other) => (one, other) switch
    {
        (null, null) => true,
        ({ } a, { } b) => a.Equals(b) || Math.Abs(a - b) <= Same * Math.Max(1, Math.Abs(a)),
        _ => false,
    };

    /// <summary>The number of a place, judged if it was not yet.</summary>
    private int At(Place place)
    {
        if (_numbers.TryGetValue(place, out int number))
        {
            return number;
        }

        _cancellation.ThrowIfCancellationRequested();
        (_, OperatingPoint point, PointJudge judge) = Stated(place);
        judge.Judge(point.Place, point.Boost);
        for (int check = 0; check < _checks; check++)
        {
            _figures.Add(judge.Figure(check));
        }

        _figures.Add(judge.Leanest);
        _figures.Add(judge.IsLeanestKnown ? 1 : 0);
        _places.Add(place);
        _numbers.Add(place, _places.Count - 1);
        return _places.Count - 1;
    }

    private (FuelSystem System, OperatingPoint Point, PointJudge Judge) Stated(Place place)
    {
        (FuelSystem system, PointJudge judge) = SystemAt(place);
        Conditions conditions = ConditionsAt(place);
        RotationalSpeed speed = RotationalSpeed.FromRevolutionsPerSecond(place.Speed);
        Pressure boost = _line is { } line ? line.At(speed, system.Demand, conditions.Atmosphere) : Pressure.FromPascals(place.Boost);
        return (system, OperatingPoint.At(speed, boost, conditions), judge);
    }

    // A grid has all its places at the same.
    private Conditions ConditionsAt(Place place)
    {
        Place inputs = place with { Speed = 0, Boost = 0 };
        if (_lastConditions is not { } last || last.Inputs != inputs)
        {
            last = (inputs, _ranges.Conditions.With(
                _ranges.Conditions.Atmosphere.With(place.AmbientPressure, place.AmbientTemperature),
                ElectricPotential.FromVolts(place.SupplyVoltage),
                Temperature.FromKelvins(place.FuelTemperature)));
            _lastConditions = last;
        }

        return last.Conditions;
    }

    /// <summary>The system with the fuel of a place. Each voltage has pumps of its own, for pumps keep what they run like at one voltage only.</summary>
    private (FuelSystem System, PointJudge Judge) SystemAt(Place place)
    {
        (double, double) key = (place.SupplyVoltage, place.Ethanol);
        if (!_systems.TryGetValue(key, out (FuelSystem System, PointJudge Judge) known))
        {
            FuelSystem system = _system.With(_system.Pump with { });
            system = _blend is { } blend ? system.With(system.Demand.With(blend.At(place.Ethanol))) : system;
            known = (system, new(system.Applicable, system.Parts, withLambda: true));
            _systems.Add(key, known);
        }

        return known;
    }

    /// <summary>An input: its range, without width where it does not vary, and how it is written.</summary>
    private sealed record Axis(double Low, double High, Func<double, (Statement Name, IQuantity Value)> Written)
    {
        public bool Varies => Low < High;

        public double Middle => (Low + High) / 2;

        public static Axis Of((double Low, double High)? range, double fixedAt, Func<double, (Statement Name, IQuantity Value)> written) =>
            range is { } given ? new(given.Low, given.High, written) : new(fixedAt, fixedAt, written);
    }

    /// <summary>Speed, rev/s, boost, Pa, and the inputs in the order of the axes, SI.</summary>
    private readonly record struct Place(
        double Speed, double Boost, double AmbientPressure, double AmbientTemperature, double SupplyVoltage, double FuelTemperature, double Ethanol)
    {
        public Place(double speed, double boost, double[] inputs)
            : this(speed, boost, inputs[0], inputs[1], inputs[2], inputs[3], inputs[4])
        {
        }

        public double this[int axis] => axis switch
        {
            0 => AmbientPressure,
            1 => AmbientTemperature,
            2 => SupplyVoltage,
            3 => FuelTemperature,
            _ => Ethanol,
        };

        public Place Moved(int axis, double value) => axis switch
        {
            0 => this with { AmbientPressure = value },
            1 => this with { AmbientTemperature = value },
            2 => this with { SupplyVoltage = value },
            3 => this with { FuelTemperature = value },
            _ => this with { Ethanol = value },
        };
    }
}
