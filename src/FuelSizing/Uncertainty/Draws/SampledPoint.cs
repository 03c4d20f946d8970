using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Systems;

namespace FuelSizing.Uncertainty;

/// <summary>One drawn system, solved.</summary>
internal readonly struct SampledPoint
{
    public SampledPoint(OperatingResult result, ReadOnlySpan<Real> matching)
    {
        (Result, Margins) = (result, result.Margins);
        InjectorSet injectors = result.System.Injectors;
        int cylinders = result.System.Demand.Engine.Cylinders;
        Real leanest = result.SolvedMixture.MaximumLambda;
        Real richest = result.SolvedMixture.MinimumLambda;
        if (result.SecondStream is { Acts: true } stream)
        {
            // With the second stream the mixture is richer; the leanest is that of the main fuel alone, should it stop.
            richest = Real.Min(richest, stream.MinimumLambda ?? double.NaN);
        }

        Real duty = result.DutyCycle?.DecimalFractions ?? double.NaN;
        if (result.Falling is { } falling)
        {
            leanest = Real.Max(leanest, falling.SolvedMixture.MaximumLambda);
            richest = Real.Min(richest, falling.SolvedMixture.MinimumLambda);
            duty = Real.Max(duty, falling.DutyCycle?.DecimalFractions ?? double.NaN);
        }

        bool shared = injectors.Count % cylinders == 0;
        (LeanestLambda, RichestLambda) = shared ? ((double)leanest, (double)richest) : (double.NaN, double.NaN);
        MaximumDutyCycle = duty;
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

        Real dead = (result.Actual.DeadTime ?? double.NaN) / result.Actual.AvailableTime;
        MaximumDutyCycle = InjectorMatching.EvenDutyCycle(duty, dead, mean, weakest);
        if (!shared)
        {
            return;
        }

        int each = injectors.Count / cylinders;
        for (int cylinder = 0; cylinder < cylinders; cylinder++)
        {
            Real own = InjectorMatching.Mean(matching.Slice(cylinder * each, each));
            Real lean = InjectorMatching.Lambda(leanest, mean, own);
            Real rich = InjectorMatching.Lambda(richest, mean, own);
            LeanestLambda = cylinder == 0 ? lean : Real.Max(LeanestLambda, lean);
            RichestLambda = cylinder == 0 ? rich : Real.Min(RichestLambda, rich);
        }
    }

    public OperatingResult Result { get; }

    public IReadOnlyList<Margin> Margins { get; }

    /// <summary>Not a number where injectors are not shared out evenly over the cylinders.</summary>
    public double LeanestLambda { get; }

    /// <summary>Not a number where injectors are not shared out evenly over the cylinders.</summary>
    public double RichestLambda { get; }

    /// <summary>Of the weakest injector for an even share; not a number where there is no duty cycle.</summary>
    public double MaximumDutyCycle { get; }
}
