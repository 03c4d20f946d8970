namespace FuelSizing.Points;

/// <summary>Points and where their results go.</summary>
internal readonly ref struct PointColumns(PointInputs inputs, PointOutputs outputs)
{
    /// <summary>The points.</summary>
    public readonly PointInputs Inputs = inputs;

    /// <summary>Where their results go.</summary>
    public readonly PointOutputs Outputs = outputs;

    /// <summary>Some of the points.</summary>
    /// <param name="from">The first.</param>
    /// <param name="count">How many.</param>
    public PointColumns Slice(int from, int count) => new(
        new()
        {
            Speed = Part(Inputs.Speed, from, count),
            Boost = Part(Inputs.Boost, from, count),
            Lambda = Part(Inputs.Lambda, from, count),
            SupplyVoltage = Part(Inputs.SupplyVoltage, from, count),
        },
        new()
        {
            RailGauge = Part(Outputs.RailGauge, from, count),
            Differential = Part(Outputs.Differential, from, count),
            FuelFlow = Part(Outputs.FuelFlow, from, count),
            StaticFlow = Part(Outputs.StaticFlow, from, count),
            Pulse = Part(Outputs.Pulse, from, count),
            DutyCycle = Part(Outputs.DutyCycle, from, count),
            PumpReserve = Part(Outputs.PumpReserve, from, count),
            InjectorReserve = Part(Outputs.InjectorReserve, from, count),
        });

    private static Span<double> Part(Span<double> column, int from, int count) =>
        column.IsEmpty ? column : column.Slice(from, count);

    private static ReadOnlySpan<double> Part(ReadOnlySpan<double> column, int from, int count) =>
        column.IsEmpty ? column : column.Slice(from, count);
}
