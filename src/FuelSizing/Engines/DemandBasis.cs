namespace FuelSizing.Engines;

/// <summary>Which of the two reckonings of fuel demand the parts are sized for.</summary>
public enum DemandBasis
{
    /// <summary>The larger of the two at each point: the cautious choice.</summary>
    Larger = 0,

    /// <summary>Air by speed-density ÷ (lambda × stoichiometric ratio).</summary>
    Air = 1,

    /// <summary>Power × BSFC.</summary>
    Power = 2,
}
