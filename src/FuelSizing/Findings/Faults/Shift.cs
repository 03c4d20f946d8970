using System.Runtime.CompilerServices;

namespace FuelSizing.Findings;

/// <summary>How far each quantity is off, in SI.</summary>
[InlineArray(RunModel.Quantities)]
internal struct Shift
{
    private double _first;

    /// <summary>How far one is off.</summary>
    public readonly double Of(RunQuantity quantity) => this[(int)quantity];
}
