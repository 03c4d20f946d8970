using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>What all checks of the circuit have in common.</summary>
internal static class CircuitFinding
{
    /// <summary>The finding where the pumps' data does not cover the point, so that nothing is known of the circuit.</summary>
    public static Statement PumpNotCovered { get; } =
        Statement.Of("circuit.pump-data-not-covered", $"the pump's data does not cover the point");

    /// <summary>Why a pressure, Pa, cannot be judged: not known at all, or only between two bounds on either side of its limit.</summary>
    /// <param name="bounds">The bounds; not numbers where nothing is known.</param>
    /// <param name="limit">The limit.</param>
    /// <param name="byRegulator">True if the regulator's data may leave it open, and not the pump's alone.</param>
    public static Statement PressureNotDecided((double Minimum, double Maximum) bounds, double limit, bool byRegulator = false) => byRegulator && AreKnown(bounds)
        ? Statement.Of(
            "circuit.pressure-bounds-by-regulator",
            $"what the regulator holds is known only between bounds: between {Pressure.FromPascals(bounds.Minimum)} and {Pressure.FromPascals(bounds.Maximum)}, with a limit of {Pressure.FromPascals(limit)}")
        : AreKnown(bounds)
        ? Statement.Of(
            "circuit.pressure-bounds",
            $"the pump's data ends before the point: known only to lie between {Pressure.FromPascals(bounds.Minimum)} and {Pressure.FromPascals(bounds.Maximum)}, with a limit of {Pressure.FromPascals(limit)}")
        : PumpNotCovered;

    /// <summary>Why a current, A, cannot be judged: not known at all, or only between two bounds on either side of its limit.</summary>
    public static Statement CurrentNotDecided((double Minimum, double Maximum) bounds, double limit) => AreKnown(bounds)
        ? Statement.Of(
            "circuit.current-bounds",
            $"the pump's data ends before the point: known only to lie between {ElectricCurrent.FromAmperes(bounds.Minimum)} and {ElectricCurrent.FromAmperes(bounds.Maximum)}, with a limit of {ElectricCurrent.FromAmperes(limit)}")
        : PumpNotCovered;

    /// <summary>Why a voltage drop, V, cannot be judged: not known at all, or only between two bounds on either side of its limit.</summary>
    public static Statement DropNotDecided((double Minimum, double Maximum) bounds, double limit) => AreKnown(bounds)
        ? Statement.Of(
            "circuit.voltage-drop-bounds",
            $"the pump's data ends before the point: known only to lie between {ElectricPotential.FromVolts(bounds.Minimum):voltage-drop} and {ElectricPotential.FromVolts(bounds.Maximum):voltage-drop}, with a limit of {ElectricPotential.FromVolts(limit):voltage-drop}")
        : PumpNotCovered;

    /// <summary>Why an open time, s, cannot be judged: not known at all, or only between two bounds on either side of its limit.</summary>
    /// <param name="bounds">The bounds; not numbers where nothing is known.</param>
    /// <param name="limit">The limit.</param>
    /// <param name="byRegulator">True if the regulator's data may leave it open, and not the pump's alone.</param>
    public static Statement OpenTimeNotDecided((double Minimum, double Maximum) bounds, double limit, bool byRegulator = false) => byRegulator && AreKnown(bounds)
        ? Statement.Of(
            "circuit.open-time-bounds-by-regulator",
            $"what the regulator holds is known only between bounds: between {Duration.FromSeconds(bounds.Minimum)} and {Duration.FromSeconds(bounds.Maximum)}, with a limit of {Duration.FromSeconds(limit)}")
        : AreKnown(bounds)
        ? Statement.Of(
            "circuit.open-time-bounds",
            $"the pump's data ends before the point: known only to lie between {Duration.FromSeconds(bounds.Minimum)} and {Duration.FromSeconds(bounds.Maximum)}, with a limit of {Duration.FromSeconds(limit)}")
        : PumpNotCovered;

    private static bool AreKnown((double Minimum, double Maximum) bounds) =>
        double.IsFinite(bounds.Minimum) && double.IsFinite(bounds.Maximum);
}
