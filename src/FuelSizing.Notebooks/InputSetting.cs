namespace FuelSizing.Notebooks;

/// <summary>One input as the command line gives it.</summary>
/// <param name="Name">Of a variable in the inputs cell.</param>
/// <param name="Value">Plain text: a number, a text, true or false, or a name such as <c>E85</c>; never code.</param>
internal sealed record InputSetting(string Name, string Value)
{
    /// <summary>A path without the numbers of its rows: all rows of a table are one input to a question.</summary>
    public static string WithoutRows(string path)
    {
        for (int open; (open = path.IndexOf('[', StringComparison.Ordinal)) >= 0 && path.IndexOf(']', open) is > 0 and var close;)
        {
            path = path[..open] + path[(close + 1)..];
        }

        return path;
    }

    /// <summary>Reads <c>name=value</c> of each, and refuses a name given twice.</summary>
    public static IReadOnlyList<InputSetting> Parse(IEnumerable<string> settings)
    {
        var parsed = new List<InputSetting>();
        foreach (string setting in settings)
        {
            int sign = setting.IndexOf('=', StringComparison.Ordinal);
            if (sign < 1)
            {
                throw new NotebookException($"--set {setting}: expected name=value, for instance --set boost=8psi.");
            }

            var read = new InputSetting(setting[..sign].Trim(), setting[(sign + 1)..]);
            if (parsed.Exists(other => other.Name == read.Name))
            {
                throw new NotebookException($"--set {read.Name} is given twice. Keep one.");
            }

            parsed.Add(read);
        }

        return parsed;
    }
}
