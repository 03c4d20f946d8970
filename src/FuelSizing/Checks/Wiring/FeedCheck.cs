using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A pump's feed: voltage drop in its wiring against the limit.</summary>
internal sealed class FeedCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Voltage drop in the feed", LimitDirection.AtMost, si => ElectricPotential.FromVolts(si), units => units.VoltageDrop);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => FeedsGiven.Of(judged.PumpsOf(parts), pump => pump.Feed is not null, "feed");

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        return CheckReading.AtMost<T>(
            figures.Minimum.FeedDrop, figures.Maximum.FeedDrop, at.Supply * parts.Limits.FeedDropShare);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SolvedCircuit circuit = judged.Of(point);
        if (!circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.DropNotDecided(
                circuit.FeedDropOf(circuit.LowestFed) ?? (double.NaN, double.NaN), reading.Allowed);
        }

        // Voltage and current are those of the bound that decides, so that they go with the drop.
        (double least, double most) = circuit.CurrentOf(circuit.LowestFed);
        ElectricCurrent current = ElectricCurrent.FromAmperes(outcome == Outcome.Fails ? least : most);
        ElectricPotential motor = ElectricPotential.FromVolts(circuit.State.FedVoltage - reading.Used.Value);
        Pump fed = circuit.Pumps[circuit.LowestFed].Pump;
        string name = fed.Converter?.Name ?? fed.Name;

        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.FeedDrop) is { } mark
            ? Statement.Of("feed.share", $", {point.Parts.Limits.FeedDrop} of the supply{mark}")
            : null;
        ElectricPotential drop = ElectricPotential.FromVolts(reading.Used.Value);
        ElectricPotential allowed = ElectricPotential.FromVolts(reading.Allowed.Value);
        return outcome == Outcome.Fails
            ? Statement.Of(
                "feed.excessive-drop",
                $"{name} gets {motor} at {current}: {drop.ApartFrom(allowed):voltage-drop} lost of at most {allowed.ApartFrom(drop):voltage-drop}{rule}")
            : Statement.Of(
                "feed.within",
                $"{name} gets {motor} at {current}: {drop:voltage-drop} lost of at most {allowed:voltage-drop}{rule}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // The one that asks for least first; then all others, for a point of which nothing could be said at so low a voltage may fail as well.
        double ohms = Math.Min(MaximumOhms, 2 * task.Failing.Min(Estimate));
        foreach (SolvedPoint point in task.Failing.OrderBy(Estimate).Concat(task.Points))
        {
            ohms = LeftWith(ohms, point) < 0 ? LargestFeed(point, ohms) : ohms;
        }

        ElectricResistance most = ElectricResistance.FromOhms(ohms);
        return Remedy.Of(
            Part,
            most,
            judged.PumpsOf(task.Failing[0].Parts)!.Pumps.Any(pump => pump.Feed?.Shared is not null)
            ? Statement.Of(
                "feed.less-resistance-shared",
                $"A feed of no more than {most:resistance:down} out and back, for each pump whose feed has more, and no more in any part that pumps share: thicker or shorter wire, a relay near the pump, better connections, or a feed of its own for each.")
            : Statement.Of(
                "feed.less-resistance",
                $"A feed of no more than {most:resistance:down} out and back, for each pump whose feed has more: thicker or shorter wire, a relay near the pump, better connections."));
    }

    // What one contact may have, which is far more than any feed that keeps a limit.
    private const double MaximumOhms = 1;

    /// <summary>
    /// Margin at a point if no feed had more resistance, the circuit solved again, for with a higher voltage the pump draws more; not a number
    /// where it is not known.
    /// </summary>
    private double LeftWith(double ohms, SolvedPoint point)
    {
        SystemParts rewired = judged.Rewired(point.Parts, feed => feed.WithLoopOfAtMost(ohms));
        PointDemand demand = point.SolvedDemand;
        return Read<Real>(rewired, PointReading.Of(rewired, demand, rewired.CircuitAt(demand), point.Judged)).Margin;
    }

    /// <summary>The largest resistance that holds at a point, below one that fails there.</summary>
    private double LargestFeed(SolvedPoint point, double start)
    {
        double share = Bracket.Of(x => LeftWith(x * start, point) is var left && double.IsNaN(left) ? -1 : Math.Clamp(left, -1, 1), 0, 1);
        for (double hair = Remedy.Hair; hair < 1; hair *= 4)
        {
            if (LeftWith(share * start * (1 - hair), point) >= 0)
            {
                return share * start * (1 - hair);
            }
        }

        return 0;
    }

    // At the voltage that the limit leaves, where the pump draws a little more than it does now, and against the same pressure.
    private double Estimate(SolvedPoint point)
    {
        double supply = point.Point.Conditions.SupplyVolts;
        Real drop = supply * (Real)point.Parts.Limits.FeedDrop.DecimalFractions;
        SolvedCircuit circuit = judged.Of(point);
        PumpPoint worst = circuit.Pumps[circuit.LowestFed];
        double current = worst.Pump.Converter is not null ? worst.MaximumFeedCurrent ?? 0 : worst.Pump.CurrentAtMotor(worst.Rise, supply - drop, PumpReading.Upper) ?? 0;
        return current > 0 ? drop.Value / current : MaximumOhms;
    }
}
