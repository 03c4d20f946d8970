using System.Globalization;

namespace FuelSizing.Tests.Systems;

/// <summary>A number of which five figures were written, and what that leaves open.</summary>
internal readonly record struct Figure(double Value, double Open)
{
    private const double OfFive = 5e-5;

    public static Figure Written(double value) => new(value, OfFive * Math.Abs(value));

    public static Figure operator +(Figure left, Figure right) => new(left.Value + right.Value, left.Open + right.Open);

    public static Figure operator -(Figure left, Figure right) => new(left.Value - right.Value, left.Open + right.Open);

    public static Figure operator *(Figure left, Figure right) =>
        new(left.Value * right.Value, (Math.Abs(left.Value) * right.Open) + (Math.Abs(right.Value) * left.Open));

    public static Figure operator /(Figure left, Figure right) =>
        new(left.Value / right.Value, (left.Open + (Math.Abs(left.Value / right.Value) * right.Open)) / Math.Abs(right.Value));

    /// <summary>A function of it, by its slope.</summary>
    public Figure By(Func<double, double> function, double slope) => new(function(Value), Math.Abs(slope) * Open);

    public bool Is(double value) =>
        Value == value || Math.Abs(Value - value) <= (1.5 * Open) + Written(value).Open;
}

/// <summary>Evaluates a line as a reader would: an independent reader of the written form.</summary>
internal sealed class Hand
{
    private readonly string _text;
    private readonly IReadOnlyDictionary<string, double> _known;
    private int _at;

    private Hand(string text, IReadOnlyDictionary<string, double> known) =>
        (_text, _known) = (text.Replace(" ", string.Empty, StringComparison.Ordinal), known);

    public static Figure Compute(string text, IReadOnlyDictionary<string, double>? known = null)
    {
        Hand hand = new(text, known ?? new Dictionary<string, double>());
        Figure value = hand.Sum();
        Assert.True(hand._at == hand._text.Length, $"{text}: cannot be read from place {hand._at}");
        return value;
    }

    private Figure Sum()
    {
        Figure sum = Product();
        while (true)
        {
            if (Take('+'))
            {
                sum += Product();
            }
            else if (Take('−'))
            {
                sum -= Product();
            }
            else
            {
                return sum;
            }
        }
    }

    private Figure Product()
    {
        Figure product = Power();
        while (true)
        {
            if (Take('·'))
            {
                product *= Power();
            }
            else if (Take('/'))
            {
                product /= Power();
            }
            else
            {
                return product;
            }
        }
    }

    private Figure Power()
    {
        Figure root = Whole();
        if (!Take('^'))
        {
            return root;
        }

        Figure exponent = Whole();
        double value = Math.Pow(root.Value, exponent.Value);

        // Ten to a whole power is how a number is written, and leaves nothing open.
        return root.Value == 10
            ? new(value, 0)
            : new(value, Math.Abs(value) * ((Math.Abs(exponent.Value) * root.Open / root.Value) + (Math.Abs(Math.Log(root.Value)) * exponent.Open)));
    }

    private Figure Whole()
    {
        if (Take('−'))
        {
            return new Figure(0, 0) - Whole();
        }

        if (Take('√'))
        {
            Figure square = Whole();
            return square.By(Math.Sqrt, square.Value > 0 ? 0.5 / Math.Sqrt(square.Value) : 0);
        }

        if (Take('('))
        {
            Figure inner = Sum();
            Assert.True(Take(')'));
            return inner;
        }

        int start = _at;
        while (_at < _text.Length && "+−·/^();".IndexOf(_text[_at], StringComparison.Ordinal) < 0)
        {
            _at++;
        }

        string word = _text[start.._at];
        if (word is "min" or "max" or "exp" or "ln")
        {
            Assert.True(Take('('));
            Figure first = Sum();
            Figure value = word switch
            {
                "exp" => first.By(Math.Exp, Math.Exp(first.Value)),
                "ln" => first.By(Math.Log, 1 / first.Value),
                _ => Second(word, first),
            };
            Assert.True(Take(')'));
            return value;
        }

        return word == "∞" ? new(double.PositiveInfinity, 0)
            : Figure.Written(_known.TryGetValue(word, out double known) ? known : double.Parse(word, CultureInfo.InvariantCulture));
    }

    private Figure Second(string word, Figure first)
    {
        Assert.True(Take(';'));
        Figure second = Sum();
        return new(
            word == "min" ? Math.Min(first.Value, second.Value) : Math.Max(first.Value, second.Value),
            Math.Max(first.Open, second.Open));
    }

    private bool Take(char letter)
    {
        bool there = _at < _text.Length && _text[_at] == letter;
        _at += there ? 1 : 0;
        return there;
    }
}
