using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Checks;

/// <summary>
/// Voltage drop, wire and fuse of pumps whose current does not depend on anything: at 13.5 V the pump below draws its current at every pressure,
/// so that drop, ampacity and load are worked by hand, and a remedy is a division.
/// </summary>
public class WiringChecksTests
{
    /// <summary>Ohm's law: what flows through 40 mΩ loses that much, of 5 % of 13.5 V, 0.675 V. Of two pumps the one that loses most is named.</summary>
    [Fact]
    public void Feed_InWords_NamesPumpVoltageCurrentAndDrop()
    {
        OperatingResult within = Solve(Steady("pump A", 12).WithFeed(Contacts(40)));
        Assert.Equal(Outcome.Holds, Find(within, Part.Feed).Outcome);
        Is(within, 0, "pump A", 0.040);

        OperatingResult over = Solve(Steady("pump A", 12).WithFeed(Contacts(40)), Steady("pump B", 12).WithFeed(Contacts(60)));
        Assert.Equal(Outcome.Fails, Find(over, Part.Feed).Outcome);
        Is(over, 1, "pump B", 0.060);

        static void Is(OperatingResult result, int pump, string name, double ohms)
        {
            double amperes = result.Circuit.Pumps[pump].Current!.Value.Amperes;
            double drop = amperes * ohms;
            Assert.Equal(drop > 0.675 ? "feed.excessive-drop" : "feed.within", Find(result, Part.Feed).Finding.Code);
            Assert.Equal((0.675 / drop) - 1, Find(result, Part.Feed).Reserve!.Value.DecimalFractions, 9);
            Assert.Equal(
                $"{name} gets {Readable.Of(Wren.Volt(13.5 - drop))} at {Readable.Of(ElectricCurrent.FromAmperes(amperes))}: {Readable.VoltageDrop(Wren.Volt(drop))} lost of at most 0.68 V, 5 % of the supply (common practice, no source)",
                Text(result, Part.Feed));
        }
    }

    /// <summary>Two pumps of unlike current: fitted with the resistance named both hold, with a millionth more the thirstier one does not.</summary>
    [Fact]
    public void FeedRemedy_IsWhatLosesJustTheLimit()
    {
        OperatingResult[] results = [Solve(Steady("pump A", 12).WithFeed(Contacts(90)), Steady("pump B", 9).WithFeed(Contacts(80)))];
        Remedy remedy = Find(results[0], Part.Feed).Check.RemedyFor(new(results, results))!;
        double most = ((ElectricResistance)remedy.Needed!).Milliohms;
        Assert.InRange(most, 54.8, 54.9);
        Assert.Equal(
            $"A feed of no more than 54.8 mΩ out and back, for each pump whose feed has more: thicker or shorter wire, a relay near the pump, better connections.",
            remedy.ToString());
        Assert.True(Holds(most));
        Assert.False(Holds(most * (1 + 1e-6)));

        static bool Holds(double milliohms) => Find(
            Solve(Steady("pump A", 12).WithFeed(Contacts(milliohms)), Steady("pump B", 9).WithFeed(Contacts(milliohms))), Part.Feed).Outcome == Outcome.Holds;
    }

    /// <summary>The higher the boost, the more the pump draws: of several points the one that allows least decides.</summary>
    [Fact]
    public void FeedRemedy_OverSeveralPoints_ServesThemAll()
    {
        Pump pump = Pump.Of([Wren.WiredCurve(11, 0.9), Wren.WiredCurve(13.5, 1.2)]).WithFeed(Contacts(150));
        OperatingResult[] results = [.. new[] { 0, 0.3, 0.9 }.Select(boost => Wren.System(pump: 1).With(pump).Solve(Wren.At(4000, boost)))];
        Remedy remedy = Find(results[0], Part.Feed).Check.RemedyFor(new(results, results))!;
        double most = ((ElectricResistance)remedy.Needed!).Milliohms;
        Assert.All(results, result => Assert.Equal(Outcome.Holds, With(result, most)));
        Assert.Contains(results, result => With(result, most * (1 + 1e-9)) == Outcome.Fails);

        // The order of the points does not matter, and one that holds already asks for nothing.
        OperatingResult[] reverse = [.. Enumerable.Reverse(results)];
        Assert.Equal(most, ((ElectricResistance)Find(results[0], Part.Feed).Check.RemedyFor(new(reverse, reverse))!.Needed!).Milliohms, 9);

        Outcome With(OperatingResult result, double milliohms) =>
            Find(result.System.With(pump.WithFeed(Contacts(milliohms))).Solve(result.Point), Part.Feed).Outcome;
    }

