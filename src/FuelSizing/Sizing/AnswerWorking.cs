using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Workings;

namespace FuelSizing.Sizing;

/// <summary>The working of an answer that was found by a search: its figure put in, and what the system then gives at the limit that holds it there.</summary>
/// <remarks>See <see cref="LimitWorking"/>: left and right of the deciding limit, and the whole chain of equations that leads there.</remarks>
public static class AnswerWorking
{
    /// <summary>The residual of an inverse question's answer; where nothing is adequate, of what stands in the way.</summary>
    /// <typeparam name="T">What was asked for.</typeparam>
    /// <param name="answer">The answer.</param>
    /// <param name="style">Units and culture; metric if not given.</param>
    /// <returns>The lines; those that matter most are both sides and what is left between them.</returns>
    /// <exception cref="ArgumentNullException">There is no answer.</exception>
    /// <example>
    /// <code>
    /// SizingAnswer&lt;VolumeFlow&gt; answer = SystemSizing.MinimumStaticFlow(system, OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
    /// var working = AnswerWorking.Of(answer);
    /// </code>
    /// </example>
    public static Working Of<T>(SizingAnswer<T> answer, TextStyle? style = null)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(answer);
        TextStyle own = style ?? TextStyle.Metric;
        string point = answer.Binding.Point.In(own);
        return LimitWorking.Of(answer.Binding, own, answer.Figure is { } figure ? $"{point}, with the answer put in: {figure.In(own)}" : point);
    }

    /// <summary>The residual of a fitted rising-rate unit where lambda is furthest from its target.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="style">Units and culture; metric if not given.</param>
    /// <returns>The lines; those that matter most are both sides and the deviation that is left.</returns>
    /// <exception cref="ArgumentNullException">There is no fit.</exception>
    public static Working Of(RisingRateFit fit, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        TextStyle own = style ?? TextStyle.Metric;
        OperatingResult furthest = fit.Points.MaxBy(point => Math.Abs(RailResponse.DeviationOf(point.Result)))!.Result;
        return MixtureDeviation.Of(furthest, own, $"{furthest.Point.In(own)}, with the unit put in: {fit.Unit.Text.In(own)}");
    }
}
