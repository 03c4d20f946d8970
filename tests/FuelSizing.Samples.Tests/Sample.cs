using System.Diagnostics;

namespace FuelSizing.Samples.Tests;

/// <summary>A sample as it was built: with the solution, or, where FUELSIZING_SAMPLES names a folder, from the package (<c>.ci/samples</c>).</summary>
internal static class Sample
{
    public static string Repository { get; } = Above(AppContext.BaseDirectory);

    public static string Docs(string file) => Path.Combine(Repository, "docs", file);

    /// <summary>How a sample is started, with its output read.</summary>
    public static ProcessStartInfo Start(string folder, string name, params string[] arguments)
    {
        string? built = Environment.GetEnvironmentVariable("FUELSIZING_SAMPLES");
        string place = built is { Length: > 0 }
            ? Path.Combine(built, folder)
            : Path.Combine(Repository, "tests", "samples", folder, "bin", Configuration, "net10.0");
        string assembly = Path.Combine(place, $"{name}.dll");

        // Native code has no assembly.
        ProcessStartInfo start = File.Exists(assembly) ? new("dotnet", [assembly, .. arguments]) : new(Path.Combine(place, name), arguments);
        (start.RedirectStandardOutput, start.RedirectStandardError) = (true, true);
        (start.StandardOutputEncoding, start.StandardErrorEncoding) = (System.Text.Encoding.UTF8, System.Text.Encoding.UTF8);
        return start;
    }

    /// <summary>Runs a sample to its end.</summary>
    public static (int Code, string Output, string Error) Run(string folder, string name, params string[] arguments)
    {
        using Process process = Process.Start(Start(folder, name, arguments))!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    // …/bin/Debug/net10.0/
    private static string Configuration => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    private static string Above(string folder)
    {
        while (!File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("FuelSizing.sln is in no folder above the tests.");
        }

        return folder;
    }
}
