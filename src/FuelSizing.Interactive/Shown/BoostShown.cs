using FuelSizing.Engines;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>How boost lines are shown.</summary>
internal static class BoostShown
{
    public static void Register()
    {
        Shown.By<MeasuredBoost>(Of);
        Shown.By<HeldBoost>(Of);
        Shown.By<CentrifugalBoost>(Of);
        Shown.By<DisplacementBoost>(Of);
        Shown.Listed<BoostLine>(Of);
        Shown.Listed<BeltDrivenBoost>(Of);
    }

    private static Facts Of(BoostLine line, TextStyle style) => new("Boost line", [Fact.Words("Kind", PartText.Say(line, style)), .. Own(line, style)]);

    private static Fact[] Own(BoostLine line, TextStyle style) => line switch
    {
        MeasuredBoost measured =>
        [
            Fact.Words("Known", $"from {style.Of(measured.MinimumSpeed)} to {style.Of(measured.MaximumSpeed)}, and no further"),
        ],
        HeldBoost held =>
        [
            new("Boost", "p_b", style.Boost(held.Boost), $"gauge, from {style.Of(held.From)} to {style.Of(held.To)}"),
            .. held.Threshold is { } threshold ? (Fact[])[Fact.Words("Run-up", $"from none at {style.Of(threshold)}, in a straight line")] : [],
        ],
        CentrifugalBoost centrifugal =>
        [
            .. Belt(centrifugal, style),
            new("Boost of the known point", "p_b", style.Boost(centrifugal.KnownBoost), $"gauge, at {style.Of(centrifugal.KnownSpeed)} of the engine and a drive ratio of {style.Number(centrifugal.KnownDriveRatio)}"),
            new("Inlet temperature there", "T_k", style.Of(centrifugal.MeasuredIn.Temperature), $"ambient pressure {style.Of(centrifugal.MeasuredIn.Pressure)}"),
        ],
        DisplacementBoost displacement =>
        [
            .. Belt(displacement, style),
            new("Compressor's displacement", "V_c", style.Of(displacement.DisplacementPerRevolution), "with one turn of its own"),
            new("Compressor's volumetric efficiency", "η_cv", style.Of(displacement.VolumetricEfficiency), "taken as constant"),
        ],
        _ => [],
    };

    private static Fact[] Belt(BeltDrivenBoost line, TextStyle style) =>
    [
        new("Drive ratio", "i_c", style.Number(line.DriveRatio), "turns of the compressor to one of the crank"),
        .. line is { MaximumCompressorSpeed: { } maximum, SpeedAtMaximum: { } reached }
            ? (Fact[])[new("Compressor's maximum speed", "N_c", style.Of(maximum), $"reached at {style.Of(reached)} of the engine")]
            : [],
    ];
}
