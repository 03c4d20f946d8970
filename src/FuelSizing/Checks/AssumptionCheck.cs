using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>What every result takes for granted, and no check judges: said, so that nobody takes it for judged.</summary>
/// <param name="part">What is taken for granted.</param>
/// <param name="gap">What a system leaves open; none where nothing.</param>
internal sealed class AssumptionCheck(Part part, Func<SystemParts, Statement?> gap) : ICheck
{
    /// <summary>Lines that are not given lose no pressure here, and do on the car.</summary>
    public static AssumptionCheck SupplyLine { get; } = new(
        Part.SupplyLine,
        parts => HasLine(parts) ? null : Statement.Of("supply-line.none-given", $"none given: its pressure drop is not counted"));

    /// <summary>The same of the line from the lift pump to the surge tank.</summary>
    public static AssumptionCheck LiftLine { get; } = new(
        Part.LiftLine,
        parts => parts.SurgeTank is not { } tank || tank.LiftLine.Any(piece => piece is Lines.Line)
            ? null
            : Statement.Of("lift-line.none-given", $"none given: its pressure drop is not counted"));

    /// <summary>An overflow line that is not given makes no pressure in the surge tank here; one that falls may empty it as a siphon.</summary>
    public static AssumptionCheck OverflowLine { get; } = new(
        Part.OverflowLine,
        parts => parts.SurgeTank is not { } tank ? null
            : !tank.Overflow.Any(piece => piece is Lines.Line)
                ? Statement.Of("overflow-line.none-given", $"none given: the pressure that it makes in the surge tank is not counted")
            : tank.Overflow.Sum(piece => piece.ElevationPascals(1)) < 0
                ? Statement.Of("overflow-line.falls", $"its end is lower than its start: whether it draws the surge tank below ambient pressure, as a siphon, is not judged")
            : null);

    /// <summary>A BSFC that means more than these engines reach is another fuel's, or wrong: fuel from power rests on it.</summary>
    public static AssumptionCheck BrakeEfficiency { get; } = new(
        Part.BrakeEfficiency,
        parts => parts.Demand is { Basis: not DemandBasis.Air, Consumption: { } use } && use.BrakeEfficiency > FuelConsumption.MaximumPlausibleEfficiency
            ? Statement.Of(
                "brake-efficiency.implausible",
                $"{use.BrakeSpecificFuelConsumption} on {use.Fuel.Name} would be a brake efficiency of {use.BrakeEfficiency:duty-cycle}, over the {FuelConsumption.MaximumPlausibleEfficiency:duty-cycle} that is plausible (common practice, no source): fuel calculated from power is not judged")
            : null);

    /// <summary>What a second stream's lines lose, and what its pump's wiring carries, nobody looks at.</summary>
    public static AssumptionCheck StreamLines { get; } = new(
        Part.StreamLines,
        parts => parts.SecondStream is null ? null : Statement.Of("stream-lines.not-judged", $"neither their pressure drop nor feed, wire and fuse of its pump are judged"));

    // Where each pump has a line of its own up to the joint, that may be all there is.
    private static bool HasLine(SystemParts parts) =>
        parts.Plumbing.Supply.Concat(parts.Plumbing.ToRegulator).Any(piece => piece is Lines.Line)
        || (parts.Pump is Pumps.PumpParallel set && set.Branches.All(branch => branch.OwnBranches.Any(own => own.Discharge.Any(piece => piece is Lines.Line))));

    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Not judged", LimitDirection.AtMost, si => Ratio.FromDecimalFractions(si), units => units.Share);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        gap(parts) is { } open ? Applicability.NotJudged(open) : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => new(double.NaN, double.NaN, double.NaN);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading) =>
        gap(point.Parts) ?? Statement.Of("assumption.none", $"nothing is taken for granted");

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => null;
}
