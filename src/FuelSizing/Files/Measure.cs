namespace FuelSizing.Files;

/// <summary>A quantity that files give as a number and a unit.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <param name="Example">A number and unit, for a message.</param>
/// <param name="Read">
/// The quantity of a number as it stands in a file and a unit's abbreviation; none if it is no unit of it.
/// </param>
/// <param name="Text">Number and unit of a quantity, in the unit that it is given in, such that reading gives it back to the last bit.</param>
/// <exception cref="OverflowException">From reading: the number is too large for the quantity.</exception>
internal sealed record Measure<T>(string Example, Func<string, string, T?> Read, Func<T, string> Text)
    where T : struct;
