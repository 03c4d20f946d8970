using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The thinnest conductor of a list that keeps a drop, or the reason why none does.</summary>
public sealed class SizedConductor : IReadable
{
    private SizedConductor(
        Conductor? conductor,
        ElectricPotential? drop,
        Conductor? nextThinner,
        ElectricPotential? nextThinnerDrop,
        Statement text) =>
        (Conductor, Drop, NextThinner, NextThinnerDrop, Text) = (conductor, drop, nextThinner, nextThinnerDrop, text);

    /// <summary>The conductor, if there is one.</summary>
    public Conductor? Conductor { get; }

    /// <summary>Drop of wire and contacts with it.</summary>
    public ElectricPotential? Drop { get; }

    /// <summary>The next thinner of the list, which drops too much; none if the choice is the thinnest.</summary>
    public Conductor? NextThinner { get; }

    /// <summary>Drop of wire and contacts with the next thinner.</summary>
    public ElectricPotential? NextThinnerDrop { get; }

    /// <summary>The answer in words.</summary>
    public Statement Text { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The answer in words.</summary>
    /// <returns>For instance <c>AWG 10 drops 0.31 V of the 0.35 V allowed; AWG 12 would drop 0.47 V.</c></returns>
    public override string ToString() => Text.ToString();

    internal static SizedConductor Of(
        Conductor conductor,
        ElectricPotential drop,
        Conductor? nextThinner,
        ElectricPotential? nextThinnerDrop,
        ElectricPotential allowed) =>
        new(
            conductor,
            drop,
            nextThinner,
            nextThinnerDrop,
            nextThinner is not null && nextThinnerDrop is { } more
                ? Statement.Of(
                    "wire.found",
                    $"{conductor} drops {drop:voltage-drop} of the {allowed:voltage-drop} allowed; {nextThinner} would drop {more.ApartFrom(allowed):voltage-drop}.")
                : Statement.Of(
                    "wire.thinnest",
                    $"{conductor} drops {drop:voltage-drop} of the {allowed:voltage-drop} allowed; the list holds no thinner one."));

    internal static SizedConductor None(Statement reason) => new(null, null, null, null, reason);
}
