using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Two circuits joined by a surge tank where a tank is neither empty nor overflows, where a lift pump is asked for, and where data of a pump ends: by hand, with pumps whose flow falls in a
/// straight line, Q = Q₀ (1 − p/p₀), or compared with pumps of which all is known.
/// </summary>
public class JoinedBoundsTests
{
    private const double Volts = 13.5;

    // Main pump, m³/s and Pa; rail, Pa.
    private const double MainFree = 6e-5;
    private const double MainDeadhead = 8e5;
    private const double Set = 3e5;
    private const double Injected = 2e-5;
    private const double MainSlope = MainFree / MainDeadhead;

    // What the main pump passes with its tank at ambient pressure.
    private const double Drawn = MainFree * (1 - (Set / MainDeadhead));

    private const double LiftDeadhead = 9e4;

    // Pa s²/m⁶: 20 kPa in the overflow line at 180 L/h.
    private const double Overflow = 2e4 / (5e-5 * 5e-5);

    /// <summary>
    /// An overflow line that rises by 20 kPa of fuel, and a lift pump that brings more than is drawn against ambient pressure and less against 20 kPa: fuel stands in the line as high as the pump just
    /// brings what is drawn, Q₀ (1 − p/p₀) = q, or with the return in the other tank Q₀ (1 − p/p₀) = q₀ + c p.
    /// </summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank, 2.2e-5)]
    [InlineData(ReturnDestination.MainTank, 4e-5)]
    public void FuelInTheOverflowLine_StandsAsHighAsTheLiftPumpBringsWhatIsDrawn(ReturnDestination to, double free)
    {
        JoinedCircuits joined = Join(Tank(to, free, new Column(20e3)));
        double pressure = to == ReturnDestination.SurgeTank
            ? LiftDeadhead * (1 - (Injected / free))
            : (free - Drawn) / ((free / LiftDeadhead) + MainSlope);
        Assert.InRange(pressure, 1e3, 19e3);
        Close(pressure, joined.MinimumGauge, joined.MaximumGauge, joined.Balance.Pressure);
        double lifted = free * (1 - (pressure / LiftDeadhead));
        Close(lifted, joined.Balance.Drawn, joined.Full!.Value.Estimate.Flow);
        Assert.Equal(0, joined.Full!.Value.Estimate.ReturnFlow);
        Assert.True(joined.IsFull && joined.IsSurelyFull);
        Close(MainFree * (1 - ((Set - pressure) / MainDeadhead)), joined.MainFull!.Value.Estimate.Flow);
        Close(pressure, joined.MainFull.Value.Estimate.InletGauge);
        Close(Set, joined.MainFull.Value.Estimate.OutletGauge);

        // What it can sustain is what it lifts against the whole column.
        Close(free * (1 - (20e3 / LiftDeadhead)), joined.Sure.Estimate.Flow);
        Close(20e3, joined.FullTask.Set);
    }

    /// <summary>
    /// The least lift pump for a draw with a reserve of 10 %: with the return in the surge tank 1.1 times what is injected. With it in the other tank what overflows raises the tank's pressure and with it
    /// the draw, x = 1.1 (q₀ + c k (x − q₀)²), of which the lower root counts; a column of fuel in the line raises it besides.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(6e3)]
    public void LiftPump_ForADrawWithAReserve_AllowsForWhatOverflows(double column)
    {
        IFlowLoss[] line = column > 0 ? [new SquareLawResistance(Overflow), new Column(column)] : [new SquareLawResistance(Overflow)];
        Close(1.1 * Injected, Join(Tank(ReturnDestination.SurgeTank, 1.9e-5, line)).RequiredWith(0.1));

        // y = x − q₀: 1.1 c k y² − y + 0.1 q₀ + 1.1 c h = 0.
        (double a, double c) = (1.1 * MainSlope * Overflow, (0.1 * Drawn) + (1.1 * MainSlope * column));
        double more = 2 * c / (1 + Math.Sqrt(1 - (4 * a * c)));
        Close(Drawn + more, Join(Tank(ReturnDestination.MainTank, 3.5e-5, line)).RequiredWith(0.1));

        // A lift pump that brings far more makes more pressure than that: the draw then is what counts.
        JoinedCircuits ample = Join(Tank(ReturnDestination.MainTank, 9e-5, line));
        Assert.True(1.1 * ample.MaximumDraw > Drawn + more);
        Close(1.1 * ample.MaximumDraw, ample.RequiredWith(0.1));
        Close(MainFree * (1 - ((Set - ample.MaximumGauge) / MainDeadhead)), ample.MaximumDraw, ample.MinimumDraw);
    }

