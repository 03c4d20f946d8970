using FuelSizing.Controllers;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads where the mixture was lean on boost, and where nobody can tell.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class MixtureReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>A single lean reading, in however many rows a slow channel holds it, between two that are not, no further apart than this, is a glitch of the sensor, s; common practice, no source.</summary>
    private const double GlitchSpan = 0.5;

    /// <summary>Rows that are compared with the plan.</summary>
    private const int Compared = 200;

    private static Statement BothNeeded { get; } =
        Statement.Of("run.needs-lambda-and-manifold", $"lambda and manifold pressure must both be recorded");

    /// <summary>Lean stretches.</summary>
    public Finding<LeanExcursions> Lean()
    {
        if (Missing() is { Length: > 0 } missing)
        {
            return Finding<LeanExcursions>.CannotTell(BothNeeded, missing);
        }

        ReadOnlySpan<double> lambda = Run.Si(Channel.Lambda);
        StuckReadings stuck = Columns.StuckLambda;
        List<LeanExcursion> found = [];
        List<int> lean = [];
        (int rows, int judged, int offScale, int unknown, int lone) = (0, 0, 0, 0, 0);
        for (int row = 0; row < Run.Count; row++)
        {
            bool? loaded = IsLoaded(row);
            bool isLean = lambda[row] > Columns.LeanFromAt(row);
            if (loaded is null)
            {
                // What may have been on boost cannot be told from what was.
                (rows, unknown) = (rows + 1, unknown + 1);
                continue;
            }

            if (loaded == true)
            {
                rows++;
                bool hides = Columns.HidesLambda(row);
                offScale += hides ? 1 : 0;
                if (hides || double.IsNaN(lambda[row]))
                {
                    continue;
                }

                judged++;
                if (isLean)
                {
                    lean.Add(row);
                    continue;
                }
            }

            lone += Close(lean, found) ? 0 : 1;
        }

        lone += Close(lean, found) ? 0 : 1;
        if (found.Count == 0 && judged == 0)
        {
            return Finding<LeanExcursions>.CannotTell(
                rows == 0 ? Statement.Of("run.never-on-boost", $"the run was never {Load}")
                : stuck.NeverMoves ? Statement.Of("run.lambda-never-moves", $"lambda reads {stuck.End:0.00} throughout while engine speed changes")
                : offScale > 0 ? Statement.Of("run.lambda-off-scale-throughout", $"lambda stays at {stuck.End:0.00} {Load}, the end of what its sensor reads")
                : unknown == rows ? Statement.Of("run.no-manifold-on-rows", $"no row holds manifold pressure with the engine turning")
                : Statement.Of("run.no-lambda-on-boost", $"no row {Load} has a usable lambda"));
        }

        Statement? offScaleText = offScale > 0
            ? Statement.Of("run.lambda-off-scale", $"; {offScale} rows read {stuck.End:0.00}, the end of what the sensor reads")
            : null;
        Statement? unknownText = unknown > 0 ? Statement.Of("run.load-unknown", $"; {unknown} rows lack manifold pressure, so that they may be {Load}") : null;
        Statement? loneText = lone > 0
            ? Statement.Of("run.lean-single", $"; {lone} single rows read lean, and the log does not show whether for long")
            : null;
        return Finding<LeanExcursions>.Of(new(
            Columns.Planned,
            found,
            Load,
            judged,
            rows,
            judged == rows && lone == 0
                ? null
                : Statement.Of("run.lambda-gap", $"lambda is known of {judged} of {rows} rows {Load}{offScaleText}{unknownText}{loneText}")));
    }

    /// <summary>Lambda beside what the plan's controller gives.</summary>
    public Finding<MixtureComparison> BesidePlan()
    {
        if (Check.Plan.Controller is IdealController ideal)
        {
            return Finding<MixtureComparison>.CannotTell(ideal.Text);
        }

        if (Missing() is { Length: > 0 } missing)
        {
            return Finding<MixtureComparison>.CannotTell(BothNeeded, missing);
        }

        int[] rows = [.. Enumerable.Range(0, Run.Count).Where(row =>
            IsLoaded(row) == true && !Columns.HidesLambda(row) && Columns.At(Channel.Lambda, row) > 0)];

        // The leanest row is compared in any case; of many others some are enough.
        HashSet<int> chosen = [.. Enumerable.Range(0, Math.Min(rows.Length, Compared)).Select(step => rows[(int)((long)step * rows.Length / Math.Min(rows.Length, Compared))])];
        if (rows.Length > 0)
        {
            chosen.Add(rows.MaxBy(row => Columns.At(Channel.Lambda, row)));
        }

        MixturePlace[] places = [.. chosen.Order()
            .Select(row => (Row: row, Check.PlanAt(Run.RowAt(row), Run.Atmosphere)?.Mixture))
            .Where(one => one.Mixture?.Lambda is { } known && double.IsFinite(known))
            .Select(one => new MixturePlace(Place(one.Row), Columns.At(Channel.Lambda, one.Row), one.Mixture!))];
        return places.Length == 0
            ? Finding<MixtureComparison>.CannotTell(Statement.Of(
                "run.no-planned-mixture", $"no row {Load} has both a usable lambda and one that the plan's controller gives"))
            : Finding<MixtureComparison>.Of(new(places, rows.Length, Load));
    }

    private Channel[] Missing() => [.. new[] { Channel.Lambda, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];

    /// <summary>Ends a stretch; false where it is one reading of which the log does not show how long it lasted.</summary>
    private bool Close(List<int> lean, List<LeanExcursion> found)
    {
        if (lean.Count == 0)
        {
            return true;
        }

        (int first, int last) = (lean[0], lean[^1]);
        while (first > 0 && !Columns.IsRead(Channel.Lambda, first))
        {
            // Held from a row that was not on boost.
            first--;
        }

        bool isOneReading = !lean.Exists(row => row > first && Columns.IsRead(Channel.Lambda, row));
        double span = !isOneReading ? double.PositiveInfinity : TimeOf(Neighbour(last, 1)) - TimeOf(Neighbour(first, -1));
        bool isStretch = span > GlitchSpan;
        if (isStretch)
        {
            int worst = lean.MaxBy(row => Columns.At(Channel.Lambda, row));
            double length = TimeOf(last) - TimeOf(lean[0]);
            found.Add(new(
                Place(lean[0]),
                Place(worst),
                Columns.At(Channel.Lambda, worst),
                Columns.PlannedAt(worst),
                Columns.LeanFromAt(worst),
                Columns.AllowedAt(worst) <= Columns.LeanFrom(worst),
                lean.Count,
                double.IsNaN(length) || lean.Count == 1 ? null : Duration.FromSeconds(length)));
        }

        lean.Clear();
        return isStretch || span <= GlitchSpan;
    }

    /// <summary>The next row, either way, at which lambda was read; −1 where there is none.</summary>
    private int Neighbour(int row, int step)
    {
        int other = row + step;
        while (other >= 0 && other < Run.Count && !Columns.IsRead(Channel.Lambda, other))
        {
            other += step;
        }

        return other < Run.Count ? other : -1;
    }

    private double TimeOf(int row) => row < 0 ? double.NaN : Columns.At(Channel.Time, row);
}
