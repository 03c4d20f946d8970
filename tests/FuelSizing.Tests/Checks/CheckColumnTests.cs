using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Checks;

/// <summary>A check reads a column of points as it reads each of them.</summary>
public class CheckColumnTests
{
    [Fact]
    public void Read_OfAColumnOfPoints_IsWhatEachPointGives()
    {
        FuelSystem system = Wren.System(pump: 0.8);
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
            FuelDensity = Of(point => point.FuelDensity),
            VapourPressure = Of(point => point.VapourPressure),
            RailSet = Of(point => point.RailSet),
            Rail = Of(point => point.Rail),
            InletGauge = Of(point => point.InletGauge),
            OutletGauge = Of(point => point.OutletGauge),
            ReturnGauge = Of(point => point.ReturnGauge),
            PumpFlow = Of(point => point.PumpFlow),
            Returned = Of(point => point.Returned),
            MinimumInjectable = Of(point => point.MinimumInjectable),
            MaximumInjectable = Of(point => point.MaximumInjectable),
            Fed = Of(point => point.Fed),
            MotorVoltage = Of(point => point.MotorVoltage),
            PumpCurrent = Of(point => point.PumpCurrent),
            FilterFlow = Of(point => point.FilterFlow),
            FilterMaximum = Of(point => point.FilterMaximum),
            WireCurrent = Of(point => point.WireCurrent),
            WireAmpacity = Of(point => point.WireAmpacity),
            FuseCurrent = Of(point => point.FuseCurrent),
            FuseRating = Of(point => point.FuseRating),
            AtPumpFloor = Of(point => point.AtPumpFloor),
            Differential = Of(point => point.Differential),
            StaticFlow = Of(point => point.StaticFlow),
            AvailableTime = Of(point => point.AvailableTime),
            DeadTime = Of(point => point.DeadTime),
            Pulse = Of(point => point.Pulse),
            DutyCycle = Of(point => point.DutyCycle),
            Capacity = Of(point => point.Capacity),
        };
    }
}
