using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Systems;
using FuelSizing.Tests.Sources;
using FuelSizing.Uncertainty;
using MathNet.Numerics.Distributions;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Mean and spread against closed forms, within a stated number of standard errors.</summary>
public class ClosedFormTests
{
    private const int Samples = 100_000;
    private const int Systems = 20_000;

    /// <summary>Four: a right estimate is off by more once in 16,000.</summary>
    private const double Errors = 4;

    /// <summary>E[XY] = E[X] E[Y]; V[XY] = E[X²] E[Y²] − E[X]² E[Y]², for independent X and Y.</summary>
    [Fact]
    public void ProductOfNormals_HasTheProductsMeanAndVariance()
    {
        // Eight standard deviations cut off nothing that 10⁵ samples could show.
        OutputSpread<double> product = Spread((x, y) => x * y, (10, 1), (3, 0.5));
        Agrees(30, (double)product.Mean!, (double)product.StandardErrorOfMean!);
        double variance = (101.0 * 9.25) - 900;
        AgreesOnSpread(Math.Sqrt(variance), product, kurtosis: 4);
    }

    /// <summary>V[aX + bY + c] = a² V[X] + b² V[Y]: what linear propagation gives is exact here.</summary>
    [Fact]
    public void SumOfNormals_HasTheLinearlyPropagatedSpread()
    {
        OutputSpread<double> sum = Spread((x, y) => (2 * x) - (5 * y) + 1, (10, 1), (3, 0.5));
        Agrees(6, (double)sum.Mean!, (double)sum.StandardErrorOfMean!);
        AgreesOnSpread(Math.Sqrt(4 + 6.25), sum, kurtosis: 3);

        // A normal's percentiles; standard error √(p (1 − p)/n)/density.
        foreach (double z in new[] { -1.6448536269514722, 0, 1.6448536269514722 })
        {
            double p = Normal.CDF(0, 1, z);
            double error = Math.Sqrt(p * (1 - p) / Samples) / Normal.PDF(0, 1, z) * Math.Sqrt(10.25);
            Agrees(6 + (z * Math.Sqrt(10.25)), (double)sum.Percentile(Fraction(p))!, error);
        }
    }

    /// <summary>
    /// A quotient of normals has no mean, since the divisor comes near zero. Where the divisor is cut off and its spread is
    /// small, 1/Y follows its series: E[1/Y] = (1 + v² + 3 v⁴ + 15 v⁶…)/μ, E[1/Y²] = (1 + 3 v² + 15 v⁴ + 105 v⁶…)/μ²,
    /// v = σ/μ; the terms left out are under 10⁻⁸ at v = 0.03.
    /// </summary>
    [Fact]
    public void QuotientOfNormals_HasTheSeriesMeanAndSpread()
    {
        const double V = 0.03;
        OutputSpread<double> quotient = Spread((x, y) => x / y, (10, 0.4), (2, 2 * V));
        double inverse = (1 + (V * V) + (3 * Math.Pow(V, 4)) + (15 * Math.Pow(V, 6))) / 2;
        double inverseSquare = (1 + (3 * V * V) + (15 * Math.Pow(V, 4)) + (105 * Math.Pow(V, 6))) / 4;
        Agrees(10 * inverse, (double)quotient.Mean!, (double)quotient.StandardErrorOfMean!);
        double variance = (100.16 * inverseSquare) - (100 * inverse * inverse);
        AgreesOnSpread(Math.Sqrt(variance), quotient, kurtosis: 4);

        // To first order v² = v_X² + v_Y², which is off by terms of v⁴ only: 0.3 % of the spread here.
        Assert.InRange(5 * Math.Sqrt((0.04 * 0.04) + (V * V)) / Math.Sqrt(variance), 0.995, 1.005);
    }

    /// <summary>
    /// On the basis of power, fuel = BSFC · P with P ∝ 1/(1 − loss): E[1/(1 − L)] = ln((1 − a)/(1 − b))/(b − a) and
    /// E[1/(1 − L)²] = 1/((1 − a)(1 − b)) for L uniform from a to b.
    /// </summary>
    [Fact]
    public void FuelFlow_FromPower_IsTheProductOfConsumptionAndCrankPower()
    {
        UncertainInput wide = UncertainInput.BrakeSpecificFuelConsumption(
            Distribution.Normal(Grams(315), Grams(10), Grams(235), Grams(395)));
        UncertainSystem system = UncertainSystem.Of(Car(DemandBasis.Power), Point, wide, Loss);
        MonteCarloResult result = system.MonteCarlo(Sampling.Of(Systems, 11, 2));
        double nominal = system.NominalResult.Demand.MassFlow.KilogramsPerSecond;
        (double first, double second) = InverseOfUniform(0.82, 0.88);
        double mean = nominal * 0.85 * first;
        double square = nominal * nominal * 0.85 * 0.85 * second * (1 + Math.Pow(10.0 / 315, 2));
        Agrees(mean, result.FuelFlow.Mean!.Value.KilogramsPerSecond, result.FuelFlow.StandardErrorOfMean!.Value.KilogramsPerSecond);
        Agrees(
            Math.Sqrt(square - (mean * mean)),
            result.FuelFlow.StandardDeviation!.Value.KilogramsPerSecond,
            result.FuelFlow.StandardDeviation!.Value.KilogramsPerSecond / Math.Sqrt(2 * Systems));
        Assert.Equal(0, result.FuelFlow.CannotSay);
    }

