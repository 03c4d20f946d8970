using System.Text;
using CsCheck;

namespace FuelSizing.Fuzz.Mutating;

/// <summary>
/// Inputs made from good ones: one of a pool, or the head of one and the tail of another, with up to four edits, written in
/// some encoding, and sometimes with bytes of it corrupted.
/// </summary>
internal static class MutatedInput
{
    /// <summary>Characters over which edits stop repeating and nesting.</summary>
    public const int Longest = 200_000;

    private static readonly UTF8Encoding Utf8 = new(false);

    /// <summary>Mutated inputs.</summary>
    /// <param name="good">Inputs to begin with, most of the time.</param>
    /// <param name="pool">Other inputs to begin with, good or bad.</param>
    /// <param name="words">Words that mean something to the reader.</param>
    /// <param name="edits">Edits that know the form of the inputs.</param>
    public static Gen<byte[]> Of(IReadOnlyList<byte[]> good, IReadOnlyList<byte[]> pool, string[] words, Func<string, int, int, string>[] edits)
    {
        string[] scraps = [.. Scraps.Marks, .. Scraps.Numbers, .. words];
        Gen<Func<string, string>> knowing = Gen.Select(Gen.Double.Unit, Gen.Int[0, edits.Length - 1], Gen.Int[0, 60])
            .Select((share, kind, figure) => (Func<string, string>)(text => edits[kind](text, (int)(share * text.Length), figure)));
        Gen<Func<string, string>> edit = Gen.Frequency(
            (690, knowing),
            (300, Tests.Files.Mutating.Edit(scraps)),
            (5, Overgrown.Edit));

        // Of one edit most is learnt: after a second the first is often out of sight.
        Gen<Func<string, string>[]> several = Gen.Frequency((60, edit.Array[1]), (25, edit.Array[2]), (15, edit.Array[3, 5]));
        Gen<string> begun = Gen.Frequency(
            (60, Gen.Int[0, good.Count - 1].Select(place => Text(good[place]))),
            (30, Gen.Int[0, pool.Count - 1].Select(place => Text(pool[place]))),
            (5, Gen.Select(Gen.Int[0, pool.Count - 1], Gen.Int[0, pool.Count - 1], Gen.Double.Unit, Gen.Double.Unit).Select((first, second, head, tail) =>
                Text(pool[first]) is var a && Text(pool[second]) is var b ? a[..(int)(head * a.Length)] + b[(int)(tail * b.Length)..] : string.Empty)),
            (2, Gen.OneOfConst(scraps).Array[0, 60].Select(string.Concat)));
        Gen<byte[]> mutated = Gen.Select(begun, several, Gen.Int[0, 299])
            .Select((text, made, encoding) => Encoded(made.Aggregate(text, (now, change) => change(now)), encoding));
        return Gen.Frequency(
            (970, mutated),
            (25, Gen.Select(mutated, MutatedBytes.Edit.Array[1, 4]).Select((bytes, made) => made.Aggregate(bytes, (now, change) => change(now)))),
            (5, Gen.Byte.Array[0, 400]));
    }

    /// <summary>An input's text, as its byte order mark says.</summary>
    public static string Text(byte[] input) => input switch
    {
        [0xFF, 0xFE, ..] => Encoding.Unicode.GetString(input, 2, input.Length - 2),
        [0xEF, 0xBB, 0xBF, ..] => Utf8.GetString(input, 3, input.Length - 3),
        _ => Utf8.GetString(input),
    };

    private static byte[] Encoded(string text, int encoding) => encoding switch
    {
        < 3 => [.. Encoding.UTF8.Preamble, .. Utf8.GetBytes(text)],
        < 6 => Utf16(text),
        6 => [.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes(text)],
        7 => [.. Encoding.UTF32.Preamble, .. Encoding.UTF32.GetBytes(text)],
        8 => Encoding.Latin1.GetBytes(text),
        < 30 when text.AsSpan().ContainsAnyInRange('\uD800', '\uDFFF') => Utf16(text),
        _ => Utf8.GetBytes(text),
    };

    // Character by character, so that halves of surrogate pairs stay.
    private static byte[] Utf16(string text) =>
        [0xFF, 0xFE, .. System.Runtime.InteropServices.MemoryMarshal.AsBytes(text.AsSpan())];
}
