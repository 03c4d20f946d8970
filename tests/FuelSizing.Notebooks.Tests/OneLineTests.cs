using System.Reflection;
using FuelSizing.Systems;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Wherever a value is printed, in a debugger, a log or an exception, it says in one line what it is.</summary>
public class OneLineTests
{
    // A headline that gives a check at both ends of what is assumed is the longest.
    private const int Longest = 400;

    // A derivation is a text of many lines and a statement one sentence, as long as it must be; the others hold columns of
    // numbers or letters and are no value to look at.
    private static readonly HashSet<string> Excused =
    [
        "Working", "Statement", "SizingAnswer", "PointBatch", "PointInputs", "PointOutputs", "PointValues", "CircuitValues", "LiftValues", "InjectorValues", "StreamValues", "CheckReading", "Divisor",
        "StatementText",
    ];

    [Fact]
    public void EverySpecimen_SaysWhatItIs_InOneLine()
    {
        string[] wrong =
        [
            .. from kind in Specimens.Collect()
               where kind.Key.IsPublic && !Excused.Contains(kind.Key.Name.Split('`')[0])
               from specimen in kind.Value
               let text = specimen.ToString() ?? string.Empty
               where text.Length is 0 or > Longest
                   || text.Any(char.IsControl)
                   || text.StartsWith($"{kind.Key.Name.Split('`')[0]} {{", StringComparison.Ordinal)
                   || text == kind.Key.ToString()
                   || text.Contains("NaN", StringComparison.Ordinal)
               select $"{kind.Key.Name}: {text}",
        ];

        Assert.True(wrong.Length == 0, string.Join('\n', wrong.Distinct()));
    }

    /// <summary>What the compiler writes for a record lists every property, and grows with each.</summary>
    [Fact]
    public void NoPublicType_LeavesItsTextToTheCompilerOrTheRuntime() =>
        Assert.Empty(
            from type in typeof(FuelSystem).Assembly.GetExportedTypes()
            where !Excused.Contains(type.Name.Split('`')[0])
            where !type.IsEnum && !type.IsInterface && !(type.IsAbstract && type.IsSealed) && !typeof(Exception).IsAssignableFrom(type)
            let text = type.GetMethod(nameof(ToString), BindingFlags.Public | BindingFlags.Instance, Type.EmptyTypes)!
            where text.DeclaringType == typeof(object)
                || text.DeclaringType == typeof(ValueType)
                || text.GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>() is not null
            select type.Name);
}
