using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A compressor on a belt: its speed against the maximum that it stands.</summary>
/// <param name="line">The boost line that it gives.</param>
internal sealed class CompressorSpeedCheck(BoostLine line) : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.CompressorSpeed;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Compressor speed", LimitDirection.AtMost, si => RotationalSpeed.FromRevolutionsPerSecond(si), units => units.Speed);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => line switch
    {
        BeltDrivenBoost { MaximumCompressorSpeed: not null } => Applicability.Judged,
        BeltDrivenBoost => Applicability.NotJudged(Statement.Of("compressor.no-maximum", $"no maximum compressor speed given")),
        _ => Applicability.NotApplicable,
    };

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> =>
        line is BeltDrivenBoost { MaximumCompressorSpeed: { } maximum } belt
            ? CheckReading.AtMost<T>(at.Speed * belt.DriveRatio, maximum.RevolutionsPerSecond)
            : new(double.NaN, double.NaN, double.NaN);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        RotationalSpeed used = RotationalSpeed.FromRevolutionsPerSecond(reading.Used.Value);
        RotationalSpeed allowed = RotationalSpeed.FromRevolutionsPerSecond(reading.Allowed.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("compressor.within", $"the compressor turns at {used} of at most {allowed}")
            : Statement.Of("compressor.too-fast", $"the compressor turns at {used}, at most {allowed} allowed");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        if (line is not BeltDrivenBoost { MaximumCompressorSpeed: { } maximum })
        {
            return null;
        }

        double fastest = task.Points.Max(point => point.SolvedDemand.Point.RevolutionsPerSecond);
        double ratio = Math.Floor(maximum.RevolutionsPerSecond / fastest * 1000) / 1000;
        return Remedy.Of(
            Part,
            null,
            Statement.Of("compressor.lower-ratio", $"A drive ratio of at most {ratio:0.000}, a larger compressor pulley, or a lower engine speed limit."));
    }
}
