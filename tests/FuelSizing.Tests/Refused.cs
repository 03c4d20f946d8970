namespace FuelSizing.Tests;

/// <summary>Asks for something that must be refused, and compares the refusal with the argument that is wrong.</summary>
internal static class Refused
{
    /// <summary>Passes if a missing argument is named.</summary>
    public static void Missing(string argument, Func<object?> asked) =>
        Assert.Equal(argument, Assert.Throws<ArgumentNullException>(asked).ParamName);

    /// <summary>Passes if a value out of its range is named.</summary>
    public static void OutOfRange(string argument, Func<object?> asked) =>
        Assert.Equal(argument, Assert.Throws<ArgumentOutOfRangeException>(asked).ParamName);
}
