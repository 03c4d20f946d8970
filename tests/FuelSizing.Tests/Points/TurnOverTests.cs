using CsCheck;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>
/// The pressure past which a fixed pulse delivers less: √Δp · (t − t_d) is largest where t − t_d = 2 Δp · dt_d/dΔp. The dead time rises 1 µs for each
/// kPa from 0.8 ms at 100 kPa to 1.1 ms at 400 kPa, then 3 µs for each to 2.3 ms at 800 kPa.
/// </summary>
public class TurnOverTests
{
    private static readonly DeadTimeTable Table = DeadTimeTable.Of(
        [Wren.Volt(8), Wren.Volt(16)],
        [Wren.Kpa(100), Wren.Kpa(400), Wren.Kpa(800)],
        [[Wren.Ms(1.2), Wren.Ms(0.4)], [Wren.Ms(1.65), Wren.Ms(0.55)], [Wren.Ms(3.45), Wren.Ms(1.15)]]);

    /// <summary>
    /// At 12 V. What is left, t − t_d − 2 Δp · t_d′, is t − 1.0 ms at 100 kPa and t − 1.9 ms at 400 kPa by the first slope, t − 3.5 ms there and
    /// t − 7.1 ms at 800 kPa by the second: straight between, and it jumps at the kink.
    /// </summary>
    [Theory]
    [InlineData(0.9, null)]
    [InlineData(1.2, 100 + (300 * 0.2 / 0.9))]
    [InlineData(1.45, 250.0)]
    [InlineData(1.95, 400.0)]
    [InlineData(3.4, 400.0)]
    [InlineData(4.4, 500.0)]
    [InlineData(7.0, 400 + (400 * 3.5 / 3.6))]
    [InlineData(7.2, null)]
    public void TurnOver_OfAPulse_IsWhereOpenTimeIsTwiceTheDifferentialTimesTheSlope(double milliseconds, double? expected)
    {
        double? turn = TurnOver.Of(With(Table), 12, milliseconds / 1e3)?.Kilopascals;
        Assert.Equal(expected is null, turn is null);
        if (turn is { } kilopascals)
        {
            Assert.Equal(expected!.Value, kilopascals, 1e-6);

            // And nowhere else is more delivered.
            double Delivered(double pressure) => Math.Sqrt(pressure) * (milliseconds - (Table.At(Wren.Volt(12), Wren.Kpa(pressure)).Milliseconds));
            double most = Delivered(kilopascals);
            Assert.All(Enumerable.Range(0, 701), step => Assert.True(Delivered(100 + step) <= most * (1 + 1e-12)));
        }
    }

    [Fact]
    public void TurnOver_OfADeadTimeThatDoesNotFollowPressure_IsNone()
    {
        Assert.Null(TurnOver.Of(With(DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.7)))), 12, 1.45e-3));
        Assert.Null(TurnOver.Of(With(Table), 7.9, 1.45e-3));
        Assert.Null(TurnOver.Of(With(Table), 16.1, 1.45e-3));
    }

    /// <summary>
    /// With flows measured below and above the rated 300 kPa, the pulse delivers most where a scan of what it delivers is highest: at the kinks, between
    /// them, or nowhere.
    /// </summary>
    [Fact]
    public void TurnOver_WithMeasuredFlows_IsWhereAScanDeliversMost() =>
        Gen.Select(Gen.Double[0.93, 1.02], Gen.Double[0.94, 1.03], Gen.Double[0.9, 1.02], Gen.Double[1.3, 5]).Sample((low, middle, high, milliseconds) =>
        {
            VolumeFlow Share(double kilopascals, double share) => VolumeFlow.FromMillilitersPerMinute(420 * Math.Sqrt(kilopascals / 300) * share);
            Injector injector = With(Table).WithMeasuredFlows(
                (Wren.Kpa(180), Share(180, low)), (Wren.Kpa(430), Share(430, middle)), (Wren.Kpa(640), Share(640, high)));
            double Delivered(double pressure) => injector.StaticFlowAt(Wren.Kpa(pressure), Fuel.Petrol, Temperature.FromDegreesCelsius(15)).MillilitersPerMinute
                * (milliseconds - Table.At(Wren.Volt(12), Wren.Kpa(pressure)).Milliseconds);
            double[] scan = [.. Enumerable.Range(0, 7001).Select(step => Delivered(100 + (step / 10.0)))];

            // A falling piece of the rating may turn the flow over before a rising one lifts it again: the first place past which less is delivered.
            int turn = Enumerable.Range(0, 7000).FirstOrDefault(step => scan[step + 1] < scan[step], -1);
            double? found = TurnOver.Of(injector, 12, milliseconds / 1e3)?.Kilopascals;
            return turn switch
            {
                -1 => found is null,
                0 => found is null or <= 100.1,
                _ => found is { } pressure && Math.Abs(pressure - 100 - (turn / 10.0)) <= 0.11,
            };
        });

    /// <summary>
    /// With flows measured at 180, 430 and 640 kPa, of which each is a share of what the square root gives from the rated one, the pulse delivers most where it does by a search among what it delivers,
    /// to a pascal: between the measured flows, at one of them, at the dead time's kink, or nowhere in the table.
    /// </summary>
    [Theory]
    [InlineData(0.97, 0.99, 0.95, 1.6)]
    [InlineData(0.97, 0.99, 0.95, 2.6)]
    [InlineData(0.97, 0.99, 0.95, 3.4)]
    [InlineData(1.01, 1.02, 0.99, 4.4)]
    [InlineData(0.95, 0.96, 1.01, 4.4)]
    [InlineData(1.01, 0.96, 0.92, 2.2)]
    [InlineData(0.99, 0.98, 0.93, 5.6)]
    [InlineData(1, 1.03, 0.91, 6)]
    public void TurnOver_BetweenMeasuredFlows_IsWhereASearchDeliversMost(double low, double middle, double high, double milliseconds)
    {
        VolumeFlow Share(double kilopascals, double share) => VolumeFlow.FromMillilitersPerMinute(420 * Math.Sqrt(kilopascals / 300) * share);
        Injector injector = With(Table).WithMeasuredFlows(
            (Wren.Kpa(180), Share(180, low)), (Wren.Kpa(430), Share(430, middle)), (Wren.Kpa(640), Share(640, high)));
        double Delivered(double pressure) => injector.StaticFlowAt(Wren.Kpa(pressure), Fuel.Petrol, Temperature.FromDegreesCelsius(15)).MillilitersPerMinute
            * (milliseconds - Table.At(Wren.Volt(12), Wren.Kpa(pressure)).Milliseconds);
        int[] places = [.. Enumerable.Range(100, 701)];
        int first = Array.FindIndex(places, at => at < 800 && Delivered(at + 1) < Delivered(at));
        double? found = TurnOver.Of(injector, 12, milliseconds / 1e3)?.Kilopascals;
        Assert.Equal(first < 0, found is null);
        if (first < 0)
        {
            return;
        }

        // The hump lies within a step of where the scan falls first; there it is searched by thirds.
        (double from, double to) = (places[first] - 1, places[first] + 1);
        for (int step = 0; step < 60; step++)
        {
            (double left, double right) = (from + ((to - from) / 3), to - ((to - from) / 3));
            (from, to) = Delivered(left) < Delivered(right) ? (left, to) : (from, right);
        }

        Assert.Equal(from, found!.Value, 1e-3);
    }

    private static Injector With(DeadTimeTable table) => Injector.Of(
        "injector T", VolumeFlow.FromMillilitersPerMinute(420), Wren.Kpa(300), TestFluid.Heptane, table, Wren.Ms(1.5), Wren.Kpa(900));
}
