using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>An engine controller: what it knows, and what it takes for true.</summary>
internal static class ControllerForm
{
    private static readonly QuantityField<Ratio> Load =
        new("load", Measures.Share, "air of a cycle that it believes in ÷ air that fills the displacement at 101.325 kPa and 15 °C") { Example = "80 %", Range = "0 to 400 %" };

    private static readonly NumberField Lambda = new("lambda", 0.88, 0.6, 1.2, "lambda aimed at there");

    private static readonly RecordForm<TargetRow> OfTarget = new("target", "a target", values => new(values.Required(Load), values.Required(Lambda)))
    {
        { Load, row => row.Load },
        { Lambda, row => row.Lambda },
    };

    private static readonly PartField<Injector> Believed = new("injector", () => InjectorForm.Form, "the injector that it believes it has");

    private static readonly QuantityField<Pressure> Differential = new("differential", Measures.Pressure, "pressure across the injector that it believes in")
    {
        Optional = true,
        Range = "50 to 2,000 kPa",
        Default = "the injector's `rated_differential`",
    };

    private static readonly PartField<Fuel> Calibrated = new("fuel", () => FuelForm.Form, "the fuel that it was calibrated for");

    private static readonly QuantityField<Temperature> FuelTemperature = new("fuel_temperature", Measures.Temperature, "of the fuel that its calibration stands for")
    {
        Example = "20 °C",
        Optional = true,
        Range = "−30 to 80 °C",
        Default = "20 °C",
        Arguments = ["temperature"],
    };

    private static readonly ListField<TargetRow> Target =
        new("target", () => OfTarget, "lambda aimed at against load, loads rising; held beyond the ends") { IsTable = true, Minimum = 2 };

    private static readonly TruthField RailPressure = new("corrects_for_rail_pressure", "true if flow and dead time follow a sensor of the pressure across the injector") { Arguments = [] };

    private static readonly QuantityField<ElectricPotential> FixedVoltage = new("fixed_voltage", Measures.Voltage, "the one voltage whose dead time it uses")
    {
        Optional = true,
        Range = "5 to 20 V",
        Default = "it corrects for the voltage",
    };

    private static readonly QuantityField<Ratio> MaximumDutyCycle = new("maximum_duty_cycle", Measures.Share, "longest pulse that it commands, as a share of the cycle")
    {
        Example = "95 %",
        Optional = true,
        Range = "10 to 100 %",
        Default = "100 %",
    };

    private static readonly QuantityField<Ratio> Authority =
        new("authority", Measures.Share, "most that a lambda sensor raises or lowers the fuel") { Example = "15 %", Range = "0 to 50 %" };

    private static readonly QuantityField<Pressure> LoopUpTo =
        new("maximum_manifold_absolute", Measures.Pressure, "manifold pressure, absolute, over which the loop is open") { Example = "80 kPa", Range = "10 to 500 kPa" };

    private static readonly RecordForm<ClosedLoop> OfLoop =
        new("closed_loop", "a closed loop", values => ClosedLoop.Of(values.Required(Authority), values.Required(LoopUpTo)))
        {
            { Authority, loop => loop.Authority },
            { LoopUpTo, loop => loop.MaximumManifoldAbsolute },
        };

    private static readonly PartField<ClosedLoop> Loop = new("closed_loop", () => OfLoop, "correction by a lambda sensor at part load") { Optional = true, Default = "none" };

    private static readonly TruthField EthanolSensor = new("ethanol_sensor", "true if it measures the ethanol content of the fuel") { Arguments = [] };

    private static readonly RecordForm<ControllerData> OfData = new("controller_data", "the data of a controller", DataOf)
    {
        { Believed, data => data.Injector },
        { Differential, data => data.Differential },
        { Calibrated, data => data.Fuel },
        { FuelTemperature, data => data.FuelTemperature },
        { Target, data => [.. data.Target.Points.Select(point => new TargetRow(point.Load, point.Lambda))] },
        { RailPressure, data => data.CorrectsForRailPressure },
        { FixedVoltage, data => data.FixedVoltage },
        { MaximumDutyCycle, data => data.MaximumDutyCycle },
        { Loop, data => data.ClosedLoop },
        { EthanolSensor, data => data.HasEthanolSensor },
    };

    private static readonly PartField<ControllerData> Data = new("data", () => OfData, "what it takes for true");

    private static readonly QuantityField<Pressure> End =
        new("end", Measures.Pressure, "manifold pressure, absolute, at which its sensor or table ends") { Example = "105 kPa", Range = "10 to 500 kPa" };

