using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Systems;

namespace FuelSizing.Findings;

/// <summary>A run's columns as the findings want them: pulse also from duty cycle, fuel also from mass, power also from torque.</summary>
internal sealed class RunColumnsRead
{
    /// <summary>A slower crank is at rest or being cranked, rev/s.</summary>
    private const double AtRest = 1;

    /// <summary>Wideband sensors end about here on the rich side: lambda 0.65 to 0.70, common practice, no source.</summary>
    private const double RichEnd = 0.7;

    private readonly FuelSystem _plan;
    private readonly RecordedRun _run;
    private readonly double _kelvins;
    private readonly double _lambdaDelay;
    private readonly PlanRange _range;
    private readonly List<double> _present = [];
    private readonly Dictionary<Channel, SlowChannel> _slow = [];

    /// <summary>Reads a run for a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="run">The run.</param>
    /// <param name="kelvins">Fuel temperature where none was recorded.</param>
    /// <param name="lambdaDelay">How late lambda is taken to come, s.</param>
    public RunColumnsRead(FuelSystem plan, RecordedRun run, double kelvins, double lambdaDelay = 0)
    {
        (_plan, _run, _kelvins, _lambdaDelay) = (plan, run, kelvins, lambdaDelay);
        _range = new(plan);
        double rich = Math.Min(RichEnd, 0.9 * Planned);
        StuckLambda = StuckReadings.Of(run.Si(Channel.Lambda), run.Si(Channel.Speed), isMaximum: false, end => end <= rich);
    }

    /// <summary>The planned lambda; where it changes with speed, the richest.</summary>
    public double Planned => _plan.Demand.RichestTargetLambda;

    /// <summary>The planned lambda at the row's speed; where the plan has none there, that of the speed nearest to it.</summary>
    public double PlannedAt(int row) => _plan.Demand.TargetLambdaAt(Math.Max(0, Recorded(Channel.Speed, row)));

    /// <summary>Lambda over which a row on boost is lean by the planned lambda.</summary>
    public double LeanFrom(int row) => PlannedAt(row) * (1 + LeanExcursions.Allowance);

    /// <summary>The same, or the leanest that the plan allows at the row's boost where that is richer.</summary>
    public double LeanFromAt(int row) => Math.Min(LeanFrom(row), AllowedAt(row));

    /// <summary>The leanest lambda that the plan allows at the row's boost; infinite where it sets no limit.</summary>
    public double AllowedAt(int row)
    {
        double boost = Recorded(Channel.ManifoldAbsolute, row) - _run.Atmosphere.Pascals;
        return _plan.Limits.Mixture is { } limits && !double.IsNaN(boost) ? limits.LeanestAt<Real>(boost) : double.PositiveInfinity;
    }

    /// <summary>Where the lambda channel sticks.</summary>
    public StuckReadings StuckLambda { get; }

    /// <summary>A value in SI, NaN where there is none, or where the lambda sensor is at its rich end and does not say how rich.</summary>
    public double At(Channel channel, int row)
    {
        double value = Recorded(channel, row);
        return double.IsNaN(value) ? Derived(channel, row)
            : channel == Channel.Lambda && !StuckLambda.NeverMoves && HidesLambda(row) ? double.NaN
            : value;
    }

    /// <summary>True where lambda reads what it reads whatever the mixture is. Over the limit for lean it says enough.</summary>
    public bool HidesLambda(int row)
    {
        double lambda = Recorded(Channel.Lambda, row);
        return StuckLambda.Holds(lambda) && lambda <= LeanFromAt(row);
    }

    /// <summary>True where lambda is at its rich end on so many of some rows that the others are those that happen to read leaner.</summary>
    public bool HidesMuch(List<int> rows, int start, int end)
    {
        if (StuckLambda.NeverMoves || double.IsNaN(StuckLambda.End))
        {
            return false;
        }

        int hidden = 0;
        for (int place = start; place < end; place++)
        {
            hidden += HidesLambda(rows[place]) ? 1 : 0;
        }

        return hidden > 0.1 * (end - start);
    }

    /// <summary>A value in SI from other channels of the row, whether or not its own holds one; NaN where there is none.</summary>
    public double Derived(Channel channel, int row)
    {
        double speed = Recorded(Channel.Speed, row);
        return channel switch
        {
            Channel.InjectorPulse when speed > 0 => Recorded(Channel.DutyCycle, row) * Available(speed),
            Channel.DutyCycle when speed > 0 => InjectorFlow.DutyCycle<Real>(
                Recorded(Channel.InjectorPulse, row), Available(speed)),
            Channel.FuelVolumeFlow => FuelDemandFlow.Volume<Real>(
                Recorded(Channel.FuelMassFlow, row), _plan.Demand.Consumption.Fuel.DensityAtKelvins(Kelvins(row))),
            Channel.Power => EnginePower.OfTorque<Real>(Recorded(Channel.Torque, row), speed),
            _ => double.NaN,
        };
    }

