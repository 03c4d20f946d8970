using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>A change that would mend a failing part.</summary>
public sealed record Remedy
{
    internal Remedy(Part part, IQuantity? needed, string text) => (Part, Needed, Text) = (part, needed, text);

    /// <summary>The part that it mends.</summary>
    public Part Part { get; }

    /// <summary>The figure that the part needs to have, if there is one.</summary>
    public IQuantity? Needed { get; }

    /// <summary>The change in words, with units.</summary>
    public string Text { get; }

    /// <summary>The change in words.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Text;
}
