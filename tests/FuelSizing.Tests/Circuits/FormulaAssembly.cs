using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>Pumps given by formulas, one for each voltage and reading of their data, that count how often they are made to run at a voltage.</summary>
/// <param name="Of">The pumps at a voltage, by one reading.</param>
/// <param name="CoversVoltage">True if the voltage is said to be a measured one, so that the least that is known is the estimate.</param>
/// <param name="EndsOpen">True if a curve is said to end with flow left, so that the most that is known is not the estimate.</param>
internal sealed record FormulaAssembly(Func<double, PumpReading, RunningPumps> Of, bool CoversVoltage = true, bool EndsOpen = false) : PumpAssembly
{
    private static readonly Pump _any = Pump.From(Wren.Pump);

    /// <inheritdoc/>
    public override string Name => "pumps by formula";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [];

    /// <summary>How often they were made to run.</summary>
    public int Made { get; private set; }

    /// <inheritdoc/>
    internal override IEnumerable<SwitchedPump> Switches => [];

    /// <inheritdoc/>
    internal override bool MayStop => false;

    /// <inheritdoc/>
    internal override bool HasOpenEnd => EndsOpen;

    /// <summary>The same pumps at every voltage, by every reading.</summary>
    /// <param name="pumps">Those.</param>
    public static FormulaAssembly Always(RunningPumps pumps) => new((_, _) => pumps);

    /// <inheritdoc/>
    internal override bool IsMeasuredAt(double supply) => CoversVoltage;

    /// <inheritdoc/>
    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading)
    {
        Made++;
        return Of(volts.Of(_any), reading);
    }
}
