using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>What two curves of one pump, measured at two voltages, say of its kind and of its motor's winding.</summary>
/// <remarks>
/// <para>The curve of the lower voltage is carried to the higher one by each kind of pump (<see cref="PumpDrive"/>), with the winding that fits best, and
/// compared with what was measured there: flow, and current where both curves have it. The weights come from the accuracy of a reading, those of the
/// lower curve included. A kind whose best fit is off by more than such readings are in 99 of 100 cases is excluded; the winding's interval holds the truth
/// in 95 of 100.</para>
/// <para>Not in it: an error of the voltages, one that all readings of a meter share, brushes, and a winding that warms up. The pump must be the same, as worn
/// and as warm. Between the two voltages a pump with both curves needs no drive: it is read from them.</para>
/// </remarks>
/// <example>
/// <code>
/// PumpCurve low = PumpCurve.WithCurrent(
///     "pump S",
///     ElectricPotential.FromVolts(11.1),
///     (Pressure.Zero, VolumeFlow.FromLitersPerHour(151), ElectricCurrent.FromAmperes(3.1)),
///     (Pressure.FromBars(2), VolumeFlow.FromLitersPerHour(117), ElectricCurrent.FromAmperes(5.2)),
///     (Pressure.FromBars(4), VolumeFlow.FromLitersPerHour(78), ElectricCurrent.FromAmperes(7.3)));
/// PumpCurve high = PumpCurve.WithCurrent(
///     "pump S",
///     ElectricPotential.FromVolts(13.7),
///     (Pressure.Zero, VolumeFlow.FromLitersPerHour(188), ElectricCurrent.FromAmperes(3.1)),
///     (Pressure.FromBars(2), VolumeFlow.FromLitersPerHour(154), ElectricCurrent.FromAmperes(5.2)),
///     (Pressure.FromBars(4), VolumeFlow.FromLitersPerHour(115), ElectricCurrent.FromAmperes(7.3)));
/// PumpDriveFit fit = PumpDriveFit.Of(low, high, flowAccuracy: Ratio.FromPercent(1), currentAccuracy: Ratio.FromPercent(1));
/// Console.WriteLine(fit);   // displacement pump, winding 216 mΩ …
/// </code>
/// </example>
public sealed class PumpDriveFit : IReadable
{
    // Nearer voltages than this say little of a motor, and the curves' own errors nearly all.
    private const double MinimumVoltsApart = 0.8;
    private const int MinimumShared = 3;
    private const double Exclusion = 0.99;
    private const double Confidence = 0.95;
    private const int Steps = 32;

    private PumpDriveFit(PumpKindFit turbine, PumpKindFit? displacement) => (Turbine, Displacement) = (turbine, displacement);

    /// <summary>The best fit as a turbine.</summary>
    public PumpKindFit Turbine { get; }

    /// <summary>The best fit as a displacement pump; none where the lower curve does not begin at no pressure, which that needs.</summary>
    public PumpKindFit? Displacement { get; }

    /// <summary>The drive: kind and best winding, where one kind alone fits; none where both do or neither.</summary>
    public PumpDrive? Drive => (Turbine.Fits, Displacement?.Fits) switch
    {
        (true, false) => PumpDrive.Of(PumpKind.Turbine, Turbine.Winding),
        (false, true) => PumpDrive.Of(PumpKind.Displacement, Displacement!.Winding),
        _ => null,
    };

    /// <summary>What was found, as a code with its figures.</summary>
    public Statement Text => (Turbine.Fits, Displacement?.Fits) switch
    {
        (true, false) => Turbine.Text,
        (false, true) => Displacement!.Text,
        (true, true) => Statement.Of("pump-drive-fit.both", $"the curves fit either kind: {Turbine.Text}; {Displacement!.Text}. Measure at voltages further apart, or more accurately"),
        (true, null) => Statement.Of("pump-drive-fit.turbine-untried", $"{Turbine.Text}; a displacement pump was not tried, for the curve begins above no pressure"),
        _ => Statement.Of("pump-drive-fit.neither", $"the curves fit neither kind: they are of another pump or of another day, or the readings are less accurate than stated"),
    };

