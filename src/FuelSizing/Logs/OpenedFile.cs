namespace FuelSizing.Logs;

/// <summary>Opens files so that whatever cannot be read ends in the one exception that is documented.</summary>
internal static class OpenedFile
{
    /// <summary>Opens a file, or a pipe, for reading from its start to its end.</summary>
    /// <param name="path">Its path.</param>
    /// <returns>The open file; it may be one that cannot be sought.</returns>
    /// <exception cref="IOException">It cannot be read: there is none, it is a folder, or this user may not read it.</exception>
    public static FileStream At(string path)
    {
        try
        {
            return new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1, FileOptions.SequentialScan);
        }
        catch (UnauthorizedAccessException refused)
        {
            throw new IOException(
                Directory.Exists(path) ? $"{path} is a folder. Give a file in it." : $"{path} may not be read by this user. Change its permissions.", refused);
        }
    }
}
