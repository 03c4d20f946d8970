using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// A pump and injectors measured wholly, and the same with part of the data cut off: what the rest holds up must hold by the whole too, on
/// either side of the circuit. The pumps are invented motors with a turbine or a displacement pump; the whole data is dense, so that what is
/// read between its points is the pump itself.
/// </summary>
public class CutDataTests(ITestOutputHelper output)
{
    // More by FUELSIZING_CUTS, for the count that docs/full.md states.
    private static readonly int Systems = int.Parse(
        Environment.GetEnvironmentVariable("FUELSIZING_CUTS") is { Length: > 0 } more ? more : "400", System.Globalization.CultureInfo.InvariantCulture);

    private static readonly double[] Voltages = [9, 10, 11, 12, 12.75, 13.5, 14.25, 15];

    private static readonly string[] Cuts = ["voltages above", "voltages below", "pressures above", "pressures below", "dead times"];

    private static readonly Gen<Case> Any = Gen.Select(
        Gen.Select(
            Gen.Bool,
            Gen.Double[100, 450],
            Gen.Double[450, 1200],
            Gen.Double[1, 2],
            Gen.Double[2, 6],
            Gen.Double[2, 10],
            Gen.Double[0, 0.33]).Select((turbine, flow, deadhead, exponent, idle, load, share) => new ModelPump(
                turbine, flow / 3.6e6, deadhead * 1e3, exponent, idle, load, ModelPump.OhmsFor(share, idle + load))),
        Gen.Select(Gen.Int[0, 4], Gen.Double[0, 1]),
        Gen.Select(Gen.Double[9.5, 14.9], Gen.Double[0, 6], Gen.Bool),
        Gen.Select(Gen.Double[2500, 7000], Gen.Double[-0.3, 0.9], Gen.Double[200, 900], Gen.Double[250, 400]),
        Gen.Select(Gen.Double[2.5, 8], Gen.Double[30, 300], Gen.Double[350, 900], Gen.Double[-10, 55])).Select(
            (pump, cut, electrical, point, lines) => new Case(pump, cut.Item1, cut.Item2, electrical, point, lines));

    [Fact]
    public void Holds_OnCutData_IsNeverAFailureOnTheWhole()
    {
        object gate = new();
        int cannotSay = 0;
        int needed = 0;
        Any.Sample(
            drawn =>
            {
                OperatingResult whole = drawn.Solve(cut: false);
                OperatingResult part = drawn.Solve(cut: true);
                foreach ((Margin all, Margin some) in whole.Margins.Zip(part.Margins))
                {
                    double? share = all.Reserve?.DecimalFractions;
                    bool isWrong = (some.Outcome, all.Outcome) switch
                    {
                        (Outcome.Holds, Outcome.Fails) => share < -0.01,
                        (Outcome.Fails, Outcome.Holds) => share > 0.01,
                        _ => false,
                    };
                    Assert.False(isWrong, isWrong ? $"{drawn.Told()}: {some.Part.Name}, by part {some}; by the whole {all}" : null);
                }

                if (drawn.IsOutside(whole))
                {
                    bool lost = whole.Margins.Zip(part.Margins).Any(
                        pair => pair.First.Outcome != Outcome.CannotSay && pair.Second.Outcome == Outcome.CannotSay);
                    lock (gate)
                    {
                        needed++;
                        cannotSay += lost ? 1 : 0;
                    }
                }
            },
            iter: Systems);
        output.WriteLine($"{Systems} systems; the cut lies outside what the point needs in {needed}, of which {cannotSay} cannot say");
        Assert.True(cannotSay <= needed * 0.05, $"{cannotSay} of {needed} cannot say");
        Assert.True(needed > Systems / 20, $"only {needed} of {Systems}");
    }

    private sealed record Case(
        ModelPump Pump,
        int Cut,
        double Share,
        (double Supply, double Metres, bool Returns) Electrical,
        (double Speed, double Boost, double Injector, double Base) Point,
        (double Bore, double Filter, double Rating, double Celsius) Lines)
    {
        private static double LowestVoltage => Voltages[0];

        private double CutVoltage => Voltages[0] + (Share * (Voltages[^1] - Voltages[0]));

        // Not below what any curve ends at, so that two points are left of each.
        private double CutPressure => Pump.Deadhead * (0.12 + (0.85 * Share));

        public string Told() => $"{Cuts[Cut]} at {(Cut < 2 ? $"{CutVoltage:0.00} V" : $"{CutPressure / 1e3:0} kPa")}, {this}";

        public OperatingResult Solve(bool cut)
        {
            PumpCurve[] curves = [.. Voltages.Select(volts => Pump.CurveAt(volts, 41))];
            DeadTimeTable dead = Wren.DeadTime;
            if (cut)
            {
                curves = Cut switch
                {
                    0 => [.. curves.Where((curve, place) => place == 0 || curve.Voltage.Volts <= CutVoltage)],
                    1 => [.. curves.Where((curve, place) => place == curves.Length - 1 || curve.Voltage.Volts >= CutVoltage)],
                    2 => Array.ConvertAll(curves, curve => Between(curve, 0, CutPressure)),
                    3 => Array.ConvertAll(curves, curve => Between(curve, CutPressure * 0.6, double.PositiveInfinity)),
                    _ => curves,
                };
                dead = Cut == 4 ? Part(CutVoltage) : dead;
            }

            FuelSystem system = (Electrical.Returns ? (Func<Measured, FuelSystem>)Return : Returnless)(new Measured(curves, dead));
            return system.Solve(OperatingPoint.At(
                Wren.Rpm(Point.Speed),
                Pressure.FromBars(Point.Boost),
                Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(Electrical.Supply), Temperature.FromDegreesCelsius(Lines.Celsius))));
        }

