using System.IO.Compression;
using System.Security.Cryptography;

namespace FuelSizing.Fuzz;

/// <summary>The kept inputs of one reader: good files, one for each kind of answer, and all that ever failed.</summary>
internal sealed class Corpus
{
    /// <summary>Bytes from which an input is kept packed, for long ones say one thing over and over.</summary>
    private const int Long = 8_000;

    private const string Packed = ".gz";

    private readonly FuzzedReader _reader;
    private readonly string _folder;

    /// <summary>The corpus of a reader, in the tree that the program was built from.</summary>
    public Corpus(FuzzedReader reader)
    {
        _reader = reader;
        DirectoryInfo? tree = new(AppContext.BaseDirectory);
        while (tree is not null && !File.Exists(Path.Combine(tree.FullName, "FuelSizing.sln")))
        {
            tree = tree.Parent;
        }

        Tree = tree?.FullName ?? throw new InvalidOperationException("The program runs outside its repository.");
        _folder = Path.Combine(Tree, "tests", "FuelSizing.Fuzz", "corpus", reader.Name);
    }

    /// <summary>The repository.</summary>
    public string Tree { get; }

    /// <summary>The inputs, in the order of their names.</summary>
    public IReadOnlyList<(string Name, byte[] Input)> Inputs() =>
    [
        .. Directory.GetFiles(_folder).Order(StringComparer.Ordinal).Select(path => (Path.GetFileName(path), Read(path))),
    ];

    /// <summary>Keeps an input under a name that says why; the same one only once.</summary>
    /// <returns>Its place.</returns>
    public string Keep(string why, byte[] input)
    {
        Directory.CreateDirectory(_folder);
        string path = Path.Combine(
            _folder, $"{why}-{Convert.ToHexStringLower(SHA256.HashData(input))[..8]}{_reader.Ending}{(input.Length >= Long ? Packed : string.Empty)}");
        using Stream file = File.Create(path);
        using Stream content = input.Length >= Long ? new GZipStream(file, CompressionLevel.SmallestSize) : file;
        content.Write(input);
        return path;
    }

    private static byte[] Read(string path)
    {
        if (!path.EndsWith(Packed, StringComparison.Ordinal))
        {
            return File.ReadAllBytes(path);
        }

        using GZipStream content = new(File.OpenRead(path), CompressionMode.Decompress);
        using MemoryStream read = new();
        content.CopyTo(read);
        return read.ToArray();
    }
}
