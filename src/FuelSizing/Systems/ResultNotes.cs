using FuelSizing.Circuits;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>What a careful reader should know about a result's numbers.</summary>
internal static class ResultNotes
{
    /// <summary>What a note is about, so that a sweep says it once.</summary>
    internal enum About
    {
        /// <summary>The two reckonings of demand.</summary>
        Demand,

        /// <summary>Dead time.</summary>
        DeadTime,

        /// <summary>The pump's voltage.</summary>
        PumpVoltage,

        /// <summary>A curve carried to another voltage.</summary>
        PumpScaling,

        /// <summary>The returned flow.</summary>
        Return,
    }

    /// <summary>The notes to one result.</summary>
    public static IEnumerable<Note> Of(OperatingResult result)
    {
        Ratio difference = result.Demand.Difference;
        if (result.Point.Boost.Pascals >= 0 && Math.Abs(difference.Percent) > 15)
        {
            yield return new(
                About.Demand,
                Math.Abs(difference.Percent),
                $"Fuel reckoned from power is {Readable.Change(difference)} off that from air at {result.Point}: volumetric efficiency, BSFC, lambda or drivetrain loss does not fit the others.");
        }

        if (result.System.Injectors.Injector.DeadTime.IgnoresPressure)
        {
            yield return new(About.DeadTime, 0, "Dead time is taken to be the same at every pressure: an estimate.");
        }

        foreach (PumpPoint pump in result.PumpPoints)
        {
            ElectricPotential motor = ElectricPotential.FromVolts(pump.Voltage);
            if (pump.Coverage.HasFlag(PumpCoverage.VoltageAbove))
            {
                yield return new(
                    About.PumpVoltage,
                    0,
                    $"The highest curve of {pump.Pump.Name}, {Readable.Of(pump.Pump.Curves[^1].Voltage)}, is used unchanged at {Readable.Of(motor)}, where the pump delivers no less.");
            }

            if (pump.Coverage.HasFlag(PumpCoverage.Scaled))
            {
                yield return new(
                    About.PumpScaling,
                    -pump.Voltage,
                    $"{pump.Pump.Name} at {Readable.Of(motor)} is scaled from its {Readable.Of(pump.Pump.Curves[0].Voltage)} curve by the affinity laws: an estimate.");
            }
        }

        if (result.RailState == RailState.AtRegulatorLimit)
        {
            yield return new(
                About.Return,
                result.InjectedFlow.CubicMetersPerSecond,
                $"Returned flow at {result.Point} is under the {Readable.PumpFlow(result.System.Regulator.MinimumReturnFlow)} that the regulator needs to govern: rail pressure is no longer sure.");
        }
    }

    /// <summary>A note, its subject, and how grave it is among notes on that subject.</summary>
    internal sealed record Note(About Subject, double Weight, string Text);
}
