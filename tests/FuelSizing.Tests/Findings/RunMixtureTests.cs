using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>A recorded lambda beside the one that the plan's controller gives, and the limits that the plan sets for it.</summary>
public class RunMixtureTests
{
    private static readonly Atmosphere Air = Atmosphere.Of(Wren.Kpa(98.1), Temperature.FromDegreesCelsius(14));
    private static readonly Conditions Day = Conditions.Of(Air, Wren.Volt(13.6), Temperature.FromDegreesCelsius(37));
    private static readonly double[] Speeds = [.. Enumerable.Range(0, 60).Select(row => 3000 + (row * 50.0))];

    [Fact]
    public void LeanPlace_ThatTheControllerForetells_IsExplainedByItsCause()
    {
        FuelSystem plan = Plan(gain: 2);
        RunFindings findings = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (_, lambda) => lambda * 1.01));
        MixtureComparison beside = findings.Mixture.Answer!;
        Assert.InRange(beside.Rows, 50, Speeds.Length);
        Assert.Equal(1, beside.Median.Percent, 6);
        Assert.True(beside.Leanest.IsExplained);
        Assert.Equal(MixtureCauseKind.Air, beside.Leanest.Planned.Causes[0].Kind);
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        Assert.Contains("leaner by air that the controller does not know of", findings.Verdict.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void LeanPlace_ThatTheControllerDoesNotForetell_IsNotExplainedByIt()
    {
        FuelSystem plan = Plan(gain: 9);
        RunFindings findings = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (rpm, lambda) => rpm > 5500 ? lambda * 1.2 : lambda));
        MixturePlace leanest = findings.Mixture.Answer!.Leanest;
        Assert.False(leanest.IsExplained);
        Assert.Equal(1.2, leanest.Ratio, 6);
        Assert.Contains("does not explain it", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("leaner by air", findings.Verdict.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void LeanestThatThePlanAllows_CountsWhereItIsRicherThanTheAllowance()
    {
        // Planned 0.83: by the allowance of 6 % lambda 0.86 passes, by the plan's own limit of 0.85 on boost it does not.
        FuelSystem plan = Plan(gain: 9).With(SizingLimits.Default.With(MixtureLimits.Of(0.85, Pressure.FromBars(0.15))));
        RunFindings lean = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (_, _) => 0.86));
        Assert.Contains("0.85 the leanest that the plan allows", lean.Verdict.ToString(), StringComparison.Ordinal);
        LeanExcursion stretch = Assert.Single(lean.Lean.Answer!.Stretches);
        Assert.True(stretch.IsPlanLimit);
        Assert.True(stretch.From.Boost!.Value.Bars >= 0.15);

        RunFindings within = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (rpm, _) => 0.84 + (rpm % 100 / 1e4)));
        Assert.Empty(within.Lean.Answer!.Stretches);

        // A plan that allows more does not stretch the allowance.
        FuelSystem loose = plan.With(SizingLimits.Default.With(MixtureLimits.Of(0.95, Pressure.FromBars(0.15))));
        Assert.False(RunFindings.Of(RunCheck.Of(loose, Day), Run(loose, (_, _) => 0.9)).Lean.Answer!.Worst!.IsPlanLimit);
    }

    [Fact]
    public void Controller_ThatIsNotDescribed_ForetellsNothing()
    {
        FuelSystem plan = Plan(gain: 9).With(IdealController.Instance);
        Finding<MixtureComparison> mixture = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (_, _) => 0.83)).Mixture;
        Assert.Null(mixture.Answer);
        Assert.Contains("controller", mixture.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void RunWithoutLambda_SaysWhatIsMissing()
    {
        FuelSystem plan = Plan(gain: 9);
        Finding<MixtureComparison> mixture = RunFindings.Of(RunCheck.Of(plan, Day), Run(plan, (_, _) => null)).Mixture;
        Assert.Null(mixture.Answer);
        Assert.Equal([Channel.Lambda], mixture.Missing);
    }

    private static RecordedRun Run(FuelSystem plan, Func<double, double, double?> recorded) => RecordedRun.Of(
        "pull",
        Air,
        [.. Speeds.Select((rpm, row) =>
        {
            OperatingResult there = plan.Solve(OperatingPoint.At(Wren.Rpm(rpm), Dunnock.Centrifugal.At(Wren.Rpm(rpm), plan.Demand, Air), Day));
            return RunRow.Of(
                row + 1,
                Wren.Rpm(rpm),
                Duration.FromSeconds(row * 0.1),
                Air.Pressure + there.Point.Boost,
                there.Mixture.RailGauge,
                there.Mixture.CommandedPulse,
                lambda: recorded(rpm, there.Mixture.Lambda ?? 0.83) is { } lambda ? lambda : null,
                batteryVoltage: Day.SupplyVoltage,
                fuelTemperature: Day.FuelTemperature);
        })]);

    private static FuelSystem Plan(double gain)
    {
        FuelSystem unboosted = FuelSystem.Return(
            Dunnock.Demand(),
            InjectorSet.Of(Wren.InjectorOf(280), 6),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(PumpCurve.At(
                "ample", Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(400)), (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(250)))));
        double[] speeds = [2500, 3500, 4500, 5500, 6600];
        return unboosted
            .With(RecordedPulseController.BySpeed([.. speeds.Select(rpm => (
                Wren.Rpm(rpm), unboosted.Solve(OperatingPoint.At(Wren.Rpm(rpm), Pressure.Zero, Day)).Mixture.CommandedPulse!.Value))]))
            .With(RisingRate.From(Wren.Kpa(300), gain, Pressure.Zero));
    }
}
