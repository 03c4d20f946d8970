using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>What regulator and pump did to the rail, in runs without scatter whose car is known.</summary>
public class PressureReadingTests
{
    private static readonly RecordedRun Sound = ExactRun.Of(PulledWren.Plan);

    /// <summary>
    /// A pump worn to 70 %: everywhere the rail is under the regulator's setting by what the solver has it lower, and counts where that is
    /// over three standard deviations of tolerances and accuracy: base 5 kPa, gain 2 % of 3 over the onset, onset 2 kPa times 2, rail sensor
    /// 3 kPa and 2 kPa of scatter, manifold sensor 1 kPa and 0.5 kPa of scatter times the slope.
    /// </summary>
    [Fact]
    public void Sag_OfAWornPump_IsWhatTheSolverHasIt()
    {
        FuelSystem car = PulledWren.Plan.With(((Pump)PulledWren.Plan.Pump).WithCondition(Ratio.FromPercent(0.7 * 90)));
        (RecordedRun run, IReadOnlyList<OperatingResult> solved) = (ExactRun.Of(car), ExactRun.Solved(car));
        PressureSag sag = SagOf(PulledWren.Check, run, diagnosed: true).Answer!;
        double[] under = [.. solved.Select(at => Set(at) - at.RailGauge.Pascals)];
        bool[] low = [.. solved.Select((at, i) => under[i] > Allowed(at.Point.Boost.Pascals, 1))];
        int[] counted = [.. Enumerable.Range(0, low.Length).Where(i => low[i] && ((i > 0 && low[i - 1]) || (i + 1 < low.Length && low[i + 1])))];
        Assert.Equal(counted.Length, sag.Points);
        Assert.InRange(sag.Points, 5, 40);
        int worst = counted.MaxBy(i => under[i]);
        Assert.Equal(under[worst], sag.Maximum.Pascals, 1.0);
        Assert.Equal(worst + 1, sag.Place.Line);
        Assert.Equal(solved[worst].InjectedFlow.LitersPerHour, sag.Flow!.Value.LitersPerHour, 1e-6);
        Assert.Null(sag.Gap);

        // As planned the pump is the limit there already, and by how much the solver of the plan says.
        OperatingResult planned = PulledWren.Plan.Solve(solved[worst].Point);
        Assert.Equal(Set(planned) - planned.RailGauge.Pascals, sag.Predicted.Pascals, 1000.0);
        Assert.Equal(
            FormattableString.Invariant($"rail up to {sag.Maximum.Kilopascals:0} kPa below its set pressure at 6,600 rev/min, 0.60 bar, {sag.Flow.Value.LitersPerHour:0} L/h injected; the plan has it {sag.Predicted.Kilopascals:0} kPa below there, the pump being the limit"),
            sag.ToString());
        Assert.Equal([RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter], sag.Causes.Select(cause => cause.Fault).Order());
        Assert.Equal(RunFault.WeakPump, sag.Causes[0].Fault);
        Assert.Empty(SagOf(PulledWren.Check, run, diagnosed: false).Answer!.Causes);
    }

    /// <summary>
    /// A rail so much under its setting counts, in one row with another beside it or in three rows together: at 35 kPa boost
    /// 3 √(5² + (0.06 · 15)² + 4² + 3² + 3² + 2² + 1.5²) = 24.3 kPa; under the onset, at 6 kPa, 3 √(5² + 3² + 1² + 2² + 0.5²) = 18.8 kPa.
    /// </summary>
    [Theory]
    [InlineData(0.35, 24.2, 0)]
    [InlineData(0.35, 24.4, 2)]
    [InlineData(0.06, 18.7, 0)]
    [InlineData(0.06, 18.9, 2)]
    public void Sag_CountsOverThreeStandardDeviations(double boost, double kilopascals, int points)
    {
        PressureSag sag = SagOf(PulledWren.Check, RunOf(Held(boost, 8, i => i is 3 or 4 ? kilopascals : 0))).Answer!;
        Assert.Equal(points, sag.Points);
        Assert.Equal(points > 0 ? kilopascals : 0, sag.Maximum.Kilopascals, 1e-6);
        Assert.Equal(4, sag.Place.Line);
        Assert.Equal(points > 0, sag.ToString().StartsWith("rail up to ", StringComparison.Ordinal));
        Assert.Equal(points == 0, sag.ToString() == "the regulator held the rail everywhere");
        Assert.Equal(Pressure.Zero, sag.Predicted);
    }