    /// <summary>A tank under more pressure than the rail is set to pushes fuel through the pumps: nobody says how much is drawn then, unless the return comes back to it.</summary>
    [Fact]
    public void Draw_FromATankOverTheRailsPressure_IsNotKnown()
    {
        IFlowLoss[] narrow = [new SquareLawResistance(Overflow * 1000)];
        JoinedCircuits Of(ReturnDestination to) => Join(
            SurgeTank.Of(Volume.FromLiters(1), Straight(8e-5, 6e5), to, overflow: narrow), set: 1e5);
        Assert.True(Of(ReturnDestination.MainTank).MaximumGauge > 1e5);
        Assert.Equal(double.NaN, Of(ReturnDestination.MainTank).MaximumDraw);
        Close(1.1 * Of(ReturnDestination.MainTank).MinimumDraw, Of(ReturnDestination.MainTank).RequiredWith(0.1));
        Assert.Equal(Injected, Of(ReturnDestination.SurgeTank).MaximumDraw);
    }

    /// <summary>
    /// A lift pump, a main pump, or both on more voltage than they were measured at: the bounds are those of pumps of which each bound is all that is known. The most pressure goes with the most lifted
    /// and the least drawn, the least pressure with the least lifted and the most drawn.
    /// </summary>
    [Theory]
    [InlineData(ReturnDestination.MainTank, 12, Volts)]
    [InlineData(ReturnDestination.MainTank, Volts, 12)]
    [InlineData(ReturnDestination.MainTank, 12, 12)]
    [InlineData(ReturnDestination.SurgeTank, 12, Volts)]
    [InlineData(ReturnDestination.SurgeTank, Volts, 12)]
    [InlineData(ReturnDestination.SurgeTank, 12, 12)]
    public void Bounds_OfPumpsOverTheirVoltage_AreThoseOfKnownOnes(ReturnDestination to, double lift, double main)
    {
        IFlowLoss[] line = [new SquareLawResistance(Overflow)];
        Pump lifting = Straight(6.5e-5, LiftDeadhead, lift);
        Pump drawing = Straight(MainFree, MainDeadhead, main);
        JoinedCircuits Of(Pump lifts, Pump draws) => Join(SurgeTank.Of(Volume.FromLiters(1), lifts, to, overflow: line), pump: draws);
        JoinedCircuits open = Of(lifting, drawing);
        (Pump leastLift, Pump mostLift) = (Known(lifting, PumpReading.Lower), Known(lifting, PumpReading.Upper));
        (Pump leastMain, Pump mostMain) = (Known(drawing, PumpReading.Lower), Known(drawing, PumpReading.Upper));
        JoinedCircuits low = Of(leastLift, mostMain);
        JoinedCircuits high = Of(mostLift, leastMain);
        Near(low.MaximumGauge, open.MinimumGauge);
        Near(high.MaximumGauge, open.MaximumGauge);
        Near(low.Full!.Value.Estimate.Flow, open.Full!.Value.Lower.Flow);
        Near(high.Full!.Value.Estimate.Flow, open.Full!.Value.Upper.Flow);
        Near(low.Full!.Value.Estimate.ReturnFlow, open.Full!.Value.Lower.ReturnFlow);
        Near(Of(leastLift, drawing).Filling.Estimate.Flow, open.Filling.Lower.Flow);
        Near(Of(mostLift, drawing).Filling.Estimate.Flow, open.Filling.Upper.Flow);
        Assert.Equal((open.Filling.Lower.Flow, open.Filling.Upper.Flow), (open.Filling.Estimate.MinimumAtSet, open.Filling.Estimate.MaximumAtSet));
        Assert.Equal(to == ReturnDestination.MainTank || lift < Volts, open.MaximumGauge > open.MinimumGauge * 1.02);
        Assert.InRange(open.Balance.Pressure, open.MinimumGauge * (1 - 1e-9), open.MaximumGauge * (1 + 1e-9));

        // The main circuit is judged with the tank full by either pressure.
        double Main(Pump pump, double pressure) => CircuitSolver.Solve(Task(pump) with
        {
            Set = Set - pressure,
            ReturnEnd = to == ReturnDestination.SurgeTank ? 0 : -pressure,
        }).Flow;
        Near(Main(leastMain, open.MinimumGauge), open.MainFull!.Value.Lower.Flow);
        Near(Main(mostMain, open.MaximumGauge), open.MainFull!.Value.Upper.Flow);
        double Demand(double flow) => to == ReturnDestination.SurgeTank ? Injected : flow;
        Near(Demand(Main(leastMain, open.MinimumGauge)), open.MinimumDraw);
        Near(Demand(Main(mostMain, open.MaximumGauge)), open.MaximumDraw);
    }

