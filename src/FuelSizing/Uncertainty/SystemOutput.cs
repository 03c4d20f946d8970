using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>One number that a solved system gives, along a boost line at its worst place, of which one may ask what it depends on.</summary>
public sealed record SystemOutput
{
    private static readonly Identity<SystemOutput> _identity = new Identity<SystemOutput>()
        .Value(output => output.Name)
        .Value(output => output.Part);

    private readonly Func<SampledPoint, double> _read;
    private readonly bool _isLowWorst;
    private readonly Func<double, IQuantity> _typed;
    private readonly Func<FuelSystem, IQuantity?>? _limit;

    private SystemOutput(
        string name,
        Func<SampledPoint, double> read,
        Func<double, IQuantity> typed,
        Func<FuelSystem, IQuantity?>? limit = null,
        bool isLowWorst = false) =>
        (Name, _read, _typed, _limit, _isLowWorst) = (name, read, typed, limit, isLowWorst);

    /// <summary>Duty cycle of the common pulse.</summary>
    public static SystemOutput DutyCycle { get; } = new(
        "duty cycle",
        point => point.DutyCycle,
        value => Percent(value),
        system => Percent(system.Limits.DutyCycle.DecimalFractions));

    /// <summary>Fuel that the engine is to burn, by mass.</summary>
    public static SystemOutput FuelFlow { get; } = new(
        "fuel flow",
        point => point.FuelFlow,
        value => MassFlow.FromKilogramsPerSecond(value).ToUnit(UnitsNet.Units.MassFlowUnit.GramPerSecond));

    /// <summary>Gauge pressure in the rail.</summary>
    public static SystemOutput RailGauge { get; } = new(
        "rail pressure",
        point => point.RailGauge,
        value => Kilopascals(Pressure.FromPascals(value)),
        system => system.Limits.RailCeiling is { } ceiling ? Kilopascals(ceiling) : null);

    /// <summary>The tightest margin of all checks; none where a part cannot be judged.</summary>
    public static SystemOutput MinimumReserve { get; } =
        new("minimum margin", Minimum, value => Percent(value), _ => Percent(0), isLowWorst: true);

    /// <summary>Lambda of the leanest cylinder (<see cref="InjectorSpread.LeanestLambda"/>).</summary>
    public static SystemOutput LeanestLambda { get; } = new(
        "leanest lambda", point => point.LeanestLambda, value => Ratio.FromDecimalFractions(value));

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>For a part's reserve: the part.</summary>
    internal Part? Part { get; private init; }

    /// <summary>The reserve of one part (<see cref="Margin.Reserve"/>); none where it cannot be judged.</summary>
    /// <param name="part">A part that the system has.</param>
    /// <returns>The output.</returns>
    /// <exception cref="ArgumentNullException">There is no part.</exception>
    public static SystemOutput ReserveOf(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return new(
            $"margin of {part.Name}",
            point => Reserve(point, part),
            value => Percent(value),
            _ => Percent(0),
            isLowWorst: true)
        {
            Part = part,
        };
    }

    /// <summary>What the output is held to in a system: a reserve to no less than zero, the others to no more than this.</summary>
    /// <param name="system">The system.</param>
    /// <returns>The limit; none where the system sets none for it.</returns>
    /// <exception cref="ArgumentNullException">There is no system.</exception>
    public IQuantity? LimitIn(FuelSystem system)
    {
        ArgumentNullException.ThrowIfNull(system);
        return _limit?.Invoke(system);
    }

    /// <summary>The output's name.</summary>
    /// <returns>Its name.</returns>
    public override string ToString() => Name;

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SystemOutput? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The output in SI, at its worst place; not a number where it has no value in one place.</summary>
    internal double Of(in SampledSystem system) => _isLowWorst ? system.Minimum(_read) : system.Maximum(_read);

    internal IQuantity? Typed(double value) => double.IsNaN(value) ? null : _typed(value);

    private static Ratio Percent(double fraction) =>
        Ratio.FromDecimalFractions(fraction).ToUnit(UnitsNet.Units.RatioUnit.Percent);

    private static Pressure Kilopascals(Pressure value) => value.ToUnit(UnitsNet.Units.PressureUnit.Kilopascal);

    private static double Reserve(SampledPoint point, Part part)
    {
        for (int check = 0; check < point.Checks.Length; check++)
        {
            if (point.Checks[check].Part == part)
            {
                return CheckReading.MarginOf(point.Readings[check]) ?? double.NaN;
            }
        }

        return double.NaN;
    }

    private static double Minimum(SampledPoint point)
    {
        double minimum = double.PositiveInfinity;
        foreach (ref readonly CheckReading<Real> reading in point.Readings.AsSpan())
        {
            if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
            {
                return double.NaN;
            }

            minimum = Math.Min(minimum, CheckReading.MarginOf(reading) ?? double.PositiveInfinity);
        }

        return double.IsFinite(minimum) ? minimum : double.NaN;
    }
}
