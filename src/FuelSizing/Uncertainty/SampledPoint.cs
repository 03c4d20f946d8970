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
        double lambda = result.System.Demand.Consumption.Lambda;
        Real duty = result.DutyCycle?.DecimalFractions ?? double.NaN;
        bool shared = injectors.Count % cylinders == 0;
        (LeanestLambda, RichestLambda) = shared ? (lambda, lambda) : (double.NaN, double.NaN);
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
            Real there = InjectorMatching.Lambda<Real>(lambda, mean, own);
            LeanestLambda = cylinder == 0 ? there : Real.Max(LeanestLambda, there);
            RichestLambda = cylinder == 0 ? there : Real.Min(RichestLambda, there);
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
