using System.Globalization;
using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>How far a piece of long work is, in one line.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Share">The share that is done, 0 to 1; none where the work does not say.</param>
/// <param name="Elapsed">Since it began.</param>
/// <param name="State">Whether it goes on.</param>
internal sealed record ProgressLine(string Name, double? Share, TimeSpan Elapsed, ProgressState State) : IDisplayBlock
{
    public string ToHtml() => new XElement("p",
        new XAttribute("role", "status"),
        new XAttribute("style", BlockStyle.ProgressLine),
        State == ProgressState.Runs && Share is { } share
            ? [new XElement("progress", new XAttribute("aria-label", Name), new XAttribute("style", BlockStyle.ProgressBar), new XAttribute("max", 100), new XAttribute("value", Whole(share)), " "), " "]
            : Array.Empty<object>(),
        ToPlainText()).ToString(SaveOptions.DisableFormatting);

    public string ToPlainText() => $"{Name}: {(State, Share) switch
    {
        (ProgressState.Finished, _) => "finished",
        (ProgressState.Stopped, { } share) => $"stopped at {Whole(share)} %",
        (ProgressState.Stopped, null) => "stopped",
        (_, { } share) => $"{Whole(share)} %",
        _ => "running",
    }} after {Elapsed.TotalSeconds.ToString("0", CultureInfo.InvariantCulture)} s";

    public override string ToString() => ToPlainText();

    // Down: what is not finished is not 100 %.
    private static int Whole(double share) => (int)Math.Floor(100 * share);
}

/// <summary>Whether work goes on.</summary>
internal enum ProgressState
{
    Runs,
    Finished,

    /// <summary>It ended without a result.</summary>
    Stopped,
}
