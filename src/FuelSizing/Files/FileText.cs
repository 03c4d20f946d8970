using System.Text;
using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>One file's name and text.</summary>
/// <param name="Name">As the reader was given it.</param>
/// <param name="Text">Everything in it.</param>
internal readonly record struct FileText(string Name, string Text)
{
    /// <summary>As long as a file may be, unless its form says less.</summary>
    public const int MaximumMegabytes = 64;

    private const int Block = 1 << 16;

    private static Statement Split => Statement.Of("file.split-it", $"Split it.");

    /// <summary>What is said of a text that is too long.</summary>
    public static Statement TooLarge(int megabytes, Statement advice) => Statement.Of("file.too-large", $"is larger than {megabytes} MB. {advice}");

    /// <summary>Reads a file; none where it cannot be text, which is kept as a problem.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="megabytes">As long as it may be.</param>
    /// <param name="advice">What to do with a longer one.</param>
    public static FileText? Of(string file, ProblemList problems, int megabytes = MaximumMegabytes, Statement? advice = null)
    {
        using FileStream stream = OpenedFile.At(file);
        return Of(stream, file, problems, megabytes, advice);
    }

    /// <summary>Reads a stream to its end, which is left open; none where it cannot be text.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="megabytes">As long as it may be.</param>
    /// <param name="advice">What to do with a longer one.</param>
    public static FileText? Of(Stream stream, string name, ProblemList problems, int megabytes = MaximumMegabytes, Statement? advice = null)
    {
        using MemoryStream read = new();
        byte[] block = new byte[Block];
        for (int count; (count = stream.Read(block)) > 0;)
        {
            if (!Kept(read, block, count, megabytes))
            {
                return Longer(name, problems, megabytes, advice);
            }
        }

        return Decoded(name, read.ToArray(), problems);
    }

    /// <summary>The same without waiting.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <param name="megabytes">As long as it may be.</param>
    /// <param name="advice">What to do with a longer one.</param>
    public static async Task<FileText?> OfAsync(
        Stream stream, string name, ProblemList problems, CancellationToken cancellation, int megabytes = MaximumMegabytes, Statement? advice = null)
    {
        using MemoryStream read = new();
        byte[] block = new byte[Block];
        for (int count; (count = await stream.ReadAsync(block, cancellation).ConfigureAwait(false)) > 0;)
        {
            if (!Kept(read, block, count, megabytes))
            {
                return Longer(name, problems, megabytes, advice);
            }
        }

        return Decoded(name, read.ToArray(), problems);
    }

    /// <summary>A file's bytes.</summary>
    public static byte[] Bytes(string text) => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text);

    // A pipe does not tell its length; what a file tells may change while it is read.
    private static bool Kept(MemoryStream read, byte[] block, int count, int megabytes)
    {
        if (read.Length + count > megabytes << 20)
        {
            return false;
        }

        read.Write(block, 0, count);
        return true;
    }

    private static FileText? Longer(string name, ProblemList problems, int megabytes, Statement? advice)
    {
        problems.Add(name, 1, "file", TooLarge(megabytes, advice ?? Split));
        return null;
    }

    private static FileText? Decoded(string file, byte[] bytes, ProblemList problems)
    {
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
            problems.Add(file, line, "file", Statement.Of("file.not-utf8", $"is not UTF-8 here. Save it as UTF-8."));
            return null;
        }
    }
}
