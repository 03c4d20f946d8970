using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// A second stream at one boost, by hand: one nozzle of 390 mL/min of water at 700 kPa, whose flow goes with the square root of pressure over density, and a pump whose flow falls in a straight line.
/// Under a third of 700 kPa the nozzle's flow is not known.
/// </summary>
public class SolvedStreamTests
{
    private const double Volts = 13.5;
    private const double Kelvins = 303.15;
    private const double Boost = 50e3;
    private static readonly StreamFluid Methanol = StreamFluid.Of(Fuel.Methanol);

    private static readonly double Density = Fuel.Methanol.DensityAt(Temperature.FromKelvins(Kelvins)).KilogramsPerCubicMeter;

    /// <summary>Under its begin nothing flows, and nothing is claimed of a pressure.</summary>
    [Fact]
    public void Stream_UnderItsBegin_DoesNotFlow()
    {
        SolvedStream solved = SolvedStream.Of(Held(850), 29e3, Volts, Kelvins);
        Assert.False(solved.Acts);
        Assert.Equal((0, 0, 0, 0, 0), (solved.Share, solved.Flow, solved.MinimumFlow, solved.MaximumFlow, solved.MaximumMassFlow));
        Assert.Equal((double.NaN, double.NaN, double.NaN), (solved.Pressure, solved.LowestPressure, solved.HighestPressure));
        Assert.True(SolvedStream.Of(Held(850), 30e3, Volts, Kelvins).Acts);
    }

    /// <summary>850 kPa against 50 kPa of boost, or against ambient pressure before the compressor: one flow, whatever a pump could do.</summary>
    [Theory]
    [InlineData(SprayPlace.Manifold, 800)]
    [InlineData(SprayPlace.BeforeCompressor, 850)]
    public void Stream_OfHeldPressure_IsTheNozzlesFlow(SprayPlace into, double across)
    {
        SolvedStream solved = SolvedStream.Of(Held(850, into: into), Boost, Volts, Kelvins);
        double flow = Nozzle(across, Density);
        Assert.Equal((850e3, 850e3, 850e3, 850e3), (solved.Held, solved.Pressure, solved.LowestPressure, solved.HighestPressure));
        Assert.Equal(850e3 - (across * 1e3), solved.BackPressure);
        Close(flow, solved.Flow, solved.MinimumFlow, solved.MaximumFlow);
        Close(flow * Density, solved.MassFlow, solved.MinimumMassFlow, solved.MaximumMassFlow);
        Assert.Equal((double.NaN, double.NaN, double.NaN), (solved.Required, solved.MinimumDelivered, solved.MaximumDelivered));
    }

    /// <summary>
    /// A pump of 120 L/h and 1,200 kPa has 35 L/h to spare at 850 kPa, more than the nozzle takes there: what it delivers is told beside. On a ramp from 30 to 70 kPa half of the stream flows at 50 kPa,
    /// and half is asked of the pump.
    /// </summary>
    [Theory]
    [InlineData(null, 1)]
    [InlineData(70.0, 0.5)]
    public void Pump_ThatHoldsThePressure_DeliversMoreThanTheNozzleTakes(double? full, double share)
    {
        SolvedStream solved = SolvedStream.Of(Held(850, PumpOf(120), full), Boost, Volts, Kelvins);
        Close(share, solved.Share);
        Close(share * Nozzle(800, Density), solved.Flow, solved.MinimumFlow, solved.MaximumFlow, solved.Required);
        Close(120 / 3.6e6 * (1 - (850.0 / 1200)), solved.MinimumDelivered, solved.MaximumDelivered);
        Assert.Equal(850e3, solved.Pressure);
        Close(share * Nozzle(800, Density) * Density, solved.MaximumMassFlow);
    }

