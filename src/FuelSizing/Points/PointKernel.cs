using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Regulators;

namespace FuelSizing.Points;

/// <summary>The open-form chain of a parts over columns of numbers: one text for every width of vector.</summary>
internal sealed class PointKernel
{
    // The widest vector.
    private const int MaximumLanes = 8;

    // Points that pass through the chain together.
    private const int Block = 256;

    // As in Curve: the same end reached by other arithmetic may differ in the last digit.
    private const double EndTolerance = Curve.EndTolerance;

    private static readonly (double Minimum, double Maximum) Lambdas = (0.6, 1.2);
    private static readonly (double Minimum, double Maximum) Voltages = (6, 20);

    private readonly SystemParts _parts;
    private readonly Curve _efficiency;
    private readonly Curve _power;
    private readonly DemandBasis _basis;
    private readonly (RailSetting Setting, double Offset)[] _regulators;
    private readonly DeadTimeTable _deadTimes;
    private readonly DeadTimeRow? _deadTime;
    private readonly bool _losesAhead;
    private readonly double _ambient;
    private readonly double _ambientTemperature;
    private readonly double _density;
    private readonly double _viscosity;
    private readonly double _supply;
    private readonly double _dutyLimit;
    private readonly double _minimumDifferential;
    private readonly (double Minimum, double Maximum) _speeds;
    private readonly (double Minimum, double Maximum) _boosts;
    private object? _chain;

    /// <summary>Works out what all points have in common.</summary>
    public PointKernel(SystemParts parts, Conditions conditions)
    {
        FuelDemandModel demand = parts.Demand;
        if (demand.AlongSpeed is { } changing)
        {
            throw new ArgumentException(
                $"system has figures {changing}, which a batch does not carry. Solve its points one by one, or sweep it.", nameof(parts));
        }

        if (demand.Law is { } law)
        {
            throw new ArgumentException(
                $"system has a fuel demand by a law of its own ({law.Text}), which a batch does not carry. Solve its points one by one, or sweep it.", nameof(parts));
        }

        if (parts.Regulator.IsByLaw)
        {
            throw new ArgumentException(
                $"system has a regulator by a law of its own ({parts.Regulator.Description}), which a batch does not carry. Solve its points one by one, or sweep it.", nameof(parts));
        }

        if (parts.Regulator.ChangesWithFlow)
        {
            throw new ArgumentException(
                $"system has a regulator whose pressure changes with what returns through it ({parts.Regulator.Description}), which a batch does not carry. Solve its points one by one, or sweep it.",
                nameof(parts));
        }

        if (parts.StagedInjectors is { } staged)
        {
            throw new ArgumentException(
                $"system has a secondary set of injectors ({staged}), which a batch does not carry. Solve its points one by one, or sweep it.",
                nameof(parts));
        }

        if (parts.SecondStream is { } stream && (stream.TakesBack || stream.EvaporatedShare.DecimalFractions > 0))
        {
            throw new ArgumentException(
                $"system has a second stream, {stream.Name}, that changes what main fuel is injected, which a batch does not carry. Solve its points one by one, or sweep it; or evaluate FuelSystem.WithoutSecondStream.",
                nameof(parts));
        }

        _parts = parts;
        _efficiency = demand.VolumetricEfficiency.BySpeed;
        _power = demand.MeasuredPower.BySpeed;
        _basis = demand.Basis;
        _regulators = [.. Singles(parts.Regulator, 0)];
        _deadTimes = parts.Injectors.Injector.DeadTime;
        _deadTime = _deadTimes.RowAt(conditions.SupplyVolts);
        _losesAhead = parts is { Layout: LineLayout.Returnless, Regulator: not ElectronicReturnless, Plumbing.Supply.Count: > 0 };
        _ambient = conditions.Atmosphere.Pascals;
        _ambientTemperature = conditions.Atmosphere.Kelvins;
        _density = demand.Consumption.Fuel.DensityAtKelvins(conditions.FuelKelvins);
        _supply = conditions.SupplyVolts;
        _viscosity = parts.NeedsViscosity ? demand.Consumption.Fuel.KinematicViscosityAtKelvins(conditions.ColdestKelvins) : 0;
        _dutyLimit = parts.Limits.DutyCycle.DecimalFractions;
        _minimumDifferential = parts.Injectors.Injector.MinimumPascals;
        _speeds = Widened(
            Math.Max(EngineSpeed.Minimum, Math.Max(_efficiency.First, _power.First)),
            Math.Min(demand.Engine.SpeedLimit.RevolutionsPerSecond, Math.Min(_efficiency.Last, _power.Last)));
        _boosts = Widened(
            Math.Max(ManifoldPressure.Minimum.Pascals, ManifoldPressure.MinimumAbsolute.Pascals - _ambient),
            demand.Induction.Drive == CompressorDrive.None ? 0 : ManifoldPressure.Maximum.Pascals);
        if (_speeds.Minimum > _speeds.Maximum)
        {
            throw new ArgumentException(
                "system has tables of volumetric efficiency and power without a speed in common. Extend them by measured points.",
                nameof(parts));
        }
    }

