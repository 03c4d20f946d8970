using FuelSizing.Electrical;
using FuelSizing.Quantities;

namespace FuelSizing.Pumps;

/// <summary>Pumps one behind the other: the same flow through all, pressure rises added.</summary>
public sealed class PumpSeries : PumpAssembly
{
    private readonly PumpAssembly[] _stages;

    private PumpSeries(PumpAssembly[] stages, SeriesBypass bypass) =>
        (_stages, Stages, Bypass) = (stages, Array.AsReadOnly(stages), bypass);

    /// <summary>What a stage does when more flows than it can pass by itself.</summary>
    public SeriesBypass Bypass { get; }

    /// <summary>The stages, from tank to rail.</summary>
    public IReadOnlyList<PumpAssembly> Stages { get; }

    /// <inheritdoc/>
    public override string Name => $"({string.Join(" then ", _stages.Select(stage => stage.Name))})";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [.. _stages.SelectMany(stage => stage.Pumps)];

    /// <summary>Puts stages in series.</summary>
    /// <param name="bypass">What a stage does when more flows than it can pass by itself.</param>
    /// <param name="stages">Two to eight, from tank to rail.</param>
    /// <returns>The assembly.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many stages.</exception>
    public static PumpSeries Of(SeriesBypass bypass, params PumpAssembly[] stages) =>
        new(Members(stages, nameof(stages)), Guard.Member(bypass, "Say how a stage is by-passed.", nameof(bypass)));

    internal override bool HasOpenEnd => _stages.Any(stage => stage.HasOpenEnd);

    internal override PumpAssembly Rewired(Func<Feed, Feed> exchange) =>
        new PumpSeries(Array.ConvertAll(_stages, stage => stage.Rewired(exchange)), Bypass);

    internal override RunningPumps Running(double supply, bool generous = false) =>
        new RunningSeries(Array.ConvertAll(_stages, stage => stage.Running(supply, generous)), Bypass);
}
