using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sizing;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// What the two checks of the mixture say, and what would remedy it. With one dead time at every pressure, and no sag, what a pulse delivers goes with
/// the root of the pressure across the injectors: a limit asks for Δp · (λ/λ_limit)², which is worked by hand beside each test.
/// </summary>
public class MixtureChecksTests
{
    private const double Lean = 0.9;
    private const double Rich = 0.75;

    [Fact]
    public void LeanMixture_InWords_IsComparedWithTheLeanestAllowed_OnBoostOnly()
    {
        OperatingResult[] results = Car(Following, (2600, 0.02, 1), (3000, 0.3, 0.88), (4000, 0.4, 0.9), (5000, 0.6, 0.99));
        Assert.Equal(
            [Outcome.Holds, Outcome.Holds, Outcome.Holds, Outcome.Fails], results.Select(result => Find(result, Part.Mixture).Outcome));
        Assert.Equal("not judged at 0.02 bar: the leanest lambda counts from 0.05 bar", Text(results[0], Part.Mixture));
        Assert.Null(Find(results[0], Part.Mixture).Reserve);
        Assert.Equal("lambda 0.880, at most 0.900 allowed", Text(results[1], Part.Mixture));
        Assert.Equal((0.9 / 0.88) - 1, Find(results[1], Part.Mixture).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal("lambda 0.900, at most 0.900 allowed", Text(results[2], Part.Mixture));
        Assert.Equal((0.9 / 0.99) - 1, Find(results[3], Part.Mixture).Reserve!.Value.DecimalFractions, 9);

        // The cause that is named is the first that leans it.
        MixtureCause leaner = results[3].Mixture.Causes.First(cause => cause.Factor > 1);
        Assert.Equal($"lambda 0.990 is leaner than the 0.900 allowed; {leaner}", Text(results[3], Part.Mixture));
    }

    [Fact]
    public void RichMixture_InWords_IsComparedWithTheRichestAllowed_WithAndWithoutBoost()
    {
        OperatingResult[] results = Car(Following, (2600, 0, 0.7), (3000, 0.3, 0.75), (4000, 0.4, 0.8));
        Assert.Equal([Outcome.Fails, Outcome.Holds, Outcome.Holds], results.Select(result => Find(result, Part.RichMixture).Outcome));
        MixtureCause richer = results[0].Mixture.Causes.First(cause => cause.Factor < 1);
        Assert.Equal($"lambda 0.700 is richer than the 0.750 allowed; {richer}", Text(results[0], Part.RichMixture));
        Assert.Equal((0.7 / 0.75) - 1, Find(results[0], Part.RichMixture).Reserve!.Value.DecimalFractions, 9);
        Assert.Equal("lambda 0.800, at least 0.750 allowed", Text(results[2], Part.RichMixture));
    }

    /// <summary>A pulse shorter than the dead time opens nothing: too lean by any limit, and no cause to name. One that is not known decides nothing.</summary>
    [Fact]
    public void Mixture_WithoutFuelOrWithoutAPulse_SaysSo()
    {
        OperatingResult none = Built(Following).With(Pulses((2600, 0.2), (6000, 0.2))).Solve(Wren.At(4000, 0.4));
        Assert.Equal((Outcome.Fails, Outcome.Holds), (Find(none, Part.Mixture).Outcome, Find(none, Part.RichMixture).Outcome));
        Assert.Equal("no fuel is delivered, lambda 0.900 allowed", Text(none, Part.Mixture));

        OperatingResult unknown = Built(Following).With(Pulses((2600, 8), (3000, 8))).Solve(Wren.At(4000, 0.4));
        foreach (Part part in new[] { Part.Mixture, Part.RichMixture })
        {
            Assert.Equal(Outcome.CannotSay, Find(unknown, part).Outcome);
            Assert.Equal("lambda cannot be said: data of pump, dead time, injector or pulses ends before this point", Text(unknown, part));
        }
    }

    /// <summary>Where the pumps' data ends lambda lies between two bounds: it is lean only where the richer is too lean, and rich only where the leaner is too rich.</summary>
    [Fact]
    public void Mixture_BetweenTwoBounds_IsDecidedByTheOneThatMustKeepTheLimit()
    {
        OperatingResult bounded = Bounded(Lean, Rich);
        double richest = bounded.Mixture.MinimumLambda!.Value;
        double leanest = bounded.Mixture.MaximumLambda!.Value;
        Assert.True(leanest > richest + 0.02, $"{richest} to {leanest}");
        double between = (richest + leanest) / 2;

        OperatingResult open = Bounded(between, 0.5);
        Assert.Equal(Outcome.CannotSay, Find(open, Part.Mixture).Outcome);
        Assert.Equal(
            FormattableString.Invariant($"lambda lies between {richest:0.000} and {leanest:0.000}, at most {between:0.000} allowed: the pumps' data does not decide"),
            Text(open, Part.Mixture));
        OperatingResult lean = Bounded(richest - 0.01, 0.5);
        Assert.StartsWith(FormattableString.Invariant($"lambda {richest:0.000} is leaner than the {richest - 0.01:0.000} allowed; "), Text(lean, Part.Mixture), StringComparison.Ordinal);
        Assert.Equal(FormattableString.Invariant($"lambda {leanest:0.000}, at most {leanest + 0.01:0.000} allowed"), Text(Bounded(leanest + 0.01, 0.5), Part.Mixture));

        OperatingResult openRich = Bounded(1.2, between);
        Assert.Equal(Outcome.CannotSay, Find(openRich, Part.RichMixture).Outcome);
        Assert.Equal(
            FormattableString.Invariant($"lambda lies between {richest:0.000} and {leanest:0.000}, at least {between:0.000} allowed: the pumps' data does not decide"),
            Text(openRich, Part.RichMixture));
        Assert.StartsWith(
            FormattableString.Invariant($"lambda {leanest:0.000} is richer than the {leanest + 0.01:0.000} allowed"), Text(Bounded(1.2, leanest + 0.01), Part.RichMixture), StringComparison.Ordinal);
        Assert.Equal(FormattableString.Invariant($"lambda {richest:0.000}, at least {richest - 0.01:0.000} allowed"), Text(Bounded(1.2, richest - 0.01), Part.RichMixture));
    }

    [Fact]
    public void Mixture_IsJudged_OnlyWithAControllerAndTheLimitThatItIsComparedWith()
    {
        FuelSystem system = Built(Following).With(Pulses((2600, 8), (6000, 8)));
        Assert.Equal(("judged", "judged"), Applies(system));
        Assert.Equal(("judged", "not applicable"), Applies(system.With(SizingLimits.Default.With(MixtureLimits.Of(Lean)))));
        Assert.Equal(("not judged: no leanest lambda is given", "not applicable"), Applies(system.With(SizingLimits.Default)));
        Assert.Equal(
            ("not judged: the controller is assumed to command whatever pulse is needed", "not applicable"), Applies(system.With(IdealController.Instance)));

        static (string Lean, string Rich) Applies(FuelSystem system) => (
            new MixtureCheck().AppliesTo(system.Parts).ToString(), new RichMixtureCheck().AppliesTo(system.Parts).ToString());
    }

    /// <summary>
    /// A regulator that only follows: 300 kPa across the injectors. At 0.60 bar lambda 0.945 of 0.900 allowed asks for 330.75 kPa, at 0.30 bar lambda 0.98 for 355.7 kPa:
    /// 355.7 + 30 = 385.7 kPa in the rail, of which more is missing than at the higher boost.
    /// </summary>
    [Fact]
    public void LeanRemedy_WithoutAGainToSet_IsThePressureWhereMostIsMissing()
    {
        OperatingResult[] results = Car(Following, (3000, 0.3, 0.98), (5000, 0.6, 0.945));
        Remedy remedy = RemedyFor(Part.Mixture, results);
        Assert.Equal(
            "At least 386 kPa in the rail at 3,000 rev/min, 0.30 bar, where 330 kPa is set; pumps, hoses and injectors must stand that; or less boost.",
            remedy.ToString());
        double closed = (30 + (300 * Math.Pow(0.98 / Lean, 2))) * 1e3;

        // On the side that serves, by no more than a hair.
        Assert.InRange(((Pressure)remedy.Needed!).Pascals, closed * (1 + 1e-13), closed * (1 + 1e-10));
        OperatingResult put = results[0].System.With(Fixed.At((Pressure)remedy.Needed)).Solve(results[0].Point);
        Assert.Equal(Outcome.Holds, Find(put, Part.Mixture).Outcome);
    }

    /// <summary>
    /// Lambda 0.61 of at least 0.75 at 1.00 bar: 198.5 of 300 kPa, so 298.5 of 400 in the rail. Lambda 0.72 without boost: 276.5 kPa, of which less is too much, though it is the
    /// lowest pressure of both.
    /// </summary>
    [Fact]
    public void RichRemedy_WithoutAGainToSet_IsThePressureWhereMostIsTooMuch()
    {
        OperatingResult[] results = Car(Following, (3000, 0, 0.72), (4000, 1, 0.61));
        Remedy remedy = RemedyFor(Part.RichMixture, results);
        double closed = (100 + (300 * Math.Pow(0.61 / Rich, 2))) * 1e3;
        Assert.Equal("At most 298 kPa in the rail at 4,000 rev/min, 1.00 bar, where 400 kPa is set.", remedy.ToString());
        Assert.InRange(((Pressure)remedy.Needed!).Pascals, closed * (1 - 1e-10), closed * (1 - 1e-13));
        OperatingResult put = results[1].System.With(Fixed.At((Pressure)remedy.Needed)).Solve(results[1].Point);
        Assert.Equal(Outcome.Holds, Find(put, Part.RichMixture).Outcome);
    }

    /// <summary>
    /// Base 300 kPa, onset 0.10 bar, gain 2. At 0.60 bar 350 kPa are across the injectors, and lambda 1 asks for 432.1, that is 492.1 in the rail: a gain of
    /// (492.1 − 310)/50 = 3.642. At 0.30 bar lambda 0.98 asks for 320 · (0.98/0.9)² + 30 = 409.4 kPa, of which less is missing, but a gain of (409.4 − 310)/20 = 4.971.
    /// </summary>
    [Fact]
    public void LeanRemedy_WithARisingRateUnit_IsTheGainThatServesEveryPoint()
    {
        OperatingResult[] results = Car(RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(10)), (3000, 0.3, 0.98), (5000, 0.6, 1));
        Assert.StartsWith("A gain of at least 4.98, which sets the rail to ", RemedyFor(Part.Mixture, results).ToString(), StringComparison.Ordinal);
        Assert.Equal(
            "A gain of at least 3.65, which sets the rail to 493 kPa at 5,000 rev/min, 0.60 bar; pumps, hoses and injectors must stand that, and the rich side be looked at again.",
            RemedyFor(Part.Mixture, results[1]).ToString());
        AllHold(4.98, Part.Mixture);
        Assert.Throws<Xunit.Sdk.AllException>(() => AllHold(4.96, Part.Mixture));

        void AllHold(double gain, Part part) => Assert.All(results, result => Assert.Equal(
            Outcome.Holds, Find(result.System.With(RisingRate.From(Wren.Kpa(300), gain, Wren.Kpa(10))).Solve(result.Point), part).Outcome));
    }

