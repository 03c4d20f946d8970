namespace FuelSizing.Fuzz;

/// <summary>Makes an input smaller while it keeps what it is kept for.</summary>
internal static class Shrinking
{
    private const int MostTries = 800;

    /// <summary>A smaller input that still holds, found by taking ever smaller pieces out.</summary>
    public static byte[] Shrunk(byte[] input, Func<byte[], bool> holds)
    {
        int tries = 0;
        for (int piece = input.Length / 2; piece > 0; piece /= 2)
        {
            for (int at = 0; at + piece <= input.Length && tries < MostTries;)
            {
                byte[] smaller = [.. input[..at], .. input[(at + piece)..]];
                tries++;
                if (holds(smaller))
                {
                    input = smaller;
                }
                else
                {
                    at += piece;
                }
            }
        }

        return input;
    }
}
