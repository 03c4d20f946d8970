using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Tests.Equations;

/// <summary>
/// Each equation once with round numbers, calculated by hand (a desk calculator for roots, powers and exponentials): what a
/// reader with the written formula gets, to six figures or more.
/// </summary>
public class EquationsByHandTests
{
    /// <summary>
    /// ASTM B258: 1/0 is 0.3249 in, 8.2515 mm, and gauge 10 0.1019 in, 2.588 mm; from 36 to 0 the diameter grows by 92^(36/39),
    /// to 10 by 92^(26/39).
    /// </summary>
    [Fact]
    public void AmericanWireGauge_OfOneOughtAndTen()
    {
        Is(8.251463e-3, AmericanWireGauge.Diameter<Real>(0));
        Is(2.588187e-3, AmericanWireGauge.Diameter<Real>(10));
    }

    [Fact]
    public void BoostedPower_CrankFromWheel()
    {
        // 85 kW at the wheels with 15 % drivetrain loss.
        Is(100, BoostedPower.CrankFromWheel<Real>(85, 0.15));
    }

    [Fact]
    public void BoostedPower_Brake()
    {
        // 100 kW of 125 kW indicated lose 25 kW; with 1.5 times the air 187.5 − 25, and 5 for the belt.
        Is(162.5, BoostedPower.Gross<Real>(100, 25, 1.5));
        Is(0, BoostedPower.Gross<Real>(100, 25, 0.1));
        Is(157.5, BoostedPower.Brake<Real>(162.5, 5));
        Is(0, BoostedPower.Brake<Real>(4, 5));
    }

    [Fact]
    public void EngineFriction_OfAPullAndAgainstSpeed()
    {
        Is(25, EngineFriction.OfMeasuredPull<Real>(100, 0.8));

        // 0.97 + 0.15 · 3 + 0.05 · 9 bar at 3,000 rev/min, 0.97 + 0.15 · 6 + 0.05 · 36 at 6,000.
        Is(187e3, EngineFriction.MeanEffectivePressure<Real>(50));
        Is(367e3, EngineFriction.MeanEffectivePressure<Real>(100));
        Is(25 * 1.87 * 50 / (3.67 * 100), EngineFriction.AtSpeed<Real>(25, 100, 50));
        Is(25, EngineFriction.AtSpeed<Real>(25, 87, 87));
    }

    [Fact]
    public void Compression_PressureRatio()
    {
        Is(1.6, Compression.PressureRatio<Real>(150e3, 10e3, 100e3));
        Is(1, Compression.PressureRatio<Real>(80e3, 5e3, 100e3));
    }

    [Fact]
    public void Compression_Temperatures()
    {
        // 300 K · (1 + (2^(0.4/1.4) − 1)/0.7); 400 K less 70 % of the 100 K over the coolant; a quarter of 400 · 1,004.685 J/kg over 10 kg of air.
        Is(393.862995, Compression.OutletTemperature<Real>(300, 2, 0.7));
        Is(1.21901365, Compression.IsentropicRatio<Real>(2));
        Is(393.862995, Compression.Heated<Real>(300, 1.21901365, 0.7));
        Is(330, Compression.CooledTemperature<Real>(400, 300, 0.7));
        Is(310, ChargeCooling.Temperature<Real>(320, 0.25, 401_874.018, 10));
    }

    /// <summary>0.2 kg/s warmed by 100 K at 1,004.685 J/(kg·K), with 90 % of the shaft's power in the air.</summary>
    [Fact]
    public void Compression_DrivePower() => Is(22_326.334, Compression.DrivePower<Real>(0.2, 300, 400, 0.9));

    [Fact]
    public void CentrifugalCompressor_WorkAndRatio()
    {
        // 1.04 · 0.9 · 400²; 0.75 of it warms air of 288 K by 111.797 K, and (1 + 111.797/288)^3.5.
        Is(149_760, CentrifugalCompressor.EulerWork<Real>(1.04, 0.9, 400));
        Is(3.1518223, CentrifugalCompressor.PressureRatio<Real>(149_760, 0.75, 288));

        // Twice the speed, four times the rise of 1.2 − 1; at twice the inlet temperature, twice the rise. 1.2^3.5, 1.8^3.5, 1.4^3.5.
        Is(1.89292916, Compression.FromIsentropicRatio<Real>(1.2));
        Is(7.82444907, CentrifugalCompressor.RatioAtSpeed<Real>(1.89292916, 300, 290, 600, 290));
        Is(3.24674458, CentrifugalCompressor.RatioAtSpeed<Real>(1.89292916, 300, 290, 600, 580));
    }

