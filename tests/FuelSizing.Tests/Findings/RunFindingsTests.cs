using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>What a run says, and what it cannot say for lack of a channel.</summary>
public class RunFindingsTests
{
    private static readonly PulledWren Sound = PulledWren.With(RunFault.None, 1);

    private static readonly RecordedRun Run = Sound.Recorded(1);

    private static readonly RunFindings Findings = RunFindings.Of(PulledWren.Check, Run);

    [Fact]
    public void SoundCar_IsAsPlanned()
    {
        Assert.Equal(RunFault.None, Findings.Fault);
        Assert.All(Findings.Agreement, agreement => Assert.True(agreement.Agrees, agreement.ToString()));
    }

    [Fact]
    public void EveryRow_IsUsedOrSaidToBeOutside()
    {
        Assert.Equal(12, Findings.RowsOutsideThePlan);
        Assert.Equal(Run.Rows.Count - 12, Findings.RowsUsed);
        Assert.Equal(0, Findings.RowsUnsteady);
    }

    [Fact]
    public void Rows_ThatStandAloneBetweenSteadyOnes_AreCountedAsUnsteady()
    {
        // Four rows of every held speed make a point; every ninth row is replaced by one of another speed.
        RecordedRun run = RecordedRun.Of("unsteady", Run.Atmosphere, Run.Rows.Select((row, i) => i % 9 == 8
            ? RunRow.Of(i + 1, Wren.Rpm(1200), row.Time, Run.Atmosphere.Pressure)
            : row));
        RunFindings findings = RunFindings.Of(PulledWren.Check, run);
        Assert.InRange(findings.RowsUnsteady, 20, 60);
        Assert.Equal(run.Rows.Count, findings.RowsUsed + findings.RowsUnsteady + findings.RowsOutsideThePlan);
    }

    [Fact]
    public void Duty_IsTheMaximumOfTheRows()
    {
        double maximum = Run.Rows.Where(row => row.InjectorPulse is not null)
            .Max(row => row.InjectorPulse!.Value.Seconds * row.Speed.RevolutionsPerSecond / 2);
        Assert.Equal(100 * maximum, Findings.Duty.Answer!.Maximum.Percent, 6);
    }

    [Fact]
    public void Differential_IsRailLessBoost()
    {
        DifferentialUse use = Findings.Differential.Answer!;
        double[] across = [.. Sound.Solved.Select(at => at.InjectorDifferential.Kilopascals)];
        Assert.InRange(use.Minimum.Kilopascals, across.Min() - 8, across.Min() + 8);
        Assert.InRange(use.Maximum.Kilopascals, across.Max() - 8, across.Max() + 8);
    }

    [Fact]
    public void BsfcAndAir_AreThoseOfTheCar()
    {
        // The meter's own error is in both.
        double meter = Math.Exp(Sound.Off[(int)RunQuantity.FlowMeter]);
        double bsfc = 315 * Math.Exp(Sound.Off[(int)RunQuantity.BrakeSpecificFuelConsumption]) * meter;
        Assert.Equal(bsfc, Findings.BrakeConsumption.Answer!.Found.Value.GramsPerKiloWattHour, 1.5);
        double air = Math.Exp(Sound.Off[(int)RunQuantity.VolumetricEfficiency] - Sound.Off[(int)RunQuantity.InjectorFlow]);
        Assert.InRange(Findings.VolumetricEfficiency.Answer!.Factor.Value.DecimalFractions, air - 0.015, air + 0.015);
    }

    [Fact]
    public void DeadTime_OfInjectorsThatOpenLate_IsFound()
    {
        RecordedRun late = Changed(Run, row => row with { Pulse = row.Pulse + Duration.FromMilliseconds(0.3) });
        DeadTimeFound found = RunFindings.Of(PulledWren.Check, late).DeadTime.Answer!;
        double truth = 0.3 + (1e3 * Sound.Off[(int)RunQuantity.DeadTime]);
        Assert.InRange(truth, found.OverPlanned.Minimum.Milliseconds, found.OverPlanned.Maximum.Milliseconds);
        Assert.True(found.OverPlanned.Minimum.Milliseconds > 0.1);
    }

