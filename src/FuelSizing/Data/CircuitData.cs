using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>Every pressure, flow, voltage and current of the circuit; pressures over the ambient pressure.</summary>
/// <remarks>Where pump data ends these are estimates; what is judged by, with its conservative side, stands in the checks.</remarks>
public sealed record CircuitData : PartlyKnownData
{
    /// <summary>What determines the rail pressure.</summary>
    public required RailState RailState { get; init; }

    /// <summary>What the regulator asks for.</summary>
    public required double RailSetGaugePascals { get; init; }

    /// <summary>In the rail: as set, or lower where the pump cannot hold it.</summary>
    public required double RailGaugePascals { get; init; }

    /// <summary>Through the pumps.</summary>
    public required double? PumpFlowCubicMetersPerSecond { get; init; }

    /// <summary>What reaches the injectors.</summary>
    public required double? DeliveredCubicMetersPerSecond { get; init; }

    /// <summary>Back to the tank.</summary>
    public required double? ReturnedCubicMetersPerSecond { get; init; }

    /// <summary>At the pumps' inlet.</summary>
    public required double? InletGaugePascals { get; init; }

    /// <summary>At the pumps' outlet.</summary>
    public required double? OutletGaugePascals { get; init; }

    /// <summary>Where the return line begins.</summary>
    public required double? ReturnGaugePascals { get; init; }

    /// <summary>Heat that comes back to the tank, but for what the fuel picks up at the engine.</summary>
    public required double? HeatToTankWatts { get; init; }

    /// <summary>Each pump where it runs; empty where their data does not cover the point.</summary>
    public required DataList<PumpData> Pumps { get; init; }

    /// <summary>Each shared line and filter in the order of flow; empty where the pumps' data does not cover the point.</summary>
    public required DataList<PathData> Paths { get; init; }

    /// <summary>Each branch with lines of its own.</summary>
    public required DataList<BranchData> Branches { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"rail {RailGaugePascals:G6} Pa, {RailState}");

    /// <summary>Why figures of pumps are not known.</summary>
    internal static readonly Statement NotCovered = Statement.Of("data.pump-not-covered", $"the pumps' data does not cover this point");

