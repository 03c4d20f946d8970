using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Points;

/// <summary>
/// What a check may read of a solved point, in SI numbers: of one point, or of a column of points at once.
/// </summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
/// <remarks>
/// <para>Not a number is what is not known: a dead time beyond its table, a circuit whose pumps' data does not cover the point, a
/// current that was not measured. A comparison with it is never true, so that a check which reads it cannot say.</para>
/// <para>Where the pumps' data ends, figures of the circuit are estimates and lie between those of <see cref="Minimum"/> and
/// <see cref="Maximum"/>; a check takes the side that is conservative for it.</para>
/// </remarks>
public readonly record struct PointValues<T>
    where T : struct, IReal<T>
{
    /// <summary>Engine speed, rev/s.</summary>
    public required T Speed { get; init; }

    /// <summary>Manifold gauge pressure, Pa.</summary>
    public required T Boost { get; init; }

    /// <summary>Ambient absolute pressure, Pa.</summary>
    public required T Ambient { get; init; }

    /// <summary>Supply voltage at the source, V.</summary>
    public required T Supply { get; init; }

    /// <summary>Fuel injected into the whole engine, m³/s.</summary>
    public required T Injected { get; init; }

    /// <summary>The least that is injected, as a share of <see cref="Injected"/>: without the fuel's evaporation in the charge, where a share of it is stated; else 1.</summary>
    public required T MinimumInjectedShare { get; init; }

    /// <summary>Density of the fuel, kg/m³.</summary>
    public required T FuelDensity { get; init; }

    /// <summary>Vapour pressure of the fuel at the temperature of the pump's inlet, absolute, Pa.</summary>
    public required T VapourPressure { get; init; }

    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public required T RailSet { get; init; }

    /// <summary>In the rail, gauge, Pa.</summary>
    public required T Rail { get; init; }

    /// <summary>At the pumps' inlet, gauge, Pa.</summary>
    public required T InletGauge { get; init; }

    /// <summary>At the pumps' outlet, gauge, Pa.</summary>
    public required T OutletGauge { get; init; }

    /// <summary>Where the return line begins, gauge, Pa: what it takes to pass the returned flow.</summary>
    public required T ReturnGauge { get; init; }

    /// <summary>Through the pumps, m³/s.</summary>
    public required T PumpFlow { get; init; }

    /// <summary>Back to the tank, m³/s.</summary>
    public required T Returned { get; init; }

    /// <summary>The least that figures of the circuit can be, by the pumps' data.</summary>
    public required CircuitValues<T> Minimum { get; init; }

    /// <summary>The most that they can be; the same where the data covers the point.</summary>
    public required CircuitValues<T> Maximum { get; init; }

    /// <summary>Lower bound of the fuel that may be injected with the pumps' reserve kept, m³/s.</summary>
    public required T MinimumInjectable { get; init; }

    /// <summary>Upper bound of it, m³/s; the same where data covers the point.</summary>
    public required T MaximumInjectable { get; init; }

    /// <summary>Voltage that the pumps' wiring is fed with, V.</summary>
    public required T Fed { get; init; }

    /// <summary>Lowest voltage at the motor of a wired pump, V.</summary>
    public required T MotorVoltage { get; init; }

    /// <summary>Current of all pumps together, A.</summary>
    public required T PumpCurrent { get; init; }

    /// <summary>Ampacity of the wire that is nearest to it, A.</summary>
    public required T WireAmpacity { get; init; }

    /// <summary>Rating of the fuse that is loaded most for it, A.</summary>
    public required T FuseRating { get; init; }

    /// <summary>Rating of the relay that is loaded most for it, A.</summary>
    public required T RelayRating { get; init; }

    /// <summary>The most that the voltage converter can give which is loaded most for it, A; infinite where none is in use.</summary>
    public required T ConverterLimit { get; init; }

    /// <summary>Largest flow at which the loss is known of the filter that is nearest to that, m³/s.</summary>
    public required T FilterMaximum { get; init; }

    /// <summary>Across the injector at the pressure at which injectors are judged, Pa.</summary>
    public required T Differential { get; init; }

    /// <summary>Static flow of one injector there, m³/s; not a number below the differential from which its flow is known.</summary>
    public required T StaticFlow { get; init; }

    /// <summary>Time between the starts of two injections, s.</summary>
    public required T AvailableTime { get; init; }

    /// <summary>Dead time there, s.</summary>
    public required T DeadTime { get; init; }

    /// <summary>Commanded pulse there, s.</summary>
    public required T Pulse { get; init; }

    /// <summary>Pulse ÷ available time.</summary>
    public required T DutyCycle { get; init; }

    /// <summary>Fuel that the injectors pass at the duty limit, whole engine, m³/s.</summary>
    public required T Capacity { get; init; }

    /// <summary>Fuel that the primary set injects, m³/s: all of it, unless there is a secondary set.</summary>
    public required T PrimaryInjected { get; init; }

    /// <summary>The least that the primary set may inject by what is known of its pressure, as a share of that; 1 where the split does not depend on pressure.</summary>
    public required T PrimaryInjectedAtLeast { get; init; }

    /// <summary>The secondary set; it injects nothing where there is none, or where it is idle.</summary>
    public required InjectorValues<T> Secondary { get; init; }

    /// <summary>The richest lambda that the engine can get from its controller; not a number where the controller is assumed.</summary>
    public required T MinimumLambda { get; init; }

    /// <summary>The leanest; the same where the pumps' data covers the point.</summary>
    public required T MaximumLambda { get; init; }

    /// <summary>A second stream of fuel; none of its figures but its share, zero, is a number where there is none.</summary>
    public required StreamValues<T> Stream { get; init; }

    /// <summary>The lift circuit of a surge tank; none of its figures is a number where the pumps draw from the main tank.</summary>
    public required LiftValues<T> Lift { get; init; }
}

