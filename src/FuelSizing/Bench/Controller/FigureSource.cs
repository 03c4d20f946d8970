using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>Where the figures for a controller are read: an injector's description, and the fits that it was made from where it was on the bench.</summary>
internal sealed class FigureSource
{
    // Two pressures of one test, by other arithmetic.
    private static readonly Pressure Same = Pressure.FromPascals(1);

    // Of the voltages of a car's supply; common practice, no source.
    private static readonly ElectricPotential RunningDefault = ElectricPotential.FromVolts(14);

    private readonly PulseFit[] _fits;
    private readonly Density _density;
    private readonly Pressure[] _weighed;

    public FigureSource(Injector injector, IReadOnlyList<PulseFit> fits, Fuel fuel, Temperature temperature)
    {
        (Injector, _fits) = (injector, [.. fits]);
        _density = fuel.DensityAt(temperature);
        _weighed = [.. _fits.Select(fit => fit.Test.Differential).DistinctBy(pressure => pressure.Pascals).Order()];
        Voltages = [.. injector.DeadTime.Points.Select(point => point.Voltage).DistinctBy(voltage => voltage.Volts).Order()];
        Differentials = [.. injector.DeadTime.Points.Select(point => point.Differential).OfType<Pressure>().DistinctBy(pressure => pressure.Pascals).Order()];
        Running = IsBench
            ? Voltages.MinBy(voltage => Math.Abs(voltage.Volts - RunningDefault.Volts))
            : ElectricPotential.FromVolts(Math.Clamp(RunningDefault.Volts, Voltages[0].Volts, Voltages[^1].Volts));
    }

    public Injector Injector { get; }

    public bool IsBench => _fits.Length > 0;

    /// <summary>Voltages of the points of the dead times.</summary>
    public IReadOnlyList<ElectricPotential> Voltages { get; }

    /// <summary>Their differential pressures; none where they are of one.</summary>
    public IReadOnlyList<Pressure> Differentials { get; }

    /// <summary>The voltage with the engine running: on the bench that whose slope is the injector's flow.</summary>
    public ElectricPotential Running { get; }

    /// <summary>The fit at a place that was weighed; none elsewhere.</summary>
    public PulseFit? At(ElectricPotential voltage, Pressure differential) =>
        Array.Find(_fits, fit => Significant.Same(fit.Test.Voltage.Volts, voltage.Volts) && fit.Test.Differential.Equals(differential, Same));

    public FlowFigure Flow(Pressure differential)
    {
        double pascals = differential.Pascals;
        if (pascals > Injector.MaximumDifferential.Pascals * (1 + Curve.EndTolerance))
        {
            return NoFlow(differential, Statement.Of("controller.none-over-maximum", $"it is not known to open above {Injector.MaximumDifferential}"));
        }

        if (pascals < Injector.MinimumPascals * (1 - Curve.EndTolerance))
        {
            return NoFlow(differential, Statement.Of("controller.none-below-minimum", $"its flow is not known below {Injector.MinimumDifferential}"));
        }

        VolumeFlow flow = VolumeFlow.FromCubicMetersPerSecond(Injector.StaticAt(pascals, _density.KilogramsPerCubicMeter));
        return At(Running, differential) is { } fit
            ? new(differential, flow, _density, (flow * (fit.MinimumSlope / fit.Slope), flow * (fit.MaximumSlope / fit.Slope)), Bench)
            : new(differential, flow, _density, null, FlowBasis(differential));
    }

