using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Circuits of every kind, the same ones on each run, that an independent program solves too (tests/peer). All pumps are
/// invented, and lie on no curve that a formula gives, so that agreement is no accident.
/// </summary>
internal static class PeerCircuits
{
    private const double FullVolts = 13.5;

    /// <summary>Density, kg/m³, and kinematic viscosity, m²/s: warm petrol, a warm and a cold alcohol blend, a thin liquid.</summary>
    internal static readonly (double Density, double Viscosity)[] Liquids =
    [
        (Fuel.Petrol.DensityAtKelvins(300), Fuel.Petrol.KinematicViscosityAtKelvins(300)),
        (778, 1.3e-6),
        (812, 4.2e-6),
        (715, 0.42e-6),
    ];

    /// <summary>What each way is made of, from none to everything.</summary>
    public static readonly IReadOnlyList<Plumbing> Paths =
    [
        Plumbing.None,
        Plumbing.Of(
            [Tube(10, 0.6, -0.25, Fitting.Entrance)],
            [Tube(7.5, 3.6, 0.5, Fitting.Bend90.Times(4), Fitting.TeeThrough), FilterOf(220, 12, 1.6)],
            [Tube(6, 4.1, -0.35, Fitting.Elbow90.Times(2), Fitting.Exit)]),
        Plumbing.Of(
            [FilterOf(400, 2, 3), Tube(12, 0.4, 0.3, Fitting.ProjectingEntrance, Fitting.Elbow45)],
            [Hose(6, 1.2, 0.15), Tube(8, 2.7, 0, Fitting.Elbow90), Hose(5.2, 0.5, 0.1, Fitting.TeeBranch)],
            [Hose(5, 3.3, -0.2, Fitting.Exit)]),
        Plumbing.Of(
            supply: [FilterOf(150, 25, 2.5, 1.1), Hose(9.5, 5.2, -0.6, Fitting.Bend90.Times(6))],
            returnLine: [Hose(4.5, 2.2, 0.4, Fitting.Elbow45.Times(3), Fitting.Exit), FilterOf(180, 4)]),
    ];

    // The points thin out towards the ends and the slopes change there, where monotone cubics differ most from one another.
    private static readonly (double Kpa, double LitresPerHour, double Amperes)[] Measured =
    [
        (0, 212, 4.1), (40, 209, 4.5), (170, 187, 5.7), (265, 173, 6.9), (410, 131, 8.6), (505, 112, 9.3), (690, 41, 11.9), (735, 0, 13.2),
    ];

    /// <summary>Every circuit.</summary>
    public static IReadOnlyList<(string Name, CircuitTask Task)> All { get; } =
        [.. Everyday(), .. RisingSetPressure(), .. SpeedControlled(), .. AtTheirLimits()];

    // Each arrangement of pumps meets an idling, a cruising, a hard driven and an overdriven engine, and thereby four kinds
    // of plumbing, four liquids and four supplies, never in the same company as the arrangement before.
    private static IEnumerable<(string Name, CircuitTask Task)> Everyday()
    {
        double[] shares = [0.03, 0.25, 0.55, 0.85];
        double[] supplies = [14.1, 13.2, 12.3, 11.6];
        double[] sets = [2.8e5, 3.5e5, 4.2e5, 5e5];
        (string Name, PumpAssembly Pump)[] arrangements = [.. Arrangements()];
        for (int arrangement = 0; arrangement < arrangements.Length; arrangement++)
        {
            (string name, PumpAssembly pump) = arrangements[arrangement];
            for (int load = 0; load < shares.Length; load++)
            {
                int turn = arrangement + load;
                double supply = supplies[(turn + (arrangement / 4)) % supplies.Length];
                LineLayout layout = (turn + (arrangement / 2)) % 2 == 0 ? LineLayout.Return : LineLayout.Returnless;
                double injected = shares[load] * pump.Running(supply).FreeFlow;
                yield return (
                    FormattableString.Invariant($"{name}, {layout}, {supply} V, {shares[load]} of the free flow"),
                    Task(layout, pump, Paths[turn % Paths.Count], supply, sets[(turn * 3) % sets.Length], injected, turn));
            }
        }
    }

