using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;

namespace FuelSizing.Tests.Checks;

/// <summary>A check reads a column of points as it reads each of them.</summary>
public class CheckColumnTests
{
    public static TheoryData<string, FuelSystem> Systems => new()
    {
        { "from the main tank", Wren.System(pump: 0.8) },
        { "from a surge tank", SurgeTanks.Wren(SurgeTanks.Everything) },
        { "with two sets of injectors", Staged.Wren2() },
        { "with a second stream", SecondStreams.Judged(SecondStreams.Everything) },
        { "with a second stream for which nothing is taken back", SecondStreams.Judged(SecondStreams.Everything.WithMainFuelTakenBack(Wren.Percent(0))) },
    };

    [Theory]
    [MemberData(nameof(Systems))]
    public void Read_OfAColumnOfPoints_IsWhatEachPointGives(string name, FuelSystem system)
    {
        Assert.NotEmpty(name);
        OperatingResult[] results =
        [
            .. from rpm in new[] { 900.0, 3000, 5000, 7000 }
               from boost in new[] { -0.6, 0, 0.4, 0.9 }
               select system.Solve(Wren.At(rpm, boost)),
        ];
        foreach (OperatingResult[] pair in results.Chunk(2))
        {
            PointValues<Real>[] points = [.. pair.Select(PointReading.Of)];
            PointValues<TwoLanes> column = Column(points);
            foreach (ICheck check in system.Applicable)
            {
                CheckReading<TwoLanes> both = check.Read(system.Parts, column);
                for (int lane = 0; lane < 2; lane++)
                {
                    CheckReading<Real> one = check.Read(system.Parts, points[lane]);
                    Assert.Equal<double>(one.Used, In(both.Used, lane));
                    Assert.Equal<double>(one.Allowed, In(both.Allowed, lane));
                    Assert.Equal<double>(one.Margin, In(both.Margin, lane));
                    Assert.Equal<double>(one.BestMargin, In(both.BestMargin, lane));
                }
            }
        }
    }

    private static double In(TwoLanes numbers, int lane)
    {
        double[] room = new double[TwoLanes.Count];
        numbers.CopyTo(room);
        return room[lane];
    }

