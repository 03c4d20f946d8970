using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Pumps that deliver a share of what they were planned to.</summary>
internal static class PumpCondition
{
    /// <summary>The same pumps with the condition of each times a factor, within what a pump may be: 30 to 100 %.</summary>
    public static PumpAssembly Of(PumpAssembly pumps, double factor) => pumps switch
    {
        PumpSeries series => PumpSeries.Of(series.Bypass, [.. series.Stages.Select(stage => Of(stage, factor))]),
        PumpParallel parallel => PumpParallel.Of([.. parallel.Branches.Select(branch => Of(branch, factor))]),
        Pump pump => Pump.Of(
            pump.Curves,
            pump.Relief,
            Ratio.FromDecimalFractions(Math.Clamp(pump.Condition.DecimalFractions * factor, 0.3, 1)),
            pump.Feed),
        _ => pumps,
    };
}
