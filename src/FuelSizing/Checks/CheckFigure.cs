using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>On which side of a limit a figure must stay.</summary>
public enum LimitDirection
{
    /// <summary>What is used may be no more than what is allowed.</summary>
    AtMost,

    /// <summary>What is used may be no less than what is allowed.</summary>
    AtLeast,
}

/// <summary>Of which kind the two figures of a check are: their quantity, their direction, and how they are drawn.</summary>
/// <remarks>Used and allowed are of one quantity, so that they can be compared, and drawn on one axis.</remarks>
public abstract class CheckFigure
{
    private protected CheckFigure(string title, LimitDirection direction)
    {
        Title = Guard.Name(title, nameof(title));
        Direction = Guard.Member(direction, "Say on which side of the limit the figure must stay.", nameof(direction));
    }

    /// <summary>What the axis of a plot, or the head of a column, says: for instance <c>Duty cycle</c>.</summary>
    public string Title { get; }

    /// <summary>On which side of the limit the figure must stay.</summary>
    public LimitDirection Direction { get; }

    /// <summary>Describes the figures of a check.</summary>
    /// <typeparam name="T">Their quantity.</typeparam>
    /// <param name="title">What an axis says, 1 to 80 characters.</param>
    /// <param name="direction">On which side of the limit the figure must stay.</param>
    /// <param name="typed">The quantity of a number in SI, for instance <c>Pressure.FromPascals</c>.</param>
    /// <param name="unit">The unit in which it is shown, for instance <c>units => units.Pressure</c>.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentException">The title cannot be shown.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The direction is not one of the enumeration.</exception>
    public static CheckFigure Of<T>(
        string title, LimitDirection direction, Func<double, T> typed, Func<FigureUnits, DisplayUnit<T>> unit)
        where T : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(unit);
        return new Figure<T>(title, direction, typed, unit);
    }

    /// <summary>A figure in SI as a quantity; none where it is not known, or without bound.</summary>
    /// <param name="si">The number in SI.</param>
    /// <returns>The quantity.</returns>
    public abstract IQuantity? Quantity(double si);

    /// <summary>A figure in the unit in which it is drawn.</summary>
    /// <param name="figure">What a margin says is used or allowed; none where it is not known.</param>
    /// <param name="style">Units and culture.</param>
    /// <returns>The number; not a number, a gap in a plot, where it is not known.</returns>
    /// <exception cref="ArgumentException">The figure is of another quantity than those of the check.</exception>
    public abstract double Drawn(IQuantity? figure, TextStyle style);

    /// <summary>The unit in which it is drawn.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>The unit's symbol.</returns>
    public abstract string Unit(TextStyle style);

    /// <summary>A finite figure in SI as texts write it.</summary>
    internal abstract string Text(double si, TextStyle style);

    /// <summary>Title and direction.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => $"{Title}, {(Direction == LimitDirection.AtMost ? "at most" : "at least")}";

    private sealed class Figure<T>(
        string title, LimitDirection direction, Func<double, T> typed, Func<FigureUnits, DisplayUnit<T>> unit)
        : CheckFigure(title, direction)
        where T : struct, IQuantity
    {
        // A unit takes no infinite number: lambda without fuel, or a limit that does not count yet.
        public override IQuantity? Quantity(double si) => double.IsFinite(si) ? typed(si) : null;

        public override double Drawn(IQuantity? figure, TextStyle style)
        {
            ArgumentNullException.ThrowIfNull(style);
            return figure switch
            {
                null => double.NaN,
                T known => unit(style.Units).ValueOf(known),
                _ => throw new ArgumentException(
                    $"figure was a {figure.QuantityInfo.Name}; {Title} is a {typed(0).QuantityInfo.Name}.", nameof(figure)),
            };
        }

        public override string Unit(TextStyle style)
        {
            ArgumentNullException.ThrowIfNull(style);
            return unit(style.Units).Unit;
        }

        internal override string Text(double si, TextStyle style) => style.Text(unit(style.Units), typed(si));
    }
}
