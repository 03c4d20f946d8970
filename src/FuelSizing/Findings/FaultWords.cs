using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Faults in words: how large, and what to do.</summary>
internal static class FaultWords
{
    /// <summary>Puts a hypothesis in words.</summary>
    public static FaultFinding Of(RunCheck check, Diagnosis diagnosis, Hypothesis hypothesis) =>
        new(
            hypothesis.Fault,
            Name(hypothesis.Fault),
            diagnosis.EvidenceOf(hypothesis),
            Size(check, diagnosis, hypothesis),
            Advice(check, hypothesis.Fault));

    /// <summary>The measurement that tells two faults apart.</summary>
    public static string Between(RunFault first, RunFault second)
    {
        RunFault[] pair = [first, second];
        return pair.All(IsOfSupply)
            ? "Measure pressure on both sides of the filter and voltage at the pump's terminals under load, or pull again to full boost with the supply a volt lower, so that the pump is the limit over a wide range of flow."
            : pair.All(fault => fault is RunFault.RailSensorOffset or RunFault.WrongBasePressure)
            ? "Check the rail sensor against a calibrated gauge with the engine idling."
            : pair.Contains(RunFault.ManifoldSensorOffset)
            ? "Record some seconds with the engine at rest: the manifold must then read the barometer's pressure."
            : pair.Any(fault => fault is RunFault.WrongInjectorSize or RunFault.AirOffPlan or RunFault.FlowMeterOff)
            ? "Record fuel flow with a meter of known accuracy, or have the injectors flow-tested."
            : "Record more boost levels, each over the whole range of speed.";
    }

    private static bool IsOfSupply(RunFault fault) =>
        fault is RunFault.WeakPump or RunFault.VoltageDrop or RunFault.CloggedFilter;

    private static string Size(RunCheck check, Diagnosis diagnosis, Hypothesis hypothesis)
    {
        if (hypothesis.Fit is not { } fit)
        {
            return hypothesis.Fault switch
            {
                RunFault.VoltageDrop =>
                    $"the supply is lower than the planned {Readable.Of(check.SupplyVoltage)}",
                RunFault.ManifoldSensorOffset =>
                    $"manifold pressure reads {Signed(diagnosis.Model.Points.ManifoldAtRest ?? 0)} with the engine at rest",
                _ => "not enough to size",
            };
        }

        double value = fit.Value(QuantityOf(hypothesis.Fault));
        double half = 1.96 * fit.Error(QuantityOf(hypothesis.Fault));
        return hypothesis.Fault switch
        {
            RunFault.WeakPump => $"the pump delivers {Factor(value, half)} of its planned flow",
            RunFault.VoltageDrop =>
                $"{Readable.Of(ElectricResistance.FromOhms(value))} more than planned in the pump's feed (±{Readable.Of(ElectricResistance.FromOhms(half))})",
            RunFault.CloggedFilter when check.HasFilter => string.Create(
                CultureInfo.InvariantCulture,
                $"the filter takes {value:0.0} times the new filter's loss more than planned (±{half:0.0})"),
            RunFault.CloggedFilter => "a restriction before the rail takes pressure that was not planned",
            RunFault.WrongBasePressure => $"the regulator's base is {Signed(value)} off its setting (±{Readable.Of(Pressure.FromPascals(half))})",
            RunFault.WrongGain => string.Create(
                CultureInfo.InvariantCulture,
                $"the regulator's gain is {check.Regulator.Gain + value:0.00} (±{half:0.00}) against {check.Regulator.Gain:0.00} set"),
            RunFault.WrongOnset =>
                $"the gain sets in at {Readable.Boost(Pressure.FromPascals(check.Regulator.Onset + value))} (±{Readable.Boost(Pressure.FromPascals(half))}) against {Readable.Boost(Pressure.FromPascals(check.Regulator.Onset))} set",
            RunFault.WrongInjectorSize => $"the injectors pass {Factor(value, half)} of their planned flow",
            RunFault.AirOffPlan => $"the engine draws {Factor(value, half)} of the planned air, or lambda is misread by as much",
            RunFault.RailSensorOffset => $"rail pressure reads {Signed(value)} off the true (±{Readable.Of(Pressure.FromPascals(half))})",
            RunFault.ManifoldSensorOffset => $"manifold pressure reads {Signed(value)} off the true (±{Readable.Of(Pressure.FromPascals(half))})",
            _ => $"the flow meter reads {Factor(value, half)} of the true flow",
        };
    }

