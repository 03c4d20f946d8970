using System.Text;

namespace FuelSizing.Files;

/// <summary>One file's name and text.</summary>
/// <param name="Name">As the reader was given it.</param>
/// <param name="Text">Everything in it.</param>
internal readonly record struct FileText(string Name, string Text)
{
    private const long MaximumBytes = 64 << 20;

    /// <summary>Reads a file; none where it cannot be text, which is kept as a problem.</summary>
    public static FileText? Of(string file, ProblemList problems)
    {
        using FileStream stream = File.OpenRead(file);
        if (stream.Length > MaximumBytes)
        {
            problems.Add(file, 1, "file", "is larger than 64 MB. Split it.");
            return null;
        }

        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        ReadOnlySpan<byte> content = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble)
            ? bytes.AsSpan(Encoding.UTF8.Preamble.Length)
            : bytes;
        try
        {
            return new(file, new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(content));
        }
        catch (DecoderFallbackException invalid)
        {
            int line = 1 + content[..Math.Max(0, invalid.Index)].Count((byte)'\n');
            problems.Add(file, line, "file", "is not UTF-8 here. Save it as UTF-8.");
            return null;
        }
    }
}
