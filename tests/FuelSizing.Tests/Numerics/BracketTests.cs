using CsCheck;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>Root finding on functions whose root is known.</summary>
public class BracketTests
{
    [Fact]
    public void Of_ASmoothFallingFunction_EndsAtItsRoot() =>
        Any.Sample(
            curve => Math.Abs(Bracket.Of(curve, 0, 1) - curve.Root) <= 1e-13
                && Math.Abs(Bracket.Of(curve.At, 0, 1) - curve.Root) <= 1e-13,
            iter: 10_000);

    [Fact]
    public void TryNear_ASmoothFallingFunction_EndsAtItsRootOrSaysThatItDoesNot() =>
        Gen.Select(Any, Gen.Double[0, 1]).Sample(
            (curve, guess) => !Secant.TryNear(curve, guess, out double root) || Math.Abs(root - curve.Root) <= 1e-12,
            iter: 10_000);

    [Fact]
    public void TryNear_AnAlmostStraightFunction_Settles() =>
        Gen.Select(Gen.Double[0.15, 0.9], Gen.Double[0.9, 1.1], Gen.Double[0, 0.02], Gen.Double[0, 1]).Sample(
            (root, slope, bend, guess) =>
                Secant.TryNear(new Falling(root, slope, bend), guess, out double found) && Math.Abs(found - root) <= 1e-13,
            iter: 10_000);

    [Fact]
    public void Of_AJump_EndsThere() =>
        Gen.Double[0.01, 0.99].Sample(
            place => Math.Abs(Bracket.Of(new Jump(place), 0, 1) - place) <= 1e-13
                && !Secant.TryNear(new Jump(place), 0.5, out _));

    [Fact]
    public void Of_AFunctionWithoutARoot_EndsAtTheEndNearest()
    {
        Assert.Equal(0, Bracket.Of(new Falling(-1, 1, 0), 0, 1));
        Assert.Equal(1, Bracket.Of(new Falling(2, 1, 0), 0, 1));
    }

    private static Gen<Falling> Any => Gen.Select(
        Gen.Double[0.01, 0.99], Gen.Double[0.3, 5], Gen.Double[0, 5], (root, slope, bend) => new Falling(root, slope, bend));

    private readonly record struct Falling(double Root, double Slope, double Bend) : IFalling
    {
        public double At(double x) => (-Slope * (x - Root)) - (Bend * (x - Root) * (x - Root) * (x - Root));
    }

    private readonly record struct Jump(double Place) : IFalling
    {
        public double At(double x) => x < Place ? 2 - x : -1 - x;
    }
}
