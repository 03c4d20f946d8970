using FuelSizing.Engines;
using FuelSizing.Logs;

namespace FuelSizing.Findings;

/// <summary>What the plan says each channel should read at each point of a run, as a function of what may be off.</summary>
/// <remarks>
/// Four comparisons at each point, each left out where a channel is missing: rail pressure against regulator or pump, whichever
/// is lower; fuel by the flow meter against fuel by the injectors; lambda against the air and that fuel; power against BSFC and that
/// fuel. Differences are in units of their standard deviation, what may be off in units of its tolerance.
/// </remarks>
internal sealed class RunModel
{
    /// <summary>Number of quantities that may be off.</summary>
    public const int Quantities = (int)RunQuantity.FuelDensity + 1;

    /// <summary>What the model itself is trusted to, beside the sensors: rail pressure, Pa.</summary>
    private const double RailFloor = 1000;

    /// <summary>What the model itself is trusted to, beside the sensors: flows, as a share.</summary>
    private const double FlowFloor = 0.005;

    /// <summary>Of what moves within a point and is not explained, the share that its median may be off by.</summary>
    private const double Unsteady = 0.25;

    /// <summary>Standard deviations over which a difference counts in proportion only.</summary>
    private const double Limit = 3;

    // The median of a few rows scatters more than their mean, by √(π/2).
    private const double MedianOverMean = 1.2533141373155;

    private readonly RunCheck _check;
    private readonly double[] _tolerance;
    private readonly Row[] _rows;
    private readonly PointInput[] _points;

    private RunModel(RunCheck check, RunPoints points, PointInput[] inputs, Row[] rows, double[] tolerance)
    {
        (_check, Points, _points, _rows, _tolerance) = (check, points, inputs, rows, tolerance);
    }

    /// <summary>The gathered run.</summary>
    public RunPoints Points { get; }

    /// <summary>Number of comparisons.</summary>
    public int Comparisons => _rows.Length;

    /// <summary>Standard deviation that each quantity may be off as a matter of course, SI.</summary>
    public IReadOnlyList<double> Tolerance => _tolerance;

    /// <summary>Inputs of each point.</summary>
    public IReadOnlyList<PointInput> Inputs => _points;

    /// <summary>Sets up the comparisons.</summary>
    public static RunModel Of(RunCheck check, RunPoints points, double ambient, Atmosphere atmosphere)
    {
        PointInput[] inputs = new PointInput[points.Count];
        List<Row> rows = [];
        for (int i = 0; i < inputs.Length; i++)
        {
            inputs[i] = PointInput.Of(check, points, i, ambient, atmosphere);
            PointInput input = inputs[i];
            int point = i;
            double Share(Channel channel)
            {
                double readings = Math.Max(1, points.Readings(channel)[point]);
                return readings >= 3 ? MedianOverMean / Math.Sqrt(readings) : 1 / Math.Sqrt(readings);
            }

            double manifold = check.ManifoldNoise * Share(Channel.ManifoldAbsolute);
            double pulse = double.IsNaN(input.Open) ? 0 : check.PulseNoise * Share(Channel.InjectorPulse) / input.Open;
            double rail = check.RailNoise * Share(Channel.RailGauge);
            double across = Math.Sqrt((rail * rail) + (manifold * manifold)) / (2 * input.Differential);
            double injected = Math.Sqrt((pulse * pulse) + (across * across));
            double metered = check.MeterNoise * Share(Channel.FuelVolumeFlow);
            if (!double.IsNaN(input.Rail) && !double.IsNaN(input.Flow) && !input.ReturnFloor)
            {
                double slope = input.Boost > check.Regulator.Onset ? check.Regulator.Gain : check.Regulator.SlopeBelow;
                double spread = Math.Sqrt((rail * rail) + (slope * manifold * (slope * manifold)) + (RailFloor * RailFloor));

                // Where the rail lies under its set pressure, the flow's scatter matters too.
                double set = check.Regulator.Set(input.Boost, 0, 0, 0);
                double flow = double.IsNaN(input.Meter) ? injected : metered;
                bool low = input.Rail < set - (4 * spread);
                // The flow itself is trusted to half a per cent.
                double sag = low ? input.RiseByFlow(check) * Math.Sqrt((flow * flow) + (FlowFloor * FlowFloor)) : Unsteady * input.RailUnsteady;
                rows.Add(new(i, Comparison.Rail, Math.Sqrt((spread * spread) + (sag * sag))));
            }

            if (input.Injects && !double.IsNaN(input.Meter))
            {
                rows.Add(new(i, Comparison.Flow, Spread(metered, injected, input.FlowUnsteady)));
            }

            bool burns = input.Lambda is > 0.5 and < 1.5;
            if (burns && (input.Injects || !double.IsNaN(input.Meter)))
            {
                rows.Add(new(i, Comparison.Air, Spread(check.LambdaNoise * Share(Channel.Lambda), input.Injects ? injected : metered, input.LambdaUnsteady)));
            }

            // Where lambda is that of an engine on overrun, no fuel makes power.
            bool cut = input.Lambda >= 1.5;
            if (!cut && input.Power > 0 && input.FullLoad && (input.Injects || !double.IsNaN(input.Meter)))
            {
                rows.Add(new(
                    i,
                    Comparison.Power,
                    Spread(check.PowerNoise * Share(Channel.Power), double.IsNaN(input.Meter) ? injected : metered, input.PowerUnsteady)));
            }
        }

        double[] tolerance = check.ToleranceOf();
        if (points.ManifoldAtRest is not null)
        {
            // The engine at rest has shown the sensor's zero; what is left is its scatter.
            tolerance[(int)RunQuantity.ManifoldSensor] = Math.Min(
                tolerance[(int)RunQuantity.ManifoldSensor], check.ManifoldNoise);
        }

        return new(check, points, inputs, [.. rows], tolerance);
    }

