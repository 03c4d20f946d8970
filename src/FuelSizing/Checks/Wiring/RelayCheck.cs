using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The relay of a feed: the highest steady current of all pumps on it against what its contacts carry continuously.</summary>
/// <remarks>
/// Judged where a rating is given, and nowhere missed: a feed may have no relay, and nothing else in its description says that it has one. What the
/// contacts make and break, at the pump's start, is not judged.
/// </remarks>
internal sealed class RelayCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Current through the relay", LimitDirection.AtMost, si => ElectricCurrent.FromAmperes(si), units => units.Current);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        judged.PumpsOf(parts)?.Pumps.SelectMany(FeedsGiven.PartsOf).Any(feed => feed.Relay is not null) == true ? Applicability.Judged : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        return CheckReading.AtMost<T>(figures.Minimum.RelayCurrent, figures.Maximum.RelayCurrent, figures.RelayRating);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SolvedCircuit circuit = judged.Of(point);
        if (circuit.HeaviestLoadedRelay < 0 || !circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.CurrentNotDecided(circuit.CurrentOf(circuit.HeaviestLoadedRelay), reading.Allowed);
        }

        string feed = circuit.FeedAt(circuit.HeaviestLoadedRelay)!.Name;
        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        ElectricCurrent rating = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return outcome == Outcome.Fails
            ? Statement.Of("relay.overloaded", $"{used.ApartFrom(rating):current} through the relay of {feed}, over the {rating.ApartFrom(used):current} that its contacts carry continuously")
            : Statement.Of("relay.within", $"{used} through the relay of {feed}, of the {rating} that its contacts carry continuously");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // With thicker wire a motor draws more: the relay must carry that too.
        ElectricCurrent most = ElectricCurrent.FromAmperes(WithoutWireLoss.Current(
            task, judged, (state, place) => WithoutWireLoss.CarriedBy(state, place) > state.FeedAt(place)?.Relay?.Amperes));
        return Remedy.Of(
            Part,
            most,
            Statement.Of("relay.larger", $"A relay whose contacts carry at least {most:current:up} continuously where it sits, or a relay for each pump."));
    }
}
