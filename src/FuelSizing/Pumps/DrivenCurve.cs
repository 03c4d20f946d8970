using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>A measured curve carried to another voltage, by the kind of pump and what its motor's winding takes.</summary>
/// <param name="curve">The curve; with current where a resistance is given.</param>
/// <param name="isTurbine">True for a turbine, false for a displacement pump, whose curve begins against no rise.</param>
/// <param name="ohms">Resistance of the winding, Ω; not a number where a share stands for it.</param>
/// <param name="share">Share of the measured voltage that the winding takes at every rise.</param>
internal sealed class DrivenCurve(PumpCurve curve, bool isTurbine, double ohms, double share)
{
    // A motor that would stand still turns a little, so that scaled pressures stay finite; none is fed with four times its voltage.
    private const double MinimumSpeed = 0.01;
    private const double MaximumSpeed = 4;

    // What is left after one of Newton's steps is of the order of its square.
    private const double SmallMove = 1e-8;
    private const int MaximumSteps = 10;

    /// <summary>Delivered flow at a rise and motor voltage, m³/s.</summary>
    public double FlowAt(double rise, double volts, PumpReading reading)
    {
        if (isTurbine)
        {
            Real speed = SpeedAt(rise, volts);
            return PumpScaling.Flow<Real>(curve.FlowBeyond(PumpScaling.MeasuredPressure<Real>(rise, speed), reading.GoesOn()), speed);
        }

        // How much leaks back beyond the pressures that were measured is not known: at the most no more than at the last of them.
        return rise <= curve.Flow.Last || reading == PumpReading.Upper
            ? AtVoltage(curve.FlowBeyond(Math.Min(rise, curve.Flow.Last), goesOn: false), volts)
            : reading.GoesOn() && !curve.EndsAtDeadhead ? AtVoltage(curve.Flow.LastValue, volts)
            : 0;
    }

    /// <summary>Current at a rise and motor voltage, A.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    /// <param name="other">
    /// Another winding of the same kind: of the windings between the two some current may lie outside of both, for a faster pump draws more at the
    /// same flow coefficient and stands at a higher one; the current of this one's speed at the other's coefficient bounds it.
    /// </param>
    public double CurrentAt(double rise, double volts, DrivenCurve other)
    {
        if (!isTurbine)
        {
            return curve.CurrentNear(rise);
        }

        double speed = SpeedAt(rise, volts);
        double others = ReferenceEquals(other, this) ? speed : other.SpeedAt(rise, volts);
        return PumpScaling.Current<Real>(curve.CurrentNear(PumpScaling.MeasuredPressure<Real>(rise, others)), speed);
    }

    /// <summary>True of a turbine.</summary>
    public bool IsTurbine => isTurbine;

    /// <summary>The highest rise at which something is delivered at a motor voltage, Pa.</summary>
    public double EndAt(double volts, PumpReading reading)
    {
        bool goesOn = reading.GoesOn() && !curve.EndsAtDeadhead;
        if (isTurbine)
        {
            return goesOn ? PumpCurve.EndlessRise : PumpScaling.Pressure<Real>(curve.Flow.Last, Speed(new SpeedLeft(this, volts, curve.Flow.Last, isScaled: false)));
        }

        // Under the measured voltage the curve is as much lower everywhere, and ends where that much was left.
        double lost = curve.Flow.FirstValue - AtVoltage(curve.Flow.FirstValue, volts);
        return goesOn && curve.Flow.LastValue > lost ? PumpCurve.EndlessRise
            : volts < curve.Volts ? curve.RiseAt(lost)
            : reading != PumpReading.Upper ? curve.Flow.Last
            : PumpScaling.Pressure<Real>(curve.Flow.Last, PumpMotor.SpeedRatio<Real>(volts, curve.Volts, Pump.MaximumResistiveShare));
    }

    private double AtVoltage(double measured, double volts) =>
        DisplacementPumpFlow.AtVoltage<Real>(measured, curve.Flow.FirstValue, volts, curve.Volts, WindingLoss(0));

