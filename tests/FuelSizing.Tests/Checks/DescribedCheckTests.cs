using FuelSizing.Checks;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Checks;

/// <summary>What a check is described with: its part, its figures, whether it applies, what is waived, and a remedy.</summary>
public class DescribedCheckTests
{
    private static readonly Statement Reason = Statement.Of("own.none", $"none given");

    [Theory]
    [InlineData("a")]
    [InlineData("z")]
    [InlineData("0")]
    [InlineData("9")]
    [InlineData("own.return-flow-2")]
    [InlineData("aaaaaaaaaabbbbbbbbbbccccccccccdddddddddd")]
    public void Code_OfLowerCaseLettersDigitsHyphensAndDots_IsTaken(string code) => Assert.Equal(code, Part.Of(code, "own").Code);

    /// <summary>Each is one character beside those allowed, or one too long: ` and { lie beside a and z, / and : beside 0 and 9.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("aaaaaaaaaabbbbbbbbbbccccccccccdddddddddde")]
    [InlineData("own`")]
    [InlineData("own{")]
    [InlineData("own/")]
    [InlineData("own:")]
    [InlineData("own part")]
    [InlineData("Own")]
    [InlineData("own_part")]
    public void Code_OfAnythingElse_IsRefusedWithWhatIsAllowed(string code)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(nameof(code), () => Part.Of(code, "own"));
        Assert.StartsWith(
            $"code is \"{code}\"; it must be 1 to 40 lower-case letters, digits, hyphens or dots. Give a code such as \"own.return-cooling\".",
            refused.Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_AreTheSameByTheirCode()
    {
        Part one = Part.Of("own.one", "one");
        Part same = Part.Of("own.one", "another name");
        Part? none = null;
        Assert.True(one == same);
        Assert.False(one != same);
        Assert.True(one.Equals((object)same));
        Assert.False(one.Equals((object)"own.one"));
        Assert.False(one.Equals(none));
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.False(one == Part.Pump);
        Assert.True(one != Part.Pump);
        Assert.False(one == none);
        Assert.False(none == one);
        Assert.True(none != one);
        Assert.True(none == null);
        Assert.False(none != null);
    }

    [Fact]
    public void WhatIsMissing_IsNamed()
    {
        Refused.Missing("code", () => Part.Of(null!, "own"));
        Refused.Missing("gap", () => Applicability.NotJudged(null!));
        Refused.Missing("gap", () => Applicability.JudgedInPart(null!));
        Refused.Missing("part", () => Waiver.Of(null!, "looked at"));
        Refused.Missing("part", () => Remedy.Of(null!, null, Reason));
        Refused.Missing("text", () => Remedy.Of(Part.Pump, null, null!));
        Refused.Missing("style", () => Remedy.Of(Part.Pump, null, Reason).NeededIn(null!));
        Refused.Missing("typed", () => CheckFigure.Of<Pressure>("Pressure", LimitDirection.AtMost, null!, units => units.Pressure));
        Refused.Missing("unit", () => CheckFigure.Of<Pressure>("Pressure", LimitDirection.AtMost, si => Pressure.FromPascals(si), null!));
        Refused.Missing("style", () => Of(LimitDirection.AtMost).Drawn(Wren.Kpa(3), null!));
        Refused.Missing("style", () => Of(LimitDirection.AtMost).Unit(null!));
        Assert.Throws<ArgumentException>("title", () => CheckFigure.Of(" ", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure));
        Refused.OutOfRange("direction", () => Of((LimitDirection)2));
        Assert.Throws<ArgumentException>("reason", () => Waiver.Of(Part.Pump, " "));
    }

    [Fact]
    public void Waiver_ThatIsGiven_SaysPartAndReason() =>
        Assert.Equal("hoses, fittings and filter, waived: all new", Waiver.Of(Part.PressureRating, "all new").ToString());

    [Fact]
    public void Figure_OfACheck_IsAQuantityAndDrawnInTheReadersUnit()
    {
        CheckFigure most = Of(LimitDirection.AtMost);
        Assert.Equal("Fuel pressure, at most", most.ToString());
        Assert.Equal("Fuel pressure, at least", Of(LimitDirection.AtLeast).ToString());
        Assert.Equal(Wren.Kpa(300), most.Quantity(300e3));
        Assert.Null(most.Quantity(double.NaN));
        Assert.Null(most.Quantity(double.PositiveInfinity));
        Assert.Equal("kPa", most.Unit(TextStyle.Metric));
        Assert.Equal("psi", most.Unit(TextStyle.UsCustomary));
        Assert.Equal(300, most.Drawn(Wren.Kpa(300), TextStyle.Metric), 12);

        // 1 psi = 6.894757 kPa (NIST SP 811, appendix B.8).
        Assert.Equal(300 / 6.894757, most.Drawn(Wren.Kpa(300), TextStyle.UsCustomary), 5);
        Assert.Equal(double.NaN, most.Drawn(null, TextStyle.Metric));
        Assert.Contains(
            "figure was a Ratio; Fuel pressure is a Pressure.",
            Assert.Throws<ArgumentException>("figure", () => most.Drawn(Ratio.FromPercent(3), TextStyle.Metric)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Applicability_InWords_SaysWhatIsNotJudgedAndWhy()
    {
        Assert.Equal("judged", Applicability.Judged.ToString());
        Assert.Equal("not applicable", Applicability.NotApplicable.ToString());
        Assert.Equal("not judged: none given", Applicability.NotJudged(Reason).ToString());
        Assert.Equal("judged, but none given", Applicability.JudgedInPart(Reason).ToString());
        Assert.Equal(
            [true, false, false, true],
            new[] { Applicability.Judged, Applicability.NotApplicable, Applicability.NotJudged(Reason), Applicability.JudgedInPart(Reason) }
                .Select(answer => answer.IsJudged));
        Assert.Null(Applicability.Judged.Gap);
        Assert.Null(Applicability.NotApplicable.Gap);
        Assert.Same(Reason, Applicability.JudgedInPart(Reason).Gap);
    }

    /// <summary>151.2 L/h are bought as 152: a figure that must be reached at least is written rounded up, after others of the sentence.</summary>
    [Fact]
    public void Remedy_InWords_WritesTheFigureItNeedsRoundedToTheSideThatServes()
    {
        VolumeFlow needed = VolumeFlow.FromLitersPerHour(151.2);
        Remedy remedy = Remedy.Of(Part.Pump, needed, Statement.Of("own.pump", $"Against {Wren.Kpa(350)} at least {needed:pump-flow:up}."));
        Assert.Equal("Against 350 kPa at least 152 L/h.", remedy.ToString());
        Assert.Equal("152 L/h", remedy.NeededIn(TextStyle.Metric));
        Assert.Equal(needed, remedy.Needed);

        // None where the sentence does not write it, or where there is none.
        Assert.Null(Remedy.Of(Part.Pump, needed, Statement.Of("own.pump", $"Against {Wren.Kpa(350)}.")).NeededIn(TextStyle.Metric));
        Assert.Null(Remedy.Of(Part.Pump, null, Statement.Of("own.pump", $"Against {Wren.Kpa(350)}.")).NeededIn(TextStyle.Metric));
    }

    private static CheckFigure Of(LimitDirection direction) =>
        CheckFigure.Of("Fuel pressure", direction, si => Pressure.FromPascals(si), units => units.Pressure);
}
