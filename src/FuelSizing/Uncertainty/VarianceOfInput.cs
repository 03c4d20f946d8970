using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How much of an output's variance comes from one input.</summary>
public sealed record VarianceOfInput
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

    /// <summary>The finding in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Input.Name}: {Quantities.Readable.Of(Total)} of the variance, {Quantities.Readable.Of(FirstOrder)} by itself";
}
