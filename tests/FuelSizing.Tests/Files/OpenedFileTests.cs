using System.Diagnostics;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Logs;
using FuelSizing.Tests.Logs;

namespace FuelSizing.Tests.Files;

/// <summary>Places that are no ordinary file: every reader ends in the exception that it documents, or reads what comes.</summary>
public sealed class OpenedFileTests : IDisposable
{
    private static readonly string Setups = Path.Combine(AppContext.BaseDirectory, "docs", "wren-setup.json");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-opened-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Folder_GivenAsAFile_IsAnIOExceptionThatSaysSo()
    {
        string folder = _folder.CreateSubdirectory("parts.json").FullName;
        Action[] reads =
        [
            () => Setup.Read(folder),
            () => Catalogue.Read(folder),
            () => RunMappingFile.Read(folder),
            () => RunReader.Open(folder, LogText.Mapping, Atmosphere.Standard),
        ];
        Assert.All(reads, read => Assert.Contains("is a folder", Assert.Throws<IOException>(read).Message, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Pipe_GivenAsAFile_IsReadToItsEnd()
    {
        string pipe = Path.Combine(_folder.FullName, "pipe");
        await Process.Start("mkfifo", [pipe]).WaitForExitAsync();
        Task writing = Task.Run(() => File.WriteAllText(pipe, File.ReadAllText(Setups)));

        Setup piped = Setup.Read(pipe);

        await writing;
        Assert.Equal(Setup.Read(Setups).ToJson(), piped.ToJson());
    }

    [Fact]
    public async Task Pipe_WithALog_IsReadToItsEnd()
    {
        string pipe = Path.Combine(_folder.FullName, "pipe");
        await Process.Start("mkfifo", [pipe]).WaitForExitAsync();
        Task writing = Task.Run(() => File.WriteAllText(pipe, LogText.Heading + "0.00,3000,0.50,350,0.85\n"));

        using RunReader reader = RunReader.Open(pipe, LogText.Mapping, Atmosphere.Standard);

        Assert.True(reader.TryRead(out RunRow row));
        await writing;
        Assert.Equal(3000, row.Speed.RevolutionsPerMinute, 9);
    }
}
