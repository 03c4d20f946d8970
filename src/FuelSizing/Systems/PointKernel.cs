using System.Globalization;
using System.Runtime.CompilerServices;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Quantities;

namespace FuelSizing.Systems;

/// <summary>The open-form chain of a system over columns of numbers: one text for every width of vector.</summary>
internal sealed class PointKernel
{
    // The widest vector.
    private const int MostLanes = 8;

    // As in Curve: the same end reached by other arithmetic may differ in the last digit.
    private const double EndTolerance = Curve.EndTolerance;

    private static readonly (double Least, double Most) Lambdas = (0.6, 1.2);
    private static readonly (double Least, double Most) Voltages = (6, 20);

    private readonly FuelSystem _system;
    private readonly Curve _efficiency;
    private readonly Curve _power;
    private readonly DemandBasis _basis;
    private readonly RegulatorConstants[] _regulators;
    private readonly DeadTimeTable _deadTimes;
    private readonly DeadTimeRow? _deadTime;
    private readonly bool _losesAhead;
    private readonly double _ambient;
    private readonly double _ambientTemperature;
    private readonly double _density;
    private readonly double _viscosity;
    private readonly double _dutyLimit;
    private readonly (double Least, double Most) _speeds;
    private readonly (double Least, double Most) _boosts;

    /// <summary>Works out what all points have in common.</summary>
    public PointKernel(FuelSystem system, Conditions conditions)
    {
        FuelDemandModel demand = system.Demand;
        _system = system;
        _efficiency = demand.VolumetricEfficiency.BySpeed;
        _power = demand.MeasuredPower.BySpeed;
        _basis = demand.Basis;
        _regulators = [.. system.Regulator.Singles];
        _deadTimes = system.Injectors.Injector.DeadTime;
        _deadTime = _deadTimes.RowAt(conditions.SupplyVolts);
        _losesAhead = system is { Layout: LineLayout.Returnless, Regulator: not FuelSizing.Pressure.ElectronicReturnless, Plumbing.Supply.Count: > 0 };
        _ambient = conditions.Atmosphere.Pascals;
        _ambientTemperature = conditions.Atmosphere.Kelvins;
        _density = demand.Consumption.Fuel.DensityAtKelvins(conditions.FuelKelvins);
        _viscosity = _losesAhead ? demand.Consumption.Fuel.KinematicViscosityAtKelvins(conditions.FuelKelvins) : 0;
        _dutyLimit = system.Limits.DutyCycle.DecimalFractions;
        _speeds = Widened(
            Math.Max(EngineSpeed.Least, Math.Max(_efficiency.First, _power.First)),
            Math.Min(demand.Engine.SpeedLimit.RevolutionsPerSecond, Math.Min(_efficiency.Last, _power.Last)));
        _boosts = Widened(
            Math.Max(ManifoldPressure.Least.Pascals, ManifoldPressure.LeastAbsolute.Pascals - _ambient),
            demand.Induction.Drive == CompressorDrive.None ? 0 : ManifoldPressure.Most.Pascals);
        if (_speeds.Least > _speeds.Most)
        {
            throw new ArgumentException(
                "system has tables of volumetric efficiency and power without a speed in common. Extend them by measured points.",
                nameof(system));
        }
    }

    /// <summary>Evaluates points; the place of the first that is out of range, −1 if there is none.</summary>
    public int Evaluate<T>(in PointColumns columns)
        where T : struct, ILanes<T>, IReal<T>
    {
        Chain<T> chain = new(this);
        Span<double> scratch = stackalloc double[MostLanes];
        int points = columns.Inputs.Speed.Length;
        int at = 0;
        for (; at <= points - T.Count; at += T.Count)
        {
            if (!Step(chain, columns, at, scratch))
            {
                return FirstRefused(columns.Inputs, at);
            }
        }

        return at < points ? Rest<T>(chain, columns, at, scratch) : -1;
    }

