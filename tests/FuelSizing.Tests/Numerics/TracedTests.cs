using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>An equation evaluated in traced numbers writes itself: with as few brackets as arithmetic needs, and no more.</summary>
public class TracedTests
{
    private static readonly Traced A = Traced.Given("a", 2);

    private static readonly Traced B = Traced.Given("b", 3);

    private static readonly Traced C = Traced.Given("c", 4);

    [Fact]
    public void Sums_AndProducts_AreBracketedWhereNeeded()
    {
        Written("a + b + c", 9, A + B + C);
        Written("a + b − c", 1, A + B - C);
        Written("a − (b + c)", -5, A - (B + C));
        Written("a − (b − c)", 3, A - (B - C));
        Written("a + b · c", 14, A + (B * C));
        Written("(a + b) · c", 20, (A + B) * C);
        Written("c · (a − b)", -4, C * (A - B));
        Written("a · b · c", 24, A * B * C);
        Written("a/b", 2.0 / 3, A / B);
        Written("a/(b · c)", 1.0 / 6, A / (B * C));
        Written("a/(b/c)", 8.0 / 3, A / (B / C));
        Written("a · b/c", 1.5, A * B / C);
        Written("(a + b)/c", 1.25, (A + B) / C);
        Written("a/b · c", 8.0 / 3, A / B * C);
        Written("a/b", 2.0 / 3, Traced.Divide(A, B, 99));
        Written("a · b + c", 10, Traced.MultiplyAdd(A, B, C));
    }

    [Fact]
    public void Functions_HoldTheirArguments()
    {
        Written("√(a + b)", Math.Sqrt(5), Traced.Sqrt(A + B));
        Written("ln(a)", Math.Log(2), Traced.Log(A));
        Written("exp(a − b)", Math.Exp(-1), Traced.Exp(A - B));
        Written("min(a; b)", 2, Traced.Min(A, B));
        Written("max(a; b + c)", 7, Traced.Max(A, B + C));
        Written("c · √(a)", 4 * Math.Sqrt(2), C * Traced.Sqrt(A));
    }

    /// <summary>An exponential of a product with a logarithm is a power.</summary>
    [Fact]
    public void Powers_AreWrittenAsPowers()
    {
        Written("a^b", 8, Traced.Power(A, B));
        Written("(a + b)^c", 625, Traced.Power(A + B, C));
        Written("a^(b − c)", 0.5, Traced.Power(A, B - C));
        Written("b · a^c", 48, B * Traced.Power(A, C));
        Written("b/a^c", 3.0 / 16, B / Traced.Power(A, C));
        Written("exp(a · b)", Math.Exp(6), Traced.Exp(A * B));

        // A logarithm that has a name of its own is no longer seen.
        Traced logarithm = Traced.Log(A);
        logarithm.Term!.Symbol = "l";
        Written("exp(b · l)", 8, Traced.Exp(B * logarithm));
    }

    [Fact]
    public void Terms_ThatChangeNothing_AreNotWritten()
    {
        Written("a · b", 6, (A * B) + 0);
        Written("a · b", 6, 0 + (A * B));
        Written("a · b", 6, (A * B) - 0);
        Written("a · b", 6, A * B * 1);
        Written("a · b", 6, 1 * (A * B));
        Written("a · b", 6, A * B / 1);
        Written("a · b", 6, Traced.Min(A * B, double.PositiveInfinity));
        Written("a · b", 6, Traced.Min(double.PositiveInfinity, A * B));
        Assert.Equal(0, ((A * B) * 0).Value);
        Assert.Equal(0, (0 * (A * B)).Value);
        Assert.False((0 * A).Term!.IsMade);
        Assert.False((A * 0).Term!.IsMade);

        // A named zero or one is a quantity, and stays.
        Written("a + z", 2, A + Traced.Given("z", 0));
        Written("a · e", 2, A * Traced.Given("e", 1));
        Written("0 − a", -2, 0 - A);
        Written("1/a", 0.5, 1 / A);
        Written("a · b − 1", 5, (A * B) - 1);
        Assert.Equal(0, default(Traced).Value);
    }

    [Fact]
    public void Choice_ShowsTheWayTaken()
    {
        Written("a + b", 5, Traced.IfLess(A, B, A + B, A * B));
        Written("a · b", 6, Traced.IfLess(B, A, A + B, A * B));
        Written("a · b", 6, Traced.IfLess(A, A, A + B, A * B));
    }

    /// <summary>In numbers, each named part stands with its value; a negative one, or a power of ten, in brackets where it matters.</summary>
    [Fact]
    public void Numbers_TakeThePlaceOfSymbols()
    {
        Traced minus = Traced.Given("m", -5);
        Traced large = Traced.Given("k", 250_000);
        Assert.Equal("2 + 3 · 4", (A + (B * C)).Term!.InNumbers());
        Assert.Equal("2 · (−5)", (A * minus).Term!.InNumbers());
        Assert.Equal("2 · 0", (A * Traced.Given("z", 0)).Term!.InNumbers());
        Assert.Equal("2 − (−5)", (A - minus).Term!.InNumbers());
        Assert.Equal("−5 + 2", (minus + A).Term!.InNumbers());
        Assert.Equal("2/(2.5·10^5)", (A / large).Term!.InNumbers());
        Assert.Equal("2 · 2.5·10^5", (A * large).Term!.InNumbers());
        Assert.Equal("(2.5·10^5)^3", Traced.Power(large, B).Term!.InNumbers());
        Assert.Equal("2^(−5)", Traced.Power(A, minus).Term!.InNumbers());
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(double.PositiveInfinity, "∞")]
    [InlineData(1, "1")]
    [InlineData(12345.4, "12345")]
    [InlineData(99_999, "99999")]
    [InlineData(100_000, "1·10^5")]
    [InlineData(123_456, "1.2346·10^5")]
    [InlineData(0.001, "0.001")]
    [InlineData(0.000999, "9.99·10^−4")]
    [InlineData(-0.25, "−0.25")]
    [InlineData(-2e6, "−2·10^6")]
    [InlineData(99999.7, "1·10^5")]
    [InlineData(-999996, "−1·10^6")]
    [InlineData(0.00099999996, "0.001")]
    public void Text_OfANumber_HasFiveFigures(double value, string text) => Assert.Equal(text, Term.Text(value));

    [Fact]
    public void Made_IsOnlyWhatIsMadeOfParts()
    {
        Assert.True((A + B).Term!.IsMade);
        Assert.False(A.Term!.IsMade);
        Assert.True(Term.Constant(3).Is(3));
        Assert.False(Term.Constant(3).Is(4));
        Assert.False(A.Term!.Is(2));
        Assert.False(Traced.Exp(0).Term!.Is(1));
    }

    private static void Written(string text, double value, Traced traced)
    {
        Assert.Equal(text, traced.Term!.InSymbols());
        Assert.Equal(value, traced.Value, 1e-12);
    }
}