    public TimeFigure DeadTime(ElectricPotential voltage, Pressure differential)
    {
        TimeFigure None(Statement reason) => new(TimeFigureKind.DeadTime, voltage, differential, null, reason);
        if (IsBench && _weighed.Length == 1 && !_weighed[0].Equals(differential, Same))
        {
            return None(Statement.Of("controller.none-one-pressure", $"it was weighed at {_weighed[0]} alone, and dead time grows with pressure"));
        }

        if (!Injector.DeadTime.TryAt(voltage, differential, out Duration time))
        {
            return None(Injector.DeadTime.RowAt(voltage.Volts) is null
                ? Statement.Of("controller.none-voltage", $"the dead times cover {Voltages[0]} to {Voltages[^1]}")
                : Statement.Of("controller.none-pressure", $"the dead times cover {Differentials[0]} to {Differentials[^1]}"));
        }

        return At(voltage, differential) is not { } fit ? new(TimeFigureKind.DeadTime, voltage, differential, time, TimeBasis)
            : fit is { MinimumTimeOffset: { } low, MaximumTimeOffset: { } high } ? new(TimeFigureKind.DeadTime, voltage, differential, time, Bench, low, high)
            : new(
                TimeFigureKind.DeadTime, voltage, differential, time, Statement.Of("controller.bench-unbounded", $"the bench, whose readings bound it on neither side: weigh more, or longer pulses"));
    }

    public TimeFigure MinimumPulse(ElectricPotential voltage, Pressure differential)
    {
        TimeFigure Of(Duration? time, Statement basis, Duration? minimum = null) =>
            new(TimeFigureKind.MinimumPulse, voltage, differential, time, basis, minimum, minimum is null ? null : time);
        if (At(voltage, differential) is { LinearFrom: { } from } fit)
        {
            return fit.IsLinearEndSeen
                ? Of(
                    from,
                    Statement.Of("controller.linear-from-bench", $"the bench: from here on all are linear, and the next shorter pulse weighed is not"),
                    fit.Widths.Last(width => width.Pulse < from).Pulse)
                : Of(from, Statement.Of("controller.linear-from-bench-or-less", $"the bench, or less: no shorter pulse was weighed"));
        }

        TimeFigure dead = DeadTime(voltage, differential);
        return dead.Time is not { } time ? Of(null, dead.Basis)
            : Injector.MinimumOpenSeconds > 0 ? Of(
                time + Injector.MinimumOpenTime,
                Statement.Of(
                    "controller.linear-from-open-time",
                    $"by the open time of the minimum pulse stated at {Injector.MinimumPulseVoltage} and {Injector.RatedDifferential}, and the dead time here; no interval"))
            : Of(null, Statement.Of("controller.none-open-time", $"the stated minimum pulse is no longer than its dead time"));
    }

    private static Statement Bench => Statement.Of("controller.from-bench", $"the bench, 95 %");

    private Statement TimeBasis =>
        IsBench ? Statement.Of("controller.between-weighed", $"between places that were weighed; no interval")
        : Injector.DeadTime.IgnoresPressure ? Statement.Of(
            "controller.estimate-one-pressure",
            $"an estimate: measured at one pressure and taken to hold at all; where the pressure is higher it is longer, and the engine leaner; no interval")
        : FromDescription;

    private static Statement FromDescription => Statement.Of("controller.from-description", $"the injector's description; no interval");

    private Statement FlowBasis(Pressure differential)
    {
        (Pressure Differential, VolumeFlow Flow)[] points = Injector.MeasuredFlows.Count > 0 ? [.. Injector.MeasuredFlows] : [(Injector.RatedDifferential, Injector.StaticFlow)];
        return differential < points[0].Differential - Same ? Beyond(points[0].Differential)
            : differential > points[^1].Differential + Same ? Beyond(points[^1].Differential)
            : Array.Exists(points, point => point.Differential.Equals(differential, Same)) ? FromDescription
            : Statement.Of("controller.flow-between", $"between measured pressures, by the square-root law through both; no interval");
    }

    private static Statement Beyond(Pressure nearest) =>
        Statement.Of("controller.flow-by-root", $"by the square-root law from {nearest}, the nearest pressure measured; no interval");

    private FlowFigure NoFlow(Pressure differential, Statement reason) => new(differential, null, _density, null, reason);
}
