using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>Circuits and the library's answers as plain data, every number in SI with its unit in its name.</summary>
internal static class PeerDescription
{
    /// <summary>One circuit with its answers, ready to be written as JSON.</summary>
    public static object Of(string name, in CircuitTask task) => new
    {
        name,
        layout = task.Layout.ToString(),
        supplyVolts = task.Supply,
        minimumSupplyVolts = task.MinimumSupply,
        setPascals = task.Set,
        regulator = task.Held is { } held ? OfRegulator(held.Regulator, held.Boost) : null,
        minimumReturnCubicMetresPerSecond = task.MinimumReturn,
        injectedCubicMetresPerSecond = task.Injected,
        densityKilogramsPerCubicMetre = task.Density,
        kinematicViscositySquareMetresPerSecond = task.KinematicViscosity,
        suction = task.Plumbing.Suction.Select(Of),
        supply = task.Plumbing.Supply.Select(Of),
        back = task.Plumbing.ReturnLine.Select(Of),
        toRegulator = task.Plumbing.ToRegulator.Select(Of),
        pump = Of(task.Pump),
        answers = Of(CircuitSolver.Solve(task) with
        {
            // The peer knows the curves as results show them, not the bounds of what they leave open.
            MinimumAtSet = PumpIntersection.AtSet(
                task with { Set = task.DeliveredAgainst(RegulatorReading.Estimate), Held = null }, task.Pump.Bounds(task.Supply).Estimate).Flow,
        }),
    };

    /// <summary>Two circuits joined by a surge tank with their answers.</summary>
    public static object Of(string name, SurgeTank tank, in CircuitTask task)
    {
        JoinedCircuits joined = JoinedCircuits.Of(tank, task, CircuitSolver.SolveBounds(task));
        CircuitState lift = joined.Balance.Lift ?? joined.Filling.Estimate;
        CircuitState main = joined.Balance.Main;
        return new
        {
            name,
            main = Of(name, task),
            returnsToSurgeTank = tank.ReturnsTo == ReturnDestination.SurgeTank,
            liftSuction = tank.Suction.Select(Of),
            liftLine = tank.LiftLine.Select(Of),
            overflow = tank.Overflow.Select(Of),
            liftPump = Of(tank.LiftPump),
            answers = new
            {
                tankPascals = joined.Balance.Pressure,
                liftedCubicMetresPerSecond = lift.Flow,
                drawnCubicMetresPerSecond = joined.Balance.Drawn,
                overflowCubicMetresPerSecond = joined.Balance.Lift is null ? 0 : lift.ReturnFlow,
                liftInletPascals = lift.InletGauge,
                liftOutletPascals = lift.OutletGauge,
                mainCubicMetresPerSecond = main.Flow,
                returnedCubicMetresPerSecond = main.ReturnFlow,
                railPascals = main.RailGauge,
                inletPascals = main.InletGauge,
                outletPascals = main.OutletGauge,
            },
        };
    }

    private static object Of(CircuitState state) => new
    {
        state = state.State.ToString(),
        railPascals = state.RailGauge,
        inletPascals = state.InletGauge,
        outletPascals = state.OutletGauge,
        lowestInletPascals = state.AtPumps.Inlet,
        highestOutletPascals = state.AtPumps.Outlet,
        backPascals = state.ReturnGauge,
        pumpCubicMetresPerSecond = state.PumpFlow,
        returnedCubicMetresPerSecond = state.Returned,
        fedVolts = state.FedVoltage,
        minimumAtSetCubicMetresPerSecond = state.MinimumAtSet,
        pumps = state.Pumps.Where(pump => !pump.IsStopped).Select(pump => new
        {
            risePascals = pump.Rise,
            flowCubicMetresPerSecond = pump.Flow,
            motorVolts = pump.Voltage,
            currentAmperes = pump.Current,
            feedAmperes = pump.FeedCurrent,
        }),
    };

