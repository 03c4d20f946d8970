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
/// coordinates. Speed is a coordinate like the others, for the worst speed moves with the air.
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
    private readonly Dictionary<(double Volts, double Ethanol), FuelSystem> _systems = [];
    private readonly Dictionary<Place, OperatingResult> _solved = [];

    public CornerSearch(FuelSystem system, OperatingRanges ranges, BoostLine? line, double[] speeds, double[] boosts, CancellationToken cancellation)
    {
        (_system, _ranges, _line, _speeds, _boosts, _cancellation) = (system, ranges, line, speeds, boosts, cancellation);
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
        List<Place>[] grids = [.. Corners().Select(corner => GridAt(corner).ToList())];
        WorstPlace[] checks =
        [
            .. Enumerable.Range(0, _system.Applicable.Length)
                .Select(check => Worst(
                    grids, Comparer<OperatingResult>.Create((one, other) => Urgency.Order.Compare(one.Margins[check], other.Margins[check])), check))
                .OrderBy(place => place.Margin!, Urgency.Order),
        ];
        Comparer<OperatingResult> leaner = Comparer<OperatingResult>.Create((one, other) => Lean(other).CompareTo(Lean(one)));
        WorstPlace leanest = Worst(grids, leaner, null);
        return new(
            _system,
            _ranges,
            double.IsNegativeInfinity(Lean(leanest.Result)) ? null : leanest,
            checks,
            _solved.Values.Count(result => result.States.Any(state => state.Mixture.MaximumLambda is null)),
            _solved.Count);
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

    // What is not known comes last: it is counted apart.
    private static double Lean(OperatingResult result) => result.States.Max(state => state.Mixture.MaximumLambda ?? double.NegativeInfinity);

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
        (FuelSystem system, Conditions conditions) = (SystemAt(first), ConditionsAt(first));
        double[] speeds = [.. _speeds.Concat(_line is { } line
            ? LineKnots.Of(system, line, conditions, _speeds[0], _speeds[^1])
            : SpeedKnots.Of(system).Where(speed => speed > _speeds[0] && speed < _speeds[^1])).Distinct().Order()];
        double[] boosts = [.. _boosts.Concat(BoostKnots.Of(system, conditions.Atmosphere.Pascals, _boosts[0], _boosts[^1])).Distinct().Order()];
        return from boost in boosts
               from speed in speeds
               select new Place(speed, boost, inputs);
    }

    private WorstPlace Worst(List<Place>[] grids, Comparer<OperatingResult> order, int? check)
    {
        Comparer<Place> byResult = Comparer<Place>.Create((one, other) => order.Compare(At(one), At(other)));
        Place worst = grids.SelectMany(grid => grid.Where((place, at) => IsHump(grid, at, byResult))).Order(byResult).Take(Starts).ToArray()
            .Select(start => Downhill(start, order)).Min(byResult);
        return new(At(worst), check, [.. Enumerable.Range(0, _axes.Length).Where(axis => _axes[axis].Varies).Select(axis => Input(axis, worst, check))]);
    }

    /// <summary>True where neither neighbour of a grid, speed by speed, is worse.</summary>
    private static bool IsHump(List<Place> grid, int at, Comparer<Place> order) =>
        (at == 0 || order.Compare(grid[at - 1], grid[at]) > 0) && (at == grid.Count - 1 || order.Compare(grid[at + 1], grid[at]) >= 0);

    private Place Downhill(Place start, Comparer<OperatingResult> order)
    {
        Place best = start;
        double[] steps =
        [
            Half(_speeds),
            Half(_boosts),
            .. _axes.Select(axis => (axis.High - axis.Low) / 2),
        ];
        int halvings = Halvings;
        for (int step = 0; step < MaximumSteps && halvings > 0; step++)
        {
            Place next = best;
            foreach (Place beside in Beside(best, steps))
            {
                next = order.Compare(At(beside), At(next)) < 0 ? beside : next;
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

    private RangeInput Input(int axis, Place worst, int? check)
    {
        Axis range = _axes[axis];
        double value = worst[axis];
        (Statement name, IQuantity quantity) = range.Written(value);
        bool hasEffect = new[] { range.Low, range.Middle, range.High }.Any(other => !IsSame(At(worst), At(worst.Moved(axis, other)), check));
        return new(
            name,
            quantity,
            !hasEffect ? RangeEnd.NoEffect
            : value.Equals(range.Low) ? RangeEnd.Lowest
            : value.Equals(range.High) ? RangeEnd.Highest
            : RangeEnd.Inside);
    }

    private static bool IsSame(OperatingResult one, OperatingResult other, int? check) => check is { } by
        ? one.Margins[by].Outcome == other.Margins[by].Outcome && IsNear(one.Margins[by].Share, other.Margins[by].Share)
        : IsNear(Lean(one), Lean(other));

    private static bool IsNear(double? one, double? other) => (one, other) switch
    {
        (null, null) => true,
        ({ } a, { } b) => a.Equals(b) || Math.Abs(a - b) <= Same * Math.Max(1, Math.Abs(a)),
        _ => false,
    };

    private OperatingResult At(Place place)
    {
        if (!_solved.TryGetValue(place, out OperatingResult? result))
        {
            _cancellation.ThrowIfCancellationRequested();
            FuelSystem system = SystemAt(place);
            Conditions conditions = ConditionsAt(place);
            RotationalSpeed speed = RotationalSpeed.FromRevolutionsPerSecond(place.Speed);
            Pressure boost = _line is { } line ? line.At(speed, system.Demand, conditions.Atmosphere) : Pressure.FromPascals(place.Boost);
            result = system.Solve(OperatingPoint.At(speed, boost, conditions));
            _solved.Add(place, result);
        }

        return result;
    }

    private Conditions ConditionsAt(Place place) => _ranges.Conditions.With(
        _ranges.Conditions.Atmosphere.With(place.AmbientPressure, place.AmbientTemperature),
        ElectricPotential.FromVolts(place.SupplyVoltage),
        Temperature.FromKelvins(place.FuelTemperature));

    /// <summary>The system with the fuel of a place. Each voltage has pumps of its own, for pumps keep what they run like at one voltage only.</summary>
    private FuelSystem SystemAt(Place place)
    {
        (double, double) key = (place.SupplyVoltage, place.Ethanol);
        if (!_systems.TryGetValue(key, out FuelSystem? system))
        {
            system = _system.With(_system.Pump with { });
            system = _blend is { } blend ? system.With(system.Demand.With(blend.At(place.Ethanol))) : system;
            _systems.Add(key, system);
        }

        return system;
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
