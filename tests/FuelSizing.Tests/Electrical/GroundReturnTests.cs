using CsCheck;
using FuelSizing.Electrical;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

/// <summary>A ground return that is not of the same wire as the supply side.</summary>
public class GroundReturnTests
{
    /// <summary>Wire of 4 m by the list of AWG 12, 0.4 m of AWG 14, contacts of 5 and 1 mΩ, body of 4 mΩ: one series circuit.</summary>
    [Fact]
    public void Loop_WithAGroundReturn_IsTheSumOfItsParts()
    {
        GroundReturn ground = GroundReturn.Of(Conductor.Awg(14), Length.FromMeters(0.4), Celsius(60), Milliohms(4), Contact.DefaultJoint);
        Feed out1 = Out(4, Contact.DefaultFuse);
        double wire = Conductor.Awg(12).ResistanceOf(Length.FromMeters(4), Celsius(60)).Ohms + Conductor.Awg(14).ResistanceOf(Length.FromMeters(0.4), Celsius(60)).Ohms;
        Feed feed = out1.WithGround(ground);
        Assert.Equal(wire + 0.005 + 0.001 + 0.004, feed.LoopResistance.Ohms, 1e-15);
        FeedResult loss = feed.VoltageAtMotor(Wren.Volt(13.5), ElectricCurrent.FromAmperes(10));
        Assert.Equal(10 * wire, loss.DropInWire.Volts, 1e-12);
        Assert.Equal(0.1, loss.DropInContacts.Volts, 1e-12);
        Assert.Equal(13.5 - (10 * (wire + 0.01)), loss.AtMotor.Volts, 1e-12);
    }

    /// <summary>Of the same conductor and length as the wire there, it is the feed that goes there and back.</summary>
    [Fact]
    public void GroundOfTheSameWire_IsTheReturnLength() =>
        Gen.Select(Gen.Int[0, 18], Gen.Double[0, 20], Gen.Double[0, 20], Gen.Double[-40, 150], Gen.Double[0, 0.1]).Sample((gauge, there, back, celsius, ohms) =>
        {
            Contact contact = Contact.Of("c", ElectricResistance.FromOhms(ohms));
            Feed one = Feed.Of("f", Conductor.Awg(gauge), Length.FromMeters(there), Length.FromMeters(back), Celsius(celsius), contact);
            Feed other = Feed.Of("f", Conductor.Awg(gauge), Length.FromMeters(there), Length.Zero, Celsius(celsius))
                .WithGround(GroundReturn.Of(Conductor.Awg(gauge), Length.FromMeters(back), Celsius(celsius), ElectricResistance.Zero, contact));
            Assert.Equal(one.LoopResistance.Ohms, other.LoopResistance.Ohms, 1e-12);
        });

    /// <summary>By the body alone it is what <see cref="Feed.WithChassisReturn"/> describes.</summary>
    [Fact]
    public void GroundByTheBodyAlone_IsTheChassisReturn()
    {
        Feed chassis = Feed.WithChassisReturn("f", Conductor.Awg(12), Length.FromMeters(4), Milliohms(7), Celsius(60), Contact.DefaultFuse);
        Feed body = Out(4, Contact.DefaultFuse).WithGround(GroundReturn.Of(Conductor.Awg(12), Length.Zero, Celsius(60), Milliohms(7)));
        Assert.Equal(chassis.LoopResistance.Ohms, body.LoopResistance.Ohms, 1e-15);
    }

    /// <summary>The wire there of 45 A × 0.77, the ground wire of 20 A × 0.77: the ground limits, until it is thick.</summary>
    [Fact]
    public void Ampacity_OfAFeed_IsThatOfTheThinnerOfItsWires()
    {
        Feed feed = Out(4).WithInsulation(Celsius(105), Celsius(60));
        GroundReturn Of(int gauge) => GroundReturn.Of(Conductor.Awg(gauge), Length.FromMeters(1), Celsius(60), ElectricResistance.Zero)
            .WithInsulation(Celsius(105), Celsius(60));
        Assert.Equal(20 * 0.77, feed.WithGround(Of(18)).AmpacityAmperes, 9);
        Assert.Equal("the ground wire of f", feed.WithGround(Of(18)).LimitingWire.Name);
        Assert.Equal(45 * 0.77, feed.WithGround(Of(8)).AmpacityAmperes, 9);
        Assert.Equal("f", feed.WithGround(Of(8)).LimitingWire.Name);
        Assert.Equal(45 * 0.77 * 0.5, feed.WithGround(Of(12).WithBundle(7)).AmpacityAmperes, 9);
        Assert.False(feed.WithGround(Of(8)).HasUnknownAmpacity);
        Assert.True(feed.WithGround(GroundReturn.Of(Conductor.Awg(8), Length.FromMeters(1), Celsius(60), ElectricResistance.Zero)).HasUnknownAmpacity);

        // Of a feed whose own wire is not described the ground wire's alone is known.
        Assert.Equal(20 * 0.77, Out(4).WithGround(Of(18)).AmpacityAmperes, 9);
        Assert.True(Out(4).WithGround(Of(18)).HasUnknownAmpacity);
    }

    [Fact]
    public void Feed_ThatIsResized_KeepsItsGround()
    {
        GroundReturn ground = GroundReturn.Of(Conductor.Awg(14), Length.FromMeters(0.4), Celsius(60), Milliohms(4), Contact.DefaultJoint);
        Feed feed = Out(4, Contact.DefaultFuse).WithGround(ground);
        Feed thick = feed.WithNominalArea(Area.FromSquareMillimeters(120));
        Assert.Equal(ground, thick.Ground);
        Assert.InRange(thick.LoopOhms, ground.Resistance.Ohms + 0.005, ground.Resistance.Ohms + 0.006);
    }

    [Fact]
    public void Ground_OfNonsense_IsRefusedByName()
    {
        GroundReturn ground = GroundReturn.Of(Conductor.Awg(14), Length.FromMeters(0.4), Celsius(60), Milliohms(4));
        Refused.Missing("conductor", () => GroundReturn.Of(null!, Length.Zero, Celsius(60), Milliohms(4)));
        Refused.Missing("contacts", () => GroundReturn.Of(Conductor.Awg(14), Length.Zero, Celsius(60), Milliohms(4), null!));
        Refused.Missing("contacts", () => GroundReturn.Of(Conductor.Awg(14), Length.Zero, Celsius(60), Milliohms(4), Contact.DefaultJoint, null!));
        Refused.OutOfRange("body", () => GroundReturn.Of(Conductor.Awg(14), Length.Zero, Celsius(60), ElectricResistance.FromOhms(1.1)));
        Refused.Missing("ground", () => Out(4).WithGround(null!));

        // The current returns once.
        Feed twice = Feed.Of("f", Conductor.Awg(12), Length.FromMeters(4), Length.FromMeters(3), Celsius(60));
        Assert.Matches(
            "^ground was given to f, whose current returns by 3[^ ]* m of its own wire already. Give the feed a return length of 0 m.",
            Assert.Throws<ArgumentException>(() => twice.WithGround(ground)).Message);
        Assert.Equal("ground", Assert.Throws<ArgumentException>(() => Out(4).WithGround(ground).WithGround(ground)).ParamName);
    }

    private static Feed Out(double metres, params Contact[] contacts) =>
        Feed.Of("f", Conductor.Awg(12), Length.FromMeters(metres), Length.Zero, Celsius(60), contacts);

    private static ElectricResistance Milliohms(double milliohms) => ElectricResistance.FromMilliohms(milliohms);

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
}
