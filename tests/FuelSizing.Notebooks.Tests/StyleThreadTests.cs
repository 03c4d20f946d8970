using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Findings;
using FuelSizing.Interactive;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A style belongs to a call, not to the process: threads that write in different units and cultures never mix them.</summary>
public sealed partial class StyleThreadTests
{
    private static readonly SweepResult Swept = SizingSheetTests.Sweep();

    private static readonly TextStyle[] Styles =
    [
        .. from units in new[] { FigureUnits.Metric, FigureUnits.UsCustomary }
           from separators in new[] { (".", ","), (",", "."), (".", "’"), (",", "\u202F") }
           select TextStyle.Metric.With(units).With(Culture(separators.Item1, separators.Item2)),
    ];

    [Fact]
    public void SixteenThreads_WithTheirOwnStyles_EachWriteWhatOneAloneWould()
    {
        Func<TextStyle, string>[] texts = Texts();
        string[][] alone = [.. Styles.Select(style => texts.Select(text => text(style)).ToArray())];
        const int Threads = 16;
        using Barrier start = new(Threads);
        string?[] wrong = new string?[Threads];
        Thread[] threads =
        [
            .. Enumerable.Range(0, Threads).Select(thread => new Thread(() =>
            {
                int own = thread % Styles.Length;
                start.SignalAndWait();
                for (int round = 0; round < 8 && wrong[thread] is null; round++)
                {
                    for (int text = 0; text < texts.Length; text++)
                    {
                        string written = texts[text](Styles[own]);
                        wrong[thread] ??= written == alone[own][text] ? null : $"{Styles[own]}: {written}";
                    }
                }
            })),
        ];
        Array.ForEach(threads, thread => thread.Start());
        Array.ForEach(threads, thread => thread.Join());

        Assert.All(wrong, Assert.Null);
    }

    [Fact]
    public void Texts_InEachStyle_HoldOnlyItsUnitsAndSeparators()
    {
        foreach (TextStyle style in Styles)
        {
            NumberFormatInfo numbers = style.Culture.NumberFormat;
            bool us = style.Units == FigureUnits.UsCustomary;
            foreach (Func<TextStyle, string> text in Texts())
            {
                string written = text(style);
                Match foreign = us ? Metric().Match(written) : Us().Match(written);
                Assert.False(foreign.Success, $"{style}: {written.Split('\n')[0]}: …{foreign.Value}…");
                string other = numbers.NumberDecimalSeparator == "." ? "," : ".";

                // Of a figure with a unit: no decimal of another culture, which has any number of digits but three.
                Match decimals = Regex.Match(written, $@".{{0,30}}(?<![\d.,’\u202F])\d{{1,3}}[{other}](\d|\d\d)(?!\d) ?(%|kPa|bar|psi|L/h|ms|V|A|g/s|°)");
                Assert.False(decimals.Success, $"{style}: {written.Split('\n')[0]}: …{decimals.Value}…");
            }
        }
    }

    /// <summary>Two notebooks in one process: what one chooses, the other does not see.</summary>
    [Fact]
    public async Task Use_InOneNotebook_LeavesTheOtherAsItWas()
    {
        string? first = null;
        string? second = null;
        using SemaphoreSlim chosen = new(0);
        Task one = Cell.RunAsync(() =>
        {
            Units.Use(TextStyle.UsCustomary);
            chosen.Release();
            first = SizingPlots.RailPressure(Swept, 1).Y.Unit;
        });
        Task other = Cell.RunAsync(() =>
        {
            chosen.Wait(TimeSpan.FromSeconds(30));
            second = SizingPlots.RailPressure(Swept, 1).Y.Unit;
        });
        await Task.WhenAll(one, other);

        Assert.Equal(("psi", "kPa"), (first, second));
        Assert.Equal(TextStyle.Metric, Units.Current);
        Assert.Throws<InvalidOperationException>(() => Units.Use(TextStyle.UsCustomary));
    }

    private static Func<TextStyle, string>[] Texts()
    {
        OperatingResult busiest = Swept.Results.MaxBy(result => result.InjectedFlow)!;
        SizingAnswer<VolumeFlow> answer = SystemSizing.MinimumStaticFlow(Swept.System, busiest.Point);
        UncertainSystem unsure = UncertainSystem.Of(
            Swept.System,
            OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(4000), Pressure.FromBars(0.3)),
            UncertainInput.RegulatorOffset(Distribution.Uniform(Pressure.FromKilopascals(-10), Pressure.FromKilopascals(10))));
        TornadoResult tornado = unsure.Tornado(SystemOutput.RailGauge);
        RunFindings findings = FindingBlockTests.Of("Speed,Boost,Rail,Pulse,Lambda\n3000,0.20,320,6.1,0.82\n4000,0.40,345,7.0,0.82\n");
        return
        [
            style => SizingCallouts.Verdict(Swept.Verdict, style).ToPlainText(),
            style => SizingCallouts.Remedies(Swept, style).ToPlainText(),
            style => SizingTables.Steps(busiest, style).ToPlainText(),
            style => SizingTables.Standings(Swept, style).ToPlainText(),
            style => SizingTables.Circuit(busiest, style).ToPlainText(),
            style => SizingTables.Circuits("circuits", style, ("one", busiest)).ToPlainText(),
            style => SizingPlots.RailPressure(Swept, 1, style).ToPlainText(),
            style => SizingPlots.SystemCurve("curve", style, ("one", busiest)).ToPlainText(),
            style => new SizingSheet(Swept, "Sheet", style: style).ToPlainText(),
            style => PartText.Say(answer, style),
            style => UncertaintyTables.Inputs(unsure, style).ToPlainText(),
            style => UncertaintyPlots.Tornado(tornado, style).ToPlainText(),
            style => FindingTables.Findings(findings, style).ToPlainText(),
            style => FindingTables.Verdict(findings, style).ToPlainText(),
            style => string.Join('\n', findings.Notes.Select(note => note.In(style))),
            style => Swept.System.Regulator.In(style),
        ];
    }

    private static CultureInfo Culture(string decimals, string groups)
    {
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator) = (decimals, groups);
        return culture;
    }

    [GeneratedRegex(@".{0,40}[0-9(] *(kPa|bar|L/h|g/s|kW|°C|kg/m³|g/kWh|m)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex(@".{0,40}[0-9(] *(psi|US gal/h|lb/h|hp|°F|lb/ft³|ft)(?![\w/²³])", RegexOptions.CultureInvariant)]
    private static partial Regex Us();
}
