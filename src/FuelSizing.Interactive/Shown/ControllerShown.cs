using FuelSizing.Controllers;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>How controllers, and what they take for true, are shown.</summary>
internal static class ControllerShown
{
    public static void Register()
    {
        Shown.By<IdealController>(Of);
        Shown.By<SpeedDensityController>(Of);
        Shown.By<ThrottleController>(Of);
        Shown.By<AirflowMeterController>(Of);
        Shown.By<RecordedPulseController>(Of);
        Shown.By<CustomController>(Of);
        Shown.By<ControllerReading>((reading, style) => new(
            "What a controller may measure",
            [
                new("Speed", "n", style.Of(reading.Speed)),
                new("Manifold pressure", "p_3", style.Of(reading.ManifoldAbsolute), "absolute"),
                new("Voltage", "V_s", style.Of(reading.SupplyVoltage)),
            ]));
        Shown.Listed<EngineController>(Of);
        Shown.Listed<CalculatingController>(Of);
        Shown.By<ControllerData>((data, style) => new("What a controller takes for true", Of(data, style)));
        Shown.By<TargetLambda>((target, style) => new(
            "Target lambda of a controller",
            [.. target.Points.Select(point => new Fact("Target lambda", "λ_t", MixtureText.Lambda(point.Lambda, style), $"at a load of {style.Of(point.Load)}"))],
            "Load: the air of a cycle as a share of that which fills the displacement. Straight between the points; beyond them the ends hold."));
        Shown.By<ClosedLoop>((loop, style) => new("Closed loop", Of(loop, style)));
    }

    private static Facts Of(EngineController controller, TextStyle style) => new(
        "Controller",
        [Fact.Words("Kind", PartText.Say(controller, style)), .. Own(controller, style)],
        controller is IdealController ? "No verdict on the mixture rests on it. Describe the controller that there is." : null);

    private static Fact[] Own(EngineController controller, TextStyle style) => controller switch
    {
        SpeedDensityController density =>
        [
            new("End of its sensor or table", "p_3", style.Of(density.End), "manifold pressure, absolute: over it the fuel no longer follows boost"),
            density.FixedChargeTemperature is { } charge
                ? new("Charge temperature", "T_3", style.Of(charge), "believed in, whatever there is")
                : Fact.Words("Charge temperature", "measured"),
            .. Of(density.Data, style),
        ],
        ThrottleController throttle =>
        [
            Fact.Words("Boost", "changes nothing of what it commands"),
            Fact.Words("Ambient pressure", throttle.HasBarometer ? "measured" : $"believed in: {style.Of(throttle.CalibratedAt.Pressure)}"),
            Fact.Words("Air temperature", throttle.HasAirTemperature ? "measured" : $"believed in: {style.Of(throttle.CalibratedAt.Temperature)}"),
            .. Of(throttle.Data, style),
        ],
        AirflowMeterController meter =>
        [
            meter.Maximum is { } end
                ? new("End of the meter's range", "ṁ_a", style.Of(end), "over it the fuel no longer follows the air")
                : Fact.Words("End of the meter's range", "none"),
            .. Of(meter.Data, style),
        ],
        RecordedPulseController => [Fact.Words("Beyond its points", "no data: lambda cannot be said")],
        CustomController custom => [Fact.Words("Pulse", "by a law of your own"), Fact.Words("Across the injector", custom.Law.ReadsRailPressure ? "measured" : "not known to it")],
        _ => [],
    };

    private static Fact[] Of(ControllerData data, TextStyle style) =>
    [
        new("Injector in its data", "Q_s", style.InjectorFlow(data.Injector.StaticFlow), $"{data.Injector.Name}, at {style.Of(data.Injector.RatedDifferential)} on {data.Injector.TestFluid.Name}"),
        data.CorrectsForRailPressure
            ? Fact.Words("Across the injector", "measured; flow and dead time follow it")
            : new("Across the injector", "Δp", style.Of(data.Differential), "believed in, whatever there is"),
        data.FixedVoltage is { } voltage
            ? new("Voltage", "V_s", style.Of(voltage), "one dead time, whatever the voltage")
            : Fact.Words("Voltage", "dead time follows it"),
        Fact.Words("Fuel", data.HasEthanolSensor ? "ethanol content is measured" : $"{data.Fuel.Name} at {style.Of(data.FuelTemperature)}, whatever is in the tank"),
        .. data.Target.Points.Select(point => new Fact("Target lambda", "λ_t", MixtureText.Lambda(point.Lambda, style), $"at a load of {style.Of(point.Load)}")),
        new("Greatest duty cycle", "D_max", style.DutyCycle(data.MaximumDutyCycle), "that it commands"),
        .. data.ClosedLoop is { } loop ? Of(loop, style) : [Fact.Words("Closed loop", "none")],
    ];

    private static Fact[] Of(ClosedLoop loop, TextStyle style) =>
    [
        new("Authority of the closed loop", "", PartText.Within(style.Of(loop.Authority)), "of the fuel"),
        new("Closed loop up to", "p_3", style.Of(loop.MaximumManifoldAbsolute), "manifold pressure, absolute; over it the loop is open"),
    ];
}