    /// <summary>
    /// A main regulator with 20 kPa of hysteresis to either side, returning to the main tank: the most is drawn where it holds the least, which leaves the tank the least pressure, and the least where it
    /// holds the most: x = lifted − drawn = A − B p with p = k x², for each. What the main pump passes at the most goes with the higher pressure in the tank.
    /// </summary>
    [Fact]
    public void Hysteresis_OfTheMainRegulator_BoundsTankAndDraw()
    {
        const double Band = 20e3;
        const double Free = 8e-5;
        double At(double pressure, double band) => MainFree * (1 - ((Set + band - pressure) / MainDeadhead));
        double Pressure(double band)
        {
            double a = ((Free / LiftDeadhead) + MainSlope) * Overflow;
            double spare = Free - At(0, band);
            double over = 2 * spare / (1 + Math.Sqrt(1 + (4 * a * spare)));
            return Overflow * over * over;
        }

        CircuitTask task = Task(Straight(MainFree, MainDeadhead)) with
        {
            Held = Fixed.At(UnitsNet.Pressure.FromPascals(Set)).WithFlow(RegulatorFlow.Constant.WithHysteresis(UnitsNet.Pressure.FromPascals(Band))).HeldAt(0),
        };
        JoinedCircuits joined = JoinedCircuits.Of(
            Tank(ReturnDestination.MainTank, Free, new SquareLawResistance(Overflow)), task, CircuitSolver.SolveBounds(task));
        Close(Pressure(0), joined.Balance.Pressure);
        Close(Pressure(-Band), joined.MinimumGauge);
        Close(Pressure(Band), joined.MaximumGauge);
        CircuitBounds full = joined.MainFull!.Value;
        Close(At(Pressure(-Band), Band), full.FlowsLess.Flow, joined.MinimumDraw);
        Close(At(Pressure(Band), -Band), full.FlowsMore.Flow, joined.MaximumDraw);
        Close(At(Pressure(0), 0), full.Estimate.Flow);
        Close(Set, full.Estimate.RailGauge, full.Estimate.Held);
        Close(1.1 * joined.MaximumDraw, joined.RequiredWith(0.1));
        Assert.True(joined.MaximumDraw > joined.MinimumDraw * 1.02);
    }

    /// <summary>
    /// A lift pump known between bounds below its voltage, 2 % to either side: with no lines before the tank it fills by each bound's free flow, and the pressure of what overflows of it, k (Q − q)², bounds the
    /// full tank's: Q₀ (1 − p/p₀) − q = x, p = k x².
    /// </summary>
    [Fact]
    public void LiftPumpKnownBetweenBounds_BoundsWhatFillsAndWhatOverflows()
    {
        const double Free = 6.5e-5;
        double Of(PumpReading reading) => Free * reading switch { PumpReading.Lower => 0.98, PumpReading.Upper => 1.02, _ => 1 };
        FormulaAssembly lift = new((_, reading) => new FormulaPumps(Of(reading), LiftDeadhead, givesFlow: true, bySquare: false), CoversVoltage: false, EndsOpen: true);
        JoinedCircuits joined = Join(SurgeTank.Of(Volume.FromLiters(1), lift, ReturnDestination.SurgeTank, overflow: [new SquareLawResistance(Overflow)]));
        double Pressure(PumpReading reading)
        {
            double over = 2 * (Of(reading) - Injected) / (1 + Math.Sqrt(1 + (4 * Of(reading) / LiftDeadhead * Overflow * (Of(reading) - Injected))));
            return Overflow * over * over;
        }

        Close(Of(PumpReading.Lower), joined.Filling.Lower.Flow, joined.Filling.Estimate.MinimumAtSet, joined.Sure.Lower.Flow);
        Close(Of(PumpReading.Upper), joined.Filling.Upper.Flow, joined.Filling.Estimate.MaximumAtSet, joined.Sure.Upper.Flow);
        Close(Pressure(PumpReading.Lower), joined.MinimumGauge);
        Close(Pressure(PumpReading.Estimate), joined.Balance.Pressure);
        Close(Pressure(PumpReading.Upper), joined.MaximumGauge);
        Assert.Null(joined.MainFull!.Value.Flows);
    }

