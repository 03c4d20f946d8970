using System.Globalization;
using FuelSizing.Mutants;

// judge FOLDER IDS TESTS VERDICTS [MOST]
//   FOLDER    of the tests' assembly and the library with all mutants in it
//   IDS       file of the mutants to judge, one number a line
//   TESTS     regular expression on a test's full name
//   VERDICTS  file to which lines are added: number, verdict, and the test that noticed; those that are in it are done
//   MOST      milliseconds; slower tests are left out
// How long each test takes is kept in FOLDER.times, and what it comes past in FOLDER.coverage, since both take minutes to find: delete them when tests change.
// Ends with 3 or 4 where a new process must go on: a test did not end, or a mutant left something behind.
Switch mutants = Switch.In(args[0]);
TestCase[] tests = [.. TestCase.In(args[0], args[2])];

// How long they take is known from the process before: those that are too slow are not run again to find out.
string times = args[0] + ".times";
double maximum = args.Length > 4 ? double.Parse(args[4], CultureInfo.InvariantCulture) : double.PositiveInfinity;
Dictionary<string, double> known = File.Exists(times)
    ? File.ReadLines(times).Select(line => line.Split('\t')).DistinctBy(line => line[0]).ToDictionary(line => line[0], line => double.Parse(line[1], CultureInfo.InvariantCulture))
    : [];
tests = [.. tests.Where(test => known.GetValueOrDefault(test.Name) <= maximum)];
foreach (TestCase test in tests)
{
    if (known.TryGetValue(test.Name, out double milliseconds))
    {
        test.Milliseconds = milliseconds;
    }
    else if (test.IsSound)
    {
        test.Time();
        File.AppendAllText(times, string.Create(CultureInfo.InvariantCulture, $"{test.Name}\t{test.Milliseconds}\n"));
    }
}

tests = [.. tests.Where(test => test.Milliseconds <= maximum)];

Coverage coverage = new(args[0] + ".coverage", mutants);
ILookup<int, TestCase> covering = tests
    .SelectMany(test => coverage.Of(test).Select(mutant => (mutant, test)))
    .ToLookup(pair => pair.mutant, pair => pair.test);
Console.WriteLine($"{tests.Length} tests, {covering.Count} mutants covered");

string[][] verdicts = File.Exists(args[3]) ? [.. File.ReadLines(args[3]).Select(line => line.Split('\t'))] : [];
HashSet<string> done = [.. verdicts.Select(verdict => verdict[0])];

// What noticed a mutant is likely to notice its neighbour.
Dictionary<string, int> killings = [];
foreach (string[] verdict in verdicts)
{
    killings[verdict[2]] = killings.Count + 1;
}

int killed = verdicts.Length;
foreach (string line in File.ReadLines(args[1]).Where(line => !done.Contains(line)))
{
    int mutant = int.Parse(line, CultureInfo.InvariantCulture);
    string verdict = covering.Contains(mutant) ? "Survived" : "NoCoverage";
    string by = string.Empty;
    int exit = 0;
    foreach (TestCase test in covering[mutant].OrderByDescending(test => killings.GetValueOrDefault(test.Name)).ThenBy(test => test.Milliseconds))
    {
        if (!test.IsSound)
        {
            continue;
        }

        mutants.Active = mutant;
        bool ended = test.EndsInTime(out string? failure);
        mutants.Active = Switch.None;
        if (ended && failure is null)
        {
            continue;
        }

        (verdict, by) = (ended ? "Killed" : "Timeout", test.Name);
        killings[by] = ++killed;
        exit = !ended ? 3 : test.Failure() is not null ? 4 : 0;
        break;
    }

    File.AppendAllText(args[3], $"{line}\t{verdict}\t{by}\n");
    if (exit != 0)
    {
        Environment.Exit(exit);
    }
}