    /// <summary>Evaluates points; the place of the first that is out of range, −1 if there is none.</summary>
    /// <remarks>
    /// A block at a time passes through the chain step by step: each step is a short loop that the compiler keeps in
    /// registers, and a block between two steps stays in the processor's first cache. Steps are not inlined into one
    /// another's caller, since the compiler inlines only so much into one method and would stop within them.
    /// </remarks>
    [SkipLocalsInit]
    public int Evaluate<T>(in PointColumns columns)
        where T : struct, ILanes<T>, IReal<T>
    {
        Chain<T> chain = ChainOf<T>();
        Span<double> room = stackalloc double[(Scratch.Columns * Block) + MaximumLanes];
        Scratch scratch = new(FromCacheLine(room)[..(Scratch.Columns * Block)]);
        int points = columns.Inputs.Speed.Length;
        int whole = points - (points % T.Count);
        for (int from = 0; from < whole; from += Block)
        {
            int count = Math.Min(Block, whole - from);
            if (!Evaluate(chain, columns.Slice(from, count), scratch.Slice(count)))
            {
                return FirstRefused(columns.Inputs, from);
            }
        }

        return whole < points ? Rest<T>(chain, columns, whole, scratch.Slice(T.Count)) : -1;
    }

    /// <summary>The exception for a point that is out of range.</summary>
    public ArgumentOutOfRangeException Refusal(in PointInputs inputs, int at)
    {
        string place = string.Create(CultureInfo.InvariantCulture, $" (place {at})");
        double speed = inputs.Speed[at];
        if (!Within(speed, _speeds))
        {
            return Guard.OutOfRange(
                nameof(inputs),
                Number(speed, "rev/s") + $" of {nameof(inputs.Speed)}" + place,
                $"between {Number(_speeds.Minimum, "rev/s")} and {Number(_speeds.Maximum, "rev/s")}",
                "Give rev/min ÷ 60, within the engine's tables and limit.");
        }

        double boost = inputs.Boost[at];
        if (!Within(boost, _boosts))
        {
            return Guard.OutOfRange(
                nameof(inputs),
                Number(boost, "Pa") + $" of {nameof(inputs.Boost)}" + place,
                $"between {Number(_boosts.Minimum, "Pa")} and {Number(_boosts.Maximum, "Pa")}",
                "Give gauge pressure in the manifold.");
        }

        return inputs.Lambda.Length > 0 && !Within(inputs.Lambda[at], Lambdas)
            ? Guard.OutOfRange(
                nameof(inputs),
                Number(inputs.Lambda[at], "air–fuel ratio ÷ stoichiometric") + $" of {nameof(inputs.Lambda)}" + place,
                "between 0.6 and 1.2",
                "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.")
            : Guard.OutOfRange(
                nameof(inputs),
                Number(inputs.SupplyVoltage[at], "V") + $" of {nameof(inputs.SupplyVoltage)}" + place,
                "between 6 V and 20 V",
                "Give the voltage at the injectors.");
    }

    /// <summary>Every single regulator of a row, and how far it is off: an offset of a pair moves both alike.</summary>
    private static IEnumerable<(RailSetting Setting, double Offset)> Singles(PressureRegulator regulator, double offset)
    {
        double sum = regulator.OffsetPascals + offset;
        return regulator is RegulatorSeries pair
            ? Singles(pair.BaseRegulator, sum).Concat(Singles(pair.Unit, sum))
            : [(regulator.Setting!.Value, sum)];
    }

