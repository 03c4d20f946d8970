using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How much of an output's variance comes from one input.</summary>
public sealed record VarianceOfInput : IReadable
{
    internal VarianceOfInput(UncertainInput input, SobolIndices indices, int place)
    {
        Input = input;
        FirstOrder = Ratio.FromDecimalFractions(indices.FirstOrder[place]);
        FirstOrderStandardError = Ratio.FromDecimalFractions(indices.FirstOrderError[place]);
        Total = Ratio.FromDecimalFractions(indices.Total[place]);
        TotalStandardError = Ratio.FromDecimalFractions(indices.TotalError[place]);
    }

    /// <summary>Which input.</summary>
    public UncertainInput Input { get; }

    /// <summary>First-order index: the share of variance that would go if the input were known exactly.</summary>
    public Ratio FirstOrder { get; }

    /// <summary>Its standard error, by the delta method. The estimate may be a few of these under zero or over one.</summary>
    public Ratio FirstOrderStandardError { get; }

    /// <summary>Total index: the share of variance that would stay if all others were known exactly.</summary>
    public Ratio Total { get; }

    /// <summary>Its standard error, by the delta method.</summary>
    public Ratio TotalStandardError { get; }

    /// <summary>The range in which the first-order index lies with some confidence: index ± z · standard error.</summary>
    /// <param name="confidence">50 to 99.99 %; 95 % is usual.</param>
    /// <returns>Lower and upper end; the lower may be under zero, as the estimate may.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public (Ratio Minimum, Ratio Maximum) FirstOrderInterval(Ratio confidence) =>
        Around(FirstOrder, FirstOrderStandardError, Confidence.Deviations(confidence, nameof(confidence)));

    /// <summary>The range in which the total index lies with some confidence: index ± z · standard error.</summary>
    /// <param name="confidence">50 to 99.99 %; 95 % is usual.</param>
    /// <returns>Lower and upper end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public (Ratio Minimum, Ratio Maximum) TotalInterval(Ratio confidence) =>
        Around(Total, TotalStandardError, Confidence.Deviations(confidence, nameof(confidence)));

    /// <summary>The finding in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "variance.of-input", $"{Input.Name}: total-order index {Total}, first-order index {FirstOrder}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    private static (Ratio Minimum, Ratio Maximum) Around(Ratio index, Ratio standardError, double deviations)
    {
        double half = deviations * standardError.DecimalFractions;
        double middle = index.DecimalFractions;
        return (Ratio.FromDecimalFractions(middle - half), Ratio.FromDecimalFractions(middle + half));
    }
}
