using FuelSizing.Electrical;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How wires, contacts, feeds and fuses are shown.</summary>
internal static class WiringShown
{
    public static void Register()
    {
        Shown.By<Conductor>((wire, style) => new(
            $"Wire: {wire}",
            [
                new("Area", "A", style.Of(wire.Area), wire.Material.Name),
                new("Diameter", "d_w", PartText.Bore(wire.Diameter, 2, style), "of the metal, as one round wire"),
                new("Resistance of a metre", "R′", style.Of(wire.ResistanceOf(Length.FromMeters(1), At20)), $"at {style.Of(At20)}"),
            ]));
        Shown.By<ConductorMaterial>((metal, style) => new(
            $"Conductor: {metal.Name}",
            [
                new("Resistivity", "ρ_e", style.Of(metal.Resistivity), $"at {style.Of(At20)}"),
                new("Rise with temperature", "α_e", $"{style.Number(metal.TemperatureCoefficient, "N5")} 1/K"),
            ]));
        Shown.By<Contact>((contact, style) => new($"Contact: {contact.Name}", [new("Resistance", "R_c", style.Of(contact.Resistance))]));
        Shown.By<Feed>((feed, style) => new($"Feed: {feed.Name}", Of(feed, style)));
        Shown.By<GroundReturn>((ground, style) => new(
            "Ground return",
            [
                new("Wire", "A", style.Of(ground.Conductor.Area), $"{ground.Conductor}"),
                new("Length", "l_back", style.Of(ground.Length)),
                new("Temperature of the wire", "θ", style.Of(ground.ConductorTemperature)),
                new("Body", "", style.Of(ground.Body)),
                .. ground.Contacts.Select(contact => new Fact("Contact", "R_c", style.Of(contact.Resistance), contact.Name)),
                new("Resistance", "", style.Of(ground.Resistance), "wire, contacts and body"),
                .. ground.BundledConductors is { } bundled ? new[] { new Fact("Conductors in the bundle", "", style.Number(bundled, "N0"), "current-carrying, itself included") } : [],
                .. ground.Ampacity is { } ampacity ? new[] { new Fact("Ampacity", "I_z", ampacity.Current is { } current ? style.Of(current) : "not covered", PartText.Say(ampacity, style)) } : [],
            ]));
        Shown.By<FeedResult>((result, style) => new($"What {result.Feed.Name} loses", Of(result, style)));
        Shown.By<Ampacity>((ampacity, style) => new("What a wire may carry", [new("Current", "I_z", CircuitText.Known(ampacity.Current, style.Of), PartText.Say(ampacity, style))]));
        Shown.By<FuseTimeCurrent>((times, style) => new("Opening times of a fuse", [.. Of(times, style)]));
        Shown.By<FuseTime>((time, style) => new($"Opening time of a fuse at {style.Number(time.Multiple, "0.###")} × its rating", [.. Of(time, style)]));
        Shown.By<MotorStart>((start, style) => new("Start of a motor", Of(start, style)));
        Shown.By<FuseChoice>((fuse, style) => new(
            "Fuse",
            [
                new("Rating", "I_n", fuse.Rating is { } rating ? style.Of(rating) : "none", PartText.Say(fuse, style)),
                .. fuse.Load is { } load ? (Fact[])[new("Load", "", style.Of(load), $"at most {style.Of(FuseChoice.MaximumLoad)} (common practice, no source)")] : [],
                new("Wire may carry", "I_z", CircuitText.Known(fuse.Ampacity.Current, style.Of), PartText.Say(fuse.Ampacity, style)),
            ]));
        Shown.By<SizedConductor>((sized, style) => new("Smallest adequate wire", Of("Wire", sized, style)));
        Shown.By<SmallestConductor>((smallest, style) => new(
            "Smallest adequate wire",
            [
                new("Area needed", "A", smallest.NeededArea is { } area ? style.Write(area, "area:up") : "none", "copper"),
                .. Of("American gauge", smallest.Awg, style),
                .. Of("Metric", smallest.Metric, style),
            ]));
    }

    private static Temperature At20 => Temperature.FromDegreesCelsius(20);

    private static Fact[] Of(FeedResult result, TextStyle style)
    {
        Working working = result.WorkingIn(style);
        Fact By(string name, string symbol, string figure) => new(name, symbol, figure, WorkingShown.Formula(working, symbol));
        return
        [
            new("At the source", "V_s", style.Of(result.Supply)),
            new("Current", "I", style.Of(result.Current)),
            By("Resistance of the loop", "R", style.Of(result.Feed.LoopResistance)),
            By("Lost in the wire", "ΔV_w", style.VoltageDrop(result.DropInWire)),
            By("Lost in the contacts", "ΔV_c", style.VoltageDrop(result.DropInContacts)),
            By("Lost altogether", "ΔV", style.VoltageDrop(result.Drop)),
            By("Share of the supply", "x_V", style.DutyCycle(result.ShareOfSupply)),
            By("At the motor", "V_m", style.Of(result.AtMotor)),
            By("Heat in the wire", "P_Rw", style.WireHeat(result.HeatInWire)),
            new("Heat in each metre of wire", "", style.Of(result.HeatOfWirePerLength)),
            By("Heat in the contacts", "P_Rc", style.WireHeat(result.HeatInContacts)),
        ];
    }

    private static IEnumerable<Fact> Of(FuseTimeCurrent times, TextStyle style) => times.Points.SelectMany(time => Of(time, style));

    private static IEnumerable<Fact> Of(FuseTime time, TextStyle style) =>
    [
        new($"Opens at {style.Number(time.Multiple, "0.###")} × its rating", "", style.Time(time.Minimum), $"at the earliest; at the latest after {style.Time(time.Maximum)}"),
    ];

    private static Fact[] Of(MotorStart start, TextStyle style) =>
    [
        new("Locked rotor", "", style.Of(start.LockedRotor)),
        .. start.Time is { } time ? (Fact[])[new("Start", "", style.Time(time))] : [],
        .. start.OpensWithin is { } limit ? (Fact[])[new("To be opened within", "", style.Time(limit), "on a locked rotor")] : [],
    ];

    private static Fact[] Of(Feed feed, TextStyle style) =>
    [
        new("Wire", "A", style.Of(feed.Conductor.Area), $"{feed.Conductor}"),
        new("Outward length", "l_out", style.Of(feed.OutwardLength)),
        new("Return length", "l_back", style.Of(feed.ReturnLength)),
        new("Temperature of the wire", "θ", style.Of(feed.ConductorTemperature)),
        .. feed.Contacts.Select(contact => new Fact("Contact", "R_c", style.Of(contact.Resistance), contact.Name)),
        new("Resistance of the loop", "R", style.Of(feed.LoopResistance), "wire and contacts"),
        .. feed.InsulationRating is { } rating ? new[] { new Fact("Insulation rated for", "", style.Of(rating)) } : [],
        .. feed.Ambient is { } ambient ? new[] { new Fact("Surroundings", "", style.Of(ambient), "the hottest along the run") } : [],
        .. feed.Ampacity is { } ampacity ? new[] { new Fact("Ampacity", "I_z", ampacity.Current is { } current ? style.Of(current) : "not covered", PartText.Say(ampacity, style)) } : [],
        .. feed.BundledConductors is { } bundled ? new[] { new Fact("Conductors in the bundle", "", style.Number(bundled, "N0"), "current-carrying, itself included") } : [],
        .. feed.Ground is { } ground ? new[] { new Fact("Ground return", "", style.Of(ground.Resistance), $"{ground.Conductor}, {style.Of(ground.Length)}") } : [],
        .. feed.Shared is { } shared ? new[] { new Fact("Shared with other pumps", "", style.Of(shared.LoopResistance), $"{shared.Name}, {shared.Conductor}") } : [],
        .. feed.Fuse is { } fuse ? new[] { new Fact("Fuse", "I_n", style.Of(fuse)) } : [],
        .. feed.FuseTimes is { } times ? Of(times, style) : [],
        .. feed.Start is { } start ? Of(start, style) : [],
        .. feed.Relay is { } relay ? new[] { new Fact("Relay's contacts", "", style.Of(relay), "continuously") } : [],
    ];

    private static Fact[] Of(string name, SizedConductor sized, TextStyle style) =>
    [
        sized.Conductor is { } wire ? new(name, "A", style.Of(wire.Area), PartText.Say(sized, style)) : Fact.Words(name, PartText.Say(sized, style)),
        .. sized.Drop is { } drop ? (Fact[])[new($"{name}: lost", "ΔV", style.VoltageDrop(drop))] : [],
    ];
}
