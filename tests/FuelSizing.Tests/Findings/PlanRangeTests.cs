using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Where a plan's tables hold: between the ends that all of them have, and within the boost that is modelled.</summary>
public class PlanRangeTests
{
    private const double Ambient = 95e3;

    /// <summary>Volumetric efficiency from 900 rev/min, power from 1,000 to 6,900, a table by speed from 1,200 to 6,500, limit 7,200 rev/min.</summary>
    [Theory]
    [InlineData(false, 1000, 6900)]
    [InlineData(true, 1200, 6500)]
    public void Speeds_AreThoseThatEveryTableCovers(bool alongSpeed, double minimum, double maximum)
    {
        PlanRange range = new(Plan(alongSpeed, limit: 7200));
        Assert.True(range.Covers(minimum / 60, 0, Ambient));
        Assert.False(range.Covers((minimum - 1) / 60, 0, Ambient));
        Assert.True(range.Covers(maximum / 60, 0, Ambient));
        Assert.False(range.Covers((maximum + 1) / 60, 0, Ambient));
    }

    [Fact]
    public void SpeedLimit_EndsThemToo()
    {
        PlanRange range = new(Plan(alongSpeed: false, limit: 6100));
        Assert.True(range.Covers(6100 / 60.0, 0, Ambient));
        Assert.False(range.Covers(6101 / 60.0, 0, Ambient));
    }

    /// <summary>Boost −95 to 400 kPa, and no less than 10 kPa absolute: at 95 kPa outside −85 kPa.</summary>
    [Fact]
    public void Boost_IsAsModelled()
    {
        PlanRange range = new(Plan(alongSpeed: false, limit: 7200));
        Assert.True(range.Covers(50, 400e3, Ambient));
        Assert.False(range.Covers(50, 400.1e3, Ambient));
        Assert.True(range.Covers(50, -85e3, Ambient));
        Assert.False(range.Covers(50, -85.1e3, Ambient));
        Assert.True(range.Covers(50, -95e3, 108e3));
        Assert.False(range.Covers(50, -95.1e3, 108e3));
        Assert.False(range.Covers(double.NaN, 0, Ambient));
        Assert.False(range.Covers(50, double.NaN, Ambient));
    }

    /// <summary>Without a compressor up to 5 kPa may be scatter, and count as none.</summary>
    [Fact]
    public void EngineWithoutCompressor_HasNoBoostButScatter()
    {
        PlanRange drawn = new(OddRunTests.Plan("drawn"));
        Assert.True(drawn.Covers(50, 5e3, Ambient));
        Assert.False(drawn.Covers(50, 5.1e3, Ambient));
        Assert.Equal(0, drawn.Computed(3e3));
        Assert.Equal(-3e3, drawn.Computed(-3e3));
        PlanRange charged = new(Plan(alongSpeed: false, limit: 7200));
        Assert.Equal(3e3, charged.Computed(3e3));
        Assert.Equal(-3e3, charged.Computed(-3e3));
    }

    private static FuelSystem Plan(bool alongSpeed, double limit)
    {
        FuelDemandModel demand = FuelDemandModel.Of(
            Engine.Of("short tables", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Wren.Rpm(limit)),
            Wren.Turbocharger,
            VolumetricEfficiency.Of((Wren.Rpm(900), Wren.Percent(80)), (Wren.Rpm(7200), Wren.Percent(95))),
            PowerCurve.AtWheels(
                Atmosphere.Standard, Wren.Percent(15), (Wren.Rpm(1000), Power.FromKilowatts(12)), (Wren.Rpm(6900), Power.FromKilowatts(130))),
            Wren.Percent(85),
            Wren.Petrol);
        return PulledWren.Plan.With(alongSpeed
            ? demand.With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1200), lambda: 0.9), SpeedRow.Of(Wren.Rpm(6500), lambda: 0.8)))
            : demand);
    }
}
