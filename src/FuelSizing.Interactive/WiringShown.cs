using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How wires, contacts, feeds and fuses are shown.</summary>
internal static class WiringShown
{
    public static void Register()
    {
        Shown.By<Conductor>(wire => new(
            $"Wire: {wire}",
            [
                new("Area", "A", Readable.Of(wire.Area), wire.Material.Name),
                new("Diameter", "d", PartText.Bore(wire.Diameter, 2), "of the metal, as one round wire"),
                new("Resistance of a metre", "r", Readable.Of(wire.ResistanceOf(Length.FromMeters(1), At20)), $"at {Readable.Of(At20)}"),
            ]));
        Shown.By<ConductorMaterial>(metal => new(
            $"Conductor: {metal.Name}",
            [
                new("Resistivity", "ρ", PartText.Of(metal.Resistivity), $"at {Readable.Of(At20)}"),
                new("Rise with temperature", "α", $"{PartText.Number(metal.TemperatureCoefficient, 5)} 1/K"),
            ]));
        Shown.By<Contact>(contact => new($"Contact: {contact.Name}", [new("Resistance", "R", Readable.Of(contact.Resistance))]));
        Shown.By<Feed>(feed => new($"Feed: {feed.Name}", Of(feed)));
        Shown.By<FeedResult>(result => new($"What {result.Feed.Name} loses", Of(result)));
        Shown.By<Ampacity>(ampacity => new("What a wire may carry", [new("Current", "I_max", CircuitText.Known(ampacity.Current, Readable.Of), ampacity.Text)]));
        Shown.By<FuseChoice>(fuse => new(
            "Fuse",
            [
                new("Rating", "I_r", fuse.Rating is { } rating ? Readable.Of(rating) : "none", fuse.Text),
                .. fuse.Load is { } load ? (Fact[])[new("Load", "", Readable.Of(load), $"at most {Readable.Of(FuseChoice.MaximumLoad)}")] : [],
                new("Wire may carry", "I_max", CircuitText.Known(fuse.Ampacity.Current, Readable.Of), fuse.Ampacity.Text),
            ]));
        Shown.By<SizedConductor>(sized => new("Smallest wire that serves", Of("Wire", sized)));
        Shown.By<SmallestConductor>(smallest => new(
            "Smallest wire that serves",
            [
                new("Area needed", "A", smallest.NeededArea is { } area ? Readable.Of(area) : "none", "copper"),
                .. Of("American gauge", smallest.Awg),
                .. Of("Metric", smallest.Metric),
            ]));
    }

    private static Temperature At20 => Temperature.FromDegreesCelsius(20);

    private static Fact[] Of(FeedResult result)
    {
        Working working = result.Working;
        Fact By(string name, string symbol, string figure) => new(name, symbol, figure, WorkingShown.Formula(working, symbol));
        return
        [
            new("At the source", "V", Readable.Of(result.Supply)),
            new("Current", "I", Readable.Of(result.Current)),
            By("Resistance of the loop", "R", Readable.Of(result.Feed.LoopResistance)),
            By("Lost in the wire", "ΔV_w", Readable.VoltageDrop(result.DropInWire)),
            By("Lost in the contacts", "ΔV_c", Readable.VoltageDrop(result.DropInContacts)),
            By("Lost altogether", "ΔV", Readable.VoltageDrop(result.Drop)),
            By("Share of the supply", "d", Readable.DutyCycle(result.ShareOfSupply)),
            By("At the motor", "V_m", Readable.Of(result.AtMotor)),
            By("Heat in the wire", "P_w", CircuitText.SmallHeat(result.HeatInWire)),
            new("Heat in each metre of wire", "", CircuitText.Heat(result.HeatOfWirePerLength)),
            By("Heat in the contacts", "P_c", CircuitText.SmallHeat(result.HeatInContacts)),
        ];
    }

    private static Fact[] Of(Feed feed) =>
    [
        new("Wire", "A", Readable.Of(feed.Conductor.Area), $"{feed.Conductor}"),
        new("Length out", "L_1", Readable.Of(feed.Outward)),
        new("Length back", "L_2", Readable.Of(feed.Back)),
        new("Temperature of the wire", "T", Readable.Of(feed.ConductorTemperature)),
        .. feed.Contacts.Select(contact => new Fact("Contact", "R_c", Readable.Of(contact.Resistance), contact.Name)),
        new("Resistance of the loop", "R", Readable.Of(feed.LoopResistance), "wire and contacts"),
    ];

    private static Fact[] Of(string name, SizedConductor sized) =>
    [
        sized.Conductor is { } wire ? new(name, "A", Readable.Of(wire.Area), sized.Text) : Fact.Words(name, sized.Text),
        .. sized.Drop is { } drop ? (Fact[])[new($"{name}: lost", "ΔV", Readable.VoltageDrop(drop))] : [],
    ];
}
