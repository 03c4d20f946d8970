using System.Globalization;

namespace FuelSizing.Numerics;

/// <summary>A number of a working, and the numbers that it was made of.</summary>
internal sealed class Term
{
    private const int SumRank = 1;
    private const int ProductRank = 2;
    private const int PowerRank = 3;
    private const int WholeRank = 4;

    private readonly TermKind _kind;
    private readonly Term[] _parts;

    private Term(TermKind kind, double value, Term[] parts, string? symbol) =>
        (_kind, Value, _parts, Symbol) = (kind, value, parts, symbol);

    /// <summary>What later steps write in its place; given to a number that has had a step of its own.</summary>
    public string? Symbol { get; set; }

    /// <summary>The number, in SI units.</summary>
    public double Value { get; }

    /// <summary>A number that stands in an equation.</summary>
    public static Term Constant(double value) => new(TermKind.Number, value, [], null);

    /// <summary>A number that comes from outside.</summary>
    public static Term Given(string symbol, double value) => new(TermKind.Number, value, [], symbol);

    /// <summary>A number made of others.</summary>
    public static Term Of(TermKind kind, double value, Term[] parts) => new(kind, value, parts, null);

    /// <summary>True for a constant of that value, which may then fall out of a sum or a product.</summary>
    public bool Is(double value) => Symbol is null && _kind == TermKind.Number && Value == value;

    /// <summary>True where the number was made of others.</summary>
    public bool IsMade => _parts.Length > 0;

    /// <summary>How it was made, with symbols where there are any.</summary>
    public string InSymbols() => Body(named: true).Text;

    /// <summary>How it was made, with numbers in the symbols' places.</summary>
    public string InNumbers() => Body(named: false).Text;

    /// <summary>A number as a working writes it.</summary>
    public static string Text(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value == 0 ? "0" : "∞";
        }

        // Of the number as it is rounded: 99,999.7 is 1·10^5.
        int exponent = int.Parse(value.ToString("E4", CultureInfo.InvariantCulture).AsSpan()[^4..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        string text = exponent is >= -3 and < 5
            ? value.ToString("G5", CultureInfo.InvariantCulture)
            : $"{(value / Math.Pow(10, exponent)).ToString("0.####", CultureInfo.InvariantCulture)}·10^{exponent.ToString(CultureInfo.InvariantCulture)}";
        return text.Replace('-', '−');
    }

    private (string Text, int Rank) Write(bool named) =>
        Symbol is null ? Body(named)
        : named ? (Symbol, WholeRank)
        : Plain();

    // A number written with a power of ten is a product, and a negative one a difference.
    private (string Text, int Rank) Plain()
    {
        string text = Text(Value);
        return (text, Value < 0 ? SumRank : text.Contains('·') ? ProductRank : WholeRank);
    }

    private (string Text, int Rank) Body(bool named)
    {
        string At(int part, int rank)
        {
            (string text, int own) = _parts[part].Write(named);
            return own >= rank ? text : $"({text})";
        }

        // Two signs side by side would be read as one.
        static string Signed(string text) => text[0] == '−' ? $"({text})" : text;

        return _kind switch
        {
            // A constant under zero is taken off.
            TermKind.Sum when _parts[1] is { _kind: TermKind.Number, Symbol: null, Value: < 0 } off =>
                ($"{At(0, SumRank)} − {Text(-off.Value)}", SumRank),
            TermKind.Sum => ($"{At(0, SumRank)} + {Signed(At(1, SumRank))}", SumRank),
            TermKind.Difference => ($"{At(0, SumRank)} − {At(1, ProductRank)}", SumRank),
            TermKind.Product => ($"{At(0, ProductRank)} · {At(1, ProductRank)}", ProductRank),
            TermKind.Quotient => ($"{At(0, ProductRank)}/{At(1, PowerRank)}", ProductRank),
            TermKind.Root => ($"√({_parts[0].Write(named).Text})", WholeRank),
            TermKind.Logarithm => ($"ln({_parts[0].Write(named).Text})", WholeRank),
            TermKind.Minimum => ($"min({_parts[0].Write(named).Text}; {_parts[1].Write(named).Text})", WholeRank),
            TermKind.Maximum => ($"max({_parts[0].Write(named).Text}; {_parts[1].Write(named).Text})", WholeRank),
            TermKind.Exponential => Power(named),
            _ => Plain(),
        };
    }

    // A power is made of the exponential of a product with a logarithm.
    private (string Text, int Rank) Power(bool named)
    {
        Term inner = _parts[0];
        if (inner is { _kind: TermKind.Product, Symbol: null } && inner._parts[1] is { _kind: TermKind.Logarithm, Symbol: null } logarithm)
        {
            (string root, int own) = logarithm._parts[0].Write(named);
            (string exponent, int exponentRank) = inner._parts[0].Write(named);
            return (
                $"{(own >= WholeRank ? root : $"({root})")}^{(exponentRank >= WholeRank ? exponent : $"({exponent})")}",
                PowerRank);
        }

        return ($"exp({inner.Write(named).Text})", WholeRank);
    }
}

/// <summary>What makes a term of a working.</summary>
internal enum TermKind
{
    /// <summary>A number that comes from outside or stands in the equation.</summary>
    Number,

    /// <summary>a + b.</summary>
    Sum,

    /// <summary>a − b.</summary>
    Difference,

    /// <summary>a · b.</summary>
    Product,

    /// <summary>a/b.</summary>
    Quotient,

    /// <summary>√a.</summary>
    Root,

    /// <summary>e to the power a.</summary>
    Exponential,

    /// <summary>ln a.</summary>
    Logarithm,

    /// <summary>The smaller of two.</summary>
    Minimum,

    /// <summary>The larger of two.</summary>
    Maximum,
}
