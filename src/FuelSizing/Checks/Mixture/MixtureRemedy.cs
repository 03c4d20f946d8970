using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>What would bring the mixture within its limits: the pressure in the rail, and the gain that gives it.</summary>
internal static class MixtureRemedy
{
    // Gains are set to a hundredth at the best.
    private const double GainStep = 100;

    /// <summary>The remedy where a mixture is too lean, or too rich.</summary>
    public static Remedy For(Part part, RemedyTask task)
    {
        bool isLean = part == Part.Mixture;
        if (isLean && task.Failing.FirstOrDefault(point => point.Mixture.RailState is RailState.Sagging or RailState.Starved) is { } sagging)
        {
            return Remedy.Of(
                part,
                null,
                Statement.Of(
                    "mixture.pump-first",
                    $"First pumps and wiring that hold the rail at {sagging.RailSetGauge}, which it does not reach at {sagging.Point}; then the mixture again."));
        }

        (SolvedPoint Point, double Rail)[] needed = [.. task.Failing.Select(point => (point, RailFor(point, isLean)))];
        (SolvedPoint none, double without) = needed.FirstOrDefault(each => double.IsNaN(each.Rail));
        if (none is not null && double.IsNaN(without))
        {
            return Remedy.Of(
                part,
                null,
                isLean
                    ? Statement.Of(
                        "mixture.no-pressure-serves",
                        $"No rail pressure gives enough fuel at {none.Point}: a longer pulse, larger injectors with their own data in the controller, or less boost.")
                    : Statement.Of(
                        "mixture.no-pressure-is-low-enough",
                        $"No rail pressure is low enough at {none.Point}: a shorter pulse, or smaller injectors with their own data in the controller."));
        }

        (SolvedPoint worst, double rail) = isLean
            ? needed.MaxBy(each => each.Rail - each.Point.RailSetGauge.Pascals)
            : needed.MinBy(each => each.Rail - each.Point.RailSetGauge.Pascals);
        if (Gain(needed, isLean) is { } gain)
        {
            // The gain is that of the point that asks for most of it: what it sets elsewhere may be more than the mixture needs there, and the parts must stand that.
            RisingRate fitted = (RisingRate)task.Parts.Regulator;
            RisingRate unit = RisingRate.From(fitted.Base, gain, fitted.Onset).With(fitted.Flow);
            double Set(SolvedPoint point) => unit.SetPascals(point.Point.BoostPascals);
            SolvedPoint highest = isLean ? task.Points.MaxBy(Set)! : worst;
            Pressure set = Pressure.FromPascals(Set(highest));
            return Remedy.Of(
                part,
                set,
                isLean
                    ? Statement.Of(
                        "mixture.more-gain",
                        $"A gain of at least {gain:0.00}, which sets the rail to {set:pressure:up} at {highest.Point}; pumps, hoses and injectors must stand that, and the rich side be looked at again.")
                    : Statement.Of(
                        "mixture.less-gain", $"A gain of at most {gain:0.00}, which sets the rail to {set:pressure:down} at {highest.Point}; look at the lean side again."));
        }

        Pressure wanted = Pressure.FromPascals(rail);
        return Remedy.Of(
            part,
            wanted,
            isLean
                ? Statement.Of(
                    "mixture.more-pressure",
                    $"At least {wanted:pressure:up} in the rail at {worst.Point}, where {worst.RailSetGauge} is set; pumps, hoses and injectors must stand that; or less boost.")
                : Statement.Of("mixture.less-pressure", $"At most {wanted:pressure:down} in the rail at {worst.Point}, where {worst.RailSetGauge} is set."));
    }

    /// <summary>Rail pressure at which a point keeps its limit, gauge, Pa; not a number where none does.</summary>
    private static double RailFor(SolvedPoint point, bool isLean)
    {
        MixtureLimits limits = point.Parts.Limits.Mixture!;
        double lambda = isLean ? limits.LeanestAt<Real>(point.Point.BoostPascals) : limits.Richest!.Value / point.MainInjectedShare;
        lambda = MainLambda(point, isLean, lambda);
        if (!(lambda > 0))
        {
            return double.NaN;
        }

        double rail = MixtureSolver.RailFor(point.Parts, point.SolvedDemand.Alone, lambda * (isLean ? 1 - Remedy.Hair : 1 + Remedy.Hair)) - OverSet(point, isLean);

        // At less pressure than their flow is known from, nobody knows what the injectors pass: set there, the mixture could not be said.
        return rail - point.Point.BoostPascals < point.Parts.Injectors.Injector.MinimumPascals ? double.NaN : rail;
    }

    /// <summary>The lambda of the main fuel alone with which both streams together have a lambda; not over zero where the second stream alone is more fuel than that.</summary>
    private static double MainLambda(SolvedPoint point, bool isLean, double lambda)
    {
        if (point.SolvedDemand.Stream is not { Solved.Acts: true } stream || (isLean && !stream.Solved.Stream.TakesBack))
        {
            return lambda;
        }

        // Of the stream the least counts on the lean side, where its evaporation draws air, and the most on the rich one.
        double air = StreamMixture.Of(point.Parts, stream, point.SolvedMixture).Air;
        double flow = isLean ? stream.Solved.MinimumMassFlow : stream.Solved.MaximumMassFlow;
        double whole = isLean ? lambda / stream.AirGain : lambda;
        return 1 / ((1 / whole) - (stream.Solved.Stream.Fluid.StoichiometricAirFuelRatio * flow / air));
    }

    /// <summary>How far a governed rail is over its setting by what returns, on the side that the limit is judged by, Pa; nothing where the setting is held.</summary>
    private static double OverSet(SolvedPoint point, bool isLean)
    {
        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        CircuitState state = isLean ? circuit.Lower : circuit.Upper;
        return circuit.Task.Held is not null && state.State is RailState.Regulated or RailState.AtRegulatorLimit ? state.Held - circuit.RailSet : 0;
    }

    /// <summary>The gain of the fitted unit that sets a pressure at every failing point; none where no gain does, or none is fitted.</summary>
    private static double? Gain((SolvedPoint Point, double Rail)[] needed, bool isLean)
    {
        if (needed[0].Point.Parts.Regulator is not RisingRate { Ceiling: null, OffsetPascals: 0 } unit)
        {
            return null;
        }

        double onset = unit.Onset.Pascals;
        if (needed.Any(each => each.Point.Point.BoostPascals <= onset))
        {
            return null;
        }

        double[] gains = [.. needed.Select(each => (each.Rail - unit.Base.Pascals - onset) / (each.Point.Point.BoostPascals - onset))];
        double gain = isLean ? Math.Ceiling(gains.Max() * GainStep) / GainStep : Math.Floor(gains.Min() * GainStep) / GainStep;
        return gain is >= RisingRate.MinimumGain and <= RisingRate.MaximumGain ? gain : null;
    }
}
