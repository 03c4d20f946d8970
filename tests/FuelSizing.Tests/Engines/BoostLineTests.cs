using CsCheck;
using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>What all boost lines have in common, and those that need no compressor's law: measured, and held by a controller.</summary>
public class BoostLineTests
{
    private static readonly MeasuredBoost Measured = MeasuredBoost.Of(
        (Wren.Rpm(1700), Wren.Kpa(3)), (Wren.Rpm(3300), Wren.Kpa(31)), (Wren.Rpm(4900), Wren.Kpa(47)), (Wren.Rpm(6300), Wren.Kpa(52)));

    private static readonly HeldBoost Held = HeldBoost.Of(Wren.Kpa(58), Wren.Rpm(3400), Wren.Rpm(6600), threshold: Wren.Rpm(1900));

    public static TheoryData<string> Kinds => ["measured", "held", "centrifugal", "displacement"];

    [Fact]
    public void Measured_AtItsPoints_IsAsMeasured_AndBetweenThemInOrder()
    {
        Assert.All(Measured.Points, point => Assert.Equal(point.Boost.Pascals, At(Measured, point.Speed).Pascals, 1e-6));
        Gen.Select(Gen.Double[1700, 6300], Gen.Double[1700, 6300]).Sample((one, other) =>
            At(Measured, Wren.Rpm(Math.Min(one, other))) <= At(Measured, Wren.Rpm(Math.Max(one, other))));
    }