/// <summary>Reads a solved point's numbers out for the checks.</summary>
internal static class PointReading
{
    /// <summary>The numbers of one solved point.</summary>
    public static PointValues<Real> Of(SolvedPoint point)
    {
        return ReadsMixture(point.Parts, point.SolvedDemand)
            ? Of(point.Parts, point.SolvedDemand, point.SolvedCircuit, point.Judged, point.SolvedMixture)
            : Of(point.Parts, point.SolvedDemand, point.SolvedCircuit, point.Judged);
    }

    /// <summary>The numbers of a point by its injection, and the mixture solved where it counts.</summary>
    public static PointValues<Real> Of(
        SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
    {
        PointValues<Real> values = Of(parts, demand, circuit, injection.Judged);
        return ReadsMixture(parts, demand) ? Mixed(values, parts, demand, MixtureSolver.In(parts, demand, circuit, injection)) : values;
    }

    /// <summary>The same where the mixture is known already.</summary>
    public static PointValues<Real> Of(
        SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, in Injection judged, in SolvedMixture mixture)
    {
        PointValues<Real> values = Of(parts, demand, circuit, judged);
        return ReadsMixture(parts, demand) ? Mixed(values, parts, demand, mixture) : values;
    }

    // That of a controller which commands whatever is needed is no mixture to judge, but for what a second stream makes of it.
    private static bool ReadsMixture(SystemParts parts, in PointDemand demand) => !parts.Controller.IsIdeal || demand.Stream is not null;

    private static PointValues<Real> Mixed(in PointValues<Real> values, SystemParts parts, in PointDemand demand, in SolvedMixture mixture) => values with
    {
        MinimumLambda = parts.Controller.IsIdeal ? double.NaN : mixture.MinimumLambda,
        MaximumLambda = parts.Controller.IsIdeal ? double.NaN : mixture.MaximumLambda,
        Stream = StreamReading.Of(parts, demand, mixture),
    };

    /// <summary>The numbers of one solved circuit with one set of injectors, the mixture apart.</summary>
    public static PointValues<Real> Of(
        SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, in Injection judged)
    {
        Conditions conditions = demand.Point.Conditions;
        CircuitState state = circuit.State;

        // What the pumps' data does not cover is not known of the lines and wiring around them either.
        bool known = circuit.IsCovered;
        (ILimitedLoss? filter, _) = known && parts.HasFilter ? CircuitReading.FilterOf(circuit) : default;
        WiredPlaces wiring = WiredPlaces.Of(circuit);
        (int fed, int hottest, int heaviest, int converted, int relayed) = wiring;
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = BoundsOf(circuit, filter, wiring, demand, judged);
        return new()
        {
            Speed = demand.Point.RevolutionsPerSecond,
            Boost = demand.Point.BoostPascals,
            Ambient = conditions.Atmosphere.Pascals,
            Supply = conditions.SupplyVolts,
            Injected = demand.Injected,
            MinimumInjectedShare = FuelDemand.ShareWithoutEvaporation(demand.Chain, demand.Basis),
            FuelDensity = demand.Density,
            VapourPressure = parts.Demand.Consumption.Fuel is { HasVapourPressure: true } fuel
                ? fuel.VapourPressureAtKelvins(conditions.InletKelvins)
                : double.NaN,
            RailSet = circuit.RailSet,
            Rail = circuit.Rail,

            // With no line before it, a pump draws at the pressure of the tank whatever it delivers.
            InletGauge = circuit.Task.DrawsFromTank ? 0 : known ? state.AtPumps.Inlet : double.NaN,
            OutletGauge = known ? state.AtPumps.Outlet : double.NaN,
            ReturnGauge = known ? state.ReturnGauge : double.NaN,
            PumpFlow = known ? state.Flow : double.NaN,
            Returned = known ? state.ReturnFlow : double.NaN,
            Minimum = minimum,
            Maximum = maximum,
            MinimumInjectable = circuit.Uncovered is null ? circuit.MinimumInjectable : double.NaN,
            MaximumInjectable = circuit.Uncovered is null ? circuit.MaximumInjectable : double.NaN,
            Fed = known ? state.FedVoltage : double.NaN,
            MotorVoltage = known && fed >= 0 ? circuit.Pumps[fed].Voltage : double.NaN,
            PumpCurrent = known ? Current(circuit.Pumps) : double.NaN,
            WireAmpacity = hottest >= 0 ? circuit.FeedAt(hottest)!.AmpacityAmperes : double.NaN,
            FuseRating = heaviest >= 0 ? circuit.FeedAt(heaviest)!.Fuse!.Value.Amperes : double.NaN,
            RelayRating = relayed >= 0 ? circuit.FeedAt(relayed)!.Relay!.Value.Amperes : double.NaN,
            ConverterLimit = converted >= 0 ? circuit.ConvertibleAt(converted) : double.PositiveInfinity,
            FilterMaximum = filter?.MaximumKnownFlow ?? double.NaN,
            Differential = judged.Differential,
            StaticFlow = judged.StaticFlow,
            AvailableTime = judged.AvailableTime,
            DeadTime = judged.DeadTime ?? double.NaN,
            Pulse = judged.Pulse ?? double.NaN,
            DutyCycle = judged.DutyCycle ?? double.NaN,
            Capacity = judged.Capacity ?? double.NaN,
            PrimaryInjected = judged.Secondary is null ? demand.Injected : judged.Injected,
            PrimaryInjectedAtLeast = StagedBounds.Primary(parts, demand, judged, maximum.Differential),
            Secondary = StagedBounds.Secondary(parts, demand, judged, maximum.Differential),
            MinimumLambda = double.NaN,
            MaximumLambda = double.NaN,
            Stream = StreamReading.Of(demand),
            Lift = circuit.Lift is { } lift ? LiftReading.Of(parts, conditions, lift) : LiftReading.None,
        };
    }

    /// <summary>The numbers of the same circuit with other injectors, and with the mixture that the controller gives with them.</summary>
    public static PointValues<Real> With(
        SystemParts parts,
        in PointValues<Real> values,
        in PointDemand demand,
        in SolvedCircuit circuit,
        (Injection Actual, Injection Judged) injection)
    {
        Injection judged = injection.Judged;
        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) =
            CircuitReading.WithDifferential(values.Minimum, values.Maximum, circuit, demand, judged);
        PointValues<Real> injected = values with
        {
            Minimum = minimum,
            Maximum = maximum,
            Differential = judged.Differential,
            StaticFlow = judged.StaticFlow,
            AvailableTime = judged.AvailableTime,
            DeadTime = judged.DeadTime ?? double.NaN,
            Pulse = judged.Pulse ?? double.NaN,
            DutyCycle = judged.DutyCycle ?? double.NaN,
            Capacity = judged.Capacity ?? double.NaN,
            PrimaryInjected = judged.Secondary is null ? demand.Injected : judged.Injected,
            PrimaryInjectedAtLeast = StagedBounds.Primary(parts, demand, judged, maximum.Differential),
            Secondary = StagedBounds.Secondary(parts, demand, judged, maximum.Differential),
        };
        return ReadsMixture(parts, demand) ? Mixed(injected, parts, demand, MixtureSolver.In(parts, demand, circuit, injection)) : injected;
    }

    private static (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) BoundsOf(
        in SolvedCircuit circuit, ILimitedLoss? filter, in WiredPlaces wiring, in PointDemand demand, in Injection judged)
    {
        if (CircuitReading.IsOne(circuit))
        {
            CircuitValues<Real> one = CircuitReading.OfOne(circuit, filter, judged.Differential);
            return (one, one);
        }

        (CircuitValues<Real> minimum, CircuitValues<Real> maximum) = CircuitReading.Bounds(circuit, filter, wiring);
        if (circuit.Lift?.MainFull is { } full)
        {
            (minimum, maximum) = CircuitReading.AlsoFull((minimum, maximum), CircuitReading.Bounds(full, filter, wiring));
        }

        return CircuitReading.WithDifferential(minimum, maximum, circuit, demand, judged);
    }

    private static double Current(PumpPoint[] pumps)
    {
        double sum = 0;
        foreach (PumpPoint pump in pumps)
        {
            sum += pump.Current ?? double.NaN;
        }

        return sum;
    }
}
