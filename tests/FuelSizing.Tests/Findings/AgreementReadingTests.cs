using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;
using Comparison = FuelSizing.Findings.Comparison;

namespace FuelSizing.Tests.Findings;

/// <summary>Where run and plan agree: what is measured less what is predicted, and how far apart they may be.</summary>
public class AgreementReadingTests
{
    private static readonly RecordedRun Sound = ExactRun.Of(PulledWren.Plan);

    /// <summary>Rail 10 kPa high, meter 3 % high, lambda 4 % and power 6 % high, supply as driven: each difference is what was put in.</summary>
    [Fact]
    public void Differences_AreWhatIsOff()
    {
        RecordedRun run = ExactRun.Changed(Sound, (cells, _) => cells with
        {
            Flow = cells.Flow * 1.03,
            Lambda = cells.Lambda * 1.04,
            Power = Power.FromWatts((double)cells.Power!.Value.Watts * 1.06),
        });
        IReadOnlyList<PlanAgreement> agreement = Read(run);
        Assert.Equal(
            [
                "rail pressure", "fuel by the flow meter against the injectors", "air by fuel and lambda against speed-density", "power against fuel and BSFC",
                "supply voltage, median",
            ],
            agreement.Select(one => one.Name));
        Assert.Equal(["kPa", "%", "%", "%", "V"], agreement.Select(one => one.Unit));

        // ln 1.03 and ln 1.04; of power ln 1.06 less the meter's ln 1.03; the supply's median of 13.5 and 12.6 V less 13.5.
        double[] differences = [0, 100 * Math.Log(1.03), 100 * Math.Log(1.04), 100 * Math.Log(1.06 / 1.03), -0.45];
        Assert.All(differences.Zip(agreement), pair => Assert.Equal(pair.First, pair.Second.Difference, 0.02));
        Assert.Equal([64, 64, 64, 48, 64], agreement.Select(one => one.Points));
        Assert.Equal(0.6, agreement[4].Allowed, 9);
        Assert.Equal([0, 0, 0, 0, 0], agreement.Select(one => one.PointsBeyond));
        Assert.Equal("fuel by the flow meter against the injectors: +3.0 %, within ±", agreement[1].ToString()[..62]);
        Assert.EndsWith(", 0 of 64 points beyond: agrees", agreement[1].ToString(), StringComparison.Ordinal);
        Assert.True(agreement[4].Agrees);
        Assert.Equal(
            "supply voltage, median: −0.7 V, within ±0.6 V, 0 of 64 points beyond: does not agree",
            Read(ExactRun.Changed(Sound, (cells, i) => cells with { Volts = Wren.Volt(i < 30 ? 13.5 : i == 40 ? 12.1 : 12.8) }))[4].ToString());
    }

