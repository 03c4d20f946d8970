using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>
/// What a point makes of the pressure that its regulator is set to: how far lambda is off its target, and how badly another check breaks.
/// </summary>
/// <remarks>
/// A point sees of a regulator the pressure that it sets, and nothing else: every base, gain, onset and ceiling meet in one table, straight
/// between pressures that were solved. Where one of two neighbours breaks a check, all between them counts as breaking it.
/// </remarks>
internal sealed class RailResponse
{
    /// <summary>What breaks another check, or is no mixture at all, is worse than any deviation.</summary>
    public const double Broken = 1e3;

    private const int Divisions = 40;

    // Of a division, to which the pressure is found at which a check begins to break.
    private const int Halvings = 26;

    private readonly FuelSystem _system;
    private readonly OperatingPoint _point;
    private readonly List<Response> _responses = [];

    /// <summary>Solves a point over a range of pressures.</summary>
    /// <param name="system">The system; its regulator is exchanged.</param>
    /// <param name="point">The point.</param>
    /// <param name="from">Lowest pressure that can be set, gauge, Pa.</param>
    /// <param name="to">Highest.</param>
    public RailResponse(FuelSystem system, OperatingPoint point, double from, double to)
    {
        (_system, _point) = (system, point);
        for (int place = 0; place <= Divisions && (place == 0 || to > from); place++)
        {
            _responses.Add(At(place == Divisions ? to : from + ((to - from) * place / Divisions)));
        }

        for (int place = _responses.Count - 1; place > 0; place--)
        {
            Divide(place);
        }
    }

    private readonly record struct Response(double Pascals, double Deviation, double Breaks)
    {
        /// <summary>Every other check holds, and lambda is known.</summary>
        public bool Serves => Breaks == 0 && double.IsFinite(Deviation);

        public double Badness => Breaks > 0 || !double.IsFinite(Deviation)
            ? Broken + Breaks + (double.IsFinite(Deviation) ? Math.Min(1, Math.Abs(Deviation) / Broken) : 1)
            : Math.Abs(Deviation);
    }

    /// <summary>The point's boost, Pa.</summary>
    public double Boost => _point.Boost.Pascals;

    /// <summary>How bad a pressure is: lambda's deviation as a share, or over <see cref="Broken"/> where a check breaks.</summary>
    public double Badness(double pascals)
    {
        int over = Over(pascals);
        if (over == _responses.Count)
        {
            return _responses[^1].Badness;
        }

        Response upper = _responses[over];
        if (upper.Pascals == pascals || over == 0)
        {
            return upper.Badness;
        }

        Response lower = _responses[over - 1];
        double share = (pascals - lower.Pascals) / (upper.Pascals - lower.Pascals);
        return lower.Serves && upper.Serves
            ? Math.Abs(lower.Deviation + (share * (upper.Deviation - lower.Deviation)))
            : Math.Max(Broken, lower.Badness + (share * (upper.Badness - lower.Badness)));
    }

    /// <summary>Solves the point at one more pressure; from then on the table gives what was found there.</summary>
    public void Learn(double pascals)
    {
        int over = Over(pascals);
        if (over == _responses.Count || _responses[over].Pascals != pascals)
        {
            _responses.Insert(over, At(pascals));
        }
    }

    private int Over(double pascals)
    {
        (int low, int high) = (0, _responses.Count);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _responses[middle].Pascals < pascals ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Finds the pressure between two neighbours of which one serves and the other does not.</summary>
    private void Divide(int upper)
    {
        for (int halving = 0; halving < Halvings && _responses[upper - 1].Serves != _responses[upper].Serves; halving++)
        {
            Response middle = At((_responses[upper - 1].Pascals + _responses[upper].Pascals) / 2);
            _responses.Insert(upper, middle);
            upper += middle.Serves == _responses[upper - 1].Serves ? 1 : 0;
        }
    }

    private Response At(double pascals)
    {
        // Any base will do: the unit is off by whatever is missing.
        RisingRate unit = RisingRate.From(
            Pressure.FromBars(3), RisingRate.MinimumGain, Pressure.Zero, minimumReturnFlow: _system.Regulator.MinimumReturnFlow).With(_system.Regulator.FlowAtRail);
        OperatingResult result = _system.With(unit.Off(pascals - unit.SetPascals(Boost))).Solve(_point);
        return new(pascals, DeviationOf(result), result.Margins.Where(IsOther).Select(Breaks).DefaultIfEmpty(0).Max());
    }

    /// <summary>How far lambda is off its target, lean or rich, as a share; infinite where it is not known.</summary>
    public static double DeviationOf(OperatingResult result) => result.Mixture.Lambda is { } lambda && lambda > 0 && double.IsFinite(lambda)
        ? (lambda / result.Mixture.TargetLambda) - 1
        : double.PositiveInfinity;

    /// <summary>All but those of the mixture itself.</summary>
    public static bool IsOther(Margin margin) => margin.Part != Part.Mixture && margin.Part != Part.RichMixture;

    private static double Breaks(Margin margin) => margin.Outcome switch
    {
        Outcome.Holds => 0,
        Outcome.Fails => Math.Clamp(-(margin.Share ?? -1), double.Epsilon, Broken),
        _ => 1,
    };
}
