using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Regulators;

namespace FuelSizing.Findings;

/// <summary>The planned regulator with base, gain and onset that may be off.</summary>
internal sealed class RegulatorModel
{
    private readonly double _base;
    private readonly double _below;
    private readonly double _gain;
    private readonly double _onset;
    private readonly double _ceiling;
    private readonly PressureRegulator? _before;

    private RegulatorModel(
        double basePascals, double below, double gain, double onset, double ceiling, PressureRegulator? before) =>
        (_base, _below, _gain, _onset, _ceiling, _before) = (basePascals, below, gain, onset, ceiling, before);

    /// <summary>Slope over the onset.</summary>
    public double Gain => _gain;

    /// <summary>Slope under the onset.</summary>
    public double SlopeBelow => _below;

    /// <summary>Gauge, Pa.</summary>
    public double Onset => _onset;

    /// <summary>Gauge, Pa.</summary>
    public double Base => _base;

    /// <summary>Gauge, Pa.</summary>
    public double Ceiling => _ceiling;

    /// <summary>True for a unit whose gain sets in at an onset of its own.</summary>
    public bool HasOnset => _gain != _below;

    /// <summary>Boost at which the rail begins to rise faster than one for one, Pa: of a unit in series, where it takes over.</summary>
    public double EffectiveOnset
    {
        get
        {
            const double Step = 500;
            double boost = _onset;
            while (_before is not null && boost < Maximum && !Governs(boost, 0, 0, 0))
            {
                boost += Step;
            }

            return boost;
        }
    }

    /// <summary>True where the unit with the gain, not a regulator before it, sets the rail.</summary>
    /// <param name="boost">Gauge, Pa.</param>
    /// <param name="offBase">Pa over the planned base.</param>
    /// <param name="offGain">Over the planned gain.</param>
    /// <param name="offOnset">Pa over the planned onset.</param>
    public bool Governs(double boost, double offBase, double offGain, double offOnset) =>
        _before is null || Unit(boost, offBase, offGain, offOnset) >= _before.SetPascals(boost) + offBase;

    /// <summary>Slope of the regulator before the unit, which must be there.</summary>
    public double SlopeBefore => (_before!.SetPascals(Maximum) - _before.SetPascals(0)) / Maximum;

    // As much boost as is ever run.
    private const double Maximum = 400e3;

    /// <summary>Change of the planned setting with boost.</summary>
    /// <param name="boost">Gauge, Pa.</param>
    public double SlopeAt(double boost)
    {
        const double Step = 100;
        return (Set(boost + Step, 0, 0, 0) - Set(boost - Step, 0, 0, 0)) / (2 * Step);
    }

    /// <summary>The model of a planned regulator.</summary>
    public static RegulatorModel Of(PressureRegulator regulator) => regulator switch
    {
        RegulatorSeries series => Rising(series.Unit, series.BaseRegulator),
        RisingRate unit => Rising(unit, null),
        ManifoldReferenced follows => new(follows.Base.Pascals, 1, 1, 0, double.PositiveInfinity, null),
        ElectronicReturnless { FollowsManifold: true } held => new(held.Base.Pascals, 1, 1, 0, double.PositiveInfinity, null),
        _ => new(regulator.SetPascals(0), 0, 0, 0, double.PositiveInfinity, null),
    };

    /// <summary>Gauge pressure set, Pa.</summary>
    /// <param name="boost">Gauge, Pa.</param>
    /// <param name="offBase">Pa over the planned base.</param>
    /// <param name="offGain">Over the planned gain.</param>
    /// <param name="offOnset">Pa over the planned onset.</param>
    public double Set(double boost, double offBase, double offGain, double offOnset)
    {
        double unit = Unit(boost, offBase, offGain, offOnset);
        return _before is null ? unit : RailPressure.InSeries<Real>(unit, _before.SetPascals(boost) + offBase);
    }

    private double Unit(double boost, double offBase, double offGain, double offOnset) =>
        RailPressure.Set<Real>(_base + offBase, _below, _gain + offGain, _onset + offOnset, _ceiling, boost);

    private static RegulatorModel Rising(RisingRate unit, PressureRegulator? before) =>
        new(
            unit.Base.Pascals,
            1,
            unit.Gain,
            unit.Onset.Pascals,
            unit.Ceiling?.Pascals ?? double.PositiveInfinity,
            before);
}
