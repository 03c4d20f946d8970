namespace FuelSizing.Findings;

/// <summary>How a regulator was seen to behave.</summary>
public enum RegulatorBehaviour
{
    /// <summary>The rail does not follow the manifold.</summary>
    Fixed,

    /// <summary>The rail follows the manifold one for one.</summary>
    ManifoldReferenced,

    /// <summary>Over an onset the rail rises faster than the manifold.</summary>
    RisingRate,

    /// <summary>The rail follows the manifold at another rate than one for one, with no onset in the range run.</summary>
    Proportional,
}
