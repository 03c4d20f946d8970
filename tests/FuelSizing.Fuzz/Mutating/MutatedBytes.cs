using CsCheck;

namespace FuelSizing.Fuzz.Mutating;

/// <summary>Edits of bytes, whatever they mean.</summary>
internal static class MutatedBytes
{
    private static readonly byte[][] Telling =
    [
        [0], [0xFF], [0x80], [0xC0, 0x80], [0xED, 0xA0, 0x80], [0xF4, 0x90, 0x80, 0x80], [0xEF, 0xBB, 0xBF], [0xFF, 0xFE], [0xFE, 0xFF], [0xE2, 0x82], [0x1A], [0x1F, 0x8B],
    ];

    /// <summary>One edit: a bit turned, a byte changed, some cut out or swapped, or telling ones put in.</summary>
    public static readonly Gen<Func<byte[], byte[]>> Edit = Gen.Select(
        Gen.Double.Unit, Gen.Int[0, 5], Gen.Byte, Gen.Int[1, 60], Gen.OneOfConst(Telling)).Select((share, kind, value, length, telling) =>
    {
        byte[] Apply(byte[] bytes)
        {
            if (bytes.Length == 0)
            {
                return telling;
            }

            int at = Math.Min((int)(share * bytes.Length), bytes.Length - 1);
            int end = Math.Min(bytes.Length, at + length);
            switch (kind)
            {
                case 0:
                    byte[] turned = [.. bytes];
                    turned[at] ^= (byte)(1 << (value & 7));
                    return turned;
                case 1:
                    byte[] changed = [.. bytes];
                    changed[at] = value;
                    return changed;
                case 2:
                    return [.. bytes[..at], .. bytes[end..]];
                case 3:
                    return [.. bytes[..at], .. telling, .. bytes[at..]];
                case 4:
                    return bytes[..at];
                default:
                    byte[] swapped = [.. bytes];
                    Array.Reverse(swapped, at, end - at);
                    return swapped;
            }
        }

        return (Func<byte[], byte[]>)Apply;
    });
}
