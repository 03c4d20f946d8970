using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>The working of an injector's line on the bench: both sides of the two equations that its slope and time offset solve, and the weighing that is furthest from it.</summary>
/// <remarks>
/// The line with the least sum of squares, each reading by its weight, is the one for which the deviations sum to nothing, and to nothing again when each is multiplied by its pulse width. By means
/// over the readings: <c>m_a = ρ_b Q_b (t_a − t_z)</c> and <c>k_q = ρ_b Q_b (s_q − t_z t_a)</c>. Left stands what was weighed, right what the line gives.
/// </remarks>
public static class PulseWorking
{
    private const string Solved = "least squares; both sides of each of the two equations that it solves are equal";
    private const string Mean = "mean over the readings on the line, each by its weight: pulses of the reading, squared";

    /// <summary>The residual of a fitted line.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="style">Units and culture; metric if not given.</param>
    /// <returns>The lines; those that matter most are both sides of both equations, and the largest deviation of a pulse width on the line.</returns>
    /// <exception cref="ArgumentNullException">There is no fit.</exception>
    /// <example>
    /// <code>
    /// PulseTest test = PulseTest.Of(
    ///     "injector A", TestFluid.Heptane, Pressure.FromKilopascals(300), ElectricPotential.FromVolts(13.5), Mass.FromMilligrams(10), Ratio.FromPercent(0.3),
    ///     [.. new[] { (2.0, 6.03), (3.0, 12.16), (4.0, 18.32), (6.0, 30.58), (8.0, 42.85), (10.0, 55.12) }.Select(row =&gt; PulseReading.Of(Duration.FromMilliseconds(row.Item1), 1000, Mass.FromGrams(row.Item2)))]);
    /// var working = PulseWorking.Of(PulseFit.Of(test));
    /// </code>
    /// </example>
    public static Working Of(PulseFit fit, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Derivation to = new(style ?? TextStyle.Metric);
        PulseReading[] readings = [.. fit.Followed];
        double all = readings.Sum(Weight);
        double MeanOf(Func<PulseReading, double> figure) => readings.Sum(reading => Weight(reading) * figure(reading)) / all;
        Traced Given(string name, string symbol, double value, string unit, double scale, string shown) =>
            to.Given(name, symbol, value, unit, $"{to.Style.Number(value * scale, "N3")} {shown}", Mean);

        Density density = fit.Test.Fluid.Density;
        Traced fluid = to.Given("density of the test fluid", "ρ_b", density.KilogramsPerCubicMeter, "kg/m³", to.Style.Of(density), fit.Test.Fluid.Name);
        Traced width = Given("mean pulse width", "t_a", MeanOf(reading => reading.SecondsOpen), "s", 1e3, "ms");
        Traced mass = Given("mean mass of one pulse", "m_a", MeanOf(reading => reading.KilogramsEach), "kg", 1e6, "mg");
        Traced square = Given("mean square of the pulse width", "s_q", MeanOf(reading => reading.SecondsOpen * reading.SecondsOpen), "s²", 1e6, "ms²");
        Traced product = Given("mean product of pulse width and mass", "k_q", MeanOf(reading => reading.SecondsOpen * reading.KilogramsEach), "kg·s", 1e9, "mg·ms");

        Traced slope = to.Solved("slope of the line, as a flow", "Q_b", fit.Slope.CubicMetersPerSecond, "m³/s", to.Style.InjectorFlow(fit.Slope), Solved);
        Traced offset = to.Solved("time offset", "t_z", fit.TimeOffset.Seconds, "s", to.Style.Of(fit.TimeOffset), Solved);
        Both(1, "mean mass of a pulse", mass, fluid * slope * (width - offset), "kg", 1e6, "mg");
        Both(2, "mean product of width and mass", product, fluid * slope * (square - (offset * width)), "kg·s", 1e9, "mg·ms");

        // Measured as the fit does: a width that was weighed more often, or with more pulses, counts more.
        var (pulse, each, _) = fit.Widths
            .Where(one => one.Pulse.Seconds >= readings.Min(reading => reading.SecondsOpen))
            .MaxBy(one => Math.Abs(one.Each.Kilograms - LineAt(one.Pulse)) * Math.Sqrt(readings.Where(reading => reading.SecondsOpen.Equals(one.Pulse.Seconds)).Sum(Weight)));
        Traced at = to.Given("pulse width furthest from the line", "t_b", pulse.Seconds, "s", to.Style.Of(pulse), $"bench, {fit.Test.Name}");
        Traced weighed = to.Given("mass of one pulse at that width, weighed", "m_b", each.Kilograms, "kg", Milligrams(each.Kilograms), $"bench, {fit.Test.Name}");
        Traced line = to.Step("mass of one pulse by the line", "m_l", fluid * slope * (at - offset), "kg", Milligrams(LineAt(pulse)), "the fitted line");
        Traced off = (weighed / line) - 1;
        to.Step("deviation from the line", "e_b", off, "1", $"{to.Style.Number(100 * off.Value, "N2")} %", "definition");
        return to.Of($"the bench, {fit.Test.In(to.Style)}, {to.Style.Count(readings.Length)} on the line", "E_L,1", "E_R,1", "E_L,2", "E_R,2", "e_b");

        double LineAt(Duration at) => density.KilogramsPerCubicMeter * fit.Slope.CubicMetersPerSecond * (at.Seconds - fit.TimeOffset.Seconds);
        string Milligrams(double kilograms) => $"{to.Style.Number(1e6 * kilograms, "N3")} mg";
        void Both(int place, string name, Traced left, Traced right, string unit, double scale, string shown)
        {
            foreach ((string side, string symbol, Traced value) in new[] { ("left side, weighed", "E_L", left), ("right side, by the line", "E_R", right) })
            {
                to.Step($"{side}: {name}", Derivation.Marked(symbol, $"{place}"), value, unit, $"{to.Style.Number(value.Value * scale, "N3")} {shown}", "for the line with the least squares both sides are equal");
            }
        }
    }

    // One over the variance of a reading's mass of one pulse, but for the deviation of a weighing, which all have in common.
    private static double Weight(PulseReading reading) => (double)reading.Injections * reading.Injections;
}
