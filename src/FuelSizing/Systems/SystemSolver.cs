using FuelSizing.Circuits;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>Solves a fuel system at one operating point.</summary>
public static class SystemSolver
{
    /// <summary>Solves one operating point.</summary>
    /// <param name="system">The system.</param>
    /// <param name="point">Speed, boost and conditions, within the engine's tables and limits.</param>
    /// <returns>Every intermediate, each margin, and the limiting component.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    /// <remarks>
    /// <para>One steady operating point: air → fuel demand → rail pressure by the regulator → differential pressure across
    /// the injector → static flow → pulse and duty cycle; with it the circuit: pumps with their wiring, lines, filter and
    /// regulator solved together. Where the pumps cannot hold the set pressure, the rail sags to where they can.</para>
    /// <para>A system that cannot do the job is an answer, not an error: see <see cref="OperatingResult.Margins"/>. Duty cycle
    /// is computed at full demand, also where it comes out over 100 %. The controller is assumed to command whatever pulse is
    /// needed.</para>
    /// </remarks>
    /// <example>
    /// <code>
    /// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
    /// Console.WriteLine(result.Limiting);
    /// </code>
    /// </example>
    public static OperatingResult Solve(this FuelSystem system, OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(point);
        return system.SolveBy(point, null);
    }

    /// <summary>Solves one point of a sweep, with what the sweep has made out about circuits like it.</summary>
    internal static OperatingResult SolveBy(this FuelSystem system, OperatingPoint point, CircuitTable? table)
    {
        PointDemand demand = system.Parts.DemandAt(point);
        return new(system, point, demand, system.Parts.CircuitAt(demand, table));
    }
}
