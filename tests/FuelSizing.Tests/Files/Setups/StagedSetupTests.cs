using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>A setup holds a secondary set of injectors and its hand-over, of either kind.</summary>
public class StagedSetupTests
{
    private static Setup Of(HandOver handOver) => Setup.Of(Staged.Wren2(Staged.Of(handOver)), ("hill", Wren.At(5000, 0.45)));

    [Fact]
    public void StagedInjectors_WrittenAndRead_GiveTheSameToTheLastBit()
    {
        foreach (HandOver handOver in new[] { Staged.ByBoost, Staged.ByDutyCycle, HandOver.ByBoost(Pressure.FromPoundsForcePerSquareInch(4.3), Pressure.FromPoundsForcePerSquareInch(7.7), Wren.Percent(33.3)) })
        {
            Setup setup = Of(handOver);
            Setup read = Setup.Parse("wren.json", setup.ToJson());
            Assert.Equal(setup.System, read.System);
            Assert.Equal(handOver, read.System.StagedInjectors!.HandOver);
            OperatingResult one = setup.System.Solve(Wren.At(5000, 0.45));
            OperatingResult other = read.System.Solve(Wren.At(5000, 0.45));
            Assert.Equal(one.SecondaryInjection!.Pulse!.Value.Seconds, other.SecondaryInjection!.Pulse!.Value.Seconds);
            Assert.Equal(one.Pulse!.Value.Seconds, other.Pulse!.Value.Seconds);
            Assert.Equal(setup.ToJson(), read.ToJson());
        }
    }

    [Theory]
    [InlineData("\"begin\": \"0.3 bar\"", "\"begin\": \"0.6 bar\"", "hand_over.full")]
    [InlineData("\"share\": \"45 %\"", "\"share\": \"99 %\"", "hand_over.share")]
    [InlineData("\"share_at_begin\": \"30 %\"", "\"share_at_begin\": \"60 %\"", "hand_over.share_at_begin")]
    [InlineData("\"kind\": \"boost\"", "\"kind\": \"throttle\"", "hand_over.kind")]
    public void HandOver_WithAFault_IsRefusedByItsField(string right, string wrong, string field)
    {
        string text = Of(Staged.ByBoost).ToJson();
        Assert.Contains(right, text, StringComparison.Ordinal);
        SetupException refused = Assert.Throws<SetupException>(() => Setup.Parse("wren.json", text.Replace(right, wrong, StringComparison.Ordinal)));
        Assert.Contains(refused.Problems, problem => problem.ToString().Contains(field, StringComparison.Ordinal) || problem.ToString().Contains(field.Split('.')[1], StringComparison.Ordinal));
    }
}