    /// <summary>A regulator without a gain of its own is off by no gain: 3 √(5² + 3² + 1² + 2² + 0.5²) = 18.8 kPa at any boost.</summary>
    [Theory]
    [InlineData(18.75, 0)]
    [InlineData(18.85, 2)]
    public void Sag_OfARegulatorWithoutAGain_CountsAlikeAtAnyBoost(double kilopascals, int points)
    {
        RunCheck check = RunCheck.Of(PulledWren.Plan.With(ManifoldReferenced.From(Wren.Kpa(300))), Wren.Hill);
        PressureSag sag = SagOf(check, RunOf(Held(0.35, 8, _ => 0).Select((row, i) => row with { Rail = Wren.Kpa(335 - (i is 3 or 4 ? kilopascals : 0)) }))).Answer!;
        Assert.Equal(points, sag.Points);
    }

    /// <summary>More rows together scatter less: of four 3 √(5² + (0.06 · 15)² + 4² + 3² + 3² + (2² + 1.5²)/4) = 23.5 kPa.</summary>
    [Theory]
    [InlineData(23.4, 0)]
    [InlineData(23.6, 1)]
    public void Sag_OfRowsTogether_CountsByItself(double kilopascals, int points)
    {
        RecordedRun run = RunOf(Held(0.35, 4 * 10, i => i / 4 == 6 ? kilopascals : 0));
        PressureSag sag = new PressureReading(PulledWren.Check, run, PulledWren.Check.Model(run, 10)).Sag(null).Answer!;
        Assert.Equal(points, sag.Points);
        Assert.Equal(25, sag.Place.Line);
    }

    /// <summary>One row by itself is a glitch, also at either end of the run; a larger one does not hide where the rail truly sags.</summary>
    [Fact]
    public void Sag_OfOneRowAlone_IsAGlitch()
    {
        foreach (int at in new[] { 0, 4, 7 })
        {
            Assert.Equal(0, SagOf(PulledWren.Check, RunOf(Held(0.35, 8, i => i == at ? 60 : 0))).Answer!.Points);
        }

        PressureSag ends = SagOf(PulledWren.Check, RunOf(Held(0.35, 8, i => i is 0 or 1 or 6 or 7 ? 40 + i : i == 4 ? 90 : 0))).Answer!;
        Assert.Equal(4, ends.Points);
        Assert.Equal(8, ends.Place.Line);
        Assert.Equal(47, ends.Maximum.Kilopascals, 1e-6);
        PressureSag falling = SagOf(PulledWren.Check, RunOf(Held(0.35, 8, i => i is 2 or 3 ? 50 - i : i is 5 or 6 ? 40 : 0))).Answer!;
        Assert.Equal(3, falling.Place.Line);
        Assert.Equal(48, falling.Maximum.Kilopascals, 1e-6);
    }

    /// <summary>Rows off boost need no rail; of those on boost two lack it, one lies outside the tables, and one lacks manifold pressure.</summary>
    [Fact]
    public void Gap_SaysWhichRowsLackTheRail()
    {
        Cells[] rows = [.. Held(0.35, 10, _ => 0)];
        rows[0] = rows[0] with { Manifold = PulledWren.Air.Pressure - Wren.Kpa(10), Rail = null };
        rows[2] = rows[2] with { Rail = null };
        rows[5] = rows[5] with { Rail = null };
        PressureSag sag = SagOf(PulledWren.Check, RunOf(rows)).Answer!;
        Assert.Equal("rail pressure is known of 7 of 9 rows on boost", sag.Gap!.ToString());
        Assert.Equal("the regulator held the rail where it is known, judged in part: rail pressure is known of 7 of 9 rows on boost", sag.ToString());
        rows[7] = rows[7] with { Manifold = null };
        Assert.Equal("rail pressure is known of 6 of 9 rows on boost", SagOf(PulledWren.Check, RunOf(rows)).Answer!.Gap!.ToString());
        rows[8] = rows[8] with { Speed = Wren.Rpm(8000) };
        Assert.Equal(
            "rail pressure is known of 5 of 9 rows on boost; 1 lie outside the plan's tables", SagOf(PulledWren.Check, RunOf(rows)).Answer!.Gap!.ToString());
        Assert.Equal(
            "the run was never on boost", SagOf(PulledWren.Check, RunOf(Held(-0.1, 5, _ => 0))).Answer!.Gap!.ToString());
        Assert.Null(SagOf(PulledWren.Check, RunOf(Held(0.35, 5, _ => 0))).Answer!.Gap);
    }

