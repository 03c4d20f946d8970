namespace FuelSizing;

/// <summary>The cautions that go with every result, for reports and notebooks to show.</summary>
public static class Cautions
{
    /// <summary>One caution a line.</summary>
    public static IReadOnlyList<string> Lines { get; } =
    [
        "Pressurised fuel burns and blinds: relieve the pressure before opening a line, and keep ignition sources and hot parts away.",
        "Use hose, fittings, filter and seals rated for this fuel and for the maximum rail pressure; alcohol fuels attack some materials that petrol does not.",
        "A lean mixture on boost destroys an engine in seconds: confirm rail pressure and lambda under load, on a dynamometer, before you trust these values.",
        "Fuse the pump's feed at its source, size wire and relay for the pump's current, and make sure that the pump stops when the engine does.",
        "These are steady-state estimates from the values you gave. They do not replace measurement. Local codes and rules, and a licensed practitioner, take precedence.",
    ];

    /// <summary>The cautions in one line, for where there is room for no more: a console beside a verdict.</summary>
    public static string OneLine =>
        "Caution: an estimate, not a proof. Confirm rail pressure and lambda under load before you trust it; pressurised fuel burns, a lean mixture on boost "
        + "destroys an engine in seconds. Local codes and a licensed practitioner take precedence.";
}
