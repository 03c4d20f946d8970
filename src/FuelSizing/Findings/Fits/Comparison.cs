namespace FuelSizing.Findings;

/// <summary>What is compared at a point of a run.</summary>
internal enum Comparison
{
    /// <summary>Rail pressure against what regulator and pump give.</summary>
    Rail,

    /// <summary>Fuel by the flow meter against fuel by the injectors.</summary>
    Flow,

    /// <summary>Lambda against the air drawn and the fuel.</summary>
    Air,

    /// <summary>Power against BSFC and the fuel.</summary>
    Power,
}