    /// <summary>
    /// A main pump measured from 400 kPa on says nothing of what it passes at 300. With its return in the surge tank what is injected is drawn all the same; with it in the other nobody knows, and the most
    /// pressure is that of a tank from which nothing is drawn, so that it is not called full.
    /// </summary>
    [Fact]
    public void MainPumpOfWhichNothingIsKnown_LeavesTheDrawOpen()
    {
        Pump late = Pump.From(PumpCurve.At(
            "late pump", Wren.Volt(Volts), (Pressure.FromPascals(4e5), VolumeFlow.FromCubicMetersPerSecond(5e-5)), (Pressure.FromPascals(8e5), VolumeFlow.Zero)));
        const double Free = 6.5e-5;
        double Full(double drawn)
        {
            double over = 2 * (Free - drawn) / (1 + Math.Sqrt(1 + (4 * Free / LiftDeadhead * Overflow * (Free - drawn))));
            return Overflow * over * over;
        }

        JoinedCircuits known = Join(Tank(ReturnDestination.SurgeTank, Free, new SquareLawResistance(Overflow)), pump: late);
        Close(Injected, known.Balance.Drawn, known.MinimumDraw, known.MaximumDraw);
        Close(Full(Injected), known.Balance.Pressure);
        Assert.True(known.IsFull);
        JoinedCircuits open = Join(Tank(ReturnDestination.MainTank, Free, new SquareLawResistance(Overflow)), pump: late);
        Assert.Equal(double.NaN, open.Balance.Drawn);
        Close(Full(0), open.Balance.Pressure, open.MaximumGauge);
        Assert.False(open.IsFull || open.IsSurelyFull);
    }

    private static JoinedCircuits Join(SurgeTank tank, double set = Set, Pump? pump = null)
    {
        CircuitTask task = Task(pump ?? Straight(MainFree, MainDeadhead)) with { Set = set };
        return JoinedCircuits.Of(tank, task, CircuitSolver.SolveBounds(task));
    }

    private static CircuitTask Task(Pump pump) => new(LineLayout.Return, pump, Plumbing.None, Volts, null, Set, 0, Injected, 740, 0.6e-6);

    private static SurgeTank Tank(ReturnDestination to, double free, params IFlowLoss[] overflow) =>
        SurgeTank.Of(Volume.FromLiters(1), Straight(free, LiftDeadhead), to, overflow: overflow);

    private static Pump Straight(double free, double deadhead, double volts = Volts) => Pump.From(PumpCurve.At(
        "straight pump",
        Wren.Volt(volts),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(free)),
        (Pressure.FromPascals(deadhead), VolumeFlow.Zero)));

    /// <summary>A pump measured at this voltage to give just what one reading of another's data gives.</summary>
    private static Pump Known(Pump pump, PumpReading reading)
    {
        RunningPumps running = pump.Running(Volts, reading);
        return Pump.From(PumpCurve.At("known pump", Wren.Volt(Volts), [
            .. Enumerable.Range(0, 500).Select(step => running.Deadhead * step / 500)
                .Select(rise => (Pressure.FromPascals(rise), VolumeFlow.FromCubicMetersPerSecond(running.FlowAt(rise)))),
            (Pressure.FromPascals(running.Deadhead), VolumeFlow.Zero),
        ]));
    }

    private static void Close(double expected, params double[] actual) => Assert.All(actual, figure => Assert.Equal(expected, figure, Math.Abs(expected) * 1e-9));

    // Between sampled points of a straight curve there is only rounding; an estimate's curve is one of them.
    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, Math.Abs(expected) * 1e-6);

    /// <summary>A height of fuel, whatever flows.</summary>
    private sealed class Column(double pascals) : IFlowLoss
    {
        public string Name => "column";

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => 0;

        double IFlowLoss.ElevationPascals(double density) => pascals;
    }
}
