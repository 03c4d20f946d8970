namespace FuelSizing.Numerics;

/// <summary>A number that remembers how it came about, in which an equation of the library writes its own working.</summary>
/// <param name="Term">The number and where it comes from; zero where there is none.</param>
/// <remarks>Values are those of <see cref="Real"/>, operation by operation. Only who asks for a working pays for it.</remarks>
internal readonly record struct Traced(Term? Term) : IReal<Traced>
{
    /// <summary>The number, in SI units.</summary>
    public double Value => Origin.Value;

    private Term Origin => Term ?? Numerics.Term.Constant(0);

    public static implicit operator Traced(double value) => new(Numerics.Term.Constant(value));

    public static Traced operator +(Traced left, Traced right) =>
        left.Origin.Is(0) ? right : right.Origin.Is(0) ? left : Of(TermKind.Sum, left.Value + right.Value, left, right);

    public static Traced operator -(Traced left, Traced right) =>
        right.Origin.Is(0) ? left : Of(TermKind.Difference, left.Value - right.Value, left, right);

    public static Traced operator *(Traced left, Traced right) =>
        left.Origin.Is(0) || right.Origin.Is(1) ? left
        : right.Origin.Is(0) || left.Origin.Is(1) ? right
        : Of(TermKind.Product, left.Value * right.Value, left, right);

    public static Traced operator /(Traced left, Traced right) =>
        right.Origin.Is(1) ? left : Of(TermKind.Quotient, left.Value / right.Value, left, right);

    public static Traced Divide(Traced left, Traced right, Traced reciprocal) => left / right;

    public static Traced MultiplyAdd(Traced left, Traced right, Traced addend) => (left * right) + addend;

    public static Traced Sqrt(Traced value) => Of(TermKind.Root, Math.Sqrt(value.Value), value);

    public static Traced Exp(Traced value) => Of(TermKind.Exponential, Math.Exp(value.Value), value);

    public static Traced Log(Traced value) => Of(TermKind.Logarithm, Math.Log(value.Value), value);

    public static Traced Power(Traced left, Traced right) => Exp(right * Log(left));

    public static Traced Min(Traced left, Traced right) =>
        left.Origin.Is(double.PositiveInfinity) ? right
        : right.Origin.Is(double.PositiveInfinity) ? left
        : Of(TermKind.Minimum, Math.Min(left.Value, right.Value), left, right);

    public static Traced Max(Traced left, Traced right) =>
        Of(TermKind.Maximum, Math.Max(left.Value, right.Value), left, right);

    // The working shows the way that was taken.
    public static Traced IfLess(Traced left, Traced right, Traced whereLess, Traced otherwise) =>
        left.Value < right.Value ? whereLess : otherwise;

    /// <summary>A number that comes from outside, under the symbol that it goes by.</summary>
    public static Traced Given(string symbol, double value) => new(Numerics.Term.Given(symbol, value));

    private static Traced Of(TermKind kind, double value, params Traced[] parts) =>
        new(Numerics.Term.Of(kind, value, Array.ConvertAll(parts, part => part.Origin)));
}
