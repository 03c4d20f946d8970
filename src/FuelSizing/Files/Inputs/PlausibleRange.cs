using System.Globalization;
using FuelSizing.Electrical;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using UnitsNet;

namespace FuelSizing.Files;

using Units = UnitsNet.Units;

/// <summary>
/// Which values of an input are plausible, and in which other units people give it. The ranges are common practice, no source: a value outside
/// is possible, and is questioned, not refused (<see cref="InputQuestion"/>).
/// </summary>
/// <remarks>
/// An input is found by its name: a field of a setup file by the end of its path, <c>static_flow</c> or <c>curve.flow</c>, a variable of a
/// notebook as it is declared. Case, underscores and the numbers of rows do not count.
/// </remarks>
/// <example>
/// <code>
/// InputQuestion? question = PlausibleRange.For("static_flow")!.Question("static_flow", VolumeFlow.FromMillilitersPerMinute(24));
/// Console.WriteLine(question);   // static_flow is 24 mL/min; plausible for the static flow of an injector: 80 to 2,500 mL/min …
/// </code>
/// </example>
public sealed class PlausibleRange
{
    /// <summary>Where the ranges come from.</summary>
    public const string Source = "common practice, no source";

    private const int MaximumLikely = 3;

    /// <summary>What stands for a number without a unit.</summary>
    private const string Plain = "";

    private readonly Enum _unit;
    private readonly double _minimum;
    private readonly double _maximum;
    private readonly bool _isZeroPlausible;
    private readonly string[] _others;

    private PlausibleRange(string name, Enum unit, double minimum, double maximum, string[] inputs, string[] others, bool isZeroPlausible = false)
    {
        (Name, Inputs) = (name, Array.AsReadOnly(inputs));
        (_unit, _minimum, _maximum, _others, _isZeroPlausible) = (unit, minimum, maximum, others, isZeroPlausible);
    }

    /// <summary>What the inputs are, with its article: <c>the static flow of an injector</c>.</summary>
    public string Name { get; }

    /// <summary>The inputs that it holds for, fields of files first, variables of the notebooks after them.</summary>
    public IReadOnlyList<string> Inputs { get; }

    /// <summary>The plausible values with their unit: <c>80 to 2,500 mL/min</c>.</summary>
    public string Limits => string.Create(
        CultureInfo.InvariantCulture, $"{(_isZeroPlausible ? "0, or " : string.Empty)}{Number(_minimum)} to {Number(_maximum)}{UnitOf(_unit)}");

    /// <summary>Every range.</summary>
    public static IReadOnlyList<PlausibleRange> All { get; } = Array.AsReadOnly(Ranges());

    private static Dictionary<string, (string[] Path, PlausibleRange Range)[]> ByLast { get; } = All
        .SelectMany(range => range.Inputs, (range, input) => (Path: Segments(input), Range: range))
        .GroupBy(pair => pair.Path[^1])
        .ToDictionary(group => group.Key, group => group.OrderByDescending(pair => pair.Path.Length).ToArray());

    /// <summary>What is plausible for an input.</summary>
    /// <param name="input">Its name, or its path in a file: <c>injectors.injector.static_flow</c>, <c>staticFlow</c>, <c>pumpCurve[2].LitresPerHour</c>.</param>
    /// <returns>The range; none where the table has none.</returns>
    public static PlausibleRange? For(string input)
    {
        ArgumentNullException.ThrowIfNull(input);
        string[] path = Segments(input);
        return ByLast.TryGetValue(path[^1], out (string[] Path, PlausibleRange Range)[]? found)
            ? found.FirstOrDefault(pair => pair.Path.Length <= path.Length && path.AsSpan(path.Length - pair.Path.Length).SequenceEqual(pair.Path)).Range
            : null;
    }

