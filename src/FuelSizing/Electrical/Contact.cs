using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>A place in the feed that resists without being wire: a joint, fuse, relay or switch.</summary>
/// <remarks>
/// The usual values are common practice, no source: good parts, clean and tight. Measure the drop across your own under
/// load; a corroded joint can take more than all the wire.
/// </remarks>
public sealed record Contact
{
    private Contact(string name, ElectricResistance resistance) => (Name, Resistance) = (name, resistance);

    /// <summary>A crimped terminal with its mating part, 1 mΩ: common practice, no source.</summary>
    public static Contact DefaultJoint { get; } = Of("joint", ElectricResistance.FromMilliohms(1));

    /// <summary>A blade fuse of 15 to 30 A in its holder, 5 mΩ: common practice, no source.</summary>
    public static Contact DefaultFuse { get; } = Of("fuse and holder", ElectricResistance.FromMilliohms(5));

    /// <summary>A relay's closed contacts and its socket, 5 mΩ: common practice, no source.</summary>
    public static Contact DefaultRelay { get; } = Of("relay", ElectricResistance.FromMilliohms(5));

    /// <summary>A switch, for instance an inertia or master switch, 10 mΩ: common practice, no source.</summary>
    public static Contact DefaultSwitch { get; } = Of("switch", ElectricResistance.FromMilliohms(10));

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Resistance when closed and warm.</summary>
    public ElectricResistance Resistance { get; }

    /// <summary>A contact by its resistance: drop measured across it ÷ current through it.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="resistance">0 to 1 Ω.</param>
    /// <returns>The contact.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is outside its range.</exception>
    public static Contact Of(string name, ElectricResistance resistance) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                resistance,
                ElectricResistance.Zero,
                ElectricResistance.FromOhms(1),
                "Give the drop across the closed contact divided by the current through it.",
                nameof(resistance)));

    internal static double Ohms(IReadOnlyList<Contact> contacts, string name)
    {
        double ohms = 0;
        foreach (Contact contact in contacts)
        {
            ArgumentNullException.ThrowIfNull(contact, name);
            ohms = VoltageDrop.Loop<Real>(ohms, contact.Resistance.Ohms);
        }

        return ohms;
    }
}
