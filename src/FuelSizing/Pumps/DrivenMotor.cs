using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Voltage that a feed leaves at the motor of a pump whose winding is given, found together with the motor's speed.</summary>
/// <remarks>
/// By Newton's steps in the voltage and in the speed that each of the two curves around it is carried to. A search for the voltage that asks at each of
/// its steps for a search for the speed comes to the same in five times as long.
/// </remarks>
internal static class DrivenMotor
{
    // What is left after one of Newton's steps is of the order of its square.
    private const double SmallMove = 1e-8;
    private const int MaximumSteps = 12;

    /// <summary>Finds the voltage; false where a step leads nowhere, or no winding is given.</summary>
    /// <param name="driven">For each measured curve, voltage rising, the kinds that the pump may be of.</param>
    /// <param name="supply">V.</param>
    /// <param name="feedOhms">Ω.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="most">True if the kind that draws most counts, false for the one that draws least.</param>
    /// <param name="volts">V.</param>
    public static bool TryVoltage(DrivenCurve[][] driven, double supply, double feedOhms, double rise, bool most, out double volts)
    {
        // What draws most leaves least: the voltage with the most of several currents is the least of their voltages.
        volts = most ? double.PositiveInfinity : double.NegativeInfinity;
        for (int law = 0; law < driven[0].Length; law++)
        {
            if (!driven[0][law].HasWinding || !TryLaw(driven, law, supply, feedOhms, rise, out double found))
            {
                return false;
            }

            volts = most ? Math.Min(volts, found) : Math.Max(volts, found);
        }

        return volts >= Pump.MinimumMotorShare * supply && volts <= supply;
    }

    private static bool TryLaw(DrivenCurve[][] driven, int law, double supply, double feedOhms, double rise, out double volts)
    {
        volts = supply;
        (DrivenCurve? lower, DrivenCurve? upper) = (null, null);
        (double lowerSpeed, double upperSpeed) = (0, 0);
        for (int step = 0; step < MaximumSteps; step++)
        {
            (DrivenCurve below, DrivenCurve above) = Around(driven, law, volts);
            if (!ReferenceEquals(below, lower))
            {
                (lower, lowerSpeed) = (below, volts / below.MeasuredVolts);
            }

            if (!ReferenceEquals(above, upper))
            {
                (upper, upperSpeed) = (above, volts / above.MeasuredVolts);
            }

            Tried one = Tried.At(lower, rise, volts, lowerSpeed);
            bool alone = ReferenceEquals(lower, upper);
            Tried other = alone ? one : Tried.At(upper, rise, volts, upperSpeed);
            double width = upper.MeasuredVolts - lower.MeasuredVolts;
            double share = alone ? 0 : (volts - lower.MeasuredVolts) / width;
            double drawn = alone ? one.Drawn : StraightLine.Through<Real>(lower.MeasuredVolts, one.Drawn, upper.MeasuredVolts, other.Drawn, volts);
            double drawnByVolts = StraightLine.Through<Real>(0, one.DrawnByVolts, 1, other.DrawnByVolts, share)
                + (alone ? 0 : (other.Current - one.Current) / width);
            double left = VoltageDrop.AtMotor<Real>(supply, drawn, feedOhms) - volts;
            double move = left / (1 + (feedOhms * drawnByVolts));
            double lowerMove = one.SpeedMove(move);
            double upperMove = other.SpeedMove(move);
            volts += move;
            lowerSpeed += lowerMove;
            upperSpeed += upperMove;
            if (!(drawnByVolts >= 0 && volts > 0 && lowerSpeed > 0 && upperSpeed > 0))
            {
                return false;
            }

            if (Math.Abs(move) <= SmallMove * supply && Math.Abs(lowerMove) <= SmallMove && Math.Abs(upperMove) <= SmallMove)
            {
                return true;
            }
        }

        return false;
    }

    // The curves measured on either side; one twice where it is met, or where there is none on the other side.
    private static (DrivenCurve Lower, DrivenCurve Upper) Around(DrivenCurve[][] driven, int law, double volts)
    {
        int upper = 0;
        while (upper < driven.Length && driven[upper][law].MeasuredVolts < volts)
        {
            upper++;
        }

        return upper == driven.Length ? (driven[^1][law], driven[^1][law])
            : upper == 0 || driven[upper][law].MeasuredVolts == volts ? (driven[upper][law], driven[upper][law])
            : (driven[upper - 1][law], driven[upper][law]);
    }

    /// <summary>A curve carried to a voltage with a guessed speed, corrected to the first order.</summary>
    /// <param name="Current">With the guess, A.</param>
    /// <param name="Drawn">With the guess corrected, A.</param>
    /// <param name="DrawnByVolts">How that changes with the voltage, A/V.</param>
    /// <param name="Correction">Of the guess.</param>
    /// <param name="SpeedByVolts">How the corrected speed changes with the voltage, 1/V.</param>
    private readonly record struct Tried(double Current, double Drawn, double DrawnByVolts, double Correction, double SpeedByVolts)
    {
        public static Tried At(DrivenCurve curve, double rise, double volts, double speed)
        {
            if (!curve.IsTurbine)
            {
                double current = curve.CurrentAt(rise, volts, curve);
                return new(current, current, 0, 0, 0);
            }

            TriedSpeed tried = curve.Tried(rise, volts, speed);
            double correction = -tried.Missing / tried.MissingBySpeed;
            double byVolts = -tried.MissingByVolts / tried.MissingBySpeed;
            return new(
                tried.Current, tried.Current + (tried.CurrentBySpeed * correction), tried.CurrentBySpeed * byVolts, correction, byVolts);
        }

        /// <summary>What the guess changes by where the voltage does.</summary>
        public double SpeedMove(double move) => Correction + (SpeedByVolts * move);
    }
}
