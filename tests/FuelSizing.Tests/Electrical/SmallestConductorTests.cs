using CsCheck;
using FuelSizing.Electrical;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

public class SmallestConductorTests
{
    /// <summary>
    /// Source: the common marine wiring table for a 3 % drop at 12 V, row of 10 ft out and back, seen in a reprint; it follows
    /// 10.75 circular mil-ohm per foot: stranded copper at 24 °C.
    /// </summary>
    [Theory]
    [InlineData(5, 18)]
    [InlineData(10, 14)]
    [InlineData(15, 12)]
    [InlineData(20, 12)]
    [InlineData(25, 10)]
    [InlineData(30, 10)]
    [InlineData(40, 8)]
    [InlineData(50, 8)]
    [InlineData(60, 6)]
    [InlineData(70, 6)]
    [InlineData(80, 6)]
    [InlineData(90, 4)]
    [InlineData(100, 4)]
    public void Awg_ForThreePerCentOfTwelveVolts_IsTheMarineTablesRow(double amperes, int gauge) =>
        Assert.Equal(
            Conductor.Awg(gauge),
            SmallestConductor.ForDrop(
                Wren.Volt(0.36), ElectricCurrent.FromAmperes(amperes), Length.FromFeet(10), Celsius(24)).Awg.Conductor);

    /// <summary>
    /// Source: ASTM B258: 4/0 is 0.4600 in, and 39 gauges thinner, AWG 36, a 92nd of that, in equal ratios; 1/0 counts as
    /// gauge 0, 2/0 as −1 and so on.
    /// </summary>
    [Fact]
    public void Sizes_InGauges_AreAstmsFromThinToThick()
    {
        int[] gauges = [24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3];
        Assert.Equal(gauges.Length, StandardSizes.Awg.Count);
        Assert.All(gauges.Zip(StandardSizes.Awg), pair => Assert.Equal(
            0.46 * Math.Pow(92, -(pair.First + 3) / 39.0), pair.Second.Diameter.Inches, 1e-12));
        Assert.Equal(["AWG 1/0", "AWG 2/0", "AWG 3/0", "AWG 4/0"], StandardSizes.Awg.TakeLast(4).Select(size => size.ToString()));
    }

    [Fact]
    public void Choice_WhereverThereIsOne_KeepsTheDropAndTheNextThinnerDoesNot() =>
        Cases.Sample((drop, amperes, metres, celsius, milliohms) =>
        {
            Contact contact = Contact.Of("c", ElectricResistance.FromMilliohms(milliohms));
            SmallestConductor answer = SmallestConductor.ForDrop(
                Wren.Volt(drop), ElectricCurrent.FromAmperes(amperes), Length.FromMeters(metres), Celsius(celsius), contact);
            foreach (SizedConductor sized in new[] { answer.Awg, answer.Metric })
            {
                if (sized.Conductor is null)
                {
                    Assert.Null(sized.Drop);
                    Assert.StartsWith("None: ", sized.ToString(), StringComparison.Ordinal);
                    continue;
                }

                double DropOf(Conductor conductor) => Feed
                    .Of("f", conductor, Length.FromMeters(metres / 2), Length.FromMeters(metres / 2), Celsius(celsius), contact)
                    .VoltageAtMotor(Wren.Volt(30), ElectricCurrent.FromAmperes(amperes)).Drop.Volts;
                Assert.Equal(sized.Drop!.Value.Volts, DropOf(sized.Conductor), 1e-9);
                Assert.True(sized.Drop.Value.Volts <= drop);
                if (sized.NextThinner is not null)
                {
                    Assert.True(sized.NextThinnerDrop!.Value.Volts > drop);
                    Assert.True(sized.NextThinner.Area < sized.Conductor.Area);
                }
            }
        });

    /// <summary>The needed area, put back as a conductor of that area, drops just what is allowed.</summary>
    [Fact]
    public void NeededArea_AsAConductor_DropsWhatIsAllowed() =>
        Cases.Sample((drop, amperes, metres, celsius, milliohms) =>
        {
            SmallestConductor answer = SmallestConductor.ForDrop(
                Wren.Volt(drop),
                ElectricCurrent.FromAmperes(amperes),
                Length.FromMeters(metres),
                Celsius(celsius),
                Contact.Of("c", ElectricResistance.FromMilliohms(milliohms)));
            if (answer.NeededArea is not { } area || area.SquareMillimeters is < 0.2 or > 120)
            {
                return;
            }

            double wire = Conductor.OfArea(area, ConductorMaterial.Copper, Conductor.DefaultLay)
                .ResistanceOf(Length.FromMeters(metres), Celsius(celsius)).Ohms;
            Assert.Equal(drop, amperes * (wire + (milliohms / 1000)), 1e-9);
            Assert.True(answer.Awg.Conductor is null || answer.Awg.Conductor.Area >= area * (1 - 1e-12));
            Assert.True(answer.Awg.NextThinner is null || answer.Awg.NextThinner.Area < area);
        });

