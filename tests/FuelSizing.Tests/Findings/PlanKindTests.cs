using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
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

    /// <summary>What a run is not yet compared with is refused by name, with what to give instead: none of it would be seen in a log for what it is.</summary>
    [Fact]
    public void Plan_OfAKindThatARunIsNotComparedWith_IsRefused()
    {
        FuelSystem plan = Wren.System();
        Line own = Line.Of("own line", Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube);
        Says(plan.With(Staged.Of()), "a secondary set of injectors", "WithoutStagedInjectors");
        Says(
            plan.With(PumpParallel.Of(Pump.From(Wren.PumpOf(0.9)), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.8))))),
            "a pump that is switched by boost",
            "only the part of a run above 0.40 bar");
        Says(plan.With(CustomRegulator.Of(new OwnSetting(350))), "a regulator by a law of its own", "the nearest regulator of the library's kinds");
        Says(plan.With(plan.Demand.With(new OwnDemand(1.05))), "a fuel demand by a law of its own", "FuelDemandModel.WithoutLaw");
        Says(plan.With(SecondStreams.Held()), "a second stream", "FuelSystem.WithoutSecondStream");
        Says(plan.With(PumpParallel.Of(PumpBranch.Of(Pump.From(Wren.PumpOf(0.8)), discharge: [own]), Pump.From(Wren.PumpOf(0.7)))), "a pump with lines of its own", "as part of the supply line");
        Says(
            FuelSystem.Returnless(plan.Demand, plan.Injectors, Fixed.At(Wren.Kpa(350)), plan.Pump, plumbing: Plumbing.Of(toRegulator: [own])),
            "own line between the pumps and a regulator before the rail",
            "with the regulator at the pump");

        static void Says(FuelSystem refused, string what, string cure)
        {
            string message = Assert.Throws<ArgumentException>("plan", () => RunCheck.Of(refused)).Message;
            Assert.Contains(what, message, StringComparison.Ordinal);
            Assert.Contains(cure, message, StringComparison.Ordinal);
        }
    }

    /// <summary>Of what may differ from car to car each figure is the one given, and those not given are as they are by default.</summary>
    [Fact]
    public void Discrepancy_HasEachFigureThatIsGiven()
    {
        ModelDiscrepancy given = ModelDiscrepancy.Of(
            Wren.Percent(7),
            TemperatureDelta.FromKelvins(21),
            Wren.Percent(3),
            Wren.Kpa(23),
            Duration.FromMilliseconds(310),
            Duration.FromMilliseconds(70),
            Duration.FromMilliseconds(90),
            Duration.FromMilliseconds(65),
            Wren.Percent(1.7));
        Assert.Equal(7, given.AirByBoost.Percent, 12);
        Assert.Equal(21, given.ChargeTemperature.Kelvins, 12);
        Assert.Equal(3, given.AirBySpeed.Percent, 12);
        Assert.Equal(23, given.RegulatorSlope.Kilopascals, 12);
        Assert.Equal(310, given.LambdaDelay.Milliseconds, 12);
        Assert.Equal(70, given.LambdaDelayDeviation.Milliseconds, 12);
        Assert.Equal(90, given.Clock.Milliseconds, 12);
        Assert.Equal(65, given.PressureLag.Milliseconds, 12);
        Assert.Equal(1.7, given.FuelDensity.Percent, 12);
        Assert.Equal(ModelDiscrepancy.Default, ModelDiscrepancy.Of());
        Assert.NotEqual(given, ModelDiscrepancy.Default);
    }
}
