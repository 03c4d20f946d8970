using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Data;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Wren;

namespace FuelSizing.Extensions.Tests;

/// <summary>A part of one's own that says what a part of the library says gives what that gives; and what it cannot take part in refuses it with the reason.</summary>
public class OwnPartTests
{
    private static readonly RotationalSpeed[] Speeds = [Rpm(2000), Rpm(4000), Rpm(6800)];
    private static readonly Pressure[] Boosts = [Kpa(0), Kpa(30), Kpa(60)];

    private static FuelSystem Hill { get; } = FuelSizing.Tests.Wren.System(injector: 560);

    private static Filter Strainer { get; } = Filter.Of("strainer", VolumeFlow.FromLitersPerHour(200), Kpa(8), 1, DynamicViscosity.FromMillipascalSeconds(0.5));

    /// <summary>The library's filter, written as a law: Darcy's, Δp = Δp_r (Q/Q_r) (μ/μ_r).</summary>
    private sealed record DarcyFilter : IFlowLossLaw
    {
        public string Name => "strainer";

        public VolumeFlow MaximumFlow => VolumeFlow.FromLitersPerHour(600);

        public Pressure LossAt(VolumeFlow flow, Density density, KinematicViscosity viscosity) =>
            Pressure.FromPascals(8000 * (flow / VolumeFlow.FromLitersPerHour(200)) * (density.KilogramsPerCubicMeter * viscosity.SquareMetersPerSecond / 0.5e-3));
    }

    /// <summary>The library's estimate, written as a law.</summary>
    private sealed record Estimated : IFuelDemandLaw
    {
        public Statement Text => Statement.Of("own.demand.estimated", $"the library's estimate");

        public bool FollowsEstimate => true;

        public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

        public IReadOnlyList<Pressure> BoostKinks => [];

        public MassFlow FuelAt(DemandPlace place) => place.Estimate.MassFlow;
    }

    /// <summary>Recorded pulses on a straight line over speed, written as a law.</summary>
    private sealed record StraightPulse : IControllerLaw
    {
        public Statement Text => Statement.Of("own.controller.straight", $"a pulse on a straight line over speed");

        public bool ReadsRailPressure => false;

        public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

        public IReadOnlyList<Pressure> ManifoldKinks => [];

        public Duration? PulseAt(ControllerReading at) => Ms(7 + ((at.Speed.RevolutionsPerMinute - 2000) / 4800));
    }