    private static readonly QuantityField<Temperature> ChargeTemperature = new("charge_temperature", Measures.Temperature, "the charge temperature that it believes in")
    {
        Optional = true,
        Range = "−30 to 120 °C",
        Default = "it measures it",
        Arguments = ["fixedChargeTemperature"],
    };

    private static readonly RecordForm<SpeedDensityController> SpeedDensity = new(
        "speed_density_controller",
        "a controller by manifold pressure",
        values => DemandForm.EfficiencyOf(values) is { } table
            ? SpeedDensityController.Of(values.Required(Data), table, values.Required(End), values.Optional(ChargeTemperature))
            : null)
    {
        { new KindField("speed-density"), _ => null },
        { Data, controller => controller.Data },
        { DemandForm.VolumetricEfficiency, controller => DemandForm.RowsOf(controller.VolumetricEfficiency) },
        { End, controller => controller.End },
        { ChargeTemperature, controller => controller.FixedChargeTemperature },
    };

    private static readonly PartField<Atmosphere> CalibratedAt = new("calibrated_at", () => PointForm.Atmosphere, "the ambient air at which it was calibrated");

    private static readonly TruthField Barometer = new("barometer", "true if it measures ambient pressure") { Arguments = ["hasBarometer"] };

    private static readonly TruthField AirTemperature = new("air_temperature_sensor", "true if it measures the temperature of the ambient air") { Arguments = ["hasAirTemperature"] };

    private static readonly RecordForm<ThrottleController> Throttle = new(
        "throttle_controller",
        "a controller by throttle and speed",
        values => DemandForm.EfficiencyOf(values) is { } table
            ? ThrottleController.Of(
                values.Required(Data), table, values.Required(CalibratedAt), values.Required(Barometer), values.Required(AirTemperature))
            : null)
    {
        { new KindField("throttle"), _ => null },
        { Data, controller => controller.Data },
        { DemandForm.VolumetricEfficiency, controller => DemandForm.RowsOf(controller.VolumetricEfficiency) },
        { CalibratedAt, controller => controller.CalibratedAt },
        { Barometer, controller => controller.HasBarometer },
        { AirTemperature, controller => controller.HasAirTemperature },
    };

    private static readonly QuantityField<MassFlow> MeterEnd = new("maximum", Measures.MassFlow, "air flow at which the meter's reading ends")
    {
        Optional = true,
        Range = "1 to 5,000 g/s",
        Default = "no end",
    };

    private static readonly RecordForm<AirflowMeterController> Meter = new(
        "airflow_meter_controller",
        "a controller with an airflow meter",
        values => AirflowMeterController.Of(values.Required(Data), values.Optional(MeterEnd)))
    {
        { new KindField("airflow-meter"), _ => null },
        { Data, controller => controller.Data },
        { MeterEnd, controller => controller.Maximum },
    };

    private static readonly QuantityField<RotationalSpeed> Speed =
        new("speed", Measures.Speed, "engine speed, rising from row to row of one manifold pressure") { Range = "100 to 25,000 rev/min", Within = EngineSpeed.Checked };

    private static readonly QuantityField<Pressure> Manifold = new("manifold_absolute", Measures.Pressure, "in the manifold; in every row, or in none for pulses that do not change with boost")
    {
        Example = "100 kPa",
        Optional = true,
        Range = "10 to 500 kPa",
        Within = ManifoldAbsolute.Within,
    };

    private static readonly QuantityField<Duration> Pulse =
        new("pulse", Measures.Time, "as the log has it, dead time included") { Example = "9.4 ms", Range = "0.1 to 200 ms" };

    private static readonly RecordForm<RecordedPulse> OfPulse = new(
        "recorded_pulse", "a recorded pulse", values => new(values.Required(Speed), values.Optional(Manifold), values.Required(Pulse)))
    {
        { Speed, row => row.Speed },
        { Manifold, row => row.Manifold },
        { Pulse, row => row.Pulse },
    };

    private static readonly ListField<RecordedPulse> Pulses =
        new("pulses", () => OfPulse, "a row for each speed, or for each pair of speed and manifold pressure") { IsTable = true, Minimum = 2, EachOrNone = Manifold.Name };

    private static readonly QuantityField<ElectricPotential> RecordedAt =
        new("recorded_at", Measures.Voltage, "voltage at the injectors when the pulses were recorded") { Range = "5 to 20 V", Within = DeadTimeTable.WithinVoltage };

