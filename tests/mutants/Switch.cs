using System.Collections;
using System.Reflection;
using System.Runtime.Loader;

namespace FuelSizing.Mutants;

/// <summary>The switch that dotnet-stryker compiles into the library with all mutants: which of them is active.</summary>
internal sealed class Switch
{
    /// <summary>The number of no mutant.</summary>
    public const int None = -1;

    private readonly FieldInfo _active;
    private readonly FieldInfo _capture;
    private readonly MethodInfo _covered;

    private Switch(Type control)
    {
        _active = control.GetField("ActiveMutant")!;
        _capture = control.GetField("CaptureCoverage")!;
        _covered = control.GetMethod("GetCoverageData")!;
        Active = None;
    }

    /// <summary>The mutant that is active.</summary>
    public int Active
    {
        set => _active.SetValue(null, value);
    }

    /// <summary>Finds the switch in the library of a folder.</summary>
    public static Switch In(string folder)
    {
        AssemblyLoadContext.Default.Resolving += (context, name) =>
            Path.Combine(folder, $"{name.Name}.dll") is { } path && File.Exists(path) ? context.LoadFromAssemblyPath(path) : null;
        Assembly library = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, "FuelSizing.dll"));
        return new(library.GetTypes().Single(type => type.Name == "MutantControl"));
    }

    /// <summary>The mutants that a test comes past.</summary>
    public IReadOnlyCollection<int> CoveredBy(TestCase test)
    {
        _capture.SetValue(null, true);
        _covered.Invoke(null, null);
        test.Failure();
        HashSet<int> covered = [.. ((IEnumerable)_covered.Invoke(null, null)!).OfType<IEnumerable<int>>().SelectMany(part => part)];
        _capture.SetValue(null, false);
        return covered;
    }
}
