using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>Between crank and wheels.</summary>
public static class Drivetrain
{
    /// <summary>Crank power from power measured at the wheels: P_crank = P_wheel/(1 − loss).</summary>
    /// <param name="wheelPower">At the wheels, 0 to 3,000 kW.</param>
    /// <param name="loss">
    /// Share of crank power that gearbox, final drive and tyres take, 0 to 40 %. 12 to 18 % is common practice, no
    /// source.
    /// </param>
    /// <returns>Power at the crank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Power ToCrank(Power wheelPower, Ratio loss) =>
        Power.FromWatts((double)BoostedPower.CrankFromWheel<Real>(
            (double)Within(wheelPower, nameof(wheelPower)).Watts,
            WithinLoss(loss, nameof(loss)).DecimalFractions));

    internal static Ratio WithinLoss(Ratio loss, string name) =>
        Guard.Between(
            loss, Ratio.Zero, Ratio.FromPercent(40), "Give the share of crank power lost on the way to the wheels.", name);

    internal static Power Within(Power power, string name) =>
        Guard.Between(
            power, Power.Zero, Power.FromKilowatts(3000), "Give the power of the whole engine.", name);
}
