using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Uncertainty;

/// <summary>One drawn system, solved at one place: what a run keeps of it, in SI numbers.</summary>
internal readonly struct SampledPoint
{
    private SampledPoint(ICheck[] checks, in SolvedNumbers point, SystemParts parts, ReadOnlySpan<Real> matching)
    {
        Checks = checks;
        (Readings, DutyCycle, FuelFlow, RailGauge) = (point.Readings, point.DutyCycle, point.FuelFlow, point.RailGauge);
        int cylinders = parts.Demand.Engine.Cylinders;
        bool shared = parts.Injectors.Count % cylinders == 0;
        (LeanestLambda, RichestLambda) = shared ? (point.Leanest, point.Richest) : (double.NaN, double.NaN);
        MaximumDutyCycle = point.MaximumDutyCycle;
        if (matching.Length == 0)
        {
            return;
        }

        Real mean = InjectorMatching.Mean(matching);
        Real weakest = matching[0];
        foreach (Real factor in matching)
        {
            weakest = Real.Min(weakest, factor);
        }

        MaximumDutyCycle = InjectorMatching.EvenDutyCycle<Real>(MaximumDutyCycle, point.DeadTimeShare, mean, weakest);
        if (!shared)
        {
            return;
        }

        int each = parts.Injectors.Count / cylinders;
        for (int cylinder = 0; cylinder < cylinders; cylinder++)
        {
            Real own = InjectorMatching.Mean(matching.Slice(cylinder * each, each));
            Real lean = InjectorMatching.Lambda<Real>(point.Leanest, mean, own);
            Real rich = InjectorMatching.Lambda<Real>(point.Richest, mean, own);
            LeanestLambda = cylinder == 0 ? lean : Real.Max(LeanestLambda, lean);
            RichestLambda = cylinder == 0 ? rich : Real.Min(RichestLambda, rich);
        }
    }

    /// <summary>Solves a drawn system at a place; where a switched pump may be on or off, each figure that counts is the worse of both.</summary>
    /// <param name="checks">Those that apply to it.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="point">The place.</param>
    /// <param name="matching">The flow of each injector as a share of its rating; empty where they are alike.</param>
    public static SampledPoint Of(ICheck[] checks, SystemParts parts, OperatingPoint point, ReadOnlySpan<Real> matching)
    {
        PointDemand demand = parts.DemandAt(point);
        SolvedNumbers numbers = SolvedNumbers.Of(checks, parts, demand);
        return new(
            checks,
            parts.FallingAt(point.BoostPascals) is { } falling ? numbers.OrWorse(SolvedNumbers.Of(checks, falling, demand)) : numbers,
            parts,
            matching);
    }

    /// <summary>The checks that apply.</summary>
    public ICheck[] Checks { get; }

    /// <summary>How each comes out, in their order.</summary>
    public CheckReading<Real>[] Readings { get; }

    /// <summary>Of the common pulse; not a number where there is none.</summary>
    public double DutyCycle { get; }

    /// <summary>Fuel that the engine is to burn, kg/s.</summary>
    public double FuelFlow { get; }

    /// <summary>Pa; not a number where the pumps' data does not cover it.</summary>
    public double RailGauge { get; }

    /// <summary>Not a number where injectors are not shared out evenly over the cylinders.</summary>
    public double LeanestLambda { get; }

    /// <summary>Not a number where injectors are not shared out evenly over the cylinders.</summary>
    public double RichestLambda { get; }

    /// <summary>Of the weakest injector for an even share; not a number where there is no duty cycle.</summary>
    public double MaximumDutyCycle { get; }

    // One state of the pumps' switches. Figures of both that no worse one replaces are those of rising boost.
    private readonly record struct SolvedNumbers(
        CheckReading<Real>[] Readings,
        double DutyCycle,
        double MaximumDutyCycle,
        double DeadTimeShare,
        double FuelFlow,
        double RailGauge,
        double Leanest,
        double Richest)
    {
        public static SolvedNumbers Of(ICheck[] checks, SystemParts parts, in PointDemand demand)
        {
            SolvedCircuit circuit = parts.CircuitAt(demand);
            (Injection Actual, Injection Judged) injection = parts.InjectionAt(demand, circuit);
            SolvedMixture mixture = MixtureSolver.In(parts, demand, circuit, injection);
            Injection actual = injection.Actual;
            double duty = actual.DutyCycle ?? double.NaN;

            // With the second stream the mixture is richer; the leanest is that of the main fuel alone, should it stop.
            Real richest = mixture.MinimumLambda;
            if (demand.Stream is { Solved.Acts: true } stream)
            {
                richest = Real.Min(richest, StreamMixture.Of(parts, stream, mixture).Richest);
            }

            return new(
                PointJudge.Of(checks, parts, PointReading.Of(parts, demand, circuit, injection.Judged, mixture)),
                duty,
                duty,
                (actual.DeadTime ?? double.NaN) / actual.AvailableTime,
                FuelDemand.Chosen(demand.Chain, demand.Basis),
                circuit.State.State == Circuits.RailState.NotCovered ? double.NaN : circuit.Rail,
                mixture.MaximumLambda,
                richest);
        }

        public SolvedNumbers OrWorse(in SolvedNumbers falling) => this with
        {
            Readings = PointJudge.Worse(Readings, falling.Readings),
            MaximumDutyCycle = Real.Max(MaximumDutyCycle, falling.MaximumDutyCycle),
            Leanest = Real.Max(Leanest, falling.Leanest),
            Richest = Real.Min(Richest, falling.Richest),
        };
    }
}
