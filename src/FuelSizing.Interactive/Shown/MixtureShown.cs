using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Sizing;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>How the mixture that the engine gets, its limits, and what makes it right or wrong, are shown.</summary>
internal static class MixtureShown
{
    public static void Register()
    {
        Shown.By<DeliveredMixture>(Of);
        Shown.By<MixtureCause>((cause, style) => new("One cause of the mixture", [Of(cause, style)]));
        Shown.By<MixtureLimits>((limits, style) => new("Mixtures that are allowed", Of(limits, style)));
        Shown.As<LineSweepResult>(SizingTables.Standings);
        Shown.By<RisingRateFit>((fit, style) => new(
            fit.Serves ? "The rising-rate unit that comes nearest to the target" : "No rising-rate unit does it",
            [
                new("Base pressure", "p_base", style.Of(fit.Unit.Base), "gauge, at no boost"),
                new("Gain", "G", style.Number(fit.Unit.Gain), "rise of the rail for each 1 of boost above the onset"),
                new("Onset", "p_on", style.Boost(fit.Unit.Onset), "boost"),
                new("Largest deviation", "", MixtureText.Deviation(fit.LargestDeviation, style), "of lambda from its target along the line, lean or rich"),
                .. fit.Obstacle is { } obstacle ? (Fact[])[Fact.Words("Prevented by", PartText.Say(obstacle, style))] : [],
            ],
            fit.Serves
                ? "Every other check holds at the speeds of the fit. Judge the unit along the line: there the leanest lambda allowed counts too."
                : "The unit shown is the one with the nearest mixture; what prevents it stands above."));
        Shown.By<FittedPoint>((point, style) => new(
            PartText.Say(point.Result.Point, style),
            [
                new("Rail, required", "p_r", point.RequiredRail is { } required ? style.Of(required) : "none", "gauge, for the target lambda"),
                new("Rail, set", "p_s", style.Of(point.Result.RailSetGauge), "gauge"),
                new("Rail, delivered", "p_r", style.Of(point.Result.Mixture.RailGauge), "gauge"),
                new("Lambda", "λ", MixtureText.Lambda(point.Result.Mixture.Lambda, style)),
                new("Deviation", "", MixtureText.Deviation(point.Result.Mixture.Deviation, style), "from the target; positive is lean"),
            ]));
        Shown.By<RisingRateBounds>((bounds, style) => new(
            "Where a rising-rate unit is looked for",
            [
                new("Base pressure from", "p_base", style.Of(bounds.MinimumBase)),
                new("Base pressure to", "p_base", style.Of(bounds.MaximumBase)),
                new("Gain up to", "G", style.Number(bounds.MaximumGain), "4 to 12: common practice, no source"),
                new("Onset up to", "p_on", style.Boost(bounds.MaximumOnset)),
                .. bounds.Ceiling is { } ceiling ? (Fact[])[new("Ceiling", "p_max", style.Of(ceiling), "gauge")] : [],
            ]));
        Shown.By<CutOutResult>((cut, style) => new(
            "Where a cut-out has to act",
            [
                Fact.Words("On rail pressure", PartText.Say(cut.FixedSwitch, style)),
                Fact.Words("On rail less manifold pressure", PartText.Say(cut.DifferentialSwitch, style)),
                .. cut.Points.Select(point => Fact.Words("At", PartText.Say(point, style))),
            ],
            "Steady state: it says nothing of how fast a pump loses its pressure, or a switch acts. Leave a margin over these pressures."));
        Shown.By<CutOutPoint>((point, style) => new(
            PartText.Say(point.Result.Point, style),
            [
                new("Leanest lambda allowed", "λ", MixtureText.Lambda(point.Lambda, style)),
                new("Rail, at that lambda", "p_r", point.RequiredRail is { } required ? style.Of(required) : "none known", "gauge"),
                new("Rail, as built", "p_r", style.Of(point.Result.Mixture.RailGauge), "gauge"),
            ]));
        Shown.By<CutOutSwitch>((cut, style) => new(
            cut.IsDifferential ? "A switch on rail less manifold pressure" : "A switch on rail pressure",
            [
                new("Lowest setting that keeps the mixture", "p_r", cut.Minimum is { } minimum ? style.Of(minimum) : "not known", PartText.Say(cut.MinimumAt.Result.Point, style)),
                new("Highest setting that does not act in sound operation", "p_r", style.Of(cut.Maximum), PartText.Say(cut.MaximumAt.Result.Point, style)),
                Fact.Words("One setting for the whole line", PartText.Say(cut, style)),
            ]));
        Shown.By<MaximumBoostResult>((most, style) => new(
            "The most boost with the parts as they are",
            [
                new("Compressor pulley, change of diameter", "", most.CompressorPulleyChange is { } change ? style.Change(change) : "none"),
                new("Highest boost", "p_b", most.HighestBoost is { } boost ? style.Boost(boost) : "none"),
                Fact.Words("Drive ratio", PartText.Say(most.DriveRatio, style)),
            ],
            most.Line is null ? PartText.Say(most, style) : null));
        Shown.By<InjectorRequirement>((required, style) => new(
            required.Data is null ? "No injectors serve" : "Injectors and controller data in place of a rising-rate unit",
            [
                Fact.Words("Static flow", PartText.Say(required.StaticFlow, style)),
                .. required.Data is { } data
                    ? (Fact[])
                    [
                        new("Across the injector", "Δp", style.Of(data.Differential), "in the controller's data"),
                        new("Injector held open", "", required.StaticMassFlow is { } constant ? style.Of(constant) : "not known", "of the fuel in the rail, at that differential"),
                        new("Dead time", "t_d", CircuitText.Known(required.DeadTime, style.Of), "at that differential and the supply's voltage"),
                    ]
                    : [],
                new("Manifold pressure up to", "p_m", style.Of(required.HighestManifoldAbsolute), "absolute: the controller has to know of it"),
            ]));
        Shown.By<OperatingRanges>((ranges, style) => new(
            "What may vary",
            [
                .. ranges.AmbientPressure is { } pressure ? (Fact[])[new("Ambient pressure", "p_0", $"{style.Of(pressure.Lowest)} to {style.Of(pressure.Highest)}")] : [],
                .. ranges.AmbientTemperature is { } air ? (Fact[])[new("Ambient temperature", "T_0", $"{style.Of(air.Lowest)} to {style.Of(air.Highest)}")] : [],
                .. ranges.SupplyVoltage is { } supply ? (Fact[])[new("Supply voltage", "V_s", $"{style.Of(supply.Lowest)} to {style.Of(supply.Highest)}")] : [],
                .. ranges.FuelTemperature is { } fuel ? (Fact[])[new("Fuel temperature", "T", $"{style.Of(fuel.Lowest)} to {style.Of(fuel.Highest)}")] : [],
                .. ranges.EthanolContent is { } ethanol
                    ? (Fact[])[new("Ethanol content", "", $"{style.Of(ethanol.Lowest)} to {style.Of(ethanol.Highest)}", $"by volume, in {ranges.Petrol!.Name}")]
                    : [],
            ],
            "What has no range stays as in the conditions that were given."));
        Shown.As<WorstCornerResult>(MixtureTables.WorstCorner);
        Shown.By<WorstPlace>((place, style) => new(
            place.Margin is { } margin ? $"Where the margin is tightest: {margin.Part.Name}" : "Where lambda is leanest",
            [
                Fact.Words("At", PartText.Say(place.Result.Point, style)),
                new("Lambda", "λ", MixtureText.Lambda(place.Result.Mixture.MaximumLambda, style)),
                new("Rail, delivered", "p_r", style.Of(place.Result.Mixture.RailGauge), "gauge"),
                .. place.Margin is { } tightest ? (Fact[])[Fact.Words("Finding", PartText.Say(tightest, style))] : [],
                .. place.Inputs.Select(input => Fact.Words("With", PartText.Say(input, style))),
            ],
            place.IsAtCorner ? null : "The worst lies inside a range, not at a corner."));
        Shown.By<RangeInput>((input, style) => new("An input at the worst place", [Fact.Words("Input", PartText.Say(input, style))]));
        Shown.By<FailureResult>((failure, style) => new(
            $"If one thing fails: {PartText.Say(failure.Failure, style)}",
            failure is { Sweep: { } sweep, LowestRail: { } lowest }
                ?
                [
                    new("Leanest lambda", "λ", MixtureText.Lambda(failure.Leanest?.Mixture.Lambda, style), failure.Leanest is { } leanest ? $"at {PartText.Say(leanest.Point, style)}" : ""),
                    new("Lowest rail pressure", "p_r", style.Of(lowest.Mixture.RailGauge), $"gauge, at {PartText.Say(lowest.Point, style)}"),
                    .. failure.HighestRail is { } highest ? (Fact[])[new("Highest rail pressure", "p_r", style.Of(highest.Mixture.RailGauge), $"gauge, at {PartText.Say(highest.Point, style)}")] : [],
                    Fact.Words("Along the line", PartText.Say(sweep.Verdict, style)),
                ]
                : [Fact.Words("Along the line", PartText.Say(failure, style))]));
    }