    /// <summary>1.2 kg/m³ · 0.9 · 1.3 L · 1.9 · 2/(0.92 · 2.8 L).</summary>
    [Fact]
    public void DisplacementCompressor_ChargeDensity() =>
        Is(2.07111801, DisplacementCompressor.ChargeDensity<Real>(1.2, 0.9, 1.3e-3, 1.9, 2, 0.92, 2.8e-3));

    [Fact]
    public void CurrentRating_OfInsulation()
    {
        Is(0.85634884, CurrentRating.AmbientFactor<Real>(105, 50, 30));
        Is(1, CurrentRating.AmbientFactor<Real>(105, 10, 30));
        Is(0, CurrentRating.AmbientFactor<Real>(105, 120, 30));
        Is(21.6, CurrentRating.Derated<Real>(45, 0.8, 0.6));
    }

    /// <summary>0.9 · 150 kPa/(287.05287 · 330 K) = 0.9 · 1.58349039 kg/m³, · 2.4 L · 100 rev/s/2.</summary>
    [Fact]
    public void EngineAir_MassFlow() => Is(0.17101696, EngineAir.MassFlow<Real>(0.9, 1.58349039, 2.4e-3, 100, 2));

    /// <summary>200 N·m at 6,000 rev/min: 2π · 100 · 200.</summary>
    [Fact]
    public void EnginePower_OfTorque() => Is(125_663.706, EnginePower.OfTorque<Real>(200, 100));

    [Fact]
    public void FuelDemandFlow_OfPowerAndAir()
    {
        // 100 kW at 0.09 kg/MJ; 0.147 kg/s of air at λ 1 and 14.7, and at λ 0.8.
        Is(9e-3, FuelDemandFlow.FromPower<Real>(100e3, 9e-8));
        Is(0.01, FuelDemandFlow.FromAir<Real>(0.147, 14.7));
        Is(0.0125, FuelDemandFlow.FromAir<Real>(0.147, Combustion.AirFuelRatio<Real>(0.8, 14.7)));
        Is(2e-5, FuelDemandFlow.Volume<Real>(0.015, 750));
    }

    /// <summary>
    /// ASTM D1250: (346.4228/ρ + 0.4388)/ρ for gasoline, to 770.5 kg/m³, and 2680.3206/ρ² − 0.00336312 between it and jet
    /// fuel.
    /// </summary>
    [Fact]
    public void FuelDensity_Expansion()
    {
        Is(1.2255931e-3, FuelDensity.PetrolExpansion<Real>(740));
        Is(1.0424037e-3, FuelDensity.PetrolExpansion<Real>(780));
        Is(1.15171058e-3, FuelDensity.PetrolExpansion<Real>(770.5));
    }

    /// <summary>740 · exp(−0.02 · (1 + 0.8 · 0.02)), twenty degrees over 15 °C at 0.001 per kelvin.</summary>
    [Fact]
    public void FuelDensity_AtThirtyFive() => Is(725.114944, FuelDensity.At<Real>(740, 1e-3, 308.15));

    [Fact]
    public void FuelMixing_BySharesAndBack()
    {
        Real[] shares = [0.3, 0.9];
        Real[] values = [700, 800];
        Is(775, FuelMixing.ByShare<Real>(shares, values));

        // 40 between 44 (740 kg/m³) and 27 (790 kg/m³): 13/17 by mass, (13/740)/(13/740 + 4/790) by volume.
        Is(0.776266062, FuelMixing.VolumeShare<Real>(40, 44, 740, 27, 790));

        // 1 kg in 0.5/800 + 0.5/1000 m³; 0.4 kg and 0.5 kg in a litre.
        Is(888.888889, FuelMixing.Density<Real>(0.5, 800, 1000));
        Is(0.444444444, FuelMixing.MassShare<Real>(0.5, 800, 1000));
    }

    [Fact]
    public void TwoFuels_OfPetrolAndMethanol()
    {
        // 0.012 × 14.5 + 0.004 × 6.5 = 0.2 kg/s of air; 660 kW and 220 kW.
        Is(1, TwoFuels.Lambda<Real>(0.2, 14.5, 0.012, 6.5, 0.004));
        Is(0.25, TwoFuels.HeatShare<Real>(44e6, 0.015, 22e6, 0.01));

        // 1 kW of cooling a 0.2 kg/s · 1004.685 J/(kg·K) · 320 K stream of air.
        Is(1 + (1000 / (320 * 1004.685046 * 0.2)), ChargeCooling.AirGain<Real>(320, 0.25, 1e6, 0.004, 0.2));
    }

    [Fact]
    public void HumidAir_OfTwentyDegrees()
    {
        // 611.2 Pa · exp(17.62 · 20/(243.12 + 20)), the Magnus formula; half of it in 100 kPa.
        Is(2332.59602, HumidAir.SaturationPressure<Real>(293.15));
        Is(1166.29801, HumidAir.PartialPressure<Real>(0.5, 293.15));
        Is(98_834, HumidAir.DryPressure<Real>(100e3, 1166));
    }

