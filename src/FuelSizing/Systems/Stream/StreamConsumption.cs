using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Calculates what a second stream uses over a run.</summary>
public static class StreamRun
{
    /// <summary>Adds up what the second stream sprays over a run, and says when its tank is empty.</summary>
    /// <param name="system">A system with a second stream.</param>
    /// <param name="stages">The run: operating points, and how long each is held, 0 to 24 h; 1 to 100,000 of them in their order.</param>
    /// <returns>The volumes, and when the tank may be empty.</returns>
    /// <exception cref="ArgumentException">The system has no second stream.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is outside its range, or the engine's tables do not cover a point.</exception>
    /// <example>
    /// <code>
    /// SprayNozzles nozzles = SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(390), Pressure.FromKilopascals(700), SprayNozzles.Water);
    /// SecondStream methanol = SecondStream.Of("methanol", StreamFluid.Of(Fuel.Methanol), nozzles, Pressure.FromKilopascals(40), Pressure.FromKilopascals(850));
    /// StreamConsumption run = system.With(methanol.WithTank(Volume.FromLiters(2))).ConsumeStream([(point, Duration.FromSeconds(40))]);
    /// Console.WriteLine(run);   // methanol: at most 0.32 L used in 40 s, at least 1.68 L left
    /// </code>
    /// </example>
    public static StreamConsumption ConsumeStream(this FuelSystem system, IReadOnlyList<(OperatingPoint Point, Duration Time)> stages)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(stages);
        if (system.SecondStream is not { } stream)
        {
            throw new ArgumentException("system has no second stream. Give it one by FuelSystem.With(SecondStream).", nameof(system));
        }

        Guard.Count(stages.Count, 1, 100_000, "Give the points of the run and how long each is held.", nameof(stages));
        double tank = stream.UsableVolume?.CubicMeters ?? double.PositiveInfinity;
        (double least, double shown, double most) = (0, 0, 0);
        (double passed, double empty) = (0, double.NaN);
        foreach ((OperatingPoint point, Duration time) in stages)
        {
            ArgumentNullException.ThrowIfNull(point, nameof(stages));
            double held = Guard.Between(time, Duration.Zero, Duration.FromHours(24), "Give how long the point is held.", nameof(stages)).Seconds;
            SolvedStream solved = system.Parts.DemandAt(point).Stream!.Solved;

            // A flow without an upper bound may empty the tank at once.
            double before = most;
            most += held > 0 ? held * solved.MaximumFlow : 0;
            least += held * solved.MinimumFlow;
            shown += held > 0 ? held * solved.Flow : 0;
            if (double.IsNaN(empty) && double.IsFinite(tank) && held > 0 && !(most < tank))
            {
                empty = double.IsNaN(most) ? passed : passed + ((tank - before) / solved.MaximumFlow);
            }

            passed += held;
        }

        return new(stream, least, shown, most, passed, empty);
    }
}

/// <summary>What a second stream uses over a run, and whether its tank lasts.</summary>
/// <remarks>As if the tank never ran empty: what is used is what a tank that is large enough would give.</remarks>
public sealed class StreamConsumption : IReadable
{
    internal StreamConsumption(SecondStream stream, double least, double shown, double most, double seconds, double empty)
    {
        Stream = stream;
        MinimumUsed = Volume.FromCubicMeters(least);
        Used = double.IsNaN(shown) ? null : Volume.FromCubicMeters(shown);
        MaximumUsed = double.IsNaN(most) ? null : Volume.FromCubicMeters(most);
        Time = Duration.FromSeconds(seconds);
        EmptyAfter = double.IsNaN(empty) ? null : Duration.FromSeconds(empty);
    }

    /// <summary>The stream.</summary>
    public SecondStream Stream { get; }

    /// <summary>How long the run takes.</summary>
    public Duration Time { get; }

    /// <summary>Liquid that is used; none where a flow is not known.</summary>
    public Volume? Used { get; }

    /// <summary>Lower bound of it.</summary>
    public Volume MinimumUsed { get; }

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public Volume? MaximumUsed { get; }

    /// <summary>What is surely left of a full tank; none without a tank, or where the tank may be empty.</summary>
    public Volume? MinimumLeft => Stream.UsableVolume is { } tank && MaximumUsed is { } used && used < tank ? tank - used : null;

    /// <summary>When a full tank may be empty at the earliest; none where it surely lasts, or no tank is given.</summary>
    public Duration? EmptyAfter { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Used, and left or empty, as a code with its figures.</summary>
    public Statement Text => (MaximumUsed, EmptyAfter, MinimumLeft) switch
    {
        ({ } used, null, { } left) => Statement.Of("stream-run.lasts", $"{Stream.Name}: at most {used:displacement:up} used in {Time:time}, at least {left:displacement:down} left"),
        ({ } used, { } empty, _) => Statement.Of("stream-run.empty", $"{Stream.Name}: at most {used:displacement:up} used in {Time:time}; the tank may be empty after {empty:time}, and the stream stops then"),
        ({ } used, _, _) => Statement.Of("stream-run.used", $"{Stream.Name}: at most {used:displacement:up} used in {Time:time}"),
        _ => Statement.Of("stream-run.unknown", $"what {Stream.Name} uses cannot be said: data of its pump does not cover a point of the run"),
    };

    /// <summary>Used, and left or empty.</summary>
    /// <returns>For instance <c>methanol: at most 0.27 L used in 40 s, at least 1.72 L left</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
