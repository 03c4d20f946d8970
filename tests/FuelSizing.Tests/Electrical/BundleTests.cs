using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

/// <summary>What a conductor may carry in a bundle, sheath or conduit with others.</summary>
public class BundleTests
{
    [Theory(DisplayName = "Ampacity in a bundle; 33 CFR 183.425, table 5, note 2")]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 0.7)]
    [InlineData(4, 0.6)]
    [InlineData(6, 0.6)]
    [InlineData(7, 0.5)]
    [InlineData(24, 0.5)]
    [InlineData(25, 0.4)]
    [InlineData(1000, 0.4)]
    public void Factor_OfABundle_IsTheRegulations(int conductors, double factor) => Published.Value(
        Works.CfrBundles.At($"{conductors} conductors"), factor, Amperes(10, 105, 30, conductors) / Amperes(10, 105, 30, 1), 1e-12);

    [Theory(DisplayName = "Allowable amperage of bundled boat cable, 105 °C; a cable maker's table")]
    [InlineData(18, 20, 14, 12, 10)]
    [InlineData(16, 25, 17.5, 15, 12.5)]
    [InlineData(14, 35, 24.5, 21, 17.5)]
    [InlineData(12, 45, 31.5, 27, 22.5)]
    [InlineData(10, 60, 42, 36, 30)]
    [InlineData(8, 80, 56, 48, 40)]
    [InlineData(6, 120, 84, 72, 60)]
    [InlineData(4, 160, 112, 96, 80)]
    [InlineData(2, 210, 147, 126, 105)]
    [InlineData(1, 245, 171.5, 147, 122.5)]
    [InlineData(0, 285, 199.5, 171, 142.5)]
    public void Current_OfABundle_IsTheCableMakers(int gauge, double two, double three, double six, double more)
    {
        Published.Value(Works.BundledBoatCable.At($"AWG {gauge}, 2"), two, Amperes(gauge, 105, 30, 2), 1e-12);
        Published.Value(Works.BundledBoatCable.At($"AWG {gauge}, 3"), three, Amperes(gauge, 105, 30, 3), 1e-12);
        Published.Value(Works.BundledBoatCable.At($"AWG {gauge}, 4 to 6"), six, Amperes(gauge, 105, 30, 5), 1e-12);
        Published.Value(Works.BundledBoatCable.At($"AWG {gauge}, 7 to 24"), more, Amperes(gauge, 105, 30, 24), 1e-12);
    }

    /// <summary>The table's engine space, 50 °C, counts 0.85: the library's factor, rounded down, is the same (AWG 10 of 3, 4 to 6, 7 to 24: 35.7, 30.6, 25.5 A).</summary>
    [Theory(DisplayName = "Allowable amperage of bundled boat cable in engine spaces; a cable maker's table")]
    [InlineData(3, 35.7)]
    [InlineData(4, 30.6)]
    [InlineData(7, 25.5)]
    public void Current_OfABundleInAnEngineSpace_IsTheCableMakers(int conductors, double amperes) =>
        Published.Value(Works.BundledBoatCable.At($"AWG 10, engine space, {conductors}"), amperes, Amperes(10, 105, 50, conductors), 1e-12);

    [Fact]
    public void OneOrTwo_AreTheWireByItself_ToTheLastBit() =>
        Gen.Select(Gen.Int[0, 18], Gen.Double[60, 150], Gen.Double[-40, 190], Gen.Int[1, 2]).Sample((gauge, rating, ambient, conductors) =>
        {
            Ampacity alone = Ampacity.Of(Conductor.Awg(gauge), Celsius(rating), Celsius(ambient));
            Ampacity beside = Ampacity.Of(Conductor.Awg(gauge), Celsius(rating), Celsius(ambient), conductors);
            Assert.Equal(alone.Amperes, beside.Amperes);
            Assert.Equal(alone.ToString(), beside.ToString());
        });

    [Fact]
    public void MoreConductors_NeverCarryMore() =>
        Gen.Select(Gen.Int[0, 18], Gen.Double[60, 150], Gen.Double[-40, 190], Gen.Int[1, 500], Gen.Int[0, 500]).Sample((gauge, rating, ambient, conductors, more) =>
            Ampacity.Of(Conductor.Awg(gauge), Celsius(rating), Celsius(ambient), conductors + more).Amperes
            <= Ampacity.Of(Conductor.Awg(gauge), Celsius(rating), Celsius(ambient), conductors).Amperes);

    [Fact]
    public void Text_OfABundle_SaysHowManyAndHowMuch() => Assert.Equal(
        "AWG 12: 20.8 A in 60 °C (AWG 12 with insulation for 105 °C: 45.0 A × 77 % × 60 % as one of 4 in a bundle; 33 CFR 183.425, table 5).",
        Ampacity.Of(Conductor.Awg(12), Celsius(105), Celsius(60), 4).ToString());

    /// <summary>The order in which a feed is told of its bundle and of its insulation does not matter.</summary>
    [Fact]
    public void Feed_InABundle_HasItsAmpacity_WhicheverIsSaidFirst()
    {
        Feed plain = Feed.Of("f", Conductor.Awg(12), Length.FromMeters(4), Length.FromMeters(4), Celsius(60));
        Feed first = plain.WithBundle(4).WithInsulation(Celsius(105), Celsius(60));
        Feed second = plain.WithInsulation(Celsius(105), Celsius(60)).WithBundle(4);
        Assert.Equal(first, second);
        Assert.Equal(45 * 0.77 * 0.6, first.AmpacityAmperes, 9);
        Assert.Equal(first.AmpacityAmperes, second.AmpacityAmperes);
        Assert.NotEqual(first, plain.WithInsulation(Celsius(105), Celsius(60)));
        Assert.Null(plain.WithBundle(4).Ampacity);

        // Another wire, or a remedy's resistance, leaves it where it runs.
        Assert.Equal(4, first.WithNominalArea(Area.FromSquareMillimeters(6)).BundledConductors);
        Assert.Equal(first.AmpacityAmperes, first.WithLoopOfAtMost(0.001).AmpacityAmperes);
        Assert.Equal(60 * 0.77 * 0.6, first.WithNominalArea(Area.FromSquareMillimeters(6)).AmpacityAmperes, 9);
    }

    /// <summary>12 A need a fuse of 15 A: AWG 12 with 20.8 A in its bundle is protected by it, and of seven conductors, with 17.3 A, too; of twenty-five not.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(4, true)]
    [InlineData(7, true)]
    [InlineData(25, false)]
    public void Fuse_OfAWireInABundle_KeepsToItsAmpacity(int bundled, bool found)
    {
        FuseChoice fuse = FuseChoice.For(ElectricCurrent.FromAmperes(12), Conductor.Awg(12), Celsius(105), Celsius(60), bundled);
        Assert.Equal(found ? 15 : null, fuse.Rating?.Amperes);

        // What it names instead keeps the rule when it is put in its place.
        if (!found)
        {
            Assert.Contains("it takes AWG 10", fuse.ToString(), StringComparison.Ordinal);
            Assert.NotNull(FuseChoice.For(ElectricCurrent.FromAmperes(12), Conductor.Awg(10), Celsius(105), Celsius(60), bundled).Rating);
        }
    }

    [Fact]
    public void Bundle_OfNonsense_IsRefusedByName()
    {
        Refused.OutOfRange("bundled", () => Ampacity.Of(Conductor.Awg(12), Celsius(105), Celsius(60), 0));
        Refused.OutOfRange("conductors", () => Feed.Of("f", Conductor.Awg(12), Length.Zero, Length.Zero, Celsius(60)).WithBundle(1001));
    }

    private static double Amperes(int gauge, double rating, double ambient, int bundled) =>
        Ampacity.Of(Conductor.Awg(gauge), Celsius(rating), Celsius(ambient), bundled).Current!.Value.Amperes;

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
}
