using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Conformance;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Wren;

namespace FuelSizing.Extensions.Tests;

/// <summary>The kit is green for parts that keep the rules and red, by the rule that is broken, for those that break one.</summary>
public class ConformanceKitTests
{
    private static FuelSystem Lined { get; } = FuelSystem.Return(
        Demand(),
        InjectorSet4(560),
        CustomRegulator.Of(new SpringInSteps()),
        PumpLaw.Tabulated(new StraightPump()),
        plumbing: Plumbing.Of(returnLine: [CustomLoss.Of(new FuelCooler())]));

    [Fact]
    public void Parts_ThatKeepTheRules_Conform()
    {
        ConformanceReport[] reports =
        [
            ConformanceKit.Of(new SpringInSteps()),
            ConformanceKit.Of(new CurvedSetting()),
            ConformanceKit.Of(new OneForOne()),
            ConformanceKit.Of(new FuelCooler()),
            ConformanceKit.Of(new StraightPump()),
            ConformanceKit.Of(new RicherOnBoost(), Demand()),
            ConformanceKit.Of(new MeasuredPlane(), Demand()),
            ConformanceKit.Of(new PulseByManifold(), Hillclimb()),
            ConformanceKit.Of(new PulseByRail(), Hillclimb()),
            ConformanceKit.Of(GoodParts.RaceFuel),
            ConformanceKit.Of(Fuel.E85),
            ConformanceKit.Of(GoodParts.Condition, Hillclimb(), At(6000, 0.5)),
            ConformanceKit.Of(GoodParts.Cooling, Hillclimb(), [.. Grid]),
        ];
        Assert.All(reports, report => Assert.True(report.Conforms, report.ToString()));
        Assert.All(reports, report => Assert.True(report.Rules.Count >= 4, report.ToString()));
    }

    [Fact]
    public void System_OfParts_ThatKeepTheRules_Conforms()
    {
        ConformanceReport own = ConformanceKit.Of(
            Lined.With(Demand().With(new RicherOnBoost())).With(FuelSizing.Controllers.CustomController.Of(new PulseByManifold())).With(GoodParts.Cooling),
            Rpm(2000),
            Rpm(6800),
            Kpa(0),
            Kpa(90));
        Assert.True(own.Conforms, own.ToString());
        ConformanceReport curved = ConformanceKit.Of(Lined.With(CustomRegulator.Of(new CurvedSetting())), Rpm(2000), Rpm(6800), Kpa(0), Kpa(60));
        Assert.True(curved.Conforms, curved.ToString());
    }

    [Fact]
    public void Regulators_ThatBreakARule_AreNamedByIt()
    {
        Random random = new(1);
        Breaks("jump", ConformanceKit.Of(new RegulatorBy(boost => boost < 50 ? 300 : 320)));
        Breaks("kink", ConformanceKit.Of(new RegulatorBy(boost => 300 + Math.Max(0, boost - 50))));
        Breaks("it has a kink at a boost of 0.50 bar", ConformanceKit.Of(new RegulatorBy(boost => 300 + Math.Max(0, boost - 50), 30)));
        Breaks("2,000 kPa", ConformanceKit.Of(new RegulatorBy(boost => 100 + (2 * boost))));
        Breaks("2,000 kPa", ConformanceKit.Of(new RegulatorBy(boost => boost > 300 ? double.NaN : 300)));
        Breaks("same figure", ConformanceKit.Of(new RegulatorBy(_ => 300 + random.NextDouble())));
        Breaks("own.", ConformanceKit.Of(new RegulatorBy(_ => 300) { Text = Statement.Of("regulator.fixed", $"fixed") }));
        Breaks("it throws", ConformanceKit.Of(new RegulatorBy(boost => boost > 200 ? throw new InvalidOperationException("no more") : 300)));
    }

    [Fact]
    public void Losses_ThatBreakARule_AreNamedByIt()
    {
        Breaks("does not fall", ConformanceKit.Of(new LossBy(flow => flow < 200 ? flow * 0.1 : 40 - (flow * 0.1))));
        Breaks("not below zero", ConformanceKit.Of(new LossBy(flow => flow - 10)));
        Breaks("no jump", ConformanceKit.Of(new LossBy(flow => flow < 150 ? 5 : 12)));
        Breaks("and ends", ConformanceKit.Of(new LossBy(flow => flow > 400 ? double.NaN : flow * 0.1)));
    }

    [Fact]
    public void Pumps_ThatBreakARule_AreNamedByIt()
    {
        Breaks("higher rise", ConformanceKit.Of(new PumpBy((rise, volts) => (10 * volts) + (0.05 * rise))));
        Breaks("higher voltage", ConformanceKit.Of(new PumpBy((rise, volts) => 300 - (5 * volts) - (0.2 * rise))));
        Breaks("read into curves", ConformanceKit.Of(new PumpBy((rise, volts) => 12 * volts * (rise < 400 ? 1 : 1 - ((rise - 400) / 60)) is var flow && flow > 0 ? flow : 0)));
        Breaks("read into curves", ConformanceKit.Of(new PumpBy((rise, volts) => 14 * volts * (1 - (rise / 700))) { Amperes = rise => rise > 300 ? double.NaN : 5 }));
        Breaks("read into curves", ConformanceKit.Of(new PumpBy((rise, volts) => 400 * volts * (1 - (rise / 700)))));
    }

