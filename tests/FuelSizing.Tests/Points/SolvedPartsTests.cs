using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>What a solved point makes of states and data that end: one list of pumps or several, the less of two reserves, and nothing made up of a lift pump without data.</summary>
public class SolvedPartsTests
{
    /// <summary>
    /// Two states are one where the same pumps pass the same flow; where the regulator holds what it does by what returns, only if the rail is the same too, for on an upright of their curve pumps pass
    /// the same at any pressure.
    /// </summary>
    [Theory]
    [InlineData(double.NaN, 0, 0, true)]
    [InlineData(double.NaN, 1, 0, true)]
    [InlineData(3e5, 0, 0, true)]
    [InlineData(3e5, 1, 0, false)]
    [InlineData(3e5, 0, 1e-9, false)]
    [InlineData(double.NaN, 0, 1e-9, false)]
    public void Pumps_OfTwoStates_AreOneListWhereTheyAreOneState(double held, double rail, double flow, bool same)
    {
        SystemParts parts = Wren.System().Parts;
        CircuitTask task = parts.TaskAt(parts.DemandAt(Wren.At(3000, 0.2)));
        CircuitState state = CircuitSolver.Solve(task) with { Held = held };
        CircuitState other = state with { RailGauge = state.RailGauge + rail, Flow = state.Flow + flow };
        Assert.Equal(same, parts.CircuitOf(task, new(state, other, state)).IsExact);
        Assert.Equal(same, parts.CircuitOf(task, new(state, state, other)).IsExact);
    }

