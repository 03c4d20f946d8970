using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Tolerances of sound parts: what lies within is no fault.</summary>
/// <remarks>
/// All are standard deviations. The usual figures are common practice, no source.
/// </remarks>
public sealed record PlanTolerance
{
    private static readonly Identity<PlanTolerance> _identity = new Identity<PlanTolerance>()
        .Number(tolerance => tolerance.PumpFlow.DecimalFractions)
        .Number(tolerance => tolerance.FeedResistance.Ohms)
        .Number(tolerance => tolerance.FilterLoss.DecimalFractions)
        .Number(tolerance => tolerance.RegulatorBase.Pascals)
        .Number(tolerance => tolerance.RegulatorGain.DecimalFractions)
        .Number(tolerance => tolerance.RegulatorOnset.Pascals)
        .Number(tolerance => tolerance.InjectorFlow.DecimalFractions)
        .Number(tolerance => tolerance.DeadTime.Seconds)
        .Number(tolerance => tolerance.VolumetricEfficiency.DecimalFractions)
        .Number(tolerance => tolerance.BrakeSpecificFuelConsumption.DecimalFractions)
        .Number(tolerance => tolerance.SupplyVoltage.Volts);

    private PlanTolerance(
        Ratio pumpFlow,
        ElectricResistance feedResistance,
        Ratio filterLoss,
        Pressure regulatorBase,
        Ratio regulatorGain,
        Pressure regulatorOnset,
        Ratio injectorFlow,
        Duration deadTime,
        Ratio volumetricEfficiency,
        Ratio brakeSpecificFuelConsumption,
        ElectricPotential supplyVoltage)
    {
        PumpFlow = pumpFlow;
        FeedResistance = feedResistance;
        FilterLoss = filterLoss;
        RegulatorBase = regulatorBase;
        RegulatorGain = regulatorGain;
        RegulatorOnset = regulatorOnset;
        InjectorFlow = injectorFlow;
        DeadTime = deadTime;
        VolumetricEfficiency = volumetricEfficiency;
        BrakeSpecificFuelConsumption = brakeSpecificFuelConsumption;
        SupplyVoltage = supplyVoltage;
    }

    /// <summary>Pump flow 3 %, pump feed 10 mΩ, filter 0.3 of the new filter's loss, regulator base 5 kPa, gain 2 %, onset 2 kPa, injectors 1.5 %, dead time 0.03 ms, volumetric efficiency 2.5 %, BSFC 4 %, supply 0.3 V.</summary>
    public static PlanTolerance Default { get; } = Of();

    /// <summary>Pump's flow.</summary>
    public Ratio PumpFlow { get; }

    /// <summary>Resistance of the pumps' common feed.</summary>
    public ElectricResistance FeedResistance { get; }

    /// <summary>Filter's loss, as a share of the new filter's.</summary>
    public Ratio FilterLoss { get; }

    /// <summary>Regulator's base pressure.</summary>
    public Pressure RegulatorBase { get; }

    /// <summary>Regulator's gain, as a share of it.</summary>
    public Ratio RegulatorGain { get; }

    /// <summary>Regulator's onset.</summary>
    public Pressure RegulatorOnset { get; }

    /// <summary>Injectors' static flow.</summary>
    public Ratio InjectorFlow { get; }

    /// <summary>Dead time.</summary>
    public Duration DeadTime { get; }

    /// <summary>Volumetric efficiency and lambda together, as a share.</summary>
    public Ratio VolumetricEfficiency { get; }

    /// <summary>BSFC, as a share of it.</summary>
    public Ratio BrakeSpecificFuelConsumption { get; }

    /// <summary>Voltage of the supply under load.</summary>
    public ElectricPotential SupplyVoltage { get; }

