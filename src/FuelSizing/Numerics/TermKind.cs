namespace FuelSizing.Numerics;

/// <summary>What makes a term of a working.</summary>
internal enum TermKind
{
    /// <summary>A number that comes from outside or stands in the equation.</summary>
    Number,

    /// <summary>a + b.</summary>
    Sum,

    /// <summary>a − b.</summary>
    Difference,

    /// <summary>a · b.</summary>
    Product,

    /// <summary>a/b.</summary>
    Quotient,

    /// <summary>√a.</summary>
    Root,

    /// <summary>e to the power a.</summary>
    Exponential,

    /// <summary>ln a.</summary>
    Logarithm,

    /// <summary>The smaller of two.</summary>
    Minimum,

    /// <summary>The larger of two.</summary>
    Greatest,
}
