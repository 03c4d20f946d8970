using FuelSizing.Lines;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>What a check may read of the lift circuit of a surge tank, in SI numbers.</summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
/// <remarks>Not a number is what is not known, and all of it where the pumps draw from the main tank.</remarks>
public readonly record struct LiftValues<T>
    where T : struct, IReal<T>
{
    /// <summary>Lower bound of the net draw that the lift pump has to sustain, m³/s.</summary>
    public required T MinimumDraw { get; init; }

    /// <summary>Upper bound of it, m³/s.</summary>
    public required T MaximumDraw { get; init; }

    /// <summary>Lower bound of the net draw that the lift circuit sustains with the pumps' reserve kept, m³/s.</summary>
    public required T MinimumSustained { get; init; }

    /// <summary>Upper bound of it, m³/s.</summary>
    public required T MaximumSustained { get; init; }

    /// <summary>Vapour pressure of the fuel at the temperature of the main tank, absolute, Pa.</summary>
    public required T VapourPressure { get; init; }

    /// <summary>Lower bound of the pressure in the surge tank while it is full, gauge, Pa.</summary>
    public required T MinimumTankGauge { get; init; }

    /// <summary>Upper bound of it, gauge, Pa.</summary>
    public required T MaximumTankGauge { get; init; }

    /// <summary>Largest flow at which the loss is known of the filter of the lift circuit that is nearest to that, m³/s.</summary>
    public required T FilterMaximum { get; init; }

    /// <summary>Ampacity of the wire that is nearest to it, A.</summary>
    public required T WireAmpacity { get; init; }

    /// <summary>Rating of the fuse that is loaded most for it, A.</summary>
    public required T FuseRating { get; init; }

    /// <summary>Rating of the relay that is loaded most for it, A.</summary>
    public required T RelayRating { get; init; }

    /// <summary>The least that figures of the lift circuit can be, with the tank filling or full: its rail is the surge tank, its return line the overflow line.</summary>
    public required CircuitValues<T> Minimum { get; init; }

    /// <summary>The most that they can be.</summary>
    public required CircuitValues<T> Maximum { get; init; }
}

/// <summary>Reads a solved lift circuit's numbers out for the checks.</summary>
internal static class LiftReading
{
    /// <summary>Where there is no surge tank.</summary>
    public static LiftValues<Real> None { get; } = new()
    {
        MinimumDraw = double.NaN,
        MaximumDraw = double.NaN,
        MinimumSustained = double.NaN,
        MaximumSustained = double.NaN,
        VapourPressure = double.NaN,
        MinimumTankGauge = double.NaN,
        MaximumTankGauge = double.NaN,
        FilterMaximum = double.NaN,
        WireAmpacity = double.NaN,
        FuseRating = double.NaN,
        RelayRating = double.NaN,
        Minimum = CircuitReading.NotKnown(drawsFromTank: true),
        Maximum = CircuitReading.NotKnown(drawsFromTank: true),
    };

    /// <summary>The numbers of one solved lift circuit.</summary>
    public static LiftValues<Real> Of(SystemParts parts, Conditions conditions, SolvedLift lift)
    {
        SolvedCircuit filling = lift.Filling;
        ILimitedLoss? filter = FilterOf(lift)?.Filter;
        WiredPlaces wiring = WiredPlaces.Of(filling);
        (CircuitValues<Real> Minimum, CircuitValues<Real> Maximum) bounds = CircuitReading.Bounds(filling, filter, wiring);
        if (lift.Full is { } full)
        {
            bounds = CircuitReading.AlsoFull(bounds, CircuitReading.Bounds(full, filter, wiring));
        }

        return new()
        {
            MinimumDraw = lift.Joined.MinimumDraw,
            MaximumDraw = lift.Joined.MaximumDraw,
            MinimumSustained = lift.MinimumSustained,
            MaximumSustained = lift.MaximumSustained,
            VapourPressure = parts.Demand.Consumption.Fuel is { HasVapourPressure: true } fuel
                ? fuel.VapourPressureAtKelvins(conditions.TankTemperature.Kelvins)
                : double.NaN,
            MinimumTankGauge = lift.Joined.MinimumGauge,
            MaximumTankGauge = lift.Joined.MaximumGauge,
            FilterMaximum = filter?.MaximumKnownFlow ?? double.NaN,
            WireAmpacity = wiring.Hottest >= 0 ? filling.FeedAt(wiring.Hottest)!.AmpacityAmperes : double.NaN,
            FuseRating = wiring.Heaviest >= 0 ? filling.FeedAt(wiring.Heaviest)!.Fuse!.Value.Amperes : double.NaN,
            RelayRating = wiring.Relayed >= 0 ? filling.FeedAt(wiring.Relayed)!.Relay!.Value.Amperes : double.NaN,
            Minimum = bounds.Minimum,
            Maximum = bounds.Maximum,
        };
    }

    /// <summary>The filter of the lift circuit nearest to the end of its data, with the tank filling or full, and the flow through it, m³/s; none without filters.</summary>
    public static (ILimitedLoss Filter, double Flow)? FilterOf(SolvedLift lift)
    {
        if (!lift.Filling.Task.Plumbing.HasFilter || !lift.Filling.IsCovered)
        {
            return null;
        }

        (ILimitedLoss Filter, double Flow) filling = CircuitReading.FilterOf(lift.Filling);
        if (lift.Full is not { } full)
        {
            return filling;
        }

        (ILimitedLoss Filter, double Flow) other = CircuitReading.FilterOf(full);
        return other.Flow / other.Filter.MaximumKnownFlow > filling.Flow / filling.Filter.MaximumKnownFlow
            ? other
            : filling;
    }
}