    /// <summary>
    /// The span from its first whole cache line on: a vector as wide as a line that lies across two is read in two goes.
    /// </summary>
    private static unsafe Span<double> FromCacheLine(Span<double> room)
    {
        const int Line = MaximumLanes * sizeof(double);
        nuint past = (nuint)Unsafe.AsPointer(ref MemoryMarshal.GetReference(room)) % Line;
        return room[(int)((Line - past) % Line / sizeof(double))..];
    }

    private static (double Minimum, double Maximum) Widened(double minimum, double maximum) =>
        (minimum - (EndTolerance * Math.Abs(minimum)), maximum + (EndTolerance * Math.Abs(maximum)));

    private static bool Within(double value, (double Minimum, double Maximum) range) =>
        value >= range.Minimum && value <= range.Maximum;

    private static string Number(double value, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:G6} {unit}").Replace("-", "−", StringComparison.Ordinal);

    private int FirstRefused(in PointInputs inputs, int from)
    {
        int at = from;
        while (Within(inputs.Speed[at], _speeds)
            && Within(inputs.Boost[at], _boosts)
            && (inputs.Lambda.Length == 0 || Within(inputs.Lambda[at], Lambdas))
            && (inputs.SupplyVoltage.Length == 0 || Within(inputs.SupplyVoltage[at], Voltages)))
        {
            at++;
        }

        return at;
    }

    /// <summary>The last points, too few to fill a vector: the last of them fills the lanes left over.</summary>
    private int Rest<T>(Chain<T> chain, in PointColumns columns, int from, in Scratch scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        Span<double> padded = stackalloc double[12 * MaximumLanes];
        PointInputs inputs = new()
        {
            Speed = Padded(columns.Inputs.Speed, from, padded[..MaximumLanes]),
            Boost = Padded(columns.Inputs.Boost, from, padded.Slice(MaximumLanes, MaximumLanes)),
            Lambda = Padded(columns.Inputs.Lambda, from, padded.Slice(2 * MaximumLanes, MaximumLanes)),
            SupplyVoltage = Padded(columns.Inputs.SupplyVoltage, from, padded.Slice(3 * MaximumLanes, MaximumLanes)),
        };
        PointOutputs outputs = new()
        {
            RailGauge = padded.Slice(4 * MaximumLanes, MaximumLanes),
            Differential = padded.Slice(5 * MaximumLanes, MaximumLanes),
            FuelFlow = padded.Slice(6 * MaximumLanes, MaximumLanes),
            StaticFlow = padded.Slice(7 * MaximumLanes, MaximumLanes),
            Pulse = padded.Slice(8 * MaximumLanes, MaximumLanes),
            DutyCycle = padded.Slice(9 * MaximumLanes, MaximumLanes),
            InjectorReserve = padded.Slice(10 * MaximumLanes, MaximumLanes),
            PumpReserve = columns.Outputs.PumpReserve.IsEmpty ? default : padded.Slice(11 * MaximumLanes, MaximumLanes),
        };
        if (!Evaluate(chain, new PointColumns(inputs, outputs).Slice(0, T.Count), scratch))
        {
            return FirstRefused(columns.Inputs, from);
        }

        CopyPadded(outputs.RailGauge, columns.Outputs.RailGauge, from);
        CopyPadded(outputs.Differential, columns.Outputs.Differential, from);
        CopyPadded(outputs.FuelFlow, columns.Outputs.FuelFlow, from);
        CopyPadded(outputs.StaticFlow, columns.Outputs.StaticFlow, from);
        CopyPadded(outputs.Pulse, columns.Outputs.Pulse, from);
        CopyPadded(outputs.DutyCycle, columns.Outputs.DutyCycle, from);
        CopyPadded(outputs.PumpReserve, columns.Outputs.PumpReserve, from);
        CopyPadded(outputs.InjectorReserve, columns.Outputs.InjectorReserve, from);
        return -1;
    }

    private static ReadOnlySpan<double> Padded(ReadOnlySpan<double> column, int from, Span<double> room)
    {
        if (column.IsEmpty)
        {
            return default;
        }

        column[from..].CopyTo(room);
        room[(column.Length - from)..].Fill(column[^1]);
        return room;
    }

