using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>What a fuel is made of: carbon, hydrogen and oxygen, by mass.</summary>
/// <remarks>
/// The elements alone fix the air that a fuel needs: see <see cref="StoichiometricAirFuelRatio"/>. Sulphur and nitrogen
/// are traces in road fuels and are left out.
/// </remarks>
public sealed record ElementalComposition
{
    private static readonly Identity<ElementalComposition> _identity = new Identity<ElementalComposition>()
        .Number(made => made.CarbonShare)
        .Number(made => made.HydrogenShare)
        .Number(made => made.OxygenShare);

    private ElementalComposition(double carbon, double hydrogen, double oxygen)
    {
        double total = carbon + hydrogen + oxygen;
        (CarbonShare, HydrogenShare, OxygenShare) = (carbon / total, hydrogen / total, oxygen / total);
    }

    /// <summary>Mass fraction of carbon.</summary>
    public Ratio Carbon => Ratio.FromDecimalFractions(CarbonShare);

    /// <summary>Mass fraction of hydrogen.</summary>
    public Ratio Hydrogen => Ratio.FromDecimalFractions(HydrogenShare);

    /// <summary>Mass fraction of oxygen.</summary>
    public Ratio Oxygen => Ratio.FromDecimalFractions(OxygenShare);

    /// <summary>
    /// Stoichiometric air–fuel ratio, kg of dry air per kg of fuel:
    /// AFR = (w_C · M_O2/M_C + w_H · M_O2/(4 M_H) − w_O)/0.2314.
    /// </summary>
    /// <remarks>Symbols: w mass fractions, M molar masses (IUPAC abridged), 0.2314 the mass fraction of oxygen in air.</remarks>
    public double StoichiometricAirFuelRatio =>
        Combustion.StoichiometricAirFuelRatio<Real>(
            Combustion.OxygenDemand<Real>(CarbonShare, HydrogenShare, OxygenShare));

    /// <summary>The atoms by which it was given; none where it was given by mass.</summary>
    internal Given<(double Carbon, double Hydrogen, double Oxygen)?> Atoms { get; private init; }

    internal double CarbonShare { get; private init; }

    internal double HydrogenShare { get; private init; }

    internal double OxygenShare { get; private init; }

    /// <summary>A pure substance by its formula, for instance ethanol C2H6O: <c>OfMolecule(2, 6, 1)</c>.</summary>
    /// <param name="carbon">Atoms of carbon, 1 to 30.</param>
    /// <param name="hydrogen">Atoms of hydrogen, 1 to 62.</param>
    /// <param name="oxygen">Atoms of oxygen, 0 to 10, and few enough that the molecule still burns.</param>
    /// <returns>The composition by mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is outside its range, or the molecule needs no air.</exception>
    public static ElementalComposition OfMolecule(int carbon, int hydrogen, int oxygen = 0)
    {
        const string advice = "Count the atoms in one molecule.";
        return OfAtoms(
            Guard.Count(carbon, 1, 30, advice, nameof(carbon)),
            Guard.Count(hydrogen, 1, 62, advice, nameof(hydrogen)),
            Guard.Count(oxygen, 0, 10, advice, nameof(oxygen)),
            nameof(oxygen));
    }

    /// <summary>A mixture such as petrol by its atom ratios, for instance CH1.87: <c>OfAtomRatios(1.87)</c>.</summary>
    /// <param name="hydrogenToCarbon">Atoms of hydrogen for each of carbon, 0.5 to 4.</param>
    /// <param name="oxygenToCarbon">Atoms of oxygen for each of carbon, 0 to 1.</param>
    /// <returns>The composition by mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A ratio is outside its range.</exception>
    public static ElementalComposition OfAtomRatios(double hydrogenToCarbon, double oxygenToCarbon = 0)
    {
        const string advice = "Take the ratio from the fuel's analysis; petrol without oxygenates is near 1.87 : 0.";
        return OfAtoms(
            1,
            Guard.Number(hydrogenToCarbon, 0.5, 4, advice, nameof(hydrogenToCarbon)),
            Guard.Number(oxygenToCarbon, 0, 1, advice, nameof(oxygenToCarbon)),
            nameof(oxygenToCarbon));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ElementalComposition? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Mass fractions.</summary>
    /// <returns>For instance <c>carbon 86.5 %, hydrogen 13.5 %, oxygen 0.0 % by mass</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"carbon {Carbon.Percent:F1} %, hydrogen {Hydrogen.Percent:F1} %, oxygen {Oxygen.Percent:F1} % by mass");

    internal static ElementalComposition ByMass(double carbon, double hydrogen, double oxygen) =>
        new(carbon, hydrogen, oxygen);

    /// <summary>A composition by its mass fractions, which add up to one but for rounding and are kept to the last bit.</summary>
    internal static ElementalComposition OfShares(Ratio carbon, Ratio hydrogen, Ratio oxygen)
    {
        const string advice = "Give the mass fractions of carbon, hydrogen and oxygen.";
        double Checked(Ratio share, string name) =>
            Guard.Between(share, Ratio.Zero, Ratio.FromPercent(100), advice, name).DecimalFractions;
        ElementalComposition composition = new(0, 0, 1)
        {
            CarbonShare = Checked(carbon, nameof(carbon)),
            HydrogenShare = Checked(hydrogen, nameof(hydrogen)),
            OxygenShare = Checked(oxygen, nameof(oxygen)),
        };
        double total = composition.CarbonShare + composition.HydrogenShare + composition.OxygenShare;
        return Math.Abs(total - 1) <= 1e-9 && composition.StoichiometricAirFuelRatio > 0
            ? composition
            : throw Guard.OutOfRange(
                nameof(oxygen), Readable.Of(oxygen), "shares that add up to 100 %, of something that burns", advice);
    }

    private static ElementalComposition OfAtoms(double carbon, double hydrogen, double oxygen, string oxygenName)
    {
        ElementalComposition composition = new(
            carbon * Combustion.MolarMassCarbon,
            hydrogen * Combustion.MolarMassHydrogen,
            oxygen * Combustion.MolarMassOxygen)
        {
            Atoms = new((carbon, hydrogen, oxygen)),
        };
        return composition.StoichiometricAirFuelRatio > 0
            ? composition
            : throw Guard.OutOfRange(
                oxygenName,
                oxygen.ToString(System.Globalization.CultureInfo.InvariantCulture),
                "less oxygen than would burn all the carbon and hydrogen",
                "Check the formula: this substance needs no air and is not a fuel.");
    }
}
