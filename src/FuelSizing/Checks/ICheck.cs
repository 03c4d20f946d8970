using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>One limit of a fuel system: what is used, what is allowed, in words, and what would remedy it.</summary>
/// <remarks>
/// <para>A file for each check, and nothing else to edit: a check that a system is given by
/// <c>FuelSystem.With(ICheck)</c> takes part in margins, verdict, tables, remedies, sheet, ranking and sizing.</para>
/// <para>A check must be pure: the same point gives the same reading, on any thread. It keeps no state.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed class ReturnFlowForCooling : ICheck
/// {
///     public Part Part { get; } = Part.Of("own.return-flow", "return flow for cooling");
///
///     public CheckFigure Figure { get; } = CheckFigure.Of(
///         "Returned flow", LimitDirection.AtLeast, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);
///
///     public Applicability AppliesTo(SystemParts parts) =>
///         parts.Layout == LineLayout.Return ? Applicability.Judged : Applicability.NotApplicable;
///
///     public CheckReading&lt;T&gt; Read&lt;T&gt;(SystemParts parts, in PointValues&lt;T&gt; at)
///         where T : struct, IReal&lt;T&gt; => CheckReading.AtLeast&lt;T&gt;(at.Returned, 5e-6);
///
///     public Statement Explain(SolvedPoint point, in CheckReading&lt;Real&gt; reading) => Statement.Of(
///         "own.return-flow",
///         $"returns {VolumeFlow.FromCubicMetersPerSecond(reading.Used.Value):pump-flow}, {VolumeFlow.FromCubicMetersPerSecond(reading.Allowed.Value):pump-flow} required");
///
///     public Remedy? RemedyFor(RemedyTask task) => null;
/// }
/// </code>
/// </example>
public interface ICheck
{
    /// <summary>What is checked: its code and its name. No two checks of a system have the same.</summary>
    Part Part { get; }

    /// <summary>Of which kind used and allowed are, their direction, and how they are drawn.</summary>
    CheckFigure Figure { get; }

    /// <summary>Whether a system has what is checked, and whether its data is given.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <returns>Judged, not applicable, or not judged and why: a whole system holds only if nothing is left unjudged.</returns>
    Applicability AppliesTo(SystemParts parts);

    /// <summary>Used, allowed and margin at one point, or at a column of points.</summary>
    /// <typeparam name="T">One number, or a column of them.</typeparam>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="at">The solved point, or points.</param>
    /// <returns>The reading, in SI.</returns>
    CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>;

    /// <summary>The finding in words, with a code.</summary>
    /// <param name="point">The solved point.</param>
    /// <param name="reading">The reading there.</param>
    /// <returns>What is used, of what is allowed, and why it fails or cannot be said.</returns>
    Statement Explain(SolvedPoint point, in CheckReading<Real> reading);

    /// <summary>What would remedy it where it fails.</summary>
    /// <param name="task">The points that were solved, and those at which it fails.</param>
    /// <returns>The remedy; none if there is none to name.</returns>
    Remedy? RemedyFor(RemedyTask task);
}

/// <summary>What a remedy is worked out from.</summary>
public sealed class RemedyTask
{
    internal RemedyTask(IReadOnlyList<SolvedPoint> points, IReadOnlyList<SolvedPoint> failing) =>
        (Points, Failing) = (points, failing);

    /// <summary>The parts of the system.</summary>
    public SystemParts Parts => Points[0].Parts;

    /// <summary>Every point that was solved, at least one.</summary>
    public IReadOnlyList<SolvedPoint> Points { get; }

    /// <summary>Those at which the check fails, at least one.</summary>
    public IReadOnlyList<SolvedPoint> Failing { get; }

    /// <summary>How many points, and how many fail.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Failing.Count} of {Points.Count} points fail");
}
