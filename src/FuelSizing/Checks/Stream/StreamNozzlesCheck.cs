using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>
/// The nozzles of a second stream: what stands against them, boost or ambient pressure, against the pressure at them. Where that is no more, nothing flows;
/// where it is more by less than the nozzles' minimum differential, what flows is not known.
/// </summary>
internal sealed class StreamNozzlesCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.StreamNozzles;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Pressure that the second stream sprays into", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SecondStream is null ? Applicability.NotApplicable : Applicability.Judged;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        StreamValues<T> stream = at.Stream;
        T known = stream.MinimumPressure - parts.SecondStream!.Nozzles.MinimumPascals;
        T lower = CheckReading.MarginOf(known, stream.BackPressure);
        T upper = CheckReading.MarginOf(stream.MaximumPressure, stream.BackPressure);
        return new(
            stream.BackPressure,
            T.IfLess(upper, 0, stream.MaximumPressure, known),
            T.IfLess(0, stream.Share, lower, double.PositiveInfinity),
            T.IfLess(0, stream.Share, upper, double.PositiveInfinity));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SecondStreamResult stream = point.SecondStream!;
        if (!stream.Acts)
        {
            return stream.Text;
        }

        SolvedStream solved = point.SolvedDemand.Stream!.Solved;
        Pressure back = Pressure.FromPascals(solved.BackPressure);
        switch (CheckReading.OutcomeOf(reading))
        {
            case Outcome.Holds:
                return Statement.Of("stream-nozzles.spray", $"at least {Pressure.FromPascals(solved.LowestPressure)} at the nozzles, {back} against them");
            case Outcome.Fails:
                Pressure most = Pressure.FromPascals(solved.HighestPressure);
                return Statement.Of("stream-nozzles.stopped", $"{most.ApartFrom(back):pressure} at the nozzles is less than the {back.ApartFrom(most):pressure} against them: nothing flows");
            default:
                return double.IsNaN(solved.LowestPressure)
                    ? Statement.Of("stream-nozzles.not-covered", $"pressure at the nozzles is not known: data of {stream.Stream.Pump?.Name ?? stream.Stream.Name} does not cover it")
                    : Statement.Of("stream-nozzles.not-known", $"{Pressure.FromPascals(solved.LowestPressure)} at the nozzles with {back} against them: their flow is known from {stream.Stream.Nozzles.MinimumDifferential} across them");
        }
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        Pressure needed = Pressure.FromPascals(
            task.Points.Where(point => point.SecondStream!.Acts).Max(point => point.SolvedDemand.Stream!.Solved.BackPressure + task.Parts.SecondStream!.Nozzles.MinimumPascals) * (1 + Remedy.Hair));
        return Remedy.Of(Part, needed, Statement.Of("stream-nozzles.more-pressure", $"At least {needed:pressure:up} at the nozzles of {task.Parts.SecondStream!.Name}, or nozzles before the compressor."));
    }
}
