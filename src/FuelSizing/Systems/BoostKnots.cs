using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Regulators;

namespace FuelSizing.Systems;

/// <summary>The boosts at which something about a system has a kink.</summary>
internal static class BoostKnots
{
    // Into how many pieces a curve is cut to see where it passes something.
    private const int Pieces = 32;

    // A hundredth of a pascal: less than anyone sets a switch by.
    private const double BesideSwitch = 0.01;

    /// <summary>Kinks of the regulator, and where the pressure across the injectors passes a row of their dead-time table or a measured flow; and a hand-over by boost.</summary>
    /// <param name="system">The system.</param>
    /// <param name="ambient">Ambient pressure, Pa.</param>
    /// <param name="minimum">Lowest boost, Pa.</param>
    /// <param name="maximum">Highest boost, Pa.</param>
    /// <returns>Boosts, Pa, in no order, the lowest and the highest among them; and no boost, where that lies between.</returns>
    public static IReadOnlyList<double> Of(FuelSystem system, double ambient, double minimum, double maximum)
    {
        List<double> knots =
        [
            minimum,
            .. Of(system.Regulator).Append(0).Concat(OfMixture(system, ambient)).Concat(OfSwitches(system)).Concat(HandOverKnots.Boosts(system)).Concat(OfStream(system)).Concat(system.Demand.Law?.BoostKinks.Select(kink => kink.Pascals) ?? []).Where(knot => knot > minimum && knot < maximum).Distinct().Order(),
            maximum,
        ];
        if (system.Regulator is RegulatorSeries pair)
        {
            knots.AddRange(Crossings(Along(), boost => pair.Unit.SetPascals(boost) - pair.BaseRegulator.SetPascals(boost)));
            knots.Sort();
        }

        // Between its kinks the setting is straight (of a law of one's own, between the places at which it is read), and so is the differential: manifold pressure
        // is ambient pressure and boost.
        double[] pieces = Along();
        if (system.Regulator is RegulatorSeries { IsGainQuoted: true } quoted)
        {
            knots.AddRange(Crossings(pieces, boost => quoted.OverBase(boost) + quoted.OffsetPascals - quoted.SetPascals(boost)));
        }

        IEnumerable<double> rows = system.Injectors.Injector.DeadTime.Points.Select(point => point.Differential?.Pascals).OfType<double>();
        foreach (double row in rows.Concat(system.Injectors.Injector.MeasuredFlows.Select(point => point.Differential.Pascals)).Concat(HandOverKnots.Differentials(system)).Distinct())
        {
            knots.AddRange(Crossings(pieces, boost => system.Regulator.SetPascals(boost) - boost - row));
        }

        return knots;

        double[] Along() => system.Regulator.IsByLaw ? Between(knots) : [.. knots];
    }

    /// <summary>Boosts at which a limit of the mixture begins or bends, or a controller's sensor or table ends.</summary>
    private static IEnumerable<double> OfMixture(FuelSystem system, double ambient)
    {
        IEnumerable<double> limits = system.Limits.Mixture?.Boosts ?? [];
        IEnumerable<double> ends = system.Controller.ManifoldKnots.Select(pressure => pressure - ambient);

        // A limit counts from its first boost on: what lies just under it is not judged, and is looked at as well.
        return [.. limits, .. ends];
    }

    /// <summary>Where a pump is switched, and just outside, for there the system is another.</summary>
    private static IEnumerable<double> OfSwitches(FuelSystem system) => system.Pump.Switches.SelectMany(pump => (double[])
    [
        pump.Off.Pascals - BesideSwitch, pump.Off.Pascals, pump.On.Pascals, pump.On.Pascals + BesideSwitch,
    ]);

    /// <summary>Where a second stream begins, and just below; where all of it flows; where its nozzles have too little, or nothing, across them.</summary>
    private static IEnumerable<double> OfStream(FuelSystem system)
    {
        if (system.SecondStream is not { } stream)
        {
            return [];
        }

        double begin = stream.Begin.Pascals;
        double[] held = stream.HeldPressure is { } pressure && stream.Nozzles.SpraysInto == SprayPlace.Manifold
            ? [pressure.Pascals - stream.Nozzles.MinimumPascals - BesideSwitch, pressure.Pascals - stream.Nozzles.MinimumPascals + BesideSwitch, pressure.Pascals, pressure.Pascals + BesideSwitch]
            : [];
        return [begin - BesideSwitch, begin, begin + BesideSwitch, stream.Full?.Pascals ?? begin, .. held];
    }

    private static IEnumerable<double> Of(PressureRegulator regulator)
    {
        if (regulator is RegulatorSeries series)
        {
            return [.. Of(series.BaseRegulator), .. Of(series.Unit), .. series.IsGainQuoted ? Of(series.SettingOverBase) : []];
        }

        if (regulator is CustomRegulator own)
        {
            return own.Kinks;
        }

        return Of(regulator.Setting!.Value);
    }

    private static double[] Of(RailSetting setting)
    {
        double toCeiling = setting.Ceiling - setting.Base - (setting.GainBelowOnset * setting.Onset);
        return
        [
            setting.Onset,
            setting.Onset + (toCeiling / setting.Gain),
            (setting.Ceiling - setting.Base) / setting.GainBelowOnset,
        ];
    }

    /// <summary>Where something that is straight between knots passes zero.</summary>
    private static List<double> Crossings(double[] knots, Func<double, double> straight)
    {
        List<double> found = [];
        double[] values = Array.ConvertAll(knots, knot => straight(knot));
        for (int knot = 1; knot < knots.Length; knot++)
        {
            (double from, double to) = (values[knot - 1], values[knot]);
            if (from * to < 0)
            {
                found.Add(StraightLine.Through<Real>(from, knots[knot - 1], to, knots[knot], 0));
            }
            else if (to == 0 && knot + 1 < knots.Length && from * values[knot + 1] < 0)
            {
                found.Add(knots[knot]);
            }
        }

        return found;
    }

    /// <summary>The knots, and places between them.</summary>
    private static double[] Between(List<double> knots) =>
        [.. Enumerable.Range(1, knots.Count - 1).SelectMany(knot => Enumerable.Range(0, Pieces).Select(piece =>
            knots[knot - 1] + ((knots[knot] - knots[knot - 1]) * piece / Pieces))), knots[^1]];
}
