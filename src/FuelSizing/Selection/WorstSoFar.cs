using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Selection;

/// <summary>The worst of the checks so far, in numbers.</summary>
internal struct WorstSoFar
{
    private bool _any;

    /// <summary>Starts with nothing met.</summary>
    public WorstSoFar() => (Turndown, Reserve) = (double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>The most urgent check.</summary>
    public Judgement Weakest { get; private set; }

    /// <summary>In which stage, by its place in the plan.</summary>
    public int Stage { get; private set; }

    /// <summary>At which point, by its place in the stage.</summary>
    public int Point { get; private set; }

    /// <summary>Smallest margin of the minimum pulse.</summary>
    public double Turndown { get; private set; }

    /// <summary>Smallest margin of everything else.</summary>
    public double Reserve { get; private set; }

    /// <summary>Takes the checks of one point into account.</summary>
    /// <param name="system">Whose checks.</param>
    /// <param name="parts">Its parts as they were solved: with a switched pump on or off.</param>
    /// <param name="values">The solved point.</param>
    /// <param name="stage">Its stage, by its place in the plan.</param>
    /// <param name="point">The point, by its place in the stage.</param>
    public void Take(FuelSystem system, SystemParts parts, in PointValues<Real> values, int stage, int point)
    {
        foreach (ICheck check in system.Applicable)
        {
            Judgement judged = Judgement.Of(check.Part, check.Read(parts, values));
            if (!_any || Urgency.Compare(judged.Outcome, judged.Share, Weakest.Outcome, Weakest.Share) < 0)
            {
                (_any, Weakest, Stage, Point) = (true, judged, stage, point);
            }

            double reserve = judged.Share ?? double.PositiveInfinity;
            if (check.Part == Part.MinimumPulse || check.Part == Part.SecondaryMinimumPulse)
            {
                Turndown = Math.Min(Turndown, reserve);
            }
            else
            {
                Reserve = Math.Min(Reserve, reserve);
            }
        }
    }
}