    private static RunQuantity QuantityOf(RunFault fault) => fault switch
    {
        RunFault.WeakPump => RunQuantity.PumpFlow,
        RunFault.VoltageDrop => RunQuantity.FeedResistance,
        RunFault.CloggedFilter => RunQuantity.FilterLoss,
        RunFault.WrongBasePressure => RunQuantity.RegulatorBase,
        RunFault.WrongGain => RunQuantity.RegulatorGain,
        RunFault.WrongOnset => RunQuantity.RegulatorOnset,
        RunFault.WrongInjectorSize => RunQuantity.InjectorFlow,
        RunFault.AirOffPlan => RunQuantity.VolumetricEfficiency,
        RunFault.RailSensorOffset => RunQuantity.RailSensor,
        RunFault.ManifoldSensorOffset => RunQuantity.ManifoldSensor,
        _ => RunQuantity.FlowMeter,
    };

    /// <summary>A fault's name in words.</summary>
    public static string Name(RunFault fault) => fault switch
    {
        RunFault.None => "none",
        RunFault.WeakPump => "weak pump",
        RunFault.VoltageDrop => "low supply voltage or excessive voltage drop",
        RunFault.CloggedFilter => "clogged filter or restriction",
        RunFault.WrongBasePressure => "wrong base pressure",
        RunFault.WrongGain => "wrong gain",
        RunFault.WrongOnset => "wrong onset",
        RunFault.WrongInjectorSize => "wrong injector size",
        RunFault.AirOffPlan => "air off the plan, or lambda misread",
        RunFault.RailSensorOffset => "rail sensor off",
        RunFault.ManifoldSensorOffset => "manifold sensor off",
        RunFault.FlowMeterOff => "flow meter off",
        _ => "unexplained",
    };

    /// <summary>What to change or measure.</summary>
    public static string Advice(RunCheck check, RunFault fault) => fault switch
    {
        RunFault.WeakPump => "Test the pump's flow on the bench at its voltage; fit another if it is short.",
        RunFault.VoltageDrop => "Measure voltage at the pump's terminals and at the battery under load; repair connections, relay or wiring, or the charging system.",
        RunFault.CloggedFilter => check.HasFilter
            ? "Change the filter, and look for what clogged it; check strainer and lines for kinks."
            : "Check strainer and lines for kinks and dirt.",
        RunFault.WrongBasePressure => "Set the base pressure anew with the hose off, against a calibrated gauge.",
        RunFault.WrongGain => "Set the gain anew, or plan with the gain found.",
        RunFault.WrongOnset => "Set the onset anew; check the hose to the manifold for leaks.",
        RunFault.WrongInjectorSize => "Have the injectors flow-tested, and enter the flow found in the plan and in the control unit.",
        RunFault.AirOffPlan => "Calibrate the lambda sensor; if it is right, enter the volumetric efficiency found in the plan.",
        RunFault.RailSensorOffset => "Check the rail sensor against a calibrated gauge, and correct or replace it.",
        RunFault.ManifoldSensorOffset => "Compare the manifold sensor with the barometer at rest, and correct or change it.",
        RunFault.FlowMeterOff => "Check the flow meter against a weighed quantity.",
        RunFault.Unexplained => "Do not run the car harder. Look for more than one fault, and for a wrong figure in the plan.",
        _ => "Nothing needs to change.",
    };

    private static string Factor(double logarithm, double half) => string.Create(
        CultureInfo.InvariantCulture,
        $"{100 * Math.Exp(logarithm):0} % ({100 * Math.Exp(logarithm - half):0} to {100 * Math.Exp(logarithm + half):0} %)");

    private static string Signed(double pascals) =>
        $"{(pascals > 0 ? "+" : string.Empty)}{Readable.Of(Pressure.FromPascals(pascals))}";
}
