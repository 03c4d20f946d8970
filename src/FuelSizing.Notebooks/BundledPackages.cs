using System.Reflection;
using System.Text.RegularExpressions;
using FuelSizing.Interactive;

namespace FuelSizing.Notebooks;

/// <summary>Answers a notebook's <c>#r "nuget:FuelSizing…"</c> with the library this program was built with.</summary>
/// <remarks>So a notebook runs on a clean clone, where no package has been made yet, and its values are of the types the program knows.</remarks>
internal static partial class BundledPackages
{
    /// <summary>The version of the library in this program.</summary>
    public static string Version { get; } =
        typeof(FuelSizingExtension).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <summary>The assemblies a cell may use once it has asked for the package.</summary>
    public static IReadOnlyList<string> AssemblyPaths { get; } =
    [
        typeof(FuelSizingExtension).Assembly.Location,
        .. typeof(FuelSizingExtension).Assembly.GetReferencedAssemblies()
            .Concat([new AssemblyName("FuelSizing"), new AssemblyName("UnitsNet"), new AssemblyName("MathNet.Numerics")])
            .Where(name => name.Name is "FuelSizing" or "UnitsNet" or "MathNet.Numerics" or "OxyPlot")
            .DistinctBy(name => name.Name)
            .Select(name => Assembly.Load(name).Location),
    ];

    /// <summary>Blanks the lines that ask for the library, keeping line numbers.</summary>
    /// <exception cref="NotebookException">A line asks for another version than <see cref="Version"/>, or for anything else.</exception>
    public static string Satisfy(NotebookCell cell)
    {
        string rest = Directive().Replace(cell.Text, match =>
        {
            string wanted = match.Groups["version"].Value.Trim();
            if (wanted.Length > 0 && wanted != Version)
            {
                throw new NotebookException(
                    $"cell {cell.Number}, line {CellDirectives.Line(cell.Text, match.Index)}: asks for {match.Groups["package"].Value} {wanted}, but this program carries {Version}. Change the line to {Version}, or run the notebook with the program of that version.");
            }

            return "";
        });
        return CellDirectives.Satisfy(cell.Number, rest);
    }

    [GeneratedRegex("""^[ \t]*#r[ \t]+"[ \t]*nuget:[ \t]*(?<package>FuelSizing(\.Interactive)?)[ \t]*(,(?<version>[^"\n]*))?"[ \t]*$""", RegexOptions.Multiline | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Directive();
}