    /// <summary>Fits kind and winding to two curves of one pump.</summary>
    /// <param name="one">A curve with current.</param>
    /// <param name="other">One at another voltage, at least 0.8 V away; with current too if it was measured.</param>
    /// <param name="flowAccuracy">Standard deviation of a reading of flow, as a share of the flow against the lowest pressure: 0.1 to 20 %.</param>
    /// <param name="currentAccuracy">Standard deviation of a reading of current, as a share of the highest: 0.1 to 20 %.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">The curve at the lower voltage has no current, or the curves share fewer than three pressures.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An accuracy is outside its range, or the voltages are too near.</exception>
    public static PumpDriveFit Of(PumpCurve one, PumpCurve other, Ratio flowAccuracy, Ratio currentAccuracy)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        (double flow, double current) = (Accuracy(flowAccuracy, nameof(flowAccuracy)), Accuracy(currentAccuracy, nameof(currentAccuracy)));
        if (Math.Abs(one.Volts - other.Volts) < MinimumVoltsApart)
        {
            throw Guard.OutOfRange(
                nameof(other), Readable.Of(other.Voltage), $"at least {Readable.Of(ElectricPotential.FromVolts(MinimumVoltsApart))} away from {Readable.Of(one.Voltage)}", "Measure the pump at voltages further apart.");
        }

        (PumpCurve low, PumpCurve high) = one.Volts < other.Volts ? (one, other) : (other, one);
        if (!low.HasCurrent)
        {
            throw new ArgumentException(
                $"The curve of {low.Name} at {Readable.Of(low.Voltage)} has no current: what the winding takes is not known. Describe it with PumpCurve.WithCurrent.", one.Volts < other.Volts ? nameof(one) : nameof(other));
        }

        // A turbine's rises are carried by the square of its speed: those count that the lower curve covers at any speed, from affinity's to that of a motor
        // which loses the most in its winding.
        double slowest = PumpScaling.SpeedRatio<Real>(high.Volts, low.Volts);
        double fastest = PumpMotor.SpeedRatio<Real>(high.Volts, low.Volts, Pump.MaximumResistiveShare);
        MeasuredPoint[] turbine = Between(PumpScaling.Pressure<Real>(low.Flow.First, fastest), PumpScaling.Pressure<Real>(low.Flow.Last, slowest));
        MeasuredPoint[] displacement = Between(low.Flow.First, low.Flow.Last);
        int shared = Math.Min(turbine.Length, displacement.Length);
        if (shared < MinimumShared)
        {
            throw new ArgumentException(
                $"The curves of {low.Name} share {shared} pressures. Measure at three or more of the same ones, from no pressure on.", nameof(other));
        }

        MeasuredPoint[] Between(double first, double last) => [.. high.Points.Where(point => point.PressureRise.Pascals >= first && point.PressureRise.Pascals <= last)];

