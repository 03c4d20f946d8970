using System.Globalization;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>Everything that a setup's points come to, every number with all its digits: equal texts are equal bits.</summary>
internal static class ResultText
{
    public static IReadOnlyList<string> Of(Setup setup) =>
    [
        .. setup.Points.SelectMany(named => Of(setup.System.Solve(named.Point)).Prepend(named.Name)),
        $"line {setup.BoostLine}, pull {setup.PullRange}",
        .. Enumerable.Range(1, 8).Select(thousand => setup.BoostLine is null ? "none" : BoostAt(setup, 1000 * thousand)),
    ];

    private static string BoostAt(Setup setup, double revolutionsPerMinute)
    {
        try
        {
            return Line(
                "boost",
                setup.BoostLine!.At(
                    RotationalSpeed.FromRevolutionsPerMinute(revolutionsPerMinute), setup.System.Demand, setup.PullRange?.Conditions.Atmosphere ?? Atmosphere.Standard));
        }
        catch (ArgumentOutOfRangeException refused)
        {
            return refused.Message;
        }
    }

    /// <summary>Every number of a result, to the last bit, and its words.</summary>
    public static IEnumerable<string> Of(OperatingResult result) =>
    [
        Line("demand", result.Demand.MassFlow, result.InjectedFlow, result.FuelDensity),
        Line("rail", result.RailSetGauge, result.RailGauge, result.InjectorDifferential),
        Line("injector", result.StaticFlow, result.AvailableTime, result.DeadTime, result.Pulse, result.DutyCycle),
        $"lambda {result.Mixture.Lambda:R}, {result.Mixture}",
        Line("mixture", result.Mixture.CommandedPulse, result.Mixture.InjectedFlow, result.Mixture.RailGauge),
        Line("circuit", result.PumpFlow, result.ReturnedFlow, result.Circuit.InletGauge, result.Circuit.OutletGauge, result.Circuit.ReturnGauge, result.Circuit.HeatToTank),
        .. result.Circuit.Pumps.Select(pump => Line(pump.Pump.Name, pump.Flow, pump.PressureRise, pump.Voltage, pump.FeedDrop, pump.Current)),
        .. result.Circuit.Paths.Select(way => Line(way.Name, way.Flow, way.PressureLoss)),
        .. result.Margins.Select(margin => Line($"{margin} {margin.Outcome}", margin.Reserve, margin.Used, margin.Allowed)),
        .. result.Notes.Select(note => note.ToString()),
    ];

    private static string Line(string name, params IQuantity?[] quantities) =>
        $"{name}: {string.Join(", ", quantities.Select(quantity => quantity is null ? "none" : $"{((double)quantity.Value).ToString("R", CultureInfo.InvariantCulture)} {quantity.Unit}"))}";
}