    /// <summary>True if there is a comparison of a kind.</summary>
    public bool Has(Comparison kind) => Array.Exists(_rows, row => row.Kind == kind);

    /// <summary>Points at which the rail lies lower than modelled by so many standard deviations.</summary>
    public IEnumerable<int> LowerThan(double[] off, double difference)
    {
        Shift shift = Shifted(off);
        foreach (Row row in _rows)
        {
            if (row.Kind == Comparison.Rail && Difference(row, shift) / row.Spread < difference)
            {
                yield return row.Point;
            }
        }
    }

    /// <summary>Differences, recorded less modelled, in units of their standard deviation.</summary>
    /// <param name="off">What is off, in units of its tolerance.</param>
    /// <param name="into">One number for each comparison.</param>
    public void Differences(ReadOnlySpan<double> off, Span<double> into)
    {
        Shift shift = Shifted(off);
        for (int row = 0; row < _rows.Length; row++)
        {
            into[row] = Limited(Difference(_rows[row], shift) / _rows[row].Spread);
        }
    }

    /// <summary>Differences in SI or logarithms, none limited, if nothing were off.</summary>
    public double[] Plain()
    {
        double[] nothing = new double[Quantities];
        Shift shift = Shifted(nothing);
        return Array.ConvertAll(_rows, row => Difference(row, shift));
    }

    /// <summary>Change of a comparison's difference with each quantity over its tolerance, in SI or logarithms, if nothing were off.</summary>
    public double[] PlainSlopes(int row)
    {
        double[] line = new double[Quantities];
        Slope(_rows[row], Shifted(line), line);
        for (int quantity = 0; quantity < Quantities; quantity++)
        {
            line[quantity] *= _tolerance[quantity];
        }

        return line;
    }

    /// <summary>Change of each difference with what is off, row by row.</summary>
    public void Slopes(ReadOnlySpan<double> off, Span<double> into)
    {
        into.Clear();
        Shift shift = Shifted(off);
        for (int row = 0; row < _rows.Length; row++)
        {
            Span<double> line = into.Slice(row * Quantities, Quantities);
            Slope(_rows[row], shift, line);
            double size = Math.Abs(Difference(_rows[row], shift) / _rows[row].Spread);
            double share = size <= Limit ? 1 : Limit / Limited(size);
            for (int quantity = 0; quantity < Quantities; quantity++)
            {
                line[quantity] *= share * _tolerance[quantity] / _rows[row].Spread;
            }
        }
    }

