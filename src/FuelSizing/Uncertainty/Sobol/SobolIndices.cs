namespace FuelSizing.Uncertainty;

/// <summary>Variance-based indices of a function, one entry for each input.</summary>
internal sealed record SobolIndices
{
    /// <summary>Samples done of each set.</summary>
    public required int Samples { get; init; }

    /// <summary>Samples among them with no value in one set or another.</summary>
    public required int CannotSay { get; init; }

    /// <summary>Mean of the output.</summary>
    public required double Mean { get; init; }

    /// <summary>Variance of the output.</summary>
    public required double Variance { get; init; }

    /// <summary>First-order indices.</summary>
    public required double[] FirstOrder { get; init; }

    /// <summary>Their standard errors.</summary>
    public required double[] FirstOrderError { get; init; }

    /// <summary>Total indices.</summary>
    public required double[] Total { get; init; }

    /// <summary>Their standard errors.</summary>
    public required double[] TotalError { get; init; }
}
