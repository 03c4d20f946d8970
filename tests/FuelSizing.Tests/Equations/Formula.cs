using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Equations;

/// <summary>
/// A formula as the documentation writes it, read and calculated by itself: a second opinion on the code, and a check that what is
/// written is what is computed.
/// </summary>
/// <remarks>
/// Sums, products, quotients, powers (also ² and ³), √, min, max, exp, ln, log10; <c>a if x &lt; y; b otherwise</c>; and
/// <c>with s = … and t = …</c> behind it.
/// </remarks>
internal sealed partial class Formula
{
    private static readonly string[] Functions = ["min", "max", "exp", "ln", "log10", nameof(ColebrookWhite)];

    private readonly string _left;
    private readonly string[] _right;
    private readonly Dictionary<string, string> _with = [];

    public Formula(string text)
    {
        string[] parts = text.Split(" with ");
        string[] sides = parts[0].Split(" = ");
        (_left, _right) = (sides[0], sides[1].Contains(" if ", StringComparison.Ordinal) ? OutsideBrackets().Split(sides[1]) : [sides[1]]);
        foreach (string definition in parts.Skip(1).SelectMany(part => part.Split(" and ")))
        {
            string[] equal = definition.Split(" = ");
            _with.Add(equal[0], equal[1]);
        }
    }

    /// <summary>Every symbol in it that it does not define itself.</summary>
    public IReadOnlySet<string> Symbols
    {
        get
        {
            HashSet<string> found = [];
            foreach (string text in (string[])[_left, .. _right, .. _with.Values])
            {
                for (int at = 0; at < text.Length; at++)
                {
                    int end = NameEnd(text, at);
                    if (end > at)
                    {
                        string name = text[at..end];
                        if (!Functions.Contains(name) && !_with.ContainsKey(name) && name is not ("π" or "if" or "otherwise"))
                        {
                            found.Add(name);
                        }

                        at = end;
                    }
                    else if (char.IsDigit(text[at]))
                    {
                        at = NumberEnd(text, at) - 1;
                    }
                }
            }

            return found;
        }
    }

    /// <summary>Both sides.</summary>
    public (double Left, double Right) Sides(IReadOnlyDictionary<string, double> symbols)
    {
        string right = _right[0];
        if (_right.Length > 1)
        {
            right = _right.Select(part => part.Split(" if ")).First(part => part.Length == 1 || Holds(part[1], symbols))[0].Replace(" otherwise", string.Empty, StringComparison.Ordinal);
        }

        return (Value(_left, symbols), Value(right, symbols));
    }

    private bool Holds(string condition, IReadOnlyDictionary<string, double> symbols) =>
        condition.Split(" ≤ ") is [var low, var high] ? Value(low, symbols) <= Value(high, symbols)
        : condition.Split(" < ") is [var less, var more] ? Value(less, symbols) < Value(more, symbols)
        : throw new InvalidDataException($"\"{condition}\" is no comparison.");

    private double Value(string text, IReadOnlyDictionary<string, double> symbols)
    {
        int at = 0;
        double value = Sum();
        return at == text.Length ? value : throw new InvalidDataException($"\"{text}\" is not understood from \"{text[at..]}\".");

        double Sum()
        {
            double sum = Product();
            while (true)
            {
                if (Take(" + "))
                {
                    sum += Product();
                }
                else if (Take(" − "))
                {
                    sum -= Product();
                }
                else
                {
                    return sum;
                }
            }
        }

        double Product()
        {
            double product = Signed();
            while (true)
            {
                if (Take(" · "))
                {
                    product *= Signed();
                }
                else if (Take("/"))
                {
                    product /= Signed();
                }
                else
                {
                    return product;
                }
            }
        }

        double Signed() => Take("−") ? -Signed() : Power();

        double Power()
        {
            double number = Primary();
            return Take("²") ? number * number
                : Take("³") ? number * number * number
                : Take("^") ? Math.Pow(number, Signed())
                : number;
        }

        double Primary()
        {
            if (Take("√"))
            {
                return Math.Sqrt(Primary());
            }

            if (Take("("))
            {
                double inside = Sum();
                return Take(")") ? inside : throw new InvalidDataException($"\"{text}\" lacks a bracket.");
            }

            if (at < text.Length && char.IsDigit(text[at]))
            {
                int start = at;
                at = NumberEnd(text, at);
                return double.Parse(text.AsSpan(start, at - start), CultureInfo.InvariantCulture);
            }

            int end = NameEnd(text, at);
            string name = text[at..end];
            at = end;
            return name == "π" ? Math.PI
                : Functions.Contains(name) ? Function(name)
                : symbols.TryGetValue(name, out double given) ? given
                : _with.TryGetValue(name, out string? definition) ? Value(definition, symbols)
                : throw new InvalidDataException($"\"{text}\" has the symbol \"{name}\", which nobody defines.");
        }

        double Function(string name)
        {
            List<double> given = [];
            do
            {
                at += given.Count == 0 ? 1 : 0;
                given.Add(Sum());
            }
            while (Take("; "));
            return !Take(")") ? throw new InvalidDataException($"\"{text}\" lacks a bracket.")
                : name switch
                {
                    "min" => given.Min(),
                    "max" => given.Max(),
                    "exp" => Math.Exp(given[0]),
                    "ln" => Math.Log(given[0]),
                    "log10" => Math.Log10(given[0]),
                    _ => ColebrookWhite.Friction<Real>(given[0], given[1]),
                };
        }

        bool Take(string what)
        {
            bool there = text.AsSpan(at).StartsWith(what, StringComparison.Ordinal);
            at += there ? what.Length : 0;
            return there;
        }
    }

    private static int NameEnd(string text, int at)
    {
        int end = at;
        while (end < text.Length && (char.IsLetter(text[end]) || (end > at && (char.IsDigit(text[end]) || text[end] is '_' or '′'))))
        {
            end++;
        }

        return end;
    }

    private static int NumberEnd(string text, int at)
    {
        while (at < text.Length && (char.IsDigit(text[at]) || text[at] == '.'))
        {
            at++;
        }

        return at;
    }

    // Between the cases of a formula, not between the arguments of min and max.
    [GeneratedRegex(@"; (?![^()]*\))")]
    private static partial Regex OutsideBrackets();
}