    internal static CircuitData Of(SolvedPoint point)
    {
        Gaps gaps = new();
        CircuitResult circuit = point.Circuit;
        return new()
        {
            RailState = point.RailState,
            RailSetGaugePascals = point.RailSetGauge.Pascals,
            RailGaugePascals = point.RailGauge.Pascals,
            PumpFlowCubicMetersPerSecond = gaps.Figure(nameof(PumpFlowCubicMetersPerSecond), circuit.PumpFlow?.CubicMetersPerSecond, NotCovered),
            DeliveredCubicMetersPerSecond = gaps.Figure(nameof(DeliveredCubicMetersPerSecond), circuit.DeliveredFlow?.CubicMetersPerSecond, NotCovered),
            ReturnedCubicMetersPerSecond = gaps.Figure(nameof(ReturnedCubicMetersPerSecond), circuit.ReturnedFlow?.CubicMetersPerSecond, NotCovered),
            InletGaugePascals = gaps.Figure(nameof(InletGaugePascals), circuit.InletGauge?.Pascals, NotCovered),
            OutletGaugePascals = gaps.Figure(nameof(OutletGaugePascals), circuit.OutletGauge?.Pascals, NotCovered),
            ReturnGaugePascals = gaps.Figure(nameof(ReturnGaugePascals), circuit.ReturnGauge?.Pascals, NotCovered),
            HeatToTankWatts = gaps.Figure(
                nameof(HeatToTankWatts),
                (double?)circuit.HeatToTank?.Watts,
                point.RailState == RailState.NotCovered ? NotCovered : Statement.Of("data.heat-not-known", $"the current of a pump is not known, or nothing flows")),
            Pumps = [.. circuit.Pumps.Select(PumpData.Of)],
            Paths = [.. circuit.Paths.Select(PathData.Of)],
            Branches = [.. circuit.Branches.Select(BranchData.Of)],
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>One pump where it runs.</summary>
public sealed record PumpData : PartlyKnownData
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>False where it is switched off.</summary>
    public required bool IsRunning { get; init; }

    /// <summary>True if its curve was carried to this voltage by the affinity laws.</summary>
    public required bool IsEstimate { get; init; }

    /// <summary>Flow through it.</summary>
    public required double? FlowCubicMetersPerSecond { get; init; }

    /// <summary>Pressure that it adds.</summary>
    public required double? RisePascals { get; init; }

    /// <summary>Voltage that its feed is given.</summary>
    public required double? SourceVolts { get; init; }

    /// <summary>Voltage at its motor.</summary>
    public required double? MotorVolts { get; init; }

    /// <summary>Voltage lost in its feed, the shared part included.</summary>
    public required double? FeedDropVolts { get; init; }

    /// <summary>Current that it draws.</summary>
    public required double? CurrentAmperes { get; init; }

    /// <summary>Current in its feed: the same, or what its converter draws for it.</summary>
    public required double? FeedCurrentAmperes { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"{Name}: {FlowCubicMetersPerSecond:G6} m³/s against {RisePascals:G6} Pa");

    internal static PumpData Of(PumpResult pump)
    {
        Gaps gaps = new();
        Statement current = Statement.Of("data.current-not-known", $"the pump's current was not measured, or not at such a pressure");
        return new()
        {
            Name = pump.Pump.Name,
            IsRunning = pump.IsRunning,
            IsEstimate = pump.IsEstimate,
            FlowCubicMetersPerSecond = gaps.Figure(nameof(FlowCubicMetersPerSecond), pump.Flow.CubicMetersPerSecond, CircuitData.NotCovered),
            RisePascals = gaps.Figure(nameof(RisePascals), pump.PressureRise.Pascals, CircuitData.NotCovered),
            SourceVolts = gaps.Figure(nameof(SourceVolts), pump.SourceVoltage.Volts, current),
            MotorVolts = gaps.Figure(nameof(MotorVolts), pump.Voltage.Volts, current),
            FeedDropVolts = gaps.Figure(nameof(FeedDropVolts), pump.FeedDrop.Volts, current),
            CurrentAmperes = gaps.Figure(nameof(CurrentAmperes), pump.Current?.Amperes, current),
            FeedCurrentAmperes = gaps.Figure(nameof(FeedCurrentAmperes), pump.FeedCurrent?.Amperes, current),
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>One line or filter at its flow.</summary>
public sealed record PathData : DataRecord
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Flow through it.</summary>
    public required double FlowCubicMetersPerSecond { get; init; }

    /// <summary>Pressure lost in it, height included.</summary>
    public required double LossPascals { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"{Name}: {LossPascals:G6} Pa at {FlowCubicMetersPerSecond:G6} m³/s");

    internal static PathData Of(PathResult path) => new()
    {
        Name = path.Name,
        FlowCubicMetersPerSecond = path.Flow.CubicMetersPerSecond,
        LossPascals = path.PressureLoss.Pascals,
    };
}

/// <summary>One branch with lines of its own, where it runs.</summary>
public sealed record BranchData : DataRecord
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>True where nothing flows through it.</summary>
    public required bool IsShut { get; init; }

    /// <summary>Flow through it.</summary>
    public required double FlowCubicMetersPerSecond { get; init; }

    /// <summary>Lowest pressure at the inlet of its pumps.</summary>
    public required double InletGaugePascals { get; init; }

    /// <summary>Highest pressure at the outlet of its pumps.</summary>
    public required double OutletGaugePascals { get; init; }

    /// <summary>At the joint with the other branches.</summary>
    public required double JointGaugePascals { get; init; }

    /// <summary>Its parts before its pumps.</summary>
    public required DataList<PathData> Suction { get; init; }

    /// <summary>Its parts after its pumps; empty where it is shut.</summary>
    public required DataList<PathData> Discharge { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"{Name}: {FlowCubicMetersPerSecond:G6} m³/s, {JointGaugePascals:G6} Pa at the joint");

    internal static BranchData Of(BranchResult branch) => new()
    {
        Name = branch.Branch.Name,
        IsShut = branch.IsShut,
        FlowCubicMetersPerSecond = branch.Flow.CubicMetersPerSecond,
        InletGaugePascals = branch.InletGauge.Pascals,
        OutletGaugePascals = branch.OutletGauge.Pascals,
        JointGaugePascals = branch.JointGauge.Pascals,
        Suction = [.. branch.Suction.Select(PathData.Of)],
        Discharge = [.. branch.Discharge.Select(PathData.Of)],
    };
}
