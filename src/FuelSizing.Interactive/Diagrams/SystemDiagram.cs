using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>A drawing of a fuel system, after the conventions of ISO 1219-1, with flows and pressures beside the parts.</summary>
/// <remarks>
/// <para>Fuel goes up on the left, from the tank to the rail, and comes back down on the right. Solid lines carry fuel, dashed ones a pressure that a regulator
/// refers to, dotted ones an electrical signal. It is as narrow as a phone and grows only in height.</para>
/// <para>Of a result, parts that fail are framed heavily, those that cannot be judged with dashes, and the limiting one thinly, each with words.</para>
/// </remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
/// Console.WriteLine(SystemDiagram.Of(result).ToPlainText());
/// </code>
/// </example>
public sealed class SystemDiagram : IDisplayBlock
{
    private readonly DiagramParts _parts;
    private readonly OperatingResult? _result;

    private SystemDiagram(FuelSystem system, OperatingResult? result, TextStyle style)
    {
        (_result, _parts) = (result, new(system, result, style));
        Title = result is null ? "Fuel system as described" : $"Fuel system at {PartText.Say(result.Point, style)}";
    }

    /// <summary>What is drawn.</summary>
    public string Title { get; }

    /// <summary>Draws a system as it is described.</summary>
    /// <param name="system">The system.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The drawing.</returns>
    /// <exception cref="ArgumentNullException">There is no system.</exception>
    public static SystemDiagram Of(FuelSystem system, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(system);
        return new(system, null, style ?? Units.Current);
    }

    /// <summary>Draws a system with what flows in it at an operating point.</summary>
    /// <param name="result">The solved point.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The drawing.</returns>
    /// <exception cref="ArgumentNullException">There is no result.</exception>
    public static SystemDiagram Of(OperatingResult result, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new(result.System, result, style ?? Units.Current);
    }

    /// <summary>Draws it.</summary>
    /// <returns>A self-contained SVG element that scales to the width it is given. Title and parts in the order of flow are in it for assistive technology.</returns>
    public string ToSvg() => Svg().ToString(SaveOptions.DisableFormatting);

    /// <inheritdoc/>
    public string ToHtml() => Figure.Html(Title, Svg(), Notes());

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Title, .. Walk(), .. Notes()]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private XElement Svg()
    {
        XElement drawing = new DiagramLayout(_parts).Svg(Title, $"In the order of flow. {string.Join(" ", Walk())}");
        DiagramCanvas.TakeThePagesColours(drawing);
        return drawing;
    }

    private IEnumerable<string> Walk() =>
        _parts.Order.Select((part, place) => string.Create(CultureInfo.InvariantCulture, $"{place + 1}. {part.Title}."));

    private IEnumerable<string> Notes()
    {
        foreach (DiagramMark mark in _parts.Left)
        {
            yield return $"Judged, and no part of the drawing: {mark.Words}.";
        }

        if (_parts.NotDrawn.Count > 0)
        {
            yield return $"Nothing returns where a pump is held by its speed; not drawn of the description: {string.Join(", ", _parts.NotDrawn)}.";
        }

        yield return _result is null
            ? "Solid lines carry fuel, dashed lines a reference pressure. Symbols after the conventions of ISO 1219-1."
            : "Pressures are gauge. Solid lines carry fuel, dashed lines a reference pressure. Symbols after the conventions of ISO 1219-1.";
        if (_result?.SurgeTank is not null)
        {
            yield return "Figures from the surge tank to the rail are those with the surge tank at ambient pressure; checks look at the full tank too.";
        }

        if (_result?.Falling is not null)
        {
            yield return "Flows and pressures are those of rising boost; marks are the worse of rising and falling boost.";
        }
    }
}
