namespace FuelSizing.Interactive;

/// <summary>Several blocks, one below the other.</summary>
internal sealed class BlockList(IEnumerable<IDisplayBlock> blocks) : IDisplayBlock
{
    private readonly IDisplayBlock[] _blocks = [.. blocks];

    /// <inheritdoc/>
    public string ToHtml() => $"<div>{string.Concat(_blocks.Select(block => block.ToHtml()))}</div>";

    /// <inheritdoc/>
    public string ToPlainText() => string.Join("\n\n", _blocks.Select(block => block.ToPlainText()));
}