    /// <summary>The question that a value raises.</summary>
    /// <param name="input">By which the question calls it.</param>
    /// <param name="value">The value, in the unit that it was given in.</param>
    /// <returns>None where the value is plausible, or is no quantity of this kind.</returns>
    public InputQuestion? Question(string input, IQuantity value)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(value);
        return value.Unit.GetType() != _unit.GetType() || Holds(value) ? null : Asked(input, (double)value.Value, Shown(value), value.Unit);
    }

    /// <summary>The question that a number without a unit raises.</summary>
    /// <param name="input">By which the question calls it.</param>
    /// <param name="value">The number.</param>
    /// <returns>None where the number is plausible, or a value with a unit is meant.</returns>
    public InputQuestion? Question(string input, double value)
    {
        ArgumentNullException.ThrowIfNull(input);
        return _unit is not Units.RatioUnit.DecimalFraction || Holds(Ratio.FromDecimalFractions(value))
            ? null
            : Asked(input, value, Number(value), _unit);
    }

    /// <summary>What is plausible, in one line.</summary>
    /// <returns>For instance <c>the static flow of an injector: 80 to 2,500 mL/min (common practice, no source)</c>.</returns>
    public override string ToString() => $"{Name}: {Limits} ({Source})";

    private static string[] Segments(string input) =>
    [
        .. input.Split('.').Select(part =>
        {
            int row = part.IndexOf('[', StringComparison.Ordinal);
            return (row < 0 ? part : part[..row]).Replace("_", string.Empty, StringComparison.Ordinal).ToUpperInvariant();
        }),
    ];

    private bool Holds(IQuantity value)
    {
        double number = value.As(_unit);
        double size = _unit is Units.TemperatureUnit ? number : Math.Abs(number);

        // The ends as they are written belong to the range, whatever the unit that a value was given in does to its last digits.
        double slack = 1e-9 * Math.Max(Math.Abs(_minimum), Math.Abs(_maximum));
        return (_isZeroPlausible && number == 0) || (size >= _minimum - slack && size <= _maximum + slack);
    }

    private InputQuestion Asked(string input, double number, string value, Enum given)
    {
        List<string> likely = [];
        foreach (string other in _others)
        {
            if (Other(other, number) is { } meant && !(InputKind.Of(given)?.TryRead(1, other) is { } same && same.Unit.Equals(given)) && Holds(meant.Value))
            {
                likely.Add($"{meant.Text}, that is {Shown(meant.Value.ToUnit(_unit))}{meant.Basis}");
            }
        }

        return new(input, this, value, [.. likely.Take(MaximumLikely)]);
    }

    private (string Text, IQuantity Value, string? Basis)? Other(string other, double number)
    {
        string text = $"{Number(number)} {other}";
        switch (other)
        {
            case "AFR":
                double stoichiometric = Fuel.Petrol.StoichiometricAirFuelRatio;
                return (
                    $"an air-fuel ratio of {Number(number)}",
                    Ratio.FromDecimalFractions(number / stoichiometric),
                    string.Create(CultureInfo.InvariantCulture, $" on petrol (÷ {stoichiometric:0.0})"));
            case "AWG":
                return number is >= 0 and <= 24 && number == Math.Truncate(number)
                    ? ($"AWG {Number(number)}", Conductor.Awg((int)number).Area, null)
                    : null;
            case "× 1,000 rpm":
                return (text, RotationalSpeed.FromRevolutionsPerMinute(1000 * number), null);
            case Plain:
                return (Number(number), Ratio.FromDecimalFractions(number), null);
        }

        if (InputKind.Of(_unit)!.TryRead(number, other) is { } quantity)
        {
            return (text, quantity, null);
        }

        return TypedQuantity.ByMass(number.ToString("R", CultureInfo.InvariantCulture), other, _unit, TestFluid.Heptane) is { Value: { } flow }
            ? (text, flow, $" on {TestFluid.Heptane.Name}")
            : null;
    }

    // Six figures, and the unit as the files write it.
    private static string Shown(IQuantity value) => $"{Number(double.Parse(((double)value.Value).ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture))}{UnitOf(value.Unit)}";

    private static string Number(double number) => number.ToString("#,0.######", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string UnitOf(Enum unit) => unit switch
    {
        Units.RatioUnit.DecimalFraction => Plain,
        Units.RotationalSpeedUnit.RevolutionPerMinute => " rev/min",
        _ => $" {InputKind.TextOf(unit)}",
    };

    // Wide enough for motorcycles and racing engines: whoever has a smaller or a larger part confirms it.
    private static PlausibleRange[] Ranges() =>
    [
        new("the displacement of an engine", Units.VolumeUnit.Liter, 0.05, 10, ["engine.displacement", "displacement"], ["L", "cm³", "in³"]),
        new(
            "the displacement of a compressor, per revolution",
            Units.VolumeUnit.Liter,
            0.1,
            6,
            ["displacement_per_revolution", "displacementPerRevolution"],
            ["L", "cm³", "in³"]),
        new(
            "the speed of an engine",
            Units.RotationalSpeedUnit.RevolutionPerMinute,
            400,
            16_000,
            ["speed", "speed_limit", "mechanical_efficiency_speed", "known_speed", "from", "to", "threshold", "slowest", "fastest", "idleSpeed", "pull.Speed", "recorded.Speed"],
            ["rpm", "rev/s", "rad/s", "× 1,000 rpm"]),
        new(
            "the speed of a compressor",
            Units.RotationalSpeedUnit.RevolutionPerMinute,
            3000,
            250_000,
            ["maximum_compressor_speed", "maximumImpellerSpeed", "maximumCompressorSpeed"],
            ["rpm", "rev/s", "rad/s", "× 1,000 rpm"]),
        new(
            "boost",
            Units.PressureUnit.Kilopascal,
            3,
            250,
            ["points.boost", "boost_line.boost", "known_boost", "boost", "nowBoost", "plannedBoost", "nextBoost", "idleBoost", "stages.BoostBar"],
            ["bar", "psi", "kPa", "inHg", "mbar"],
            isZeroPlausible: true),
        new(
            "a boost near its beginning",
            Units.PressureUnit.Kilopascal,
            1,
            120,
            ["onset", "leanest.boost", "leanestFrom", "maximumOnset"],
            ["bar", "psi", "kPa"],
            isZeroPlausible: true),
        new(
            "the base pressure of a regulator",
            Units.PressureUnit.Kilopascal,
            150,
            700,
            ["regulator.base", "in_series_with.base", "basePressure", "lowestBase", "highestBase"],
            ["bar", "psi", "kPa"],
            isZeroPlausible: true),
        new(
            "the differential pressure at which an injector is rated",
            Units.PressureUnit.Kilopascal,
            150,
            700,
            ["rated_differential", "ratedAt", "data.differential"],
            ["bar", "psi", "kPa"]),
        new(
            "a differential pressure across an injector",
            Units.PressureUnit.Kilopascal,
            20,
            1500,
            [
                "maximum_differential", "minimum_differential", "dead_times.differential", "voltage_correction.differential", "maximumOpening", "largerOpening",
                "acrossKilopascals",
            ],
            ["bar", "psi", "kPa"]),
        new(
            "the pressure rating of a fuel rail and its hoses",
            Units.PressureUnit.Kilopascal,
            300,
            2000,
            ["rail_ceiling", "ceiling", "railRating"],
            ["bar", "psi", "kPa"]),
        new(
            "a pressure rise of a pump",
            Units.PressureUnit.Kilopascal,
            20,
            1600,
            ["curve.pressure_rise", "relief", "pumpCurve.Kilopascals", "Points.Kilopascals"],
            ["bar", "psi", "kPa"],
            isZeroPlausible: true),
        new(
            "a pressure drop of a filter or cooler",
            Units.PressureUnit.Kilopascal,
            0.3,
            60,
            ["rated_loss", "cooler_pressure_loss", "filterLoss", "coolerLoss"],
            ["kPa", "psi", "mbar", "bar"],
            isZeroPlausible: true),
        new(
            "the pressure of the ambient air",
            Units.PressureUnit.Kilopascal,
            60,
            108,
            ["atmosphere.pressure", "measured_in.pressure", "calibrated_at.pressure", "ambientPressure", "knownPressure"],
            ["kPa", "inHg", "psi", "mmHg", "mbar", "bar"]),
        new(
            "the manifold pressure, absolute, at which a sensor or table ends",
            Units.PressureUnit.Kilopascal,
            80,
            450,
            ["controller.end"],
            ["bar", "psi", "kPa", "mbar"]),
        new("the air flow at which a meter ends", Units.MassFlowUnit.GramPerSecond, 15, 1000, ["controller.maximum"], ["g/s", "kg/h", "kg/s"]),
        new(
            "the static flow of an injector",
            Units.VolumeFlowUnit.MilliliterPerMinute,
            80,
            2500,
            ["static_flow", "staticFlow", "largerFlow", "nextFlow"],
            ["lb/h", "L/h", "g/s", "mL/min", "kg/h"]),
        new(
            "the flow of a fuel pump",
            Units.VolumeFlowUnit.LiterPerHour,
            5,
            1500,
            ["curve.flow", "pumpCurve.LitresPerHour", "Points.LitresPerHour", "rated_flow", "filterFlow"],
            ["L/h", "L/min", "mL/min", "US gal/h"],
            isZeroPlausible: true),
        new(
            "the minimum return flow of a regulator",
            Units.VolumeFlowUnit.LiterPerHour,
            1,
            150,
            ["minimum_return_flow", "minimumReturn", "minimumReturnFlow"],
            ["L/h", "mL/min", "L/min"],
            isZeroPlausible: true),
        new(
            "a specific fuel consumption",
            Units.BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour,
            200,
            900,
            ["brake_specific_fuel_consumption", "bsfc", "nextBsfc", "trueBsfc", "stages.GramsPerKilowattHour", "brakeSpecificFuelConsumption"],
            ["g/kWh", "lb/hp·h", "kg/kWh"]),
        new("the power of an engine", Units.PowerUnit.Kilowatt, 1, 1500, ["curve.power", "pull.Kilowatts"], ["kW", "hp", "W"]),
        new(
            "lambda",
            Units.RatioUnit.DecimalFraction,
            0.65,
            1.15,
            ["lambda", "richest", "leanestLambda", "richestLambda", "leanest"],
            ["AFR", "%"]),
        new(
            "the temperature of fuel",
            Units.TemperatureUnit.DegreeCelsius,
            -25,
            65,
            ["fuel_temperature", "tank_temperature", "inlet_temperature", "fuelTemperature"],
            ["°C", "°F", "K"]),
        new(
            "the temperature of the ambient air",
            Units.TemperatureUnit.DegreeCelsius,
            -40,
            50,
            ["atmosphere.temperature", "measured_in.temperature", "calibrated_at.temperature", "ambientTemperature", "knownTemperature"],
            ["°C", "°F", "K"]),
        new(
            "the temperature of a wire's conductor",
            Units.TemperatureUnit.DegreeCelsius,
            -40,
            110,
            ["conductor_temperature", "wireTemperature"],
            ["°C", "°F", "K"]),
        new(
            "the temperature rating of a wire's insulation",
            Units.TemperatureUnit.DegreeCelsius,
            50,
            200,
            ["insulation_rating", "insulationRating", "oldInsulationRating"],
            ["°C", "°F", "K"]),
        new(
            "the voltage of a vehicle's supply",
            Units.ElectricPotentialUnit.Volt,
            10,
            16,
            ["supply_voltage", "recorded_at", "fixed_voltage", "supplyVoltage", "recordedVoltage"],
            ["V", "mV"]),
        new(
            "a voltage at a pump or an injector",
            Units.ElectricPotentialUnit.Volt,
            5,
            18,
            ["curve.voltage", "dead_times.voltage", "minimum_pulse_voltage", "minimum_voltage", "pumpVoltage", "minimumPumpVoltage", "volts", "tankPump.Volts", "auxiliaryPump.Volts", "pumpCurves.Volts"],
            ["V", "mV"]),
        new(
            "the current of a pump, or its fuse",
            Units.ElectricCurrentUnit.Ampere,
            0.5,
            60,
            ["curve.current", "fuse", "Points.Amperes", "tankFuse", "auxiliaryFuse"],
            ["A", "mA"]),
        new(
            "the resistance of a contact",
            Units.ElectricResistanceUnit.Milliohm,
            0.05,
            100,
            ["contacts.resistance", "connections"],
            ["mΩ", "Ω", "µΩ"],
            isZeroPlausible: true),
        new("a dead time", Units.DurationUnit.Millisecond, 0.1, 5, ["dead_times.time", "deadTimeMilliseconds"], ["ms", "µs", "s"]),
        new(
            "a pulse of an injector",
            Units.DurationUnit.Millisecond,
            0.4,
            60,
            ["minimum_linear_pulse", "pulses.pulse", "minimumPulse", "recorded.Milliseconds"],
            ["ms", "µs", "s"]),
        new(
            "a volumetric efficiency",
            Units.RatioUnit.Percent,
            40,
            130,
            ["volumetric_efficiency.efficiency", "boost_line.volumetric_efficiency", "pull.Efficiency"],
            ["%", "per unit"]),
        new("the efficiency of a compressor", Units.RatioUnit.Percent, 40, 88, ["compressor_efficiency", "compressorEfficiency"], ["%", "per unit"]),
        new(
            "an efficiency of drive or engine",
            Units.RatioUnit.Percent,
            60,
            100,
            ["drive_efficiency", "mechanical_efficiency", "beltEfficiency", "mechanicalEfficiency"],
            ["%", "per unit"]),
        new(
            "the effectiveness of a charge cooler",
            Units.RatioUnit.Percent,
            10,
            95,
            ["cooler_effectiveness", "coolerEffectiveness"],
            ["%", "per unit"],
            isZeroPlausible: true),
        new(
            "a share that is lost or kept in reserve",
            Units.RatioUnit.Percent,
            1,
            60,
            ["drivetrain_loss", "pump_reserve", "feed_drop", "drivetrainLoss", "pumpReserve", "feedDrop"],
            ["%", "per unit"],
            isZeroPlausible: true),
        new(
            "a limit of duty cycle",
            Units.RatioUnit.Percent,
            50,
            100,
            ["duty_cycle", "maximum_duty_cycle", "dutyLimit"],
            ["%", "per unit"]),
        new("the density of a liquid", Units.DensityUnit.KilogramPerCubicMeter, 600, 1000, ["test_density", "density_at_15c"], ["kg/m³", "g/cm³", "lb/ft³"]),
        new(
            "an altitude",
            Units.LengthUnit.Meter,
            0,
            3000,
            ["altitude"],
            ["m", "ft", "km"]),
        new(
            "the bore of a fuel line",
            Units.LengthUnit.Millimeter,
            2,
            25,
            ["bore", "lineBore", "supplyBore", "returnBore", "narrowReturnBore"],
            ["mm", "in", "cm", "m"]),
        new(
            "the length of a line or wire",
            Units.LengthUnit.Meter,
            0.1,
            12,
            ["length", "outward_length", "return_length", "lineLength", "oneWay", "wireLength", "tankLength", "auxiliaryLength"],
            ["m", "ft", "cm", "mm", "in"],
            isZeroPlausible: true),
        new("the metal of a pump's wire", Units.AreaUnit.SquareMillimeter, 0.3, 10.5, ["metric", "area", "wireArea", "tankWire", "auxiliaryWire", "oldWire"], ["mm²", "AWG"]),
    ];
}