    [Fact]
    public void Sag_ThatCannotBeTold_HasItsReason()
    {
        Finding<PressureSag> none = SagOf(PulledWren.Check, RunOf(Held(0.35, 5, _ => 0).Select(row => row with { Rail = null, Manifold = null })));
        Assert.Equal("cannot tell: rail and manifold pressure must both be recorded", none.ToString());
        Assert.Equal([Channel.RailGauge, Channel.ManifoldAbsolute], none.Missing);
        Assert.Equal([Channel.ManifoldAbsolute], SagOf(PulledWren.Check, RunOf(Held(0.35, 5, _ => 0).Select(row => row with { Manifold = null }))).Missing);
        Assert.Equal(
            "cannot tell: no row with both lies within the plan's tables",
            SagOf(PulledWren.Check, RunOf(Held(0.35, 5, _ => 0).Select(row => row with { Speed = Wren.Rpm(8000) }))).ToString());
    }

    /// <summary>
    /// A regulator at the pump: the rail lies under its setting by what the supply line takes at the flow, which is no sag; without any flow
    /// it cannot be told.
    /// </summary>
    [Fact]
    public void Sag_BehindASupplyLine_IsLessWhatTheLineTakes()
    {
        RunCheck check = RunCheck.Of(Returnless(60), Wren.Hill);
        RecordedRun run = ExactRun.Of(check.Plan);
        IReadOnlyList<OperatingResult> solved = ExactRun.Solved(check.Plan);
        Assert.False(check.HoldsAtRail);
        Assert.True(solved.Max(at => 400e3 - at.RailGauge.Pascals) > 20e3);
        Assert.Equal(0, SagOf(check, run).Answer!.Points);

        // 30 kPa less in every row is 30 kPa under the setting, whatever the line takes.
        PressureSag sag = SagOf(check, ExactRun.Changed(run, (cells, _) => cells with { Rail = cells.Rail - Wren.Kpa(30) })).Answer!;
        Assert.Equal(30, sag.Maximum.Kilopascals, 0.01);
        Assert.Equal(64, sag.Points);
        Assert.Equal(
            "cannot tell: no row with both lies within the plan's tables",
            SagOf(check, ExactRun.Changed(run, (cells, _) => cells with { Flow = null, Pulse = Wren.Ms(0.2) })).ToString());

        // Held at the rail, as a return layout and an electronic regulator do, a flow that is not known does not matter.
        Assert.True(RunCheck.Of(OddRunTests.Plan("electronic")).HoldsAtRail);
        Assert.True(PulledWren.Check.HoldsAtRail);
        PressureSag unknown = SagOf(PulledWren.Check, RunOf(Held(0.35, 5, _ => 30).Select(row => row with { Flow = null, Pulse = Wren.Ms(0.2) }))).Answer!;
        Assert.Equal(30, unknown.Maximum.Kilopascals, 1e-6);
        Assert.Null(unknown.Flow);
        Assert.Equal(Pressure.Zero, unknown.Predicted);
        Assert.Equal("rail up to 30 kPa below its set pressure at 3,000 rev/min, 0.35 bar", unknown.ToString());
    }

