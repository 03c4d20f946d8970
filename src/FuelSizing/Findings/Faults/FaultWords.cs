using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Faults in words: how large, and what to do.</summary>
internal static class FaultWords
{
    // A figure that the run leaves open may lie anywhere; a factor of 1,000 says that as well as a larger one.
    private static readonly double Widest = Math.Log(1000);

    /// <summary>Puts a suspected fault in words.</summary>
    public static FaultFinding Of(RunCheck check, Diagnosis diagnosis, Suspect suspect) =>
        new(
            suspect.Fault,
            Name(suspect.Fault),
            Ratio.FromDecimalFractions(suspect.Probability),
            suspect.Evidence,
            Size(check, diagnosis, suspect),
            Advice(check, suspect.Fault));

    private static Statement Size(RunCheck check, Diagnosis diagnosis, Suspect suspect)
    {
        if (suspect.Fit is not { } fit)
        {
            return suspect.Fault switch
            {
                RunFault.VoltageDrop => Statement.Of("fault.low-supply", $"the supply is lower than the planned {check.SupplyVoltage}"),
                RunFault.ManifoldSensorOffset => Statement.Of(
                    "fault.manifold-sensor-at-rest",
                    $"manifold pressure reads {Pressure.FromPascals(diagnosis.Model.Points.ManifoldAtRest ?? 0):pressure-offset} with the engine at rest"),
                _ => Statement.Of("fault.no-size", $"{Name(suspect.Fault)}, not enough to say how large"),
            };
        }

        double value = fit.Value(QuantityOf(suspect.Fault));
        double half = 1.96 * fit.Error(QuantityOf(suspect.Fault));
        Pressure Off() => Pressure.FromPascals(value);
        Pressure Within() => Pressure.FromPascals(half);
        Ratio Factor(double away) => Ratio.FromDecimalFractions(Math.Exp(Math.Clamp(value + away, -Widest, Widest)));
        return suspect.Fault switch
        {
            RunFault.WeakPump => Statement.Of("fault.weak-pump", $"the pump delivers {Factor(0)} ({Factor(-half)} to {Factor(half)}) of its planned flow"),
            RunFault.VoltageDrop => Statement.Of(
                "fault.voltage-drop",
                $"{ElectricResistance.FromOhms(value)} more than planned in the pump's feed (±{ElectricResistance.FromOhms(half)})"),
            RunFault.CloggedFilter when check.HasFilter => Statement.Of(
                "fault.clogged-filter", $"the filter's pressure drop exceeds the plan by {value:0.0} times that of a new filter (±{half:0.0})"),
            RunFault.CloggedFilter => Statement.Of("fault.restriction", $"a restriction before the rail takes pressure that was not planned"),
            RunFault.WrongBasePressure => Statement.Of(
                "fault.wrong-base-pressure", $"the regulator's base is {Off():pressure-offset} off its setting (±{Within()})"),
            RunFault.WrongGain => Statement.Of(
                "fault.wrong-gain",
                $"the regulator's gain is {check.Regulator.Gain + value:0.00} (±{half:0.00}) against {check.Regulator.Gain:0.00} set"),
            RunFault.WrongOnset => Statement.Of(
                "fault.wrong-onset",
                $"the gain sets in at {Pressure.FromPascals(check.Regulator.Onset + value):boost} (±{Within():boost}) against {Pressure.FromPascals(check.Regulator.Onset):boost} set"),
            RunFault.WrongInjectorSize => Statement.Of(
                "fault.wrong-injector-size", $"the injectors pass {Factor(0)} ({Factor(-half)} to {Factor(half)}) of their planned flow"),
            RunFault.AirOffPlan => Statement.Of(
                "fault.air-off-plan", $"the engine draws {Factor(0)} ({Factor(-half)} to {Factor(half)}) of the planned air, or lambda is misread by as much"),
            RunFault.RailSensorOffset => Statement.Of(
                "fault.rail-sensor", $"rail pressure reads {Off():pressure-offset} off the true (±{Within()})"),
            RunFault.ManifoldSensorOffset => Statement.Of(
                "fault.manifold-sensor", $"manifold pressure reads {Off():pressure-offset} off the true (±{Within()})"),
            _ => Statement.Of("fault.flow-meter", $"the flow meter reads {Factor(0)} ({Factor(-half)} to {Factor(half)}) of the true flow"),
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
    public static Statement Advice(RunCheck check, RunFault fault) => fault switch
    {
        RunFault.WeakPump => Statement.Of("remedy.weak-pump", $"Test the pump's flow on the bench at its voltage; fit another if it is short."),
        RunFault.VoltageDrop => Statement.Of(
            "remedy.voltage-drop",
            $"Measure voltage at the pump's terminals and at the battery under load; repair connections, relay, wiring or the charging system."),
        RunFault.CloggedFilter => check.HasFilter
            ? Statement.Of("remedy.clogged-filter", $"Change the filter, and look for what clogged it; check strainer and lines for kinks.")
            : Statement.Of("remedy.restriction", $"Check strainer and lines for kinks and dirt."),
        RunFault.WrongBasePressure => Statement.Of(
            "remedy.wrong-base-pressure", $"Set the base pressure anew with the hose off, against a calibrated gauge."),
        RunFault.WrongGain => Statement.Of("remedy.wrong-gain", $"Set the gain anew, or plan with the gain found."),
        RunFault.WrongOnset => Statement.Of("remedy.wrong-onset", $"Set the onset anew; check the hose to the manifold for leaks."),
        RunFault.WrongInjectorSize => Statement.Of(
            "remedy.wrong-injector-size", $"Have the injectors flow-tested, and enter the flow found in the plan and in the control unit."),
        RunFault.AirOffPlan => Statement.Of(
            "remedy.air-off-plan", $"Calibrate the lambda sensor; if it is right, enter the volumetric efficiency found in the plan."),
        RunFault.RailSensorOffset => Statement.Of(
            "remedy.rail-sensor", $"Check the rail sensor against a calibrated gauge, and correct or replace it."),
        RunFault.ManifoldSensorOffset => Statement.Of(
            "remedy.manifold-sensor", $"Compare the manifold sensor with the barometer at rest, and correct or change it."),
        RunFault.FlowMeterOff => Statement.Of("remedy.flow-meter", $"Check the flow meter against a weighed quantity."),
        RunFault.Unexplained => Statement.Of(
            "remedy.unexplained", $"Do not run the car harder. Look for more than one fault, and for a wrong figure in the plan."),
        _ => Statement.Of("remedy.none", $"Nothing needs to change."),
    };
}
