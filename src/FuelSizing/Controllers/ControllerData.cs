using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>What a controller takes for true when it turns air into a pulse: its injector data, its fuel, its target, its corrections.</summary>
/// <remarks>
/// <para>As made it corrects for voltage by the dead times of its injector data, not for rail pressure, commands up to the whole cycle, has
/// neither closed loop nor ethanol sensor: a controller of the kind that knows nothing of boost. Each of these is changed by a method.</para>
/// <para>It is not the engine: injectors that are changed without changing this data get the pulses of the old ones.</para>
/// </remarks>
public sealed record ControllerData
{
    private static readonly Identity<ControllerData> _identity = new Identity<ControllerData>()
        .Value(data => data.Injector)
        .Number(data => data.Differential.Pascals)
        .Value(data => data.Fuel)
        .Number(data => data.FuelTemperature.Kelvins)
        .Value(data => data.Target)
        .Value(data => data.CorrectsForRailPressure)
        .Number(data => data.FixedVoltage?.Volts)
        .Number(data => data.MaximumDutyCycle.DecimalFractions)
        .Value(data => data.ClosedLoop)
        .Value(data => data.HasEthanolSensor);

    private ControllerData(Injector injector, Fuel fuel, TargetLambda target)
    {
        (Injector, Fuel, Target) = (injector, fuel, target);
        Differential = injector.RatedDifferential;
        FuelTemperature = Temperature.FromDegreesCelsius(20);
        MaximumDutyCycle = Ratio.FromPercent(100);
    }

    /// <summary>The injector that the controller believes it has: static flow, at which differential and on which liquid, dead times.</summary>
    public Injector Injector { get; }

    /// <summary>Pressure across the injector that it believes in, where it does not correct for rail pressure.</summary>
    public Pressure Differential { get; private init; }

    /// <summary>The fuel that it was calibrated for.</summary>
    public Fuel Fuel { get; }

    /// <summary>The fuel's temperature that its calibration stands for: 20 °C unless changed.</summary>
    public Temperature FuelTemperature { get; private init; }

    /// <summary>The lambda that it aims at.</summary>
    public TargetLambda Target { get; }

    /// <summary>True if it measures the pressure across the injector and corrects flow and dead time for it.</summary>
    public bool CorrectsForRailPressure { get; private init; }

    /// <summary>The one voltage whose dead time it uses; none where it corrects for the voltage that there is.</summary>
    public ElectricPotential? FixedVoltage { get; private init; }

    /// <summary>The longest pulse that it commands, as a share of the cycle.</summary>
    public Ratio MaximumDutyCycle { get; private init; }

    /// <summary>Its correction by a lambda sensor at part load; none where it has none.</summary>
    public ClosedLoop? ClosedLoop { get; private init; }

    /// <summary>True if it measures the ethanol content, and with it knows the fuel's air–fuel ratio and density.</summary>
    public bool HasEthanolSensor { get; private init; }

    /// <summary>Describes what a controller takes for true.</summary>
    /// <param name="injector">The injector it believes it has.</param>
    /// <param name="fuel">The fuel it was calibrated for.</param>
    /// <param name="target">The lambda it aims at.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ArgumentNullException">One of them is missing.</exception>
    /// <example>
    /// <code>
    /// ControllerData data = ControllerData.Of(injector, Fuel.Petrol, TargetLambda.At(0.88)).WithMaximumDutyCycle(Ratio.FromPercent(95));
    /// </code>
    /// </example>
    public static ControllerData Of(Injector injector, Fuel fuel, TargetLambda target)
    {
        ArgumentNullException.ThrowIfNull(injector);
        ArgumentNullException.ThrowIfNull(fuel);
        ArgumentNullException.ThrowIfNull(target);
        return new(injector, fuel, target);
    }

    /// <summary>The same data, believing in another pressure across the injector than the one at which its flow is rated.</summary>
    /// <param name="differential">50 to 2,000 kPa.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    public ControllerData WithDifferential(Pressure differential) =>
        this with { Differential = DeadTimeTable.WithinDifferential(differential, nameof(differential)) };

    /// <summary>The same data, calibrated with fuel of another temperature.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public ControllerData WithFuelTemperature(Temperature temperature) =>
        this with { FuelTemperature = Fuel.WithinRange(temperature, nameof(temperature)) };

    /// <summary>The same data, with a sensor for the pressure across the injector: flow and dead time follow it.</summary>
    /// <returns>The data.</returns>
    public ControllerData WithRailPressureCorrection() => this with { CorrectsForRailPressure = true };

    /// <summary>The same data, without a correction for voltage: one dead time at all voltages.</summary>
    /// <param name="fixedVoltage">The voltage whose dead time it uses, 5 to 20 V.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is outside its range.</exception>
    public ControllerData WithoutVoltageCorrection(ElectricPotential fixedVoltage) =>
        this with { FixedVoltage = DeadTimeTable.WithinVoltage(fixedVoltage, nameof(fixedVoltage)) };

    /// <summary>The same data with a longest pulse.</summary>
    /// <param name="maximumDutyCycle">10 to 100 % of the cycle.</param>
    /// <returns>The data.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The duty cycle is outside its range.</exception>
    public ControllerData WithMaximumDutyCycle(Ratio maximumDutyCycle)
    {
        DutyCycle.WithinLimit(maximumDutyCycle, nameof(maximumDutyCycle));
        return this with { MaximumDutyCycle = maximumDutyCycle };
    }

    /// <summary>The same data with a correction by a lambda sensor at part load.</summary>
    /// <param name="closedLoop">How far, and up to which load.</param>
    /// <returns>The data.</returns>
    public ControllerData WithClosedLoop(ClosedLoop closedLoop)
    {
        ArgumentNullException.ThrowIfNull(closedLoop);
        return this with { ClosedLoop = closedLoop };
    }

    /// <summary>The same data with a sensor for the ethanol content.</summary>
    /// <returns>The data.</returns>
    public ControllerData WithEthanolSensor() => this with { HasEthanolSensor = true };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ControllerData? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Injector, fuel and target.</summary>
    /// <returns>For instance <c>injector A at 300 kPa on petrol, target lambda 0.88</c>.</returns>
    public override string ToString() =>
        $"{Injector.Name} at {(CorrectsForRailPressure ? "the measured pressure" : Readable.Of(Differential))} on {(HasEthanolSensor ? "the measured blend" : Fuel.Name)}, {Target}";
}
