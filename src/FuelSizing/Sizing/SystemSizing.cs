using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>Inverse questions: what a figure of the system must be for everything to hold.</summary>
/// <remarks>
/// <para>Every question takes a system and the operating points that it must serve, and searches one figure with all else
/// as it is. An answer holds at every point for every part: it names the part that binds and the next one, and has been
/// solved forward. Where no value is adequate it says so, and what stands in the way.</para>
/// <para>"At least" is true up to the end of the range that is searched, and "at most" down to its start; where what holds ends sooner, or begins
/// later, the answer says from where to where (<see cref="SizingAnswer{T}.Ranges"/>).</para>
/// <para>Give the points that matter: full load over the speed range, and idle for the minimum pulse width and the return line.</para>
/// </remarks>
public static class SystemSizing
{
    // What an operating point may have.
    private static readonly double MaximumBoostSearched = Pressure.FromKilopascals(400).Pascals;

    private static readonly SizedFigure<VolumeFlow> InjectorFlow = new(
        flow => VolumeFlow.FromCubicMetersPerSecond(flow),
        (flow, other) => Statement.Of("sizing.figure", $"{flow.Towards(other):injector-flow}"),
        flow => FigureUnits.Metric.InjectorFlow.Tidy(VolumeFlow.FromCubicMetersPerSecond(flow)).CubicMetersPerSecond);

    private static readonly SizedFigure<Pressure> RailPressure = new(
        pressure => Pressure.FromPascals(pressure),
        (pressure, other) => Statement.Of("sizing.figure", $"{pressure.Towards(other):pressure}"),
        pressure => FigureUnits.Metric.Pressure.Tidy(Pressure.FromPascals(pressure)).Pascals);

    private static readonly SizedFigure<Pressure> Boost = new(
        pressure => Pressure.FromPascals(pressure),
        (pressure, other) => Statement.Of("sizing.figure", $"{pressure.Towards(other):boost}"),
        pressure => FigureUnits.Metric.Boost.Tidy(Pressure.FromPascals(pressure)).Pascals);

    private static readonly SizedFigure<double> Gain = new(
        gain => gain, (gain, other) => Statement.Of("sizing.figure", $"{gain.Towards(other):0.00}"), gain => Math.Round(gain, 6));

    private static readonly SizedFigure<Length> Bore = new(
        bore => Length.FromMeters(bore),
        (bore, other) => Statement.Of("sizing.figure", $"{bore.Towards(other):bore}"),
        bore => FigureUnits.Metric.Bore.Tidy(Length.FromMeters(bore)).Meters);

    private static readonly SizedFigure<Area> WireArea = new(
        area => Area.FromSquareMeters(area),
        (area, other) => Statement.Of("sizing.figure", $"{area.Towards(other):area}"),
        area => FigureUnits.Metric.Area.Tidy(Area.FromSquareMeters(area)).SquareMeters);

    /// <summary>The minimum static flow of the injectors, at their rated differential on their test fluid.</summary>
    /// <param name="system">The system; its injectors, of two sets the primary one, are taken with every other property as it is.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>20 to 10,000 mL/min, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    public static SizingAnswer<VolumeFlow> MinimumStaticFlow(FuelSystem system, params OperatingPoint[] points) => MinimumStaticFlow(system, points, CancellationToken.None);

    /// <summary>The minimum static flow of the injectors, at their rated differential on their test fluid, by a search that can be stopped.</summary>
    /// <param name="system">The system; its injectors, of two sets the primary one, are taken with every other property as it is.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>20 to 10,000 mL/min, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<VolumeFlow> MinimumStaticFlow(FuelSystem system, IReadOnlyList<OperatingPoint> points, CancellationToken cancellation)
    {
        OperatingPoint[] served = Served(system, points);
        system.RequireHandOverByBoost(nameof(system), nameof(MinimumStaticFlow));
        Injector fitted = system.Injectors.Injector;
        return new SizingSearch(
            VolumeFlow.FromMillilitersPerMinute(20).CubicMetersPerSecond,
            VolumeFlow.FromMillilitersPerMinute(10_000).CubicMetersPerSecond,
            served.Length,
            flow => SizedSystem.Of(
                system,
                system.Parts.With(InjectorSet.Of(
                    fitted.WithStaticFlow(VolumeFlow.FromCubicMetersPerSecond(flow)),
                    system.Injectors.Count,
                    system.Injectors.InjectionsPerCycle)),
                served),
            cancellation: cancellation)
            .Minimum(InjectorFlow);
    }

    /// <summary>The minimum base pressure of the regulator.</summary>
    /// <param name="system">
    /// The system; its regulator must have one base pressure of its own (fixed, manifold-referenced, rising-rate or
    /// electronic).
    /// </param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>100 to 1,500 kPa, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points, or the regulator is a series of two.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    public static SizingAnswer<Pressure> MinimumBasePressure(FuelSystem system, params OperatingPoint[] points) => MinimumBasePressure(system, points, CancellationToken.None);

