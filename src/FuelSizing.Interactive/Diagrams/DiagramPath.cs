using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>Lines, filters and check valves of a path as parts of a diagram.</summary>
internal static class DiagramPath
{
    /// <summary>One of them.</summary>
    /// <param name="part">Which.</param>
    /// <param name="result">What flows and is lost in it; none in a description, or where that is not known.</param>
    /// <param name="isSolved">True in a result.</param>
    /// <param name="where">Where it leads.</param>
    /// <param name="marks">Of the check that judges it.</param>
    /// <param name="style">Units and culture.</param>
    /// <param name="none">What is said in a result where nothing is known of it.</param>
    public static DiagramPart PartOf(
        IFlowLoss part, PathResult? result, bool isSolved, string where, IReadOnlyList<DiagramMark> marks, TextStyle style, string none = CircuitText.Unknown)
    {
        string made = part switch
        {
            Line line => $"bore {style.Bore(line.Bore)}, {style.Of(line.Length)}",
            Filter rated => $"{style.PressureLoss(rated.RatedLoss)} at {style.PumpFlow(rated.RatedFlow)}",
            CheckValve valve => $"opens at {style.PressureLoss(valve.OpeningPressure)}",
            _ => string.Empty,
        };
        string figures = result is not null ? $"{style.PumpFlow(result.Flow)}, {style.PressureChange(-result.PressureLoss)}" : isSolved ? none : made;
        string state = string.Join("; ", ((string[])[where, made, result is null && !isSolved ? string.Empty : figures]).Where(text => text.Length > 0));
        DiagramSymbol symbol = part is Filter ? DiagramSymbol.Filter : part is CheckValve ? DiagramSymbol.CheckValve : DiagramSymbol.Line;
        return new(symbol, part.Name, [figures], state) { Marks = marks };
    }
}
