namespace FuelSizing.Numerics;

/// <summary>A smooth curve through the points of a table that rises and falls only where they do.</summary>
/// <remarks>
/// Piecewise cubic. Slopes inside: F. N. Fritsch, J. Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM Journal on
/// Scientific and Statistical Computing 5 (1984) 300–304; at the ends: C. B. Moler, Numerical Computing with MATLAB, SIAM, 2004, section 3.6. Tables read
/// MathNet.Numerics' curve, of which this is the working.
/// </remarks>
internal static class MonotoneCubic
{
    /// <summary>Slope at a point between two others: a harmonic mean of the chords' slopes; zero where the points turn, or lie level.</summary>
    /// <param name="before">Width to the point before.</param>
    /// <param name="chordBefore">Slope of the chord from there.</param>
    /// <param name="after">Width to the point after.</param>
    /// <param name="chordAfter">Slope of the chord to there.</param>
    public static T InnerSlope<T>(T before, T chordBefore, T after, T chordAfter)
        where T : struct, IReal<T> => T.IfLess(
            0,
            chordBefore * chordAfter,
            ((T)3 * (before + after)) / (((((T)2 * after) + before) / chordBefore) + ((after + ((T)2 * before)) / chordAfter)),
            0);

    /// <summary>Slope at the first or the last point: that of the parabola through three, held to where the curve does not turn.</summary>
    /// <param name="own">Width of the piece at the end.</param>
    /// <param name="ownChord">Slope of its chord.</param>
    /// <param name="next">Width of the piece beside it.</param>
    /// <param name="nextChord">Slope of that one's chord.</param>
    public static T EndSlope<T>(T own, T ownChord, T next, T nextChord)
        where T : struct, IReal<T>
    {
        T slope = (((((T)2 * own) + next) * ownChord) - (own * nextChord)) / (own + next);
        T steepest = (T)3 * ownChord;
        T within = T.IfLess(0, ownChord * nextChord, slope, T.IfLess(steepest * steepest, slope * slope, steepest, slope));
        return T.IfLess(0, slope * ownChord, within, 0);
    }

    /// <summary>The value between two points.</summary>
    /// <param name="value">At the point before.</param>
    /// <param name="slope">There.</param>
    /// <param name="chord">Slope of the chord between both.</param>
    /// <param name="width">Between both.</param>
    /// <param name="slopeAfter">At the point after.</param>
    /// <param name="along">From the point before.</param>
    public static T At<T>(T value, T slope, T chord, T width, T slopeAfter, T along)
        where T : struct, IReal<T> =>
        value + (along * (slope
            + (along / width * ((((T)3 * chord) - ((T)2 * slope) - slopeAfter)
                + (along / width * (slope + slopeAfter - ((T)2 * chord)))))));
}
