using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>One pump fed with one voltage.</summary>
internal sealed class RunningPump : RunningPumps
{
    private const double Beside = 1e-9;

    private readonly Pump _pump;
    private readonly double _supply;
    private readonly PumpReading _reading;
    private readonly bool _begins;
    private double _freeFlow = double.NaN;
    private double _deadhead = double.NaN;
    private double _minimumFlow = double.NaN;
    private RunningPump? _goingOn;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="pump">Which.</param>
    /// <param name="supply">Voltage at the source, V.</param>
    /// <param name="reading">How its curves are read where they end.</param>
    /// <param name="isSlowed">True at low speed, where the bounds of its data often differ: they are found the sooner by tangents.</param>
    public RunningPump(Pump pump, double supply, PumpReading reading, bool isSlowed = false)
    {
        (_pump, _supply, _reading) = (pump, supply, reading);
        IsNested = isSlowed || pump.IsDriven || pump.Converter is not null;
        _begins = pump.IsCoveredBelow(supply);
    }

    // These three are worked out when they are asked for: a search for the voltage at a splice asks for a flow of many pumps that nobody asks for more.

    /// <inheritdoc/>
    public override double FreeFlow => double.IsNaN(_freeFlow) ? _freeFlow = FlowAt(0) : _freeFlow;

    /// <inheritdoc/>
    public override double Deadhead => double.IsNaN(_deadhead) ? _deadhead = MaximumDelivering() : _deadhead;

    private double MinimumFlow => double.IsNaN(_minimumFlow) ? _minimumFlow = FlowAt(Deadhead) : _minimumFlow;

    /// <inheritdoc/>
    public override double FlowAt(double rise) => _pump.FlowAtMotor(rise, _pump.MotorVoltage(rise, _supply, _reading), _reading);

    /// <inheritdoc/>
    public override double RiseAt(double flow)
    {
        if (flow >= FreeFlow || Deadhead <= 0)
        {
            return 0;
        }

        // Wiring leaves the motor another voltage at every rise; and past a curve's end, or a relief valve, nothing holds.
        if (!_pump.IsFedWithoutLoss || _pump.IsDriven || flow <= MinimumFlow)
        {
            return RiseByFlow(flow);
        }

        (double minimum, double maximum) = _pump.RisesAround(flow, _supply, _reading);
        return minimum == maximum ? minimum : RiseByFlow(flow, minimum, maximum);
    }

    /// <inheritdoc/>
    public override bool GivesFlow => true;

    /// <inheritdoc/>
    public override int Guesses => _pump.Guesses;

    /// <inheritdoc/>
    public override bool IsNested { get; }

    /// <summary>A converter may have several voltages to settle at, of which it has the highest.</summary>
    /// <inheritdoc/>
    public override bool IsConfirmed(double rise, ReadOnlySpan<double> guesses) =>
        _pump.Converter is null || Math.Abs(_pump.MotorVoltage(rise, _supply, _reading) - guesses[0]) <= Beside * guesses[0];

    /// <inheritdoc/>
    public override bool IsRiseSearched => !_pump.IsFedWithoutLoss;

    /// <summary>The voltage at its motor.</summary>
    /// <inheritdoc/>
    public override void Guess(double rise, Span<double> guesses)
    {
        guesses.Fill(double.NaN);
        guesses[0] = _pump.Unloaded(_supply);
    }

    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent) =>
        _pump.TryTangent(rise, _supply, _reading, guesses, out tangent);

    /// <inheritdoc/>
    public override bool TryList(double given, ICollection<Pump> pumps)
    {
        pumps.Add(_pump);
        return _supply == given;
    }

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points) =>
        Describe(flow, rise, _pump.MotorVoltage(rise, _supply, _reading), points);

    /// <inheritdoc/>
    public override bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes)
    {
        Note(flow, rise, guesses[0], ref notes);
        return true;
    }

    /// <summary>Notes the pump where it runs, with the voltage known at its motor, V.</summary>
    public void Note(double flow, double rise, double volts, ref PumpNotes notes)
    {
        if (notes.Points is not null)
        {
            Describe(flow, rise, volts, notes.Points);
        }
        else if (!IsFullyCovered(notes.Ends))
        {
            notes.Uncovered |= CoverageAt(flow, rise, volts, notes.Ends) & PumpCoverage.NotCovered;
        }
    }

    private void Describe(double flow, double rise, double volts, ICollection<PumpPoint> points)
    {
        double? current = _pump.CurrentAtMotor(rise, volts);
        bool known = _pump.HasOneCurrent(volts);
        points.Add(new(
            _pump,
            flow,
            rise,
            _pump.GivenVoltage(_supply, current),
            volts,
            current,
            known ? current : _pump.CurrentAtMotor(rise, volts, PumpReading.Lower),
            known || _pump.IsDriven ? current : _pump.CurrentAtMotor(rise, volts, PumpReading.Upper),
            CoverageAt(flow, rise, volts, ends: true)));
    }

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => _begins && !(ends && _pump.HasOpenEnd);

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends) =>
        IsFullyCovered(ends)
            ? PumpCoverage.Measured
            : CoverageAt(flow, rise, _pump.MotorVoltage(rise, _supply, _reading), ends) & PumpCoverage.NotCovered;

    private PumpCoverage CoverageAt(double flow, double rise, double volts, bool ends)
    {
        PumpCoverage coverage = _pump.CoverageAt(rise, volts);

        // Under its first point the flow is only known to be no less than there.
        if (_pump.BeginsAt(volts) > 0 && flow >= FreeFlow * (1 - Beside))
        {
            coverage |= PumpCoverage.PressureBelow;
        }

        // The end of the curve, and not the pump, holds the rise down.
        if (ends && _pump.HasOpenEnd && GoingOn.RiseAt(flow) > rise + 1)
        {
            coverage |= PumpCoverage.PressureAbove;
        }

        return coverage;
    }

    // Asked for only beside an open end.
    private RunningPump GoingOn => _goingOn ??= new(_pump, _supply, PumpReading.EstimateBeyondEnd);

    // The curve's end moves with the motor's voltage, and that with the pressure.
    private double MaximumDelivering()
    {
        if (_pump.IsFedWithoutLoss)
        {
            return _pump.EndsAt(_supply, _reading);
        }

        double maximum = _pump.MaximumRise(_supply, _reading);
        return maximum * Bracket.Of(
            share => (_pump.EndsAt(_pump.MotorVoltage(share * maximum, _supply, _reading), _reading) / maximum) - share, 0, 1);
    }
}
