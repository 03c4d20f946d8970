using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using UnitsNet;

namespace FuelSizing.Tests.Lines;

public class SuctionMarginTests
{
    /// <summary>By hand: 101.325 kPa + 789.24 kg/m³ × 9.80665 m/s² × 0.2 m − 2 kPa − 5.861 kPa.</summary>
    [Fact]
    public void Margin_OfEthanolByHand_IsPressureAndHeadLessLossAndVapour()
    {
        SuctionMargin margin = SuctionMargin.Of(
            Atmosphere.Standard.Pressure,
            Length.FromMeters(0.2),
            Pressure.FromKilopascals(2),
            Fuel.Ethanol,
            Temperature.FromDegreesCelsius(20));
        Assert.Equal(101.325 + 1.548 - 2 - 5.861, margin.Margin.Kilopascals, 2);
        Assert.Equal(101.325 + 1.548 - 2, margin.InletAbsolute.Kilopascals, 2);
        Assert.False(margin.Boils);
        Assert.False(margin.IsEstimate);
    }

    [Fact]
    public void Margin_OfSummerPetrolAtSixtyDegrees_IsNegativeAtAnyAltitude()
    {
        SuctionMargin margin = SuctionMargin.Of(
            Atmosphere.Standard.Pressure,
            Length.Zero,
            Pressure.Zero,
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(60));
        Assert.True(margin.Boils);
    }

    [Fact]
    public void Margin_WithHeatAltitudeOrLoss_Falls() =>
        Gen.Select(Gen.Double[-20, 70], Gen.Double[0.1, 5], Gen.Double[0, 90], Gen.Double[0, 3000]).Sample(
            (celsius, more, share, altitude) =>
            {
                Fuel fuel = FuelBlend.EthanolInPetrol(Ratio.FromPercent(share));
                Pressure Of(double t, double h, double loss) => SuctionMargin.Of(
                    Atmosphere.AtAltitude(Length.FromMeters(h)).Pressure,
                    Length.FromMeters(0.1),
                    Pressure.FromKilopascals(loss),
                    fuel,
                    Temperature.FromDegreesCelsius(t)).Margin;
                Pressure margin = Of(celsius, altitude, 1);
                return Of(celsius + more, altitude, 1) < margin
                    && Of(celsius, altitude + (100 * more), 1) < margin
                    && Of(celsius, altitude, 1 + more) < margin;
            });

    /// <summary>At its boiling point a liquid boils: no pressure is left over its vapour's.</summary>
    [Fact]
    public void Margin_AtTheBoilingPoint_IsNoneAndBoils()
    {
        Temperature temperature = Temperature.FromDegreesCelsius(75);
        SuctionMargin margin = SuctionMargin.Of(
            Fuel.Ethanol.VapourPressureAt(temperature), Length.Zero, Pressure.Zero, Fuel.Ethanol, temperature);
        Assert.Equal(0, margin.Margin.Pascals);
        Assert.True(margin.Boils);
    }


    [Fact]
    public void Margin_OfABlend_IsFlaggedAsAnEstimate() =>
        Assert.True(SuctionMargin.Of(
            Pressure.FromKilopascals(95),
            Length.Zero,
            Pressure.Zero,
            Fuel.E85,
            Temperature.FromDegreesCelsius(20)).IsEstimate);

    [Fact]
    public void Margin_OfNonsense_IsRefusedByName()
    {
        static SuctionMargin Of(double tank, double metres, double loss, Fuel fuel) => SuctionMargin.Of(
            Pressure.FromKilopascals(tank),
            Length.FromMeters(metres),
            Pressure.FromKilopascals(loss),
            fuel,
            Temperature.FromDegreesCelsius(20));
        Refused.Missing("fuel", () => Of(95, 0, 0, null!));
        Refused.OutOfRange("tankAbsolute", () => Of(39, 0, 0, Fuel.Petrol));
        Refused.OutOfRange("fuelAboveInlet", () => Of(95, 2.1, 0, Fuel.Petrol));
        Refused.OutOfRange("suctionLoss", () => Of(95, 0, -0.1, Fuel.Petrol));
    }
}
