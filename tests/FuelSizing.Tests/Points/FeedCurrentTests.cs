using FuelSizing.Electrical;
using FuelSizing.Points;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>
/// What feeds carry and lose where the pumps' data leaves several states open, worked by hand from currents that are given: each bound is that of the state it lies in,
/// and a part that pumps share carries the sum of theirs.
/// </summary>
public class FeedCurrentTests
{
    /// <summary>As shown, with the least, with the most that data allow, and two more where the regulator's pressure is known between bounds.</summary>
    public static TheoryData<int> States => [0, 1, 2, 3, 4];

    /// <summary>6 to 8 A in every state but one, 5 to 9 A there: 5 to 9 A, whichever that is.</summary>
    [Theory]
    [MemberData(nameof(States))]
    public void Current_OfAFeed_LiesBetweenTheLeastAndTheMostOfAllStates(int state)
    {
        Pump pump = PumpOf("pump A", Ohms("branch", 10));
        SolvedCircuit circuit = Circuit(at => [at == state ? Point(pump, 5, 9) : Point(pump, 6, 8)]);
        Assert.Equal((5, 9), circuit.CurrentOf(0));
        (double least, double most) = circuit.FeedDropOf(0)!.Value;
        Assert.Equal((0.05, 0.09), (Math.Round(least, 12), Math.Round(most, 12)));
    }

    /// <summary>Past an open end of a curve the current is not known to be no more than there, in whichever state that is; the least of it is known all the same.</summary>
    [Theory]
    [MemberData(nameof(States))]
    public void Current_PastAnOpenEnd_HasNoUpperBound(int state)
    {
        Pump pump = PumpOf("pump A", Ohms("branch", 10));
        SolvedCircuit circuit = Circuit(at => [Point(pump, 6, 8) with { Coverage = at == state ? PumpCoverage.PressureAbove : PumpCoverage.Measured }]);
        Assert.Equal((6, double.NaN), circuit.CurrentOf(0));
    }

    /// <summary>A current that was not measured is not known, nor is that of a part that other pumps share with it.</summary>
    [Fact]
    public void Current_ThatWasNotMeasured_IsNotKnown()
    {
        Feed trunk = Ohms("trunk", 20);
        (Pump one, Pump other) = (PumpOf("pump A", Ohms("to A", 10).WithShared(trunk)), PumpOf("pump B", Ohms("to B", 10).WithShared(trunk)));
        SolvedCircuit circuit = Circuit(_ => [Point(one, 6, 8), Point(other, null, null)]);
        Assert.Equal((6, 8), circuit.CurrentOf(0));
        Assert.Equal((double.NaN, double.NaN), circuit.CurrentOf(1));
        Assert.Equal((double.NaN, double.NaN), circuit.CurrentOf(2));
    }

    /// <summary>Two pumps on one trunk, one on another, one on none: a trunk carries the sum of its own two, and stands behind the pumps in the order in which they name it.</summary>
    [Fact]
    public void Trunk_CarriesTheSumOfItsOwnPumps()
    {
        (Feed first, Feed second) = (Ohms("trunk 1", 20), Ohms("trunk 2", 30));
        Pump[] pumps =
        [
            PumpOf("pump A", Ohms("to A", 10).WithShared(first)),
            PumpOf("pump B", Ohms("to B", 11).WithShared(second)),
            PumpOf("pump C", Ohms("to C", 12).WithShared(first)),
            PumpOf("pump D", Ohms("to D", 13)),
            PumpOf("pump E", null),
        ];
        SolvedCircuit circuit = Circuit(at =>
            [Point(pumps[0], 6, 8), Point(pumps[1], 3, 4), Point(pumps[2], at == 1 ? 9 : 10, at == 2 ? 12 : 11), Point(pumps[3], 1, 2), Point(pumps[4], 20, 21)]);
        Assert.Equal([first, second], circuit.SharedFeeds);
        Assert.Equal((6, 8), circuit.CurrentOf(0));
        Assert.Equal((20, 21), circuit.CurrentOf(4));
        Assert.Equal((15, 20), circuit.CurrentOf(5));
        Assert.Equal((3, 4), circuit.CurrentOf(6));
        Assert.Equal(
            ["to A", "to B", "to C", "to D", null, "trunk 1", "trunk 2"], Enumerable.Range(0, 7).Select(place => circuit.FeedAt(place)?.Name));

        // 10 mΩ of its own, and of the trunk 20 mΩ with what both draw: 60 + 300 mV at the least, 80 + 400 mV at the most.
        Drops(0.36, 0.48, circuit, 0);
        Drops(0.033 + 0.09, 0.044 + 0.12, circuit, 1);
        Drops(0.108 + 0.3, 0.144 + 0.4, circuit, 2);
        Drops(0.013, 0.026, circuit, 3);
        Assert.Null(circuit.FeedDropOf(4));

        // The third loses most: 544 mV.
        Assert.Equal(2, circuit.LowestFed);
    }

    /// <summary>A pump that is switched off has no drop that others make in the trunk: nothing says what its motor would see.</summary>
    [Fact]
    public void Drop_OfAPumpThatIsOff_IsWithoutTheTrunks()
    {
        Feed trunk = Ohms("trunk", 20);
        (Pump one, Pump other) = (PumpOf("pump A", Ohms("to A", 10).WithShared(trunk)), PumpOf("pump B", Ohms("to B", 10).WithShared(trunk)));
        SolvedCircuit circuit = Circuit(_ => [Point(one, 6, 8), Point(other, 0, 0) with { Given = 0, Voltage = 0 }]);
        Drops(0.06 + 0.12, 0.08 + 0.16, circuit, 0);
        Drops(0, 0, circuit, 1);
    }

