using System.Globalization;
using System.Text.RegularExpressions;

namespace FuelSizing.Tests.Sizing;

/// <summary>Reads a printed answer as a reader would, and puts its figures back.</summary>
internal static partial class PutBack
{
    /// <summary>
    /// How many cases of each question and remedy: a pinned few in every run, the thousand by <c>.ci/full put-back</c>, which sets FUELSIZING_PUT_BACK.
    /// </summary>
    public static int Cases { get; } =
        int.TryParse(Environment.GetEnvironmentVariable("FUELSIZING_PUT_BACK"), CultureInfo.InvariantCulture, out int cases) ? cases : 50;

    /// <summary>A printed number, and the unit of its last digit.</summary>
    public readonly record struct Printed(double Value, double Step)
    {
        public static Printed Of(string digits)
        {
            int point = digits.IndexOf('.', StringComparison.Ordinal);
            return new(
                double.Parse(digits, NumberStyles.AllowThousands | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture),
                Math.Pow(10, point < 0 ? 0 : point + 1 - digits.Length));
        }

        /// <summary>So many units of the last digit further.</summary>
        public double Beyond(int steps) => (double)((decimal)Value + (steps * (decimal)Step));
    }

    /// <summary>The number before a unit, behind some words.</summary>
    public static Printed After(string words, string text)
    {
        Match found = Regex.Match(text, $"{words} (?<digits>-?[0-9,.]*[0-9])");
        Assert.True(found.Success, $"\"{text}\" has no \"{words}\" with a number.");
        return Printed.Of(found.Groups["digits"].Value);
    }

    /// <summary>
    /// Whatever a question answers: every end that is printed holds, one unit of the last digit beyond it does not, all between the ends of a range
    /// does, and where nothing is said to hold, nothing does.
    /// </summary>
    /// <param name="text">The answer in words.</param>
    /// <param name="minimum">Start of the range that is searched, in the unit printed.</param>
    /// <param name="maximum">Its end.</param>
    /// <param name="holds">The forward solution with a figure put in.</param>
    /// <returns>What kind of answer it was, for the count.</returns>
    public static string Check(string text, double minimum, double maximum, Func<double, bool> holds)
    {
        void Holds(double figure, string what) => Assert.True(holds(figure), $"{what}, {figure:R}, fails: {text}");
        void Fails(double figure, string what) => Assert.True(figure < minimum || figure > maximum || !holds(figure), $"{what}, {figure:R}, holds: {text}");
        void Between(double from, double to)
        {
            for (int step = 0; step <= 100; step++)
            {
                Holds(from + ((to - from) * step / 100), "a place of the range");
            }
        }

        if (text.StartsWith("Nothing", StringComparison.Ordinal))
        {
            for (int step = 0; step <= 400; step++)
            {
                Fails(minimum + ((maximum - minimum) * step / 400), "what is not adequate");
            }

            return "nothing";
        }

        if (text.StartsWith("At least", StringComparison.Ordinal))
        {
            Printed least = After("At least", text);
            Holds(least.Value, "at least");
            Fails(least.Beyond(-1), "one step under");
            Between(least.Value, maximum);
            return "at least";
        }

        if (text.StartsWith("At most", StringComparison.Ordinal))
        {
            Printed most = After("At most", text);
            Holds(most.Value, "at most");
            Between(minimum, most.Value);
            int again = text.IndexOf("again it does", StringComparison.Ordinal);
            if (again >= 0)
            {
                // A failing gap may be narrower than a unit of the last digit.
                if (After("from", text[again..]).Value > most.Beyond(1))
                {
                    Fails(most.Beyond(1), "one step over");
                }

                Ranges(text[again..], Holds, null, Fails, Between);
                return "at most, and again";
            }

            Fails(most.Beyond(1), "one step over");
            return "at most";
        }

        bool isMaximum = text.StartsWith("No maximum", StringComparison.Ordinal);
        string ranges = isMaximum ? text[text.LastIndexOf("everything holds", StringComparison.Ordinal)..] : text.Split(": ")[0];
        Ranges(ranges, Holds, Fails, Fails, Between);
        return isMaximum ? "not from the start" : "from … to";
    }

    private static void Ranges(
        string text, Action<double, string> holds, Action<double, string>? under, Action<double, string> over, Action<double, double> between)
    {
        MatchCollection found = Range().Matches(text);
        Assert.NotEmpty(found);
        for (int range = 0; range < found.Count; range++)
        {
            Printed from = Printed.Of(found[range].Groups["from"].Value);
            Printed to = Printed.Of(found[range].Groups["to"].Value);
            holds(from.Value, "from");
            holds(to.Value, "to");
            between(from.Value, to.Value);
            if (range == 0)
            {
                under?.Invoke(from.Beyond(-1), "one step under the first");
            }

            if (range == found.Count - 1)
            {
                over(to.Beyond(1), "one step over the last");
            }
        }
    }

    [GeneratedRegex("from (?<from>[0-9,.]*[0-9])[^0-9]*? to (?<to>[0-9,.]*[0-9])", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Range();
}