    /// <summary>Base 300 kPa, gain 3 from 20 kPa, over the points at which the pump could hold 8 kPa more.</summary>
    [Fact]
    public void Regulator_OfASoundCar_IsThePlans()
    {
        // Boost in steps of 4 kPa, so that the onset has points on both sides.
        RecordedRun run = RunOf(Enumerable.Range(0, 28).SelectMany(i => Held(-0.4 + (0.04 * i), 2, at => at == 0 ? 0.4 : -0.4)));
        Finding<RegulatorFit> found = new PressureReading(PulledWren.Check, run, PulledWren.Check.Model(run)).Regulator(null);
        RegulatorFit fit = found.Answer!;
        Assert.Equal(RegulatorBehaviour.RisingRate, fit.Behaviour);
        Assert.Equal(300, fit.Base.Value.Kilopascals, 0.2);
        Assert.Equal(3, fit.Gain.Value, 0.05);
        Assert.Equal(20, fit.Onset!.Value.Kilopascals, 0.5);

        // Those at which the pump has less to spare are left out: 20 L/h at 300 to 470 kPa never are.
        Assert.Equal(56, fit.Points);
    }

    /// <summary>Points at which the pump has not 8 kPa to spare, and those at a ceiling, say nothing of the regulator.</summary>
    [Fact]
    public void Regulator_IsReadWhereItGoverns()
    {
        RunModel fine = PulledWren.Check.Model(Sound, 400);
        double[] nothing = new double[RunModel.Quantities];
        int governs = Enumerable.Range(0, fine.Inputs.Count).Count(i => fine.RailAt(i, nothing).Surplus > 8e3);
        Assert.InRange(governs, 40, 62);
        Assert.Equal(governs, new PressureReading(PulledWren.Check, Sound, PulledWren.Check.Model(Sound)).Regulator(null).Answer!.Points);

        // Stopped at 372 kPa, less three times the sensor's 2 kPa: of 28 boosts to 68 kPa those up to 32 kPa are left, 356 kPa; at 36 kPa it is 368.
        RunCheck check = RunCheck.Of(PulledWren.Plan.With(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(20), Wren.Kpa(372))), Wren.Hill);
        RecordedRun run = RunOf(Enumerable.Range(0, 28).SelectMany(i => Held(-0.4 + (0.04 * i), 2, at => at == 0 ? 0.4 : -0.4)));
        Assert.Equal(2 * 19, new PressureReading(check, run, check.Model(run)).Regulator(null).Answer!.Points);

        // A worn pump, as the diagnosis has it, leaves fewer.
        FuelSystem car = PulledWren.Plan.With(((Pump)PulledWren.Plan.Pump).WithCondition(Ratio.FromPercent(0.7 * 90)));
        RecordedRun worn = ExactRun.Of(car);
        RunModel model = PulledWren.Check.Model(worn);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        IReadOnlyList<OperatingResult> solved = ExactRun.Solved(car);
        int held = solved.Count(at => at.RailState == RailState.Regulated);
        RegulatorFit fit = new PressureReading(PulledWren.Check, worn, model).Regulator(diagnosis).Answer!;
        Assert.InRange(fit.Points, held - 4, held);

