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
        .Number(use => use.BrakeSpecificFuelConsumption.KilogramsPerJoule);

    private FuelConsumption(Fuel fuel, double lambda, BrakeSpecificFuelConsumption consumption)
    {
        (Fuel, Lambda, BrakeSpecificFuelConsumption) = (fuel, lambda, consumption);
    }

    /// <summary>The fuel.</summary>
    public Fuel Fuel { get; }

    /// <summary>Air–fuel ratio ÷ stoichiometric air–fuel ratio; below 1 is rich.</summary>
    public double Lambda { get; }

    /// <summary>Fuel mass for a unit of work at the crank, at full load; work that a belt-driven compressor takes from it included.</summary>
    public BrakeSpecificFuelConsumption BrakeSpecificFuelConsumption { get; }

    /// <summary>Brake thermal efficiency that this consumption implies: η_e = 1/(b H).</summary>
    public Ratio BrakeEfficiency => Ratio.FromDecimalFractions(
        (double)Combustion.BrakeEfficiency<Real>(
            BrakeSpecificFuelConsumption.KilogramsPerJoule, Fuel.LowerHeatingValue.JoulesPerKilogram));

    /// <summary>Describes the consumption at full load.</summary>
    /// <param name="fuel">The fuel.</param>
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
        FuelConsumption consumption = new(
            fuel,
            Guard.Number(
                lambda, 0.6, 1.2, "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.", nameof(lambda)),
            Guard.Between(
                brakeSpecificFuelConsumption,
                BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(150),
                BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(1500),
                "Give fuel mass for a unit of work at the crank.",
                nameof(brakeSpecificFuelConsumption)));
        return consumption.BrakeEfficiency.DecimalFractions <= 0.5
            ? consumption
            : throw Guard.OutOfRange(
                nameof(brakeSpecificFuelConsumption),
                Readable.Of(brakeSpecificFuelConsumption),
                $"over {Readable.Of(BrakeSpecificFuelConsumption.FromKilogramsPerJoule(2 / fuel.LowerHeatingValue.JoulesPerKilogram))} for {fuel.Name} (brake efficiency of 50 %)",
                "Check that the figure belongs to this fuel: alcohol fuels need more mass for the same work.");
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuelConsumption? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Fuel, lambda and BSFC.</summary>
    /// <returns>For instance <c>petrol at lambda 0.82, 315 g/kWh</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Fuel.Name} at lambda {Lambda:0.00}, {Readable.Of(BrakeSpecificFuelConsumption)}");

    /// <summary>The same fuel and mixture at another consumption, unchecked.</summary>
    internal FuelConsumption Using(BrakeSpecificFuelConsumption consumption) => new(Fuel, Lambda, consumption);

    /// <summary>The same engine on a fuel of other heating value: brake efficiency stays, so BSFC goes with 1/LHV.</summary>
    internal FuelConsumption Burning(Fuel fuel) =>
        new(
            fuel,
            Lambda,
            BrakeSpecificFuelConsumption.FromKilogramsPerJoule((double)Combustion.BrakeSpecificFuelConsumption<Real>(
                BrakeEfficiency.DecimalFractions, fuel.LowerHeatingValue.JoulesPerKilogram)));
}