    /// <summary>
    /// A value in SI; of a channel that is read less often than the log is written straight between its readings, and of lambda what is read as much later as it comes late. Speed, time and manifold
    /// pressure are those of the row, for they say what point it is.
    /// </summary>
    public double Between(Channel channel, int row) =>
        channel is Channel.Speed or Channel.Time or Channel.ManifoldAbsolute ? At(channel, row)
        : channel == Channel.Lambda ? Slow(channel).At(row, _lambdaDelay)
        : Slow(channel).At(row);

    /// <summary>How many of some rows hold a reading of their own.</summary>
    public int Readings(Channel channel, List<int> rows, int start, int end)
    {
        int count = 0;
        for (int place = start; place < end; place++)
        {
            count += channel is Channel.Speed or Channel.ManifoldAbsolute || IsRead(channel, rows[place]) ? 1 : 0;
        }

        return count;
    }

    /// <summary>True if a row holds a reading of its own, and not that of a row before.</summary>
    public bool IsRead(Channel channel, int row) => Slow(channel).IsRead(row);

    private SlowChannel Slow(Channel channel)
    {
        if (!_slow.TryGetValue(channel, out SlowChannel? slow))
        {
            slow = _slow[channel] = SlowChannel.Of(
                row => At(channel, row),
                row => Recorded(Channel.Time, row),
                _run.Count,
                row => row > 0 && Recorded(Channel.Speed, row) != Recorded(Channel.Speed, row - 1));
        }

        return slow;
    }

    /// <summary>Fuel temperature, K: as recorded, within what fuels are given for; or else as planned.</summary>
    public double Kelvins(int row)
    {
        double kelvins = Recorded(Channel.FuelTemperature, row);
        return double.IsNaN(kelvins)
            ? _kelvins
            : Math.Clamp(kelvins, Fuel.MinimumTemperature.Kelvins, Fuel.MaximumTemperature.Kelvins);
    }

    /// <summary>True where the plan's tables hold and the manifold's pressure is known.</summary>
    public bool Covers(int row) =>
        _range.Covers(
            Recorded(Channel.Speed, row), Recorded(Channel.ManifoldAbsolute, row) - _run.Atmosphere.Pascals, _run.Atmosphere.Pascals);

    /// <summary>True with the engine at rest.</summary>
    public bool IsAtRest(int row) =>
        Recorded(Channel.Speed, row) < AtRest && !double.IsNaN(Recorded(Channel.ManifoldAbsolute, row));

    /// <summary>True with the engine turning.</summary>
    public bool IsTurning(int row) => Recorded(Channel.Speed, row) >= AtRest;

    /// <summary>True if two rows are near enough to stand for one steady point.</summary>
    public bool Near(int row, int other) =>
        Math.Abs(Recorded(Channel.Speed, row) - Recorded(Channel.Speed, other)) <= SpeedWithin
        && Math.Abs(Recorded(Channel.ManifoldAbsolute, row) - Recorded(Channel.ManifoldAbsolute, other)) <= PressureWithin;

    /// <summary>The median of a channel over some rows; NaN where fewer than half of them have it.</summary>
    public double Median(Channel channel, List<int> rows, int start, int end)
    {
        _present.Clear();
        for (int place = start; place < end; place++)
        {
            double value = Between(channel, rows[place]);
            if (!double.IsNaN(value))
            {
                _present.Add(value);
            }
        }

        if (2 * _present.Count < end - start || _present.Count == 0)
        {
            return double.NaN;
        }

        _present.Sort();
        int middle = _present.Count / 2;
        return _present.Count % 2 == 1 ? _present[middle] : 0.5 * (_present[middle - 1] + _present[middle]);
    }

    /// <summary>
    /// How fast a channel changes over some rows, in its unit each s: from the median of the first half to that of the second, which a glitch
    /// leaves alone; zero where it cannot be told.
    /// </summary>
    public double Rate(Channel channel, List<int> rows, int start, int end)
    {
        double time = Span(rows, start, end);
        if (time == 0)
        {
            return 0;
        }

        int half = (end - start) / 2;
        double change = Median(channel, rows, end - half, end) - Median(channel, rows, start, start + half);
        return double.IsFinite(change) ? change / time : 0;
    }

    /// <summary>Time from the middle of the first half of some rows to that of the second, s; zero where it is not recorded.</summary>
    public double Span(List<int> rows, int start, int end)
    {
        int half = (end - start) / 2;
        double time = half == 0
            ? 0
            : Median(Channel.Time, rows, end - half, end) - Median(Channel.Time, rows, start, start + half);
        return time > 0 ? time : 0;
    }

    private const double SpeedWithin = 10;
    private const double PressureWithin = 15e3;

    private double Available(double speed) => InjectorFlow.AvailableTime<Real>(
        speed, _plan.Demand.Engine.RevolutionsPerCycle, _plan.Injectors.InjectionsPerCycle).Value;

    private double Recorded(Channel channel, int row)
    {
        ReadOnlySpan<double> column = _run.Si(channel);
        return column.IsEmpty ? double.NaN : column[row];
    }
}
