using System.Xml.Linq;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Interactive;

/// <summary>A working as a page shows it: the lines that matter most, and all of them folded away; each line with its equation, the numbers put in, its value and its source.</summary>
/// <remarks>Formulas are MathML that breaks before signs, with their text beside it (<c>alttext</c>); the plain text has the same lines.</remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
/// Console.WriteLine(new WorkingBlock(result.Working).ToPlainText());
/// </code>
/// </example>
public sealed class WorkingBlock : IDisplayBlock
{
    /// <summary>Of the name that an equation has in the index.</summary>
    internal const string LawClass = "fuel-equation";

    private const string Note = "Written by the equations themselves, in SI units. a·10^b is a times ten to the power b; a figure that a solver found stands with both sides of its equation. A line's equation has in the index, docs/equations.md, its range, where it comes from and how that was obtained.";

    private readonly TextStyle _style;

    /// <summary>Shows a working.</summary>
    /// <param name="working">The working.</param>
    /// <param name="style">Units and culture of the title; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <exception cref="ArgumentNullException">There is no working.</exception>
    public WorkingBlock(Working working, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(working);
        (Working, _style) = (working, style ?? Units.Current);
    }

    /// <summary>What is shown.</summary>
    public Working Working { get; }

    private string Title => $"The working at {PartText.Say(Working.Subject, _style)}";

    private string All => $"All lines: {_style.Count(Working.Given.Count)} given, {_style.Count(Working.Steps.Count)} steps";

    private bool IsShort => Working.Main.Count == Working.Steps.Count;

    /// <inheritdoc/>
    public string ToHtml()
    {
        XElement all = new(
            "div",
            new XElement("p", new XAttribute("style", BlockStyle.CalloutTitle), "Given"),
            new XElement("ol", new XAttribute("style", BlockStyle.Lines), Working.Given.Select(Short)),
            new XElement("p", new XAttribute("style", BlockStyle.CalloutTitle), "Steps"),
            List(Working.Steps));
        return new XElement(
            "div",
            new XAttribute("style", BlockStyle.TableBox),
            new XElement("p", new XAttribute("style", BlockStyle.Caption), VisibleText.Unbroken(Title)),
            IsShort ? all : List(Working.Main),
            IsShort ? null : new XElement("details", new XElement("summary", All), all),
            new XElement("p", new XAttribute("style", BlockStyle.Note), Note))
            .ToString(SaveOptions.DisableFormatting);
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Join(
        '\n',
        [
            Title,
            .. IsShort ? (string[])[] : [.. Working.Main.Select(Line), All],
            "Given",
            .. Working.Given.Select(Line),
            "Steps",
            .. Working.Steps.Select(Line),
            Note,
        ]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private static string Line(WorkingStep step) => $"{VisibleText.Of(step.Name)}: {step}  [{VisibleText.Of(step.Source)}{(step.Law is null ? string.Empty : $"; {step.Law}")}]";

    private static XElement List(IEnumerable<WorkingStep> steps) => new(
        "ol",
        new XAttribute("style", BlockStyle.Lines),
        steps.Select(step => new XElement(
            "li",
            new XAttribute("style", BlockStyle.Line),
            Head(step, new XAttribute("style", "font-weight:bold")),
            Set(step),
            new XElement("div", new XAttribute("style", BlockStyle.LineSource), VisibleText.Unbroken(VisibleText.Of(step.Source)), Law(step)))));

    // The key by which the equation stands in the index; a site that has the index makes a link of it.
    private static object[]? Law(WorkingStep step) => step.Law is null ? null : ["; equation ", new XElement("span", new XAttribute("class", LawClass), step.Law)];

    // A given figure has no equation: name and figure, then symbol, SI value and source in one line.
    private static XElement Short(WorkingStep step) => new(
        "li",
        new XAttribute("style", BlockStyle.Line),
        Head(step, null),
        new XElement(
            "div",
            new XAttribute("style", BlockStyle.LineHead),
            Set(step),
            new XElement("span", new XAttribute("style", BlockStyle.LineSource), VisibleText.Unbroken(VisibleText.Of(step.Source)))));

    private static XElement Head(WorkingStep step, XAttribute? style) => new(
        "div",
        new XAttribute("style", BlockStyle.LineHead),
        new XElement("span", style, VisibleText.Of(WorkingShown.Capital(step.Name))),
        new XElement("span", VisibleText.Unbroken(step.Readable)));

    private static XElement Set(WorkingStep step)
    {
        string[] parts = step.Kind == WorkingSource.NotKnown ? [step.Symbol]
            : step.Equation is null ? [step.Symbol, $"= {Number(step)}"]
            : [step.Symbol, $"= {step.Equation}", $"= {step.Numbers}", $"= {Number(step)}"];
        return new XElement(
            "div",
            new XAttribute("style", BlockStyle.LineFormula),
            parts.SelectMany(Formula.Set).SelectMany(math => (object[])[math, " "]),
            step.Kind == WorkingSource.NotKnown ? step.Value : Unit(step));
    }

    // The value's number is set, its unit is text.
    private static string Number(WorkingStep step) => step.Value.Split(' ')[0];

    private static string Unit(WorkingStep step) => step.Value.Contains(' ', StringComparison.Ordinal) ? step.Value[(step.Value.IndexOf(' ', StringComparison.Ordinal) + 1)..] : string.Empty;
}
