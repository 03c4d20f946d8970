using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Which single fault explains a run best.</summary>
/// <remarks>
/// Without a fault, each quantity is off within its tolerance. A fault sets one quantity free. The fall of the sum of squares is
/// the evidence for it: about the square of how many tolerances the quantity must be off.
/// </remarks>
internal sealed class Diagnosis
{
    /// <summary>Least evidence that names a fault: 3.7 tolerances.</summary>
    public const double Minimum = 14;

    /// <summary>Two faults that differ by less in evidence cannot be told apart: a likelihood ratio of 20.</summary>
    public const double Apart = 6;

    /// <summary>Evidence expected of a fault that is worth a fit of its own.</summary>
    private const double Worth = 4;

    /// <summary>Share of the most evidence expected under which a fault is not worth a fit.</summary>
    private const double WorthShowingWith = 0.2;

    /// <summary>So many of them are fitted.</summary>
    private const int Tried = 4;

    private static readonly (RunFault Fault, RunQuantity Quantity, int Sign)[] Faults =
    [
        (RunFault.WeakPump, RunQuantity.PumpFlow, -1),
        (RunFault.VoltageDrop, RunQuantity.FeedResistance, 1),
        (RunFault.CloggedFilter, RunQuantity.FilterLoss, 1),
        (RunFault.WrongBasePressure, RunQuantity.RegulatorBase, 0),
        (RunFault.WrongGain, RunQuantity.RegulatorGain, 0),
        (RunFault.WrongOnset, RunQuantity.RegulatorOnset, 0),
        (RunFault.WrongInjectorSize, RunQuantity.InjectorFlow, 0),
        (RunFault.AirOffPlan, RunQuantity.VolumetricEfficiency, 0),
        (RunFault.RailSensorOffset, RunQuantity.RailSensor, 0),
        (RunFault.ManifoldSensorOffset, RunQuantity.ManifoldSensor, 0),
        (RunFault.FlowMeterOff, RunQuantity.FlowMeter, 0),
    ];

    private Diagnosis(RunModel model, RunFit sound, IReadOnlyList<Hypothesis> hypotheses, double lack)
    {
        (Model, Sound, Hypotheses, Lack) = (model, sound, hypotheses, lack);
    }

    /// <summary>The model.</summary>
    public RunModel Model { get; }

    /// <summary>The fit without a fault.</summary>
    public RunFit Sound { get; }

    /// <summary>All faults tried, the likeliest first.</summary>
    public IReadOnlyList<Hypothesis> Hypotheses { get; }

    /// <summary>Sum of squares of the best fit ÷ number of comparisons, at least 1: how much more noise there is than stated.</summary>
    public double Lack { get; }

    /// <summary>Evidence for a fault, allowing for noise over the stated.</summary>
    public double EvidenceOf(Hypothesis hypothesis) => hypothesis.Evidence / Lack;

    /// <summary>The likeliest fault; <see cref="RunFault.None"/> where the evidence is too small.</summary>
    public RunFault Likeliest =>
        Hypotheses.Count > 0 && EvidenceOf(Hypotheses[0]) >= Minimum ? Hypotheses[0].Fault : RunFault.None;

    /// <summary>Faults that explain the run nearly as well as the likeliest.</summary>
    public IEnumerable<Hypothesis> Rivals => Hypotheses
        .Skip(1)
        .Where(h => EvidenceOf(h) >= Minimum && EvidenceOf(Hypotheses[0]) - EvidenceOf(h) < Apart);

    /// <summary>The fit that explains the run best.</summary>
    public RunFit Best => Likeliest == RunFault.None ? Sound : Hypotheses[0].Fit ?? Sound;

