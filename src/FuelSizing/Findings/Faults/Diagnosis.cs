using FuelSizing.Logs;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How probable each fault, two at once, or none is after a run.</summary>
/// <remarks>
/// A hypothesis is what one or two quantities are taken to be off by; all others are off within their tolerances, and what the plan's equations do
/// not know within its discrepancy. Each makes the run probable to a degree, everything that may be off averaged over (Laplace's
/// approximation at the likeliest state); by Bayes' theorem that gives the probability of each. A fault that another quantity explains
/// as well, within its tolerance, gains nothing.
/// </remarks>
internal sealed class Diagnosis
{
    /// <summary>Probability of any fault from which one is named.</summary>
    public const double Names = 0.9;

    /// <summary>Probability from which another fault is named with the likeliest.</summary>
    public const double NamesWith = 0.05;

    /// <summary>ln of the Bayes factor expected under which a fault is not worth a fit, against the best.</summary>
    private const double Worth = 12;

    /// <summary>So many single faults are fitted, beside those of the pump.</summary>
    private const int Tried = 5;

    /// <summary>So many single faults are tried with a second.</summary>
    private const int TriedWithSecond = 3;

    /// <summary>So many pairs are fitted.</summary>
    private const int TriedPairs = 4;

    private Diagnosis(RunModel model, RunFit sound, IReadOnlyList<Hypothesis> hypotheses, double lack)
    {
        (Model, Sound, Hypotheses, Lack) = (model, sound, hypotheses, lack);
        // Scatter over the stated says nothing against what a channel says by itself.
        double Factor(Hypothesis one) => one.LogDirect + (one.LogFactor / lack);
        double[] logs = [.. hypotheses.Select(one => Factor(one) + LogPrior(one, hypotheses)), Math.Log(FaultPrior.Sound)];
        double maximum = logs.Maximum();
        double all = logs.Sum(log => Math.Exp(log - maximum));
        double[] probabilities = [.. logs.Select(log => Math.Exp(log - maximum) / all)];
        NoFault = probabilities[^1];
        (Hypothesis Of, double Probability)[] weighed = [.. hypotheses.Zip(probabilities)];
        Suspects =
        [
            .. hypotheses
                .Where(one => one.Second is null)
                .GroupBy(one => one.Fault)
                .Select(ways =>
                {
                    Hypothesis likeliest = ways.MaxBy(Factor)!;
                    return new Suspect(
                        ways.Key,
                        weighed.Where(one => one.Of.Fault == ways.Key || one.Of.Second == ways.Key).Sum(one => one.Probability),
                        Math.Max(0, 2 * Factor(likeliest)),
                        likeliest.Fit);
                })
                .OrderByDescending(one => one.Probability),
        ];
        Likeliest = NoFault > 1 - Names || Suspects.Count == 0 ? RunFault.None : Suspects[0].Fault;
        double two = weighed.Where(one => one.Of.Second is not null).Sum(one => one.Probability);
        if (Likeliest != RunFault.None && two > (1 - NoFault) / 2)
        {
            Hypothesis pair = weighed
                .Where(one => one.Of.Second is not null && (one.Of.Fault == Likeliest || one.Of.Second == Likeliest))
                .MaxBy(one => one.Probability).Of;
            Second = pair.Fault == Likeliest ? pair.Second : pair.Fault;
            Best = pair.Fit ?? sound;
        }
        else
        {
            Best = Likeliest == RunFault.None ? sound : Suspects[0].Fit ?? sound;
        }
    }

    /// <summary>The model.</summary>
    public RunModel Model { get; }

    /// <summary>The fit without a fault.</summary>
    public RunFit Sound { get; }

    /// <summary>All that was tried: each fault alone, and those pairs that were worth it.</summary>
    public IReadOnlyList<Hypothesis> Hypotheses { get; }

    /// <summary>Probability that there is no fault.</summary>
    public double NoFault { get; }

    /// <summary>Every fault that this run could show, the likeliest first.</summary>
    public IReadOnlyList<Suspect> Suspects { get; }

    /// <summary>Sum of squares of the best fit ÷ number of comparisons, at least 1: how much more noise there is than stated.</summary>
    public double Lack { get; }

    /// <summary>The likeliest fault; <see cref="RunFault.None"/> where it is not probable enough that there is any.</summary>
    public RunFault Likeliest { get; }

    /// <summary>The fault that the run needs beside the likeliest; null where one is enough.</summary>
    public RunFault? Second { get; }

    /// <summary>Faults that the run cannot rule out in place of the likeliest.</summary>
    public IEnumerable<Suspect> Rivals => Likeliest == RunFault.None
        ? []
        : Suspects.Skip(1).Where(one => one.Fault != Second && one.Probability >= NamesWith);

    /// <summary>The fit that explains the run best.</summary>
    public RunFit Best { get; }

