using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>What a second stream cannot be described with, named by the argument; and what is no more than nothing of it.</summary>
public class SecondStreamRefusalTests
{
    [Fact]
    public void Parts_ThatAreMissing_AreRefusedByName()
    {
        StreamFluid fluid = StreamFluid.Of(Fuel.Methanol);
        Refused.Missing("fluid", () => SecondStream.Of("m", null!, SecondStreams.Nozzles, Wren.Kpa(30), Wren.Kpa(850)));
        Refused.Missing("nozzles", () => SecondStream.Of("m", fluid, null!, Wren.Kpa(30), Wren.Kpa(850)));
    }

    /// <summary>A share is one of the whole; it needs a heat of vaporisation, and a pressure that bounds what is sprayed. No share needs neither.</summary>
    [Fact]
    public void Evaporation_OfWhatIsNotKnown_IsRefused()
    {
        SecondStream stream = SecondStreams.Held();
        Refused.OutOfRange("share", () => stream.WithEvaporation(Wren.Percent(101)));
        Refused.OutOfRange("share", () => stream.WithEvaporation(Wren.Percent(-1)));
        Assert.Equal(Wren.Percent(100), stream.WithEvaporation(Wren.Percent(100)).EvaporatedShare);

        Fuel own = Fuel.Of("own", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        SecondStream unknown = SecondStreams.Held(StreamFluid.Of(own));
        ArgumentException heat = Assert.Throws<ArgumentException>(() => unknown.WithEvaporation(Wren.Percent(20)));
        Assert.StartsWith("own has no heat of vaporisation", heat.Message, StringComparison.Ordinal);
        Assert.Equal("share", heat.ParamName);
        Assert.Equal(unknown, unknown.WithEvaporation(Ratio.Zero));

        SecondStream free = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), pump: SecondStreams.OwnPump(40));
        ArgumentException pressure = Assert.Throws<ArgumentException>(() => free.WithEvaporation(Wren.Percent(20)));
        Assert.StartsWith("m holds no pressure at its nozzles", pressure.Message, StringComparison.Ordinal);
        Assert.Equal(free, free.WithEvaporation(Ratio.Zero));
    }

    /// <summary>The share that flows rises straight from none at the begin to all of it, and is no more over that.</summary>
    [Theory]
    [InlineData(29, 0)]
    [InlineData(30, 0)]
    [InlineData(40, 0.25)]
    [InlineData(70, 1)]
    [InlineData(90, 1)]
    public void Share_OfARamp_RisesStraight(double kilopascals, double expected)
    {
        SecondStream ramp = SecondStream.Of("m", StreamFluid.Of(Fuel.Methanol), SecondStreams.Nozzles, Wren.Kpa(30), Wren.Kpa(850), full: Wren.Kpa(70));
        Assert.Equal(expected, ramp.ShareAt(Wren.Kpa(kilopascals)).DecimalFractions, 1e-12);
        Assert.Equal(kilopascals < 30 ? 0 : 1, SecondStreams.Held().ShareAt(Wren.Kpa(kilopascals)).DecimalFractions);
        Refused.OutOfRange("boost", () => ramp.ShareAt(Wren.Kpa(401)));
    }
}
