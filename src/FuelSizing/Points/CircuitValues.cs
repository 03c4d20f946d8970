using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Points;

/// <summary>One bound of the figures of a circuit that depend on where the pumps' data ends, in SI numbers.</summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
/// <remarks>
/// Each figure is bounded by itself: the lowest pressure at the inlet goes with the greatest flow. Not a number is what is not known.
/// </remarks>
public readonly record struct CircuitValues<T>
    where T : struct, IReal<T>
{
    /// <summary>In the rail, gauge, Pa.</summary>
    public required T Rail { get; init; }

    /// <summary>Across the injector at the pressure at which injectors are judged, Pa.</summary>
    public required T Differential { get; init; }

    /// <summary>At the pumps' inlet, gauge, Pa.</summary>
    public required T InletGauge { get; init; }

    /// <summary>At the pumps' outlet, gauge, Pa.</summary>
    public required T OutletGauge { get; init; }

    /// <summary>Where the return line begins, gauge, Pa.</summary>
    public required T ReturnGauge { get; init; }

    /// <summary>Through the pumps, m³/s.</summary>
    public required T PumpFlow { get; init; }

    /// <summary>Back to the tank, m³/s.</summary>
    public required T Returned { get; init; }

    /// <summary>What the regulator holds at the returned flow, gauge, Pa, whatever the return line holds: as set where that does not change with flow; as a lower bound no more than the setting.</summary>
    public required T Regulated { get; init; }

    /// <summary>Back to the tank in the state in which the least returns of those that one car is judged in, m³/s.</summary>
    public required T ThroughRegulator { get; init; }

    /// <summary>Flow through the filter that is nearest to the end of its data, m³/s.</summary>
    public required T FilterFlow { get; init; }

    /// <summary>Voltage that the feed takes which takes most, V.</summary>
    public required T FeedDrop { get; init; }

    /// <summary>Current in the wire that is nearest to its ampacity, A.</summary>
    public required T WireCurrent { get; init; }

    /// <summary>Current through the fuse that is loaded most for its rating, A.</summary>
    public required T FuseCurrent { get; init; }

    /// <summary>Current through the relay that is loaded most for its rating, A.</summary>
    public required T RelayCurrent { get; init; }

    /// <summary>Current that the motor asks for whose voltage converter is loaded most, A.</summary>
    public required T ConverterCurrent { get; init; }

    /// <summary>1 where a speed-controlled pump is at its lowest speed, else 0.</summary>
    public required T AtPumpFloor { get; init; }
}

/// <summary>Reads the bounds of a circuit's figures out for the checks.</summary>
internal static class CircuitReading
{
    /// <summary>Where the pumps' data does not cover the point.</summary>
    public static CircuitValues<Real> NotKnown(bool drawsFromTank) => new()
    {
        Rail = double.NaN,
        Differential = double.NaN,

        // With no line before it, a pump draws at the pressure of the tank whatever it delivers.
        InletGauge = drawsFromTank ? 0 : double.NaN,
        OutletGauge = double.NaN,
        ReturnGauge = double.NaN,
        PumpFlow = double.NaN,
        Returned = double.NaN,
        Regulated = double.NaN,
        ThroughRegulator = double.NaN,
        FilterFlow = double.NaN,
        FeedDrop = double.NaN,
        WireCurrent = double.NaN,
        FuseCurrent = double.NaN,
        RelayCurrent = double.NaN,
        ConverterCurrent = double.NaN,
        AtPumpFloor = double.NaN,
    };

    /// <summary>The figures of one state of a circuit, wiring and injectors apart.</summary>
    public static CircuitValues<Real> Of(in SolvedCircuit circuit, in CircuitState state, ILimitedLoss? filter) => Of(circuit, state, filter, double.NaN, double.NaN);

