using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Checks;

/// <summary>What a check found.</summary>
public enum Outcome
{
    /// <summary>The given data does not cover the point, so the library gives no answer.</summary>
    CannotSay,

    /// <summary>The limit is kept.</summary>
    Holds,

    /// <summary>The limit is exceeded.</summary>
    Fails,

    /// <summary>
    /// Of a whole system: every check that could be judged holds, but something that it has was not judged and not waived. A single
    /// check never answers this.
    /// </summary>
    HoldsAsFarAsJudged,
}

/// <summary>What a check read at a point, or at a column of points, in SI.</summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
/// <param name="Used">What is used; not a number where it is not known.</param>
/// <param name="Allowed">What is allowed, in the same unit; not a number where it is not known.</param>
/// <param name="Margin">
/// What is left before the limit, as a share of what is used, on the conservative side of the data: +0.1 means that the use
/// could grow by a tenth. Infinite where there is nothing to compare with; not a number where it is not known.
/// </param>
/// <param name="BestMargin">The same on the optimistic side; equal where the data covers the point.</param>
/// <remarks>
/// It holds where the conservative margin is not negative, fails where even the optimistic one is, and cannot say between
/// the two, or where a margin is not a number.
/// </remarks>
public readonly record struct CheckReading<T>(T Used, T Allowed, T Margin, T BestMargin)
    where T : struct, IReal<T>
{
    /// <summary>A reading whose data covers the point.</summary>
    /// <param name="used">What is used.</param>
    /// <param name="allowed">What is allowed.</param>
    /// <param name="margin">What is left, as a share.</param>
    public CheckReading(T used, T allowed, T margin)
        : this(used, allowed, margin, margin)
    {
    }
}

/// <summary>Makes readings, and says what one amounts to.</summary>
public static class CheckReading
{
    /// <summary>A use that may be no more than a limit: margin = allowed/used − 1, infinite where nothing is used.</summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="used">What is used; not a number where it is not known.</param>
    /// <param name="allowed">The most that is allowed.</param>
    /// <returns>The reading.</returns>
    public static CheckReading<T> AtMost<T>(T used, T allowed)
        where T : struct, IReal<T> => new(used, allowed, MarginOf(allowed, used));

    /// <summary>
    /// The same where the use is known between two bounds only: it holds by the upper one, and fails by the lower one.
    /// </summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="minimum">The least that may be used; not a number where it is not known.</param>
    /// <param name="maximum">The most that may be used; not a number where it is not known.</param>
    /// <param name="allowed">The most that is allowed.</param>
    /// <returns>The reading, with the bound that decides: the lower where that fails, else the upper.</returns>
    public static CheckReading<T> AtMost<T>(T minimum, T maximum, T allowed)
        where T : struct, IReal<T>
    {
        T best = MarginOf(allowed, minimum);
        return new(T.IfLess(best, 0, minimum, maximum), allowed, MarginOf(allowed, maximum), best);
    }

    /// <summary>A figure that may be no less than a limit: margin = figure/limit − 1, infinite where nothing is required.</summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="used">The figure; not a number where it is not known.</param>
    /// <param name="allowed">The least that is allowed.</param>
    /// <returns>The reading.</returns>
    public static CheckReading<T> AtLeast<T>(T used, T allowed)
        where T : struct, IReal<T> => new(used, allowed, MarginOf(used, allowed));

    /// <summary>
    /// The same where the figure is known between two bounds only: it holds by the lower one, and fails by the upper one.
    /// </summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="minimum">The least that the figure may be; not a number where it is not known.</param>
    /// <param name="maximum">The most that it may be; not a number where it is not known.</param>
    /// <param name="allowed">The least that is allowed.</param>
    /// <returns>The reading, with the bound that decides: the upper where that fails, else the lower.</returns>
    public static CheckReading<T> AtLeast<T>(T minimum, T maximum, T allowed)
        where T : struct, IReal<T>
    {
        T best = MarginOf(maximum, allowed);
        return new(T.IfLess(best, 0, maximum, minimum), allowed, MarginOf(minimum, allowed), best);
    }

    /// <summary>
    /// The margin: maximum/used − 1, zero where both are the same to twelve figures; infinite where nothing is used and nothing is too much.
    /// </summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="maximum">The most that could be used.</param>
    /// <param name="used">What is used.</param>
    /// <returns>
    /// The share; not a number where either is not known, even where nothing is used; minus infinite where less than nothing is left.
    /// </returns>
    public static T MarginOf<T>(T maximum, T used)
        where T : struct, IReal<T>
    {
        T share = Reserve.Of(maximum, used);
        return T.IfLess(
            0,
            used,
            T.IfLess(share, 0, T.IfLess(-SameShare, share, 0, share), share),

            // No share of nothing: the sign says which side of the limit it is, and what is not known stays unknown in the difference.
            T.IfLess(maximum, used, double.NegativeInfinity, maximum - used + double.PositiveInfinity));
    }

    // Equal to twelve figures is equal: 400 kPa of at most 400 kPa holds, whichever way the last bit of a sum falls.
    private const double SameShare = 1e-12;

    /// <summary>Holds, fails, or cannot be said.</summary>
    /// <param name="reading">Of one point.</param>
    /// <returns>The outcome.</returns>
    public static Outcome OutcomeOf(in CheckReading<Real> reading)
    {
        double margin = reading.Margin;
        double best = reading.BestMargin;
        return margin >= 0 ? Outcome.Holds
            : best < 0 ? Outcome.Fails
            : Outcome.CannotSay;
    }

    /// <summary>The margin that goes with the outcome; none where there is nothing to compare with, or nothing to say.</summary>
    /// <param name="reading">Of one point.</param>
    /// <returns>The conservative margin where the limit holds, the optimistic one where it fails.</returns>
    public static double? MarginOf(in CheckReading<Real> reading)
    {
        double? margin = OutcomeOf(reading) switch
        {
            Outcome.Holds => (double)reading.Margin,
            Outcome.Fails => (double)reading.BestMargin,
            _ => null,
        };
        return margin is { } share && double.IsFinite(share) ? share : null;
    }
}
