using System.Globalization;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>How results are written for people: a unit for each kind of figure, and a culture's decimal and group separators.</summary>
/// <remarks>
/// It belongs to a call: <c>result.In(TextStyle.UsCustomary)</c>. Nothing in the process remembers one, so that two threads never mix theirs. Figures
/// have no more digits than they deserve, a true minus sign, and no sign where they round to zero. Words stay English.
/// </remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(point);
/// Console.WriteLine(result.Limiting);                              // metric
/// Console.WriteLine(result.Limiting.In(TextStyle.UsCustomary));    // psi, US gal/h, hp
/// </code>
/// </example>
public sealed class TextStyle : IEquatable<TextStyle>
{
    private readonly NumberFormatInfo _numbers;

    private TextStyle(FigureUnits units, CultureInfo culture)
    {
        (Units, Culture) = (units, CultureInfo.ReadOnly(culture));
        _numbers = (NumberFormatInfo)culture.NumberFormat.Clone();
        _numbers.NegativeSign = "−";
        _numbers.NumberNegativePattern = 1;
    }

    /// <summary>Metric units, in the invariant culture.</summary>
    public static TextStyle Metric { get; } = new(FigureUnits.Metric, CultureInfo.InvariantCulture);

    /// <summary>US customary units, in the invariant culture.</summary>
    public static TextStyle UsCustomary { get; } = new(FigureUnits.UsCustomary, CultureInfo.InvariantCulture);

    /// <summary>A unit for each kind of figure.</summary>
    public FigureUnits Units { get; }

    /// <summary>Whose separators are used.</summary>
    public CultureInfo Culture { get; }

    /// <summary>The same units in another culture.</summary>
    /// <param name="culture">Whose separators to use.</param>
    /// <returns>A new style.</returns>
    /// <exception cref="ArgumentNullException">There is no culture.</exception>
    public TextStyle With(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return new(Units, culture);
    }

    /// <summary>The same culture with other units.</summary>
    /// <param name="units">For instance <c>FigureUnits.Metric with { Pressure = … }</c>.</param>
    /// <returns>A new style.</returns>
    /// <exception cref="ArgumentNullException">There are no units.</exception>
    public TextStyle With(FigureUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return new(units, Culture);
    }

    /// <summary>A pressure, for instance <c>360 kPa</c> or <c>52.2 psi</c>.</summary>
    /// <param name="pressure">Any pressure.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Pressure pressure) => Units.Pressure.Text(pressure, _numbers);

    /// <summary>A boost, for instance <c>0.60 bar</c> or <c>8.7 psi</c>.</summary>
    /// <param name="boost">Manifold gauge pressure.</param>
    /// <returns>Number and unit.</returns>
    public string Boost(Pressure boost) => Units.Boost.Text(boost, _numbers);

    /// <summary>A pressure lost in a line, for instance <c>3.4 kPa</c>.</summary>
    /// <param name="loss">Any pressure.</param>
    /// <returns>Number and unit.</returns>
    public string PressureLoss(Pressure loss) => Units.PressureLoss.Text(loss, _numbers);

    /// <summary>A pressure gained or lost, with its sign, for instance <c>−3.4 kPa</c>.</summary>
    /// <param name="change">Any pressure.</param>
    /// <returns>Number and unit.</returns>
    public string PressureChange(Pressure change) => Units.PressureChange.Text(change, _numbers);

    /// <summary>By how much a reading or a setting is off, with its sign, for instance <c>+12 kPa</c>.</summary>
    /// <param name="offset">Any pressure.</param>
    /// <returns>Number and unit.</returns>
    public string PressureOffset(Pressure offset) => Units.PressureOffset.Text(offset, _numbers);

    /// <summary>An engine speed, for instance <c>7,200 rev/min</c>.</summary>
    /// <param name="speed">Any speed.</param>
    /// <returns>Number and unit.</returns>
    public string Of(RotationalSpeed speed) => Units.Speed.Text(speed, _numbers);

