using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Workings;

/// <summary>How a result came about, line by line, so that it can be followed by hand.</summary>
/// <remarks>
/// The lines are written by the library's own equations, run once more on numbers that remember where they come from; so
/// they cannot differ from what was calculated. A result pays for its working only when it is asked. Where pumps and lines meet
/// is found by a search, not by an equation: the working gives what the search found, and the circuit's table proves it.
/// </remarks>
public sealed class Working
{
    internal Working(OperatingPoint point, IReadOnlyList<WorkingStep> given, IReadOnlyList<WorkingStep> steps) =>
        (Point, Given, Steps) = (point, given, steps);

    /// <summary>Where.</summary>
    public OperatingPoint Point { get; }

    /// <summary>The inputs of the calculation.</summary>
    public IReadOnlyList<WorkingStep> Given { get; }

    /// <summary>The lines, each with what comes before it as symbols.</summary>
    public IReadOnlyList<WorkingStep> Steps { get; }

    /// <summary>The working in lines.</summary>
    /// <returns>Given figures, then steps with their sources.</returns>
    public override string ToString() => string.Join(
        '\n',
        [
            $"Given at {Point}:",
            .. Given.Select(step => $"  {step}  {step.Name}"),
            "Steps, in SI units:",
            .. Steps.Select(step => $"  {step.Name}: {step}  [{step.Source}]"),
        ]);
}
