using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>Mixtures with a second stream, in SI numbers; not a number is what is not known.</summary>
/// <param name="Air">That the engine takes without the stream's evaporation, kg/s.</param>
/// <param name="Lambda">Of both streams.</param>
/// <param name="Richest">The least that it can be, with no evaporation counted.</param>
/// <param name="RichAtMost">The most that it can be, with none counted.</param>
/// <param name="LeanAtLeast">The least that it can be, with all evaporation counted that is stated.</param>
/// <param name="Leanest">The most that it can be, with it counted.</param>
/// <param name="StoppedAtLeast">Of the main fuel alone, as it is injected beside the stream, the least that it can be.</param>
/// <param name="Stopped">The most that it can be.</param>
internal readonly record struct StreamMixture(
    double Air, double Lambda, double Richest, double RichAtMost, double LeanAtLeast, double Leanest, double StoppedAtLeast, double Stopped)
{
    /// <summary>The mixture of both streams, and of the main fuel alone, each between its bounds.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="stream">The stream at the point.</param>
    /// <param name="mixture">That the controller gives by the main fuel alone.</param>
    public static StreamMixture Of(SystemParts parts, PointStream stream, in SolvedMixture mixture)
    {
        (PointDemand alone, SolvedStream solved, double gain) = (stream.Alone, stream.Solved, stream.AirGain);
        double without = FuelDemand.ShareWithoutEvaporation(alone.Chain, alone.Basis);
        double target = parts.Demand.TargetLambdaAt(alone.Point.RevolutionsPerSecond);
        double ratio = parts.Demand.Consumption.Fuel.AirFuelRatio;

        // Where the main fuel is that of power, its air is what it burns with at the target.
        double air = alone.Required * (Real)alone.Density * Combustion.AirFuelRatio<Real>(target, ratio);
        if (!solved.Acts)
        {
            return new(air, mixture.Lambda, mixture.MinimumLambda, mixture.MaximumLambda, mixture.MinimumLambda / without, mixture.MaximumLambda, mixture.MinimumLambda / without, mixture.MaximumLambda);
        }

        // A lambda sensor would read both streams, and trim the main fuel by it: how far is not known.
        bool isTrimmed = parts.Controller.Loop is { } loop && alone.Chain.ManifoldAbsolute.Value <= loop.MaximumManifoldAbsolute.Pascals;
        double stoppedLeast = isTrimmed && alone.TakenBack > 0 ? double.NaN : mixture.MinimumLambda / without;
        double stoppedMost = isTrimmed && alone.TakenBack > 0 ? double.NaN : mixture.MaximumLambda;
        if (isTrimmed)
        {
            return new(air, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, stoppedLeast, stoppedMost);
        }

        double Both(double lambda, double flow, double drawn) => double.IsNaN(lambda)
            ? double.NaN
            : TwoFuels.Lambda<Real>(drawn, ratio, drawn / (ratio * lambda), solved.Stream.Fluid.StoichiometricAirFuelRatio, flow);
        double shown = Both(mixture.Lambda, solved.MassFlow, air);

        // The richest: no evaporation draws more air, and the most is sprayed. The leanest: all that is stated evaporates, and the least is sprayed.
        double richest = Both(mixture.MinimumLambda, solved.MaximumMassFlow, air * without);
        double leanest = gain * Both(mixture.MaximumLambda, solved.MinimumMassFlow, air);
        double leastLean = gain * Both(mixture.MinimumLambda / without, solved.MaximumMassFlow, air);
        return new(air, shown, richest, leanest / gain * without, leastLean, leanest, stoppedLeast, stoppedMost);
    }
}
