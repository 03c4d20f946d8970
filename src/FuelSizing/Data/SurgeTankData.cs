using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>A surge tank and its lift circuit: what is lifted, drawn, and overflows.</summary>
public sealed record SurgeTankData : PartlyKnownData
{
    /// <summary>True if more is lifted than drawn.</summary>
    public required bool IsFull { get; init; }

    /// <summary>True if it stays full whatever the pumps' data leave open.</summary>
    public required bool IsSurelyFull { get; init; }

    /// <summary>Net draw of the main circuit.</summary>
    public required double? NetDrawCubicMetersPerSecond { get; init; }

    /// <summary>Lower bound of the net draw that has to be sustained.</summary>
    public required double? MinimumNetDrawCubicMetersPerSecond { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required double? MaximumNetDrawCubicMetersPerSecond { get; init; }

    /// <summary>What the lift pump brings.</summary>
    public required double? LiftedCubicMetersPerSecond { get; init; }

    /// <summary>Lower bound of what it can bring with nothing that overflows.</summary>
    public required double? MinimumLiftedCubicMetersPerSecond { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required double? MaximumLiftedCubicMetersPerSecond { get; init; }

    /// <summary>What runs back to the main tank by the overflow line.</summary>
    public required double? OverflowCubicMetersPerSecond { get; init; }

    /// <summary>In the surge tank, over ambient pressure.</summary>
    public required double? TankGaugePascals { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required double? MaximumTankGaugePascals { get; init; }

    /// <summary>At the lift pump's inlet.</summary>
    public required double? LiftInletGaugePascals { get; init; }

    /// <summary>At the lift pump's outlet.</summary>
    public required double? LiftOutletGaugePascals { get; init; }

    /// <summary>Each lift pump where it runs; empty where their data does not cover that.</summary>
    public required DataList<PumpData> Pumps { get; init; }

    /// <summary>Each line and filter of the lift circuit, in the order of flow.</summary>
    public required DataList<PathData> Paths { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"{LiftedCubicMetersPerSecond:G6} m³/s lifted, {NetDrawCubicMetersPerSecond:G6} m³/s drawn");

    internal static SurgeTankData Of(SurgeTankResult tank)
    {
        Gaps gaps = new();
        Statement reason = Statement.Of("data.lift-not-covered", $"the data of the pumps, or of the lift pump, does not cover this point");
        return new()
        {
            IsFull = tank.IsFull,
            IsSurelyFull = tank.IsSurelyFull,
            NetDrawCubicMetersPerSecond = gaps.Figure(nameof(NetDrawCubicMetersPerSecond), tank.NetDraw?.CubicMetersPerSecond, reason),
            MinimumNetDrawCubicMetersPerSecond = gaps.Figure(nameof(MinimumNetDrawCubicMetersPerSecond), tank.MinimumNetDraw?.CubicMetersPerSecond, reason),
            MaximumNetDrawCubicMetersPerSecond = gaps.Figure(nameof(MaximumNetDrawCubicMetersPerSecond), tank.MaximumNetDraw?.CubicMetersPerSecond, reason),
            LiftedCubicMetersPerSecond = gaps.Figure(nameof(LiftedCubicMetersPerSecond), tank.Lifted?.CubicMetersPerSecond, reason),
            MinimumLiftedCubicMetersPerSecond = gaps.Figure(nameof(MinimumLiftedCubicMetersPerSecond), tank.MinimumLifted?.CubicMetersPerSecond, reason),
            MaximumLiftedCubicMetersPerSecond = gaps.Figure(nameof(MaximumLiftedCubicMetersPerSecond), tank.MaximumLifted?.CubicMetersPerSecond, reason),
            OverflowCubicMetersPerSecond = gaps.Figure(nameof(OverflowCubicMetersPerSecond), tank.Overflow?.CubicMetersPerSecond, reason),
            TankGaugePascals = gaps.Figure(nameof(TankGaugePascals), tank.TankGauge?.Pascals, reason),
            MaximumTankGaugePascals = gaps.Figure(nameof(MaximumTankGaugePascals), tank.MaximumTankGauge?.Pascals, reason),
            LiftInletGaugePascals = gaps.Figure(nameof(LiftInletGaugePascals), tank.LiftInletGauge?.Pascals, reason),
            LiftOutletGaugePascals = gaps.Figure(nameof(LiftOutletGaugePascals), tank.LiftOutletGauge?.Pascals, reason),
            Pumps = [.. tank.Pumps.Select(PumpData.Of)],
            Paths = [.. tank.Paths.Select(PathData.Of)],
            NotKnown = gaps.Found,
        };
    }
}
