namespace FuelSizing.Fuzz.Mutating;

/// <summary>Pieces of text that readers of texts trip over.</summary>
internal static class Scraps
{
    /// <summary>Marks, halves of characters, characters that look like others, and beginnings of forms.</summary>
    public static readonly string[] Marks =
    [
        ",", "\"", "\"\"", "\n", "\r\n", "\r", ";", "\t", " ", ".", "-", "+", "=", "#", "{", "}", "[", "]", "{}", "[]", ":", "\\", "\\u0000",
        "\\ud800", "\\udc00", "\\u00", "\0", "\uFEFF", "\uFFFF", "\uFFFD", "\uD800", "\uDC00", "\uD83D\uDE97", "\u2028", "\u0085", "\u200B",
        "\u202E", "é", "e\u0301", "³", "−", "µ", "μ", "٣", "// ", "/*", "*/", "null", "true", "false", "<script>", "%s", "${x}", "\u001E", "\u001D",
    ];

    /// <summary>Numbers, and what passes for one.</summary>
    public static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "9", "12", "007", "0x1F", "1e3", "E9", "1e308", "1e309", "-1e999", "1e-308", "1e-400", "4.9e-324", "NaN", "-Infinity",
        "∞", "Inf", "1,5", "1.5.2", "1_000", "1 000", "٣", "½", ".", ".5", "5.", "+3", "2147483648", "-2147483649", "9223372036854775808",
        "99999999999999999999", "79228162514264337593543950336", "0.30000000000000004", "1.7976931348623157E+308", "0.1e", "1e", "1e+",
    ];
}
