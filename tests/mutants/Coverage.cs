using System.Globalization;

namespace FuelSizing.Mutants;

/// <summary>Which mutants each test comes past, kept in a file from one process to the next.</summary>
internal sealed class Coverage
{
    private readonly string _path;
    private readonly Switch _mutants;
    private readonly Dictionary<string, int[]> _known;

    /// <summary>Reads what is known.</summary>
    /// <param name="path">The file, one test a line; made where there is none.</param>
    /// <param name="mutants">The switch, which counts.</param>
    public Coverage(string path, Switch mutants)
    {
        (_path, _mutants) = (path, mutants);
        _known = File.Exists(path)
            ? File.ReadLines(path)
                .Select(line => line.Split('\t'))
                .DistinctBy(line => line[0])
                .ToDictionary(line => line[0], line => Numbers(line[1]))
            : [];
    }

    /// <summary>The mutants that a test comes past.</summary>
    public int[] Of(TestCase test)
    {
        if (!_known.TryGetValue(test.Name, out int[]? covered))
        {
            covered = test.IsSound ? [.. _mutants.CoveredBy(test)] : [];
            _known[test.Name] = covered;
            File.AppendAllText(_path, $"{test.Name}\t{string.Join(',', covered)}\n");
        }

        return covered;
    }

    private static int[] Numbers(string list) =>
        [.. list.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(number => int.Parse(number, CultureInfo.InvariantCulture))];
}
