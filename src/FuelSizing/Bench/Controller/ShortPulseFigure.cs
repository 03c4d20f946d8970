using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// What is to be added to a pulse shorter than the straight line of an injector reaches, so that the injector delivers what the line would.
/// <para><c>t_x = t_o + m/(ρ Q)</c>, added: <c>t − t_x</c></para>
/// </summary>
/// <remarks>
/// <para><c>t</c> (s): the pulse that was weighed; <c>m</c> (kg): what it delivered; <c>t_x</c> (s): the pulse that a controller calculates for that much by dead time and slope;
/// <c>t_o</c> (s): time offset, the dead time; <c>ρ Q</c> (kg/s): slope. Each row is a width that was weighed, so nothing is interpolated.</para>
/// <para>The interval is that of the weighings alone, as time of the line: a correction belongs to the dead time and the flow that are typed with it, and their own intervals stand with them.</para>
/// </remarks>
public sealed class ShortPulseFigure : IReadable
{
    private const double Confidence = 0.95;

    private ShortPulseFigure(PulseFit fit, Duration commanded, double calculated, Statement basis, double? interval = null)
    {
        (Differential, Voltage, Commanded, Basis) = (fit.Test.Differential, fit.Test.Voltage, commanded, basis);
        Calculated = Duration.FromSeconds(calculated);
        OpenTime = Calculated - fit.TimeOffset;
        if (interval is { } half)
        {
            double added = commanded.Seconds - calculated;
            (Added, Minimum, Maximum) = (Duration.FromSeconds(added), Duration.FromSeconds(added - half), Duration.FromSeconds(added + half));
            Factor = commanded > fit.TimeOffset ? Ratio.FromDecimalFractions((commanded - fit.TimeOffset) / OpenTime) : null;
        }
    }

    /// <summary>Across the injector.</summary>
    public Pressure Differential { get; }

    /// <summary>At the injector's driver.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>The pulse that a controller calculates by dead time and flow, dead time included.</summary>
    public Duration Calculated { get; }

    /// <summary>The same without the dead time.</summary>
    public Duration OpenTime { get; }

    /// <summary>The pulse that was weighed and has to be commanded instead.</summary>
    public Duration Commanded { get; }

    /// <summary>What is to be added to the calculated pulse, less than nothing where it delivers more than the line; none where there is no correction.</summary>
    public Duration? Added { get; }

    /// <summary>Lower end of its interval of 95 %, by the weighings of this width.</summary>
    public Duration? Minimum { get; }

    /// <summary>Upper end.</summary>
    public Duration? Maximum { get; }

    /// <summary>What the calculated open time is to be multiplied by instead; none where no factor does it.</summary>
    public Ratio? Factor { get; }

    /// <summary>Where the figure and its interval come from, or why there is none.</summary>
    public Statement Basis { get; }

    /// <summary>The correction, as a code with its figures.</summary>
    public Statement Text => (Added, Minimum, Maximum) is ({ } added, { } low, { } high)
        ? Statement.Of(
            "controller.short-pulse",
            $"to {Calculated.Milliseconds:0.000} ms add {added.Milliseconds:0.000} ms ({low.Milliseconds:0.000} ms to {high.Milliseconds:0.000} ms) at {Voltage} and {Differential}: {Basis}")
        : Statement.Of("controller.short-pulse-none", $"no correction at {Commanded.Milliseconds:0.000} ms, {Voltage} and {Differential}: {Basis}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The correction.</summary>
    /// <returns>For instance <c>to 1.372 ms add 0.028 ms (0.026 ms to 0.030 ms) at 13.5 V and 300 kPa: the bench, 95 %</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>The shortest width that the line goes through, s.</summary>
    internal static double ShortestOnLine(PulseFit fit) => fit.Test.Readings.Select(reading => reading.Pulse.Seconds).OrderDescending().ElementAt(fit.OnLine - 1);

    /// <summary>The corrections of a fit, pulses rising: one for each width that is shorter than its line goes through.</summary>
    internal static IEnumerable<ShortPulseFigure> Of(PulseFit fit)
    {
        double shortest = ShortestOnLine(fit);
        double density = fit.Test.Fluid.Density.KilogramsPerCubicMeter;
        double slope = fit.Slope.CubicMetersPerSecond;
        double student = StudentT.InvCDF(0, 1, fit.OnLine - 2, (1 + Confidence) / 2);
        double longer = double.PositiveInfinity;
        List<ShortPulseFigure> figures = [];
        foreach ((Duration pulse, Mass each, _) in fit.Widths.Reverse())
        {
            double mean = each.Kilograms;
            if (pulse.Seconds < shortest)
            {
                double calculated = InjectorFlow.Pulse<Real>(fit.TimeOffset.Seconds, mean / density, (Real)1.0, (Real)1.0, slope).Value;
                PulseReading[] readings = [.. fit.Test.Readings.Where(reading => reading.Pulse.Seconds.Equals(pulse.Seconds))];
                double half = student * Math.Sqrt(readings.Length) * fit.Scatter.Kilograms / readings.Sum(reading => (double)reading.Injections) / (density * slope);
                figures.Add(mean <= 0
                    ? new(fit, pulse, calculated, Statement.Of("controller.none-nothing-delivered", $"it delivers nothing at that pulse"))
                    : mean >= longer
                    ? new(fit, pulse, calculated, Statement.Of("controller.none-not-rising", $"a longer pulse delivers no more, so that no one pulse belongs to that much fuel"))
                    : new(fit, pulse, calculated, Statement.Of("controller.from-bench", $"the bench, 95 %"), half));
            }

            longer = Math.Min(longer, mean);
        }

        return Enumerable.Reverse(figures);
    }
}