    /// <summary>Describes them; what is not given is as in <see cref="Default"/>.</summary>
    /// <param name="pumpFlow">Pump's flow, 0.1 to 30 %; 3 % if not given.</param>
    /// <param name="feedResistance">Resistance of the pumps' common feed, 0.1 to 200 mΩ; 10 mΩ if not given.</param>
    /// <param name="filterLoss">Filter's loss, as a share of the new filter's, 1 to 500 %; 30 % if not given.</param>
    /// <param name="regulatorBase">Regulator's base pressure, 0.1 to 50 kPa; 5 kPa if not given.</param>
    /// <param name="regulatorGain">Regulator's gain, as a share of it, 0.1 to 30 %; 2 % if not given.</param>
    /// <param name="regulatorOnset">Regulator's onset, 0.1 to 30 kPa; 2 kPa if not given.</param>
    /// <param name="injectorFlow">Injectors' static flow, 0.1 to 20 %; 1.5 % if not given.</param>
    /// <param name="deadTime">Dead time, 0.001 to 1 ms; 0.03 ms if not given.</param>
    /// <param name="volumetricEfficiency">Volumetric efficiency and lambda together, as a share, 0.1 to 30 %; 2.5 % if not given.</param>
    /// <param name="brakeSpecificFuelConsumption">BSFC, as a share of it, 0.1 to 30 %; 4 % if not given.</param>
    /// <param name="supplyVoltage">Voltage of the supply under load, 0.01 to 5 V; 0.3 V if not given.</param>
    /// <returns>Them.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PlanTolerance Of(
        Ratio? pumpFlow = null,
        ElectricResistance? feedResistance = null,
        Ratio? filterLoss = null,
        Pressure? regulatorBase = null,
        Ratio? regulatorGain = null,
        Pressure? regulatorOnset = null,
        Ratio? injectorFlow = null,
        Duration? deadTime = null,
        Ratio? volumetricEfficiency = null,
        Ratio? brakeSpecificFuelConsumption = null,
        ElectricPotential? supplyVoltage = null) =>
        new(
            Guard.Between(
                pumpFlow ?? Ratio.FromPercent(3), Ratio.FromPercent(0.1), Ratio.FromPercent(30), "Give the standard deviation that a sound part may be off.", nameof(pumpFlow)),
            Guard.Between(
                feedResistance ?? ElectricResistance.FromMilliohms(10), ElectricResistance.FromMilliohms(0.1), ElectricResistance.FromMilliohms(200), "Give the standard deviation that a sound part may be off.", nameof(feedResistance)),
            Guard.Between(
                filterLoss ?? Ratio.FromPercent(30), Ratio.FromPercent(1), Ratio.FromPercent(500), "Give the standard deviation that a sound part may be off.", nameof(filterLoss)),
            Guard.Between(
                regulatorBase ?? Pressure.FromKilopascals(5), Pressure.FromKilopascals(0.1), Pressure.FromKilopascals(50), "Give the standard deviation that a sound part may be off.", nameof(regulatorBase)),
            Guard.Between(
                regulatorGain ?? Ratio.FromPercent(2), Ratio.FromPercent(0.1), Ratio.FromPercent(30), "Give the standard deviation that a sound part may be off.", nameof(regulatorGain)),
            Guard.Between(
                regulatorOnset ?? Pressure.FromKilopascals(2), Pressure.FromKilopascals(0.1), Pressure.FromKilopascals(30), "Give the standard deviation that a sound part may be off.", nameof(regulatorOnset)),
            Guard.Between(
                injectorFlow ?? Ratio.FromPercent(1.5), Ratio.FromPercent(0.1), Ratio.FromPercent(20), "Give the standard deviation that a sound part may be off.", nameof(injectorFlow)),
            Guard.Between(
                deadTime ?? Duration.FromMilliseconds(0.03), Duration.FromMilliseconds(0.001), Duration.FromMilliseconds(1), "Give the standard deviation that a sound part may be off.", nameof(deadTime)),
            Guard.Between(
                volumetricEfficiency ?? Ratio.FromPercent(2.5), Ratio.FromPercent(0.1), Ratio.FromPercent(30), "Give the standard deviation that a sound part may be off.", nameof(volumetricEfficiency)),
            Guard.Between(
                brakeSpecificFuelConsumption ?? Ratio.FromPercent(4), Ratio.FromPercent(0.1), Ratio.FromPercent(30), "Give the standard deviation that a sound part may be off.", nameof(brakeSpecificFuelConsumption)),
            Guard.Between(
                supplyVoltage ?? ElectricPotential.FromVolts(0.3), ElectricPotential.FromVolts(0.01), ElectricPotential.FromVolts(5), "Give the standard deviation that a sound part may be off.", nameof(supplyVoltage)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PlanTolerance? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Tolerances of the main parts.</summary>
    /// <returns>For instance <c>pump flow 3 %, injector flow 1.5 %, regulator 5.0 kPa</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"pump flow {PumpFlow.Percent:0.##} %, injector flow {InjectorFlow.Percent:0.##} %, regulator {Readable.PressureLoss(RegulatorBase)}");
}
