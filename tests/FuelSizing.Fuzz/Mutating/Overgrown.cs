using CsCheck;

namespace FuelSizing.Fuzz.Mutating;

/// <summary>Edits that make a text far larger or deeper than anybody would write it.</summary>
internal static class Overgrown
{
    private static readonly string[] Grains =
    [
        "[", "{\"a\":", "{\"parallel\":[", "(", "-", "!", "9", " ", "\n", ",", "\"", "\"\"", "a", "\\", "é", "\uD83D\uDE97", "\0", "0.", "1e", "{}", "[],", "/*", "#", "$\"{",
    ];

    /// <summary>One edit: one thing put in over and over, or the whole text repeated.</summary>
    public static readonly Gen<Func<string, string>> Edit = Gen.Select(
        Gen.Double.Unit, Gen.Int[0, 9], Gen.OneOfConst(Grains), Gen.OneOfConst(70, 300, 1_500, 20_000, 70_000)).Select((share, kind, grain, times) =>
    {
        string Apply(string text)
        {
            if (text.Length + (grain.Length * times) > MutatedInput.Longest)
            {
                return text;
            }

            int at = (int)(share * text.Length);
            return kind == 0
                ? string.Concat(Enumerable.Repeat(text, Math.Min(times, 1 + (20_000 / (text.Length + 1)))))
                : text[..at] + string.Concat(Enumerable.Repeat(grain, times)) + text[at..];
        }

        return (Func<string, string>)Apply;
    });
}