    /// <summary>Sum of squared differences; with its slopes gathered as normal equations where wanted.</summary>
    /// <param name="off">What is off, in units of its tolerance.</param>
    /// <param name="normal">Σ s sᵀ, row by row, or none.</param>
    /// <param name="right">−Σ s d.</param>
    public double Gather(ReadOnlySpan<double> off, double[]? normal, double[]? right)
    {

        Shift shift = Shifted(off);
        Span<double> line = stackalloc double[Quantities];
        Span<int> used = stackalloc int[Quantities];
        if (normal is not null)
        {
            Array.Clear(normal);
            Array.Clear(right!);
        }

        double cost = 0;
        for (int row = 0; row < _rows.Length; row++)
        {
            ref readonly Row comparison = ref _rows[row];
            double scale = 1 / comparison.Spread;
            double difference = Difference(comparison, shift) * scale;
            double limited = Limited(difference);
            cost += limited * limited;
            if (normal is null)
            {
                continue;
            }

            if (Math.Abs(difference) > Limit)
            {
                scale *= Limit / Math.Abs(limited);
            }

            line.Clear();
            Slope(comparison, shift, line);
            int count = 0;
            for (int quantity = 0; quantity < Quantities; quantity++)
            {
                if (line[quantity] != 0)
                {
                    line[quantity] *= scale * _tolerance[quantity];
                    used[count++] = quantity;
                }
            }

            for (int i = 0; i < count; i++)
            {
                double slope = line[used[i]];
                right![used[i]] -= slope * limited;
                int start = used[i] * Quantities;
                for (int j = 0; j < count; j++)
                {
                    normal[start + used[j]] += slope * line[used[j]];
                }
            }
        }

        return cost;
    }

    /// <summary>Which comparison each row is, and where.</summary>
    public (int Point, Comparison Kind, double Spread) Describe(int row) =>
        (_rows[row].Point, _rows[row].Kind, _rows[row].Spread);

    /// <summary>Rail pressure by the model at a point, and whether the regulator governs it by at least so many Pa.</summary>
    /// <param name="point">Which.</param>
    /// <param name="off">What is off, in units of its tolerance.</param>
    /// <param name="volts">Another voltage of the supply, V; as recorded if not given.</param>
    public (double Rail, double Surplus) RailAt(int point, ReadOnlySpan<double> off, double? volts = null)
    {
        Shift shift = Shifted(off);
        PointInput input = _points[point] with { Volts = volts ?? _points[point].Volts };
        double set = SetAt(input, shift);
        double maximum = MaximumAt(input, shift, out _);
        return (Math.Min(set, maximum) + shift.Of(RunQuantity.RailSensor), maximum - set);
    }

    /// <summary>Manifold gauge pressure as it was: a sensor that comes late has read what was before.</summary>
    private static double BoostAt(in PointInput input, in Shift shift) =>
        input.Boost - shift.Of(RunQuantity.ManifoldSensor) + (shift.Of(RunQuantity.ManifoldLag) * input.BoostRate);

    /// <summary>Pressure across the injector as it was, Pa.</summary>
    private static double Across(in PointInput input, in Shift shift) => Math.Max(
        1,
        input.Differential - shift.Of(RunQuantity.RailSensor) + (shift.Of(RunQuantity.RailLag) * input.RailRate)
        + shift.Of(RunQuantity.ManifoldSensor) - (shift.Of(RunQuantity.ManifoldLag) * input.BoostRate));

    private double SetAt(in PointInput input, in Shift shift)
    {
        double set = _check.Regulator.Set(
            BoostAt(input, shift),
            shift.Of(RunQuantity.RegulatorBase),
            shift.Of(RunQuantity.RegulatorGain),
            shift.Of(RunQuantity.RegulatorOnset));
        set -= shift.Of(RunQuantity.RegulatorSlope) * input.InjectedShare;
        return _check.HoldsAtRail ? set : set - input.SupplyLoss;
    }

    /// <summary>The most that the pumps can hold in the rail at the injected flow, Pa.</summary>
    private double MaximumAt(in PointInput input, in Shift shift, out double flow)
    {
        flow = FlowAt(input, shift);
        double rise = _check.Pumps.Rise(
            flow / Math.Exp(shift.Of(RunQuantity.PumpFlow)), input.Volts, shift.Of(RunQuantity.FeedResistance));
        return Math.Max(
            0,
            rise - input.Loss - (input.LossByFlow * Math.Log(flow / input.Flow))
            - (shift.Of(RunQuantity.FilterLoss) * input.FilterLoss * flow / input.Flow));
    }

    private static double FlowAt(in PointInput input, in Shift shift) =>
        double.IsNaN(input.Meter)
            ? input.Flow * Math.Exp(shift.Of(RunQuantity.InjectorFlow))
            : input.Flow * Math.Exp(-shift.Of(RunQuantity.FlowMeter));

    /// <summary>ln of the fuel by the injectors, m³/s.</summary>
    private double Injected(in PointInput input, in Shift shift)
    {
        double open = Math.Max(1e-6, input.Open - shift.Of(RunQuantity.DeadTime));
        return Math.Log(_check.Injected(input, Across(input, shift), open))
            + shift.Of(RunQuantity.InjectorFlow) - (shift.Of(RunQuantity.FuelDensity) / 2);
    }