    /// <summary>What reaches the engine, and why; of an assumed controller that it is assumed.</summary>
    public static Facts Of(DeliveredMixture mixture, TextStyle style) => mixture.Controller is Controllers.IdealController assumed
        ? new("Mixture", [Fact.Words("Not judged", PartText.Say(assumed, style))])
        : new(
            "Mixture",
            [
                Fact.Words("Controller", PartText.Say(mixture.Controller, style)),
                new("Lambda", "λ", MixtureText.Lambda(mixture.Lambda, style), Bounds(mixture, style)),
                new("Target lambda", "λ_t", MixtureText.Lambda(mixture.TargetLambda, style)),
                new("Deviation", "", MixtureText.Deviation(mixture.Deviation, style), "from the target; positive is lean"),
                new("Commanded pulse", "t", CircuitText.Known(mixture.CommandedPulse, style.Of), Pulse(mixture)),
                new("Commanded duty cycle", "D", CircuitText.Known(mixture.CommandedDutyCycle, style.DutyCycle)),
                new("Dead time", "t_d", CircuitText.Known(mixture.DeadTime, style.Of)),
                new("Open time", "t_o", CircuitText.Known(mixture.OpenTime, style.Of), mixture.IsBelowLinearRange ? "below the injectors' linear range: the fuel may be off by more" : ""),
                new("Rail, with the flow injected", "p_r", style.Of(mixture.RailGauge), "gauge"),
                new("Across the injector", "Δp", style.Of(mixture.InjectorDifferential), TurnOver(mixture, style)),
                new("Injected", "Q_f", CircuitText.Known(mixture.InjectedFlow, style.PumpFlow)),
                .. mixture.Causes.Select(cause => Of(cause, style)),
            ],
            mixture.Causes.Count > 0 ? "A cause's value is what it multiplies lambda by; all of them together make the deviation." : null);

