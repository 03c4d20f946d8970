using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>From injector to injector: what matching does to mixture and duty cycle.</summary>
/// <remarks>
/// All injectors get one pulse, the one that the controller commands; each cylinder draws the same air. Then
/// λ_i = λ f̄/f_i with f the flow factors. Unequal dead times and unequal air are not calculated.
/// </remarks>
public sealed record InjectorSpread
{
    internal InjectorSpread(
        OutputSpread<double> leanest, OutputSpread<double> richest, OutputSpread<Ratio> maximumDutyCycle) =>
        (LeanestLambda, RichestLambda, MaximumDutyCycle) = (leanest, richest, maximumDutyCycle);

    /// <summary>
    /// Lambda of the leanest cylinder. No sample has one where the injectors cannot be shared out evenly over the
    /// cylinders, as with one injector before all of them.
    /// </summary>
    public OutputSpread<double> LeanestLambda { get; }

    /// <summary>Lambda of the richest cylinder.</summary>
    public OutputSpread<double> RichestLambda { get; }

    /// <summary>
    /// Duty cycle that the weakest injector would need to pass an even share of the fuel: d + (D − d) f̄/f, d dead time ÷
    /// available time.
    /// </summary>
    public OutputSpread<Ratio> MaximumDutyCycle { get; }

    /// <summary>Median lambda of the leanest and the richest cylinder.</summary>
    /// <returns>For instance <c>median lambda: leanest cylinder 0.838, richest 0.803</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"median lambda: leanest cylinder {LeanestLambda.Percentile(Ratio.FromPercent(50)):0.000}, richest {RichestLambda.Percentile(Ratio.FromPercent(50)):0.000}");
}
