using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>What the engine does with its fuel: which fuel, how rich, and how much for its power.</summary>
/// <remarks>
/// Rules of thumb, common practice, no source: lambda 0.80 to 0.85 on boost; BSFC 275 to 305 g/kWh (0.45 to
/// 0.50 lb/(hp·h)) without boost, 335 to 395 g/kWh (0.55 to 0.65) with boost, on petrol; about 1.4 to 1.5 times that on
/// E85. A measured figure beats them.
/// </remarks>
public sealed record FuelConsumption
{
    private static readonly Identity<FuelConsumption> _identity = new Identity<FuelConsumption>()
        .Value(use => use.Fuel)
        .Number(use => use.Lambda)
        .Number(use => use.BrakeSpecificFuelConsumption.KilogramsPerJoule)
        .Value(use => use.StatedFuel);

    private FuelConsumption(
        Fuel fuel, double lambda, BrakeSpecificFuelConsumption consumption, Fuel statedFuel, BrakeSpecificFuelConsumption statedConsumption)
    {
        (Fuel, Lambda, BrakeSpecificFuelConsumption) = (fuel, lambda, consumption);
        (StatedFuel, StatedConsumption) = (statedFuel, statedConsumption);
    }

    /// <summary>
    /// The highest brake efficiency that is plausible of these engines at full load, 38 %: common practice, no source. A BSFC that means more
    /// is most often another fuel's, and results say that it is not judged.
    /// </summary>
    public static Ratio MaximumPlausibleEfficiency { get; } = Ratio.FromPercent(38);

    /// <summary>The fuel.</summary>
    public Fuel Fuel { get; }

    /// <summary>Air–fuel ratio ÷ stoichiometric air–fuel ratio; below 1 is rich.</summary>
    public double Lambda { get; }

    /// <summary>Fuel mass for a unit of work at the crank, at full load; work that a belt-driven compressor takes from it included.</summary>
    public BrakeSpecificFuelConsumption BrakeSpecificFuelConsumption { get; }

    /// <summary>The fuel on which the BSFC was stated: <see cref="Fuel"/>, unless it was converted by <see cref="With"/>.</summary>
    public Fuel StatedFuel { get; }

    /// <summary>The BSFC as it was stated, on <see cref="StatedFuel"/>.</summary>
    public BrakeSpecificFuelConsumption StatedConsumption { get; }

    /// <summary>True if the BSFC was converted from another fuel's by heating value, which is an estimate.</summary>
    public bool IsConverted => !StatedFuel.Equals(Fuel);

    /// <summary>Brake thermal efficiency that this consumption implies: η_e = 1/(b H).</summary>
    public Ratio BrakeEfficiency => Ratio.FromDecimalFractions(
        (double)Combustion.BrakeEfficiency<Real>(
            BrakeSpecificFuelConsumption.KilogramsPerJoule, Fuel.LowerHeatingValue.JoulesPerKilogram));

    /// <summary>Describes the consumption at full load.</summary>
    /// <param name="fuel">The fuel, on which the BSFC was stated too; <see cref="With"/> changes to another.</param>
    /// <param name="lambda">0.6 to 1.2.</param>
    /// <param name="brakeSpecificFuelConsumption">
    /// 150 to 1,500 g/kWh, and more than the fuel's heat could give at 50 % efficiency.
    /// </param>
    /// <returns>The consumption.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value is outside its range, or the consumption would mean a brake efficiency over 50 %.
    /// </exception>
    public static FuelConsumption Of(
        Fuel fuel, double lambda, BrakeSpecificFuelConsumption brakeSpecificFuelConsumption)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        Guard.Number(lambda, 0.6, 1.2, "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.", nameof(lambda));
        Guard.Between(
            brakeSpecificFuelConsumption,
            BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(150),
            BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(1500),
            "Give fuel mass for a unit of work at the crank.",
            nameof(brakeSpecificFuelConsumption));
        FuelConsumption consumption = new(fuel, lambda, brakeSpecificFuelConsumption, fuel, brakeSpecificFuelConsumption);
        return consumption.BrakeEfficiency.DecimalFractions <= 0.5
            ? consumption
            : throw Guard.OutOfRange(
                nameof(brakeSpecificFuelConsumption),
                Readable.Of(brakeSpecificFuelConsumption),
                $"over {Readable.Of(BrakeSpecificFuelConsumption.FromKilogramsPerJoule(2 / fuel.LowerHeatingValue.JoulesPerKilogram))} for {fuel.Name} (brake efficiency of 50 %)",
                "Check that the figure belongs to this fuel: alcohol fuels need more mass for the same work.");
    }

    /// <summary>
    /// The same engine on another fuel at the same lambda: brake efficiency stays, so that BSFC goes with 1/heating value from the fuel on which
    /// it was stated. Equal efficiency is common practice, no source; a figure measured on the fuel beats it, and results say that it was
    /// converted.
    /// </summary>
    /// <param name="fuel">What the engine burns then.</param>
    /// <returns>The consumption; the one that was stated where the fuel is that one.</returns>
    /// <example>
    /// <code>
    /// FuelConsumption petrol = FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315));
    /// Console.WriteLine(petrol.With(Fuel.E85));
    /// </code>
    /// </example>
    public FuelConsumption With(Fuel fuel)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return new(
            fuel,
            Lambda,
            fuel.Equals(StatedFuel)
                ? StatedConsumption
                : BrakeSpecificFuelConsumption.FromKilogramsPerJoule((double)Combustion.BrakeSpecificFuelConsumption<Real>(
                    Combustion.BrakeEfficiency<Real>(StatedConsumption.KilogramsPerJoule, StatedFuel.LowerHeatingValue.JoulesPerKilogram),
                    fuel.LowerHeatingValue.JoulesPerKilogram)),
            StatedFuel,
            StatedConsumption);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuelConsumption? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Fuel, lambda and BSFC, and from which fuel's it was converted.</summary>
    /// <returns>For instance <c>petrol at lambda 0.82, 315 g/kWh</c>.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"{Fuel.Name} at lambda {Lambda:0.00}, {Readable.Of(BrakeSpecificFuelConsumption)}{(IsConverted ? $" by heating value from {Readable.Of(StatedConsumption)} on {StatedFuel.Name}" : string.Empty)}");

    /// <summary>The same fuel and mixture at another consumption, unchecked.</summary>
    internal FuelConsumption Using(BrakeSpecificFuelConsumption consumption) => new(Fuel, Lambda, consumption, Fuel, consumption);
}