    /// <summary>
    /// The gain of 4.98 that 0.30 bar asks for sets 310 + 4.98 · 50 = 559 kPa at 0.60 bar, where the mixture alone asks for 492: that, and not the 492, is what pumps, hoses and
    /// injectors must stand. At 0.80 bar, where the mixture holds already, it is 310 + 4.98 · 70 = 658.6 kPa.
    /// </summary>
    [Fact]
    public void LeanRemedy_OfAGain_NamesTheHighestPressureThatItSets()
    {
        OperatingResult[] results = Car(RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(10)), (3000, 0.3, 0.98), (5000, 0.6, 1), (5600, 0.8, 0.85));
        Remedy of = RemedyFor(Part.Mixture, results[..2]);
        Assert.Equal(559, ((Pressure)of.Needed!).Kilopascals, 1e-6);
        Assert.Matches(@"^A gain of at least 4\.98, which sets the rail to (559|560) kPa at 5,000 rev/min, 0\.60 bar; pumps, hoses", of.ToString());
        Assert.NotNull(of.NeededIn(TextStyle.Metric));
        Remedy all = Find(results[0], Part.Mixture).Check.RemedyFor(new RemedyTask(results, results[..2]))!;
        Assert.Equal(658.6, ((Pressure)all.Needed!).Kilopascals, 1e-6);
        Assert.Contains(" at 5,600 rev/min, 0.80 bar; pumps, hoses", all.ToString(), StringComparison.Ordinal);

