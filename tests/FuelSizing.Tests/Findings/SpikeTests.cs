using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Findings;

public class SpikeTests(Xunit.Abstractions.ITestOutputHelper o)
{
    [Fact]
    public void Look()
    {
        PulledWren healthy = PulledWren.With(RunFault.None, 1);
        foreach (int i in new[] { 0, 47, 60, 95, 110, 125, 143, 150, 160, 170, 180, 191, 200 }.Where(i => i < healthy.Solved.Count))
        {
            OperatingResult r = PulledWren.Plan.Solve(healthy.Solved[i].Point);
            o.WriteLine($"{r.Point} rail {r.RailGauge.Kilopascals:F0} {r.RailState} flow {r.InjectedFlow.LitersPerHour:F0} pump {r.PumpFlow?.LitersPerHour:F0} duty {r.DutyCycle?.Percent:F0} V {r.Circuit.Pumps[0].Voltage.Volts:F2}");
        }
        int cars = int.Parse(Environment.GetEnvironmentVariable("CARS") ?? "10"), noise = int.Parse(Environment.GetEnvironmentVariable("NOISE") ?? "4");
        var total = global::System.Diagnostics.Stopwatch.StartNew();
        long model = 0, solve = 0, find = 0;
        foreach (RunFault f in new[] { RunFault.None, RunFault.WeakPump, RunFault.VoltageDrop, RunFault.CloggedFilter, RunFault.WrongGain, RunFault.WrongOnset, RunFault.WrongInjectorSize, RunFault.RailSensorOffset, RunFault.ManifoldSensorOffset })
        {
            Dictionary<string, int> named = [];
            double least = 1e9, lack = 0;
            for (int c = 0; c < cars; c++)
            {
                var w = global::System.Diagnostics.Stopwatch.StartNew();
                PulledWren car = PulledWren.With(f, c);
                solve += w.ElapsedTicks;
                for (int n = 0; n < noise; n++)
                {
                    RecordedRun run = car.Recorded(c * 100 + n);
                    w.Restart();
                    RunModel m = PulledWren.Check.Model(run);
                    model += w.ElapsedTicks;
                    Diagnosis d = Diagnosis.Of(PulledWren.Check, m);
                    find += w.ElapsedTicks;
                    string name = d.Likeliest + (d.Rivals.Any() ? "+" + string.Join("+", d.Rivals.Select(r => r.Fault)) : "");
                    named[name] = named.GetValueOrDefault(name) + 1;
                    least = Math.Min(least, d.EvidenceOf(d.Hypotheses[0]));
                    lack += d.Lack / cars / noise;
                    if (name != f.ToString() && Environment.GetEnvironmentVariable("WHY") == "1")
                    {
                        o.WriteLine($"   {f} car {c} sev {car.Severity:F2} {string.Join(", ", d.Hypotheses.Take(4).Select(h => $"{h.Fault} {h.Evidence:F1}"))} cost {d.Sound.Cost:F0}/{d.Model.Comparisons} V {car.SupplyVolts:F2} off {string.Join(" ", car.Off.Zip(PulledWren.Check.ToleranceOf(), (a, b) => (a / b).ToString("F1")))}");
                    }
                }
            }
            o.WriteLine($"{f}: {string.Join(", ", named.Select(p => p.Key + " " + p.Value))}  least {least:F0} lack {lack:F2}");
        }
        double ms = 1000.0 / global::System.Diagnostics.Stopwatch.Frequency;
        o.WriteLine($"total {total.ElapsedMilliseconds} model {model * ms:F0} solve {solve * ms:F0} find {find * ms:F0} per run {find * ms / cars / noise / 9:F2}");
    }
}