    /// <summary>The minimum base pressure of the regulator, by a search that can be stopped.</summary>
    /// <param name="system">
    /// The system; its regulator must have one base pressure of its own (fixed, manifold-referenced, rising-rate or
    /// electronic).
    /// </param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>100 to 1,500 kPa, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points, or the regulator is a series of two.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<Pressure> MinimumBasePressure(FuelSystem system, IReadOnlyList<OperatingPoint> points, CancellationToken cancellation)
    {
        OperatingPoint[] served = Served(system, points);
        system.RequireHandOverByBoost(nameof(system), nameof(MinimumBasePressure));
        Pressure minimum = Pressure.FromKilopascals(100);
        Pressure maximum = Pressure.FromKilopascals(1500);
        if (system.Regulator is RisingRate { Ceiling: { } ceiling })
        {
            if (ceiling < minimum)
            {
                Limit binding = new(served.Select(system.Solve).SelectMany(result => result.Margins).Order(Urgency.Order).First());
                return new(
                    null,
                    null,
                    [],
                    binding,
                    null,
                    Statement.Of(
                        "sizing.ceiling-below-base",
                        $"Nothing from {minimum} to {maximum} is adequate: the regulator's ceiling is {ceiling}, below the lowest base pressure."));
            }

            maximum = UnitMath.Min(maximum, ceiling);
        }

        return new SizingSearch(
            minimum.Pascals,
            maximum.Pascals,
            served.Length,

            // A last bit of a conversion must not lift the base over its ceiling.
            pascals => SizedSystem.Of(system, system.Parts.With(system.Regulator.WithBase(UnitMath.Min(Pressure.FromPascals(pascals), maximum))), served),
            cancellation: cancellation)
            .Minimum(RailPressure);
    }

    /// <summary>The minimum gain of a rising-rate unit at an onset, in place of the system's regulator.</summary>
    /// <param name="system">The system; its regulator's base pressure is kept.</param>
    /// <param name="onset">Boost at which the gain sets in, 0 to 200 kPa.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>1 to 15, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">
    /// There are no points, or the regulator is neither manifold-referenced nor rising-rate.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or a point is not covered.</exception>
    public static SizingAnswer<double> MinimumGain(FuelSystem system, Pressure onset, params OperatingPoint[] points) => MinimumGain(system, onset, points, CancellationToken.None);

    /// <summary>The minimum gain of a rising-rate unit at an onset, in place of the system's regulator, by a search that can be stopped.</summary>
    /// <param name="system">The system; its regulator's base pressure is kept.</param>
    /// <param name="onset">Boost at which the gain sets in, 0 to 200 kPa.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>1 to 15, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">
    /// There are no points, or the regulator is neither manifold-referenced nor rising-rate.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or a point is not covered.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<double> MinimumGain(FuelSystem system, Pressure onset, IReadOnlyList<OperatingPoint> points, CancellationToken cancellation)
    {
        OperatingPoint[] served = Served(system, points);
        system.RequireHandOverByBoost(nameof(system), nameof(MinimumGain));
        RisingRate With(double gain) => system.Regulator switch
        {
            ManifoldReferenced fitted =>
                RisingRate.From(fitted.Base, gain, onset, minimumReturnFlow: fitted.MinimumReturnFlow).With(fitted.Flow),
            RisingRate fitted =>
                RisingRate.From(fitted.Base, gain, onset, fitted.Ceiling, fitted.MinimumReturnFlow).With(fitted.Flow),
            _ => throw new ArgumentException(
                $"system has a regulator {system.Regulator.Description}; a gain belongs to a manifold-referenced or rising-rate one.",
                nameof(system)),
        };

        FuelSystem judged = system.With(With(1));
        return new SizingSearch(1, 15, served.Length, gain => SizedSystem.Of(judged, judged.Parts.With(With(gain)), served), cancellation: cancellation)
            .Minimum(Gain);
    }

    /// <summary>The maximum boost, counted up from none, that the parts as they are support at every one of some speeds.</summary>
    /// <param name="system">The system.</param>
    /// <param name="speeds">Speeds to serve; one or more.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>0 to 400 kPa, or that they fail without any.</returns>
    /// <exception cref="ArgumentException">There are no speeds.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a speed, or it has no compressor.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<Pressure> MaximumBoost(
        FuelSystem system, IReadOnlyList<RotationalSpeed> speeds, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(conditions);
        system.RequireHandOverByBoost(nameof(system), nameof(MaximumBoost));
        Guard.Count(speeds.Count, 1, 10_000, "Give at least one speed.", nameof(speeds));
        foreach (RotationalSpeed speed in speeds)
        {
            EngineSpeed.Within(speed, nameof(speeds));
        }

