using CsCheck;

namespace FuelSizing.Tests.Files;

/// <summary>Random mutations of a text, for tests of what reads it.</summary>
internal static class Mutating
{
    /// <summary>One edit: something put in, cut out, written over or repeated, or the text cut short.</summary>
    /// <param name="scraps">What may be put in.</param>
    /// <param name="further">Other edits, given the text, a place in it and a length or figure up to 60.</param>
    public static Gen<Func<string, string>> Edit(string[] scraps, params Func<string, int, int, string>[] further) => Gen.Select(
        Gen.Double.Unit, Gen.Int[0, 4 + further.Length], Gen.Int[0, 60], Gen.OneOfConst(scraps)).Select((share, kind, length, scrap) =>
    {
        string Apply(string text)
        {
            int at = (int)(share * text.Length);
            int end = Math.Min(text.Length, at + length);
            return kind switch
            {
                0 => text[..at] + scrap + text[at..],
                1 => text[..at] + text[end..],
                2 => text[..at] + scrap + text[Math.Min(text.Length, at + scrap.Length)..],
                3 => text[..at] + text[at..end] + text[at..],
                4 => length > 55 ? text[..at] : text[..at] + scrap + text[end..],
                _ => further[kind - 5](text, at, length),
            };
        }

        return (Func<string, string>)Apply;
    });
}
