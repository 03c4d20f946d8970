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

    /// <summary>A gauge in the place of the rail's sensor, Pa; common practice, no source, as all accuracies here.</summary>
    private const double Gauge = 2e3;

    private static readonly TestedQuantity Pull = new(null, Gauge, Statement.Of(
        "next.lower-voltage",
        $"Pull once more to the same boost with the supply {ElectricPotential.FromVolts(LowerVolts)} lower (all electrical loads on), rail pressure recorded; stop at the first sign of a lean mixture."));

    private static readonly TestedQuantity Meter = new(RunQuantity.InjectorFlow, 0.015, Statement.Of(
        "next.flow-meter", $"Record fuel flow with a meter of known accuracy in the next pull."));

    private static readonly TestedQuantity[] Tests =
    [
        new(RunQuantity.RailSensor, Gauge, Statement.Of("next.rail-gauge", $"Check the rail sensor against a calibrated gauge with the engine idling.")),
        new(RunQuantity.ManifoldSensor, 300, Statement.Of(
            "next.at-rest", $"Record some seconds with the engine at rest: the manifold must then read the barometer's pressure.")),
        new(RunQuantity.InjectorFlow, 0.01, Statement.Of("next.injector-flow", $"Measure the static flow of the injectors at a known pressure.")),
        Meter,
        new(RunQuantity.PumpFlow, 0.02, Statement.Of(
            "next.pump-flow", $"Measure the pump's flow into a vessel at a known pressure and voltage at its terminals.")),
        new(RunQuantity.FeedResistance, 0.005, Statement.Of(
            "next.voltage-drop", $"Measure voltage at the battery and at the pump's terminals, and its current, under load.")),
        new(RunQuantity.FilterLoss, 0.5, Statement.Of("next.filter-drop", $"Measure pressure on both sides of the filter at a known flow.")),
        new(RunQuantity.FlowMeter, 0.005, Statement.Of("next.weigh", $"Check the flow meter against a weighed quantity.")),
        new(RunQuantity.RegulatorBase, Gauge, Statement.Of(
            "next.base-gauge", $"Read the base pressure on a calibrated gauge with the regulator's hose off.")),
        new(RunQuantity.RegulatorGain, 0.03, Statement.Of(
            "next.gain-gauge", $"Put a known pressure well over the onset on the regulator's port, in two steps, and read the rail on a calibrated gauge: its gain.")),
        new(RunQuantity.RegulatorOnset, 1e3, Statement.Of(
            "next.onset-gauge", $"Raise the pressure on the regulator's port in small steps and read the rail on a calibrated gauge: the onset.")),
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
        foreach (TestedQuantity tested in Tests.Where(tested => IsPossible(check, diagnosis.Model, tested)))
        {
            RunQuantity quantity = tested.Quantity!.Value;
            tests.Add(new(
                tested,
                faults,
                weights,
                [.. open.Select(one => one.Fit.Value(quantity))],
                [.. open.Select(one => SpecialFunctions.Hypotenuse(one.Fit.Error(quantity), tested.Deviation))]));
        }

        if (LowerVoltage(check, diagnosis, open, faults, weights) is { } pull)
        {
            tests.Add(pull);
        }

        return [.. tests.Where(one => one.Information >= Worth).OrderByDescending(one => one.Information)];
    }

    private static bool IsPossible(RunCheck check, RunModel model, TestedQuantity tested) => tested.Quantity switch
    {
        // With the engine at rest the sensor has been seen already.
        RunQuantity.ManifoldSensor => model.Points.ManifoldAtRest is null,
        RunQuantity.FlowMeter => model.Has(Comparison.Flow),
        RunQuantity.InjectorFlow => tested != Meter || !model.Has(Comparison.Flow),
        RunQuantity.RegulatorGain or RunQuantity.RegulatorOnset => check.Regulator.HasOnset,
        RunQuantity.FilterLoss => check.HasFilter,
        _ => true,
    };

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
        double noise = SpecialFunctions.Hypotenuse(check.RailNoise, Pull.Deviation);
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
            Pull,
            faults,
            weights,
            [.. read.Select(one => one.Mean)],
            [.. read.Select(one => one.Deviation)]);
    }
}