    private static readonly QuantityField<Pressure> CorrectedFor =
        new("differential", Measures.Pressure, "pressure across the injector whose dead times it uses") { Range = "50 to 2,000 kPa", Within = DeadTimeTable.WithinDifferential };

    private static readonly RecordForm<VoltageCorrection> OfCorrection = new(
        "voltage_correction",
        "a voltage correction",
        values => InjectorForm.TableOf(values) is { } table ? new(table, values.Required(RecordedAt), values.Required(CorrectedFor)) : null)
    {
        { RecordedAt, correction => correction.RecordedAt },
        { CorrectedFor, correction => correction.Differential },
        { InjectorForm.DeadTimes, correction => InjectorForm.RowsOf(correction.DeadTime) },
    };

    private static readonly PartField<VoltageCorrection> Correction =
        new("voltage_correction", () => OfCorrection, "how the pulses follow the voltage") { Optional = true, Default = "the same at every voltage" };

    private static readonly RecordForm<RecordedPulseController> Recorded = new("recorded_pulse_controller", "recorded pulses", RecordedOf)
    {
        { new KindField("recorded"), _ => null },
        { Pulses, controller => controller.Rows },
        { Correction, controller => controller.Correction },
    };

    /// <summary>Any controller but the one that is assumed.</summary>
    public static ChoiceForm<EngineController> Form { get; } = new(
        "controller",
        "a controller",
        Variant<EngineController>.Of(SpeedDensity),
        Variant<EngineController>.Of(Throttle),
        Variant<EngineController>.Of(Meter),
        Variant<EngineController>.Of(Recorded));

    private static ControllerData? DataOf(FieldValues values)
    {
        (Ratio, double)[] points = [.. values.Required(Target).Select(row => (row.Load, row.Lambda))];
        if (values.Made(Target, count => count == 1 ? TargetLambda.At(points[0].Item2) : TargetLambda.Of(points[..count])) is not { } target)
        {
            return null;
        }

        ControllerData data = ControllerData.Of(values.Required(Believed), values.Required(Calibrated), target);
        data = values.Optional(Differential) is { } differential ? data.WithDifferential(differential) : data;
        data = values.Optional(FuelTemperature) is { } temperature ? data.WithFuelTemperature(temperature) : data;
        data = values.Required(RailPressure) ? data.WithRailPressureCorrection() : data;
        data = values.Optional(FixedVoltage) is { } voltage ? data.WithoutVoltageCorrection(voltage) : data;
        data = values.Optional(MaximumDutyCycle) is { } duty ? data.WithMaximumDutyCycle(duty) : data;
        data = values.Optional(Loop) is { } loop ? data.WithClosedLoop(loop) : data;
        return values.Required(EthanolSensor) ? data.WithEthanolSensor() : data;
    }

    private static RecordedPulseController? RecordedOf(FieldValues values)
    {
        IReadOnlyList<RecordedPulse> rows = values.Required(Pulses);
        RecordedPulse[][] byManifold = [.. rows.GroupBy(row => row.Manifold?.Pascals).Select(group => group.ToArray())];
        RecordedPulseController? made = values.Checked(
            () => byManifold[0][0].Manifold is null
                ? RecordedPulseController.BySpeed([.. rows.Select(row => (row.Speed, row.Pulse))])
                : RecordedPulseController.Of(
                    [.. byManifold[0].Select(row => row.Speed)],
                    [.. byManifold.Select(group => group[0].Manifold!.Value)],
                    [.. byManifold.Select(group => group.Select(row => row.Pulse).ToArray())]),
            ("points", Pulses),
            ("speeds", Pulses),
            ("manifoldAbsolute", Pulses),
            ("pulses", Pulses));
        if (made is not null && byManifold.Any(group => !group.Select(row => row.Speed.RevolutionsPerSecond).SequenceEqual(byManifold[0].Select(row => row.Speed.RevolutionsPerSecond))))
        {
            values.Wrong(Pulses, Statement.Of("file.speeds-differ", $"has other speeds at one manifold pressure than at the first. Give a pulse for every pair of a speed and a manifold pressure, in the same order."));
            return null;
        }

        return made is not null && values.Optional(Correction) is { } correction
            ? made.WithVoltageCorrection(correction.DeadTime, correction.RecordedAt, correction.Differential)
            : made;
    }

    private sealed record TargetRow(Ratio Load, double Lambda);
}
