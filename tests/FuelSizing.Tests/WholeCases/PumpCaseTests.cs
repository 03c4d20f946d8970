using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.WholeCases;

/// <summary>Published pumps on their systems, and published wiring, as whole fuel systems.</summary>
public class PumpCaseTests
{
    private const double KilopascalsPerMetre = 50;

    /// <summary>
    /// Pump 7.46 − 0.0453 V² m, system 3.52 + 0.0261 V² m, V in L/min: V = √(3.94/0.0714) = 7.428 L/min. Twice in series the pump's head
    /// doubles: √(11.40/0.1167) = 9.884; in parallel each gives half the flow: √(3.94/0.037425) = 10.26. Heads are scaled to
    /// pressures that a fuel pump has, 50 kPa for a metre; the static head is the regulator's setting, the losses stand in the supply line.
    /// </summary>
    [Theory(DisplayName = "Pump on a system, alone, in series and in parallel; Çengel and Cimbala")]
    [InlineData("alone", 7.46, 0.0453)]
    [InlineData("two in series", 2 * 7.46, 2 * 0.0453)]
    [InlineData("two in parallel", 7.46, 0.0453 / 4)]
    public void Flow_OfAPublishedPumpOnItsSystem_IsTheClosedForm(string arrangement, double shutoff, double fall)
    {
        double flow = Math.Sqrt((shutoff - 3.52) / (fall + 0.0261));
        double head = 3.52 + (0.0261 * flow * flow);

        double last = Math.Sqrt(7.46 / 0.0453);
        Pump pump = Pump.From(PumpCurve.At(
            "book",
            Wren.Volt(13.5),
            [.. Enumerable.Range(0, 41).Select(i => last * (40 - i) / 40).Select(q =>
                (Wren.Kpa(KilopascalsPerMetre * (7.46 - (0.0453 * q * q))), VolumeFlow.FromLitersPerMinute(q)))]));
        PumpAssembly pumps = arrangement switch
        {
            "alone" => pump,
            "two in series" => PumpSeries.Of(SeriesBypass.None, pump, pump),
            _ => PumpParallel.Of(pump, pump),
        };

        // K ρ v²/2 of a fitting in a bore of 4 mm is the book's 0.0261 m for each (L/min)².
        const double Bore = 0.004;
        double velocity = 1 / 6e4 / (Math.PI / 4 * Bore * Bore);
        double coefficient = 0.0261 * KilopascalsPerMetre * 1000 * 2 / (745 * velocity * velocity);
        Line losses = Line.Of("losses", Length.FromMeters(Bore), Length.Zero, Length.Zero, [Fitting.Of("losses", coefficient)]);
        OperatingResult result = FuelSystem.Return(
                Wren.Demand(),
                InjectorsOf(),
                Fixed.At(Wren.Kpa(KilopascalsPerMetre * 3.52)),
                pumps,
                null,
                Plumbing.Of(supply: [losses]))
            .Solve(At(13.5));

        // Between 41 points of the curve the library's cubic is within 0.1 % of the parabola.
        Published.Value(Works.CengelPump.At($"{arrangement}, flow, L/min"), flow, result.PumpFlow!.Value.LitersPerMinute, 1e-3);
        Published.Value(
            Works.CengelPump.At($"{arrangement}, head, m"),
            head,
            (result.Circuit.OutletGauge - result.Circuit.InletGauge)!.Value.Kilopascals / KilopascalsPerMetre,
            1e-3);
    }

    /// <summary>
    /// The circular's check is resistance per foot × length × current, for 20 A. Two of its eight lines do not agree with their own product
    /// (88 ft: 3.60 for 3.555; 19.5 ft: .366 for 0.491) and are left out.
    /// </summary>
    [Theory(DisplayName = "Pump with wiring, voltage lost; FAA AC 43.13-1B")]
    [InlineData(0.00044, 107, 0.942, 0.0005)]
    [InlineData(0.00028, 90, 0.504, 0.0005)]
    [InlineData(0.00306, 100, 6.12, 0.005)]
    [InlineData(0.00126, 39, 0.98, 0.005)]
    [InlineData(0.00126, 156, 3.93, 0.005)]
    [InlineData(0.00126, 273, 6.88, 0.005)]
    public void Drop_OfThePumpsFeed_IsTheCirculars(double ohmsPerFoot, double feet, double volts, double lastFigure)
    {
        Contact wire = Contact.Of("wire", ElectricResistance.FromOhms(ohmsPerFoot * feet));
        Feed feed = Feed.Of("feed", Conductor.Awg(10), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(20), wire);
        Published.Value(
            Works.Faa4313.At(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{feet:0} ft, 20 A, V")),
            volts,
            Fed(feed, 20, ohmsPerFoot * feet * 20).Pumps.Single().FeedDrop.Volts,
            lastFigure / volts);
    }

    /// <summary>4.99 Ω for 1,000 ft, 200 ft out and back, 4 A: 3.992 V, 16.6 % of 24 V.</summary>
    [Fact(DisplayName = "Pump with wiring, voltage lost in AWG 16 by the electrical code's resistance; NEC")]
    public void Drop_OfThePumpsWire_IsThatOfTheElectricalCodesResistance()
    {
        Feed feed = Feed.Of("feed", Conductor.Awg(16), Length.FromFeet(100), Length.FromFeet(100), Temperature.FromDegreesCelsius(75));
        Published.Value(Works.NecTable8ByHand.At("voltage lost, V"), 4.99 * 0.2 * 4, Fed(feed, 4, 4.99 * 0.2 * 4).Pumps.Single().FeedDrop.Volts, 0.005);
    }

    // A pump that was measured, at every pressure alike, with the published current at the voltage that the published drop leaves of 20 V.
    private static CircuitResult Fed(Feed feed, double amperes, double drop)
    {
        PumpCurve curve = PumpCurve.WithCurrent(
            "pump",
            Wren.Volt(20 - drop),
            (Pressure.Zero, VolumeFlow.FromLitersPerHour(400), ElectricCurrent.FromAmperes(amperes)),
            (Wren.Kpa(900), VolumeFlow.Zero, ElectricCurrent.FromAmperes(amperes)));
        return FuelSystem.Return(
                Wren.Demand(), InjectorsOf(), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(curve).WithFeed(feed))
            .Solve(At(20))
            .Circuit;
    }

    private static InjectorSet InjectorsOf() => InjectorSet.Of(Wren.InjectorOf(360), 4);

    private static OperatingPoint At(double volts) => OperatingPoint.At(
        Wren.Rpm(900), Pressure.FromBars(-0.6), Conditions.Of(Atmosphere.Standard, Wren.Volt(volts), Temperature.FromDegreesCelsius(15)));
}
