using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>Judges a system at a point in numbers alone, to the last bit as its result does: for searches that judge by the thousand.</summary>
internal static class PointJudge
{
    /// <summary>How each check comes out; where a switched pump may be on or off, the worse of both.</summary>
    /// <param name="checks">Those that apply to the system.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="point">The point.</param>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    public static CheckReading<Real>[] At(ICheck[] checks, SystemParts parts, OperatingPoint point)
    {
        PointDemand demand = parts.DemandAt(point);
        CheckReading<Real>[] readings = In(checks, parts, demand);
        if (parts.FallingAt(point.BoostPascals) is { } falling)
        {
            CheckReading<Real>[] still = In(checks, falling, demand);
            for (int check = 0; check < readings.Length; check++)
            {
                readings[check] = IsWorse(still[check], readings[check]) ? still[check] : readings[check];
            }
        }

        return readings;
    }

    /// <summary>How each check comes out where all numbers are known.</summary>
    public static CheckReading<Real>[] Of(ICheck[] checks, SystemParts parts, in PointValues<Real> values)
    {
        CheckReading<Real>[] readings = new CheckReading<Real>[checks.Length];
        for (int check = 0; check < checks.Length; check++)
        {
            readings[check] = checks[check].Read(parts, values);
        }

        return readings;
    }

    private static CheckReading<Real>[] In(ICheck[] checks, SystemParts parts, in PointDemand demand)
    {
        SolvedCircuit circuit = parts.CircuitAt(demand);
        return Of(checks, parts, PointReading.Of(parts, demand, circuit, parts.InjectionAt(demand, circuit)));
    }

    private static bool IsWorse(in CheckReading<Real> one, in CheckReading<Real> other) =>
        Urgency.Compare(CheckReading.OutcomeOf(one), CheckReading.MarginOf(one), CheckReading.OutcomeOf(other), CheckReading.MarginOf(other)) < 0;
}