    /// <summary>Leanest and richest, in lines.</summary>
    public static Fact[] Of(MixtureLimits limits, TextStyle style) =>
    [
        .. limits.Leanest.Select(point => new Fact("Leanest lambda", "λ", MixtureText.Lambda(point.Lambda, style), $"from {style.Boost(point.Boost)} of boost")),
        .. limits.Richest is { } richest ? (Fact[])[new("Richest lambda", "λ", MixtureText.Lambda(richest, style))] : [],
    ];

    private static Fact Of(MixtureCause cause, TextStyle style) => new("Cause", "", style.Number(cause.Factor, "N3"), PartText.Say(cause, style));

    private static string Bounds(DeliveredMixture mixture, TextStyle style) =>
        mixture is { MinimumLambda: { } richest, MaximumLambda: { } leanest } && richest < leanest
            ? $"between {MixtureText.Lambda(richest, style)} and {MixtureText.Lambda(leanest, style)}: the pumps' data ends"
            : "";

    private static string Pulse(DeliveredMixture mixture) =>
        mixture.IsHeldOpen ? "as long as the cycle: the injectors never close"
        : mixture.IsDutyLimited ? "cut off by the controller's greatest duty cycle"
        : mixture.IsPastSensor ? "past the end of the controller's sensor or table"
        : "";

    private static string TurnOver(DeliveredMixture mixture, TextStyle style) => mixture.TurnOverDifferential is { } turn
        ? mixture.IsPastTurnOver ? $"past {style.Of(turn)}, from which more pressure leans" : $"from {style.Of(turn)} more pressure leans"
        : "";
}
