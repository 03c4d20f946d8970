using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The fuse of a pump's feed: it carries the steady current, and it protects the wire.</summary>
/// <remarks>A steady load of at most 80 % of the rating is common practice, no source. The rating is at most the wire's ampacity.</remarks>
internal sealed class FuseCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Current through the fuse", LimitDirection.AtMost, si => ElectricCurrent.FromAmperes(si), units => units.Current);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts)
    {
        Applicability given = FeedsGiven.Of(judged.PumpsOf(parts), pump => pump.Feed?.ProtectingFuse is not null, "fuse");
        return given.IsJudged && judged.PumpsOf(parts)!.Pumps.SelectMany(FeedsGiven.PartsOf).FirstOrDefault(feed => feed.ProtectingFuse is not null && feed.HasUnknownAmpacity) is { } open
            ? given.Lacking(Statement.Of("fuse.ampacity-not-known", $"whether it protects the wire of {open.Name}, whose ampacity is not known"))
            : given;
    }

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        T allowed = figures.FuseRating * FuseChoice.MaximumLoad.DecimalFractions;
        CheckReading<T> load = CheckReading.AtMost<T>(figures.Minimum.FuseCurrent, figures.Maximum.FuseCurrent, allowed);
        if (Unprotected(parts) is not { } feed)
        {
            return load;
        }

        // Used and allowed are those of the rule that is broken: a fuse over the ampacity is so whatever it carries.
        T rating = feed.ProtectingFuse!.Value.Amperes;
        T ampacity = feed.AmpacityAmperes;
        T protects = CheckReading.MarginOf<T>(ampacity, rating);
        return new(
            T.IfLess(protects, 0, rating, load.Used),
            T.IfLess(protects, 0, ampacity, allowed),
            T.IfLess(protects, load.Margin, protects, load.Margin),
            T.IfLess(protects, 0, protects, load.BestMargin));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (Unprotected(point.Parts) is { ProtectingFuse: { } large } unprotected && unprotected.AmpacityAmperes < large.Amperes)
        {
            ElectricCurrent ampacity = ElectricCurrent.FromAmperes(unprotected.AmpacityAmperes);
            return Statement.Of(
                "fuse.over-ampacity",
                $"a fuse of {large.ApartFrom(ampacity):current} does not protect {unprotected.Name}, whose wire has an ampacity of {ampacity.ApartFrom(large):current}");
        }

        SolvedCircuit circuit = judged.Of(point);
        if (circuit.HeaviestLoadedFuse < 0 || !circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        ElectricCurrent rating = circuit.FeedAt(circuit.HeaviestLoadedFuse)!.Fuse!.Value;
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.CurrentNotDecided(circuit.CurrentOf(circuit.HeaviestLoadedFuse), reading.Allowed);
        }

        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        ElectricCurrent allowed = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return outcome == Outcome.Fails
            ? Statement.Of("fuse.overloaded", $"{used.ApartFrom(allowed):current} through a fuse of {rating}, over {FuseChoice.MaximumLoad} of its rating (common practice, no source)")
            : Statement.Of("fuse.within", $"{used} through a fuse of {rating}, of at most {FuseChoice.MaximumLoad} of its rating (common practice, no source)");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // The wire may have to be thicker with the fuse; it then loses less, and the motor draws more.
        ElectricCurrent rating = ElectricCurrent.FromAmperes(
            WithoutWireLoss.Current(task, judged, IsBroken)
            / FuseChoice.MaximumLoad.DecimalFractions
            * (1 + Remedy.Hair));
        return Remedy.Of(
            Part,
            rating,
            Statement.Of("fuse.other", $"A fuse of at least {rating:current:up}, and wire with an ampacity of no less than the fuse's rating."));
    }

    /// <summary>True where a fuse carries too much, or is over its wire's ampacity.</summary>
    private static bool IsBroken(SolvedCircuit state, int place) =>
        state.FeedAt(place) is { ProtectingFuse: { } fuse } feed
        && (WithoutWireLoss.CarriedBy(state, place) > feed.Fuse?.Amperes * FuseChoice.MaximumLoad.DecimalFractions || feed.AmpacityAmperes < fuse.Amperes);

    /// <summary>The feed whose fuse exceeds its wire's ampacity by most, or comes nearest to that; none where no ampacity is known.</summary>
    private Feed? Unprotected(SystemParts parts)
    {
        Feed? worst = null;
        double share = double.NegativeInfinity;
        foreach (Feed feed in judged.PumpsOf(parts)!.Pumps.SelectMany(FeedsGiven.PartsOf))
        {
            if (feed.ProtectingFuse is { } fuse && fuse.Amperes / feed.AmpacityAmperes is var load && load > share)
            {
                (worst, share) = (feed, load);
            }
        }

        return worst;
    }
}
