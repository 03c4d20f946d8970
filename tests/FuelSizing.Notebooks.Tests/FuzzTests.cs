using System.Text;
using FuelSizing.Fuzz;

namespace FuelSizing.Notebooks.Tests;

/// <summary>
/// Every reader of files, given every kept input of <c>tests/FuelSizing.Fuzz/corpus</c> and some thousand mutated ones: it reads
/// or refuses as documented, and nothing else. <c>.ci/fuzz</c> gives it a million.
/// </summary>
public class FuzzTests
{
    public static TheoryData<string> Readers => [.. FuzzedReader.All().Select(reader => reader.Name)];

    [Theory]
    [MemberData(nameof(Readers))]
    public void Reader_OfKeptAndMutatedInputs_ReadsOrRefuses(string name)
    {
        using FuzzedReader reader = FuzzedReader.All().Single(known => known.Name == name);
        byte[][] kept = [.. new Corpus(reader).Inputs().Select(input => input.Input)];
        FuzzReport report = new FuzzRun(reader).Run(kept, 1500, seed: 8);
        Assert.Empty(report.Faults);
        Assert.Equal(kept.Length + 1500, report.Accepted + report.Refused);

        // Not all of one sort: then the inputs would try little.
        Assert.True(report.Accepted > 50 && report.Refused > 500 && report.Kinds > 10, $"{report.Accepted} accepted, {report.Refused} refused, {report.Kinds} kinds of answer");
    }

    [Fact]
    public void Reader_ThatThrowsSomethingElse_IsFoundAndItsInputMadeSmall()
    {
        using FaultyReader reader = new();
        List<(FuzzFault Fault, string Input)> found = [];
        FuzzRun run = new(reader) { Fault = (fault, input) => found.Add((fault, Encoding.UTF8.GetString(input))) };
        FuzzReport report = run.Run(["name=good;last=1"u8.ToArray()], 2000, seed: 1);
        Assert.Equal("InvalidOperationException", Assert.Single(report.Faults).Kind.Split(' ')[0]);
        Assert.Equal("!", Assert.Single(found).Input);
    }

    /// <summary>Takes any text, and fails at an exclamation mark.</summary>
    private sealed class FaultyReader : FuzzedReader
    {
        public override string Name => "faulty";

        public override string Ending => ".txt";

        public override string[] Words => ["!"];

        public override Func<string, int, int, string>[] Edits => [(text, at, _) => text.Insert(at, "x")];

        public override Reading Read(byte[] input) => input.AsSpan().Contains((byte)'!')
            ? throw new InvalidOperationException("a fault")
            : new(true, [$"{Math.Min(input.Length, 3)}"]);
    }
}
