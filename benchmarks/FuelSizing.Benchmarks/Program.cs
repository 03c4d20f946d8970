using System.Globalization;
using BenchmarkDotNet.Running;
using FuelSizing.Benchmarks;

PointPeers.FindLibraries();
switch (args)
{
    case ["points", var points]:
        PointContest.Run(int.Parse(points, CultureInfo.InvariantCulture));
        break;
    case ["solve"]:
        SolveContest.Run();
        break;
    case ["margins", var setup]:
        MarginReads.Run(setup);
        break;
    case ["runs"]:
        WholeRuns.Run();
        break;
    case ["circuits"]:
        CircuitContest.Run();
        break;
    case ["built"]:
        BuiltContest.Run();
        break;
    case ["built", var part]:
        BuiltContest.Run(part);
        break;
    case ["points-growing", var maximum]:
        PointContest.Grow(int.Parse(maximum, CultureInfo.InvariantCulture));
        break;
    case ["write-log", var path, var rows]:
        LongRun.Write(path, int.Parse(rows, CultureInfo.InvariantCulture));
        break;
    case ["read-log", var path]:
        LongRun.Read(path);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(PointRun).Assembly).Run(args);
        break;
}
