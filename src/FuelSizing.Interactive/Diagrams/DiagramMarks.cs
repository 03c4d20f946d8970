using FuelSizing.Checks;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>The checks of a result that stand out: what fails, what cannot be judged, and the limiting one.</summary>
internal sealed class DiagramMarks
{
    private readonly List<(Part Part, DiagramMark Mark)> _left = [];

    public DiagramMarks(OperatingResult? result, TextStyle style)
    {
        foreach (Margin margin in result?.Margins ?? [])
        {
            string? word = margin.Outcome switch
            {
                Outcome.Fails => "\u2717 fails",
                Outcome.CannotSay => "? cannot say",
                _ => margin.Part == result!.Limiting.Part ? "tightest margin" : null,
            };
            if (word is not null)
            {
                string reserve = margin.Reserve is { } share ? $", {OutputFigures.ReserveOf(share, style)}" : string.Empty;
                _left.Add((margin.Part, new(
                    margin.Outcome,
                    $"{word}: {margin.Part.Name}{reserve}",
                    $"{word.TrimStart('\u2717', '?', ' ')}: {margin.In(style)}")));
            }
        }
    }

    /// <summary>What no drawn part was marked with, for instance the mixture.</summary>
    public IReadOnlyList<DiagramMark> Left => [.. _left.Select(one => one.Mark)];

    /// <summary>Takes the marks of checks that judge one drawn part.</summary>
    public IReadOnlyList<DiagramMark> Take(params Part[] parts)
    {
        DiagramMark[] taken = [.. _left.Where(one => parts.Contains(one.Part)).Select(one => one.Mark)];
        _left.RemoveAll(one => parts.Contains(one.Part));
        return taken;
    }
}