        OperatingPoint[] points = [.. speeds.Select(speed => OperatingPoint.At(speed, Pressure.Zero, conditions))];
        return new SizingSearch(
            0,
            MaximumBoostSearched,
            speeds.Count,
            boost => SizedSystem.Of(system, speed => points[speed].With(Pressure.FromPascals(boost))),
            BoostKnots.Of(system, conditions.Atmosphere.Pascals, 0, MaximumBoostSearched),
            cancellation)
            .Maximum(Boost);
    }

    /// <summary>The maximum crank power, with boost counted up from none, that the parts as they are support at a speed.</summary>
    /// <param name="system">The system.</param>
    /// <param name="speed">The speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>
    /// The highest estimated power at any boost up to the maximum that holds, or that they fail without any. It need not be that at the
    /// maximum boost: a compressor may take more than it brings.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the speed, or it has no compressor.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<Power> MaximumPower(FuelSystem system, RotationalSpeed speed, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(conditions);
        system.RequireHandOverByBoost(nameof(system), nameof(MaximumPower));
        OperatingPoint point = OperatingPoint.At(speed, Pressure.Zero, conditions);
        return new SizingSearch(
            0,
            MaximumBoostSearched,
            1,
            boost => SizedSystem.Of(system, _ => point.With(Pressure.FromPascals(boost))),
            BoostKnots.Of(system, conditions.Atmosphere.Pascals, 0, MaximumBoostSearched),
            cancellation)
            .MaximumOf<Power, Pressure>(
                new(PowerAt, (power, other) => Statement.Of("sizing.figure", $"{power.Towards(other):power}"), boost => boost),
                Boost,
                WattsAt);

        Power PowerAt(double boost) => Power.FromWatts(WattsAt(boost));

        double WattsAt(double boost) =>
            system.Demand.ChainAt(speed, point.RevolutionsPerSecond, Pressure.FromPascals(boost), boost, conditions.Atmosphere).BrakePower;
    }

    /// <summary>The maximum speed, counted up from a lowest one, that the parts as they are support at a boost.</summary>
    /// <param name="system">The system.</param>
    /// <param name="boost">Manifold gauge pressure.</param>
    /// <param name="from">Lowest speed to serve.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>Up to the engine's limit, or that they fail at the lowest speed already.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the engine's tables do not cover a speed.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<RotationalSpeed> MaximumSpeed(
        FuelSystem system, Pressure boost, RotationalSpeed from, Conditions conditions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(conditions);
        system.RequireHandOverByBoost(nameof(system), nameof(MaximumSpeed));
        RotationalSpeed limit = system.Demand.Engine.SpeedLimit;
        EngineSpeed.Within(from, nameof(from));
        if (from >= limit)
        {
            throw Guard.OutOfRange(
                nameof(from), Readable.Of(from), $"under {Readable.Of(limit)}", "Start below the engine's speed limit.");
        }

        return new SizingSearch(
            from.RevolutionsPerSecond,
            limit.RevolutionsPerSecond,
            1,
            speed => SizedSystem.Of(system, _ => OperatingPoint.At(UnitMath.Min(RotationalSpeed.FromRevolutionsPerSecond(speed), limit), boost, conditions)),
            SpeedKnots.Of(system),
            cancellation)
            .Maximum(new SizedFigure<RotationalSpeed>(
                speed => UnitMath.Min(RotationalSpeed.FromRevolutionsPerSecond(speed), limit),
                (speed, other) => Statement.Of("sizing.figure", $"{speed.Towards(other):speed}"),
                speed => FigureUnits.Metric.Speed.Tidy(RotationalSpeed.FromRevolutionsPerSecond(speed)).RevolutionsPerSecond));
    }

    /// <summary>The minimum bore of one line of the supply.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">The line, as it is in <see cref="Plumbing.Supply"/>.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>1 to 30 mm, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points, or the line is not in the system.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    public static SizingAnswer<Length> MinimumBore(FuelSystem system, Line line, params OperatingPoint[] points) => MinimumBore(system, line, points, CancellationToken.None);

    /// <summary>The minimum bore of one line of the supply, by a search that can be stopped.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">The line, as it is in <see cref="Plumbing.Supply"/>.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>1 to 30 mm, or that none is adequate.</returns>
    /// <exception cref="ArgumentException">There are no points, or the line is not in the system.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<Length> MinimumBore(FuelSystem system, Line line, IReadOnlyList<OperatingPoint> points, CancellationToken cancellation)
    {
        OperatingPoint[] served = Served(system, points);
        ArgumentNullException.ThrowIfNull(line);
        if (!system.Plumbing.Supply.Any(part => ReferenceEquals(part, line)))
        {
            throw new ArgumentException(
                $"line was {line.Name}, which is not in the system's supply line. Give the very line that the plumbing holds.",
                nameof(line));
        }

        return new SizingSearch(
            Length.FromMillimeters(1).Meters,
            Length.FromMillimeters(30).Meters,
            served.Length,
            bore => SizedSystem.Of(
                system,
                system.Parts.With(system.Plumbing.With(
                    system.Plumbing.Suction,
                    [.. system.Plumbing.Supply.Select(part => ReferenceEquals(part, line) ? line.WithBore(Length.FromMeters(bore)) : part)],
                    system.Plumbing.ReturnLine)),
                served),
            cancellation: cancellation)
            .Minimum(Bore);
    }

    /// <summary>The minimum nominal area of the wire that feeds the pumps, the same for every feed.</summary>
    /// <param name="system">
    /// The system; at least one pump must have a feed. Lengths, contacts and the metal's temperature stay as they are.
    /// </param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>
    /// 0.2 to 120 mm², or that none is adequate. Copper is counted with the most that a standard size of that nominal area may resist
    /// (IEC 60228, class 5), 13 % more than its area of copper, stranded, would: the next standard size up serves, metric or American. Ampacity and
    /// fuse count where insulation, surroundings and rating are given.
    /// </returns>
    /// <exception cref="ArgumentException">There are no points, or no pump has a feed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    public static SizingAnswer<Area> MinimumWireArea(FuelSystem system, params OperatingPoint[] points) => MinimumWireArea(system, points, CancellationToken.None);

    /// <summary>The minimum nominal area of the wire that feeds the pumps, the same for every feed, by a search that can be stopped.</summary>
    /// <param name="system">
    /// The system; at least one pump must have a feed. Lengths, contacts and the metal's temperature stay as they are.
    /// </param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>
    /// 0.2 to 120 mm², or that none is adequate. Copper is counted with the most that a standard size of that nominal area may resist
    /// (IEC 60228, class 5), 13 % more than its area of copper, stranded, would: the next standard size up serves, metric or American. Ampacity and
    /// fuse count where insulation, surroundings and rating are given.
    /// </returns>
    /// <exception cref="ArgumentException">There are no points, or no pump has a feed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SizingAnswer<Area> MinimumWireArea(FuelSystem system, IReadOnlyList<OperatingPoint> points, CancellationToken cancellation)
    {
        OperatingPoint[] served = Served(system, points);
        if (system.Pump.Pumps.All(pump => pump.Feed is null))
        {
            throw new ArgumentException(
                $"system has {system.Pump.Name} without a feed; describe its wiring with Pump.WithFeed.", nameof(system));
        }

        return new SizingSearch(
            Area.FromSquareMillimeters(0.2).SquareMeters,
            Area.FromSquareMillimeters(120).SquareMeters,
            served.Length,
            area => SizedSystem.Of(system, system.Parts.With(system.Pump.Rewired(feed => feed.WithNominalArea(Area.FromSquareMeters(area)))), served),
            cancellation: cancellation)
            .Minimum(WireArea);
    }

    /// <summary>What a pump, or pumps together, must deliver, and against which pressure rise.</summary>
    /// <param name="system">The system; its own pump has no say.</param>
    /// <param name="points">The operating points to serve; one or more.</param>
    /// <returns>
    /// Flow and pressure rise at each point, with the reserve of <see cref="SizingLimits.PumpReserve"/> and the regulator's
    /// minimum return flow in it: a pump whose curve passes through or over all of them holds the rail's set pressure.
    /// </returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover a point.</exception>
    public static PumpRequirement RequiredPump(FuelSystem system, params OperatingPoint[] points)
    {
        Some(system, points);
        return new(
            [
                .. points.Select(point =>
                {
                    OperatingResult result = system.Solve(point);
                    return new PumpDutyPoint(
                        point,
                        VolumeFlow.FromCubicMetersPerSecond(result.SolvedCircuit.Required),
                        Pressure.FromPascals(result.SolvedCircuit.Task.RiseToDeliver(result.SolvedCircuit.Required)));
                }),
            ]);
    }

    private static OperatingPoint[] Served(FuelSystem system, IReadOnlyList<OperatingPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        OperatingPoint[] served = [.. points];
        Some(system, served);
        return served;
    }

    private static void Some(FuelSystem system, OperatingPoint[] points)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(points);
        if (points.Length == 0)
        {
            throw new ArgumentException("points was empty; give at least one operating point.", nameof(points));
        }

        foreach (OperatingPoint point in points)
        {
            ArgumentNullException.ThrowIfNull(point, nameof(points));
        }
    }
}
