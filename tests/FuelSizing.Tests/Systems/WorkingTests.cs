using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Equations;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A working is written by the equations themselves: its lines, calculated by hand, give the result.</summary>
public class WorkingTests
{
    private static readonly Gen<FuelSystem> SomeSystem = Gen.Select(
        Gen.OneOfConst<PressureRegulator>(
            Fixed.At(Wren.Kpa(400)),
            ManifoldReferenced.From(Wren.Kpa(300)),
            RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10), Wren.Kpa(600)),
            RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 8, Wren.Kpa(5)))),
        Gen.Double[250, 900],
        Gen.Double[0.4, 2],
        Gen.OneOfConst(Wren.Turbocharger, Induction.BeltDriven(Ratio.FromPercent(65), Ratio.FromPercent(60), Wren.Kpa(3), Ratio.FromPercent(95))),
        Gen.OneOfConst(Fuel.Petrol, Fuel.E85),
        Gen.Int[1, 3],
        Gen.Double[4, 9])
        .Select((regulator, injector, pump, induction, fuel, injections, bore) => FuelSystem.Return(
            Wren.Demand(FuelConsumption.Of(fuel, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(fuel == Fuel.Petrol ? 315 : 440)), induction),
            InjectorSet.Of(Wren.InjectorOf(injector), 4, injections),
            regulator,
            Pump.From(Wren.PumpOf(pump)),
            plumbing: injections == 1 ? null : Plumbing.Of(
                supply:
                [
                    Filter.Of("filter", VolumeFlow.FromLitersPerHour(170), Wren.Kpa(8)),
                    Line.Of("supply", Length.FromMillimeters(bore), Length.FromMeters(4.5), Roughness.DrawnTube, [Fitting.Bend90], Length.FromMeters(0.4)),
                ])));

    [Fact]
    public void EveryStep_ComputedByHandFromWhatItWrites_GivesItsValue() =>
        Gen.Select(SomeSystem, Gen.Double[1000, 7200], Gen.Double[-0.5, 0.9]).Sample(
            (system, rpm, boost) =>
            {
                Follow(system.Solve(Wren.At(rpm, boost)).Working);
            },
            iter: 300);

    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryStep_OfEachWayAWorkingCanGo_GivesItsValue(string name) => Follow(WorkingCases.Solve(name).Working);

    /// <summary>What a solver found stands with both sides of its equation, and they are equal to the figures written.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void BothSides_OfWhatASolverFound_AreEqual(string name)
    {
        Working working = WorkingCases.Solve(name).Working;
        double Of(string symbol) => Number(working.Find(symbol)!.Value);
        foreach (WorkingStep found in working.Steps.Where(step => step.Kind == WorkingSource.Solver))
        {
            (string left, string right) = found.Symbol[0] == 'f' ? ($"Y_L,{found.Symbol[2..]}", $"Y_R,{found.Symbol[2..]}")
                : found.Symbol.StartsWith("V_m", StringComparison.Ordinal) ? (found.Symbol, $"V_R{found.Symbol[3..]}")
                : ("Δp_p", "Δp_sys");

            Assert.Contains($"{left} = {right}", found.Source, StringComparison.Ordinal);
            Assert.Equal(Of(left), Of(right), 1e-4 * Of(left));
            Assert.Equal(WorkingSource.Equation, working.Find(right)!.Kind);
        }

        // Only where the regulator or a controller governs is anything solved for in the circuit.
        Assert.Equal(
            WorkingCases.Solve(name).RailState is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor,
            working.Steps.Any(step => step.Kind == WorkingSource.Solver && step.Symbol is "Q_p" or "V_f"));
    }

    /// <summary>Symbols, circuit and injection as the result has them, to the five figures that a working writes.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Figures_OfAWorking_AreThoseOfTheResult(string name)
    {
        OperatingResult result = WorkingCases.Solve(name);
        CircuitResult circuit = result.Circuit;
        void Is(double? expected, string symbol)
        {
            WorkingStep? step = result.Working.Find(symbol);
            if (expected is { } value)
            {
                Assert.Equal(value, Number(step!.Value), (6e-5 * Math.Abs(value)) + 1e-15);
            }
            else
            {
                Assert.Equal(WorkingSource.NotKnown, step!.Kind);
                Assert.Equal("cannot say", step.Readable);
            }
        }

        Is(result.Demand.MassFlow.KilogramsPerSecond, "ṁ_f");
        Is(result.InjectedFlow.CubicMetersPerSecond, "Q_f");
        Is(result.RailSetGauge.Pascals, "p_s");
        Is(result.PumpFlow?.CubicMetersPerSecond, "Q_p");
        Is(result.RailGauge.Pascals, "p_r");
        Is(result.InjectorDifferential.Pascals, "Δp");
        Is(result.StaticFlow?.CubicMetersPerSecond, "Q_s");
        Is(result.AvailableTime.Seconds, "t_c");
        Is(result.DeadTime?.Seconds, "t_d");
        Is(result.Pulse?.Seconds, "t");
        Is(result.DutyCycle?.DecimalFractions, "D");
        if (result.RailState is not (RailState.Starved or RailState.NotCovered))
        {
            Is(circuit.OutletGauge!.Value.Pascals, "p_po");
            Is((circuit.OutletGauge - circuit.InletGauge)!.Value.Pascals, "Δp_p");
            Assert.Equal(result.ReturnedFlow!.Value.CubicMetersPerSecond, Number(result.Working.Find("Q_ret")!.Value), 1e-4 * result.PumpFlow!.Value.CubicMetersPerSecond);

            // Lines and filters are numbered in the order of flow; nothing is said of a return line in which nothing flows.
            for (int part = 0; part < circuit.Paths.Count; part++)
            {
                if (circuit.Paths[part].Flow > VolumeFlow.Zero)
                {
                    Assert.Equal(circuit.Paths[part].PressureLoss.Pascals, Number((result.Working.Find($"Δp_l,{part + 1}") ?? result.Working.Find($"Δp_F,{part + 1}"))!.Value), 5.0);
                }
            }
        }
    }

    /// <summary>Nothing that was read from a table is left without saying from which one, and where.</summary>
    [Fact]
    public void Tables_OfATwoStroke_SayWhichTheyAreAndWhereTheyWereRead()
    {
        Working working = WorkingCases.Solve(WorkingCases.TwoStroke).Working;

        Assert.Equal("volumetric-efficiency table, at 5,200 rev/min; monotone cubic between two points", working.Find("η_v")!.Source);
        Assert.Equal("measured power curve, at 5,200 rev/min; monotone cubic between two points", working.Find("P_m")!.Source);
        Assert.Matches("^dead-time table of injector A, at 13.5 V and 300 kPa across the injector; monotone cubic between two points$", working.Find("t_d")!.Source);
        Assert.Matches("^curve of pump W at 13.5 V at its motor, at [0-9]+ L/h$", working.Find("Δp_p")!.Source);
        Assert.All(working.Steps, step => Assert.Equal(step.Kind is WorkingSource.Equation or WorkingSource.Table && step.Numbers is not null, step.Equation is not null));
    }

    /// <summary>Revolutions and injections per cycle are symbols with figures of their own: 1 and 2 here.</summary>
    [Fact]
    public void Cycle_OfATwoStrokeWithTwoInjections_IsTheOneThatWasCalculatedWith()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.TwoStroke);
        Working working = result.Working;

        Assert.Equal(("1", "2"), (working.Find("k")!.Value, working.Find("i")!.Value));
        Assert.Equal("η_v · ρ_3 · V_d · n/k", working.Find("ṁ_a")!.Equation);
        Assert.Equal("k/(n · i)", working.Find("t_c")!.Equation);

        // Half a revolution at 5,200 rev/min; and what a cylinder swallows every revolution.
        Assert.Equal(60.0 / 5200 / 2, Number(working.Find("t_c")!.Value), 1e-6);
        double swallowed = Number(working.Find("η_v")!.Value) * Number(working.Find("ρ_3")!.Value) * 1.3e-3 * 5200 / 60;
        Assert.Equal(swallowed, Number(working.Find("ṁ_a")!.Value), 1e-4 * swallowed);
    }

    /// <summary>The outlet stands over the rail by filter, line and height; the pump is read there, not at the rail.</summary>
    [Fact]
    public void Outlet_OfATwoStrokeWithLines_StandsOverTheRail()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.TwoStroke);
        Working working = result.Working;

        Assert.Equal("p_r + Δp_sup", working.Find("p_po")!.Equation);
        Assert.Equal("Δp_suc + Δp_sup + p_r", working.Find("Δp_sys")!.Equation);
        Assert.Equal("Δp_F,2 + Δp_l,3", working.Find("Δp_sup")!.Equation);
        double over = Number(working.Find("p_po")!.Value) - Number(working.Find("p_r")!.Value);
        Assert.Equal((result.Circuit.Paths[1].PressureLoss + result.Circuit.Paths[2].PressureLoss).Pascals, over, 10.0);
        Assert.True(over > 10_000, $"{over} Pa");
    }

    /// <summary>Densities of air are written as such: 1 and 2 kg/m³ would be of no use to anybody.</summary>
    [Fact]
    public void DensitiesOfAir_AreWrittenWithThreeDecimals()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.TwoStroke);

        Assert.Equal("1.225 kg/m³", result.Working.Find("ρ_m")!.Readable);
        Assert.Equal(result.Demand.ChargeDensity.KilogramsPerCubicMeter, double.Parse(result.Working.Find("ρ_3")!.Readable.Split(' ')[0], CultureInfo.InvariantCulture), 6e-4);
    }

    [Fact]
    public void Steps_OfAResult_EndInItsFigures()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(6000, 0.5));
        Dictionary<string, double> steps = result.Working.Steps.ToDictionary(step => step.Symbol, step => Number(step.Value));

        Assert.Equal(result.Demand.AirMassFlow.KilogramsPerSecond, steps["ṁ_a"], 5e-6);
        Assert.Equal((double)result.Demand.BrakePower.Watts, steps["P"], 20.0);
        Assert.Equal(result.RailSetGauge.Pascals, steps["p_s"], 10.0);
        Assert.Equal(result.InjectorDifferential.Pascals, steps["Δp"], 10.0);
        Assert.Equal(result.DutyCycle!.Value.DecimalFractions, steps["D"], 1e-4);
    }

    [Fact]
    public void Working_InWords_CanBeFollowed()
    {
        string text = Wren.System().Solve(Wren.At(6000, 0.5)).Working.ToString();

        Assert.Contains("manifold pressure, absolute: p_3 = p_0 + p_b = 94322 + 50000 = 1.4432·10^5 Pa (144 kPa)  [definition]", text, StringComparison.Ordinal);
        Assert.Contains("r = max(1; (p_3 + Δp_c)/p_0)", text, StringComparison.Ordinal);
        Assert.Contains("T_2 = T_0 · (1 + (r^0.28571 − 1)/η_c)", text, StringComparison.Ordinal);
        Assert.Contains("Q_s = Q_r · √(max(0; Δp)/Δp_r · ρ_r/ρ)", text, StringComparison.Ordinal);
        Assert.Contains("t = t_d + Q_f/N/(Q_s/t_c)", text, StringComparison.Ordinal);
        Assert.Contains("[orifice equation, taken against the rated point]", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Working_OfASaggingRail_GoesOnFromWhatTheSearchFound()
    {
        OperatingResult result = Wren.System(pump: 0.5).Solve(Wren.At(6500, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        WorkingStep rail = Assert.Single(result.Working.Steps, step => step.Symbol == "p_r");
        Assert.Equal("Δp_p", rail.Equation);
        Assert.Contains("the rail sags", rail.Source, StringComparison.Ordinal);
        Assert.True(Number(result.Working.Find("Δp_p")!.Value) < Number(result.Working.Find("Δp_sys")!.Value));
        Assert.Contains(result.Working.Steps, step => step.Equation == "p_r + p_0 − p_3");
    }

    /// <summary>Where the regulator governs, the rail is what it sets: one line, and nothing found by a search.</summary>
    [Fact]
    public void Working_OfAGovernedRail_GoesOnFromWhatIsSet()
    {
        Working working = Wren.System().Solve(Wren.At(6000, 0.5)).Working;
        Assert.DoesNotContain(working.Given, step => step.Symbol == "p_r");
        Assert.Contains(working.Steps, step => step.Equation == "p_s + p_0 − p_3");
    }

    /// <summary>A turbine asks nothing of the crank; a belt does, with an efficiency of its own.</summary>
    [Fact]
    public void Working_OfACharge_TellsEachStepOfItAndTheBeltOnlyWhereThereIsOne()
    {
        OperatingResult belted = FuelSystem.Return(
            Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(65), Wren.Percent(60), Wren.Kpa(3), Wren.Percent(95))),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.Pump)).Solve(Wren.At(6000, 0.5));
        WorkingStep belt = Assert.Single(belted.Working.Given, step => step.Symbol == "η_b");
        Assert.Equal(("belt's efficiency", "0.95", "95 %"), (belt.Name, belt.Value, belt.Readable));
        Assert.Equal("η_b = 0.95 (95 %)", belt.ToString());
        Dictionary<string, double> steps = belted.Working.Steps.ToDictionary(step => step.Symbol, step => Number(step.Value));
        Assert.Equal(belted.Demand.ChargeTemperature.Kelvins, steps["T_3"], 5e-3);
        Assert.Equal(belted.Demand.ChargeDensity.KilogramsPerCubicMeter, steps["ρ_3"], 5e-5);
        Assert.Equal((double)belted.Demand.CompressorDrivePower.Watts, steps["P_d"], 0.5);
        Assert.True(steps["P_d"] > 1000);

        Working blown = Wren.System().Solve(Wren.At(6000, 0.5)).Working;
        Assert.DoesNotContain(blown.Given, step => step.Symbol == "η_b");
        Assert.DoesNotContain(blown.Steps, step => step.Symbol == "P_d");
        Assert.Contains(blown.Steps, step => step.Symbol == "T_3");
    }

    [Fact]
    public void Value_OfAShare_HasNoUnit()
    {
        Working working = Wren.System().Solve(Wren.At(6000, 0.5)).Working;
        Assert.Equal("0.72", working.Given.Single(step => step.Symbol == "η_c").Value);
        Assert.Equal("50000 Pa", working.Given.Single(step => step.Symbol == "p_b").Value);
    }

    /// <summary>Calculates each line by hand from the lines before it, with five figures as they are written.</summary>
    /// <summary>A regulator that was found off what it is described as shows by how much, and sets its pressure with it: 300 + 7 kPa; of a pair each its own.</summary>
    [Fact]
    public void Regulator_FoundOffItsSetting_ShowsItsOffset()
    {
        OperatingResult one = Wren.System().With(ManifoldReferenced.From(Wren.Kpa(300)).Off(7e3)).Solve(Wren.At(5000, 0));
        Assert.Equal(307, one.RailGauge.Kilopascals, 1e-6);
        WorkingStep offset = Assert.Single(one.Working.Given, step => step.Symbol.StartsWith("p_off", StringComparison.Ordinal));
        Assert.Equal(7000, Number(offset.Value), 1e-6);
        Assert.Equal(307e3, Number(one.Working.Find("p_s")!.Value), 1.0);
        Follow(one.Working);

        OperatingResult pair = Wren.System(pump: 2).With(RegulatorSeries.Of(
            Fixed.At(Wren.Kpa(250)).Off(4e3), (RisingRate)RisingRate.From(Pressure.Zero, 6, Wren.Kpa(20), Wren.Kpa(450)).Off(9e3)).Off(-2e3)).Solve(Wren.At(5000, 0.6));
        Assert.Equal(20 + (6 * 40) + 9 - 2, pair.RailGauge.Kilopascals, 1e-6);
        Assert.Equal([-2000, 4000, 9000], pair.Working.Given.Where(step => step.Symbol.StartsWith("p_off", StringComparison.Ordinal)).Select(step => Math.Round(Number(step.Value), 6)).Order());
        Assert.Equal(254e3, Number(pair.Working.Find("p_s1")!.Value), 1.0);
        Assert.Equal(269e3, Number(pair.Working.Find("p_s2")!.Value), 1.0);
        Assert.Equal(267e3, Number(pair.Working.Find("p_s")!.Value), 1.0);
        Follow(pair.Working);

        // One that is not off has none.
        Assert.DoesNotContain(Wren.System().Solve(Wren.At(5000, 0)).Working.Given, step => step.Symbol.StartsWith("p_off", StringComparison.Ordinal));
    }

    /// <summary>A regulator's own figures are given and no others: a gain of 0 or 1, an onset at no boost and a ceiling that is not there are none of them.</summary>
    [Fact]
    public void Regulator_InAWorking_HasItsOwnFiguresOnly()
    {
        string[] Given(PressureRegulator regulator) =>
            [.. Wren.System(regulator, pump: 2).Solve(Wren.At(5000, 0.4)).Working.Given.Select(step => step.Symbol).Where(symbol => symbol[0] == 'G' || symbol.StartsWith("p_base", StringComparison.Ordinal) || symbol.StartsWith("p_on", StringComparison.Ordinal) || symbol.StartsWith("p_max", StringComparison.Ordinal))];
        Assert.Equal(["p_base"], Given(Fixed.At(Wren.Kpa(400))));
        Assert.Equal(["p_base"], Given(ManifoldReferenced.From(Wren.Kpa(300))));
        Assert.Equal(["p_base", "G", "p_on"], Given(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(10))));
        Assert.Equal(["p_base", "G", "p_on", "p_max"], Given(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(10), Wren.Kpa(390))));
        string[] pair = Given(RegulatorSeries.Of(Fixed.At(Wren.Kpa(250)), RisingRate.From(Pressure.Zero, 9, Pressure.Zero, Wren.Kpa(450))));
        Assert.Equal(4, pair.Length);
        Assert.All(pair, symbol => Assert.Matches("[12]", symbol));
    }

    /// <summary>How far fuel from power is off that from air is the difference of the result: one over the other, less one.</summary>
    [Fact]
    public void Difference_InAWorking_IsThatOfTheResult()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(5000, 0.4));
        Assert.Equal(result.Demand.Difference.DecimalFractions, Number(result.Working.Find("e_f")!.Value), 1e-6);
        Assert.Equal(
            (result.Demand.FromPower.KilogramsPerSecond / result.Demand.FromAir.KilogramsPerSecond) - 1, result.Demand.Difference.DecimalFractions, 1e-9);
    }

    /// <summary>A margin is written by what its check uses, never by another quantity that has the same figure: here a duty limit of 85 % as a mechanical efficiency of 85 %.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Margins_OfAWorking_AreMadeOfTheirOwnQuantities(string name)
    {
        string[] own = ["Δp", "Δp_ret", "Q_f", "Q_f1", "Q_f2", "Q_p", "Q_cap", "p_po", "p_r", "p_s", "λ_e", "I", "u_m", "l_m"];
        OperatingResult result = WorkingCases.Solve(name);
        WorkingStep[] lines = [.. result.Working.Steps.Where(step => step.Symbol.StartsWith("e_m", StringComparison.Ordinal))];

        Assert.Equal(result.Margins.Count, lines.Length);
        Assert.All(lines.Where(line => line.Equation is not null).SelectMany(line => SymbolList.In(line.Equation!)), symbol => Assert.Contains(Regex.Replace(symbol, "[_,][0-9]+$", string.Empty), own));
        Assert.All(lines.Zip(result.Margins), pair => Assert.True(
            pair.Second.Reserve is not { } share ? pair.First.Kind == WorkingSource.NotKnown : Math.Abs(share.DecimalFractions - Number(pair.First.Value)) <= 1e-4 * (1 + Math.Abs(share.DecimalFractions)), $"{pair.First}"));
    }

    /// <summary>Injectors are shown by their duty cycle and judged by the fuel that they pass at its limit: 0.85 of the time between two injections, less the dead time.</summary>
    [Fact]
    public void Margin_OfInjectors_IsByWhatTheyPassAtTheLimit()
    {
        OperatingResult result = Wren.System().Solve(Wren.At(6000, 0.5));
        Working working = result.Working;
        double passed = 4 * result.StaticFlow!.Value.CubicMetersPerSecond * ((0.85 * 0.02) - result.DeadTime!.Value.Seconds) / 0.02;

        Assert.Equal("Q_s · N · max(0; D_max · t_c − t_d)/t_c", working.Find("Q_cap")!.Equation);
        Assert.Equal(passed, Number(working.Find("Q_cap")!.Value), 1e-4 * passed);
        Assert.Equal("Q_cap/Q_f − 1", working.Steps.Single(step => step.Name == "margin of injectors").Equation);
    }

    private static void Follow(Working working)
    {
        Dictionary<string, double> known = [];
        foreach (WorkingStep given in working.Given)
        {
            known.Add(given.Symbol, Number(given.Value));
        }

        foreach (WorkingStep step in working.Steps)
        {
            if (step.Kind == WorkingSource.NotKnown)
            {
                known.Add(step.Symbol, double.NaN);
                continue;
            }

            double value = Number(step.Value);
            if (step.Equation is not null)
            {
                Figure bySymbols = Hand.Compute(step.Equation, known);
                Figure byNumbers = Hand.Compute(step.Numbers!);
                Assert.True(bySymbols.Is(value), $"{step}");
                Assert.True(byNumbers.Is(value), $"{step}");

                // Enough figures are written for a pocket calculator: what they leave open is small, unless like is taken from like.
                Assert.True(byNumbers.Open <= 2e-3 * Math.Abs(value) || step.Numbers!.Contains('−', StringComparison.Ordinal), $"{step}: ± {byNumbers.Open}");
            }

            known.Add(step.Symbol, value);
        }
    }

    private static double Number(string value) => Hand.Compute(value.Split(' ')[0]).Value;
}
