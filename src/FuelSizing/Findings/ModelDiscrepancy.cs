using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>What a real car and its recording do that the plan's equations do not know: no fault, and not to be taken for one.</summary>
/// <remarks>
/// All are standard deviations, but for the delay of lambda, which has an expected value as well, and for the regulator's slope and the lag of pressure
/// sensors, which go one way only: of these the root mean square of a half-normal distribution. They are fitted with everything else and
/// then averaged over, so that a fault is named only where it is needed beyond them. Kennedy and O'Hagan, Bayesian calibration of computer
/// models, J. R. Statist. Soc. B 63, 2001, call it model discrepancy. The default figures are common practice, no source. Zero leaves one out.
/// </remarks>
/// <example>
/// <code>
/// ModelDiscrepancy car = ModelDiscrepancy.Of(lambdaDelay: Duration.FromMilliseconds(80), regulatorSlope: Pressure.FromKilopascals(4));
/// Console.WriteLine(car);
/// </code>
/// </example>
public sealed record ModelDiscrepancy
{
    private const string Cure = "Give the standard deviation, as far as sound cars differ; zero leaves it out.";

    private static readonly Identity<ModelDiscrepancy> _identity = new Identity<ModelDiscrepancy>()
        .Number(one => one.AirByBoost.DecimalFractions)
        .Number(one => one.ChargeTemperature.Kelvins)
        .Number(one => one.AirBySpeed.DecimalFractions)
        .Number(one => one.RegulatorSlope.Pascals)
        .Number(one => one.LambdaDelay.Seconds)
        .Number(one => one.LambdaDelayDeviation.Seconds)
        .Number(one => one.Clock.Seconds)
        .Number(one => one.PressureLag.Seconds)
        .Number(one => one.FuelDensity.DecimalFractions);

    private ModelDiscrepancy(
        Ratio airByBoost,
        TemperatureDelta chargeTemperature,
        Ratio airBySpeed,
        Pressure regulatorSlope,
        Duration lambdaDelay,
        Duration lambdaDelayDeviation,
        Duration clock,
        Duration pressureLag,
        Ratio fuelDensity)
    {
        AirByBoost = airByBoost;
        ChargeTemperature = chargeTemperature;
        AirBySpeed = airBySpeed;
        RegulatorSlope = regulatorSlope;
        LambdaDelay = lambdaDelay;
        LambdaDelayDeviation = lambdaDelayDeviation;
        Clock = clock;
        PressureLag = pressureLag;
        FuelDensity = fuelDensity;
    }

    /// <summary>
    /// Air 4 % and charge temperature 13 K in each 100 kPa of boost, air over speed 2 %, regulator 10 kPa from all fuel returning to none,
    /// lambda 0.2 s late ± 0.12 s, clocks 0.05 s, pressure sensors 0.04 s, density 0.8 %.
    /// </summary>
    public static ModelDiscrepancy Default { get; } = Of();

    /// <summary>Nothing but what the plan's equations know, as on a run that they have made.</summary>
    public static ModelDiscrepancy None { get; } = Of(
        Ratio.Zero, TemperatureDelta.Zero, Ratio.Zero, Pressure.Zero, Duration.Zero, Duration.Zero, Duration.Zero, Duration.Zero, Ratio.Zero);

    /// <summary>Air that volumetric efficiency lacks or has over, in each 100 kPa of boost: back-pressure.</summary>
    public Ratio AirByBoost { get; }

    /// <summary>Temperature of the charge over or under the planned, in each 100 kPa of boost.</summary>
    public TemperatureDelta ChargeTemperature { get; }

    /// <summary>Air over or under the plan's table at any engine speed.</summary>
    public Ratio AirBySpeed { get; }

    /// <summary>How far the regulator's pressure falls from all fuel returning to none.</summary>
    public Pressure RegulatorSlope { get; }

    /// <summary>How late lambda is expected: the way of the gas and the sensor's lag.</summary>
    public Duration LambdaDelay { get; }

    /// <summary>How far that may be off.</summary>
    public Duration LambdaDelayDeviation { get; }

