using FuelSizing.Equations;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>Every pressure, flow, voltage and current of the circuit at one operating point.</summary>
/// <remarks>Pressures are gauge: over the outside air, which the tank breathes.</remarks>
public sealed record CircuitResult
{
    private readonly CircuitState _state;

    internal CircuitResult(OperatingResult result, in SolvedPoint solved)
    {
        _state = solved.Circuit;
        (InjectedFlow, PumpFlow, ReturnedFlow) = (result.InjectedFlow, result.PumpFlow, result.ReturnedFlow);
        RailGauge = result.RailGauge;
        (Pumps, Ways) = ([], []);
        if (_state.State == RailState.NotCovered)
        {
            return;
        }

        double injected = solved.Injected;
        Pumps = [.. _state.Pumps.Select(point => new PumpResult(point, _state.FedVoltage))];
        Plumbing ways = result.System.Plumbing;
        double flow = _state.PumpFlow ?? 0;
        double supply = result.System.Layout == LineLayout.Return ? flow : injected;
        double density = solved.FuelDensity;
        double viscosity = ways.NeedsViscosity
            ? result.System.Demand.Consumption.Fuel.KinematicViscosityAtKelvins(result.Point.Conditions.FuelKelvins)
            : 0;
        Ways =
        [
            .. ways.Suction.Select(part => new WayResult(part, flow, density, viscosity)),
            .. ways.Supply.Select(part => new WayResult(part, supply, density, viscosity)),
            .. ways.Back.Select(part => new WayResult(part, _state.Returned ?? 0, density, viscosity)),
        ];
    }

    /// <summary>Into the engine.</summary>
    public VolumeFlow InjectedFlow { get; }

    /// <summary>Through the pumps; none where their data says nothing.</summary>
    public VolumeFlow? PumpFlow { get; }

    /// <summary>Back to the tank; none where the pumps' data says nothing.</summary>
    public VolumeFlow? ReturnedFlow { get; }

    /// <summary>At the pump's inlet; none where the pumps' data says nothing.</summary>
    public Pressure? InletGauge => Known(_state.InletGauge);

    /// <summary>At the pump's outlet; none where the pumps' data says nothing.</summary>
    public Pressure? OutletGauge => Known(_state.OutletGauge);

    /// <summary>In the rail.</summary>
    public Pressure RailGauge { get; }

    /// <summary>
    /// Where the way back to the tank begins: what it takes to pass the returned flow; none where the pumps' data says nothing.
    /// </summary>
    public Pressure? BackGauge => Known(_state.BackGauge);

    /// <summary>
    /// How far the solution is off: flow of the pumps at the pressures found against the flow found, as a share of it. The
    /// other laws (flows in and out of each node, pressures round each loop) hold by the way the result is put together.
    /// </summary>
    public Ratio Residual => Ratio.FromDecimalFractions(_state.Residual);

    /// <summary>Each pump where it runs; none where their data says nothing.</summary>
    public IReadOnlyList<PumpResult> Pumps { get; }

    /// <summary>
    /// Each line and filter, in the order of flow: to the pump, to the rail, back; none where the pumps' data says nothing.
    /// </summary>
    public IReadOnlyList<WayResult> Ways { get; }

    /// <summary>
    /// Heat that the pumps leave in the fuel of the tank: electrical power less the work on the injected fuel. None where a
    /// pump's current is not known.
    /// </summary>
    public Power? HeatToTank
    {
        get
        {
            if (Pumps.Count == 0)
            {
                return null;
            }

            Real electrical = 0;
            foreach (PumpResult pump in Pumps)
            {
                if (pump.ElectricalWatts is not { } watts)
                {
                    return null;
                }

                electrical += watts;
            }

            // Over all pumps together: in parallel they share the injected fuel.
            return Power.FromWatts(PumpHeat.ToTank<Real>(
                electrical, _state.PumpRise, InjectedFlow.CubicMetersPerSecond).Value);
        }
    }

    private Pressure? Known(double pascals) =>
        _state.State == RailState.NotCovered ? null : Pressure.FromPascals(pascals);
}