    [Fact]
    public void LeanStretch_OnBoost_IsFoundWithPlaceAndLength()
    {
        // Rows 120 to 129 at lambda 0.95.
        RecordedRun lean = Changed(Run, row => row.Line is >= 120 and < 130 ? row with { Lambda = 0.95 } : row);
        LeanExcursion found = Assert.Single(RunFindings.Of(PulledWren.Check, lean).Lean.Answer!.Stretches);
        Assert.Equal(120, found.From.Line);
        Assert.Equal(10, found.Rows);
        Assert.Equal(0.45, found.Length!.Value.Seconds, 6);
        Assert.Equal(0.95, found.Lambda);
        Assert.Contains("0.45 s long", found.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Sag_OfAClogged_Filter_IsSizedAndLaidToTheFilter()
    {
        PressureSag sag = RunFindings.Of(PulledWren.Check, PulledWren.With(RunFault.CloggedFilter, 3).Recorded(1)).Sag.Answer!;
        Assert.Equal(RunFault.CloggedFilter, sag.Causes[0].Fault);
        Assert.True(sag.Points > 5);
        Assert.InRange(sag.Maximum.Kilopascals, 50, 250);
    }

    [Fact]
    public void Notes_NameEveryMissingChannel()
    {
        RecordedRun bare = RecordedRun.Of("speed only", PulledWren.Air, Enumerable.Range(1, 30).Select(i => RunRow.Of(i, Wren.Rpm(2000 + (100 * i)))));
        RunFindings findings = RunFindings.Of(PulledWren.Check, bare);
        Assert.False(findings.IsDiagnosed);
        Assert.StartsWith("cannot tell", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Equal([Channel.InjectorPulse, Channel.DutyCycle], findings.Duty.Missing);
        Assert.Equal([Channel.RailGauge, Channel.ManifoldAbsolute], findings.Differential.Missing);
        Assert.Equal([Channel.RailGauge, Channel.ManifoldAbsolute], findings.Regulator.Missing);
        Assert.Equal([Channel.Power, Channel.Torque], findings.BrakeConsumption.Missing);
        Assert.Equal([Channel.Lambda], findings.VolumetricEfficiency.Missing);
        Assert.Equal([Channel.Lambda, Channel.ManifoldAbsolute], findings.Lean.Missing);
        Assert.Equal([Channel.FuelVolumeFlow, Channel.InjectorPulse], findings.DeadTime.Missing);
        foreach (string name in new[] { "manifold pressure", "rail pressure", "pulse or duty cycle", "fuel flow", "lambda", "battery voltage", "power or torque", "fuel temperature" })
        {
            Assert.Contains(findings.Notes, note => note.ToString().StartsWith($"{name} was not recorded", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void DutyTorqueAndMass_StandForPulsePowerAndVolume()
    {
        double density = PulledWren.Plan.Demand.Consumption.Fuel.DensityAt(Temperature.FromDegreesCelsius(35)).KilogramsPerCubicMeter;
        RecordedRun other = RecordedRun.Of("other channels", PulledWren.Air, Run.Rows.Select((row, i) => RunRow.Of(
            i + 1,
            row.Speed,
            row.Time,
            row.ManifoldAbsolute,
            row.RailGauge,
            dutyCycle: row.InjectorPulse is { } pulse ? Ratio.FromDecimalFractions(pulse.Seconds * row.Speed.RevolutionsPerSecond / 2) : null,
            lambda: row.Lambda,
            batteryVoltage: row.BatteryVoltage,
            torque: row.Power is { } power ? Torque.FromNewtonMeters((double)power.Watts / row.Speed.RadiansPerSecond) : null,
            fuelTemperature: row.FuelTemperature,
            fuelMassFlow: row.FuelVolumeFlow is { } flow ? MassFlow.FromKilogramsPerSecond(flow.CubicMetersPerSecond * density) : null)));
        RunFindings findings = RunFindings.Of(PulledWren.Check, other);
        Assert.Equal(Findings.Duty.Answer!.Maximum.Percent, findings.Duty.Answer!.Maximum.Percent, 6);
        Assert.Equal(
            Findings.BrakeConsumption.Answer!.Found.Value.GramsPerKiloWattHour,
            findings.BrakeConsumption.Answer!.Found.Value.GramsPerKiloWattHour,
            0.3);
        Assert.Equal(RunFault.None, findings.Fault);
    }

    /// <summary>
    /// Without flow meter, power and a pump at its limit, wrong injectors and wrong air look alike: both are named, and what would
    /// tell them apart.
    /// </summary>
    [Fact]
    public void WrongInjectors_WithLambdaAlone_AreNamedWithTheAir()
    {
        RecordedRun run = Changed(PulledWren.With(RunFault.WrongInjectorSize, 5).Recorded(1), row => row with { Flow = null, Power = null });
        RunFindings findings = RunFindings.Of(PulledWren.Check, RecordedRun.Of("first pull", run.Atmosphere, run.Rows.Take(60)));
        RunFault[] named = [findings.Fault, .. findings.Rivals.Select(rival => rival.Fault)];
        Assert.Contains(RunFault.WrongInjectorSize, named);
        Assert.Contains(RunFault.AirOffPlan, named);
        Assert.Contains("this run cannot tell them apart", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Contains(findings.WhatToChange, change => change.ToString().StartsWith("Measure the static flow of the injectors", StringComparison.Ordinal));
        Assert.Equal("next.injector-flow", findings.NextTests[0].What.Code);
        Assert.Contains(findings.NextTests, test => test.What.Code == "next.flow-meter");
    }

    /// <summary>
    /// A supply that only just falls short at one voltage shows that it is short, but hardly in what way: with the pulls at a lower
    /// voltage taken out, many of the same runs name clogged filter and weak pump together, and hardly one names a wrong fault.
    /// </summary>
    [Fact]
    public void CloggedFilter_SeenAtOneVoltageOnly_IsOftenNamedWithThePump()
    {
        (int both, int wrong) = (0, 0);
        for (int seed = 0; seed < 12; seed++)
        {
            PulledWren car = PulledWren.With(RunFault.CloggedFilter, seed);
            RecordedRun run = car.Recorded(seed);
            RunFindings findings = RunFindings.Of(PulledWren.Check, RecordedRun.Of(
                "usual supply", run.Atmosphere, run.Rows.Where(row => row.BatteryVoltage is not { } volts || volts.Volts > car.SupplyVolts - 0.3)));
            RunFault[] named = [findings.Fault, .. findings.Rivals.Select(rival => rival.Fault)];
            both += named.Contains(RunFault.WeakPump) && named.Contains(RunFault.CloggedFilter) ? 1 : 0;
            wrong += named is [not RunFault.CloggedFilter and not RunFault.None] ? 1 : 0;
        }

        Assert.InRange(both, 3, 12);
        Assert.InRange(wrong, 0, 1);
    }

    /// <summary>A weak pump that was never the limit cannot show.</summary>
    [Fact]
    public void Pump_ThatWasNeverTheLimit_IsSaidNotToBeJudged()
    {
        RecordedRun gentle = RecordedRun.Of("gentle", PulledWren.Air, PulledWren.With(RunFault.WeakPump, 1).Recorded(1).Rows
            .Where(row => row.ManifoldAbsolute!.Value < PulledWren.Air.Pressure + Wren.Kpa(25) && row.FuelVolumeFlow?.LitersPerHour < 40));
        RunFindings findings = RunFindings.Of(PulledWren.Check, gentle);
        Assert.Equal(RunFault.None, findings.Fault);
        Assert.Contains(findings.Notes, note => note.ToString().StartsWith("the pump was never the limit", StringComparison.Ordinal));
    }

    [Fact]
    public void Faults_AtOnce_ThatNoSingleOneExplains_AreNotForcedIntoOne()
    {
        // Rail 80 kPa too low in every other pull only: no single fault does that.
        RecordedRun odd = Changed(Run, row => (row.Line / 48) % 2 == 0 && row.Rail is { } rail ? row with { Rail = rail - Wren.Kpa(80) } : row);
        RunFindings findings = RunFindings.Of(PulledWren.Check, odd);
        Assert.Contains(findings.Notes, note => note.ToString().StartsWith("the run scatters", StringComparison.Ordinal));
    }

    [Fact]
    public void Verdict_OfAFault_NamesItWithItsSizeAndWhatToDo()
    {
        RunFindings findings = RunFindings.Of(PulledWren.Check, PulledWren.With(RunFault.WrongGain, 3).Recorded(1));
        Assert.Equal(RunFault.WrongGain, findings.Fault);
        Assert.Contains(findings.Verdict.Reasons, reason => reason.ToString()!.Contains("against 3.00 set", StringComparison.Ordinal));
        Assert.Equal("Set the gain anew, or plan with the gain found.", findings.WhatToChange[0].ToString());
    }

    private static RecordedRun Changed(RecordedRun run, Func<Reading, Reading> change) =>
        RecordedRun.Of(run.Name, run.Atmosphere, run.Rows.Select((row, i) =>
        {
            Reading was = new(row.Line, row.RailGauge, row.InjectorPulse, row.Lambda, row.FuelVolumeFlow, row.Power);
            Reading now = row.InjectorPulse is null ? was : change(was);
            return RunRow.Of(
                i + 1,
                row.Speed,
                row.Time,
                row.ManifoldAbsolute,
                now.Rail,
                now.Pulse,
                lambda: now.Lambda,
                batteryVoltage: row.BatteryVoltage,
                power: now.Power,
                fuelTemperature: row.FuelTemperature,
                fuelVolumeFlow: now.Flow);
        }));

    private sealed record Reading(long Line, Pressure? Rail, Duration? Pulse, double? Lambda, VolumeFlow? Flow, Power? Power);
}
