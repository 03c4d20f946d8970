using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>
/// Puts labels above a plot, each beside the pole that leads up from its line, so that none lies on another label or on
/// another's pole.
/// </summary>
internal static class FlagLayout
{
    /// <summary>Between pole and label, and between two labels.</summary>
    public const double Gap = 4;

    /// <summary>
    /// The bold letters of a replacement for Arial run wider still than its plain ones, for which the ruler makes room. Where
    /// labels do not fit with all of that, less must do.
    /// </summary>
    private static readonly double[] BoldAllowances = [1.15, 1.08, 1];

    /// <summary>Finds the places that take the fewest lanes.</summary>
    /// <param name="flags">Where each pole stands, in pixels of the plot's width, and its label.</param>
    public static IReadOnlyList<FlagPlace> Of(IReadOnlyList<(double Pole, string Label)> flags)
    {
        double[] measured = [.. flags.Select(flag => PlotText.WidthOf(flag.Label, FontWeights.Bold))];
        double[] widths = measured;
        foreach (double allowance in BoldAllowances)
        {
            widths = [.. measured.Select(width => width * allowance)];
            for (int lanes = 1; lanes <= flags.Count; lanes++)
            {
                if (Search([], lanes) is { } found)
                {
                    return found;
                }
            }
        }

        // Nothing fits without a crossing: one lane each, so that as little as may be of a label lies on a pole or beyond the edge.
        return Orders([.. Enumerable.Range(0, flags.Count)])
            .SelectMany(lanes => Enumerable.Range(0, 1 << flags.Count).Select(sides =>
                (IReadOnlyList<FlagPlace>)[.. lanes.Select((lane, flag) => new FlagPlace(lane, (sides & (1 << flag)) == 0))]))
            .MinBy(Faults)!;

        double Faults(IReadOnlyList<FlagPlace> all)
        {
            double sum = 0;
            for (int one = 0; one < all.Count; one++)
            {
                var label = Extent(one, all[one].ToTheRight);
                sum += 4 * (Math.Max(0, -label.Left) + Math.Max(0, label.Right - PlotStyle.Width));
                for (int other = 0; other < all.Count; other++)
                {
                    double pole = flags[other].Pole;
                    sum += other != one && all[other].Lane > all[one].Lane ? Math.Max(0, Math.Min(pole - label.Left, label.Right - pole)) : 0;
                }
            }

            return sum;
        }

        static IEnumerable<int[]> Orders(int[] lanes) => lanes.Length < 2
            ? [lanes]
            : lanes.SelectMany(first => Orders([.. lanes.Where(lane => lane != first)]).Select(rest => (int[])[first, .. rest]));

        IReadOnlyList<FlagPlace>? Search(FlagPlace[] placed, int lanes)
        {
            if (placed.Length == flags.Count)
            {
                return placed;
            }

            int next = placed.Length;
            foreach (bool right in (bool[])[true, false])
            {
                var label = Extent(next, right);
                if (label.Left < 0 || label.Right > PlotStyle.Width)
                {
                    continue;
                }

                for (int lane = 0; lane < lanes; lane++)
                {
                    var place = new FlagPlace(lane, right);
                    if (Enumerable.Range(0, next).All(other => Fit(next, place, other, placed[other]))
                        && Search([.. placed, place], lanes) is { } found)
                    {
                        return found;
                    }
                }
            }

            return null;
        }

        (double Left, double Right) Extent(int flag, bool right) => right
            ? (flags[flag].Pole + Gap, flags[flag].Pole + Gap + widths[flag])
            : (flags[flag].Pole - Gap - widths[flag], flags[flag].Pole - Gap);

        bool Fit(int one, FlagPlace place, int other, FlagPlace otherPlace)
        {
            var mine = Extent(one, place.ToTheRight);
            var theirs = Extent(other, otherPlace.ToTheRight);
            bool Crosses(double pole, (double Left, double Right) label) => pole > label.Left - (Gap / 2) && pole < label.Right + (Gap / 2);

            // A pole passes every lane below its label's, and stands beside the label in its own.
            return !(place.Lane >= otherPlace.Lane && Crosses(flags[one].Pole, theirs))
                && !(otherPlace.Lane >= place.Lane && Crosses(flags[other].Pole, mine))
                && !(place.Lane == otherPlace.Lane && mine.Left < theirs.Right + Gap && theirs.Left < mine.Right + Gap);
        }
    }
}
