using System.Reflection;

namespace FuelSizing.Mutants;

/// <summary>What a test writes its figures to: here nobody reads them.</summary>
public class Silent : DispatchProxy
{
    /// <summary>An object of an interface that the tests' own folder brings.</summary>
    /// <param name="type">The interface.</param>
    /// <returns>The object.</returns>
    public static object Of(Type type) => Create(type, typeof(Silent));

    /// <inheritdoc/>
    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => null;
}
