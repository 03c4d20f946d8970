using System.Text;
using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>Sets a formula, as workings write it in one line of text, as MathML.</summary>
/// <remarks>
/// <para>Sums, differences, products, quotients, powers (also ² and ³), roots, and <see cref="_functions"/> of numbers and symbols. A formula is set in pieces, each an
/// element of its own, so that a narrow page can break the line before a sign; each piece has its text beside it, and put together with spaces these are the line that was given.</para>
/// <para>What cannot be read as a formula is set as plain text: nothing is lost.</para>
/// </remarks>
internal sealed class Formula
{
    // Longer parts of a fraction, a root or a power are written in the line, where it can break.
    private const int LongestPart = 26;

    // The friction factor of Colebrook and White has no closed form: its equation stands by that name in others.
    private static readonly string[] _functions = ["min", "max", "exp", "ln", "log10", "Σ", "ColebrookWhite"];

    private readonly string _text;
    private int _at;

    private Formula(string text) => _text = text;

    private enum Kind
    {
        Number,
        Symbol,
        Sum,
        Difference,
        Product,
        Quotient,
        Negative,
        Power,
        Root,
        Function,
        Bracket,
    }

    /// <summary>The formula's pieces.</summary>
    /// <param name="text">As workings write it; may begin with an equals sign.</param>
    /// <returns>One or more elements <c>math</c>.</returns>
    public static IReadOnlyList<XElement> Set(string text)
    {
        _ = TrySet(text, out IReadOnlyList<XElement> set);
        return set;
    }

    /// <summary>The formula's pieces, and whether it was read as one.</summary>
    /// <param name="text">As workings and equations write it; may begin with an equals sign, or with one of an inequality.</param>
    /// <param name="set">One or more elements <c>math</c>; plain text in one of them if it was not read.</param>
    public static bool TrySet(string text, out IReadOnlyList<XElement> set)
    {
        Pieces pieces = new();
        string rest = text;
        if (text.Length > 1 && text[0] is '=' or '<' or '≤' or '>' or '≥' && text[1] == ' ')
        {
            pieces.Add(Operator(text[..1]), text[..2]);
            rest = text[2..];
        }

        bool isRead = new Formula(rest).TryRead(out Node? node);
        if (isRead)
        {
            Write(node!, pieces);
        }
        else
        {
            pieces.Add(new XElement("mtext", rest), rest);
        }

        set = pieces.Elements();
        return isRead;
    }

    private bool TryRead(out Node? node)
    {
        node = Sum();
        return node is not null && _at == _text.Length;
    }

    private Node? Sum()
    {
        Node? sum = Product();
        while (sum is not null)
        {
            Kind? sign = Take(" + ") ? Kind.Sum : Take(" − ") ? Kind.Difference : null;
            if (sign is not { } kind)
            {
                return sum;
            }

            sum = Product() is { } other ? new(kind, string.Empty, [sum, other]) : null;
        }

        return null;
    }

    private Node? Product()
    {
        Node? product = Signed();
        while (product is not null)
        {
            Kind? sign = Take(" · ") ? Kind.Product : Take("/") ? Kind.Quotient : null;
            if (sign is not { } kind)
            {
                return product;
            }

            product = Signed() is { } other ? new(kind, string.Empty, [product, other]) : null;
        }

        return null;
    }

    private Node? Signed() => !Take("−") ? Power()
        : Power() is { } other ? new(Kind.Negative, string.Empty, [other])
        : null;

    private Node? Power()
    {
        Node? root = Primary();
        if (root is not null and not { Kind: Kind.Number } && (Take("²") ? "²" : Take("³") ? "³" : null) is { } sign)
        {
            return new(Kind.Power, sign, [root, new(Kind.Number, sign == "²" ? "2" : "3", [])]);
        }

        if (root is null || root.Kind == Kind.Number || !Take("^"))
        {
            // Of a number the power of ten is part.
            return root is { Kind: Kind.Number } && !root.Text.Contains('^', StringComparison.Ordinal) && Take("^") ? Raised(root) : root;
        }

        return Raised(root);
    }

    private Node? Raised(Node root) => Signed() is { } exponent ? new(Kind.Power, string.Empty, [root, exponent]) : null;

