using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>A pump and its motor from their definitions, with its curve as a bench would measure it at 13.5 V.</summary>
internal abstract record SimulatedPump(double Ohms, PumpKind Kind)
{
    public const double MeasuredVolts = 13.5;

    private static readonly Gen<SimulatedPump> Displacement =
        Gen.Select(Gen.Double[60, 300], Gen.Double[0.05, 0.35], Gen.Double[0.3, 0.9], Gen.Double[5e-9, 2e-8], Gen.Double[1, 3]).Select(
            (free, ohms, leak, friction, torque) => (SimulatedPump)new SimulatedDisplacement(free, ohms, leak, 2 + (friction * 1e8), torque));

    private static readonly Gen<SimulatedPump> Turbine =
        Gen.Select(Gen.Double[60, 300], Gen.Double[0.05, 0.25], Gen.Double[500, 900], Gen.Double[3, 5], Gen.Double[0, 1.5]).Select(
            (free, ohms, deadhead, idle, slope) => (SimulatedPump)new SimulatedTurbine(free, ohms, deadhead, idle, slope));

    public static readonly Gen<SimulatedPump> Any = Gen.OneOf(Displacement, Turbine);

    /// <summary>Rise, Pa, flow, L/h, and current, A, at places that lie on points of the measured curve.</summary>
    public abstract IEnumerable<(double Rise, double Flow, double Current)> At(double volts);

    public Pump Pump => FuelSizing.Pumps.Pump.From(CurveAt(MeasuredVolts));

    public PumpCurve CurveAt(double volts) => PumpCurve.WithCurrent(
        "pump V", Wren.Volt(volts), [.. At(volts).Select(point => (Pressure.FromPascals(point.Rise), VolumeFlow.FromLitersPerHour(point.Flow), ElectricCurrent.FromAmperes(point.Current)))]);
}

/// <summary>Flow = displacement × speed − leakage; torque = displacement × pressure + friction, and current with it; speed = (V − I R)/k.</summary>
internal sealed record SimulatedDisplacement(double Free, double Ohms, double Leak, double IdleCurrent, double CurrentPerBar)
    : SimulatedPump(Ohms, PumpKind.Displacement)
{
    public override IEnumerable<(double Rise, double Flow, double Current)> At(double volts)
    {
        for (int bar = 0; bar <= 5; bar++)
        {
            double current = IdleCurrent + (CurrentPerBar * 0.5 * bar);
            double speed = (volts - (Ohms * current)) / (MeasuredVolts - (Ohms * IdleCurrent));
            double flow = (Free * speed) - (Leak * Free * 0.04 * bar * (1 + (0.1 * bar)));
            if (flow > 0)
            {
                yield return (bar * 1e5, flow, current);
            }
        }
    }
}

/// <summary>Flow = φ n, pressure = ψ(φ) n², torque, and so current, = τ(φ) n²; k n = V − I R.</summary>
internal sealed record SimulatedTurbine(double Free, double Ohms, double Deadhead, double IdleCurrent, double CurrentSlope)
    : SimulatedPump(Ohms, PumpKind.Turbine)
{
    public override IEnumerable<(double Rise, double Flow, double Current)> At(double volts)
    {
        for (int place = 0; place <= 8; place++)
        {
            double coefficient = 1 - (place / 8.0);
            double torque = IdleCurrent + (CurrentSlope * (1 - coefficient));

            // k n + R τ n² = V, with k such that the free pump turns at 1 at the measured voltage.
            double emf = MeasuredVolts - (Ohms * IdleCurrent);
            double speed = ((-emf) + Math.Sqrt((emf * emf) + (4 * Ohms * torque * volts))) / (2 * Ohms * torque);
            yield return (Deadhead * 1e3 * (1 - (coefficient * coefficient)) * speed * speed, Free * coefficient * speed, torque * speed * speed);
        }
    }
}
