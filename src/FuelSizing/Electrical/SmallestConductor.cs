using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The thinnest copper conductors that keep a stated drop.</summary>
/// <remarks>
/// The voltage drop does not cover overheating: check the choice against <see cref="Ampacity"/> and <see cref="FuseChoice"/> too.
/// </remarks>
public sealed class SmallestConductor : IReadable
{
    private SmallestConductor(Area? neededArea, SizedConductor awg, SizedConductor metric) =>
        (NeededArea, Awg, Metric) = (neededArea, awg, metric);

    /// <summary>
    /// Area of copper, twisted with <see cref="Conductor.DefaultLay"/>, that just keeps the drop:
    /// A = ρ_e (1 + k_l) l_w I/(ΔV − I R_c); none where the contacts alone exceed it.
    /// </summary>
    public Area? NeededArea { get; }

    /// <summary>The thinnest American wire gauge, 24 to 4/0.</summary>
    public SizedConductor Awg { get; }

    /// <summary>The thinnest nominal area, 0.5 to 95 mm², counted with the highest resistance allowed it (IEC 60228, class 5).</summary>
    public SizedConductor Metric { get; }

    /// <summary>The thinnest conductors that keep a drop.</summary>
    /// <param name="allowedDrop">ΔV, of wire and contacts together, over 0 to 10 V.</param>
    /// <param name="current">I, over 0 to 200 A.</param>
    /// <param name="loopLength">L, all the wire that the current runs through, over 0 to 200 m.</param>
    /// <param name="conductorTemperature">Of the metal under load, −40 to 150 °C.</param>
    /// <param name="contacts">Every joint, fuse, relay and switch, and a chassis return.</param>
    /// <returns>A conductor of each list with its drop and that of the next thinner, or the reason why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SmallestConductor ForDrop(
        ElectricPotential allowedDrop,
        ElectricCurrent current,
        Length loopLength,
        Temperature conductorTemperature,
        params Contact[] contacts)
    {
        ArgumentNullException.ThrowIfNull(contacts);
        Guard.Above(
            allowedDrop,
            ElectricPotential.Zero,
            ElectricPotential.FromVolts(10),
            "Give the drop of wire and contacts together that the pump can spare.",
            nameof(allowedDrop));
        Guard.Above(
            current,
            ElectricCurrent.Zero,
            ElectricCurrent.FromAmperes(200),
            "Give the motor's highest steady current.",
            nameof(current));
        Guard.Above(
            loopLength,
            Length.Zero,
            Length.FromMeters(200),
            "Give all the wire that the current runs through, out and back.",
            nameof(loopLength));
        double celsius = Conductor.WithinTemperature(conductorTemperature, nameof(conductorTemperature)).DegreesCelsius;
        double contactOhms = Contact.Ohms(contacts, nameof(contacts));
        double area = WireResistance.SmallestArea<Real>(
            WireResistance.AtTemperature<Real>(
                ConductorMaterial.Copper.Resistivity.OhmMeters, ConductorMaterial.Copper.TemperatureCoefficient, celsius),
            Conductor.DefaultLay.DecimalFractions,
            loopLength.Meters,
            current.Amperes,
            allowedDrop.Volts,
            contactOhms);
        Search search = new(allowedDrop, current.Amperes, loopLength.Meters, celsius, contactOhms);

        // Where contacts take all of the drop the area is negative or, at exactly all of it, infinite.
        Area? needed = area > 0 && double.IsFinite(area) ? Area.FromSquareMeters(area) : null;
        return new(needed, search.In(StandardSizes.Awg, needed), search.In(StandardSizes.Metric, needed));
    }

    /// <summary>Both answers in one line.</summary>
    /// <returns>The text of <see cref="Awg"/> and, unless it says the same, of <see cref="Metric"/>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Awg.Text.Equals(Metric.Text) ? Awg.In(style) : $"{Awg.In(style)} {Metric.In(style)}";

    private sealed record Search(
        ElectricPotential Allowed, double Amperes, double Metres, double Celsius, double ContactOhms)
    {
        public SizedConductor In(IReadOnlyList<Conductor> thinToThick, Area? needed)
        {
            if (needed is null)
            {
                return SizedConductor.None(
                    Statement.Of(
                        "wire.contacts-take-it-all",
                        $"None: the contacts alone drop {Drop(ContactOhms).ApartFrom(Allowed):voltage-drop} of the {Allowed:voltage-drop} allowed; better connections, fuse holder, relay or switch must come first."));
            }

            for (int size = 0; size < thinToThick.Count; size++)
            {
                ElectricPotential drop = DropWith(thinToThick[size]);
                if (drop <= Allowed)
                {
                    return size == 0
                        ? SizedConductor.Of(thinToThick[0], drop, null, null, Allowed)
                        : SizedConductor.Of(
                            thinToThick[size], drop, thinToThick[size - 1], DropWith(thinToThick[size - 1]), Allowed);
                }
            }

            Conductor thickest = thinToThick[^1];
            return SizedConductor.None(
                Statement.Of(
                    "wire.none",
                    $"None: {thickest} drops {DropWith(thickest).ApartFrom(Allowed):voltage-drop} of the {Allowed:voltage-drop} allowed, and the list ends there; shorten the run or allow more drop."));
        }

        private ElectricPotential DropWith(Conductor conductor) =>
            Drop(VoltageDrop.Loop<Real>(conductor.OhmsOf(Metres, Celsius), ContactOhms));

        private ElectricPotential Drop(double ohms) =>
            ElectricPotential.FromVolts((double)VoltageDrop.Of<Real>(Amperes, ohms));
    }
}