    [Fact]
    public void InjectorFlow_OfPressureAndDensity()
    {
        // 6 mL/s · √(400/300 · 683.8/740); back to the rated flow; nothing under negative pressure.
        Is(6.65992452e-6, InjectorFlow.Static<Real>(6e-6, 300e3, 683.8, 400e3, 740));
        Is(6e-6, InjectorFlow.Rated<Real>(6.65992452e-6, 300e3, 683.8, 400e3, 740));
        Is(0, InjectorFlow.Static<Real>(6e-6, 300e3, 683.8, -1, 740));
    }

    [Fact]
    public void InjectorFlow_OfPulses()
    {
        // 6,000 rev/min, four strokes, one injection: 20 ms; 50 mL/s through four of 6 mL/s: 1 ms + 12.5/6 · 20 ms.
        Is(0.02, InjectorFlow.AvailableTime<Real>(100, 2, 1).Value);
        Is(0.01, InjectorFlow.AvailableTime<Real>(100, 2, 2).Value);
        Is(0.0426666667, InjectorFlow.Pulse<Real>(1e-3, 5e-5, 4, 0.02, 6e-6));
        Is(0.85, InjectorFlow.DutyCycle<Real>(0.017, 0.02));

        // 12.5 mL/s each over 20 ms within 16 ms and within 14 ms; what four of 6 mL/s can do in 16 ms of 20 ms.
        Is(1.5625e-5, InjectorFlow.RequiredStatic<Real>(5e-5, 4, 0.02, 0.85, 1e-3));
        Is(1.78571429e-5, InjectorFlow.StaticForPulse<Real>(5e-5, 4, 0.02, 0.015, 1e-3));
        Is(1.92e-5, InjectorFlow.Capacity<Real>(6e-6, 4, 0.02, 0.85, 1e-3));
        Is(0, InjectorFlow.Capacity<Real>(6e-6, 4, 0.02, 0.85, 0.018));
    }

    [Fact]
    public void StagedFlow_OfBothHandOvers()
    {
        // Half way from 20 % to 50 %, and past the full; 20 of 50 mL/s over 30, no less than 45 %, no more than 25 %; 40 % of 50 mL/s.
        Is(0.35, StagedFlow.ShareByBoost<Real>(45e3, 30e3, 60e3, 0.2, 0.5));
        Is(0.5, StagedFlow.ShareByBoost<Real>(90e3, 30e3, 60e3, 0.2, 0.5));
        Is(0.4, StagedFlow.ShareByDutyCycle<Real>(5e-5, 3e-5, 0.2, 0.5));
        Is(0.45, StagedFlow.ShareByDutyCycle<Real>(5e-5, 3e-5, 0.45, 0.5));
        Is(0.25, StagedFlow.ShareByDutyCycle<Real>(5e-5, 3e-5, 0.2, 0.25));
        Is(2e-5, StagedFlow.Secondary<Real>(5e-5, 0.4));
    }

    [Fact]
    public void InjectionChain_OfOnePoint()
    {
        InjectionState<Real> state = InjectionChain.Evaluate<Real>(
            new(6e-6, 300e3, 683.8, 4, 1, 2), new(100, 400e3, 1e-3, 2e-5, 740));
        Is(6.65992452e-6, state.StaticFlow);
        Is(0.02, state.AvailableTime);

        // 1 ms + 5/6.65992452 · 20 ms, and its share of 20 ms.
        Is(0.0160151852, state.Pulse);
        Is(0.800759260, state.DutyCycle);
    }

    [Fact]
    public void InjectorMatching_OfFourInjectors()
    {
        Real[] factors = [0.96, 1, 1.02, 1.06];
        Is(1.01, InjectorMatching.Mean<Real>(factors));

        // λ of the leanest of the four, 0.82 · 1.01/0.96, and the duty cycle that would make its cylinder even: 5 % + 75 % · 1.01/0.96.
        Is(0.862708333, InjectorMatching.Lambda<Real>(0.82, 1.01, 0.96));
        Is(0.8390625, InjectorMatching.EvenDutyCycle<Real>(0.8, 0.05, 1.01, 0.96));
    }

    [Fact]
    public void InverseTemperature_ThroughTwoPoints()
    {
        // ln 2/(1/300 − 1/320), and ln 5 − 1200/300.
        Is(3327.10647, InverseTemperature.Slope<Real>(300, 4, 320, 2));
        Is(-2.39056209, InverseTemperature.Intercept<Real>(300, 5, 1200));
    }

