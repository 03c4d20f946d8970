using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Logs;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Runs and plans that nobody would make: an answer or a reason, never a crash and never a number that is none.</summary>
public class OddRunTests
{
    public static TheoryData<string> Plans => ["rising", "series", "fixed", "electronic", "drawn"];

    [Theory]
    [MemberData(nameof(Plans))]
    public void AnyRun_OfAnyPlan_GetsAnAnswerOrAReason(string plan)
    {
        RunCheck check = RunCheck.Of(Plan(plan));
        for (int seed = 0; seed < 20; seed++)
        {
            Random random = new(seed);
            RecordedRun run = RecordedRun.Of("odd", Atmosphere.Standard, Rows(random, plan == "drawn"));
            RunFindings findings = RunFindings.Of(check, run);
            Assert.InRange(findings.RowsUsed + findings.RowsOutsideThePlan, 0, run.Rows.Count);
            string[] said =
            [
                findings.ToString(), .. findings.WhatToChange.Select(change => change.ToString()), .. findings.Notes.Select(note => note.ToString()), findings.Duty.ToString(), findings.Differential.ToString(),
                findings.Regulator.ToString(), findings.Fuel.ToString(), findings.BrakeConsumption.ToString(),
                findings.VolumetricEfficiency.ToString(), findings.Sag.ToString(), findings.DeadTime.ToString(), findings.Lean.ToString(),
                .. findings.Agreement.Select(one => one.ToString()), .. findings.Faults.Select(fault => fault.ToString()),
                .. Calibration.Of(check, run).Figures.Select(figure => figure.ToString()),
            ];
            Assert.All(said, text => Assert.False(
                text.Contains("NaN", StringComparison.Ordinal) || text.Contains('∞', StringComparison.Ordinal), $"{plan}, seed {seed}: {text}"));
            Assert.All(findings.Faults, fault => Assert.True(double.IsFinite(fault.Evidence), $"{plan}, seed {seed}: {fault}"));
        }
    }

    [Fact]
    public void NoRows_AreNoReasonToFail()
    {
        RunFindings findings = RunFindings.Of(PulledWren.Check, RecordedRun.Of("empty", Atmosphere.Standard, []));
        Assert.False(findings.IsDiagnosed);
        Assert.Equal(0, findings.PointsCompared);
        Assert.All(Calibration.Of(PulledWren.Check, findings.Run).Figures, figure => Assert.False(figure.IsDetermined));
    }

    internal static FuelSystem Plan(string kind) => kind switch
    {
        "rising" => PulledWren.Plan,
        "series" => Wren.System(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(150), 6, Wren.Kpa(0), Wren.Kpa(600)))),
        "fixed" => FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), Fixed.At(Wren.Kpa(400)), Pump.From(Wren.Pump)),
        "electronic" => FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)),
            PumpParallel.Of(Pump.From(Wren.Pump), Pump.From(Wren.PumpOf(0.8)))),
        _ => FuelSystem.Return(
            Wren.Demand(induction: Induction.NaturallyAspirated),
            InjectorSet.Of(Wren.InjectorOf(360), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.Pump)),
    };

    private static IEnumerable<RunRow> Rows(Random random, bool drawn)
    {
        bool[] has = [.. Enumerable.Range(0, 9).Select(_ => random.Next(5) > 0)];
        bool wild = random.Next(2) == 0;
        double At(double minimum, double maximum, double low, double high) =>
            wild && random.Next(4) == 0 ? minimum + ((maximum - minimum) * random.NextDouble()) : low + ((high - low) * random.NextDouble());
        bool Has(int channel) => has[channel] && random.Next(10) > 0;
        int rows = random.Next(3, 120);
        for (int i = 1; i <= rows; i++)
        {
            yield return RunRow.Of(
                i,
                Wren.Rpm(At(0, 25_000, 1500, 7200)),
                null,
                Has(0) ? Wren.Kpa(At(5, 550, 40, drawn ? 101 : 160)) : null,
                Has(1) ? Wren.Kpa(At(-110, 3000, 250, 450)) : null,
                Has(2) ? Wren.Ms(At(0, 500, 2, 14)) : null,
                lambda: Has(3) ? At(0.3, 30, 0.75, 1.05) : null,
                batteryVoltage: Has(4) ? Wren.Volt(At(0, 32, 12, 14.4)) : null,
                power: Has(5) ? Power.FromKilowatts(At(-500, 3000, 20, 200)) : null,
                fuelTemperature: Has(6) ? Temperature.FromDegreesCelsius(At(-50, 150, 15, 50)) : null,
                fuelVolumeFlow: Has(7) ? VolumeFlow.FromLitersPerHour(At(-100, 5000, 15, 110)) : null);
        }
    }
}
