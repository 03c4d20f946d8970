using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Evaluates numbered samples on several threads.</summary>
/// <remarks>
/// Threads take blocks of samples in order and finish each block they took. So what is done when a run is stopped is always
/// the first so many samples: a shorter run, not a random pick.
/// </remarks>
internal static class SampleBlocks
{
    /// <summary>Samples between two looks at the cancellation.</summary>
    public const int Size = 64;

    /// <summary>Runs until all samples are done or the run is stopped.</summary>
    /// <returns>How many samples are done, counted from the first.</returns>
    public static int Run(
        Sampling sampling, Action<int> evaluate, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        (int samples, int threads) = (sampling.Samples, sampling.Threads);
        int blocks = ((samples - 1) / Size) + 1;
        int taken = 0;
        int done = 0;
        object gate = new();

        void Work(int thread)
        {
            while (!cancellation.IsCancellationRequested)
            {
                int block = Interlocked.Increment(ref taken) - 1;
                if (block >= blocks)
                {
                    return;
                }

                int end = Math.Min(samples, (block + 1) * Size);
                for (int sample = block * Size; sample < end; sample++)
                {
                    evaluate(sample);
                }

                if (progress is not null)
                {
                    // Reports never go back.
                    lock (gate)
                    {
                        done += end - (block * Size);
                        progress.Report(Ratio.FromDecimalFractions((double)done / samples));
                    }
                }
            }
        }

        if (threads == 1)
        {
            Work(0);
        }
        else
        {
            Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, Work);
        }

        return Math.Min(samples, Math.Min(taken, blocks) * Size);
    }
}