    [Fact]
    public void LiquidViscosity_OfALaw()
    {
        Is(0.239399457, LiquidViscosity.Dynamic<Real>(-4, 600, 0.1, 300));
        Is(5e-7, LiquidViscosity.Kinematic<Real>(3.7e-4, 740));
        Is(3.7e-4, LiquidViscosity.FromKinematic<Real>(5e-7, 740));
    }

    [Fact]
    public void CubicColumns_OfStraightPieces()
    {
        CubicPiece<Real>[] pieces = [new(0, 5, 2, 0, 0), new(1, 7, -2, 0, 0), new(3, 3, 0.5, 0, 0)];
        Columns(pieces, 4, [(0, 5), (0.5, 6), (1, 7), (1.5, 6), (3, 3), (3.5, 3.25), (4, 3.5)]);

        // Outside, the nearer end.
        Columns(pieces, 4, [(-1, 5), (9, 3.5)]);
        Is(6.5, CubicPiece<Real>.Straight(0, 6, 1, 0.5));
        Is(-2, StraightLine.Slope<Real>(1, 7, 3, 3));
        Is(1, StraightLine.Through<Real>(1, 7, 3, 3, 4));

        // The harmonic mean of 2 and 6 where both widths are the same; none where chords turn.
        Is(3, MonotoneCubic.InnerSlope<Real>(1, 2, 1, 6));
        Is(0, MonotoneCubic.InnerSlope<Real>(1, 2, 1, -6));

        // (3 · 4 − 2)/2; held to three times the chord where the next one turns; zero where it turns itself.
        Is(5, MonotoneCubic.EndSlope<Real>(1, 4, 1, 2));
        Is(6, MonotoneCubic.EndSlope<Real>(1, 2, 1, -8));
        Is(0, MonotoneCubic.EndSlope<Real>(1, 2, 1, 8));
        Is(0.5, MonotoneCubic.At<Real>(0, 0, 1, 1, 0, 0.5));
        Is(0.15625, MonotoneCubic.At<Real>(0, 0, 1, 1, 0, 0.25));
    }

    /// <summary>x³ − 2x² + 3 and its slopes at 1 and 3 give it back between: a cubic is its own spline.</summary>
    [Fact]
    public void CubicPiece_ThroughACubicsEnds()
    {
        CubicPiece<Real> piece = CubicPiece<Real>.Between(1, 2, -1, 3, 12, 15);
        Is(2, piece.At(1));
        Is(3, piece.At(2));
        Is(6.125, piece.At(2.5));
        Is(12, piece.At(3));

        // 3x² − 4x.
        Is(-1, piece.SlopeAt(1));
        Is(4, piece.SlopeAt(2));
        Is(8.75, piece.SlopeAt(2.5));
        Is(15, piece.SlopeAt(3));

        CubicPiece<Real>[] pieces = [piece, new(3, 12, 1, 0.5, 0.25), new(5, 20, -1, 0, 0)];
        Columns(pieces, 8, [(2, 3), (3, 12), (4, 13.75), (7, 18)]);

        // 8 − s³ and 2 + s²: only one power is there to tell either from a straight line.
        Columns([new(0, 8, 0, 0, -1), new(2, 0, 1, 0, -1)], 4, [(1, 7), (1.5, 4.625), (3, 0)]);
        Columns([new(0, 2, 0, 1, 0), new(2, 6, 4, 1, 0)], 4, [(1, 3), (1.5, 4.25), (3, 11)]);
    }

    /// <summary>Steps of n² at n, falling away by 2 s from each: eight pieces, nine, and as many as there is room for.</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(16)]
    public void CubicColumns_OfSoManyPieces_ReadsEach(int count) =>
        Columns(
            [.. Enumerable.Range(0, count).Select(n => new CubicPiece<Real>(n, n * n, -2, 0, 0))],
            count,
            [.. Enumerable.Range(0, count).Select(n => (n + 0.25, (n * n) - 0.5))]);

    [Fact]
    public void PipeFlow_OfAnEightMillimetreBore()
    {
        // 50 mL/s through a quarter of π · 8 mm squared; Reynolds 1 m/s · 8 mm/0.5 mm²/s.
        Is(0.994718394, PipeFlow.Velocity<Real>(5e-5, 8e-3));
        Is(16_000, PipeFlow.Reynolds<Real>(1, 8e-3, 5e-7));

        // Laminar, 64/Re · L/D · ρv²/2 with Re 1,600: 0.04 · 500 · 370; three velocity heads; half a metre of fuel.
        Is(7400, PipeFlow.StraightLoss<Real>(64, 4, 8e-3, 740, 5e-6, 1));
        Is(1110, PipeFlow.FittingsLoss<Real>(3, 740, 1));
        Is(3628.4605, PipeFlow.Column<Real>(740, 0.5));

        // Laminar at Reynolds number 1600: 7400 Pa by 64/Re, and three velocity heads of 370 Pa.
        PipeState<Real> state = PipeLoss.Evaluate<Real>(new(8e-3, 4, 0, 3), Math.PI / 4 * 64e-6, 740, 5e-6);
        Is(7400, state.StraightLoss);
        Is(1110, state.FittingsLoss);
        Is(8510, state.FrictionLoss);
    }

