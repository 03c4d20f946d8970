namespace FuelSizing.Systems;

/// <summary>Points and where their results go.</summary>
internal readonly ref struct PointColumns(PointInputs inputs, PointOutputs outputs)
{
    /// <summary>The points.</summary>
    public readonly PointInputs Inputs = inputs;

    /// <summary>Where their results go.</summary>
    public readonly PointOutputs Outputs = outputs;
}
