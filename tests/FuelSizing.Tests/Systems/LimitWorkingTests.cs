using FuelSizing.Checks;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Equations;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>An answer that was searched is shown by its residual: put in and solved forward, left and right of its limit agree.</summary>
public class LimitWorkingTests
{
    private static readonly OperatingPoint[] Points =
        [OperatingPoint.At(Wren.Rpm(6800), Pressure.FromBars(0.6)), OperatingPoint.At(Wren.Rpm(4000), Pressure.FromBars(0.6))];

    /// <summary>The least injectors that hold: the figure stands in the working, and both sides are equal to what the answer is rounded by.</summary>
    [Fact]
    public void Working_OfTheMinimumStaticFlow_HasTheFigureAndEqualSides()
    {
        FuelSystem system = WorkingCases.Solve("regulator at the tank").System;
        SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(system, Points);
        Assert.True(answer.IsFeasible);
        Working working = AnswerWorking.Of(answer);

        Assert.Equal(Part.Injectors, answer.Binding.Part);
        Assert.Equal(answer.Value!.Value.CubicMetersPerSecond, working.Find("Q_r")!.Si!.Value, 1e-15);
        AreNear(working, "Q_f", "Q_cap", 1e-3);
        Assert.Contains("with the answer put in: ", working.Subject, StringComparison.Ordinal);
        Assert.Equal(["Q_f", "Q_cap", "E_L", "E_R"], working.Main.Select(step => step.Symbol).Take(4));

        // Another figure, put in, has other sides.
        Injector smaller = system.Injectors.Injector.WithStaticFlow(answer.Value.Value * 0.9);
        OperatingResult other = system.With(InjectorSet.Of(smaller, system.Injectors.Count, system.Injectors.InjectionsPerCycle)).Solve(answer.Binding.Point);
        Working off = LimitWorking.Of(other, Part.Injectors);
        Assert.True(off.Find("E_R")!.Si < 0.95 * off.Find("E_L")!.Si);
    }

    /// <summary>The most boost that holds stands in its working as the boost of the point.</summary>
    [Fact]
    public void Working_OfTheMaximumBoost_IsOfTheBoostThatIsTheAnswer()
    {
        FuelSystem system = WorkingCases.Solve("regulator at the tank").System;
        SizingAnswer<Pressure> answer = SystemSizing.MaximumBoost(system, [Wren.Rpm(6800)], Conditions.Default);
        Assert.True(answer.IsFeasible);
        Working working = AnswerWorking.Of(answer);

        Assert.Equal(answer.Value!.Value.Pascals, working.Find("p_b")!.Si!.Value, 1.0);
        Assert.InRange(Math.Abs((working.Find("E_R")!.Si!.Value / working.Find("E_L")!.Si!.Value) - 1), 0, 2e-3);
    }

    /// <summary>Every margin of every case: what is used and what is allowed are those of the margin, whichever way its limit goes.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Sides_OfEachLimit_AreThoseOfItsMargin(string name)
    {
        OperatingResult result = WorkingCases.Solve(name);
        int shown = 0;
        foreach (Margin margin in result.Margins)
        {
            Working working = LimitWorking.Of(new Limit(margin));
            Assert.Equal(working.Given.Count + working.Steps.Count, working.Given.Concat(working.Steps).Select(line => line.Symbol).Distinct().Count());
            Assert.All(working.Steps, step => Assert.True(SymbolList.Has(step.Symbol), step.Symbol));
            if (working.Find("E_L") is not { Si: { } left } || working.Find("E_R") is not { Si: { } right })
            {
                continue;
            }

            shown++;
            double share = margin.Direction == LimitDirection.AtMost || working.Find("E_R")!.Equation!.StartsWith("Q_cap", StringComparison.Ordinal) ? (right / left) - 1 : (left / right) - 1;
            Assert.Equal(margin.Share!.Value, share, 1e-8 * (1 + Math.Abs(share)));
        }

        Assert.True(shown > 0);
    }

    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    [Fact]
    public void Working_OfAPartThatIsNotJudged_IsRefused() => Assert.Contains(
        "injectors",
        Assert.Throws<ArgumentException>(() => LimitWorking.Of(WorkingCases.Solve("regulator at the tank"), Part.SecondaryInjectors)).Message,
        StringComparison.Ordinal);

    private static void AreNear(Working working, string left, string right, double within)
    {
        Assert.Equal(left, working.Find("E_L")!.Equation);
        Assert.Equal(right, working.Find("E_R")!.Equation);
        Assert.InRange(Math.Abs((working.Find("E_R")!.Si!.Value / working.Find("E_L")!.Si!.Value) - 1), 0, within);
    }
}