    /// <summary>The same with the pressure across the injectors and what converters are asked for, where these are known without a look at injectors and wiring.</summary>
    private static CircuitValues<Real> Of(in SolvedCircuit circuit, in CircuitState state, ILimitedLoss? filter, double differential, double converted)
    {
        if (state.State == RailState.NotCovered)
        {
            return NotKnown(circuit.Task.DrawsFromTank) with { Differential = differential, ConverterCurrent = converted };
        }

        (double inlet, double outlet) = state.AtPumps;
        return new()
        {
            Rail = state.RailGauge,
            Differential = differential,
            InletGauge = inlet,
            OutletGauge = outlet,
            ReturnGauge = state.ReturnGauge,
            PumpFlow = state.Flow,
            Returned = state.ReturnFlow,
            Regulated = double.IsNaN(state.Held) ? circuit.Task.Set : state.Held,
            ThroughRegulator = state.ReturnFlow,
            FilterFlow = filter is null ? double.NaN : FlowThrough(filter, circuit.Task, state),
            FeedDrop = double.NaN,
            WireCurrent = double.NaN,
            FuseCurrent = double.NaN,
            RelayCurrent = double.NaN,
            ConverterCurrent = converted,
            AtPumpFloor = state.State == RailState.PumpFloor ? 1 : 0,
        };
    }