    /// <summary>An injector's flow, for instance <c>360 mL/min</c>.</summary>
    /// <param name="flow">Any volume flow.</param>
    /// <returns>Number and unit.</returns>
    public string InjectorFlow(VolumeFlow flow) => Units.InjectorFlow.Text(flow, _numbers);

    /// <summary>A pump's or a line's flow, for instance <c>118 L/h</c>.</summary>
    /// <param name="flow">Any volume flow.</param>
    /// <returns>Number and unit.</returns>
    public string PumpFlow(VolumeFlow flow) => Units.PumpFlow.Text(flow, _numbers);

    /// <summary>A mass flow, for instance <c>20.4 g/s</c>, <c>4.21 g/s</c> or <c>164 lb/h</c>.</summary>
    /// <param name="flow">Any mass flow.</param>
    /// <returns>Number and unit.</returns>
    public string Of(MassFlow flow) => Units.MassFlow.Text(flow, _numbers);

    /// <summary>A mass on a scale, for instance <c>12.40 g</c>, in both systems.</summary>
    /// <param name="mass">Any mass.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Mass mass) => Units.Mass.Text(mass, _numbers);

    /// <summary>A power, for instance <c>221 kW</c> or <c>101 W</c>.</summary>
    /// <param name="power">Any power.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Power power) => Units.Power.Text(power, _numbers);

    /// <summary>Heat into the tank, for instance <c>62 W</c>.</summary>
    /// <param name="heat">Any power.</param>
    /// <returns>Number and unit.</returns>
    public string Heat(Power heat) => Units.Heat.Text(heat, _numbers);

    /// <summary>Heat in a wire, for instance <c>0.9 W</c>.</summary>
    /// <param name="heat">Any power.</param>
    /// <returns>Number and unit.</returns>
    public string WireHeat(Power heat) => Units.WireHeat.Text(heat, _numbers);

    /// <summary>Heat along a wire, for instance <c>0.9 W/m</c>.</summary>
    /// <param name="heat">Any heat for each length.</param>
    /// <returns>Number and unit.</returns>
    public string Of(LinearPowerDensity heat) => Units.HeatPerLength.Text(heat, _numbers);

    /// <summary>A temperature, for instance <c>41 °C</c>.</summary>
    /// <param name="temperature">Any temperature.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Temperature temperature) => Units.Temperature.Text(temperature, _numbers);

    /// <summary>A pulse or dead time, for instance <c>12.40 ms</c>.</summary>
    /// <param name="pulse">Any duration.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Duration pulse) => Units.Pulse.Text(pulse, _numbers);

    /// <summary>A change of dead time, with its sign, for instance <c>+0.08 ms</c>.</summary>
    /// <param name="change">Any duration.</param>
    /// <returns>Number and unit.</returns>
    public string PulseChange(Duration change) => Units.PulseChange.Text(change, _numbers);

    /// <summary>A length of time in a log, for instance <c>12.40 s</c>.</summary>
    /// <param name="time">Any duration.</param>
    /// <returns>Number and unit.</returns>
    public string Time(Duration time) => Units.Time.Text(time, _numbers);

    /// <summary>A share, for instance <c>85 %</c>.</summary>
    /// <param name="share">Any ratio.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Ratio share) => Units.Share.Text(share, _numbers);

    /// <summary>A duty cycle, for instance <c>84.6 %</c>.</summary>
    /// <param name="dutyCycle">Pulse ÷ available time.</param>
    /// <returns>Number and unit.</returns>
    public string DutyCycle(Ratio dutyCycle) => Units.DutyCycle.Text(dutyCycle, _numbers);

    /// <summary>A probability, for instance <c>97.3 %</c> or <c>99.62 %</c>.</summary>
    /// <param name="probability">0 to 100 %.</param>
    /// <returns>Number and unit.</returns>
    public string Chance(Ratio probability) => Units.Chance.Text(probability, _numbers);

    /// <summary>A change or reserve with its sign, for instance <c>+12 %</c>.</summary>
    /// <param name="change">Any ratio.</param>
    /// <returns>Number and unit.</returns>
    public string Change(Ratio change) => Units.Change.Text(change, _numbers);

