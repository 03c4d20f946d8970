using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>What a pump of which the kind is given delivers and draws, with slopes: of all kinds and windings that it may have the bound that is asked for.</summary>
internal static class DrivenTangents
{
    /// <summary>Which curves they are for, then the speeds of a turbine with a winding by the lower curve and by the upper one.</summary>
    public const int Guesses = 3;

    /// <summary>Carries both curves around a voltage there; false where one ends above zero flow, or a step leads nowhere.</summary>
    /// <param name="driven">For each measured curve, voltage rising, the kinds and windings that the pump may have.</param>
    /// <param name="places">Of the curves on either side of the voltage; one twice where but one counts.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    /// <param name="reading">Which bound of the flow; of the current the one that leaves the motor what goes with it.</param>
    /// <param name="guesses">Speeds, which are corrected.</param>
    /// <param name="carried">What is delivered and drawn.</param>
    /// <param name="moved">How the speeds were corrected, and how they change with the voltage, 1/V.</param>
    public static bool TryCarry(
        DrivenCurve[][] driven,
        (int Lower, int Upper) places,
        double rise,
        double volts,
        PumpReading reading,
        Span<double> guesses,
        out CarriedCurve carried,
        out SpeedsMoved moved)
    {
        (DrivenCurve[] below, DrivenCurve[] above) = (driven[places.Lower], driven[places.Upper]);
        (carried, moved) = (default, default);
        bool alone = places.Lower == places.Upper;
        double pair = (places.Lower * driven.Length) + places.Upper;
        if (guesses[0] != pair)
        {
            (guesses[0], guesses[1], guesses[2]) = (pair, volts / below[0].MeasuredVolts, volts / above[0].MeasuredVolts);
        }

        int laws = below.Length;
        Span<CarriedLaw> lower = stackalloc CarriedLaw[laws];
        Span<CarriedLaw> upper = stackalloc CarriedLaw[laws];
        for (int law = 0; law < laws; law++)
        {
            if (!below[law].TryCarry(rise, volts, guesses[1], reading, out lower[law])
                || (!alone && !above[law].TryCarry(rise, volts, guesses[2], reading, out upper[law])))
            {
                return false;
            }

            if (below[law].IsTurbine)
            {
                moved = alone
                    ? new(lower[law].SpeedMove, lower[law].SpeedByVolts, 0, 0)
                    : new(lower[law].SpeedMove, lower[law].SpeedByVolts, upper[law].SpeedMove, upper[law].SpeedByVolts);
            }
        }

        double width = above[0].MeasuredVolts - below[0].MeasuredVolts;
        double share = alone ? 0 : (volts - below[0].MeasuredVolts) / width;
        bool mostFlow = reading == PumpReading.Upper;
        bool mostCurrent = reading.Opposite() != PumpReading.Lower;
        Sloped flow = default;
        Sloped current = default;
        for (int law = 0; law < laws; law++)
        {
            flow = Sloped.Bound(flow, law == 0, mostFlow, Between(lower[law].Flow, upper[law].Flow));
            for (int winding = 0; winding < laws; winding++)
            {
                // Of the windings between the two that bound them some current may lie outside of both: see DrivenCurve.CurrentAt.
                if (below[winding].IsTurbine == below[law].IsTurbine)
                {
                    current = Sloped.Bound(
                        current, law == 0 && winding == 0, mostCurrent, Between(lower[law].CurrentAt(lower[winding]), upper[law].CurrentAt(upper[winding])));
                }
            }
        }

        carried = new(flow.Value, flow.ByRise, flow.ByVolts, current.Value, current.ByRise, current.ByVolts);
        return true;

        Sloped Between(in Sloped one, in Sloped other) => alone ? one : new(
            one.Value + (share * (other.Value - one.Value)),
            one.ByRise + (share * (other.ByRise - one.ByRise)),
            one.ByVolts + (share * (other.ByVolts - one.ByVolts)) + ((other.Value - one.Value) / width));
    }
}

/// <summary>A figure with its slopes.</summary>
/// <param name="Value">The figure.</param>
/// <param name="ByRise">How it changes with the rise, per Pa.</param>
/// <param name="ByVolts">How it changes with the motor's voltage, per V.</param>
internal readonly record struct Sloped(double Value, double ByRise, double ByVolts)
{
    /// <summary>The more or the less of what was found and another figure; the other one if nothing was found yet.</summary>
    public static Sloped Bound(in Sloped found, bool isFirst, bool most, in Sloped other) =>
        isFirst || (most ? other.Value > found.Value : other.Value < found.Value) ? other : found;
}

/// <summary>A curve carried to a voltage by one kind and winding, to the first order in what its speed's guess is off by.</summary>
/// <param name="Flow">m³/s.</param>
/// <param name="Current">With its own speed throughout, A.</param>
/// <param name="Measured">Current that was measured at the rise it is read at, A.</param>
/// <param name="MeasuredByRise">How that changes with that rise, A/Pa.</param>
/// <param name="At">That rise, Pa.</param>
/// <param name="Speed">As a share of the measured one.</param>
/// <param name="SpeedByVolts">How it changes with the voltage, 1/V.</param>
/// <param name="SpeedMove">What its guess is to be corrected by; zero where the speed follows from the voltage alone.</param>
/// <param name="IsFromVolts">True if the speed follows from the voltage alone.</param>
internal readonly record struct CarriedLaw(
    Sloped Flow, Sloped Current, double Measured, double MeasuredByRise, double At, double Speed, double SpeedByVolts, double SpeedMove, bool IsFromVolts)
{
    /// <summary>The current of this speed at another winding's flow coefficient.</summary>
    public Sloped CurrentAt(in CarriedLaw other)
    {
        if (!IsFromVolts || other.Speed == Speed)
        {
            return Current;
        }

        double squared = Speed * Speed;
        return new(
            PumpScaling.Current<Real>(other.Measured, Speed),
            squared * other.MeasuredByRise / (other.Speed * other.Speed),
            (2 * Speed * SpeedByVolts * other.Measured) - (2 * squared * other.MeasuredByRise * other.At * other.SpeedByVolts / other.Speed));
    }
}

/// <summary>How the speeds of a turbine by two curves are to be moved.</summary>
/// <param name="Lower">By the lower curve, at the voltage that was guessed.</param>
/// <param name="LowerByVolts">How that changes with the voltage, 1/V.</param>
/// <param name="Upper">By the upper curve.</param>
/// <param name="UpperByVolts">How that changes with the voltage, 1/V.</param>
internal readonly record struct SpeedsMoved(double Lower, double LowerByVolts, double Upper, double UpperByVolts)
{
    /// <summary>Moves the guesses with the voltage, V; false where a speed would not be one.</summary>
    public bool TryMove(double volts, Span<double> guesses)
    {
        guesses[1] += Lower + (LowerByVolts * volts);
        guesses[2] += Upper + (UpperByVolts * volts);
        return guesses[1] > 0 && guesses[2] > 0;
    }

    /// <summary>The furthest of the corrections.</summary>
    public double Furthest => Math.Max(Math.Abs(Lower), Math.Abs(Upper));
}
