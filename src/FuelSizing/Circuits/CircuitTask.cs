using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Circuits;

/// <summary>A circuit to be solved, in SI numbers.</summary>
/// <param name="Layout">Where the regulator sits.</param>
/// <param name="Pump">The pump or pumps.</param>
/// <param name="Plumbing">The lines.</param>
/// <param name="Supply">Voltage at the source, V.</param>
/// <param name="MinimumSupply">Lowest voltage that a controller gives the pump, V; null where it runs on the full supply.</param>
/// <param name="Set">What the regulator asks for, gauge, Pa.</param>
/// <param name="MinimumReturn">Least returned flow at which the regulator governs, m³/s.</param>
/// <param name="Injected">m³/s.</param>
/// <param name="Density">kg/m³.</param>
/// <param name="KinematicViscosity">m²/s; not read where there are no lines.</param>
internal readonly record struct CircuitTask(
    LineLayout Layout,
    PumpAssembly Pump,
    Plumbing Plumbing,
    double Supply,
    double? MinimumSupply,
    double Set,
    double MinimumReturn,
    double Injected,
    double Density,
    double KinematicViscosity)
{
    // Ambient pressure, about: where no pressure is set, as in a tank, it still says what is small.
    private const double Ambient = 1e5;

    /// <summary>Pressure at the end of the return line, over that at the start of the suction line, Pa: zero where both are one tank, or two at ambient pressure.</summary>
    public double ReturnEnd { get; init; }

    /// <summary>What the regulator holds by what returns through it; none where that is its set pressure.</summary>
    public HeldPressure? Held { get; init; }

    /// <summary>Pressure from which this circuit's are counted, gauge, Pa: that in a surge tank it draws from.</summary>
    public double Origin { get; init; }

    /// <summary>A pressure by which others are small or not, Pa.</summary>
    public double Scale => Set > 0 ? Set : Ambient;

    /// <summary>True if the pressure is held at the rail, downstream of the supply line; else upstream of it.</summary>
    public bool HoldsAtRail => Layout == LineLayout.Return || MinimumSupply is not null;

    /// <summary>True if no line at all lies between the tank and a pump, so that each draws at the tank's pressure whatever it delivers.</summary>
    public bool DrawsFromTank => !Plumbing.HasSuction && !Pump.HasOwnSuction;

    /// <summary>True if a line or filter lies between the tank and the regulator.</summary>
    public bool HasPathToRegulator => Plumbing.HasSuction || (HoldsAtRail ? Plumbing.HasSupply : Plumbing.HasToRegulator);

    /// <summary>Pressure in the rail while the regulator has a pressure, gauge, Pa: less by the supply line where that comes after it.</summary>
    /// <param name="regulated">At the regulator, Pa.</param>
    public double RailAt(double regulated) => HoldsAtRail
        ? regulated
        : CircuitPressure.RailBeyond<Real>(regulated, Plumbing.SupplyLoss(Injected, Density, KinematicViscosity));

    /// <summary>Pressure in the rail while the regulator has its set pressure, gauge, Pa.</summary>
    public double RailAsSet => RailAt(Set);

    /// <summary>The same while the regulator has the lowest pressure at which it begins to govern, by which injectors are judged where the pumps do not reach it.</summary>
    public double RailAsJudged => RailAt(Held is null ? Set : AsOpening());

    /// <summary>Pressure that the regulator holds while the pumps pass a flow, by one side of its data, gauge, Pa; the return line may hold more.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="reading">By which side.</param>
    public double RegulatedAt(double flow, RegulatorReading reading) =>
        Held is null ? Set : HeldAt(Math.Max(0, flow - Injected), reading);

    /// <summary>The same where it is known what the return line takes at that flow, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="back">Pressure at which the return line passes the surplus, Pa.</param>
    /// <param name="reading">By which side.</param>
    public double RegulatedAt(double flow, double back, RegulatorReading reading) =>
        Held is null ? Set : HeldAt(Math.Max(0, flow - Injected), back, reading);

    /// <summary>Pressure at the regulator while the pumps pass a flow, by one side of its data, gauge, Pa: what it holds, or the return line where that holds more.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="reading">By which side.</param>
    public double PressureAt(double flow, RegulatorReading reading)
    {
        double back = ReturnPressureAt(flow);
        return Math.Max(RegulatedAt(flow, back, reading), back);
    }

    /// <summary>
    /// Pressure against which pumps have to deliver what is injected, its reserve and the minimum return, gauge, Pa: the set pressure, or what the regulator holds
    /// at the minimum return where that is more.
    /// </summary>
    /// <param name="reading">By which side of the regulator's data.</param>
    public double DeliveredAgainst(RegulatorReading reading) => Held is null
        ? Set
        : Math.Max(Held.Stated(reading) - Origin, HeldAt(MinimumReturn, reading));

    private double AsOpening()
    {
        double band = Held!.Stated(RegulatorReading.Estimate) - Held.Stated(RegulatorReading.Lower);
        return Math.Min(Held.Stated(RegulatorReading.Lower) - Origin, HeldAt(MinimumReturn, RegulatorReading.Estimate) - band);
    }

    private double HeldAt(double returned, RegulatorReading reading) => HeldAt(returned, ReturnLossAt(returned), reading);

    private double HeldAt(double returned, double back, RegulatorReading reading) => Held!.At(returned, back + Origin, reading) - Origin;

    /// <summary>Pressure that a flow loses between the tank and the regulator.</summary>
    /// <param name="flow">m³/s.</param>
    public PathLosses LossesAt(double flow) => new(
        Plumbing.SuctionLoss(flow, Density, KinematicViscosity),
        HoldsAtRail ? Plumbing.SupplyLoss(flow, Density, KinematicViscosity) : ToRegulator(flow));

    /// <summary>Pressure that a flow loses before a regulator that sits upstream of the supply line, Pa; zero where it sits at the pump or at the rail.</summary>
    /// <param name="flow">m³/s.</param>
    public double ToRegulator(double flow) => HoldsAtRail ? 0 : Plumbing.ToRegulatorLoss(flow, Density, KinematicViscosity);

    /// <summary>Pressure where the return line begins: lost in it, height included, over that at its end, Pa.</summary>
    /// <param name="returned">m³/s.</param>
    public double ReturnLossAt(double returned) => Plumbing.ReturnLoss(returned, Density, KinematicViscosity) + ReturnEnd;

    /// <summary>Pressure rise that the pumps need to deliver a flow with the rail at its set pressure, or what the regulator holds then, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    public double RiseToDeliver(double flow) => (Real)LossesAt(flow).Total + DeliveredAgainst(RegulatorReading.Upper);

    /// <summary>The system curve: pressure rise that the circuit asks of the pumps to pass a flow, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    public double RiseToPass(double flow) => RiseToPass(flow, RegulatorReading.Estimate);

    /// <summary>The same by one side of the regulator's data, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="reading">By which side.</param>
    public double RiseToPass(double flow, RegulatorReading reading) =>
        (Real)LossesAt(flow).Total + PressureAt(flow, reading);

    /// <summary>Pressure at which the return line passes the surplus when the pumps pass a flow, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    public double ReturnPressureAt(double flow) => ReturnLossAt(Math.Max(0, flow - Injected));

    /// <summary>Every line and filter with the flow through it, in the order of flow: suction line, what leads to a regulator before the rail, supply line, return line.</summary>
    /// <param name="state">The solved circuit.</param>
    public IEnumerable<(IFlowLoss Part, double Flow)> Flows(in CircuitState state)
    {
        FlowList flows = new([]);
        EachShared(state, ref flows);
        return flows.Parts;
    }

    /// <summary>Shows somebody each of them, and those of branches with lines of their own, for those who look at many points and keep no list.</summary>
    /// <param name="state">The solved circuit.</param>
    /// <param name="to">Whom.</param>
    public void EachFlow<T>(in CircuitState state, ref T to)
        where T : struct, ISeesFlow
    {
        EachShared(state, ref to);
        if (Pump.HasOwnLines && state.PumpFlow is not null)
        {
            foreach ((IFlowLoss part, double flow) in OwnFlows(state.Places))
            {
                to.See(part, flow);
            }
        }
    }

    private void EachShared<T>(in CircuitState state, ref T to)
        where T : struct, ISeesFlow
    {
        double pump = state.PumpFlow ?? 0;
        double returned = state.Returned ?? 0;
        double forward = Layout == LineLayout.Return ? pump : state.State == RailState.Starved ? pump - returned : Injected;
        Each(Plumbing.SuctionParts, pump, ref to);
        Each(Plumbing.ToRegulatorParts, pump, ref to);
        Each(Plumbing.SupplyParts, forward, ref to);
        Each(Plumbing.ReturnParts, returned, ref to);
    }

    private static void Each<T>(ReadOnlySpan<IFlowLoss> parts, double flow, ref T to)
        where T : struct, ISeesFlow
    {
        foreach (IFlowLoss part in parts)
        {
            to.See(part, flow);
        }
    }

    /// <summary>Every line, filter and valve of branches with the flow through it: of each its suction, then its discharge.</summary>
    /// <param name="places">Where the pumps run.</param>
    public static IEnumerable<(IFlowLoss Part, double Flow)> OwnFlows(IReadOnlyList<PumpPlace> places)
    {
        foreach (PumpPlace place in places)
        {
            if (place.Element is RunningBranch { Branch: { } branch })
            {
                foreach (IFlowLoss part in (IFlowLoss[])[.. branch.Suction, .. branch.Discharge])
                {
                    yield return (part, place.Flow);
                }
            }
        }
    }
}

