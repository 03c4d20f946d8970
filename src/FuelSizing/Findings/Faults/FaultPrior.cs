namespace FuelSizing.Findings;

/// <summary>How large a fault is taken to be before the run has been seen.</summary>
/// <remarks>Sizes that workshops meet; common practice, no source. A size outside is found as well, at somewhat lower odds.</remarks>
/// <param name="Fault">Which.</param>
/// <param name="Quantity">What of the model is off.</param>
/// <param name="Mean">By how much, SI; of a fault that goes either way, the size.</param>
/// <param name="Deviation">Standard deviation of that, SI.</param>
/// <param name="EitherWay">True of a fault that may go up or down.</param>
internal sealed record FaultPrior(RunFault Fault, RunQuantity Quantity, double Mean, double Deviation, bool EitherWay)
{
    /// <summary>Probability that nothing is wrong, before the run has been seen.</summary>
    public const double Sound = 0.5;

    /// <summary>Probability of two faults at once, before the run has been seen.</summary>
    public const double Two = 0.05;

    /// <summary>All faults that a model can have.</summary>
    public static IReadOnlyList<FaultPrior> Of(RunCheck check)
    {
        double gain = Math.Max(1, check.Regulator.Gain);
        return
        [
            new(RunFault.WeakPump, RunQuantity.PumpFlow, -0.32, 0.15, false),
            new(RunFault.VoltageDrop, RunQuantity.FeedResistance, 0.15, 0.07, false),
            new(RunFault.CloggedFilter, RunQuantity.FilterLoss, 15, 5, false),
            new(RunFault.WrongBasePressure, RunQuantity.RegulatorBase, 42e3, 15e3, true),
            new(RunFault.WrongGain, RunQuantity.RegulatorGain, 0.22 * gain, 0.09 * gain, true),
            new(RunFault.WrongOnset, RunQuantity.RegulatorOnset, 18e3, 8e3, true),
            new(RunFault.WrongInjectorSize, RunQuantity.InjectorFlow, 0.19, 0.06, true),
            new(RunFault.AirOffPlan, RunQuantity.VolumetricEfficiency, 0.2, 0.06, true),
            new(RunFault.RailSensorOffset, RunQuantity.RailSensor, 50e3, 20e3, true),
            new(RunFault.ManifoldSensorOffset, RunQuantity.ManifoldSensor, 10.5e3, 4e3, true),
            new(RunFault.FlowMeterOff, RunQuantity.FlowMeter, 0.15, 0.06, true),
        ];
    }

    /// <summary>The same for a fit, in units of the tolerance.</summary>
    public Freed In(RunModel model, int sign)
    {
        double tolerance = model.Tolerance[(int)Quantity];
        return new(Quantity, sign * Mean / tolerance, Deviation / tolerance);
    }
}
