using System.Collections.Concurrent;
using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sizing;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// Every remedy, printed and read, remedies what it is for at every point of the sweep when it is fitted; where one figure alone decides, one unit of its
/// last digit less does not. Behavioural: remedies are compared with the forward solution.
/// </summary>
public class RemediesPutBackTests(ITestOutputHelper output)
{
    private const int Draws = 14;

    private static readonly Gen<double[]> Case = Gen.Double[0.001, 0.999].Array[Draws];

    private static double Of(double[] draw, int place, double from, double to) => from + ((to - from) * draw[place]);

    [Fact]
    public void LargerInjectors_Fitted_Hold() => Fit(Part.Injectors, "Injectors of at least", SmallInjectors, (draw, system, printed) =>
    {
        FuelSystem With(double flow) => system.With(InjectorSet.Of(
            system.Injectors.Injector.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(flow)), system.Injectors.Count));
        return (With(printed.Value), With(printed.Beyond(-1)));
    });

    [Fact]
    public void SmallerInjectors_Fitted_Hold() => Fit(Part.MinimumPulse, "Injectors of at most", LargeInjectors, (draw, system, printed) =>
    {
        FuelSystem With(double flow) => system.With(InjectorSet.Of(
            system.Injectors.Injector.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(flow)), system.Injectors.Count));
        return (With(printed.Value), With(printed.Beyond(1)));
    });

    [Fact]
    public void InjectorsThatOpenAgainstMore_Fitted_Hold() => Fit(Part.OpeningPressure, "open against at least", RisingPressure, (draw, system, printed) =>
    {
        FuelSystem With(double kilopascals) => system.With(InjectorSet.Of(InjectorOf(800, kilopascals), 4));
        return (With(printed.Value), With(printed.Beyond(-1)));
    });

    [Fact]
    public void LargerPump_Fitted_Holds() => Fit(Part.Pump, "deliver at least", SmallPump, (draw, system, printed) => null, (draw, system, text) =>
    {
        PutBack.Printed flow = PutBack.After("deliver at least", text);
        PutBack.Printed rise = PutBack.After("against", text);
        PutBack.Printed volts = PutBack.After("with", text);

        // Flat up to the pressure printed, so that the flow alone decides.
        FuelSystem With(double litres) => system.With(Pump.From(PumpCurve.At(
            "printed",
            Wren.Volt(volts.Value),
            (Pressure.Zero, VolumeFlow.FromLitersPerHour(litres + 1e-6)),
            (Wren.Kpa(rise.Value), VolumeFlow.FromLitersPerHour(litres)),
            (Wren.Kpa(rise.Value + 1), VolumeFlow.Zero))));
        return (With(flow.Value), With(flow.Beyond(-1)));
    });

    [Fact]
    public void WiderReturnLine_Fitted_Holds() => Fit(Part.ReturnLine, "A return line that passes", NarrowReturn, (draw, system, printed) => null, (draw, system, text) =>
    {
        VolumeFlow surplus = VolumeFlow.FromLitersPerHour(PutBack.After("passes", text).Value);
        Pressure set = Wren.Kpa(PutBack.After("L/h at", text).Value);
        Line At(double bore) => Line.Of("return line", Length.FromMillimeters(bore), Length.FromMeters(Of(draw, 10, 1, 5)), Roughness.RubberHose);

        // The line that passes what is printed at the pressure printed.
        double low = 1;
        double high = 30;
        for (int i = 0; i < 100; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = At(middle).PressureLoss(surplus, Fuel.Petrol, Wren.Hill.FuelTemperature).Total <= set ? (low, middle) : (middle, high);
        }

        // Both figures are rounded, so that a line that passes as much at a little more pressure may still do; at 5 % less bore it does not.
        FuelSystem With(double bore) => system.With(Plumbing.Of(returnLine: [At(bore)]));
        return (With(high), With(high * 0.95));
    });

    [Fact]
    public void MorePressureAtTheInlet_IsWhatIsMissing() => Fit(Part.Suction, "", HotFuel, (draw, system, printed) => null, (draw, system, text) =>
    {
        PutBack.Printed more = PutBack.After("^", $" {text}");
        Margin[] inlets = [.. Swept(draw, system).Results.Select(result => ByPart.Find(result, Part.Suction)).Where(margin => margin.Outcome == Outcome.Fails)];
        double missing = inlets.Max(margin => ((Pressure)margin.Allowed!).Kilopascals - ((Pressure)margin.Used!).Kilopascals);
        Assert.InRange(missing, more.Beyond(-1), more.Value);
        return null;
    });

    [Fact]
    public void FeedOfLessResistance_Fitted_Holds() => Fit(Part.Feed, "no more than", ThinWire, (draw, system, printed) =>
    {
        FuelSystem With(double milliohms) => system.With(system.Pump.Rewired(feed => feed.LoopResistance.Milliohms <= milliohms
            ? feed
            : Feed.Of(
                "printed",
                Conductor.Awg(10),
                Length.Zero,
                Length.Zero,
                Temperature.FromDegreesCelsius(20),
                Contact.Of("all of it", ElectricResistance.FromMilliohms(milliohms)))));
        return (With(printed.Value), With(printed.Beyond(1)));
    });

    [Fact]
    public void WireOfMoreAmpacity_CarriesWhatIsDrawnWithAnyWire() => Fit(Part.Wire, "ampacity of at least", HotWire, (draw, system, printed) => null, (draw, system, text) =>
    {
        double ampacity = PutBack.After("ampacity of at least", text).Value;
        double Drawn(double bore) => Swept(draw, Rewired(system, bore)).Results.Max(result => result.Circuit.Pumps.Max(pump => pump.Current!.Value.Amperes));
        Assert.All([1, 2, 4, 16, 95], area => Assert.True(Drawn(area) <= ampacity, $"{area} mm²: {text}"));

        // The most that the pumps' data allow; the highest may lie a little off the points of the sweep.
        double most = Swept(draw, WithoutWire(system)).Results.Max(
            result => Enumerable.Range(0, result.SolvedCircuit.Pumps.Length).Max(pump => result.SolvedCircuit.CurrentOf(pump).Maximum));
        Assert.True(most > ampacity - 0.25, $"{most} A: {text}");
        return null;
    });

    [Fact]
    public void LargerFuse_Fitted_Holds() => Fit(Part.Fuse, "A fuse of at least", SmallFuse, (draw, system, printed) =>
    {
        FuelSystem With(FuelSystem wired, double amperes) =>
            wired.With(wired.Pump.Rewired(feed => feed.WithFuse(ElectricCurrent.FromAmperes(amperes))));
        Assert.Equal(Outcome.Holds, Standing(draw, With(system, printed.Value), Part.Fuse));
        return (With(WithoutWire(system), printed.Value), With(WithoutWire(system), printed.Beyond(-1)));
    });

    [Fact]
    public void HosesOfAHigherRating_Fitted_Hold() => Fit(Part.PressureRating, "rated for at least", LowRating, (draw, system, printed) =>
    {
        FuelSystem With(double kilopascals) => system.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(kilopascals)));
        return (With(printed.Value), With(printed.Beyond(-1)));
    });

    /// <summary>At the sweep's speeds, and from its lowest boost up to the one printed.</summary>
    [Fact]
    public void LessBoost_Obeyed_Holds()
    {
        int obeyed = 0;
        Case.Sample(
            draw =>
            {
                double[] rising = [.. draw.Select((one, place) => place == 8 ? 0.3 + (0.7 * one) : one)];
                FuelSystem system = draw[9] < 0.5 ? SmallInjectors(rising) : SmallPump(rising);
                SweepResult before = Swept(rising, system);
                if (before.Remedies.FirstOrDefault(remedy => remedy.Text.Code == "boost.less") is not { } remedy)
                {
                    return;
                }

                Interlocked.Increment(ref obeyed);
                PutBack.Printed bar = PutBack.After("no more than", remedy.ToString().Replace("−", "-", StringComparison.Ordinal));
                Outcome UpTo(double most) => system.Sweep(before.Speeds, [before.Boosts[0], Pressure.FromBars(most)], before.Results[0].Point.Conditions)
                    .Standings.Single(standing => standing.Part == remedy.Part).Outcome;
                if (bar.Value > before.Boosts[0].Bars)
                {
                    Assert.True(UpTo(bar.Value) == Outcome.Holds, $"it fails: {remedy}");
                }

                Assert.True(UpTo(Math.Max(bar.Beyond(1), before.Boosts[0].Bars + 1e-9)) != Outcome.Holds, $"one step more holds: {remedy}");
            },
            iter: 4 * PutBack.Cases);
        output.WriteLine($"no more than … of boost: {obeyed} of {4 * PutBack.Cases}");
        Assert.True(obeyed >= PutBack.Cases / 2, $"Only {obeyed}.");
    }

    private static FuelSystem SmallInjectors(double[] draw) => Base(draw, Of(draw, 0, 120, 500), 2);

    private static FuelSystem LargeInjectors(double[] draw) => Base(draw, Of(draw, 0, 1000, 6000), 2);

    private static FuelSystem RisingPressure(double[] draw) =>
        Base(draw, 800, Of(draw, 1, 0.5, 5)).With(RisingRate.From(Wren.Kpa(300), Of(draw, 0, 3, 9), Wren.Kpa(Of(draw, 2, 0, 20))));

    private static FuelSystem SmallPump(double[] draw) =>
        Base(draw, 800, Of(draw, 0, 0.2, 0.8)).With(Plumbing.Of(supply: [LineOf(Of(draw, 1, 5, 8), Of(draw, 2, 1, 5))]));

    private static FuelSystem NarrowReturn(double[] draw) => Base(draw, 800, Of(draw, 0, 0.8, 2)).With(Plumbing.Of(
        returnLine: [Line.Of("return line", Length.FromMillimeters(Of(draw, 1, 1.5, 2.5)), Length.FromMeters(4), Roughness.RubberHose)]));

    private static FuelSystem HotFuel(double[] draw) => Base(draw, 800, Of(draw, 0, 0.8, 2))
        .With(Plumbing.Of(suction: [Line.Of("suction", Length.FromMillimeters(7), Length.FromMeters(1), Roughness.RubberHose, rise: Length.FromMeters(Of(draw, 1, 1, 3)))]))
        .With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), suctionMargin: Wren.Kpa(40)));

    private static FuelSystem ThinWire(double[] draw) => Wired(draw, Of(draw, 10, 0.5, 1.2), Of(draw, 11, 3, 8), feed => feed);

    private static FuelSystem HotWire(double[] draw) => Wired(draw, 0.85, Of(draw, 11, 0.5, 3), feed => feed.WithInsulation(
        Temperature.FromDegreesCelsius(75), Temperature.FromDegreesCelsius(Of(draw, 10, 60, 74))));

    private static FuelSystem SmallFuse(double[] draw) => Wired(draw, 2, Of(draw, 11, 0.5, 6), feed => feed.WithFuse(ElectricCurrent.FromAmperes(Of(draw, 10, 2, 8))));

    private static FuelSystem LowRating(double[] draw) => SmallPump([.. draw.Select((one, place) => place == 0 ? 0.9 : one)])
        .With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(Of(draw, 0, 200, 400))));

    private static FuelSystem Base(double[] draw, double injector, double pump) => FuelSystem.Return(
        Wren.Demand(),
        InjectorSet.Of(WithFlows(InjectorOf(injector, 450)), 4),
        draw[3] < 0.4 ? Fixed.At(Wren.Kpa(Of(draw, 4, 300, 430))) : ManifoldReferenced.From(Wren.Kpa(Of(draw, 4, 250, 400))),
        Pump.From(Wren.PumpOf(pump)));

    /// <summary>One pump, or two in parallel on feeds of different lengths.</summary>
    private static FuelSystem Wired(double[] draw, double area, double metres, Func<Feed, Feed> more)
    {
        Pump Of(double length, double scale) => Pump.From(Wren.WiredCurve(13.5, scale)).WithFeed(more(Feed.Of(
            "feed",
            Conductor.OfArea(Area.FromSquareMillimeters(area), ConductorMaterial.Copper, Conductor.DefaultLay),
            Length.FromMeters(length),
            Length.FromMeters(length),
            Temperature.FromDegreesCelsius(60),
            Contact.DefaultRelay)));
        Pump first = Of(metres, 1.2);
        return Base(draw, 800, 1).With(draw[12] < 0.5 ? first : PumpParallel.Of(first, Of(metres * 1.7, 0.9)));
    }

    private static FuelSystem Rewired(FuelSystem system, double squareMillimetres) =>
        system.With(system.Pump.Rewired(feed => feed.WithNominalArea(Area.FromSquareMillimeters(squareMillimetres))));

    private static FuelSystem WithoutWire(FuelSystem system) => system.With(system.Pump.Rewired(feed => feed.WithLoopOfAtMost(feed.ContactOhms)));

    private static Injector InjectorOf(double flow, double opensAgainst) => Injector.Of(
        "injector", VolumeFlow.FromMillilitersPerMinute(flow), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(1.6), Wren.Kpa(opensAgainst));

    // Of every third one its flow was measured at other pressures too.
    private static Injector WithFlows(Injector injector) => injector.StaticFlow.MillilitersPerMinute % 3 < 1
        ? injector.WithMeasuredFlows(
            (Wren.Kpa(170), injector.StaticFlow * Math.Sqrt(17.0 / 30) * 0.96), (Wren.Kpa(410), injector.StaticFlow * Math.Sqrt(41.0 / 30) * 1.03))
        : injector;

    private static Line LineOf(double millimetres, double metres) =>
        Line.Of("supply", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.DrawnTube);

    private static SweepResult Swept(double[] draw, FuelSystem system)
    {
        RotationalSpeed[] speeds = [Wren.Rpm(Of(draw, 5, 900, 3000)), .. draw[6] > 0.3 ? [Wren.Rpm(Of(draw, 6, 3500, 7200))] : Array.Empty<RotationalSpeed>()];
        Pressure[] boosts = [Pressure.FromBars(Of(draw, 7, -0.6, 0.2)), .. draw[8] > 0.3 ? [Pressure.FromBars(Of(draw, 8, 0.3, 0.9))] : Array.Empty<Pressure>()];
        Conditions conditions = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(13.5), Temperature.FromDegreesCelsius(35));
        return system.Sweep(speeds, boosts, conditions);
    }

    private static string Told(SweepResult sweep, Part part)
    {
        PartStanding standing = sweep.Standings.Single(standing => standing.Part == part);
        return $"{standing.Outcome}, {standing.Tightest.Margin.Reserve?.DecimalFractions:R}: {standing}; {sweep.PointsSolved} points";
    }

    private static Outcome Standing(double[] draw, FuelSystem system, Part part) =>
        Swept(draw, system).Standings.Single(standing => standing.Part == part).Outcome;

    private void Fit(
        Part part,
        string words,
        Func<double[], FuelSystem> systemOf,
        Func<double[], FuelSystem, PutBack.Printed, (FuelSystem Fitted, FuelSystem OneStepLess)?> fit,
        Func<double[], FuelSystem, string, (FuelSystem Fitted, FuelSystem OneStepLess)?>? fitText = null)
    {
        int fitted = 0;
        int tried = 0;
        while (fitted < PutBack.Cases && tried < 40)
        {
            // Of systems drawn so that the part mostly fails, as many as it takes.
            ConcurrentBag<string> failing = [];
            int salt = tried++;
            Case.Select(draw => draw).Sample(
                drawn =>
                {
                    double[] draw = [.. drawn.Select(one => (one + (0.618033988749895 * salt)) % 1)];
                    FuelSystem system = systemOf(draw);
                    SweepResult before = Swept(draw, system);
                    if (before.Remedies.FirstOrDefault(remedy => remedy.Part == part && remedy.Text.ToString().Contains(words, StringComparison.Ordinal)) is not { } remedy
                        || !remedy.Text.ToString().Any(char.IsAsciiDigit)
                        || remedy.Text.Code == "boost.less")
                    {
                        return;
                    }

                    string text = remedy.Text.ToString();
                    failing.Add(text);
                    if ((fitText is null ? fit(draw, system, PutBack.After(words, text)) : fitText(draw, system, text)) is { } systems)
                    {
                        Assert.True(Standing(draw, systems.Fitted, part) == Outcome.Holds, $"fitted, it does not hold: {text} {Told(Swept(draw, systems.Fitted), part)}");
                        Assert.True(Standing(draw, systems.OneStepLess, part) != Outcome.Holds, $"one step less holds: {text}");
                    }
                },
                iter: PutBack.Cases);
            fitted += failing.Count;
        }

        output.WriteLine($"{words} …: {fitted} of {tried * PutBack.Cases}");
        Assert.True(fitted >= PutBack.Cases, $"Only {fitted} remedies of {tried * PutBack.Cases} systems: the systems must fail oftener.");
    }
}