    /// <summary>Diagnoses a run; none if it was stopped, for of some faults alone none may be called the likeliest.</summary>
    /// <param name="check">The plan, and what may be off.</param>
    /// <param name="model">Of the run.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops the work between two fits.</param>
    public static Diagnosis? Of(RunCheck check, RunModel model, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        // Of the most fits that there may be, so that reports never go back.
        const int Maximum = 4 + Tried + TriedPairs;
        int done = 0;
        bool Stopped()
        {
            progress?.Report(Ratio.FromDecimalFractions((double)done++ / Maximum));
            return cancellation.IsCancellationRequested;
        }

        FaultPrior[] possible = [.. FaultPrior.Of(check).Where(prior => Can(check, model, prior.Quantity))];
        double[] nothing = new double[RunModel.Quantities];
        RunFit sound = RunFit.From(model, nothing);
        Dictionary<RunFault, RunFit> fits = [];
        foreach ((RunQuantity quantity, double value) in PumpStarts.Of(check, model, sound))
        {
            if (Stopped())
            {
                return null;
            }

            FaultPrior prior = possible.First(one => one.Quantity == quantity);
            double[] start = (double[])nothing.Clone();
            start[(int)quantity] = value;
            fits[prior.Fault] = RunFit.From(model, start, [prior.In(model, 1)]);
        }

        if (fits.Count > 0)
        {
            // A pump that is only a little weak explains a little sag without being a fault.
            RunFit other = RunFit.From(model, fits.Values.MinBy(fit => fit.Cost)!.Off);
            sound = other.Cost < sound.Cost ? other : sound;
        }

        List<Hypothesis> tried = [];
        (FaultPrior Prior, int Sign, double Log)[] expected =
            [.. possible.Select(prior => Expected(sound, prior)).OrderByDescending(one => one.Log)];
        double worth = Math.Max(0, expected.Select(one => one.Log).DefaultIfEmpty(0).Max()) - Worth;
        int fitted = 0;
        foreach ((FaultPrior prior, int sign, double log) in expected)
        {
            RunFit? fit = fits.GetValueOrDefault(prior.Fault);
            if (log > worth && fitted++ < Tried)
            {
                if (Stopped())
                {
                    return null;
                }

                Freed freed = prior.In(model, sign);
                RunFit other = RunFit.From(model, Start(sound, freed), [freed]);
                fit = fit is null || other.LogEvidence > fit.LogEvidence ? other : fit;
            }

            double factor = fit is null ? log : fit.LogEvidence - sound.LogEvidence + Way(prior);
            tried.Add(new(prior.Fault, null, factor, 0, fit));
        }

        Hypothesis[] directs = [.. new[] { SupplySag(check, model), ZeroAtRest(check, model) }.OfType<Hypothesis>()];
        tried.AddRange(directs);

        List<Hypothesis> pairs = [];
        foreach ((RunFit from, RunFault first, FaultPrior second, int sign, double log) in Pairs(tried, possible))
        {
            if (Stopped())
            {
                return null;
            }

            FaultPrior of = possible.First(one => one.Fault == first);
            Freed one = of.In(model, of.EitherWay && from.Off[(int)of.Quantity] < 0 ? -1 : 1);
            Freed two = second.In(model, sign);
            RunFit fit = RunFit.From(model, Start(from, two), [one, two]);
            pairs.Add(new(first, second.Fault, fit.LogEvidence - sound.LogEvidence + Way(of) + Way(second), 0, fit));
        }

        // What a channel says by itself is as probable beside any other fault.
        pairs.AddRange(
            from direct in directs
            from single in tried
            where direct.LogDirect > 0 && single.Fit is not null && single.Fault != direct.Fault
            select new Hypothesis(direct.Fault, single.Fault, single.LogFactor, direct.LogDirect, single.Fit));
        tried.AddRange(pairs);
        double best = tried.Min(one => one.Fit?.Cost ?? sound.Cost);
        return new(model, sound, tried, Math.Max(1, best / Math.Max(1, model.Comparisons)));
    }

    /// <summary>Pairs that promise more than their first fault alone, the most promising first.</summary>
    private static IEnumerable<(RunFit From, RunFault First, FaultPrior Second, int Sign, double Log)> Pairs(
        List<Hypothesis> tried, FaultPrior[] possible)
    {
        HashSet<(RunFault, RunFault)> seen = [];
        return tried
            .Where(one => one.Fit is not null && possible.Any(prior => prior.Fault == one.Fault))
            .OrderByDescending(one => one.LogFactor)
            .Take(TriedWithSecond)
            .SelectMany(one => possible
                .Where(prior => prior.Fault != one.Fault)
                .Select(prior =>
                {
                    (_, int sign, double log) = Expected(one.Fit!, prior);
                    return (From: one.Fit!, First: one.Fault, Second: prior, Sign: sign, Log: one.LogFactor + log);
                }))
            .Where(pair => pair.Log > 0)
            .OrderByDescending(pair => pair.Log)
            .ToArray()
            .Where(pair => seen.Add(pair.First < pair.Second.Fault ? (pair.First, pair.Second.Fault) : (pair.Second.Fault, pair.First)))
            .Take(TriedPairs);
    }

