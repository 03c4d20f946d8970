using FuelSizing.Equations;
using FuelSizing.Pumps;
using MathNet.Numerics.RootFinding;

namespace FuelSizing.Systems;

/// <summary>Where the pump's curve and the demand meet: who governs the rail, and at what pressure.</summary>
/// <param name="State">Who governs.</param>
/// <param name="RailGauge">Pa.</param>
/// <param name="AtSet">
/// What the pump delivers at the regulator's set pressure, m³/s: exactly, or the most or least it can be where the curve
/// ends before; null where the curve says nothing.
/// </param>
/// <param name="AtSetIsBound">True if <paramref name="AtSet"/> is the most or least it can be.</param>
/// <param name="Delivered">At the rail pressure found, m³/s; null where the curve says nothing.</param>
internal readonly record struct RailBalance(
    RailState State, double RailGauge, double? AtSet, bool AtSetIsBound, double? Delivered)
{
    /// <summary>Balances the pump against the demand.</summary>
    /// <param name="pump">Its curve.</param>
    /// <param name="set">What the regulator asks for, gauge, Pa.</param>
    /// <param name="injected">m³/s.</param>
    /// <param name="wanted">Injected flow with the reserve and the least return, m³/s.</param>
    /// <param name="minimumReturn">m³/s.</param>
    public static RailBalance Of(PumpCurve pump, double set, double injected, double wanted, double minimumReturn)
    {
        // A pump delivers no more at a higher pressure, so an end of its curve bounds what lies beyond it.
        (double? atSet, bool isBound) = pump.Flow switch
        {
            var curve when curve.Covers(set) => (curve.At(set), false),
            var curve when set > curve.Last && pump.EndsAtDeadhead => (0.0, false),
            var curve when set > curve.Last && curve.LastValue < wanted => (curve.LastValue, true),
            var curve when set < curve.First && curve.FirstValue >= wanted => (curve.FirstValue, true),
            _ => ((double?)null, false),
        };
        return atSet switch
        {
            null => new(RailState.NotCovered, set, null, false, null),
            { } flow when flow - injected >= minimumReturn && (!isBound || set < pump.Flow.First) =>
                new(RailState.Regulated, set, flow, isBound, flow),
            { } flow when flow >= injected && !isBound => new(RailState.AtRegulatorLimit, set, flow, false, flow),
            { } flow => Sag(pump, set, injected, flow, isBound),
        };
    }

    private static RailBalance Sag(PumpCurve pump, double set, double injected, double atSet, bool isBound)
    {
        double most = Math.Min(set, pump.Flow.Last);
        if (pump.Flow.FirstValue < injected)
        {
            return pump.Flow.First <= 0
                ? new(RailState.Starved, 0, atSet, isBound, pump.Flow.FirstValue)
                : new(RailState.NotCovered, set, atSet, isBound, null);
        }

        if (pump.Flow.At(most) >= injected)
        {
            // The curve ends above the demand but below the reserve: between its end and the set pressure all is open.
            return new(RailState.NotCovered, set, atSet, isBound, null);
        }

        // Both axes near one, since the root finder's accuracy is absolute.
        double rail = most * Brent.FindRoot(
            share => Reserve.Of<Real>(pump.Flow.At(share * most), injected), pump.Flow.First / most, 1, 1e-12, 200);
        return new(RailState.Sagging, rail, atSet, isBound, pump.Flow.At(rail));
    }
}