    private static IEnumerable<(string Name, PumpAssembly Pump)> Arrangements()
    {
        Pump plain = Pump.From(Unwired(FullVolts, 1));
        Pump wired = Wired(5, 12, [FullVolts]);
        Pump many = Wired(3.5, 14, [9, 11, 12.5, FullVolts]);
        Pump worn = Pump.Of([Unwired(FullVolts, 0.8)], Pressure.FromKilopascals(480), Ratio.FromPercent(88));
        Pump lift = Pump.From(Unwired(12, 0.55, 0.35));
        yield return ("one pump", plain);
        yield return ("one pump, wired", wired);
        yield return ("one pump, wired, four voltages", many);
        yield return ("one pump, affinity laws", Pump.From(Unwired(14.5, 1.1)));
        yield return ("one pump, wired, affinity laws", Wired(6, 14, [15]));
        yield return ("one pump, worn, relief valve", worn);
        yield return ("one pump by two points", Pump.From(Straight()));
        yield return ("series", PumpSeries.Of(SeriesBypass.CheckValve, lift, plain));
        yield return ("series, wired", PumpSeries.Of(SeriesBypass.CheckValve, many, wired));
        yield return ("parallel", PumpParallel.Of(plain, worn));
        yield return ("parallel, wired, unequal", PumpParallel.Of(wired, Wired(2, 16, [11, 14], 0.6, 0.75)));
        yield return ("lift pump, then two in parallel", PumpSeries.Of(SeriesBypass.CheckValve, lift, PumpParallel.Of(many, plain)));
        yield return (
            "two in series beside one",
            PumpParallel.Of(PumpSeries.Of(SeriesBypass.CheckValve, Wired(4, 14, [12, 14], 0.7, 0.5), worn), wired));
    }

    private static IEnumerable<(string Name, CircuitTask Task)> RisingSetPressure()
    {
        Pump pump = Wired(4, 12, [10.5, 12, FullVolts]);
        foreach (double set in (double[])[2e5, 3.2e5, 4.4e5, 5.6e5, 6.8e5, 8e5])
        {
            yield return (
                FormattableString.Invariant($"set pressure rising, {set} Pa"),
                Task(LineLayout.Return, pump, Paths[1], 13.8, set, 2.1e-5, 0));
        }
    }

    private static IEnumerable<(string Name, CircuitTask Task)> SpeedControlled()
    {
        Pump one = Wired(3, 12, [7, 10, FullVolts]);
        PumpAssembly two = PumpParallel.Of(one, Wired(5, 14, [8, 12], 0.7));
        foreach ((string name, PumpAssembly pump) in ((string, PumpAssembly)[])[("one", one), ("two in parallel", two)])
        {
            foreach (double share in (double[])[0.02, 0.4, 0.6, 0.9])
            {
                CircuitTask task = Task(
                    LineLayout.Returnless, pump, Paths[3], 13.6, 3.2e5, share * pump.Running(13.6).FreeFlow, 1);
                yield return (
                    FormattableString.Invariant($"speed control, {name}, {share} of the free flow"),
                    task with { MinimumSupply = 9.5 });
            }
        }
    }