    private static PointValues<TwoLanes> Column(PointValues<Real>[] points)
    {
        TwoLanes Of(Func<PointValues<Real>, double> number) => TwoLanes.From([.. points.Select(number)]);
        return new()
        {
            Speed = Of(point => point.Speed),
            Boost = Of(point => point.Boost),
            Ambient = Of(point => point.Ambient),
            Supply = Of(point => point.Supply),
            Injected = Of(point => point.Injected),
            MinimumInjectedShare = Of(point => point.MinimumInjectedShare),
            FuelDensity = Of(point => point.FuelDensity),
            VapourPressure = Of(point => point.VapourPressure),
            RailSet = Of(point => point.RailSet),
            Rail = Of(point => point.Rail),
            InletGauge = Of(point => point.InletGauge),
            OutletGauge = Of(point => point.OutletGauge),
            ReturnGauge = Of(point => point.ReturnGauge),
            PumpFlow = Of(point => point.PumpFlow),
            Returned = Of(point => point.Returned),
            Minimum = Bound(points, point => point.Minimum),
            Maximum = Bound(points, point => point.Maximum),
            MinimumInjectable = Of(point => point.MinimumInjectable),
            MaximumInjectable = Of(point => point.MaximumInjectable),
            Fed = Of(point => point.Fed),
            MotorVoltage = Of(point => point.MotorVoltage),
            PumpCurrent = Of(point => point.PumpCurrent),
            FilterMaximum = Of(point => point.FilterMaximum),
            WireAmpacity = Of(point => point.WireAmpacity),
            ConverterLimit = Of(point => point.ConverterLimit),
            FuseRating = Of(point => point.FuseRating),
            RelayRating = Of(point => point.RelayRating),
            Differential = Of(point => point.Differential),
            StaticFlow = Of(point => point.StaticFlow),
            AvailableTime = Of(point => point.AvailableTime),
            DeadTime = Of(point => point.DeadTime),
            Pulse = Of(point => point.Pulse),
            DutyCycle = Of(point => point.DutyCycle),
            Capacity = Of(point => point.Capacity),
            PrimaryInjected = Of(point => point.PrimaryInjected),
            PrimaryInjectedAtLeast = Of(point => point.PrimaryInjectedAtLeast),
            Secondary = new()
            {
                Injected = Of(point => point.Secondary.Injected),
                InjectedAtLeast = Of(point => point.Secondary.InjectedAtLeast),
                StaticFlow = Of(point => point.Secondary.StaticFlow),
                AvailableTime = Of(point => point.Secondary.AvailableTime),
                DeadTime = Of(point => point.Secondary.DeadTime),
                Pulse = Of(point => point.Secondary.Pulse),
                DutyCycle = Of(point => point.Secondary.DutyCycle),
                Capacity = Of(point => point.Secondary.Capacity),
            },
            MinimumLambda = Of(point => point.MinimumLambda),
            MaximumLambda = Of(point => point.MaximumLambda),
            Lift = new()
            {
                MinimumDraw = Of(point => point.Lift.MinimumDraw),
                MaximumDraw = Of(point => point.Lift.MaximumDraw),
                MinimumSustained = Of(point => point.Lift.MinimumSustained),
                MaximumSustained = Of(point => point.Lift.MaximumSustained),
                VapourPressure = Of(point => point.Lift.VapourPressure),
                MinimumTankGauge = Of(point => point.Lift.MinimumTankGauge),
                MaximumTankGauge = Of(point => point.Lift.MaximumTankGauge),
                FilterMaximum = Of(point => point.Lift.FilterMaximum),
                WireAmpacity = Of(point => point.Lift.WireAmpacity),
                FuseRating = Of(point => point.Lift.FuseRating),
                RelayRating = Of(point => point.Lift.RelayRating),
                Minimum = Bound(points, point => point.Lift.Minimum),
                Maximum = Bound(points, point => point.Lift.Maximum),
            },
            Stream = new()
            {
                Share = Of(point => point.Stream.Share),
                BackPressure = Of(point => point.Stream.BackPressure),
                MinimumPressure = Of(point => point.Stream.MinimumPressure),
                MaximumPressure = Of(point => point.Stream.MaximumPressure),
                MinimumFlow = Of(point => point.Stream.MinimumFlow),
                MaximumFlow = Of(point => point.Stream.MaximumFlow),
                Required = Of(point => point.Stream.Required),
                MinimumDelivered = Of(point => point.Stream.MinimumDelivered),
                MaximumDelivered = Of(point => point.Stream.MaximumDelivered),
                MainInjectedShare = Of(point => point.Stream.MainInjectedShare),
                RichMinimumLambda = Of(point => point.Stream.RichMinimumLambda),
                RichMaximumLambda = Of(point => point.Stream.RichMaximumLambda),
                LeanMinimumLambda = Of(point => point.Stream.LeanMinimumLambda),
                LeanMaximumLambda = Of(point => point.Stream.LeanMaximumLambda),
                MinimumStoppedLambda = Of(point => point.Stream.MinimumStoppedLambda),
                MaximumStoppedLambda = Of(point => point.Stream.MaximumStoppedLambda),
            },
        };
    }

    private static CircuitValues<TwoLanes> Bound(PointValues<Real>[] points, Func<PointValues<Real>, CircuitValues<Real>> side)
    {
        TwoLanes Of(Func<CircuitValues<Real>, double> number) => TwoLanes.From([.. points.Select(point => number(side(point)))]);
        return new()
        {
            Rail = Of(bound => bound.Rail),
            Differential = Of(bound => bound.Differential),
            InletGauge = Of(bound => bound.InletGauge),
            OutletGauge = Of(bound => bound.OutletGauge),
            ReturnGauge = Of(bound => bound.ReturnGauge),
            PumpFlow = Of(bound => bound.PumpFlow),
            Returned = Of(bound => bound.Returned),
            Regulated = Of(bound => bound.Regulated),
            ThroughRegulator = Of(bound => bound.ThroughRegulator),
            FilterFlow = Of(bound => bound.FilterFlow),
            FeedDrop = Of(bound => bound.FeedDrop),
            WireCurrent = Of(bound => bound.WireCurrent),
            FuseCurrent = Of(bound => bound.FuseCurrent),
            RelayCurrent = Of(bound => bound.RelayCurrent),
            ConverterCurrent = Of(bound => bound.ConverterCurrent),
            AtPumpFloor = Of(bound => bound.AtPumpFloor),
        };
    }
}
