using FuelSizing.Checks;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What is kept of each sample, by its number, so that sums are taken in one order whatever thread it came from.</summary>
internal sealed class SampleTable(Part[] parts, int places, int samples)
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
    private readonly double[][] _lambda = Columns<double>(places, samples);

    /// <summary>Keeps one sample.</summary>
    public void Keep(int sample, in SampledSystem system)
    {
        // A system has the same checks at every sample, in the same order.
        Outcome worst = Outcome.Holds;
        for (int part = 0; part < parts.Length; part++)
        {
            Outcome there = Outcome.Holds;
            double reserve = double.PositiveInfinity;
            foreach (ref readonly SampledPoint point in system.Points)
            {
                CheckReading<Real> reading = point.Readings[part];
                Outcome outcome = CheckReading.OutcomeOf(reading);
                there = Urgency.Worse(there, outcome);

                // One that holds without a figure, as where it is not judged there, takes nothing from the others.
                double own = CheckReading.MarginOf(reading)
                    ?? (outcome == Outcome.Holds && system.Points.Length > 1 ? double.PositiveInfinity : double.NaN);
                reserve = Math.Min(reserve, own);
            }

            _outcomes[part][sample] = there;
            _reserves[part][sample] = double.IsPositiveInfinity(reserve) ? double.NaN : reserve;
            worst = Urgency.Worse(worst, there);
        }

        _all[sample] = worst;
        _duty[sample] = SystemOutput.DutyCycle.Of(system);
        _fuel[sample] = SystemOutput.FuelFlow.Of(system);
        _rail[sample] = SystemOutput.RailGauge.Of(system);
        _minimum[sample] = SystemOutput.MinimumReserve.Of(system);
        _leanest[sample] = system.Maximum(point => point.LeanestLambda);
        _richest[sample] = system.Minimum(point => point.RichestLambda);
        _maximum[sample] = system.Maximum(point => point.MaximumDutyCycle);
        for (int place = 0; place < places; place++)
        {
            _lambda[place][sample] = system.Points[place].LeanestLambda;
        }
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

    public MixtureSpread[] Mixture(UncertainSystem system, int done) =>
    [
        .. system.NominalResults.Select((result, place) => new MixtureSpread(
            result.Point, new(_lambda[place].AsSpan(0, done), value => value))),
    ];

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
