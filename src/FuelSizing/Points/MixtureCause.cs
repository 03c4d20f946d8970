using FuelSizing.Controllers;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>One of the reasons why lambda is not its target.</summary>
public sealed class MixtureCause : IReadable
{
    // A cause of less than this is none: the last digits of a sum.
    private const double Nothing = 1e-9;

    private MixtureCause(MixtureCauseKind kind, double factor) => (Kind, Factor) = (kind, factor);

    /// <summary>What it is.</summary>
    public MixtureCauseKind Kind { get; }

    /// <summary>What it multiplies lambda by: over 1 it leans. All factors of a point together are lambda ÷ target.</summary>
    public double Factor { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>How much, and by what.</summary>
    /// <returns>For instance <c>48 % leaner by air that the controller does not know of</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>How much, and by what, as a code with its figures.</summary>
    public Statement Text
    {
        get
        {
            Ratio share = Ratio.FromDecimalFractions(Factor > 1 ? Factor - 1 : 1 - Factor);
            return (Kind, Factor > 1) switch
            {
                (MixtureCauseKind.Air, true) => Statement.Of("mixture.air-unknown", $"{share:share} leaner by air that the controller does not know of"),
                (MixtureCauseKind.Air, false) => Statement.Of("mixture.air-believed", $"{share:share} richer by air that the controller believes in and is not there"),
                (MixtureCauseKind.Target, true) => Statement.Of("mixture.target-leaner", $"{share:share} leaner by the target and the fuel that the controller was calibrated for"),
                (MixtureCauseKind.Target, false) => Statement.Of("mixture.target-richer", $"{share:share} richer by the target and the fuel that the controller was calibrated for"),
                (MixtureCauseKind.RecordedPulse, true) => Statement.Of("mixture.pulse-short", $"{share:share} leaner by a recorded pulse that is too short at the pressure without boost"),
                (MixtureCauseKind.RecordedPulse, false) => Statement.Of("mixture.pulse-long", $"{share:share} richer by a recorded pulse that is too long at the pressure without boost"),
                (MixtureCauseKind.OwnPulse, true) => Statement.Of("mixture.own-pulse-short", $"{share:share} leaner by a pulse that is too short by the controller's own law"),
                (MixtureCauseKind.OwnPulse, false) => Statement.Of("mixture.own-pulse-long", $"{share:share} richer by a pulse that is too long by the controller's own law"),
                (MixtureCauseKind.ClosedLoop, true) => Statement.Of("mixture.loop-leaner", $"{share:share} leaner by the closed loop"),
                (MixtureCauseKind.ClosedLoop, false) => Statement.Of("mixture.loop-richer", $"{share:share} richer by the closed loop"),
                (MixtureCauseKind.TakenBack, _) => Statement.Of("mixture.taken-back", $"{share:share} leaner by main fuel that is taken back for the second stream"),
                (MixtureCauseKind.DutyLimit, _) => Statement.Of("mixture.duty-limit", $"{share:share} leaner by the greatest duty cycle"),
                (MixtureCauseKind.InjectorData, true) => Statement.Of("mixture.injector-data-leaner", $"{share:share} leaner by injectors that pass less than the controller's data says"),
                (MixtureCauseKind.InjectorData, false) => Statement.Of("mixture.injector-data-richer", $"{share:share} richer by injectors that pass more than the controller's data says"),
                (MixtureCauseKind.Pressure, true) => Statement.Of("mixture.pressure-low", $"{share:share} leaner by less pressure across the injectors than the controller believes in"),
                (MixtureCauseKind.Pressure, false) => Statement.Of("mixture.pressure-high", $"{share:share} richer by more pressure across the injectors than the controller believes in"),
                (MixtureCauseKind.DeadTime, true) => Statement.Of("mixture.dead-time-long", $"{share:share} leaner by a longer dead time than the controller believes in"),
                (MixtureCauseKind.DeadTime, false) => Statement.Of("mixture.dead-time-short", $"{share:share} richer by a shorter dead time than the controller believes in, or injectors that no longer close"),
                (_, true) => Statement.Of("mixture.rail-sag", $"{share:share} leaner by a rail that does not reach its set pressure"),
                _ => Statement.Of("mixture.rail-high", $"{share:share} richer by a rail over its set pressure"),
            };
        }
    }

    /// <summary>The causes of a mixture, the largest first; none where it is not known, or nothing is delivered.</summary>
    internal static IReadOnlyList<MixtureCause> Of(SystemParts parts, in PointDemand demand, in SolvedMixture mixture)
    {
        if (!(mixture.Delivered > 0))
        {
            return [];
        }

        MixtureCause[] causes = [.. Factors(parts, demand, mixture)
            .Where(cause => double.IsFinite(cause.Factor) && cause.Factor > 0 && Math.Abs(cause.Factor - 1) > Nothing)
            .Select(cause => new MixtureCause(cause.Kind, cause.Factor))
            .OrderByDescending(cause => Math.Abs(Math.Log(cause.Factor)))];
        return Array.AsReadOnly(causes);
    }

    /// <summary>One after another what the controller believes is replaced by what there is: flows, whose quotients are the factors.</summary>
    private static IEnumerable<(MixtureCauseKind Kind, double Factor)> Factors(SystemParts parts, PointDemand demand, SolvedMixture mixture)
    {
        EngineController controller = parts.Controller;
        PulseCommanded command = mixture.Command;
        double required = demand.Required;
        double setDifferential = mixture.Differential + (Real)mixture.Task.RailAsSet - mixture.Rail;

        if (controller is CustomController)
        {
            // Of a law of one's own nothing is known but its pulse.
            double whole = FlowAt(setDifferential, OpenAt(setDifferential));
            return [(MixtureCauseKind.OwnPulse, required / whole), (MixtureCauseKind.RailSag, whole / mixture.Delivered)];
        }

        if (double.IsNaN(mixture.Wanted.Fuel))
        {
            // A recorded pulse believes in nothing: what it delivers at the pressure without boost stands for that. One that does not follow
            // manifold pressure has the air without boost in it, and what there is more, or less, it does not know of.
            double rest = parts.Regulator.SetPascals(0);
            double open = OpenAt(rest);
            double atRest = FlowAt(rest, open);
            double atSet = FlowAt(setDifferential, open);
            double timed = FlowAt(setDifferential, OpenAt(setDifferential));
            double unboosted = controller is RecordedPulseController { FollowsManifold: false }
                ? parts.Demand.At(demand.Point.Speed, Pressure.Zero, demand.Point.Conditions.Atmosphere).MassFlow.KilogramsPerSecond / demand.Density
                : required;
            return
            [
                (MixtureCauseKind.Air, required / unboosted),
                (MixtureCauseKind.RecordedPulse, unboosted / atRest),
                (MixtureCauseKind.Pressure, atRest / atSet),
                (MixtureCauseKind.DeadTime, atSet / timed),
                (MixtureCauseKind.RailSag, timed / mixture.Delivered),
            ];
        }

        double targetLambda = parts.Demand.TargetLambdaAt(demand.Point.RevolutionsPerSecond);
        double air = required * demand.Density * (double)Combustion.AirFuelRatio<Real>(targetLambda, parts.Demand.Consumption.Fuel.AirFuelRatio);
        double wanted = mixture.Wanted.Fuel / demand.Density;
        double takenBack = 1 / (1 - demand.TakenBack);
        double airFactor = air / mixture.Wanted.Air;
        double believedOpen = Math.Max(0, command.Pulse - command.DeadTime);
        double believedDifferential = controller is CalculatingController { Data: { CorrectsForRailPressure: false } data }
            ? data.Differential.Pascals
            : mixture.Differential;
        double trimmed = wanted * mixture.Trim;
        double limited = trimmed * believedOpen / (command.Unlimited - command.DeadTime);
        double believed = FlowAt(believedDifferential, believedOpen);

        // A controller that reads the pressure loses nothing by it: what a sagging rail costs shows as its duty limit.
        double pressed = controller.FollowsDifferential ? mixture.Differential : setDifferential;
        double atPressure = FlowAt(pressed, believedOpen);
        double atDeadTime = FlowAt(pressed, OpenAt(pressed));
        return
        [
            (MixtureCauseKind.Air, airFactor),
            (MixtureCauseKind.Target, required / wanted / airFactor / takenBack),
            (MixtureCauseKind.TakenBack, takenBack),
            (MixtureCauseKind.ClosedLoop, 1 / mixture.Trim),
            (MixtureCauseKind.DutyLimit, trimmed / limited),
            (MixtureCauseKind.InjectorData, limited / believed),
            (MixtureCauseKind.Pressure, believed / atPressure),
            (MixtureCauseKind.DeadTime, atPressure / atDeadTime),
            (MixtureCauseKind.RailSag, atDeadTime / mixture.Delivered),
        ];

        double OpenAt(double differential) => DeliveredFuel.OpenTime<Real>(
            mixture.Command.Pulse, parts.Injectors.Injector.DeadTime.Nearest(demand.Point.Conditions.SupplyVolts, differential), mixture.AvailableTime);

        double FlowAt(double differential, double open) => DeliveredFuel.Flow<Real>(
            parts.Injectors.Injector.StaticAt(differential, demand.Density),
            parts.Injectors.Count,
            open,
            mixture.AvailableTime);
    }
}

/// <summary>Why lambda is not its target.</summary>
public enum MixtureCauseKind
{
    /// <summary>Air that the controller does not know of, or believes in: the end of a meter, of a sensor or a table, another volumetric efficiency.</summary>
    Air,

    /// <summary>The controller's own target, and the fuel it was calibrated for.</summary>
    Target,

    /// <summary>A recorded pulse, at the pressure without boost; of one that does not follow manifold pressure, also with the air without boost.</summary>
    RecordedPulse,

    /// <summary>The correction by a lambda sensor.</summary>
    ClosedLoop,

    /// <summary>The controller's greatest duty cycle.</summary>
    DutyLimit,

    /// <summary>Injectors that pass another flow than the controller's data says, or fuel of another density.</summary>
    InjectorData,

    /// <summary>Another pressure across the injectors than the controller believes in, with the rail as set.</summary>
    Pressure,

    /// <summary>Another dead time than the controller believes in.</summary>
    DeadTime,

    /// <summary>A rail off its set pressure: a pump that cannot hold it, or a return line that forces it up.</summary>
    RailSag,

    /// <summary>Main fuel that the controller takes back for a second stream.</summary>
    TakenBack,

    /// <summary>The pulse of a controller by a law of your own, with the rail as set.</summary>
    OwnPulse,
}
