using System.Text.RegularExpressions;

namespace FuelSizing.Tests;

/// <summary>
/// Which folder of the library may know of which, and that no file of the folders that solve and judge knows of one that
/// knows of it. Read off the source: a type's name in the code of a file is an arrow to the file that declares it.
/// </summary>
public partial class ArchitectureTests
{
    /// <summary>The folders, each knowing only of those before it.</summary>
    private static readonly string[] Order =
    [
        "Numerics", "Quantities", "Equations", "Workings",
        "Fuels", "Engines", "Injectors", "Controllers", "Regulators", "Electrical", "Lines", "Pumps",
        "Circuits", "Points", "Checks", "Systems", "Sizing", "Selection", "Uncertainty", "Bench", "Logs", "Findings", "Files", "Front", "Data", "Conformance",
    ];

    private static readonly string[] WithoutCycles = ["Controllers", "Circuits", "Points", "Checks", "Systems"];

    private static readonly SourceFile[] Files = Read();

    [Fact]
    public void Folders_OfTheLibrary_AreAllInTheOrder() =>
        Assert.Equal(Order.Order(), Files.Select(file => file.Folder).Distinct().Order());

    [Fact]
    public void Folders_KnowOnlyOfThoseBeforeThem()
    {
        Dictionary<string, string> declaredIn = Files
            .SelectMany(file => file.Declares, (file, type) => (type, file.Folder))
            .DistinctBy(pair => pair.type)
            .ToDictionary(pair => pair.type, pair => pair.Folder);
        string[] upward =
        [
            .. from file in Files
               from name in file.Uses
               let folder = declaredIn.GetValueOrDefault(name)
               where folder is not null
                   && Array.IndexOf(Order, folder) > Array.IndexOf(Order, file.Folder)
                   && file.Imports.Contains(folder)
               select $"{file.Folder}/{file.Name} knows of {name} in {folder}",
            .. from file in Files
               from folder in file.Imports
               where Array.IndexOf(Order, folder) > Array.IndexOf(Order, file.Folder)
               select $"{file.Folder}/{file.Name} imports {folder}",
        ];
        Assert.Empty(upward.Distinct());
    }

    [Fact]
    public void Files_OfTheFoldersThatSolveAndJudge_FormNoCycle()
    {
        foreach (string folder in WithoutCycles)
        {
            SourceFile[] own = [.. Files.Where(file => file.Folder == folder)];
            List<SourceFile> left = [.. own];
            while (left.Find(file => !left.Exists(other => other != file && file.Knows(other))) is { } leaf)
            {
                left.Remove(leaf);
            }

            // What is left knows, by way of others, of itself.
            Assert.True(left.Count == 0, $"{folder}: {string.Join("; ", left.Select(file => $"{file.Name} knows of {string.Join(", ", left.Where(other => other != file && file.Knows(other)).Select(other => other.Name))}"))}");
        }
    }

    [Fact]
    public void Folders_OfManyFiles_HaveRooms() =>
        Assert.Empty(
            from file in Files
            group file by file.Room into room
            where room.Count() > 27
            select $"{room.Key} holds {room.Count()} files");

    private static SourceFile[] Read()
    {
        string root = Path.Combine(Repository(), "src", "FuelSizing");
        return
        [
            .. from path in Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
               let relative = Path.GetRelativePath(root, path).Replace('\\', '/')
               where relative.Contains('/', StringComparison.Ordinal) && !relative.StartsWith("obj/", StringComparison.Ordinal) && !relative.StartsWith("bin/", StringComparison.Ordinal)
               orderby relative
               select new SourceFile(relative, File.ReadAllText(path)),
        ];
    }

    private static string Repository()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FuelSizing.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("The tests run outside the repository.");
    }

    private sealed partial class SourceFile
    {
        public SourceFile(string path, string text)
        {
            Folder = path[..path.IndexOf('/', StringComparison.Ordinal)];
            Room = path[..path.LastIndexOf('/')];
            Name = path[(path.LastIndexOf('/') + 1)..];
            string code = Strings().Replace(Comments().Replace(text, string.Empty), match => Holes(match.Value));
            Imports = [.. Import().Matches(code).Select(match => match.Groups[1].Value)];
            Declares = [.. Declaration().Matches(code).Select(match => match.Groups[1].Value)];
            Uses = [.. Identifier().Matches(Import().Replace(code, string.Empty)).Select(match => match.Value)];
        }

        public string Folder { get; }

        public string Room { get; }

        public string Name { get; }

        public HashSet<string> Imports { get; }

        public HashSet<string> Declares { get; }

        public HashSet<string> Uses { get; }

        public bool Knows(SourceFile other) => other.Declares.Any(type => !Declares.Contains(type) && Uses.Contains(type));

        // Of an interpolated string only the code in its holes counts.
        private static string Holes(string literal) =>
            literal.Contains('$', StringComparison.Ordinal)
                ? string.Join(' ', Hole().Matches(literal).Select(match => match.Value))
                : "\"\"";

        [GeneratedRegex(@"//[^\n]*|/\*.*?\*/", RegexOptions.Singleline)]
        private static partial Regex Comments();

        [GeneratedRegex(@"[$@]*""(?:\\.|[^""\\\n])*""")]
        private static partial Regex Strings();

        [GeneratedRegex(@"\{[^{}]*\}")]
        private static partial Regex Hole();

        [GeneratedRegex(@"^using (?:static )?FuelSizing\.(\w+);", RegexOptions.Multiline)]
        private static partial Regex Import();

        [GeneratedRegex(@"^(?:(?:public|internal|file|private|sealed|static|abstract|readonly|partial|ref|unsafe) )*(?:class|record struct|record|struct|enum|interface) (\w+)", RegexOptions.Multiline)]
        private static partial Regex Declaration();

        // A type's name that stands for the type: not a member of something else, nor a member that is declared or named.
        [GeneratedRegex(@"(?<!(?:\b[A-Z]\w*|\b(?:double|bool|int|long|string|object)|[>\]])\??\s)(?<![\w.])[A-Z]\w*")]
        private static partial Regex Identifier();
    }
}