    /// <summary>A liquid's density, for instance <c>740 kg/m³</c>.</summary>
    /// <param name="density">Any density.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Density density) => Units.Density.Text(density, _numbers);

    /// <summary>A gas's density, for instance <c>1.225 kg/m³</c>.</summary>
    /// <param name="density">Any density.</param>
    /// <returns>Number and unit.</returns>
    public string GasDensity(Density density) => Units.GasDensity.Text(density, _numbers);

    /// <summary>A voltage, for instance <c>13.5 V</c>.</summary>
    /// <param name="voltage">Any voltage.</param>
    /// <returns>Number and unit.</returns>
    public string Of(ElectricPotential voltage) => Units.Voltage.Text(voltage, _numbers);

    /// <summary>A voltage lost in wiring, for instance <c>0.31 V</c>.</summary>
    /// <param name="drop">Any voltage.</param>
    /// <returns>Number and unit.</returns>
    public string VoltageDrop(ElectricPotential drop) => Units.VoltageDrop.Text(drop, _numbers);

    /// <summary>A current, for instance <c>12.5 A</c>.</summary>
    /// <param name="current">Any current.</param>
    /// <returns>Number and unit.</returns>
    public string Of(ElectricCurrent current) => Units.Current.Text(current, _numbers);

    /// <summary>A resistance of wire or contacts, for instance <c>5.4 mΩ</c>.</summary>
    /// <param name="resistance">Any resistance.</param>
    /// <returns>Number and unit.</returns>
    public string Of(ElectricResistance resistance) => Units.Resistance.Text(resistance, _numbers);

    /// <summary>A conductor's area, for instance <c>2.5 mm²</c>.</summary>
    /// <param name="area">Any area.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Area area) => Units.Area.Text(area, _numbers);

    /// <summary>A heating value, for instance <c>44.0 MJ/kg</c>.</summary>
    /// <param name="energy">Any specific energy.</param>
    /// <returns>Number and unit.</returns>
    public string Of(SpecificEnergy energy) => Units.HeatingValue.Text(energy, _numbers);

    /// <summary>A specific fuel consumption, for instance <c>330 g/kWh</c>.</summary>
    /// <param name="consumption">Any brake specific fuel consumption.</param>
    /// <returns>Number and unit.</returns>
    public string Of(BrakeSpecificFuelConsumption consumption) => Units.Consumption.Text(consumption, _numbers);

    /// <summary>A specific fuel consumption as a log gives it, for instance <c>331.2 g/kWh</c>.</summary>
    /// <param name="consumption">Any brake specific fuel consumption.</param>
    /// <returns>Number and unit.</returns>
    public string ConsumptionEstimate(BrakeSpecificFuelConsumption consumption) => Units.ConsumptionEstimate.Text(consumption, _numbers);

    /// <summary>A length of line or wire, for instance <c>4.5 m</c>.</summary>
    /// <param name="length">Any length.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Length length) => Units.Length.Text(length, _numbers);

    /// <summary>A bore, a diameter or a roughness, for instance <c>8.0 mm</c>.</summary>
    /// <param name="bore">Any length.</param>
    /// <returns>Number and unit.</returns>
    public string Bore(Length bore) => Units.Bore.Text(bore, _numbers);

    /// <summary>An engine's displacement, for instance <c>2.40 L</c>.</summary>
    /// <param name="displacement">Any volume.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Volume displacement) => Units.Displacement.Text(displacement, _numbers);

    /// <summary>A mean velocity, for instance <c>0.84 m/s</c>.</summary>
    /// <param name="velocity">Any speed along a line.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Speed velocity) => Units.Velocity.Text(velocity, _numbers);

    /// <summary>A torque, for instance <c>212 N·m</c>.</summary>
    /// <param name="torque">Any torque.</param>
    /// <returns>Number and unit.</returns>
    public string Of(Torque torque) => Units.Torque.Text(torque, _numbers);

    /// <summary>A dynamic viscosity, for instance <c>0.52 mPa·s</c>.</summary>
    /// <param name="viscosity">Any dynamic viscosity.</param>
    /// <returns>Number and unit.</returns>
    public string Of(DynamicViscosity viscosity) => Units.DynamicViscosity.Text(viscosity, _numbers);

