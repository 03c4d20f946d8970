using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>What a careful reader should know about a result's numbers.</summary>
internal static class ResultNotes
{
    /// <summary>What a note is about, so that a sweep gives it once.</summary>
    internal enum About
    {
        /// <summary>The two estimates of demand.</summary>
        Demand,

        /// <summary>The BSFC.</summary>
        Consumption,

        /// <summary>Dead time.</summary>
        DeadTime,

        /// <summary>The pump's voltage.</summary>
        PumpVoltage,

        /// <summary>A curve carried to another voltage.</summary>
        PumpScaling,

        /// <summary>The returned flow.</summary>
        Return,

        /// <summary>The dead time of the secondary injectors.</summary>
        SecondaryDeadTime,

        /// <summary>The hand-over to a secondary set of injectors.</summary>
        HandOver,

        /// <summary>What a second stream would help, and does not.</summary>
        SecondStream,

        /// <summary>The density of its liquid.</summary>
        StreamDensity,

        /// <summary>Main fuel that is taken back for it.</summary>
        TakenBack,
    }

    /// <summary>The notes to one result.</summary>
    public static IEnumerable<Note> Of(SolvedPoint result)
    {
        Ratio difference = result.Demand.Difference;
        if (result.Point.Boost.Pascals >= 0 && Math.Abs(difference.Percent) > 15)
        {
            yield return new(
                About.Demand,
                Math.Abs(difference.Percent),
                Statement.Of(
                    "demand.estimates-differ",
                    $"Fuel calculated from power differs by {difference:change} from that calculated from air at {result.Point}: volumetric efficiency, BSFC, lambda or drivetrain loss does not fit the others."));
        }

        if (result.Parts.Demand.Consumption is { IsConverted: true } use)
        {
            yield return new(
                About.Consumption,
                0,
                Statement.Of(
                    "demand.consumption-converted",
                    $"BSFC on {use.Fuel.Name}, {use.BrakeSpecificFuelConsumption}, is converted from {use.StatedConsumption} on {use.StatedFuel.Name} at equal brake efficiency: an estimate."));
        }

        if (result.Parts.Injectors.Injector.DeadTime.IgnoresPressure)
        {
            yield return new(
                About.DeadTime,
                0,
                Statement.Of("dead-time.one-pressure", $"Dead time is taken to be the same at every pressure: an estimate."));
        }

        if (result.Parts.StagedInjectors is { } staged)
        {
            if (staged.Secondary.Injector.DeadTime.IgnoresPressure)
            {
                yield return new(
                    About.SecondaryDeadTime,
                    0,
                    Statement.Of("dead-time.one-pressure-secondary", $"Dead time of the secondary injectors is taken to be the same at every pressure: an estimate."));
            }

            yield return new(
                About.HandOver,
                0,
                Statement.Of(
                    "hand-over.transient",
                    $"Secondary set: {staged.HandOver.Text}. Every point is steady: while the hand-over is passed, fuel that still has to wet the walls of another port, or a set that does not open, leans the mixture under load. Check lambda over the hand-over in small steps."));
        }

        foreach (Note note in OfStream(result))
        {
            yield return note;
        }

        foreach (PumpPoint pump in result.SolvedCircuit.Pumps)
        {
            ElectricPotential motor = ElectricPotential.FromVolts(pump.Voltage);
            if (pump.Pump.Drive is { } drive && (pump.Coverage & (PumpCoverage.VoltageAbove | PumpCoverage.Scaled)) != 0)
            {
                yield return new(
                    About.PumpScaling,
                    -pump.Voltage,
                    Statement.Of(
                        "pump.carried-by-drive",
                        $"{pump.Pump.Name} at {motor} is carried from its {(pump.Coverage.HasFlag(PumpCoverage.Scaled) ? pump.Pump.Curves[0] : pump.Pump.Curves[^1]).Voltage} curve as a {drive.Text}: an estimate. Each check takes the bound that is conservative for it."));
                continue;
            }

            if (pump.Coverage.HasFlag(PumpCoverage.VoltageAbove))
            {
                yield return new(
                    About.PumpVoltage,
                    0,
                    Statement.Of(
                        "pump.voltage-above-data",
                        $"The highest curve of {pump.Pump.Name}, {pump.Pump.Curves[^1].Voltage}, is used unchanged at {motor} for what the pump delivers at the least; return line, inlet, filter, pressure and current are judged by the most that it may deliver there."));
            }

            if (pump.Coverage.HasFlag(PumpCoverage.Scaled))
            {
                yield return new(
                    About.PumpScaling,
                    -pump.Voltage,
                    Statement.Of(
                        "pump.scaled",
                        $"{pump.Pump.Name} at {motor} is scaled from its {pump.Pump.Curves[0].Voltage} curve by the affinity laws: an estimate. Each check takes the bound that is conservative for it."));
            }
        }

        if (result.RailState == RailState.AtRegulatorLimit)
        {
            yield return new(
                About.Return,
                result.SolvedDemand.Injected,
                Statement.Of(
                    "regulator.return-too-small",
                    $"Returned flow at {result.Point} is below the {result.Parts.Regulator.MinimumReturnFlow:pump-flow} that the regulator needs to regulate: rail pressure is uncertain."));
        }

        if (result.SolvedCircuit.Task.Held is not null && result.ReturnedFlow is { } returned && result.Parts.Regulator.IsPastEnd(returned.CubicMetersPerSecond))
        {
            yield return new(
                About.Return,
                result.SolvedDemand.Injected,
                Statement.Of(
                    "regulator.curve-ends",
                    $"Returned flow at {result.Point}, {returned:pump-flow}, lies past an end of the regulator's measured curve: below the first point the rail may be lower than shown, beyond the last one higher, by no more than the pumps give. Each check takes the bound that is conservative for it."));
        }
    }