    /// <summary>The least and the most of three states' figures.</summary>
    public static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) Around(
        in CircuitValues<Real> one, in CircuitValues<Real> other, in CircuitValues<Real> third) => (
        Each(one, Each(other, third, Math.Min), Math.Min), Each(one, Each(other, third, Math.Max), Math.Max));

    /// <summary>True where a circuit has one state, and no wiring to look at, so that its figures have no bounds.</summary>
    public static bool IsOne(in SolvedCircuit circuit) =>
        circuit.IsCovered && circuit.IsExact && circuit.Flows is null && circuit.Task.Held is null && circuit.Lift?.MainFull is null && !circuit.IsWired;

    /// <summary>The figures of such a circuit, which are both its bounds.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="filter">The filter nearest to the end of its data.</param>
    /// <param name="differential">Pressure across the injectors as they are judged, Pa.</param>
    public static CircuitValues<Real> OfOne(in SolvedCircuit circuit, ILimitedLoss? filter, double differential) =>
        Of(circuit, circuit.State, filter, differential, converted: 0);

    /// <summary>The bounds of one circuit, what its wires and fuses carry included.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="filter">The filter nearest to the end of its data.</param>
    /// <param name="wiring">Places of the pumps by whose wiring it is judged.</param>
    public static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) Bounds(in SolvedCircuit circuit, ILimitedLoss? filter, in WiredPlaces wiring)
    {
        // What the pumps' data does not cover is not known of the lines and wiring around them either.
        if (!circuit.IsCovered)
        {
            CircuitValues<Real> notKnown = NotKnown(circuit.Task.DrawsFromTank);
            return WithWiring(notKnown, notKnown, circuit, false, wiring.Fed, wiring.Hottest, wiring.Heaviest, wiring.Converted, wiring.Relayed);
        }

        CircuitValues<Real> state = Of(circuit, circuit.State, filter);
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = circuit.IsExact
            ? (state, state)
            : Around(state, Of(circuit, circuit.Lower, filter), Of(circuit, circuit.Upper, filter));
        if (circuit.Flows is { } flows)
        {
            CircuitValues<Real> least = Of(circuit, flows.Least, filter);
            CircuitValues<Real> most = Of(circuit, flows.Most, filter);
            (minimum, maximum) = (Each(minimum, Each(least, most, Math.Min), Math.Min), Each(maximum, Each(least, most, Math.Max), Math.Max));
        }

        if (!circuit.IsExact && circuit.Task.Pump.HasOwnLines)
        {
            (minimum, maximum) = WithBranches(minimum, maximum, circuit, filter);
        }

        if (circuit.Task.Held is { } held)
        {
            // A return line must not need more than the setting either, whatever a slope adds to it.
            minimum = minimum with { Regulated = Math.Min(minimum.Regulated, held.Stated(RegulatorReading.Lower)) };
        }

        return WithWiring(minimum, maximum, circuit, true, wiring.Fed, wiring.Hottest, wiring.Heaviest, wiring.Converted, wiring.Relayed);
    }

    /// <summary>
    /// The same where pumps have lines of their own: data that ends leaves open that one of them gives the most and the others the least, so that its own flow is
    /// bounded by its own data and by the rises that the states leave open.
    /// </summary>
    private static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) WithBranches(
        CircuitValues<Real> minimum, CircuitValues<Real> maximum, in SolvedCircuit circuit, ILimitedLoss? filter)
    {
        CircuitState[] states = [.. circuit.States];

        // A controller gives each reading another voltage: what one pump passes beside others of another reading is not followed.
        if (circuit.Task.MinimumSupply is not null || Array.Exists(states, state => state.State == RailState.NotCovered))
        {
            return (
                minimum with { InletGauge = double.NaN, OutletGauge = double.NaN, FilterFlow = double.NaN },
                maximum with { InletGauge = double.NaN, OutletGauge = double.NaN, FilterFlow = double.NaN });
        }

        (double least, double most) = (states.Min(state => state.PumpRise), states.Max(state => state.PumpRise));
        (double Inlet, double Outlet, double Filter) Ends(RunningPumps running, double rise, double inlet, double outlet)
        {
            List<PumpPlace> places = [];
            double over = Math.Max(0, rise);
            running.Walk(running.FlowAt(over), over, inlet, outlet, places);
            (double lowest, double highest) = PumpEnds.Of(places, inlet, outlet);
            double through = CircuitTask.OwnFlows(places).Where(part => ReferenceEquals(part.Part, filter)).Select(part => part.Flow).DefaultIfEmpty(double.NaN).Max();
            return (lowest, highest, through);
        }

        (double inlet, double outlet, double passed) = Ends(circuit.Upper.Running, least, states.Min(state => state.InletGauge), states.Max(state => state.OutletGauge));
        (double easy, double low, double passes) = Ends(circuit.Lower.Running, most, states.Max(state => state.InletGauge), states.Min(state => state.OutletGauge));
        return (
            minimum with { InletGauge = Math.Min(minimum.InletGauge, inlet), OutletGauge = Math.Min(minimum.OutletGauge, low), FilterFlow = double.IsNaN(passes) ? minimum.FilterFlow : Math.Min(minimum.FilterFlow, passes) },
            maximum with { InletGauge = Math.Max(maximum.InletGauge, easy), OutletGauge = Math.Max(maximum.OutletGauge, outlet), FilterFlow = double.IsNaN(passed) ? maximum.FilterFlow : Math.Max(maximum.FilterFlow, passed) });
    }

    /// <summary>
    /// Bounds that hold while a surge tank is full too: a figure that may be at most so much must keep to that in both states. The inlet is at its lowest while
    /// the tank is not full.
    /// </summary>
    public static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) AlsoFull(
        in (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) one, in (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) full) => (
        Each(one.Minimum, full.Minimum, (own, other) => other > own ? other : own) with
        {
            InletGauge = one.Minimum.InletGauge,
            Regulated = Math.Min(one.Minimum.Regulated, full.Minimum.Regulated),
            ThroughRegulator = Math.Min(one.Minimum.ThroughRegulator, full.Minimum.ThroughRegulator),
        },
        Each(one.Maximum, full.Maximum, Math.Max) with { InletGauge = one.Maximum.InletGauge });

    /// <summary>The same with what wires and fuses carry.</summary>
    public static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) WithWiring(
        in CircuitValues<Real> minimum,
        in CircuitValues<Real> maximum,
        in SolvedCircuit circuit,
        bool known,
        int fed,
        int hottest,
        int heaviest,
        int converted,
        int relayed)
    {
        (double Minimum, double Maximum) none = (double.NaN, double.NaN);
        (double Minimum, double Maximum) drop = known && fed >= 0 ? circuit.FeedDropOf(fed) ?? none : none;
        (double Minimum, double Maximum) wire = known && hottest >= 0 ? circuit.CurrentOf(hottest) : none;
        (double Minimum, double Maximum) fuse = known && heaviest >= 0 ? circuit.CurrentOf(heaviest) : none;
        (double Minimum, double Maximum) relay = known && relayed >= 0 ? circuit.CurrentOf(relayed) : none;
        (double Minimum, double Maximum) asked = !known ? none : converted >= 0 ? circuit.ConvertedOf(converted) : (0, 0);
        return (
            minimum with { FeedDrop = drop.Minimum, WireCurrent = wire.Minimum, FuseCurrent = fuse.Minimum, RelayCurrent = relay.Minimum, ConverterCurrent = asked.Minimum },
            maximum with { FeedDrop = drop.Maximum, WireCurrent = wire.Maximum, FuseCurrent = fuse.Maximum, RelayCurrent = relay.Maximum, ConverterCurrent = asked.Maximum });
    }

    /// <summary>
    /// The same with the pressure across the injectors: as judged, and higher where the pumps may force the rail over its set pressure.
    /// </summary>
    public static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) WithDifferential(
        in CircuitValues<Real> minimum,
        in CircuitValues<Real> maximum,
        in SolvedCircuit circuit,
        in PointDemand demand,
        in Injection judged)
    {
        // A full surge tank raises what its return line, or a pump at its lowest speed, holds in the rail.
        double above = RailPressure.Differential<Real>(
            Math.Max(circuit.RailSet, maximum.Rail), demand.Point.Conditions.Atmosphere.Pascals, demand.Chain.ManifoldAbsolute);
        bool higher = (!circuit.IsExact || circuit.Lift?.MainFull is not null) && circuit.IsCovered;
        return (
            minimum with { Differential = judged.Differential },
            maximum with { Differential = higher ? Math.Max(judged.Differential, above) : judged.Differential });
    }

    /// <summary>The filter, or part of one's own, nearest to the end of its data, and the flow through it, m³/s.</summary>
    public static (ILimitedLoss Filter, double Flow) FilterOf(in SolvedCircuit circuit)
    {
        Busiest busiest = new();
        circuit.Task.EachFlow(circuit.Upper, ref busiest);
        return (busiest.Filter!, busiest.Flow);
    }

    private static double FlowThrough(ILimitedLoss filter, in CircuitTask task, in CircuitState state)
    {
        Through through = new(filter);
        task.EachFlow(state, ref through);
        return through.Most;
    }

    private struct Busiest() : ISeesFlow
    {
        private double _share = double.NegativeInfinity;

        public ILimitedLoss? Filter { get; private set; }

        public double Flow { get; private set; }

        public void See(IFlowLoss part, double flow)
        {
            if (part is ILimitedLoss filter && flow / filter.MaximumKnownFlow is var used && used > _share)
            {
                (Filter, Flow, _share) = (filter, flow, used);
            }
        }
    }

    // One description may stand for a filter in each of several branches.
    private struct Through(ILimitedLoss filter) : ISeesFlow
    {
        public double Most { get; private set; } = double.NaN;

        public void See(IFlowLoss part, double flow) => Most = ReferenceEquals(part, filter) && !(Most >= flow) ? flow : Most;
    }

    private static CircuitValues<Real> Each(in CircuitValues<Real> one, in CircuitValues<Real> other, Func<double, double, double> choose) => new()
    {
        Rail = choose(one.Rail, other.Rail),
        Differential = choose(one.Differential, other.Differential),
        InletGauge = choose(one.InletGauge, other.InletGauge),
        OutletGauge = choose(one.OutletGauge, other.OutletGauge),
        ReturnGauge = choose(one.ReturnGauge, other.ReturnGauge),
        PumpFlow = choose(one.PumpFlow, other.PumpFlow),
        Returned = choose(one.Returned, other.Returned),
        Regulated = choose(one.Regulated, other.Regulated),
        ThroughRegulator = choose(one.ThroughRegulator, other.ThroughRegulator),
        FilterFlow = choose(one.FilterFlow, other.FilterFlow),
        FeedDrop = choose(one.FeedDrop, other.FeedDrop),
        WireCurrent = choose(one.WireCurrent, other.WireCurrent),
        FuseCurrent = choose(one.FuseCurrent, other.FuseCurrent),
        RelayCurrent = choose(one.RelayCurrent, other.RelayCurrent),
        ConverterCurrent = choose(one.ConverterCurrent, other.ConverterCurrent),
        AtPumpFloor = choose(one.AtPumpFloor, other.AtPumpFloor),
    };
}

/// <summary>Places of the pumps by whose wiring a circuit is judged; −1 where there is none.</summary>
/// <param name="Fed">Whose feed may take the most voltage.</param>
/// <param name="Hottest">Whose wire is nearest to its ampacity.</param>
/// <param name="Heaviest">Whose fuse is loaded most for its rating.</param>
/// <param name="Converted">Whose voltage converter is loaded most for what it can give.</param>
/// <param name="Relayed">Whose relay is loaded most for its rating.</param>
internal readonly record struct WiredPlaces(int Fed, int Hottest, int Heaviest, int Converted, int Relayed)
{
    /// <summary>Those of a circuit.</summary>
    public static WiredPlaces Of(in SolvedCircuit circuit) => circuit.IsWired
        ? new(circuit.LowestFed, circuit.HottestWire, circuit.HeaviestLoadedFuse, circuit.HeaviestLoadedConverter, circuit.HeaviestLoadedRelay)
        : new(-1, -1, -1, -1, -1);
}
