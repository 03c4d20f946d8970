using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Dead time and static flow of the injectors as pulse and fuel flow imply, against the planned.</summary>
public sealed record DeadTimeFound : IReadable
{
    internal DeadTimeFound(Estimate<Duration> over, Estimate<Ratio> flow) => (OverPlanned, FlowFactor) = (over, flow);

    /// <summary>Dead time over the planned table.</summary>
    public Estimate<Duration> OverPlanned { get; }

    /// <summary>Static flow ÷ the planned.</summary>
    public Estimate<Ratio> FlowFactor { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.dead-time",
        $"dead time {OverPlanned.Value:pulse-change} over the table ({OverPlanned.Minimum:pulse-change} to {OverPlanned.Maximum:pulse-change}), static flow {FlowFactor.Value:duty-cycle} of the planned ({FlowFactor.Minimum:duty-cycle} to {FlowFactor.Maximum:duty-cycle})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
