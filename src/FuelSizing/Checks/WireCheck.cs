using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The wire of a pump's feed: steady current against its ampacity.</summary>
internal sealed class WireCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.Wire;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Current in the wire", LimitDirection.AtMost, si => ElectricCurrent.FromAmperes(si), units => units.Current);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts)
    {
        Applicability given = FeedsGiven.Of(parts, pump => pump.Feed?.Ampacity is not null, "insulation rating and surroundings of the wire");
        return given.IsJudged && parts.Pump.Pumps.FirstOrDefault(IsNotCovered) is { Feed: { } feed }
            ? Applicability.JudgedInPart(Statement.Of("wire.not-covered", $"{feed.Name}: {feed.Ampacity!.Text}"))
            : given;
    }

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtMost<T>(at.WireCurrent, at.WireAmpacity);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (point.SolvedCircuit.HottestWire.Pump?.Feed is not { } feed || !point.SolvedCircuit.IsCovered)
        {
            return point.SolvedCircuit.IsCovered
                ? Statement.Of("wire.no-ampacity", $"the ampacity of no wire is known")
                : CircuitFinding.PumpNotCovered;
        }

        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        ElectricCurrent ampacity = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Fails
            ? Statement.Of("wire.over", $"{feed.Name} carries {used}, over its ampacity of {ampacity} in surroundings of {feed.Ambient!.Value}")
            : Statement.Of("wire.within", $"{feed.Name} carries {used} of at most {ampacity} in surroundings of {feed.Ambient!.Value}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // A requirement rounded down would not meet itself.
        ElectricCurrent most = ElectricCurrent.FromAmperes(Math.Ceiling(10 * task.Failing.Max(point => point.SolvedCircuit.HottestWire.Current ?? 0)) / 10);
        return Remedy.Of(
            Part,
            most,
            Statement.Of(
                "wire.thicker",
                $"Wire with an ampacity of more than {most} ({AmpacityTable.Source}), or insulation for a higher temperature, or a cooler route."));
    }

    private static bool IsNotCovered(Pump pump) => pump.Feed is { Ampacity: not null } feed && double.IsNaN(feed.AmpacityAmperes);
}
