using System.Globalization;
using FuelSizing.Aot;
using FuelSizing.Checks;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Selection;
using FuelSizing.Systems;
using UnitsNet;

// Solves a case as native code: a system made in code, one read from a setup's file, and parts chosen from a catalogue's.
// Every number is printed with all its digits, so that .ci/aot can compare it with the same program run by the JIT.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Length != 2)
{
    Console.Error.WriteLine("usage: FuelSizing.Aot SETUP CATALOGUE");
    return 2;
}

Setup readme = Setup.Of(ReadmeSystem.System, ("full load", ReadmeSystem.FullLoad));
Setup file = Setup.Read(args[0]);
Print("made in code", readme);
Print("read from a file", file);

string text = file.ToJson();
Console.WriteLine($"written and read back: {Setup.Parse("again.json", text).ToJson() == text}, {text.Length} characters");

OperatingResult fullLoad = readme.System.Solve(ReadmeSystem.FullLoad);
string data = ResultData.Of(fullLoad).ToJson();
Console.WriteLine($"a result written and read back: {ResultData.Parse("full-load.json", data).ToJson() == data}, {data.Length} characters");
Console.WriteLine(data);

SweepResult sweep = readme.System.Sweep(
    [RotationalSpeed.FromRevolutionsPerMinute(3000), RotationalSpeed.FromRevolutionsPerMinute(6800)],
    [Pressure.Zero, Pressure.FromPoundsForcePerSquareInch(8)]);
Console.WriteLine(sweep.Verdict.Headline);
string grid = ResultData.Of(sweep).ToJson();
Console.WriteLine($"a sweep written and read back: {ResultData.Parse("sweep.json", grid) == ResultData.Of(sweep)}, {grid.Length} characters");
foreach (Remedy remedy in sweep.Remedies)
{
    Console.WriteLine($"  {remedy.Text}");
}

Catalogue catalogue = Catalogue.Read(args[1]);
Ranking ranking = Ranking.Of(
    [Stage.Of("full load", readme.System, ReadmeSystem.FullLoad)],
    CandidateParts.Of(catalogue.Injectors, [.. PumpArrangement.InParallel(catalogue.Pumps, 2)], catalogue.Regulators));
Console.WriteLine(ranking.Headline);

try
{
    Setup.Parse("malformed.json", text.Replace("mL/min", "mL", StringComparison.Ordinal));
}
catch (SetupException refused)
{
    Console.WriteLine(refused.Message);
}

return 0;

static void Print(string title, Setup setup)
{
    Console.WriteLine(title);
    foreach (NamedPoint named in setup.Points)
    {
        OperatingResult result = setup.System.Solve(named.Point);
        Console.WriteLine($"  {named.Name}: {result.Limiting}");
        Console.WriteLine($"    {result.Demand.MassFlow.KilogramsPerSecond:R} kg/s, {result.RailGauge.Pascals:R} Pa, {result.DutyCycle?.DecimalFractions:R}");
        Console.WriteLine($"    {result.PumpFlow?.CubicMetersPerSecond:R} m³/s, {result.Circuit.InletGauge?.Pascals:R} Pa, {result.Circuit.OutletGauge?.Pascals:R} Pa");
        foreach (Margin margin in result.Margins)
        {
            Console.WriteLine($"    {margin}; {margin.Reserve?.DecimalFractions:R}");
        }
    }
}