    [Fact]
    public void PipeFriction_BetweenLaminarAndTurbulent()
    {
        // f · Re is 64 up to 2,040 and meets the turbulent law at 4,000; halfway the two weigh the same.
        Is(64, PipeFriction.Number<Real>(2040, 0.001));
        Is(64, PipeFriction.Number<Real>(1, 0.001));
        double turbulent(double reynolds) => ColebrookWhite.Friction<Real>(reynolds, 0.001) * reynolds;
        Is(turbulent(4000), PipeFriction.Number<Real>(4000, 0.001));
        Is((64 + turbulent(3020)) / 2, PipeFriction.Number<Real>(3020, 0.001));
        Is(64 + (0.15625 * (turbulent(2530) - 64)), PipeFriction.Number<Real>(2530, 0.001));
        Is(0.04, PipeFriction.Factor<Real>(64, 1600));
    }

    /// <summary>The Colebrook-White equation itself: 1/√f = −2 log₁₀(k/3.7 + 2.51/(Re √f)).</summary>
    [Theory]
    [InlineData(4000, 0)]
    [InlineData(1e5, 1e-4)]
    [InlineData(1e7, 0.05)]
    public void ColebrookWhite_PutIntoItsEquation(double reynolds, double roughness)
    {
        double root = Math.Sqrt(ColebrookWhite.Friction<Real>(reynolds, roughness));
        Assert.Equal(-2 * Math.Log10((roughness / 3.7) + (2.51 / (reynolds * root))), 1 / root, 1e-9);
    }

    /// <summary>Without the Reynolds term the same equation gives f = 1/(2 log₁₀(3.7/k))²: 0.01 gives 0.0379.</summary>
    [Fact]
    public void ColebrookWhite_FullyRough() =>
        Is(1 / Math.Pow(2 * Math.Log10(370), 2), ColebrookWhite.FullyRough<Real>(0.01));

    [Fact]
    public void FilterLoss_OfAWornFilter() =>
        Is(2 * 8e3 * 0.5 * 1.2, FilterLoss.Loss<Real>(2, 8e3, 1e-4, 5e-4, 5e-5, 750, 8e-7));

    /// <summary>Half as much again of a liquid of 81 % of the density: 1.5 · 0.9; below the measured flow in proportion, above it with the square.</summary>
    [Fact]
    public void CheckValveLoss_BelowAndAboveItsMeasuredFlow()
    {
        Is(1.35, CheckValveLoss.Share<Real>(6e-5, 4e-5, 810, 1000));
        Is(8e3 + (12e3 * 0.5), CheckValveLoss.Loss<Real>(8e3, 20e3, 0.5));
        Is(8e3 + (12e3 * 2.25), CheckValveLoss.Loss<Real>(8e3, 20e3, 1.5));
    }

    [Fact]
    public void FittingLoss_OfAFixedAndAProportionalPart()
    {
        // Thirty bores at the fully rough factor of 0.04572 mm in 22.86 mm, roughness 0.002.
        double factor = 1 / Math.Pow(2 * Math.Log10(1850), 2);
        Is(0.5 + (30 * factor), FittingLoss.Coefficient<Real>(0.5, 30, 0.02286));
    }

    /// <summary>ISO 1585 and SAE J1349 at 95 kPa dry and 310 K.</summary>
    [Fact]
    public void PowerCorrectionFactor_OfAHotDay()
    {
        Is(1.07592293, PowerCorrectionFactor.Iso1585<Real>(95e3, 310));
        Is(1.07419860, PowerCorrectionFactor.SaeJ1349<Real>(95e3, 310));
        Is(1, PowerCorrectionFactor.SaeJ1349<Real>(99e3, 298));
    }

    [Fact]
    public void PumpDuty_OfReturnAndReserve()
    {
        Is(30, PumpDuty.Returned<Real>(130, 100));
        Is(0, PumpDuty.Returned<Real>(90, 100));
        Is(135, PumpDuty.Required<Real>(100, 0.15, 20));
        Is(100, PumpDuty.Injectable<Real>(135, 0.15, 20));
        Is(0, PumpDuty.Injectable<Real>(10, 0.15, 20));
    }

