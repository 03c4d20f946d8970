using FuelSizing.Circuits;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// A regulator that holds more the more returns through it, by hand: a pump whose rise falls in a straight line, p = p₀ (1 − Q/Q₀), and a regulator of 300 kPa with a slope,
/// p = 300 kPa + s (r − r₀), stated at r₀ = 10 cm³/s. What returns is the root of a linear equation, or with a line of a quadratic one.
/// </summary>
public class SlopedRegulatorTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;
    private const double Set = 3e5;
    private const double Stated = 1e-5;
    private const double Injected = 1e-5;

    // 36 kPa for 100 L/h.
    private const double Slope = 36e3 / (100 / 3.6e6);

    private static readonly RegulatorFlow Rising = RegulatorFlow.Rising(
        Wren.Kpa(36), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromCubicMetersPerSecond(Stated));

    private static readonly Pump Straight = PumpOf("straight pump", Deadhead);

    /// <summary>One pump, or two in series that are as one: p₀ (1 − Q/Q₀) = p_set + s (Q − q − r₀).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rail_IsHeldAtWhatReturns(bool inSeries)
    {
        CircuitState state = CircuitSolver.Solve(Task(Rising) with { Pump = inSeries ? Halves : Straight });
        double flow = FlowAt(Set);
        Assert.Equal(RailState.Regulated, state.State);
        Close(flow, state.Flow);
        Close(flow - Injected, state.ReturnFlow);
        Close(HeldAt(flow - Injected), state.RailGauge);
        Close(HeldAt(flow - Injected), state.Held);
        Close(state.RailGauge, state.OutletGauge);

        // Pumps are judged at the setting, for nothing has to return: at less than that it would not be at its setting.
        Close(FreeFlow * (1 - (Set / Deadhead)), state.MinimumAtSet);
        Close(state.MinimumAtSet, state.MaximumAtSet);
    }

    /// <summary>What has to return at the least raises what the regulator holds then, and with it what the pump is judged against; what returns less is at the regulator's limit.</summary>
    [Fact]
    public void Pump_IsJudgedAgainstWhatIsHeldAtTheMinimumReturn()
    {
        CircuitTask task = Task(Rising) with { MinimumReturn = 2e-5 };
        Close(HeldAt(2e-5), task.DeliveredAgainst(RegulatorReading.Upper));
        Close(FreeFlow * (1 - (HeldAt(2e-5) / Deadhead)), CircuitSolver.Solve(task).MinimumAtSet);
        Close(HeldAt(2e-5), task.RiseToDeliver(4e-5));
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task).State);
        Assert.Equal(RailState.AtRegulatorLimit, CircuitSolver.Solve(task with { MinimumReturn = FlowAt(Set) - Injected + 1e-9 }).State);
        Assert.Equal(Set, (task with { MinimumReturn = 0 }).DeliveredAgainst(RegulatorReading.Upper));
        Assert.Equal(Set, (task with { Held = null }).DeliveredAgainst(RegulatorReading.Upper));
    }

    /// <summary>Where the pump does not reach them injectors are judged at the least that the regulator begins to govern at: its setting or what it holds at the minimum return, less its hysteresis.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 2e-5)]
    [InlineData(20e3, 0)]
    [InlineData(20e3, 2e-5)]
    public void Injectors_AreJudgedAtTheLeastThatItGovernsAt(double band, double minimumReturn)
    {
        CircuitTask task = Task(band > 0 ? Rising.WithHysteresis(Pressure.FromPascals(band)) : Rising) with { MinimumReturn = minimumReturn };
        Close(Math.Min(Set, HeldAt(minimumReturn)) - band, task.RailAsJudged);
        Assert.Equal(Set, task.RailAsSet);
        Assert.Equal(Set, (task with { Held = null }).RailAsJudged);
    }

    /// <summary>
    /// In a tank under 15 kPa all is counted from there: the regulator holds 15 kPa less over it, for its outlet and its setting are over ambient pressure.
    /// </summary>
    [Fact]
    public void Pressures_CountedFromATank_AreLessByItsOwn()
    {
        CircuitTask task = Task(Rising.WithHysteresis(Wren.Kpa(20))) with { MinimumReturn = 2e-5, Origin = 15e3 };
        Close(HeldAt(2e-5) + 20e3 - 15e3, task.DeliveredAgainst(RegulatorReading.Upper));
        Close(Set - 20e3 - 15e3, task.RailAsJudged);
        Close(HeldAt(3e-5) - 15e3, task.RegulatedAt(Injected + 3e-5, RegulatorReading.Estimate));
        Close(HeldAt(0) - 15e3, task.RegulatedAt(Injected / 2, RegulatorReading.Estimate));
    }

    /// <summary>Hysteresis of 20 kPa to either side: bounds are those of a regulator set so much lower or higher; the higher rail goes with the lesser flow.</summary>
    [Fact]
    public void Hysteresis_BoundsRailAndFlow()
    {
        CircuitBounds bounds = CircuitSolver.SolveBounds(Task(Rising.WithHysteresis(Wren.Kpa(20))));
        Close(FlowAt(Set), bounds.Estimate.Flow);
        Close(FlowAt(Set - 20e3), bounds.Lower.Flow);
        Close(FlowAt(Set + 20e3), bounds.Upper.Flow);
        Close(HeldAt(FlowAt(Set - 20e3) - Injected) - 20e3, bounds.Lower.RailGauge);
        Close(HeldAt(FlowAt(Set + 20e3) - Injected) + 20e3, bounds.Upper.RailGauge);
        Close(FlowAt(Set + 20e3), bounds.FlowsLess.Flow);
        Close(FlowAt(Set - 20e3), bounds.FlowsMore.Flow);
        Close(FreeFlow * (1 - ((Set + 20e3) / Deadhead)), bounds.Estimate.MinimumAtSet);
        Close(FreeFlow * (1 - ((Set - 20e3) / Deadhead)), bounds.Estimate.MaximumAtSet);

        CircuitBounds one = CircuitSolver.SolveBounds(Task(Rising));
        Assert.Null(one.Flows);
        Assert.Equal((one.Estimate, one.Estimate), (one.Lower, one.Upper));
    }

    /// <summary>
    /// A pump over the voltage that it was measured at gives at the least what it did there: the lower bound of the rail, and the least that flows against the higher of two readings, are those of a
    /// pump that was measured at this voltage.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(20e3)]
    public void Bounds_OfAPumpOverItsVoltage_AreThoseOfItsOwnCurveAtTheLeast(double band)
    {
        CircuitTask task = Task(band > 0 ? Rising.WithHysteresis(Pressure.FromPascals(band)) : Rising);
        CircuitTask open = task with { Pump = PumpOf("pump", Deadhead, 12) };
        CircuitBounds bounds = CircuitSolver.SolveBounds(open);
        Close(HeldAt(FlowAt(Set - band) - Injected) - band, bounds.Lower.RailGauge);
        Close(FlowAt(Set + band), bounds.FlowsLess.Flow);
        Close(FreeFlow * (1 - ((Set + band) / Deadhead)), bounds.Estimate.MinimumAtSet);
        Assert.True(bounds.Upper.RailGauge > bounds.Estimate.RailGauge && bounds.FlowsMore.Flow > bounds.FlowsLess.Flow * 1.05);
        Assert.True(bounds.Estimate.MaximumAtSet > bounds.Estimate.MinimumAtSet * 1.05);
    }

    /// <summary>One side alone is the same as both: of a regulator with and without a slope, with and without hysteresis, measured and past either end of that, of a pump whose data covers the point and of one whose does not.</summary>
    [Theory]
    [InlineData(13.5)]
    [InlineData(12)]
    public void Side_IsThatOfTheBounds(double measured)
    {
        CircuitTask[] tasks =
        [
            Task(Rising), Task(Rising.WithHysteresis(Wren.Kpa(20))), Task(Rising) with { Held = null }, Measured((10, 290), (20, 300)), Measured((30, 300), (40, 310)),
        ];
        foreach (CircuitTask task in tasks.Select(task => task with { Pump = PumpOf("pump", Deadhead, measured) }))
        {
            CircuitBounds bounds = CircuitSolver.SolveBounds(task);
            foreach (CircuitSide side in Enum.GetValues<CircuitSide>())
            {
                CircuitState own = CircuitSolver.SolveSide(task, side);
                Assert.Equal(bounds.Of(side).State, own.State);
                Close(bounds.Of(side).Flow, own.Flow);
                Close(bounds.Of(side).RailGauge, own.RailGauge);
            }
        }
    }

    /// <summary>With more injected than the pump brings at what is held with nothing returned the regulator is shut; with more than its free flow the rail has no pressure.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rail_ThatThePumpDoesNotReach_Sags(bool inSeries)
    {
        CircuitTask task = Task(Rising) with { Pump = inSeries ? Halves : Straight };
        CircuitState sagging = CircuitSolver.Solve(task with { Injected = 4.5e-5 });
        Assert.Equal(RailState.Sagging, sagging.State);
        Close(Deadhead / 4, sagging.RailGauge);
        Close(HeldAt(0), sagging.Held);
        Assert.Equal((4.5e-5, 0), (sagging.Flow, sagging.ReturnFlow));
        Assert.Equal(RailState.Starved, CircuitSolver.Solve(task with { Injected = FreeFlow }).State);
        Assert.Equal(RailState.Starved, CircuitSolver.Solve(task with { Injected = FreeFlow * 1.2 }).State);

        // Just where it begins: 287.04 kPa with nothing returned.
        double least = FreeFlow * (1 - (HeldAt(0) / Deadhead));
        Assert.Equal(RailState.Sagging, CircuitSolver.Solve(task with { Injected = least * (1 + 1e-9) }).State);
        Assert.Equal(RailState.Regulated, CircuitSolver.Solve(task with { Injected = least * (1 - 1e-9) }).State);
    }

    /// <summary>A suction and a supply line, k₁ and k₂: p₀ (1 − Q/Q₀) = (k₁ + k₂) Q² + p_set + s (Q − q − r₀).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Lines_AreLostBeforeTheRegulator(bool inSeries)
    {
        const double Suction = 5e3 / 1e-9;
        const double Supply = 4e4 / 1e-9;
        CircuitTask task = Task(Rising) with
        {
            Pump = inSeries ? Halves : Straight,
            Plumbing = Plumbing.Of([new SquareLawResistance(Suction)], [new SquareLawResistance(Supply)], []),
        };
        CircuitState state = CircuitSolver.Solve(task);
        double flow = Root(Suction + Supply, (Deadhead / FreeFlow) + Slope, Set - (Slope * (Injected + Stated)) - Deadhead);
        Close(flow, state.Flow);
        Close(HeldAt(flow - Injected), state.RailGauge);
        Close(HeldAt(flow - Injected) + (Supply * flow * flow), state.OutletGauge);
        Close(-Suction * flow * flow, state.InletGauge);
        double judged = Root(Suction + Supply, Deadhead / FreeFlow, Set - Deadhead);
        Close(judged, state.MinimumAtSet);
    }

    /// <summary>A return line that asks for more than the regulator holds governs: p₀ (1 − Q/Q₀) = k (Q − q)², with the regulator wide open.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ReturnLine_ThatAsksForMore_Governs(bool inSeries)
    {
        const double Back = 5e5 / (2e-5 * 2e-5);
        CircuitTask task = Task(Rising) with { Pump = inSeries ? Halves : Straight, Plumbing = Plumbing.Of([], [], [new SquareLawResistance(Back)]) };
        CircuitState state = CircuitSolver.Solve(task);
        double returned = Root(Back, Deadhead / FreeFlow, -Deadhead * (1 - (Injected / FreeFlow)));
        Assert.Equal(RailState.ReturnFloor, state.State);
        Close(Injected + returned, state.Flow);
        Close(Back * returned * returned, state.RailGauge);
        Close(state.RailGauge, state.ReturnGauge);
        Close(HeldAt(returned), state.Held);
        Assert.True(state.Held < state.RailGauge);
    }

    /// <summary>
    /// Measured from 10 to 20 cm³/s, 290 to 300 kPa, and 27.5 cm³/s would return at 300 kPa: past the last point the regulator holds no less, and may hold anything more. The bounds are 300 kPa,
    /// and what the pump has left where just 20 cm³/s return: p₀ (1 − 30/60).
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MeasuredCurve_PastItsLastPoint_IsBoundedByIt(bool inSeries)
    {
        CircuitBounds bounds = CircuitSolver.SolveBounds(Measured((10, 290), (20, 300)) with { Pump = inSeries ? Halves : Straight });
        Close(3e5, bounds.Lower.RailGauge);
        Close(3.75e-5, bounds.Lower.Flow);
        Close(4e5, bounds.Upper.RailGauge);
        Close(3e-5, bounds.Upper.Flow);
        Close(2e-5, bounds.Upper.ReturnFlow);
        Close(4e5, bounds.Upper.Held);
        Close(3e-5, bounds.FlowsLess.Flow);
        Close(3.75e-5, bounds.FlowsMore.Flow);
    }

    /// <summary>Measured from 30 to 40 cm³/s, and 27.5 would return at the first point's 300 kPa: under it the regulator holds no more, and may hold anything less; p₀ (1 − 40/60) is left where just 30 return.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MeasuredCurve_UnderItsFirstPoint_IsBoundedByIt(bool inSeries)
    {
        CircuitBounds bounds = CircuitSolver.SolveBounds(Measured((30, 300), (40, 310)) with { Pump = inSeries ? Halves : Straight });
        Close(3e5, bounds.Upper.RailGauge);
        Close(3.75e-5, bounds.Upper.Flow);
        Close(Deadhead / 3, bounds.Lower.RailGauge);
        Close(4e-5, bounds.Lower.Flow);
        Close(3e-5, bounds.Lower.ReturnFlow);
    }

    private static PumpAssembly Halves => PumpSeries.Of(SeriesBypass.CheckValve, PumpOf("first", Deadhead / 2), PumpOf("second", Deadhead / 2));

    private static double HeldAt(double returned) => Set + (Slope * (returned - Stated));

    private static double FlowAt(double set) => (Deadhead - set + (Slope * (Injected + Stated))) / ((Deadhead / FreeFlow) + Slope);

    private static CircuitTask Task(RegulatorFlow flow) => new(LineLayout.Return, Straight, Plumbing.None, 13.5, null, Set, 0, Injected, 740, 5e-7)
    {
        Held = Fixed.At(Pressure.FromPascals(Set)).WithFlow(flow).HeldAt(0),
    };

    private static CircuitTask Measured(params (double Returned, double Kilopascals)[] points) => Task(RegulatorFlow.Measured(
        VolumeFlow.FromCubicMetersPerSecond(points.Single(point => point.Kilopascals.Equals(300)).Returned * 1e-6),
        [.. points.Select(point => (VolumeFlow.FromCubicMetersPerSecond(point.Returned * 1e-6), Wren.Kpa(point.Kilopascals)))]));

    private static Pump PumpOf(string name, double deadhead, double volts = 13.5) => Pump.From(PumpCurve.At(
        name,
        Wren.Volt(volts),
        (Pressure.Zero, VolumeFlow.FromCubicMetersPerSecond(FreeFlow)),
        (Pressure.FromPascals(deadhead), VolumeFlow.Zero)));

    /// <summary>The positive root of a x² + b x + c, of which c is negative.</summary>
    private static double Root(double a, double b, double c) => -2 * c / (b + Math.Sqrt((b * b) - (4 * a * c)));

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, Math.Abs(expected) * 1e-10);
}