    /// <summary>ln of the metered fuel as it was, m³/s.</summary>
    private static double Metered(in PointInput input, in Shift shift) =>
        Math.Log(input.Meter) - shift.Of(RunQuantity.FlowMeter) + (shift.Of(RunQuantity.FlowClock) * input.MeterRate);

    /// <summary>ln of the fuel's mass, as m³/s at the planned density.</summary>
    private double Burnt(in PointInput input, in Shift shift, bool byInjectors) =>
        (byInjectors ? Injected(input, shift) : Metered(input, shift)) + shift.Of(RunQuantity.FuelDensity);

    /// <summary>ln of air ÷ the planned at the pressure as recorded.</summary>
    private double Air(in PointInput input, in Shift shift)
    {
        double boost = Math.Max(0, input.Boost);
        return shift.Of(RunQuantity.VolumetricEfficiency)
            + (boost * shift.Of(RunQuantity.AirByBoost))
            + (boost * input.AirByTemperature * shift.Of(RunQuantity.ChargeTemperature))
            + _check.AirOverSpeed.At(input.Speed, shift)
            - (input.AirByPressure * (shift.Of(RunQuantity.ManifoldSensor) - (shift.Of(RunQuantity.ManifoldLag) * input.BoostRate)));
    }

    private double Difference(in Row row, in Shift shift)
    {
        ref readonly PointInput input = ref _points[row.Point];
        switch (row.Kind)
        {
            case Comparison.Rail:
                return input.Rail + (shift.Of(RunQuantity.RailLag) * input.RailRate) - shift.Of(RunQuantity.RailSensor)
                    - Math.Min(SetAt(input, shift), MaximumAt(input, shift, out _));
            case Comparison.Flow:
                return Metered(input, shift) - Injected(input, shift);
            case Comparison.Air:
                return Math.Log(input.Lambda) + (shift.Of(RunQuantity.LambdaDelay) * input.LambdaRate) + Burnt(input, shift, input.Injects) - input.LogStoichiometric
                    - Air(input, shift);
            default:
                return Math.Log(input.Power) - Burnt(input, shift, double.IsNaN(input.Meter)) - input.LogWork
                    + shift.Of(RunQuantity.BrakeSpecificFuelConsumption);
        }
    }

    private void Slope(in Row row, in Shift shift, Span<double> line)
    {
        ref readonly PointInput input = ref _points[row.Point];
        switch (row.Kind)
        {
            case Comparison.Rail:
                RailSlope(input, shift, line);
                break;
            case Comparison.Flow:
                InjectedSlope(input, shift, line, -1);
                MeteredSlope(input, line, 1);
                break;
            case Comparison.Air:
                BurntSlope(input, shift, line, 1, input.Injects);
                double boost = Math.Max(0, input.Boost);
                line[(int)RunQuantity.ManifoldSensor] += input.AirByPressure;
                line[(int)RunQuantity.ManifoldLag] -= input.AirByPressure * input.BoostRate;
                line[(int)RunQuantity.VolumetricEfficiency] = -1;
                line[(int)RunQuantity.AirByBoost] = -boost;
                line[(int)RunQuantity.ChargeTemperature] = -boost * input.AirByTemperature;
                line[(int)RunQuantity.LambdaDelay] = input.LambdaRate;
                _check.AirOverSpeed.Share(input.Speed, line, -1);
                break;
            default:
                BurntSlope(input, shift, line, -1, double.IsNaN(input.Meter));
                line[(int)RunQuantity.BrakeSpecificFuelConsumption] = 1;
                break;
        }
    }

