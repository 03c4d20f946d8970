using System.Globalization;

namespace FuelSizing.Tests;

/// <summary>Holds a computed number against one that somebody outside the project has published.</summary>
internal static class Published
{
    /// <summary>Passes if the number lies within a share of the published one.</summary>
    /// <param name="source">Author, title and place of the published number.</param>
    /// <param name="expected">The published number.</param>
    /// <param name="actual">The computed one.</param>
    /// <param name="within">Allowed deviation as a share of the published number.</param>
    public static void Value(string source, double expected, double actual, double within) =>
        Assert.True(
            Math.Abs(actual - expected) <= within * Math.Abs(expected),
            string.Create(
                CultureInfo.InvariantCulture,
                $"{source}: published {expected:G9}, computed {actual:G9}, off by {(actual / expected) - 1:P4}, allowed {within:P4}"));
}
