using System.Globalization;
using System.Runtime.Intrinsics;
using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>Operating points by the million: fuel, rail pressure, injector flow and duty cycle while the pumps have capacity.</summary>
/// <remarks>
/// <para>The same equations as <c>FuelSystem.Solve</c>, as many points at once as the processor's vectors hold,
/// without allocating; a point comes out the same wherever it stands in the columns. Against <c>FuelSystem.Solve</c>
/// a relative error of 2 · 10⁻¹⁴ remains, of the larger of the terms that a difference is made of.</para>
/// <para>The rail is as the regulator sets it, less the losses of the supply line where the regulator sits at the tank: as in a
/// solved point whose <see cref="RailState"/> is <see cref="RailState.Regulated"/>. Whether the pumps hold it there says
/// <see cref="PointOutputs.PumpReserve"/>, and only where that column is asked for; the return line is not modelled. All of it is of the main fuel: a second stream
/// is left out, without whose help the fuel system is judged, and refused where it changes what main fuel is injected.</para>
/// </remarks>
/// <example>
/// <code>
/// PointBatch batch = PointBatch.Of(system.Parts);
/// batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = duties, RailGauge = rails });
/// </code>
/// </example>
public sealed class PointBatch
{
    // Points that one thread takes at a time: enough to be worth handing over, few enough for its cache.
    private const int MinimumShare = 2_048;
    private const int MaximumShare = 8_192;

    // Shares for each thread, so that one that is held up leaves the rest to the others.
    private const int SharesEach = 4;

    /// <summary>Shares a thread between two looks at the cancellation: some milliseconds.</summary>
    private const int SharesAtOnce = 4;

    private readonly PointKernel _kernel;

    private PointBatch(SystemParts parts, Conditions conditions)
    {
        (Parts, Conditions) = (parts, conditions);
        _kernel = new(parts, conditions);
    }

    /// <summary>The parts.</summary>
    public SystemParts Parts { get; }

    /// <summary>Air, supply voltage, fuel temperature.</summary>
    public Conditions Conditions { get; }

    /// <summary>Prepares a parts for batches.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <returns>The batch, which may be used from several threads at once.</returns>
    /// <exception cref="ArgumentException">
    /// The tables of volumetric efficiency and power have no speed in common; a second stream evaporates in the charge, or has main fuel taken back for it; or the regulator's pressure changes with what returns through it, for which each point needs its circuit.
    /// </exception>
    public static PointBatch Of(SystemParts parts, Conditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return new(parts, conditions ?? Conditions.Default);
    }

    /// <summary>Evaluates every point.</summary>
    /// <param name="inputs">The points.</param>
    /// <param name="outputs">Where to write what is wanted.</param>
    /// <param name="threads">The most threads that work at once, 1 to 256; one if not given. More than one allocate a little.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops the work; what was written by then stays.</param>
    /// <returns>How many points are done, counted from the first: all, unless it was stopped. The rest of the columns is as it was.</returns>
    /// <exception cref="ArgumentException">A column's length is not that of the speeds.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value is outside its range; the message gives its place. What was written by then stays.
    /// </exception>
    public int Evaluate(
        in PointInputs inputs,
        in PointOutputs outputs,
        int threads = 1,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        Guard.Count(threads, 1, 256, "Give the number of processor cores, or fewer.", nameof(threads));
        int points = inputs.Speed.Length;
        Matches(points, inputs.Boost.Length, nameof(inputs), nameof(inputs.Boost), optional: false);
        Matches(points, inputs.Lambda.Length, nameof(inputs), nameof(inputs.Lambda));
        Matches(points, inputs.SupplyVoltage.Length, nameof(inputs), nameof(inputs.SupplyVoltage));
        Matches(points, outputs.RailGauge.Length, nameof(outputs), nameof(outputs.RailGauge));
        Matches(points, outputs.Differential.Length, nameof(outputs), nameof(outputs.Differential));
        Matches(points, outputs.FuelFlow.Length, nameof(outputs), nameof(outputs.FuelFlow));
        Matches(points, outputs.StaticFlow.Length, nameof(outputs), nameof(outputs.StaticFlow));
        Matches(points, outputs.Pulse.Length, nameof(outputs), nameof(outputs.Pulse));
        Matches(points, outputs.DutyCycle.Length, nameof(outputs), nameof(outputs.DutyCycle));
        Matches(points, outputs.PumpReserve.Length, nameof(outputs), nameof(outputs.PumpReserve));
        Matches(points, outputs.InjectorReserve.Length, nameof(outputs), nameof(outputs.InjectorReserve));
        InPascals(inputs.Boost, nameof(inputs));
        PointColumns all = new(inputs, outputs);
        int atOnce = progress is null && !cancellation.CanBeCanceled ? points : threads * MaximumShare * SharesAtOnce;
        int done = 0;
        while (done < points && !cancellation.IsCancellationRequested)
        {
            PointColumns some = all.Slice(done, Math.Min(atOnce, points - done));
            int count = some.Inputs.Speed.Length;
            int refused = threads == 1 || count <= MinimumShare ? Widest(some) : OnThreads(some.Inputs, some.Outputs, threads);
            if (refused >= 0)
            {
                throw _kernel.Refusal(inputs, done + refused);
            }

            done += count;
            progress?.Report(Ratio.FromDecimalFractions((double)done / points));
        }

        return done;
    }

