using FuelSizing.Quantities;

namespace FuelSizing.Selection;

/// <summary>Describes candidates.</summary>
public static class Candidate
{
    /// <summary>Describes a part that may be chosen.</summary>
    /// <typeparam name="T">The part.</typeparam>
    /// <param name="name">Shown in rankings; 1 to 80 characters.</param>
    /// <param name="part">The part.</param>
    /// <param name="cost">What one of it costs, in your own money, 0 to 1,000,000; none if it is not known.</param>
    /// <returns>The candidate.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The cost is outside its range.</exception>
    public static Candidate<T> Of<T>(string name, T part, decimal? cost = null)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(part);
        if (cost is { } money)
        {
            Guard.Number((double)money, 0, 1e6, "Give what one of it costs.", nameof(cost));
        }

        return new(Guard.Name(name, nameof(name)), part, cost, null);
    }
}
