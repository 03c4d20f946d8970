using FuelSizing.Fuels;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>One input of a fuel system that is not known exactly.</summary>
/// <remarks>
/// Inputs are taken as independent of each other. A factor multiplies what the nominal system has: 100 % changes nothing.
/// How wide to make a distribution, common practice, no source: injectors of one kind ±3 to 5 % in static flow, a matched
/// set ±1 %; a regulator ±10 to 20 kPa; drivetrain loss 12 to 18 %.
/// </remarks>
public sealed record UncertainInput
{
    private static readonly Identity<UncertainInput> _identity = new Identity<UncertainInput>()
        .Value(input => input.Name)
        .Value(input => input.Quantity)
        .Value(input => input.Shape)
        .Value(input => input.Petrol)
        .Number(input => input.Nominal)
        .Value(input => input.Own);

    private readonly Func<double, IQuantity> _typed;

    /// <summary>Of an input of one's own: the function that was given.</summary>
    private Delegate? Own { get; init; }

    private UncertainInput(string name, UncertainQuantity quantity, Shape shape, Func<double, IQuantity> typed)
    {
        (Name, Quantity, Shape) = (name, quantity, shape);
        _typed = typed;
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>True where the input multiplies what the nominal system has: 100 % changes nothing.</summary>
    public bool IsFactor => Quantity is UncertainQuantity.VolumetricEfficiency
        or UncertainQuantity.InjectorFlow or UncertainQuantity.InjectorMatching or UncertainQuantity.PumpFlow or UncertainQuantity.RegulatorGain
        or UncertainQuantity.Boost;

    internal UncertainQuantity Quantity { get; }

    internal Shape Shape { get; }

    /// <summary>For ethanol content: the petrol that the ethanol is in.</summary>
    internal Fuel? Petrol { get; private init; }

    /// <summary>What a drawn value changes of the system; none where <see cref="Perturbation"/> knows the input.</summary>
    internal Func<FuelSystem, double, FuelSystem>? Change { get; private init; }

    /// <summary>Of an input of one's own: what the nominal system has, in SI.</summary>
    internal double Nominal { get; private init; } = 1;

    /// <summary>A figure that a run has measured, drawn about what it found.</summary>
    internal static UncertainInput Measured(
        string name,
        UncertainQuantity quantity,
        Shape shape,
        Func<double, IQuantity> typed,
        Func<FuelSystem, double, FuelSystem>? change = null) => new(name, quantity, shape, typed) { Change = change };

    /// <summary>BSFC at full load, on the nominal system's fuel.</summary>
    /// <param name="distribution">150 to 1,500 g/kWh.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput BrakeSpecificFuelConsumption(Distribution<BrakeSpecificFuelConsumption> distribution) =>
        new(
            "BSFC",
            UncertainQuantity.BrakeSpecificFuelConsumption,
            Within(
                distribution,
                UnitsNet.BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(150),
                UnitsNet.BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(1500),
                "Give fuel mass for a unit of work at the crank."),
            value => UnitsNet.BrakeSpecificFuelConsumption.FromKilogramsPerJoule(value)
                .ToUnit(UnitsNet.Units.BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour));

    /// <summary>A factor on the whole table of volumetric efficiency.</summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput VolumetricEfficiencyFactor(Distribution<Ratio> distribution) =>
        new(
            "volumetric efficiency",
            UncertainQuantity.VolumetricEfficiency,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value));

    /// <summary>
    /// Share of crank power that was lost on the way to where it was measured: P = P_w/(1 − ζ). Only for a power
    /// curve given at the wheels.
    /// </summary>
    /// <param name="distribution">0 to 40 %.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput DrivetrainLoss(Distribution<Ratio> distribution) =>
        new(
            "drivetrain loss",
            UncertainQuantity.DrivetrainLoss,
            Within(
                distribution,
                Ratio.Zero,
                Ratio.FromPercent(40),
                "Give the share of crank power lost on the way to the wheels."),
            value => Percent(value));

