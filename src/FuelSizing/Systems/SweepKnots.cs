using FuelSizing.Engines;
using FuelSizing.Regulators;

namespace FuelSizing.Systems;

/// <summary>Where between a sweep's speeds and boosts a figure may bend: points of tables, onset and ceiling of a regulator.</summary>
internal static class SweepKnots
{
    // A bend is found to within a pascal; beyond so many a regulator is a curve, and extremes are looked for instead.
    private const double Bend = 1;
    private const int MaximumBends = 32;
    private const double SameLine = 1e-9;

    /// <summary>Speeds strictly between two others at which a table of the engine has a point, rev/min.</summary>
    public static IEnumerable<double> Speeds(FuelDemandModel demand, double from, double to) =>
        demand.VolumetricEfficiency.BySpeed.Points.Concat(demand.MeasuredPower.BySpeed.Points)
            .Select(point => point.X * 60)
            .Where(speed => speed > from && speed < to);

    /// <summary>Boosts strictly between two others at which the rail's setting bends, and the change from vacuum to boost, Pa.</summary>
    public static IEnumerable<double> Boosts(PressureRegulator regulator, double from, double to)
    {
        List<double> bends = [];
        Find(regulator, from, to, bends);
        return bends.Append(0).Where(boost => boost > from && boost < to);
    }

    private static void Find(PressureRegulator regulator, double from, double to, List<double> bends)
    {
        double middle = (from + to) / 2;
        if (bends.Count >= MaximumBends || IsStraight(regulator, from, to))
        {
            return;
        }

        // A bend in the very middle leaves two straight halves.
        if (to - from <= Bend || (IsStraight(regulator, from, middle) && IsStraight(regulator, middle, to)))
        {
            bends.Add(middle);
            return;
        }

        Find(regulator, from, middle, bends);
        Find(regulator, middle, to, bends);
    }

    // Two bends might cancel out at the middle; not at the quarters too.
    private static bool IsStraight(PressureRegulator regulator, double from, double to)
    {
        double low = regulator.SetPascals(from);
        double high = regulator.SetPascals(to);
        double tolerance = SameLine * (Math.Abs(low) + Math.Abs(high));
        return Near(0.25) && Near(0.5) && Near(0.75);

        bool Near(double share) =>
            Math.Abs(regulator.SetPascals(from + (share * (to - from))) - (low + (share * (high - low)))) <= tolerance;
    }
}
