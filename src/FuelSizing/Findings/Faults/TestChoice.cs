using FuelSizing.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Which measurement tells most of the faults that a run leaves open.</summary>
internal static class TestChoice
{
    /// <summary>How much lower the supply is in a pull for it, V.</summary>
    public const double LowerVolts = 1.2;

    /// <summary>Bits under which a test is not worth its trouble.</summary>
    private const double Worth = 0.05;

    /// <summary>What is measured, its standard deviation in SI, and in words. The accuracies are common practice, no source.</summary>
    private static readonly (TestedQuantity Tested, RunQuantity Quantity, double Deviation)[] Tests =
    [
        (TestedQuantity.RailSensor, RunQuantity.RailSensor, 2e3),
        (TestedQuantity.ManifoldSensor, RunQuantity.ManifoldSensor, 300),
        (TestedQuantity.InjectorFlow, RunQuantity.InjectorFlow, 0.01),
        (TestedQuantity.InjectorFlowByMeter, RunQuantity.InjectorFlow, 0.015),
        (TestedQuantity.PumpFlow, RunQuantity.PumpFlow, 0.02),
        (TestedQuantity.FeedResistance, RunQuantity.FeedResistance, 0.005),
        (TestedQuantity.FilterLoss, RunQuantity.FilterLoss, 0.5),
        (TestedQuantity.FlowMeter, RunQuantity.FlowMeter, 0.005),
        (TestedQuantity.RegulatorBase, RunQuantity.RegulatorBase, 2e3),
        (TestedQuantity.RegulatorGain, RunQuantity.RegulatorGain, 0.03),
        (TestedQuantity.RegulatorOnset, RunQuantity.RegulatorOnset, 1e3),
    ];

    /// <summary>Tests of a diagnosis, the most telling first; none where nothing is left open.</summary>
    public static IReadOnlyList<NextTest> Of(RunCheck check, Diagnosis diagnosis)
    {
        List<(RunFault Fault, double Weight, RunFit Fit)> open =
            [.. diagnosis.Suspects.Where(one => one.Probability >= Diagnosis.NamesWith).Select(one => (one.Fault, one.Probability, one.Fit ?? diagnosis.Sound))];
        if (diagnosis.NoFault >= Diagnosis.NamesWith)
        {
            open.Add((RunFault.None, diagnosis.NoFault, diagnosis.Sound));
        }

        if (open.Count < 2)
        {
            return [];
        }

        RunFault[] faults = [.. open.Select(one => one.Fault)];
        double[] weights = [.. open.Select(one => one.Weight)];
        List<NextTest> tests = [];
        foreach ((TestedQuantity tested, RunQuantity quantity, double deviation) in Tests)
        {
            // With the engine at rest the sensor has been seen already.
            if ((quantity == RunQuantity.ManifoldSensor && diagnosis.Model.Points.ManifoldAtRest is not null)
                || (quantity == RunQuantity.FlowMeter && !diagnosis.Model.Has(Comparison.Flow))
                || (tested == TestedQuantity.InjectorFlowByMeter && diagnosis.Model.Has(Comparison.Flow))
                || (quantity is RunQuantity.RegulatorGain or RunQuantity.RegulatorOnset && !check.Regulator.HasOnset)
                || (quantity == RunQuantity.FilterLoss && !check.HasFilter))
            {
                continue;
            }

            tests.Add(new(
                Words(tested),
                tested,
                faults,
                weights,
                [.. open.Select(one => one.Fit.Value(quantity))],
                [.. open.Select(one => SpecialFunctions.Hypotenuse(one.Fit.Error(quantity), deviation))]));
        }

        if (LowerVoltage(check, diagnosis, open, faults, weights) is { } pull)
        {
            tests.Add(pull);
        }

        return [.. tests.Where(one => one.Information >= Worth).OrderByDescending(one => one.Information)];
    }

