using System.Globalization;
using FuelSizing.Mutants;

// judge FOLDER IDS TESTS VERDICTS [MOST]
//   FOLDER    of the tests' assembly and the library with all mutants in it
//   IDS       file of the mutants to judge, one number a line
//   TESTS     regular expression on a test's full name
//   VERDICTS  file to which lines are added: number, verdict, and the test that noticed; those that are in it are done
//   MOST      milliseconds; slower tests are left out
// What each test comes past is kept in FOLDER.coverage, since it takes minutes to find: delete it when tests change.
// Ends with 3 or 4 where a new process must go on: a test did not end, or a mutant left something behind.
Switch mutants = Switch.In(args[0]);
TestCase[] tests = [.. TestCase.In(args[0], args[2])];

// Once without a mutant, so that whatever is made once is made right; what fails by itself judges nothing.
tests = [.. tests.Where(test => test.Failure() is null)];
foreach (TestCase test in tests)
{
    test.Time();
}

if (args.Length > 4)
{
    double maximum = double.Parse(args[4], CultureInfo.InvariantCulture);
    tests = [.. tests.Where(test => test.Milliseconds <= maximum)];
}

Coverage coverage = new(args[0] + ".coverage", mutants);
ILookup<int, TestCase> covering = tests
    .SelectMany(test => coverage.Of(test).Select(mutant => (mutant, test)))
    .ToLookup(pair => pair.mutant, pair => pair.test);
Console.WriteLine($"{tests.Length} tests, {covering.Count} mutants covered");

HashSet<string> done = File.Exists(args[3]) ? [.. File.ReadLines(args[3]).Select(line => line.Split('\t')[0])] : [];
foreach (string line in File.ReadLines(args[1]).Where(line => !done.Contains(line)))
{
    int mutant = int.Parse(line, CultureInfo.InvariantCulture);
    string verdict = covering.Contains(mutant) ? "Survived" : "NoCoverage";
    string by = string.Empty;
    int exit = 0;
    foreach (TestCase test in covering[mutant].OrderBy(test => test.Milliseconds))
    {
        mutants.Active = mutant;
        bool ended = test.EndsInTime(out string? failure);
        mutants.Active = Switch.None;
        if (ended && failure is null)
        {
            continue;
        }

        (verdict, by) = (ended ? "Killed" : "Timeout", test.Name);
        exit = !ended ? 3 : test.Failure() is not null ? 4 : 0;
        break;
    }

    File.AppendAllText(args[3], $"{line}\t{verdict}\t{by}\n");
    if (exit != 0)
    {
        Environment.Exit(exit);
    }
}
