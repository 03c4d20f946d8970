using System.Reflection;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Equations;

/// <summary>An equation with the dimensions of what goes in and what comes out.</summary>
/// <param name="Name">Class and function.</param>
/// <param name="Arguments">What goes in; of a record, each of its numbers.</param>
/// <param name="Results">What comes out; of a record, each of its numbers.</param>
/// <param name="Evaluate">The equation.</param>
internal sealed record EquationForm(string Name, Argument[] Arguments, Dimension[] Results, Func<double[], double[]> Evaluate)
{
    /// <summary>Dimensions of the constants that stand in the equation with a unit; none in most.</summary>
    public Dimension[] Constants { get; init; } = [];

    /// <summary>What those constants are.</summary>
    public string Because { get; init; } = string.Empty;

    /// <summary>An equation of single numbers and records of them, found by its name.</summary>
    public static EquationForm Of(Type type, string function, Dimension[] results, params Argument[] arguments)
    {
        MethodInfo method = type.GetMethod(function, BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(typeof(Real));
        ParameterInfo[] parameters = method.GetParameters();
        string name = $"{type.Name}.{function}";
        Assert.Equal((name, string.Join(", ", parameters.SelectMany(Names))), (name, string.Join(", ", arguments.Select(argument => argument.Name))));
        return new(name, arguments, results, numbers =>
        {
            Queue<double> left = new(numbers);
            object?[] given = [.. parameters.Select(parameter => Made(Plain(parameter), left))];
            return [.. Numbers(method.Invoke(null, given)!)];
        });
    }

    /// <summary>The numbers of a parameter, by name: its own, or those of the record.</summary>
    private static IEnumerable<string> Names(ParameterInfo parameter) =>
        IsNumber(Plain(parameter)) ? [parameter.Name!] : Constructor(Plain(parameter)).GetParameters().SelectMany(Names);

    private static Type Plain(ParameterInfo parameter) =>
        parameter.ParameterType.IsByRef ? parameter.ParameterType.GetElementType()! : parameter.ParameterType;

    private static bool IsNumber(Type type) => type == typeof(Real) || type == typeof(Divisor<Real>);

    private static ConstructorInfo Constructor(Type record) => record.GetConstructors().Single(made => made.GetParameters().Length > 0);

    private static object Made(Type type, Queue<double> left) =>
        type == typeof(Real) ? new Real(left.Dequeue())
        : type == typeof(Divisor<Real>) ? new Divisor<Real>(left.Dequeue())
        : Constructor(type).Invoke([.. Constructor(type).GetParameters().Select(parameter => Made(Plain(parameter), left))]);

    private static IEnumerable<double> Numbers(object result) => result is Real number ? [number.Value]
        : result is Divisor<Real> divisor ? [divisor.Value.Value]
        : result is ValueTuple<Real, Real> pair ? [pair.Item1.Value, pair.Item2.Value]
        : Constructor(result.GetType()).GetParameters().Select(parameter => ((Real)result.GetType().GetProperty(parameter.Name!)!.GetValue(result)!).Value);
}
