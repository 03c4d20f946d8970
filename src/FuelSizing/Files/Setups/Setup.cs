using System.Diagnostics.CodeAnalysis;
using System.Text;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A whole fuel system, its boost line and named operating points, as they are kept in a file.</summary>
/// <remarks>
/// <para>The form is JSON, every value with its unit; <c>docs/setups.md</c> describes it, with an example and a schema. A
/// system written and read back gives the same results to the last bit: each value is written in the unit that it was given
/// in, with all its digits.</para>
/// <para>A file is read whole or not at all: where anything is wrong, a <see cref="SetupException"/> names each problem by
/// file, line and field.</para>
/// </remarks>
/// <example>
/// <code>
/// Setup.Of(system, ("full load", point), ("idle", idle)).Write("wren.json");
/// Setup setup = Setup.Read("wren.json");
/// OperatingResult result = setup.System.Solve(setup.Point("full load"));
/// RotationalSpeed slowest = RotationalSpeed.FromRevolutionsPerMinute(3000), fastest = RotationalSpeed.FromRevolutionsPerMinute(6800);
/// LineSweepResult pull = Setup.Of(system).With(HeldBoost.Of(Pressure.FromBars(0.6), slowest, fastest)).WithPull(slowest, fastest).Pull();
/// </code>
/// </example>
public sealed record Setup
{
    private static readonly Identity<Setup> _identity = new Identity<Setup>()
        .Value(setup => setup.System)
        .List(setup => setup.Points)
        .Value(setup => setup.BoostLine)
        .Value(setup => setup.PullRange);

    private Setup(FuelSystem system, NamedPoint[] points) => (System, Points) = (system, Array.AsReadOnly(points));

    /// <summary>The system.</summary>
    public FuelSystem System { get; }

    /// <summary>The operating points, in the order they were given in.</summary>
    public IReadOnlyList<NamedPoint> Points { get; }

    /// <summary>The boost that the engine has at each speed at full throttle; none if not given.</summary>
    public BoostLine? BoostLine { get; private init; }

    /// <summary>The pull that is looked at, along the boost line; none if not given.</summary>
    public PullRange? PullRange { get; private init; }

    /// <summary>
    /// Questions about values of the file that are possible and not plausible, such as a static flow of 24 mL/min; none where the setup was not
    /// read from a file.
    /// </summary>
    /// <remarks>They are no part of the setup: two setups that are equal may raise different ones.</remarks>
    public IReadOnlyList<InputQuestion> Questions { get; private init; } = [];

    /// <summary>Puts a setup together.</summary>
    /// <param name="system">The system.</param>
    /// <param name="points">Operating points, each with a name of its own of 1 to 80 characters; none is needed.</param>
    /// <returns>The setup.</returns>
    /// <exception cref="ArgumentException">A name is blank, or given twice.</exception>
    public static Setup Of(FuelSystem system, params (string Name, OperatingPoint Point)[] points)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(points);
        HashSet<string> seen = [];
        foreach ((string name, OperatingPoint point) in points)
        {
            ArgumentNullException.ThrowIfNull(point, nameof(points));
            if (!seen.Add(Guard.Name(name, nameof(points))))
            {
                throw new ArgumentException($"points had \"{name}\" twice. Give each point its own name.", nameof(points));
            }
        }

