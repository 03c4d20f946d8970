namespace FuelSizing.Numerics;

/// <summary>Where a piece of a falling curve has a value.</summary>
/// <remarks>
/// The one root that is not left to <see cref="Bracket"/>: a cubic's slope comes with its value, so that Newton's method needs fewer
/// evaluations, and this is the innermost loop of every circuit.
/// </remarks>
internal static class FallingCubic
{
    // Newton's method doubles the right figures with each step, once it does; halving needs no more steps than this.
    private const double SmallStep = 1e-8;
    private const double Settling = 1e-3;
    private const double MinimumStep = 4e-15;
    private const int MaximumSteps = 60;

    /// <summary>
    /// The distance from the piece's start at which a + b s + c s² + d s³ = y: Newton's method, held within a bracket by halving.
    /// </summary>
    /// <param name="piece">A piece that nowhere rises.</param>
    /// <param name="width">Its width.</param>
    /// <param name="end">Its value at its end.</param>
    /// <param name="value">y, from its value at its start down to the one at its end.</param>
    public static double Along(in CubicPiece<Real> piece, double width, double end, double value)
    {
        (double b, double c, double d) = (piece.Slope, piece.Second, piece.Third);
        double over = piece.Value - (Real)value;
        double fall = piece.Value - (Real)end;
        (double from, double to) = (0, width);
        double along = fall > 0 ? Math.Clamp(width * over / fall, 0, width) : 0;
        double before = width;
        for (int step = 0; step < MaximumSteps; step++)
        {
            double error = over + (along * (b + (along * (c + (along * d)))));
            double slope = b + (along * ((2 * c) + (3 * along * d)));
            (from, to) = error > 0 ? (along, to) : (from, along);
            double next = along - (error / slope);
            if (!(next >= from && next <= to))
            {
                next = from + ((to - from) / 2);
            }

            double move = Math.Abs(next - along);
            along = next;
            if (move <= MinimumStep * width || (move <= SmallStep * width && move <= Settling * before))
            {
                break;
            }

            before = move;
        }

        return along;
    }
}
