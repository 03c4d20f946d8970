using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What many draws of the uncertain inputs gave; along a boost line, each figure at the worst place of each sample.</summary>
public sealed class MonteCarloResult : IReadable
{
    internal MonteCarloResult(UncertainSystem system, Sampling sampling, int done, SampleTable table)
    {
        (System, Sampling, Samples) = (system, sampling, done);
        All = table.All(done);
        Parts = Array.AsReadOnly(table.Parts(done));
        DutyCycle = table.DutyCycle(done);
        FuelFlow = table.FuelFlow(done);
        RailGauge = table.RailGauge(done);
        MinimumReserve = table.MinimumReserve(done);
        Injectors = table.Injectors(done);
        Mixture = Array.AsReadOnly(table.Mixture(system, done));
    }

    /// <summary>What was sampled.</summary>
    public UncertainSystem System { get; }

    /// <summary>How many samples were asked for, the seed and the threads.</summary>
    public Sampling Sampling { get; }

    /// <summary>Samples done.</summary>
    public int Samples { get; }

    /// <summary>False if the run was stopped: the samples done are then the first ones of the whole run.</summary>
    public bool IsComplete => Samples == Sampling.Samples;

    /// <summary>
    /// How likely every part holds at once. A sample in which a part fails counts as failing, even where another cannot be
    /// judged.
    /// </summary>
    public Chance All { get; }

    /// <summary>How likely each part holds, in the order of <see cref="Systems.OperatingResult.Margins"/>.</summary>
    public IReadOnlyList<PartChance> Parts { get; }

    /// <summary>The part that is the least likely to hold.</summary>
    public PartChance MinimumChance => Parts.MinBy(part => part.Chance.Holding)!;

    /// <summary>Duty cycle of the common pulse.</summary>
    public OutputSpread<Ratio> DutyCycle { get; }

    /// <summary>Fuel that the engine is to burn.</summary>
    public OutputSpread<MassFlow> FuelFlow { get; }

    /// <summary>Gauge pressure in the rail.</summary>
    public OutputSpread<Pressure> RailGauge { get; }

    /// <summary>The least reserve of all parts.</summary>
    public OutputSpread<Ratio> MinimumReserve { get; }

    /// <summary>Lambda of the leanest cylinder at each place that is looked at, speeds rising.</summary>
    public IReadOnlyList<MixtureSpread> Mixture { get; }

    /// <summary>From injector to injector; all alike where matching is not among the inputs.</summary>
    public InjectorSpread Injectors { get; }

    /// <summary>The finding in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of("chance.everything", $"everything {All}; least likely {MinimumChance}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);
}
