using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Lambda as recorded, beside the lambda that the plan's controller gives at the same speed, manifold pressure, voltage and fuel temperature.</summary>
public sealed record MixtureComparison : IReadable
{
    internal MixtureComparison(IReadOnlyList<MixturePlace> places, int rows, string load)
    {
        (Places, Rows, Load) = ([.. places], rows, load);
        Leanest = Places.MaxBy(place => place.Recorded)!;
        double[] ratios = [.. Places.Select(place => place.Ratio).Order()];
        Median = Ratio.FromDecimalFractions(((ratios[(ratios.Length - 1) / 2] + ratios[ratios.Length / 2]) / 2) - 1);
    }

    /// <summary>Rows on boost at which both are known, in the order of the run; evenly spread over it where there are many.</summary>
    public IReadOnlyList<MixturePlace> Places { get; }

    /// <summary>All rows on boost of which lambda is known.</summary>
    public int Rows { get; }

    /// <summary>Where the recorded lambda is highest.</summary>
    public MixturePlace Leanest { get; }

    /// <summary>How much leaner the run is than the plan's controller makes it, median of the places; negative is richer.</summary>
    public Ratio Median { get; }

    /// <summary>On boost; of an engine without compressor near full load.</summary>
    internal string Load { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.mixture-beside-plan",
        $"{Load} lambda is as a median {Ratio.FromDecimalFractions(Math.Abs(Median.DecimalFractions)):share} {(Median < Ratio.Zero ? "richer" : "leaner")} than the plan's controller gives; leanest recorded {Leanest}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}

/// <summary>Lambda as recorded and as the plan's controller gives it, at one row.</summary>
public sealed record MixturePlace : IReadable
{
    internal MixturePlace(RunPlace place, double recorded, DeliveredMixture planned) =>
        (Place, Recorded, Planned) = (place, recorded, planned);

    /// <summary>Where.</summary>
    public RunPlace Place { get; }

    /// <summary>Lambda as recorded.</summary>
    public double Recorded { get; }

    /// <summary>The mixture that the plan has there, with its causes; its lambda is known.</summary>
    public DeliveredMixture Planned { get; }

    /// <summary>Recorded ÷ planned lambda.</summary>
    public double Ratio => Recorded / Planned.Lambda!.Value;

    /// <summary>True if the plan's own mixture is as lean, to 6 % (common practice, no source): its cause is then the likely one.</summary>
    public bool IsExplained => Ratio <= 1 + LeanExcursions.Allowance;

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => (IsExplained, Planned.Causes.FirstOrDefault(cause => cause.Factor > 1)) switch
    {
        (true, { } cause) => Statement.Of(
            "run.mixture-explained", $"{Recorded:0.00} at {Place}, where the plan's controller gives {Planned.Lambda!.Value:0.00}: {cause.Text}"),
        (true, null) => Statement.Of("run.mixture-as-planned", $"{Recorded:0.00} at {Place}, where the plan's controller gives {Planned.Lambda!.Value:0.00}"),
        _ => Statement.Of(
            "run.mixture-unexplained",
            $"{Recorded:0.00} at {Place}, where the plan's controller gives {Planned.Lambda!.Value:0.00}, which does not explain it: look at the faults"),
    };

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
