using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>
/// Quantities as people read them in results: the trade's unit, and no more figures than the number deserves.
/// </summary>
/// <remarks>A shorthand of <see cref="TextStyle.Metric"/>, for exceptions and for what has no style given.</remarks>
public static class Readable
{
    /// <summary>A pressure in kPa, for instance <c>360 kPa</c>.</summary>
    /// <param name="pressure">Any pressure.</param>
    /// <returns>Whole kPa.</returns>
    public static string Of(UnitsNet.Pressure pressure) => Style.Of(pressure);

    /// <summary>A boost or a small pressure in bar, for instance <c>0.60 bar</c>.</summary>
    /// <param name="boost">Manifold gauge pressure.</param>
    /// <returns>Bar with two decimals.</returns>
    public static string Boost(UnitsNet.Pressure boost) => Style.Boost(boost);

    /// <summary>An engine speed, for instance <c>7,200 rev/min</c>.</summary>
    /// <param name="speed">Any speed.</param>
    /// <returns>Whole revolutions per minute.</returns>
    public static string Of(RotationalSpeed speed) => Style.Of(speed);

    /// <summary>An injector's flow, for instance <c>360 mL/min</c>.</summary>
    /// <param name="flow">Any volume flow.</param>
    /// <returns>Whole millilitres per minute.</returns>
    public static string InjectorFlow(VolumeFlow flow) => Style.InjectorFlow(flow);

    /// <summary>A pump's or a line's flow, for instance <c>118 L/h</c>.</summary>
    /// <param name="flow">Any volume flow.</param>
    /// <returns>Whole litres per hour.</returns>
    public static string PumpFlow(VolumeFlow flow) => Style.PumpFlow(flow);

    /// <summary>A mass flow in g/s, for instance <c>20.4 g/s</c>.</summary>
    /// <param name="flow">Any mass flow.</param>
    /// <returns>Grams per second with one decimal, two below 10 g/s.</returns>
    public static string Of(MassFlow flow) => Style.Of(flow);

    /// <summary>A mass on a scale, for instance <c>12.40 g</c>.</summary>
    /// <param name="mass">Any mass.</param>
    /// <returns>Grams with two decimals.</returns>
    public static string Of(Mass mass) => Style.Of(mass);

    /// <summary>A power, for instance <c>221 kW</c> or <c>101 W</c>.</summary>
    /// <param name="power">Any power.</param>
    /// <returns>Whole kilowatts; whole watts under one kilowatt.</returns>
    public static string Of(Power power) => Style.Of(power);

    /// <summary>A temperature, for instance <c>41 °C</c>.</summary>
    /// <param name="temperature">Any temperature.</param>
    /// <returns>Whole degrees Celsius.</returns>
    public static string Of(Temperature temperature) => Style.Of(temperature);

    /// <summary>A pulse or dead time, for instance <c>12.40 ms</c>.</summary>
    /// <param name="duration">Any duration.</param>
    /// <returns>Milliseconds with two decimals.</returns>
    public static string Of(Duration duration) => Style.Of(duration);

    /// <summary>A share, for instance <c>85 %</c>.</summary>
    /// <param name="ratio">Any ratio.</param>
    /// <returns>Whole per cent.</returns>
    public static string Of(Ratio ratio) => Style.Of(ratio);

    /// <summary>A duty cycle, for instance <c>84.6 %</c>.</summary>
    /// <param name="dutyCycle">Pulse ÷ available time.</param>
    /// <returns>Per cent with one decimal.</returns>
    public static string DutyCycle(Ratio dutyCycle) => Style.DutyCycle(dutyCycle);

    /// <summary>A probability, for instance <c>97.3 %</c>.</summary>
    /// <param name="probability">0 to 100 %.</param>
    /// <returns>Per cent with one decimal; two where it is within 1 % of either end.</returns>
    public static string Chance(Ratio probability) => Style.Chance(probability);

    /// <summary>A change or reserve with its sign, for instance <c>+12 %</c>.</summary>
    /// <param name="ratio">Any ratio.</param>
    /// <returns>Whole per cent with a sign.</returns>
    public static string Change(Ratio ratio) => Style.Change(ratio);

    /// <summary>A density, for instance <c>740 kg/m³</c>.</summary>
    /// <param name="density">Any density.</param>
    /// <returns>Whole kilograms per cubic metre.</returns>
    public static string Of(Density density) => Style.Of(density);

    /// <summary>A gas's density, for instance <c>1.225 kg/m³</c>: whole kilograms would hide it.</summary>
    /// <param name="density">Any density.</param>
    /// <returns>Kilograms per cubic metre with three decimals, or pounds per cubic foot with four.</returns>
    public static string GasDensity(Density density) => Style.GasDensity(density);

    /// <summary>A voltage, for instance <c>13.5 V</c>.</summary>
    /// <param name="voltage">Any voltage.</param>
    /// <returns>Volts with one decimal.</returns>
    public static string Of(ElectricPotential voltage) => Style.Of(voltage);

    /// <summary>A voltage lost on the way, for instance <c>0.31 V</c>.</summary>
    /// <param name="drop">Any voltage.</param>
    /// <returns>Volts with two decimals.</returns>
    public static string VoltageDrop(ElectricPotential drop) => Style.VoltageDrop(drop);

    /// <summary>A current, for instance <c>12.5 A</c>.</summary>
    /// <param name="current">Any current.</param>
    /// <returns>Amperes with one decimal.</returns>
    public static string Of(ElectricCurrent current) => Style.Of(current);

    /// <summary>A resistance of wire or contacts, for instance <c>5.4 mΩ</c>.</summary>
    /// <param name="resistance">Any resistance.</param>
    /// <returns>Milliohms with one decimal.</returns>
    public static string Of(ElectricResistance resistance) => Style.Of(resistance);

    /// <summary>A conductor's area, for instance <c>2.5 mm²</c>.</summary>
    /// <param name="area">Any area.</param>
    /// <returns>Square millimetres with up to two decimals.</returns>
    public static string Of(Area area) => Style.Of(area);

    /// <summary>A heating value, for instance <c>44.0 MJ/kg</c>.</summary>
    /// <param name="energy">Any specific energy.</param>
    /// <returns>Megajoules per kilogram with one decimal.</returns>
    public static string Of(SpecificEnergy energy) => Style.Of(energy);

    /// <summary>A specific fuel consumption, for instance <c>330 g/kWh</c>.</summary>
    /// <param name="consumption">Any brake specific fuel consumption.</param>
    /// <returns>Whole grams per kilowatt-hour.</returns>
    public static string Of(BrakeSpecificFuelConsumption consumption) => Style.Of(consumption);

    /// <summary>A length of line or wire, for instance <c>4.5 m</c>.</summary>
    /// <param name="length">Any length.</param>
    /// <returns>Metres with one decimal.</returns>
    public static string Of(Length length) => Style.Of(length);

    /// <summary>A pressure lost on the way, for instance <c>3.4 kPa</c>.</summary>
    /// <param name="loss">Any pressure.</param>
    /// <returns>kPa with one decimal.</returns>
    public static string PressureLoss(UnitsNet.Pressure loss) => Style.PressureLoss(loss);

    /// <summary>A pressure gained or lost, with its sign, for instance <c>−3.4 kPa</c>.</summary>
    /// <param name="change">Any pressure.</param>
    /// <returns>kPa with one decimal and a sign.</returns>
    public static string PressureChange(UnitsNet.Pressure change) => Style.PressureChange(change);

    private static TextStyle Style => TextStyle.Metric;
}