    [Fact]
    public void SurgeTankVolume_OfACornerAndAStraight()
    {
        // 180 L/h pumped and 108 back, 72 L/h of 1.2 L: 60 s; 108 L/h lifted leave 36 L/h to refill it: 120 s.
        Is(20, SurgeTankVolume.NetDraw<Real>(50, 30));
        Is(60, SurgeTankVolume.TimeToEmpty<Real>(1200, 20));
        Is(120, SurgeTankVolume.TimeToRefill<Real>(1200, 30, 20));
        Is(1000, SurgeTankVolume.After<Real>(1200, 1200, 0, 20, 10));
        Is(1100, SurgeTankVolume.After<Real>(1000, 1200, 30, 20, 10));
        Is(1200, SurgeTankVolume.After<Real>(1000, 1200, 30, 20, 21));
        Is(0, SurgeTankVolume.After<Real>(1200, 1200, 0, 20, 61));
    }

    [Fact]
    public void PumpHeat_OfVoltsAmperesAndFlow()
    {
        // 13.5 V · 8 A less the work on 50 mL/s raised by 400 kPa.
        Is(108, PumpHeat.Electrical<Real>(13.5, 8));
        // A quarter of the flow returns, and brings a quarter of the power back as heat.
        Is(27, PumpHeat.ToTank<Real>(108, 1.5e-5, 6e-5));
        Is(0, PumpHeat.ToTank<Real>(108, 0, 6e-5));
    }

    [Fact]
    public void PumpScaling_ByTheAffinityLaws()
    {
        Is(0.8, PumpScaling.SpeedRatio<Real>(12, 15));

        // 15 V of which half is lost leave 7.5 V of back-EMF; of 12 V the same 7.5 V are lost, which leaves 4.5 V.
        Is(0.6, PumpMotor.SpeedRatio<Real>(12, 15, 0.5));
        Is(0.8, PumpMotor.SpeedRatio<Real>(12, 15, 0));
        Is(500, PumpScaling.MeasuredPressure<Real>(320, 0.8));
        Is(320, PumpScaling.Pressure<Real>(500, 0.8));
        Is(160, PumpScaling.Flow<Real>(200, 0.8));
        Is(6.4, PumpScaling.Current<Real>(10, 0.8));
    }

    [Fact]
    public void PumpMotor_ByItsBackEmf()
    {
        // 15 V less 3 V in the winding turn it at 1; 11 V less 2 V at 9/12. With the same loss at both it is the ratio of what is left.
        Is(0.75, PumpMotor.SpeedRatioByEmf<Real>(11, 2, 15, 3));
        Is(0.6, PumpMotor.SpeedRatioByEmf<Real>(12, 7.5, 15, 7.5));
    }

    [Fact]
    public void DisplacementPumpFlow_LosesTheSameAtEveryRise()
    {
        // Free, 12 V of back-EMF displace 60; 3 V less displace 15 less, whatever leaks: 60 → 45, 40 → 25, 10 → none.
        Is(45, DisplacementPumpFlow.AtVoltage<Real>(60, 60, 10, 13, 1));
        Is(25, DisplacementPumpFlow.AtVoltage<Real>(40, 60, 10, 13, 1));
        Is(0, DisplacementPumpFlow.AtVoltage<Real>(10, 60, 10, 13, 1));
    }

    [Fact]
    public void RailPressure_OfARisingRate()
    {
        Is(500, RailPressure.Set<Real>(300, 1, 5, 50, 900, 80));
        Is(450, RailPressure.Set<Real>(300, 1, 5, 50, 450, 80));
        Is(240, RailPressure.Set<Real>(300, 1, 5, 50, 900, -60));
        Is(480, RailPressure.InSeries<Real>(380, 480));
        Is(300, RailPressure.Differential<Real>(360, 95, 155));
    }

    [Fact]
    public void RailPressure_OfARegulatorWithFlow()
    {
        Is(12, RailPressure.FlowRise<Real>(3, 10, 6));
        Is(-12, RailPressure.FlowRise<Real>(3, 6, 10));
        Is(306, RailPressure.Held<Real>(300, 8, -0.1, 20));
    }

    [Fact]
    public void Reserve_OfAQuarterMore() => Is(0.25, Reserve.Of<Real>(125, 100));

    [Fact]
    public void RoundWire_OfTwoMillimetres()
    {
        Is(3.14159265e-6, RoundWire.Area<Real>(2e-3));
        Is(1.95441005e-3, RoundWire.Diameter<Real>(3e-6));
    }

    /// <summary>ISO 2533, standard atmosphere at 1,000 m: 281.65 K, 89,874.6 Pa, 1.11164 kg/m³.</summary>
    [Fact]
    public void StandardAir_AtAThousandMetres()
    {
        Is(281.65, StandardAir.Temperature<Real>(1000));
        Is(89_874.563, StandardAir.Pressure<Real>(1000));
        Assert.Equal(1.11164, StandardAir.Density<Real>(89_874.563, 281.65), 1e-5);
    }

