using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>Which set of injectors a check judges: the primary one, or the secondary one of staged injectors. Both are held to the same rules.</summary>
internal abstract class JudgedSet
{
    /// <summary>The injectors that a system always has.</summary>
    public static JudgedSet Primary { get; } = new PrimarySet();

    /// <summary>Those that take part of the fuel above a hand-over.</summary>
    public static JudgedSet Secondary { get; } = new SecondarySet();

    /// <summary>Its flow.</summary>
    public abstract Part Flow { get; }

    /// <summary>Its minimum pulse width.</summary>
    public abstract Part MinimumPulse { get; }

    /// <summary>Its maximum opening pressure.</summary>
    public abstract Part OpeningPressure { get; }

    /// <summary>True if a check of this part judges it.</summary>
    public bool Judges(Part part) => part == Flow || part == MinimumPulse || part == OpeningPressure;

    /// <summary>True if the system has such a set.</summary>
    public abstract bool IsIn(SystemParts parts);

    /// <summary>The set of a system that has one.</summary>
    public abstract InjectorSet Of(SystemParts parts);

    /// <summary>Its injection.</summary>
    public abstract Injection Of(in Injection injection);

    /// <summary>Fuel that it injects, m³/s; not a number where the split is not known.</summary>
    public double InjectedBy(SolvedPoint point) =>
        point.Judged.Secondary is null ? point.SolvedDemand.Injected : Of(point.Judged).Injected;

    /// <summary>True where it injects nothing, so that there is nothing to judge.</summary>
    public abstract bool IsIdle(SolvedPoint point);

    // What is generic is not virtual: to look up a generic method at run time takes longer than to read the figures.
    private protected abstract bool IsSecondary { get; }

    /// <summary>Its figures among those of a point.</summary>
    public InjectorValues<T> Read<T>(in PointValues<T> at)
        where T : struct, IReal<T> => IsSecondary ? at.Secondary : new()
        {
            Injected = at.PrimaryInjected,
            InjectedAtLeast = at.PrimaryInjectedAtLeast,
            StaticFlow = at.StaticFlow,
            AvailableTime = at.AvailableTime,
            DeadTime = at.DeadTime,
            Pulse = at.Pulse,
            DutyCycle = at.DutyCycle,
            Capacity = at.Capacity,
        };

    /// <summary>A margin, or an infinite one where the set is idle.</summary>
    public CheckReading<T> WhileInjecting<T>(T injected, in CheckReading<T> reading)
        where T : struct, IReal<T> => !IsSecondary ? reading : new(

            // What is not known is not idle: a comparison with it is never true.
            T.IfLess(injected, double.Epsilon, double.NaN, reading.Used),
            reading.Allowed,
            T.IfLess(injected, double.Epsilon, double.PositiveInfinity, reading.Margin),
            T.IfLess(injected, double.Epsilon, double.PositiveInfinity, reading.BestMargin));

    /// <summary>That the set is idle below the hand-over.</summary>
    public static Statement Idle(SolvedPoint point) =>
        Statement.Of("secondary.idle-until", $"idle: it injects {point.Parts.StagedInjectors!.HandOver.Text}");

    /// <summary>Why there is no pulse: the split, the injector's flow or its dead time is not known.</summary>
    public Statement UnknownPulse(SolvedPoint point)
    {
        Injector injector = Of(point.Parts).Injector;
        Injection own = Of(point.Judged);
        UnitsNet.Pressure differential = UnitsNet.Pressure.FromPascals(own.Differential);
        return !double.IsNaN(own.StaticFlow) && own.DeadTime is not null ? Statement.Of(
                "injectors.split-not-known", $"what each set of injectors carries is not known: it follows the primary set's duty cycle, which is not known here")
            : !double.IsNaN(own.StaticFlow) ? Statement.Of(
                "injectors.dead-time-not-covered",
                $"the dead-time table covers {injector.DeadTime.Coverage} and gives no data for {point.Point.Conditions.SupplyVoltage}, {differential}")
            : injector.IsMinimumDifferentialStated ? Statement.Of(
                "injectors.flow-not-known",
                $"the flow of {injector.Name} is known from {injector.MinimumDifferential} across it, not at {differential}")
            : Statement.Of(
                "injectors.flow-not-stated",
                $"the flow of {injector.Name} is taken as known from a third of its rated pressure, {injector.MinimumDifferential} (common practice, no source), not at {differential}");
    }

    private sealed class PrimarySet : JudgedSet
    {
        public override Part Flow => Part.Injectors;

        public override Part MinimumPulse => Part.MinimumPulse;

        public override Part OpeningPressure => Part.OpeningPressure;

        public override bool IsIn(SystemParts parts) => true;

        public override InjectorSet Of(SystemParts parts) => parts.Injectors;

        public override Injection Of(in Injection injection) => injection;

        public override bool IsIdle(SolvedPoint point) => false;

        private protected override bool IsSecondary => false;
    }

    private sealed class SecondarySet : JudgedSet
    {
        public override Part Flow => Part.SecondaryInjectors;

        public override Part MinimumPulse => Part.SecondaryMinimumPulse;

        public override Part OpeningPressure => Part.SecondaryOpeningPressure;

        public override bool IsIn(SystemParts parts) => parts.StagedInjectors is not null;

        public override InjectorSet Of(SystemParts parts) => parts.StagedInjectors!.Secondary;

        public override Injection Of(in Injection injection) => injection.Secondary!.Injection;

        public override bool IsIdle(SolvedPoint point) => point.Judged.Secondary!.IsIdle;

        private protected override bool IsSecondary => true;
    }
}
