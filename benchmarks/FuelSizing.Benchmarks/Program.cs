using BenchmarkDotNet.Running;
using FuelSizing.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(DemandBatch).Assembly).Run(args);
