using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Fuel several ways, BSFC, volumetric efficiency and dead time, in runs without scatter, or with scatter worked out by hand.</summary>
public class FuelReadingTests
{
    private static readonly RecordedRun Sound = ExactRun.Of(PulledWren.Plan);

    /// <summary>Meter 12 % high, lambda read 5 % high, power 4 % high: fuel by each over that by the injectors.</summary>
    [Fact]
    public void Fuel_IsComparedWithTheInjectors()
    {
        RecordedRun run = ExactRun.Changed(Sound, (cells, _) => cells with
        {
            Flow = cells.Flow * 1.12,
            Lambda = cells.Lambda * 1.05,
            Power = Power.FromWatts((double)cells.Power!.Value.Watts * 1.04),
        });
        FuelBalance fuel = Reading(ExactRun.Changed(run, (cells, i) => i == 9 ? cells with { Pulse = null } : cells)).Fuel().Answer!;
        Assert.Equal(["flow meter", "air and lambda", "power and planned BSFC"], fuel.Comparisons.Select(one => one.By));
        double[] factors = [1.12, 1 / 1.05, 1.04];
        for (int i = 0; i < factors.Length; i++)
        {
            Assert.Equal(factors[i], fuel.Comparisons[i].OverInjectors.Value.DecimalFractions, 1e-5);
            Assert.InRange(fuel.Comparisons[i].OverInjectors.Minimum.DecimalFractions, factors[i] - 1e-4, fuel.Comparisons[i].OverInjectors.Value.DecimalFractions);
            Assert.InRange(fuel.Comparisons[i].OverInjectors.Maximum.DecimalFractions, fuel.Comparisons[i].OverInjectors.Value.DecimalFractions, factors[i] + 1e-4);
        }

        Assert.Equal(
            "fuel by flow meter: 112.0 % of that by the injectors; fuel by air and lambda: 95.2 % of that by the injectors; fuel by power and planned BSFC: 104.0 % of that by the injectors",
            fuel.ToString());
    }

    /// <summary>
    /// Five readings of power, ln of them 10 per cent high and off that by −2, −1, 0, 1 and 2: mean 10, standard deviation √(10/4) %, and Student's t of four
    /// degrees of freedom 2.776 (any table of t): ± 2.776 · 1.581/√5 = ± 1.963 %. A sixth that is 30 % off is left out: 4 · 1.4826 · 1.5 = 8.9 %.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Bsfc_HasStudentsInterval(bool glitch)
    {
        double[] off = [0.08, 0.11, 0.10, 0.12, 0.09, .. glitch ? (double[])[0.4] : []];
        BrakeConsumptionFound found = Reading(Five(off, (cells, value) => cells with
        {
            Power = Power.FromWatts((double)cells.Power!.Value.Watts * Math.Exp(value)),
        })).BrakeConsumption().Answer!;
        double planned = PulledWren.Plan.Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour;
        Assert.Equal(planned, found.Planned.GramsPerKiloWattHour, 9);
        Assert.Equal(planned * Math.Exp(-0.1), found.Found.Value.GramsPerKiloWattHour, 0.01);
        Assert.Equal(planned * Math.Exp(-0.1 - 0.019632), found.Found.Minimum.GramsPerKiloWattHour, 0.02);
        Assert.Equal(planned * Math.Exp(-0.1 + 0.019632), found.Found.Maximum.GramsPerKiloWattHour, 0.02);
        Assert.Equal("BSFC 285 g/kWh (279 g/kWh to 291 g/kWh), planned 315 g/kWh", found.ToString());
    }

    /// <summary>More power of the same fuel is a lower BSFC.</summary>
    [Fact]
    public void Bsfc_FallsWithPower()
    {
        BrakeConsumptionFound found = Reading(ExactRun.Changed(
            Sound, (cells, _) => cells with { Power = Power.FromWatts((double)cells.Power!.Value.Watts * 1.05) })).BrakeConsumption().Answer!;
        Assert.Equal(300, found.Found.Value.GramsPerKiloWattHour, 0.01);
    }

