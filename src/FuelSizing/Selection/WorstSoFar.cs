using FuelSizing.Systems;

namespace FuelSizing.Selection;

/// <summary>The worst of the checks met so far, in numbers.</summary>
internal struct WorstSoFar
{
    private bool _any;

    /// <summary>Starts with nothing met.</summary>
    public WorstSoFar() => (Turndown, Reserve) = (double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>The most urgent check.</summary>
    public Check Weakest { get; private set; }

    /// <summary>In which stage, by its place in the plan.</summary>
    public int Stage { get; private set; }

    /// <summary>At which point, by its place in the stage.</summary>
    public int Point { get; private set; }

    /// <summary>Least reserve of the shortest pulse.</summary>
    public double Turndown { get; private set; }

    /// <summary>Least reserve of everything else.</summary>
    public double Reserve { get; private set; }

    /// <summary>Takes checks of one point into account.</summary>
    public void Take(List<Check> checks, int stage, int point)
    {
        foreach (Check check in checks)
        {
            if (!_any || TightestFirst.Order.Compare(check, Weakest) < 0)
            {
                (_any, Weakest, Stage, Point) = (true, check, stage, point);
            }

            double reserve = check.Reserve ?? double.PositiveInfinity;
            if (check.Part == Part.MinimumPulse)
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
