using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>
/// Pumps at voltages at which they were not measured, against pumps that are simulated from their definitions: back-EMF, torque, displacement
/// and leakage, or flow and pressure coefficients. No published curves of one fuel pump at several voltages with its winding were found.
/// </summary>
public class PumpDriveTests
{
    private const double Measured = 13.5;
    private static readonly double[] Voltages = [10.2, 12, 13.5, 14.6];

    private static readonly Gen<Simulated> Displacement =
        Gen.Select(Gen.Double[60, 300], Gen.Double[0.05, 0.35], Gen.Double[0.3, 0.9], Gen.Double[5e-9, 2e-8], Gen.Double[1, 3]).Select(
            (free, ohms, leak, friction, torque) => (Simulated)new SimulatedDisplacement(free, ohms, leak, 2 + (friction * 1e8), torque));

    private static readonly Gen<Simulated> Turbine =
        Gen.Select(Gen.Double[60, 300], Gen.Double[0.05, 0.25], Gen.Double[500, 900], Gen.Double[3, 5], Gen.Double[0, 1.5]).Select(
            (free, ohms, deadhead, idle, slope) => (Simulated)new SimulatedTurbine(free, ohms, deadhead, idle, slope));

    private static readonly Gen<Simulated> Any = Gen.OneOf(Displacement, Turbine);

    [Fact]
    public void FlowAndCurrent_OfAKnownKindAndWinding_AreThoseOfTheSimulatedPump() => Any.Sample(
        simulated =>
        {
            Pump pump = simulated.Pump.WithDrive(PumpDrive.Of(simulated.Kind, ElectricResistance.FromOhms(simulated.Ohms)));
            foreach (double volts in Voltages)
            {
                foreach ((double rise, double flow, double current) in simulated.At(volts))
                {
                    foreach (PumpReading reading in new[] { PumpReading.Lower, PumpReading.Estimate, PumpReading.Upper })
                    {
                        Assert.Equal(flow, pump.Running(volts, reading).FlowAt(rise) * 3.6e6, 1e-7);
                        Assert.Equal(current, pump.CurrentAtMotor(rise, volts, reading)!.Value, 1e-9);
                    }
                }
            }
        },
        iter: 200);

    [Fact]
    public void Bounds_WhereKindOrWindingIsNotKnown_HoldTheSimulatedPump() => Any.Sample(
        simulated =>
        {
            foreach (PumpDrive drive in new[]
            {
                PumpDrive.Of(PumpKind.Unknown, ElectricResistance.FromOhms(simulated.Ohms)), PumpDrive.Of(simulated.Kind),
            })
            {
                Pump pump = simulated.Pump.WithDrive(drive);
                foreach (double volts in Voltages)
                {
                    foreach ((double rise, double flow, double current) in simulated.At(volts))
                    {
                        double slack = 1e-7;
                        Assert.InRange(
                            flow, (pump.Running(volts, PumpReading.Lower).FlowAt(rise) * 3.6e6) - slack, (pump.Running(volts, PumpReading.Upper).FlowAt(rise) * 3.6e6) + slack);
                        Assert.InRange(
                            current, pump.CurrentAtMotor(rise, volts, PumpReading.Lower)!.Value - slack, pump.CurrentAtMotor(rise, volts, PumpReading.Upper)!.Value + slack);
                    }
                }
            }
        },
        iter: 200);

    /// <summary>Whatever is said of the drive, at a measured voltage the measured curve counts: both bounds meet there.</summary>
    [Fact]
    public void Bounds_AtAMeasuredVoltage_Meet() => Any.Sample(
        simulated =>
        {
            Pump pump = simulated.Pump.WithDrive(PumpDrive.Of(PumpKind.Unknown, ElectricResistance.FromOhms(simulated.Ohms)));
            Assert.All(simulated.At(Measured), point => Assert.Equal(
                pump.Running(Measured, PumpReading.Lower).FlowAt(point.Rise), pump.Running(Measured, PumpReading.Upper).FlowAt(point.Rise), 1e-15));
        },
        iter: 50);

    [Fact]
    public void RiseAt_IsTheInverseOfFlowAt() => Gen.Select(Any, Gen.Double[9, 15], Gen.Double[0.02, 0.98]).Sample(
        (simulated, volts, share) =>
        {
            RunningPumps running = simulated.Pump.WithDrive(PumpDrive.Of(simulated.Kind, ElectricResistance.FromOhms(simulated.Ohms))).Running(volts);
            double least = running.FlowAt(running.Deadhead);
            double flow = least + (share * (running.FreeFlow - least));
            Assert.Equal(flow, running.FlowAt(running.RiseAt(flow)), 1e-9 * running.FreeFlow);
        },
        iter: 500);

    /// <summary>Under its lowest voltage nobody can say whether the pump suffices, unless its drive is known.</summary>
    [Fact]
    public void Verdict_UnderTheLowestVoltage_CanBeSaidOfAKnownDrive()
    {
        Pump pump = new SimulatedDisplacement(190, 0.2, 0.5, 3, 2).Pump;
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(11.2), Wren.Hill.FuelTemperature);
        Assert.Equal(Outcome.CannotSay, PumpMargin(pump).Outcome);
        Assert.Equal(Outcome.Holds, PumpMargin(pump.WithDrive(PumpDrive.Of(PumpKind.Displacement, ElectricResistance.FromOhms(0.2)))).Outcome);

