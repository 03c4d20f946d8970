namespace FuelSizing.Interactive;

/// <summary>Chooses which points of a long series are drawn, so that no short excursion is lost.</summary>
internal static class PlotThinning
{
    // Two points a stretch: more would not be told apart on paper.
    public const int Stretches = 300;

    /// <summary>Places to draw: all of a short series; of a long one the lowest and the highest of each stretch, the first and the last, and each gap.</summary>
    public static IReadOnlyList<int> Of(IReadOnlyList<double> values)
    {
        if (values.Count <= 2 * Stretches)
        {
            return [.. Enumerable.Range(0, values.Count)];
        }

        // Both sides of each gap, so that a line ends where it ends.
        int[] edges = [.. Enumerable.Range(1, values.Count - 1).Where(place => double.IsNaN(values[place]) != double.IsNaN(values[place - 1]))];
        bool isTorn = edges.Length > 2 * Stretches;
        SortedSet<int> kept = [0, values.Count - 1, .. isTorn ? [] : edges.SelectMany(place => (int[])[place - 1, place])];
        for (int stretch = 0; stretch < Stretches; stretch++)
        {
            int start = (int)((long)values.Count * stretch / Stretches);
            int end = (int)((long)values.Count * (stretch + 1) / Stretches);
            (int lowest, int highest) = (-1, -1);
            for (int place = start; place < end; place++)
            {
                lowest = values[place] < (lowest < 0 ? double.PositiveInfinity : values[lowest]) ? place : lowest;
                highest = values[place] > (highest < 0 ? double.NegativeInfinity : values[highest]) ? place : highest;
            }

            foreach (int place in (int[])[lowest, highest])
            {
                if (place < 0)
                {
                    continue;
                }

                kept.Add(place);
                int gap = isTorn ? Enumerable.Range(place, end - place).FirstOrDefault(after => double.IsNaN(values[after]), -1) : -1;
                if (gap >= 0)
                {
                    // A series that is mostly gaps stays unjoined.
                    kept.Add(gap);
                }
            }
        }

        return [.. kept];
    }
}
