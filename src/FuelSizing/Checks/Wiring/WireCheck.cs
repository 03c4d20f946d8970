using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The wire of a pump's feed: steady current against its ampacity.</summary>
internal sealed class WireCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Current in the wire", LimitDirection.AtMost, si => ElectricCurrent.FromAmperes(si), units => units.Current);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts)
    {
        Applicability given = FeedsGiven.Of(
            judged.PumpsOf(parts), pump => FeedsGiven.PartsOf(pump).Any(IsGiven), "insulation rating and surroundings of the wire");
        return given.IsJudged && judged.PumpsOf(parts)!.Pumps.SelectMany(GapsOf).OfType<Statement>().FirstOrDefault() is { } gap ? given.Lacking(gap) : given;
    }

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        return CheckReading.AtMost<T>(figures.Minimum.WireCurrent, figures.Maximum.WireCurrent, figures.WireAmpacity);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SolvedCircuit circuit = judged.Of(point);
        if (!circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        if (circuit.HottestWire < 0)
        {
            return Statement.Of("wire.no-ampacity", $"the ampacity of no wire is known");
        }

        (string name, Temperature? surroundings, _) = circuit.FeedAt(circuit.HottestWire)!.LimitingWire;
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.CurrentNotDecided(circuit.CurrentOf(circuit.HottestWire), reading.Allowed);
        }

        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        ElectricCurrent ampacity = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return outcome == Outcome.Fails
            ? Statement.Of("wire.over", $"{name} carries {used.ApartFrom(ampacity):current}, over its ampacity of {ampacity.ApartFrom(used):current} in surroundings of {surroundings!.Value}")
            : Statement.Of("wire.within", $"{name} carries {used} of at most {ampacity} in surroundings of {surroundings!.Value}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // Thicker wire loses less, and the motor then draws more: the wire must carry what is drawn with none of its loss.
        ElectricCurrent most = ElectricCurrent.FromAmperes(
            WithoutWireLoss.Current(task, judged, (state, place) => WithoutWireLoss.CarriedBy(state, place) > state.FeedAt(place)?.AmpacityAmperes));
        return Remedy.Of(
            Part,
            most,
            judged.PumpsOf(task.Failing[0].Parts)!.Pumps.Any(pump => FeedsGiven.PartsOf(pump).Any(feed => feed.IsDeratedByBundle))
            ? Statement.Of(
                "wire.thicker-in-bundle",
                $"Wire with an ampacity of at least {most:current:up} in its bundle ({AmpacityTable.Source}), or fewer conductors in the bundle, or insulation for a higher temperature, or a cooler route.")
            : Statement.Of(
                "wire.thicker",
                $"Wire with an ampacity of at least {most:current:up} ({AmpacityTable.Source}), or insulation for a higher temperature, or a cooler route."));
    }

    private static bool IsGiven(Feed feed) => feed.Ampacity is not null || feed.Ground?.Ampacity is not null;

    private static IEnumerable<Statement?> GapsOf(Pump pump)
    {
        Feed[] feeds = [.. FeedsGiven.PartsOf(pump)];
        bool given = Array.Exists(feeds, IsGiven);
        return feeds.Select(feed => given ? GapOf(feed) : null);
    }

    // What is not known of a wire of a pump of which another is known, or given.
    private static Statement? GapOf(Feed feed) =>
        feed.Ampacity is null ? Statement.Of("wire.half-given", $"no insulation rating and surroundings given of {feed.Name}")
        : double.IsNaN(feed.Ampacity.Amperes) ? Statement.Of("wire.not-covered", $"{feed.Name}: {feed.Ampacity.Text}")
        : feed.Ground is { Ampacity: null } ? Statement.Of("wire.ground-not-given", $"no insulation rating and surroundings given of the ground wire of {feed.Name}")
        : feed.Ground is { Ampacity: { } back } && double.IsNaN(back.Amperes) ? Statement.Of("wire.ground-not-covered", $"the ground wire of {feed.Name}: {back.Text}")
        : null;
}
