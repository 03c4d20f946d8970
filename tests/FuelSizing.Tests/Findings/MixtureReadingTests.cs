using FuelSizing.Controllers;
using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Lean stretches row by row, and lambda beside the plan's, each as a whole result. Planned is 0.82, lean is over 0.8692.</summary>
public class MixtureReadingTests
{
    [Fact]
    public void Stretch_HasItsPlacesItsLengthAndItsLimits()
    {
        // Rows 3 to 6 lean, the leanest in row 5; a row off boost between them and rows 8 and 9.
        double?[] lambda = [0.82, 0.83, 0.90, 0.91, 0.95, 0.90, 0.95, 0.88, 0.89, 0.84];
        LeanExcursions found = Read(lambda.Select((value, i) => Row(i, value) with { Manifold = Boosted(i == 6 ? 0.04 : 0.3 + (0.01 * i)) })).Answer!;
        Assert.Equal((0.82, 9, 9), (found.Planned, found.RowsJudged, found.Rows));
        Assert.Equal(0.82 * 1.06, found.Limit, 12);
        Assert.Null(found.Gap);
        Assert.Equal(2, found.Stretches.Count);
        LeanExcursion first = found.Stretches[0];
        Assert.Equal((3, 5, 4), (first.From.Line, first.Worst.Line, first.Rows));
        Assert.Equal((0.95, 0.82, false), (first.Lambda, first.Planned, first.IsPlanLimit));
        Assert.Equal(0.8692, first.Limit, 12);
        Assert.Equal(0.3, first.Length!.Value.Seconds, 9);
        Assert.Equal(0.2, first.From.Time!.Value.Seconds, 9);
        Assert.Equal(3020, first.From.Speed.RevolutionsPerMinute, 6);
        Assert.Equal(0.32, first.From.Boost!.Value.Bars, 6);
        Assert.Equal(3040, first.Worst.Speed.RevolutionsPerMinute, 6);
        Assert.Equal("lambda 0.95 at 3,040 rev/min, 0.34 bar, 0.30 s long", first.ToString());
        Assert.Equal((8, 9, 2), (found.Stretches[1].From.Line, found.Stretches[1].Worst.Line, found.Stretches[1].Rows));
        Assert.Same(first, found.Worst);
        Assert.Equal(
            "lambda 0.95 at 3,040 rev/min, 0.34 bar, 0.30 s long; lambda 0.89 at 3,080 rev/min, 0.38 bar, 0.10 s long", found.ToString());
    }

    /// <summary>Just at the limit, just at the boost, or with the injectors shut, a row is not lean; nor is the engine at rest.</summary>
    [Theory]
    [InlineData(0.8693, 0.051, 5.0, 3000, 2)]
    [InlineData(0.8691, 0.051, 5.0, 3000, 0)]
    [InlineData(0.8693, 0.049, 5.0, 3000, 0)]
    [InlineData(0.8693, 0.051, 0.0, 3000, 0)]
    [InlineData(0.8693, 0.051, 5.0, 50, 0)]
    public void Row_IsLean_OverTheLimitOnBoostWithFuel(double lambda, double boost, double pulse, double rpm, int rows)
    {
        double?[] values = [0.82, 0.83, lambda, lambda, 0.82, 0.83];
        Finding<LeanExcursions> found = Read(values.Select((value, i) => i is 2 or 3
            ? Row(i, value) with { Manifold = Boosted(boost), Pulse = Wren.Ms(pulse), Speed = Wren.Rpm(rpm) }
            : Row(i, value) with { Pulse = Wren.Ms(5) }));
        Assert.Equal(rows, found.Answer!.Stretches.Sum(stretch => stretch.Rows));
        Assert.Null(found.Answer.Gap);
        Assert.Equal(rows > 0 || lambda < 0.8692 ? 6 : 4, found.Answer.Rows);
        if (rows == 0)
        {
            Assert.Null(found.Answer.Worst);
            Assert.Equal("no lean stretch on boost", found.ToString());
        }
    }