    /// <summary>
    /// Twice the standard deviation of everything together: scatter of the median point over √n, and of every quantity its mean slope over its
    /// tolerance. Beyond is a point over three of its own.
    /// </summary>
    [Fact]
    public void Allowed_IsTwiceTheDeviationOfTolerancesAndScatter()
    {
        RecordedRun run = ExactRun.Changed(Sound, (cells, i) => cells with
        {
            Rail = cells.Rail + Wren.Kpa(i is 4 or 5 or 20 or 44 ? 45 : i == 7 ? -70 : 5),
            Lambda = i % 9 == 3 ? 1.1 : cells.Lambda,
        });
        RunModel model = PulledWren.Check.Model(run);
        double[] differences = model.Plain();
        foreach (PlanAgreement one in new AgreementReading(PulledWren.Check, run, model).Agreement().Take(4))
        {
            Comparison kind = one.Name switch { "rail pressure" => Comparison.Rail, ['f', ..] => Comparison.Flow, ['a', ..] => Comparison.Air, _ => Comparison.Power };
            int[] rows = [.. Enumerable.Range(0, model.Comparisons).Where(row => model.Describe(row).Kind == kind)];
            double[] spreads = [.. rows.Select(row => model.Describe(row).Spread).Order()];
            double spread = 0.5 * (spreads[(spreads.Length - 1) / 2] + spreads[spreads.Length / 2]);
            double[][] slopes = [.. rows.Select(model.PlainSlopes)];
            double variance = (spread * spread / rows.Length)
                + Enumerable.Range(0, RunModel.Quantities).Sum(quantity => Math.Pow(slopes.Average(line => line[quantity]), 2));
            double unit = one.Unit == "kPa" ? 1e-3 : 100;
            Assert.Equal(2 * unit * Math.Sqrt(variance), one.Allowed, 1e-9);
            double[] sorted = [.. rows.Select(row => differences[row]).Order()];
            Assert.Equal(unit * 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]), one.Difference, 1e-9);
            int beyond = rows.Zip(slopes).Count(pair => Math.Abs(differences[pair.First])
                > 3 * Math.Sqrt(Math.Pow(model.Describe(pair.First).Spread, 2) + pair.Second.Sum(slope => slope * slope)));
            Assert.Equal(beyond, one.PointsBeyond);
            Assert.Equal(rows.Length, one.Points);
            if (kind == Comparison.Rail)
            {
                Assert.Equal(5, beyond);
                Assert.False(one.Agrees);
                Assert.StartsWith("rail pressure: +5.0 kPa, within ±", one.ToString(), StringComparison.Ordinal);
                Assert.EndsWith(" kPa, 5 of 64 points beyond: does not agree", one.ToString(), StringComparison.Ordinal);
            }
        }
    }

    /// <summary>Without a channel there is no comparison by it; without any nothing to agree on.</summary>
    [Fact]
    public void Comparisons_ThatChannelsDoNotAllow_AreNotThere()
    {
        Assert.Equal(
            ["fuel by the flow meter against the injectors"],
            Read(ExactRun.Changed(Sound, (cells, _) => cells with { Rail = null, Lambda = null, Power = null, Volts = null })).Select(one => one.Name));
        Assert.Empty(Read(RecordedRun.Of("speed only", PulledWren.Air, [RunRow.Of(1, Wren.Rpm(3000))])));
    }

    /// <summary>Agreed is up to just what is allowed, with one point in twenty beyond it.</summary>
    [Theory]
    [InlineData(2, 2, 20, 1, true)]
    [InlineData(-2, 2, 20, 1, true)]
    [InlineData(2.01, 2, 20, 1, false)]
    [InlineData(-2.01, 2, 20, 1, false)]
    [InlineData(1, 2, 20, 2, false)]
    [InlineData(1, 2, 41, 2, true)]
    [InlineData(1, 2, 39, 2, false)]
    public void Agrees_WithinWhatIsAllowed(double difference, double allowed, int points, int beyond, bool agrees)
    {
        PlanAgreement one = new("rail pressure", difference, allowed, "kPa", points, beyond);
        Assert.Equal(agrees, one.Agrees);
        Assert.Equal(agrees, one.ToString().EndsWith(": agrees", StringComparison.Ordinal));
    }

    [Fact]
    public void Agreement_InImperialUnits_HasPressuresInThem()
    {
        PlanAgreement rail = new("rail pressure", 10, 20, "kPa", 20, 1);
        Assert.Equal("rail pressure: +10.0 kPa, within ±20.0 kPa, 1 of 20 points beyond: agrees", rail.ToString());
        PlanAgreement none = new("power", 0, 2.5, "%", 20, 0);
        Assert.Equal("power: 0.0 %, within ±2.5 %, 0 of 20 points beyond: agrees", none.ToString());
        PlanAgreement under = new("power", -3.25, 2.5, "%", 20, 0);
        Assert.Equal("power: −3.3 %, within ±2.5 %, 0 of 20 points beyond: does not agree", under.ToString());
    }

    private static IReadOnlyList<PlanAgreement> Read(RecordedRun run) => new AgreementReading(PulledWren.Check, run, PulledWren.Check.Model(run)).Agreement();
}
