using System.Globalization;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes what each pump gives where the circuit settles: the voltage that its feed leaves it, its curves carried there, its flow and its current.</summary>
internal sealed class PumpWorking(Derivation to, Traced supply)
{
    // A flow that is further off was read where a curve stands upright, or a relief valve is open.
    private const double SameFlow = 1e-6;

    /// <summary>Writes the lines, a pump after the other.</summary>
    /// <param name="state">Where the circuit settles.</param>
    /// <param name="fed">Voltage that the pumps' wiring is fed with.</param>
    /// <param name="rise">Rise of all pumps together.</param>
    public void Write(in CircuitState state, Traced fed, Traced rise)
    {
        PumpPoint[] pumps = [.. state.Pumps];
        for (int place = 0; place < pumps.Length; place++)
        {
            if (!pumps[place].IsStopped)
            {
                Write(pumps[place], (place + 1).ToString(CultureInfo.InvariantCulture), fed, pumps.Length == 1 ? rise : null);
            }
        }
    }

    private void Write(in PumpPoint point, string mark, Traced fed, Traced? rise)
    {
        Pump pump = point.Pump;
        string name = pump.Name;
        Traced against = rise is { } all && all.Value == point.Rise ? all : Pascals($"pressure rise over {name}", Derivation.Marked("Δp_p", mark), point.Rise, "with the flow: pumps in parallel have one rise, pumps in series one flow");
        bool isPlain = pump is { Converter: null, IsDriven: false } && point.SharedDrop == 0 && (point.Given == fed.Value || point.Given == supply.Value);
        double given = pump.FlowAtMotor(point.Rise, point.Voltage, PumpReading.Estimate);
        if (!isPlain || !pump.CurvesCover(point.Rise, point.Voltage) || !(Math.Abs(given - point.Flow) <= SameFlow * point.Flow))
        {
            to.Table(
                $"flow through {name}",
                Derivation.Marked("Q_p", mark),
                point.Flow,
                "m³/s",
                to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(point.Flow)),
                $"its curves as they are carried to {to.Style.Of(ElectricPotential.FromVolts(point.Voltage))} at its motor{(isPlain ? "; a curve stands upright, or ends, here" : string.Empty)}");
            return;
        }

        Traced source = point.Given == fed.Value ? fed : supply;
        Traced volts = pump.IsFedWithoutLoss ? source : AtMotor(point, mark);
        (PumpCurve lower, PumpCurve upper) = pump.CurvesAround(point.Voltage);
        Traced flow = Both(lower, upper, volts, mark, (curve, at) => Flow(pump, curve, against, volts, at));
        if (pump.Condition.DecimalFractions != 1)
        {
            flow *= to.Given($"condition of {name}", Derivation.Marked("y_P", mark), pump.Condition.DecimalFractions, "1", to.Style.Of(pump.Condition), name);
        }

