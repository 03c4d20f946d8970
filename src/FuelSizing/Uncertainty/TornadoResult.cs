using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Each input's effect by itself, for a tornado plot.</summary>
public sealed class TornadoResult
{
    private TornadoResult(UncertainSystem system, SystemOutput output, IQuantity? nominal, Ratio tail, TornadoBar[] bars) =>
        (System, Output, Nominal, Tail, Bars) = (system, output, nominal, tail, Array.AsReadOnly(bars));

    /// <summary>Whose inputs were taken to their ends.</summary>
    public UncertainSystem System { get; }

    /// <summary>What was looked at.</summary>
    public SystemOutput Output { get; }

    /// <summary>The output of the nominal system; none where it cannot be said.</summary>
    public IQuantity? Nominal { get; }

    /// <summary>Probability left out at either end of each input.</summary>
    public Ratio Tail { get; }

    /// <summary>One for each input: those that lead where nothing can be said first, then the widest.</summary>
    public IReadOnlyList<TornadoBar> Bars { get; }

    /// <summary>False if the work was stopped: the bars are then those of the first inputs, in the order they were given in.</summary>
    public bool IsComplete => Bars.Count == System.Inputs.Count;

    /// <summary>The output and the input that moves it most.</summary>
    /// <returns>For instance <c>duty cycle: 3 inputs; injector flow: 36.9 % to 34.6 %</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Output.Name}: {Bars.Count} inputs; {Bars[0]}");

    internal static TornadoResult Of(
        UncertainSystem system, SystemOutput output, double tail, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        TornadoBar Bar(UncertainInput input)
        {
            double high = 1 - tail;
            double atLow = output.Of(system.At(input, tail));
            double atHigh = output.Of(system.At(input, high));
            return new(
                input,
                input.Typed(input.Shape.ValueAt(tail)),
                input.Typed(system.NominalValue(input)),
                input.Typed(input.Shape.ValueAt(high)),
                output.Typed(atLow),
                output.Typed(atHigh),
                Math.Abs(atHigh - atLow));
        }

        List<TornadoBar> bars = [];
        while (bars.Count < system.Inputs.Count && !cancellation.IsCancellationRequested)
        {
            bars.Add(Bar(system.Inputs[bars.Count]));
            progress?.Report(Ratio.FromDecimalFractions((double)bars.Count / system.Inputs.Count));
        }

        if (bars.Count == 0)
        {
            throw new OperationCanceledException("The work was stopped before an input was done.", cancellation);
        }

        return new(
            system,
            output,
            output.Typed(output.Of(system.AtNominal())),
            Ratio.FromDecimalFractions(tail),
            [
                .. bars
                    .OrderByDescending(bar => double.IsNaN(bar.SwingInSi) ? double.PositiveInfinity : bar.SwingInSi)
                    .ThenBy(bar => bar.Input.Quantity),
            ]);
    }
}
