using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Systems;

/// <summary>The working of a limit: the point solved with the figure put in, and both sides of the equation that the limit sets there.</summary>
/// <remarks>
/// An answer found by a search, what the injectors must flow or how much boost the system holds, has no equation of its own. It is shown by its residual, as the circuit's flow is: the
/// figure is put into the system, which is solved forward, and what is used (left) is compared with what is allowed (right). The equation of the margin is that of the check that decides.
/// </remarks>
public static class LimitWorking
{
    private const string Left = "E_L";
    private const string Right = "E_R";

    /// <summary>The working of a limit, of a sweep or of an answer, at the point where it was judged.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="style">Units and culture; metric if not given.</param>
    /// <returns>The lines; those that matter most are both sides and what is left between them.</returns>
    /// <exception cref="ArgumentNullException">There is no limit.</exception>
    public static Working Of(Limit limit, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return Of(limit, style ?? TextStyle.Metric, limit.Point.In(style ?? TextStyle.Metric));
    }

    /// <summary>The working of a part's limit at a solved point; so a remedy is shown once it is fitted.</summary>
    /// <param name="result">The system with the change, solved.</param>
    /// <param name="part">What was judged.</param>
    /// <param name="style">Units and culture; metric if not given.</param>
    /// <returns>The lines; those that matter most are both sides and what is left between them.</returns>
    /// <exception cref="ArgumentNullException">There is no result, or no part.</exception>
    /// <exception cref="ArgumentException">The part is not judged there.</exception>
    /// <example>
    /// <code>
    /// var working = LimitWorking.Of(system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6))), Part.Injectors);
    /// </code>
    /// </example>
    public static Working Of(OperatingResult result, Part part, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(part);
        Margin margin = result.Margins.FirstOrDefault(margin => margin.Part == part)
            ?? throw new ArgumentException($"Nothing was judged of {part.Name}: name one of {string.Join(", ", result.Margins.Select(margin => margin.Part.Name))}.", nameof(part));
        return Of(new Limit(margin), style);
    }

    /// <summary>The working of a limit.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="style">Units and culture.</param>
    /// <param name="subject">What it is the working of.</param>
    internal static Working Of(Limit limit, TextStyle style, string subject)
    {
        // A check of falling boost was judged by a state of its own.
        OperatingResult result = (OperatingResult)limit.Margin.Solved;
        int place = result.Margins.ToList().FindIndex(margin => margin.Part == limit.Part);
        return WorkingWriter.Of(result, result.Margins, style, subject, to => Sides(to, limit.Margin, Derivation.Marked("e_m", (place + 1).ToString(CultureInfo.InvariantCulture))));
    }

    private static string[] Sides(Derivation to, Margin margin, string symbol)
    {
        // One figure by another, less one; that of injectors is the fuel that they may pass by the fuel that they do, whatever the check shows.
        if (to.Find(symbol) is not { Equation: { } equation } || equation.Split(" − 1")[0].Split('/') is not [var over, var under])
        {
            return [symbol];
        }

        (string used, string allowed) = margin.Direction == LimitDirection.AtMost || over.StartsWith("Q_cap", StringComparison.Ordinal) ? (under, over) : (over, under);
        return Side(to, Left, used, $"left side, what is used of {margin.Part.Name}") && Side(to, Right, allowed, $"right side, the limit of {margin.Part.Name}")
            ? [used, allowed, Left, Right, symbol]
            : [symbol];
    }

    private static bool Side(Derivation to, string side, string symbol, string name)
    {
        if (to.Find(symbol) is not { Si: { } value, Unit: { } unit } line)
        {
            return false;
        }

        to.Step(name, side, Traced.Given(symbol, value), unit, line.Readable, "at the limit both sides are equal");
        return true;
    }
}
