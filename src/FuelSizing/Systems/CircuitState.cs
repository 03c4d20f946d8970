using FuelSizing.Pumps;

namespace FuelSizing.Systems;

/// <summary>A solved circuit, in SI numbers; pressures are gauge.</summary>
internal readonly record struct CircuitState
{
    /// <summary>Who governs the rail.</summary>
    public required RailState State { get; init; }

    /// <summary>In the rail, Pa.</summary>
    public required double RailGauge { get; init; }

    /// <summary>At the pump's inlet, Pa.</summary>
    public required double InletGauge { get; init; }

    /// <summary>At the pump's outlet, Pa.</summary>
    public required double OutletGauge { get; init; }

    /// <summary>Where the way back begins, Pa.</summary>
    public required double BackGauge { get; init; }

    /// <summary>Through the pump, m³/s; null where its data says nothing.</summary>
    public required double? PumpFlow { get; init; }

    /// <summary>Back to the tank, m³/s; null where the pump's data says nothing.</summary>
    public required double? Returned { get; init; }

    /// <summary>Voltage that the pumps' wiring is fed with, V: the supply's, or less where a controller slows the pump.</summary>
    public required double FedVoltage { get; init; }

    /// <summary>The least that the pumps deliver with the rail at its set pressure, m³/s.</summary>
    public double LeastAtSet { get; init; }

    /// <summary>The most that the pumps may deliver with the rail at its set pressure, m³/s: the same where data covers it.</summary>
    public double MostAtSet { get; init; }

    /// <summary>Each pump where it runs.</summary>
    public required IReadOnlyList<PumpPoint> Pumps { get; init; }

    /// <summary>How far the pumps' flow at the pressures found is off the flow found, as a share of it.</summary>
    public required double Residual { get; init; }

    /// <summary>In the rail, Pa; what the regulator asks for where the pumps' data does not cover the point.</summary>
    /// <param name="set">Pa.</param>
    public double RailOr(double set) => State == RailState.NotCovered ? set : RailGauge;

    /// <summary>Rise over all pumps together, Pa.</summary>
    public double PumpRise => OutletGauge - InletGauge;
}