    /// <summary>The point at which most is injected; none where no flow is known.</summary>
    public static int? Hardest(RunModel model)
    {
        int[] known = [.. Enumerable.Range(0, model.Inputs.Count).Where(i => !double.IsNaN(model.Inputs[i].Flow) && !double.IsNaN(model.Inputs[i].Rail))];
        return known.Length == 0 ? null : known.MaxBy(i => model.Inputs[i].Flow);
    }

    private static NextTest? LowerVoltage(
        RunCheck check, Diagnosis diagnosis, List<(RunFault Fault, double Weight, RunFit Fit)> open, RunFault[] faults, double[] weights)
    {
        if (Hardest(diagnosis.Model) is not { } point)
        {
            return null;
        }

        double volts = diagnosis.Model.Inputs[point].Volts - LowerVolts;
        double noise = SpecialFunctions.Hypotenuse(check.RailNoise, 2e3);
        (double Mean, double Deviation) Read(RunFit fit)
        {
            double mean = diagnosis.Model.RailAt(point, fit.Off, volts).Rail;
            double[] slopes = new double[RunModel.Quantities];
            const double Step = 0.1;
            for (int quantity = 0; quantity <= (int)RunQuantity.FlowMeter; quantity++)
            {
                double[] moved = [.. fit.Off];
                moved[quantity] += Step;
                slopes[quantity] = (diagnosis.Model.RailAt(point, moved, volts).Rail - mean) / Step;
            }

            Vector<double> slope = Vector<double>.Build.DenseOfArray(slopes);
            return (mean, Math.Sqrt((slope * (fit.Covariance * slope)) + (noise * noise)));
        }

        (double Mean, double Deviation)[] read = [.. open.Select(one => Read(one.Fit))];
        return new(
            Words(TestedQuantity.RailAtLowerVoltage),
            TestedQuantity.RailAtLowerVoltage,
            faults,
            weights,
            [.. read.Select(one => one.Mean)],
            [.. read.Select(one => one.Deviation)]);
    }

    private static Statement Words(TestedQuantity tested) => tested switch
    {
        TestedQuantity.RailAtLowerVoltage => Statement.Of(
            "next.lower-voltage",
            $"Pull once more to the same boost with the supply {ElectricPotential.FromVolts(LowerVolts)} lower (all electrical loads on), rail pressure recorded; stop at the first sign of a lean mixture."),
        TestedQuantity.RailSensor => Statement.Of("next.rail-gauge", $"Check the rail sensor against a calibrated gauge with the engine idling."),
        TestedQuantity.ManifoldSensor => Statement.Of(
            "next.at-rest", $"Record some seconds with the engine at rest: the manifold must then read the barometer's pressure."),
        TestedQuantity.InjectorFlow => Statement.Of("next.injector-flow", $"Measure the static flow of the injectors at a known pressure."),
        TestedQuantity.InjectorFlowByMeter => Statement.Of(
            "next.flow-meter", $"Record fuel flow with a meter of known accuracy in the next pull."),
        TestedQuantity.PumpFlow => Statement.Of(
            "next.pump-flow", $"Measure the pump's flow into a vessel at a known pressure and voltage at its terminals."),
        TestedQuantity.FeedResistance => Statement.Of(
            "next.voltage-drop", $"Measure voltage at the battery and at the pump's terminals, and its current, under load."),
        TestedQuantity.FilterLoss => Statement.Of("next.filter-drop", $"Measure pressure on both sides of the filter at a known flow."),
        TestedQuantity.FlowMeter => Statement.Of("next.weigh", $"Check the flow meter against a weighed quantity."),
        TestedQuantity.RegulatorBase => Statement.Of(
            "next.base-gauge", $"Read the base pressure on a calibrated gauge with the regulator's hose off."),
        TestedQuantity.RegulatorGain => Statement.Of(
            "next.gain-gauge", $"Put a known pressure well over the onset on the regulator's port, in two steps, and read the rail on a calibrated gauge: its gain."),
        _ => Statement.Of(
            "next.onset-gauge", $"Raise the pressure on the regulator's port in small steps and read the rail on a calibrated gauge: the onset."),
    };
}
