using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Quantities;

namespace FuelSizing.Tests.Findings;

/// <summary>Faults in words: every name and every advice.</summary>
public class FaultWordsTests
{
    [Fact]
    public void EveryFault_HasANameAndAnAdviceOfItsOwn()
    {
        RunFault[] faults = Enum.GetValues<RunFault>();
        Assert.Equal(faults.Length, faults.Select(FaultWords.Name).Distinct().Count());
        Assert.Equal(faults.Length, faults.Select(fault => FaultWords.Advice(PulledWren.Check, fault).Code).Distinct().Count());
        Assert.Equal("remedy.clogged-filter", FaultWords.Advice(PulledWren.Check, RunFault.CloggedFilter).Code);

        // A plan without a filter has none to change.
        RunCheck bare = RunCheck.Of(PulledWren.Plan.With(Plumbing.Of(supply: [Line.Of("hose", UnitsNet.Length.FromMillimeters(8), UnitsNet.Length.FromMeters(2), Roughness.RubberHose)])));
        Assert.Equal("remedy.restriction", FaultWords.Advice(bare, RunFault.CloggedFilter).Code);
    }

    [Fact]
    public void Restriction_OfAPlanWithoutFilter_IsSaidWithoutASize()
    {
        RunCheck bare = RunCheck.Of(PulledWren.Plan.With(Plumbing.None), Wren.Hill);
        RunModel model = bare.Model(ExactRun.Changed(
            ExactRun.Of(bare.Plan), (cells, i) => cells.Flow > UnitsNet.VolumeFlow.FromLitersPerHour(50) ? cells with { Rail = cells.Rail - Wren.Kpa(120) } : cells));
        Diagnosis diagnosis = Diagnosis.Of(bare, model, null, CancellationToken.None)!;
        Suspect filter = diagnosis.Suspects.Single(one => one.Fault == RunFault.CloggedFilter);
        Assert.Equal(
            "a restriction before the rail takes pressure that was not planned",
            FaultWords.Of(bare, diagnosis, filter with { Fit = diagnosis.Sound }).Size.ToString());
    }

    /// <summary>What a fit leaves open is said with its 95 % range, ± 1.96 standard errors; a factor's as the exponential of its ends.</summary>
    [Fact]
    public void Size_HasItsRange()
    {
        RunModel model = PulledWren.Check.Model(DiagnosisTests.RunWith(RunFault.WrongInjectorSize));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        RunFit fit = diagnosis.Suspects[0].Fit!;
        double half = 1.96 * fit.Error(RunQuantity.InjectorFlow);
        FaultFinding finding = FaultWords.Of(PulledWren.Check, diagnosis, diagnosis.Suspects[0]);
        double value = fit.Value(RunQuantity.InjectorFlow);
        Assert.Equal(
            FormattableString.Invariant($"the injectors pass {100 * Math.Exp(value):0} % ({100 * Math.Exp(value - half):0} % to {100 * Math.Exp(value + half):0} %) of their planned flow"),
            finding.Size.ToString());
        (RunFault Fault, RunQuantity Quantity, string Before, string After)[] factors =
        [
            (RunFault.WeakPump, RunQuantity.PumpFlow, "the pump delivers ", " of its planned flow"),
            (RunFault.AirOffPlan, RunQuantity.VolumetricEfficiency, "the engine draws ", " of the planned air, or lambda is misread by as much"),
            (RunFault.FlowMeterOff, RunQuantity.FlowMeter, "the flow meter reads ", " of the true flow"),
        ];
        foreach ((RunFault fault, RunQuantity quantity, string before, string after) in factors)
        {
            (double middle, double wide) = (fit.Value(quantity), 1.96 * fit.Error(quantity));
            Assert.Equal(
                FormattableString.Invariant($"{before}{100 * Math.Exp(middle):0} % ({100 * Math.Exp(middle - wide):0} % to {100 * Math.Exp(middle + wide):0} %){after}"),
                FaultWords.Of(PulledWren.Check, diagnosis, new(fault, 0.9, 20, fit)).Size.ToString());
        }

        Assert.Equal("wrong injector size", finding.Name);
        Assert.Equal(FormattableString.Invariant($"{finding.Size} (probability {Readable.Chance(finding.Probability)})"), finding.ToString());
        double gain = 1.96 * fit.Error(RunQuantity.RegulatorGain);
        double off = fit.Value(RunQuantity.RegulatorGain);
        Assert.Equal(
            FormattableString.Invariant($"the regulator's gain is {3 + off:0.00} (±{gain:0.00}) against 3.00 set"),
            FaultWords.Of(PulledWren.Check, diagnosis, new(RunFault.WrongGain, 0.9, 20, fit)).Size.ToString());
        double onset = 1.96 * fit.Error(RunQuantity.RegulatorOnset);
        Assert.Equal(
            FormattableString.Invariant($"the gain sets in at {(20e3 + fit.Value(RunQuantity.RegulatorOnset)) / 1e5:0.00} bar (±{onset / 1e5:0.00} bar) against 0.20 bar set"),
            FaultWords.Of(PulledWren.Check, diagnosis, new(RunFault.WrongOnset, 0.9, 20, fit)).Size.ToString());
        Assert.Equal(
            "wrong base pressure, not enough to say how large", FaultWords.Of(PulledWren.Check, diagnosis, new(RunFault.WrongBasePressure, 0.9, 3, null)).Size.ToString());
    }
}
