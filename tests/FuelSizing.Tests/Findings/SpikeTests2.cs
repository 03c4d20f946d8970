using FuelSizing.Findings;
using FuelSizing.Logs;

namespace FuelSizing.Tests.Findings;

public class SpikeTests2(Xunit.Abstractions.ITestOutputHelper o)
{
    [Theory]
    [InlineData(RunFault.None)]
    [InlineData(RunFault.WeakPump)]
    [InlineData(RunFault.CloggedFilter)]
    [InlineData(RunFault.WrongGain)]
    [InlineData(RunFault.RailSensorOffset)]
    public void Show(RunFault fault)
    {
        PulledWren car = PulledWren.With(fault, 3);
        RecordedRun run = car.Recorded(1);
        RunFindings f = RunFindings.Of(PulledWren.Check, run);
        o.WriteLine(f.Verdict);
        o.WriteLine($"{f.Duty}\n{f.Differential}\n{f.Regulator}\n{f.Fuel}\n{f.BrakeConsumption}\n{f.VolumetricEfficiency}\n{f.Sag}\n{f.DeadTime}\n{f.Lean}");
        foreach (PlanAgreement a in f.Agreement)
        {
            o.WriteLine(a.ToString());
        }

        o.WriteLine(string.Join("\n", f.Faults.Take(3)) + "\n" + string.Join("\n", f.Notes.Concat(f.WhatToChange)) + $"\n{f.PointsCompared} {f.RowsUsed} {f.RowsOutsideThePlan}");
        o.WriteLine("truth " + string.Join(" ", car.Off.Select(v => v.ToString("G3"))));
    }
}
