namespace FuelSizing.Fuzz;

/// <summary>A file for readers that open one, in memory where the system has such a place.</summary>
internal sealed class ScratchFile : IDisposable
{
    private const string InMemory = "/dev/shm";

    /// <summary>Makes room for it; it comes into being when first written.</summary>
    public ScratchFile(string ending)
    {
        string folder = Directory.Exists(InMemory) ? InMemory : System.IO.Path.GetTempPath();
        Path = System.IO.Path.Combine(folder, $"fuelsizing-fuzz-{Guid.NewGuid():N}{ending}");
    }

    public string Path { get; }

    /// <summary>Writes it anew.</summary>
    public string Holding(byte[] input)
    {
        File.WriteAllBytes(Path, input);
        return Path;
    }

    public void Dispose() => File.Delete(Path);
}
