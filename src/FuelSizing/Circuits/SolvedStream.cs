using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>A second stream at one boost and supply voltage, in SI numbers: its pump, its nozzles and what they pass.</summary>
/// <remarks>
/// Not a number is what is not known. What is held at the nozzles bounds the flow from above whatever the pump's data says. Where the pump cannot hold
/// that, or nothing is held, the pressure is where what the pump delivers is what the nozzles pass: one falls with pressure and the other grows.
/// </remarks>
internal sealed class SolvedStream
{
    private readonly SprayNozzles _nozzles;
    private readonly double _back;

    private SolvedStream(SecondStream stream, double boost, double supply, double kelvins)
    {
        Stream = stream;
        _nozzles = stream.Nozzles;
        Share = stream.ShareAt(boost);
        _back = BackPressure = _nozzles.SpraysInto == SprayPlace.Manifold ? boost : 0;
        Density = stream.Fluid.DensityAtKelvins(kelvins);
        double heavy = stream.Fluid.MaximumDensityAtKelvins(kelvins);
        Held = stream.HeldPressure?.Pascals ?? double.NaN;
        if (!Acts)
        {
            Pressure = LowestPressure = HighestPressure = double.NaN;
            return;
        }

        PumpBounds? pumps = stream.Pump?.Bounds(supply);
        double whole = stream.HeldPressure is null ? double.PositiveInfinity : Held;
        (Pressure, double estimate) = At(pumps?.Estimate, whole, Density, ends: true);
        (LowestPressure, double least) = At(pumps?.Lower, whole, Density, ends: false);
        (HighestPressure, double most) = At(pumps?.Upper, whole, Density, ends: false);
        double heaviest = heavy > Density ? At(pumps?.Upper, whole, heavy, ends: false).Flow : most;
        if (stream.HeldPressure is not null && double.IsNaN(most))
        {
            // Whatever the pump may do, no more passes than at the pressure that is held.
            (HighestPressure, most) = At(null, Held, Density, ends: false);
            heaviest = At(null, Held, heavy, ends: false).Flow;
        }

        Flow = Share * (Known(Pressure) ? estimate : double.NaN);
        MinimumFlow = Share * (double.IsNaN(least) || !Known(LowestPressure) ? 0 : least);
        double highest = Math.Max(HighestPressure - _back, _nozzles.MinimumPascals);
        MaximumFlow = Share * (Known(HighestPressure) ? most : _nozzles.FlowAt(highest, Density));
        MaximumMassFlow = Share * heavy * (Known(HighestPressure) ? heaviest : _nozzles.FlowAt(highest, heavy));
        if (pumps is not null && stream.HeldPressure is not null)
        {
            Required = Share * _nozzles.FlowAt(Held - _back, Density);
            MinimumDelivered = pumps.Lower.UncoveredAt(pumps.Lower.FlowAt(Held), Held, ends: false).HasFlag(PumpCoverage.VoltageBelow) ? double.NaN : pumps.Lower.FlowAt(Held);
            MaximumDelivered = pumps.Upper.UncoveredAt(pumps.Upper.FlowAt(Held), Held, ends: false) != PumpCoverage.Measured ? double.NaN : pumps.Upper.FlowAt(Held);
        }
    }

    /// <summary>What was solved.</summary>
    public SecondStream Stream { get; }

    /// <summary>Share of the whole stream that flows.</summary>
    public double Share { get; }

    /// <summary>True where it flows.</summary>
    public bool Acts => Share > 0;

    /// <summary>In what the nozzles spray into, gauge, Pa.</summary>
    public double BackPressure { get; }

    /// <summary>Held at the nozzles, gauge, Pa; not a number where nothing is.</summary>
    public double Held { get; }

    /// <summary>At the nozzles with the whole stream flowing, gauge, Pa; not a number where it is not known.</summary>
    public double Pressure { get; }

