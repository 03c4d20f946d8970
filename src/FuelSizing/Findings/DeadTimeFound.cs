using System.Globalization;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Dead time and static flow of the injectors as pulse and fuel flow imply, against the planned.</summary>
public sealed record DeadTimeFound
{
    internal DeadTimeFound(Estimate<Duration> over, Estimate<Ratio> flow) => (OverPlanned, FlowFactor) = (over, flow);

    /// <summary>Dead time over the planned table.</summary>
    public Estimate<Duration> OverPlanned { get; }

    /// <summary>Static flow ÷ the planned.</summary>
    public Estimate<Ratio> FlowFactor { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"dead time {OverPlanned.Value.Milliseconds:+0.00;−0.00} ms over the table ({OverPlanned.Minimum.Milliseconds:0.00} to {OverPlanned.Maximum.Milliseconds:0.00} ms), static flow {FlowFactor.Value.Percent:0.0} % of the planned ({FlowFactor.Minimum.Percent:0.0} to {FlowFactor.Maximum.Percent:0.0} %)");
}