    private static void CopyPadded(ReadOnlySpan<double> room, Span<double> column, int from)
    {
        if (!column.IsEmpty)
        {
            room[..(column.Length - from)].CopyTo(column[from..]);
        }
    }

    /// <summary>Evaluates a block of points, a whole number of vectors; false if one of them is out of range.</summary>
    private bool Evaluate<T>(Chain<T> chain, in PointColumns columns, in Scratch scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        PointInputs inputs = columns.Inputs;
        PointOutputs outputs = columns.Outputs;
        if (!AllWithin<T>(inputs.Speed, _speeds)
            || !AllWithin<T>(inputs.Boost, _boosts)
            || !AllWithin<T>(inputs.Lambda, Lambdas)
            || !AllWithin<T>(inputs.SupplyVoltage, Voltages))
        {
            return false;
        }

        Span<double> fuel = outputs.FuelFlow.IsEmpty ? scratch.Fuel : outputs.FuelFlow;
        Span<double> rail = outputs.RailGauge.IsEmpty ? scratch.Rail : outputs.RailGauge;
        Span<double> differential = outputs.Differential.IsEmpty ? scratch.Differential : outputs.Differential;
        _efficiency.At<T>(inputs.Speed, scratch.Efficiency);
        _power.At<T>(inputs.Speed, scratch.Power);
        Charge(chain, inputs.Boost, scratch.Outlet, scratch.Charge);
        Burn(chain, inputs, scratch, fuel);
        Rail<T>(inputs.Boost, rail);
        if (_losesAhead)
        {
            LoseAhead(fuel, rail);
        }

        Differential<T>(inputs.Boost, rail, differential);
        if (inputs.SupplyVoltage.IsEmpty)
        {
            DeadTime<T>(differential, scratch.DeadTime);
        }
        else
        {
            DeadTime(inputs.SupplyVoltage, differential, scratch.DeadTime);
        }

        Injection(chain, inputs.Speed, fuel, differential, scratch.DeadTime, outputs);
        if (!outputs.PumpReserve.IsEmpty)
        {
            Pumps(inputs, fuel, outputs.PumpReserve);
        }

        if (!outputs.InjectorReserve.IsEmpty)
        {
            Reserves(chain, inputs.Speed, fuel, differential, scratch.DeadTime, outputs.InjectorReserve);
        }

        return true;
    }

