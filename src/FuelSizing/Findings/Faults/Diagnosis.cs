using FuelSizing.Logs;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
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

    /// <summary>
    /// ln of the Bayes factor up to which two explanations are as good: a run says nothing worth more than a bare mention for the one that is better (Kass and
    /// Raftery, Bayes factors, J. Amer. Statist. Assoc. 90, 1995, have that up to 3; 2 is common practice, no source).
    /// </summary>
    private static readonly double AsWell = Math.Log(2);

    /// <summary>ln of the Bayes factor expected under which a fault is not worth a fit, against the best.</summary>
    private const double Worth = 12;

    /// <summary>So many single faults are fitted, beside those of the pump.</summary>
    private const int Tried = 5;

    /// <summary>So many single faults are tried with a second.</summary>
    private const int TriedWithSecond = 3;

    /// <summary>So many pairs of them are fitted.</summary>
    private const int TriedPairs = 4;

    /// <summary>So many pairs without the likeliest single fault are fitted.</summary>
    private const int TriedInstead = 3;

    /// <summary>ln of the Bayes factor expected of a pair, under the best single fault's, from which it is worth a fit in its place.</summary>
    private const double WorthInstead = 4;

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
            Instead = Likeliest == RunFault.None ? null : DoingAsWell();
        }

        // That two faults at once are rare is no reason to be sure of a third part; nor is one a pair that explains as much by itself.
        Hypothesis? DoingAsWell()
        {
            double Alone(RunFault fault) => hypotheses.Where(one => one.Second is null && one.Fault == fault).Max(Factor);
            double single = Alone(Likeliest);
            return hypotheses
                .Where(one => one.Second is { } other && one.Fault != Likeliest && other != Likeliest
                    && Factor(one) > single - AsWell && Factor(one) > Math.Max(Alone(one.Fault), Alone(other)) + AsWell)
                .MaxBy(Factor);
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

    /// <summary>Two other faults that together explain the run as well as the likeliest alone does; none where no two do.</summary>
    public Hypothesis? Instead { get; }

    /// <summary>Faults that the run cannot rule out in place of the likeliest.</summary>
    public IEnumerable<Suspect> Rivals => Likeliest == RunFault.None
        ? []
        : Suspects.Skip(1).Where(one => one.Fault != Second
            && (one.Probability >= NamesWith || one.Fault == Instead?.Fault || one.Fault == Instead?.Second));

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
        const int Maximum = 4 + Tried + TriedPairs + TriedInstead;
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
        foreach (Pair pair in PairsWith(tried, possible).Concat(PairsInstead(sound, tried, possible)).DistinctBy(pair => Ordered(pair.First.Fault, pair.Second.Fault)))
        {
            if (Stopped())
            {
                return null;
            }

            RunFit fit = RunFit.From(model, pair.Start, [pair.First.In(model, pair.FirstSign), pair.Second.In(model, pair.SecondSign)]);
            pairs.Add(new(
                pair.First.Fault, pair.Second.Fault, fit.LogEvidence - sound.LogEvidence + Way(pair.First) + Way(pair.Second), 0, fit));
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

    /// <summary>Two faults that are worth a fit, and where it starts.</summary>
    internal sealed record Pair(FaultPrior First, int FirstSign, FaultPrior Second, int SecondSign, double Log, double[] Start);

    /// <summary>Pairs of a likely single fault with another, the most promising first.</summary>
    private static IEnumerable<Pair> PairsWith(List<Hypothesis> tried, FaultPrior[] possible)
    {
        HashSet<(RunFault, RunFault)> seen = [];
        return tried
            .Where(one => one.Fit is not null && possible.Any(prior => prior.Fault == one.Fault))
            .OrderByDescending(one => one.LogFactor)
            .Take(TriedWithSecond)
            .SelectMany(one =>
            {
                FaultPrior first = possible.First(prior => prior.Fault == one.Fault);
                RunFit fit = one.Fit!;
                int firstSign = first.EitherWay && fit.Off[(int)first.Quantity] < 0 ? -1 : 1;
                return possible.Where(second => second != first).Select(second =>
                {
                    (_, int sign, double log) = Expected(fit, second);
                    return new Pair(first, firstSign, second, sign, one.LogFactor + log, Start(fit, second.In(fit.Model, sign)));
                });
            })
            .Where(pair => pair.Log > 0)
            .OrderByDescending(pair => pair.Log)
            .ToArray()
            .Where(pair => seen.Add(Ordered(pair.First.Fault, pair.Second.Fault)))
            .Take(TriedPairs);
    }

    private static (RunFault, RunFault) Ordered(RunFault one, RunFault other) => one < other ? (one, other) : (other, one);

    /// <summary>
    /// Pairs of which neither is the likeliest single fault, the most promising first: two faults may look together like a third part, and by itself each of
    /// them may explain little.
    /// </summary>
    private static IEnumerable<Pair> PairsInstead(RunFit sound, List<Hypothesis> tried, FaultPrior[] possible)
    {
        Hypothesis? likeliest = tried.Where(one => one.Fit is not null).MaxBy(one => one.LogFactor);
        if (likeliest is null || likeliest.LogFactor <= 0)
        {
            return [];
        }

        FaultPrior[] others = [.. possible.Where(prior => prior.Fault != likeliest.Fault)];
        double best = possible.Max(prior => Expected(sound, prior).Log);
        return others
            .SelectMany((first, i) => others.Skip(i + 1).Select(second => Together(sound, first, second)))
            .Where(pair => pair.Log > best - WorthInstead)
            .OrderByDescending(pair => pair.Log)
            .Take(TriedInstead);
    }

    /// <summary>What two faults would have together, were the model linear, and where their fit would be.</summary>
    internal static Pair Together(RunFit sound, FaultPrior first, FaultPrior second)
    {
        (int i, int j) = ((int)first.Quantity, (int)second.Quantity);
        Matrix<double> covariance = Matrix<double>.Build.DenseOfArray(new[,]
        {
            { sound.Covariance[i, i], sound.Covariance[i, j] },
            { sound.Covariance[j, i], sound.Covariance[j, j] },
        });
        Vector<double> off = Vector<double>.Build.Dense([sound.Off[i], sound.Off[j]]);
        Matrix<double> precision = covariance.Inverse();
        Vector<double> information = precision * off;
        double without = (information * off) + Math.Log(covariance.Determinant());
        Pair? best = null;
        foreach (int firstSign in first.EitherWay ? (int[])[1, -1] : [1])
        {
            foreach (int secondSign in second.EitherWay ? (int[])[1, -1] : [1])
            {
                (Freed one, Freed two) = (first.In(sound.Model, firstSign), second.In(sound.Model, secondSign));
                Vector<double> pull = Vector<double>.Build.Dense([1 / (one.Deviation * one.Deviation), 1 / (two.Deviation * two.Deviation)]);
                Vector<double> mean = Vector<double>.Build.Dense([one.Mean, two.Mean]);
                Matrix<double> freed = precision - Matrix<double>.Build.DenseIdentity(2) + Matrix<double>.Build.DenseOfDiagonalVector(pull);
                Vector<double> towards = information + pull.PointwiseMultiply(mean);
                Vector<double> there = freed.Solve(towards);
                double with = (towards * there) - Math.Log(freed.Determinant())
                    - pull.PointwiseMultiply(mean).DotProduct(mean) + Math.Log(pull[0] * pull[1]);
                double log = ((with - without) / 2) + Way(first) + Way(second);
                if (best is null || log > best.Log)
                {
                    Vector<double> move = precision * (there - off);
                    best = new(
                        first, firstSign, second, secondSign, log,
                        [.. sound.Off.Select((each, k) => each + (sound.Covariance[k, i] * move[0]) + (sound.Covariance[k, j] * move[1]))]);
                }
            }
        }

        return best!;
    }

    /// <summary>
    /// ln of the Bayes factor that a fault would have, were the model linear: what the comparisons alone say of its quantity, under the
    /// fault's prior and under the tolerance.
    /// </summary>
    internal static (FaultPrior Prior, int Sign, double Log) Expected(RunFit fit, FaultPrior prior)
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
    internal static double[] Start(RunFit fit, Freed freed)
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
