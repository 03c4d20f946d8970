using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The inlet of a circuit's pumps: absolute pressure there against the fuel's vapour pressure and a margin over it.</summary>
internal sealed class PumpInletCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Absolute pressure at the pump inlet", LimitDirection.AtLeast, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => judged.PumpsOf(parts) is null ? Applicability.NotApplicable
        : parts.Demand.Consumption.Fuel.HasVapourPressure
        ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of("suction.no-vapour-pressure", $"no vapour pressure of {parts.Demand.Consumption.Fuel.Name} given"));

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        return CheckReading.AtLeast<T>(
            figures.Minimum.InletGauge + at.Ambient,
            figures.Maximum.InletGauge + at.Ambient,
            figures.VapourPressure + (T)parts.Limits.SuctionMarginPascals);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            PointValues<Real> at = PointReading.Of(point);
            CircuitFigures<Real> figures = judged.Read(at);
            return CircuitFinding.PressureNotDecided(
                (figures.Minimum.InletGauge + at.Ambient, figures.Maximum.InletGauge + at.Ambient), reading.Allowed);
        }

        Pressure margin = point.Parts.Limits.SuctionMargin;
        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.SuctionMargin) is { } mark
            ? Statement.Of("suction.margin", $", with {margin} more than that{mark}")
            : null;
        Pressure inlet = Pressure.FromPascals(reading.Used.Value);
        Pressure required = Pressure.FromPascals(reading.Allowed.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Fails
            ? Statement.Of(
                "suction.fuel-may-boil",
                $"{inlet.ApartFrom(required):pressure} absolute at the inlet, {required.ApartFrom(inlet):pressure} required over the vapour pressure of {point.Parts.Demand.Consumption.Fuel.Name} at {judged.InletTemperatureOf(point.Point.Conditions)}{rule}")
            : Statement.Of(
                "suction.within",
                $"{inlet} absolute at the inlet, {required} required over the vapour pressure of {point.Parts.Demand.Consumption.Fuel.Name} at {judged.InletTemperatureOf(point.Point.Conditions)}{rule}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // What is missing, not the share of it: hotter fuel asks for more at a smaller share.
        Pressure missing = Pressure.FromPascals(task.Failing
            .Select(point => Read(point.Parts, PointReading.Of(point)))
            .Max(reading => reading.Allowed.Value - reading.Used.Value));
        return Remedy.Of(
            Part,
            missing,
            Statement.Of(
                "suction.better-inlet",
                $"{missing:pressure:up} more at the pump inlet: a wider or shorter suction line, a lower pump, or cooler fuel."));
    }
}