    /// <summary>
    /// On the basis of air, D − d = (D0 − d) x/f: air over injector flow. The quotient of two uniforms has the product's
    /// moments with E[1/f] = ln(b/a)/(b − a) and E[1/f²] = 1/(a b).
    /// </summary>
    [Fact]
    public void DutyCycle_OverDeadTime_IsTheQuotientOfAirAndInjectorFlow()
    {
        UncertainSystem system = UncertainSystem.Of(Car(DemandBasis.Air), Point, Air, Flow);
        MonteCarloResult result = system.MonteCarlo(Sampling.Of(Systems, 12, 2));
        OperatingResult nominal = system.NominalResult;
        double dead = nominal.DeadTime!.Value.Seconds / nominal.AvailableTime.Seconds;
        double open = nominal.DutyCycle!.Value.DecimalFractions - dead;
        (double first, double second) = InverseOfUniform(0.96, 1.04);
        double square = (1 + (0.1 * 0.1 / 12)) * second;
        Agrees(
            dead + (open * first),
            result.DutyCycle.Mean!.Value.DecimalFractions,
            result.DutyCycle.StandardErrorOfMean!.Value.DecimalFractions);
        Agrees(
            open * Math.Sqrt(square - (first * first)),
            result.DutyCycle.StandardDeviation!.Value.DecimalFractions,
            result.DutyCycle.StandardDeviation!.Value.DecimalFractions / Math.Sqrt(2 * Systems));
    }

    /// <summary>Rail = set + offset, so a rating is kept with the probability that the offset is under what is left.</summary>
    [Fact]
    public void Rating_UnderANormalRegulator_HoldsWithTheNormalsProbability()
    {
        UncertainInput offset = UncertainInput.RegulatorOffset(
            Distribution.Normal(Wren.Kpa(0), Wren.Kpa(10), Wren.Kpa(-80), Wren.Kpa(80)));
        SizingLimits limits = SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(372));
        UncertainSystem system = UncertainSystem.Of(Car(limits: limits), Point, offset);
        MonteCarloResult result = system.MonteCarlo(Sampling.Of(Systems, 13, 2));
        Chance rating = result.Parts.Single(part => part.Part == Part.PressureRating).Chance;
        Agrees(Normal.CDF(0, 1, 1.2), rating.Holds.DecimalFractions, rating.StandardError.DecimalFractions);
        Agrees(
            10, result.RailGauge.StandardDeviation!.Value.Kilopascals, 10 / Math.Sqrt(2 * Systems));
        Agrees(360, result.RailGauge.Mean!.Value.Kilopascals, 10 / Math.Sqrt(Systems));
        (Ratio minimum, Ratio maximum) = rating.Interval(Wren.Percent(99.99));
        Assert.InRange(Normal.CDF(0, 1, 1.2), minimum.DecimalFractions, maximum.DecimalFractions);
    }

    /// <summary>
    /// The expected range of four normals is 2.059 standard deviations: the factor d2 of control charts (ASTM Manual on
    /// Presentation of Data and Control Chart Analysis, MNL 7, table of control chart constants). To first order lambda
    /// scatters as the flow does.
    /// </summary>
    [Fact(DisplayName = "Range of lambda over four matched injectors; control-chart constant d2")]
    public void Lambda_OfFourMatchedInjectors_HasTheRangeOfControlCharts()
    {
        UncertainInput matching = UncertainInput.InjectorMatchingFactor(
            Distribution.Normal(Fraction(1), Fraction(0.002), Fraction(0.98), Fraction(1.02)));
        MonteCarloResult result = Of(matching).MonteCarlo(Sampling.Of(Systems, 14, 2));
        double range = (double)result.Injectors.LeanestLambda.Mean! - (double)result.Injectors.RichestLambda.Mean!;

        // d3 = 0.880 is the range's own standard deviation: standard error 0.880/√n, 0.3 % of 2.059.
        Published.Value(Works.AstmMnl7, 2.059, range / (0.82 * 0.002), within: 0.012);
    }

    private static (double First, double Second) InverseOfUniform(double a, double b) =>
        (Math.Log(b / a) / (b - a), 1 / (a * b));

    private static OutputSpread<double> Spread(
        Func<double, double, double> function, (double Mean, double Deviation) x, (double Mean, double Deviation) y)
    {
        Distribution<Ratio> Cut((double Mean, double Deviation) of) => Distribution.Normal(
            Fraction(of.Mean),
            Fraction(of.Deviation),
            Fraction(of.Mean - (8 * of.Deviation)),
            Fraction(of.Mean + (8 * of.Deviation)));
        (Shape first, Shape second) = (Cut(x).Shape, Cut(y).Shape);
        double[] values = new double[Samples];
        SampleBlocks.Run(
            Sampling.Of(Samples, 5, 2),
            sample =>
            {
                double[] point = new double[2];
                CubeSample.Draw(5, sample, 0, [1, 2], point);
                values[sample] = function(first.ValueAt(point[0]), second.ValueAt(point[1]));
            },
            null,
            default);
        return new(values, value => value);
    }

    private static void Agrees(double expected, double actual, double error) =>
        Assert.InRange(actual, expected - (Errors * error), expected + (Errors * error));

    /// <summary>Standard error of a standard deviation: s √((κ − 1)/(4 n)), κ the kurtosis or a bound to it.</summary>
    private static void AgreesOnSpread(double expected, OutputSpread<double> actual, double kurtosis) =>
        Agrees(
            expected,
            (double)actual.StandardDeviation!,
            expected * Math.Sqrt((kurtosis - 1) / (4 * Samples)));
}