    /// <summary>What the winding takes at the measured voltage, V.</summary>
    private double WindingLoss(double rise) => double.IsNaN(ohms) ? share * curve.Volts : ohms * curve.CurrentNear(rise);

    /// <summary>True if the winding's resistance is given.</summary>
    public bool HasWinding => !double.IsNaN(ohms);

    /// <summary>A turbine at a rise, motor voltage and speed, of which the speed is a guess.</summary>
    public TriedSpeed Tried(double rise, double volts, double speed)
    {
        double measured = PumpScaling.MeasuredPressure<Real>(rise, speed);
        (double current, double byRise) = HasWinding ? curve.CurrentWithSlope(measured) : (double.NaN, 0);
        double loss = HasWinding ? ohms * current : share * curve.Volts;
        double lossBySpeed = HasWinding ? -2 * ohms * byRise * measured / speed : 0;
        double found = PumpMotor.SpeedRatioByEmf<Real>(volts, PumpScaling.Current<Real>(loss, speed), curve.Volts, loss);
        return new(
            found - speed,
            ((((found - (speed * speed)) * lossBySpeed) - (2 * speed * loss)) / (curve.Volts - loss)) - 1,
            1 / (curve.Volts - loss),
            PumpScaling.Current<Real>(current, speed),
            2 * speed * (current - (measured * byRise)));
    }

    /// <summary>The same with what is delivered and drawn, with slopes; false where the curve ends above zero flow, or a step from the guess leads nowhere.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    /// <param name="guess">Speed as a share of the measured one, where it does not follow from the voltage alone.</param>
    /// <param name="reading">Which bound.</param>
    /// <param name="carried">What is delivered and drawn.</param>
    public bool TryCarry(double rise, double volts, double guess, PumpReading reading, out CarriedLaw carried) =>
        isTurbine ? TryTurbine(rise, volts, guess, out carried) : TryDisplacement(rise, volts, reading, out carried);

    private bool TryTurbine(double rise, double volts, double guess, out CarriedLaw carried)
    {
        double speed = HasWinding ? guess : SpeedByShare(volts);
        double measured = PumpScaling.MeasuredPressure<Real>(rise, speed);
        carried = default;
        if (measured > curve.Flow.Last && !curve.EndsAtDeadhead)
        {
            return false;
        }

        (double flow, double slope) = measured > curve.Flow.Last ? (0, 0) : curve.Flow.NearestWithSlope(measured);
        (double current, double byRise) = curve.HasCurrent ? curve.CurrentWithSlope(measured) : (double.NaN, double.NaN);
        (double move, double speedByVolts, double speedByRise) = (0, 0, 0);
        if (HasWinding)
        {
            TriedSpeed tried = Tried(rise, volts, speed);
            if (!(tried.MissingBySpeed < 0))
            {
                return false;
            }

            double missingByRise = (tried.Missing + speed - (speed * speed)) * ohms * byRise / (speed * speed) * tried.MissingByVolts;
            (move, speedByVolts, speedByRise) =
                (-tried.Missing / tried.MissingBySpeed, -tried.MissingByVolts / tried.MissingBySpeed, -missingByRise / tried.MissingBySpeed);
        }
        else
        {
            speedByVolts = 1 / ((2 * share * curve.Volts * speed) + ((1 - share) * curve.Volts));
        }

        double flowBySpeed = flow - (2 * measured * slope);
        double currentBySpeed = 2 * speed * (current - (measured * byRise));
        carried = new(
            new(PumpScaling.Flow<Real>(flow, speed) + ((Real)flowBySpeed * move), (slope / speed) + (flowBySpeed * speedByRise), flowBySpeed * speedByVolts),
            new(PumpScaling.Current<Real>(current, speed) + ((Real)currentBySpeed * move), byRise + (currentBySpeed * speedByRise), currentBySpeed * speedByVolts),
            current,
            byRise,
            measured,
            speed,
            speedByVolts,
            move,
            !HasWinding);
        return true;
    }