        /// <summary>True if the whole solution uses nothing of what was cut.</summary>
        public bool IsOutside(OperatingResult whole)
        {
            if (whole.Circuit.Pumps.Count == 0)
            {
                return false;
            }

            double volts = whole.Circuit.Pumps[0].Voltage.Volts;
            double rise = whole.Circuit.Pumps[0].PressureRise.Pascals;
            return Cut switch
            {
                0 => Electrical.Supply <= Voltages.Where(voltage => voltage <= CutVoltage).DefaultIfEmpty(LowestVoltage).Max(),
                1 => volts - 1 >= Voltages.Where(voltage => voltage >= CutVoltage).DefaultIfEmpty(Voltages[^1]).Min(),
                2 => rise * 1.6 < CutPressure,
                3 => false,
                _ => Electrical.Supply >= Math.Min(14, Math.Ceiling(CutVoltage / 2) * 2) && whole.InjectorDifferential.Kilopascals is > 100 and < 600,
            };
        }

        private static PumpCurve Between(PumpCurve curve, double from, double to)
        {
            (Pressure, VolumeFlow, ElectricCurrent)[] points =
            [
                .. Enumerable.Range(0, 41)
                    .Select(point => curve.MaximumPressure * (point / 40.0))
                    .Where(rise => rise.Pascals >= from && rise.Pascals <= to)
                    .Select(rise => (rise, VolumeFlow.FromCubicMetersPerSecond(Math.Max(0, curve.FlowAt(rise).CubicMetersPerSecond)), curve.CurrentAt(rise))),
            ];
            return points.Length < 2 ? curve : PumpCurve.WithCurrent(curve.Name, curve.Voltage, points);
        }

        private static DeadTimeTable Part(double volts)
        {
            double from = Math.Min(14, Math.Ceiling(volts / 2) * 2);
            ElectricPotential[] kept = [.. new double[] { 8, 10, 12, 14, 16 }.Where(voltage => voltage >= from).Select(Wren.Volt)];
            Pressure[] pressures = [.. new double[] { 100, 200, 300, 400, 600 }.Select(Wren.Kpa)];
            return DeadTimeTable.Of(
                kept,
                pressures,
                [.. pressures.Select(pressure => kept.Select(voltage => Wren.DeadTime.At(voltage, pressure)).ToArray())]);
        }

        private FuelSystem Return(Measured given) => FuelSystem.Return(
            Wren.Demand(), Injectors(given), ManifoldReferenced.From(Wren.Kpa(Point.Base)), Fed(given), Limits, Plumbing.Of(
                suction: [Hose("suction", Lines.Bore * 1.4, 0.5)],
                supply: [Filter.Of("filter F", VolumeFlow.FromLitersPerHour(Lines.Filter), Wren.Kpa(10)), Hose("supply", Lines.Bore * 1.2, 4)],
                returnLine: [Hose("return", Lines.Bore, 4)]));

        private FuelSystem Returnless(Measured given) => FuelSystem.Returnless(
            Wren.Demand(), Injectors(given), Fixed.At(Wren.Kpa(Point.Base)), Fed(given), Limits, Plumbing.Of(
                supply: [Filter.Of("filter F", VolumeFlow.FromLitersPerHour(Lines.Filter), Wren.Kpa(10)), Hose("supply", Lines.Bore * 1.2, 4)]));

        private SizingLimits Limits => SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(Lines.Rating));

        private InjectorSet Injectors(Measured given) => InjectorSet.Of(
            Injector.Of(
                "injector A",
                VolumeFlow.FromMillilitersPerMinute(Point.Injector),
                Wren.Kpa(300),
                TestFluid.Heptane,
                given.DeadTime,
                Wren.Ms(1.6),
                Wren.Kpa(550)),
            4);

        private Pump Fed(Measured given) => FuelSizing.Pumps.Pump.Of(
            given.Curves,
            feed: PumpAssemblyTests.FeedOf(Electrical.Metres, 14)
                .WithInsulation(Temperature.FromDegreesCelsius(90), Temperature.FromDegreesCelsius(60))
                .WithFuse(ElectricCurrent.FromAmperes(15)));

        private static Line Hose(string name, double bore, double metres) =>
            Line.Of(name, Length.FromMillimeters(bore), Length.FromMeters(metres), Roughness.RubberHose);
    }

    /// <summary>What of a system was measured.</summary>
    private sealed record Measured(PumpCurve[] Curves, DeadTimeTable DeadTime);
}
