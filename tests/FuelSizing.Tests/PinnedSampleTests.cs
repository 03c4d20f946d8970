using System.Collections.Concurrent;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using CsCheck;
using Xunit.Sdk;

namespace FuelSizing.Tests;

public class PinnedSampleTests
{
    private static readonly Gen<(int, double)> Pairs = Gen.Select(Gen.Int[0, 1000], Gen.Double[0, 1]);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void Sample_OnAnyNumberOfThreads_DrawsTheSameCases(int threads) =>
        Assert.Equal(Drawn(1).Order(), Drawn(threads).Order());

    [Fact]
    public void Sample_ByDefault_DrawsAHundredCases()
    {
        Assert.Equal(100, Drawn().Length);

        // CsCheck likes round numbers, which come twice now and then.
        Assert.InRange(Drawn().Distinct().Count(), 95, 100);
    }

    /// <summary>As many fall into each tenth of a range as chance has it: 1,000 ± 5 standard deviations of 30.</summary>
    [Fact]
    public void Sample_OfARange_CoversItEvenly()
    {
        ConcurrentBag<double> drawn = [];
        Gen.Double.Unit.Sample(drawn.Add, iter: 10_000);
        Assert.All(drawn.GroupBy(number => (int)(number * 10)), tenth => Assert.InRange(tenth.Count(), 850, 1150));
        Assert.Equal(10, drawn.GroupBy(number => (int)(number * 10)).Count());
    }

    [Fact]
    public void Sample_OfALawThatFails_NamesTheFirstFailingCaseSmallAndAlwaysTheSame()
    {
        string message = Assert.Throws<XunitException>(() => Pairs.Sample((number, _) => number < 200)).Message;
        Assert.Matches("""^Case \d of 100, base seed 0, shrunk to seed: "[\w-]+" fails: \(2\d\d, """, message);
        Assert.Equal(message, Assert.Throws<XunitException>(() => Pairs.Sample((number, _) => number < 200, threads: 1)).Message);
    }

    [Fact]
    public void Sample_WithTheSeedThatAFailureNamed_FailsOnThatCase()
    {
        string message = Assert.Throws<XunitException>(() => Pairs.Sample((number, _) => number < 200)).Message;
        string seed = message.Split('"')[1];
        string pinned = Assert.Throws<XunitException>(() => Pairs.Sample((number, _) => number < 200, seed: seed)).Message;
        Assert.Equal(message[message.IndexOf("seed:", StringComparison.Ordinal)..], pinned[pinned.IndexOf("seed:", StringComparison.Ordinal)..]);
        Pairs.Sample((number, _) => number >= 200, seed: seed);
    }

    [Fact]
    public void Sample_OfALawThatThrows_KeepsWhatItThrew() => Assert.IsType<InvalidOperationException>(
        Assert.Throws<XunitException>(() => Gen.Bool.Sample(_ => throw new InvalidOperationException("thrown"))).InnerException);

    [Fact]
    public void Sample_OfAGeneratorThatThrows_NamesTheSeed() => Assert.Matches(
        """^Case \d+ of 100, base seed 0, shrunk to seed: "[\w-]+" fails: it cannot be drawn""",
        Assert.Throws<XunitException>(() => Gen.Int[0, 9].Select(number => 1 / (number / 9)).Sample(_ => true)).Message);

    /// <summary>A test that called CsCheck's own method would draw fresh cases at each run.</summary>
    [Fact]
    public void Tests_OfThisProject_DrawNoCasesButPinnedOnes()
    {
        using PEReader file = new(File.OpenRead(typeof(PinnedSampleTests).Assembly.Location));
        MetadataReader metadata = file.GetMetadataReader();
        string[] called =
        [
            .. from handle in metadata.MemberReferences
               let member = metadata.GetMemberReference(handle)
               where member.Parent.Kind == HandleKind.TypeReference
               let type = metadata.GetTypeReference((TypeReferenceHandle)member.Parent)
               where metadata.GetString(type.Namespace) == nameof(CsCheck) && metadata.GetString(type.Name) == nameof(Check)
               select metadata.GetString(member.Name),
        ];
        Assert.Equal([nameof(Check.Print)], called.Distinct());
    }

    private static (int, double)[] Drawn(int threads = -1)
    {
        ConcurrentBag<(int, double)> drawn = [];
        Pairs.Sample(drawn.Add, threads: threads);
        return [.. drawn];
    }
}
