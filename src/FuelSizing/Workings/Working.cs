namespace FuelSizing.Workings;

/// <summary>How a result came about, line by line, so that it can be followed by hand.</summary>
/// <remarks>
/// The lines are written by the library's own equations, run once more on numbers that remember where they come from; so
/// they cannot differ from what was calculated. A result pays for its working only when it is asked. What is read from a
/// table says from which one and where, and between its points how; what a solver found, such as the flow at which pump and circuit agree, stands with
/// both sides of the equation that it solves.
/// </remarks>
public sealed class Working
{
    private readonly string[] _main;

    internal Working(string subject, IReadOnlyList<WorkingStep> given, IReadOnlyList<WorkingStep> steps, params string[] main) =>
        (Subject, Given, Steps, _main) = (subject, given, steps, main);

    /// <summary>What it is the working of, for instance <c>6,800 rev/min, 0.60 bar</c>.</summary>
    public string Subject { get; }

    /// <summary>The figures that the calculation starts from.</summary>
    public IReadOnlyList<WorkingStep> Given { get; }

    /// <summary>The lines, each with what comes before it as symbols.</summary>
    public IReadOnlyList<WorkingStep> Steps { get; }

    /// <summary>
    /// The few lines that matter most, those of an operating point: fuel, rail pressure, pressure across the injector, static flow and duty cycle; all of a short working.
    /// </summary>
    public IReadOnlyList<WorkingStep> Main => _main.Length == 0 ? Steps : [.. _main.Select(Find).OfType<WorkingStep>()];

    /// <summary>The line of a symbol, if there is one.</summary>
    /// <param name="symbol">For instance <c>Δp</c>; with the number of a part where several have the quantity, as in <c>d_2</c> and <c>Δp_f,2</c>.</param>
    /// <returns>The line; none where the working does not need that quantity.</returns>
    public WorkingStep? Find(string symbol) =>
        Steps.FirstOrDefault(step => step.Symbol == symbol) ?? Given.FirstOrDefault(given => given.Symbol == symbol);

    /// <summary>The working in lines.</summary>
    /// <returns>Given figures, then steps with their sources.</returns>
    public override string ToString() => string.Join(
        '\n',
        [
            $"Given at {Subject}:",
            .. Given.Select(step => $"  {step}  {step.Name}"),
            "Steps, in SI units:",
            .. Steps.Select(step => $"  {step.Name}: {step}  [{step.Source}]"),
        ]);
}
