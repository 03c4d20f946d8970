namespace FuelSizing.Numerics;

/// <summary>How a table reads between its points.</summary>
internal enum Interpolation
{
    /// <summary>By straight lines.</summary>
    Linear,

    /// <summary>By a smooth cubic that never overshoots its points.</summary>
    Monotone,
}
