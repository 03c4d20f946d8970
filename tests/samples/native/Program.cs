using FuelSizing;
using FuelSizing.Checks;
using FuelSizing.Files;
using FuelSizing.Quantities;
using FuelSizing.Samples;
using FuelSizing.Systems;

// A command line that is published as native code: solves the points of a setup's file, and says by its exit code what came of it.
if (Arguments.Of(args) is not { } asked)
{
    Console.Error.WriteLine(Arguments.Usage);
    return ExitCode.BadInput;
}

TextStyle style = asked.Style;
try
{
    Setup setup = Setup.Read(asked.Setup);
    InputQuestion[] open = [.. setup.Questions.Where(question => !asked.Accepted.Contains(question.Input))];
    if (open.Length > 0)
    {
        Console.Error.WriteLine(string.Join(Environment.NewLine, open.Select(question => question.In(style))));
        Console.Error.WriteLine("Nothing was calculated. Correct each value, or confirm it with --accept FIELD.");
        return ExitCode.Implausible;
    }

    NamedPoint[] points = [.. setup.Points.Where(named => asked.Point is null || named.Name == asked.Point)];
    if (points.Length == 0)
    {
        Console.Error.WriteLine($"{asked.Setup} has no operating point{(asked.Point is null ? string.Empty : $" \"{asked.Point}\"")}.");
        return ExitCode.BadInput;
    }

    List<Outcome> outcomes = [];
    foreach (NamedPoint named in points)
    {
        OperatingResult result = setup.System.Solve(named.Point);
        outcomes.Add(result.Outcome);
        Console.WriteLine($"{named.Name}: {result.In(style)}");
        foreach (Margin margin in result.Margins)
        {
            Console.WriteLine($"  {margin.In(style)}");
        }
    }

    foreach (NotJudged gap in setup.System.NotJudged)
    {
        Console.WriteLine($"not judged: {gap.In(style)}");
    }

    Console.WriteLine(Cautions.OneLine);
    return ExitCode.Of(outcomes);
}
catch (Exception refused) when (refused is SetupException or ArgumentOutOfRangeException or IOException or UnauthorizedAccessException)
{
    Console.Error.WriteLine(refused.Message);
    return ExitCode.BadInput;
}