    private static IEnumerable<(string Name, CircuitTask Task)> AtTheirLimits()
    {
        Pump plain = Pump.From(Unwired(FullVolts, 1));
        double free = plain.Running(FullVolts).FreeFlow;
        Plumbing narrow = Plumbing.Of(
            supply: [Tube(8, 3, 0.2)], returnLine: [Hose(2.2, 3, 0.1, Fitting.Elbow90.Times(4), Fitting.Exit)]);
        foreach (LineLayout layout in Enum.GetValues<LineLayout>())
        {
            yield return ($"narrow return line, idling, {layout}", Task(layout, plain, narrow, FullVolts, 2.5e5, 0.01 * free, 0));
            yield return ($"narrow return line, no injection, {layout}", Task(layout, plain, narrow, FullVolts, 2e5, 1e-9, 2));
            yield return ($"barely governed, {layout}", Task(layout, plain, Paths[2], FullVolts, 3.1e5, 0.69 * free, 0) with
            {
                MinimumReturn = 8e-6,
            });
            yield return ($"more injected than the pump passes, {layout}", Task(layout, plain, Paths[1], FullVolts, 3e5, 1.1 * free, 0));
            yield return ($"nothing left at the rail, {layout}", Task(
                layout, plain, Plumbing.Of(supply: [Hose(2.5, 6, 0.5)]), FullVolts, 3e5, 0.9 * free, 0));
            yield return ($"sagging at the relief valve, {layout}", Task(
                layout, Pump.Of([Unwired(FullVolts, 1)], Pressure.FromKilopascals(350)), Paths[1], FullVolts, 5e5, 0.2 * free, 0));
            yield return ($"sagging beyond the curve's end, {layout}", Task(
                layout, Pump.From(OpenEnded()), Paths[1], FullVolts, 5e5, 1e-5, 0));
            yield return ($"governed on a curve without end, {layout}", Task(
                layout, Pump.From(OpenEnded()), Paths[1], FullVolts, 3.3e5, 1e-5, 0));
            yield return ($"all of the set pressure lost in the supply line, {layout}", Task(
                layout, plain, Plumbing.Of(supply: [Hose(3, 6, 0)]), FullVolts, 1e5, 0.7 * free, 0));
            yield return ($"governed below the curve's start, {layout}", Task(
                layout, Pump.From(OpenEnded()), Paths[1], FullVolts, 1e5, 2e-5, 0));
            yield return ($"held up by the weaker stage of a chain without bypass, {layout}", Task(
                layout,
                PumpSeries.Of(SeriesBypass.None, Pump.From(Unwired(FullVolts, 2)), Pump.From(Unwired(FullVolts, 0.4))),
                Paths[1],
                FullVolts,
                3e5,
                1e-5,
                0));
            yield return ($"by-passed below its curve's start, {layout}", Task(
                layout,
                PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(OpenEnded()), Pump.From(Unwired(FullVolts, 1.6))),
                Paths[1],
                FullVolts,
                1.5e5,
                2e-5,
                0));
            yield return ($"voltage too low for the curve, {layout}", Task(
                layout, Pump.From(Unwired(FullVolts, 1)), Paths[1], 9, 1.5e5, 1e-5, 0));
            yield return ($"series without bypass, {layout}", Task(
                layout,
                PumpSeries.Of(SeriesBypass.None, Pump.From(Unwired(FullVolts, 0.9, 0.5)), plain),
                Paths[1],
                FullVolts,
                7e5,
                1e-5,
                0));
            yield return ($"a branch closed by its check valve, {layout}", Task(
                layout,
                PumpParallel.Of(plain, Wired(3, 12, [12, 14], 0.8, 0.5)),
                Paths[1],
                FullVolts,
                5.6e5,
                1e-5,
                0));
            yield return ($"a stage by-passed, {layout}", Task(
                layout,
                PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(Unwired(FullVolts, 0.3, 0.4)), plain),
                Paths[2],
                FullVolts,
                3e5,
                2e-5,
                0));
        }
    }

    public static CircuitTask Task(
        LineLayout layout, PumpAssembly pump, Plumbing plumbing, double supply, double set, double injected, int liquid)
    {
        (double density, double viscosity) = Liquids[liquid % Liquids.Length];
        return new(layout, pump, plumbing, supply, null, set, 1.5e-6, injected, density, viscosity);
    }

    private static IEnumerable<(double Kpa, double LitresPerHour, double Amperes)> Points(double flow, double pressure) =>
        Measured.Select(point => (
            point.Kpa * pressure, point.LitresPerHour * flow, point.Amperes * (0.4 + (0.6 * pressure))));

    internal static PumpCurve Unwired(double volts, double flow, double pressure = 1) => PumpCurve.At(
        "peer pump",
        Wren.Volt(volts),
        [.. Points(flow, pressure).Select(point => (Wren.Kpa(point.Kpa), VolumeFlow.FromLitersPerHour(point.LitresPerHour)))]);

    /// <summary>A wired pump whose curves do not obey the affinity laws among themselves.</summary>
    public static Pump Wired(double metres, int gauge, double[] volts, double flow = 1, double pressure = 1) => Pump.Of(
        [.. volts.Select(each => PumpCurve.WithCurrent(
            "peer pump, wired",
            Wren.Volt(each),
            [.. Points(flow * Math.Pow(each / FullVolts, 1.15), pressure * Math.Pow(each / FullVolts, 1.6)).Select(point => (
                Wren.Kpa(point.Kpa),
                VolumeFlow.FromLitersPerHour(point.LitresPerHour),
                ElectricCurrent.FromAmperes(point.Amperes)))]))],
        feed: PumpAssemblyTests.FeedOf(metres, gauge));

    private static PumpCurve Straight() => PumpCurve.At(
        "peer pump by two points",
        Wren.Volt(12.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(190)),
        (Wren.Kpa(800), VolumeFlow.Zero));

    private static PumpCurve OpenEnded() => PumpCurve.At(
        "peer pump, measured in the middle",
        Wren.Volt(FullVolts),
        (Wren.Kpa(150), VolumeFlow.FromLitersPerHour(260)),
        (Wren.Kpa(260), VolumeFlow.FromLitersPerHour(228)),
        (Wren.Kpa(310), VolumeFlow.FromLitersPerHour(219)),
        (Wren.Kpa(420), VolumeFlow.FromLitersPerHour(170)));

    internal static Line Tube(double millimetres, double metres, double rise, params Fitting[] fittings) =>
        LineOf(millimetres, metres, Roughness.DrawnTube, rise, fittings);

    internal static Line Hose(double millimetres, double metres, double rise, params Fitting[] fittings) =>
        LineOf(millimetres, metres, Roughness.RubberHose, rise, fittings);

    private static Line LineOf(double millimetres, double metres, Length roughness, double rise, Fitting[] fittings) => Line.Of(
        "peer line",
        Length.FromMillimeters(millimetres),
        Length.FromMeters(metres),
        roughness,
        fittings,
        Length.FromMeters(rise));

    internal static Filter FilterOf(double litresPerHour, double kilopascals, double clogging = 1, double? viscosity = null) =>
        Filter.Of(
            "peer filter",
            VolumeFlow.FromLitersPerHour(litresPerHour),
            Wren.Kpa(kilopascals),
            clogging,
            viscosity is { } thick ? DynamicViscosity.FromMillipascalSeconds(thick) : null);
}
