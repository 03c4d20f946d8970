namespace FuelSizing.Pumps;

/// <summary>What pumps deliver at a rise, and how that changes with it, from guesses of what within them has to be searched for: corrected to the first order.</summary>
/// <param name="Flow">m³/s.</param>
/// <param name="ByRise">How it changes with the rise, the guesses going with it, m³/s/Pa.</param>
/// <param name="Moved">By how much the guesses were moved, the furthest of them as a share of its scale: what the flow is off by is of the order of its square.</param>
/// <remarks>
/// A search for the rise that asks at each step for a search for the voltage at every motor, or for the flow of every branch, finds the same in two to five
/// times as long: here all move together, by Newton's steps.
/// </remarks>
internal readonly record struct PumpTangent(double Flow, double ByRise, double Moved)
{
    // What is left after one of Newton's steps is of the order of its square.
    private const double SmallMove = 1e-8;
    private const double SmallGuess = 5e-8;
    private const int MaximumSteps = 12;

    /// <summary>Pumps that deliver nothing.</summary>
    public static PumpTangent Shut => default;

    /// <summary>True if what is left to find is within the last digits.</summary>
    public bool IsSettled => Moved <= SmallGuess;

    /// <summary>Settles the guesses at a rise; false where the steps do not settle, as at an end of a curve.</summary>
    /// <param name="pumps">The pumps.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="guesses">To settle.</param>
    /// <param name="tangent">What is delivered.</param>
    public static bool TrySettle(RunningPumps pumps, double rise, Span<double> guesses, out PumpTangent tangent)
    {
        tangent = default;
        pumps.Guess(rise, guesses);
        for (int step = 0; step < MaximumSteps; step++)
        {
            if (!pumps.TryTangent(rise, guesses, out tangent))
            {
                return false;
            }

            if (tangent.IsSettled)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The rise at which so much flows; false where the steps do not settle, as at an end of a curve.</summary>
    /// <param name="pumps">The pumps.</param>
    /// <param name="flow">m³/s, over zero and under the free flow.</param>
    /// <param name="rise">Pa.</param>
    public static bool TryRise(RunningPumps pumps, double flow, out double rise)
    {
        rise = double.NaN;
        if (pumps.Guesses is < 0 or > RunningPumps.MaximumGuesses)
        {
            return false;
        }

        double highest = pumps.Deadhead;
        rise = highest * Math.Sqrt(1 - (flow / pumps.FreeFlow));
        Span<double> guesses = stackalloc double[pumps.Guesses];
        pumps.Guess(rise, guesses);
        for (int step = 0; step < MaximumSteps; step++)
        {
            if (!pumps.TryTangent(rise, guesses, out PumpTangent tangent) || !(tangent.ByRise < 0))
            {
                return false;
            }

            double move = (flow - tangent.Flow) / tangent.ByRise;
            rise += move;
            if (!(rise > 0 && rise < highest))
            {
                return false;
            }

            if (step > 0 && tangent.IsSettled && Math.Abs(move) <= SmallMove * highest)
            {
                return pumps.IsConfirmed(rise, guesses);
            }
        }

        return false;
    }
}

/// <summary>What is noted of pumps that run: each of them, or what their data lacks.</summary>
internal struct PumpNotes
{
    /// <summary>Each pump where it runs; none where only what is lacking is asked for.</summary>
    public List<PumpPoint>? Points { get; init; }

    /// <summary>True if it matters where curves end.</summary>
    public bool Ends { get; init; }

    /// <summary>What their data lacks.</summary>
    public PumpCoverage Uncovered { get; set; }

    /// <summary>Notes pumps that deliver nothing at all.</summary>
    /// <param name="still">The pumps.</param>
    /// <param name="rise">Pa.</param>
    public void Note(RunningPumps still, double rise)
    {
        if (Points is not null)
        {
            still.Describe(0, rise, Points);
        }
        else
        {
            Uncovered |= still.UncoveredAt(0, rise, Ends);
        }
    }
}

/// <summary>A measured curve carried to a voltage, with slopes.</summary>
/// <param name="Flow">m³/s.</param>
/// <param name="FlowByRise">m³/s/Pa.</param>
/// <param name="FlowByVolts">m³/s/V.</param>
/// <param name="Current">A.</param>
/// <param name="CurrentByRise">A/Pa.</param>
/// <param name="CurrentByVolts">A/V.</param>
internal readonly record struct CarriedCurve(
    double Flow, double FlowByRise, double FlowByVolts, double Current, double CurrentByRise, double CurrentByVolts)
{
    /// <summary>Two curves taken in proportion.</summary>
    /// <param name="lower">Measured at the lower voltage.</param>
    /// <param name="upper">Measured at the higher one.</param>
    /// <param name="share">How far the voltage lies from the lower to the higher.</param>
    /// <param name="width">From the lower to the higher, V.</param>
    public static CarriedCurve Between(in CarriedCurve lower, in CarriedCurve upper, double share, double width) => new(
        lower.Flow + (share * (upper.Flow - lower.Flow)),
        lower.FlowByRise + (share * (upper.FlowByRise - lower.FlowByRise)),
        lower.FlowByVolts + (share * (upper.FlowByVolts - lower.FlowByVolts)) + ((upper.Flow - lower.Flow) / width),
        lower.Current + (share * (upper.Current - lower.Current)),
        lower.CurrentByRise + (share * (upper.CurrentByRise - lower.CurrentByRise)),
        lower.CurrentByVolts + (share * (upper.CurrentByVolts - lower.CurrentByVolts)) + ((upper.Current - lower.Current) / width));
}
