namespace FuelSizing;

/// <summary>The cautions that go with every result, for reports and notebooks to show.</summary>
public static class Cautions
{
    /// <summary>One caution a line.</summary>
    public static IReadOnlyList<string> Lines { get; } =
    [
        "Pressurised fuel burns and blinds: relieve the pressure before opening a line, and keep sparks and hot parts away.",
        "Use hose, fittings, filter and seals rated for this fuel and for the highest rail pressure; alcohol fuels attack some that petrol does not.",
        "A lean mixture on boost destroys an engine in seconds: confirm rail pressure and lambda under load, on a dynamometer, before you trust these figures.",
        "Fuse the pump's feed at its source, size wire and relay for the pump's current, and let the pump stop when the engine does.",
        "These are steady-state estimates from the figures you gave. They replace neither measurement, nor local codes and rules, nor a licensed practitioner.",
    ];
}
