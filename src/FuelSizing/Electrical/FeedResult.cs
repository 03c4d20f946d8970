using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>What reaches the motor through a feed, and what is lost on the way.</summary>
public sealed record FeedResult
{
    internal FeedResult(Feed feed, ElectricPotential supply, ElectricCurrent current, double ohmsPerMetre)
    {
        double volts = supply.Volts;
        double amperes = current.Amperes;
        Real drop = VoltageDrop.Of<Real>(amperes, feed.LoopOhms);
        (Feed, Supply, Current) = (feed, supply, current);
        AtMotor = Volts(VoltageDrop.AtMotor<Real>(volts, amperes, feed.LoopOhms));
        Drop = Volts(drop);
        DropInWire = Volts(VoltageDrop.Of<Real>(amperes, feed.WireOhms));
        DropInContacts = Volts(VoltageDrop.Of<Real>(amperes, feed.ContactOhms));
        ShareOfSupply = Ratio.FromDecimalFractions((double)VoltageDrop.Share<Real>(drop, volts));
        HeatInWire = Power.FromWatts((double)VoltageDrop.Heat<Real>(amperes, feed.WireOhms));
        HeatInContacts = Power.FromWatts((double)VoltageDrop.Heat<Real>(amperes, feed.ContactOhms));
        HeatOfWirePerLength = LinearPowerDensity.FromWattsPerMeter((double)VoltageDrop.Heat<Real>(amperes, ohmsPerMetre));
    }

    /// <summary>The feed.</summary>
    public Feed Feed { get; }

    /// <summary>Voltage at the battery or alternator.</summary>
    public ElectricPotential Supply { get; }

    /// <summary>The motor's current.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage at the motor: V − I R.</summary>
    public ElectricPotential AtMotor { get; }

    /// <summary>Lost in all: I R.</summary>
    public ElectricPotential Drop { get; }

    /// <summary>Lost in the wire, out and back.</summary>
    public ElectricPotential DropInWire { get; }

    /// <summary>Lost in joints, fuse, relay, switch and chassis.</summary>
    public ElectricPotential DropInContacts { get; }

    /// <summary>The whole drop as a share of the supply.</summary>
    public Ratio ShareOfSupply { get; }

    /// <summary>Heat made in the wire, out and back: I² R.</summary>
    public Power HeatInWire { get; }

    /// <summary>Heat made in the contacts.</summary>
    public Power HeatInContacts { get; }

    /// <summary>Heat made in each metre of wire.</summary>
    public LinearPowerDensity HeatOfWirePerLength { get; }

    /// <summary>The result in one line.</summary>
    /// <returns>For instance <c>12.9 V at the motor: 0.62 V (5 %) lost, 0.41 V in wire and 0.21 V in contacts</c>.</returns>
    public override string ToString() =>
        $"{Readable.Of(AtMotor)} at the motor: {Readable.VoltageDrop(Drop)} ({Readable.Of(ShareOfSupply)}) lost, "
        + $"{Readable.VoltageDrop(DropInWire)} in wire and {Readable.VoltageDrop(DropInContacts)} in contacts";

    private static ElectricPotential Volts(Real volts) => ElectricPotential.FromVolts((double)volts);
}
