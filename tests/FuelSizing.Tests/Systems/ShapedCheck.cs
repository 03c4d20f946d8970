using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A check whose margin is a formula of the point, so that what a search over a range must find is known beforehand.</summary>
/// <param name="margin">What is left, as a share; not a number where it cannot be said.</param>
internal sealed class ShapedCheck(Func<PointValues<Real>, double> margin) : ICheck
{
    public static Part Shape { get; } = Part.Of("own.shape", "shape");

    public Part Part => Shape;

    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Shape", LimitDirection.AtLeast, si => Ratio.FromDecimalFractions(si), units => units.Share);

    /// <summary>Wren, of which nothing else is judged; the margin by engine speed, rev/min, and boost, kPa.</summary>
    public static FuelSystem Judging(Func<double, double, double> margin) =>
        Judging(at => margin(at.Speed * 60, at.Boost / 1e3));

    /// <summary>Wren, of which nothing else is judged.</summary>
    public static FuelSystem Judging(Func<PointValues<Real>, double> margin, FuelSystem? system = null) =>
        (system ?? Wren.System()).With(new ShapedCheck(margin)).JudgedOnlyBy([Shape]);

    public Applicability AppliesTo(SystemParts parts) => Applicability.Judged;

    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        double left = margin((PointValues<Real>)(object)at);
        return (CheckReading<T>)(object)new CheckReading<Real>(1 + left, 1, left);
    }

    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading) => Statement.Of("own.shape", $"{reading.Used.Value:0.000}");

    public Remedy? RemedyFor(RemedyTask task) => Remedy.Of(
        Part,
        Ratio.FromPercent(task.Failing.Count),
        Statement.Of("own.other-shape", $"Another shape: {task.ToString()}."));
}
