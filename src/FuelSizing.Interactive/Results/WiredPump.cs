using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>A pump that has a feed, where it runs.</summary>
internal sealed class WiredPump
{
    // Below this a feed gives no figures: a pump slowed so far is not sized for its wire.
    private static readonly ElectricPotential MinimumSource = ElectricPotential.FromVolts(5);

    private readonly FeedResult? _loss;

    private WiredPump(string column, PumpResult result, Feed feed)
    {
        (Column, Result, Feed) = (column, result, feed);
        Source = result.SourceVoltage;
        _loss = result.FeedCurrent is { } current && Source >= MinimumSource ? feed.VoltageAtMotor(Source, current) : null;
    }

    /// <summary>The column's name.</summary>
    public string Column { get; }

    /// <summary>The pump where it runs.</summary>
    public PumpResult Result { get; }

    /// <summary>Its wiring.</summary>
    public Feed Feed { get; }

    /// <summary>Voltage that the wiring is fed with.</summary>
    public ElectricPotential Source { get; }

    /// <summary>The pumps of a result that have a feed; a column names its pump only where there are several.</summary>
    public static IEnumerable<WiredPump> Of(string name, OperatingResult result)
    {
        PumpResult[] wired = [.. result.Circuit.Pumps.Where(pump => pump.Pump.Feed is not null)];
        return wired.Select((pump, place) => new WiredPump(
            wired.Length == 1 ? name : $"{name}: {pump.Pump.Name}, {place + 1} of {wired.Length}", pump, pump.Pump.Feed!));
    }

    /// <summary>A figure of what is lost on the way, or that it cannot be said.</summary>
    public string Loss(Func<FeedResult, string> text) => _loss is null ? CircuitText.Unknown : text(_loss);
}
