using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;

namespace FuelSizing.Findings;

/// <summary>Which parts of a next stage are those that a run has measured, and the stage with what was found of them.</summary>
/// <remarks>
/// The engine is always the same: what was found of its air and BSFC goes by its ratio to the plan. A pump is the same where curves and
/// condition are the plan's, as many as the plan has; injectors, regulator and filters where they are equal.
/// </remarks>
internal sealed class MeasuredCar
{
    private readonly FuelSystem _plan;
    private readonly bool[] _pumps;

    public MeasuredCar(FuelSystem plan, FuelSystem next)
    {
        (_plan, Next) = (plan, next);
        List<Pump> measured = [.. plan.Pump.Pumps];
        _pumps = [.. next.Pump.Pumps.Select(pump => measured.FindIndex(other => IsSame(pump, other)) is var at and >= 0 && Taken(measured, at))];
        HasPump = Array.Exists(_pumps, same => same);
        HasFeed = plan.Pump is Pump { Feed: { } feed } && next.Pump.Pumps.Where((_, i) => _pumps[i]).All(pump => pump.Feed == feed) && HasPump;
        HasRegulator = next.Regulator == plan.Regulator;
        HasUnit = HasRegulator && plan.Regulator is RisingRate or RegulatorSeries;
        HasInjectors = next.Injectors == plan.Injectors;
        Filter[] filters = [.. FiltersOf(plan)];
        HasFilters = filters.Length > 0 && filters.SequenceEqual(FiltersOf(next));
    }

    /// <summary>The next stage as described.</summary>
    public FuelSystem Next { get; }

    /// <summary>True if a pump that was measured is in it.</summary>
    public bool HasPump { get; }

    /// <summary>True if that pump has its feed still.</summary>
    public bool HasFeed { get; }

    /// <summary>True if the regulator is the one that was measured.</summary>
    public bool HasRegulator { get; }

    /// <summary>True if it is, and has a gain and an onset of its own.</summary>
    public bool HasUnit { get; }

    /// <summary>True if the injectors are those that were measured.</summary>
    public bool HasInjectors { get; }

    /// <summary>True if the filters are those that were measured.</summary>
    public bool HasFilters { get; }

    /// <summary>The pumps of a system like the next stage, those that were measured passing a multiple of their flow.</summary>
    public FuelSystem Pumping(FuelSystem system, double factor) => system.With(Each(system.Pump, pump => pump.Worn(factor)));

    /// <summary>The same with so many Ω more in their feed.</summary>
    public FuelSystem Fed(FuelSystem system, double ohms) =>
        system.With(Each(system.Pump, pump => pump.Feed is { } feed ? pump.WithFeed(feed.Plus(ohms)) : pump));

    /// <summary>The filters with so many times a new one's loss more.</summary>
    public static FuelSystem Filtering(FuelSystem system, double times)
    {
        IFlowLoss[] Found(IReadOnlyList<IFlowLoss> path) => [.. path.Select(part => part is Filter filter ? filter.Found(times) : part)];
        Plumbing plumbing = system.Plumbing;
        return system.With(plumbing.With(Found(plumbing.Suction), Found(plumbing.Supply), plumbing.ReturnLine));
    }

    /// <summary>The regulator off by so much.</summary>
    public static FuelSystem Regulating(FuelSystem system, double offBase, double offGain, double offOnset) =>
        system.With(system.Regulator.Found(offBase, offGain, offOnset));

    /// <summary>True if a table is the plan's times a factor other than 1, which it says.</summary>
    public bool IsScaledAir(out double factor)
    {
        (double X, double Y)[] planned = [.. _plan.Demand.VolumetricEfficiency.BySpeed.Points];
        (double X, double Y)[] next = [.. Next.Demand.VolumetricEfficiency.BySpeed.Points];
        factor = planned.Length == next.Length ? next[0].Y / planned[0].Y : 1;
        double found = factor;
        return Differs(factor)
            && planned.Zip(next).All(pair => Alike(pair.First.X, pair.Second.X) && Alike(pair.First.Y * found, pair.Second.Y));
    }

    /// <summary>BSFC over the plan's, by brake efficiency where the fuel is another.</summary>
    public double BrakeConsumptionFactor
    {
        get
        {
            (FuelConsumption next, FuelConsumption planned) = (Next.Demand.Consumption, _plan.Demand.Consumption);
            return next.Fuel == planned.Fuel
                ? next.BrakeSpecificFuelConsumption / planned.BrakeSpecificFuelConsumption
                : planned.BrakeEfficiency / next.BrakeEfficiency;
        }
    }

    /// <summary>True if fuel and so BSFC can be compared with the plan's.</summary>
    public bool HasFuel => Next.Demand.Consumption.Fuel == _plan.Demand.Consumption.Fuel;

    /// <summary>True if a pump of the plan stands in the next stage with its flow times this factor.</summary>
    public bool HasWorn(double factor) =>
        Differs(factor) && Next.Pump.Pumps.Any(pump => _plan.Pump.Pumps.Any(
            other => pump.Curves.SequenceEqual(other.Curves)
                && Alike(pump.Condition.DecimalFractions, other.Condition.DecimalFractions * factor)));

    /// <summary>True of a factor that changes something.</summary>
    public static bool Differs(double factor) => !Alike(factor, 1);

    /// <summary>True of numbers that are one but for rounding.</summary>
    public static bool Alike(double first, double other) => Math.Abs(first - other) <= 1e-9 * Math.Abs(other);

    private PumpAssembly Each(PumpAssembly pumps, Func<Pump, Pump> change)
    {
        int leaf = 0;
        return pumps.WithEach(part => _pumps[leaf++] ? part.WithPumps(change) : part);
    }

    private static bool IsSame(Pump pump, Pump other) =>
        pump.Curves.SequenceEqual(other.Curves) && pump.Relief?.Pascals == other.Relief?.Pascals && Alike(pump.Condition.DecimalFractions, other.Condition.DecimalFractions);

    private static bool Taken(List<Pump> measured, int at)
    {
        measured.RemoveAt(at);
        return true;
    }

    private static IEnumerable<Filter> FiltersOf(FuelSystem system) =>
        system.Plumbing.Suction.Concat(system.Plumbing.Supply).OfType<Filter>();
}