    private void RailSlope(in PointInput input, in Shift shift, Span<double> line)
    {
        line[(int)RunQuantity.RailSensor] = -1;
        line[(int)RunQuantity.RailLag] = input.RailRate;
        double set = SetAt(input, shift);
        double maximum = MaximumAt(input, shift, out double flow);
        if (set <= maximum)
        {
            RegulatorModel regulator = _check.Regulator;
            double boost = BoostAt(input, shift);
            line[(int)RunQuantity.RegulatorSlope] = input.InjectedShare;
            double onset = regulator.Onset + shift.Of(RunQuantity.RegulatorOnset);
            double gain = regulator.Gain + shift.Of(RunQuantity.RegulatorGain);
            if (!regulator.Governs(
                boost,
                shift.Of(RunQuantity.RegulatorBase),
                shift.Of(RunQuantity.RegulatorGain),
                shift.Of(RunQuantity.RegulatorOnset)))
            {
                line[(int)RunQuantity.RegulatorBase] = -1;
                Boosted(input, line, regulator.SlopeBefore);
                return;
            }

            bool over = boost > onset;
            bool stopped = set + (shift.Of(RunQuantity.RegulatorSlope) * input.InjectedShare) >= regulator.Ceiling;
            line[(int)RunQuantity.RegulatorBase] = stopped ? 0 : -1;
            line[(int)RunQuantity.RegulatorGain] = over && !stopped ? -(boost - onset) : 0;
            line[(int)RunQuantity.RegulatorOnset] = over && !stopped ? gain - regulator.SlopeBelow : 0;
            Boosted(input, line, stopped ? 0 : over ? gain : regulator.SlopeBelow);
            return;
        }

        const double Step = 0.01;
        double condition = Math.Exp(shift.Of(RunQuantity.PumpFlow));
        double resistance = shift.Of(RunQuantity.FeedResistance);
        double rise = _check.Pumps.Rise(flow / condition, input.Volts, resistance);
        double byFlow = (_check.Pumps.Rise(flow / condition * (1 + Step), input.Volts, resistance) - rise) / Step;
        const double Ohms = 0.002;
        double byOhms = (_check.Pumps.Rise(flow / condition, input.Volts, resistance + Ohms) - rise) / Ohms;
        double extra = input.FilterLoss * flow / input.Flow;
        line[(int)RunQuantity.PumpFlow] = byFlow;
        line[(int)RunQuantity.FeedResistance] = -byOhms;
        line[(int)RunQuantity.FilterLoss] = extra;
        double asked = byFlow - input.LossByFlow - (shift.Of(RunQuantity.FilterLoss) * extra);
        line[(int)(double.IsNaN(input.Meter) ? RunQuantity.InjectorFlow : RunQuantity.FlowMeter)] =
            double.IsNaN(input.Meter) ? -asked : asked;
    }

    // How the setting's slope over boost shows in what may be wrong with boost as recorded.
    private static void Boosted(in PointInput input, Span<double> line, double slope)
    {
        line[(int)RunQuantity.ManifoldSensor] = slope;
        line[(int)RunQuantity.ManifoldLag] = -slope * input.BoostRate;
    }

    private static void MeteredSlope(in PointInput input, Span<double> line, double sign)
    {
        line[(int)RunQuantity.FlowMeter] = -sign;
        line[(int)RunQuantity.FlowClock] = sign * input.MeterRate;
    }

    private static void BurntSlope(in PointInput input, in Shift shift, Span<double> line, double sign, bool byInjectors)
    {
        if (byInjectors)
        {
            InjectedSlope(input, shift, line, sign);
        }
        else
        {
            MeteredSlope(input, line, sign);
        }

        line[(int)RunQuantity.FuelDensity] += sign;
    }

    private static void InjectedSlope(in PointInput input, in Shift shift, Span<double> line, double sign)
    {
        double across = Across(input, shift);
        line[(int)RunQuantity.InjectorFlow] = sign;
        line[(int)RunQuantity.FuelDensity] = -sign / 2;
        line[(int)RunQuantity.DeadTime] = -sign / Math.Max(1e-6, input.Open - shift.Of(RunQuantity.DeadTime));
        line[(int)RunQuantity.RailSensor] = -sign / (2 * across);
        line[(int)RunQuantity.ManifoldSensor] = sign / (2 * across);
        line[(int)RunQuantity.RailLag] = sign * input.RailRate / (2 * across);
        line[(int)RunQuantity.ManifoldLag] = -sign * input.BoostRate / (2 * across);
    }

    /// <summary>Its square is Huber's loss, so that a glitch that survived the gathering pulls no harder than this.</summary>
    private static double Limited(double difference)
    {
        double size = Math.Abs(difference);
        return size <= Limit ? difference : Math.Sign(difference) * Math.Sqrt((2 * Limit * size) - (Limit * Limit));
    }

    private Shift Shifted(ReadOnlySpan<double> off)
    {
        Shift shift = default;
        for (int quantity = 0; quantity < Quantities; quantity++)
        {
            shift[quantity] = off[quantity] * _tolerance[quantity];
        }

        return shift;
    }

    private static double Spread(double first, double second, double unsteady) =>
        Math.Sqrt((first * first) + (second * second) + (FlowFloor * FlowFloor) + (Unsteady * unsteady * (Unsteady * unsteady)));

    private readonly record struct Row(int Point, Comparison Kind, double Spread);
}