    /// <summary>A kinematic viscosity, for instance <c>0.70 mm²/s</c>.</summary>
    /// <param name="viscosity">Any kinematic viscosity.</param>
    /// <returns>Number and unit.</returns>
    public string Of(KinematicViscosity viscosity) => Units.KinematicViscosity.Text(viscosity, _numbers);

    /// <summary>A metal's resistivity, for instance <c>17.2 nΩ·m</c>.</summary>
    /// <param name="resistivity">Any resistivity.</param>
    /// <returns>Number and unit.</returns>
    public string Of(ElectricResistivity resistivity) => Units.Resistivity.Text(resistivity, _numbers);

    /// <summary>A thermal expansion, for instance <c>0.00120 1/K</c>.</summary>
    /// <param name="expansion">Any coefficient.</param>
    /// <returns>Number and unit.</returns>
    public string Of(CoefficientOfThermalExpansion expansion) => Units.Expansion.Text(expansion, _numbers);

    /// <summary>A number without a unit, for instance <c>0.82</c>.</summary>
    /// <param name="number">Any number.</param>
    /// <param name="format">How many figures, as .NET writes it.</param>
    /// <returns>The number.</returns>
    /// <exception cref="FormatException">The format is none.</exception>
    public string Number(double number, string format = "N2") => Text(number, format, string.Empty, _numbers);

    /// <summary>A count, for instance <c>12,400</c>.</summary>
    /// <param name="count">Any count.</param>
    /// <returns>The number.</returns>
    public string Count(long count) => count.ToString("N0", _numbers);

    /// <summary>A figure of any kind.</summary>
    /// <param name="figure">The quantity.</param>
    /// <param name="kind">
    /// The kind's name, as <see cref="FigureUnits"/> gives it, for instance <c>boost</c>; <c>boost:up</c> and <c>boost:down</c> round one way.
    /// </param>
    /// <returns>Number and unit.</returns>
    /// <exception cref="ArgumentException">There is no such kind of that quantity.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public string Write(IQuantity figure, string kind)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(kind);
        FigureRounding? rounding = FigureRounding.TakenFrom(ref kind);
        return FigureKind.Named(kind, figure.GetType()).Text(figure, this, rounding);
    }

    /// <summary>True if the other style writes every text alike: the same units and separators.</summary>
    /// <param name="other">Another style.</param>
    /// <returns>True if alike.</returns>
    public bool Equals(TextStyle? other) =>
        other is not null
        && Units == other.Units
        && _numbers.NumberDecimalSeparator == other._numbers.NumberDecimalSeparator
        && _numbers.NumberGroupSeparator == other._numbers.NumberGroupSeparator
        && _numbers.NumberGroupSizes.AsSpan().SequenceEqual(other._numbers.NumberGroupSizes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as TextStyle);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Units, _numbers.NumberDecimalSeparator, _numbers.NumberGroupSeparator);

    /// <summary>Units and culture.</summary>
    /// <returns>For instance <c>kPa, L/h, kW, °C; 1,234.5</c>.</returns>
    public override string ToString() => $"{Units}; {Number(1234.5, "N1")}";

    internal static string Text(double value, string format, string unit, NumberFormatInfo numbers)
    {
        string digits = value.ToString(format, numbers);

        // A rounded zero carries no sign.
        digits = digits.AsSpan().ContainsAnyInRange('1', '9') || !double.IsFinite(value) ? digits : digits.TrimStart('−', '+');
        return unit.Length == 0 ? digits : $"{digits} {unit}";
    }

    internal string Text<T>(DisplayUnit<T> unit, T value, FigureRounding? rounding = null)
        where T : struct, IQuantity =>
        unit.Text(value, _numbers, rounding);

    /// <summary>A number without a unit, rounded one way.</summary>
    internal string Number(double number, string format, FigureRounding rounding) =>
        rounding.Text(number, rounding.Bound as double?, format, string.Empty, _numbers, rounded => rounded.CompareTo(number));
}
