namespace FuelSizing.Uncertainty;

/// <summary>
/// Random numbers that are a function of where they are used, not of what was drawn before: Philox4x32-10, so that a sample
/// is the same on any thread and in any order.
/// </summary>
/// <remarks>
/// Salmon, Moraes, Dror and Shaw, Parallel random numbers: as easy as 1, 2, 3, SC '11 (2011),
/// doi:10.1145/2063384.2063405. The seed is the key; sample, stream and set make up the counter.
/// </remarks>
internal static class CountedRandom
{
    private const uint FirstMultiplier = 0xD2511F53;
    private const uint SecondMultiplier = 0xCD9E8D57;
    private const uint FirstStep = 0x9E3779B9;
    private const uint SecondStep = 0xBB67AE85;
    private const int Rounds = 10;

    /// <summary>A number over 0 and under 1, all of its 2⁵² values equally likely.</summary>
    /// <param name="seed">Of the whole run.</param>
    /// <param name="sample">Which sample.</param>
    /// <param name="stream">Which input.</param>
    /// <param name="set">Which of several independent sets.</param>
    public static double At(long seed, int sample, uint stream, uint set)
    {
        (uint high, uint low, _, _) = Block(((uint)sample, stream, set, 0), ((uint)seed, (uint)(seed >> 32)));
        ulong bits = ((ulong)high << 32) | low;
        return ((bits >> 12) + 0.5) * (1.0 / (1UL << 52));
    }

    /// <summary>One block of Philox4x32-10.</summary>
    public static (uint X0, uint X1, uint X2, uint X3) Block(
        (uint X0, uint X1, uint X2, uint X3) counter, (uint K0, uint K1) key)
    {
        for (int round = 0; round < Rounds; round++)
        {
            ulong first = (ulong)FirstMultiplier * counter.X0;
            ulong second = (ulong)SecondMultiplier * counter.X2;
            counter = (
                (uint)(second >> 32) ^ counter.X1 ^ key.K0,
                (uint)second,
                (uint)(first >> 32) ^ counter.X3 ^ key.K1,
                (uint)first);
            key = (unchecked(key.K0 + FirstStep), unchecked(key.K1 + SecondStep));
        }

        return counter;
    }
}