    /// <summary>The place of the first point that is out of range, −1 if there is none.</summary>
    private int Widest(in PointColumns columns) =>
        Vector512.IsHardwareAccelerated ? _kernel.Evaluate<Lanes>(columns)
        : Vector256.IsHardwareAccelerated ? _kernel.Evaluate<FourLanes>(columns)
        : Vector128.IsHardwareAccelerated ? _kernel.Evaluate<TwoLanes>(columns)
        : _kernel.Evaluate<Real>(columns);

    private unsafe int OnThreads(in PointInputs inputs, in PointOutputs outputs, int threads)
    {
        // Other threads cannot see this one's spans, so the columns are pinned and handed over as addresses.
        fixed (double* speed = inputs.Speed, boost = inputs.Boost, lambda = inputs.Lambda, volts = inputs.SupplyVoltage)
        fixed (double* rail = outputs.RailGauge, across = outputs.Differential, fuel = outputs.FuelFlow)
        fixed (double* flow = outputs.StaticFlow, pulse = outputs.Pulse, duty = outputs.DutyCycle)
        fixed (double* pump = outputs.PumpReserve, reserve = outputs.InjectorReserve)
        {
            PinnedColumns pinned = new(speed, boost, lambda, volts, rail, across, fuel, flow, pulse, duty, pump, reserve);
            int points = inputs.Speed.Length;
            int share = Math.Clamp(points / (SharesEach * threads), MinimumShare, MaximumShare);
            int first = int.MaxValue;
            object gate = new();
            Parallel.For(0, ((points - 1) / share) + 1, new ParallelOptions { MaxDegreeOfParallelism = threads }, place =>
            {
                int from = place * share;
                int refused = Widest(pinned.Slice(from, Math.Min(share, points - from)));
                if (refused >= 0)
                {
                    lock (gate)
                    {
                        first = Math.Min(first, from + refused);
                    }
                }
            });
            return first == int.MaxValue ? -1 : first;
        }
    }

    /// <summary>No engine is run at so little boost all the time: such numbers are in another unit, and would pass for points that are easy to feed.</summary>
    private static void InPascals(ReadOnlySpan<double> boosts, string name)
    {
        const double Least = 1_000;

        // What is left of a difference of equal pressures is no boost.
        const double None = 1e-3;
        int first = -1;
        for (int at = 0; at < boosts.Length; at++)
        {
            if (!(Math.Abs(boosts[at]) < Least))
            {
                return;
            }

            first = first < 0 && Math.Abs(boosts[at]) > None ? at : first;
        }

        if (first >= 0)
        {
            throw Guard.OutOfRange(
                name,
                string.Create(CultureInfo.InvariantCulture, $"{boosts[first]:G6} Pa of {nameof(PointInputs.Boost)} (place {first})").Replace("-", "−", StringComparison.Ordinal),
                "0 Pa everywhere, or 1000 Pa or more somewhere in the column: numbers as small as these are most often bar or kPa",
                "Give gauge pressure in Pa, 60000 for 0.6 bar.");
        }
    }

    private static void Matches(int points, int length, string name, string column, bool optional = true)
    {
        if (length != points && !(optional && length == 0))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{name}.{column} had {length} numbers for {points} speeds; give one for each."),
                name);
        }
    }
}