    /// <summary>Between the boosts at which a pump is switched off and on the reserve is the less of both states: that of the first pump alone, which delivers 165 L/h at 300 kPa.</summary>
    [Fact]
    public void PumpReserve_OfASwitchedPump_IsTheLessOfBothStates()
    {
        SystemParts parts = Wren.System(Fixed.At(Wren.Kpa(300))).With(PumpParallel.Of(
            Pump.From(Wren.Pump), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.5))))).Parts;
        double Share(double delivered) => (delivered / 3.6e6 / 1.1 / 2e-5) - 1;
        Assert.Equal(Share(165), parts.PumpReserveAt(13.5, 20e3, 2e-5, 740, 5e-7), 1e-9);
        Assert.Equal(Share(165), parts.PumpReserveAt(13.5, 35e3, 2e-5, 740, 5e-7), 1e-9);
        Assert.Equal(Share(165 * 1.5), parts.PumpReserveAt(13.5, 45e3, 2e-5, 740, 5e-7), 1e-9);

        // Of two switched pumps one is between its boosts: that is enough.
        SystemParts two = Wren.System(Fixed.At(Wren.Kpa(300))).With(PumpParallel.Of(
            Pump.From(Wren.Pump),
            SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.5))),
            SwitchedPump.Above(Wren.Kpa(20), Wren.Kpa(10), Pump.From(Wren.PumpOf(0.3))))).Parts;
        Assert.NotNull(two.FallingAt(35e3));
        Assert.NotNull(two.FallingAt(30e3));
        Assert.NotNull(two.FallingAt(40e3));
        Assert.Null(two.FallingAt(25e3));
        Assert.Null(Wren.System().Parts.FallingAt(35e3));
    }

    /// <summary>A lift pump without data at its voltage: nothing is known of what it lifts and sustains, nor of the pressure in the tank; a pump that is known says all.</summary>
    [Fact]
    public void LiftPump_WithoutData_SaysNothing()
    {
        SurgeTankResult Of(double volts)
        {
            OperatingPoint point = OperatingPoint.At(Wren.Rpm(3000), Pressure.FromBars(0.2), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Wren.Hill.FuelTemperature));
            return Wren.System().With(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.2, volts)), ReturnDestination.SurgeTank, overflow: SurgeTanks.Overflow))
                .Solve(point).SurgeTank!;
        }

        SurgeTankResult none = Of(20);
        Assert.Equal((null, null, null, null), (none.MinimumLifted, none.MaximumLifted, none.Lifted, none.MaximumTankGauge));
        Assert.Equal("not known: pump data does not cover the point", none.ToString());
        SurgeTankResult known = Of(13.5);
        Assert.Equal(known.TankGauge, known.MaximumTankGauge);
        Assert.True(known.MaximumTankGauge > Pressure.FromPascals(100));
        Assert.Equal(known.MinimumLifted, known.MaximumLifted);

        SystemParts parts = Wren.System().With(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.2, 20)), ReturnDestination.SurgeTank)).Parts;
        SolvedLift lift = parts.CircuitAt(parts.DemandAt(Wren.At(3000, 0.2))).Lift!;
        Assert.Equal((double.NaN, double.NaN), (lift.MinimumSustained, lift.MaximumSustained));
        Assert.Equal((double.NaN, double.NaN), (lift.MinimumLifted, lift.MaximumLifted));
    }

    /// <summary>While the tank is not full no less may be drawn than what the engine asks for; with the return in the main tank all that the pump passes.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank)]
    [InlineData(ReturnDestination.MainTank)]
    public void Draw_WhileTheTankFills_IsWhatThePumpPassesOrTheEngineAsksFor(ReturnDestination to)
    {
        SystemParts parts = Wren.System(Fixed.At(Wren.Kpa(300))).With(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1.2)), to)).Parts;
        PointDemand demand = parts.DemandAt(Wren.At(3000, 0.2));
        SolvedLift lift = parts.CircuitAt(demand).Lift!;

        // Wren's pump delivers 165 L/h at 300 kPa.
        double drawn = to == ReturnDestination.MainTank ? 165 / 3.6e6 : demand.Injected;
        Assert.True(165 / 3.6e6 > demand.Injected * 1.5);
        Assert.Equal(drawn, lift.MaximumDrawn, 1e-12);
        Assert.Equal(drawn, lift.MinimumDrawn, 1e-12);
        Assert.Equal(lift.MinimumFilled - drawn, lift.SurplusOfAtLeast, 1e-15);
        Assert.Equal(lift.MaximumFilled - drawn, lift.SurplusOfAtMost, 1e-15);
    }

    /// <summary>The more a pump presses the more its motor draws: of three states the least that its converter is asked for is that of the least rise, the most that of the most, wherever they stand.</summary>
    [Theory]
    [InlineData(0, 1, 2)]
    [InlineData(1, 2, 0)]
    [InlineData(2, 0, 1)]
    public void Converter_InSeveralStates_IsAskedForBetweenTheirCurrents(int first, int second, int third)
    {
        SolvedCircuit circuit = Converted(first, second, third);

        // The curve's own currents at 200 and 600 kPa, at the voltage at which it was measured.
        Assert.Equal(6, circuit.ConvertedOf(0).Minimum, 1e-9);
        Assert.Equal(10.5, circuit.ConvertedOf(0).Maximum, 1e-9);
    }

    /// <summary>Past an open end of the curve, in whichever state, the most that a converter is asked for is not known, though it is in the other states.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Converter_PastAnOpenEnd_HasNoUpperBound(int state)
    {
        SolvedCircuit circuit = Converted(0, 1, 2);
        PumpPoint[] Open(PumpPoint[] points, int at) => at == state ? [points[0] with { Coverage = PumpCoverage.PressureAbove }] : points;
        SolvedCircuit open = circuit with { Pumps = Open(circuit.Pumps, 0), LowerPumps = Open(circuit.LowerPumps, 1), UpperPumps = Open(circuit.UpperPumps, 2) };
        Assert.Equal((6, double.NaN), (Math.Round(open.ConvertedOf(0).Minimum, 9), open.ConvertedOf(0).Maximum));
    }

    /// <summary>A pump that is off asks its converter for nothing; the converter could give it what it can at the voltage that is fed.</summary>
    [Fact]
    public void Converter_OfAPumpThatIsOff_IsAskedForNothing()
    {
        VoltageConverter converter = VoltageConverter.Holding("converter", Wren.Volt(15), Wren.Percent(90), ElectricCurrent.FromAmperes(30));
        Pump converted = Wren.WiredPump.WithConverter(converter);
        FuelSystem system = Wren.System().With(PumpParallel.Of(Wren.WiredPump, SwitchedPump.Above(Wren.Kpa(60), Wren.Kpa(50), converted)));
        SolvedCircuit off = system.Solve(Wren.At(4000, 0.2)).SolvedCircuit;
        SolvedCircuit on = system.Solve(Wren.At(4000, 0.7)).SolvedCircuit;
        Assert.True(off.Pumps[1].IsStopped);
        Assert.Equal((0, 0), off.ConvertedOf(1));
        Assert.Equal(30, off.ConvertibleAt(1), 1e-9);
        Assert.Equal(30, on.ConvertibleAt(1), 1e-9);
        Assert.True(on.ConvertedOf(1).Minimum > 1);
        Assert.Equal((0, 0), on.ConvertedOf(0));

        // Behind 0.9 Ω no more than η U²/(4 R) passes, 0.9 · 13.5²/3.6 W, of which 15 V make 3.04 A, whether the pump runs or not.
        Feed weak = Feed.Of("weak", Conductor.Awg(12), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(20), Contact.Of("corroded", ElectricResistance.FromOhms(0.9)));
        FuelSystem behind = Wren.System().With(PumpParallel.Of(
            Wren.WiredPump, SwitchedPump.Above(Wren.Kpa(60), Wren.Kpa(50), Wren.WiredPump.WithFeed(weak).WithConverter(converter))));
        Assert.Equal(0.9 * 13.5 * 13.5 / 3.6 / 15, behind.Solve(Wren.At(4000, 0.2)).SolvedCircuit.ConvertibleAt(1), 1e-9);
        Assert.Equal(0.9 * 13.5 * 13.5 / 3.6 / 15, behind.Solve(Wren.At(4000, 0.7)).SolvedCircuit.ConvertibleAt(1), 1e-9);
    }

    /// <summary>Limits without a mixture are not the way to leave it out.</summary>
    [Fact]
    public void Limits_OfNoMixture_AreRefused() => Refused.Missing("mixture", () => SizingLimits.Default.With(null!));

    /// <summary>A pump behind a converter of its own voltage, at 200, 400 and 600 kPa in one state each.</summary>
    private static SolvedCircuit Converted(int first, int second, int third)
    {
        Pump converted = Pump.From(Wren.WiredCurve(13.5, 1)).WithConverter(VoltageConverter.Holding("converter", Wren.Volt(13.5), Wren.Percent(90), ElectricCurrent.FromAmperes(30)));
        double[] rises = [200e3, 400e3, 600e3];
        PumpPoint[] At(int state) => [new(converted, 1e-5, rises[state], 12.5, 13.5, 8, 8, 8, PumpCoverage.Measured)];
        return Wren.System().With(converted).Solve(Wren.At(3000, 0.2)).SolvedCircuit with { Pumps = At(first), LowerPumps = At(second), UpperPumps = At(third) };
    }
}
