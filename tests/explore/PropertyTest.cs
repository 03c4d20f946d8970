using System.Globalization;
using System.Reflection;
using FuelSizing.Tests;
using Xunit;
using Xunit.Sdk;

namespace FuelSizing.Explore;

/// <summary>A test with its arguments, run in this process.</summary>
/// <param name="method">The method.</param>
/// <param name="arguments">What it is called with.</param>
internal sealed class PropertyTest(MethodInfo method, object?[] arguments)
{
    /// <summary>Class, method and arguments.</summary>
    public string Name { get; } =
        $"{method.DeclaringType!.FullName}.{method.Name}{(arguments.Length == 0 ? string.Empty : $"({string.Join(", ", arguments.Select(Shown))})")}";

    /// <summary>The tests of an assembly that could draw cases: those of classes whose code calls for some.</summary>
    public static IEnumerable<PropertyTest> In(Assembly assembly) =>
        from type in assembly.GetTypes()
        where !type.IsAbstract && type != typeof(PinnedSampleTests) && type.GetConstructor(Type.EmptyTypes) is not null && Draws(type)
        from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance)
        where method.GetCustomAttribute<FactAttribute>() is not null
        from row in Rows(method)
        select new PropertyTest(method, row);

    /// <summary>Runs it; what it says if it fails.</summary>
    public string? Failure()
    {
        object target = Activator.CreateInstance(method.DeclaringType!)!;
        try
        {
            (method.Invoke(target, arguments) as Task)?.GetAwaiter().GetResult();
            return null;
        }
        catch (TargetInvocationException error)
        {
            return error.InnerException!.Message;
        }
        finally
        {
            (target as IDisposable)?.Dispose();
        }
    }

    private static IEnumerable<object?[]> Rows(MethodInfo method)
    {
        DataAttribute[] data = [.. method.GetCustomAttributes<DataAttribute>()];
        return data.Length == 0 ? [[]] : data.SelectMany(each => each.GetData(method)).Select(row => Fitted(method, row));
    }

    private static object?[] Fitted(MethodInfo method, object?[] row) =>
        [
            .. row.Zip(method.GetParameters(), (value, parameter) =>
                value is IConvertible && parameter.ParameterType.IsPrimitive
                    ? Convert.ChangeType(value, parameter.ParameterType, CultureInfo.InvariantCulture)
                    : value),
        ];

    private static string Shown(object? argument)
    {
        const int Most = 40;
        string text = (Convert.ToString(argument, CultureInfo.InvariantCulture) ?? "null").ReplaceLineEndings(" ");
        return text.Length > Most ? $"{text[..Most]}…" : text;
    }

    // Lambdas stand in types of their own inside the class.
    private static bool Draws(Type type) =>
        type.GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Any(Draws)
        || type.GetNestedTypes(BindingFlags.Public | BindingFlags.NonPublic).Any(Draws);

    /// <summary>Whether a method's code has a call of the tests' Sample in it: any number that names it as a token will do.</summary>
    private static bool Draws(MethodInfo method)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } code)
        {
            return false;
        }

        Type[]? ofType = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        Type[]? ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        const byte Call = 0x28;
        const byte MethodDefinition = 0x06;
        const byte MethodSpecification = 0x2B;
        for (int at = 0; at + 5 <= code.Length; at++)
        {
            if (code[at] != Call || code[at + 4] is not (MethodDefinition or MethodSpecification))
            {
                continue;
            }

            try
            {
                if (method.Module.ResolveMethod(BitConverter.ToInt32(code, at + 1), ofType, ofMethod)?.DeclaringType == typeof(PinnedSample))
                {
                    return true;
                }
            }
            catch (ArgumentException)
            {
                // No token, but another number that looks like one.
            }
        }

        return false;
    }
}
