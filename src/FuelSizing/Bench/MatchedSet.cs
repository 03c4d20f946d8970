using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>
/// Injectors of one kind as they were weighed, put to the cylinders so that the leanest cylinder is as little lean as may be: a controller gives all of them one pulse.
/// <para><c>λ_i/λ = (q_i/q̄)/(m_j/m̄)</c></para>
/// </summary>
/// <remarks>
/// <para><c>λ_i/λ</c> (1): lambda of cylinder i over that of the engine; <c>q_i/q̄</c> (1): the cylinder's share of the air over the mean; <c>m_j/m̄</c> (1): what its injector delivers in a pulse over the mean of the set.
/// Judged at every pulse asked for, the worst counts.</para>
/// <para>An assignment whose worst pair is best (bottleneck assignment), found by augmenting paths over the sorted pairs; among those equally lean the one whose richest cylinder is least rich.</para>
/// <para>Range: what is weighed at the pulses asked for, on one liquid, pressure and voltage. What all weighings have in common drops out.</para>
/// </remarks>
public sealed class MatchedSet : IReadable
{
    private MatchedSet(PulseFit[] fits, Duration[] pulses, double[] air, int[] order, double[][] delivered)
    {
        (Fits, Pulses, Order) = (Array.AsReadOnly(fits), Array.AsReadOnly(pulses), Array.AsReadOnly(order));
        Shares = Array.AsReadOnly<IReadOnlyList<Ratio>>([.. delivered.Select(row => (IReadOnlyList<Ratio>)[.. row.Select(share => Ratio.FromDecimalFractions(share - 1))])]);
        Lambdas = Array.AsReadOnly<(Ratio, Ratio)>(
        [
            .. order.Select((injector, cylinder) => (
                Ratio.FromDecimalFractions((air[cylinder] / delivered[injector].Max()) - 1),
                Ratio.FromDecimalFractions((air[cylinder] / delivered[injector].Min()) - 1))),
        ]);
        Leanest = Lambdas.Max(lambda => lambda.Leanest);
        Richest = Lambdas.Min(lambda => lambda.Richest);
        Spread = Ratio.FromDecimalFractions(Enumerable.Range(0, pulses.Length).Max(pulse => delivered.Max(row => row[pulse]) - delivered.Min(row => row[pulse])));
    }

    /// <summary>The injectors, as given.</summary>
    public IReadOnlyList<PulseFit> Fits { get; }

    /// <summary>The pulses at which they are compared.</summary>
    public IReadOnlyList<Duration> Pulses { get; }

    /// <summary>What each injector delivers over the mean of the set, at each pulse: 0 % is the mean.</summary>
    public IReadOnlyList<IReadOnlyList<Ratio>> Shares { get; }

    /// <summary>From the least to the greatest delivery, at the pulse at which they differ most.</summary>
    public Ratio Spread { get; }

    /// <summary>For each cylinder the place of its injector in <see cref="Fits"/>, from 0.</summary>
    public IReadOnlyList<int> Order { get; }

    /// <summary>For each cylinder how far its lambda is from the engine's, over the pulses: 2 % is lean by 2 %.</summary>
    public IReadOnlyList<(Ratio Richest, Ratio Leanest)> Lambdas { get; }

    /// <summary>How lean the leanest cylinder is.</summary>
    public Ratio Leanest { get; }

    /// <summary>How rich the richest is, negative.</summary>
    public Ratio Richest { get; }

