using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Pumps whose rise falls with the flow, from the deadhead to nothing at the free flow, in a straight line or by its square:
/// p = p₀ (1 − Q/Q₀) or p = p₀ (1 − (Q/Q₀)²).
/// </summary>
/// <param name="freeFlow">Q₀, m³/s.</param>
/// <param name="deadhead">p₀, Pa.</param>
/// <param name="givesFlow">They say that their flow follows from the rise; else that their rise follows from the flow.</param>
/// <param name="bySquare">By the square.</param>
internal sealed class FormulaPumps(double freeFlow, double deadhead, bool givesFlow, bool bySquare) : RunningPumps
{
    /// <inheritdoc/>
    public override double FreeFlow => freeFlow;

    /// <inheritdoc/>
    public override double Deadhead => deadhead;

    /// <inheritdoc/>
    public override bool GivesFlow => givesFlow;

    /// <summary>How often flow or rise was asked for.</summary>
    public int Asked { get; private set; }

    /// <summary>False where they do not say that their data covers every flow, so that each state has to be looked at.</summary>
    public bool SaysSo { get; init; } = true;

    /// <summary>False where a curve is said to end with flow left.</summary>
    public bool SaysSoAtEnds { get; init; } = true;

    /// <summary>How often they were asked what their data lacks.</summary>
    public int AskedForData { get; private set; }

    /// <inheritdoc/>
    public override double FlowAt(double rise)
    {
        Asked++;
        double share = Math.Max(0, 1 - (rise / deadhead));
        return freeFlow * (bySquare ? Math.Sqrt(share) : share);
    }

    /// <inheritdoc/>
    public override double RiseAt(double flow)
    {
        Asked++;
        double share = flow / freeFlow;
        return deadhead * Math.Max(0, 1 - (bySquare ? share * share : share));
    }

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points)
    {
    }

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => SaysSo && (SaysSoAtEnds || !ends);

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends)
    {
        AskedForData++;
        return PumpCoverage.Measured;
    }

    /// <summary>The flow at which they hold a set pressure downstream of a square-law resistance: set + k Q² = p.</summary>
    /// <param name="set">Pa.</param>
    /// <param name="factor">k, Pa s²/m⁶.</param>
    public double Intersection(double set, double factor)
    {
        double rest = deadhead - set;
        if (bySquare)
        {
            return Math.Sqrt(rest / (factor + (deadhead / (freeFlow * freeFlow))));
        }

        // The root of k Q² + (p₀/Q₀) Q − (p₀ − set) = 0 in the form that does not cancel.
        double slope = deadhead / freeFlow;
        return 2 * rest / (slope + Math.Sqrt((slope * slope) + (4 * factor * rest)));
    }
}