/// <summary>Looks at parts of a circuit and the flow through each.</summary>
internal interface ISeesFlow
{
    /// <summary>Looks at one.</summary>
    /// <param name="part">A line, filter or valve.</param>
    /// <param name="flow">m³/s.</param>
    void See(IFlowLoss part, double flow);
}

/// <summary>Lists them.</summary>
internal readonly record struct FlowList(List<(IFlowLoss Part, double Flow)> Parts) : ISeesFlow
{
    /// <inheritdoc/>
    public void See(IFlowLoss part, double flow) => Parts.Add((part, flow));
}

/// <summary>Where surplus fuel goes back.</summary>
public enum LineLayout
{
    /// <summary>The regulator sits at the rail; surplus returns through a line to the tank.</summary>
    Return,

    /// <summary>The regulator sits in or at the tank; only injected fuel goes forward to the rail.</summary>
    Returnless,
}

/// <summary>Pressure lost between the tank and the regulator.</summary>
/// <param name="Suction">In the suction line, Pa.</param>
/// <param name="Supply">Between pump and regulator, Pa: in the supply line, or before a regulator that sits upstream of it.</param>
internal readonly record struct PathLosses(double Suction, double Supply)
{
    /// <summary>Both, Pa.</summary>
    public double Total => CircuitPressure.Losses<Real>(Suction, Supply);

    /// <summary>These losses carried on by the straight line through others: near a flow they are as good as straight.</summary>
    /// <param name="before">At a flow near this one's.</param>
    /// <param name="share">How far to go, as a share of the distance from there to here.</param>
    public PathLosses CarriedOn(in PathLosses before, double share) => new(
        StraightLine.Through<Real>(0, before.Suction, 1, Suction, 1 + share),
        StraightLine.Through<Real>(0, before.Supply, 1, Supply, 1 + share));
}

/// <summary>Where pumps meet what a circuit asks of them.</summary>
/// <param name="Flow">Through the pumps, m³/s.</param>
/// <param name="Losses">On its way to the regulator.</param>
internal readonly record struct Intersection(double Flow, PathLosses Losses)
{
    /// <summary>True if <see cref="TangentSearch"/> found it.</summary>
    public bool IsByTangents { get; init; }
}
