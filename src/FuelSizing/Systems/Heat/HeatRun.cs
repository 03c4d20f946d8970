using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Whether warm fuel uses up the vapour margin that the system's limits ask for.</summary>
public enum HeatAnswer
{
    /// <summary>Data is missing; the result says which.</summary>
    CannotSay,

    /// <summary>Never at this point: the steady temperature leaves more.</summary>
    Never,

    /// <summary>Not before 95 % of the fuel in the tank is used.</summary>
    NotBeforeEmpty,

    /// <summary>After a time.</summary>
    UsedUp,
}

/// <summary>The place of a fuel system that is nearest to boiling.</summary>
public enum HeatPlace
{
    /// <summary>The main tank, at ambient pressure.</summary>
    Tank,

    /// <summary>The inlet of the main pumps.</summary>
    PumpInlet,

    /// <summary>The inlet of the lift pump.</summary>
    LiftPumpInlet,
}

/// <summary>How warm the fuel gets in a run at one operating point, and what that leaves of the margin over its vapour pressure.</summary>
/// <remarks>
/// <para>Temperatures are upper bounds and margins lower ones: exact where the pumps' data cover the point and the walls are described.</para>
/// <para>The circuit is solved once, at the temperatures of the operating point: the flow, density and vapour pressure of warmer fuel change the heat by a few per cent.
/// Heat of the lines, and evaporation in the tank, which cools it, are not modelled.</para>
/// </remarks>
public sealed class HeatRun : IReadable
{
    private const double MinimumShareLeft = 0.05;

    private readonly FuelHeat _heat;
    private readonly double _start;
    private readonly double _ambient;
    private readonly double _mass;
    private readonly double _specificHeat;
    private readonly double _draw;
    private readonly double _offset;
    private readonly (HeatPlace Place, double Absolute, double Rise)[] _places;

    internal HeatRun(OperatingResult result, TankHeat tank, Duration run, FuelHeat heat, Statement? gap)
    {
        (Result, Tank, Run, _heat, Gap) = (result, tank, run, heat, gap);
        Conditions conditions = result.Point.Conditions;
        Fuels.Fuel fuel = result.Parts.Demand.Consumption.Fuel;
        _ambient = (tank.Ambient ?? conditions.Atmosphere.Temperature).Kelvins;
        double stated = conditions.TankTemperature.Kelvins;

        // Walls that nothing is known of may have warmed the fuel to the air's temperature at once.
        _start = tank.Conductance is null ? Math.Max(stated, _ambient) : stated;
        _mass = tank.FuelVolume.CubicMeters * fuel.DensityAtKelvins(stated);
        _specificHeat = tank.HeatOf(fuel);
        _draw = result.SolvedDemand.Injected * result.SolvedDemand.Density;
        _offset = Math.Max(0, conditions.InletKelvins - stated);
        _places = [];
        double left = _mass - (_draw * run.Seconds);
        if (Gap is null && !(left >= MinimumShareLeft * _mass))
        {
            double lasts = (1 - MinimumShareLeft) * _mass / _draw;
            Gap = Statement.Of("heat.run-too-long", $"95 % of the fuel is used after {EarlierMinutes(lasts):0.0} min, before the run of {run.Minutes:0.0} min ends");
        }

        if (Gap is not null)
        {
            VapourGap = Gap;
            return;
        }

        FuelLeft = Volume.FromCubicMeters(left / _mass * tank.FuelVolume.CubicMeters);
        HeatToTank = Power.FromWatts(heat.ToTank);
        PumpPower = Power.FromWatts(heat.Pumps + heat.LiftPumps);
        if (tank.Conductance is { } walls)
        {
            SteadyTemperature = Temperature.FromKelvins(LumpedHeat.Steady<Real>(_ambient, heat.ToTank, walls).Value);
            TimeConstant = Duration.FromSeconds(LumpedHeat.TimeConstant<Real>(_mass, _specificHeat, walls).Value);
        }
        else if (heat.ToTank == 0)
        {
            SteadyTemperature = Temperature.FromKelvins(_start);
        }

        double end = TankKelvins(run.Seconds);
        TankTemperature = Temperature.FromKelvins(end);
        InletTemperature = Temperature.FromKelvins(end + InletRise);
        RailTemperature = Temperature.FromKelvins(end + InletRise + heat.RailRise);
        if (!fuel.HasVapourPressure)
        {
            VapourGap = Statement.Of("suction.no-vapour-pressure", $"no vapour pressure of {fuel.Name} given");
            return;
        }

        _places = [.. Places()];
        if (Array.Exists(_places, place => double.IsNaN(place.Absolute)))
        {
            VapourGap = Statement.Of("heat.no-inlet-pressure", $"the pressure at a pump's inlet is not known there");
            return;
        }

        double limit = result.Parts.Limits.SuctionMargin.Pascals;
        (double margin, Place) = MarginAt(end);
        (double before, _) = MarginAt(_start);
        VapourMargin = double.IsNaN(margin) ? null : Pressure.FromPascals(margin);
        VapourMarginAtStart = double.IsNaN(before) ? null : Pressure.FromPascals(before);
        (Answer, double after) = Ask(limit);
        TimeUntilUsedUp = Answer == HeatAnswer.UsedUp ? Duration.FromSeconds(after) : null;
        if (Answer == HeatAnswer.CannotSay)
        {
            VapourGap = TooWarm(fuel.Name);
        }
    }