    /// <summary>The least that it can be; not a number where it is not known.</summary>
    public double LowestPressure { get; }

    /// <summary>The most that it can be; not a number where it is not known.</summary>
    public double HighestPressure { get; }

    /// <summary>Of the liquid, kg/m³; of an unmeasured mixture the least that it can be.</summary>
    public double Density { get; }

    /// <summary>Of the liquid, m³/s; not a number where it is not known.</summary>
    public double Flow { get; }

    /// <summary>The least that it can be.</summary>
    public double MinimumFlow { get; }

    /// <summary>The most that it can be; not a number where it is not known.</summary>
    public double MaximumFlow { get; }

    /// <summary>Of the liquid, kg/s; not a number where it is not known.</summary>
    public double MassFlow => Flow * Density;

    /// <summary>The least that it can be, kg/s.</summary>
    public double MinimumMassFlow => MinimumFlow * Density;

    /// <summary>The most that it can be, kg/s; not a number where it is not known.</summary>
    public double MaximumMassFlow { get; }

    /// <summary>What the nozzles pass at the pressure that is held, m³/s; not a number without a pump, or where none is held.</summary>
    public double Required { get; } = double.NaN;

    /// <summary>The least that the pump delivers against that pressure, m³/s; not a number where it is not known.</summary>
    public double MinimumDelivered { get; } = double.NaN;

    /// <summary>The most that it may deliver there, m³/s; not a number where it is not known.</summary>
    public double MaximumDelivered { get; } = double.NaN;

    /// <summary>Solves a stream.</summary>
    /// <param name="stream">That is described.</param>
    /// <param name="boost">Pa.</param>
    /// <param name="supply">V.</param>
    /// <param name="kelvins">Of the liquid, K.</param>
    public static SolvedStream Of(SecondStream stream, double boost, double supply, double kelvins) => new(stream, boost, supply, kelvins);

    /// <summary>True if the nozzles' flow is known with a pressure at them: none at all, or enough of it.</summary>
    private bool Known(double pressure) => pressure - _back <= 0 || pressure - _back >= _nozzles.MinimumPascals;

    /// <summary>Pressure at the nozzles, Pa, and the flow of the whole stream, m³/s; not a number where the pump's data does not cover it.</summary>
    private (double Pressure, double Flow) At(RunningPumps? pumps, double held, double density, bool ends)
    {
        if (pumps is null)
        {
            return (held, _nozzles.FlowAt(held - _back, density));
        }

        double wanted = double.IsFinite(held) ? _nozzles.FlowAt(held - _back, density) : double.PositiveInfinity;
        if (double.IsFinite(held) && pumps.FlowAt(held) is var delivered && delivered >= wanted)
        {
            return Covered(pumps, delivered, held, ends: false) ? (held, wanted) : (double.NaN, double.NaN);
        }

        // The nozzles take no more than a pump leaves them: its pressure falls until both agree.
        double highest = Math.Min(held, pumps.Deadhead);
        if (!(highest > _back))
        {
            return Covered(pumps, 0, highest, ends) ? (highest, 0) : (double.NaN, double.NaN);
        }

        double scale = pumps.FreeFlow;
        double pressure = highest * Bracket.Of(new Excess(this, pumps, highest, scale, density), Math.Max(0, _back) / highest, 1);
        double flow = _nozzles.FlowAt(pressure - _back, density);
        return Covered(pumps, flow, pressure, ends) ? (pressure, flow) : (double.NaN, double.NaN);
    }

    private static bool Covered(RunningPumps pumps, double flow, double rise, bool ends) => pumps.UncoveredAt(flow, rise, ends) == PumpCoverage.Measured;

    private readonly struct Excess(SolvedStream stream, RunningPumps pumps, double highest, double scale, double density) : IFalling
    {
        public double At(double x) => (pumps.FlowAt(x * highest) - stream._nozzles.FlowAt((x * highest) - stream._back, density)) / scale;
    }
}
