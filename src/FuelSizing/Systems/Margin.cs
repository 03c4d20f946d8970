using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>How one part stands at one point.</summary>
public sealed record Margin
{
    internal Margin(Part part, Outcome outcome, double? reserve, IQuantity? used, IQuantity? allowed, string explanation)
    {
        (Part, Outcome, Used, Allowed, Explanation) = (part, outcome, used, allowed, explanation);
        Reserve = reserve is { } share ? Ratio.FromDecimalFractions(share) : null;
    }

    /// <summary>Which part.</summary>
    public Part Part { get; }

    /// <summary>Whether its limit is kept.</summary>
    public Outcome Outcome { get; }

    /// <summary>
    /// How much more the part could take, as a share of what it is asked for: +10 % means that the demand on it could grow
    /// by a tenth; negative means that it falls short. None where the data does not cover the point.
    /// </summary>
    public Ratio? Reserve { get; }

    /// <summary>What is asked of the part; none where it cannot be said.</summary>
    public IQuantity? Used { get; }

    /// <summary>Its limit; none where it cannot be said.</summary>
    public IQuantity? Allowed { get; }

    /// <summary>The finding in words, with units.</summary>
    public string Explanation { get; }

    /// <summary>A margin that holds while its reserve is not negative, or where there is nothing to compare.</summary>
    internal static Margin Of(Part part, double? reserve, IQuantity? used, IQuantity? allowed, string holds, string fails) =>
        reserve is null or >= 0
            ? new(part, Outcome.Holds, reserve, used, allowed, holds)
            : new(part, Outcome.Fails, reserve, used, allowed, fails);

    /// <summary>Part and finding.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => $"{PartNames.Of(Part)}: {Explanation}";
}
