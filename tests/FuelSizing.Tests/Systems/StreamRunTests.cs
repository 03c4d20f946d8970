using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What a second stream uses over a run: flow times time, stage by stage, and what is not known of it.</summary>
public class StreamRunTests
{
    private static readonly OperatingPoint On = Wren.At(5000, 0.5);
    private static readonly OperatingPoint Off = Wren.At(3000, 0);

    // On 6 V nobody knows what the stream's own pump gives.
    private static readonly OperatingPoint Dim = OperatingPoint.At(
        Wren.Rpm(5000), Pressure.FromBars(0.5), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(6), Wren.Hill.FuelTemperature));

    /// <summary>A pump that runs free against the nozzles: 40 s at what flows; of a tank of twice that half is left, and one of half of that is empty after 20 s.</summary>
    [Fact]
    public void Used_IsFlowTimesTime()
    {
        double flow = Car(2).Solve(On).SecondStream!.Flow!.Value.LitersPerSecond;
        StreamConsumption run = Car(80 * flow).ConsumeStream([(On, Seconds(15)), (Off, Seconds(7)), (On, Seconds(25))]);
        Assert.Equal((40 * flow, 40 * flow, 40 * flow, 40 * flow), (
            Rounded(run.Used!.Value), Rounded(run.MinimumUsed), Rounded(run.MaximumUsed!.Value), Rounded(run.MinimumLeft!.Value)), Near);
        Assert.Equal((47, (Duration?)null, "stream-run.lasts"), (run.Time.Seconds, run.EmptyAfter, run.Text.Code));

        StreamConsumption empty = Car(20 * flow).ConsumeStream([(On, Seconds(15)), (Off, Seconds(7)), (On, Seconds(25))]);
        Assert.Equal(27, empty.EmptyAfter!.Value.Seconds, 1e-6);
        Assert.Equal((null, "stream-run.empty"), (empty.MinimumLeft, empty.Text.Code));

        // It is empty once, however long the run goes on.
        Assert.Equal(27, Car(20 * flow).ConsumeStream([(On, Seconds(15)), (Off, Seconds(7)), (On, Seconds(25)), (On, Seconds(25))]).EmptyAfter!.Value.Seconds, 1e-6);

        StreamConsumption open = SecondStreams.Car().With(Free).ConsumeStream([(On, Seconds(40))]);
        Assert.Equal((null, null, "stream-run.used"), (open.MinimumLeft, open.EmptyAfter, open.Text.Code));
    }

    /// <summary>Where a flow is not known no more can be said than what flows at the least, and the tank may be empty from that moment on; a stage of no length uses nothing.</summary>
    [Fact]
    public void Used_WithAStageThatIsNotKnown_IsKnownFromBelow()
    {
        double flow = Car(2).Solve(On).SecondStream!.Flow!.Value.LitersPerSecond;
        StreamConsumption run = Car(2).ConsumeStream([(On, Seconds(10)), (Dim, Seconds(5)), (On, Seconds(10))]);
        Assert.Equal((true, true, "stream-run.unknown"), (run.Used is null, run.MaximumUsed is null, run.Text.Code));
        Assert.Equal(20 * flow, run.MinimumUsed.Liters, 1e-9);
        Assert.Equal(10, run.EmptyAfter!.Value.Seconds, 1e-9);

        StreamConsumption skipped = Car(2).ConsumeStream([(On, Seconds(10)), (Dim, Duration.Zero), (On, Seconds(10))]);
        Assert.Equal(20 * flow, skipped.Used!.Value.Liters, 1e-9);
        Assert.Equal(20 * flow, skipped.MaximumUsed!.Value.Liters, 1e-9);
        Assert.Null(skipped.EmptyAfter);
    }

    [Fact]
    public void Run_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem car = Car(2);
        Refused.Missing("system", () => StreamRun.ConsumeStream(null!, [(On, Seconds(1))]));
        Refused.Missing("stages", () => car.ConsumeStream(null!));
        Refused.Missing("stages", () => car.ConsumeStream([(On, Seconds(1)), (null!, Seconds(1))]));
        Refused.OutOfRange("stages", () => car.ConsumeStream([]));
        Refused.OutOfRange("stages", () => car.ConsumeStream([(On, Seconds(-1))]));
        Refused.OutOfRange("stages", () => car.ConsumeStream([(On, Duration.FromHours(24.1))]));
    }

    private static SecondStream Free => SecondStream.Of("stream M", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), pump: SecondStreams.OwnPump(40));

    private static FuelSystem Car(double litres) => SecondStreams.Car().With(Free.WithTank(Volume.FromLiters(litres)));

    private static Duration Seconds(double seconds) => Duration.FromSeconds(seconds);

    private static double Rounded(Volume volume) => volume.Liters;

    private static bool Near((double, double, double, double) one, (double, double, double, double) other) =>
        Math.Abs(one.Item1 - other.Item1) < 1e-9 && Math.Abs(one.Item2 - other.Item2) < 1e-9 && Math.Abs(one.Item3 - other.Item3) < 1e-9 && Math.Abs(one.Item4 - other.Item4) < 1e-9;
}