        // Put back, the rail is what was said.
        OperatingResult put = results[2].System.With(RisingRate.From(Wren.Kpa(300), 4.98, Wren.Kpa(10))).Solve(results[2].Point);
        Assert.Equal(658.6, put.RailSetGauge.Kilopascals, 1e-6);
    }

    /// <summary>Of the gain of 1.02 that 0.30 bar asks for the pressure there is said, 310 + 1.02 · 20 = 330.4 kPa, of the 330.45 that the mixture may have.</summary>
    [Fact]
    public void RichRemedy_OfAGain_NamesThePressureThatItSetsWhereMostIsTooMuch()
    {
        OperatingResult[] results = Car(RisingRate.From(Wren.Kpa(300), 6, Wren.Kpa(10)), (3000, 0.3, 0.65), (5000, 0.6, 0.7));
        Remedy remedy = RemedyFor(Part.RichMixture, results);
        Assert.Equal(330.4, ((Pressure)remedy.Needed!).Kilopascals, 1e-6);
        Assert.Equal("A gain of at most 1.02, which sets the rail to 330 kPa at 3,000 rev/min, 0.30 bar; look at the lean side again.", remedy.ToString());
    }

    /// <summary>
    /// Gain 6: 610 kPa in the rail at 0.60 bar, 550 across the injectors. Lambda 0.7 of at least 0.75 asks for 479.1 + 60 kPa: a gain of (539.1 − 310)/50 = 4.582. At 0.30 bar
    /// 430 in the rail, 400 across; lambda 0.65 asks for 300.4 + 30: a gain of (330.4 − 310)/20 = 1.022.
    /// </summary>
    [Fact]
    public void RichRemedy_WithARisingRateUnit_IsTheGainThatServesEveryPoint()
    {
        OperatingResult[] results = Car(RisingRate.From(Wren.Kpa(300), 6, Wren.Kpa(10)), (3000, 0.3, 0.65), (5000, 0.6, 0.7));
        Assert.StartsWith("A gain of at most 1.02, which sets the rail to ", RemedyFor(Part.RichMixture, results).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("A gain of at most 4.58, which sets the rail to ", RemedyFor(Part.RichMixture, results[1]).ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" at 5,000 rev/min, 0.60 bar; look at the lean side again.", RemedyFor(Part.RichMixture, results[1]).ToString(), StringComparison.Ordinal);
    }

    /// <summary>A gain that no unit has, boost that does not reach its onset, a ceiling, or an offset that a run has found: then it is the pressure that is said.</summary>
    [Fact]
    public void Remedy_WhereNoGainGivesThePressure_IsThePressure()
    {
        RisingRate unit = RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(10));

        // (5 + 20) kPa of boost over the onset, and 30 kPa: λ 1.4 of 0.9 asks for 2.42 times what there is: a gain over 15.
        Assert.StartsWith("At least ", Lean(unit, (3000, 0.3, 1.4)), StringComparison.Ordinal);
        Assert.StartsWith("At least ", Lean(RisingRate.From(Wren.Kpa(300), 2, Wren.Kpa(10), ceiling: Wren.Kpa(900)), (3000, 0.3, 0.95)), StringComparison.Ordinal);
        Assert.StartsWith("At least ", Lean(unit.Off(5e3), (3000, 0.3, 0.95)), StringComparison.Ordinal);
        Assert.StartsWith("A gain of at least ", Lean(unit, (3000, 0.3, 0.95)), StringComparison.Ordinal);

        // One of two points below the onset, and one just at it.
        Assert.StartsWith("At least ", Lean(unit, (3000, 0.06, 0.95), (5000, 0.6, 0.95)), StringComparison.Ordinal);
        Assert.StartsWith("At least ", Lean(unit, (3000, 0.1, 0.95), (5000, 0.6, 0.95)), StringComparison.Ordinal);

        // A gain under 1: what is set without any is too much already.
        Assert.StartsWith("At most ", Rich(unit, (3000, 0.3, 0.65)), StringComparison.Ordinal);
        Assert.StartsWith("At most ", Rich(unit, (3000, -0.2, 0.65)), StringComparison.Ordinal);

        string Lean(PressureRegulator regulator, params (double, double, double)[] points) => RemedyFor(Part.Mixture, Car(regulator, points)).ToString();
        string Rich(PressureRegulator regulator, params (double, double, double)[] points) => RemedyFor(Part.RichMixture, Car(regulator, points)).ToString();
    }

    /// <summary>Gains of 1 and 15 are within what a unit has: 0.6 bar over an onset of 0.1 bar, so 50 kPa for each 1 of gain, a hundredth of it short of either.</summary>
    [Theory]
    [InlineData(14.995, true, "A gain of at least 15.00,")]
    [InlineData(15.005, true, "At least ")]
    [InlineData(1.005, false, "A gain of at most 1.00,")]
    [InlineData(0.995, false, "At most ")]
    public void Remedy_AtTheEndsOfWhatAUnitHas_NamesAGainUpToThem(double gain, bool isLean, string starts)
    {
        // With the unit at gain 5 the rail is 560 kPa and 500 kPa are across the injectors; the gain asked for sets 310 + 50 · gain.
        double differential = 310 + (50 * gain) - 60;
        double lambda = (isLean ? Lean : Rich) * Math.Sqrt(differential / 500);
        OperatingResult[] results = Car(RisingRate.From(Wren.Kpa(300), 5, Wren.Kpa(10)), (5000, 0.6, lambda));
        Assert.StartsWith(starts, RemedyFor(isLean ? Part.Mixture : Part.RichMixture, results).ToString(), StringComparison.Ordinal);
    }

    /// <summary>Lambda 2.5 of 0.9 asks for over 2,300 kPa, and the injectors open against 1,900.</summary>
    [Fact]
    public void Remedy_WhereNoPressureServes_SaysWhatElse()
    {
        OperatingResult[] lean = Car(Following, (3000, 0.3, 0.99), (5000, 0.6, 2.5));
        Remedy remedy = RemedyFor(Part.Mixture, lean);
        Assert.Equal(
            "No rail pressure gives enough fuel at 5,000 rev/min, 0.60 bar: a longer pulse, larger injectors with their own data in the controller, or less boost.",
            remedy.ToString());
        Assert.Null(remedy.Needed);
    }

    /// <summary>
    /// Lambda 0.42 of 0.75 asks for 300 · (0.42/0.75)² = 94 kPa across injectors whose flow is known from 100 kPa on, a third of their rated pressure: set there, nobody could say
    /// what the mixture is. Known from 90 kPa on, it is 94 + 60 in the rail.
    /// </summary>
    [Fact]
    public void RichRemedy_BelowWhatIsKnownOfTheInjectors_IsNoPressure()
    {
        OperatingResult[] results = Car(Following, (3000, 0.6, 0.42), (3500, 0.3, 0.7));
        Remedy remedy = RemedyFor(Part.RichMixture, results);
        Assert.Equal(
            "No rail pressure is low enough at 3,000 rev/min, 0.60 bar: a shorter pulse, or smaller injectors with their own data in the controller.", remedy.ToString());
        Assert.Null(remedy.Needed);

        OperatingResult known = results[0].System
            .With(InjectorSet.Of(results[0].Parts.Injectors.Injector.WithMinimumDifferential(Wren.Kpa(90)), 4)).Solve(results[0].Point);
        Assert.Equal(60 + (300 * Math.Pow(0.42 / Rich, 2)), ((Pressure)RemedyFor(Part.RichMixture, known).Needed!).Kilopascals, 1e-6);
    }

    /// <summary>A rail that sags is no matter of the regulator: first the pumps.</summary>
    [Fact]
    public void LeanRemedy_WhereTheRailSags_IsThePumpsFirst()
    {
        FuelSystem system = Built(Following, pump: 0.02).With(Pulses((2600, 9), (6000, 9)));
        OperatingResult regulated = system.Solve(Wren.At(2600, 0.1));
        OperatingResult sagging = system.Solve(Wren.At(6000, 0.8));
        Assert.Equal((RailState.Regulated, RailState.Sagging), (regulated.Mixture.RailState, sagging.Mixture.RailState));
        Remedy remedy = RemedyFor(Part.Mixture, regulated, sagging);
        Assert.Equal(
            "First pumps and wiring that hold the rail at 380 kPa, which it does not reach at 6,000 rev/min, 0.80 bar; then the mixture again.",
            remedy.ToString());
        Assert.Null(remedy.Needed);
        Assert.Equal(Part.Mixture, remedy.Part);

        // The rich side does not ask for pumps.
        Assert.DoesNotContain("First pumps", RemedyFor(Part.RichMixture, sagging).ToString(), StringComparison.Ordinal);
    }

    private static PressureRegulator Following { get; } = ManifoldReferenced.From(Wren.Kpa(300));

    private static string Text(OperatingResult result, Part part) => Find(result, part).Explanation;

    private static Remedy RemedyFor(Part part, params OperatingResult[] failing) =>
        Find(failing[0], part).Check.RemedyFor(new RemedyTask(failing, failing))!;

    private static RecordedPulseController Pulses(params (double Rpm, double Milliseconds)[] pulses) =>
        RecordedPulseController.BySpeed([.. pulses.Select(pulse => (Wren.Rpm(pulse.Rpm), Wren.Ms(pulse.Milliseconds)))]);

    /// <summary>The car with pulses that give these lambdas at these speeds and boosts, solved there.</summary>
    private static OperatingResult[] Car(PressureRegulator regulator, params (double Rpm, double Boost, double Lambda)[] points)
    {
        FuelSystem system = Built(regulator);
        (double, double)[] pulses =
        [
            .. points.Append((points[^1].Rpm + 500, points[^1].Boost, points[^1].Lambda)).Select(point =>
            {
                // What is injected goes with the time that it is open.
                DeliveredMixture before = system.With(Pulses((2000, 8), (7000, 8))).Solve(Wren.At(point.Item1, point.Item2)).Mixture;
                return (point.Item1, before.DeadTime!.Value.Milliseconds + (before.OpenTime!.Value.Milliseconds * before.Lambda!.Value / point.Item3));
            }),
        ];
        FuelSystem with = system.With(Pulses(pulses));
        OperatingResult[] results = [.. points.Select(point => with.Solve(Wren.At(point.Rpm, point.Boost)))];
        Assert.All(results.Zip(points), pair => Assert.Equal(pair.Second.Lambda, pair.First.Mixture.Lambda!.Value, 1e-9));
        return results;
    }

    /// <summary>A pump measured at 12 V alone, on 13.5 V: how far its rail sags is known between two bounds.</summary>
    private static OperatingResult Bounded(double leanest, double richest) => Built(Following)
        .With(SizingLimits.Default.With(MixtureLimits.Of(leanest, Wren.Kpa(5), richest)))
        .With(Pump.From(Wren.WiredCurve(12, 0.6)))
        .With(Pulses((2600, 15), (7000, 15)))
        .Solve(Wren.At(6500, 0.8));

    private static FuelSystem Built(PressureRegulator regulator, double pump = 1) =>
        EqualDeadTimes.Built(regulator, SizingLimits.Default.With(MixtureLimits.Of(Lean, Wren.Kpa(5), Rich)), pump: pump);
}
