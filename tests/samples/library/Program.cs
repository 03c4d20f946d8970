using FuelSizing;
using FuelSizing.Checks;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Systems;
using UnitsNet;

// Reads a setup, sweeps it up to its point of highest boost, prints the verdict and keeps the result as data.
if (args.Length != 2)
{
    Console.Error.WriteLine("usage: Library SETUP RESULT");
    return 2;
}

Setup setup;
try
{
    setup = Setup.Read(args[0]);
}
catch (Exception refused) when (refused is SetupException or IOException)
{
    Console.Error.WriteLine(refused.Message);
    return 2;
}

// Possible, and not plausible: a value is probably in another unit. Whoever gave it has to say so.
if (setup.Questions.Count > 0)
{
    Console.Error.WriteLine(string.Join(Environment.NewLine, setup.Questions));
    return 6;
}

if (setup.Points.MaxBy(named => named.Point.Boost)?.Point is not { } peak || peak.Boost <= Pressure.Zero)
{
    Console.Error.WriteLine("The setup has no operating point with boost to sweep up to.");
    return 2;
}

// The same air, voltage and fuel temperature as at that point: another altitude is another answer.
SweepResult sweep = setup.System.Sweep(
    [0.4 * peak.Speed, 0.6 * peak.Speed, 0.8 * peak.Speed, peak.Speed],
    [Pressure.Zero, peak.Boost / 2, peak.Boost],
    peak.Conditions);

Console.WriteLine(sweep.Verdict);
foreach (Remedy remedy in sweep.Remedies)
{
    Console.WriteLine($"  {remedy}");
}

// "Holds as far as judged" is not "holds": what was not judged belongs beside the verdict.
foreach (NotJudged gap in sweep.Verdict.NotJudged)
{
    Console.WriteLine($"  not judged: {gap}");
}

ResultData.Of(sweep).Write(args[1]);
Console.WriteLine($"{args[1]}: {ResultData.Read(args[1])}");
Console.WriteLine(Cautions.OneLine);
return 0;
