using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;

namespace FuelSizing.Tests.Engines;

public class CompressionTests
{
    // The book takes the heat capacity as varying with temperature; a constant one is 0.8 % off at this ratio of 8.
    [Fact(DisplayName = "Compressor outlet temperature; Çengel and Boles, example 7-15")]
    public void OutletTemperature_OfCengelsCompressor_IsWithinAPerCent() =>
        Published.Value(
            Works.CengelBoles,
            569.5,
            Compression.OutletTemperature<Real>(285, 8, 0.8),
            0.01);

    /// <summary>
    /// Young and Freedman's ideal turbocharger and cooler: air at 101 kPa, 15 °C, compressed to 145 kPa without loss.
    /// Cooled back to 15 °C the cylinder holds 1.45/1.01 times the mass; uncooled (1.45/1.01)^(1/1.4) times.
    /// </summary>
    [Fact(DisplayName = "Charge mass with and without charge cooler; Young and Freedman")]
    public void CooledCharge_OfYoungAndFreedmansEngine_HoldsTheirMass()
    {
        Source source = Works.YoungFreedman;
        Real outlet = Compression.OutletTemperature<Real>(288.15, 1.45 / 1.01, 1);
        Published.Value(source, 319.5, outlet, 1e-3);
        Real before = StandardAir.Density<Real>(1.01e5, 288.15);
        Real uncooled = StandardAir.Density<Real>(1.45e5, outlet) / before;
        Published.Value(source, 1.295, uncooled, 1e-3);
        Real cooled =
            StandardAir.Density<Real>(1.45e5, Compression.CooledTemperature<Real>(outlet, 288.15, 1)) / before;
        Published.Value(source, 1.436, cooled, 1e-3);
    }

    /// <summary>Eastop and McConkey: 350.9 K; Rajput: 391.7 K. Each by hand, T1 (1 + (r^(2/7) − 1)/η), to the last figure.</summary>
    [Theory(DisplayName = "Compressor outlet temperature of a boosted engine; Eastop and McConkey, Rajput")]
    [InlineData("Eastop", 288, 1.7, 0.75, 350.9)]
    [InlineData("Rajput", 325, 1.6, 0.70, 391.7)]
    public void OutletTemperature_OfABoostedEngine_IsWorkedApart(string author, double inlet, double ratio, double efficiency, double kelvins) =>
        Published.Value(
            author == "Eastop" ? Works.EastopCharged : Works.RajputCharged,
            kelvins,
            Compression.OutletTemperature<Real>(inlet, ratio, efficiency),
            0.05 / kelvins);

    /// <summary>Rajput: 1.214 kg/s of air raised by 66.7 K, drive 90 %: 1.214 × 1.005 × 66.71/0.9 = 90.4 kW; specific heat 1.005 there, 1.00469 here.</summary>
    [Fact(DisplayName = "Compressor drive power; Rajput, example 16.1")]
    public void DrivePower_OfRajputsCompressor_IsWorkedApart()
    {
        double outlet = 325 * (1 + ((Math.Pow(1.6, 0.4 / 1.4) - 1) / 0.70));
        Published.Value(Works.RajputCharged.At("drive power, W"), 1.214 * 1005 * (outlet - 325) / 0.9, Compression.DrivePower<Real>(1.214, 325, outlet, 0.9), 1e-3);
    }

    [Fact(DisplayName = "Roots blower, outlet temperature and drive power; Gupta, example 15.1")]
    public void DrivePower_OfGuptasRootsBlower_IsWorkedApart()
    {
        Source source = Works.GuptaRoots;
        Real outlet = Compression.OutletTemperature<Real>(288, 1.6, 0.74);
        Published.Value(source.At("outlet, K"), 343.9, outlet, 0.05 / 343.9);
        Published.Value(source.At("drive power of 0.11494 kg/s, W"), 0.11494 * 1005 * (343.934 - 288) / 0.78, Compression.DrivePower<Real>(0.11494, 288, outlet, 0.78), 1e-3);
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
