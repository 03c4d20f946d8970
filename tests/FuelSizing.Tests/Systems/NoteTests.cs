using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What a result says of its own doubts: each where it has them, and nothing where it has none.</summary>
public class NoteTests
{
    private static readonly FuelConsumption Greedy = FuelConsumption.Of(
        Fuel.Petrol, 0.95, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(420));

    [Fact]
    public void Result_WithoutDoubts_HasNoNotes() => Assert.Empty(Wren.System().Solve(Wren.At(3000, 0)).Notes);

    /// <summary>Without boost and with it; not on a closed throttle, which a measured full-load power does not cover.</summary>
    [Fact]
    public void Demands_ThatDisagree_AreTold()
    {
        FuelSystem system = Wren.System(consumption: Greedy, pump: 3);
        foreach (double boost in new[] { 0, 0.5 })
        {
            OperatingResult result = system.Solve(Wren.At(5000, boost));
            Assert.True(Math.Abs(result.Demand.Difference.Percent) > 15);
            Assert.StartsWith(
                $"Fuel calculated from power differs by {Readable.Change(result.Demand.Difference)} from that calculated from air at 5,000 rev/min, {Readable.Boost(result.Point.Boost)}: ",
                Assert.Single(result.Notes).ToString(),
                StringComparison.Ordinal);
        }

        OperatingResult shut = system.Solve(Wren.At(5000, -0.5));
        Assert.True(Math.Abs(shut.Demand.Difference.Percent) > 15);
        Assert.Empty(shut.Notes);
    }

