using System.Collections.Concurrent;
using FuelSizing.Uncertainty;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>Numbered samples in blocks of 64, on any number of threads: each once, and of a stopped run the first ones.</summary>
public class SampleBlocksTests
{
    [Theory]
    [InlineData(16)]
    [InlineData(63)]
    [InlineData(64)]
    [InlineData(65)]
    [InlineData(128)]
    [InlineData(129)]
    [InlineData(1000)]
    public void Samples_OfARun_AreEachEvaluatedOnce(int samples)
    {
        foreach (int threads in new[] { 1, 3 })
        {
            ConcurrentQueue<int> evaluated = [];
            List<double> shares = [];
            int done = SampleBlocks.Run(Sampling.Of(samples, 1, threads), evaluated.Enqueue, new Listener(share => shares.Add(share.DecimalFractions)), default);
            Assert.Equal(samples, done);
            Assert.Equal(Enumerable.Range(0, samples), evaluated.Order());

            // After each block the share that is done: of blocks that end in any order where there are threads.
            int blocks = (int)Math.Ceiling(samples / 64.0);
            Assert.Equal(blocks, shares.Count);
            Assert.Equal(1, shares[^1]);
            Assert.Equal(shares.Order(), shares);
            if (threads == 1)
            {
                Assert.Equal(Enumerable.Range(1, blocks).Select(block => Math.Min(samples, 64.0 * block) / samples), shares);
                Assert.Equal(Enumerable.Range(0, samples), evaluated);
            }

            Assert.Equal(samples, SampleBlocks.Run(Sampling.Of(samples, 1, threads), _ => { }, null, default));
        }
    }

    /// <summary>A block that was begun is finished: stopped at sample 70, the run has the 128 of two blocks, or all where there are no more.</summary>
    [Theory]
    [InlineData(1000, 70, 128)]
    [InlineData(1000, 63, 64)]
    [InlineData(1000, 64, 128)]
    [InlineData(100, 70, 100)]
    [InlineData(128, 127, 128)]
    public void Run_ThatIsStopped_EndsWithItsBlock(int samples, int at, int done)
    {
        using CancellationTokenSource stop = new();
        List<int> evaluated = [];
        Assert.Equal(
            done,
            SampleBlocks.Run(
                Sampling.Of(samples),
                sample =>
                {
                    evaluated.Add(sample);
                    if (sample == at)
                    {
                        stop.Cancel();
                    }
                },
                null,
                stop.Token));
        Assert.Equal(Enumerable.Range(0, done), evaluated);
        Assert.Equal(0, SampleBlocks.Run(Sampling.Of(samples), evaluated.Add, null, stop.Token));
        Assert.Equal(0, SampleBlocks.Run(Sampling.Of(samples, 1, 3), evaluated.Add, null, stop.Token));
        Assert.Equal(done, evaluated.Count);
    }

    /// <summary>With several threads too, what a stopped run has done are the first samples, without a hole.</summary>
    [Fact]
    public void Run_StoppedOnSeveralThreads_HasTheFirstSamples()
    {
        using CancellationTokenSource stop = new();
        ConcurrentQueue<int> evaluated = [];
        int done = SampleBlocks.Run(
            Sampling.Of(100_000, 1, 4),
            sample =>
            {
                evaluated.Enqueue(sample);
                if (sample == 700)
                {
                    stop.Cancel();
                }
            },
            null,
            stop.Token);
        Assert.InRange(done, 704, 99_999);
        Assert.Equal(0, done % 64);
        Assert.Equal(Enumerable.Range(0, done), evaluated.Order());
    }

    /// <summary>One thread is the caller's own.</summary>
    [Fact]
    public void Run_OnOneThread_StaysOnIt()
    {
        HashSet<int> threads = [];
        SampleBlocks.Run(Sampling.Of(1000), _ => threads.Add(Environment.CurrentManagedThreadId), null, default);
        Assert.Equal([Environment.CurrentManagedThreadId], threads);
    }

    /// <summary>
    /// The first two words of a block, 52 bits of them, in the middle of their stretch: (0x6627e8d5e169c + ½)/2⁵² of the published block of zeros. The seed's
    /// halves are the key, sample, stream and set the counter.
    /// </summary>
    [Fact]
    public void Number_OfSeedSampleStreamAndSet_IsMadeOfThePublishedBlock()
    {
        Assert.Equal((0x6627e8d5e169cL + 0.5) / Math.Pow(2, 52), CountedRandom.At(0, 0, 0, 0));
        (uint high, uint low, _, _) = CountedRandom.Block((0x243f6a88, 0x85a308d3, 0x13198a2e, 0), (0xa4093822, 0x299f31d0));
        Assert.Equal(
            ((((ulong)high << 32) + low) / 4096 + 0.5) / Math.Pow(2, 52),
            CountedRandom.At(0x299f31d0a4093822, 0x243f6a88, 0x85a308d3, 0x13198a2e));
        (high, low, _, _) = CountedRandom.Block((5, 6, 7, 0), (uint.MaxValue - 1, uint.MaxValue));
        Assert.Equal(((((ulong)high << 32) + low) / 4096 + 0.5) / Math.Pow(2, 52), CountedRandom.At(-2, 5, 6, 7));
        double[] point = new double[3];
        CubeSample.Draw(9, 4, 1, [30, 20, 10], point);
        Assert.Equal([CountedRandom.At(9, 4, 30, 1), CountedRandom.At(9, 4, 20, 1), CountedRandom.At(9, 4, 10, 1)], point);
    }
}
