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
        where T : struct, IReal<T> => CheckReading.AtMost<T>(at.Minimum.WireCurrent, at.Maximum.WireCurrent, at.WireAmpacity);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        if (!circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        if (circuit.HottestWire < 0)
        {
            return Statement.Of("wire.no-ampacity", $"the ampacity of no wire is known");
        }

        Feed feed = circuit.Pumps[circuit.HottestWire].Pump.Feed!;
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CurrentNotDecided(circuit, circuit.HottestWire, reading.Allowed);
        }

        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        ElectricCurrent ampacity = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return outcome == Outcome.Fails
            ? Statement.Of("wire.over", $"{feed.Name} carries {used}, over its ampacity of {ampacity} in surroundings of {feed.Ambient!.Value}")
            : Statement.Of("wire.within", $"{feed.Name} carries {used} of at most {ampacity} in surroundings of {feed.Ambient!.Value}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // A requirement rounded down would not meet itself.
        ElectricCurrent most = ElectricCurrent.FromAmperes(Math.Ceiling(10 * task.Failing.Max(point => PointReading.Of(point).Maximum.WireCurrent)) / 10);
        return Remedy.Of(
            Part,
            most,
            Statement.Of(
                "wire.thicker",
                $"Wire with an ampacity of more than {most} ({AmpacityTable.Source}), or insulation for a higher temperature, or a cooler route."));
    }

    /// <summary>That the bounds of a pump's current lie on either side of its limit.</summary>
    internal static Statement CurrentNotDecided(in SolvedCircuit circuit, int pump, double allowed)
    {
        (double minimum, double maximum) = circuit.CurrentOf(pump);
        return CircuitFinding.CurrentNotDecided(minimum, maximum, allowed);
    }

    private static bool IsNotCovered(Pump pump) => pump.Feed is { Ampacity: not null } feed && double.IsNaN(feed.AmpacityAmperes);
}
