using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A speed-controlled pump at its lowest speed: rail pressure against the target.</summary>
internal sealed class PumpControlCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.PumpControl;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Rail pressure", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        parts.Regulator is ElectronicReturnless ? Applicability.Judged : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        // At its lowest speed the pump no longer follows, however little the pressure is over the target.
        T over = T.Min(-double.Epsilon, CheckReading.MarginOf<T>(at.RailSet, T.Max(at.Rail, at.RailSet)));
        return new(
            at.Rail,
            at.RailSet,
            Margin(at.Maximum.AtPumpFloor, over),
            Margin(at.Minimum.AtPumpFloor, over));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (!point.SolvedCircuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            return Statement.Of(
                "pump-control.not-known",
                $"the pump's data ends before its lowest speed: whether it still holds more than the target there is not known");
        }

        Pressure set = Pressure.FromPascals(point.SolvedCircuit.RailSet);
        Pressure rail = Pressure.FromPascals(point.SolvedCircuit.Rail);
        return CheckReading.OutcomeOf(reading) == Outcome.Fails
            ? Statement.Of("pump-control.at-lowest-speed", $"at its lowest speed the pump still holds {rail.ApartFrom(set):pressure}, over the {set.ApartFrom(rail):pressure} target")
            : Statement.Of("pump-control.within", $"the pump runs on {ElectricPotential.FromVolts(point.SolvedCircuit.State.FedVoltage)}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => Remedy.Of(
        Part,
        null,
        Statement.Of(
            "pump-control.slower",
            $"A controller that slows the pump further, a smaller pump, or a regulator that returns the surplus."));

    private static T Margin<T>(T atFloor, T over)
        where T : struct, IReal<T> => T.IfLess(0.5, atFloor, over, T.IfLess(atFloor, 0.5, double.PositiveInfinity, double.NaN));
}
