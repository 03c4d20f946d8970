using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Checks;

/// <summary>A check of one's own, outside the library: a return line that must carry enough fuel to keep the rail cool.</summary>
/// <param name="minimum">Least returned flow.</param>
internal sealed class ReturnFlowForCooling(VolumeFlow minimum) : ICheck
{
    public static Part Cooling { get; } = Part.Of("own.return-flow", "return flow for cooling");

    public Part Part => Cooling;

    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Returned flow", LimitDirection.AtLeast, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    public Applicability AppliesTo(SystemParts parts) =>
        parts.Layout == LineLayout.Return ? Applicability.Judged : Applicability.NotApplicable;

    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtLeast<T>(at.Returned, minimum.CubicMetersPerSecond);

    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading) => Statement.Of(
        "own.return-flow",
        $"returns {VolumeFlow.FromCubicMetersPerSecond(reading.Used.Value):pump-flow}, {minimum:pump-flow} required to cool the rail");

    public Remedy? RemedyFor(RemedyTask task) => Remedy.Of(
        Part,
        minimum,
        Statement.Of("own.larger-pump-for-cooling", $"A pump that returns at least {minimum:pump-flow} at every point, or a cooler in the return line."));
}