    /// <summary>How far the clock of a separate device (lambda, fuel flow) may be off the rest.</summary>
    public Duration Clock { get; }

    /// <summary>Lag of a pressure sensor and its filter.</summary>
    public Duration PressureLag { get; }

    /// <summary>Density of the fuel.</summary>
    public Ratio FuelDensity { get; }

    /// <summary>Describes it; what is not given is as in <see cref="Default"/>.</summary>
    /// <param name="airByBoost">Air, in each 100 kPa of boost, 0 to 30 %; 4 % if not given.</param>
    /// <param name="chargeTemperature">Charge temperature, in each 100 kPa of boost, 0 to 80 K; 13 K if not given.</param>
    /// <param name="airBySpeed">Air at any engine speed, 0 to 20 %; 2 % if not given.</param>
    /// <param name="regulatorSlope">Regulator from all fuel returning to none, 0 to 100 kPa; 10 kPa if not given.</param>
    /// <param name="lambdaDelay">How late lambda is expected, 0 to 2 s; 0.2 s if not given.</param>
    /// <param name="lambdaDelayDeviation">How far that may be off, 0 to 1 s; 0.12 s if not given.</param>
    /// <param name="clock">Clock of a separate device, 0 to 2 s; 0.05 s if not given.</param>
    /// <param name="pressureLag">Lag of a pressure sensor, 0 to 0.5 s; 0.04 s if not given.</param>
    /// <param name="fuelDensity">Density of the fuel, 0 to 10 %; 0.8 % if not given.</param>
    /// <returns>It.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ModelDiscrepancy Of(
        Ratio? airByBoost = null,
        TemperatureDelta? chargeTemperature = null,
        Ratio? airBySpeed = null,
        Pressure? regulatorSlope = null,
        Duration? lambdaDelay = null,
        Duration? lambdaDelayDeviation = null,
        Duration? clock = null,
        Duration? pressureLag = null,
        Ratio? fuelDensity = null) =>
        new(
            Guard.Between(airByBoost ?? Ratio.FromPercent(4), Ratio.Zero, Ratio.FromPercent(30), Cure, nameof(airByBoost)),
            Guard.Between(
                chargeTemperature ?? TemperatureDelta.FromKelvins(13), TemperatureDelta.Zero, TemperatureDelta.FromKelvins(80), Cure, nameof(chargeTemperature)),
            Guard.Between(airBySpeed ?? Ratio.FromPercent(2), Ratio.Zero, Ratio.FromPercent(20), Cure, nameof(airBySpeed)),
            Guard.Between(
                regulatorSlope ?? Pressure.FromKilopascals(10), Pressure.Zero, Pressure.FromKilopascals(100), Cure, nameof(regulatorSlope)),
            Guard.Between(
                lambdaDelay ?? Duration.FromMilliseconds(200), Duration.Zero, Duration.FromSeconds(2), "Give how late lambda comes; zero for a log that allows for it.", nameof(lambdaDelay)),
            Guard.Between(
                lambdaDelayDeviation ?? Duration.FromMilliseconds(120), Duration.Zero, Duration.FromSeconds(1), Cure, nameof(lambdaDelayDeviation)),
            Guard.Between(clock ?? Duration.FromMilliseconds(50), Duration.Zero, Duration.FromSeconds(2), Cure, nameof(clock)),
            Guard.Between(pressureLag ?? Duration.FromMilliseconds(40), Duration.Zero, Duration.FromMilliseconds(500), Cure, nameof(pressureLag)),
            Guard.Between(fuelDensity ?? Ratio.FromPercent(0.8), Ratio.Zero, Ratio.FromPercent(10), Cure, nameof(fuelDensity)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ModelDiscrepancy? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The main ones.</summary>
    /// <returns>For instance <c>air 4 % in 100 kPa of boost, regulator 10 kPa, lambda 0.20 s late</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"air {AirByBoost.Percent:0.##} % in 100 kPa of boost, regulator {Readable.PressureLoss(RegulatorSlope)}, lambda {LambdaDelay.Seconds:0.00} s late");
}
