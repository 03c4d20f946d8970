namespace FuelSizing.Lines;

/// <summary>How the fuel flows in a line.</summary>
public enum FlowRegime
{
    /// <summary>Not at all.</summary>
    Still,

    /// <summary>In smooth layers, Re up to 2040.</summary>
    Laminar,

    /// <summary>Now smooth, now turbulent, Re 2040 to 4000; the loss is a blend of the two, not a law.</summary>
    Transitional,

    /// <summary>Turbulent, Re of 4000 and more.</summary>
    Turbulent,
}