    [Fact]
    public void Regulator_OneForOne_GivesWhatTheLibrarysGives()
    {
        FuelSystem own = Hill.With(CustomRegulator.Of(new OneForOne()));
        SameMargins(Hill, own);
        Assert.Equal(Hill.Sweep(Speeds, Boosts).ToString(), own.Sweep(Speeds, Boosts).ToString());
        FuelSystem falling = Hill.With(ManifoldReferenced.From(Kpa(300)).WithFlow(RegulatorFlow.Rising(Kpa(20), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60))));
        SameMargins(falling, Hill.With(CustomRegulator.Of(new OneForOne()).WithFlow(((ManifoldReferenced)falling.Regulator).Flow!)));
    }

    [Fact]
    public void Loss_ByDarcysLaw_GivesWhatTheLibrarysFilterGives()
    {
        FuelSystem made = Hill.With(Plumbing.Of(supply: [Strainer], returnLine: [Strainer]));
        FuelSystem own = Hill.With(Plumbing.Of(supply: [CustomLoss.Of(new DarcyFilter())], returnLine: [CustomLoss.Of(new DarcyFilter())]));
        SameMargins(made, own);

        // It is judged how far its law is known; that there is no filter is still told.
        Assert.Equal(Outcome.Holds, own.Solve(At(6800, 0.6)).Margins.Single(margin => margin.Part == Part.Filter).Outcome);
        Assert.Contains(own.NotJudged, open => open.Part == Part.Filter);
        Assert.DoesNotContain(made.NotJudged, open => open.Part == Part.Filter);
    }

    /// <summary>Past the end of its data the loss is not known, and nothing that rests on it is green.</summary>
    [Fact]
    public void Loss_PastItsData_IsNotGreen()
    {
        OperatingResult result = Hill.With(Plumbing.Of(supply: [CustomLoss.Of(new LossBy(flow => flow * 0.01))])).With(FuelSizing.Pumps.Pump.From(PumpOf(4))).Solve(At(6000, 0.5));
        Margin filter = result.Margins.Single(margin => margin.Part == Part.Filter);
        Assert.Equal(Outcome.CannotSay, filter.Outcome);
        Assert.Contains("known only up to 400 L/h", filter.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Demand_OfTheEstimate_GivesWhatTheLibraryGives()
    {
        FuelSystem own = Hill.With(Hill.Demand.With(new Estimated()));
        SameMargins(Hill, own);

        // The whole is the law's: 4 % more fuel is 4 % more of everything that is injected.
        FuelSystem richer = Hill.With(Hill.Demand.With(new RicherOnBoost()));
        Assert.Equal(1.04, richer.Solve(At(6800, 0.6)).InjectedFlow / Hill.Solve(At(6800, 0.6)).InjectedFlow, 1e-12);
        Assert.Equal(Hill.Solve(At(6800, 0.2)).InjectedFlow, richer.Solve(At(6800, 0.2)).InjectedFlow);
        Assert.Contains("the demand's own law", richer.Solve(At(6800, 0.6)).Working.ToString(), StringComparison.Ordinal);
        Assert.Equal(Hill.Demand, richer.Demand.WithoutLaw());
    }

    [Fact]
    public void Controller_OfRecordedPulses_GivesWhatTheLibrarysGives()
    {
        FuelSystem recorded = Hill.With(RecordedPulseController.BySpeed((Rpm(2000), Ms(7)), (Rpm(6800), Ms(8))));
        FuelSystem own = Hill.With(CustomController.Of(new StraightPulse()));
        foreach (OperatingPoint point in Points())
        {
            DeliveredMixture one = recorded.Solve(point).Mixture;
            DeliveredMixture other = own.Solve(point).Mixture;
            Assert.Equal(one.Lambda!.Value, other.Lambda!.Value, 1e-10);
        }

        // Nothing is known of why, but that it is the pulse.
        Assert.Equal("mixture.own-pulse-short", own.Solve(At(6800, 0.6)).Mixture.Causes[0].Text.Code);
        Assert.Contains("the controller's own law", own.Solve(At(6800, 0.6)).Mixture.Causes[0].ToString(), StringComparison.Ordinal);
    }

    /// <summary>A law that has no data somewhere leaves the mixture unsaid there, and the verdict with it.</summary>
    [Fact]
    public void Controller_WithoutData_LeavesTheMixtureUnsaid()
    {
        FuelSystem own = Hill.With(CustomController.Of(new PulseBy(at => at.ManifoldAbsolute.Kilopascals > 140 ? double.NaN : 8)));
        Assert.NotNull(own.Solve(At(5000, 0.2)).Mixture.Lambda);
        Assert.Null(own.Solve(At(5000, 0.6)).Mixture.Lambda);
    }

    /// <summary>Of the law the pump has what its curves have: to half a percent everywhere, and to the last figures at the voltages and rises that were read.</summary>
    [Fact]
    public void Pump_ByALaw_DeliversWhatTheLawSays()
    {
        StraightPump law = new();
        FuelSizing.Pumps.Pump pump = PumpLaw.Tabulated(law);
        foreach (double volts in (double[])[9, 10.1, 12, 13.5, 14.9])
        {
            VolumeFlow free = law.FlowAt(Kpa(0), Volt(volts));
            foreach ((Pressure rise, VolumeFlow flow) in pump.CurveAt(Volt(volts), 30).SkipLast(1))
            {
                Assert.Equal(law.FlowAt(rise, Volt(volts)) / free, flow / free, 5e-3);
            }
        }

        Assert.Equal(210, pump.CurveAt(Volt(13.5))[0].Flow.LitersPerHour * 13.5 / 13.5, 0.5);
        Assert.Equal(pump, PumpLaw.Tabulated(new StraightPump()));
    }

    [Fact]
    public void Input_OfOnesOwn_IsDrawnWithTheOthers()
    {
        OperatingPoint point = At(6000, 0.5);
        UncertainSystem own = UncertainSystem.Of(Hill, point, GoodParts.Condition, UncertainInput.InjectorFlowFactor(Distribution.Uniform(Percent(96), Percent(104))));
        MonteCarloResult result = own.MonteCarlo(Sampling.Of(2_000, seed: 3, threads: 2));

        // Condition takes off the pump's flow and nothing else; the library's own input of the same thing draws the same margins in another order.
        UncertainSystem made = UncertainSystem.Of(
            Hill, point, UncertainInput.PumpFlowFactor(Distribution.Uniform(Percent(90), Percent(100))), UncertainInput.InjectorFlowFactor(Distribution.Uniform(Percent(96), Percent(104))));
        Assert.Equal(made.MonteCarlo(Sampling.Of(2_000, seed: 3)).All.Holds.DecimalFractions, result.All.Holds.DecimalFractions, 0.05);
        Assert.Equal("condition of the pump", own.Inputs[0].Name);
        Assert.Equal(100, ((Ratio)own.Inputs[0].ValueAt(Percent(99.999))).Percent, 0.01);
        ArgumentException twice = Assert.Throws<ArgumentException>(() => UncertainSystem.Of(Hill, point, GoodParts.Condition, GoodParts.Condition));
        Assert.Contains("twice", twice.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Results_OfOwnParts_LeaveTheProcess()
    {
        FuelSystem own = Own();
        ResultData data = ResultData.Of(own.Sweep(Speeds, Boosts));
        Assert.Equal(data, ResultData.Parse("sweep", data.ToJson()));
        Assert.Contains("own.return-flow", data.ToJson(), StringComparison.Ordinal);
        Assert.Contains("fuel cooler", own.Solve(At(6000, 0.5)).Working.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatDoesNotTakeThem_SaysSo()
    {
        (FuelSystem System, string Says)[] notBatched = [(Hill.With(CustomRegulator.Of(new OneForOne())), "a regulator by a law of its own"), (Hill.With(Hill.Demand.With(new Estimated())), "a fuel demand by a law of its own")];
        foreach ((FuelSystem system, string says) in notBatched)
        {
            Assert.Contains(says, Assert.Throws<ArgumentException>(() => PointBatch.Of(system.Parts)).Message, StringComparison.Ordinal);
            Assert.Contains(says, Assert.Throws<ArgumentException>(() => RunCheck.Of(system)).Message, StringComparison.Ordinal);
        }

        ArgumentException evaporating = Assert.Throws<ArgumentException>(() => Hill.Demand.WithEvaporation(Percent(20)).With(new Estimated()));
        Assert.Contains("Put it into the law", evaporating.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Hill.Demand.With(new Estimated()).WithEvaporation(Percent(20)));
        ArgumentException moot = Assert.Throws<ArgumentException>(() => UncertainSystem.Of(
            Hill.With(Hill.Demand.With(new MeasuredPlane())), At(6000, 0.5), UncertainInput.VolumetricEfficiencyFactor(Distribution.Uniform(Percent(96), Percent(104)))));
        Assert.Contains("it would change nothing", moot.Message, StringComparison.Ordinal);
    }

    /// <summary>A law that gives what is none is stopped where it gives it, with its name, the place and the range.</summary>
    [Fact]
    public void Laws_ThatGiveWhatIsNone_AreStoppedThere()
    {
        Says("over 0 and up to 2,000 kPa", () => Hill.With(CustomRegulator.Of(new RegulatorBy(_ => -5))).Solve(At(6000, 0.5)));
        Says("not below zero", () => Hill.With(Plumbing.Of(supply: [CustomLoss.Of(new LossBy(_ => -3))])).Solve(At(6000, 0.5)));
        Says("over 0 and up to 1 kg/s", () => Hill.With(Hill.Demand.With(new DemandBy((_, _, _) => 0))).Solve(At(6000, 0.5)));
        Says("0 to 500 ms", () => Hill.With(CustomController.Of(new PulseBy(_ => 700))).Solve(At(6000, 0.5)));

        static void Says(string words, Func<object> solve) =>
            Assert.Contains(words, Assert.Throws<InvalidOperationException>(solve).Message, StringComparison.Ordinal);
    }

    /// <summary>Questions take them too: a shifted law serves where the least base pressure is asked for.</summary>
    [Fact]
    public void Questions_TakeThem()
    {
        FuelSystem made = Hill;
        FuelSystem own = Hill.With(CustomRegulator.Of(new OneForOne()));
        Assert.Equal(SystemSizing.MinimumBasePressure(made, At(6000, 0.5)).ToString(), SystemSizing.MinimumBasePressure(own, At(6000, 0.5)).ToString());
        Assert.Equal(
            SystemSizing.MaximumBoost(made, [Rpm(6000)], Conditions.Default).ToString(), SystemSizing.MaximumBoost(own, [Rpm(6000)], Conditions.Default).ToString());
        Assert.NotEmpty(Own().Sweep(Speeds, Boosts).Standings);
    }

    private static FuelSystem Own() => FuelSystem.Return(
        Demand().With(new RicherOnBoost()),
        InjectorSet.Of(InjectorOf(560), 4),
        CustomRegulator.Of(new SpringInSteps()),
        PumpLaw.Tabulated(new StraightPump()),
        plumbing: Plumbing.Of(returnLine: [CustomLoss.Of(new FuelCooler())])).With(CustomController.Of(new PulseByManifold())).With(GoodParts.Cooling);

    private static IEnumerable<OperatingPoint> Points() => from speed in Speeds from boost in Boosts select OperatingPoint.At(speed, boost, FuelSizing.Tests.Wren.Hill);

    private static void SameMargins(FuelSystem one, FuelSystem other)
    {
        foreach (OperatingPoint point in Points())
        {
            (OperatingResult first, OperatingResult second) = (one.Solve(point), other.Solve(point));
            Assert.Equal(first.Outcome, second.Outcome);
            Assert.Equal(first.RailGauge.Pascals, second.RailGauge.Pascals, 1e-6);
            foreach ((Margin made, Margin own) in first.Margins.Zip(second.Margins))
            {
                Assert.Equal(made.Part, own.Part);
                Assert.Equal(made.Reserve?.DecimalFractions ?? 0, own.Reserve?.DecimalFractions ?? 0, 1e-9);
            }
        }
    }
}
