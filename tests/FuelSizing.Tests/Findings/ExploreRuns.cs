using System.Collections.Concurrent;
using System.Globalization;
using FuelSizing.Findings;
using FuelSizing.Logs;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Findings;

public class ExploreRuns(ITestOutputHelper output)
{
    private static bool Counts(PlantCase each)
    {
        if (Environment.GetEnvironmentVariable("ALL") is not null) return true;
        double sag = each.Truth.GetProperty("facts").GetProperty("saggingRows").GetDouble();
        foreach (var fault in each.Truth.GetProperty("faults").EnumerateArray())
        {
            double Size(string n) => Math.Abs(fault.GetProperty(n).GetDouble());
            bool ok = fault.GetProperty("name").GetString() switch
            {
                "wrong_base" => Size("regulatorBasePascals") >= 25e3,
                "air" => Size("volumetricEfficiency") >= 0.14,
                "wrong_injectors" => Size("injectorFlow") >= 0.12,
                "flow_meter" => Size("meter") >= 0.10,
                "weak_pump" or "clogged_filter" => sag >= 80,
                "voltage_drop" => sag >= 80 || fault.TryGetProperty("supplyVolts", out _),
                _ => true,
            };
            if (!ok) return false;
        }
        return true;
    }

    [Fact]
    public void Explore()
    {
        foreach (string folder in (Environment.GetEnvironmentVariable("EXPLORE") ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries))
        {
            PlantRuns made = PlantRuns.In(folder);
            ConcurrentBag<string> lines = [];
            ConcurrentDictionary<string, int> named = new();
            var watch = System.Diagnostics.Stopwatch.StartNew();
            Parallel.ForEach(made.Cases.Where(Counts), each =>
            {
                RunModel model = each.Car.Check.Model(each.Run());
                Diagnosis d = Diagnosis.Of(each.Car.Check, model, null, CancellationToken.None)!;
                string name = d.Likeliest + (d.Second is { } s ? "&" + s : "") + string.Concat(d.Rivals.Select(r => "|" + r.Fault));
                string truth = each.Faults.Count == 0 ? "None" : string.Join("&", each.Faults);
                named.AddOrUpdate($"{truth} -> {name}", 1, (_, n) => n + 1);
                string verbose = string.Join(" ", d.Suspects.Take(4).Select(x => FormattableString.Invariant($"{x.Fault} {x.Probability:0.000} ev {x.Evidence:0.0}")));
                if (truth != name)
                {
                    lines.Add(FormattableString.Invariant($"{each.Name} car {each.Car.Number} {truth} none {d.NoFault:0.000} lack {d.Lack:0.00} n {model.Comparisons}: {verbose}") + (d.Second is { } t ? " & " + t : "") + " " + each.Truth.GetProperty("faults").GetRawText() + " sag " + each.Truth.GetProperty("facts").GetProperty("saggingRows").GetRawText() + " " + each.ShapeText.Replace("slowChannels", "slow").Replace("False", "-"));
                }
            });
            output.WriteLine($"== {folder} {made.Cases.Count} in {watch.ElapsedMilliseconds} ms");
            foreach (var pair in named.OrderByDescending(p => p.Value)) output.WriteLine($"{pair.Value,5} {pair.Key}");
            foreach (string line in lines.Order().Take(int.Parse(Environment.GetEnvironmentVariable("EXPLORE_LINES") ?? "12", CultureInfo.InvariantCulture))) output.WriteLine("   " + line);
        }
    }
}
internal static class Sizes
{
}

public class ExploreOne(ITestOutputHelper output)
{
    [Fact]
    public void One()
    {
        if (Environment.GetEnvironmentVariable("ONE") is not { } one) return;
        string[] parts = one.Split(':');
        PlantCase each = PlantRuns.In(parts[0]).Cases[int.Parse(parts[1], CultureInfo.InvariantCulture)];
        RunModel model = each.Car.Check.Model(each.Run());
        Diagnosis d = Diagnosis.Of(each.Car.Check, model, null, CancellationToken.None)!;
        output.WriteLine(each.ShapeText + " " + each.Truth.GetRawText());
        output.WriteLine($"{d.Likeliest} none {d.NoFault} lack {d.Lack}; " + string.Join("; ", d.Suspects.Select(x => FormattableString.Invariant($"{x.Fault} {x.Probability:0.000} {x.Evidence:0.0} cost {x.Fit?.Cost:0}"))));
        RunFit best = d.Suspects.Where(s => s.Fit is not null).MinBy(s => s.Fit!.Cost)?.Fit ?? d.Sound;
        output.WriteLine("sound cost " + d.Sound.Cost);
        for (int q = 0; q < RunModel.Quantities; q++) output.WriteLine(FormattableString.Invariant($"{(RunQuantity)q} {best.Off[q]:0.00} tol  = {best.Value((RunQuantity)q):g4} ± {best.Error((RunQuantity)q):g3}"));
        double[] diff = new double[model.Comparisons];
        model.Differences(best.Off, diff);
        foreach (int row in Enumerable.Range(0, diff.Length).OrderByDescending(r => Math.Abs(diff[r])).Take(40).Order())
        {
            var (p, kind, spread) = model.Describe(row);
            var i = model.Inputs[p];
            output.WriteLine(FormattableString.Invariant($"{kind} pt {p} row {model.Points.FirstRows[p]} n {model.Points.RowCounts[p]} diff {diff[row]:0.0} spread {spread:g3}: {i.Speed * 60:0} rpm boost {i.Boost / 1e3:0.0} rail {i.Rail / 1e3:0.0} model {model.RailAt(p, best.Off).Rail / 1e3:0.0} surplus {model.RailAt(p, best.Off).Surplus / 1e3:0.0} volts {i.Volts:0.00} lam {i.Lambda:0.000} open {i.Open * 1e3:0.00} boostrate {i.BoostRate / 1e3:0.0} railrate {i.RailRate / 1e3:0.0} lamrate {i.LambdaRate:0.00} flow {i.Flow * 3.6e6:0.0}"));
        }
    }
}