    [Fact]
    public void Bsfc_ThatCannotBeTold_HasItsReason()
    {
        Finding<BrakeConsumptionFound> none = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Power = null })).BrakeConsumption();
        Assert.Equal("cannot tell: power was not recorded", none.ToString());
        Assert.Equal([Channel.Power, Channel.Torque], none.Missing);
        foreach (Func<Cells, Cells> change in new Func<Cells, Cells>[] { cells => cells, cells => cells with { Power = null, Torque = Torque.FromNewtonMeters(150) } })
        {
            Finding<BrakeConsumptionFound> bare = Reading(ExactRun.Changed(Sound, (cells, _) => change(cells) with { Flow = null, Pulse = null })).BrakeConsumption();
            Assert.Equal("cannot tell: it needs fuel and power at full load", bare.ToString());
            Assert.Equal([Channel.FuelVolumeFlow, Channel.InjectorPulse], bare.Missing);
        }

        // Four points are too few, five are not; where fuel was recorded no channel is missing.
        Finding<BrakeConsumptionFound> few = Reading(ExactRun.Changed(Sound, (cells, i) => i is >= 8 and < 12 ? cells : cells with { Power = null })).BrakeConsumption();
        Assert.Null(few.Answer);
        Assert.Empty(few.Missing);
        Assert.Empty(Reading(ExactRun.Changed(Sound, (cells, i) => i is >= 8 and < 12 ? cells with { Pulse = null } : cells with { Power = null, Pulse = null, Flow = null })).BrakeConsumption().Missing);
        Assert.NotNull(Reading(ExactRun.Changed(Sound, (cells, i) => i is >= 8 and < 13 ? cells : cells with { Power = null })).BrakeConsumption().Answer);
    }

    /// <summary>Lambda 3 % high at the fuel injected is air 3 % over the planned, at every speed the planned efficiency times 1.03.</summary>
    [Fact]
    public void VolumetricEfficiency_IsTheAirThatLambdaAndFuelImply()
    {
        VolumetricEfficiencyFound found = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Lambda = cells.Lambda * 1.03 })).VolumetricEfficiency().Answer!;
        Assert.Equal(1.03, found.Factor.Value.DecimalFractions, 1e-5);
        Assert.Equal("volumetric efficiency 103.0 % of the planned (103.0 % to 103.0 %)", found.ToString());

        // Speeds are gathered to the nearest 500 rev/min: 2,600, 3,100, 3,700 (3,500), 4,300 (4,500), 4,900, 5,500, 6,100 and 6,600.
        double[] speeds = [2600, 3100, 3700, 4300, 4900, 5500, 6100, 6600];
        Assert.Equal(speeds, found.BySpeed.Select(one => Math.Round(one.Speed.RevolutionsPerMinute, 6)));
        Assert.All(found.BySpeed, one => Assert.Equal(1.03 * Wren.VolumetricEfficiency.At(one.Speed).DecimalFractions, one.Efficiency.DecimalFractions, 1e-4));
    }

    /// <summary>Two speeds within the same 500 rev/min make one line, at the median of their speeds and of what is found there.</summary>
    [Fact]
    public void VolumetricEfficiency_OfNeighbouringSpeeds_IsOneLine()
    {
        (RotationalSpeed Speed, double Lambda)[] rows = [(Wren.Rpm(3100), 0.82), (Wren.Rpm(3700), 0.86), (Wren.Rpm(3690), 0.84), (Wren.Rpm(3100), 0.82), (Wren.Rpm(3700), 0.83)];
        Cells[] exact = [.. rows.Select(row =>
        {
            var at = PulledWren.Plan.Solve(OperatingPoint.At(row.Speed, Wren.Kpa(35), Conditions.Of(PulledWren.Air, Wren.Volt(13.5), ExactRun.Fuel)));
            return new Cells { Speed = row.Speed, Manifold = at.Demand.ManifoldAbsolute, Rail = at.RailGauge, Pulse = at.Pulse, Volts = Wren.Volt(13.5), Fuel = ExactRun.Fuel, Lambda = row.Lambda };
        })];
        VolumetricEfficiencyFound found = Reading(RecordedRun.Of("rows", PulledWren.Air, exact.Select((cells, i) => cells.Row(i + 1)))).VolumetricEfficiency().Answer!;
        Assert.Equal([3100, 3700], found.BySpeed.Select(one => Math.Round(one.Speed.RevolutionsPerMinute, 6)));
        Assert.Equal(Wren.VolumetricEfficiency.At(Wren.Rpm(3100)).DecimalFractions, found.BySpeed[0].Efficiency.DecimalFractions, 1e-4);
        Assert.Equal(0.84 / 0.82 * Wren.VolumetricEfficiency.At(Wren.Rpm(3700)).DecimalFractions, found.BySpeed[1].Efficiency.DecimalFractions, 1e-4);
    }

    [Fact]
    public void VolumetricEfficiency_ThatCannotBeTold_HasItsReason()
    {
        Finding<VolumetricEfficiencyFound> none = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Lambda = null })).VolumetricEfficiency();
        Assert.Equal("cannot tell: lambda was not recorded", none.ToString());
        Assert.Equal([Channel.Lambda], none.Missing);
        Finding<VolumetricEfficiencyFound> bare = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Flow = null, Pulse = null })).VolumetricEfficiency();
        Assert.Equal("cannot tell: it needs fuel and lambda together", bare.ToString());
        Assert.Equal([Channel.FuelVolumeFlow, Channel.InjectorPulse], bare.Missing);
        Finding<VolumetricEfficiencyFound> few = Reading(ExactRun.Changed(Sound, (cells, i) => cells with { Lambda = i < 4 ? 0.82 + (0.001 * i) : null })).VolumetricEfficiency();
        Assert.Null(few.Answer);
        Assert.Empty(few.Missing);
        Assert.NotNull(Reading(ExactRun.Changed(Sound, (cells, i) => cells with { Lambda = i < 5 ? 0.82 + (0.001 * i) : null })).VolumetricEfficiency().Answer);
    }

    [Fact]
    public void Fuel_ThatCannotBeCompared_HasItsReason()
    {
        Finding<FuelBalance> none = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Pulse = null })).Fuel();
        Assert.Equal("cannot tell: fuel by the injectors needs pulse or duty cycle, and the dead-time table to cover voltage and pressure", none.ToString());
        Assert.Equal([Channel.InjectorPulse], none.Missing);

        // A duty cycle that was recorded is not missing, though no pulse of it opens.
        Assert.Empty(Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Pulse = null, Duty = Ratio.FromPercent(0.1) })).Fuel().Missing);
        Finding<FuelBalance> alone = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Flow = null, Lambda = null, Power = null })).Fuel();
        Assert.Equal("cannot tell: nothing to compare the injectors' fuel with", alone.ToString());
        Assert.Equal([Channel.FuelVolumeFlow, Channel.Lambda, Channel.Power], alone.Missing);

        // Lambda that burns nothing, and power that is none, off full load or under nought, are left out; five points are enough.
        FuelBalance some = Reading(ExactRun.Changed(Sound, (cells, i) => i switch
        {
            < 4 => cells with { Flow = null },
            < 8 => cells with { Lambda = 0.5, Flow = null },
            >= 8 and < 12 => cells,
            12 => cells with { Lambda = 1.5 },
            13 => cells with { Lambda = 0.45, Power = Power.FromKilowatts(-5) },
            _ => cells with { Flow = null, Lambda = null, Power = Power.Zero },
        })).Fuel().Answer!;
        Assert.Equal(["flow meter", "air and lambda", "power and planned BSFC"], some.Comparisons.Select(one => one.By));
        Assert.All(some.Comparisons, one => Assert.Equal(1, one.OverInjectors.Value.DecimalFractions, 1e-4));
    }

    /// <summary>Lambda of an engine that does not burn as planned, and power off full load, are no measure of fuel.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.5)]
    public void Fuel_ByLambdaThatBurnsNothing_IsNotCompared(double lambda)
    {
        FuelBalance fuel = Reading(ExactRun.Changed(Sound, (cells, i) => cells with { Lambda = lambda, Power = i % 32 < 8 ? cells.Power : null })).Fuel().Answer!;
        Assert.Equal(["flow meter"], fuel.Comparisons.Select(one => one.By));
        FuelBalance none = Reading(ExactRun.Changed(Sound, (cells, _) => cells with { Lambda = null, Power = Power.FromKilowatts(-3) })).Fuel().Answer!;
        Assert.Equal(["flow meter"], none.Comparisons.Select(one => one.By));
    }

    /// <summary>Pulses 0.2 ms longer than the table has them for the same fuel, from part throttle to full boost: a dead time 0.2 ms longer, and a flow as planned.</summary>
    [Fact]
    public void DeadTime_OverTheTable_IsFoundWithTheFlow()
    {
        RecordedRun run = ExactRun.Changed(Sound, (cells, _) => cells with { Pulse = cells.Pulse + Wren.Ms(0.2) });
        RunModel model = PulledWren.Check.Model(run);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        DeadTimeFound found = new FuelReading(PulledWren.Check, run, model).DeadTime(diagnosis).Answer!;
        Assert.Equal(0.2, found.OverPlanned.Value.Milliseconds, 0.005);
        Assert.Equal(1, found.FlowFactor.Value.DecimalFractions, 0.002);
        RunFit fit = RunFit.From(model, diagnosis.Best.Off, RunQuantity.DeadTime, RunQuantity.InjectorFlow);
        double half = 1.96 * fit.Error(RunQuantity.DeadTime);
        Assert.InRange(half, 1e-6, 0.15e-3);
        Assert.Equal(half, (found.OverPlanned.Value - found.OverPlanned.Minimum).Seconds, 1e-12);
        Assert.Equal(half, (found.OverPlanned.Maximum - found.OverPlanned.Value).Seconds, 1e-12);
        double flow = 1.96 * fit.Error(RunQuantity.InjectorFlow);
        Assert.Equal(Math.Exp(-flow), found.FlowFactor.Minimum / found.FlowFactor.Value, 1e-9);
        Assert.Equal(Math.Exp(flow), found.FlowFactor.Maximum / found.FlowFactor.Value, 1e-9);
        Assert.StartsWith("dead time +0.20 ms over the table (", found.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void DeadTime_ThatCannotBeTold_HasItsReason()
    {
        (Func<Cells, Cells> Change, Channel[] Missing)[] lacks =
        [
            (cells => cells with { Flow = null }, [Channel.FuelVolumeFlow]),
            (cells => cells with { Pulse = null }, [Channel.InjectorPulse]),
            (cells => cells with { Pulse = null, Flow = null }, [Channel.FuelVolumeFlow, Channel.InjectorPulse]),
            (cells => cells with { Pulse = null, Duty = Ratio.FromPercent(0.1) }, []),
            (cells => cells with { Flow = null, Mass = MassFlow.FromGramsPerSecond(-1) }, []),
        ];
        foreach ((Func<Cells, Cells> change, Channel[] missing) in lacks)
        {
            RecordedRun run = ExactRun.Changed(Sound, (cells, _) => change(cells));
            RunModel model = PulledWren.Check.Model(run);
            Finding<DeadTimeFound> none = new FuelReading(PulledWren.Check, run, model).DeadTime(Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None));
            Assert.Equal("cannot tell: it needs fuel flow by a meter and pulse together", none.ToString());
            Assert.Equal(missing, none.Missing);
        }

        Assert.Equal("cannot tell: it needs fuel flow by a meter and pulse together", Reading(Sound).DeadTime(null).ToString());

        // Of one row only, six times over, nothing tells dead time and flow apart.
        RecordedRun alike = RecordedRun.Of("alike", PulledWren.Air, Enumerable.Range(0, 12).Select(i => (Cells.Of(Sound.Rows[20]) with { Time = null, Lambda = null }).Row(i + 1)));
        RunModel same = PulledWren.Check.Model(alike);
        string said = new FuelReading(PulledWren.Check, alike, same).DeadTime(Diagnosis.Of(PulledWren.Check, same, null, CancellationToken.None)).ToString();
        Assert.StartsWith("cannot tell: pulses were too much alike: dead time is known to ±", said, StringComparison.Ordinal);
        Assert.EndsWith(" only; run from part throttle to full boost", said, StringComparison.Ordinal);
    }

    private static RecordedRun Five(double[] off, Func<Cells, double, Cells> change) => RecordedRun.Of(
        "five", PulledWren.Air, off.Select((value, i) => change(Cells.Of(Sound.Rows[8 + i]), value).Row(i + 1)));

    private static FuelReading Reading(RecordedRun run) => new(PulledWren.Check, run, PulledWren.Check.Model(run));
}
