using CsCheck;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>Where a falling piece of a curve has a value: roots that a reader finds in his head, and any piece undone.</summary>
public class FallingCubicTests
{
    private const double Rounding = 1e-14;

    /// <summary>10 − 4 s: the straight line's own guess is right at once.</summary>
    [Theory]
    [InlineData(10, 0)]
    [InlineData(7, 0.75)]
    [InlineData(4, 1.5)]
    [InlineData(2, 2)]
    public void Along_OfAStraightPiece_IsTheShareOfTheFall(double value, double expected) =>
        Near(expected, FallingCubic.Along(new(5, 10, -4, 0, 0), 2, 2, value));

    /// <summary>9 − s²: level at its start, where Newton's method has no slope to go by.</summary>
    [Theory]
    [InlineData(9, 0)]
    [InlineData(8.75, 0.5)]
    [InlineData(5, 2)]
    [InlineData(0, 3)]
    public void Along_OfAParabola_IsTheSquareRoot(double value, double expected) =>
        Near(expected, FallingCubic.Along(new(5, 9, 0, -1, 0), 3, 0, value));

    /// <summary>(2 − s)³ = 8 − 12 s + 6 s² − s³: level at its end, where the root is triple.</summary>
    [Theory]
    [InlineData(8, 0)]
    [InlineData(1, 1)]
    [InlineData(0.125, 1.5)]
    public void Along_OfACube_IsTheCubeRoot(double value, double expected) =>
        Near(expected, FallingCubic.Along(new(5, 8, -12, 6, -1), 2, 0, value));

    /// <summary>1 − 3 s² + 2 s³: level at both ends; by its symmetry a half lies at a half, and 27/32 at a quarter.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.84375, 0.25)]
    [InlineData(0.5, 0.5)]
    [InlineData(0.15625, 0.75)]
    public void Along_OfAStep_IsFoundFromEitherSide(double value, double expected) =>
        Near(expected, FallingCubic.Along(new(0, 1, 0, -3, 2), 1, 0, value));

    /// <summary>A level piece has its value everywhere: its start is as good as any.</summary>
    [Fact]
    public void Along_OfALevelPiece_IsItsStart() => Assert.Equal(0, FallingCubic.Along(new(5, 3, 0, 0, 0), 2, 3, 3));

    [Fact]
    public void Along_OfAnyFallingPiece_UndoesThePiece() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[0.1, 10], Gen.Double[0, 3], Gen.Double[0, 3], Gen.Double[0, 1]).Sample(
            (width, fall, first, last, place) =>
            {
                // Slopes of no more than three times the straight line's keep a Hermite cubic monotone (Fritsch and Carlson,
                // SIAM Journal on Numerical Analysis 17 (1980) 238); zero at an end makes it flat there.
                double straight = fall / width;
                CubicPiece<Real> piece = CubicPiece<Real>.Between(2, fall + 1, -first * straight, 2 + width, 1, -last * straight);
                double value = piece.At(2 + (place * width));
                double along = FallingCubic.Along(piece, width, 1, value);
                return along >= 0 && along <= width
                    && Math.Abs(piece.At(2 + along) - value) <= 1e-14 * (fall + 1);
            },
            iter: 10_000);

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, Rounding * 3);
}
