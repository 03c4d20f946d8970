namespace FuelSizing.Tests.Data;

/// <summary>The schema of the docs is what the form gives. Where the variable FUELSIZING_FIELDS says <c>write</c>, it is written anew: <c>bash .ci/fields --write</c>.</summary>
public class ResultSchemaTests
{
    [Fact]
    public void Schema_OfTheDocs_IsWhatTheFormGives()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FuelSizing.sln")))
        {
            folder = folder.Parent;
        }

        string path = Path.Combine(folder!.FullName, "docs", "result.schema.json");
        if (Environment.GetEnvironmentVariable("FUELSIZING_FIELDS") == "write")
        {
            File.WriteAllText(path, ResultSchema.Text());
        }
        else
        {
            Assert.Equal(ResultSchema.Text(), File.ReadAllText(path));
        }
    }
}
