namespace FuelSizing.Notebooks;

/// <summary>Writes a report so that a reader finds a whole one at its place, earlier or later, and never half of one.</summary>
internal static class ReportFile
{
    public static Task WriteAsync(FileInfo place, string page) => Task.Run(() => Write(place, page));

    public static void Write(FileInfo place, string page)
    {
        if (IsDevice(place.FullName))
        {
            File.WriteAllText(place.FullName, page);
            return;
        }

        // In the same folder, for a move between file systems is a copy, and a copy can stop half-way.
        string draft = Path.Combine(place.DirectoryName!, $".{place.Name}.{Guid.NewGuid():N}.part");
        try
        {
            File.WriteAllText(draft, page);
            File.Move(draft, place.FullName, overwrite: true);
        }
        catch
        {
            File.Delete(draft);
            throw;
        }
    }

    /// <summary>Refuses to write a report over the notebook that it is of, or over any other.</summary>
    /// <param name="place">Where the report is to be.</param>
    /// <param name="notebook">The notebook.</param>
    /// <exception cref="NotebookException">The report would take a notebook's place.</exception>
    public static void RefuseNotebook(FileInfo place, FileInfo notebook)
    {
        // By its content too: a link of either kind, or another spelling of the path, leads to the same file.
        if (place.Extension.Equals(".ipynb", StringComparison.OrdinalIgnoreCase)
            || (!IsDevice(place.FullName) && place.Exists && File.ReadAllBytes(place.FullName).AsSpan().SequenceEqual(File.ReadAllBytes(notebook.FullName))))
        {
            throw new NotebookException($"--output {place.Name} is a notebook, which the report would replace. Give another file, such as {Path.ChangeExtension(place.Name, ".html")}.");
        }
    }

    /// <summary>A terminal or the bin may be written to, but a file moved over it would take its place.</summary>
    private static bool IsDevice(string path) =>
        !OperatingSystem.IsWindows() && (path.StartsWith("/dev/", StringComparison.Ordinal) || path.StartsWith("/proc/", StringComparison.Ordinal));
}
