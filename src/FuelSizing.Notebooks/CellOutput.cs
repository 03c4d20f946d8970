using FuelSizing.Interactive;

namespace FuelSizing.Notebooks;

/// <summary>Something a cell showed.</summary>
/// <param name="MimeType">"text/html" for markup made by a formatter, otherwise shown as text.</param>
/// <param name="Text">The markup or the text.</param>
/// <param name="Verdict">The answer it gives, if it is one.</param>
/// <param name="Progress">How far work of the cell is, where it says that and nothing else.</param>
internal sealed record CellOutput(string MimeType, string Text, Callout? Verdict, ProgressLine? Progress = null);
