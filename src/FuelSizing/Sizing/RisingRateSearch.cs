using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>The search for base, gain, onset and ceiling whose worst point is best.</summary>
/// <remarks>
/// Each point answers from its table (<see cref="RailResponse"/>), so that every setting can be looked at. At one onset and ceiling the worst
/// of all points falls, then rises, with base and gain; over onset and ceiling, where it need not, the search looks everywhere first. What it
/// finds is solved, the tables learn from that, and the search goes on until they say nothing better than what was solved.
/// </remarks>
internal sealed class RisingRateSearch
{
    private const int Onsets = 24;
    private const int Narrowed = 3;
    private const int Rounds = 40;

    // Of the range, to which base and gain are found while all onsets are looked at, and at last.
    private const double Coarse = 1e-3;
    private const double Fine = 1e-8;

    // What is said to be better by less than this is not.
    private const double Content = 1e-8;

    private readonly FuelSystem _system;
    private readonly RisingRateBounds _bounds;
    private readonly RailResponse[] _points;
    private readonly (double From, double To) _base;
    private readonly (double From, double To) _onset;
    private readonly (double From, double To) _ceiling;
    private readonly CancellationToken _cancellation;

    /// <summary>Solves every point over the pressures that a unit within the bounds can set.</summary>
    public RisingRateSearch(FuelSystem system, OperatingPoint[] points, RisingRateBounds bounds, CancellationToken cancellation = default)
    {
        (_system, _bounds, _cancellation) = (system, bounds, cancellation);
        _base = (bounds.MinimumBase.Pascals, bounds.MaximumBase.Pascals);

        // An onset over every boost is none: the unit would never act.
        _onset = (0, Math.Min(bounds.MaximumOnset.Pascals, Math.Max(0, points.Max(point => point.Boost.Pascals))));
        double stop = bounds.Ceiling?.Pascals ?? double.PositiveInfinity;
        double highest = points.Max(point => Set(_base.To, bounds.MaximumGain, 0, stop, point.Boost.Pascals));
        _ceiling = bounds.MinimumCeiling is { } lowest ? (lowest.Pascals, Math.Max(lowest.Pascals, Math.Min(stop, highest))) : (stop, stop);
        _points =
        [
            .. points.Select(point =>
            {
                cancellation.ThrowIfCancellationRequested();
                return new RailResponse(
                    system,
                    point,
                    Set(_base.From, RisingRate.MinimumGain, 0, _ceiling.From, point.Boost.Pascals),
                    Set(_base.To, bounds.MaximumGain, 0, _ceiling.To, point.Boost.Pascals));
            }),
        ];
    }

    private readonly record struct Setting(double Base, double Gain, double Onset, double Ceiling, double Badness);

    /// <summary>The unit whose worst point is best.</summary>
    public RisingRate Best()
    {
        Setting best = default;
        for (int round = 0; round < Rounds; round++)
        {
            Setting said = Said();
            if (round > 0 && said.Badness >= best.Badness - Content)
            {
                break;
            }

            foreach (RailResponse point in _points)
            {
                point.Learn(Set(said.Base, said.Gain, said.Onset, said.Ceiling, point.Boost));
            }

            Setting solved = said with { Badness = Worst(said.Base, said.Gain, said.Onset, said.Ceiling) };
            best = round == 0 || solved.Badness < best.Badness ? solved : best;
        }

        return Unit(best);
    }

    /// <summary>The best setting by the tables.</summary>
    private Setting Said()
    {
        double[] onsets =
        [
            .. Enumerable.Range(0, Onsets + 1).Select(place => _onset.To * place / Onsets)
                .Concat(_points.Select(point => point.Boost).Where(boost => boost > _onset.From && boost < _onset.To).Take(Onsets))
                .Distinct().Order(),
        ];
        Setting[] coarse = [.. onsets.Select(onset => AtOnset(onset, Coarse))];
        return Enumerable.Range(0, onsets.Length)
            .OrderBy(place => coarse[place].Badness).Take(Narrowed)
            .Select(place => LowestPlace.Of(
                onset => AtOnset(onset, Coarse * Coarse).Badness, onsets[Math.Max(0, place - 1)], onsets[Math.Min(onsets.Length - 1, place + 1)], 2, Fine * _onset.To))
            .Select(least => AtOnset(least.At, Fine))
            .MinBy(setting => setting.Badness);
    }

    private Setting AtOnset(double onset, double accuracy)
    {
        _cancellation.ThrowIfCancellationRequested();
        double ceiling = _ceiling.To > _ceiling.From
            ? LowestPlace.Of(at => WithBase(onset, at, accuracy).Badness, _ceiling.From, _ceiling.To, 12, accuracy * (_ceiling.To - _ceiling.From)).At
            : _ceiling.From;
        return WithBase(onset, ceiling, accuracy);
    }

    private Setting WithBase(double onset, double ceiling, double accuracy)
    {
        double at = LowestPlace.Of(at => WithGain(at, onset, ceiling, accuracy).Value, _base.From, _base.To, 8, accuracy * (_base.To - _base.From)).At;
        (double gain, double badness) = WithGain(at, onset, ceiling, accuracy);
        return new(at, gain, onset, ceiling, badness);
    }

    private (double At, double Value) WithGain(double at, double onset, double ceiling, double accuracy) => LowestPlace.Of(
        gain => Worst(at, gain, onset, ceiling), RisingRate.MinimumGain, _bounds.MaximumGain, 10, accuracy * _bounds.MaximumGain);

    private double Worst(double at, double gain, double onset, double ceiling)
    {
        double worst = 0;
        foreach (RailResponse point in _points)
        {
            worst = Math.Max(worst, point.Badness(Set(at, gain, onset, ceiling, point.Boost)));
        }

        return worst;
    }

    private static double Set(double at, double gain, double onset, double ceiling, double boost) =>
        new RailSetting(at, 1, gain, onset, ceiling).At<Real>(boost);

    /// <summary>A ceiling that no point reaches is none, where it was to be looked for.</summary>
    private RisingRate Unit(Setting setting)
    {
        bool acts = _points.Any(point => Set(setting.Base, setting.Gain, setting.Onset, double.PositiveInfinity, point.Boost) > setting.Ceiling);
        return RisingRate.From(
            Pressure.FromPascals(setting.Base),
            setting.Gain,
            Pressure.FromPascals(setting.Onset),
            _bounds.MinimumCeiling is not null && acts ? Pressure.FromPascals(setting.Ceiling) : _bounds.Ceiling,
            _system.Regulator.MinimumReturnFlow).With(_system.Regulator.FlowAtRail);
    }
}
