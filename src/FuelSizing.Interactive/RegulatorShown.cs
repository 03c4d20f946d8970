using FuelSizing.Quantities;
using FuelSizing.Regulators;

namespace FuelSizing.Interactive;

/// <summary>How regulators are shown.</summary>
internal static class RegulatorShown
{
    public static void Register()
    {
        Shown.By<Fixed>(regulator => Of(regulator, new Fact("Set pressure", "p_s", Readable.Of(regulator.Gauge), "gauge, whatever the boost")));
        Shown.By<ManifoldReferenced>(regulator => Of(regulator, Base(regulator.Base)));
        Shown.By<RisingRate>(regulator => Of(regulator, Rising(regulator)));
        Shown.By<RegulatorSeries>(regulator => Of(
            regulator,
            [Fact.Words("Base regulator", regulator.BaseRegulator.Description), .. Rising(regulator.Unit)]));
        Shown.By<ElectronicReturnless>(regulator => Of(
            regulator,
            regulator.FollowsManifold ? Base(regulator.Base) : new("Set pressure", "p_s", Readable.Of(regulator.Base), "gauge, whatever the boost"),
            new("Pump's lowest voltage", "V_min", Readable.Of(regulator.MinimumVoltage), "slower it cannot run")));
        Shown.Listed<PressureRegulator>(regulator => Of(regulator));
    }

    private static Facts Of(PressureRegulator regulator, params Fact[] own) => new(
        "Pressure regulator",
        [
            Fact.Words("Kind", regulator.Description),
            .. own,
            .. regulator is ElectronicReturnless
                ? (Fact[])[]
                : [new("Least flow through it", "Q_min", Readable.PumpFlow(regulator.MinimumReturnFlow), "below this it does not hold its pressure")],
        ]);

    private static Fact Base(UnitsNet.Pressure pressure) => new("Base pressure", "p_base", Readable.Of(pressure), "gauge, at no boost");

    private static Fact[] Rising(RisingRate unit) =>
    [
        Base(unit.Base),
        new("Gain", "g", PartText.Number(unit.Gain), "rise of the rail for each 1 of boost above the onset"),
        new("Onset", "o", Readable.Boost(unit.Onset), "boost"),
        .. unit.Ceiling is { } ceiling ? (Fact[])[new("Ceiling", "p_max", Readable.Of(ceiling), "gauge")] : [],
    ];
}
