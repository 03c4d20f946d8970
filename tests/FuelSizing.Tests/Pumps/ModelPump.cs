using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>
/// An invented pump with its motor, from which curves are taken as on a bench: a turbine, whose flow, pressure and torque follow the affinity
/// laws in speed, or a displacement pump, whose flow is what it displaces less its leakage. The motor's back-EMF grows with speed; what its
/// winding takes grows with current.
/// </summary>
internal sealed record ModelPump(bool IsTurbine, double Flow, double Deadhead, double Exponent, double IdleAmperes, double LoadAmperes, double Ohms)
{
    private const double Nominal = 13.5;

    /// <summary>The curve at a voltage, at some pressures.</summary>
    public PumpCurve CurveAt(double volts, int points)
    {
        double deadhead = Zero(pressure => FlowAt(pressure, volts), 0, 4 * Deadhead);
        return PumpCurve.WithCurrent(
            "model pump",
            ElectricPotential.FromVolts(volts),
            [
                .. Enumerable.Range(0, points).Select(point =>
                {
                    double pressure = deadhead * point / (points - 1);
                    return (
                        Pressure.FromPascals(pressure),
                        VolumeFlow.FromCubicMetersPerSecond(point == points - 1 ? 0 : FlowAt(pressure, volts)),
                        ElectricCurrent.FromAmperes(CurrentAt(pressure, SpeedAt(pressure, volts))));
                }),
            ]);
    }

    /// <summary>Resistance of a winding that takes a share of 13.5 V when the pump draws the most.</summary>
    public static double OhmsFor(double share, double amperes) => share * Nominal / amperes;

    private double FlowAt(double pressure, double volts)
    {
        double speed = SpeedAt(pressure, volts);
        return IsTurbine
            ? speed * Flow * (1 - Math.Pow(pressure / (Deadhead * speed * speed), Exponent))
            : Flow * (speed - (pressure / Deadhead));
    }

    private double CurrentAt(double pressure, double speed) => IsTurbine
        ? (IdleAmperes * speed * speed) + (LoadAmperes * pressure / Deadhead)
        : IdleAmperes + (LoadAmperes * pressure / Deadhead);

    // Speed 1 is that at 13.5 V with the pump's greatest current.
    private double SpeedAt(double pressure, double volts)
    {
        double emf = Nominal - ((IdleAmperes + LoadAmperes) * Ohms);
        return Zero(speed => volts - (CurrentAt(pressure, speed) * Ohms) - (emf * speed), 1e-6, 4);
    }

    private static double Zero(Func<double, double> falling, double low, double high)
    {
        for (int step = 0; step < 80; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = falling(middle) > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
