using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Every kind of system that can be planned can be compared with a run of itself.</summary>
public class PlanKindTests
{
    [Theory]
    [InlineData("rising", RegulatorBehaviour.RisingRate, 3)]
    [InlineData("series", RegulatorBehaviour.RisingRate, 6)]
    [InlineData("fixed", RegulatorBehaviour.Fixed, 0)]
    [InlineData("electronic", RegulatorBehaviour.ManifoldReferenced, 1)]
    [InlineData("drawn", RegulatorBehaviour.ManifoldReferenced, 1)]
    public void Car_JustAsPlanned_IsFoundSo(string kind, RegulatorBehaviour behaviour, double gain)
    {
        FuelSystem plan = OddRunTests.Plan(kind);
        double[] boosts = kind == "drawn" ? [-0.6, -0.4, -0.2, 0] : [-0.4, -0.2, 0, 0.1, 0.2, 0.3, 0.4, 0.45];
        Random random = new(11);
        double Scatter(double spread) => Normal.Sample(random, 0, spread);
        List<RunRow> rows = [];
        foreach (double boost in boosts)
        {
            foreach (double rpm in new[] { 2500.0, 3200, 3900, 4600, 5300 })
            {
                OperatingResult at = plan.Solve(OperatingPoint.At(Wren.Rpm(rpm), Pressure.FromBars(boost)));
                double lambda = 0.82 * at.Demand.FromAir.KilogramsPerSecond / at.Demand.MassFlow.KilogramsPerSecond;
                for (int reading = 0; reading < 3; reading++)
                {
                    rows.Add(RunRow.Of(
                        rows.Count + 1,
                        Wren.Rpm(rpm),
                        Duration.FromSeconds(rows.Count * 0.1),
                        at.Demand.ManifoldAbsolute + Pressure.FromPascals(Scatter(300)),
                        at.RailGauge + Pressure.FromPascals(Scatter(1500)),
                        at.Pulse + Duration.FromMilliseconds(Scatter(0.01)),
                        lambda: lambda * Math.Exp(Scatter(0.01)),
                        batteryVoltage: Wren.Volt(13.5 + Scatter(0.03)),
                        fuelVolumeFlow: at.InjectedFlow * Math.Exp(Scatter(0.01))));
                }
            }
        }

        RunFindings findings = RunFindings.Of(plan, RecordedRun.Of(kind, Atmosphere.Standard, rows));
        Assert.Equal(RunFault.None, findings.Fault);
        Assert.All(findings.Agreement, agreement => Assert.True(agreement.Agrees, agreement.ToString()));
        Assert.Equal(behaviour, findings.Regulator.Answer?.Behaviour);
        Assert.InRange(findings.Regulator.Answer!.Gain.Value, gain - 0.1, gain + 0.1);
    }
}
