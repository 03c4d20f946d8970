using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>What the checks read of a solved circuit: each figure's least and most where the pumps' data ends, and what their wires carry.</summary>
public class BoundedFigureTests
{
    private static readonly Line Supply = Line.Of("supply", Length.FromMillimeters(7.5), Length.FromMeters(3), Roughness.DrawnTube);

    private static readonly Line Return = Line.Of("return", Length.FromMillimeters(7), Length.FromMeters(3), Roughness.DrawnTube);

    /// <summary>
    /// Over the voltage at which a pump was measured it gives at the least its own curve, so that the least rail and flow are those of a pump measured with
    /// that curve at this very voltage; the most are those of the circuit's upper bound, and the estimate lies between.
    /// </summary>
    [Fact]
    public void Figures_OverThePumpsVoltage_AreLeastByItsHighestCurve()
    {
        FuelSystem Car(double volts) => Wren.System(pump: 1).With(Pump.From(Curve(volts, 0.62))).With(Plumbing.Of([], [Supply], [Return]));
        OperatingResult bounded = Car(12).Solve(Wren.At(6500, 0.6));
        PointValues<Real> values = PointReading.Of(bounded);
        PointValues<Real> least = PointReading.Of(Car(13.5).Solve(Wren.At(6500, 0.6)));
        Assert.Equal(RailState.Sagging, Car(13.5).Solve(Wren.At(6500, 0.6)).RailState);
        Assert.Equal(least.Minimum, least.Maximum);
        foreach (Func<CircuitValues<Real>, double> figure in Figures())
        {
            double[] states = [.. new[] { bounded.SolvedCircuit.State, bounded.SolvedCircuit.Lower, bounded.SolvedCircuit.Upper }
                .Select(state => figure(CircuitReading.Of(bounded.SolvedCircuit, state, null)))];
            Assert.Equal((states.Min(), states.Max()), (figure(values.Minimum), figure(values.Maximum)));
        }

        Assert.Equal((double)least.Rail, values.Minimum.Rail, 1e-6);
        Assert.Equal((double)least.OutletGauge, values.Minimum.OutletGauge, 1e-6);
        Assert.Equal((double)least.PumpFlow, values.Minimum.PumpFlow, 1e-15);
        Assert.True(values.Maximum.Rail > values.Minimum.Rail + 1000);
        Assert.InRange<double>(values.Rail, values.Minimum.Rail, values.Maximum.Rail);
        Assert.Equal((double)least.MinimumInjectable, values.MinimumInjectable, 1e-15);
        Assert.True(values.MaximumInjectable > values.MinimumInjectable * 1.01);
        Assert.True(double.IsNaN(values.Minimum.FilterFlow) && double.IsNaN(values.Minimum.FeedDrop) && double.IsNaN(values.Minimum.WireCurrent) && double.IsNaN(values.Minimum.FuseCurrent));
        Assert.Equal((0, 0), ((double)values.Minimum.AtPumpFloor, (double)values.Maximum.AtPumpFloor));
        Assert.Equal(((double)values.Differential, (double)values.Differential), ((double)values.Minimum.Differential, (double)values.Maximum.Differential));
    }

