using System.Collections.Concurrent;
using System.Globalization;
using FuelSizing.Findings;

namespace FuelSizing.Tests.Findings;

/// <summary>Seeded runs of each fault: which is named? The page has a thousand of each, FUELSIZING_CONFUSION_CARS=50.</summary>
public class ConfusionTests
{
    /// <summary>Cars, each with a severity and tolerances of its own, and runs of each with scatter of their own.</summary>
#if NET10_0_OR_GREATER
    private static readonly int Cars = Environment.GetEnvironmentVariable("FUELSIZING_CONFUSION_CARS") is { } cars ? int.Parse(cars, CultureInfo.InvariantCulture) : 15;
    private const int RunsOfEach = 20;
#else
    private const int Cars = 5;
    private const int RunsOfEach = 10;
#endif

    private static readonly RunFault[] Seeded =
    [
        RunFault.None,
        RunFault.WeakPump,
        RunFault.VoltageDrop,
        RunFault.CloggedFilter,
        RunFault.WrongGain,
        RunFault.WrongOnset,
        RunFault.WrongInjectorSize,
        RunFault.RailSensorOffset,
        RunFault.ManifoldSensorOffset,
    ];

    private static readonly Lazy<Dictionary<RunFault, Dictionary<string, int>>> Matrix = new(Count);

    [Fact]
    public void FaultSeeded_IsNamedAloneInNinetyOfAHundredRuns_AndAmongTheNamedInNinetyEight()
    {
        foreach (RunFault fault in Seeded.Skip(1))
        {
            Assert.True(
                Matrix.Value[fault].GetValueOrDefault(fault.ToString()) >= (0.9 * Cars * RunsOfEach) - Counting(0.9),
                $"{fault}: {Text(Matrix.Value[fault])}");
            Assert.True(
                Matrix.Value[fault].Where(pair => pair.Key.Split('+').Contains(fault.ToString())).Sum(pair => pair.Value) >= (0.98 * Cars * RunsOfEach) - Counting(0.98),
                $"{fault}: {Text(Matrix.Value[fault])}");
        }
    }

    [Fact]
    public void SoundCar_IsAccusedInTwoOfAHundredRunsAtTheMaximum() =>
        Assert.True(
            Matrix.Value[RunFault.None].GetValueOrDefault(nameof(RunFault.None)) >= 0.98 * Cars * RunsOfEach,
            Text(Matrix.Value[RunFault.None]));

    // What counting fewer than a thousand scatters: cars, not their runs, are independent.
    private static double Counting(double share) =>
        Cars * RunsOfEach >= 1000 ? 0 : 3 * RunsOfEach * Math.Sqrt(Cars * share * (1 - share));

    /// <summary>The page shows this matrix; rounding may differ from machine to machine by a few runs.</summary>
    [Fact]
    public void Page_ShowsThisMatrix()
    {
        string[] table = Table();
        if (Environment.GetEnvironmentVariable("FUELSIZING_WRITE") is not null)
        {
            File.WriteAllLines(Path.Combine(Path.GetTempPath(), "confusion.md"), table);
        }

        string[] page = File.ReadAllLines(Path.Combine(Root(), "docs", "findings.md"));
        int first = Array.IndexOf(page, table[0]);
        Assert.True(first >= 0, "docs/findings.md lacks the matrix:\n" + string.Join('\n', table));
        for (int row = 2; row < table.Length; row++)
        {
            double[] shown = Numbers(page[first + row]);
            double[] counted = Numbers(table[row]);
            Assert.Equal(counted.Length, shown.Length);
            for (int cell = 0; cell < counted.Length; cell++)
            {
                // A thousand runs are shown, of fifty cars; of fewer cars they scatter more.
                double allowed = Cars * RunsOfEach >= 1000 ? 6 : 10 + (3 * Math.Sqrt(shown[cell] * (1000 - shown[cell]) / Cars));
                Assert.True(
                    Math.Abs((counted[cell] * 1000 / (Cars * RunsOfEach)) - shown[cell]) <= allowed,
                    $"docs/findings.md: {page[first + row]}\ncounted: {table[row]}");
            }
        }
    }

    private static string[] Table()
    {
        string[] names = [.. Seeded.Select(fault => fault.ToString())];
        return
        [
            $"| seeded \\ named | {string.Join(" | ", names)} | another | two or more |",
            $"| --- |{string.Concat(Enumerable.Repeat(" ---: |", names.Length + 2))}",
            .. Seeded.Select(fault =>
            {
                Dictionary<string, int> row = Matrix.Value[fault];
                int both = row.Where(pair => pair.Key.Contains('+', StringComparison.Ordinal)).Sum(pair => pair.Value);
                int other = row
                    .Where(pair => !pair.Key.Contains('+', StringComparison.Ordinal) && !names.Contains(pair.Key))
                    .Sum(pair => pair.Value);
                return $"| {fault} | {string.Join(" | ", names.Select(name => row.GetValueOrDefault(name)))} | {other} | {both} |";
            }),
        ];
    }

    private static double[] Numbers(string row) =>
        [.. row.Split('|').Skip(2).Where(cell => cell.Trim().Length > 0).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];

    private static string Text(Dictionary<string, int> named) =>
        string.Join(", ", named.OrderByDescending(pair => pair.Value).Select(pair => $"{pair.Key} {pair.Value}"));

    private static Dictionary<RunFault, Dictionary<string, int>> Count()
    {
        ConcurrentDictionary<(RunFault, string), int> named = new();
        Parallel.ForEach(
            Seeded.SelectMany(fault => Enumerable.Range(0, Cars), (fault, car) => (fault, car)),
            seeded =>
            {
                PulledWren car = PulledWren.With(seeded.fault, seeded.car);
                for (int run = 0; run < RunsOfEach; run++)
                {
                    Diagnosis diagnosis = Diagnosis.Of(
                        PulledWren.DefaultCheck, PulledWren.DefaultCheck.Model(car.Recorded((seeded.car * 1000) + run)), null, CancellationToken.None)!;
                    IEnumerable<RunFault> others = [.. diagnosis.Second is { } second ? (RunFault[])[second] : [], .. diagnosis.Rivals.Select(rival => rival.Fault)];
                    string name = string.Join("+", others.Prepend(diagnosis.Likeliest));
                    named.AddOrUpdate((seeded.fault, name), 1, (_, count) => count + 1);
                }
            });
        return Seeded.ToDictionary(
            fault => fault,
            fault => named.Where(pair => pair.Key.Item1 == fault).ToDictionary(pair => pair.Key.Item2, pair => pair.Value));
    }

    internal static string Root()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("FuelSizing.sln is in no folder above the tests.");
        }

        return folder;
    }
}
