using System.Diagnostics;
using System.Globalization;
using FuelSizing.Explore;
using FuelSizing.Tests;

// explore MINUTES [SEED]
// explore --rounds ROUNDS SEED
//   MINUTES  how long; the test that is running then goes on to its end
//   ROUNDS   how often over all tests, however long that takes: with a seed the same cases at every run
//   SEED     base seed of the first round, and one more for each that follows; the clock gives one where it is left out
// Goes over the property tests again and again, each round on cases of another base seed. Ends with 1 if one failed.
bool byRounds = args[0] == "--rounds";
int rounds = byRounds ? int.Parse(args[1], CultureInfo.InvariantCulture) : int.MaxValue;
TimeSpan time = byRounds ? TimeSpan.MaxValue : TimeSpan.FromMinutes(double.Parse(args[0], CultureInfo.InvariantCulture));
int seedAt = byRounds ? 2 : 1;
ulong first = args.Length > seedAt ? ulong.Parse(args[seedAt], CultureInfo.InvariantCulture) : (ulong)DateTimeOffset.UtcNow.ToUnixTimeSeconds();
long start = Stopwatch.GetTimestamp();

List<PropertyTest> tests = [.. PropertyTest.In(typeof(PinnedSample).Assembly)];
HashSet<string> failing = [];
int whole = 0;
for (bool inTime = true; inTime && whole < rounds;)
{
    PinnedSample.BaseSeed = first + (ulong)whole;
    List<PropertyTest> drawing = [];
    foreach (PropertyTest test in tests)
    {
        long before = PinnedSample.Cases;
        string? failure = test.Failure();
        if (PinnedSample.Cases > before)
        {
            drawing.Add(test);
        }

        if (failure is not null && PinnedSample.Cases > before)
        {
            failing.Add(test.Name);
            Console.WriteLine($"FAILS with base seed {PinnedSample.BaseSeed}: {test.Name}\n{failure}\n");
        }

        inTime = Stopwatch.GetElapsedTime(start) < time;
        if (!inTime)
        {
            break;
        }
    }

    if (inTime)
    {
        // What has drawn no case in a whole round is no property test.
        (tests, whole) = (drawing, whole + 1);
    }
}

Console.WriteLine(string.Create(
    CultureInfo.InvariantCulture,
    $"{PinnedSample.Cases:N0} cases of {tests.Count} property tests, {whole} whole rounds, base seeds from {first}, {Stopwatch.GetElapsedTime(start).TotalMinutes:0.0} min: {failing.Count} tests with failing seeds."));
return failing.Count > 0 ? 1 : 0;
