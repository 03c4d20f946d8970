using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A pump's feed: voltage drop in its wiring against the limit.</summary>
internal sealed class FeedCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.Feed;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Voltage drop in the feed", LimitDirection.AtMost, si => ElectricPotential.FromVolts(si), units => units.VoltageDrop);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => FeedsGiven.Of(parts, pump => pump.Feed is not null, "feed");

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtMost<T>(
            at.Minimum.FeedDrop, at.Maximum.FeedDrop, at.Supply * parts.Limits.FeedDrop.DecimalFractions);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (!point.SolvedCircuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        PumpPoint fed = circuit.Pumps[circuit.LowestFed];
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            (double minimum, double maximum) = circuit.FeedDropOf(circuit.LowestFed) ?? (double.NaN, double.NaN);
            return CircuitFinding.DropNotDecided(minimum, maximum, reading.Allowed);
        }

        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.FeedDrop) is { } mark
            ? Statement.Of("feed.share", $", {point.Parts.Limits.FeedDrop} of the supply{mark}")
            : null;
        return Statement.Of(
            CheckReading.OutcomeOf(reading) == Outcome.Fails ? "feed.excessive-drop" : "feed.within",
            $"{fed.Pump.Name} gets {ElectricPotential.FromVolts(fed.Voltage)} at {ElectricCurrent.FromAmperes(fed.Current ?? 0)}: {ElectricPotential.FromVolts(reading.Used.Value):voltage-drop} lost of at most {ElectricPotential.FromVolts(reading.Allowed.Value):voltage-drop}{rule}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        ElectricResistance most = ElectricResistance.FromOhms(task.Failing.Min(LargestFeed));
        return Remedy.Of(
            Part,
            most,
            Statement.Of(
                "feed.less-resistance",
                $"A feed of no more than about {most} out and back: thicker or shorter wire, a relay near the pump, better connections."));
    }

    // At the voltage that the limit leaves, where the pump draws a little more than it does now.
    private static double LargestFeed(SolvedPoint point)
    {
        double supply = point.Point.Conditions.SupplyVolts;
        Real drop = supply * (Real)point.Parts.Limits.FeedDrop.DecimalFractions;
        PumpPoint worst = point.SolvedCircuit.Pumps[point.SolvedCircuit.LowestFed];
        double current = worst.Pump.CurrentAtMotor(worst.Rise, supply - drop, PumpReading.Upper) ?? 0;
        return drop.Value / current;
    }
}