    /// <summary>The solved operating point; where a switched pump makes two states of it, the one that brings more heat to the tank.</summary>
    public OperatingResult Result { get; }

    /// <summary>What is known of the tank.</summary>
    public TankHeat Tank { get; }

    /// <summary>How long the run is.</summary>
    public Duration Run { get; }

    /// <summary>Why there is no temperature; none where there is.</summary>
    public Statement? Gap { get; }

    /// <summary>Why nothing can be said of the vapour margin, or of when it is used up; none where it can.</summary>
    public Statement? VapourGap { get; }

    /// <summary>Fuel in the tank at the end; none where the run is not solved.</summary>
    public Volume? FuelLeft { get; }

    /// <summary>Electrical power of all pumps, the lift pump's included; none where it is not known.</summary>
    public Power? PumpPower { get; }

    /// <summary>Heat that comes back to the main tank, what it takes up at the rail included; none where it is not known.</summary>
    public Power? HeatToTank { get; }

    /// <summary>In the main tank at the end; none where it is not known.</summary>
    public Temperature? TankTemperature { get; }

    /// <summary>At the main pumps' inlet at the end: in a surge tank that takes the return it is warmer than in the main tank; none where it is not known.</summary>
    public Temperature? InletTemperature { get; }

    /// <summary>In the rail at the end; none where it is not known.</summary>
    public Temperature? RailTemperature { get; }

    /// <summary>That the main tank settles at; none where it does not settle, since walls are not described and heat comes back.</summary>
    public Temperature? SteadyTemperature { get; }

    /// <summary>Of the fuel that is in the main tank at the start; none where walls are not described.</summary>
    public Duration? TimeConstant { get; }

    /// <summary>
    /// Lowest pressure over vapour pressure at the end, of main tank and pump inlets, before the margin that the limits ask for; negative where fuel boils; none where it is
    /// not known.
    /// </summary>
    public Pressure? VapourMargin { get; }

    /// <summary>The same at the start.</summary>
    public Pressure? VapourMarginAtStart { get; }

    /// <summary>Where that margin is lowest, at the end.</summary>
    public HeatPlace Place { get; }

    /// <summary>Whether the margin falls to what the limits ask for (<see cref="SizingLimits.SuctionMargin"/>), however long the run.</summary>
    public HeatAnswer Answer { get; }

    /// <summary>When it does; none where it does not, or is not known.</summary>
    public Duration? TimeUntilUsedUp { get; }

    /// <summary>True where walls are not described: temperatures are then those of an insulated tank.</summary>
    public bool IsInsulated => Tank.Conductance is null;

    /// <summary>Temperature of the main tank after a time.</summary>
    /// <param name="time">From the start of the run, 0 to its end.</param>
    /// <returns>The temperature; none where it is not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside its range.</exception>
    public Temperature? TankTemperatureAt(Duration time)
    {
        Guard.Between(time, Duration.Zero, Run, "Give a time within the run.", nameof(time));
        return Gap is null ? Temperature.FromKelvins(TankKelvins(time.Seconds)) : null;
    }

    /// <summary>Vapour margin after a time.</summary>
    /// <param name="time">From the start of the run, 0 to its end.</param>
    /// <returns>Lowest pressure over vapour pressure, of main tank and pump inlets; none where it is not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside its range.</exception>
    public Pressure? VapourMarginAt(Duration time)
    {
        Guard.Between(time, Duration.Zero, Run, "Give a time within the run.", nameof(time));
        return _places.Length > 0 && MarginAt(TankKelvins(time.Seconds)).Margin is var margin && !double.IsNaN(margin) ? Pressure.FromPascals(margin) : null;
    }

    /// <summary>The answer, as a code with its figures.</summary>
    public Statement Text => Answer switch
    {
        HeatAnswer.Never => Statement.Of(
            "heat.never", $"the vapour margin stays over {Result.Parts.Limits.SuctionMargin}{Mark}: the tank settles at {SteadyTemperature!.Value}"),
        HeatAnswer.NotBeforeEmpty => Statement.Of(
            "heat.not-before-empty", $"the vapour margin stays over {Result.Parts.Limits.SuctionMargin}{Mark} until 95 % of the fuel is used"),
        HeatAnswer.UsedUp => Statement.Of(
            "heat.used-up", $"the vapour margin falls to {Result.Parts.Limits.SuctionMargin}{Mark} after {EarlierMinutes(TimeUntilUsedUp!.Value.Seconds):0.0} min, with the tank at {Temperature.FromKelvins(TankKelvins(TimeUntilUsedUp.Value.Seconds))}"),
        _ => VapourGap!,
    };

