using System.Globalization;
using FuelSizing.Fuzz;
using SharpFuzz;

// READER COUNT [SEED] [--keep]: mutates the reader's kept inputs COUNT times. Exit code 1 on a fault, 3 on a hang, 2 on wrong arguments.
// afl READER: has afl-fuzz, which started this process, say what to read; a fault ends it.
// unpack READER FOLDER: copies the reader's kept inputs to a folder, none of them packed.
FuzzedReader[] readers = FuzzedReader.All();
if (args is ["afl", var fuzzed])
{
    FuzzedReader told = Array.Find(readers, known => known.Name == fuzzed) ?? throw new ArgumentException($"There is no reader {fuzzed}.");
    Fuzzer.OutOfProcess.Run(stream =>
    {
        using MemoryStream input = new();
        stream.CopyTo(input);
        told.Read(input.ToArray());
    });
    return 0;
}

if (args is ["unpack", var unpacked, var folder])
{
    Directory.CreateDirectory(folder);
    foreach ((string name, byte[] input) in new Corpus(Array.Find(readers, known => known.Name == unpacked) ?? throw new ArgumentException($"There is no reader {unpacked}.")).Inputs())
    {
        File.WriteAllBytes(Path.Combine(folder, name), input);
    }

    return 0;
}

string[] given = [.. args.Where(word => word != "--keep")];
if (given.Length is < 2 or > 3
    || Array.Find(readers, known => known.Name == given[0]) is not { } reader
    || !long.TryParse(given[1], NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out long count))
{
    Console.Error.WriteLine($"Wanted is READER COUNT [SEED] [--keep]; READER is one of {string.Join(", ", readers.Select(known => known.Name))}.");
    return 2;
}

ulong seed = given.Length > 2 ? ulong.Parse(given[2], CultureInfo.InvariantCulture) : (ulong)Random.Shared.Next(1, int.MaxValue);
bool keep = args.Contains("--keep");
Corpus corpus = new(reader);
LastInput last = new(Path.Combine(corpus.Tree, "artifacts", "fuzz", reader.Name));
if (last.Left is { } left)
{
    Console.WriteLine($"The process before this one died of an input, which is kept: {corpus.Keep("died", left)}");
    last.Clear();
}

// A process that is told to end does; one whose stack overflows cannot.
AppDomain.CurrentDomain.ProcessExit += (_, _) => last.Clear();
byte[] atHand = [];
using Watchdog watchdog = new(number =>
{
    Console.WriteLine($"{reader.Name}: input {number} hangs, seed {seed}; kept: {corpus.Keep("hang", atHand)}");
    last.Clear();
    Environment.Exit(3);
});
FuzzRun run = new(reader, (number, input) =>
{
    atHand = input;
    last.Note(input);
    watchdog.Begin(number);
})
{
    Novel = (kind, input) =>
    {
        if (keep)
        {
            byte[] small = Shrinking.Shrunk(input, reader, smaller =>
            {
#pragma warning disable CA1031 // A fault met while making an input small is met again on its own.
                try
                {
                    return reader.Read(smaller).Kinds.Contains(kind);
                }
                catch (Exception)
                {
                    return false;
                }
#pragma warning restore CA1031
            });
            Console.WriteLine($"{corpus.Keep("kind", small)}: {kind}");
        }
    },
    Fault = (fault, input) => Console.WriteLine(
        $"FAULT of {(fault.Number > 0 ? $"input {fault.Number}, kept: {corpus.Keep("fault", input)}" : "a kept input")}\n{fault.Words}\n"),
    Progress = (number, soFar) => Console.Error.Write($"\r{reader.Name}: {number:N0} of {count:N0}, {soFar.Kinds} kinds of answer, {soFar.Faults.Count} faults "),
};
long began = Environment.TickCount64;
FuzzReport report = run.Run([.. corpus.Inputs().Select(kept => kept.Input)], count, seed);
last.Clear();
Console.Error.WriteLine();
Console.WriteLine(report.Row(reader.Name, count, seed));
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{(Environment.TickCount64 - began) / 1000.0:0} s, at most {Environment.WorkingSet / 1e6:0} MB at the end"));
return report.Faults.Count > 0 ? 1 : 0;