        to.Step($"flow through {name}", Derivation.Marked("Q_p", mark), flow, "m³/s", to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(point.Flow)), "its curve carried to the voltage at its motor by the affinity laws", law: Carried(lower, volts) ? "PumpScaling.Flow" : null);
        if (point.Current is { } amperes)
        {
            Traced current = to.Step(
                $"current of {name}",
                Derivation.Marked("I", mark),
                Both(lower, upper, volts, mark, (curve, at) => Current(pump, curve, against, volts, at)),
                "A",
                to.Style.Of(ElectricCurrent.FromAmperes(amperes)),
                "its curve carried to the voltage at its motor by the affinity laws", law: Carried(lower, volts) ? "PumpScaling.Current" : null);
            if (!pump.IsFedWithoutLoss)
            {
                Traced left = VoltageDrop.AtMotor(source, current, to.Given($"resistance of the feed of {name}, out and back", Derivation.Marked("R", mark), pump.FeedOhms, "Ω", to.Style.Of(ElectricResistance.FromOhms(pump.FeedOhms)), pump.Feed?.Name ?? name));
                to.Step($"voltage that its feed leaves {name}", Derivation.Marked("V_R", mark), left, "V", Volts(left.Value), "Ohm's law", law: "VoltageDrop.AtMotor");
            }
        }
    }

    private Traced AtMotor(in PumpPoint point, string mark)
    {
        (string found, string left) = (Derivation.Marked("V_m", mark), Derivation.Marked("V_R", mark));
        return to.Solved($"voltage at the motor of {point.Pump.Name}", found, point.Voltage, "V", Volts(point.Voltage), $"solved: {found} = {left}");
    }

    /// <summary>A figure by the curves measured below and above a voltage, straight between them; by one alone where there is but one.</summary>
    private static Traced Both(PumpCurve lower, PumpCurve upper, Traced volts, string mark, Func<PumpCurve, string, (Traced Volts, Traced Figure)> by)
    {
        (Traced below, Traced low) = by(lower, mark + "1");
        if (ReferenceEquals(lower, upper))
        {
            return low;
        }

        (Traced above, Traced high) = by(upper, mark + "2");
        return StraightLine.Through(below, low, above, high, volts);
    }

    private (Traced Volts, Traced Figure) Flow(Pump pump, PumpCurve curve, Traced rise, Traced volts, string mark)
    {
        (Traced measured, Traced? ratio) = Ratio(pump, curve, volts, mark);
        Traced at = ratio is { } speed
            ? Pascals($"rise of that curve that answers to it, {Place(pump, curve)}", Derivation.Marked("Δp_p0", mark), PumpScaling.MeasuredPressure(rise, speed))
            : rise;
        Traced read = TableReading.Of(
            to,
            curve.Flow,
            at,
            Axes(curve, "flow", "m³/s", flow => to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow))),
            new(
                $"flow of that curve, {Place(pump, curve)}",
                Derivation.Marked("Q_p0", mark),
                to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(curve.Flow.Nearest(at.Value))),
                $"curve of {pump.Name} at {Volts(curve.Volts)}",
                IsIntermediate: true));
        return (measured, ratio is { } by ? PumpScaling.Flow(read, by) : read);
    }

    private (Traced Volts, Traced Figure) Current(Pump pump, PumpCurve curve, Traced rise, Traced volts, string mark)
    {
        Traced measured = Traced.Given(Derivation.Marked("V_0", mark), curve.Volts);
        bool carried = Carried(curve, volts);
        Traced speed = Traced.Given(Derivation.Marked("s", mark), pump.SpeedRatio(curve, volts.Value));
        Traced at = carried ? Traced.Given(Derivation.Marked("Δp_p0", mark), PumpScaling.MeasuredPressure<Real>(rise.Value, speed.Value).Value) : rise;
        Traced read = TableReading.Of(
            to,
            curve.Current!,
            at,
            Axes(curve, "current", "A", amperes => to.Style.Of(ElectricCurrent.FromAmperes(amperes))),
            new(
                $"current of that curve, {Place(pump, curve)}",
                Derivation.Marked("I_0", mark),
                to.Style.Of(ElectricCurrent.FromAmperes(curve.Current!.Nearest(at.Value))),
                $"curve of {pump.Name} at {Volts(curve.Volts)}",
                IsIntermediate: true));
        return (measured, carried ? PumpScaling.Current(read, speed) : read);
    }

    // The same voltage needs no ratio; over the highest that was measured the curve is used unchanged.
    private static bool Carried(PumpCurve curve, Traced volts) => curve.Volts != volts.Value;

    private (Traced Measured, Traced? Ratio) Ratio(Pump pump, PumpCurve curve, Traced volts, string mark)
    {
        Traced measured = to.Given($"voltage of a measured curve, {Place(pump, curve)}", Derivation.Marked("V_0", mark), curve.Volts, "V", Volts(curve.Volts), pump.Name);
        if (!Carried(curve, volts))
        {
            return (measured, null);
        }

        double speed = pump.SpeedRatio(curve, volts.Value);
        Traced ratio = PumpScaling.SpeedRatio(volts, measured);
        string symbol = Derivation.Marked("s", mark);
        string name = $"speed ratio to that curve, {Place(pump, curve)}";
        return (measured, ratio.Value == speed
            ? to.Step(name, symbol, ratio, "1", Term.Text(speed), "speed in proportion to voltage: common practice, no source", intermediate: true, law: "PumpScaling.SpeedRatio")
            : to.Table(name, symbol, speed, "1", Term.Text(speed), "unchanged over the highest voltage that was measured", intermediate: true));
    }

    private TableAxes Axes(PumpCurve curve, string name, string unit, Func<double, string> readable) => new(
        $"curve of {curve.Name} at {Volts(curve.Volts)}", "rise", "Pa", pascals => to.Style.Of(Pressure.FromPascals(pascals)), name, unit, readable);

    private string Place(Pump pump, PumpCurve curve) => $"{pump.Name} at {Volts(curve.Volts)}";

    private Traced Pascals(string name, string symbol, Traced number) =>
        to.Step(name, symbol, number, "Pa", to.Style.Of(Pressure.FromPascals(number.Value)), "affinity laws", intermediate: true, law: "PumpScaling.MeasuredPressure");

    private Traced Pascals(string name, string symbol, double value, string source) =>
        to.Table(name, symbol, value, "Pa", to.Style.Of(Pressure.FromPascals(value)), source);

    private string Volts(double volts) => to.Style.Of(ElectricPotential.FromVolts(volts));
}
