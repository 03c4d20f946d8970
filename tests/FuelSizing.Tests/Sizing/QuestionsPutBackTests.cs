using System.Collections.Concurrent;
using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// Every inverse answer, printed, read and put back, holds; one unit of its last digit towards the unsafe side does not; and where it says from where
/// to where, all between holds. Behavioural: answers are compared with the forward solution.
/// </summary>
public class QuestionsPutBackTests(ITestOutputHelper output)
{
    private const int Draws = 14;

    private static readonly Gen<double[]> Case = Gen.Double[0, 1].Array[Draws];

    private static double Of(double[] draw, int place, double from, double to) => from + ((to - from) * draw[place]);

    [Fact]
    public void MinimumStaticFlow_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        FuelSystem system = SystemOf(draw, RegulatorOf(draw));
        OperatingPoint[] points = PointsOf(draw, idle: draw[9] > 0.5);
        return PutBack.Check(
            SystemSizing.MinimumStaticFlow(system, points).ToString(),
            20,
            10_000,
            flow => Holds(
                system.With(InjectorSet.Of(system.Injectors.Injector.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(flow)), 4)), points));
    });

    [Fact]
    public void MinimumBasePressure_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        Pressure? ceiling = draw[10] > 0.5 ? Wren.Kpa(Of(draw, 11, 60, 1990)) : null;
        FuelSystem system = SystemOf(draw, draw[3] switch
        {
            < 0.3 => Fixed.At(Wren.Kpa(400)),
            < 0.6 => ManifoldReferenced.From(Wren.Kpa(300)),
            _ => RisingRate.From(Wren.Kpa(50), Of(draw, 4, 1, 6), Wren.Kpa(Of(draw, 5, 0, 60)), ceiling),
        });
        OperatingPoint[] points = PointsOf(draw, idle: false);
        string answer = SystemSizing.MinimumBasePressure(system, points).ToString();
        if (system.Regulator is RisingRate { Ceiling.Kilopascals: < 100 })
        {
            Assert.StartsWith("Nothing from 100 kPa to 1,500 kPa is adequate: the regulator's ceiling is ", answer, StringComparison.Ordinal);
            return "nothing under a ceiling";
        }

        Pressure maximum = UnitMath.Min(Wren.Kpa(1500), (system.Regulator as RisingRate)?.Ceiling ?? Wren.Kpa(1500));
        return PutBack.Check(
            answer, 100, maximum.Kilopascals, pressure => Holds(system.With(system.Regulator.WithBase(UnitMath.Min(Wren.Kpa(pressure), maximum))), points));
    });

    [Fact]
    public void MinimumGain_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        FuelSystem system = SystemOf(draw, ManifoldReferenced.From(Wren.Kpa(300)));
        Pressure onset = Wren.Kpa(Of(draw, 4, 0, 40));
        OperatingPoint[] points = PointsOf(draw, idle: false);
        return PutBack.Check(
            SystemSizing.MinimumGain(system, onset, points).ToString(),
            1,
            15,
            gain => Holds(system.With(RisingRate.From(Wren.Kpa(300), gain, onset)), points));
    });

    [Fact]
    public void MaximumBoost_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        FuelSystem system = SystemOf(draw, RegulatorOf(draw));
        RotationalSpeed[] speeds = [Wren.Rpm(Of(draw, 8, 2500, 7200)), .. draw[9] > 0.5 ? [Wren.Rpm(Of(draw, 10, 2500, 7200))] : Array.Empty<RotationalSpeed>()];
        return PutBack.Check(
            SystemSizing.MaximumBoost(system, speeds, Wren.Hill).ToString(),
            0,
            4,
            bar => speeds.All(speed => Holds(system, OperatingPoint.At(speed, Pressure.FromBars(bar), Wren.Hill))));
    });

    [Fact]
    public void MaximumPower_Printed_IsReachedAndNotPassedWhereAllHolds() => Ask(draw =>
    {
        // A compressor that takes the more the worse it is: with the worst, power falls with boost.
        Induction compressor = draw[11] < 0.5
            ? Wren.Turbocharger
            : Induction.BeltDriven(Ratio.FromPercent(Of(draw, 12, 30, 70)), Ratio.FromPercent(Of(draw, 10, 0, 70)), Wren.Kpa(5), Ratio.FromPercent(Of(draw, 9, 60, 95)));
        FuelSystem system = SystemOf(draw, RegulatorOf(draw), compressor);
        RotationalSpeed speed = Wren.Rpm(Of(draw, 8, 2500, 7200));
        SizingAnswer<Power> answer = SystemSizing.MaximumPower(system, speed, Wren.Hill);
        string text = answer.ToString();
        bool HoldsAt(double bar) => Holds(system, OperatingPoint.At(speed, Pressure.FromBars(bar), Wren.Hill));
        if (!text.StartsWith("At most", StringComparison.Ordinal))
        {
            return PutBack.Check(text, 0, 4, HoldsAt);
        }

        double KilowattsAt(double bar) => (double)system.Demand.At(speed, Pressure.FromBars(bar), Wren.Hill.Atmosphere).BrakePower.Kilowatts;
        PutBack.Printed power = PutBack.After("At most", text);
        double at = PutBack.After("reached at", text).Value;
        double lastHeld = SystemSizing.MaximumBoost(system, [speed], Wren.Hill).Value!.Value.Bars;
        double[] boosts = [.. Enumerable.Range(0, 401).Select(step => lastHeld * step / 400)];
        Assert.All(boosts, bar => Assert.True(HoldsAt(bar * (1 - 1e-12)), $"{bar:R} bar fails: {text}"));
        Assert.True(HoldsAt(at), text);

        // What is printed is reached where all holds, and the next figure is not.
        Assert.True(boosts.Max(KilowattsAt) >= power.Value * (1 - 1e-4), text);
        Assert.True(boosts.Min(KilowattsAt) <= power.Value * (1 + 1e-9), text);
        Assert.DoesNotContain(boosts, bar => KilowattsAt(bar) >= power.Beyond(1));
        Assert.Equal((double)answer.Value!.Value.Kilowatts, KilowattsAt(at), power.Step + (0.02 * power.Value));
        return at < lastHeld * 0.99 ? "at most, before the maximum boost" : "at most";
    });

    [Fact]
    public void MaximumSpeed_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        FuelSystem system = SystemOf(draw, RegulatorOf(draw));
        Pressure boost = Pressure.FromBars(Of(draw, 8, -0.5, 0.9));
        RotationalSpeed from = Wren.Rpm(Math.Round(Of(draw, 9, 900, 4000)));
        return PutBack.Check(
            SystemSizing.MaximumSpeed(system, boost, from, Wren.Hill).ToString(),
            from.RevolutionsPerMinute,
            7200,
            rpm => Holds(system, OperatingPoint.At(Wren.Rpm(rpm), boost, Wren.Hill)));
    });

    [Fact]
    public void MinimumBore_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        Line line = LineOf(8, Of(draw, 10, 1, 6));
        FuelSystem system = SystemOf(draw, RegulatorOf(draw)).With(Plumbing.Of(supply: [line]));
        OperatingPoint[] points = PointsOf(draw, idle: false);
        return PutBack.Check(
            SystemSizing.MinimumBore(system, line, points).ToString(),
            1,
            30,
            bore => Holds(system.With(Plumbing.Of(supply: [LineOf(bore, line.Length.Meters)])), points));
    });

    [Fact]
    public void MinimumWireArea_Printed_HoldsWhenPutBackAndSoDoesTheNextStandardSize() => Ask(draw =>
    {
        Temperature metal = Temperature.FromDegreesCelsius(Of(draw, 10, 20, 100));
        Feed Wired(Conductor wire) => Feed.Of(
            "feed", wire, Length.FromMeters(Of(draw, 11, 1, 8)), Length.FromMeters(Of(draw, 11, 1, 8)), metal, Contact.DefaultRelay, Contact.DefaultFuse);
        Pump pump = Pump.From(Wren.WiredCurve(13.5, Of(draw, 2, 0.8, 2)));
        FuelSystem system = SystemOf(draw, RegulatorOf(draw)).With(pump.WithFeed(Wired(Conductor.Awg(12))));
        OperatingPoint[] points = PointsOf(draw, idle: false);
        bool With(Conductor wire) => Holds(system.With(pump.WithFeed(Wired(wire))), points);
        SizingAnswer<Area> answer = SystemSizing.MinimumWireArea(system, points);
        string kind = PutBack.Check(
            answer.ToString(), 0.2, 120, area => With(Conductor.OfNominal(Area.FromSquareMillimeters(area), ConductorMaterial.Copper)));
        if (kind == "at least")
        {
            double printed = PutBack.After("At least", answer.ToString()).Value;
            foreach (IReadOnlyList<Conductor> sizes in (IReadOnlyList<Conductor>[])[StandardSizes.Metric, StandardSizes.Awg])
            {
                Assert.True(
                    sizes.FirstOrDefault(size => size.Area.SquareMillimeters >= printed) is not { } next || With(next),
                    $"the next standard size fails: {answer}");
            }
        }

        return kind;
    });

    [Fact]
    public void RequiredPump_Printed_HoldsWhenPutBack() => Ask(draw =>
    {
        FuelSystem system = SystemOf(draw, RegulatorOf(draw)).With(Plumbing.Of(supply: [LineOf(7, Of(draw, 10, 0.5, 5))]));
        OperatingPoint[] points = PointsOf(draw, idle: false);
        PumpRequirement required = SystemSizing.RequiredPump(system, points);

        // A pump whose curve goes through the printed points, each kept as it is until just before the next, so that nothing between helps.
        (PutBack.Printed Flow, PutBack.Printed Rise)[] printed =
            [.. required.Governing.Reverse().Select(duty => (PutBack.After("^", $" {duty}"), PutBack.After("against", $"{duty}")))];
        bool With(double less) => Holds(
            system
                .With(Pump.From(PumpCurve.At(
                    "printed",
                    Wren.Volt(13.5),
                    [
                        (Pressure.Zero, VolumeFlow.FromLitersPerHour(printed[0].Flow.Value - less + 1e-6)),
                        .. printed.DistinctBy(duty => duty.Rise.Value).Select(duty => (Wren.Kpa(duty.Rise.Value), VolumeFlow.FromLitersPerHour(duty.Flow.Value - less))),
                        (Wren.Kpa(printed.Max(duty => duty.Rise.Value) + 1), VolumeFlow.Zero),
                    ])))
                .With(InjectorSet.Of(system.Injectors.Injector.WithStaticFlow(VolumeFlow.FromMillilitersPerMinute(5000)), 4)),
            points,
            Part.Pump);
        Assert.True(With(0), required.ToString());
        if (points.Length == 1)
        {
            Assert.False(With(1), required.ToString());
        }

        return points.Length == 1 ? "one point" : "several points";
    });

    private void Ask(Func<double[], string> answer)
    {
        ConcurrentDictionary<string, int> kinds = new();
        Case.Sample(draw => { kinds.AddOrUpdate(answer(draw), 1, (_, count) => count + 1); }, iter: PutBack.Cases);
        output.WriteLine(string.Join("; ", kinds.OrderByDescending(kind => kind.Value).Select(kind => $"{kind.Key}: {kind.Value}")));
    }

    private static PressureRegulator RegulatorOf(double[] draw) => draw[3] switch
    {
        < 0.2 => Fixed.At(Wren.Kpa(Of(draw, 4, 250, 550))),
        < 0.5 => ManifoldReferenced.From(Wren.Kpa(Of(draw, 4, 250, 400))),
        < 0.75 => RisingRate.From(
            Wren.Kpa(300), Of(draw, 4, 1, 9), Wren.Kpa(Of(draw, 5, 0, 60)), draw[6] > 0.7 ? Wren.Kpa(Of(draw, 7, 400, 900)) : null),
        _ => RegulatorSeries.Of(
            draw[6] > 0.5 ? Fixed.At(Wren.Kpa(Of(draw, 7, 250, 350))) : ManifoldReferenced.From(Wren.Kpa(Of(draw, 7, 250, 350))),
            RisingRate.From(Pressure.Zero, Of(draw, 4, 2, 9), Wren.Kpa(Of(draw, 5, 0, 30)))),
    };

    private static FuelSystem SystemOf(double[] draw, PressureRegulator regulator, Induction? induction = null)
    {
        double ethanol = Of(draw, 0, 0, 85);
        FuelConsumption consumption = FuelConsumption.Of(
            FuelBlend.EthanolInPetrol(Ratio.FromPercent(ethanol)), 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315 + (1.6 * ethanol)));
        Injector injector = Injector.Of(
            "injector",
            VolumeFlow.FromMillilitersPerMinute(Of(draw, 1, 250, 1200)),
            Wren.Kpa(300),
            TestFluid.Heptane,
            Wren.DeadTime,
            Wren.Ms(1.5),
            Wren.Kpa(Of(draw, 13, 400, 700)));
        return FuelSystem.Return(
            Wren.Demand(consumption, induction),
            InjectorSet.Of(injector, 4),
            regulator,
            Pump.From(Wren.PumpOf(Of(draw, 2, 0.6, 3))));
    }

    private static OperatingPoint[] PointsOf(double[] draw, bool idle) =>
    [
        Wren.At(Of(draw, 8, 2500, 7200), Of(draw, 12, 0, 1)),
        .. draw[7] > 0.6 ? [Wren.At(Of(draw, 6, 2500, 7200), Of(draw, 5, 0, 1))] : Array.Empty<OperatingPoint>(),
        .. idle ? [Wren.At(850, -0.6)] : Array.Empty<OperatingPoint>(),
    ];

    private static Line LineOf(double millimetres, double metres) =>
        Line.Of("supply", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.DrawnTube);

    private static bool Holds(FuelSystem system, OperatingPoint[] points) => points.All(point => Holds(system, point));

    private static bool Holds(FuelSystem system, OperatingPoint[] points, Part part) =>
        points.All(point => system.Solve(point).Margins.Single(margin => margin.Part == part).Outcome == Outcome.Holds);

    private static bool Holds(FuelSystem system, OperatingPoint point) => Judged.IsHolding(system.Solve(point).Outcome);
}
