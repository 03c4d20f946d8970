using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>The worst of air, supply voltage, fuel temperature and ethanol content: where lambda is leanest, and each margin tightest.</summary>
/// <remarks>
/// <para>No input is taken to be worse at one end than at the other: at every corner of the ranges, and at their middle, a grid of the line (or
/// of the rectangle of speed and boost) is solved; from the six worst humps of these the search goes downhill in all inputs, speed and boost,
/// with ever smaller steps. So the worst that is found may lie inside a range.</para>
/// <para>It is a search, not a proof: what is found is solved as it stands, and a dense scan of random systems found none that was worse.</para>
/// </remarks>
public static class WorstCorner
{
    // Humps between the knots may be narrow: twice as many as a pull shows.
    private const int Speeds = 25;

    /// <summary>Finds the worst corner along a boost line.</summary>
    /// <param name="system">The system.</param>
    /// <param name="line">The boost at each speed; of a compressor on a belt it follows the air.</param>
    /// <param name="slowest">Lowest speed, that line and tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="ranges">What varies, and how far.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>Where lambda is leanest and where the margin of each check is tightest.</returns>
    /// <exception cref="ArgumentException">
    /// The engine cannot have such a line, or the ethanol content has a range and the fuel is no blend of ethanol with that petrol.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or not under the next; or the line passes 400 kPa in some air.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    /// <example>
    /// <code>
    /// WorstCornerResult worst = system.FindWorstCorner(
    ///     HeldBoost.Of(Pressure.FromBars(0.6), RotationalSpeed.FromRevolutionsPerMinute(3000), RotationalSpeed.FromRevolutionsPerMinute(6800)),
    ///     RotationalSpeed.FromRevolutionsPerMinute(3000),
    ///     RotationalSpeed.FromRevolutionsPerMinute(6800),
    ///     OperatingRanges.Around(Conditions.Default)
    ///         .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(35)));
    /// Console.WriteLine(worst.Limiting);
    /// </code>
    /// </example>
    public static WorstCornerResult FindWorstCorner(
        this FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, OperatingRanges ranges, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(ranges);
        system.RequireHandOverByBoost(nameof(system), nameof(FindWorstCorner));
        (double from, double to) = LineSweep.RequireRising(slowest, fastest);
        line.RequireCompressor(system.Demand);
        return new CornerSearch(
            system.JudgedBy(new CompressorSpeedCheck(line)),
            ranges,
            line,
            [.. Enumerable.Range(0, Speeds).Select(step => from + ((to - from) * step / (Speeds - 1)))],
            [0],
            cancellation).Find();
    }

    /// <summary>Finds the worst corner over a rectangle of speed and boost.</summary>
    /// <param name="system">The system.</param>
    /// <param name="speeds">One or more, rising, within the engine's tables and limit; what lies between them is searched too.</param>
    /// <param name="boosts">One or more, rising.</param>
    /// <param name="ranges">What varies, and how far.</param>
    /// <param name="cancellation">Stops the search, which has no answer before its end.</param>
    /// <returns>Where lambda is leanest and where the margin of each check is tightest.</returns>
    /// <exception cref="ArgumentException">The ethanol content has a range and the fuel is no blend of ethanol with that petrol.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty or out of order, or the engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static WorstCornerResult FindWorstCorner(
        this FuelSystem system, IReadOnlyList<RotationalSpeed> speeds, IReadOnlyList<Pressure> boosts, OperatingRanges ranges, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(boosts);
        ArgumentNullException.ThrowIfNull(ranges);
        system.RequireHandOverByBoost(nameof(system), nameof(FindWorstCorner));
        Guard.Count(speeds.Count, 1, 10_000, "Give at least one.", nameof(speeds));
        Guard.Count(boosts.Count, 1, 10_000, "Give at least one.", nameof(boosts));
        return new CornerSearch(
            system,
            ranges,
            null,
            Rising([.. speeds.Select(speed => EngineSpeed.Within(speed, nameof(speeds)))], nameof(speeds)),
            Rising([.. boosts.Select(boost => ManifoldPressure.Within(boost, nameof(boosts)).Pascals)], nameof(boosts)),
            cancellation).Find();
    }

    private static double[] Rising(double[] values, string name) => values.Length < 2 ? values : Guard.Rising(values, name);
}
