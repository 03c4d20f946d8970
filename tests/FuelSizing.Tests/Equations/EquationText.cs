using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FuelSizing.Equations;

namespace FuelSizing.Tests.Equations;

/// <summary>A symbol as an equation's documentation gives it.</summary>
/// <param name="Name">The symbol.</param>
/// <param name="Unit">SI unit; 1 for a plain number.</param>
/// <param name="Meaning">What it stands for, everywhere.</param>
/// <param name="Detail">What it is in this equation, where that says more.</param>
/// <param name="Argument">The argument's name, or "result", or the constant's name.</param>
internal sealed record Symbol(string Name, string Unit, string Meaning, string Detail, string Argument);

/// <summary>A public equation as its documentation tells it; nothing is read from its code but its name.</summary>
/// <param name="Class">The subject's class.</param>
/// <param name="Function">The function.</param>
internal sealed partial record EquationText(string Class, string Function)
{
    private static readonly XElement[] Members =
        [.. XDocument.Load(Path.Combine(AppContext.BaseDirectory, "FuelSizing.xml")).Descendants("member")];

    /// <summary>Every public equation, in the order of the code.</summary>
    public static readonly IReadOnlyList<EquationText> All =
    [
        .. from type in Classes
           from method in type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
           select Of(type, method),
    ];

    /// <summary>Every constant that equations share.</summary>
    public static readonly IReadOnlyList<(Symbol Symbol, double Value, string Source)> Constants =
    [
        .. from type in Classes
           from field in type.GetFields(BindingFlags.Public | BindingFlags.Static)
           let text = Plain(Member($"F:{type.FullName}.{field.Name}").Element("summary"))
           select (SymbolOf(text.Split(". ")[0], $"{type.Name}.{field.Name}"), (double)field.GetValue(null)!, text[(text.IndexOf(". ", StringComparison.Ordinal) + 2)..]),
    ];

    public string Name => $"{Class}.{Function}";

    /// <summary>What it gives, in one sentence.</summary>
    public required string Summary { get; init; }

    /// <summary>The equation.</summary>
    public required string Formula { get; init; }

    /// <summary>Its arguments.</summary>
    public required IReadOnlyList<Symbol> Arguments { get; init; }

    /// <summary>What comes out.</summary>
    public required Symbol Result { get; init; }

    /// <summary>Where it holds.</summary>
    public required string Range { get; init; }

    /// <summary>What happens elsewhere.</summary>
    public required string Outside { get; init; }

    /// <summary>A call, and its result as a remark.</summary>
    public required string Example { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string Source { get; init; }

    private static IEnumerable<Type> Classes => typeof(InjectorFlow).Assembly.GetExportedTypes()
        .Where(type => type.Namespace == typeof(InjectorFlow).Namespace)
        .OrderBy(type => type.Name, StringComparer.Ordinal);

    private static EquationText Of(Type type, MethodInfo method)
    {
        string name = $"{type.Name}.{method.Name}";
        XElement member = Member($"M:{type.FullName}.{method.Name}``1(");
        XElement summary = Part(member, "summary");
        XElement remarks = Part(member, "remarks");
        string[] paragraphs = [.. remarks.Elements("para").Select(Plain)];
        string Said(string word) => paragraphs.SingleOrDefault(text => text.StartsWith($"{word}: ", StringComparison.Ordinal))?[(word.Length + 2)..]
            ?? throw new InvalidDataException($"{name} has no paragraph \"{word}: …\".");
        return new(type.Name, method.Name)
        {
            Summary = Spaces().Replace(string.Concat(summary.Nodes().OfType<XText>().Select(text => text.Value)), " ").Trim(),
            Formula = Plain(summary.Element("para")?.Element("c")),
            Arguments =
            [
                .. method.GetParameters().Select(parameter => SymbolOf(
                    Plain(member.Elements("param").SingleOrDefault(text => text.Attribute("name")!.Value == parameter.Name)), parameter.Name!)),
            ],
            Result = SymbolOf(Plain(member.Element("returns")), "result"),
            Range = Said("Range"),
            Outside = Said("Outside"),
            Source = Said("Source"),
            Example = string.Join('\n', Part(Part(remarks, "example"), "code").Value.Trim('\n').TrimEnd().Split('\n').Select(line => line.Trim())),
        };

        XElement Part(XElement of, string part) => of.Element(part) ?? throw new InvalidDataException($"{name} has no <{part}>.");
    }

    private static XElement Member(string name) =>
        Members.Single(member => member.Attribute("name")!.Value is var id && (name.EndsWith('(') ? id.StartsWith(name, StringComparison.Ordinal) : id == name));

    private static Symbol SymbolOf(string text, string argument) =>
        SymbolText().Match(text) is { Success: true } match
            ? new(match.Groups["symbol"].Value, match.Groups["unit"].Value, match.Groups["meaning"].Value, match.Groups["detail"].Value, argument)
            : throw new InvalidDataException($"\"{text}\" is not \"symbol (unit): meaning; detail.\".");

    private static string Plain(XElement? text) => Spaces().Replace(text?.Value ?? string.Empty, " ").Trim();

    [GeneratedRegex(@"^(?<symbol>\S+) \((?<unit>[^:]+)\): (?<meaning>[^;]+?)(; (?<detail>.+?))?\.?$", RegexOptions.ExplicitCapture)]
    private static partial Regex SymbolText();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
