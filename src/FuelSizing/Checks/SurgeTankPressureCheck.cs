using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>Surge tank and lift hoses: the highest pressure in them, which the overflow line makes, against what the weakest of them stands.</summary>
internal sealed class SurgeTankPressureCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.SurgeTank;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Maximum pressure in the lift circuit", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SurgeTank is not { } tank ? Applicability.NotApplicable
        : tank.MaximumPressure is not null ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of("surge-tank.none-given", $"no pressure rating given"));

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T rating = parts.SurgeTank?.MaximumPressure is { } pressure ? pressure.Pascals : double.NaN;
        return CheckReading.AtMost<T>(
            T.Max(at.Lift.Minimum.OutletGauge, at.Lift.MinimumTankGauge), T.Max(at.Lift.Maximum.OutletGauge, at.Lift.MaximumTankGauge), rating);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        Pressure rating = Pressure.FromPascals(reading.Allowed.Value);
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            LiftValues<Real> at = PointReading.Of(point).Lift;
            return CircuitFinding.PressureNotDecided((at.Minimum.OutletGauge, at.Maximum.OutletGauge), reading.Allowed);
        }

        Pressure used = Pressure.FromPascals(reading.Used.Value);
        Pressure tank = Pressure.FromPascals(point.SolvedCircuit.Lift!.Joined.MaximumGauge);
        return outcome == Outcome.Holds
            ? Statement.Of("surge-tank.within", $"{used} at the lift pump outlet, up to {tank} in the surge tank, rated for {rating}")
            : Statement.Of("surge-tank.over", $"{used.ApartFrom(rating):pressure} at the lift pump outlet, up to {tank} in the surge tank, rated for only {rating.ApartFrom(used):pressure}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        Pressure highest = Pressure.FromPascals(task.Points
            .Select(point => Read(point.Parts, PointReading.Of(point)).Used.Value)
            .Where(double.IsFinite)
            .Max());
        return Remedy.Of(
            Part,
            highest,
            Statement.Of(
                "surge-tank.wider-overflow",
                $"A surge tank and lift hoses rated for at least {highest:pressure:up}, a wider or shorter overflow line, or a smaller lift pump."));
    }
}