    /// <summary>A factor on the static flow of the injectors, all alike: the kind's tolerance.</summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput InjectorFlowFactor(Distribution<Ratio> distribution) =>
        new(
            "injector flow",
            UncertainQuantity.InjectorFlow,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value));

    /// <summary>
    /// A factor on the static flow of each injector, drawn for each by itself: how well the set is matched. All get one
    /// pulse; see <see cref="InjectorSpread"/>.
    /// </summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput InjectorMatchingFactor(Distribution<Ratio> distribution) =>
        new(
            "injector matching",
            UncertainQuantity.InjectorMatching,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value));

    /// <summary>How far the injectors' dead time is off the table's, at every voltage and pressure alike.</summary>
    /// <param name="distribution">−2 to 2 ms; zero changes nothing.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput DeadTimeOffset(Distribution<Duration> distribution) =>
        new(
            "dead time",
            UncertainQuantity.DeadTime,
            Within(distribution, Duration.FromMilliseconds(-2), Duration.FromMilliseconds(2), "Give the dead time that there is less the table's."),
            value => Duration.FromSeconds(value).ToUnit(UnitsNet.Units.DurationUnit.Millisecond))
        {
            Change = (system, value) => system.With(system.Injectors.Later(value)),
        };

    /// <summary>A factor on what every pump of the circuit delivers: how far pumps are from their curves, alike at all pressures and voltages.</summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input, for a system whose pumps are described by curves.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput PumpFlowFactor(Distribution<Ratio> distribution) =>
        new(
            "pump flow",
            UncertainQuantity.PumpFlow,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value))
        {
            Change = (system, value) => system.With(system.Pump.WithPumps(pump => pump.Worn(value))),
        };

    /// <summary>How far the resistance of every pump's feed is off the described one: connectors, relay, fuse, ground.</summary>
    /// <param name="distribution">−1 to 1 Ω; zero changes nothing.</param>
    /// <returns>The input, for a system whose pumps have a feed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput FeedResistanceOffset(Distribution<ElectricResistance> distribution) =>
        new(
            "resistance of the pump's feed",
            UncertainQuantity.FeedResistance,
            Within(distribution, ElectricResistance.FromOhms(-1), ElectricResistance.FromOhms(1), "Give the resistance that there is less the described one."),
            value => ElectricResistance.FromOhms(value).ToUnit(UnitsNet.Units.ElectricResistanceUnit.Milliohm))
        {
            Change = (system, value) => system.With(system.Pump.Rewired(feed => feed.Plus(value))),
        };

    /// <summary>How far the regulator's pressure is off what it should set, at every boost alike.</summary>
    /// <param name="distribution">−100 to 100 kPa; zero changes nothing.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput RegulatorOffset(Distribution<Pressure> distribution) =>
        new(
            "regulator pressure",
            UncertainQuantity.RegulatorOffset,
            Within(
                distribution,
                Pressure.FromKilopascals(-100),
                Pressure.FromKilopascals(100),
                "Give the pressure set less the pressure wanted."),
            value => Pressure.FromPascals(value).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal));

    /// <summary>A factor on the gain of the rising-rate unit.</summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input, for a system whose regulator is a rising-rate unit or has one in series.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput RegulatorGainFactor(Distribution<Ratio> distribution) =>
        new(
            "regulator gain",
            UncertainQuantity.RegulatorGain,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value))
        {
            Change = (system, value) => system.With(system.Regulator.Found(0, (value - 1) * system.Regulator.RisingUnit!.Gain, 0)),
        };

    /// <summary>How far the boost at which the gain of the rising-rate unit sets in is off its own.</summary>
    /// <param name="distribution">−100 to 100 kPa; zero changes nothing.</param>
    /// <returns>The input, for a system whose regulator is a rising-rate unit or has one in series.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput RegulatorOnsetOffset(Distribution<Pressure> distribution) =>
        new(
            "regulator onset",
            UncertainQuantity.RegulatorOnset,
            Within(
                distribution,
                Pressure.FromKilopascals(-100),
                Pressure.FromKilopascals(100),
                "Give the boost at which the gain sets in less the one described."),
            value => Pressure.FromPascals(value).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal))
        {
            Change = (system, value) => system.With(system.Regulator.Found(0, 0, value)),
        };

    /// <summary>A factor on the boost: the gauge that it was measured with, a belt that slips, a controller that holds it roughly.</summary>
    /// <param name="distribution">50 to 150 %.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput BoostFactor(Distribution<Ratio> distribution) =>
        new(
            "boost",
            UncertainQuantity.Boost,
            Within(distribution, Ratio.FromPercent(50), Ratio.FromPercent(150), FactorAdvice),
            value => Percent(value));

    /// <summary>Ambient pressure of the day.</summary>
    /// <param name="distribution">Absolute, 40 to 110 kPa.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput AmbientPressure(Distribution<Pressure> distribution) =>
        new(
            "ambient pressure",
            UncertainQuantity.AmbientPressure,
            Within(
                distribution,
                Pressure.FromKilopascals(40),
                Pressure.FromKilopascals(110),
                "Give absolute pressure as the barometer reads it there, not reduced to sea level."),
            value => Pressure.FromPascals(value).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal));

    /// <summary>Ambient temperature of the day: cold air is dense.</summary>
    /// <param name="distribution">−50 to 60 °C.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput AmbientTemperature(Distribution<Temperature> distribution) =>
        new(
            "ambient temperature",
            UncertainQuantity.AmbientTemperature,
            Within(
                distribution,
                Temperature.FromDegreesCelsius(-50),
                Temperature.FromDegreesCelsius(60),
                "Give the temperature of the air that the engine draws."),
            value => Temperature.FromKelvins(value).ToUnit(UnitsNet.Units.TemperatureUnit.DegreeCelsius));

    /// <summary>Voltage at the injectors and at the source of the pumps' wiring.</summary>
    /// <param name="distribution">6 to 20 V.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput SupplyVoltage(Distribution<ElectricPotential> distribution) =>
        new(
            "supply voltage",
            UncertainQuantity.SupplyVoltage,
            Within(
                distribution,
                ElectricPotential.FromVolts(6),
                ElectricPotential.FromVolts(20),
                "Give the voltage under load, engine running."),
            value => ElectricPotential.FromVolts(value));

    /// <summary>Fuel in the rail.</summary>
    /// <param name="distribution">−30 to 80 °C.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    public static UncertainInput FuelTemperature(Distribution<Temperature> distribution) =>
        new(
            "fuel temperature",
            UncertainQuantity.FuelTemperature,
            Within(
                distribution,
                Fuel.MinimumTemperature,
                Fuel.MaximumTemperature,
                "Fuel properties are given for liquid fuel in a vehicle only."),
            value => Temperature.FromKelvins(value).ToUnit(UnitsNet.Units.TemperatureUnit.DegreeCelsius));

    /// <summary>Share of ethanol by volume in a blend with petrol: what the pump gives is not what the name says.</summary>
    /// <param name="distribution">0 to 100 %.</param>
    /// <param name="petrol">The petrol in it; <see cref="Fuel.Petrol"/> if not given.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distribution reaches beyond the range.</exception>
    /// <remarks>
    /// Lambda stays as tuned and brake efficiency as it is, so BSFC goes with 1/LHV of the blend. A viscosity or vapour
    /// pressure that was measured of the nominal fuel stays; the blend's own follow the content.
    /// </remarks>
    public static UncertainInput EthanolContent(Distribution<Ratio> distribution, Fuel? petrol = null) =>
        new(
            "ethanol content",
            UncertainQuantity.EthanolContent,
            Within(distribution, Ratio.Zero, Ratio.FromPercent(100), "It is the share of ethanol by volume."),
            value => Percent(value))
        {
            Petrol = petrol ?? Fuel.Petrol,
        };

    /// <summary>An input of your own: anything of the system that a function changes.</summary>
    /// <remarks>
    /// The function must be pure: the same system and value give an equal system, on any thread, and the nominal value changes nothing. <c>ConformanceKit.Of(UncertainInput,
    /// FuelSystem)</c> tries it. Drawn values go through the function one after another with those of the other inputs; its name makes its random numbers.
    /// </remarks>
    /// <typeparam name="T">Its quantity.</typeparam>
    /// <param name="name">Shown in results, 1 to 80 characters; no two inputs of a system have the same.</param>
    /// <param name="nominal">What the nominal system has, within the distribution.</param>
    /// <param name="distribution">How it is distributed.</param>
    /// <param name="change">The system with another value of it.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The nominal value lies outside the distribution.</exception>
    /// <example>
    /// <code>
    /// UncertainInput wear = UncertainInput.Of(
    ///     "condition of the pumps",
    ///     Ratio.FromPercent(100),
    ///     Distribution.Uniform(Ratio.FromPercent(90), Ratio.FromPercent(100)),
    ///     (system, share) => system.With(((Pump)system.Pump).WithCondition(share)));
    /// </code>
    /// </example>
    public static UncertainInput Of<T>(string name, T nominal, Distribution<T> distribution, Func<FuelSystem, T, FuelSystem> change)
        where T : struct, IQuantity, IComparable<T>
    {
        ArgumentNullException.ThrowIfNull(distribution);
        ArgumentNullException.ThrowIfNull(change);
        Enum unit = nominal.QuantityInfo.BaseUnitInfo.Value;
        T Typed(double value) => (T)UnitsNet.Quantity.From(value, unit);
        return new(
            Guard.Name(name, nameof(name)),
            UncertainQuantity.Own,
            Within(distribution, distribution.Minimum, distribution.Maximum, string.Empty),
            value => Typed(value).ToUnit(nominal.Unit))
        {
            Nominal = Distribution.InBaseUnit(Guard.Between(
                nominal, distribution.Minimum, distribution.Maximum, "Give what the nominal system has: a value of it that changes nothing.", nameof(nominal))),
            Change = (system, value) => change(system, Typed(value)),
            Own = change,
        };
    }

    /// <summary>The value under which the input lies with a probability: its inverse cumulative distribution.</summary>
    /// <param name="probability">Over 0 and under 100 %.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is outside its range.</exception>
    public IQuantity ValueAt(Ratio probability) =>
        Typed(Shape.ValueAt(Guard.Between(
            probability,
            Ratio.FromDecimalFractions(1e-9),
            Ratio.FromDecimalFractions(1 - 1e-9),
            "Give the probability of a lower value.",
            nameof(probability)).DecimalFractions));

    /// <summary>The input's name.</summary>
    /// <returns>Its name.</returns>
    public override string ToString() => Name;

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(UncertainInput? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal IQuantity Typed(double value) => _typed(value);

    private const string FactorAdvice = "Give a factor on the nominal value: 100 % changes nothing.";

    private static Ratio Percent(double fraction) =>
        Ratio.FromDecimalFractions(fraction).ToUnit(UnitsNet.Units.RatioUnit.Percent);

    private static Shape Within<T>(Distribution<T> distribution, T minimum, T maximum, string advice)
        where T : struct, IQuantity, IComparable<T>
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Guard.Between(distribution.Minimum, minimum, maximum, advice, nameof(distribution));
        Guard.Between(distribution.Maximum, minimum, maximum, advice, nameof(distribution));
        return distribution.Shape;
    }
}