    private static bool AllWithin<T>(ReadOnlySpan<double> column, (double Minimum, double Maximum) range)
        where T : struct, ILanes<T>, IReal<T>
    {
        T minimum = range.Minimum;
        T maximum = range.Maximum;
        for (int at = 0; at < column.Length; at += T.Count)
        {
            if (!T.AllWithin(T.From(column[at..]), minimum, maximum))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Charge<T>(Chain<T> chain, ReadOnlySpan<double> boosts, Span<double> outlets, Span<double> charges)
        where T : struct, ILanes<T>, IReal<T>
    {
        DemandConstants<T> engine = chain.Engine;
        Divisor<T> ambient = _ambient;
        T temperature = _ambientTemperature;
        for (int at = 0; at < boosts.Length; at += T.Count)
        {
            DemandChain.PressureRatio(engine, ambient.Value + T.From(boosts[at..]), ambient).CopyTo(outlets[at..]);
        }

        Compression.IsentropicRatios<T>(outlets);
        for (int at = 0; at < boosts.Length; at += T.Count)
        {
            (T outlet, T charge) = DemandChain.Temperatures(engine, T.From(outlets[at..]), temperature);
            outlet.CopyTo(outlets[at..]);
            charge.CopyTo(charges[at..]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Burn<T>(Chain<T> chain, in PointInputs inputs, in Scratch scratch, Span<double> fuel)
        where T : struct, ILanes<T>, IReal<T>
    {
        DemandConstants<T> engine = chain.Engine;
        ReadOnlySpan<double> speeds = inputs.Speed;
        ReadOnlySpan<double> boosts = inputs.Boost;
        ReadOnlySpan<double> lambdas = inputs.Lambda;
        ReadOnlySpan<double> efficiencies = scratch.Efficiency;
        ReadOnlySpan<double> powers = scratch.Power;
        ReadOnlySpan<double> outlets = scratch.Outlet;
        ReadOnlySpan<double> charges = scratch.Charge;
        DemandBasis basis = _basis;
        T ambient = _ambient;
        T temperature = _ambientTemperature;
        Divisor<T> density = _density;
        T stoichiometric = _parts.Demand.Consumption.Fuel.AirFuelRatio;
        for (int at = 0; at < speeds.Length; at += T.Count)
        {
            if (!lambdas.IsEmpty)
            {
                engine = engine with { AirFuelRatio = Combustion.AirFuelRatio(T.From(lambdas[at..]), stoichiometric) };
            }

            T boost = T.From(boosts[at..]);
            BurningState<T> burning = DemandChain.Burn(
                engine,
                new DemandInput<T>(
                    T.From(speeds[at..]), boost, ambient, temperature, T.From(efficiencies[at..]), T.From(powers[at..])),
                ambient + boost,
                T.From(outlets[at..]),
                T.From(charges[at..]));
            T mass = basis == DemandBasis.Air ? burning.FromAir
                : basis == DemandBasis.Power ? burning.FromPower
                : T.Max(burning.FromAir, burning.FromPower);
            FuelDemandFlow.Volume(mass, density).CopyTo(fuel[at..]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Rail<T>(ReadOnlySpan<double> boosts, Span<double> rail)
        where T : struct, ILanes<T>, IReal<T>
    {
        (RailSetting first, double offset) = _regulators[0];
        for (int at = 0; at < boosts.Length; at += T.Count)
        {
            (first.At(T.From(boosts[at..])) + offset).CopyTo(rail[at..]);
        }

        foreach ((RailSetting behind, double more) in _regulators.AsSpan(1))
        {
            for (int at = 0; at < boosts.Length; at += T.Count)
            {
                T other = behind.At(T.From(boosts[at..])) + more;
                RailPressure.InSeries(T.From(rail[at..]), other).CopyTo(rail[at..]);
            }
        }
    }

    /// <summary>Takes off what is lost between a regulator at the tank and the rail, Pa.</summary>
    private void LoseAhead(ReadOnlySpan<double> fuel, Span<double> rail)
    {
        for (int at = 0; at < fuel.Length; at++)
        {
            rail[at] -= PathLoss.Of(_parts.Plumbing.Supply, fuel[at], _density, _viscosity);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Differential<T>(ReadOnlySpan<double> boosts, ReadOnlySpan<double> rail, Span<double> differential)
        where T : struct, ILanes<T>, IReal<T>
    {
        T ambient = _ambient;
        for (int at = 0; at < boosts.Length; at += T.Count)
        {
            RailPressure.Differential(T.From(rail[at..]), ambient, ambient + T.From(boosts[at..])).CopyTo(differential[at..]);
        }
    }

    private void DeadTime<T>(ReadOnlySpan<double> differential, Span<double> times)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (_deadTime is null)
        {
            times.Fill(double.NaN);
            return;
        }

        _deadTime.At<T>(differential, times);
    }

    private void DeadTime(ReadOnlySpan<double> volts, ReadOnlySpan<double> differential, Span<double> times)
    {
        for (int at = 0; at < volts.Length; at++)
        {
            times[at] = _deadTimes.TryAt(volts[at], differential[at], out double seconds) ? seconds : double.NaN;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Injection<T>(
        Chain<T> chain,
        ReadOnlySpan<double> speeds,
        ReadOnlySpan<double> fuels,
        ReadOnlySpan<double> differential,
        ReadOnlySpan<double> deadTimes,
        in PointOutputs outputs)
        where T : struct, ILanes<T>, IReal<T>
    {
        InjectionConstants<T> injectors = chain.Injectors;
        Divisor<T> density = _density;
        T none = double.NaN;
        T minimum = _minimumDifferential;
        bool isMeasured = _parts.Injectors.Injector.MeasuredFlows.Count > 0;
        Span<double> flows = outputs.StaticFlow;
        Span<double> pulses = outputs.Pulse;
        Span<double> duties = outputs.DutyCycle;
        for (int at = 0; at < speeds.Length; at += T.Count)
        {
            T fuel = T.From(fuels[at..]);
            T deadTime = T.From(deadTimes[at..]);
            T across = T.From(differential[at..]);
            InjectionState<T> injection = InjectionChain.Evaluate(
                isMeasured ? injectors with { RatedFlow = _parts.Injectors.Injector.RatingAt(across) } : injectors, new InjectionInput<T>(T.From(speeds[at..]), across, deadTime, fuel, density));
            T flow = KnownFlow.Of(injection.StaticFlow, across, minimum);
            if (!flows.IsEmpty)
            {
                flow.CopyTo(flows[at..]);
            }

            if (!pulses.IsEmpty)
            {
                T.IfLess(0, flow, injection.Pulse, none).CopyTo(pulses[at..]);
            }

            if (!duties.IsEmpty)
            {
                T.IfLess(0, flow, injection.DutyCycle, none).CopyTo(duties[at..]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Reserves<T>(
        Chain<T> chain,
        ReadOnlySpan<double> speeds,
        ReadOnlySpan<double> fuels,
        ReadOnlySpan<double> differential,
        ReadOnlySpan<double> deadTimes,
        Span<double> reserves)
        where T : struct, ILanes<T>, IReal<T>
    {
        InjectionConstants<T> injectors = chain.Injectors;
        Divisor<T> density = _density;
        T limit = _dutyLimit;
        T minimum = _minimumDifferential;
        bool isMeasured = _parts.Injectors.Injector.MeasuredFlows.Count > 0;
        for (int at = 0; at < speeds.Length; at += T.Count)
        {
            T fuel = T.From(fuels[at..]);
            T deadTime = T.From(deadTimes[at..]);
            T across = T.From(differential[at..]);
            InjectionState<T> injection = InjectionChain.Evaluate(
                isMeasured ? injectors with { RatedFlow = _parts.Injectors.Injector.RatingAt(across) } : injectors, new InjectionInput<T>(T.From(speeds[at..]), across, deadTime, fuel, density));
            T capacity = InjectorFlow.Capacity(
                KnownFlow.Of(injection.StaticFlow, across, minimum), injectors.Count.Value, injection.AvailableTime, limit, deadTime);
            T.IfLess(0, across, Reserve.Of(capacity, fuel), -1).CopyTo(reserves[at..]);
        }
    }

    /// <summary>What the pumps have left at each point: pumps, lines and wiring are solved one point at a time.</summary>
    private void Pumps(in PointInputs inputs, ReadOnlySpan<double> fuel, Span<double> reserves)
    {
        for (int at = 0; at < fuel.Length; at++)
        {
            reserves[at] = _parts.PumpReserveAt(
                inputs.SupplyVoltage.IsEmpty ? _supply : inputs.SupplyVoltage[at], inputs.Boost[at], fuel[at], _density, _viscosity);
        }
    }

    // Two threads may both make one; they are the same.
    private Chain<T> ChainOf<T>()
        where T : struct, ILanes<T>
    {
        if (_chain is not Chain<T> chain)
        {
            _chain = chain = new(this);
        }

        return chain;
    }

    /// <summary>What does not change from point to point, the same in every lane.</summary>
    private sealed class Chain<T>(PointKernel kernel)
        where T : struct, ILanes<T>
    {
        public readonly DemandConstants<T> Engine = kernel._parts.Demand.ConstantsOf<T>();

        public readonly InjectionConstants<T> Injectors = kernel._parts.InjectionOf<T>();
    }

    /// <summary>Room for what one step hands to the next.</summary>
    private readonly ref struct Scratch(Span<double> room)
    {
        public const int Columns = 8;

        private readonly Span<double> _room = room;

        public Span<double> Efficiency => Column(0);

        public Span<double> Power => Column(1);

        public Span<double> Fuel => Column(2);

        public Span<double> Rail => Column(3);

        public Span<double> Differential => Column(4);

        public Span<double> DeadTime => Column(5);

        public Span<double> Outlet => Column(6);

        public Span<double> Charge => Column(7);

        public Scratch Slice(int count) => new(_room[..(Columns * count)]);

        private Span<double> Column(int place)
        {
            int each = _room.Length / Columns;
            return _room.Slice(place * each, each);
        }
    }
}