    private bool TryDisplacement(double rise, double volts, PumpReading reading, out CarriedLaw carried)
    {
        carried = default;
        if (rise > curve.Flow.Last && reading != PumpReading.Upper)
        {
            return false;
        }

        (double measured, double slope) = curve.Flow.NearestWithSlope(rise);
        double flow = AtVoltage(measured, volts);
        (double current, double byRise) = curve.HasCurrent ? curve.CurrentWithSlope(rise) : (double.NaN, double.NaN);
        carried = new(
            flow > 0 ? new(flow, slope, curve.Flow.FirstValue / (curve.Volts - WindingLoss(0))) : default,
            new(current, byRise, 0),
            current,
            byRise,
            rise,
            1,
            0,
            0,
            false);
        return true;
    }

    /// <summary>The speed where the winding takes a share of the voltage at the measured speed, whatever the rise: n = (V − n² L)/(V_c − L), solved for n.</summary>
    private double SpeedByShare(double volts)
    {
        double loss = share * curve.Volts;
        double left = curve.Volts - loss;
        return 2 * volts / (left + Math.Sqrt((left * left) + (4 * loss * volts)));
    }

    private double SpeedAt(double rise, double volts)
    {
        if (volts == curve.Volts)
        {
            return 1;
        }

        if (!HasWinding && volts > 0)
        {
            return Math.Clamp(SpeedByShare(volts), MinimumSpeed, MaximumSpeed);
        }

        double speed = volts / curve.Volts;
        for (int step = 0; step < MaximumSteps; step++)
        {
            TriedSpeed tried = Tried(rise, volts, speed);
            double move = -tried.Missing / tried.MissingBySpeed;
            speed += move;
            if (!(tried.MissingBySpeed < 0 && speed is >= MinimumSpeed and <= MaximumSpeed))
            {
                break;
            }

            if (Math.Abs(move) <= SmallMove)
            {
                return speed;
            }
        }

        return Speed(new SpeedLeft(this, volts, rise, isScaled: true));
    }

    // Torque, and with it the voltage that the winding takes, goes with the square of the speed; the rise that was measured does too.
    private double Speed(in SpeedLeft left)
    {
        if (left.Volts == curve.Volts)
        {
            return 1;
        }

        return Secant.TryNear(left, left.Volts / curve.Volts, out double speed) && speed is >= MinimumSpeed and <= MaximumSpeed
            ? speed
            : MaximumSpeed * Bracket.Of(new Scaled(left), MinimumSpeed / MaximumSpeed, 1);
    }

    /// <summary>Voltage at which it was measured, V.</summary>
    public double MeasuredVolts => curve.Volts;

    /// <summary>The speed that the winding leaves, less the speed, both as a share of the measured one.</summary>
    /// <param name="driven">The curve.</param>
    /// <param name="volts">At the motor, V.</param>
    /// <param name="rise">Pa.</param>
    /// <param name="isScaled">True if the rise is that of the speed, false if it is that of the measured curve.</param>
    private readonly struct SpeedLeft(DrivenCurve driven, double volts, double rise, bool isScaled) : IFalling
    {
        public double Volts => volts;

        /// <inheritdoc/>
        public double At(double x)
        {
            double loss = driven.WindingLoss(isScaled ? PumpScaling.MeasuredPressure<Real>(rise, x) : rise);
            return PumpMotor.SpeedRatioByEmf<Real>(volts, PumpScaling.Current<Real>(loss, x), driven.MeasuredVolts, loss) - x;
        }
    }

    private readonly struct Scaled(SpeedLeft left) : IFalling
    {
        /// <inheritdoc/>
        public double At(double x) => left.At(x * MaximumSpeed);
    }
}

/// <summary>A turbine at a guessed speed.</summary>
/// <param name="Missing">The speed that its winding leaves it, less the guess, both as a share of the measured one.</param>
/// <param name="MissingBySpeed">How that changes with the guess.</param>
/// <param name="MissingByVolts">How it changes with the voltage, 1/V.</param>
/// <param name="Current">A; not a number where its winding is not given.</param>
/// <param name="CurrentBySpeed">How that changes with the guess, A.</param>
internal readonly record struct TriedSpeed(double Missing, double MissingBySpeed, double MissingByVolts, double Current, double CurrentBySpeed);
