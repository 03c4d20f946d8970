using FuelSizing.Circuits;
using FuelSizing.Pumps;

namespace FuelSizing.Points;

/// <summary>Pumps, lines and regulator at the demand of one point, in SI numbers: the injectors take no part in it.</summary>
internal readonly record struct SolvedCircuit
{
    /// <summary>The circuit that was solved.</summary>
    public required CircuitTask Task { get; init; }

    /// <summary>Where it settles.</summary>
    public required CircuitState State { get; init; }

    /// <summary>Each pump where it runs.</summary>
    public required PumpPoint[] Pumps { get; init; }

    /// <summary>Flow required of the pumps: injected, its reserve and the regulator's minimum return, m³/s.</summary>
    public required double Required { get; init; }

    /// <summary>Lower bound of what may be injected with the pumps' reserve kept, m³/s.</summary>
    public required double MinimumInjectable { get; init; }

    /// <summary>Upper bound of it, m³/s; the same where data covers the point.</summary>
    public required double MaximumInjectable { get; init; }

    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public double RailSet => Task.Set;

    /// <summary>In the rail, gauge, Pa; as set where the pumps' data does not cover the point.</summary>
    public double Rail => State.RailOr(Task.Set);

    /// <summary>True where the pumps do not bring the rail to its set pressure.</summary>
    public bool Sags => State.State is RailState.Sagging or RailState.Starved;

    /// <summary>False where the pumps' data does not cover the point.</summary>
    public bool IsCovered => State.State != RailState.NotCovered;

    /// <summary>The pump whose curves give no data on the low side (voltage, or pressure below the first point), if any.</summary>
    public PumpPoint? Uncovered
    {
        get
        {
            foreach (PumpPoint point in Pumps)
            {
                if ((point.Coverage & (PumpCoverage.VoltageBelow | PumpCoverage.PressureBelow)) != 0)
                {
                    return point;
                }
            }

            return null;
        }
    }

    /// <summary>The pump whose wire is nearest to its ampacity; its pump is none where no ampacity is known.</summary>
    public PumpPoint HottestWire => Heaviest(point => point.Pump.Feed?.AmpacityAmperes ?? double.NaN);

    /// <summary>The pump whose fuse is loaded most for its rating; its pump is none where no fuse is given.</summary>
    public PumpPoint HeaviestLoadedFuse => Heaviest(point => point.Pump.Feed?.Fuse?.Amperes ?? double.NaN);

    /// <summary>The wired pump with the lowest voltage at its motor; its pump is none where no pump has wiring.</summary>
    public PumpPoint LowestFed
    {
        get
        {
            PumpPoint lowest = default;
            foreach (PumpPoint point in Pumps)
            {
                if (point.Pump.Feed is not null && (lowest.Pump is null || point.Voltage < lowest.Voltage))
                {
                    lowest = point;
                }
            }

            return lowest;
        }
    }

    private PumpPoint Heaviest(Func<PumpPoint, double> limit)
    {
        PumpPoint heaviest = default;
        double share = double.NegativeInfinity;
        foreach (PumpPoint point in Pumps)
        {
            if ((point.Current ?? double.NaN) / limit(point) is var load && load > share)
            {
                (heaviest, share) = (point, load);
            }
        }

        return heaviest;
    }
}
