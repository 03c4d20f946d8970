using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using FuelSizing.Engines;
using FuelSizing.Logs;

namespace FuelSizing.Benchmarks;

/// <summary>Reading a log of ten columns, nine of them mapped: by the reader with all its checks, and by splitting lines.</summary>
[MemoryDiagnoser]
public class RunReading
{
    private byte[] _file = [];

    [Params(100_000)]
    public int Rows { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        using MemoryStream file = new();
        using (StreamWriter writer = new(file, Encoding.UTF8, leaveOpen: true))
        {
            InventedLog.Write(writer, Rows);
        }

        _file = file.ToArray();
    }

    [Benchmark(Baseline = true, Description = "split and parse, no checks")]
    public double SplitAndParse()
    {
        using StreamReader file = new(new MemoryStream(_file));
        double sum = 0;
        file.ReadLine();
        while (file.ReadLine() is { } line)
        {
            string[] cells = line.Split(',');
            for (int i = 0; i < 9; i++)
            {
                sum += double.Parse(cells[i], CultureInfo.InvariantCulture);
            }
        }

        return sum;
    }

    [Benchmark(Description = "run reader")]
    public double Reader()
    {
        using RunReader reader = RunReader.Open(new MemoryStream(_file), InventedLog.Mapping, Atmosphere.Standard);
        double sum = 0;
        while (reader.TryRead(out RunRow row))
        {
            for (Channel channel = Channel.Time; channel <= Channel.Power; channel++)
            {
                sum += row[channel];
            }
        }

        return sum;
    }
}