        Margin PumpMargin(Pump each) => FuelSystem.Return(
            Wren.Demand(), FuelSizing.Injectors.InjectorSet.Of(Wren.InjectorOf(700), 4), ManifoldReferenced.From(Wren.Kpa(300)), each)
            .Solve(OperatingPoint.At(Wren.Rpm(6800), Pressure.FromBars(0.6), weak)).Margins.Single(margin => margin.Part == Part.Pump);
    }

    [Fact]
    public void Drive_ThatTheCurvesDoNotFit_IsRefusedWithTheCure()
    {
        PumpCurve plain = PumpCurve.At("pump V", Wren.Volt(13.5), (Wren.Kpa(0), Lph(180)), (Wren.Kpa(600), Lph(0)));
        PumpCurve late = PumpCurve.At("pump V", Wren.Volt(13.5), (Wren.Kpa(200), Lph(140)), (Wren.Kpa(600), Lph(0)));
        PumpCurve strong = PumpCurve.WithCurrent("pump V", Wren.Volt(13.5), (Wren.Kpa(0), Lph(180), Ampere(6)), (Wren.Kpa(600), Lph(0), Ampere(14)));
        Assert.Contains(
            "says nothing of a pump", Assert.Throws<ArgumentException>(() => PumpDrive.Of(PumpKind.Unknown)).Message, StringComparison.Ordinal);
        Assert.Contains(
            "has no current",
            Assert.Throws<ArgumentException>(() => Pump.From(plain).WithDrive(PumpDrive.Of(PumpKind.Turbine, ElectricResistance.FromOhms(0.2)))).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "Give the flow at 0 kPa",
            Assert.Throws<ArgumentException>(() => Pump.From(late).WithDrive(PumpDrive.Of(PumpKind.Displacement))).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "less than half of the voltage",
            Assert.Throws<ArgumentOutOfRangeException>(() => Pump.From(strong).WithDrive(PumpDrive.Of(PumpKind.Turbine, ElectricResistance.FromOhms(0.5)))).Message,
            StringComparison.Ordinal);
    }

    private static VolumeFlow Lph(double flow) => VolumeFlow.FromLitersPerHour(flow);

    private static ElectricCurrent Ampere(double current) => ElectricCurrent.FromAmperes(current);

    /// <summary>A pump and its motor from their definitions, with its curve as a bench would measure it at 13.5 V.</summary>
    private abstract record Simulated(double Ohms, PumpKind Kind)
    {
        /// <summary>Rise, Pa, flow, L/h, and current, A, at places that lie on points of the measured curve.</summary>
        public abstract IEnumerable<(double Rise, double Flow, double Current)> At(double volts);

        public Pump Pump => FuelSizing.Pumps.Pump.From(PumpCurve.WithCurrent(
            "pump V", Wren.Volt(Measured), [.. At(Measured).Select(point => (Pressure.FromPascals(point.Rise), Lph(point.Flow), Ampere(point.Current)))]));
    }

    /// <summary>Flow = displacement × speed − leakage; torque = displacement × pressure + friction, and current with it; speed = (V − I R)/k.</summary>
    private sealed record SimulatedDisplacement(double Free, double Ohms, double Leak, double IdleCurrent, double CurrentPerBar)
        : Simulated(Ohms, PumpKind.Displacement)
    {
        public override IEnumerable<(double Rise, double Flow, double Current)> At(double volts)
        {
            for (int bar = 0; bar <= 5; bar++)
            {
                double current = IdleCurrent + (CurrentPerBar * 0.5 * bar);
                double speed = (volts - (Ohms * current)) / (Measured - (Ohms * IdleCurrent));
                double flow = (Free * speed) - (Leak * Free * 0.04 * bar * (1 + (0.1 * bar)));
                if (flow > 0)
                {
                    yield return (bar * 1e5, flow, current);
                }
            }
        }
    }

    /// <summary>Flow = φ n, pressure = ψ(φ) n², torque, and so current, = τ(φ) n²; k n = V − I R.</summary>
    private sealed record SimulatedTurbine(double Free, double Ohms, double Deadhead, double IdleCurrent, double CurrentSlope)
        : Simulated(Ohms, PumpKind.Turbine)
    {
        public override IEnumerable<(double Rise, double Flow, double Current)> At(double volts)
        {
            for (int place = 0; place <= 8; place++)
            {
                double coefficient = 1 - (place / 8.0);
                double torque = IdleCurrent + (CurrentSlope * (1 - coefficient));

                // k n + R τ n² = V, with k such that the free pump turns at 1 at the measured voltage.
                double emf = Measured - (Ohms * IdleCurrent);
                double speed = ((-emf) + Math.Sqrt((emf * emf) + (4 * Ohms * torque * volts))) / (2 * Ohms * torque);
                yield return (Deadhead * 1e3 * (1 - (coefficient * coefficient)) * speed * speed, Free * coefficient * speed, torque * speed * speed);
            }
        }
    }
}
