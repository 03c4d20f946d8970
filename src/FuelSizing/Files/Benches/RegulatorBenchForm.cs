using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A regulator by its gauge, against the pressure applied to it.</summary>
internal static class RegulatorBenchForm
{
    private static readonly BenchFields.Gauge RailGauge = new("rail_gauge", "the gauge at the rail");

    private static readonly BenchFields.Gauge AppliedGauge = new("applied_gauge", "the gauge of the applied pressure");

    private static readonly TruthField FollowsManifold = new("follows_manifold", "whether below the onset the rail follows the applied pressure");

    private static readonly QuantityField<Pressure> Applied = new("applied", Measures.Pressure, "at the reference, gauge: manifold or hand pump") { Example = "40 kPa", Range = "−95 to 400 kPa" };

    private static readonly QuantityField<Pressure> Rail = new("rail_gauge", Measures.Pressure, "in the rail, gauge") { Example = "461 kPa", Range = "0 to 2,500 kPa" };

    private static readonly QuantityField<VolumeFlow> Returned = new("returned", Measures.Flow, "that returns through the regulator, in all readings or in none") { Example = "90 L/h", Range = "0 to 500 L/h", Optional = true };

    private static readonly RecordForm<RegulatorGaugeReading> AReading = new(
        "regulator_reading", "a reading of a regulator", values => RegulatorGaugeReading.Of(values.Required(Applied), values.Required(Rail), values.Optional(Returned)))
    {
        { Applied, reading => reading.Applied },
        { Rail, reading => reading.RailGauge },
        { Returned, reading => reading.Returned },
    };

    private static readonly ListField<RegulatorGaugeReading> Readings = new("readings", () => AReading, "a row for each reading, at four applied pressures or more, three of them over 0")
    {
        IsTable = true,
        Minimum = 6,
        EachOrNone = Returned.Name,
    };

    /// <summary>A regulator by its gauge.</summary>
    public static RecordForm<RegulatorTest> Tests { get; } = Made();

    private static RecordForm<RegulatorTest> Made()
    {
        RecordForm<RegulatorTest> form = new(
            "regulator_test",
            "a regulator by its gauge",
            values => RailGauge.Of(values) is { } rail && AppliedGauge.Of(values) is { } applied
                ? RegulatorTest.Of(values.Required(BenchFields.Name), values.Required(FollowsManifold), rail, applied, [.. values.Required(Readings)])
                : null)
        {
            { BenchFields.Name, test => test.Name },
            { FollowsManifold, test => test.FollowsManifold },
        };
        RailGauge.AddTo(form, test => test.Rail);
        AppliedGauge.AddTo(form, test => test.Applied);
        form.Add(Readings, test => test.Readings);
        return form;
    }
}
