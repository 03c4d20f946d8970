using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>A converter between a pump's feed and its motor: it gives the motor another voltage, and draws more current for it.</summary>
/// <remarks>
/// <para>The converter draws the motor's power ÷ its efficiency through the feed, so a higher voltage at the motor costs the wire twice: the motor
/// draws more, and the converter draws that at a lower voltage. Both are solved together with the pump.</para>
/// <para>At its current limit it is taken to lower its output until the motor draws no more than that; one that switches off instead leaves the engine without
/// fuel, so a check of its own fails either way. It is taken to hold its output down to any supply voltage: give the output that it holds at
/// your lowest.</para>
/// </remarks>
/// <example>
/// <code>
/// VoltageConverter converter = VoltageConverter.Holding(
///     "converter", ElectricPotential.FromVolts(16), Ratio.FromPercent(90), ElectricCurrent.FromAmperes(20));
/// Console.WriteLine(converter);   // converter: 16.0 V, 90.0 % efficient, up to 20.0 A
/// </code>
/// </example>
public sealed record VoltageConverter : IReadable
{
    private static readonly Identity<VoltageConverter> _identity = new Identity<VoltageConverter>()
        .Value(converter => converter.Name)
        .Number(converter => converter.Output?.Volts)
        .Number(converter => converter.Multiple)
        .Number(converter => converter.Efficiency.DecimalFractions)
        .Number(converter => converter.MaximumCurrent?.Amperes);

    private readonly double _efficiency;
    private readonly double _limit;

    private VoltageConverter(string name, ElectricPotential? output, double? multiple, Ratio efficiency, ElectricCurrent? maximumCurrent, string argument)
    {
        Name = Guard.Name(name, nameof(name));
        (Output, Multiple) = (output, multiple);
        Efficiency = Guard.Between(
            efficiency, Ratio.FromPercent(50), Ratio.FromPercent(100), "Give output power ÷ input power under load.", nameof(efficiency));
        MaximumCurrent = maximumCurrent is { } amperes
            ? Guard.Between(
                amperes, ElectricCurrent.FromAmperes(1), ElectricCurrent.FromAmperes(100), "Give the current at its output that it is rated for.", argument)
            : null;
        _efficiency = efficiency.DecimalFractions;
        _limit = maximumCurrent?.Amperes ?? double.PositiveInfinity;
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Voltage that it holds at the motor; none where it multiplies that at its input.</summary>
    public ElectricPotential? Output { get; }

    /// <summary>Output ÷ input voltage; none where it holds its output.</summary>
    public double? Multiple { get; }

    /// <summary>Output ÷ input power.</summary>
    public Ratio Efficiency { get; }

    /// <summary>Current at its output that it is rated for; none where it is not known.</summary>
    public ElectricCurrent? MaximumCurrent { get; }

    /// <summary>What it does, as a code with its figures.</summary>
    public Statement Text => (Output, MaximumCurrent) switch
    {
        ({ } volts, { } limit) => Statement.Of("converter.holding-limited", $"{Name}: {volts}, {Efficiency} efficient, up to {limit}"),
        ({ } volts, null) => Statement.Of("converter.holding", $"{Name}: {volts}, {Efficiency} efficient"),
        (null, { } limit) => Statement.Of("converter.multiple-limited", $"{Name}: {Multiple!.Value:0.###} times its input voltage, {Efficiency} efficient, up to {limit}"),
        _ => Statement.Of("converter.multiple", $"{Name}: {Multiple!.Value:0.###} times its input voltage, {Efficiency} efficient"),
    };

    /// <summary>A converter that holds a voltage.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="output">What it holds at the motor, 6 to 24 V.</param>
    /// <param name="efficiency">Output ÷ input power, 50 to 100 %.</param>
    /// <param name="maximumCurrent">At its output, as rated, 1 to 100 A; without it, whether it is large enough is not judged.</param>
    /// <returns>The converter.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static VoltageConverter Holding(string name, ElectricPotential output, Ratio efficiency, ElectricCurrent? maximumCurrent = null) => new(
        name,
        Guard.Between(
            output, ElectricPotential.FromVolts(6), ElectricPotential.FromVolts(24), "Give the voltage that it holds at the motor.", nameof(output)),
        null,
        efficiency,
        maximumCurrent,
        nameof(maximumCurrent));