        return new(
            Fitted(PumpKind.Turbine, low, high, turbine, flow, current),
            low.Flow.First > 0 ? null : Fitted(PumpKind.Displacement, low, high, displacement, flow, current));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Kind and winding, or why they cannot be said.</summary>
    /// <returns>For instance <c>displacement pump, winding 216.0 mΩ, between 179.0 mΩ and 253.0 mΩ</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static double Accuracy(Ratio accuracy, string name) => Guard.Between(
        accuracy, Ratio.FromPercent(0.1), Ratio.FromPercent(20), "Give the standard deviation of a reading as a share of the highest.", name).DecimalFractions;

    private static PumpKindFit Fitted(PumpKind kind, PumpCurve low, PumpCurve high, MeasuredPoint[] points, double flowAccuracy, double currentAccuracy)
    {
        // No winding of a pump takes half of its voltage.
        double most = Math.Min(5, 0.999 * Pump.MaximumResistiveShare * low.Volts / low.MaximumCurrent);
        const double Least = 0.01;
        bool hasCurrent = high.HasCurrent;
        double flowUnit = flowAccuracy * high.Flow.FirstValue;
        double currentUnit = currentAccuracy * high.MaximumCurrent;

        // Everything in units of a reading's deviation.
        Vector<double> Predicted(PumpCurve from, double ohms)
        {
            DrivenCurve driven = new(from, kind == PumpKind.Turbine, ohms, double.NaN);
            double[] flows = [.. points.Select(point => driven.FlowAt(point.PressureRise.Pascals, high.Volts, PumpReading.Estimate) / flowUnit)];
            double[] currents = hasCurrent
                ? [.. points.Select(point => driven.CurrentAt(point.PressureRise.Pascals, high.Volts, driven) / currentUnit)]
                : [];
            return Vector<double>.Build.DenseOfEnumerable(flows.Concat(currents));
        }

        Vector<double> measured = Vector<double>.Build.DenseOfEnumerable(
            points.Select(point => point.Flow.CubicMetersPerSecond / flowUnit)
                .Concat(hasCurrent ? points.Select(point => point.Current!.Value.Amperes / currentUnit) : []));
        double plain = Smallest(ohms => (Predicted(low, ohms) - measured).PointwisePower(2).Sum(), Least, most);
        Matrix<double> inverse = Covariance(low, from => Predicted(from, plain), flowAccuracy, currentAccuracy).Inverse();
        double Misfit(double ohms)
        {
            Vector<double> off = Predicted(low, ohms) - measured;
            return off * inverse * off;
        }

        double best = Smallest(Misfit, Least, most);
        double misfit = Misfit(best);
        double bound = misfit + ChiSquared.InvCDF(1, Confidence);
        return new(
            kind,
            best,
            Misfit(Least) > bound ? best - ((best - Least) * Bracket.Of(share => 1 - (Misfit(best - ((best - Least) * share)) / bound), 0, 1)) : null,
            Misfit(most) > bound ? best + ((most - best) * Bracket.Of(share => 1 - (Misfit(best + ((most - best) * share)) / bound), 0, 1)) : null,
            misfit <= ChiSquared.InvCDF(measured.Count - 1, Exclusion),
            Math.Sqrt(misfit / (measured.Count - 1)));
    }

    /// <summary>Of what was predicted less what was measured: a reading's own, and those of the lower curve as far as a prediction follows them.</summary>
    private static Matrix<double> Covariance(PumpCurve low, Func<PumpCurve, Vector<double>> predicted, double flowAccuracy, double currentAccuracy)
    {
        (double flow, double current) = (flowAccuracy * low.Flow.FirstValue, currentAccuracy * low.MaximumCurrent);
        Vector<double> nominal = predicted(low);
        Matrix<double> covariance = Matrix<double>.Build.DenseIdentity(nominal.Count);
        for (int point = 0; point < low.Points.Count; point++)
        {
            foreach ((double flowStep, double currentStep) in ((double, double)[])[(1e-3 * flow, 0), (0, 1e-3 * current)])
            {
                if (Moved(low, point, flowStep, currentStep) is { } moved)
                {
                    Vector<double> per = (predicted(moved.Curve) - nominal) * moved.Deviations;
                    covariance += per.OuterProduct(per);
                }
            }
        }

        return covariance;
    }

    /// <summary>The curve with one reading a thousandth of its deviation off, to the side where it still falls; and how many such steps a deviation has.</summary>
    private static (PumpCurve Curve, double Deviations)? Moved(PumpCurve curve, int at, double flow, double current)
    {
        MeasuredPoint[] points = [.. curve.Points];
        double own = points[at].Flow.CubicMetersPerSecond;
        double above = at == 0 ? double.PositiveInfinity : points[at - 1].Flow.CubicMetersPerSecond;
        double below = at == points.Length - 1 ? 0 : points[at + 1].Flow.CubicMetersPerSecond;
        double step = own + (2 * flow) <= above ? flow : own - (2 * flow) >= below ? -flow : 0;
        if (flow > 0 && step.Equals(0))
        {
            return null;
        }

        points[at] = points[at] with
        {
            // What is not moved keeps its unit, and with it its last digit: a neighbour may have the same flow.
            Flow = flow > 0 ? VolumeFlow.FromCubicMetersPerSecond(own + step) : points[at].Flow,
            Current = ElectricCurrent.FromAmperes(points[at].Current!.Value.Amperes + current),
        };
        return (PumpCurve.WithCurrent(curve.Name, curve.Voltage, [.. points.Select(point => (point.PressureRise, point.Flow, point.Current!.Value))]), 1e3);
    }

    // Over a grid first: far from its lowest place the misfit need not fall all the way. Then where its slope is nought, or at an end where it never is.
    private static double Smallest(Func<double, double> misfit, double least, double most)
    {
        double Place(double step) => least + ((most - least) * step / Steps);
        int best = Enumerable.Range(0, Steps + 1).MinBy(step => misfit(Place(step)));
        (double from, double to) = (Math.Max(0, best - 1), Math.Min(Steps, best + 1));
        const double Beside = 1e-4;
        double scale = misfit(Place(from)) + misfit(Place(to)) - (2 * misfit(Place(best))) + double.Epsilon;
        return Place(from + ((to - from) * Bracket.Of(
            share =>
            {
                double step = from + ((to - from) * share);
                return (misfit(Place(step - Beside)) - misfit(Place(step + Beside))) / (Beside * scale);
            },
            0,
            1)));
    }
}

