using System.Diagnostics.CodeAnalysis;
using FuelSizing.Bench;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Tests of parts at a bench, read from the sheets on which they were written down.</summary>
/// <remarks>
/// <para>Comma-separated values (one file for each kind of test) or JSON (any in one file); both are described, with an example and a schema, in <c>docs/bench.md</c>. Every value carries
/// its unit. <c>BenchSheet</c> of the notebook package prints a blank of each, and <see cref="Blank"/> gives its file.</para>
/// <para>All files are read or none: where anything is wrong, a <see cref="BenchTestsException"/> names each problem by file, line and field.</para>
/// </remarks>
/// <example>
/// <code>
/// BenchTests tests = BenchTests.Parse(
///     "static.csv",
///     "static_tests 1,differential [kPa],scale [g],clock [s],calibration [%],readings.time [s],readings.weighed [g]\n"
///     + "injector C,300,0.1,0.1,0.3,20,105.9\n"
///     + "injector C,,,,,20,106.2\n"
///     + "injector C,,,,,60,316.4\n");
/// Console.WriteLine(StaticFlow.Of(tests.StaticTests[0]));
/// </code>
/// </example>
public sealed record BenchTests
{
    private static readonly Identity<BenchTests> _identity = new Identity<BenchTests>()
        .List(tests => tests.PulseTests)
        .List(tests => tests.StaticTests)
        .List(tests => tests.PumpTests)
        .List(tests => tests.DeadheadTests)
        .List(tests => tests.VoltageDropTests)
        .List(tests => tests.RegulatorTests)
        .List(tests => tests.ConsumptionTests);

    private static readonly ListFiles<BenchTests> Files = new("a file of bench tests", BenchForm.File, isNamedOnce: false);

    private BenchTests(Entry[] entries, ProblemList problems)
    {
        PulseTests = Read("pulse_tests", InjectorBenchForm.PulseTests);
        StaticTests = Read("static_tests", InjectorBenchForm.StaticTests);
        PumpTests = Read("pump_tests", PumpBenchForm.FlowTests);
        DeadheadTests = Read("deadhead_tests", PumpBenchForm.DeadheadTests);
        VoltageDropTests = Read("voltage_drop_tests", WiringBenchForm.Tests);
        RegulatorTests = Read("regulator_tests", RegulatorBenchForm.Tests);
        ConsumptionTests = Read("consumption_tests", EngineBenchForm.Tests);

        IReadOnlyList<T> Read<T>(string list, Form<T> form)
            where T : class => Array.AsReadOnly(ListFiles<BenchTests>.Parts(entries, list, form, problems));
    }

    /// <summary>Injectors weighed in pulses, in the order of the files.</summary>
    public IReadOnlyList<PulseTest> PulseTests { get; }

    /// <summary>Injectors held open.</summary>
    public IReadOnlyList<StaticTest> StaticTests { get; }

    /// <summary>Pumps that fill a vessel.</summary>
    public IReadOnlyList<PumpFlowTest> PumpTests { get; }

    /// <summary>Pumps with their outlet shut.</summary>
    public IReadOnlyList<DeadheadTest> DeadheadTests { get; }

    /// <summary>Voltage across parts of the wiring.</summary>
    public IReadOnlyList<VoltageDropTest> VoltageDropTests { get; }

    /// <summary>Regulators by their gauge.</summary>
    public IReadOnlyList<RegulatorTest> RegulatorTests { get; }

    /// <summary>Tanks weighed before and after steady runs.</summary>
    public IReadOnlyList<ConsumptionTest> ConsumptionTests { get; }

    /// <summary>Reads files.</summary>
    /// <param name="files">One or more, each ending in <c>.csv</c> or <c>.json</c>; UTF-8, up to 64 MB each.</param>
    /// <returns>The tests of all files together.</returns>
    /// <exception cref="ArgumentException">No file is named, or one ends otherwise.</exception>
    /// <exception cref="BenchTestsException">Anything in them is wrong.</exception>
    /// <exception cref="IOException">A file cannot be opened.</exception>
    public static BenchTests Read(params string[] files)
    {
        ProblemList problems = new();
        return Of(Files.Read(files, problems, nameof(files)), problems);
    }

    /// <summary>Reads one file's text.</summary>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="text">Everything in it.</param>
    /// <returns>The tests.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="BenchTestsException">Anything in it is wrong.</exception>
    public static BenchTests Parse(string name, string text)
    {
        ProblemList problems = new();
        return Of(Files.Parse(name, text, problems), problems);
    }

    /// <summary>Reads a file's text if nothing in it is wrong.</summary>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="tests">What was read; none where something is wrong.</param>
    /// <param name="problems">Each problem by file, line and field; empty where it was read.</param>
    /// <returns>True if it was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out BenchTests? tests, out IReadOnlyList<FileProblem> problems) =>
        TriedFile.Read(() => Parse(name, text), out tests, out problems);

    /// <summary>Reads a stream to its end, and leaves it open.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="BenchTestsException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static BenchTests Read(Stream stream, string name) =>
        StreamedFile.Read(stream, name, (text, _) => Parse(text.Name, text.Text), problems => new BenchTestsException(problems.Found));

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="BenchTestsException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<BenchTests> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        StreamedFile.ReadAsync(stream, name, (text, _) => Parse(text.Name, text.Text), problems => new BenchTestsException(problems.Found), cancellation);

    /// <summary>The head of a file of comma-separated values to be filled in: every field of a kind of test, each with a unit, which may be changed for another.</summary>
    /// <param name="kind">The kind of test.</param>
    /// <returns>One line. Columns that are not needed may be taken out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static string Blank(BenchTestKind kind) => $"{string.Join(',', BenchColumn.Of(kind).Select(column => column.Heading))}\n";

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(BenchTests? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many tests of each kind there are.</summary>
    /// <returns>For instance <c>pulse tests: 4, static tests: 1</c>; <c>no tests</c> of an empty list.</returns>
    public override string ToString() => string.Join(", ", Counts.Where(count => count.Count > 0).Select(count => FormattableString.Invariant($"{count.Name}: {count.Count}"))) is { Length: > 0 } text
        ? text
        : "no tests";

    private (string Name, int Count)[] Counts =>
    [
        ("pulse tests", PulseTests.Count),
        ("static tests", StaticTests.Count),
        ("pump tests", PumpTests.Count),
        ("deadhead tests", DeadheadTests.Count),
        ("voltage drop tests", VoltageDropTests.Count),
        ("regulator tests", RegulatorTests.Count),
        ("consumption tests", ConsumptionTests.Count),
    ];

    private static BenchTests Of(Entry[] entries, ProblemList problems)
    {
        BenchTests tests = new(entries, problems);
        return problems.Any ? throw new BenchTestsException(problems.Found) : tests;
    }
}

/// <summary>A file of bench tests could not be read; nothing of it was kept.</summary>
public sealed class BenchTestsException : FileException
{
    internal BenchTestsException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