    /// <summary>A converter that gives a multiple of the voltage at its input.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="multiple">Output ÷ input voltage, 0.3 to 3.</param>
    /// <param name="efficiency">Output ÷ input power, 50 to 100 %.</param>
    /// <param name="maximumCurrent">At its output, as rated, 1 to 100 A; without it, whether it is large enough is not judged.</param>
    /// <returns>The converter.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static VoltageConverter Times(string name, double multiple, Ratio efficiency, ElectricCurrent? maximumCurrent = null) => new(
        name,
        null,
        Guard.Number(multiple, 0.3, 3, "Give output ÷ input voltage.", nameof(multiple)),
        efficiency,
        maximumCurrent,
        nameof(maximumCurrent));

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Name, output, efficiency and limit.</summary>
    /// <returns>For instance <c>converter: 16.0 V, 90.0 % efficient, up to 20.0 A</c>.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(VoltageConverter? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>What it is rated for, A; infinite where that is not known.</summary>
    internal double LimitAmperes => _limit;

    /// <summary>The highest voltage that it gives, V: with nothing drawn.</summary>
    internal double Unloaded(double supply) => Output?.Volts ?? Multiple!.Value * supply;

    /// <summary>Voltage and current at its input, V and A, for what a motor draws.</summary>
    internal (double Voltage, double Current) InputOf(double supply, double loop, double volts, double amperes)
    {
        double power = volts * amperes;
        double input = VoltageConversion.InputVoltage<Real>(supply, power, _efficiency, loop);
        return (input, VoltageConversion.InputCurrent<Real>(power, _efficiency, input));
    }

    /// <summary>The most current that it gives at its full voltage: what it is rated for, or what its feed passes on, A.</summary>
    internal double MaximumAt(double supply, double loop) => Math.Min(_limit, MaximumPowerAt(supply, loop) / Unloaded(supply));

    private double MaximumPowerAt(double supply, double loop) =>
        loop > 0 ? VoltageConversion.MaximumPower<Real>(supply, _efficiency, loop).Value : double.PositiveInfinity;

    /// <summary>
    /// What it has to spare at a voltage of the motor, V: over nothing where it could give more, under nothing where it gives less.
    /// </summary>
    internal double SpareAt(double supply, double loop, double volts, double amperes)
    {
        double power = volts * amperes;
        double byPower = volts * ((MaximumPowerAt(supply, loop) / power) - 1);
        if (byPower < 0)
        {
            return byPower;
        }

        // Both limits count before they are reached too: a search comes to where one is met along a slope, not by halving to a jump.
        double input = VoltageConversion.InputVoltage<Real>(supply, power, _efficiency, loop);
        double byLimit = volts * ((_limit / amperes) - 1);
        return Math.Min((Output?.Volts ?? Multiple!.Value * input) - volts, Math.Min(byLimit, byPower));
    }

    /// <summary>The same for a motor whose current has slopes: how it changes with the motor's voltage, and with what else changes the current.</summary>
    /// <param name="supply">V.</param>
    /// <param name="loop">Ω.</param>
    /// <param name="volts">V.</param>
    /// <param name="amperes">A.</param>
    /// <param name="byVolts">How the current changes with the voltage, A/V.</param>
    /// <param name="byOther">How it changes with something else.</param>
    internal (double Spare, double ByVolts, double ByOther) SpareAt(double supply, double loop, double volts, double amperes, double byVolts, double byOther)
    {
        (double power, double powerByVolts, double powerByOther) = (volts * amperes, amperes + (volts * byVolts), volts * byOther);
        double most = MaximumPowerAt(supply, loop) / power;
        (double Spare, double ByVolts, double ByOther) byPower =
            (volts * (most - 1), most - 1 - (volts * most / power * powerByVolts), -volts * most / power * powerByOther);
        if (byPower.Spare < 0)
        {
            return byPower;
        }

        double limit = _limit / amperes;
        (double Spare, double ByVolts, double ByOther) least = (volts * (limit - 1), limit - 1 - (volts * limit / amperes * byVolts), -volts * limit / amperes * byOther);
        least = byPower.Spare < least.Spare ? byPower : least;
        double input = VoltageConversion.InputVoltage<Real>(supply, power, _efficiency, loop);
        double held = (Output?.Volts ?? Multiple!.Value * input) - volts;

        // The input's voltage falls as more is drawn: V_i² − V_s V_i + P R/η = 0.
        double byDrawn = Output is null && loop > 0 ? -Multiple!.Value * loop / (_efficiency * ((2 * input) - supply)) : 0;
        return held < least.Spare ? (held, (byDrawn * powerByVolts) - 1, byDrawn * powerByOther) : least;
    }
}
