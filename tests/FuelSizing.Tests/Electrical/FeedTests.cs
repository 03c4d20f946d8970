using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

public class FeedTests
{
    /// <summary>
    /// Source: NEC chapter 9, table 8, as in <see cref="ConductorTests"/>: 4.99 ohm per 1000 ft of stranded AWG 16 at 75 °C. 100 ft out and 100 ft back at
    /// 4 A: 4.99 × 0.2 × 4 = 3.992 V, which is 16.63 % of 24 V.
    /// </summary>
    [Fact(DisplayName = "Voltage drop of a two-wire circuit by the electrical code's resistance; NEC")]
    public void Drop_OfATwoWireCircuit_IsThatOfTheElectricalCodesResistance()
    {
        FeedResult result = Feed.Of("f", Conductor.Awg(16), Length.FromFeet(100), Length.FromFeet(100), Celsius(75))
            .VoltageAtMotor(Wren.Volt(24), Amperes(4));
        Published.Value(Works.NecTable8ByHand.At("volts"), 4.99 * 0.2 * 4, result.Drop.Volts, 0.005);
        Published.Value(Works.NecTable8ByHand.At("share of 24 V, %"), 4.99 * 0.2 * 4 / 24 * 100, result.ShareOfSupply.Percent, 0.005);
    }

    /// <summary>
    /// Source: FAA AC 43.13-1B, table 11-7, check of the drop: resistance per foot × length × current, 0.942 V for
    /// 0.00044 ohm/ft, 107 ft, 20 A and 6.12 V for 0.00306 ohm/ft, 100 ft, 20 A. The circular's wire is its own (tin-plated),
    /// so its resistance goes in as given.
    /// </summary>
    [Theory(DisplayName = "Voltage drop of a given resistance; FAA AC 43.13-1B")]
    [InlineData(0.00044, 107, 0.942)]
    [InlineData(0.00306, 100, 6.12)]
    public void Drop_OfAGivenResistance_IsTheAviationCirculars(double ohmsPerFoot, double feet, double volts)
    {
        Contact wire = Contact.Of("wire", ElectricResistance.FromOhms(ohmsPerFoot * feet));
        FeedResult result = Feed.Of("f", Conductor.Awg(10), Length.Zero, Length.Zero, Celsius(20), wire)
            .VoltageAtMotor(Wren.Volt(28), Amperes(20));
        Published.Value(Works.Faa4313.At("table 11-7"), volts, result.Drop.Volts, 0.001);
    }

    /// <summary>Descriptions compare by value: a feed found with 10 mΩ more than its wire and joints make is another, and solves otherwise.</summary>
    [Fact]
    public void Feed_FoundWithMoreResistance_IsAnother()
    {
        Feed feed = Feed.Of("f", Conductor.Awg(14), Length.FromMeters(4), Length.FromMeters(1), Celsius(50));
        Assert.NotEqual(feed, feed.Plus(0.01));
        Assert.NotEqual(feed.GetHashCode(), feed.Plus(0.01).GetHashCode());
        Assert.Equal(feed, feed.Plus(0));
    }

    [Fact]
    public void Result_OfAnyFeed_AddsUp() =>
        Feeds.Sample((feed, volts, amperes) =>
        {
            FeedResult result = feed.VoltageAtMotor(Wren.Volt(volts), Amperes(amperes));
            Assert.Equal(volts, (result.AtMotor + result.DropInWire + result.DropInContacts).Volts, 1e-12 * volts);
            Assert.Equal(result.Drop.Volts, result.ShareOfSupply.DecimalFractions * volts, 1e-12 * volts);
            Assert.Equal(result.Drop.Volts * amperes, (double)(result.HeatInWire + result.HeatInContacts).Watts, 1e-9);
            Assert.Equal(
                (double)result.HeatInWire.Watts,
                result.HeatOfWirePerLength.WattsPerMeter * (feed.OutwardLength + feed.ReturnLength).Meters,
                1e-9);
            Assert.Equal(result.Drop.Volts, feed.LoopResistance.Ohms * amperes, 1e-12 * volts);
        });

