using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>What a units row and a heading say of units: understood in any spelling, or the channel is left out.</summary>
public class UnitsRowTests
{
    /// <summary>50 psi and 350 kPa: NIST SP 811 (2008), appendix B.8, one psi is 6.894757 kPa, one bar 100 kPa, one inHg 3.386389 kPa.</summary>
    [Theory]
    [InlineData("PSI", 50, 344.73785)]
    [InlineData("psi", 50, 344.73785)]
    [InlineData("psig", 50, 344.73785)]
    [InlineData("PSIG", 50, 344.73785)]
    [InlineData("psi (g)", 50, 344.73785)]
    [InlineData("psi gauge", 50, 344.73785)]
    [InlineData("gauge psi", 50, 344.73785)]
    [InlineData("lb/in2", 50, 344.73785)]
    [InlineData("lbs/in²", 50, 344.73785)]
    [InlineData("lbf/sq. in.", 50, 344.73785)]
    [InlineData("BAR", 3.5, 350)]
    [InlineData("Bar(g)", 3.5, 350)]
    [InlineData("[barg]", 3.5, 350)]
    [InlineData("KPA", 350, 350)]
    [InlineData("k Pa", 350, 350)]
    [InlineData("kPa rel", 350, 350)]
    [InlineData("kPa_g", 350, 350)]
    [InlineData("MBAR", 3500, 350)]
    [InlineData("hpa", 3500, 350)]
    [InlineData("MPA", 0.35, 350)]
    [InlineData("N/m²", 350000, 350)]
    [InlineData("inHg", 100, 338.6389)]
    [InlineData("in. Hg", 100, 338.6389)]
    [InlineData("kg/cm2", 3.5, 343.2327)]
    public void RailPressure_InAnySpelling_IsConverted(string unit, double number, double kilopascals)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.RailGauge("Rail")).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read(FormattableString.Invariant($"Speed,Rail\nrpm,\"{unit}\"\n3000,{number}\n"), mapping);
        Assert.Empty(run.Problems);
        Assert.Equal(kilopascals, run.Rows[0].RailGauge!.Value.Kilopascals, 1e-3 * kilopascals);
    }

    /// <summary>The same spellings under a column that is mapped as kPa: a contradiction, but for kPa itself.</summary>
    [Theory]
    [InlineData("PSI")]
    [InlineData("psig")]
    [InlineData("psia")]
    [InlineData("BAR")]
    [InlineData("lb/in2")]
    [InlineData("MPa")]
    [InlineData("°C")]
    [InlineData("DEGF")]
    [InlineData("V")]
    [InlineData("%")]
    [InlineData("rpm")]
    [InlineData("kPa abs")]
    [InlineData("kPa (a)")]
    [InlineData("kPaA")]
    [InlineData("abs. kPa")]
    [InlineData("bar a")]
    [InlineData("furlong")]
    [InlineData("?")]
    [InlineData("psid")]
    [InlineData("inHg vac")]
    [InlineData("350")]
    public void UnitsRow_UnderKilopascalsGauge_ThatSaysElse_CostsTheChannel(string unit)
    {
        RecordedRun run = LogText.Read(
            LogText.Heading + $"s,rpm,bar,\"{unit}\",-\n0,3000,0.5,350,0.85\n", LogText.Mapping.WithUnitsRow(UnitsRow.Used));
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal((2, 4, RunProblemKind.Unit, ProblemEffect.ChannelLeftOut), ((int)problem.Line, problem.Column, problem.Kind, problem.Effect));
        Assert.Contains(unit, problem.ToString(), StringComparison.Ordinal);
        Assert.Contains("RailGauge", problem.ToString(), StringComparison.Ordinal);
        Assert.False(run.Has(Channel.RailGauge));
        Assert.True(run.Has(Channel.Lambda));
        Assert.True(run.Has(Channel.ManifoldAbsolute));
    }

    [Theory]
    [InlineData("kPa")]
    [InlineData("KPA")]
    [InlineData("kpag")]
    [InlineData("kPa (gauge)")]
    [InlineData("kN/m2")]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("[-]")]
    [InlineData(" – ")]
    public void UnitsRow_UnderKilopascalsGauge_ThatSaysTheSameOrNothing_IsAccepted(string unit)
    {
        RecordedRun run = LogText.Read(
            LogText.Heading + $"s,rpm,bar,{unit},-\n0,3000,0.5,350,0.85\n", LogText.Mapping.WithUnitsRow(UnitsRow.Used));
        Assert.Empty(run.Problems);
        Assert.Equal(350, run.Rows[0].RailGauge!.Value.Kilopascals, 9);
    }

    [Theory]
    [InlineData("psig")]
    [InlineData("kPa gauge")]
    [InlineData("bar (g)")]
    public void UnitsRow_ThatSaysGauge_UnderAnAbsoluteColumn_CostsTheChannel(string unit)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.ManifoldAbsolute("MAP"), RunColumn.RailAbsolute("Rail")).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read($"Speed,MAP,Rail\nrpm,{unit},{unit}\n3000,10,50\n", mapping);
        Assert.Equal(2, run.Problems.Count);
        Assert.All(run.Problems, problem => Assert.Contains("gauge, and the mapping absolute", problem.ToString(), StringComparison.Ordinal));
        Assert.Equal([Channel.Speed], run.Channels);
    }

    [Fact]
    public void UnitsRow_ThatSaysAbsolute_UnderAnAbsoluteColumn_IsConverted()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.ManifoldAbsolute("MAP")).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read("Speed,MAP\nRPM,psia\n3000,20\n", mapping);
        Assert.Empty(run.Problems);
        Assert.Equal(20 * 6.894757, run.Rows[0].ManifoldAbsolute!.Value.Kilopascals, 1e-4);
    }

    /// <summary>104 °F is 40 °C and 313.15 K by definition.</summary>
    [Theory]
    [InlineData("°C", 40)]
    [InlineData("degC", 40)]
    [InlineData("DEG C", 40)]
    [InlineData("Celsius", 40)]
    [InlineData("℃", 40)]
    [InlineData("c", 40)]
    [InlineData("DEGF", 104)]
    [InlineData("deg. F", 104)]
    [InlineData("ºF", 104)]
    [InlineData("fahrenheit", 104)]
    [InlineData("kelvin", 313.15)]
    public void FuelTemperature_InAnySpelling_IsConverted(string unit, double number)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.FuelTemperature("T")).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read(FormattableString.Invariant($"Speed,T\nrpm,{unit}\n3000,{number}\n"), mapping);
        Assert.Empty(run.Problems);
        Assert.Equal(40, run.Rows[0].FuelTemperature!.Value.DegreesCelsius, 1e-9);
    }

    [Fact]
    public void Fahrenheit_UnderACelsiusColumn_CostsTheChannel()
    {
        RunMapping mapping = RunMapping.Of(
            RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.FuelTemperature("T", TemperatureUnit.DegreeCelsius)).WithUnitsRow(UnitsRow.Used);
        Assert.Equal("log.units-differ", Assert.Single(LogText.Read("Speed,T\nrpm,DEGF\n3000,104\n", mapping).Problems).Reason.Code);
        Assert.Equal("log.units-differ", Assert.Single(LogText.Read("Speed,T\nrpm,K\n3000,104\n", mapping).Problems).Reason.Code);
        Assert.Empty(LogText.Read("Speed,T\nrpm,Deg C\n3000,104\n", mapping).Problems);
    }

    [Theory]
    [InlineData("msec", 7.5)]
    [InlineData("MS", 7.5)]
    [InlineData("µs", 7500)]
    [InlineData("uSec", 7500)]
    [InlineData("S", 0.0075)]
    public void Pulse_InAnySpelling_IsConverted(string unit, double number)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.InjectorPulse("P")).WithUnitsRow(UnitsRow.Used);
        Assert.Equal(7.5, LogText.Read(FormattableString.Invariant($"Speed,P\nRevs/Min,{unit}\n3000,{number}\n"), mapping).Rows[0].InjectorPulse!.Value.Milliseconds, 1e-9);
    }

    [Fact]
    public void Speed_InAUnitThatIsNotUnderstood_CostsTheFile()
    {
        RunProblem refusal = LogText.Refusal("Speed\nknots\n3000\n", RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)).WithUnitsRow(UnitsRow.Used));
        Assert.Contains("knots", refusal.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Rail (psi)")]
    [InlineData("Rail [PSI]")]
    [InlineData("Rail {bar}")]
    [InlineData("Rail (kPa abs)")]
    [InlineData("Rail (abs)")]
    [InlineData("Rail kPa (absolute)")]
    [InlineData("Rail psi")]
    [InlineData("Rail_psig")]
    [InlineData("Rail.degC")]
    [InlineData("Rail (V)")]
    [InlineData("Rail (%)")]
    public void Heading_ThatContradictsTheMapping_CostsTheChannel(string heading)
    {
        foreach (ColumnPlace place in new[] { ColumnPlace.Named(heading), ColumnPlace.Numbered(2) })
        {
            RunMapping mapping = RunMapping.Of(
                RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.RailGauge(place, PressureUnit.Kilopascal));
            RecordedRun run = LogText.Read($"Speed,{heading}\n3000,50\n", mapping);
            RunProblem problem = Assert.Single(run.Problems);
            Assert.Equal((1, 2, RunProblemKind.Unit, ProblemEffect.ChannelLeftOut), ((int)problem.Line, problem.Column, problem.Kind, problem.Effect));
            Assert.StartsWith("the heading says \"", problem.Reason.ToString(), StringComparison.Ordinal);
            Assert.False(run.Has(Channel.RailGauge));
        }
    }

    [Theory]
    [InlineData("Rail (kPa)")]
    [InlineData("Rail [KPA g]")]
    [InlineData("Rail kPa")]
    [InlineData("Rail (1)")]
    [InlineData("Rail (F)")]
    [InlineData("Rail (front)")]
    [InlineData("Rail (gauge)")]
    [InlineData("Rail (bank 1) (kPa)")]
    [InlineData("Fuel rail pressure")]
    [InlineData("Pa")]
    public void Heading_ThatSaysTheSameOrNoUnit_IsAccepted(string heading)
    {
        RunMapping mapping = RunMapping.Of(
            RunColumn.Speed("Speed (rpm)", RotationalSpeedUnit.RevolutionPerMinute), RunColumn.RailGauge(heading, PressureUnit.Kilopascal));
        RecordedRun run = LogText.Read($"Speed (rpm),{heading}\n3000,350\n", mapping);
        Assert.True(run.Problems.Count == 0, string.Join("; ", run.Problems));
        Assert.Equal(350, run.Rows[0].RailGauge!.Value.Kilopascals, 9);
    }

    [Fact]
    public void Heading_ThatContradictsTheUnitsRow_CostsTheChannel()
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.RailGauge("Rail (psi)")).WithUnitsRow(UnitsRow.Used);
        RunProblem problem = Assert.Single(LogText.Read("Speed,Rail (psi)\nrpm,kPa\n3000,350\n", mapping).Problems);
        Assert.Contains("the heading says \"psi\" and the units row", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Heading_OfSpeedInAnotherUnit_CostsTheFile() =>
        Assert.Equal(
            RunProblemKind.Unit,
            LogText.Refusal("Speed (km/h) (rev/s)\n3000\n", RunMapping.Of(RunColumn.Speed("Speed (km/h) (rev/s)", RotationalSpeedUnit.RevolutionPerMinute))).Kind);

    [Theory]
    [InlineData("11.8,12.1,12.4")]
    [InlineData("8.0,8.1,9.6")]
    [InlineData("14.7,14.6,22")]
    public void Lambda_ThatLooksLikeAnAirFuelRatio_IsRefusedWithTheCure(string values)
    {
        string rows = string.Concat(values.Split(',').Select((value, i) => $"{i},3000,0.5,350,{value}\n"));
        RecordedRun run = LogText.Read(LogText.Heading + rows);
        RunProblem problem = Assert.Single(run.Problems);
        Assert.Equal((2, 5, ProblemEffect.ChannelLeftOut), ((int)problem.Line, problem.Column, problem.Effect));
        Assert.Contains("looks like an air-fuel ratio", problem.ToString(), StringComparison.Ordinal);
        Assert.Contains("Map the column as an air-fuel ratio", problem.ToString(), StringComparison.Ordinal);
        Assert.False(run.Has(Channel.Lambda));
        Assert.Equal(3, run.Rows.Count);
    }

    [Fact]
    public void Lambda_OffTheScaleOnOverrunOrAtRest_IsLambda()
    {
        RecordedRun run = LogText.Read(LogText.Heading + "0,0,0,350,16\n1,3000,0.5,350,0.85\n2,3000,-0.5,350,10.1\n3,3000,0.5,350,1.21\n");
        Assert.Empty(run.Problems);
        Assert.Equal([16, 0.85, 10.1, 1.21], run.Rows.Select(row => row.Lambda!.Value));
    }

    [Fact]
    public void Lambda_ThatBeginsOnOverrun_ComesBackWithTheFirstReadingThatIsLambda()
    {
        RecordedRun run = LogText.Read(LogText.Heading + "0,3000,-0.5,350,10.1\n1,3000,0.5,350,0.85\n2,3000,0.5,350,10.1\n");
        Assert.Equal([null, 0.85, 10.1], run.Rows.Select(row => row.Lambda));
        Assert.Equal("log.looks-like-ratio", Assert.Single(run.Problems).Reason.Code);
    }

    [Theory]
    [InlineData("AFR")]
    [InlineData("A/F")]
    [InlineData("afr")]
    [InlineData("air/fuel ratio")]
    public void UnitsRow_OfAnAirFuelRatio_UnderLambda_IsRefusedWithTheCure(string unit)
    {
        RecordedRun run = LogText.Read(LogText.Heading + $"s,rpm,bar,kPa,{unit}\n0,3000,0.5,350,12.1\n", LogText.Mapping.WithUnitsRow(UnitsRow.Used));
        Assert.Equal("log.ratio-for-lambda", Assert.Single(run.Problems).Reason.Code);
        Assert.False(run.Has(Channel.Lambda));
    }

    [Theory]
    [InlineData("lambda", "log.lambda-for-ratio")]
    [InlineData("λ", "log.lambda-for-ratio")]
    [InlineData("%", "log.other-quantity")]
    [InlineData("AFR", null)]
    [InlineData("-", null)]
    public void UnitsRow_UnderAnAirFuelRatio_MustBeOne(string unit, string? code)
    {
        RunMapping mapping = RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.AirFuelRatio("O2", 14.7)).WithUnitsRow(UnitsRow.Used);
        RecordedRun run = LogText.Read($"Speed,O2\nrpm,{unit}\n3000,12.1\n", mapping);
        Assert.Equal(code, run.Problems.SingleOrDefault()?.Reason.Code);
        Assert.Equal(code is null, run.Has(Channel.Lambda));
    }
}