    [Fact]
    public void Suction_OfAPumpsInlet()
    {
        Is(94, Suction.InletPressure<Real>(95, 1, 2));
        Is(40, Suction.NetPositive<Real>(94, 54));
    }

    /// <summary>
    /// US EPA, AP-42, chapter 7.1, figure 7.1-13b, slope 3 of the distillation curve, Reid pressure 9 psi.
    /// In psi and degrees Rankine its table has A 11.756 and B 5,315.1 (from memory): here plus ln 6894.757 and over 1.8.
    /// </summary>
    [Fact]
    public void VapourPressure_OfPetrol()
    {
        Real reid = 9 * 6894.757293168;
        Is(20.5947518, VapourPressure.PetrolIntercept(reid));
        Is(2952.80993, VapourPressure.PetrolSlope(reid));
        Is(3100.65940, VapourPressure.Antoine<Real>(23, 3800, -46, 300));
    }

    /// <summary>30 kg of fuel, 63 kJ/K, walls of 4 W/K: a time constant of 15,750 s; 60 W warm it by 15 K in the end.</summary>
    [Fact]
    public void LumpedHeat_OfATank()
    {
        Is(315, LumpedHeat.Steady<Real>(300, 60, 4));
        Is(15_750, LumpedHeat.TimeConstant<Real>(30, 2100, 4));
        Is(315 - (15 / Math.E), LumpedHeat.After<Real>(300, 315, 15_750, 15_750));
        Is(300 + (60 * 3600 / 63e3), LumpedHeat.Insulated<Real>(300, 60, 3600, 30, 2100));
        Is(15_750, LumpedHeat.TimeTo<Real>(300, 315, 315 - (15 / Math.E), 15_750));
        Is(3000 * Math.Log(30.0 / 18), LumpedHeat.EquivalentTime<Real>(30, 0.01, 1200));
        Is(1200, LumpedHeat.PassedTime<Real>(30, 0.01, 3000 * Math.Log(30.0 / 18)));
        Is(100 / 77.48, LumpedHeat.FlowRise<Real>(100, 745, 5e-5, 2080));
    }

    [Fact]
    public void PumpHeat_OfRailAndSurgeTank()
    {
        Is(42, PumpHeat.ToTankFromRail<Real>(108, 60, 1.5e-5, 6e-5));
        Is(25, PumpHeat.ToTankBySurgeTank<Real>(40, 60, 1e-5, 4e-5));
    }

    [Fact]
    public void VapourPressure_OfBlends()
    {
        Is(0, VapourPressure.AlcoholRise<Real>(0));
        Is(7_000, VapourPressure.AlcoholRise<Real>(0.01));
        Is(7_000, VapourPressure.AlcoholRise<Real>(0.39));
        Is(21_000, VapourPressure.AlcoholRise<Real>(0.4));
        Is(1 + 0.024 + 0.02 - 0.0007, VapourPressure.PetrolFactor<Real>(0.1));
        Is(46.321 * Math.Pow(85, -0.8422), VapourPressure.EthanolFactor<Real>(0.85));
        Is((1.2 * 0.7 * 60e3) + (3 * 0.3 * 16e3), VapourPressure.OfBlend<Real>(1.2, 3, 0.3, 60e3, 16e3));
    }

    [Fact]
    public void VoltageDrop_RoundTheLoop()
    {
        Is(0.05, VoltageDrop.Loop<Real>(0.03, 0.02));
        Is(0.4, VoltageDrop.Of<Real>(8, 0.05));
        Is(13.1, VoltageDrop.AtMotor<Real>(13.5, 8, 0.05));
        Is(3.2, VoltageDrop.Heat<Real>(8, 0.05));
    }

    [Fact]
    public void VoltageConversion_OfHundredWatts()
    {
        // 13 V through 0.1 Ω for 108 W at 90 %: 120 W in. At 12 V the feed passes 10 A: 120 W.
        Is(12, VoltageConversion.InputVoltage<Real>(13, 108, 0.9, 0.1));
        Is(10, VoltageConversion.InputCurrent<Real>(108, 0.9, 12));
        Is(13, VoltageConversion.InputVoltage<Real>(13, 108, 0.9, 0));

        // 60 A through 0.1 Ω take half of 12 V: 360 W arrive, 324 W go on. More does not pass, and half of the voltage is left.
        Is(324, VoltageConversion.MaximumPower<Real>(12, 0.9, 0.1));
        Is(6, VoltageConversion.InputVoltage<Real>(12, 400, 0.9, 0.1));
    }

