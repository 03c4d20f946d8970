using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Interactive;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests;
using FuelSizing.Tests.Files.Setups;
using OxyPlot;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Diagrams of systems at random: nothing is missing, nothing lies over something else, and the figures balance.</summary>
public sealed class SystemDiagramTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly PlotRuler Ruler = new();

    private static readonly ConcurrentDictionary<int, OperatingResult> Results = new();

    // Width of a figure on a phone of 390 px: less the page's edge and the figure's.
    private const double OnAPhone = 358;

    private static readonly int[] AllSeeds = [.. Enumerable.Range(1, 24)];

    public static TheoryData<int> Seeds => [.. AllSeeds];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void EveryPart_OfARandomSystem_IsDrawnOnce(int seed)
    {
        FuelSystem[] systems = [new SystemBuilder(seed).Setup().System, Solved(seed).System];
        foreach ((FuelSystem system, XElement svg) in systems.Zip(Drawings(seed)))
        {
            string[] expected = [.. PartsOf(system).Order(StringComparer.Ordinal)];
            string[] drawn =
            [
                .. svg.Descendants(Svg + "g").Where(group => group.Attribute("data-part") is not null)
                    .Select(group => Seen(group.Attribute("data-part")!.Value, group.Element(Svg + "title")!.Value))
                    .OfType<string>()
                    .Order(StringComparer.Ordinal),
            ];
            Assert.Equal(expected, drawn);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Texts_OfARandomSystem_LieApart_AndNoLineCrossesThem(int seed)
    {
        foreach (XElement svg in Drawings(seed))
        {
            (double width, double height) = SizeOf(svg);
            (Box Box, string Text)[] texts = [.. svg.Descendants(Svg + "text").Select(text => (BoxOf(text), text.Value))];
            Assert.All(texts, text => Assert.True(
                text.Box.Left >= 0 && text.Box.Top >= 0 && text.Box.Right <= width && text.Box.Bottom <= height, $"{text.Text} leaves the drawing"));
            for (int one = 0; one < texts.Length; one++)
            {
                for (int other = one + 1; other < texts.Length; other++)
                {
                    Assert.False(texts[one].Box.Meets(texts[other].Box), $"\"{texts[one].Text}\" lies over \"{texts[other].Text}\"");
                }
            }

            foreach (Box line in svg.Descendants(Svg + "polyline").Where(line => line.Attribute("stroke-width")!.Value != "1.2").SelectMany(Segments))
            {
                Assert.All(texts.Where(text => text.Text != "M"), text => Assert.False(text.Box.Meets(line), $"a line crosses \"{text.Text}\""));
            }

            foreach (Box shape in svg.Descendants().SelectMany(Shapes))
            {
                Assert.True(shape.Left >= 0 && shape.Top >= 0 && shape.Right <= width && shape.Bottom <= height, "a shape leaves the drawing");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Text_OfARandomSystem_IsLegibleOnAPhone(int seed)
    {
        // Pumps in three nested arrangements are wider by what their lines need.
        foreach (XElement svg in Drawings(seed, deepest: 1))
        {
            double scale = OnAPhone / SizeOf(svg).Width;
            Assert.All(svg.Descendants(Svg + "text"), text => Assert.True(Of(text, "font-size") * scale >= 11));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Flows_AsPrinted_BalanceAtTheRailAndInTheSurgeTank(int seed)
    {
        OperatingResult result = Solved(seed);
        XElement svg = XElement.Parse(SystemDiagram.Of(result, TextStyle.Metric).ToSvg());
        if (result.PumpFlow is null)
        {
            Assert.Contains("cannot say", TextOf(svg, "rail"), StringComparison.Ordinal);
            return;
        }

        // Three figures, each rounded to the nearest litre an hour.
        const int Rounding = 1;
        int into = FlowBefore(TextOf(svg, "rail"), "in");
        int injected = FlowBefore(TextOf(svg, "injectors"), "into the engine");
        int returned = result.System.Layout == LineLayout.Return ? FlowBefore(TextOf(svg, "regulator"), "returned") : 0;
        Assert.InRange(into - injected - returned, -Rounding, Rounding);
        if (result.System.Layout == LineLayout.Returnless && result.System.Regulator is not ElectronicReturnless)
        {
            int outlet = FlowBefore(svg.Descendants(Svg + "g").Where(group => Title(group).StartsWith("pump outlet", StringComparison.Ordinal)).Select(Words).Single(), ",");
            Assert.InRange(outlet - into - FlowBefore(TextOf(svg, "regulator"), "returned"), -Rounding, Rounding);
        }

        if (result.SurgeTank is { IsFull: true, Lifted: not null, NetDraw: not null })
        {
            string tank = TextOf(svg, "surge-tank");
            Assert.InRange(FlowBefore(tank, "lifted") - FlowBefore(tank, "net draw") - FlowBefore(tank, "overflow"), -Rounding, Rounding);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Description_NamesThePartsInTheOrderOfFlow(int seed)
    {
        Setup setup = new SystemBuilder(seed).Setup();
        FuelSystem system = setup.System;
        string text = XElement.Parse(SystemDiagram.Of(system, TextStyle.Metric).ToSvg()).Element(Svg + "desc")!.Value;
        string[] before = [.. system.Plumbing.Suction.Select(part => part.Name), .. system.Pump.Pumps.Select(pump => pump.Name)];
        string[] after = [.. system.Plumbing.Supply.Select(part => part.Name), "rail", $"× {system.Injectors.Injector.Name}"];
        string[] order = system.Layout == LineLayout.Return
            ? [.. before, .. after, .. system.Plumbing.ReturnLine.Select(part => part.Name)]
            : [.. before, .. after];

        int at = 0;
        foreach (string name in order)
        {
            int found = text.IndexOf($"{name}", at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{name} does not come after those before it");
            at = found + name.Length;
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void WhatFails_IsSaidInWords_AndFramed(int seed)
    {
        OperatingResult result = Solved(seed);
        SystemDiagram diagram = SystemDiagram.Of(result, TextStyle.Metric);
        string text = diagram.ToPlainText();
        XElement svg = XElement.Parse(diagram.ToSvg());

        Assert.All(result.Margins.Where(margin => margin.Outcome == Outcome.Fails), margin => Assert.Contains($"fails: {margin.In(TextStyle.Metric)}", text, StringComparison.Ordinal));
        Assert.Contains(result.Limiting.Margin.In(TextStyle.Metric), text, StringComparison.Ordinal);
        XElement[] failing = [.. svg.Descendants(Svg + "g").Where(group => group.Elements(Svg + "text").Any(line => line.Value.StartsWith('\u2717')))];
        Assert.All(failing, group => Assert.Contains(group.Elements(Svg + "polygon"), frame => frame.Attribute("stroke-width")?.Value == "3"));
        Assert.Equal(failing.Length, svg.Descendants(Svg + "polygon").Count(frame => frame.Attribute("stroke-width")?.Value == "3"));
    }

    [Fact]
    public void ReturnLine_OfASystemThatReturnsNothing_IsNamedAndNotDrawn()
    {
        FuelSystem[] systems = [.. AllSeeds.Select(seed => new SystemBuilder(seed).Setup().System).Where(system => IsElectronic(system) && system.Plumbing.ReturnLine.Count > 0)];

        Assert.NotEmpty(systems);
        Assert.All(systems, system => Assert.EndsWith(
            $"not drawn of the description: {string.Join(", ", system.Plumbing.ReturnLine.Select(part => part.Name))}.",
            SystemDiagram.Of(system, TextStyle.Metric).ToPlainText().Split('\n')[^2],
            StringComparison.Ordinal));
    }

    [Fact]
    public void RandomSystems_AreOfEveryKind()
    {
        string[] kinds = [.. AllSeeds.SelectMany(seed => PartsOf(new SystemBuilder(seed).Setup().System)).Select(part => part.Split(':')[0]).Distinct()];

        Assert.Superset(
            new HashSet<string>(["tank", "line", "filter", "pump", "feed", "converter", "check-valve", "regulator", "pump-controller", "surge-tank", "rail", "injectors"]),
            new HashSet<string>(kinds));
    }

    [Fact]
    public void BypassValve_IsOpenWhereAStagePassesLessThanTheWhole()
    {
        Pump weak = PumpNamed("weak", 40);
        Pump strong = PumpNamed("strong", 300);
        OperatingResult result = Wren.System(ManifoldReferenced.From(Pressure.FromKilopascals(300))).With(PumpSeries.Of(SeriesBypass.CheckValve, weak, strong))
            .Solve(Wren.At(6800, 0.6));
        string[] valves = [.. Groups(XElement.Parse(SystemDiagram.Of(result, TextStyle.Metric).ToSvg()), "check-valve").Select(Words)];

        Assert.Single(valves, valve => valve.StartsWith("bypass check valve open", StringComparison.Ordinal));
        Assert.Single(valves, valve => valve.StartsWith("bypass check valve shut", StringComparison.Ordinal));
    }

    [Fact]
    public void Drawing_StatesItself_AndRunsNothing()
    {
        SystemDiagram diagram = SystemDiagram.Of(Wren.System(ManifoldReferenced.From(Pressure.FromKilopascals(300))).Solve(Wren.At(6800, 0.6)), TextStyle.Metric);
        XElement svg = XElement.Parse(diagram.ToSvg());

        Assert.Equal("img", svg.Attribute("role")?.Value);
        Assert.Equal(diagram.Title, svg.Element(Svg + "title")?.Value);
        Assert.DoesNotContain(svg.Descendants(), element => element.Name.LocalName is "script" or "image" or "use" or "foreignObject");
        Assert.DoesNotContain("NaN", diagram.ToHtml(), StringComparison.Ordinal);
        Assert.Equal(diagram.ToSvg(), diagram.ToSvg());
        Assert.Throws<ArgumentNullException>(() => SystemDiagram.Of((FuelSystem)null!));
        Assert.Throws<ArgumentNullException>(() => SystemDiagram.Of((OperatingResult)null!));
    }

    [Fact]
    public void Figures_FollowTheStyle()
    {
        OperatingResult result = Wren.System(ManifoldReferenced.From(Pressure.FromKilopascals(300))).Solve(Wren.At(6800, 0.6));

        Assert.Contains("psi", SystemDiagram.Of(result, TextStyle.UsCustomary).ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("kPa", SystemDiagram.Of(result, TextStyle.UsCustomary).ToPlainText(), StringComparison.Ordinal);
    }

    private static Pump PumpNamed(string name, double litresPerHour) => Pump.From(PumpCurve.At(
        name,
        ElectricPotential.FromVolts(13.5),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)),
        (Pressure.FromKilopascals(800), VolumeFlow.Zero)));

    /// <summary>A system as it is described, and at one of its points.</summary>
    private static XElement[] Drawings(int seed, int deepest = 3) =>
    [
        XElement.Parse(SystemDiagram.Of(new SystemBuilder(seed, deepest).Setup().System, TextStyle.Metric).ToSvg()),
        .. deepest < 3 ? [] : new[] { XElement.Parse(SystemDiagram.Of(Solved(seed), TextStyle.Metric).ToSvg()) },
    ];

    /// <summary>
    /// A random system at one of its points, solved once for all tests. Two joined circuits of figures that fit nowhere take seconds to solve, and so do pumps with
    /// lines of their own that share a feed: these are solved with figures of a car. Assemblies inside assemblies, which take minutes, are drawn as they are described.
    /// </summary>
    private static OperatingResult Solved(int seed) => Results.GetOrAdd(seed, one =>
    {
        Setup setup = new SystemBuilder(one, deepest: 1).Setup();
        return setup.System.SurgeTank is null && !setup.System.Pump.HasOwnLines ? setup.System.Solve(setup.Points[0].Point)
            : setup.System.SurgeTank is null ? Branched().Solve(Wren.At(2000 + (200 * one), 0.6))
            : Surging(one % 2 == 0 ? ReturnDestination.MainTank : ReturnDestination.SurgeTank).Solve(Wren.At(2000 + (200 * one), 0.6));
    });

    private static FuelSystem Branched()
    {
        Line hose = Line.Of("hose", Length.FromMillimeters(8), Length.FromMeters(2), Roughness.RubberHose);
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(240), Pressure.FromKilopascals(11));
        CheckValve valve = CheckValve.Of("valve", Pressure.FromKilopascals(6), VolumeFlow.FromLitersPerHour(180), Pressure.FromKilopascals(14));
        return Wren.System()
            .With(PumpParallel.Of(
                PumpBranch.Of(PumpNamed("pump 1", 240), [hose], [filter, valve]),
                PumpBranch.Of(PumpNamed("pump 2", 210), [], [hose])))
            .With(Plumbing.Of([], [filter, hose], [hose]));
    }

    private static FuelSystem Surging(ReturnDestination to)
    {
        Line hose = Line.Of("hose", Length.FromMillimeters(8), Length.FromMeters(2), Roughness.RubberHose);
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(240), Pressure.FromKilopascals(11));
        return Wren.System()
            .With(Plumbing.Of([hose], [filter, hose], [hose]))
            .With(SurgeTank.Of(Volume.FromLiters(1.35), PumpNamed("lift", 260), to, [filter], [hose], [hose], Pressure.FromKilopascals(50)));
    }

    /// <summary>What the description has, kind and name; of valves and regulators, whose names say their state, the kind.</summary>
    private static IEnumerable<string> PartsOf(FuelSystem system)
    {
        IEnumerable<IFlowLoss> lines =
        [
            .. system.Plumbing.Suction, .. system.Plumbing.ToRegulator, .. system.Plumbing.Supply, .. IsElectronic(system) ? [] : system.Plumbing.ReturnLine,
            .. system.Pump.OwnBranches.SelectMany(branch => branch.Suction.Concat(branch.Discharge)),
        ];
        IEnumerable<Pump> pumps = system.Pump.Pumps;
        int valves = Valves(system.Pump);
        yield return "tank:";
        yield return "rail:";
        string Named(InjectorSet set) => $"{set.Count} × {set.Injector.Name}";
        yield return $"injectors:{Named(system.Injectors)}{(system.StagedInjectors is { } staged ? $" and secondary {Named(staged.Secondary)}" : "")}";
        if (system.SurgeTank is { } tank)
        {
            yield return "surge-tank:";
            lines = [.. lines, .. tank.Suction, .. tank.LiftLine, .. tank.Overflow];
            pumps = [.. pumps, .. tank.LiftPump.Pumps];
            valves += Valves(tank.LiftPump);
        }

        foreach (IFlowLoss part in lines)
        {
            yield return part is CheckValve ? "check-valve:" : $"{(part is Filter ? "filter" : "line")}:{part.Name}";
        }

        foreach (Pump pump in pumps)
        {
            yield return $"pump:{pump.Name}";
            if (pump.Feed is { } feed)
            {
                yield return $"feed:{feed.Name}";
            }

            if (pump.Converter is { } converter)
            {
                yield return $"converter:{converter.Name}";
            }
        }

        for (int valve = 0; valve < valves; valve++)
        {
            yield return "check-valve:";
        }

        for (PressureRegulator? unit = system.Regulator; unit is not null; unit = (unit as RegulatorSeries)?.BaseRegulator)
        {
            yield return unit is ElectronicReturnless ? "pump-controller:" : "regulator:";
        }
    }

    private static bool IsElectronic(FuelSystem system) => system.Regulator is ElectronicReturnless;

    private static int Valves(PumpAssembly pumps) => pumps switch
    {
        PumpSeries series => series.Stages.Sum(Valves) + (series.Bypass == SeriesBypass.CheckValve ? series.Stages.Count : 0),
        PumpBranch branch => Valves(branch.Pump),

        // A branch with a check valve of its own needs no other.
        PumpParallel parallel => parallel.Branches.Sum(Valves) + parallel.Branches.Count(branch => branch is not PumpBranch own || !own.Discharge.Any(part => part is CheckValve)),
        _ => 0,
    };

    private static string? Seen(string kind, string title) => kind switch
    {
        "place" => null,
        "tank" or "rail" or "surge-tank" or "check-valve" or "regulator" or "pump-controller" => $"{kind}:",
        _ => $"{kind}:{title[..title.IndexOf(": ", StringComparison.Ordinal)]}",
    };

    private static IEnumerable<XElement> Groups(XElement svg, string kind) => svg.Descendants(Svg + "g").Where(group => group.Attribute("data-part")?.Value == kind);

    private static string TextOf(XElement svg, string kind) => Words(Groups(svg, kind).First());

    private static string Title(XElement group) => group.Element(Svg + "title")?.Value ?? string.Empty;

    private static string Words(XElement group) => string.Join(' ', group.Elements(Svg + "text").Select(line => line.Value)).Replace('\u00A0', ' ');

    private static int FlowBefore(string text, string word) => int.Parse(
        Flow(word).Match(text) is { Success: true } match ? match.Groups[1].Value : throw new InvalidOperationException($"no flow before '{word}' in: {text}"),
        NumberStyles.AllowThousands,
        CultureInfo.InvariantCulture);

    private static Regex Flow(string word) => new($@"([\d,]+) L/h ?{Regex.Escape(word)}(?!\w)", RegexOptions.CultureInvariant);

    private static (double Width, double Height) SizeOf(XElement svg)
    {
        double[] box = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
        return (box[2], box[3]);
    }

    private static Box BoxOf(XElement text)
    {
        double width = Ruler.MeasureText(
            text.Value, PlotStyle.Font, Of(text, "font-size"), text.Attribute("font-weight") is null ? FontWeights.Normal : FontWeights.Bold).Width;
        double left = Of(text, "x") - (text.Attribute("text-anchor")?.Value == "middle" ? width / 2 : 0);
        return new(left, Of(text, "y") - 11, left + width, Of(text, "y") + 3.5);
    }

    private static IEnumerable<Box> Segments(XElement line)
    {
        (double X, double Y)[] points = [.. PointsOf(line)];
        return points.Zip(points.Skip(1), (from, to) => new Box(Math.Min(from.X, to.X), Math.Min(from.Y, to.Y), Math.Max(from.X, to.X), Math.Max(from.Y, to.Y)));
    }

    private static IEnumerable<Box> Shapes(XElement element) => element.Name.LocalName switch
    {
        "polyline" or "polygon" => PointsOf(element).Select(point => new Box(point.X, point.Y, point.X, point.Y)),
        "circle" => [new(Of(element, "cx") - Of(element, "r"), Of(element, "cy") - Of(element, "r"), Of(element, "cx") + Of(element, "r"), Of(element, "cy") + Of(element, "r"))],
        "rect" => [new(Of(element, "x"), Of(element, "y"), Of(element, "x") + Of(element, "width"), Of(element, "y") + Of(element, "height"))],
        _ => [],
    };

    private static IEnumerable<(double X, double Y)> PointsOf(XElement element) =>
        element.Attribute("points")!.Value.Split(' ').Select(point => point.Split(',')).Select(point => (Number(point[0]), Number(point[1])));

    private static double Of(XElement element, string name) => Number(element.Attribute(name)!.Value);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private sealed record Box(double Left, double Top, double Right, double Bottom)
    {
        public bool Meets(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
    }
}
