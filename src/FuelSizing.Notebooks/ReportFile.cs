namespace FuelSizing.Notebooks;

/// <summary>Writes a report so that a reader finds a whole one at its place, earlier or later, and never half of one.</summary>
internal static class ReportFile
{
    public static async Task WriteAsync(FileInfo place, string page)
    {
        if (IsDevice(place.FullName))
        {
            await File.WriteAllTextAsync(place.FullName, page).ConfigureAwait(false);
            return;
        }

        // In the same folder, for a move between file systems is a copy, and a copy can stop half-way.
        string draft = Path.Combine(place.DirectoryName!, $".{place.Name}.{Guid.NewGuid():N}.part");
        try
        {
            await File.WriteAllTextAsync(draft, page).ConfigureAwait(false);
            File.Move(draft, place.FullName, overwrite: true);
        }
        catch
        {
            File.Delete(draft);
            throw;
        }
    }

    /// <summary>A terminal or the bin may be written to, but a file moved over it would take its place.</summary>
    private static bool IsDevice(string path) =>
        !OperatingSystem.IsWindows() && (path.StartsWith("/dev/", StringComparison.Ordinal) || path.StartsWith("/proc/", StringComparison.Ordinal));
}