/// <summary>The best fit of one kind of pump to two curves.</summary>
public sealed class PumpKindFit : IReadable
{
    internal PumpKindFit(PumpKind kind, double ohms, double? minimum, double? maximum, bool fits, double deviations)
    {
        (Kind, Winding, Fits, Deviations) = (kind, ElectricResistance.FromOhms(ohms), fits, deviations);
        MinimumWinding = minimum is { } least ? ElectricResistance.FromOhms(least) : null;
        MaximumWinding = maximum is { } most ? ElectricResistance.FromOhms(most) : null;
    }

    /// <summary>Which kind.</summary>
    public PumpKind Kind { get; }

    /// <summary>The winding with which it fits best.</summary>
    public ElectricResistance Winding { get; }

    /// <summary>The least winding of the interval of 95 %; none where the curves do not bound it from below.</summary>
    public ElectricResistance? MinimumWinding { get; }

    /// <summary>The greatest; none where they do not bound it from above.</summary>
    public ElectricResistance? MaximumWinding { get; }

    /// <summary>True if readings of the stated accuracy are as far off as the best fit is in more than one of 100 cases.</summary>
    public bool Fits { get; }

    /// <summary>How far readings and fit are apart, in standard deviations of a reading.</summary>
    public double Deviations { get; }

    /// <summary>Kind, winding and interval, as a code with its figures.</summary>
    public Statement Text => (MinimumWinding, MaximumWinding) switch
    {
        ({ } least, { } most) => Statement.Of("pump-drive-fit.kind", $"{Named}, winding {Winding}, between {least} and {most}"),
        ({ } least, null) => Statement.Of("pump-drive-fit.kind-at-least", $"{Named}, winding {Winding}, at least {least}"),
        (null, { } most) => Statement.Of("pump-drive-fit.kind-at-most", $"{Named}, winding {Winding}, at most {most}"),
        _ => Statement.Of("pump-drive-fit.kind-unbounded", $"{Named}, winding not told by the curves"),
    };

    private Statement Named => Kind == PumpKind.Turbine
        ? Statement.Of("pump-drive-fit.turbine", $"turbine pump")
        : Statement.Of("pump-drive-fit.displacement", $"displacement pump");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Kind, winding and interval.</summary>
    /// <returns>For instance <c>turbine pump, winding 210.0 mΩ, between 180.0 mΩ and 240.0 mΩ</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