        return new(system, Array.ConvertAll(points, named => new NamedPoint(named.Name, named.Point)));
    }

    /// <summary>The same setup with a boost line.</summary>
    /// <param name="line">The boost at each speed at full throttle.</param>
    /// <returns>The setup.</returns>
    /// <exception cref="ArgumentException">The engine cannot have such a line: its induction has no such compressor.</exception>
    public Setup With(BoostLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        line.RequireCompressor(System.Demand);
        return this with { BoostLine = line };
    }

    /// <summary>The same setup with the pull that is to be looked at.</summary>
    /// <param name="slowest">Lowest engine speed, 100 to 25,000 rev/min.</param>
    /// <param name="fastest">Highest engine speed, above <paramref name="slowest"/>.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <returns>The setup.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or they do not rise.</exception>
    /// <exception cref="InvalidOperationException">The setup has no boost line.</exception>
    public Setup WithPull(RotationalSpeed slowest, RotationalSpeed fastest, Conditions? conditions = null)
    {
        PullRange range = PullRange.Of(slowest, fastest, conditions);
        return BoostLine is null ? throw WithoutLine() : this with { PullRange = range };
    }

    /// <summary>Solves the pull along the boost line (<see cref="LineSweep"/>).</summary>
    /// <returns>The results, and the verdict along the line.</returns>
    /// <exception cref="InvalidOperationException">The setup has no boost line, or no pull.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The line or a table of the engine does not cover the pull.</exception>
    public LineSweepResult Pull() =>
        System.Pull(
            BoostLine ?? throw WithoutLine(),
            PullRange?.Slowest ?? throw new InvalidOperationException("The setup has no pull. Give its slowest and fastest speed with WithPull."),
            PullRange.Fastest,
            PullRange.Conditions);

    /// <summary>Reads a file.</summary>
    /// <param name="file">JSON in UTF-8, up to 64 MB.</param>
    /// <returns>The setup.</returns>
    /// <exception cref="SetupException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be opened.</exception>
    public static Setup Read(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        ProblemList problems = new();
        return FileText.Of(file, problems) is { } text ? Of(text, problems) : throw new SetupException(problems.Found, []);
    }

    /// <summary>Reads a file's text.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it.</param>
    /// <returns>The setup.</returns>
    /// <exception cref="SetupException">Anything in it is wrong.</exception>
    public static Setup Parse(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        return Of(new FileText(name, text), new());
    }

    /// <summary>Reads a file's text if nothing in it is wrong.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="setup">What was read; none where something is wrong.</param>
    /// <param name="problems">Each problem by file, line and field; empty where it was read.</param>
    /// <returns>True if it was read.</returns>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out Setup? setup, out IReadOnlyList<FileProblem> problems) =>
        TriedFile.Read(() => Parse(name, text), out setup, out problems);

    /// <summary>Reads a stream to its end, and leaves it open.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="SetupException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static Setup Read(Stream stream, string name) =>
        StreamedFile.Read(stream, name, (text, problems) => Of(text, problems), problems => new SetupException(problems.Found, []));

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="SetupException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<Setup> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        StreamedFile.ReadAsync(stream, name, (text, problems) => Of(text, problems), problems => new SetupException(problems.Found, []), cancellation);

    /// <summary>The operating point of a name.</summary>
    /// <param name="name">As in <see cref="Points"/>.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentException">There is none of that name.</exception>
    public OperatingPoint Point(string name) =>
        Points.FirstOrDefault(named => named.Name == name)?.Point
        ?? throw new ArgumentException(
            $"name was \"{name}\"; the setup has {(Points.Count == 0 ? "no points" : string.Join(", ", Points.Select(named => $"\"{named.Name}\"")))}.",
            nameof(name));

    /// <summary>The setup as text, as a file holds it.</summary>
    /// <returns>JSON.</returns>
    /// <exception cref="InvalidOperationException">
    /// A part is one that a file's form cannot hold, as a run has found it: a pump better than its curve, a regulator off its setting, a resistance or a filter's loss that was found. Nothing is left out without a word.
    /// </exception>
    public string ToJson()
    {
        string text = SetupForm.File.Text(this);
        ProblemList problems = new();
        Setup? read = SetupForm.File.Read(new FileText("setup.json", text), problems);
        return !problems.Any && Equals(read)
            ? text
            : throw new InvalidOperationException(
                $"A setup file cannot hold {Lost(read)}: what is read back would be another. Write the plan as it was described, and correct what is read by the same run again.");
    }

    /// <summary>Writes it to a file, in place of what was there.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="InvalidOperationException">A part is one that a file's form cannot hold, see <see cref="ToJson"/>.</exception>
    public void Write(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        File.WriteAllText(file, ToJson(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }

    /// <summary>Writes it to a stream, which is left open.</summary>
    /// <param name="stream">The stream.</param>
    /// <exception cref="InvalidOperationException">A part is one that a file's form cannot hold, see <see cref="ToJson"/>.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(Stream stream) => StreamedFile.Write(stream, ToJson());

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <returns>The work.</returns>
    /// <exception cref="InvalidOperationException">A part is one that a file's form cannot hold, see <see cref="ToJson"/>.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public Task WriteAsync(Stream stream, CancellationToken cancellation = default) =>
        StreamedFile.WriteAsync(stream, ToJson(), cancellation);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Setup? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many operating points, the system, and the boost line where one is given.</summary>
    /// <returns>For instance <c>operating points: 2; return: 4 × injector A, 580 mL/min each; pump R; fixed at 300 kPa</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"operating points: {Points.Count}; {System}") + (BoostLine is null ? string.Empty : $"; boost line: {BoostLine}");

    internal static Setup Of(FuelSystem system, IEnumerable<NamedPoint> points, BoostLine? line, PullRange? pull) =>
        new(system, [.. points]) { BoostLine = line, PullRange = pull };

    private static InvalidOperationException WithoutLine() => new("The setup has no boost line. Give one by With.");

    /// <summary>Which parts of this setup are others when they are read back.</summary>
    private string Lost(Setup? read)
    {
        FuelSystem own = System;
        (string Name, bool IsSame)[] parts =
        [
            ("the engine and its demand", own.Demand.Equals(read?.System.Demand)),
            ("the injectors", own.Injectors.Equals(read?.System.Injectors)),
            ($"the regulator ({own.Regulator.Description})", own.Regulator.Equals(read?.System.Regulator)),
            ($"the pump ({own.Pump})", own.Pump.Equals(read?.System.Pump)),
            ("the plumbing", own.Plumbing.Equals(read?.System.Plumbing)),
            ("the limits", own.Limits.Equals(read?.System.Limits)),
            ("the controller", own.Controller.Equals(read?.System.Controller)),
        ];
        string[] lost = [.. parts.Where(part => !part.IsSame).Select(part => part.Name)];
        return read is null || lost.Length == 0 ? "a part of this system" : string.Join(", ", lost);
    }

    private static Setup Of(in FileText text, ProblemList problems)
    {
        Setup? read = SetupForm.File.Read(text, problems);
        return problems.Any || read is null
            ? throw new SetupException(problems.Found, problems.Questions)
            : read with { Questions = problems.Questions };
    }
}

/// <summary>An operating point with the name that a setup gives it.</summary>
public sealed record NamedPoint
{
    private static readonly Identity<NamedPoint> _identity = new Identity<NamedPoint>()
        .Value(named => named.Name)
        .Value(named => named.Point);

    internal NamedPoint(string name, OperatingPoint point) => (Name, Point) = (name, point);

    /// <summary>Its name, once in a setup.</summary>
    public string Name { get; }

    /// <summary>Where the engine runs there, and under which conditions.</summary>
    public OperatingPoint Point { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(NamedPoint? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, speed and boost.</summary>
    /// <returns>For instance <c>full load: 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() =>
        $"{Name}: {Point}";
}

/// <summary>The pull that a setup looks at: from which engine speed to which, and under which conditions.</summary>
public sealed record PullRange
{
    private static readonly Identity<PullRange> _identity = new Identity<PullRange>()
        .Number(pull => pull.Slowest.RevolutionsPerSecond)
        .Number(pull => pull.Fastest.RevolutionsPerSecond)
        .Value(pull => pull.Conditions);

    private PullRange(RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions) =>
        (Slowest, Fastest, Conditions) = (slowest, fastest, conditions);

    /// <summary>Lowest engine speed.</summary>
    public RotationalSpeed Slowest { get; }

    /// <summary>Highest engine speed.</summary>
    public RotationalSpeed Fastest { get; }

    /// <summary>Air, supply voltage and fuel temperature.</summary>
    public Conditions Conditions { get; }

    /// <summary>A pull.</summary>
    /// <param name="slowest">Lowest engine speed, 100 to 25,000 rev/min.</param>
    /// <param name="fastest">Highest engine speed, above <paramref name="slowest"/>.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <returns>The pull.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range, or they do not rise.</exception>
    public static PullRange Of(RotationalSpeed slowest, RotationalSpeed fastest, Conditions? conditions = null)
    {
        double from = EngineSpeed.Within(slowest, nameof(slowest));
        return EngineSpeed.Within(fastest, nameof(fastest)) > from
            ? new(slowest, fastest, conditions ?? Conditions.Default)
            : throw Guard.OutOfRange(
                nameof(fastest), Readable.Of(fastest), $"over the slowest speed, {Readable.Of(slowest)}", "Give the ends of the pull in rising order.");
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PullRange? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The two speeds.</summary>
    /// <returns>For instance <c>3,000 rev/min to 6,300 rev/min</c>.</returns>
    public override string ToString() => $"{Readable.Of(Slowest)} to {Readable.Of(Fastest)}";
}

/// <summary>A setup could not be read; nothing of it was kept.</summary>
public sealed class SetupException : FileException
{
    internal SetupException(IReadOnlyList<FileProblem> problems, IReadOnlyList<InputQuestion> questions)
        : base(problems, questions)
    {
    }

    /// <summary>Questions about values that are not plausible, which may be the cause of a problem: <c>95 °C</c> where 95 °F was meant.</summary>
    public IReadOnlyList<InputQuestion> Questions => Asked;
}
