using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>Differential pressure across the injectors against the maximum at which they are known to open.</summary>
internal sealed class OpeningPressureCheck(JudgedSet set) : ICheck
{
    /// <inheritdoc/>
    public Part Part => set.OpeningPressure;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Pressure across the injector", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => set.IsIn(parts) ? Applicability.Judged : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> =>
        set.WhileInjecting(
            set.Read(at).Injected,
            CheckReading.AtMost<T>(at.Minimum.Differential, at.Maximum.Differential, set.Of(parts).Injector.MaximumDifferential.Pascals));

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (set.IsIdle(point))
        {
            return JudgedSet.Idle(point);
        }

        Pressure maximum = set.Of(point.Parts).Injector.MaximumDifferential;
        Pressure used = Pressure.FromPascals(double.IsFinite(reading.Used.Value) ? reading.Used.Value : point.Judged.Differential);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("opening-pressure.within", $"pressure across the injector {used}, known to open against {maximum}"),
            Outcome.Fails => Statement.Of("opening-pressure.over", $"pressure across the injector {used.ApartFrom(maximum):pressure}, known to open against only {maximum.ApartFrom(used):pressure}"),
            _ => CircuitFinding.PressureNotDecided((point.Judged.Differential, reading.Used), maximum.Pascals, point.Parts.Regulator.HasBand),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        Pressure highest = Pressure.FromPascals(task.Points.Where(point => !set.IsIdle(point)).Max(Highest));
        return Remedy.Of(
            Part,
            highest,
            set == JudgedSet.Primary
                ? Statement.Of(
                    "opening-pressure.other-injectors",
                    $"Injectors known to open against at least {highest:pressure:up}, or less rail pressure.")
                : Statement.Of(
                    "opening-pressure.other-secondary-injectors",
                    $"Secondary injectors known to open against at least {highest:pressure:up}, or less rail pressure."));
    }

    private static double Highest(SolvedPoint point) => point.SolvedCircuit.Task.Held is not null && PointReading.Of(point).Maximum.Differential is var most && double.IsFinite(most)
        ? most
        : point.Judged.Differential;
}