    /// <summary>
    /// A return line that forces the rail up, of a pump over its data: the injectors may see the upper bound of the rail less the boost, more than at which
    /// they are judged.
    /// </summary>
    [Fact]
    public void Differential_OfARailThatMayBeForcedUp_IsBoundedByTheUpperRail()
    {
        Line thin = Line.Of("thin return", Length.FromMillimeters(3.2), Length.FromMeters(3), Roughness.DrawnTube);
        FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(250))).With(Pump.From(Curve(12, 1.2))).With(Plumbing.Of([], [], [thin]));
        OperatingResult result = system.Solve(Wren.At(3000, 0.2));
        PointValues<Real> values = PointReading.Of(result);
        Assert.True(values.Maximum.Rail > 251e3);
        Assert.Equal(values.Maximum.Rail - 20e3, values.Maximum.Differential, 1e-6);
        Assert.Equal((double)values.Differential, (double)values.Minimum.Differential);
        Assert.True(values.Maximum.Differential > values.Minimum.Differential + 100);

        // With data that covers the point there is one answer.
        PointValues<Real> exact = PointReading.Of(system.With(Pump.From(Curve(13.5, 1.2))).Solve(Wren.At(3000, 0.2)));
        Assert.Equal((double)exact.Differential, (double)exact.Maximum.Differential);
    }

    /// <summary>Ohm's law for each feed, by the current that each pump draws; the feed that takes most, the wire and the fuse that carry most of what they may.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Wiring_OfTwoPumps_IsThatOfTheWorseFeed(bool exchanged)
    {
        // The first has the longer wire, the second the smaller fuse and the hotter surroundings.
        Feed longer = FeedOf("longer", 6, 25, 40);
        Feed hotter = FeedOf("hotter", 3, 15, 75);
        Pump Of(Feed feed, double scale) => Pump.Of([Wren.WiredCurve(12, 0.85 * scale), Wren.WiredCurve(13.5, scale)]).WithFeed(feed);
        (Pump first, Pump second) = (Of(longer, 1), Of(hotter, 1.05));
        FuelSystem system = Wren.System().With(exchanged ? PumpParallel.Of(second, first) : PumpParallel.Of(first, second));
        OperatingResult result = system.Solve(Wren.At(5500, 0.3));
        PumpPoint Where(Feed feed) => result.SolvedCircuit.Pumps.Single(pump => pump.Pump.Feed == feed);
        PointValues<Real> values = PointReading.Of(result);
        double Amperes(Feed feed) => Where(feed).Current!.Value;
        Assert.Equal(13.5, (double)values.Fed, 1e-9);
        Assert.Equal(13.5 - (Amperes(longer) * longer.LoopOhms), (double)values.MotorVoltage, 1e-6);
        Assert.Equal(Amperes(longer) * longer.LoopOhms, values.Maximum.FeedDrop, 1e-6);
        Assert.True(Amperes(longer) * longer.LoopOhms > Amperes(hotter) * hotter.LoopOhms * 1.2);
        Assert.Equal(Amperes(longer) + Amperes(hotter), values.PumpCurrent, 1e-9);
        Assert.Equal((Amperes(hotter), Amperes(hotter)), ((double)values.Minimum.WireCurrent, (double)values.Maximum.WireCurrent));
        Assert.Equal((Amperes(hotter), Amperes(hotter)), ((double)values.Minimum.FuseCurrent, (double)values.Maximum.FuseCurrent));
        Assert.Equal(hotter.AmpacityAmperes, values.WireAmpacity, 1e-9);
        Assert.Equal(15, (double)values.FuseRating, 1e-9);
        Assert.True(Amperes(longer) / longer.AmpacityAmperes < Amperes(hotter) / hotter.AmpacityAmperes);
    }

    /// <summary>Over the pumps' voltage the current is known between bounds, and the drop with it: bound times resistance.</summary>
    [Fact]
    public void Drop_OverThePumpsVoltage_LiesBetweenItsCurrentsTimesTheResistance()
    {
        Feed feed = FeedOf("feed", 5, 20, 40);
        FuelSystem system = Wren.System().With(Pump.Of([Wren.WiredCurve(11, 0.5), Wren.WiredCurve(12, 0.55)]).WithFeed(feed));
        OperatingResult result = system.Solve(Wren.At(5500, 0.3));
        PointValues<Real> values = PointReading.Of(result);
        (double minimum, double maximum) = result.SolvedCircuit.CurrentOf(0);
        Assert.InRange(maximum, minimum * 1.01, 40);
        Assert.Equal((minimum * feed.LoopOhms, maximum * feed.LoopOhms), ((double)values.Minimum.FeedDrop, (double)values.Maximum.FeedDrop));
        Assert.Equal((minimum, maximum), ((double)values.Minimum.WireCurrent, (double)values.Maximum.WireCurrent));
        double[] least = [.. new[] { result.SolvedCircuit.Pumps, result.SolvedCircuit.LowerPumps, result.SolvedCircuit.UpperPumps }.Select(pumps => pumps[0].MinimumCurrent!.Value)];
        double[] most = [.. new[] { result.SolvedCircuit.Pumps, result.SolvedCircuit.LowerPumps, result.SolvedCircuit.UpperPumps }.Select(pumps => pumps[0].MaximumCurrent!.Value)];
        Assert.Equal((least.Min(), most.Max()), (minimum, maximum));
    }

    /// <summary>Of two filters the one nearer to the end of its data is read, wherever it lies.</summary>
    [Theory]
    [InlineData(300, 260)]
    [InlineData(260, 300)]
    public void Filter_NearestToTheEndOfItsData_IsRead(double first, double second)
    {
        Filter Of(string name, double litresPerHour) => Filter.Of(name, VolumeFlow.FromLitersPerHour(litresPerHour), Wren.Kpa(8));
        OperatingResult result = Wren.System().With(Plumbing.Of([], [Of("F", first), Of("G", second)], [])).Solve(Wren.At(5500, 0.3));
        PointValues<Real> values = PointReading.Of(result);
        Assert.Equal(Of("H", 260).MaximumFlow.CubicMetersPerSecond, (double)values.FilterMaximum, 1e-15);
        Assert.Equal((double)values.PumpFlow, values.Maximum.FilterFlow, 1e-15);
    }

    /// <summary>Where the pumps' data does not cover a point, nothing around them is known; without a suction line the inlet is at the tank's pressure.</summary>
    [Fact]
    public void Figures_PastThePumpsData_AreNotKnown()
    {
        Pump over = Pump.From(Wren.WiredCurve(20, 1)).WithFeed(FeedOf("feed", 5, 20, 40));
        FuelSystem system = Wren.System().With(over);
        PointValues<Real> values = PointReading.Of(system.Solve(Wren.At(5500, 0.3)));
        double[] unknown =
        [
            values.OutletGauge, values.ReturnGauge, values.PumpFlow, values.Returned, values.Fed, values.MotorVoltage, values.PumpCurrent, values.MinimumInjectable, values.MaximumInjectable,
            .. Figures().SelectMany(figure => new[] { figure(values.Minimum), figure(values.Maximum) }), values.Minimum.AtPumpFloor,
            values.Maximum.FeedDrop, values.Maximum.WireCurrent, values.Maximum.FuseCurrent,
        ];
        Assert.All(unknown, figure => Assert.True(double.IsNaN(figure)));
        Assert.Equal((0, 0, 0), ((double)values.InletGauge, (double)values.Minimum.InletGauge, (double)values.Maximum.InletGauge));
        PointValues<Real> behind = PointReading.Of(system.With(Plumbing.Of([Supply], [], [])).Solve(Wren.At(5500, 0.3)));
        Assert.True(double.IsNaN(behind.InletGauge) && double.IsNaN(behind.Minimum.InletGauge));
        PointValues<Real> known = PointReading.Of(Wren.System().With(Plumbing.Of([Supply], [], [])).Solve(Wren.At(5500, 0.3)));
        Assert.True(known.InletGauge < -10);
        Assert.Equal((double)known.InletGauge, (double)known.Minimum.InletGauge);
    }

    /// <summary>
    /// What the pumps could feed more with their reserve of 10 % kept and nothing returned: what they deliver at the set pressure, over 1.1 times what is
    /// injected, less one. Of no demand any number of times as much; past the pumps' data nothing.
    /// </summary>
    [Fact]
    public void PumpReserve_OfATask_IsWhatThePumpDeliversOverWhatIsInjected()
    {
        FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(300)));
        CircuitTask task = system.Parts.TaskAt(system.Parts.DemandAt(Wren.At(5500, 0.3)));

        // Wren's pump delivers 165 L/h at 300 kPa.
        Assert.Equal((165 / 3.6e6 / 1.1 / task.Injected) - 1, system.Parts.PumpReserveOf(task), 1e-9);
        Assert.Equal(double.PositiveInfinity, system.Parts.PumpReserveOf(task with { Injected = 0 }));
        SystemParts over = system.With(Pump.From(Wren.WiredCurve(20, 1))).Parts;
        Assert.True(double.IsNaN(over.PumpReserveOf(over.TaskAt(over.DemandAt(Wren.At(5500, 0.3))))));
    }

    // Of the circuit itself: wires, filters and injectors are looked at apart, and the inlet has a rule of its own.
    private static Func<CircuitValues<Real>, double>[] Figures() =>
    [
        of => of.Rail, of => of.OutletGauge, of => of.ReturnGauge, of => of.PumpFlow, of => of.Returned,
    ];

    private static PumpCurve Curve(double volts, double scale) => PumpCurve.At(
        "pump P",
        Wren.Volt(volts),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(215 * scale)),
        (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(165 * scale)),
        (Wren.Kpa(500), VolumeFlow.FromLitersPerHour(110 * scale)),
        (Wren.Kpa(750), VolumeFlow.Zero));

    private static Feed FeedOf(string name, double metres, double fuse, double ambient) => Feed.Of(
        name,
        Conductor.OfNominal(Area.FromSquareMillimeters(2.5), ConductorMaterial.Copper),
        Length.FromMeters(metres),
        Length.FromMeters(metres),
        Temperature.FromDegreesCelsius(60)).WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(ambient)).WithFuse(ElectricCurrent.FromAmperes(fuse));
}
