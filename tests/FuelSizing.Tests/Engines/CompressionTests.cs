using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Engines;

public class CompressionTests
{
    // The example's 70 °F is 529.67 °R; its answers have five figures.
    [Fact(DisplayName = "Compressor outlet temperature; Maddox")]
    public void OutletTemperature_OfMaddoxsCompressor_IsHis()
    {
        const string source = "J. F. Maddox, ME 321 example 0.2, compressor isentropic efficiency (ratio 10, 80 %, k 1.4)";
        Published.Value(source, 1022.6, Compression.OutletTemperature<Real>(529.67, 10, 1), 1e-4);
        Published.Value(source, 1145.8, Compression.OutletTemperature<Real>(529.67, 10, 0.8), 1e-4);
    }

    // The book takes the heat capacity as varying with temperature; a constant one is 0.8 % off at this ratio of 8.
    [Fact(DisplayName = "Compressor outlet temperature; Çengel and Boles, example 7-15")]
    public void OutletTemperature_OfCengelsCompressor_IsWithinAPerCent() =>
        Published.Value(
            "Çengel and Boles, Thermodynamics: An Engineering Approach, example 7-15 (285 K, 100 to 800 kPa, 80 %)",
            569.5,
            Compression.OutletTemperature<Real>(285, 8, 0.8),
            0.01);

    [Fact(DisplayName = "Compressor outlet temperature; textbook exercise")]
    public void OutletTemperature_OfATextbookCompressor_NeedsItsEfficiency() =>
        // 4 kg/s from 1 bar, 25 °C to 4 bar, 200 °C: the answer is printed as 0.83.
        Published.Value(
            "Textbook exercise with answers 703.5 kW and 0.83 (air, 4 kg/s, 1 to 4 bar, 25 to 200 °C)",
            473,
            Compression.OutletTemperature<Real>(298, 4, 0.83),
            0.003);

    [Fact(DisplayName = "Compressor drive power; textbook exercise")]
    public void DrivePower_OfATextbookCompressor_IsTheBooks() =>
        // The book's specific heat is 1.005 kJ/(kg K), ours 1.00469.
        Published.Value(
            "Textbook exercise with answers 703.5 kW and 0.83 (air, 4 kg/s, 1 to 4 bar, 25 to 200 °C)",
            703_500,
            Compression.DrivePower<Real>(4, 298, 473, 1),
            5e-4);

    /// <summary>
    /// Young and Freedman's ideal turbocharger and cooler: air at 101 kPa, 15 °C, compressed to 145 kPa without loss.
    /// Cooled back to 15 °C the cylinder holds 1.45/1.01 times the mass; uncooled (1.45/1.01)^(1/1.4) times.
    /// </summary>
    [Fact(DisplayName = "Charge mass with and without charge cooler; Young and Freedman")]
    public void CooledCharge_OfYoungAndFreedmansEngine_HoldsTheirMass()
    {
        const string source = "Young and Freedman, University Physics, 12th ed., ch. 19, engine turbochargers and intercoolers (answers by hand)";
        Real outlet = Compression.OutletTemperature<Real>(288.15, 1.45 / 1.01, 1);
        Published.Value(source, 319.5, outlet, 1e-3);
        Real before = StandardAir.Density<Real>(1.01e5, 288.15);
        Real uncooled = StandardAir.Density<Real>(1.45e5, outlet) / before;
        Published.Value(source, 1.295, uncooled, 1e-3);
        Real cooled =
            StandardAir.Density<Real>(1.45e5, Compression.CooledTemperature<Real>(outlet, 288.15, 1)) / before;
        Published.Value(source, 1.436, cooled, 1e-3);
    }

    /// <summary>Charge cooled by 5.6 K after a compressor of 70 % efficiency at a pressure ratio of 1.6.</summary>
    [Fact(DisplayName = "Compressor outlet temperature of a supercharged engine; companion example 19.1")]
    public void OutletTemperature_OfASuperchargedEngine_IsTheCompanions() =>
        Published.Value(
            "Textbook companion, internal combustion engines, supercharging example 19.1 (300 K, ratio 1.6, 70 %)",
            361.59,
            Compression.OutletTemperature<Real>(300, 1.6, 0.70),
            1e-4);

    [Fact(DisplayName = "Roots blower, outlet temperature and drive power; companion example")]
    public void DrivePower_OfARootsExample_IsTheCompanions()
    {
        const string source = "Textbook companion, air capacity and supercharging, example 15.1 (288 K, ratio 1.6, 74 %, mechanical 78 %)";
        Real outlet = Compression.OutletTemperature<Real>(288, 1.6, 0.74);
        Published.Value(source, 343.93, outlet, 1e-4);
        Published.Value(source, 8_284, Compression.DrivePower<Real>(0.11494, 288, outlet, 0.78), 1e-3);
    }

    [Fact]
    public void OutletTemperature_Isentropic_FollowsPoisson() =>
        Gen.Select(Gen.Double[250, 330], Gen.Double[1, 4]).Sample((inlet, ratio) =>
        {
            double poisson = inlet * Math.Pow(ratio, 0.4 / 1.4);
            return Math.Abs(Compression.OutletTemperature<Real>(inlet, ratio, 1) - poisson) < 1e-10 * poisson;
        });

    [Fact]
    public void OutletTemperature_OfAWorseCompressor_IsHigher() =>
        Gen.Select(Gen.Double[1.01, 4], Gen.Double[0.3, 0.89], Gen.Double[0.001, 0.01]).Sample((ratio, good, better) =>
            Compression.OutletTemperature<Real>(288, ratio, good)
                > Compression.OutletTemperature<Real>(288, ratio, good + better).Value);

    [Fact]
    public void PressureRatio_InManifoldVacuum_IsOne() =>
        Gen.Double[1e4, 9e4].Sample(manifold => Compression.PressureRatio<Real>(manifold, 5e3, 1e5) == 1.0);
}