    /// <summary>Where there is one state the drop is that of the pump as solved, not its current times a resistance.</summary>
    [Fact]
    public void Drop_OfOneState_IsAsSolved()
    {
        PumpPoint[] points = [Point(PumpOf("pump A", Ohms("branch", 10)), 6, 8) with { Given = 13.5, Voltage = 13.2, SharedDrop = 0.125 }];
        SolvedCircuit circuit = Circuit(_ => points);
        Assert.True(circuit.IsExact);
        (double least, double most) = circuit.FeedDropOf(0)!.Value;
        Assert.Equal((0.425, 0.425), (Math.Round(least, 12), Math.Round(most, 12)));
        Assert.False((circuit with { LowerPumps = [points[0]] }).IsExact);
        Assert.False((circuit with { UpperPumps = [points[0]] }).IsExact);
    }

    /// <summary>
    /// Of several fuses, relays and wires the one is looked at that carries most for its rating: 8 A of 20 A and 6 A of 10 A are 40 and 60 %. One without a rating is passed over, and one
    /// whose current is not known is worse than any that is.
    /// </summary>
    [Fact]
    public void FuseAndRelay_ThatCarryMostForTheirRating_AreLookedAt()
    {
        Pump large = PumpOf("pump A", Ohms("to A", 10).WithFuse(Amperes(20)).WithRelay(Amperes(10)));
        Pump small = PumpOf("pump B", Ohms("to B", 10).WithFuse(Amperes(10)).WithRelay(Amperes(30)));
        Pump bare = PumpOf("pump C", Ohms("to C", 10));
        PumpPoint[] points = [Point(bare, 30, 30), Point(large, 8, 8), Point(small, 6, 6)];
        SolvedCircuit circuit = Circuit(_ => points);
        Assert.Equal((2, 1, -1), (circuit.HeaviestLoadedFuse, circuit.HeaviestLoadedRelay, circuit.HottestWire));
        PumpPoint[] exchanged = [points[2], points[1], points[0]];
        Assert.Equal((0, 1), (Circuit(_ => exchanged).HeaviestLoadedFuse, Circuit(_ => exchanged).HeaviestLoadedRelay));

        PumpPoint[] unknown = [Point(large, 8, null), points[2]];
        Assert.Equal((0, 0), (Circuit(_ => unknown).HeaviestLoadedFuse, Circuit(_ => unknown).HeaviestLoadedRelay));
        PumpPoint[] last = [points[2], Point(large, 8, null)];
        Assert.Equal((1, 1), (Circuit(_ => last).HeaviestLoadedFuse, Circuit(_ => last).HeaviestLoadedRelay));
        PumpPoint[] none = [points[0]];
        Assert.Equal((-1, -1, 0), (Circuit(_ => none).HeaviestLoadedFuse, Circuit(_ => none).HeaviestLoadedRelay, Circuit(_ => none).LowestFed));
        PumpPoint[] unwired = [Point(PumpOf("pump D", null), 8, 8)];
        Assert.Equal(-1, Circuit(_ => unwired).LowestFed);
    }

    /// <summary>A feed whose drop has no upper bound is worse than any that has one, wherever it stands.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void LowestFed_IsThePumpWhoseDropIsNotKnown(bool last)
    {
        Pump pump = PumpOf("pump A", Ohms("branch", 10));
        PumpPoint unknown = Point(pump, 6, null);
        SolvedCircuit circuit = Circuit(_ => last ? [Point(pump, 6, 8), Point(pump, 6, 9), unknown] : [unknown, Point(pump, 6, 8), Point(pump, 6, 9)]);
        Assert.Equal(last ? 2 : 0, circuit.LowestFed);
        Assert.Equal(1, Circuit(_ => [Point(pump, 6, 8), Point(pump, 6, 9), Point(pump, 6, 7)]).LowestFed);
    }

    private static void Drops(double least, double most, in SolvedCircuit circuit, int pump)
    {
        (double minimum, double maximum) = circuit.FeedDropOf(pump)!.Value;
        Assert.Equal(least, minimum, 1e-12);
        Assert.Equal(most, maximum, 1e-12);
    }

    /// <summary>A circuit with pumps as given: as shown, at the least, at the most, and at the two flows of a regulator known between bounds.</summary>
    private static SolvedCircuit Circuit(Func<int, PumpPoint[]> points)
    {
        SystemParts parts = Wren.System().Parts;
        return parts.CircuitAt(parts.DemandAt(Wren.At(3000, 0.2))) with
        {
            Pumps = points(0),
            LowerPumps = points(1),
            UpperPumps = points(2),
            FlowPumps = [points(3), points(4)],
        };
    }

    private static PumpPoint Point(Pump pump, double? least, double? most) => new(pump, 1e-5, 3e5, 13.5, 13.4, least, least, most, PumpCoverage.Measured);

    private static Pump PumpOf(string name, Feed? feed)
    {
        Pump pump = Pump.Of([
            PumpCurve.WithCurrent(
                name,
                Wren.Volt(13.5),
                (Pressure.Zero, VolumeFlow.FromLitersPerHour(215), Amperes(5)),
                (Wren.Kpa(750), VolumeFlow.Zero, Amperes(9))),
        ]);
        return feed is null ? pump : pump.WithFeed(feed);
    }

    private static Feed Ohms(string name, double milliohms) => Feed.Of(
        name, Conductor.Awg(8), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(40), Contact.Of("all of it", ElectricResistance.FromMilliohms(milliohms)));

    private static ElectricCurrent Amperes(double amperes) => ElectricCurrent.FromAmperes(amperes);
}
