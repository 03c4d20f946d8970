using FuelSizing.Numerics;

namespace FuelSizing.Findings;

/// <summary>How air may be off the plan over engine speed: at twelve speeds spread over the plan's table, straight between them.</summary>
/// <param name="bySpeed">The planned volumetric efficiency; its ends are those of the spread.</param>
internal sealed class AirOverSpeed(Curve bySpeed)
{
    /// <summary>How many speeds: some 600 rev/min apart over a usual range, so that an intake's tuning from peak to peak has four and more of them.</summary>
    public const int Speeds = RunQuantity.AirAtLastSpeed - RunQuantity.AirAtFirstSpeed + 1;

    private readonly double _first = bySpeed.First;
    private readonly double _step = (bySpeed.Last - bySpeed.First) / (Speeds - 1);

    /// <summary>ln of air ÷ the planned at a speed.</summary>
    /// <param name="speed">rev/s.</param>
    /// <param name="shift">What is off.</param>
    public double At(double speed, in Shift shift)
    {
        (int lower, double share) = Place(speed);
        return ((1 - share) * shift[(int)RunQuantity.AirAtFirstSpeed + lower]) + (share * shift[(int)RunQuantity.AirAtFirstSpeed + lower + 1]);
    }

    /// <summary>Adds the share that each speed has in it.</summary>
    /// <param name="speed">rev/s.</param>
    /// <param name="line">One number for each quantity.</param>
    /// <param name="sign">By which the shares are multiplied.</param>
    public void Share(double speed, Span<double> line, double sign)
    {
        (int lower, double share) = Place(speed);
        line[(int)RunQuantity.AirAtFirstSpeed + lower] = sign * (1 - share);
        line[(int)RunQuantity.AirAtFirstSpeed + lower + 1] = sign * share;
    }

    private (int Lower, double Share) Place(double speed)
    {
        double place = Math.Clamp((speed - _first) / _step, 0, Speeds - 1.0);
        int lower = Math.Min((int)place, Speeds - 2);
        return (lower, place - lower);
    }
}
