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
    private const double Measured = SimulatedPump.MeasuredVolts;
    private static readonly double[] Voltages = [10.2, 12, 13.5, 14.6];

    [Fact]
    public void FlowAndCurrent_OfAKnownKindAndWinding_AreThoseOfTheSimulatedPump() => SimulatedPump.Any.Sample(
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
    public void Bounds_WhereKindOrWindingIsNotKnown_HoldTheSimulatedPump() => SimulatedPump.Any.Sample(
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
    public void Bounds_AtAMeasuredVoltage_Meet() => SimulatedPump.Any.Sample(
        simulated =>
        {
            Pump pump = simulated.Pump.WithDrive(PumpDrive.Of(PumpKind.Unknown, ElectricResistance.FromOhms(simulated.Ohms)));
            Assert.All(simulated.At(Measured), point => Assert.Equal(
                pump.Running(Measured, PumpReading.Lower).FlowAt(point.Rise), pump.Running(Measured, PumpReading.Upper).FlowAt(point.Rise), 1e-15));
        },
        iter: 50);

    [Fact]
    public void RiseAt_IsTheInverseOfFlowAt() => Gen.Select(SimulatedPump.Any, Gen.Double[9, 15], Gen.Double[0.02, 0.98]).Sample(
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
}