    /// <summary>Which injector goes where, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "bench.matched-set",
        $"{Fits.Count} injectors within {Spread.Percent:N1} % of each other; cylinder 1 to {Fits.Count}: {string.Join(", ", Order.Select(place => Fits[place].Test.Name))}; leanest cylinder {Leanest.Percent:+0.0;−0.0;0.0} %, richest {Richest.Percent:+0.0;−0.0;0.0} % of the engine's lambda");

    /// <summary>Puts injectors to cylinders.</summary>
    /// <param name="fits">2 to 16, of one liquid, pressure and voltage, each of another injector.</param>
    /// <param name="pulses">One or more pulse widths at which they are compared, such as that at idle and that at full load; within what was weighed of each.</param>
    /// <param name="airShares">
    /// Air of each cylinder over the mean, in the cylinders' order: 80 to 120 %, as many as injectors; all equal if not given, and then the order does not matter.
    /// </param>
    /// <returns>The set.</returns>
    /// <exception cref="ArgumentException">The fits are not of one test each alike, a name is there twice, or the shares are not as many as the injectors.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many, or a pulse is outside what was weighed or delivers nothing.</exception>
    public static MatchedSet Of(IReadOnlyList<PulseFit> fits, IReadOnlyList<Duration> pulses, IReadOnlyList<Ratio>? airShares = null)
    {
        ArgumentNullException.ThrowIfNull(fits);
        ArgumentNullException.ThrowIfNull(pulses);
        Guard.Count(fits.Count, 2, 16, "Give the injectors of one engine.", nameof(fits));
        Guard.Count(pulses.Count, 1, 20, "Give the pulses at which they are to be compared.", nameof(pulses));
        foreach (PulseFit fit in fits)
        {
            ArgumentNullException.ThrowIfNull(fit, nameof(fits));
            if (!fit.Test.Fluid.Equals(fits[0].Test.Fluid) || !fit.Test.Differential.Pascals.Equals(fits[0].Test.Differential.Pascals) || !fit.Test.Voltage.Volts.Equals(fits[0].Test.Voltage.Volts))
            {
                throw new ArgumentException($"{nameof(fits)} are of {fits[0].Test} and of {fit.Test}. Compare injectors at one pressure and voltage, on one liquid.", nameof(fits));
            }
        }

        if (fits.GroupBy(fit => fit.Test.Name).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"{nameof(fits)} has {twice.Key} twice. Give each injector its own name, and its fit once.", nameof(fits));
        }

        if (airShares is not null && airShares.Count != fits.Count)
        {
            throw new ArgumentException($"{nameof(airShares)} are {airShares.Count} for {fits.Count} injectors. Give one for each cylinder.", nameof(airShares));
        }

        double[] air = [.. (airShares ?? [.. fits.Select(_ => Ratio.FromPercent(100))]).Select(share => Guard.Between(
            share, Ratio.FromPercent(80), Ratio.FromPercent(120), "Give the cylinder's air over the mean of all.", nameof(airShares)).DecimalFractions)];
        double meanAir = air.Average();
        air = [.. air.Select(share => share / meanAir)];
        double[][] delivered = [.. fits.Select(fit => pulses.Select(pulse => Delivered(fit, pulse)).ToArray())];
        double[] means = [.. Enumerable.Range(0, pulses.Count).Select(pulse => delivered.Average(row => row[pulse]))];
        delivered = [.. delivered.Select(row => row.Select((mass, pulse) => mass / means[pulse]).ToArray())];
        return new([.. fits], [.. pulses], air, Assign(air, delivered), delivered);
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Which injector goes where.</summary>
    /// <returns>For instance <c>4 injectors within 3.1 % of each other; cylinder 1 to 4: B, D, A, C; …</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>What a pulse delivers, kg: on the line where it is linear, else between the widths weighed.</summary>
    private static double Delivered(PulseFit fit, Duration pulse)
    {
        (Duration Pulse, Mass Each, Ratio? Deviation)[] widths = [.. fit.Widths];
        double at = Guard.Between(pulse, widths[0].Pulse, widths[^1].Pulse, $"{fit.Test.Name} was weighed from the one to the other.", "pulses").Seconds;
        int over = Math.Max(1, Array.FindIndex(widths, width => width.Pulse.Seconds >= at));
        double share = (at - widths[over - 1].Pulse.Seconds) / (widths[over].Pulse.Seconds - widths[over - 1].Pulse.Seconds);
        double between = widths[over - 1].Each.Kilograms + (share * (widths[over].Each - widths[over - 1].Each).Kilograms);
        double mass = fit.LinearFrom is { } from && at >= from.Seconds
            ? (fit.Slope * fit.Test.Fluid.Density).KilogramsPerSecond * (at - fit.TimeOffset.Seconds)
            : between;
        return mass > 0
            ? mass
            : throw Guard.OutOfRange("pulses", Readable.Of(pulse), $"a pulse that opens {fit.Test.Name}", "Compare at longer pulses.");
    }

    /// <summary>For each cylinder its injector: first the leanest as little lean as may be, then the richest as little rich.</summary>
    private static int[] Assign(double[] air, double[][] delivered)
    {
        double Lean(int cylinder, int injector) => air[cylinder] / delivered[injector].Min();
        double Rich(int cylinder, int injector) => air[cylinder] / delivered[injector].Max();
        int count = air.Length;
        var pairs = (from cylinder in Enumerable.Range(0, count) from injector in Enumerable.Range(0, count) select (cylinder, injector)).ToArray();
        double lean = pairs.Select(pair => Lean(pair.cylinder, pair.injector)).Order().First(bound => Matching((cylinder, injector) => Lean(cylinder, injector) <= bound) is not null);
        double rich = pairs.Select(pair => Rich(pair.cylinder, pair.injector)).OrderDescending()
            .First(bound => Matching((cylinder, injector) => Lean(cylinder, injector) <= lean && Rich(cylinder, injector) >= bound) is not null);
        return Matching((cylinder, injector) => Lean(cylinder, injector) <= lean && Rich(cylinder, injector) >= rich)!;

        int[]? Matching(Func<int, int, bool> allowed)
        {
            int[] cylinderOf = [.. Enumerable.Repeat(-1, count)];
            for (int cylinder = 0; cylinder < count; cylinder++)
            {
                if (!Augment(cylinder, new bool[count]))
                {
                    return null;
                }
            }

            int[] injectorOf = new int[count];
            for (int injector = 0; injector < count; injector++)
            {
                injectorOf[cylinderOf[injector]] = injector;
            }

            return injectorOf;

            // Takes an injector that is free, or one whose cylinder can take another.
            bool Augment(int cylinder, bool[] asked)
            {
                for (int injector = 0; injector < count; injector++)
                {
                    if (!asked[injector] && allowed(cylinder, injector))
                    {
                        asked[injector] = true;
                        if (cylinderOf[injector] < 0 || Augment(cylinderOf[injector], asked))
                        {
                            cylinderOf[injector] = cylinder;
                            return true;
                        }
                    }
                }

                return false;
            }
        }
    }
}