    [Fact]
    public void Motor_OfALongerThinnerOrHotterWire_NeverGetsMore() =>
        Gen.Select(Gen.Int[0, 19], Gen.Double[0.2, 8], Gen.Double[-40, 120], Gen.Double[0, 15], Gen.Double[0, 10])
            .Sample((gauge, metres, celsius, amperes, more) =>
            {
                ElectricPotential at = Motor(gauge, metres, celsius, amperes);
                return Motor(gauge + 1, metres, celsius, amperes) <= at
                    && Motor(gauge, metres + more, celsius, amperes) <= at
                    && Motor(gauge, metres, celsius + more, amperes) <= at
                    && Motor(gauge, metres, celsius, amperes + more) <= at;
            });

    [Fact]
    public void Motor_WithOneMoreContact_GetsLess() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0.1, 50]).Sample((amperes, milliohms) =>
        {
            Contact more = Contact.Of("joint", ElectricResistance.FromMilliohms(milliohms));
            return FeedOf(12, 4, 60, Contact.DefaultFuse, more).VoltageAtMotor(Wren.Volt(13.5), Amperes(amperes)).AtMotor
                < FeedOf(12, 4, 60, Contact.DefaultFuse).VoltageAtMotor(Wren.Volt(13.5), Amperes(amperes)).AtMotor;
        });

    [Fact]
    public void Chassis_AsReturn_CountsAsOneMoreContact()
    {
        Feed chassis = Feed.WithChassisReturn(
            "f", Conductor.Awg(12), Length.FromMeters(4), ElectricResistance.FromMilliohms(8), Celsius(60), Contact.DefaultFuse);
        Feed same = Feed.Of(
            "f",
            Conductor.Awg(12),
            Length.FromMeters(4),
            Length.Zero,
            Celsius(60),
            Contact.DefaultFuse,
            Contact.Of("chassis", ElectricResistance.FromMilliohms(8)));
        Assert.Equal(same.LoopResistance, chassis.LoopResistance);
        Assert.Equal("chassis", chassis.Contacts[^1].Name);
    }

    [Fact]
    public void Units_OfSupplyAndCurrent_DoNotMatter()
    {
        Feed feed = FeedOf(12, 4, 60, Contact.DefaultRelay);
        Assert.Equal(
            feed.VoltageAtMotor(Wren.Volt(13.5), Amperes(12.5)).AtMotor.Volts,
            feed.VoltageAtMotor(ElectricPotential.FromMillivolts(13_500), ElectricCurrent.FromMilliamperes(12_500)).AtMotor.Volts,
            1e-12);
    }

    [Fact]
    public void Current_BeyondWhatTheLoopLetsThrough_IsRefusedWithTheMaximum()
    {
        Feed feed = FeedOf(24, 50, 60);
        ElectricCurrent maximum = ElectricCurrent.FromAmperes(13.5 / feed.LoopResistance.Ohms);
        Assert.True(feed.VoltageAtMotor(Wren.Volt(13.5), maximum * 0.999).AtMotor.Volts > 0);
        Assert.Contains(
            "it must be up to",
            Assert.Throws<ArgumentOutOfRangeException>(() => feed.VoltageAtMotor(Wren.Volt(13.5), maximum * 1.001)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Result_InWords_NamesEachDropWithItsUnit() =>
        Assert.Matches(
            @"^\d+\.\d V at the motor: \d\.\d\d V \(\d+ %\) lost, \d\.\d\d V in wire and \d\.\d\d V in contacts$",
            FeedOf(12, 4, 60, Contact.DefaultRelay).VoltageAtMotor(Wren.Volt(13.5), Amperes(12.5)).ToString());

    /// <summary>12 V across one ohm drive 12 A, with no voltage left for the motor; slightly more cannot flow.</summary>
    [Fact]
    public void Current_OfAllThatTheLoopLetsThrough_LeavesTheMotorNothing()
    {
        Feed feed = Feed.Of(
            "f", Conductor.Awg(10), Length.Zero, Length.Zero, Celsius(20), Contact.Of("c", ElectricResistance.FromOhms(1)));
        Assert.Equal(0, feed.VoltageAtMotor(Wren.Volt(12), Amperes(12)).AtMotor.Volts, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => feed.VoltageAtMotor(Wren.Volt(12), Amperes(12.0001)));
    }

    [Fact]
    public void WithNominalArea_OfAFeed_ChangesTheWireAlone()
    {
        Feed feed = FeedOf(14, 4, 60, Contact.DefaultRelay).WithNominalArea(Area.FromSquareMillimeters(2));
        Feed wider = feed.WithNominalArea(Area.FromSquareMillimeters(4));
        Assert.Equal(feed.WireOhms / 2, wider.WireOhms, 12);
        Assert.Equal(
            (feed.Name, feed.OutwardLength, feed.ReturnLength, feed.ConductorTemperature, feed.ContactOhms),
            (wider.Name, wider.OutwardLength, wider.ReturnLength, wider.ConductorTemperature, wider.ContactOhms));
    }


    [Fact]
    public void Feed_OfNonsense_IsRefusedByName()
    {
        Length one = Length.FromMeters(1);
        Refused.Missing("conductor", () => Feed.Of("f", null!, one, one, Celsius(20)));
        Refused.Missing("contacts", () => Feed.Of("f", Conductor.Awg(10), one, one, Celsius(20), null!));
        Refused.Missing("contacts", () => Feed.Of("f", Conductor.Awg(10), one, one, Celsius(20), Contact.DefaultFuse, null!));
        Refused.Missing(
            "contacts",
            () => Feed.WithChassisReturn("f", Conductor.Awg(10), one, ElectricResistance.Zero, Celsius(20), null!));
        Refused.OutOfRange(
            "chassis", () => Feed.WithChassisReturn("f", Conductor.Awg(10), one, ElectricResistance.FromOhms(1.1), Celsius(20)));
        Refused.OutOfRange("supply", () => FeedOf(12, 4, 60).VoltageAtMotor(Wren.Volt(4.9), Amperes(1)));
        Refused.OutOfRange("supply", () => FeedOf(12, 4, 60).VoltageAtMotor(Wren.Volt(30.1), Amperes(1)));
        Refused.OutOfRange("current", () => FeedOf(12, 4, 60).VoltageAtMotor(Wren.Volt(12), Amperes(-0.1)));
    }


    private static Gen<(Feed Feed, double Volts, double Amperes)> Feeds =>
        Gen.Select(
            Gen.Int[0, 18],
            Gen.Double[0.1, 6],
            Gen.Double[-40, 150],
            Gen.Double[0, 50],
            Gen.Double[11, 16],
            Gen.Double[0, 25],
            (gauge, metres, celsius, milliohms, volts, amperes) => (
                FeedOf(gauge, metres, celsius, Contact.DefaultFuse, Contact.Of("c", ElectricResistance.FromMilliohms(milliohms))),
                volts,
                amperes));

    private static Feed FeedOf(int gauge, double metres, double celsius, params Contact[] contacts) => Feed.Of(
        "f", Conductor.Awg(gauge), Length.FromMeters(metres), Length.FromMeters(metres / 2), Celsius(celsius), contacts);

    private static ElectricPotential Motor(int gauge, double metres, double celsius, double amperes) =>
        FeedOf(gauge, metres, celsius, Contact.DefaultFuse).VoltageAtMotor(Wren.Volt(30), Amperes(amperes)).AtMotor;

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);

    private static ElectricCurrent Amperes(double amperes) => ElectricCurrent.FromAmperes(amperes);
}
