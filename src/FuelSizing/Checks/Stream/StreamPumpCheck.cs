using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The pump of a second stream: what it surely delivers at the pressure that is held at the nozzles, with the pumps' reserve, against what they pass there.</summary>
internal sealed class StreamPumpCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.StreamPump;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Flow of the second stream's nozzles", LimitDirection.AtMost, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.InjectorFlow);

    // A pump that runs free against the nozzles has nothing to hold: what flows is what it gives.
    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SecondStream switch
    {
        { Pump: null, HeldPressure: { } held } => Applicability.NotJudged(Statement.Of("stream-pump.none-given", $"no pump given: that {held} is held at the nozzles is taken for granted")),
        { Pump: not null, HeldPressure: not null } => Applicability.Judged,
        _ => Applicability.NotApplicable,
    };

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        StreamValues<T> stream = at.Stream;
        T reserve = parts.Limits.PumpReserve.DecimalFractions;
        T least = PumpDuty.Injectable(stream.MinimumDelivered, reserve, 0);
        T most = PumpDuty.Injectable(stream.MaximumDelivered, reserve, 0);
        T lower = CheckReading.MarginOf(least, stream.Required);
        T upper = CheckReading.MarginOf(most, stream.Required);
        return new(
            stream.Required,
            T.IfLess(lower, 0, most, least),
            T.IfLess(0, stream.Share, lower, double.PositiveInfinity),
            T.IfLess(0, stream.Share, upper, double.PositiveInfinity));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SecondStreamResult stream = point.SecondStream!;
        SolvedStream solved = point.SolvedDemand.Stream!.Solved;
        if (!stream.Acts)
        {
            return stream.Text;
        }

        Pressure held = stream.Stream.HeldPressure!.Value;
        VolumeFlow required = Flow(PumpDuty.Required<Real>(solved.Required, point.Parts.Limits.PumpReserve.DecimalFractions, 0));
        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.PumpReserve) is { } mark
            ? Statement.Of("stream-pump.reserve", $", with {point.Parts.Limits.PumpReserve} in reserve{mark}")
            : null;
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            return Statement.Of("stream-pump.not-covered", $"data of {stream.Stream.Pump!.Name} does not decide whether it delivers {required:injector-flow} at {held}");
        }

        if (CheckReading.OutcomeOf(reading) == Outcome.Holds)
        {
            VolumeFlow least = Flow(solved.MinimumDelivered);
            return Statement.Of("stream-pump.adequate", $"delivers at least {least:injector-flow} at {held}, {required:injector-flow} required{rule}");
        }

        VolumeFlow most = Flow(solved.MaximumDelivered);
        return Statement.Of("stream-pump.too-small", $"delivers at most {most.ApartFrom(required):injector-flow} at {held}, {required.ApartFrom(most):injector-flow} required{rule}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        double reserve = task.Parts.Limits.PumpReserve.DecimalFractions;
        VolumeFlow flow = Flow(task.Points.Max(point => PumpDuty.Required<Real>(point.SolvedDemand.Stream!.Solved.Required, reserve, 0).Value) * (1 + Remedy.Hair));
        Pressure held = task.Parts.SecondStream!.HeldPressure!.Value;
        return Remedy.Of(Part, flow, Statement.Of("stream-pump.larger", $"A pump for {task.Parts.SecondStream.Name} that delivers at least {flow:injector-flow:up} against {held}, or smaller nozzles."));
    }

    private static VolumeFlow Flow(Real flow) => VolumeFlow.FromCubicMetersPerSecond(flow.Value);
}
