using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>A heading compared with a mapping: which column is which, and what is said of one that cannot be told.</summary>
public class HeadingTests
{
    private const string Cure = "Correct the mapping, or take the channel out of it.";

    [Theory]
    [InlineData("Lambda", "there is no \"Speed\" for Speed; there is \"Lambda\".")]
    [InlineData("a,b", "there is no \"Speed\" for Speed; there are \"a\", \"b\".")]
    [InlineData(
        "a,b,c,d,e,f,g,h,i,j,k,l", "there is no \"Speed\" for Speed; there are \"a\", \"b\", \"c\", \"d\", \"e\", \"f\", \"g\", \"h\", \"i\", \"j\", \"k\", \"l\".")]
    [InlineData(
        "a,b,c,d,e,f,g,h,i,j,k,l,m",
        "there is no \"Speed\" for Speed; there are \"a\", \"b\", \"c\", \"d\", \"e\", \"f\", \"g\", \"h\", \"i\", \"j\", \"k\", \"l\" and 1 more.")]
    [InlineData(
        "a,b,c,d,e,f,g,h,i,j,k,l,m,n,o",
        "there is no \"Speed\" for Speed; there are \"a\", \"b\", \"c\", \"d\", \"e\", \"f\", \"g\", \"h\", \"i\", \"j\", \"k\", \"l\" and 3 more.")]
    [InlineData("speed", "there is no \"Speed\" for Speed; there is \"speed\". Did you mean \"speed\"?")]
    [InlineData(",Lambda", "there is no \"Speed\" for Speed; there are \"\", \"Lambda\".")]
    [InlineData(",", "there is no \"Speed\" for Speed; there is \"\".")]
    public void Column_ThatIsNotThere_IsAnsweredWithThoseThatAre(string heading, string words)
    {
        RunProblem refusal = LogText.Refusal($"{heading}\n1\n", RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)));
        Assert.Equal($"{words} {Cure}", refusal.Reason.ToString());
        Assert.Equal((1, 1, "", RunProblemKind.MissingColumn), (refusal.Line, refusal.Column, refusal.Field, refusal.Kind));
    }

    [Fact]
    public void Column_OfANumberPastTheLast_IsNotThere()
    {
        RunMapping third = RunMapping.Of(RunColumn.Speed(ColumnPlace.Numbered(3), RotationalSpeedUnit.RevolutionPerMinute));
        Assert.Equal($"there is no column 3 for Speed; there are \"a\", \"b\". {Cure}", LogText.Refusal("a,b\n1,2\n", third).Reason.ToString());

        // Blank headings at the end are no columns; one in the middle is.
        Assert.Equal($"there is no column 3 for Speed; there are \"a\", \"b\". {Cure}", LogText.Refusal("a,b, ,\n1,2,3,4\n", third).Reason.ToString());
        Assert.Equal(3000, LogText.Read("a,,b\n1,2,3000\n", third).Rows[0].Speed.RevolutionsPerMinute, 9);
        RunMapping first = RunMapping.Of(RunColumn.Speed(ColumnPlace.Numbered(1), RotationalSpeedUnit.RevolutionPerMinute));
        Assert.Equal(3000, LogText.Read(" \n3000\n", first).Rows[0].Speed.RevolutionsPerMinute, 9);
    }

    [Fact]
    public void Column_ThatStandsTwice_IsSaidByBothPlaces()
    {
        RecordedRun run = LogText.Read("Lambda,Time,Speed,Boost,Rail,Lambda\n0.8,0,3000,0.5,350,0.85\n");
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal([Channel.Time, Channel.Speed, Channel.ManifoldAbsolute, Channel.RailGauge], run.Channels);
        Assert.Equal("line 1, column 6 (Lambda): \"Lambda\" stands over columns 1 and 6, and Lambda cannot tell which; map it by its number.", problem.ToString());
        Assert.Equal((RunProblemKind.DuplicateColumn, ProblemEffect.ChannelLeftOut), (problem.Kind, problem.Effect));
        RunProblem refusal = LogText.Refusal(
            "x,Speed,Speed\n1,3000,3000\n", RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)));
        Assert.Equal("line 1, column 3 (Speed): \"Speed\" stands over columns 2 and 3, and Speed cannot tell which; map it by its number.", refusal.ToString());
        Assert.Equal(ProblemEffect.FileRefused, refusal.Effect);
    }

    /// <summary>A channel that is left out leaves the others where they are; problems of the heading name its line, those of units the next.</summary>
    [Fact]
    public void Problems_OfHeadingAndUnits_NameTheirLinesBelowOthers()
    {
        RunMapping mapping = RunMapping.Of(
                RunColumn.Lambda("Lambda"),
                RunColumn.RailGauge("Rail (psi)", PressureUnit.Kilopascal),
                RunColumn.Boost("Boost"),
                RunColumn.Speed("Speed"),
                RunColumn.BatteryVoltage("Volts", ElectricPotentialUnit.Volt))
            .WithHeadingLine(3).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read("one\ntwo\nLambda,Speed,Rail (psi),Boost,Volts\n,rpm,kPa,furlong\n0.9,3000,350,0.5,13.5\n", mapping);
        Assert.Equal(
            [
                "line 3, column 3 (Rail (psi)): the heading says \"psi\" and the mapping Kilopascal; RailGauge is left out until they agree. Correct whichever is wrong.",
                "line 4, column 4 (Boost): the units row says \"furlong\", which is no unit of ManifoldAbsolute that is understood; ManifoldAbsolute is left out. "
                + "Write one of kPa, bar, mbar, hPa, Pa, MPa, psi, inHg, mmHg there, or have the row skipped and give the unit in the mapping.",
            ],
            run.Problems.Select(problem => problem.ToString()));
        Assert.Equal("line 5: Speed 3000 rev/min, Lambda 0.9, BatteryVoltage 13.5 V", Assert.Single(run.Rows).ToString());
    }

    [Fact]
    public void Unit_ThatNeitherRowNorMappingSays_LeavesTheChannelOut()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.Power("Power")).WithUnitsRow(UnitsRow.Used);
        foreach (string row in new[] { "rpm,", "rpm", "rpm,--", "rpm,[–]" })
        {
            RunProblem problem = Assert.Single(LogText.Read($"Speed,Power\n{row}\n3000,50\n", mapping).Problems);
            Assert.Equal(
                "line 2, column 2 (Power): the units row says no unit of Power, nor does the mapping; Power is left out. Give the unit in the mapping.",
                problem.ToString());
        }
    }

    /// <summary>A heading that says a unit, in brackets or last, under a mapping of rail pressure in kPa: which text is taken as the unit.</summary>
    [Theory]
    [InlineData("Rail (psi)", "psi")]
    [InlineData("Rail [psi]", "psi")]
    [InlineData("Rail {psi}", "psi")]
    [InlineData("Rail ( psi )", " psi ")]
    [InlineData("(psi) Rail", "psi")]
    [InlineData("(psi)", "psi")]
    [InlineData("Rail (1) [bar]", "bar")]
    [InlineData("Rail ((psi)", "(psi")]
    [InlineData("Rail (psi", "(psi")]
    [InlineData("Rail psi", "psi")]
    [InlineData("Rail_psi", "psi")]
    [InlineData("Rail.psi", "psi")]
    [InlineData("Rail:psi", "psi")]
    [InlineData("Rail;psi", "psi")]
    [InlineData("Rail\u00A0psi", "psi")]
    [InlineData("Rail bar ", "bar")]
    [InlineData("Rail degC", "degC")]
    [InlineData("Rail l/h", "l/h")]
    [InlineData("Rail kg/h", "kg/h")]
    [InlineData("Rail (V)", "V")]
    [InlineData("Rail (v)", "v")]
    [InlineData("Rail (%)", "%")]
    [InlineData("Rail (ms)", "ms")]
    public void Heading_ThatSaysAnotherUnit_LeavesTheChannelOut(string heading, string unit)
    {
        RunProblem? problem = Problem(heading, PressureUnit.Kilopascal);
        Assert.NotNull(problem);
        Assert.StartsWith($"the heading says \"{unit}\"", problem.Reason.ToString(), StringComparison.Ordinal);
    }

    /// <summary>What is no unit, or only may be one: a bank or cylinder in brackets, a last word that is also a word of its own.</summary>
    [Theory]
    [InlineData("Rail (1)")]
    [InlineData("Rail ( 1 )")]
    [InlineData("Rail (F)")]
    [InlineData("Rail (c)")]
    [InlineData("Rail ()")]
    [InlineData("Rail (a)")]
    [InlineData("Rail (g)")]
    [InlineData("Rail [psi)")]
    [InlineData("Rail V")]
    [InlineData("Rail hp")]
    [InlineData("Rail min")]
    [InlineData("Rail rpm")]
    [InlineData("Rail volt")]
    [InlineData("psi")]
    [InlineData("Rail kPa")]
    [InlineData("Rail (KPA) gauge")]
    public void Heading_ThatSaysNoUnitOrTheSame_IsAccepted(string heading) => Assert.Null(Problem(heading, PressureUnit.Kilopascal));

    /// <summary>Gauge or absolute by itself, in a bracket or as the last word; "a" and "g" alone may be anything.</summary>
    [Theory]
    [InlineData("Rail (abs)", true)]
    [InlineData("Rail [Absolute]", true)]
    [InlineData("Rail abs", true)]
    [InlineData("Rail absolute", true)]
    [InlineData("Rail (abs) kPa", true)]
    [InlineData("Rail (abs) gauge", true)]
    [InlineData("Rail absolute value", false)]
    [InlineData("Rail a", false)]
    [InlineData("Rail gauge", false)]
    [InlineData("Rail (rel)", false)]
    public void Heading_OfGaugePressure_ThatSaysAbsolute_LeavesTheChannelOut(string heading, bool isContradicted)
    {
        RunProblem? problem = Problem(heading, PressureUnit.Kilopascal);
        Assert.Equal(
            isContradicted ? $"the heading says \"{heading}\", absolute, and the mapping gauge; RailGauge is left out until they agree. Correct whichever is wrong." : null,
            problem?.Reason.ToString());
    }

    /// <summary>A heading without a name near it is not offered, and a blank one never.</summary>
    [Fact]
    public void Column_OfAShortName_IsNotTakenForABlankHeading() =>
        Assert.Equal(
            $"there is no \"n\" for Speed; there are \"\", \"Lambda\". {Cure}",
            LogText.Refusal(",Lambda\n1,2\n", RunMapping.Of(RunColumn.Speed("n", RotationalSpeedUnit.RevolutionPerMinute))).Reason.ToString());

    [Theory]
    [InlineData("Rail gauge")]
    [InlineData("Rail gage")]
    [InlineData("Rail (relative)")]
    [InlineData("Rail_rel")]
    public void Heading_OfAbsolutePressure_ThatSaysGauge_LeavesTheChannelOut(string heading)
    {
        RunMapping mapping = RunMapping.Of(
            RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.RailAbsolute(heading, PressureUnit.Kilopascal));
        Assert.Equal(
            $"the heading says \"{heading}\", gauge, and the mapping absolute; RailGauge is left out until they agree. Correct whichever is wrong.",
            Assert.Single(LogText.Read($"Speed,{heading}\n3000,450\n", mapping).Problems).Reason.ToString());
    }

    private static RunProblem? Problem(string heading, PressureUnit unit)
    {
        RunMapping mapping = RunMapping.Of(
            RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.RailGauge(heading, unit));
        RecordedRun run = LogText.Read($"Speed,{heading}\n3000,350\n", mapping);
        Assert.Equal(run.Problems.Count == 0, run.Has(Channel.RailGauge));
        return run.Problems.SingleOrDefault();
    }
}
