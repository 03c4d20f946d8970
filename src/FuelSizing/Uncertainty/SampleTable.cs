using FuelSizing.Checks;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What is kept of each sample, by its number, so that sums are taken in one order whatever thread it came from.</summary>
internal sealed class SampleTable(Part[] parts, int samples)
{
    private readonly Outcome[][] _outcomes = Columns<Outcome>(parts.Length, samples);
    private readonly double[][] _reserves = Columns<double>(parts.Length, samples);
    private readonly Outcome[] _all = new Outcome[samples];
    private readonly double[] _duty = new double[samples];
    private readonly double[] _fuel = new double[samples];
    private readonly double[] _rail = new double[samples];
    private readonly double[] _minimum = new double[samples];
    private readonly double[] _leanest = new double[samples];
    private readonly double[] _richest = new double[samples];
    private readonly double[] _maximum = new double[samples];

    /// <summary>Keeps one sample.</summary>
    public void Keep(int sample, in SampledPoint point)
    {
        // A system has the same checks at every sample, in the same order.
        Outcome worst = Outcome.Holds;
        for (int part = 0; part < parts.Length; part++)
        {
            Margin margin = point.Margins[part];
            _outcomes[part][sample] = margin.Outcome;
            _reserves[part][sample] = margin.Reserve?.DecimalFractions ?? double.NaN;
            worst = Urgency.Worse(worst, margin.Outcome);
        }

        _all[sample] = worst;
        _duty[sample] = SystemOutput.DutyCycle.Of(point);
        _fuel[sample] = SystemOutput.FuelFlow.Of(point);
        _rail[sample] = SystemOutput.RailGauge.Of(point);
        _minimum[sample] = SystemOutput.MinimumReserve.Of(point);
        _leanest[sample] = point.LeanestLambda;
        _richest[sample] = point.RichestLambda;
        _maximum[sample] = point.MaximumDutyCycle;
    }

    public Chance All(int done) => new(_all.AsSpan(0, done));

    public PartChance[] Parts(int done) =>
    [
        .. parts.Select((part, column) => new PartChance(
            part, new(_outcomes[column].AsSpan(0, done)), Ratios(_reserves[column], done))),
    ];

    public OutputSpread<Ratio> DutyCycle(int done) => Ratios(_duty, done);

    public OutputSpread<MassFlow> FuelFlow(int done) =>
        new(_fuel.AsSpan(0, done), value => MassFlow.FromKilogramsPerSecond(value));

    public OutputSpread<Pressure> RailGauge(int done) =>
        new(_rail.AsSpan(0, done), value => Pressure.FromPascals(value));

    public OutputSpread<Ratio> MinimumReserve(int done) => Ratios(_minimum, done);

    public InjectorSpread Injectors(int done) =>
        new(
            new(_leanest.AsSpan(0, done), value => value),
            new(_richest.AsSpan(0, done), value => value),
            Ratios(_maximum, done));

    private static OutputSpread<Ratio> Ratios(double[] values, int done) =>
        new(values.AsSpan(0, done), value => Ratio.FromDecimalFractions(value));

    private static T[][] Columns<T>(int count, int length)
    {
        T[][] columns = new T[count][];
        for (int column = 0; column < count; column++)
        {
            columns[column] = new T[length];
        }

        return columns;
    }
}