    [Fact]
    public void Feed_IsJudged_ForThePumpsThatHaveOne()
    {
        Pump without = Steady("pump A", 12);
        Pump with = Steady("pump B", 12).WithFeed(Contacts(40));
        Assert.Equal("not judged: no feed given", Applies(new FeedCheck(Part.Feed, JudgedCircuit.Main), without, without));
        Assert.Equal("judged, but no feed given of pump A", Applies(new FeedCheck(Part.Feed, JudgedCircuit.Main), without, with));
        Assert.Equal("judged", Applies(new FeedCheck(Part.Feed, JudgedCircuit.Main), with, with));
        Assert.Equal("not judged: no insulation rating and surroundings of the wire given", Applies(new WireCheck(Part.Wire, JudgedCircuit.Main), with, with));
        Assert.Equal("not judged: no fuse given", Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), with, with));
        Pump fused = Steady("pump C", 12).WithFeed(Contacts(40).WithFuse(ElectricCurrent.FromAmperes(20)));
        Pump plain = Steady("pump D", 12).WithFeed(Insulated("to D", 14, 20));
        Assert.Equal("judged, but no fuse given of pump B", Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), with, plain));
        Assert.Equal("judged, but whether it protects the wire of contacts, whose ampacity is not known", Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), fused, fused));
        Assert.Equal("judged", Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), plain));
    }

    /// <summary>What is lacking of one pump does not hide what is lacking of another: a reason that waives the one says nothing of the other.</summary>
    [Fact]
    public void GapsOfTwoPumps_AreBothNamed()
    {
        Pump unfused = Steady("pump B", 12).WithFeed(Contacts(40));
        Pump fused = Steady("pump C", 12).WithFeed(Contacts(40).WithFuse(ElectricCurrent.FromAmperes(20)));
        Assert.Equal(
            "judged, but no fuse given of pump B; whether it protects the wire of contacts, whose ampacity is not known",
            Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), unfused, fused));
        Feed hair = Feed.Of(
                "hair", Conductor.OfArea(Area.FromSquareMillimeters(0.2), ConductorMaterial.Copper, Ratio.Zero), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(125), Temperature.FromDegreesCelsius(40));
        Assert.StartsWith(
            "judged, but no insulation rating and surroundings of the wire given of pump B; hair: ",
            Applies(new WireCheck(Part.Wire, JudgedCircuit.Main), unfused, Steady("pump A", 5).WithFeed(hair)),
            StringComparison.Ordinal);
    }

    /// <summary>A pump whose curve ends before the rail's pressure draws nobody knows how much: another whose wire and fuse hold does not make that green.</summary>
    [Fact]
    public void CurrentThatIsNotKnown_BesideOneThatHolds_CannotBeSaid()
    {
        Pump open = Pump.From(PumpCurve.WithCurrent(
                "pump O",
                Wren.Volt(13.5),
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215), ElectricCurrent.FromAmperes(5)),
                (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(150), ElectricCurrent.FromAmperes(6))))
            .WithFeed(Insulated("to O", 18, 20));
        Pump known = Steady("pump A", 8).WithFeed(Insulated("to A", 18, 20));
        foreach (OperatingResult result in new[] { Solve(known, open), Solve(open, known) })
        {
            Assert.Equal(RailState.Regulated, result.RailState);
            Assert.Equal((Outcome.CannotSay, Outcome.CannotSay), (Find(result, Part.Wire).Outcome, Find(result, Part.Fuse).Outcome));
            Assert.Equal("the pump's data does not cover the point", Text(result, Part.Wire));
        }

        Assert.Equal(Outcome.Holds, Find(Solve(known, known), Part.Wire).Outcome);
    }

    /// <summary>33 CFR 183.425, table 5 (read in the source): 18 AWG with insulation for 105 °C carries 20 A at 30 °C. The second pump's wire is the one loaded most.</summary>
    [Theory]
    [InlineData(18, Outcome.Holds, "to B carries 18.0 A of at most 20.0 A in surroundings of 30 °C")]
    [InlineData(20, Outcome.Holds, "to B carries 20.0 A of at most 20.0 A in surroundings of 30 °C")]
    [InlineData(25, Outcome.Fails, "to B carries 25.0 A, over its ampacity of 20.0 A in surroundings of 30 °C")]
    public void Wire_OfTheOneLoadedMost_IsComparedWithItsAmpacity(double amperes, Outcome outcome, string words)
    {
        OperatingResult result = Solve(Steady("pump A", 8).WithFeed(Insulated("to A", 18)), Steady("pump B", amperes).WithFeed(Insulated("to B", 18)));
        Assert.Equal((outcome, words), (Find(result, Part.Wire).Outcome, Text(result, Part.Wire)));
        Assert.Equal((20 / amperes) - 1, Find(result, Part.Wire).Reserve!.Value.DecimalFractions, 9);

        // The same where the first is.
        OperatingResult first = Solve(Steady("pump B", amperes).WithFeed(Insulated("to B", 18)), Steady("pump A", 8).WithFeed(Insulated("to A", 18)));
        Assert.Equal((outcome, words), (Find(first, Part.Wire).Outcome, Text(first, Part.Wire)));
    }

    /// <summary>
    /// 33 CFR 183.425, table 5, note 2: of 20 A at 30 °C one of four conductors in a bundle keeps 12 A, of seven 10 A. The remedy's ampacity is that in the
    /// bundle: AWG 14 has 35 A × 60 %.
    /// </summary>
    [Fact]
    public void Wire_InABundle_IsComparedWithWhatIsLeft_AndItsRemedyServes()
    {
        Pump Of(int gauge, int bundled) => Steady("pump A", 15).WithFeed(Insulated("to A", gauge).WithBundle(bundled));
        Assert.Equal("to A carries 15.0 A of at most 20.0 A in surroundings of 30 °C", Text(Solve(Of(18, 2)), Part.Wire));
        OperatingResult[] results = [Solve(Of(18, 4))];
        Assert.Equal((Outcome.Fails, "to A carries 15.0 A, over its ampacity of 12.0 A in surroundings of 30 °C"), (Find(results[0], Part.Wire).Outcome, Text(results[0], Part.Wire)));
        Remedy remedy = Find(results[0], Part.Wire).Check.RemedyFor(new(results, results))!;
        Assert.Equal(15, ((ElectricCurrent)remedy.Needed!).Amperes, 9);
        Assert.Equal(
            $"Wire with an ampacity of at least 15.0 A in its bundle ({AmpacityTable.Source}), or fewer conductors in the bundle, or insulation for a higher temperature, or a cooler route.",
            remedy.ToString());

        // AWG 16 keeps 25 A × 60 % = 15 A: just enough. Fewer conductors serve as well.
        Assert.Equal(Outcome.Holds, Find(Solve(Of(16, 4)), Part.Wire).Outcome);
        Assert.Equal(Outcome.Fails, Find(Solve(Of(16, 7)), Part.Wire).Outcome);
        Assert.Equal(Outcome.Fails, Find(Solve(Of(18, 3)), Part.Wire).Outcome);
        Assert.Equal(Outcome.Holds, Find(Solve(Of(18, 1)), Part.Wire).Outcome);

        // And a fuse that protected the wire by itself does not protect it in the bundle.
        OperatingResult fused = Solve(Steady("pump A", 5).WithFeed(Insulated("to A", 18, 20).WithBundle(4)));
        Assert.Equal("a fuse of 20.0 A does not protect to A, whose wire has an ampacity of 12.0 A", Text(fused, Part.Fuse));
    }

    /// <summary>A thick wire there and a thin one back: the thin one decides, by its own bundle and surroundings; a fuse must protect it too.</summary>
    [Fact]
    public void GroundWire_IsJudgedByItsOwnAmpacity()
    {
        GroundReturn Back(int gauge) => GroundReturn.Of(Conductor.Awg(gauge), Length.Zero, Temperature.FromDegreesCelsius(60), ElectricResistance.Zero);
        GroundReturn thin = Back(18).WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
        OperatingResult over = Solve(Steady("pump A", 25).WithFeed(Insulated("to A", 10, 40).WithGround(thin)));
        Assert.Equal(
            (Outcome.Fails, "the ground wire of to A carries 25.0 A, over its ampacity of 20.0 A in surroundings of 30 °C"),
            (Find(over, Part.Wire).Outcome, Text(over, Part.Wire)));
        Assert.Equal("a fuse of 40.0 A does not protect to A, whose wire has an ampacity of 20.0 A", Text(over, Part.Fuse));
        Assert.Equal("to A carries 25.0 A of at most 60.0 A in surroundings of 30 °C", Text(Solve(Steady("pump A", 25).WithFeed(Insulated("to A", 10, 40))), Part.Wire));

        // What is not given of it is named, and of the wire there all the same.
        WireCheck wire = new(Part.Wire, JudgedCircuit.Main);
        Assert.Equal(
            "judged, but no insulation rating and surroundings given of the ground wire of to A",
            Applies(wire, Steady("pump A", 25).WithFeed(Insulated("to A", 10).WithGround(Back(18)))));
        Assert.Equal(
            "judged, but no insulation rating and surroundings given of contacts",
            Applies(wire, Steady("pump A", 25).WithFeed(Contacts(5).WithGround(thin))));
        Assert.StartsWith(
            "judged, but the ground wire of to A: Not covered: ",
            Applies(wire, Steady("pump A", 25).WithFeed(Insulated("to A", 10).WithGround(Back(20).WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30))))),
            StringComparison.Ordinal);
        Assert.Equal("judged", Applies(wire, Steady("pump A", 25).WithFeed(Insulated("to A", 10).WithGround(thin))));
        Assert.Equal(
            "judged, but whether it protects the wire of to A, whose ampacity is not known",
            Applies(new FuseCheck(Part.Fuse, JudgedCircuit.Main), Steady("pump A", 25).WithFeed(Insulated("to A", 10, 40).WithGround(Back(18)))));
    }

    /// <summary>Both wires are over 20 A: 25 A decides. A pump whose wire just holds, at its ampacity, does not count, however much it draws.</summary>
    [Fact]
    public void WireRemedy_IsTheMostThatAWireOverItsAmpacityCarries()
    {
        Feed wide = Insulated("to T", 10);
        Pump thick = Steady("pump T", wide.AmpacityAmperes).WithFeed(wide);
        OperatingResult[] results =
        [
            Solve(thick, Steady("pump A", 22).WithFeed(Insulated("to A", 18)), Steady("pump B", 25).WithFeed(Insulated("to B", 18))),
        ];
        Assert.Equal(Outcome.Fails, Find(results[0], Part.Wire).Outcome);
        Remedy remedy = Find(results[0], Part.Wire).Check.RemedyFor(new(results, results))!;
        Assert.Equal(25, ((ElectricCurrent)remedy.Needed!).Amperes, 9);
        Assert.Equal(
            $"Wire with an ampacity of at least 25.0 A ({AmpacityTable.Source}), or insulation for a higher temperature, or a cooler route.", remedy.ToString());
    }

    /// <summary>A fuse of 20 A carries 16 A: with 12 A a third more could flow.</summary>
    [Theory]
    [InlineData(12, Outcome.Holds, "12.0 A through a fuse of 20.0 A, of at most 80 % of its rating (common practice, no source)")]
    [InlineData(16, Outcome.Holds, "16.0 A through a fuse of 20.0 A, of at most 80 % of its rating (common practice, no source)")]
    [InlineData(17, Outcome.Fails, "17.0 A through a fuse of 20.0 A, over 80 % of its rating (common practice, no source)")]
    public void Fuse_OfTheOneLoadedMost_IsComparedWithItsShare(double amperes, Outcome outcome, string words)
    {
        Pump light = Steady("pump A", 5).WithFeed(Insulated("to A", 10, 20));
        Pump heavy = Steady("pump B", amperes).WithFeed(Insulated("to B", 10, 20));
        foreach (OperatingResult result in new[] { Solve(light, heavy), Solve(heavy, light), Solve(heavy) })
        {
            Assert.Equal((outcome, words), (Find(result, Part.Fuse).Outcome, Text(result, Part.Fuse)));
            Assert.Equal((16 / amperes) - 1, Find(result, Part.Fuse).Reserve!.Value.DecimalFractions, 9);
        }
    }

    /// <summary>20 A on the wire of 20 A is in order, 25 A is not, whatever flows; of two that are too large the one that exceeds its wire by most is named.</summary>
    [Fact]
    public void Fuse_OverTheAmpacityOfItsWire_DoesNotProtectIt()
    {
        Assert.Equal(Outcome.Holds, Find(Solve(Steady("pump A", 5).WithFeed(Insulated("to A", 18, 20))), Part.Fuse).Outcome);
        OperatingResult over = Solve(Steady("pump A", 5).WithFeed(Insulated("to A", 18, 25)), Steady("pump B", 5).WithFeed(Insulated("to B", 18, 30)));
        Assert.Equal(Outcome.Fails, Find(over, Part.Fuse).Outcome);
        Assert.Equal("a fuse of 30.0 A does not protect to B, whose wire has an ampacity of 20.0 A", Text(over, Part.Fuse));
        Assert.Equal((20 / 30.0) - 1, Find(over, Part.Fuse).Reserve!.Value.DecimalFractions, 9);
    }

    /// <summary>16.3 A/0.8 = 20.375 A; a fuse in order that carries more does not count.</summary>
    [Fact]
    public void FuseRemedy_IsTheSmallestThatCarriesTheCurrent()
    {
        // At 80 % of a fuse that is just its wire's ampacity.
        double ampacity = Insulated("to T", 8).AmpacityAmperes;
        Pump fine = Steady("pump T", ampacity * 0.8).WithFeed(Insulated("to T", 8, ampacity));
        Assert.Equal(Outcome.Holds, Find(Solve(fine), Part.Fuse).Outcome);
        foreach ((double rating, int gauge) in new[] { (15.0, 10), (25.0, 18) })
        {
            OperatingResult[] results = [Solve(fine, Steady("pump A", 16.3).WithFeed(Insulated("to A", gauge, rating)))];
            Assert.Equal(Outcome.Fails, Find(results[0], Part.Fuse).Outcome);
            Remedy remedy = Find(results[0], Part.Fuse).Check.RemedyFor(new(results, results))!;
            Assert.InRange(((ElectricCurrent)remedy.Needed!).Amperes, 20.375 * (1 + 1e-13), 20.375 * (1 + 1e-11));
            Assert.StartsWith("A fuse of at least 20.4 A, and wire with an ampacity of no less than the fuse's rating.", remedy.ToString(), StringComparison.Ordinal);
            Pump put = Steady("pump A", 16.3).WithFeed(Insulated("to A", 10, ((ElectricCurrent)remedy.Needed).Amperes));
            Assert.Equal(Outcome.Holds, Find(Solve(fine, put), Part.Fuse).Outcome);
        }
    }

    /// <summary>With thicker wire the motor gets more voltage, and draws more: 1 V more in the wire of a pump that draws 1 A more for it.</summary>
    [Fact]
    public void WireRemedy_CountsWhatIsDrawnWithAnyWire()
    {
        Pump pump = Pump.Of([Wren.WiredCurve(11, 0.9), Wren.WiredCurve(13.5, 1.2)]);
        Feed thin = Feed.Of(
                "thin", Conductor.Awg(18), Length.FromMeters(4), Length.FromMeters(4), Temperature.FromDegreesCelsius(60), Contact.Of("relay", ElectricResistance.FromMilliohms(10)))
            .WithInsulation(Temperature.FromDegreesCelsius(60), Temperature.FromDegreesCelsius(58))
            .WithFuse(ElectricCurrent.FromAmperes(6));
        OperatingResult[] results = [.. new[] { 0.3, 0.6 }.Select(boost => Wren.System().With(pump.WithFeed(thin)).Solve(Wren.At(4000, boost)))];
        double drawn = results.Max(result => result.Circuit.Pumps[0].Current!.Value.Amperes);
        double without = new[] { 0.3, 0.6 }.Max(boost => Wren.System()
            .With(pump.WithFeed(Contacts(10))).Solve(Wren.At(4000, boost)).Circuit.Pumps[0].Current!.Value.Amperes);
        Assert.True(without > drawn + 0.2, $"{drawn} A, {without} A");
        Assert.Equal(without, ((ElectricCurrent)Find(results[0], Part.Wire).Check.RemedyFor(new(results, results))!.Needed!).Amperes, 9);
        Assert.Equal(without / 0.8, ((ElectricCurrent)Find(results[0], Part.Fuse).Check.RemedyFor(new(results, results))!.Needed!).Amperes, 9);

        // The one that fails is the first alone: the second counts all the same.
        Assert.Equal(without, ((ElectricCurrent)Find(results[0], Part.Wire).Check.RemedyFor(new(results, results[..1]))!.Needed!).Amperes, 9);
    }

    /// <summary>
    /// At 300 kPa the thick wire carries 58 A and holds, at 390 kPa 63 A and does not; the thin one is over its ampacity at both. Of a point at which no current is known nothing is asked.
    /// </summary>
    [Fact]
    public void WireRemedy_OfAWireThatFailsAtOnePointOnly_CountsThatToo()
    {
        Feed wide = Insulated("to T", 10);
        Pump thick = Pump.From(PumpCurve.WithCurrent(
            "pump T",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215), ElectricCurrent.FromAmperes(wide.AmpacityAmperes - 35)),
            (Wren.Kpa(500), VolumeFlow.FromLitersPerHour(90), ElectricCurrent.FromAmperes(wide.AmpacityAmperes + 15)))).WithFeed(wide);
        FuelSystem system = With([thick, Steady("pump A", 22).WithFeed(Insulated("to A", 18))]);
        OperatingResult[] results = [system.Solve(Wren.At(3000, 0)), system.Solve(Wren.At(3000, 0.9)), system.Solve(Wren.At(3000, 3.9))];

        // 5 A more for each 50 kPa over 350: 4 A at 390 kPa.
        Remedy remedy = Find(results[0], Part.Wire).Check.RemedyFor(new(results[..2], results[..2]))!;
        Assert.Equal(wide.AmpacityAmperes + 4, ((ElectricCurrent)remedy.Needed!).Amperes, 6);
        Assert.Equal(22, ((ElectricCurrent)Find(results[0], Part.Wire).Check.RemedyFor(new(results[..1], results[..1]))!.Needed!).Amperes, 6);
        Assert.False(double.IsFinite(results[2].SolvedCircuit.CurrentOf(0).Maximum));
        Assert.Equal(wide.AmpacityAmperes + 4, ((ElectricCurrent)Find(results[0], Part.Wire).Check.RemedyFor(new(results, results[..2]))!.Needed!).Amperes, 6);
    }

    /// <summary>Thinner than the ampacity table begins: judged in part, and what it would say of it is that nothing is known.</summary>
    [Fact]
    public void Wire_WithoutAnAmpacity_HasNoFigure()
    {
        Feed hair = Feed.Of(
                "hair", Conductor.OfArea(Area.FromSquareMillimeters(0.2), ConductorMaterial.Copper, Ratio.Zero), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(125), Temperature.FromDegreesCelsius(40));
        OperatingResult result = Solve(Steady("pump A", 5).WithFeed(hair));
        WireCheck check = new(Part.Wire, JudgedCircuit.Main);
        Assert.StartsWith("judged, but hair: ", check.AppliesTo(result.Parts).ToString(), StringComparison.Ordinal);
        CheckReading<Real> reading = check.Read<Real>(result.Parts, PointReading.Of(result));
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(reading));
        Assert.Equal("the ampacity of no wire is known", check.Explain(result, reading).ToString());
    }

    /// <summary>Where the pumps' data does not cover the point nothing is known of their wiring, and a wire without a current has no figure.</summary>
    [Fact]
    public void Wiring_WhereThePumpsDataEnds_CannotBeJudged()
    {
        Conditions weak = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(8), Wren.Hill.FuelTemperature);
        OperatingResult result = Wren.System().With(Wren.WiredPump.WithFeed(Insulated("to A", 18, 20)))
            .Solve(OperatingPoint.At(Wren.Rpm(3000), Pressure.Zero, weak));
        foreach (Part part in new[] { Part.Feed, Part.Wire, Part.Fuse })
        {
            Assert.Equal((Outcome.CannotSay, "the pump's data does not cover the point"), (Find(result, part).Outcome, Text(result, part)));
        }
    }

    /// <summary>
    /// A pump measured at 12 V alone, on 13.5 V: its current is known between two bounds. With a limit between them, worked from the bounds themselves, nobody can say.
    /// </summary>
    [Fact]
    public void Wiring_BetweenTwoBounds_SaysBothAndTheLimit()
    {
        Pump pump = Pump.From(Wren.WiredCurve(12, 1));
        OperatingResult open = Wren.System().With(pump.WithFeed(Contacts(30))).Solve(Wren.At(3000, 0));
        (double least, double most) = open.SolvedCircuit.CurrentOf(0);
        Assert.True(most > least + 0.5, $"{least} A to {most} A");
        double share = (least + most) / 2 * 0.030 / 13.5;
        OperatingResult drop = open.System.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), null, Ratio.FromDecimalFractions(share))).Solve(open.Point);
        Assert.Equal(Outcome.CannotSay, Find(drop, Part.Feed).Outcome);
        Assert.Equal(
            $"the pump's data ends before the point: known only to lie between {Volts(least * 0.030)} and {Volts(most * 0.030)}, with a limit of {Volts(share * 13.5)}",
            Text(drop, Part.Feed));

        OperatingResult fuse = Wren.System()
            .With(pump.WithFeed(Contacts(30).WithFuse(ElectricCurrent.FromAmperes((least + most) / 2 / 0.8)))).Solve(open.Point);
        Assert.Equal(Outcome.CannotSay, Find(fuse, Part.Fuse).Outcome);
        Assert.Equal(
            $"the pump's data ends before the point: known only to lie between {Amperes(least)} and {Amperes(most)}, with a limit of {Amperes((least + most) / 2)}",
            Text(fuse, Part.Fuse));

        // 20 A for the wire, and currents scaled so that they lie on either side of it.
        Pump scaled = Pump.From(PumpCurve.WithCurrent(
            "pump W",
            Wren.Volt(12),
            [.. new[] { 0.0, 200, 400, 600, 750 }.Select(rise => Wren.Kpa(rise * 144 / 182.25)).Select(rise => (
                rise, Wren.WiredCurve(12, 1).FlowAt(rise), Wren.WiredCurve(12, 1).CurrentAt(rise) * (40 / (least + most))))]));
        OperatingResult wire = Wren.System().With(scaled.WithFeed(Insulated("to W", 18))).Solve(open.Point);
        (double low, double high) = wire.SolvedCircuit.CurrentOf(0);
        Assert.Equal(Outcome.CannotSay, Find(wire, Part.Wire).Outcome);
        Assert.Equal(
            $"the pump's data ends before the point: known only to lie between {Amperes(low)} and {Amperes(high)}, with a limit of 20.0 A", Text(wire, Part.Wire));

        // The lower bound where even that fails, the higher one where that holds.
        Assert.Equal(
            $"pump W gets {Readable.Of(Wren.Volt(13.5 - (least * 0.030)))} at {Amperes(least)}: {Volts(least * 0.030)} lost of at most {Volts(0.0675)}",
            Text(open.System.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), null, Wren.Percent(0.5))).Solve(open.Point), Part.Feed));
        Assert.StartsWith(
            $"pump W gets {Readable.Of(Wren.Volt(13.5 - (most * 0.030)))} at {Amperes(most)}: {Volts(most * 0.030)} lost of at most 0.68 V", Text(open, Part.Feed), StringComparison.Ordinal);

        static string Amperes(double amperes) => Readable.Of(ElectricCurrent.FromAmperes(amperes));
        static string Volts(double volts) => Readable.VoltageDrop(ElectricPotential.FromVolts(volts));
    }

    private static string Text(OperatingResult result, Part part) => Find(result, part).Explanation;

    private static string Applies(ICheck check, params Pump[] pumps) => check.AppliesTo(With(pumps).Parts).ToString();

    private static FuelSystem With(Pump[] pumps) => Wren.System().With(pumps.Length == 1 ? pumps[0] : PumpParallel.Of(pumps));

    private static OperatingResult Solve(params Pump[] pumps) => With(pumps).Solve(Wren.At(3000, 0.2));

    /// <summary>The same current at every pressure and voltage.</summary>
    private static Pump Steady(string name, double amperes) => Pump.Of(
    [
        .. new[] { 11.0, 13.5 }.Select(volts => PumpCurve.WithCurrent(
            name,
            Wren.Volt(volts),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215 * volts / 13.5), ElectricCurrent.FromAmperes(amperes)),
            (Wren.Kpa(750), VolumeFlow.Zero, ElectricCurrent.FromAmperes(amperes)))),
    ]);

    private static Feed Contacts(double milliohms) => Feed.Of(
        "contacts",
        Conductor.Awg(10),
        Length.Zero,
        Length.Zero,
        Temperature.FromDegreesCelsius(40),
        Contact.Of("all of it", ElectricResistance.FromMilliohms(milliohms)));

    /// <summary>A wire of no length, with insulation for 105 °C in surroundings of 30 °C.</summary>
    private static Feed Insulated(string name, int gauge, double? fuse = null)
    {
        Feed feed = Feed.Of(name, Conductor.Awg(gauge), Length.Zero, Length.Zero, Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
        return fuse is { } amperes ? feed.WithFuse(ElectricCurrent.FromAmperes(amperes)) : feed;
    }
}