    /// <summary>The exception for a point that is out of range.</summary>
    public ArgumentOutOfRangeException Refusal(in PointInputs inputs, int at)
    {
        string place = string.Create(CultureInfo.InvariantCulture, $" (place {at})");
        double speed = inputs.Speed[at];
        if (!Within(speed, _speeds))
        {
            return Allowed.OutOfRange(
                nameof(inputs),
                Number(speed, "rev/s") + $" of {nameof(inputs.Speed)}" + place,
                $"{Number(_speeds.Least, "rev/s")} to {Number(_speeds.Most, "rev/s")}",
                "Give rev/min ÷ 60, within the engine's tables and limit.");
        }

        double boost = inputs.Boost[at];
        if (!Within(boost, _boosts))
        {
            return Allowed.OutOfRange(
                nameof(inputs),
                Number(boost, "Pa") + $" of {nameof(inputs.Boost)}" + place,
                $"{Number(_boosts.Least, "Pa")} to {Number(_boosts.Most, "Pa")}",
                "Give gauge pressure in the manifold.");
        }

        return inputs.Lambda.Length > 0 && !Within(inputs.Lambda[at], Lambdas)
            ? Allowed.OutOfRange(
                nameof(inputs),
                Number(inputs.Lambda[at], "air–fuel ratio ÷ stoichiometric") + $" of {nameof(inputs.Lambda)}" + place,
                "0.6 to 1.2",
                "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.")
            : Allowed.OutOfRange(
                nameof(inputs),
                Number(inputs.SupplyVoltage[at], "V") + $" of {nameof(inputs.SupplyVoltage)}" + place,
                "6 to 20 V",
                "Give the voltage at the injectors.");
    }

    private static (double Least, double Most) Widened(double least, double most) =>
        (least - (EndTolerance * Math.Abs(least)), most + (EndTolerance * Math.Abs(most)));

    private static bool Within(double value, (double Least, double Most) range) =>
        value >= range.Least && value <= range.Most;