    [Fact]
    public void Choice_WhereContactsTakeAllTheDrop_SaysSo()
    {
        SmallestConductor answer = SmallestConductor.ForDrop(
            Wren.Volt(0.25),
            ElectricCurrent.FromAmperes(20),
            Length.FromMeters(5),
            Celsius(60),
            Contact.DefaultSwitch,
            Contact.DefaultFuse);
        Assert.Null(answer.NeededArea);
        Assert.Null(answer.Awg.Conductor);
        Assert.Contains("contacts alone drop 0.30 V of the 0.25 V allowed", answer.Awg.ToString(), StringComparison.Ordinal);
        Assert.Equal(answer.Awg.Text.ToString(), answer.Metric.Text.ToString());
        Assert.Equal(answer.Awg.Text.ToString(), answer.ToString());
    }

    [Fact]
    public void Choice_BeyondTheList_SaysWhereTheListEnds()
    {
        SmallestConductor answer = SmallestConductor.ForDrop(
            Wren.Volt(0.01), ElectricCurrent.FromAmperes(50), Length.FromMeters(20), Celsius(60));
        Assert.NotNull(answer.NeededArea);
        Assert.Contains("AWG 4/0 drops", answer.Awg.ToString(), StringComparison.Ordinal);
        Assert.Contains("95 mm² drops", answer.Metric.Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Choice_OfTheThinnest_HasNoThinner()
    {
        SmallestConductor answer = SmallestConductor.ForDrop(
            Wren.Volt(1), ElectricCurrent.FromAmperes(0.5), Length.FromMeters(1), Celsius(60));
        Assert.Equal("AWG 24", answer.Awg.Conductor!.Name);
        Assert.Null(answer.Awg.NextThinner);
        Assert.EndsWith("the list holds no thinner one.", answer.Awg.ToString(), StringComparison.Ordinal);
    }

    /// <summary>What a conductor drops, allowed to the last bit, is enough for it.</summary>
    [Fact]
    public void Choice_AllowedJustItsDrop_IsTheSameConductor()
    {
        SmallestConductor For(ElectricPotential allowed) => SmallestConductor.ForDrop(
            allowed, ElectricCurrent.FromAmperes(12.5), Length.FromMeters(6), Celsius(60), Contact.DefaultFuse);
        SizedConductor choice = For(Wren.Volt(0.5)).Awg;
        Assert.Equal(choice.Conductor, For(choice.Drop!.Value).Awg.Conductor);
        Assert.Equal(choice.NextThinner, For(choice.Drop!.Value).Awg.NextThinner);
    }

    /// <summary>20 A through 15 mΩ drop just the 0.3 V allowed: no wire is thick enough.</summary>
    [Fact]
    public void NeededArea_WhereContactsTakeJustAllTheDrop_IsNone() =>
        Assert.Null(SmallestConductor.ForDrop(
            Wren.Volt(0.3),
            ElectricCurrent.FromAmperes(20),
            Length.FromMeters(5),
            Celsius(60),
            Contact.Of("c", ElectricResistance.FromOhms(0.3 / 20))).NeededArea);

    [Fact]
    public void Choice_InWords_HasBothSystemsOfSizes()
    {
        SmallestConductor answer = SmallestConductor.ForDrop(
            Wren.Volt(0.5), ElectricCurrent.FromAmperes(12.5), Length.FromMeters(6), Celsius(60));
        Assert.Equal($"{answer.Awg.Text} {answer.Metric.Text}", answer.ToString());

        // By hand: 6 m × 5.31 mΩ/m (AWG 12, 2 % lay) × 1.157 (60 °C) × 12.5 A; AWG 14 has 1.59 times the resistance.
        Assert.Equal("AWG 12 drops 0.46 V of the 0.50 V allowed; AWG 14 would drop 0.73 V.", answer.Awg.Text.ToString());
        Assert.Equal(answer.Metric.Text.ToString(), answer.Metric.ToString());
    }

    [Fact]
    public void Contacts_WithOneMissing_AreRefusedByName() =>
        Assert.Equal(
            "contacts",
            Assert.Throws<ArgumentNullException>(() => SmallestConductor.ForDrop(
                Wren.Volt(1), ElectricCurrent.FromAmperes(5), Length.FromMeters(1), Celsius(60), Contact.DefaultFuse, null!)).ParamName);


    [Fact]
    public void Choice_OfNonsense_IsRefusedByName()
    {
        static SmallestConductor For(double volts, double amperes, double metres, params Contact[] contacts) =>
            SmallestConductor.ForDrop(
                Wren.Volt(volts), ElectricCurrent.FromAmperes(amperes), Length.FromMeters(metres), Celsius(60), contacts);
        Refused.Missing("contacts", () => For(1, 5, 1, null!));
        Refused.OutOfRange("allowedDrop", () => For(0, 5, 1));
        Refused.OutOfRange("current", () => For(1, 0, 1));
        Refused.OutOfRange("loopLength", () => For(1, 5, 0));
    }


    private static Gen<(double Drop, double Amperes, double Metres, double Celsius, double Milliohms)> Cases =>
        Gen.Select(
            Gen.Double[0.05, 3], Gen.Double[0.5, 80], Gen.Double[0.2, 20], Gen.Double[-40, 150], Gen.Double[0, 20]);

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
}
