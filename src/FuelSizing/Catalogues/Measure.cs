namespace FuelSizing.Catalogues;

/// <summary>A quantity that files give as a number and a unit.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <param name="Example">A number and unit, for a message.</param>
/// <param name="Read">The quantity of a number and a unit's abbreviation; none if it is no unit of it.</param>
internal sealed record Measure<T>(string Example, Func<double, string, T?> Read)
    where T : struct;
