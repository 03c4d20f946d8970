using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How the heat of a tank and a run of warming fuel are shown.</summary>
internal static class HeatShown
{
    public static void Register()
    {
        Shown.By<TankHeat>((tank, style) => new("Heat of the tank", Of(tank, style)));
        Shown.By<HeatRun>((run, style) => new($"Warming fuel at {PartText.Say(run.Result.Point, style)}", Of(run, style), TakenForGranted(run)));
    }

    private static Fact[] Of(TankHeat tank, TextStyle style) =>
    [
        new("Fuel at the start", "", style.Of(tank.FuelVolume), "in the main tank"),
        new("Heat at the rail", "Φ_r", style.Heat(tank.RailPickup)),
        tank.WallArea is { } area && tank.WallCoefficient is { } coefficient
            ? new("Walls", "G_w", $"{style.Number(area.SquareMeters * coefficient.WattsPerSquareMeterKelvin, "0.##")} W/K", "area × heat transfer coefficient")
            : Fact.Words("Walls", "not described: they lose nothing"),
        tank.Ambient is { } ambient ? new("Air around the tank", "T_0", style.Of(ambient)) : Fact.Words("Air around the tank", "as at the operating point"),
        tank.SpecificHeat is { } heat
            ? new("Specific heat", "c_f", $"{style.Number(heat.KilojoulesPerKilogramKelvin, "0.00")} kJ kg⁻¹ K⁻¹")
            : Fact.Words("Specific heat", "of the fuel's kind"),
    ];

    private static Fact[] Of(HeatRun run, TextStyle style)
    {
        Fact answer = Fact.Words("Answer", PartText.Say(run.Text, style));
        if (run.Gap is not null)
        {
            return [answer];
        }

        return
        [
            answer,
            new("Run", "t_x", HeatText.Minutes(run.Run, style), $"{style.Of(run.FuelLeft!.Value)} of {style.Of(run.Tank.FuelVolume)} left"),
            new("Electrical power of the pumps", "P_e", CircuitText.Known(run.PumpPower, style.Heat)),
            new("Heat into the tank", "Φ", CircuitText.Known(run.HeatToTank, style.Heat), "of pumps and rail, what returns"),
            new("Tank", "T_T", CircuitText.Known(run.TankTemperature, style.Of), run.IsInsulated ? "at the end; an upper bound" : "at the end"),
            new("Pump inlet", "", CircuitText.Known(run.InletTemperature, style.Of), "at the end"),
            new("Rail", "", CircuitText.Known(run.RailTemperature, style.Of), "at the end"),
            run.SteadyTemperature is { } steady
                ? new("Steady", "T_st", style.Of(steady), run.TimeConstant is { } constant ? $"time constant {HeatText.Minutes(constant, style)} of the full contents" : "")
                : Fact.Words("Steady", "never: insulated"),
            new("Vapour margin at the start", "NPSP", CircuitText.Known(run.VapourMarginAtStart, style.Of)),
            new("Vapour margin at the end", "NPSP", CircuitText.Known(run.VapourMargin, style.Of), run.VapourMargin is null ? "" : HeatText.Of(run.Place)),
        ];
    }

    private static string TakenForGranted(HeatRun run) =>
        $"Taken for granted: fuel of one temperature in the tank, no heat lost or gained by the lines, all power of the pumps in the fuel{(run.IsInsulated ? "; walls that lose nothing" : string.Empty)}.";
}

/// <summary>Words of warming fuel.</summary>
internal static class HeatText
{
    /// <summary>Where the margin is lowest.</summary>
    public static string Of(HeatPlace place) => place switch
    {
        HeatPlace.PumpInlet => "at the pump inlet",
        HeatPlace.LiftPumpInlet => "at the lift pump's inlet",
        _ => "in the tank",
    };

    /// <summary>A time in minutes.</summary>
    public static string Minutes(Duration time, TextStyle style) => $"{style.Number(time.Minutes, "#,##0.0")} min";
}