    [Theory]
    [InlineData(1699)]
    [InlineData(6301)]
    public void Measured_BeyondItsSpeeds_IsRefusedWithTheCure(double rpm)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => At(Measured, Wren.Rpm(rpm)));
        Assert.Equal("speed", refused.ParamName);
        Assert.Contains(FormattableString.Invariant($"speed is {rpm:N0} rev/min"), refused.Message, StringComparison.Ordinal);
        Assert.Contains("between 1,700 rev/min and 6,300 rev/min", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Extend it by measured points.", refused.Message, StringComparison.Ordinal);
        Assert.True(double.IsNaN(Measured.PascalsAt(rpm / 60, Dunnock.Demand(), Atmosphere.Standard)));
    }

    [Fact]
    public void Held_RisesInAStraightLine_AndThenStays()
    {
        Assert.Equal(0, At(Held, Wren.Rpm(900)).Pascals);
        Assert.Equal(0, At(Held, Wren.Rpm(1900)).Pascals, 1e-9);
        Assert.Equal(29e3, At(Held, Wren.Rpm(2650)).Pascals, 1e-6);
        Assert.Equal(58e3, At(Held, Wren.Rpm(3400)).Pascals, 1e-6);
        Assert.Equal(58e3, At(Held, Wren.Rpm(6600)).Pascals, 1e-6);
        Assert.Equal([1900 / 60d, 3400 / 60d, 6600 / 60d], Held.KnotsFor(Dunnock.Demand(), Atmosphere.Standard).Select(knot => Math.Round(knot, 12)), (one, other) => Math.Abs(one - other) < 1e-9);
    }

    /// <summary>Above its last speed a held line gives no data, nor below its first without a run-up: neither is zero.</summary>
    [Fact]
    public void Held_BeyondItsSpeeds_IsRefused()
    {
        Refused.OutOfRange("speed", () => At(Held, Wren.Rpm(6601)));
        HeldBoost without = HeldBoost.Of(Wren.Kpa(58), Wren.Rpm(3400), Wren.Rpm(6600));
        Refused.OutOfRange("speed", () => At(without, Wren.Rpm(3399)));
        Assert.Equal(58e3, At(without, Wren.Rpm(3400)).Pascals, 1e-6);
    }

    [Fact]
    public void Held_WithSpeedsOutOfOrder_IsRefusedByName()
    {
        Refused.OutOfRange("to", () => HeldBoost.Of(Wren.Kpa(58), Wren.Rpm(3400), Wren.Rpm(3400)));
        Refused.OutOfRange("threshold", () => HeldBoost.Of(Wren.Kpa(58), Wren.Rpm(3400), Wren.Rpm(6600), Wren.Rpm(3400)));
        Refused.OutOfRange("boost", () => HeldBoost.Of(Wren.Kpa(-1), Wren.Rpm(3400), Wren.Rpm(6600)));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void AnyLine_OfAnEngineWithoutACompressor_IsRefusedWithTheCure(string kind)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Of(kind).At(Wren.Rpm(4000), Dunnock.Demand(induction: Induction.NaturallyAspirated), Atmosphere.Standard));
        Assert.Equal("demand", refused.ParamName);
        Assert.Contains("must have a compressor", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>A belt line on a turbocharged engine would have its drive power forgotten.</summary>
    [Theory]
    [InlineData("centrifugal")]
    [InlineData("displacement")]
    public void BeltLine_OfATurbochargedEngine_IsRefusedWithTheCure(string kind)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Of(kind).At(Wren.Rpm(4000), Dunnock.Demand(induction: Wren.Turbocharger), Atmosphere.Standard));
        Assert.Equal("demand", refused.ParamName);
        Assert.Contains("Induction.BeltDriven", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>Sweeps and root finding ask for it many thousands of times.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void AnyLine_AskedInNumbers_AllocatesNothing_AndSaysTheSame(string kind)
    {
        BoostLine line = Of(kind);
        FuelDemandModel demand = Dunnock.Demand();
        double sum = line.PascalsAt(60, demand, Atmosphere.Standard);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int speed = 40; speed < 100; speed++)
        {
            sum += line.PascalsAt(speed, demand, Atmosphere.Standard);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
        Assert.Equal(line.PascalsAt(60, demand, Atmosphere.Standard), line.At(Wren.Rpm(3600), demand, Atmosphere.Standard).Pascals, 1e-6);
    }

    /// <summary>Between two knots next to each other a line has no kink: its slope changes little from place to place.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void AnyLine_BetweenItsKnots_HasNoKink(string kind)
    {
        BoostLine line = Of(kind);
        foreach (FuelDemandModel demand in (FuelDemandModel[])[Dunnock.Demand(), Dunnock.Demand(Opening)])
        {
            (double first, double last) = line.SpeedsFor(demand);
            double[] knots =
            [
                Math.Max(first, 14.2), .. line.KnotsFor(demand, Atmosphere.Standard).Where(knot => knot > Math.Max(first, 14.2) && knot < Math.Min(last, 110)), Math.Min(last, 110),
            ];
            Assert.Equal(knots.Order(), knots);
            foreach ((double from, double to) in knots.Zip(knots.Skip(1)))
            {
                // A smooth line's slope changes by a few Pa·s from one of so many places to the next; at a kink of these lines it jumps by hundreds.
                const int places = 2000;
                double step = (to - from) / places;
                double At(int place) => line.PascalsAt(from + ((to - from) * place / places), demand, Atmosphere.Standard);
                for (int place = 1; place < places; place++)
                {
                    double jump = (At(place + 1) - (2 * At(place)) + At(place - 1)) / step;
                    Assert.True(Math.Abs(jump) < 150, $"{kind}: a kink at {(from + (step * place)) * 60:0} rev/min, slope changes by {jump} Pa·s");
                }
            }
        }
    }

    /// <summary>An engine that breathes so well in the middle that the bypass valve of its displacement compressor opens there.</summary>
    internal static VolumetricEfficiency Opening { get; } = VolumetricEfficiency.Of(
        (Wren.Rpm(850), Wren.Percent(60)), (Wren.Rpm(3700), Wren.Percent(148)), (Wren.Rpm(6650), Wren.Percent(70)));

    private static BoostLine Of(string kind) => kind switch
    {
        "measured" => Measured,
        "held" => Held,
        "centrifugal" => Dunnock.Centrifugal,
        _ => Dunnock.Displacement,
    };

    private static Pressure At(BoostLine line, RotationalSpeed speed) => line.At(speed, Dunnock.Demand(), Atmosphere.Standard);
}
