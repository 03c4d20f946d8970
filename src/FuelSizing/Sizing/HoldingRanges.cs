namespace FuelSizing.Sizing;

/// <summary>Finds every stretch of a figure over which all of several margins hold.</summary>
/// <remarks>
/// <para>Each margin is a piecewise smooth function of the figure, and any of them may dip below zero, or all rise above it, between two steps of
/// a scan. So a step is decided only by the margins themselves: three values of one margin, at the ends and in the middle, bound it in
/// between, for the middle's distance from the chord is at least half of what a single kink, wherever it lies, can hide below the lowest of
/// them (of a parabola, four times it). A step that is not decided so is halved, and where halving ends the extreme is searched.</para>
/// <para>Kinks that are known (a regulator's onset, knots of a table) are ends of steps, so that what lies between is smooth.</para>
/// <para>Margins belong to operating points, and one that fails decides a step whatever the others do: the point that decided last is asked first,
/// and others where they may matter.</para>
/// </remarks>
internal sealed class HoldingRanges
{
    /// <summary>Steps of the first scan.</summary>
    public const int Steps = 48;

    // Twice is the bound; a quarter more for margins that bend and have a kink.
    private const double Hidden = 2.5;

    private const int Halvings = 7;

    private const int SearchSteps = 48;

    // For margins that linger at zero all along: what cannot be decided by then is taken as the samples have it.
    private const int MaximumSamples = 20_000;

    private readonly int _points;
    private readonly Func<double, Func<int, double[]>> _margins;
    private readonly List<Place> _places = [];
    private int _taken;

    // The point at which something was last found to fail.
    private int _leading;

    /// <summary>Scans a range.</summary>
    /// <param name="minimum">Start of the range.</param>
    /// <param name="maximum">End of the range.</param>
    /// <param name="knots">Places between them where a margin may have a kink or a jump.</param>
    /// <param name="points">At how many operating points a figure is judged, at least one.</param>
    /// <param name="margins">Every margin at a figure and one of the points; negative is what fails, none is not a number.</param>
    public HoldingRanges(double minimum, double maximum, IEnumerable<double> knots, int points, Func<double, Func<int, double[]>> margins)
    {
        (_points, _margins) = (points, margins);
        double[] ends =
        [
            .. Enumerable.Range(0, Steps + 1)
                .Select(step => step == Steps ? maximum : minimum + ((maximum - minimum) * step / Steps))
                .Concat(knots.Where(knot => knot > minimum && knot < maximum))
                .Distinct()
                .Order(),
        ];
        Sample from = At(ends[0]);
        _places.Add(PlaceOf(from));
        foreach (double end in ends.Skip(1))
        {
            Sample to = At(end);
            Between(from, to, Halvings);
            _places.Add(PlaceOf(to));
            from = to;
        }
    }

    /// <summary>What was sampled, rising: between two neighbours that both hold, all does; between two that both fail, nothing.</summary>
    public IReadOnlyList<Place> Places => _places;

    private Sample At(double figure)
    {
        _taken++;
        return new(figure, new double[]?[_points], _margins(figure));
    }

    private Place PlaceOf(in Sample sample)
    {
        bool holds = Holds(sample);
        return new(sample.Figure, holds, sample.AtMost, sample.IsWhole);
    }

    private bool Holds(in Sample sample)
    {
        for (int place = 0; place < _points; place++)
        {
            int point = (_leading + place) % _points;
            if (sample.MinimumAt(point) < 0)
            {
                _leading = point;
                return false;
            }
        }

        return true;
    }

    private void Between(in Sample from, in Sample to, int halvings)
    {
        Sample middle = At(from.Figure + ((to.Figure - from.Figure) / 2));
        if (IsDecided(from, middle, to) || _taken > MaximumSamples)
        {
            _places.Add(PlaceOf(middle));
        }
        else if (halvings > 0)
        {
            Between(from, middle, halvings - 1);
            _places.Add(PlaceOf(middle));
            Between(middle, to, halvings - 1);
        }
        else
        {
            if (Holds(from) == Holds(middle) && Holds(middle) == Holds(to) && Extreme(from, to) is { } extreme)
            {
                _places.AddRange(extreme.Figure < middle.Figure ? [extreme, PlaceOf(middle)] : [PlaceOf(middle), extreme]);
                return;
            }

            _places.Add(PlaceOf(middle));
        }
    }

    private bool IsDecided(in Sample from, in Sample middle, in Sample to)
    {
        bool holds = true;
        bool straight = true;
        for (int place = 0; place < _points; place++)
        {
            int point = (_leading + place) % _points;
            (double[] first, double[] between, double[] last) = (from.At(point), middle.At(point), to.At(point));
            for (int check = 0; check < between.Length; check++)
            {
                (double a, double b, double c) = (first[check], between[check], last[check]);
                double off = Math.Abs(b - ((a + c) / 2));
                if (Math.Max(a, Math.Max(b, c)) + (Hidden * off) < 0)
                {
                    _leading = point;
                    return true;
                }

                if (Math.Min(a, Math.Min(b, c)) - (Hidden * off) < 0)
                {
                    holds = false;

                    // As good as straight, so that it passes zero once at most: where all hold at one end, what holds reaches that end.
                    straight &= 10 * off < Math.Abs(c - a);
                }
            }
        }

        return holds || (straight && Holds(from) != Holds(to));
    }

    /// <summary>The place between three that all hold, or all fail, where it is otherwise; none if there is none.</summary>
    private Place? Extreme(in Sample from, in Sample to)
    {
        bool holds = Holds(from);
        double golden = (Math.Sqrt(5) - 1) / 2;
        (double low, double high) = (from.Figure, to.Figure);
        Sample left = At(high - (golden * (high - low)));
        Sample right = At(low + (golden * (high - low)));
        for (int step = 0; step < SearchSteps; step++)
        {
            if (Holds(left) != holds)
            {
                return PlaceOf(left);
            }

            if (Holds(right) != holds)
            {
                return PlaceOf(right);
            }

            if (holds ? left.Least <= right.Least : left.Least >= right.Least)
            {
                (high, right) = (right.Figure, left);
                left = At(high - (golden * (high - low)));
            }
            else
            {
                (low, left) = (left.Figure, right);
                right = At(low + (golden * (high - low)));
            }
        }

        return null;
    }

    /// <summary>A figure, and whether all margins hold there.</summary>
    /// <param name="Figure">The figure.</param>
    /// <param name="Holds">True if none is negative.</param>
    /// <param name="AtMost">What the least of them is at most, by the points that were asked.</param>
    /// <param name="IsWhole">True if all were asked, so that it is the least.</param>
    public readonly record struct Place(double Figure, bool Holds, double AtMost, bool IsWhole);

    // Margins of a point are asked for once, where they matter. Not kept: thousands of points have as many margins at each figure.
    private readonly record struct Sample(double Figure, double[]?[] Margins, Func<int, double[]> Ask)
    {
        public double Least
        {
            get
            {
                double least = double.PositiveInfinity;
                for (int point = 0; point < Margins.Length; point++)
                {
                    least = Math.Min(least, MinimumAt(point));
                }

                return least;
            }
        }

        public bool IsWhole => !Array.Exists(Margins, margins => margins is null);

        public double AtMost => Margins.Min(margins => margins?.Min() ?? double.PositiveInfinity);

        public double[] At(int point) => Margins[point] ??= Ask(point);

        public double MinimumAt(int point) => At(point).Min();
    }
}
