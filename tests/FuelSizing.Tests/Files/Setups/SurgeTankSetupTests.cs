using FuelSizing.Circuits;
using FuelSizing.Files;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>A setup carries its surge tank and the lift circuit.</summary>
public class SurgeTankSetupTests
{
    /// <summary>A line of the file, another in its place, the field that is named, and what is said of it.</summary>
    public static TheoryData<string, string, string, string> Faults { get; } = new()
    {
        { "\"usable_volume\": \"1.3 L\"", "\"usable_volume\": \"130 L\"", "surge_tank.usable_volume", "between 0.05 l and 50 l" },
        { "\"usable_volume\": \"1.3 L\"", "\"usable_volume\": \"1.3 kg\"", "surge_tank.usable_volume", "does not fit" },
        { "\"returns_to\": \"main-tank\"", "\"returns_to\": \"tank\"", "surge_tank.returns_to", "surge-tank" },
        { "\"maximum_pressure\": \"70 kPa\"", "\"maximum_pressure\": \"7000 kPa\"", "surge_tank.maximum_pressure", "between 1 kPa and 1,000 kPa" },
        { "\"priming_time\": \"2 s\"", "\"priming_time\": \"200 s\"", "surge_tank.priming_time", "60 s" },
        { "\"lift_line\"", "\"lift_lines\"", "surge_tank.lift_lines", "lift_line" },
        { "\"usable_volume\": \"1.3 L\",", "", "surge_tank.usable_volume", "missing" },
    };

    private static SurgeTank Whole => SurgeTanks.Everything.WithPrimingTime(UnitsNet.Duration.FromSeconds(2));

    [Fact]
    public void Tank_WrittenAndReadBack_IsTheSame()
    {
        foreach (SurgeTank tank in new[] { Whole, SurgeTanks.Bare() })
        {
            Setup setup = Setup.Of(SurgeTanks.Wren(tank), ("full", Wren.At(6000, 0.6)));
            Setup read = Setup.Parse("wren.json", setup.ToJson());
            Assert.Equal(tank, read.System.SurgeTank);
            Assert.Equal(setup, read);
            Assert.Equal(setup.ToJson(), read.ToJson());
        }
    }

    [Fact]
    public void Waiver_OfAPartOfTheLiftCircuit_IsCarried()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare()).Waive(FuelSizing.Checks.Part.OverflowLine, "40 mm wide");
        Assert.Equal(system, Setup.Parse("wren.json", Setup.Of(system, ("full", Wren.At(6000, 0.6))).ToJson()).System);
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Fault_IsNamedByItsField(string line, string wrong, string field, string said)
    {
        string good = Setup.Of(SurgeTanks.Wren(Whole), ("full", Wren.At(6000, 0.6))).ToJson();
        Assert.Contains(line, good, StringComparison.Ordinal);
        SetupException refused = Assert.Throws<SetupException>(() => Setup.Parse("wren.json", good.Replace(line, wrong, StringComparison.Ordinal)));
        Assert.Contains(refused.Problems, problem => problem.ToString().Contains(field, StringComparison.Ordinal) && problem.ToString().Contains(said, StringComparison.Ordinal));
    }

    /// <summary>A setup without the field is the car that draws from its main tank.</summary>
    [Fact]
    public void Setup_WithoutTheField_HasNoSurgeTank()
    {
        string text = Setup.Of(Wren.System(), ("full", Wren.At(6000, 0.6))).ToJson();
        Assert.DoesNotContain("surge", text, StringComparison.Ordinal);
        Assert.Null(Setup.Parse("wren.json", text).System.SurgeTank);
    }
}
