using FuelSizing.Quantities;

namespace FuelSizing.Sizing;

/// <summary>A figure that is searched in SI, as an answer gives it and writes it.</summary>
/// <typeparam name="T">A flow, a pressure, a gain.</typeparam>
/// <param name="Typed">The figure with its unit.</param>
/// <param name="Text">The figure in words; one end of a range is rounded towards the other, which is none for a figure that is no end.</param>
/// <param name="Tidy">The nearest figure of few digits, SI.</param>
internal sealed record SizedFigure<T>(Func<double, T> Typed, Func<T, T?, Statement> Text, Func<double, double> Tidy)
    where T : struct
{
    /// <summary>One end of a range in words, such that it is adequate as it is printed.</summary>
    public Statement End(double end, double other) => Text(Typed(end), Typed(other));

    /// <summary>A figure in words, to the nearest.</summary>
    public Statement Plain(double figure) => Text(Typed(figure), null);
}
