using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Which inputs an output's scatter comes from.</summary>
public sealed class SobolResult
{
    internal SobolResult(UncertainSystem system, SystemOutput output, Sampling sampling, SobolIndices indices)
    {
        (System, Output, Sampling) = (system, output, sampling);
        (Samples, CannotSay) = (indices.Samples, indices.CannotSay);
        Mean = output.Typed(indices.Mean);
        StandardDeviation = output.Typed(Math.Sqrt(indices.Variance));
        Inputs =
        [
            .. system.Inputs
                .Select((input, place) => new VarianceOfInput(input, indices, place))
                .OrderByDescending(share => share.Total.DecimalFractions)
                .ThenBy(share => share.Input.Quantity),
        ];
        MeasureFirst = indices.Variance > 0 ? Inputs[0].Input : null;
    }

    /// <summary>What was sampled.</summary>
    public UncertainSystem System { get; }

    /// <summary>What was looked at.</summary>
    public SystemOutput Output { get; }

    /// <summary>How many samples were asked for, the seed and the threads.</summary>
    public Sampling Sampling { get; }

    /// <summary>Samples done of each set.</summary>
    public int Samples { get; }

    /// <summary>False if the run was stopped: the samples done are then the first ones of the whole run.</summary>
    public bool IsComplete => Samples == Sampling.Samples;

    /// <summary>Samples in which the output has no value in one set or another; the indices are of the others alone.</summary>
    public int CannotSay { get; }

    /// <summary>Mean of the output; none without a known sample.</summary>
    public IQuantity? Mean { get; }

    /// <summary>Standard deviation of the output; none without a known sample.</summary>
    public IQuantity? StandardDeviation { get; }

    /// <summary>The inputs, the largest total index first. All indices are zero where the output does not vary.</summary>
    public IReadOnlyList<VarianceOfInput> Inputs { get; }

    /// <summary>The input to measure first: the one of the largest total index; none where the output does not vary.</summary>
    public UncertainInput? MeasureFirst { get; }

    /// <summary>The output, and the input to measure first.</summary>
    /// <returns>For instance <c>duty cycle: 64 samples; measure first: injector flow</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Output.Name}: {Samples} samples; measure first: {MeasureFirst?.Name ?? "cannot say"}");
}
