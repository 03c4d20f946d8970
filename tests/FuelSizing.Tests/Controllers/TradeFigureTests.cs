using System.Globalization;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Tests.Controllers;

/// <summary>
/// What the trade says (common practice, no source) beside what the model says. Nothing is tuned: the tests hold the page to the model, and the
/// model to the laws written out here.
/// </summary>
public class TradeFigureTests
{
    private const double Psi = 6894.757293168;
    private static readonly string Page = File.ReadAllText(Path.Combine(Root(), "docs", "mixture.md"));

    /// <summary>G = 1 + (p_b/b)((r λ0/λ_t)² − 1) at 300 kPa of base pressure, compressor 65 %, cooler 60 %, sea level.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(12)]
    public void GainAtABoost_IsThatOfThePage(double psi)
    {
        double boost = psi * Psi;
        double ratio = DensityRatio(boost, 0.65, 0.60);
        double same = Gain(ratio, 0.83, 0.83, boost);
        double leaner = Gain(ratio, 0.90, 0.83, boost);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"| {psi:0} psi ({boost / 1e5:0.00} bar) | {ratio:0.00} | {same:0.0} | {leaner:0.0} |"), Page, StringComparison.Ordinal);

        // The library's own equation, and the same density by its model.
        Assert.Equal(leaner, BoostedMixture.Gain<Real>(BoostedMixture.RequiredDifferential<Real>(300e3, ratio, 0.90, 0.83), 300e3, boost).Value, 1e-9);
        Induction induction = Induction.Turbocharged(Wren.Percent(65), Wren.Percent(60), Pressure.Zero);
        FuelDemandModel model = Wren.Demand(induction: induction);
        double Density(double at) => model.At(Wren.Rpm(5000), Pressure.FromPascals(at), Atmosphere.Standard).ChargeDensity.KilogramsPerCubicMeter;
        Assert.Equal(ratio, Density(boost) / Density(0), 1e-6);

        // Of the trade's 4 to 12 most of them are.
        Assert.InRange(same, 4, 12);
    }

    /// <summary>Power with 8 psi over power without: (r − (1 − η_m))/η_m, a belt's share taken off.</summary>
    [Fact]
    public void PowerFromEightPsi_IsThatOfThePage()
    {
        double boost = 8 * Psi;
        double ratio = DensityRatio(boost, 0.72, 0.70);
        double turbocharged = (ratio - 0.15) / 0.85;
        FuelDemandModel model = Wren.Demand(induction: Induction.Turbocharged(Wren.Percent(72), Wren.Percent(70), Pressure.Zero));
        double Power(FuelDemandModel of, double at) => (double)of.At(of.MechanicalEfficiencySpeed, Pressure.FromPascals(at), Atmosphere.Standard).BrakePower.Watts;
        Assert.Equal(turbocharged, Power(model, boost) / Power(model, 0), 1e-6);

        FuelDemandModel belted = Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(63), Wren.Percent(55), Pressure.Zero, Wren.Percent(94)));
        double byBelt = Power(belted, boost) / Power(belted, 0);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"{(turbocharged - 1) * 100:0} % with a turbocharger (compressor 72 %, cooler 70 %), {(byBelt - 1) * 100:0} % with a blower on a belt"),
            Page,
            StringComparison.Ordinal);
    }

    private static double Gain(double ratio, double unboosted, double target, double boost) =>
        1 + (300e3 / boost * (Math.Pow(ratio * unboosted / target, 2) - 1));

    // Ideal gas, isentropic compression with γ = 1.4 and an efficiency, a cooler by its effectiveness; no pressure lost in it.
    private static double DensityRatio(double boost, double compressor, double cooler)
    {
        double ratio = (101_325 + boost) / 101_325;
        double rise = (Math.Pow(ratio, 0.4 / 1.4) - 1) / compressor;
        return ratio / (1 + (rise * (1 - cooler)));
    }

    private static string Root()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