    /// <summary>A pump that does not hold 850 kPa, or of which nothing holds the pressure, meets the nozzle: Q₀ (1 − p/p₀) = c √(p − b).</summary>
    [Theory]
    [InlineData(850.0, 40, SprayPlace.Manifold)]
    [InlineData(null, 40, SprayPlace.Manifold)]
    [InlineData(null, 120, SprayPlace.Manifold)]
    [InlineData(null, 120, SprayPlace.BeforeCompressor)]
    public void Pump_ThatTheNozzleHoldsBack_MeetsItAtTheQuadraticsRoot(double? held, double litresPerHour, SprayPlace into)
    {
        SolvedStream solved = SolvedStream.Of(Held(held, PumpOf(litresPerHour), into: into), Boost, Volts, Kelvins);
        (double q0, double p0, double b) = (litresPerHour / 3.6e6, 1200e3, into == SprayPlace.Manifold ? Boost : 0);
        double c = Nozzle(1, Density) / Math.Sqrt(1e3);
        double root = 2 * q0 * (1 - (b / p0)) / (c + Math.Sqrt((c * c) + (4 * q0 / p0 * q0 * (1 - (b / p0)))));
        Close(b + (root * root), solved.Pressure, solved.LowestPressure, solved.HighestPressure);
        Close(c * root, solved.Flow, solved.MinimumFlow, solved.MaximumFlow);
        Close(c * root * Density, solved.MaximumMassFlow);
        if (held is { } pascals)
        {
            Close(Nozzle(pascals - 50, Density), solved.Required);
            Close(q0 * (1 - (pascals / 1200)), solved.MinimumDelivered, solved.MaximumDelivered);
            Assert.True(solved.Flow < solved.Required);
        }
        else
        {
            Assert.Equal((double.NaN, double.NaN, double.NaN), (solved.Required, solved.MinimumDelivered, solved.MaximumDelivered));
        }
    }

    /// <summary>Against more boost than the pump's deadhead nothing is sprayed, and the pump stands at its deadhead; nor against more than what is held.</summary>
    [Fact]
    public void Boost_OverThePressure_LetsNothingThrough()
    {
        SolvedStream shut = SolvedStream.Of(Held(null, PumpOf(40, 60)), 70e3, Volts, Kelvins);
        Assert.Equal((0, 0, 0), (shut.Flow, shut.MinimumFlow, shut.MaximumFlow));
        Assert.Equal(60e3, shut.Pressure, 1e-6);
        SolvedStream held = SolvedStream.Of(Held(55, PumpOf(40)), 70e3, Volts, Kelvins);
        Assert.Equal((0, 0, 55e3), (held.Flow, held.MaximumFlow, held.Pressure));
    }

    /// <summary>Between nothing and a third of the nozzle's rated pressure its flow is not known: nothing at the least, and at the most what passes there.</summary>
    [Fact]
    public void Nozzle_UnderItsKnownPressure_IsBounded()
    {
        SolvedStream solved = SolvedStream.Of(Held(200), Boost, Volts, Kelvins);
        Assert.Equal((double.NaN, 0), (solved.Flow, solved.MinimumFlow));
        Close(Nozzle(700.0 / 3, Density), solved.MaximumFlow);
        Close(Nozzle(700.0 / 3, Density) * Density, solved.MaximumMassFlow);
        Close(Nozzle(250, Density), SolvedStream.Of(Held(300), Boost, Volts, Kelvins).Flow);
    }