    /// <summary>A line or a filter.</summary>
    public static object Of(IFlowLoss part) => part switch
    {
        Line line => new
        {
            kind = "line",
            boreMetres = line.Bore.Meters,
            lengthMetres = line.Length.Meters,
            roughnessMetres = line.Roughness.Meters,
            lossCoefficientSum = line.LossCoefficient,
            riseMetres = line.Rise.Meters,
        },
        Filter filter => new
        {
            kind = "filter",
            ratedFlowCubicMetresPerSecond = filter.RatedFlow.CubicMetersPerSecond,
            ratedLossPascals = filter.RatedLoss.Pascals,
            ratedViscosityPascalSeconds = filter.RatedViscosity.PascalSeconds,
            cloggingFactor = filter.Clogging,
        },
        CheckValve valve => new
        {
            kind = "checkValve",
            openingPascals = valve.OpeningPressure.Pascals,
            ratedFlowCubicMetresPerSecond = valve.RatedFlow?.CubicMetersPerSecond,
            ratedLossPascals = valve.RatedLoss?.Pascals,
            ratedDensityKilogramsPerCubicMetre = valve.RatedDensity?.KilogramsPerCubicMeter,
            lossCoefficient = valve.LossCoefficient,
            boreMetres = valve.Bore?.Meters,
        },
        _ => throw new NotSupportedException($"The peer knows no {part.GetType().Name}."),
    };

    private static object OfRegulator(PressureRegulator regulator, double boost) => regulator is RegulatorSeries pair
        ? new { upstream = OfRegulator(pair.BaseRegulator, boost), downstream = OfRegulator(pair.Unit, boost) }
        : new
        {
            setPascals = regulator.RailGauge(Pressure.FromPascals(boost)).Pascals,
            slopePascalsByCubicMetresPerSecond = regulator.Flow is { Points.Count: 0 } slope ? slope.Rise.Pascals / slope.Over.CubicMetersPerSecond : 0,
            statedCubicMetresPerSecond = regulator.Flow?.StatedAt.CubicMetersPerSecond ?? 0,
            curveCubicMetresPerSecond = regulator.Flow?.Points.Select(point => point.Returned.CubicMetersPerSecond) ?? [],
            curvePascals = regulator.Flow?.Points.Select(point => point.Gauge.Pascals) ?? [],
            outletShare = regulator.Flow?.OutletShare ?? 0,
        };

    /// <summary>Pumps in any nesting.</summary>
    public static object Of(PumpAssembly assembly) => assembly switch
    {
        PumpSeries series => new
        {
            kind = "series",
            bypass = series.Bypass.ToString(),
            members = series.Stages.Select(Of),
        },
        PumpParallel parallel => new { kind = "parallel", members = parallel.Branches.Select(Of) },
        PumpBranch branch => new
        {
            kind = "branch",
            suction = branch.Suction.Select(Of),
            discharge = branch.Discharge.Select(Of),
            members = new[] { Of(branch.Pump) },
        },
        PumpAtLowSpeed low => Of(low.Pump, low.Share, low.Ohms),
        Pump pump => Of(pump, 1, 0),
        _ => throw new NotSupportedException($"The peer knows no {assembly.GetType().Name}."),
    };

    private static object Of(Pump pump, double share, double resistor) => new
    {
        kind = "pump",
        supplyFraction = share,
        resistorOhms = resistor,
        converter = pump.Converter is { } converter
                ? new
                {
                    heldVolts = converter.Output?.Volts,
                    multiple = converter.Multiple,
                    efficiencyFraction = converter.Efficiency.DecimalFractions,
                    limitAmperes = converter.MaximumCurrent?.Amperes,
                }
                : null,
        feedOhms = pump.Feed?.LoopOhms ?? 0,
        shared = pump.Feed?.Shared is { } part ? new { name = part.Name, ohms = part.LoopOhms } : null,
        reliefPascals = pump.Relief?.Pascals,
        conditionFraction = pump.Condition.DecimalFractions,
        curves = pump.Curves.Select(curve => new
        {
            volts = curve.Volts,
            risesPascals = curve.Flow.Points.Select(point => point.X),
            flowsCubicMetresPerSecond = curve.Flow.Points.Select(point => point.Y),
            currentsAmperes = curve.Current?.Points.Select(point => point.Y),
        }),
    };
}
