using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The lift pump of a surge tank: what it surely brings into the tank against the sustained net draw from it, with the pumps' reserve.</summary>
/// <remarks>
/// The draw is what the engine asks for, also where the main pumps cannot deliver it; where the main circuit returns to the main tank it is all that its pumps
/// may pass, with the pressure in the full surge tank helping them.
/// </remarks>
internal sealed class LiftPumpCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.LiftPump;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Net draw from the surge tank", LimitDirection.AtMost, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SurgeTank is null ? Applicability.NotApplicable : Applicability.Judged;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        LiftValues<T> lift = at.Lift;
        T margin = CheckReading.MarginOf<T>(lift.MinimumSustained, lift.MaximumDraw);
        T best = CheckReading.MarginOf<T>(lift.MaximumSustained, lift.MinimumDraw);
        return new(
            T.IfLess(best, 0, lift.MinimumDraw, lift.MaximumDraw),
            T.IfLess(best, 0, lift.MaximumSustained, lift.MinimumSustained),
            margin,
            best);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SolvedLift lift = point.SolvedCircuit.Lift!;
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return NotDecided(point, lift);
        }

        Ratio reserve = point.Parts.Limits.PumpReserve;
        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.PumpReserve) is { } mark
            ? Statement.Of("lift-pump.reserve", $", with {reserve} in reserve{mark}")
            : null;
        VolumeFlow required = Flow(PumpDuty.Required<Real>(reading.Used, reserve.DecimalFractions, 0));
        if (outcome == Outcome.Holds)
        {
            VolumeFlow least = Flow(lift.MinimumLifted);
            return IsExact(lift)
                ? Statement.Of("lift-pump.adequate", $"brings {least:pump-flow} into the surge tank, {required:pump-flow} required{rule}")
                : Statement.Of("lift-pump.adequate-at-least", $"brings at least {least:pump-flow} into the surge tank, at most {required:pump-flow} required{rule}");
        }

        VolumeFlow most = Flow(lift.MaximumLifted);
        Statement? empties = lift.MaximumFilled < reading.Used.Value
            ? Statement.Of(
                "lift-pump.tank-empties",
                $": the surge tank runs dry in {Duration.FromSeconds(SurgeTankVolume.TimeToEmpty<Real>(point.Parts.SurgeTank!.UsableVolume.CubicMeters, reading.Used - (Real)lift.MaximumFilled).Value):time} at this demand")
            : null;
        return IsExact(lift)
            ? Statement.Of("lift-pump.too-small", $"brings {most.ApartFrom(required):pump-flow} into the surge tank, {required.ApartFrom(most):pump-flow} required{rule}{empties}")
            : Statement.Of("lift-pump.too-small-at-most", $"brings at most {most.ApartFrom(required):pump-flow} into the surge tank, at least {required.ApartFrom(most):pump-flow} required{rule}{empties}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // As for the pump: the largest flow against the highest pressure serves every point.
        double reserve = task.Parts.Limits.PumpReserve.DecimalFractions;
        double flow = task.Points.Max(point => point.SolvedCircuit.Lift!.Joined.RequiredWith(reserve)) * (1 + Remedy.Hair);
        VolumeFlow required = VolumeFlow.FromCubicMetersPerSecond(flow);
        Pressure rise = Pressure.FromPascals(task.Points.Max(point => point.SolvedCircuit.Lift!.Joined.FullTask.RiseToDeliver(flow)));
        ElectricPotential voltage = ElectricPotential.FromVolts(
            task.Points.Min(point => point.SolvedCircuit.Lift!.Filling.LowerPumps.Min(
                pump => pump.IsStopped ? point.Point.Conditions.SupplyVolts : pump.Voltage)));
        return Remedy.Of(
            Part,
            required,
            task.Parts.SurgeTank!.ReturnsTo == ReturnDestination.MainTank
                ? Statement.Of(
                    "lift-pump.larger-or-return",
                    $"A lift pump that brings at least {required:pump-flow:up} against {rise:pressure:up} with {voltage:voltage:down} at the motor, or a return to the surge tank, which leaves it only what is injected to bring.")
                : Statement.Of(
                    "lift-pump.larger",
                    $"A lift pump that brings at least {required:pump-flow:up} against {rise:pressure:up} with {voltage:voltage:down} at the motor."));
    }

    private static bool IsExact(SolvedLift lift) =>
        lift.MaximumLifted <= lift.MinimumLifted * (1 + 1e-9) && lift.Joined.MaximumDraw <= lift.Joined.MinimumDraw * (1 + 1e-9);

    private static Statement NotDecided(SolvedPoint point, SolvedLift lift)
    {
        PumpPoint[] pumps = lift.Filling.Pumps;
        if (Array.Find(pumps, pump => pump.Coverage.HasFlag(PumpCoverage.VoltageBelow)) is { Pump: not null } slow)
        {
            return Statement.Of(
                "lift-pump.voltage-below-data",
                $"the lowest curve of {slow.Pump.Name} was measured at {slow.Pump.Curves[0].Voltage} and gives no data for {ElectricPotential.FromVolts(slow.Voltage)}");
        }

        if (double.IsNaN(lift.MinimumLifted))
        {
            // With the tank full it draws more, and its feed leaves it less.
            return Statement.Of("lift-pump.data-not-covered", $"the lift pump's data does not cover the voltage that reaches it with the surge tank full");
        }

        if (double.IsNaN(lift.Joined.MaximumDraw) || double.IsNaN(lift.Joined.MinimumDraw))
        {
            return Statement.Of(
                "lift-pump.draw-not-known",
                $"how much the main pumps draw from the surge tank is not known, and all of it goes on to the main tank");
        }

        Ratio reserve = point.Parts.Limits.PumpReserve;
        VolumeFlow lower = Flow(PumpDuty.Required<Real>(lift.Joined.MinimumDraw, reserve.DecimalFractions, 0));
        VolumeFlow upper = Flow(PumpDuty.Required<Real>(lift.Joined.MaximumDraw, reserve.DecimalFractions, 0));
        return double.IsNaN(lift.MaximumLifted)
            ? Statement.Of(
                "lift-pump.pressure-below-data",
                $"the lift pump's data does not cover so low a pressure: it brings at least {Flow(lift.MinimumLifted):pump-flow} into the surge tank, {upper:pump-flow} required")
            : Statement.Of(
                "lift-pump.bounds",
                $"the pumps' data ends before the point: it is known only that {Flow(lift.MinimumLifted):pump-flow} to {Flow(lift.MaximumLifted):pump-flow} are brought into the surge tank, {lower:pump-flow} to {upper:pump-flow} required");
    }

    private static VolumeFlow Flow(Real flow) => VolumeFlow.FromCubicMetersPerSecond(flow.Value);
}
