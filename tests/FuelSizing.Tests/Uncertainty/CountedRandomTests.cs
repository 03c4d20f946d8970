using FuelSizing.Uncertainty;

namespace FuelSizing.Tests.Uncertainty;

public class CountedRandomTests
{
    /// <summary>The known-answer vectors that the generator's authors publish with it (Random123, kat_vectors).</summary>
    [Fact]
    public void Block_OfThePublishedCountersAndKeys_IsThePublishedAnswer()
    {
        Assert.Equal(
            (0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u),
            CountedRandom.Block((0, 0, 0, 0), (0, 0)));
        Assert.Equal(
            (0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu),
            CountedRandom.Block(
                (uint.MaxValue, uint.MaxValue, uint.MaxValue, uint.MaxValue), (uint.MaxValue, uint.MaxValue)));
        Assert.Equal(
            (0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u),
            CountedRandom.Block(
                (0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344), (0xa4093822, 0x299f31d0)));
    }

    [Fact]
    public void Numbers_OfManySamples_AreUniformAndUncorrelated()
    {
        const int Samples = 200_000;
        double sum = 0;
        double squares = 0;
        double streams = 0;
        double sets = 0;
        double seeds = 0;
        double next = 0;
        for (int sample = 0; sample < Samples; sample++)
        {
            double x = CountedRandom.At(7, sample, 256, 0);
            Assert.InRange(x, double.Epsilon, 1 - 1e-16);
            sum += x;
            squares += (x - 0.5) * (x - 0.5);
            streams += (x - 0.5) * (CountedRandom.At(7, sample, 257, 0) - 0.5);
            sets += (x - 0.5) * (CountedRandom.At(7, sample, 256, 1) - 0.5);
            seeds += (x - 0.5) * (CountedRandom.At(8, sample, 256, 0) - 0.5);
            next += (x - 0.5) * (CountedRandom.At(7, sample + 1, 256, 0) - 0.5);
        }

        // Variances: x 1/12, (x − ½)² 1/180, product of two independent ones 1/144. Four standard errors.
        Assert.InRange(sum / Samples, 0.5 - Error(1.0 / 12), 0.5 + Error(1.0 / 12));
        Assert.InRange((squares / Samples) - (1.0 / 12), -Error(1.0 / 180), Error(1.0 / 180));
        foreach (double product in new[] { streams, sets, seeds, next })
        {
            Assert.InRange(product / Samples, -Error(1.0 / 144), Error(1.0 / 144));
        }

        static double Error(double variance) => 4 * Math.Sqrt(variance / Samples);
    }
}