    [Fact]
    public void WireResistance_OfThreeSquareMillimetres()
    {
        Is(5.86194e-3, WireResistance.PerLength<Real>(1.7241e-8, 0.02, 3e-6));
        Is(0.011572, WireResistance.AtTemperature<Real>(0.01, 0.00393, 60));
        Is(0.0234, WireResistance.Of<Real>(5.85e-3, 4));

        // 6 m at 12 A, of 0.5 V allowed 0.12 V in contacts.
        Is(3.33205011e-6, WireResistance.SmallestArea<Real>(1.7241e-8, 0.02, 6, 12, 0.5, 0.01));
    }

    [Fact]
    public void DemandChain_WithACoolantOfItsOwn()
    {
        // Out at 393.862995 K; 70 % of the way to iced water of 275 K.
        (Real outlet, Real charge) = DemandChain.Temperatures<Real>(
            new(2.4e-3, 2, 0.7, 0.7, 10e3, 0.5, 0.9, 1.16122626, 25e3, 100, 9e-8, 11.76, 275), 1.21901365, 300);
        Is(393.862995, outlet);
        Is(310.658899, charge);
    }

    [Fact]
    public void Combustion_OfPetrol()
    {
        // 86 % carbon by two atoms of oxygen each, 14 % hydrogen by half an atom each; air holds 23.14 %.
        Is(3.40213150, Combustion.OxygenDemand<Real>(0.86, 0.14, 0));
        Is(3.30213150, Combustion.OxygenDemand<Real>(0.86, 0.14, 0.1));
        Is(14.7023833, Combustion.StoichiometricAirFuelRatio<Real>(3.40213150));
        Is(0.25, Combustion.BrakeEfficiency<Real>(1e-7, 4e7));
        Is(1e-7, Combustion.BrakeSpecificFuelConsumption<Real>(0.25, 4e7));
    }

    [Fact]
    public void DemandChain_OfOnePoint()
    {
        DemandState<Real> state = DemandChain.Evaluate<Real>(
            new(2.4e-3, 2, 0.7, 0.7, 10e3, 0.5, 0.9, 1.16122626, 25e3, 100, 9e-8, 11.76, 0),
            new(100, 90e3, 100e3, 300, 0.9, 100e3));

        // The measured pull in air of 100 kPa and 300 K: 1.16122626 kg/m³.
        // 190 kPa and 10 kPa of cooler in front of 100 kPa: 2. Out at 393.862995 K, cooled by 70 % of the rise: 328.158899 K.
        Is(190e3, state.ManifoldAbsolute);
        Is(2, state.PressureRatio);
        Is(393.862995, state.OutletTemperature);
        Is(328.158899, state.ChargeTemperature);

        // 0.9 · 190 kPa/(287.05287 · 328.158899) · 2.4 L · 50; half of its warming from the belt at 90 %.
        Is(0.217836815, state.AirMassFlow);
        Is(11_412.5611, state.DrivePower);

        // 125 kW indicated · 1.9 · 300/328.158899 − 25 kW − 11.4125611 kW.
        Is(180_707.865, state.BrakePower);

        // The belt's power is burnt for: (180,707.865 + 11,412.5611) W · 9e-8 kg/J.
        Is(192_120.426, state.GrossPower);
        Is(0.0172908383, state.FromPower);
        Is(0.0185235387, state.FromAir);
    }

    /// <summary>In every width, of a curve of few pieces and of the same among many.</summary>
    private static void Columns(CubicPiece<Real>[] pieces, double last, (double X, double Y)[] points)
    {
        CubicPiece<Real>[] many =
        [
            .. Enumerable.Range(1, 16 - pieces.Length).Select(k => new CubicPiece<Real>(pieces[0].Start - (17 - k), pieces[0].Value, 0, 0, 0)), .. pieces,
        ];
        foreach (CubicPiece<Real>[] each in new[] { pieces, many })
        {
            CubicColumns columns = new(each);
            Each<Lanes>(columns);
            Each<FourLanes>(columns);
            Each<TwoLanes>(columns);
            Each<Real>(columns);
        }

        void Each<T>(CubicColumns columns)
            where T : struct, ILanes<T>, IReal<T>
        {
            foreach ((double x, double y) in points)
            {
                double[] into = new double[T.Count];
                columns.At<T>([.. Enumerable.Repeat(x, T.Count)], pieces[0].Start, last, 2, into);
                Assert.All(into, found => Is(2 * y, found));
            }
        }
    }

    private static void Is(double expected, double actual) =>
        Assert.True(
            Math.Abs(actual - expected) <= 1e-6 * Math.Abs(expected), $"{expected:R} by hand, {actual:R} by the equation");
}
