namespace FuelSizing.Notebooks.Tests;

/// <summary>Files of the repository that the tests were built in.</summary>
internal static class Repository
{
    private static readonly Lazy<string> Root = new(() =>
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FuelSizing.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    });

    public static string PathOf(params string[] parts) => Path.Combine([Root.Value, .. parts]);
}
