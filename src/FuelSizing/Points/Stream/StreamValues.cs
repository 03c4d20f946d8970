using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>What a check may read of a second stream, in SI numbers.</summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
/// <remarks>Not a number is what is not known, and all but the share where there is no second stream.</remarks>
public readonly record struct StreamValues<T>
    where T : struct, IReal<T>
{
    /// <summary>Share of the whole stream that flows; zero where none does.</summary>
    public required T Share { get; init; }

    /// <summary>Pressure in what the nozzles spray into, gauge, Pa.</summary>
    public required T BackPressure { get; init; }

    /// <summary>Lower bound of the pressure at the nozzles, gauge, Pa.</summary>
    public required T MinimumPressure { get; init; }

    /// <summary>Upper bound of it, gauge, Pa.</summary>
    public required T MaximumPressure { get; init; }

    /// <summary>Lower bound of the liquid's flow, m³/s.</summary>
    public required T MinimumFlow { get; init; }

    /// <summary>Upper bound of it, m³/s.</summary>
    public required T MaximumFlow { get; init; }

    /// <summary>What the nozzles pass at the pressure that is held at them, m³/s.</summary>
    public required T Required { get; init; }

    /// <summary>Lower bound of what the pump delivers against that pressure, m³/s.</summary>
    public required T MinimumDelivered { get; init; }

    /// <summary>Upper bound of it, m³/s.</summary>
    public required T MaximumDelivered { get; init; }

    /// <summary>The least main fuel that the engine needs without the stream, as a share of what it needs then: without the main fuel's evaporation, where a share of it is stated.</summary>
    public required T MainInjectedShare { get; init; }

    /// <summary>Lower bound of lambda with both streams, by which a rich mixture is judged: with no evaporation in the charge.</summary>
    public required T RichMinimumLambda { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required T RichMaximumLambda { get; init; }

    /// <summary>Lower bound of lambda with both streams, by which a lean mixture is judged where main fuel is taken back: with the evaporation that is stated.</summary>
    public required T LeanMinimumLambda { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required T LeanMaximumLambda { get; init; }

    /// <summary>Lower bound of lambda if the stream stops and the main fuel stays as it is.</summary>
    public required T MinimumStoppedLambda { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required T MaximumStoppedLambda { get; init; }
}

/// <summary>Reads a solved second stream's numbers out for the checks.</summary>
internal static class StreamReading
{
    /// <summary>Where there is no second stream.</summary>
    public static StreamValues<Real> None { get; } = new()
    {
        Share = 0,
        BackPressure = double.NaN,
        MinimumPressure = double.NaN,
        MaximumPressure = double.NaN,
        MinimumFlow = double.NaN,
        MaximumFlow = double.NaN,
        Required = double.NaN,
        MinimumDelivered = double.NaN,
        MaximumDelivered = double.NaN,
        MainInjectedShare = double.NaN,
        RichMinimumLambda = double.NaN,
        RichMaximumLambda = double.NaN,
        LeanMinimumLambda = double.NaN,
        LeanMaximumLambda = double.NaN,
        MinimumStoppedLambda = double.NaN,
        MaximumStoppedLambda = double.NaN,
    };

    /// <summary>The numbers of a stream, its mixture apart.</summary>
    public static StreamValues<Real> Of(in PointDemand demand)
    {
        if (demand.Stream is not { } stream)
        {
            return None;
        }

        SolvedStream solved = stream.Solved;
        return None with
        {
            Share = solved.Share,
            BackPressure = solved.BackPressure,
            MinimumPressure = solved.LowestPressure,
            MaximumPressure = solved.HighestPressure,
            MinimumFlow = solved.MinimumFlow,
            MaximumFlow = solved.MaximumFlow,
            Required = solved.Required,
            MinimumDelivered = solved.MinimumDelivered,
            MaximumDelivered = solved.MaximumDelivered,
            MainInjectedShare = FuelDemand.ShareWithoutEvaporation(demand.Alone.Chain, demand.Basis),
        };
    }

    /// <summary>The same with the mixture.</summary>
    public static StreamValues<Real> Of(SystemParts parts, in PointDemand demand, in SolvedMixture mixture)
    {
        if (demand.Stream is not { } stream)
        {
            return None;
        }

        StreamMixture both = StreamMixture.Of(parts, stream, mixture);
        return Of(demand) with
        {
            RichMinimumLambda = both.Richest,
            RichMaximumLambda = both.RichAtMost,
            LeanMinimumLambda = both.LeanAtLeast,
            LeanMaximumLambda = both.Leanest,
            MinimumStoppedLambda = both.StoppedAtLeast,
            MaximumStoppedLambda = both.Stopped,
        };
    }
}