    /// <summary>
    /// ln of the Bayes factor that a fault would have, were the model linear: what the comparisons alone say of its quantity, under the
    /// fault's prior and under the tolerance.
    /// </summary>
    private static (FaultPrior Prior, int Sign, double Log) Expected(RunFit fit, FaultPrior prior)
    {
        int place = (int)prior.Quantity;
        double variance = fit.Covariance[place, place];
        double precision = (1 / variance) - 1;
        if (precision < 1e-9)
        {
            return (prior, 1, 0);
        }

        double mean = fit.Off[place] / variance / precision;
        double spread = Math.Sqrt(1 / precision);
        double sound = Normal.PDFLn(0, Math.Sqrt(1 + (spread * spread)), mean);
        (int Sign, double Log) Of(int sign)
        {
            Freed freed = prior.In(fit.Model, sign);
            return (sign, Normal.PDFLn(freed.Mean, Math.Sqrt((freed.Deviation * freed.Deviation) + (spread * spread)), mean) - sound + Way(prior));
        }

        (int Sign, double Log) up = Of(1);
        (int Sign, double Log) down = prior.EitherWay ? Of(-1) : up;
        return down.Log > up.Log ? (prior, down.Sign, down.Log) : (prior, up.Sign, up.Log);
    }

    // Of two ways that a fault may go, one is fitted.
    private static double Way(FaultPrior prior) => prior.EitherWay ? -Math.Log(2) : 0;

    /// <summary>Where a fit with a quantity freed would be, were the model linear.</summary>
    private static double[] Start(RunFit fit, Freed freed)
    {
        int place = (int)freed.Quantity;
        double variance = fit.Covariance[place, place];
        double precision = Math.Max(0, (1 / variance) - 1);
        double pull = 1 / (freed.Deviation * freed.Deviation);
        double target = ((fit.Off[place] / variance) + (pull * freed.Mean)) / (precision + pull);
        double move = (target - fit.Off[place]) / variance;
        return [.. fit.Off.Select((off, i) => off + (fit.Covariance[i, place] * move))];
    }

    // All faults that a run could show are as probable before it, and the ways in which one may come are; so are all pairs.
    private static double LogPrior(Hypothesis hypothesis, IReadOnlyList<Hypothesis> hypotheses)
    {
        Hypothesis[] singles = [.. hypotheses.Where(one => one.Second is null)];
        int kinds = singles.Select(one => one.Fault).Distinct().Count();
        int ways = singles.Count(one => one.Fault == hypothesis.Fault);
        return hypothesis.Second is null
            ? Math.Log((1 - FaultPrior.Sound - FaultPrior.Two) / (kinds * ways))
            : Math.Log(FaultPrior.Two / Math.Max(1, kinds * (kinds - 1) / 2));
    }

    private static bool Can(RunCheck check, RunModel model, RunQuantity quantity) => quantity switch
    {
        // The engine at rest has shown the sensor's zero under every hypothesis.
        RunQuantity.ManifoldSensor => model.Has(Comparison.Rail) && model.Points.ManifoldAtRest is null,
        RunQuantity.PumpFlow or RunQuantity.FeedResistance or RunQuantity.FilterLoss or RunQuantity.RegulatorBase
            or RunQuantity.RegulatorGain or RunQuantity.RailSensor => model.Has(Comparison.Rail),
        RunQuantity.RegulatorOnset => model.Has(Comparison.Rail) && check.Regulator.HasOnset,
        RunQuantity.FlowMeter => model.Has(Comparison.Flow),
        RunQuantity.InjectorFlow => model.Inputs.Any(input => input.Injects) && (model.Has(Comparison.Flow) || model.Has(Comparison.Air)),
        _ => model.Has(Comparison.Air),
    };

    /// <summary>The supply itself is lower than planned: the battery channel says so.</summary>
    private static Hypothesis? SupplySag(RunCheck check, RunModel model)
    {
        double[] volts = [.. model.Points.Volts.Zip(model.Points.Readings(Channel.BatteryVoltage)).Where(one => one.Second > 0).Select(one => one.First)];
        if (volts.Length < 4)
        {
            return null;
        }

        double low = check.SupplyVolts - volts.Median();
        return new(
            RunFault.VoltageDrop,
            null,
            0,
            Normal.PDFLn(LowSupply, LowSupplyDeviation, low) - Normal.PDFLn(0, check.Tolerance.SupplyVoltage.Volts, Math.Max(0, low)),
            null);
    }

    // A charging system that fails leaves a battery to itself: V under the planned supply.
    private const double LowSupply = 1.6;
    private const double LowSupplyDeviation = 0.5;

    /// <summary>With the engine at rest the manifold is at ambient pressure: the channel's zero, under every hypothesis.</summary>
    private static Hypothesis? ZeroAtRest(RunCheck check, RunModel model)
    {
        if (model.Points.ManifoldAtRest is not { } off)
        {
            return null;
        }

        FaultPrior prior = FaultPrior.Of(check).First(one => one.Fault == RunFault.ManifoldSensorOffset);
        return new(
            RunFault.ManifoldSensorOffset,
            null,
            0,
            Normal.PDFLn(prior.Mean, prior.Deviation, Math.Abs(off)) + Way(prior)
                - Normal.PDFLn(0, Math.Max(check.Accuracy.ManifoldOffset.Pascals, 1), off),
            null);
    }
}