    /// <summary>Of methanol and water only bounds of the density are known: the flow is that of the lightest, and the mass at the most that of the heaviest, of which less flows.</summary>
    [Fact]
    public void Mass_OfAMixture_IsBoundedByItsHeaviest()
    {
        StreamFluid half = StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50));
        (double light, double heavy) = (half.DensityAtKelvins(Kelvins), half.MaximumDensityAtKelvins(Kelvins));
        Assert.True(heavy > light * 1.01);
        SolvedStream solved = SolvedStream.Of(Held(850, fluid: half), Boost, Volts, Kelvins);
        Close(Nozzle(800, light), solved.Flow);
        Close(light * Nozzle(800, light), solved.MassFlow);
        Close(heavy * Nozzle(800, heavy), solved.MaximumMassFlow);
        SolvedStream pumped = SolvedStream.Of(Held(850, PumpOf(120), fluid: half), Boost, Volts, Kelvins);
        Close(heavy * Nozzle(800, heavy), pumped.MaximumMassFlow);
        SolvedStream low = SolvedStream.Of(Held(200, fluid: half), Boost, Volts, Kelvins);
        Close(heavy * Nozzle(700.0 / 3, heavy), low.MaximumMassFlow);
    }

    /// <summary>On far less voltage than it was measured at nothing is known of a pump; what is held bounds the flow all the same.</summary>
    [Fact]
    public void Pump_WithoutDataAtItsVoltage_IsBoundedByWhatIsHeld()
    {
        SolvedStream held = SolvedStream.Of(Held(850, PumpOf(120)), Boost, 6, Kelvins);
        Assert.Equal((double.NaN, 0), (held.Flow, held.MinimumFlow));
        Close(Nozzle(800, Density), held.MaximumFlow, held.Required);
        Close(Nozzle(800, Density) * Density, held.MaximumMassFlow);
        Assert.Equal((850e3, double.NaN, double.NaN), (held.HighestPressure, held.MinimumDelivered, held.MaximumDelivered));
        SolvedStream free = SolvedStream.Of(Held(null, PumpOf(120)), Boost, 6, Kelvins);
        Assert.Equal((double.NaN, 0, double.NaN, double.NaN), (free.Flow, free.MinimumFlow, free.MaximumFlow, free.MaximumMassFlow));
    }

    /// <summary>On more voltage than it was measured at a pump delivers at the least what it did there.</summary>
    [Fact]
    public void Pump_OverItsVoltage_DeliversAtTheLeastItsOwnCurve()
    {
        SolvedStream measured = SolvedStream.Of(Held(850, PumpOf(40)), Boost, Volts, Kelvins);
        SolvedStream open = SolvedStream.Of(Held(850, PumpOf(40, volts: 12)), Boost, Volts, Kelvins);
        Close(measured.Flow, open.MinimumFlow);
        Close(measured.Pressure, open.LowestPressure);
        Close(measured.MinimumDelivered, open.MinimumDelivered);
        Assert.True(open.MaximumDelivered > open.MinimumDelivered * 1.1 && open.MaximumFlow > open.MinimumFlow * 1.02);
        Assert.True(open.MaximumFlow <= Nozzle(800, Density) * (1 + 1e-12));
        Close(open.MaximumFlow * Density, open.MaximumMassFlow);
    }

    /// <summary>A curve that ends at 600 kPa with flow left: at the least nothing is delivered against 850 kPa; the most is not known, but what is held bounds it.</summary>
    [Fact]
    public void Pump_WhoseCurveEndsOpen_IsBoundedByWhatIsHeld()
    {
        Pump open = Pump.From(PumpCurve.At(
            "pump M", Wren.Volt(Volts), (Pressure.Zero, VolumeFlow.FromLitersPerHour(60)), (Wren.Kpa(600), VolumeFlow.FromLitersPerHour(45))));
        SolvedStream solved = SolvedStream.Of(Held(850, open), Boost, Volts, Kelvins);
        Assert.Equal(double.NaN, solved.Flow);
        Assert.True(solved.MinimumFlow <= Nozzle(550, Density) * (1 + 1e-9));
        Close(Nozzle(800, Density), solved.MaximumFlow);

        // At 500 kPa the curve says 47.5 L/h, more than the nozzle takes.
        SolvedStream inside = SolvedStream.Of(Held(500, open), Boost, Volts, Kelvins);
        Close(Nozzle(450, Density), inside.Flow, inside.MinimumFlow, inside.MaximumFlow);
        Close(47.5 / 3.6e6, inside.MinimumDelivered, inside.MaximumDelivered);
    }

    /// <summary>With just as much boost as is held nothing is sprayed, and that is known; at just the nozzle's least known pressure, a third of its rated one, the flow is known too.</summary>
    [Fact]
    public void Nozzle_AtAnEndOfWhatIsKnown_IsKnown()
    {
        SolvedStream still = SolvedStream.Of(Held(50), 50e3, Volts, Kelvins);
        Assert.Equal((0, 0, 0, 50e3), (still.Flow, still.MinimumFlow, still.MaximumFlow, still.Pressure));
        Assert.Equal(double.NaN, SolvedStream.Of(Held(50), 49e3, Volts, Kelvins).Flow);
        SprayNozzles nozzles = Held(850, into: SprayPlace.BeforeCompressor).Nozzles;
        SecondStream third = SecondStream.Of("stream M", Methanol, nozzles, Wren.Kpa(30), nozzles.MinimumDifferential);
        Close(Nozzle(700.0 / 3, Density), SolvedStream.Of(third, Boost, Volts, Kelvins).Flow);
    }

    /// <summary>Against more boost than a pump's deadhead it passes nothing; where its voltage is far under any that was measured, nobody knows.</summary>
    [Fact]
    public void Pump_OfUnknownDeadhead_IsNotKnownToPassNothing()
    {
        SolvedStream open = SolvedStream.Of(Held(null, PumpOf(40, 60)), 70e3, 6, Kelvins);
        Assert.Equal((double.NaN, double.NaN), (open.Flow, open.Pressure));
        Assert.Equal(0, open.MinimumFlow);
    }

    /// <summary>A pump that was measured from 900 kPa on, where it gives 100 L/h, gives no less at 850: the pressure is held at the least by that, but nothing says so of its estimate.</summary>
    [Fact]
    public void Pump_ThatWasMeasuredAboveThePressure_IsNotKnownThere()
    {
        Pump late = Pump.From(PumpCurve.At(
            "pump M", Wren.Volt(Volts), (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(100)), (Wren.Kpa(1200), VolumeFlow.Zero)));
        SolvedStream solved = SolvedStream.Of(Held(850, late), Boost, Volts, Kelvins);
        Assert.Equal((double.NaN, double.NaN), (solved.Flow, solved.Pressure));
        Close(Nozzle(800, Density), solved.MaximumFlow, solved.Required);
        Assert.Equal(850e3, solved.HighestPressure);
    }

    /// <summary>
    /// A mixture at the end of a weak pump: the nozzle passes less of a heavier one, so that the pump stands at a higher pressure, Q₀ (1 − p/p₀) = c √(p − b) with c of the heaviest, and the most mass is that
    /// flow of the heaviest.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void MassOfAMixture_FromAWeakPump_IsWhereThatMeetsTheNozzle(bool isHeld)
    {
        StreamFluid half = StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50));
        SolvedStream solved = SolvedStream.Of(Held(isHeld ? 850 : null, PumpOf(40), fluid: half), Boost, Volts, Kelvins);
        double FlowOf(double density)
        {
            (double q0, double p0, double c) = (40 / 3.6e6, 1200e3, Nozzle(1, density) / Math.Sqrt(1e3));
            double root = 2 * q0 * (1 - (Boost / p0)) / (c + Math.Sqrt((c * c) + (4 * q0 / p0 * q0 * (1 - (Boost / p0)))));
            return c * root;
        }

        (double light, double heavy) = (half.DensityAtKelvins(Kelvins), half.MaximumDensityAtKelvins(Kelvins));
        Close(FlowOf(light), solved.Flow, solved.MaximumFlow);
        Close(heavy * FlowOf(heavy), solved.MaximumMassFlow);
        Close(light * FlowOf(light), solved.MassFlow, solved.MinimumMassFlow);
    }

    /// <summary>
    /// A curve that ends at 600 kPa with 45 L/h, more than the nozzle takes there: it may go on. At the least the pump stands at 600 kPa, which is known; at the most it delivers 45 L/h against 850 kPa.
    /// </summary>
    [Fact]
    public void Pump_WhoseCurveEndsOpen_IsKnownBetweenItsEndAndItsLastFlow()
    {
        Pump open = Pump.From(PumpCurve.At(
            "pump M", Wren.Volt(Volts), (Pressure.Zero, VolumeFlow.FromLitersPerHour(60)), (Wren.Kpa(600), VolumeFlow.FromLitersPerHour(45))));
        SolvedStream held = SolvedStream.Of(Held(850, open), Boost, Volts, Kelvins);
        Assert.Equal(600e3, held.LowestPressure, 1);
        Assert.Equal(Nozzle(550, Density), held.MinimumFlow, 1e-12);
        Close(45 / 3.6e6, held.MaximumDelivered);
        Assert.Equal(0, held.MinimumDelivered);
        SolvedStream free = SolvedStream.Of(Held(null, open), Boost, Volts, Kelvins);
        Assert.Equal(Nozzle(550, Density), free.MinimumFlow, 1e-12);
        Assert.Equal(double.NaN, free.Flow);
    }

    private static SecondStream Held(double? kilopascals, Pump? pump = null, double? full = null, SprayPlace into = SprayPlace.Manifold, StreamFluid? fluid = null) => SecondStream.Of(
        "stream M",
        fluid ?? Methanol,
        SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(390), Wren.Kpa(700), SprayNozzles.Water, into),
        Wren.Kpa(30),
        kilopascals is { } held ? Wren.Kpa(held) : null,
        pump,
        full is { } whole ? Wren.Kpa(whole) : null);

    private static Pump PumpOf(double litresPerHour, double kilopascals = 1200, double volts = Volts) => Pump.From(PumpCurve.At(
        "pump M", Wren.Volt(volts), (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)), (Wren.Kpa(kilopascals), VolumeFlow.Zero)));

    private static double Nozzle(double kilopascals, double density) => 390 / 60e6 * Math.Sqrt(kilopascals / 700 * 998.2 / density);

    private static void Close(double expected, params double[] actual) => Assert.All(actual, figure => Assert.Equal(expected, figure, Math.Abs(expected) * 1e-9));
}