    [Fact]
    public void Demands_ThatBreakARule_AreNamedByIt()
    {
        Breaks("along boost", ConformanceKit.Of(new DemandBy((speed, boost, _) => speed / 500 * (boost > 20 ? 1.3 : 1)), Demand()));
        Breaks("along speed", ConformanceKit.Of(new DemandBy((speed, _, _) => 3 + (Math.Max(0, speed - 4200) / 400)), Demand()));
        Breaks("follows the library's estimate", ConformanceKit.Of(new DemandBy((_, _, estimate) => estimate), Demand()));
        Breaks("follows the library's estimate", ConformanceKit.Of(new DemandBy((speed, _, _) => speed / 500) { FollowsEstimate = true }, Demand()));
        Breaks("must give over 0", ConformanceKit.Of(new DemandBy((_, boost, _) => boost - 10), Demand()));
    }

    [Fact]
    public void Controllers_ThatBreakARule_AreNamedByIt()
    {
        Breaks("along boost", ConformanceKit.Of(new PulseBy(at => at.ManifoldAbsolute.Kilopascals > 140 ? 12 : 8), Hillclimb()));
        Breaks("along speed", ConformanceKit.Of(new PulseBy(at => 5 + Math.Abs((at.Speed.RevolutionsPerMinute - 4321) / 1000)), Hillclimb()));
        Breaks("across the injectors", ConformanceKit.Of(new PulseBy(at => at.Differential!.Value.Kilopascals > 333 ? 6 : 7) { ReadsRailPressure = true }, Hillclimb()));
        Breaks("0 to 500 ms", ConformanceKit.Of(new PulseBy(at => -1), Hillclimb()));
        Breaks("it throws", ConformanceKit.Of(new PulseBy(at => at.Differential!.Value.Kilopascals), Hillclimb()));
    }

    [Fact]
    public void Fuels_WithoutWhatChecksNeed_AreNamedByIt()
    {
        Fuel bare = Fuel.Of("bare fuel", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        ConformanceReport report = ConformanceKit.Of(bare);
        Breaks("viscosity", report);
        Breaks("vapour pressure", report);
        Breaks("heat of vaporisation", report);
    }

    [Fact]
    public void Checks_ThatBreakARule_AreNamedByIt()
    {
        Part own = Part.Of("own.by", "by a function");
        Breaks("agree", Of(new CheckBy(own, returned => new CheckReading<Real>(returned, 5e-6, 5e-6 - returned))));
        Breaks("what it found", Of(new CheckBy(own, returned => CheckReading.AtLeast<Real>(returned, 5e-6), " ")));
        int asked = 0;
        Breaks("same figure", Of(new CheckBy(own, returned => CheckReading.AtLeast<Real>(returned + (1e-9 * Interlocked.Increment(ref asked)), 5e-6))));

        static ConformanceReport Of(ICheck check) => ConformanceKit.Of(check, Hillclimb(), [.. Grid]);
    }

    [Fact]
    public void Inputs_ThatBreakARule_AreNamedByIt()
    {
        Breaks("nominal", Of(Input((system, share) => system.With(((Pump)system.Pump).WithCondition(share * 0.99)))));
        Breaks("change something", Of(Input((system, _) => system)));
        Random random = new(1);
        Breaks("equal system", Of(Input((system, share) => share.Percent > 99.99 ? system : system.With(((Pump)system.Pump).WithCondition(Percent(90 + random.NextDouble()))))));

        static UncertainInput Input(Func<FuelSystem, Ratio, FuelSystem> change) =>
            UncertainInput.Of("by a function", Percent(100), Distribution.Uniform(Percent(90), Percent(100)), change);

        static ConformanceReport Of(UncertainInput input) => ConformanceKit.Of(input, Hillclimb(), At(6000, 0.5));
    }

    /// <summary>A law that hides a hump between two boosts: its kinks are not named, and a coarse sweep claims what is not so.</summary>
    [Fact]
    public void System_WhoseLawHidesWhatItDoes_IsNamedByItsClaim()
    {
        RegulatorBy hump = new(boost => 300 + boost + (boost is > 30.99 and < 31.01 ? 400 : 0));

        // So narrow a hump lies between the places at which the law itself is tried.
        Assert.True(ConformanceKit.Of(hump).Conforms);
        ConformanceReport report = ConformanceKit.Of(Hillclimb(CustomRegulator.Of(hump), injector: 560), Rpm(2000), Rpm(4000), Kpa(0), Kpa(60));
        Breaks("dense scan", report);
    }

    private static void Breaks(string rule, ConformanceReport report)
    {
        Assert.False(report.Conforms, report.ToString());
        Assert.Contains(report.Faults, fault => fault.ToString().Contains(rule, StringComparison.Ordinal));
    }

    private static IEnumerable<OperatingPoint> Grid =>
        from speed in (double[])[2000, 3500, 5000, 6800] from boost in (double[])[0, 0.3, 0.6] select At(speed, boost);

    private static FuelSystem Hillclimb(PressureRegulator? regulator = null, double injector = 360) => FuelSizing.Tests.Wren.System(regulator, injector);

    private static FuelSizing.Injectors.InjectorSet InjectorSet4(double millilitres) => FuelSizing.Injectors.InjectorSet.Of(InjectorOf(millilitres), 4);
}