    /// <summary>Diagnoses a run; none if it was stopped, for of some faults alone none may be called the likeliest.</summary>
    /// <param name="check">The plan, and what may be off.</param>
    /// <param name="model">Of the run.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops the work between two fits.</param>
    public static Diagnosis? Of(RunCheck check, RunModel model, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        // Of the most fits that there may be, so that reports never go back.
        const int Maximum = 4 + Tried;
        int done = 0;
        bool Stopped()
        {
            progress?.Report(Ratio.FromDecimalFractions((double)done++ / Maximum));
            return cancellation.IsCancellationRequested;
        }

        double[] nothing = new double[RunModel.Quantities];
        RunFit sound = RunFit.From(model, nothing);
        Dictionary<RunQuantity, RunFit> fits = [];
        foreach ((RunQuantity quantity, double value) in PumpStarts.Of(check, model, sound))
        {
            if (Stopped())
            {
                return null;
            }

            double[] start = (double[])nothing.Clone();
            start[(int)quantity] = value;
            fits[quantity] = RunFit.From(model, start, quantity);
        }

        if (fits.Count > 0)
        {
            // A pump that is only a little weak explains a little sag without being a fault.
            RunFit other = RunFit.From(model, fits.Values.MinBy(fit => fit.Cost)!.Off);
            sound = other.Cost < sound.Cost ? other : sound;
        }

        (RunFault Fault, RunQuantity Quantity, int Sign)[] possible =
            [.. Faults.Where(fault => Can(check, model, fault.Quantity))];
        double maximum = possible.Select(fault => sound.Expected(fault.Quantity)).DefaultIfEmpty(0).Max();
        foreach (RunQuantity quantity in possible
            .Select(fault => fault.Quantity)
            .Where(quantity => sound.Expected(quantity) > Math.Max(Worth, WorthShowingWith * maximum))
            .OrderByDescending(sound.Expected)
            .Take(Tried))
        {
            if (Stopped())
            {
                return null;
            }

            RunFit fit = RunFit.From(model, sound.Off, quantity);
            fits[quantity] = fits.TryGetValue(quantity, out RunFit? other) && other.Cost < fit.Cost ? other : fit;
        }

        List<Hypothesis> tried = [];
        foreach ((RunFault fault, RunQuantity quantity, int sign) in possible)
        {
            RunFit? fit = fits.GetValueOrDefault(quantity);
            bool counts = sign == 0 || Math.Sign((fit ?? sound).Off[(int)quantity]) == sign;
            double evidence = fit is null ? sound.Expected(quantity) : sound.Cost - fit.Cost;
            tried.Add(new(fault, counts ? Math.Max(0, evidence) : 0, fit));
        }

        Stronger(tried, SupplySag(check, model));
        Stronger(tried, ZeroAtRest(check, model));
        double best = tried.Min(h => h.Fit?.Cost ?? sound.Cost);
        return new(
            model,
            sound,
            [.. tried.OrderByDescending(h => h.Evidence)],
            Math.Max(1, best / Math.Max(1, model.Comparisons)));
    }

    private static bool Can(RunCheck check, RunModel model, RunQuantity quantity) => quantity switch
    {
        RunQuantity.PumpFlow or RunQuantity.FeedResistance or RunQuantity.FilterLoss or RunQuantity.RegulatorBase
            or RunQuantity.RegulatorGain or RunQuantity.RailSensor or RunQuantity.ManifoldSensor => model.Has(Comparison.Rail),
        RunQuantity.RegulatorOnset => model.Has(Comparison.Rail) && check.Regulator.HasOnset,
        RunQuantity.FlowMeter => model.Has(Comparison.Flow),
        RunQuantity.InjectorFlow => model.Inputs.Any(input => input.Injects) && (model.Has(Comparison.Flow) || model.Has(Comparison.Air)),
        _ => model.Has(Comparison.Air),
    };

    /// <summary>Puts in what a channel says directly where it says more than the fit.</summary>
    private static void Stronger(List<Hypothesis> tried, Hypothesis direct)
    {
        int place = tried.FindIndex(h => h.Fault == direct.Fault);
        if (place < 0)
        {
            tried.Add(direct);
        }
        else if (direct.Evidence > tried[place].Evidence)
        {
            tried[place] = direct;
        }
    }

    /// <summary>The supply itself is lower than planned: the battery channel says so.</summary>
    private static Hypothesis SupplySag(RunCheck check, RunModel model)
    {
        double[] volts = [.. model.Points.Volts.Where(v => !double.IsNaN(v))];
        double off = volts.Length < 4
            ? 0
            : Math.Max(0, check.SupplyVolts - volts.Median()) / check.Tolerance.SupplyVoltage.Volts;
        return new(RunFault.VoltageDrop, off * off, null);
    }

    /// <summary>With the engine at rest the manifold is at ambient pressure: the channel's zero.</summary>
    private static Hypothesis ZeroAtRest(RunCheck check, RunModel model)
    {
        double off = (model.Points.ManifoldAtRest ?? 0) / check.Accuracy.ManifoldOffset.Pascals;
        return new(RunFault.ManifoldSensorOffset, off * off, null);
    }
}