    /// <summary>That a rising-rate unit does nothing at any of these boosts, which whoever fitted it did not mean; none if it acts.</summary>
    public static Statement? NeverActs(PressureRegulator regulator, IReadOnlyList<Pressure> boosts) => regulator switch
    {
        RegulatorSeries { IsGainQuoted: false } series when boosts.All(boost => series.Unit.SetPascals(boost.Pascals) <= series.BaseRegulator.SetPascals(boost.Pascals)) =>
            Statement.Of(
                "regulator.unit-never-acts",
                $"The rising-rate unit never acts from {boosts[0]:boost} to {boosts[^1]:boost}: it would hold at most {Highest(series.Unit, boosts)} where the base regulator holds {Highest(series.BaseRegulator, boosts)}. If its gain is quoted over base pressure, give the unit that base pressure."),
        RisingRate { Gain: > 1 } rate when boosts[^1] <= rate.Onset => Statement.Of(
            "regulator.gain-never-sets-in", $"The gain of {rate.Gain:0.##} sets in above {rate.Onset:boost}, which no boost here exceeds."),
        _ => null,
    };

    private static IEnumerable<Note> OfStream(SolvedPoint result)
    {
        if (result.SecondStream is not { Acts: true, Stream: { } stream })
        {
            yield break;
        }

        yield return stream.TakesBack
            ? new(
                About.TakenBack,
                result.SolvedDemand.TakenBack,
                Statement.Of(
                    "stream.depends",
                    $"Up to {stream.MainFuelTakenBack} of the main fuel is taken back for {stream.Name}: if it stops (pump, fuse, nozzle, empty tank), the engine runs lean on boost at once. Do not run it without a safeguard that takes the boost away then."))
            : new(
                About.SecondStream,
                0,
                Statement.Of(
                    "stream.not-counted", $"The fuel system is judged without the help of {stream.Name}, which may stop; its fuel counts for the rich mixture only."));
        if (stream.Fluid.IsDensityAssumed)
        {
            yield return new(
                About.StreamDensity,
                0,
                Statement.Of(
                    "stream.density-assumed",
                    $"The density of {stream.Fluid.Name} is taken from an ideal mixture: it may be up to 3.5 % higher. Measure it for flows by mass better than 2 %."));
        }
    }

    private static Pressure Highest(PressureRegulator regulator, IReadOnlyList<Pressure> boosts) =>
        Pressure.FromPascals(boosts.Max(boost => regulator.SetPascals(boost.Pascals)));

    /// <summary>A note, its subject, and how grave it is among notes on that subject.</summary>
    internal sealed record Note(About Subject, double Weight, Statement Text);
}
