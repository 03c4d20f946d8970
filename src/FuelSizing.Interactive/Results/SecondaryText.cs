using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>Figures of a secondary set of injectors, as tables write them.</summary>
internal static class SecondaryText
{
    private const string Idle = "idle";

    private const string None = "no secondary set";

    /// <summary>Its share of the fuel.</summary>
    public static string Share(OperatingResult result, TextStyle style) => Of(result, secondary => CircuitText.Known(secondary.Share, style.Of));

    /// <summary>Its duty cycle.</summary>
    public static string Duty(OperatingResult result, TextStyle style) => Of(result, secondary => CircuitText.Known(secondary.DutyCycle, style.DutyCycle));

    /// <summary>Its pulse.</summary>
    public static string Pulse(OperatingResult result, TextStyle style) => Of(result, secondary => CircuitText.Known(secondary.Pulse, style.Of));

    /// <summary>A figure of the primary set, and behind it that of the secondary one where there is one.</summary>
    public static string Both(OperatingResult result, string primary, Func<OperatingResult, string> secondary) =>
        result.SecondaryInjection is null ? primary : $"{primary}; secondary {secondary(result)}";

    private static string Of(OperatingResult result, Func<SecondaryInjection, string> text) => result.SecondaryInjection switch
    {
        null => None,
        { IsIdle: true } => Idle,
        { } secondary => text(secondary),
    };
}
