namespace FuelSizing.Points;

/// <summary>The addresses of pinned columns, which may cross to other threads as spans may not.</summary>
internal readonly unsafe struct PinnedColumns(
    double* speed,
    double* boost,
    double* lambda,
    double* volts,
    double* rail,
    double* differential,
    double* fuel,
    double* flow,
    double* pulse,
    double* duty,
    double* pump,
    double* reserve)
{
    /// <summary>Some of the points.</summary>
    /// <param name="from">The first.</param>
    /// <param name="count">How many.</param>
    public PointColumns Slice(int from, int count) => new(
        new()
        {
            Speed = Of(speed, from, count),
            Boost = Of(boost, from, count),
            Lambda = Of(lambda, from, count),
            SupplyVoltage = Of(volts, from, count),
        },
        new()
        {
            RailGauge = Of(rail, from, count),
            Differential = Of(differential, from, count),
            FuelFlow = Of(fuel, from, count),
            StaticFlow = Of(flow, from, count),
            Pulse = Of(pulse, from, count),
            DutyCycle = Of(duty, from, count),
            PumpReserve = Of(pump, from, count),
            InjectorReserve = Of(reserve, from, count),
        });

    // A column that was not given has no address.
    private static Span<double> Of(double* column, int from, int count) => column is null ? default : new(column + from, count);
}