    private Node? Primary()
    {
        if (Take("√("))
        {
            return Sum() is { } square && Take(")") ? new(Kind.Root, string.Empty, [square]) : null;
        }

        // Of one number or symbol: √3, √f.
        if (Take("√"))
        {
            return Primary() is { } plain ? new(Kind.Root, "√", [plain]) : null;
        }

        if (Take("("))
        {
            return Sum() is { } inner && Take(")") ? new(Kind.Bracket, string.Empty, [inner]) : null;
        }

        if (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] == '∞'))
        {
            return new(Kind.Number, Number(), []);
        }

        int start = _at;
        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || char.GetUnicodeCategory(_text[_at]) == System.Globalization.UnicodeCategory.NonSpacingMark || _text[_at] is '_' or '′' || IsComma()))
        {
            _at++;
        }

        string name = _text[start.._at];
        return name.Length == 0 ? null
            : _functions.Contains(name) ? Function(name)
            : new(Kind.Symbol, name, []);
    }

    // Δp_f,2: a comma belongs to the symbol where a digit follows at once.
    private bool IsComma() => _text[_at] == ',' && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at + 1]);

    private Node? Function(string name)
    {
        if (!Take("("))
        {
            return null;
        }

        List<Node> given = [];
        do
        {
            if (Sum() is not { } one)
            {
                return null;
            }

            given.Add(one);
        }
        while (Take("; "));
        return Take(")") ? new(Kind.Function, name, given) : null;
    }

    private string Number()
    {
        int start = _at;
        while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] is '.' or '∞'))
        {
            _at++;
        }

        if (_at + 3 < _text.Length && _text.AsSpan(_at).StartsWith("·10^", StringComparison.Ordinal))
        {
            _at += 4;
            _at += _at < _text.Length && _text[_at] == '−' ? 1 : 0;
            while (_at < _text.Length && char.IsAsciiDigit(_text[_at]))
            {
                _at++;
            }
        }

        return _text[start.._at];
    }

    private bool Take(string sign)
    {
        bool there = _text.AsSpan(_at).StartsWith(sign, StringComparison.Ordinal);
        _at += there ? sign.Length : 0;
        return there;
    }

    private static void Write(Node node, Pieces to)
    {
        switch (node.Kind)
        {
            case Kind.Number:
                to.Add(NumberOf(node.Text), node.Text);
                break;
            case Kind.Symbol:
                to.Add(SymbolOf(node.Text), node.Text);
                break;
            case Kind.Sum or Kind.Difference or Kind.Product:
                string sign = node.Kind == Kind.Sum ? "+" : node.Kind == Kind.Difference ? "−" : "·";
                Write(node.Parts[0], to);
                to.Break();
                to.Add(Operator(sign), $"{sign} ");
                Write(node.Parts[1], to);
                break;
            case Kind.Quotient when node.Parts[0] is { Kind: Kind.Product, Parts: [{ Kind: Kind.Quotient } first, { } second] }:
                // a/b · c/d is a fraction times a fraction, not one over the other.
                Write(new(Kind.Product, string.Empty, [first, new(Kind.Quotient, string.Empty, [second, node.Parts[1]])]), to);
                break;
            case Kind.Quotient when !to.IsRaised && IsShort(node.Parts[0]) && IsShort(node.Parts[1]):
                to.Add(new XElement("mfrac", Over(Bare(node.Parts[0])), Over(Bare(node.Parts[1]))), node.Line());
                break;
            case Kind.Quotient:
                Write(node.Parts[0], to);
                to.Add(Operator("/"), "/");
                Write(node.Parts[1], to);
                break;
            case Kind.Negative:
                to.Add(Operator("−", isPrefix: true), "−");
                Write(node.Parts[0], to);
                break;
            case Kind.Power when IsShort(node.Parts[0]):
                to.Add(new XElement("msup", Row(node.Parts[0], to), Above(Bare(node.Parts[1]))), node.Line());
                break;
            case Kind.Power:
                // The exponent stands at the closing bracket.
                to.Add(Bracket("("), "(");
                Write(Bare(node.Parts[0]), to);
                to.Add(new XElement("msup", Bracket(")"), Above(Bare(node.Parts[1]))), $"){node.Raised()}");
                break;
            case Kind.Root when IsShort(node.Parts[0]):
                to.Add(new XElement("msqrt", Row(node.Parts[0], to)), node.Line());
                break;
            case Kind.Root:
                Enclosed(Operator("√", isPrefix: true), "√", node, to);
                break;
            case Kind.Function:
                Enclosed(NameOf(node.Text), node.Text, node, to);
                break;
            default:
                Enclosed(null, string.Empty, node, to);
                break;
        }
    }

    private static void Enclosed(XElement? before, string name, Node node, Pieces to)
    {
        IReadOnlyList<Node> parts = node.Parts;
        if (IsTall(node, to) && node.Line().Length <= LongestPart)
        {
            // One element, which no line breaks: its brackets are as tall as what they hold.
            to.Add(
                new XElement(
                    "mrow",
                    before,
                    new XElement("mo", "("),
                    parts.SelectMany((part, place) => place == 0 ? (XElement[])[Row(part)] : [Operator(";"), Row(part)]),
                    new XElement("mo", ")")),
                node.Line());
            return;
        }

        if (before is not null)
        {
            to.Add(before, name);
        }

        to.Add(Bracket("("), "(");
        for (int part = 0; part < parts.Count; part++)
        {
            if (part > 0)
            {
                to.Add(Operator(";"), ";");
                to.Break();
            }

            Write(parts[part], to);
        }

        to.Add(Bracket(")"), ")");
    }

    // A fraction that is one.
    private static bool IsTall(Node node, Pieces to) =>
        !to.IsRaised && (node is { Kind: Kind.Quotient } ? IsShort(node.Parts[0]) && IsShort(node.Parts[1]) : node.Parts.Any(part => IsTall(part, to)));

    private static bool IsShort(Node node) => Bare(node).Line().Length <= LongestPart;

    // A bar or a raised line does what the brackets did.
    private static Node Bare(Node node) => node.Kind == Kind.Bracket ? node.Parts[0] : node;

    private static XElement Row(Node node) => Inside(node, new Pieces());

    private static XElement Row(Node node, Pieces of) => Inside(node, new Pieces { IsRaised = of.IsRaised });

    // In small print a fraction would be smaller still: it stays in the line.
    private static XElement Above(Node node) => Inside(node, new Pieces { IsRaised = true });

    // A fraction over or under the bar of another keeps its size.
    private static XElement Over(Node node)
    {
        XElement row = Row(node);
        if (row.Descendants("mfrac").Any())
        {
            row.SetAttributeValue("displaystyle", "true");
        }

        return row;
    }

    private static XElement Inside(Node node, Pieces pieces)
    {
        Write(node, pieces);
        return new XElement("mrow", pieces.Parts());
    }

    private static XElement Operator(string sign, bool isPrefix = false) =>
        isPrefix ? new XElement("mo", new XAttribute("form", "prefix"), sign) : new XElement("mo", new XAttribute("form", sign == ";" ? "postfix" : "infix"), sign);

    // A bracket that opens in one piece may close in another.
    private static XElement Bracket(string sign) => new("mo", new XAttribute("stretchy", "false"), sign);

    private static XElement NumberOf(string text)
    {
        int times = text.IndexOf("·10^", StringComparison.Ordinal);
        return times < 0 ? new XElement("mn", text) : new XElement(
            "mrow",
            new XElement("mn", text[..times]),
            Operator("·"),
            new XElement("msup", new XElement("mn", "10"), new XElement("mn", text[(times + 4)..])));
    }

    private static XElement NameOf(string function) => function switch
    {
        "log10" => new XElement("msub", new XElement("mi", "log"), new XElement("mn", "10")),
        "Σ" => new XElement("mo", new XAttribute("form", "prefix"), "∑"),
        _ => new XElement("mi", function),
    };

    private static XElement SymbolOf(string name)
    {
        int below = name.IndexOf('_', StringComparison.Ordinal);
        XElement letter = Letter(below < 0 ? name : name[..below]);
        return below < 0 ? letter : new XElement("msub", letter, new XElement("mtext", name[(below + 1)..]));
    }

    // A difference's Δ stands upright before its quantity.
    private static XElement Letter(string name) => name.Length > 1 && name[0] == 'Δ'
        ? new XElement("mrow", new XElement("mi", new XAttribute("mathvariant", "normal"), "Δ"), new XElement("mi", name[1..]))
        : new XElement("mi", name);

    private sealed record Node(Kind Kind, string Text, IReadOnlyList<Node> Parts)
    {
        /// <summary>The node as it was written.</summary>
        public string Line() => Kind switch
        {
            Kind.Number or Kind.Symbol => Text,
            Kind.Sum => $"{Parts[0].Line()} + {Parts[1].Line()}",
            Kind.Difference => $"{Parts[0].Line()} − {Parts[1].Line()}",
            Kind.Product => $"{Parts[0].Line()} · {Parts[1].Line()}",
            Kind.Quotient => $"{Parts[0].Line()}/{Parts[1].Line()}",
            Kind.Negative => $"−{Parts[0].Line()}",
            Kind.Power => $"{Parts[0].Line()}{Raised()}",
            Kind.Root => Text.Length > 0 ? $"√{Parts[0].Line()}" : $"√({Parts[0].Line()})",
            Kind.Function => $"{Text}({string.Join("; ", Parts.Select(part => part.Line()))})",
            _ => $"({Parts[0].Line()})",
        };

        /// <summary>The exponent as it was written.</summary>
        public string Raised() => Text.Length > 0 ? Text : $"^{Parts[1].Line()}";
    }

    // What is set, and beside it the text that it stands for.
    private sealed class Pieces
    {
        private readonly List<(List<XElement> Parts, StringBuilder Text)> _pieces = [([], new())];

        /// <summary>True of an exponent.</summary>
        public bool IsRaised { get; init; }

        public void Add(XElement part, string text)
        {
            _pieces[^1].Parts.Add(part);
            _pieces[^1].Text.Append(text);
        }

        public void Break()
        {
            if (_pieces[^1].Parts.Count > 0)
            {
                _pieces.Add(([], new()));
            }
        }

        public IEnumerable<XElement> Parts() => _pieces.SelectMany(piece => piece.Parts);

        public IReadOnlyList<XElement> Elements() =>
            [.. _pieces.Select(piece => new XElement("math", new XAttribute("displaystyle", "true"), new XAttribute("alttext", piece.Text.ToString().TrimEnd()), new XElement("mrow", piece.Parts)))];
    }
}