        // A flow that is not known does not say that the pump is the limit.
        RecordedRun unknown = ExactRun.Changed(Sound, (cells, _) => cells with { Flow = null, Pulse = Wren.Ms(0.2) });
        Assert.Equal(64, new PressureReading(PulledWren.Check, unknown, PulledWren.Check.Model(unknown)).Regulator(null).Answer!.Points);
        RecordedRun some = ExactRun.Changed(unknown, (cells, i) => i % 8 == 0 ? cells with { Rail = null } : cells);
        Assert.Equal(56, new PressureReading(PulledWren.Check, some, PulledWren.Check.Model(some)).Regulator(null).Answer!.Points);
    }

    /// <summary>
    /// Boost that rises from −40 to 68 kPa in ten seconds: a manifold sensor 0.04 s late reads what was 0.43 kPa before, a rail sensor what was up to 1.3 kPa before, and a
    /// regulator falls by its slope for what is injected. The fit is that of the points with the likeliest of these taken off, and its intervals have in them what each may be
    /// off still: without a diagnosis its tolerance.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Regulator_HasWhatComesLateInItsIntervals(bool diagnosed)
    {
        RunCheck check = PulledWren.DefaultCheck;
        RecordedRun run = RecordedRun.Of("ramp", PulledWren.Air, Enumerable.Range(0, 1000).Select(i =>
        {
            double boost = -40 + (0.108 * i);
            return new Cells
            {
                Speed = Wren.Rpm(3000 + (3 * i)),
                Time = Duration.FromSeconds(0.01 * i),
                Manifold = PulledWren.Air.Pressure + Wren.Kpa(boost),
                Rail = Wren.Kpa(300 + Math.Min(boost, 20) + (3 * Math.Max(0, boost - 20)) + (0.5 * (i % 7))),
                Volts = Wren.Volt(13.5),
                Flow = VolumeFlow.FromLitersPerHour(15 + (0.01 * i)),
            }.Row(i + 1);
        }));
        Diagnosis? diagnosis = diagnosed ? Diagnosis.Of(check, check.Model(run), null, CancellationToken.None) : null;
        RegulatorFit found = new PressureReading(check, run, check.Model(run)).Regulator(diagnosis).Answer!;

        PointInput[] inputs = [.. check.Model(run, 400).Inputs];
        Assert.Equal(inputs.Length, found.Points);
        Assert.Equal(10.8e3, inputs[100].BoostRate, 1.0);
        RunQuantity[] late = [RunQuantity.RegulatorSlope, RunQuantity.ManifoldLag, RunQuantity.RailLag];
        double[] likeliest = [.. late.Select(quantity => diagnosis?.Best.Value(quantity) ?? 0)];
        double[][] moves = diagnosis is null ? [[10e3, 0, 0], [0, 0.04, 0], [0, 0, 0.04]] : [.. diagnosis.Best.Moves(late)];
        (double[] Boost, double[] Rail) Points(double[] move)
        {
            double[] off = [.. likeliest.Zip(move, (one, by) => one + by)];
            return (
                [.. inputs.Select(input => input.Boost + (off[1] * input.BoostRate))],
                [.. inputs.Select(input => input.Rail + (off[2] * input.RailRate) + (off[0] * input.InjectedShare))]);
        }

        (double[] boost, double[] rail) = Points([0, 0, 0]);
        RegulatorFit wanted = RegulatorFit.Of(boost, rail, 0.25, 20e3, new SharedError([.. moves.Select(Points)], 3e3, 1e3)).Answer!;
        Assert.Equal(wanted.Gain.Value, found.Gain.Value, 1e-9);
        Assert.Equal(wanted.Gain.Minimum, found.Gain.Minimum, 1e-9);
        Assert.Equal(wanted.Base.Value.Pascals, found.Base.Value.Pascals, 1e-4);
        Assert.Equal(wanted.Base.Maximum.Pascals, found.Base.Maximum.Pascals, 1e-4);
        Assert.Equal(wanted.Onset!.Value.Pascals, found.Onset!.Value.Pascals, 1e-4);
        Assert.Equal(wanted.Onset.Minimum.Pascals, found.Onset.Minimum.Pascals, 1e-4);
    }

    /// <summary>A plan without a gain of its own needs no boost to show that the rail follows one for one.</summary>
    [Fact]
    public void Regulator_WithoutAGain_IsToldWithoutBoost()
    {
        RunCheck check = RunCheck.Of(PulledWren.Plan.With(ManifoldReferenced.From(Wren.Kpa(300))), Wren.Hill);
        RecordedRun run = RunOf(Enumerable.Range(0, 12).SelectMany(i => Held(-0.4 + (0.04 * i), 2, at => at == 0 ? 0.4 : -0.4)));
        RegulatorFit fit = new PressureReading(check, run, check.Model(run)).Regulator(null).Answer!;
        Assert.Equal(RegulatorBehaviour.ManifoldReferenced, fit.Behaviour);
        Assert.Equal(1, fit.Gain.Value, 0.02);
    }

    /// <summary>A fixed regulator at the pump is seen as such, at its own setting, though the rail falls with flow.</summary>
    [Fact]
    public void Regulator_BehindASupplyLine_IsReadAtItsOwnPlace()
    {
        RunCheck check = RunCheck.Of(Returnless(60), Wren.Hill);
        RecordedRun run = ExactRun.Of(check.Plan);
        RegulatorFit fit = new PressureReading(check, run, check.Model(run)).Regulator(null).Answer!;
        Assert.Equal(RegulatorBehaviour.Fixed, fit.Behaviour);
        Assert.Equal(400, fit.Base.Value.Kilopascals, 0.1);
        Assert.Equal(0, fit.Gain.Value, 0.002);
    }

    /// <summary>In series, the gain sets in where the unit takes over: 150 + 6 b passes 300 + b at 30 kPa; a run to 28 kPa says so, not that of the unit's own onset.</summary>
    [Fact]
    public void Regulator_InSeries_ThatWasNotReached_NamesWhereItTakesOver()
    {
        RunCheck check = RunCheck.Of(OddRunTests.Plan("series"), Wren.Hill);
        RecordedRun run = RunOf(Enumerable.Range(0, 18).SelectMany(i => Held(-0.4 + (0.04 * i), 2, at => at == 0 ? 0.4 : -0.4)).Select(row => row with
        {
            Rail = Wren.Kpa(300) + row.Manifold - PulledWren.Air.Pressure,
        }));
        Finding<RegulatorFit> found = new PressureReading(check, run, check.Model(run)).Regulator(null);
        Assert.Contains("and the gain is set to begin at 0.30 bar", found.ToString(), StringComparison.Ordinal);
        Finding<RegulatorFit> none = new PressureReading(check, RunOf([new Cells { Speed = Wren.Rpm(3000) }]), check.Model(run)).Regulator(null);
        Assert.Equal("cannot tell: rail and manifold pressure must both be recorded", none.ToString());
        Assert.Equal([Channel.RailGauge, Channel.ManifoldAbsolute], none.Missing);
    }

    private static FuelSystem Returnless(double kilopascals) => FuelSystem.Returnless(
        PulledWren.Plan.Demand,
        PulledWren.Plan.Injectors,
        Fixed.At(Wren.Kpa(400)),
        Pump.Of([Wren.WiredCurve(9, 1), Wren.WiredCurve(13.5, 1.6)]),
        plumbing: Plumbing.Of(supply: [Filter.Of("filter", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(kilopascals))]));

    /// <summary>Rows at one boost and little fuel, the rail so many kPa under what the plan holds.</summary>
    private static IEnumerable<Cells> Held(double bars, int rows, Func<int, double> under)
    {
        double boost = 100 * bars;
        double set = 300 + Math.Min(boost, 20) + (3 * Math.Max(0, boost - 20));
        return Enumerable.Range(0, rows).Select(i => new Cells
        {
            Speed = Wren.Rpm(3000 + (15 * i)),
            Manifold = PulledWren.Air.Pressure + Pressure.FromBars(bars),
            Rail = Wren.Kpa(set - under(i)),
            Volts = Wren.Volt(13.5),
            Flow = VolumeFlow.FromLitersPerHour(20),
        });
    }

    private static double Set(OperatingResult at)
    {
        double boost = at.Point.Boost.Pascals;
        return 300e3 + Math.Min(boost, 20e3) + (3 * Math.Max(0, boost - 20e3));
    }

    private static double Allowed(double boost, int rows)
    {
        double over = Math.Max(0, boost - 20e3);
        double slope = over > 0 ? 3 : 1;
        double[] parts = [5e3, 0.06 * over, over > 0 ? 2 * 2e3 : 0, 3e3, slope * 1e3, 2e3 / Math.Sqrt(rows), slope * 500 / Math.Sqrt(rows)];
        return 3 * Math.Sqrt(parts.Sum(part => part * part));
    }

    private static RecordedRun RunOf(IEnumerable<Cells> cells) => RecordedRun.Of("rows", PulledWren.Air, cells.Select((one, i) => one.Row(i + 1)));

    private static Finding<PressureSag> SagOf(RunCheck check, RecordedRun run, bool diagnosed = false)
    {
        RunModel model = check.Model(run);
        return new PressureReading(check, run, model).Sag(diagnosed ? Diagnosis.Of(check, model, null, CancellationToken.None) : null);
    }
}
