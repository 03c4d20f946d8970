using FuelSizing.Interactive;
using FuelSizing.Systems;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Notebooks;

/// <summary>What a cell shows, taken down while it runs, so that a cell that never ends leaves what it showed.</summary>
internal sealed class CellRecord(Action<ProgressLine>? progress = null)
{
    private readonly Lock _gate = new();
    private readonly List<CellOutput> _outputs = [];
    private readonly Dictionary<string, int> _indexOfUpdatable = [];

    /// <summary>What was shown so far, in order.</summary>
    public IReadOnlyList<CellOutput> Outputs
    {
        get
        {
            lock (_gate)
            {
                // That work is finished is of no use to who reads its result.
                return [.. _outputs.Where(output => output.Progress is not { State: ProgressState.Finished })];
            }
        }
    }

    public void Take(KernelEvent happening)
    {
        if (happening is not DisplayEvent display)
        {
            return;
        }

        var formatted = display.FormattedValues.FirstOrDefault(value => value.MimeType == HtmlFormatter.MimeType)
            ?? display.FormattedValues.FirstOrDefault(value => value.MimeType == PlainTextFormatter.MimeType)
            ?? display.FormattedValues.FirstOrDefault();
        if (formatted is null)
        {
            return;
        }

        // A cell may show things from several threads.
        lock (_gate)
        {
            Keep(display.ValueId, new CellOutput(formatted.MimeType, formatted.Value, VerdictIn(display.Value), display.Value as ProgressLine));
        }

        if (display.Value is ProgressLine line)
        {
            progress?.Invoke(line);
        }
    }

    private void Keep(string? id, CellOutput output)
    {
        if (id is not null && _indexOfUpdatable.TryGetValue(id, out int index))
        {
            _outputs[index] = output;
            return;
        }

        if (id is not null)
        {
            _indexOfUpdatable[id] = _outputs.Count;
        }

        _outputs.Add(output);
    }

    private static Callout? VerdictIn(object? value) => value switch
    {
        Callout { IsVerdict: true } callout => callout,
        Verdict verdict => SizingCallouts.Verdict(verdict),
        _ => null,
    };
}
