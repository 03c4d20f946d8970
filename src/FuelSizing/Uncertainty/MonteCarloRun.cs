using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Draws, solves and keeps samples.</summary>
internal static class MonteCarloRun
{
    /// <summary>Runs until all samples are done or the run is stopped.</summary>
    public static MonteCarloResult Of(
        UncertainSystem system, Sampling sampling, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        int samples = sampling.Samples;
        SampleTable table = new([.. system.NominalResult.Margins.Select(margin => margin.Part)], system.NominalResults.Count, samples);
        uint[] streams = system.Streams;
        int done = SampleBlocks.Run(
            sampling,
            sample =>
            {
                Span<double> point = stackalloc double[streams.Length];
                CubeSample.Draw(sampling.Seed, sample, 0, streams, point);
                table.Keep(sample, system.At(point));
            },
            progress,
            cancellation);
        return done > 0
            ? new(system, sampling, done, table)
            : throw new OperationCanceledException("The run was stopped before a sample was done.", cancellation);
    }
}
