using FuelSizing.Fuzz.Mutating;

namespace FuelSizing.Fuzz;

/// <summary>Makes an input smaller while it keeps what it is kept for.</summary>
internal static class Shrinking
{
    private const int MaximumTries = 1_500;

    /// <summary>A smaller input that still holds, found by taking pieces out: those that the reader's form has, then any.</summary>
    /// <param name="input">The input.</param>
    /// <param name="reader">Knows the form.</param>
    /// <param name="holds">Whether an input is still what is wanted.</param>
    public static byte[] Shrunk(byte[] input, FuzzedReader reader, Func<byte[], bool> holds)
    {
        int tries = 0;
        for (int piece = 0; tries < MaximumTries; tries++)
        {
            if (reader.Without(MutatedInput.Text(input), piece) is not { } text)
            {
                break;
            }

            byte[] smaller = System.Text.Encoding.UTF8.GetBytes(text);
            if (smaller.Length < input.Length && holds(smaller))
            {
                input = smaller;
            }
            else
            {
                piece++;
            }
        }

        tries = 0;
        for (int piece = input.Length / 2; piece > 0; piece /= 2)
        {
            for (int at = 0; at + piece <= input.Length && tries < MaximumTries;)
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
