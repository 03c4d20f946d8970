using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Interactive;
using FuelSizing.Logs;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet.Units;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Findings as a notebook shows them. What they find is the library's own tests' concern.</summary>
public class FindingBlockTests
{
    private static readonly RunMapping Mapping = RunMapping.Of(
        RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute),
        RunColumn.Boost("Boost", PressureUnit.Bar),
        RunColumn.RailGauge("Rail", PressureUnit.Kilopascal),
        RunColumn.InjectorPulse("Pulse", DurationUnit.Millisecond),
        RunColumn.Lambda("Lambda"));

    [Fact]
    public void Findings_OfAShortRun_SayWhatCannotBeToldAndWhy()
    {
        RunFindings findings = Of("Speed,Boost,Rail,Pulse,Lambda\n3000,0.20,320,6.1,0.82\n4000,0.40,345,7.0,0.82\n");

        Table table = FindingTables.Findings(findings);
        Assert.Equal(11, table.Rows.Count);
        Assert.Equal(["Verdict", findings.Verdict.ToString()], table.Rows[0]);
        Assert.Contains(table.Rows, row => row[0] == "Regulator" && row[1].StartsWith("cannot tell: ", StringComparison.Ordinal));
        Assert.Contains(table.Rows, row => row[0] == "BSFC" && row[1].StartsWith("cannot tell: ", StringComparison.Ordinal));
        Assert.Contains("rows", table.Note!, StringComparison.Ordinal);
        Assert.NotEmpty(FindingTables.Verdict(findings).Title);
    }

    [Fact]
    public void Findings_OfSpeedAlone_HaveNothingToCompareAndSayNoMore()
    {
        RunFindings findings = Of("Speed,Boost,Rail,Pulse,Lambda\n3000,,,,\n4000,,,,\n");
        Assert.Throws<ArgumentException>(() => FindingTables.Agreement(findings));
        Assert.Throws<ArgumentException>(() => FindingTables.Faults(findings));
        Assert.Equal(CalloutKind.CannotSay, FindingTables.Verdict(findings).Kind);
    }

    [Fact]
    public void Notebook_ShowsFindingsAsATable()
    {
        FuelSizingExtension.Register();
        RunFindings findings = Of("Speed,Boost,Rail,Pulse,Lambda\n3000,0.20,320,6.1,0.82\n");
        Assert.Contains("What the run says", findings.ToDisplayString("text/html"), StringComparison.Ordinal);
    }

    internal static RunFindings Of(string text) => RunFindings.Of(
        SizingSheetTests.Sweep().System, RunReader.Read("pull.csv", new StringReader(text), Mapping, Atmosphere.Standard));
}
