using System.Globalization;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>What one input does to an output by itself.</summary>
public sealed record TornadoBar
{
    internal TornadoBar(
        UncertainInput input, IQuantity low, IQuantity nominal, IQuantity high, IQuantity? atLow, IQuantity? atHigh, double swing)
    {
        (Input, Low, Nominal, High, AtLow, AtHigh) = (input, low, nominal, high, atLow, atHigh);
        SwingInSi = swing;
    }

    /// <summary>Which input.</summary>
    public UncertainInput Input { get; }

    /// <summary>The input at its low percentile.</summary>
    public IQuantity Low { get; }

    /// <summary>The input as the nominal system has it.</summary>
    public IQuantity Nominal { get; }

    /// <summary>The input at its high percentile.</summary>
    public IQuantity High { get; }

    /// <summary>The output with the input at <see cref="Low"/>; none where it cannot be said.</summary>
    public IQuantity? AtLow { get; }

    /// <summary>The output with the input at <see cref="High"/>; none where it cannot be said.</summary>
    public IQuantity? AtHigh { get; }

    /// <summary>The input and the output at both its ends.</summary>
    /// <returns>For instance <c>injector flow: 36.9 % to 34.6 %</c>.</returns>
    public override string ToString() =>
        $"{Input.Name}: {Text(AtLow)} to {Text(AtHigh)}";

    private static string Text(IQuantity? value) => value?.ToString("S4", CultureInfo.InvariantCulture) ?? "cannot say";

    /// <summary>|at high − at low| in the output's SI unit; not a number where it cannot be said.</summary>
    internal double SwingInSi { get; }
}
