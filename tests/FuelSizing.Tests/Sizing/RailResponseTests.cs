using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// How bad each pressure of a regulator is for a point, at 0.50 bar of boost and lambda 0.9 with 300 kPa across the injectors: lambda goes with the reciprocal root of that, so
/// that every figure is worked by hand.
/// </summary>
public class RailResponseTests
{
    private const double Boost = 50;

    private const double From = 250e3;

    private const double To = 650e3;

    private static readonly OperatingPoint Point = Wren.At(4000, 0.5);

    private static FuelSystem Car(SizingLimits? limits = null) =>
        EqualDeadTimes.With(EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)), limits), (4000, 0.5, 0.9));

    private static double Off(double kilopascals) => (0.9 * Math.Sqrt(300 / (kilopascals - Boost)) / EqualDeadTimes.Target) - 1;

    /// <summary>At its 41 places, 10 kPa apart, the pressure was solved; between two it is straight, and past the ends it is as at them.</summary>
    [Fact]
    public void Badness_OfAPressure_IsHowFarLambdaIsOffItsTarget()
    {
        RailResponse response = new(Car(), Point, From, To);
        Assert.Equal(Boost * 1e3, response.Boost);
        for (int place = 0; place <= 40; place++)
        {
            Assert.Equal(Math.Abs(Off(250 + (10 * place))), response.Badness(From + (10e3 * place)), 1e-9);
        }

        foreach ((double kilopascals, double share) in new[] { (252.5, 0.25), (633.0, 0.3), (647.5, 0.75) })
        {
            double lower = Math.Floor(kilopascals / 10) * 10;
            Assert.Equal(Math.Abs(((1 - share) * Off(lower)) + (share * Off(lower + 10))), response.Badness(kilopascals * 1e3), 1e-9);
        }

        Assert.Equal(Math.Abs(Off(250)), response.Badness(200e3), 1e-9);
        Assert.Equal(Math.Abs(Off(650)), response.Badness(900e3), 1e-9);
    }

    /// <summary>A check that fails by more than can be said counts as broken by the whole of its limit, besides how far lambda is off.</summary>
    [Fact]
    public void Badness_WhereAnotherCheckFailsWithoutAFigure_IsThatOfALimitMissedByAll()
    {
        RailResponse response = new(Car().With(new ShapedCheck(_ => double.NegativeInfinity)), Point, From, To);
        Assert.Equal(RailResponse.Broken + 1 + (Math.Abs(Off(250)) / RailResponse.Broken), response.Badness(From), 1e-9);
    }

    /// <summary>Δp = 300 · (0.9/0.82)² = 361.4, so 411.4 kPa in the rail: straight between 410 and 420 it is nearly the target, and once solved there it is.</summary>
    [Fact]
    public void Learn_OfAPressure_GivesWhatWasFoundThere()
    {
        RailResponse response = new(Car(), Point, From, To);
        double target = EqualDeadTimes.RailFor(Boost, 0.9) * 1e3;
        Assert.InRange(response.Badness(target), 1e-6, 1e-3);
        response.Learn(target);
        Assert.Equal(0, response.Badness(target), 1e-9);
        response.Learn(target);
        Assert.Equal(0, response.Badness(target), 1e-9);

        // Its neighbours are as they were, and in between it is straight to the new place.
        Assert.Equal(Math.Abs(Off(410)), response.Badness(410e3), 1e-9);
        Assert.Equal(Math.Abs(Off(420)), response.Badness(420e3), 1e-9);
        Assert.Equal(Math.Abs(Off(420)) / 2, response.Badness((target + 420e3) / 2), 1e-9);

        // Past the ends too.
        response.Learn(700e3);
        Assert.Equal(Math.Abs(Off(700)), response.Badness(700e3), 1e-9);
        Assert.Equal(Math.Abs(Off(700)), response.Badness(800e3), 1e-9);
    }

    /// <summary>
    /// Hoses rated for 473 kPa, between two places: up to there it is lambda that counts, from there on the share by which the rating is passed, over anything that lambda can be.
    /// The pressure at which it begins to be passed is found to a 10⁻⁸ of the step.
    /// </summary>
    [Fact]
    public void Badness_WhereAnotherCheckBreaks_IsOverAnyDeviation()
    {
        RailResponse response = new(Car(SizingLimits.Of(Wren.Percent(99), Wren.Percent(10), Wren.Kpa(473))), Point, From, To);
        Assert.Equal(Math.Abs(Off(470)), response.Badness(470e3), 1e-9);
        Assert.InRange(response.Badness(473e3 - 0.01), 0, Math.Abs(Off(473)) + 1e-3);
        Assert.InRange(response.Badness(473e3 + 0.01), RailResponse.Broken, RailResponse.Broken + 1);
        Assert.Equal(RailResponse.Broken + (1 - (473 / 500.0)) + (Math.Abs(Off(500)) / 1e3), response.Badness(500e3), 1e-6);
        Assert.Equal(RailResponse.Broken + (1 - (473 / 650.0)) + (Math.Abs(Off(650)) / 1e3), response.Badness(650e3), 1e-6);

        // Straight where both neighbours break.
        Assert.Equal((response.Badness(500e3) + response.Badness(510e3)) / 2, response.Badness(505e3), 1e-9);
    }

    /// <summary>Injectors whose flow is not known under 100 kPa: at 250 kPa of rail it is, and at 140, under 1.00 bar of boost, nobody knows the mixture.</summary>
    [Fact]
    public void Badness_WhereLambdaIsNotKnown_IsBroken()
    {
        FuelSystem car = EqualDeadTimes.With(EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300))), (4000, 1, 0.9));
        RailResponse response = new(car, Wren.At(4000, 1), 140e3, 540e3);
        Assert.InRange(response.Badness(140e3), RailResponse.Broken + 1, RailResponse.Broken + 3);

        // From 200 kPa on it is known: within a 2⁻²⁶ of the step of 10 kPa, and at no less.
        Assert.True(response.Badness(200e3 - 1) >= RailResponse.Broken);
        Assert.InRange(response.Badness(200e3 + 1), 0, 1);
        Assert.Equal(Math.Abs((0.9 * Math.Sqrt(300 / 200.0) / EqualDeadTimes.Target) - 1), response.Badness(300e3), 1e-9);
    }

    /// <summary>A range of no width is one pressure.</summary>
    [Fact]
    public void Badness_OverNoRange_IsThatOfTheOnePressure()
    {
        RailResponse response = new(Car(), Point, 420e3, 420e3);
        Assert.Equal(Math.Abs(Off(420)), response.Badness(420e3), 1e-9);
        Assert.Equal(Math.Abs(Off(420)), response.Badness(500e3), 1e-9);
        Assert.Equal(Math.Abs(Off(420)), response.Badness(300e3), 1e-9);
    }

    /// <summary>The share of the fuel; infinite where there is no fuel, or nobody knows.</summary>
    [Fact]
    public void Deviation_OfAResult_IsTheShareByWhichLambdaIsOff()
    {
        FuelSystem car = Car();
        Assert.Equal((0.9 / 0.82) - 1, RailResponse.DeviationOf(car.Solve(Point)), 1e-9);
        Assert.Equal(double.PositiveInfinity, RailResponse.DeviationOf(car.With(FuelSizing.Controllers.RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(0.1)), (Wren.Rpm(5000), Wren.Ms(0.1)))).Solve(Point)));
        Assert.Equal(double.PositiveInfinity, RailResponse.DeviationOf(car.With(FuelSizing.Controllers.RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(8)), (Wren.Rpm(2000), Wren.Ms(8)))).Solve(Point)));
    }

    [Fact]
    public void Other_ThanTheMixture_AreAllChecksButItsTwo()
    {
        FuelSystem car = Car(SizingLimits.Of(Wren.Percent(99), Wren.Percent(10)).With(MixtureLimits.Of(0.95, richest: 0.7)));
        FuelSizing.Checks.Margin[] margins = [.. car.Solve(Point).Margins];
        Assert.Equal(
            margins.Select(margin => margin.Part.Code).Except(["mixture", "rich-mixture"]),
            margins.Where(RailResponse.IsOther).Select(margin => margin.Part.Code));
        Assert.Equal(2, margins.Count(margin => !RailResponse.IsOther(margin)));
    }
}