    /// <inheritdoc/>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return TankTemperature is { } temperature
            ? $"tank {style.Of(temperature)} after {style.Number(Run.Minutes, "#,##0.0")} min: {Text.In(style)}"
            : Text.In(style);
    }

    /// <summary>Temperature of the tank at the end, and the answer.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private double InletRise => _heat.InletRise + _offset;

    private Statement? Mark => Result.Parts.Limits.MarkOf(RuleOfThumb.SuctionMargin);

    private double TankKelvins(double seconds)
    {
        double equivalent = _draw > 0 ? LumpedHeat.EquivalentTime<Real>(_mass, _draw, seconds).Value : seconds;
        return KelvinsAfter(equivalent);
    }

    private double KelvinsAfter(double equivalent) => TimeConstant is { } constant
        ? LumpedHeat.After<Real>(_start, SteadyTemperature!.Value.Kelvins, equivalent, constant.Seconds).Value
        : LumpedHeat.Insulated<Real>(_start, _heat.ToTank, equivalent, _mass, _specificHeat).Value;

    private IEnumerable<(HeatPlace Place, double Absolute, double Rise)> Places()
    {
        PointValues<Real> at = PointReading.Of(Result);
        double ambient = at.Ambient.Value;
        yield return (HeatPlace.Tank, ambient, 0);

        yield return (HeatPlace.PumpInlet, ambient + at.Minimum.InletGauge.Value, InletRise);
        if (Result.Parts.SurgeTank is not null)
        {
            yield return (HeatPlace.LiftPumpInlet, ambient + at.Lift.Minimum.InletGauge.Value, 0);
        }
    }

    /// <summary>Lowest margin with the tank at a temperature, Pa, and where; not a number where the fuel is warmer than its data reach.</summary>
    private (double Margin, HeatPlace Place) MarginAt(double kelvins)
    {
        Fuels.Fuel fuel = Result.Parts.Demand.Consumption.Fuel;
        (double Margin, HeatPlace Place) lowest = (double.PositiveInfinity, HeatPlace.Tank);
        foreach ((HeatPlace place, double absolute, double rise) in _places)
        {
            if (!IsWithin(kelvins + rise))
            {
                return (double.NaN, place);
            }

            double margin = Suction.NetPositive<Real>(absolute, fuel.VapourPressureAtKelvins(kelvins + rise)).Value;
            if (margin < lowest.Margin)
            {
                lowest = (margin, place);
            }
        }

        return lowest;
    }

    /// <summary>Whether and when the margin falls to a limit, s.</summary>
    private (HeatAnswer Answer, double After) Ask(double limit)
    {
        double rise = _places.Max(place => place.Rise);
        double warmest = Fuels.Fuel.MaximumTemperature.Kelvins - rise;
        if (_start > warmest)
        {
            return (HeatAnswer.CannotSay, double.NaN);
        }

        if (MarginAt(_start).Margin <= limit)
        {
            return (HeatAnswer.UsedUp, 0);
        }

        double last = _draw > 0 ? LumpedHeat.EquivalentTime<Real>(_mass, _draw, (1 - MinimumShareLeft) * _mass / _draw).Value : double.PositiveInfinity;
        double steady = SteadyTemperature?.Kelvins ?? double.PositiveInfinity;
        double end = KelvinsAfter(last);
        double highest = Math.Min(Math.Max(end, _start), warmest);
        if (MarginAt(highest).Margin > limit)
        {
            // Of a temperature beyond the fuel's data the margin is not a number.
            return MarginAt(Math.Max(steady, _start)).Margin > limit ? (HeatAnswer.Never, double.NaN)
                : end <= warmest ? (HeatAnswer.NotBeforeEmpty, double.NaN)
                : (HeatAnswer.CannotSay, double.NaN);
        }

        // On a scale of one, for the solver's accuracy; the lower end of the last bits, which is the earlier.
        double span = highest - _start;
        double reached = _start + (span * Bracket.Of(share => (MarginAt(_start + (share * span)).Margin - limit) / Math.Max(limit, 1e4), 0, 1));
        double equivalent = TimeConstant is { } constant
            ? LumpedHeat.TimeTo<Real>(_start, steady, reached, constant.Seconds).Value
            : (reached - _start) * _mass * _specificHeat / _heat.ToTank;
        return (HeatAnswer.UsedUp, _draw > 0 ? LumpedHeat.PassedTime<Real>(_mass, _draw, equivalent).Value : equivalent);
    }

    // Shown as it is surely reached: rounded down.
    private static double EarlierMinutes(double seconds) => Math.Floor(seconds / 6) / 10;

    private static bool IsWithin(double kelvins) =>
        kelvins >= Fuels.Fuel.MinimumTemperature.Kelvins && kelvins <= Fuels.Fuel.MaximumTemperature.Kelvins + 1e-9;

    private static Statement TooWarm(string fuel) =>
        Statement.Of("heat.beyond-data", $"fuel reaches {Fuels.Fuel.MaximumTemperature}, the highest temperature at which {fuel} has a vapour pressure here");
}
