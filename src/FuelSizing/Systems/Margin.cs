using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>How one part stands at one point.</summary>
public sealed record Margin
{
    private readonly OperatingResult _result;

    internal Margin(OperatingResult result, Check check) => (_result, Check) = (result, check);

    /// <summary>Which part.</summary>
    public Part Part => Check.Part;

    /// <summary>Whether its limit is kept.</summary>
    public Outcome Outcome => Check.Outcome;

    /// <summary>
    /// How much more the part could take, as a share of what it is asked for: +10 % means that the demand on it could grow
    /// by a tenth; negative means that it falls short. None where the data does not cover the point.
    /// </summary>
    public Ratio? Reserve => Check.Reserve is { } share ? Ratio.FromDecimalFractions(share) : null;

    /// <summary>What is asked of the part; none where it cannot be said.</summary>
    public IQuantity? Used => Finding.Used;

    /// <summary>Its limit; none where it cannot be said.</summary>
    public IQuantity? Allowed => Finding.Allowed;

    /// <summary>The finding in words, with units.</summary>
    public string Explanation => Finding.Text;

    internal Check Check { get; }

    // In words only when somebody reads them: a search looks at thousands of margins by their numbers alone.
    private MarginFinding Finding => MarginFinding.Of(_result, Check);

    /// <summary>Part and finding.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => $"{PartNames.Of(Part)}: {Explanation}";
}
