using System.Globalization;
using BenchmarkDotNet.Running;
using FuelSizing.Benchmarks;

switch (args)
{
    case ["write-log", var path, var rows]:
        LongRun.Write(path, int.Parse(rows, CultureInfo.InvariantCulture));
        break;
    case ["read-log", var path]:
        LongRun.Read(path);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(DemandBatch).Assembly).Run(args);
        break;
}
