using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// The static flow of an injector by what it passed in several times.
/// <para><c>V = Q_s t + V_0</c></para>
/// </summary>
/// <remarks>
/// <para><c>V</c> (m³): collected, a mass by the density of the test liquid; <c>Q_s</c> (m³/s): static flow; <c>t</c> (s): time by the clock; <c>V_0</c> (m³): what starting and stopping add to each
/// collection, found where one time is at least twice another, else taken as none: <see cref="IsStartAndStopFound"/> says which.</para>
/// <para>Intervals hold the truth in 95 of 100 tests: Student's t by the scatter of the readings, widened by the calibration that they share. Where starting and stopping were not
/// found, what they add to every collection alike is no part of it: the interval then holds for a bench that times by itself.</para>
/// <para>Range: readings of one injector, liquid and pressure. Elsewhere <see cref="At"/> carries them, by the square-root law.</para>
/// </remarks>
public sealed class StaticFlow : IReadable
{
    private const double Confidence = 0.95;

    private const double MinimumSpread = 2;

    private StaticFlow(StaticTest test, LinearFit fit, bool isStartAndStopFound)
    {
        (Test, IsStartAndStopFound) = (test, isStartAndStopFound);
        double flow = fit.Factors[0];
        double spread = Math.Sqrt(
            Math.Pow(fit.Student(Confidence) * fit.Deviation(0) / flow, 2) + Math.Pow(PooledMeans.StatedReach * test.Calibration.DecimalFractions, 2));
        Flow = VolumeFlow.FromCubicMetersPerSecond(flow);
        (Minimum, Maximum) = (Flow * Math.Max(0, 1 - spread), Flow * (1 + spread));
        Deviation = Ratio.FromDecimalFractions(spread / PooledMeans.StatedReach);
        StartAndStop = isStartAndStopFound ? Duration.FromSeconds(fit.Factors[1] / flow) : null;
        Outliers = [.. fit.Outliers()];
    }

    /// <summary>The test.</summary>
    public StaticTest Test { get; }

    /// <summary>Static flow at the test's differential pressure, by volume of its liquid.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public VolumeFlow Minimum { get; }

    /// <summary>Upper end.</summary>
    public VolumeFlow Maximum { get; }

    /// <summary>Its standard deviation as a share: that of a normal whose 95 % are as wide as the interval.</summary>
    public Ratio Deviation { get; }

    /// <summary>True where one time was at least twice another, so that what starting and stopping add dropped out.</summary>
    public bool IsStartAndStopFound { get; }

    /// <summary>How much longer it flowed in each collection than the clock said; none where that was not found.</summary>
    public Duration? StartAndStop { get; }

    /// <summary>Places in <see cref="StaticTest.Readings"/> of readings further off than chance brings one in a hundred tests.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Flow and interval, as a code with its figures.</summary>
    public Statement Text => IsStartAndStopFound
        ? Statement.Of("bench.static-flow", $"{Flow:injector-flow} ({Minimum:injector-flow} to {Maximum:injector-flow})")
        : Statement.Of(
            "bench.static-flow-one-time",
            $"{Flow:injector-flow} ({Minimum:injector-flow} to {Maximum:injector-flow}), if starting and stopping add nothing: collect for one time twice as long as another to see");

    /// <summary>Finds the flow.</summary>
    /// <param name="test">The readings.</param>
    /// <returns>The flow.</returns>
    /// <exception cref="ArgumentException">Longer times do not collect more.</exception>
    public static StaticFlow Of(StaticTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        double density = test.Fluid.Density.KilogramsPerCubicMeter;
        double[] volumes = [.. test.Readings.Select(reading => reading.CubicMetres(density))];
        double rough = volumes.Sum() / test.Readings.Sum(reading => reading.Seconds);
        double deviation = Math.Sqrt(Math.Pow(test.Deviation, 2) + Math.Pow(rough * test.Clock.Seconds, 2));
        bool isFound = test.Readings.Max(reading => reading.Seconds) >= MinimumSpread * test.Readings.Min(reading => reading.Seconds);
        LinearFit fit = LinearFit.Of(
            [.. test.Readings.Select(reading => isFound ? new[] { reading.Seconds, 1 } : [reading.Seconds])],
            volumes,
            [.. test.Readings.Select(_ => deviation)]);
        return fit.Factors[0] > 0
            ? new(test, fit, isFound)
            : throw new ArgumentException($"{nameof(test)}: longer times do not collect more. Check times and masses of {test.Name}.", nameof(test));
    }

    /// <summary>The flow on another liquid at another pressure: Q_s · √(Δp/Δp_r · ρ_r/ρ), the square-root law; the interval goes along.</summary>
    /// <param name="differential">Differential pressure there, 50 to 1,000 kPa.</param>
    /// <param name="density">Of the liquid there, 600 to 1,200 kg/m³.</param>
    /// <returns>Lower end of the interval, flow, upper end. Far from the pressure of the test the law itself may be off by some per cent: measure there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public (VolumeFlow Minimum, VolumeFlow Flow, VolumeFlow Maximum) At(Pressure differential, Density density)
    {
        Guard.Between(differential, PulseTest.MinimumDifferential, PulseTest.MaximumDifferential, "Give the pressure across the injector.", nameof(differential));
        Guard.Between(
            density, Density.FromKilogramsPerCubicMeter(600), Density.FromKilogramsPerCubicMeter(1200), "Give the liquid's density at its temperature.", nameof(density));
        return (Carried(Minimum), Carried(Flow), Carried(Maximum));

        VolumeFlow Carried(VolumeFlow flow) => VolumeFlow.FromCubicMetersPerSecond(InjectorFlow.Static<Real>(
            flow.CubicMetersPerSecond, Test.Differential.Pascals, Test.Fluid.Density.KilogramsPerCubicMeter, differential.Pascals, density.KilogramsPerCubicMeter).Value);
    }

    /// <summary>The measurement as an uncertain input of a system with such injectors: a factor on their flow, normal about what was measured.</summary>
    /// <param name="described">The injector as the system has it, whose flow the factor multiplies.</param>
    /// <returns>The input, cut off at four standard deviations.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The measured flow is not within half and one and a half of the described one, or known no better than that.</exception>
    public UncertainInput FactorOn(Injector described)
    {
        ArgumentNullException.ThrowIfNull(described);
        double there = described.StaticAt(Test.Differential.Pascals, Test.Fluid.Density.KilogramsPerCubicMeter);
        return UncertainInput.InjectorFlowFactor(MeasuredDistribution.Share(Flow.CubicMetersPerSecond / there, Deviation.DecimalFractions));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Flow and interval.</summary>
    /// <returns>For instance <c>461 mL/min (458 mL/min to 464 mL/min)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