    /// <summary>Without times a stretch has rows; a blank cell within it does not end it.</summary>
    [Fact]
    public void Stretch_WithoutTimes_IsCountedInRows()
    {
        double?[] lambda = [0.82, 0.83, 0.90, null, 0.92, 0.82];
        LeanExcursions found = Read(lambda.Select((value, i) => Row(i, value) with { Time = null })).Answer!;
        LeanExcursion stretch = Assert.Single(found.Stretches);
        Assert.Equal((3, 2), (stretch.From.Line, stretch.Rows));
        Assert.Null(stretch.Length);
        Assert.Null(stretch.From.Time);
        Assert.Equal("lambda 0.92 at 3,040 rev/min, 0.30 bar, 2 rows long", stretch.ToString());
        Assert.Equal("lambda is known of 5 of 6 rows on boost", found.Gap!.ToString());
    }

    /// <summary>
    /// One lean row between two that are not, half a second apart or less, is a glitch (common practice, no source). Further apart it may have
    /// been lean for long, whether by slow logging or by blank cells between; at either end of the run nobody can tell.
    /// </summary>
    [Theory]
    [InlineData(0.25, 4, "", 0, "")]
    [InlineData(0.26, 4, "", 1, "")]
    [InlineData(0.15, 4, "35", 1, "lambda is known of 7 of 9 rows on boost")]
    [InlineData(0.1, 4, "35", 0, "lambda is known of 7 of 9 rows on boost")]
    [InlineData(0.15, 4, "3", 0, "lambda is known of 8 of 9 rows on boost")]
    [InlineData(0.15, 4, "5", 0, "lambda is known of 8 of 9 rows on boost")]
    [InlineData(0.1, 1, "0", 0, "lambda is known of 8 of 9 rows on boost; 1 single rows read lean, and the log does not show whether for long")]
    [InlineData(0.1, 0, "", 0, "lambda is known of 9 of 9 rows on boost; 1 single rows read lean, and the log does not show whether for long")]
    [InlineData(0.1, 8, "", 0, "lambda is known of 9 of 9 rows on boost; 1 single rows read lean, and the log does not show whether for long")]
    [InlineData(0.1, 1, "", 0, "")]
    [InlineData(0.1, 7, "", 0, "")]
    [InlineData(0.26, 1, "", 1, "")]
    [InlineData(0.26, 7, "", 1, "")]
    public void SingleRow_CountsByTheTimeItMayHaveLasted(double step, int at, string blank, int stretches, string gap)
    {
        LeanExcursions found = Read(Enumerable.Range(0, 9).Select(i => Row(
            i, i == at ? 0.95 : blank.Contains((char)('0' + i), StringComparison.Ordinal) ? null : 0.82 + (0.001 * i), step))).Answer!;
        Assert.Equal(stretches, found.Stretches.Count);
        Assert.Equal(gap, $"{found.Gap}");
        if (stretches > 0)
        {
            Assert.Null(found.Stretches[0].Length);
            Assert.EndsWith("1 rows long", found.Stretches[0].ToString(), StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal(gap.Length > 0 ? $"not lean where lambda is known, judged in part: {gap}" : "no lean stretch on boost", found.ToString());
        }
    }

    /// <summary>
    /// A channel that is read every second or third row and holds its reading between: one that is lean is one, in however many rows it stands, and counts by
    /// the time from the reading before it to the one after. Two that are lean are a stretch.
    /// </summary>
    [Theory]
    [InlineData(0.1, 2, 1, 0)]
    [InlineData(0.12, 2, 1, 0)]
    [InlineData(0.13, 2, 1, 2)]
    [InlineData(0.08, 3, 1, 0)]
    [InlineData(0.09, 3, 1, 3)]
    [InlineData(0.05, 2, 2, 4)]
    public void HeldReading_CountsOnce(double step, int held, int lean, int rows)
    {
        LeanExcursions found = Read(Enumerable.Range(0, 25 * held).Select(i => Row(
            i, i / held >= 10 && i / held < 10 + lean ? 0.95 + (0.001 * (i / held)) : 0.82 + (0.0001 * (i / held)), step))).Answer!;
        Assert.Equal(rows > 0 ? [rows] : [], found.Stretches.Select(stretch => stretch.Rows));
        Assert.Null(found.Gap);
    }

    /// <summary>Rows at the rich end of the sensor, and rows without manifold pressure, are counted with the reason.</summary>
    [Fact]
    public void Gap_SaysWhatWasNotJudgedAndWhy()
    {
        double?[] lambda = [0.82, 0.65, 0.65, 0.65, null, 0.83, 0.84, 0.82];
        LeanExcursions found = Read(lambda.Select((value, i) => i == 6 ? Row(i, value) with { Manifold = null } : Row(i, value))).Answer!;
        Assert.Equal((3, 8), (found.RowsJudged, found.Rows));
        Assert.Equal(
            "lambda is known of 3 of 8 rows on boost; 3 rows read 0.65, the end of what the sensor reads; 1 rows lack manifold pressure, so that they may be on boost",
            found.Gap!.ToString());
    }

    /// <summary>A lean stretch goes on over rows of which nobody knows the load.</summary>
    [Fact]
    public void Stretch_GoesOnOverRowsWithoutManifoldPressure()
    {
        double?[] lambda = [0.82, 0.9, 0.9, 0.91, 0.83];
        LeanExcursion stretch = Assert.Single(Read(lambda.Select((value, i) => i == 2 ? Row(i, value) with { Manifold = null } : Row(i, value))).Answer!.Stretches);
        Assert.Equal((2, 4, 2), (stretch.From.Line, stretch.Worst.Line, stretch.Rows));
        Assert.Equal(0.2, stretch.Length!.Value.Seconds, 9);
    }

    /// <summary>Lean to the last row, the stretch counts.</summary>
    [Fact]
    public void Stretch_AtTheEndOfTheRun_Counts()
    {
        double?[] lambda = [0.9, 0.91, 0.82, 0.9, 0.93];
        LeanExcursions found = Read(lambda.Select((value, i) => Row(i, value))).Answer!;
        Assert.Equal([1, 4], found.Stretches.Select(stretch => stretch.From.Line));
    }

    public static TheoryData<string, string> Untold => new()
    {
        { "off boost", "cannot tell: the run was never on boost" },
        { "never moves", "cannot tell: lambda reads 0.80 throughout while engine speed changes" },
        { "rich end", "cannot tell: lambda stays at 0.65 on boost, the end of what its sensor reads" },
        { "no manifold", "cannot tell: no row holds manifold pressure with the engine turning" },
        { "blank", "cannot tell: no row on boost has a usable lambda" },
        { "blank and no manifold", "cannot tell: no row on boost has a usable lambda" },
    };

    [Theory]
    [MemberData(nameof(Untold))]
    public void Mixture_ThatCannotBeTold_HasItsReason(string kind, string reason)
    {
        Finding<LeanExcursions> found = Read(Enumerable.Range(0, 25).Select(i => (kind, i) switch
        {
            ("off boost", _) => Row(i, 0.8 + (0.001 * i)) with { Manifold = Boosted(-0.1) },
            ("never moves", _) => Row(i, 0.8) with { Speed = Wren.Rpm(3000 + (40 * i)) },
            ("rich end", < 10) => Row(i, 0.9 + (0.01 * i)) with { Manifold = Boosted(-0.1) },
            ("rich end", _) => Row(i, 0.65),
            ("no manifold", 0) => Row(i, 0.8) with { Speed = RotationalSpeed.Zero },
            ("no manifold", _) => Row(i, 0.8 + (0.001 * i)) with { Manifold = null },
            ("blank and no manifold", < 5) => Row(i, 0.9) with { Manifold = null },
            (_, 0) => Row(i, 0.8) with { Manifold = Boosted(-0.1) },
            _ => Row(i, null),
        }));
        Assert.Null(found.Answer);
        Assert.Equal(reason, found.ToString());
        Assert.Empty(found.Missing);
    }

    [Fact]
    public void Mixture_WithoutTheChannels_NamesThem()
    {
        Finding<LeanExcursions> found = Read(Enumerable.Range(0, 5).Select(i => Row(i, null) with { Manifold = null }));
        Assert.Equal("cannot tell: lambda and manifold pressure must both be recorded", found.ToString());
        Assert.Equal([Channel.Lambda, Channel.ManifoldAbsolute], found.Missing);
        Assert.Equal([Channel.ManifoldAbsolute], Read(Enumerable.Range(0, 5).Select(i => Row(i, 0.8) with { Manifold = null })).Missing);
    }

    /// <summary>Six stretches of two rows: five are named, the sixth is counted.</summary>
    [Theory]
    [InlineData(5, "")]
    [InlineData(6, "; and 1 stretches more")]
    [InlineData(8, "; and 3 stretches more")]
    public void ManyStretches_AreCountedOverFive(int stretches, string more)
    {
        LeanExcursions found = Read(Enumerable.Range(0, 3 * stretches).Select(i => Row(i, i % 3 == 0 ? 0.82 : 0.9 + (0.001 * i)))).Answer!;
        Assert.Equal(stretches, found.Stretches.Count);
        string wanted = string.Join("; ", found.Stretches.Take(5).Select(stretch => stretch.ToString())) + more;
        Assert.Equal(wanted, found.ToString());
        Assert.Equal(found.Stretches[^1], found.Worst);
    }

    /// <summary>Beside the plan: 450 rows on boost are too many to solve; 200 of them evenly, and the leanest whichever it is.</summary>
    [Fact]
    public void ManyRows_AreComparedEvenly_AndTheLeanestInAnyCase()
    {
        double Share(int i) => i == 5 ? 1.05 : 1 + (0.0001 * (i % 200));
        Cells[] rows = [.. Enumerable.Range(0, 453).Select(i => Fed(i, Share(i)))];
        rows[450] = rows[450] with { Manifold = Boosted(-0.1) };
        rows[451] = rows[451] with { Lambda = null };
        rows[452] = rows[452] with { Pulse = Duration.Zero };
        MixtureComparison found = Beside(rows).Answer!;
        long[] wanted = [.. Enumerable.Range(0, 200).Select(step => (step * 450 / 200) + 1L).Append(6).Order()];
        Assert.Equal(wanted, found.Places.Select(place => place.Place.Line));
        Assert.Equal(450, found.Rows);
        Assert.Equal(6, found.Leanest.Place.Line);
        Assert.Equal(1.05, found.Leanest.Ratio, 6);
        double[] shares = [.. wanted.Select(line => Share((int)line - 1)).Order()];
        Assert.Equal(201, shares.Length);
        Assert.Equal(shares[100], 1 + found.Median.DecimalFractions, 6);
        Assert.All(found.Places, place => Assert.Equal(place.Recorded / place.Ratio, place.Planned.Lambda!.Value, 6));
    }

    /// <summary>Two rows, 3 % leaner and 1 % richer than the plan's controller makes them, are as a median 1 % leaner; 5 % and 1 % richer 3 %.</summary>
    [Theory]
    [InlineData(1.03, 0.99, "on boost lambda is as a median 1 % leaner than the plan's controller gives; leanest recorded ")]
    [InlineData(0.95, 0.99, "on boost lambda is as a median 3 % richer than the plan's controller gives; leanest recorded ")]
    public void Median_IsLeanerOrRicher(double first, double second, string words)
    {
        MixtureComparison found = Beside(Fed(0, first), Fed(1, second)).Answer!;
        Assert.Equal(((first + second) / 2) - 1, found.Median.DecimalFractions, 6);
        Assert.StartsWith(words, found.ToString(), StringComparison.Ordinal);
        Assert.Equal(2, found.Rows);
        Assert.Equal(first > second ? 1 : 2, found.Leanest.Place.Line);
    }

    /// <summary>A place 6 % over the plan's own lambda is explained by it, one further off is not.</summary>
    [Theory]
    [InlineData(1.0599, true)]
    [InlineData(1.0601, false)]
    public void Place_IsExplainedToSixPerCent(double share, bool explained)
    {
        MixturePlace place = Assert.Single(Beside(Fed(0, share)).Answer!.Places);
        Assert.Equal(explained, place.IsExplained);
        Assert.Equal(share, place.Ratio, 6);
        Assert.Equal(!explained, place.ToString().EndsWith("which does not explain it: look at the faults", StringComparison.Ordinal));
        Assert.StartsWith(FormattableString.Invariant($"{place.Recorded:0.00} at 3,000 rev/min, 0.30 bar, where the plan's controller gives {place.Planned.Lambda:0.00}"), place.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_WithoutAPlaceToCompare_SaysSo()
    {
        Assert.Equal(
            "cannot tell: no row on boost has both a usable lambda and one that the plan's controller gives",
            Beside(Fed(0, 1) with { Manifold = Boosted(-0.1) }).ToString());

        // Past what the plan's tables cover there is none either.
        Assert.Equal(
            "cannot tell: no row on boost has both a usable lambda and one that the plan's controller gives",
            Beside(Fed(0, 1) with { Speed = Wren.Rpm(7900) }).ToString());
        Finding<MixtureComparison> missing = Beside(Fed(0, 1) with { Lambda = null });
        Assert.Equal([Channel.Lambda], missing.Missing);
        Assert.Equal("cannot tell: lambda and manifold pressure must both be recorded", missing.ToString());
        RecordedRun run = RecordedRun.Of("rows", PulledWren.Air, [Row(0, 0.82).Row(1)]);
        Assert.Equal(
            $"cannot tell: {IdealController.Instance.Text}", new MixtureReading(PulledWren.Check, run, PulledWren.Check.Model(run)).BesidePlan().ToString());
    }

    private static readonly RunCheck Known = RunCheck.Of(
        PulledWren.Plan.With(RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(9)))), Wren.Hill);

    private static Pressure Boosted(double bars) => PulledWren.Air.Pressure + Pressure.FromBars(bars);

    private static Cells Row(int i, double? lambda, double step = 0.1) => new()
    {
        Speed = Wren.Rpm(3000 + (10 * i)),
        Time = Duration.FromSeconds(i * step),
        Manifold = Boosted(0.3),
        Lambda = lambda,
    };

    /// <summary>A row at which lambda is so many times what the plan's controller makes it.</summary>
    private static Cells Fed(int i, double share)
    {
        Cells row = Row(i, null) with { Speed = Wren.Rpm(3000 + i), Pulse = Wren.Ms(9) };
        return row with { Lambda = share * Known.PlanAt(row.Row(1), PulledWren.Air)!.Mixture.Lambda };
    }

    private static Finding<MixtureComparison> Beside(params Cells[] rows)
    {
        RecordedRun run = RecordedRun.Of("rows", PulledWren.Air, rows.Select((cells, i) => cells.Row(i + 1)));
        return new MixtureReading(Known, run, Known.Model(run)).BesidePlan();
    }

    private static Finding<LeanExcursions> Read(IEnumerable<Cells> rows)
    {
        RecordedRun run = RecordedRun.Of("rows", PulledWren.Air, rows.Select((cells, i) => cells.Row(i + 1)));
        return new MixtureReading(PulledWren.Check, run, PulledWren.Check.Model(run)).Lean();
    }
}