    private static string Number(double value, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:G6} {unit}");

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
    private int Rest<T>(in Chain<T> chain, in PointColumns columns, int from, Span<double> scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        Span<double> padded = stackalloc double[11 * MostLanes];
        PointInputs inputs = new()
        {
            Speed = Padded(columns.Inputs.Speed, from, padded[..MostLanes]),
            Boost = Padded(columns.Inputs.Boost, from, padded.Slice(MostLanes, MostLanes)),
            Lambda = Padded(columns.Inputs.Lambda, from, padded.Slice(2 * MostLanes, MostLanes)),
            SupplyVoltage = Padded(columns.Inputs.SupplyVoltage, from, padded.Slice(3 * MostLanes, MostLanes)),
        };
        PointOutputs outputs = new()
        {
            RailGauge = padded.Slice(4 * MostLanes, MostLanes),
            Differential = padded.Slice(5 * MostLanes, MostLanes),
            FuelFlow = padded.Slice(6 * MostLanes, MostLanes),
            StaticFlow = padded.Slice(7 * MostLanes, MostLanes),
            Pulse = padded.Slice(8 * MostLanes, MostLanes),
            DutyCycle = padded.Slice(9 * MostLanes, MostLanes),
            InjectorReserve = padded.Slice(10 * MostLanes, MostLanes),
        };
        if (!Step(chain, new(inputs, outputs), 0, scratch))
        {
            return FirstRefused(columns.Inputs, from);
        }

        Kept(outputs.RailGauge, columns.Outputs.RailGauge, from);
        Kept(outputs.Differential, columns.Outputs.Differential, from);
        Kept(outputs.FuelFlow, columns.Outputs.FuelFlow, from);
        Kept(outputs.StaticFlow, columns.Outputs.StaticFlow, from);
        Kept(outputs.Pulse, columns.Outputs.Pulse, from);
        Kept(outputs.DutyCycle, columns.Outputs.DutyCycle, from);
        Kept(outputs.InjectorReserve, columns.Outputs.InjectorReserve, from);
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

    private static void Kept(ReadOnlySpan<double> room, Span<double> column, int from)
    {
        if (!column.IsEmpty)
        {
            room[..(column.Length - from)].CopyTo(column[from..]);
        }
    }

    /// <summary>Evaluates one vector of points; false if one of them is out of range.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Step<T>(in Chain<T> chain, in PointColumns columns, int at, Span<double> scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        PointInputs inputs = columns.Inputs;
        T speed = T.From(inputs.Speed[at..]);
        T boost = T.From(inputs.Boost[at..]);
        if (!T.AllWithin(speed, _speeds.Least, _speeds.Most) || !T.AllWithin(boost, _boosts.Least, _boosts.Most))
        {
            return false;
        }

        DemandConstants<T> engine = chain.Engine;
        if (!inputs.Lambda.IsEmpty)
        {
            T lambda = T.From(inputs.Lambda[at..]);
            engine = engine with { Lambda = lambda };
            if (!T.AllWithin(lambda, Lambdas.Least, Lambdas.Most))
            {
                return false;
            }
        }

        DemandState<T> demand = DemandChain.Evaluate(engine, new DemandInput<T>(
            speed, boost, _ambient, _ambientTemperature, _efficiency.At(speed, scratch), _power.At(speed, scratch)));
        T mass = _basis switch
        {
            DemandBasis.Air => demand.FromAir,
            DemandBasis.Power => demand.FromPower,
            _ => T.Max(demand.FromAir, demand.FromPower),
        };
        T fuel = FuelDemandFlow.Volume(mass, _density);
        T rail = _regulators[0].Set(boost);
        for (int behind = 1; behind < _regulators.Length; behind++)
        {
            rail = RailPressure.InSeries(rail, _regulators[behind].Set(boost));
        }

        rail = _losesAhead ? rail - Ahead(fuel, scratch) : rail;
        T differential = RailPressure.Differential(rail, _ambient, demand.ManifoldAbsolute);
        T deadTime;
        if (inputs.SupplyVoltage.IsEmpty)
        {
            deadTime = _deadTime is null ? double.NaN : _deadTime.At(differential);
        }
        else if (T.AllWithin(T.From(inputs.SupplyVoltage[at..]), Voltages.Least, Voltages.Most))
        {
            deadTime = DeadTimeAt(inputs.SupplyVoltage[at..], differential, scratch);
        }
        else
        {
            return false;
        }

        InjectionState<T> injection = InjectionChain.Evaluate(
            chain.Injectors, new InjectionInput<T>(speed, differential, deadTime, fuel, _density));
        PointOutputs outputs = columns.Outputs;
        Write(rail, outputs.RailGauge, at);
        Write(differential, outputs.Differential, at);
        Write(fuel, outputs.FuelFlow, at);
        Write(injection.StaticFlow, outputs.StaticFlow, at);
        Write(T.IfLess(0, injection.StaticFlow, injection.Pulse, double.NaN), outputs.Pulse, at);
        Write(T.IfLess(0, injection.StaticFlow, injection.DutyCycle, double.NaN), outputs.DutyCycle, at);
        if (!outputs.InjectorReserve.IsEmpty)
        {
            T capacity = InjectorFlow.Capacity(
                injection.StaticFlow, chain.Injectors.Count, injection.AvailableTime, _dutyLimit, deadTime);
            Write(T.IfLess(0, injection.StaticFlow, Reserve.Of(capacity, fuel), -1), outputs.InjectorReserve, at);
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Write<T>(T value, Span<double> column, int at)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (!column.IsEmpty)
        {
            value.CopyTo(column[at..]);
        }
    }

    /// <summary>Pressure lost between a regulator at the tank and the rail, Pa.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private T Ahead<T>(T fuel, Span<double> scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        fuel.CopyTo(scratch);
        for (int lane = 0; lane < T.Count; lane++)
        {
            scratch[lane] = Plumbing.Loss(_system.Plumbing.Supply, scratch[lane], _density, _viscosity);
        }

        return T.From(scratch);
    }

    /// <summary>Dead time where each point has a voltage of its own, s.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private T DeadTimeAt<T>(ReadOnlySpan<double> volts, T differential, Span<double> scratch)
        where T : struct, ILanes<T>, IReal<T>
    {
        differential.CopyTo(scratch);
        for (int lane = 0; lane < T.Count; lane++)
        {
            scratch[lane] = _deadTimes.TryAt(volts[lane], scratch[lane], out double seconds) ? seconds : double.NaN;
        }

        return T.From(scratch);
    }

    /// <summary>What does not change from point to point, the same in every lane.</summary>
    private readonly struct Chain<T>(PointKernel kernel)
        where T : struct, ILanes<T>, IReal<T>
    {
        public readonly DemandConstants<T> Engine = kernel._system.Demand.Constants<T>();

        public readonly InjectionConstants<T> Injectors = kernel._system.InjectionConstants<T>();
    }
}
