namespace FuelSizing.Sizing;

/// <summary>Finds every stretch of a figure over which all of several margins hold.</summary>
/// <remarks>
/// <para>Each margin is a piecewise smooth function of the figure, and any of them may dip below zero, or all rise above it, between two steps of
/// a scan. So a step is decided only by the margins themselves: three values of one margin, at the ends and in the middle, bound it in
/// between, for the middle's distance from the chord is at least half of what a single kink, wherever it lies, can hide below the lowest of
/// them (of a parabola, four times it). A step that is not decided so is halved, and where halving ends the extreme is searched.</para>
/// <para>Kinks that are known (a regulator's onset, knots of a table) are ends of steps, so that what lies between is smooth.</para>
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

    private readonly Func<double, double[]> _margins;
    private readonly List<Place> _places = [];
    private int _taken;

    /// <summary>Scans a range.</summary>
    /// <param name="minimum">Start of the range.</param>
    /// <param name="maximum">End of the range.</param>
    /// <param name="knots">Places between them where a margin may have a kink or a jump.</param>
    /// <param name="margins">Every margin at a figure; negative is what fails, none is not a number.</param>
    public HoldingRanges(double minimum, double maximum, IEnumerable<double> knots, Func<double, double[]> margins)
    {
        _margins = margins;
        double[] ends =
        [
            .. Enumerable.Range(0, Steps + 1)
                .Select(step => step == Steps ? maximum : minimum + ((maximum - minimum) * step / Steps))
                .Concat(knots.Where(knot => knot > minimum && knot < maximum))
                .Distinct()
                .Order(),
        ];
        Sample from = At(ends[0]);
        _places.Add(from.Place);
        foreach (double end in ends.Skip(1))
        {
            Sample to = At(end);
            Between(from, to, Halvings);
            _places.Add(to.Place);
            from = to;
        }
    }

    /// <summary>What was sampled, rising: between two neighbours that both hold, all does; between two that both fail, nothing.</summary>
    public IReadOnlyList<Place> Places => _places;

    private Sample At(double figure)
    {
        _taken++;
        double[] margins = _margins(figure);
        return new(figure, margins, margins.Min());
    }

    private Place PlaceAt(double figure) => At(figure).Place;

    private void Between(in Sample from, in Sample to, int halvings)
    {
        Sample middle = At(from.Figure + ((to.Figure - from.Figure) / 2));
        if (IsDecided(from, middle, to) || _taken > MaximumSamples)
        {
            _places.Add(middle.Place);
        }
        else if (halvings > 0)
        {
            Between(from, middle, halvings - 1);
            _places.Add(middle.Place);
            Between(middle, to, halvings - 1);
        }
        else
        {
            if (from.Holds == middle.Holds && middle.Holds == to.Holds && Extreme(from, to) is { } extreme)
            {
                _places.AddRange(extreme.Figure < middle.Figure ? [extreme, middle.Place] : [middle.Place, extreme]);
                return;
            }

            _places.Add(middle.Place);
        }
    }

    private static bool IsDecided(in Sample from, in Sample middle, in Sample to)
    {
        bool holds = true;
        bool crosses = from.Holds != to.Holds;
        for (int check = 0; check < middle.Margins.Length; check++)
        {
            (double a, double b, double c) = (from.Margins[check], middle.Margins[check], to.Margins[check]);
            double off = Math.Abs(b - ((a + c) / 2));
            if (Math.Max(a, Math.Max(b, c)) + (Hidden * off) < 0)
            {
                return true;
            }

            if (Math.Min(a, Math.Min(b, c)) - (Hidden * off) < 0)
            {
                holds = false;

                // As good as straight, so that it passes zero once at most: where all hold at one end, what holds reaches that end.
                crosses &= 10 * off < Math.Abs(c - a);
            }
        }

        return holds || crosses;
    }

    /// <summary>The place between three that all hold, or all fail, where it is otherwise; none if there is none.</summary>
    private Place? Extreme(in Sample from, in Sample to)
    {
        bool holds = from.Holds;
        double golden = (Math.Sqrt(5) - 1) / 2;
        (double low, double high) = (from.Figure, to.Figure);
        Place left = PlaceAt(high - (golden * (high - low)));
        Place right = PlaceAt(low + (golden * (high - low)));
        for (int step = 0; step < SearchSteps; step++)
        {
            if (left.Holds != holds)
            {
                return left;
            }

            if (right.Holds != holds)
            {
                return right;
            }

            if (holds ? left.Least <= right.Least : left.Least >= right.Least)
            {
                (high, right) = (right.Figure, left);
                left = PlaceAt(high - (golden * (high - low)));
            }
            else
            {
                (low, left) = (left.Figure, right);
                right = PlaceAt(low + (golden * (high - low)));
            }
        }

        return null;
    }

    /// <summary>A figure, and the least of the margins there.</summary>
    /// <param name="Figure">The figure.</param>
    /// <param name="Least">The least of them.</param>
    public readonly record struct Place(double Figure, double Least)
    {
        /// <summary>True if none is negative.</summary>
        public bool Holds => Least >= 0;
    }

    // Not kept: thousands of points have as many margins at each figure.
    private readonly record struct Sample(double Figure, double[] Margins, double Least)
    {
        public bool Holds => Least >= 0;

        public Place Place => new(Figure, Least);
    }
}
