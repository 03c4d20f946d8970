using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Rail pressure against boost as the run shows it: base, gain and onset.</summary>
/// <remarks>
/// rail = base + min(b, o) + g · max(0, b − o), by robust regression over the rows at which the regulator governs; the intervals are
/// from the sandwich covariance and Student's t.
/// </remarks>
public sealed record RegulatorFit : IReadable
{
    /// <summary>Points on either side of a kink without which its place cannot be told.</summary>
    private const int MinimumBeside = 5;

    /// <summary>Evidence over which there is a kink: likelihood ratio of about 1,000, for its place was searched for.</summary>
    private const double MinimumEvidence = 14;

    /// <summary>Boost that must have been run over, Pa.</summary>
    private const double MinimumRange = 10e3;

    private RegulatorFit(
        RegulatorBehaviour behaviour, Estimate<Pressure> basePressure, Estimate<double> gain, Estimate<Pressure>? onset)
    {
        (Behaviour, Base, Gain, Onset) = (behaviour, basePressure, gain, onset);
    }

    /// <summary>How it behaves.</summary>
    public RegulatorBehaviour Behaviour { get; }

    /// <summary>Rail gauge pressure at no boost.</summary>
    public Estimate<Pressure> Base { get; }

    /// <summary>Rise of rail pressure for each 1 of boost, over the onset if there is one.</summary>
    public Estimate<double> Gain { get; }

    /// <summary>Boost at which the gain sets in; none without a kink in the range run.</summary>
    public Estimate<Pressure>? Onset { get; }

    /// <summary>Points used.</summary>
    public int Points { get; private init; }

    /// <summary>Of them, those that carry no weight.</summary>
    public int Outliers { get; private init; }

