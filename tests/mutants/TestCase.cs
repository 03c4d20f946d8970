using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using System.Text.RegularExpressions;

namespace FuelSizing.Mutants;

/// <summary>A test with its arguments, run in this process.</summary>
/// <param name="name">Full name and place among its arguments.</param>
/// <param name="method">The method.</param>
/// <param name="arguments">What it is called with.</param>
internal sealed class TestCase(string name, MethodInfo method, object?[] arguments)
{
    private const double MinimumMilliseconds = 3_000;
    private const double TimesItsOwn = 20;
    private static readonly TimeSpan MaximumWait = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(100);
    private const int StackBytes = 16 << 20;

    private bool? _isSound;

    /// <summary>Full name and place among its arguments.</summary>
    public string Name { get; } = name;

    /// <summary>
    /// True if it holds without a mutant, which it is asked once, before any other: whatever is made once is then made right, and what fails by itself judges nothing.
    /// </summary>
    public bool IsSound => _isSound ??= Failure() is null;

    /// <summary>How much of the processor's time it takes without a mutant: what others do on the machine is no part of it.</summary>
    public double Milliseconds { get; set; }

    /// <summary>The tests of a folder whose names match.</summary>
    public static IEnumerable<TestCase> In(string folder, string pattern)
    {
        Assembly assembly = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, "FuelSizing.Tests.dll"));
        Regex wanted = new(pattern);
        return
            from type in assembly.GetTypes()
            from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            let full = $"{type.FullName}.{method.Name}"
            where wanted.IsMatch(full)
            from row in Rows(method).Select((arguments, place) => (arguments, place))
            select new TestCase(
                string.Create(CultureInfo.InvariantCulture, $"{full}#{row.place}"), method, Fitted(method, row.arguments));
    }

    /// <summary>Runs it; the exception's name if it fails.</summary>
    public string? Failure()
    {
        object? target = method.DeclaringType!.GetConstructors() is [var made, ..]
            ? made.Invoke([.. made.GetParameters().Select(parameter => Silent.Of(parameter.ParameterType))])
            : null;
        try
        {
            if (method.Invoke(target, arguments) is Task running)
            {
                running.GetAwaiter().GetResult();
            }

            return null;
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            // What an awaited test throws comes as it is, the rest in a wrapping.
            return (error is TargetInvocationException { InnerException: { } inner } ? inner : error).GetType().Name;
        }
        finally
        {
            (target as IDisposable)?.Dispose();
        }
    }

    /// <summary>Runs it with a watch.</summary>
    public void Time()
    {
        TimeSpan start = Environment.CpuUsage.TotalTime;
        Failure();
        Milliseconds = (Environment.CpuUsage.TotalTime - start).TotalMilliseconds;
    }

    /// <summary>Runs it, and waits many times as long as it takes without a mutant, by the processor's time; false if it has not ended by then.</summary>
    public bool EndsInTime(out string? failure)
    {
        string? found = null;
        Thread thread = new(() => found = Failure(), StackBytes) { IsBackground = true };
        TimeSpan maximum = TimeSpan.FromMilliseconds(MinimumMilliseconds + (TimesItsOwn * Milliseconds));
        TimeSpan start = Environment.CpuUsage.TotalTime;
        long watch = Stopwatch.GetTimestamp();
        thread.Start();
        bool ended = thread.Join(Look);

        // A test that waits for the machine has not run in circles; one that waits for nothing uses no time, and is left after some minutes.
        while (!ended && Environment.CpuUsage.TotalTime - start < maximum && Stopwatch.GetElapsedTime(watch) < MaximumWait)
        {
            ended = thread.Join(Look);
        }

        failure = found;
        return ended;
    }

    // The framework's attributes are those of the tests' own folder, so they are known here by name only.
    private static IEnumerable<object?[]> Rows(MethodInfo method)
    {
        foreach (Attribute attribute in method.GetCustomAttributes())
        {
            if (attribute.GetType().Name == "FactAttribute")
            {
                yield return [];
            }
            else if (attribute.GetType().GetMethod("GetData", [typeof(MethodInfo)]) is { } data)
            {
                foreach (object?[] row in (IEnumerable<object?[]>)data.Invoke(attribute, [method])!)
                {
                    yield return row;
                }
            }
        }
    }

    private static object?[] Fitted(MethodInfo method, object?[] row) =>
        [
            .. row.Zip(method.GetParameters(), (value, parameter) =>
                value is IConvertible && parameter.ParameterType.IsPrimitive
                    ? Convert.ChangeType(value, parameter.ParameterType, CultureInfo.InvariantCulture)
                    : value),
        ];
}
