using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using FuelSizing.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Bench;

/// <summary>Figures for a controller as comma-separated values (RFC 4180): a line a figure, with columns of its own.</summary>
internal sealed partial class FigureList
{
    private const string LineEnd = "\r\n";

    private readonly StringBuilder _lines = new();
    private readonly ControllerFigures _figures;
    private readonly DurationUnit _time;
    private readonly PressureUnit _pressure;

    private FigureList(ControllerFigures figures, DurationUnit time, PressureUnit pressure)
    {
        _figures = figures;
        _time = time is DurationUnit.Millisecond or DurationUnit.Microsecond
            ? time
            : throw Guard.OutOfRange(nameof(time), time.ToString(), "milliseconds or microseconds", "Give the unit that the controller takes.");
        _pressure = pressure is PressureUnit.Kilopascal or PressureUnit.Bar or PressureUnit.PoundForcePerSquareInch
            ? pressure
            : throw Guard.OutOfRange(nameof(pressure), pressure.ToString(), "kPa, bar or psi", "Give the unit that the controller takes.");
    }

    private string TimeUnit => _time == DurationUnit.Millisecond ? "ms" : "us";

    private string PressureUnitText => _pressure switch
    {
        PressureUnit.Kilopascal => "kPa",
        PressureUnit.Bar => "bar",
        _ => "psi",
    };

    public static string Of(ControllerFigures figures, DurationUnit time, PressureUnit pressure, FlowScaling? scaling)
    {
        FigureList list = new(figures, time, pressure);
        list.Line(["injector", "fuel", "fuel_temperature [degC]", "quantity", "value", "minimum", "maximum", "unit", $"differential [{list.PressureUnitText}]", "voltage [V]", $"pulse [{list.TimeUnit}]", "load [%]", "basis"]);
        list.All(scaling);
        return list._lines.ToString();
    }

    private void All(FlowScaling? scaling)
    {
        Figure("fuel density", _figures.FuelDensity.KilogramsPerCubicMeter, null, null, "kg/m3", Text(_figures.FuelDensity, _figures.FuelTemperature));
        foreach (FlowFigure flow in _figures.Flows)
        {
            Flow("flow", flow.Flow, flow.MinimumFlow, flow.MaximumFlow, flow.Basis, flow.Differential);
        }

        foreach (TimeFigure time in _figures.DeadTimes.Concat(_figures.MinimumPulses))
        {
            Figure(
                time.Kind == TimeFigureKind.DeadTime ? "dead time" : "minimum pulse",
                In(time.Time),
                In(time.Minimum),
                In(time.Maximum),
                TimeUnit,
                time.Basis,
                time.Differential,
                time.Voltage);
        }

        foreach (ShortPulseFigure correction in _figures.ShortPulses)
        {
            Figure("added to a short pulse", In(correction.Added), In(correction.Minimum), In(correction.Maximum), TimeUnit, correction.Basis, correction.Differential, correction.Voltage, correction.Calculated);
            Figure("factor of a short open time", correction.Factor?.DecimalFractions, null, null, "1", correction.Basis, correction.Differential, correction.Voltage, correction.OpenTime);
        }

        foreach (FuelErrorFigure error in _figures.FuelErrors)
        {
            Figure("fuel error without pressure correction", error.Error?.Percent, error.Minimum?.Percent, error.Maximum?.Percent, "%", error.Basis, error.Differential, error.Voltage, error.Pulse);
            Figure("fuel error with pressure correction", error.CorrectedError?.Percent, null, null, "%", error.Basis, error.Differential, error.Voltage, error.Pulse);
        }

        if (scaling is not null)
        {
            Scaled(scaling);
        }

        foreach (Statement note in _figures.Notes)
        {
            Figure("note", null, null, null, string.Empty, note);
        }
    }

    private void Scaled(FlowScaling scaling)
    {
        Figure("factor of flow and air", scaling.Factor?.DecimalFractions, null, null, "1", scaling.Text);
        Flow("scaled flow", scaling.Flow, null, null, scaling.Text, _figures.Reference);
        Figure("load, torque, air and fuel figures", scaling.Falsified?.Percent, null, null, "%", scaling.Text);
        foreach (LoadLookup lookup in scaling.Lookups)
        {
            Figure("load that is read", lookup.Believed.Percent, null, null, "%", lookup.Text, load: lookup.Load);
            if (lookup.Error is { } error)
            {
                Figure("lambda error, load axis not scaled", error.Percent, null, null, "%", lookup.Text, load: lookup.Load);
            }
        }

        if (scaling.Caution is { } caution)
        {
            Figure("note", null, null, null, string.Empty, caution);
        }
    }

    private void Flow(string quantity, VolumeFlow? flow, VolumeFlow? minimum, VolumeFlow? maximum, Statement basis, Pressure differential)
    {
        double density = _figures.FuelDensity.KilogramsPerCubicMeter;
        void Of(string unit, Func<VolumeFlow, double> value) => Figure(
            quantity, flow is { } one ? value(one) : null, minimum is { } low ? value(low) : null, maximum is { } high ? value(high) : null, unit, basis, differential);
        MassFlow Mass(VolumeFlow volume) => MassFlow.FromKilogramsPerSecond(volume.CubicMetersPerSecond * density);
        Of("mL/min", volume => volume.MillilitersPerMinute);
        Of("g/s", volume => Mass(volume).GramsPerSecond);
        Of("lb/h", volume => Mass(volume).PoundsPerHour);
    }

    private void Figure(
        string quantity,
        double? value,
        double? minimum,
        double? maximum,
        string unit,
        Statement basis,
        Pressure? differential = null,
        ElectricPotential? voltage = null,
        Duration? pulse = null,
        Ratio? load = null) => Line(
        [
            _figures.Injector.Name,
            _figures.Fuel.Name,
            Number(_figures.FuelTemperature.DegreesCelsius),
            quantity,
            Number(value),
            Number(minimum),
            Number(maximum),
            unit,
            Number(differential?.As(_pressure)),
            Number(voltage?.Volts),
            Number(In(pulse)),
            Number(load?.Percent),
            basis.In(TextStyle.Metric),
        ]);

    private static Statement Text(Density density, Temperature temperature) => Statement.Of("controller.density", $"{density} at {temperature}, by the fuel's thermal expansion");

    private double? In(Duration? time) => time?.As(_time);

    // Nine decimals of the smallest unit are more than any controller takes; a rounded zero has no sign.
    private static string Number(double? value) =>
        value is { } number ? (Math.Round(number, 9) + 0.0).ToString("0.#########", CultureInfo.InvariantCulture) : string.Empty;

    private void Line(string[] cells) => _lines.AppendJoin(',', cells.Select(Cell)).Append(LineEnd);

    // A number is written as it is: only a text can be taken for a formula.
    private static string Cell(string text)
    {
        string safe = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? text : Formula().Replace(text, "'");
        return safe.AsSpan().ContainsAny(Quoted) || safe != safe.Trim()
            ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : safe;
    }

    private static readonly System.Buffers.SearchValues<char> Quoted = System.Buffers.SearchValues.Create(",;\t\"\r\n\u0085\u2028\u2029");

    // At the start of a cell, or behind what a spreadsheet of another culture takes for the end of one.
    [GeneratedRegex(@"(?<=(^|[,;|\t\r\n\u0085\u2028\u2029])[\s""']*)(?=[=+\-@\uFF1D\uFF0B\uFF0D\uFF20])", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Formula();
}