    /// <summary>Scatter of rail pressure about the fit.</summary>
    public Pressure Scatter { get; private init; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Onset is { } onset
        ? Statement.Of(
            "run.regulator-with-onset",
            $"{Name}: base {Base.Value}, gain {Gain.Value:0.00} ({Gain.Minimum:0.00} to {Gain.Maximum:0.00}) from {onset.Value:boost} ({onset.Minimum:boost} to {onset.Maximum:boost})")
        : Statement.Of(
            "run.regulator", $"{Name}: base {Base.Value}, gain {Gain.Value:0.00} ({Gain.Minimum:0.00} to {Gain.Maximum:0.00})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>Fits points at which the regulator is known to govern.</summary>
    /// <param name="boost">Manifold gauge pressure, Pa.</param>
    /// <param name="rail">Rail gauge pressure, Pa.</param>
    /// <param name="noiseRatio">Scatter of boost ÷ scatter of rail pressure.</param>
    /// <param name="plannedOnset">Pa; null where none is planned.</param>
    /// <param name="shared">What all points share and the scatter does not show; nothing if not given.</param>
    internal static Finding<RegulatorFit> Of(
        double[] boost, double[] rail, double noiseRatio, double? plannedOnset, SharedError? shared = null)
    {
        if (boost.Length < (2 * MinimumBeside) + 2)
        {
            return Finding<RegulatorFit>.CannotTell(Statement.Of(
                "run.regulator-few-points",
                $"the regulator governs at {boost.Length} points only; at least {(2 * MinimumBeside) + 2} are needed"));
        }

        double[] sorted = [.. boost.Order()];
        (double minimum, double maximum) = (sorted[MinimumBeside / 2], sorted[^((MinimumBeside / 2) + 1)]);
        if (maximum - minimum < MinimumRange)
        {
            return Finding<RegulatorFit>.CannotTell(
                Statement.Of(
                    "run.regulator-small-range",
                    $"boost ran from {Pressure.FromPascals(minimum):boost} to {Pressure.FromPascals(maximum):boost} only; a range of at least {Pressure.FromPascals(MinimumRange)} is needed"));
        }

        KinkFit? kink = RobustRegression.Kink(boost, rail, 1, noiseRatio, MinimumBeside);
        if (kink is not null && kink.Evidence > MinimumEvidence && kink.Gain > 1)
        {
            double t = StudentT.InvCDF(0, 1, kink.Freedom, 0.975);
            double[] moved = new double[3];
            foreach ((double[] Boost, double[] Rail) other in shared?.Moved ?? [])
            {
                if (RobustRegression.Kink(other.Boost, other.Rail, 1, noiseRatio, MinimumBeside) is { } again)
                {
                    moved[0] += Square(again.Intercept - kink.Intercept);
                    moved[1] += Square(again.Gain - kink.Gain);
                    moved[2] += Square(again.Onset - kink.Onset);
                }
            }

            moved[0] += Square(shared?.Rail ?? 0) + Square(shared?.Manifold ?? 0);
            moved[2] += Square(shared?.Manifold ?? 0);
            double At(int figure) => t * Math.Sqrt(kink.Covariance[figure, figure] + moved[figure]);
            return Finding<RegulatorFit>.Of(new(
                RegulatorBehaviour.RisingRate,
                Around(kink.Intercept, At(0)),
                new(kink.Gain, kink.Gain - At(1), kink.Gain + At(1)),
                Around(kink.Onset, At(2)))
            {
                Points = boost.Length,
                Outliers = kink.Outliers,
                Scatter = Pressure.FromPascals(kink.Scale),
            });
        }

        LineFit line = RobustRegression.Line(boost, rail);
        double wide = StudentT.InvCDF(0, 1, line.Freedom, 0.975);
        (double ofSlope, double ofIntercept) = (Square(line.SlopeError), Square(line.InterceptError));
        foreach ((double[] Boost, double[] Rail) other in shared?.Moved ?? [])
        {
            LineFit again = RobustRegression.Line(other.Boost, other.Rail);
            ofSlope += Square(again.Slope - line.Slope);
            ofIntercept += Square(again.Intercept - line.Intercept);
        }

        ofIntercept += Square(shared?.Rail ?? 0) + Square(line.Slope * (shared?.Manifold ?? 0));
        double half = wide * Math.Sqrt(ofSlope);
        if (half > Wide)
        {
            return Finding<RegulatorFit>.CannotTell(Statement.Of(
                "run.regulator-scatter",
                $"the points scatter so much that the gain is anything from {line.Slope - half:0.0} to {line.Slope + half:0.0}"));
        }

        RegulatorBehaviour behaviour = Math.Abs(line.Slope) <= Near ? RegulatorBehaviour.Fixed
            : Math.Abs(line.Slope - 1) <= Near + half ? RegulatorBehaviour.ManifoldReferenced
            : RegulatorBehaviour.Proportional;
        if (plannedOnset is { } planned && behaviour == RegulatorBehaviour.ManifoldReferenced && maximum < planned + MinimumRange)
        {
            return Finding<RegulatorFit>.CannotTell(
                Statement.Of(
                    "run.regulator-below-onset",
                    $"boost reached {Pressure.FromPascals(maximum):boost} only and the gain is set to begin at {Pressure.FromPascals(planned):boost}; up to there the rail follows the manifold one for one, as it should"));
        }

        return Finding<RegulatorFit>.Of(new(
            behaviour,
            Around(line.Intercept, wide * Math.Sqrt(ofIntercept)),
            new(line.Slope, line.Slope - half, line.Slope + half),
            null)
        {
            Points = boost.Length,
            Outliers = line.Outliers,
            Scatter = Pressure.FromPascals(line.Scale),
        });
    }

    /// <summary>Half width of the gain's interval over which a fit says nothing.</summary>
    private const double Wide = 0.4;

    /// <summary>Slopes so near to 0 or 1 are taken for it.</summary>
    private const double Near = 0.08;

    private string Name => Behaviour switch
    {
        RegulatorBehaviour.Fixed => "fixed",
        RegulatorBehaviour.ManifoldReferenced => "manifold-referenced",
        RegulatorBehaviour.RisingRate => "rising-rate",
        _ => "proportional to boost, no onset in the range run",
    };

    private static double Square(double value) => value * value;

    private static Estimate<Pressure> Around(double value, double half) =>
        new(Pressure.FromPascals(value), Pressure.FromPascals(value - half), Pressure.FromPascals(value + half));
}