    [Fact]
    public void DeadTime_KnownAtOnePressureOnly_IsToldToBeAnEstimate()
    {
        Injector simple = Injector.Of(
            "injector S",
            VolumeFlow.FromMillilitersPerMinute(500),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.8)), (Wren.Volt(16), Wren.Ms(0.7))),
            Wren.Ms(1.6),
            Wren.Kpa(550));
        Assert.Equal(
            "Dead time is taken to be the same at every pressure: an estimate.",
            Assert.Single(Wren.System().With(InjectorSet.Of(simple, 4)).Solve(Wren.At(3000, 0)).Notes).ToString());
    }

    [Fact]
    public void Pump_OnMoreVoltageThanItsCurves_IsToldToBeTakenUnchanged()
    {
        Conditions strong = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14.4), Wren.Hill.FuelTemperature);
        Assert.Equal(
            "The highest curve of pump P, 13.5 V, is used unchanged at 14.4 V for what the pump delivers at the least; return line, inlet, filter, pressure and current are judged by the most that it may deliver there.",
            Assert.Single(Wren.System().Solve(OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), strong)).Notes).ToString());
    }

    /// <summary>
    /// A pump whose kind is described is told to be carried by it, from the curve that is nearest, and in place of what is said of one whose kind is not; at a
    /// voltage at which it was measured nothing is said. The pump after it is told of as well.
    /// </summary>
    [Theory]
    [InlineData(14.4, "at 14.4 V is carried from its 13.5 V curve as a turbine pump, winding not known: an estimate.", "The highest curve of pump P, 13.5 V, is used unchanged at 14.4 V")]
    [InlineData(11.5, "at 11.5 V is carried from its 12.0 V curve as a turbine pump, winding not known: an estimate.", "pump P at 11.5 V is scaled from its 13.5 V curve")]
    [InlineData(13, null, "pump P at 13.0 V is scaled from its 13.5 V curve")]
    public void Pump_OfADescribedKind_IsToldToBeCarriedByIt(double volts, string? driven, string plain)
    {
        Pump turbine = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)], drive: PumpDrive.Of(PumpKind.Turbine));
        FuelSystem system = Wren.System().With(PumpParallel.Of(turbine, Pump.From(Wren.Pump)));
        string[] notes =
        [
            .. system.Solve(OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(0), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature)))
                .Notes.Select(note => note.ToString()),
        ];
        Assert.Equal(driven is null ? 1 : 2, notes.Length);
        Assert.Contains(notes, note => note.StartsWith(plain, StringComparison.Ordinal));
        if (driven is not null)
        {
            Assert.Contains(notes, note => note.Contains(driven, StringComparison.Ordinal));
        }
    }

    /// <summary>Of several notes on one subject a sweep gives the gravest: the greatest difference, whichever point has it.</summary>
    [Fact]
    public void Notes_OfASweep_AreOneForEachSubjectAtItsWorst()
    {
        FuelSystem system = Wren.System(consumption: Greedy, pump: 3);
        SweepResult sweep = system.Sweep([Wren.Rpm(3000), Wren.Rpm(4000), Wren.Rpm(5500)], [Wren.Kpa(0), Wren.Kpa(30), Wren.Kpa(60)], Wren.Hill);
        OperatingResult worst = sweep.Results.MaxBy(result => Math.Abs(result.Demand.Difference.Percent))!;
        Assert.Contains($" at {worst.Point}: ", Assert.Single(sweep.Notes).ToString(), StringComparison.Ordinal);
        LineSweepResult line = system.Sweep(
            FuelSizing.Engines.HeldBoost.Of(Wren.Kpa(30), Wren.Rpm(3000), Wren.Rpm(5500)), [Wren.Rpm(3000), Wren.Rpm(4000), Wren.Rpm(5500)], Wren.Hill);
        OperatingResult along = line.Results.MaxBy(result => Math.Abs(result.Demand.Difference.Percent))!;
        Assert.Contains($" at {along.Point}: ", Assert.Single(line.Notes).ToString(), StringComparison.Ordinal);
    }

    /// <summary>A BSFC that was measured on another fuel is told with both figures.</summary>
    [Fact]
    public void Consumption_OfAnotherFuel_IsToldToBeConverted()
    {
        FuelConsumption converted = Wren.Petrol.With(Fuel.E85);
        Assert.True(converted.IsConverted);
        string note = Wren.System(consumption: converted, injector: 700, pump: 3).Solve(Wren.At(3000, 0)).Notes
            .Select(text => text.ToString()).Single(text => text.StartsWith("BSFC on", StringComparison.Ordinal));
        Assert.Contains("is converted from 315 g/kWh on petrol at equal brake efficiency: an estimate.", note, StringComparison.Ordinal);
    }

    /// <summary>A rising-rate unit that sets less than the base regulator all the way is told with the most that each sets; one that acts somewhere is not.</summary>
    [Fact]
    public void Unit_ThatNeverActs_IsToldWithWhatEachHolds()
    {
        SweepResult Of(double gain) => Wren.System(FuelSizing.Regulators.RegulatorSeries.Of(
            FuelSizing.Regulators.ManifoldReferenced.From(Wren.Kpa(300)),
            FuelSizing.Regulators.RisingRate.From(Pressure.Zero, gain, Pressure.Zero))).Sweep([Wren.Rpm(3000)], [Wren.Kpa(10), Wren.Kpa(60)], Wren.Hill);
        Assert.StartsWith(
            "The rising-rate unit never acts from 0.10 bar to 0.60 bar: it would hold at most 240 kPa where the base regulator holds 360 kPa.",
            Assert.Single(Of(4).Notes).ToString(),
            StringComparison.Ordinal);
        Assert.StartsWith("The rising-rate unit never acts", Assert.Single(Of(6).Notes).ToString(), StringComparison.Ordinal);
        Assert.Empty(Of(6.1).Notes);

        SweepResult Late(double onset) => Wren.System(FuelSizing.Regulators.RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(onset))).Sweep([Wren.Rpm(3000)], [Wren.Kpa(10), Wren.Kpa(60)], Wren.Hill);
        Assert.Equal("The gain of 4 sets in above 0.60 bar, which no boost here exceeds.", Assert.Single(Late(60).Notes).ToString());
        Assert.Empty(Late(59.9).Notes);
        Assert.Empty(Wren.System(FuelSizing.Regulators.RisingRate.From(Wren.Kpa(300), 1, Wren.Kpa(60))).Sweep([Wren.Rpm(3000)], [Wren.Kpa(10), Wren.Kpa(60)], Wren.Hill).Notes);
    }

    /// <summary>A second set of injectors: that a hand-over is passed through, and, where their dead time goes by voltage alone, that it is an estimate.</summary>
    [Fact]
    public void SecondSet_TellsOfItsHandOver()
    {
        string[] Codes(Injector secondary) =>
            [.. Wren.System(pump: 1.6).With(StagedInjectors.Of(InjectorSet.Of(secondary, 4), Staged.ByBoost)).Solve(Wren.At(5000, 0.4)).Notes.Select(note => note.Code)];
        Injector simple = Injector.Of(
            "injector S",
            VolumeFlow.FromMillilitersPerMinute(500),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.8)), (Wren.Volt(16), Wren.Ms(0.7))),
            Wren.Ms(1.6),
            Wren.Kpa(550));
        Assert.Equal(["hand-over.transient"], Codes(Staged.Secondary));
        Assert.Equal(["dead-time.one-pressure-secondary", "hand-over.transient"], Codes(simple));
    }

    /// <summary>Past an end of a measured regulator's curve, and not between its ends: 15 to 120 L/h returned.</summary>
    [Fact]
    public void Regulator_PastItsMeasuredCurve_IsToldOf()
    {
        ManifoldReferenced measured = ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(RegulatorFlow.Measured(
            VolumeFlow.FromLitersPerHour(60),
            (VolumeFlow.FromLitersPerHour(15), Wren.Kpa(292)),
            (VolumeFlow.FromLitersPerHour(60), Wren.Kpa(300)),
            (VolumeFlow.FromLitersPerHour(120), Wren.Kpa(311))));
        OperatingResult within = Wren.System(measured, pump: 0.8).Solve(Wren.At(2500, 0.1));
        Assert.InRange(within.ReturnedFlow!.Value.LitersPerHour, 15, 120);
        Assert.DoesNotContain(within.Notes, note => note.Code == "regulator.curve-ends");
        OperatingResult past = Wren.System(measured, pump: 1.4).Solve(Wren.At(2500, 0.1));
        Assert.True(past.ReturnedFlow!.Value.LitersPerHour > 120);
        Assert.Contains(past.Notes, note => note.Code == "regulator.curve-ends");
    }

    /// <summary>Along a line each subject is told once, at its worst: a pump that is carried to another voltage, where it has the least.</summary>
    [Fact]
    public void Line_TellsOfAScaledPumpAtItsLowestVoltage()
    {
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(11), Wren.Hill.FuelTemperature);
        FuelSystem system = Wren.System().With(Pump.From(Wren.WiredCurve(13.5, 1.6)).WithFeed(FuelSizing.Electrical.Feed.Of(
            "feed", FuelSizing.Electrical.Conductor.Awg(18), Length.FromMeters(5), Length.FromMeters(2), Temperature.FromDegreesCelsius(40))))
            .With(RisingRate.From(Wren.Kpa(300), 6, Pressure.Zero));
        LineSweepResult sweep = system.Sweep(MeasuredBoost.Of((Wren.Rpm(3000), Wren.Kpa(0)), (Wren.Rpm(6000), Wren.Kpa(25))), [Wren.Rpm(3000), Wren.Rpm(4500), Wren.Rpm(6000)], weak);
        double[] volts = [.. sweep.Results.Select(result => result.Circuit.Pumps[0].Voltage.Volts)];
        Assert.True(volts.Max() - volts.Min() > 0.1, string.Join(", ", volts));
        OperatingResult lowest = sweep.Results.MinBy(result => result.Circuit.Pumps[0].Voltage.Volts)!;
        Assert.Equal(lowest.Notes.Single(note => note.Code == "pump.scaled").ToString(), sweep.Notes.Single(note => note.Code == "pump.scaled").ToString());
        Assert.True(sweep.Results.Select(result => result.Notes.Single(note => note.Code == "pump.scaled").ToString()).Distinct().Count() > 1);
    }
}
