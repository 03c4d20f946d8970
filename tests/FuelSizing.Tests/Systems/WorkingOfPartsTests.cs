using System.Globalization;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Which lines a working has by the parts of a system: each part has its own, and no line speaks of a part that is not there.</summary>
public class WorkingOfPartsTests
{
    public static TheoryData<string> Cases => [.. WorkingCases.Names];

    /// <summary>Flows are in m³/s, pressures in Pa, masses of flow in kg/s, temperatures in K: the letter of a symbol says which.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Unit_OfASymbol_IsThatOfItsLetter(string name)
    {
        Working working = WorkingCases.Solve(name).Working;
        foreach (WorkingStep step in working.Given.Concat(working.Steps).Where(step => step.Kind != WorkingSource.NotKnown))
        {
            string? unit = step.Symbol switch
            {
                ['Q', ..] => "m³/s",
                ['p', '_', ..] or ['Δ', 'p', ..] => "Pa",
                ['ṁ', ..] => "kg/s",
                ['T', '_', ..] => "K",
                _ => null,
            };
            Assert.True(unit is null || step.Value.EndsWith(" " + unit, StringComparison.Ordinal), step.ToString());
        }
    }

    /// <summary>The inlet has a line of its own where there is something before it, and an uncovered or starved point says nothing of it.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Inlet_HasALine_WhereASuctionLineIs(string name)
    {
        OperatingResult result = WorkingCases.Solve(name);
        WorkingStep? inlet = result.Working.Find("p_pi");
        bool solved = result.RailState is not (RailState.NotCovered or RailState.Starved);
        Assert.Equal(solved && result.Parts.Plumbing.HasSuction, inlet is not null);
        if (inlet is not null)
        {
            Assert.Equal(result.Circuit.InletGauge!.Value.Pascals, Number(inlet), 0.1);
        }
    }

    /// <summary>A regulator before the rail has a pressure of its own where a return line may hold it up, or where it is shut; one at the rail has none.</summary>
    [Theory]
    [InlineData(WorkingCases.BeforeRegulator, true)]
    [InlineData("filter before a regulator at the tank, sagging", true)]
    [InlineData("regulator at the tank", true)]
    [InlineData("filter before a regulator at the tank, no return line", false)]
    [InlineData("narrow return line", false)]
    [InlineData("sagging rail behind lines", false)]
    public void Regulator_BeforeTheRail_HasAPressureOfItsOwn(string name, bool has) =>
        Assert.Equal(has, WorkingCases.Solve(name).Working.Find("p_reg") is not null);

    /// <summary>What lies before a regulator takes its part of the pump's pressure; the line behind it leads from the regulator to the rail, else from the pump.</summary>
    [Fact]
    public void Lines_BeforeARegulator_AreTold()
    {
        OperatingResult before = WorkingCases.Solve(WorkingCases.BeforeRegulator);
        PathResult[] parts = [.. before.Circuit.Paths.Where(path => path.Name is "fine filter" or "riser")];
        Assert.Equal(2, parts.Length);
        WorkingStep lost = before.Working.Find("Δp_tr")!;
        Assert.Equal("pressure loss from the pump to the regulator", lost.Name);
        Assert.Equal(parts.Sum(part => part.PressureLoss.Pascals), Number(lost), 1.0);
        Assert.Equal("pressure loss from the regulator to the rail", before.Working.Find("Δp_sup")!.Name);
        Assert.Equal(before.Circuit.OutletGauge!.Value.Pascals - 400e3, Number(lost), 10.0);
        foreach (string name in new[] { "regulator at the tank", "narrow return line", "sagging rail behind lines", WorkingCases.TwoStroke })
        {
            Working without = WorkingCases.Solve(name).Working;
            Assert.Null(without.Find("Δp_tr"));
            Assert.True(without.Find("Δp_sup") is not { } supply || supply.Name == "pressure loss from the pump to the rail", name);
        }
    }

    /// <summary>A pump that its controller slows gives what is injected: its voltage is solved for, and of a return line that nothing flows in nothing is said.</summary>
    [Fact]
    public void Pump_ThatIsSlowed_GivesWhatIsInjected()
    {
        FuelSystem slowed = FuelSystem.Returnless(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)),
            Pump.From(Wren.WiredCurve(13.5, 1.4)),
            plumbing: Plumbing.Of(returnLine: [Line.Of("return", Length.FromMillimeters(6.5), Length.FromMeters(4), Roughness.DrawnTube)]));
        Working working = slowed.Solve(Wren.At(5500, 0.4)).Working;
        WorkingStep flow = working.Find("Q_p")!;
        Assert.Equal((WorkingSource.Equation, "Q_f"), (flow.Kind, flow.Equation));
        Assert.Equal(WorkingSource.Solver, working.Find("V_f")!.Kind);
        Assert.Null(working.Find("Δp_ret"));

        Working governed = Wren.System().Solve(Wren.At(5500, 0.4)).Working;
        Assert.Equal(WorkingSource.Solver, governed.Find("Q_p")!.Kind);
        Assert.Null(governed.Find("V_f"));
    }

    /// <summary>Before a line too narrow for the demand the regulator at the tank lets the rest back, though the rail has no pressure; before a weak pump nothing returns.</summary>
    [Fact]
    public void Return_OfAStarvedRail_IsWhatTheRegulatorLetsBack()
    {
        OperatingResult narrow = WorkingCases.Solve(WorkingCases.Narrow);
        Assert.Equal(RailState.Starved, narrow.RailState);
        WorkingStep back = narrow.Working.Find("Q_ret")!;
        Assert.True(Number(back) > 1e-6);
        Assert.Equal("what the regulator at the tank lets back", back.Source);
        Assert.Equal("nothing returns: the rail has no pressure", WorkingCases.Solve("starved").Working.Find("Q_ret")!.Source);
    }

    /// <summary>A law of one's own that is off by 4 kPa sets 320 + 50 + 4 kPa before a unit that sets more: each of the two shows what it sets.</summary>
    [Fact]
    public void Regulator_OfALawThatIsOff_ShowsBoth()
    {
        Working working = WorkingCases.Solve("law of one's own that is off, before a rising-rate unit").Working;
        Assert.Equal(370e3, Number(working.Find("p_law,1")!), 1e-6);
        Assert.Equal(4e3, Number(working.Find("p_off,1")!), 1e-6);
        Assert.Equal(374e3, Number(working.Find("p_s1")!), 1e-6);
        Assert.Equal(410e3, Number(working.Find("p_s")!), 1e-6);

        // Alone its offset is not written twice; one that is not off has none.
        Working alone = WorkingCases.Solve("law of one's own").Working;
        Assert.Equal(360e3, Number(alone.Find("p_law")!), 1e-6);
        Assert.DoesNotContain(alone.Given, given => given.Symbol.StartsWith("p_off", StringComparison.Ordinal));
        Working off = Wren.System(CustomRegulator.Of(new OwnSetting(320)).Off(4e3)).Solve(Wren.At(5000, 0.4)).Working;
        Assert.Equal("p_off", Assert.Single(off.Given, given => given.Symbol.StartsWith("p_off", StringComparison.Ordinal)).Symbol);
        Assert.Equal(364e3, Number(off.Find("p_s")!), 1e-6);
    }

    /// <summary>What no data covers is said of both flows; friction and the power before the belt's share have lines of their own.</summary>
    [Fact]
    public void Lines_OfFlowsAndPowers_AreNeverLeftOut()
    {
        Working ended = WorkingCases.Solve("pump data that ends").Working;
        Assert.Equal((WorkingSource.NotKnown, WorkingSource.NotKnown), (ended.Find("Q_p")!.Kind, ended.Find("Q_ret")!.Kind));
        OperatingResult result = WorkingCases.Solve("belt-driven compressor");
        Assert.Equal((double)result.Demand.FrictionPower.Watts, Number(result.Working.Find("P_fr")!), 1.0);
        Assert.Equal((double)result.Demand.GrossPower.Watts, Number(result.Working.Find("P_g")!), 10.0);
    }

    /// <summary>A slope has its three figures; the share of the outlet's pressure is one more, only where there is one.</summary>
    [Fact]
    public void Regulator_WithASlope_TellsItsFigures()
    {
        string[] Given(string name) => [.. WorkingCases.Solve(name).Working.Given.Select(given => given.Symbol).Intersect(["m_ret", "Q_set", "σ_ret"]).Order()];
        Assert.Equal(["Q_set", "m_ret"], Given("regulator with a slope").OrderBy(symbol => symbol, StringComparer.Ordinal));
        Assert.Equal(["Q_set", "m_ret", "σ_ret"], Given("regulator that adds a share of its outlet's pressure").OrderBy(symbol => symbol, StringComparer.Ordinal));
        Assert.Equal([], Given("narrow return line"));

        // 300 + 10 kPa, 0.3 kPa for each L/h over 60, and 0.8 of what the return line takes.
        Working working = WorkingCases.Solve("regulator that adds a share of its outlet's pressure").Working;
        double rise = 300.0 * ((Number(working.Find("Q_ret")!) * 3.6e6) - 60);
        Assert.Equal(310e3 + rise + (0.8 * Number(working.Find("Δp_ret")!)), Number(working.Find("p_held")!), 50.0);
    }

    /// <summary>Where a curve stands upright any pressure goes with its flow: the working writes the one at which the circuit is.</summary>
    [Fact]
    public void Curve_ThatStandsUpright_IsReadWhereTheCircuitIs()
    {
        WorkingStep rise = WorkingCases.Solve(WorkingCases.Upright).Working.Find("Δp_p")!;
        Assert.Equal(320e3, Number(rise), 5.0);
        Assert.StartsWith("curve of pump U at 13.5 V at its motor, at 170 L/h", rise.Source, StringComparison.Ordinal);
        Assert.DoesNotContain("upright", WorkingCases.Solve(WorkingCases.TwoStroke).Working.Find("Δp_p")!.Source, StringComparison.Ordinal);
    }

    /// <summary>Pumps with lines of their own are told with what these lose in all, and whether their valve has shut; of others nothing of the kind is said.</summary>
    [Fact]
    public void Pumps_WithLinesOfTheirOwn_AreTold()
    {
        OperatingResult result = WorkingCases.Solve(WorkingCases.Branched);
        BranchResult open = result.Circuit.Branches.Single(branch => !branch.IsShut);
        double lost = open.Suction.Concat(open.Discharge).Sum(part => part.PressureLoss.Kilopascals);
        Assert.True(open.Discharge.Count > 0 && open.Suction.Count > 0);
        string told = result.Working.Find("Δp_p")!.Source;
        Assert.Contains(
            FormattableString.Invariant($", at the joint: less what each one's own lines lose ({open.Branch.Name} {open.Flow.LitersPerHour:0} L/h, {lost:0.0} kPa lost; "), told, StringComparison.Ordinal);
        Assert.Contains(" shut), at ", told, StringComparison.Ordinal);
        Assert.DoesNotContain("joint", WorkingCases.Solve(WorkingCases.TwoStroke).Working.Find("Δp_p")!.Source, StringComparison.Ordinal);
    }

    /// <summary>The viscosity stands beside its SI value in mm²/s, a million times as much; it serves the lines, and is no result.</summary>
    [Fact]
    public void Viscosity_IsReadInSquareMillimetres()
    {
        Working working = WorkingCases.Solve(WorkingCases.TwoStroke).Working;
        WorkingStep viscosity = working.Find("ν")!;
        Assert.Equal((Number(viscosity) * 1e6).ToString("0.000", CultureInfo.InvariantCulture) + " mm²/s", viscosity.Readable);
        Assert.True(viscosity.IsIntermediate);
        Assert.False(working.Find("Q_f")!.IsIntermediate);
    }

    /// <summary>Figures of the secondary set are called so, and those of the primary are not.</summary>
    [Fact]
    public void Sets_OfInjectors_AreToldApart()
    {
        Working working = WorkingCases.Solve("staged injectors by boost").Working;
        Assert.Equal("rated pressure across the injector", working.Find("Δp_r")!.Name);
        Assert.Equal("duty cycle", working.Find("D")!.Name);
        Assert.Equal("injectors", working.Find("N")!.Name);
        Assert.Equal("rated pressure across the injector, secondary set", working.Find("Δp_r,2")!.Name);
        Assert.Equal("duty cycle, secondary set", working.Find("D_2")!.Name);
        Assert.Equal("injectors, secondary set", working.Find("N_2")!.Name);
    }

    /// <summary>An idle secondary set carries nothing, and has no more lines than that.</summary>
    [Fact]
    public void SecondarySet_ThatIsIdle_HasAShareOfNothing()
    {
        Working working = WorkingCases.Solve("staged injectors, idle").Working;
        Assert.Equal("0", working.Find("x_s")!.Value);
        Assert.DoesNotContain(working.Given.Concat(working.Steps), step => step.Symbol is "Q_f2" or "D_2" or "N_2");
    }

    /// <summary>A split by boost is known without any dead time; one by the primary set's duty cycle waits for that set's dead time, and says so.</summary>
    [Fact]
    public void Split_WithoutADeadTime_IsKnownByBoostAlone()
    {
        Working byBoost = WorkingCases.Solve("staged injectors by boost, dead time not covered").Working;

        // 60 kPa lies past the full hand-over at 55 kPa: 45 % of the fuel.
        Assert.Equal(0.45, Number(byBoost.Find("x_s")!), 1e-9);
        Assert.Equal(0.45 * Number(byBoost.Find("Q_f")!), Number(byBoost.Find("Q_f2")!), 1e-9);
        Assert.Equal(WorkingSource.NotKnown, byBoost.Find("D_2")!.Kind);

        Working byDuty = WorkingCases.Solve("staged injectors, dead time not covered").Working;
        Assert.Equal(WorkingSource.NotKnown, byDuty.Find("x_s")!.Kind);
        Assert.Equal("what each set carries follows the duty cycle of the primary set, which is not known", byDuty.Find("x_s")!.Source);
        Assert.Null(byDuty.Find("Q_f2"));
    }

    /// <summary>A dead time that goes by voltage alone is read at a voltage; another at a pressure too.</summary>
    [Fact]
    public void DeadTime_SaysWhereItWasRead()
    {
        Assert.Equal("dead-time table of injector V, at 13.5 V", WorkingCases.Solve(WorkingCases.VoltageAlone).Working.Find("t_d")!.Source.Split(';')[0]);
        Assert.Equal(
            "dead-time table of injector A, at 13.5 V and 300 kPa across the injector",
            WorkingCases.Solve("four-stroke, one injection, no lines").Working.Find("t_d")!.Source.Split(';')[0]);
    }

    /// <summary>Without pressure across the injector, and under the least at which its flow is known, pulse and duty cycle cannot be said, each for its reason.</summary>
    [Theory]
    [InlineData(WorkingCases.NoPressure, "no fuel flows: the pressure across the injector is not above zero")]
    [InlineData(WorkingCases.LowPressure, "the flow of injector V is known from 120 kPa across it, not at 90 kPa")]
    public void Pulse_WithoutAFlow_CannotBeSaid(string name, string reason)
    {
        Working working = WorkingCases.Solve(name).Working;
        Assert.Equal(WorkingSource.Table, working.Find("t_d")!.Kind);
        Assert.All(new[] { "t", "D" }, symbol => Assert.Equal((WorkingSource.NotKnown, reason), (working.Find(symbol)!.Kind, working.Find(symbol)!.Source)));
        Assert.Equal(name == WorkingCases.LowPressure, working.Find("Q_s")!.Kind == WorkingSource.NotKnown);
    }

    /// <summary>By a law of one's own the parts are sized for that; beside it stands what air and power ask for, as without the law. Here it is 1.25 times the larger.</summary>
    [Fact]
    public void Demand_ByALaw_StandsBesideTheEstimate()
    {
        Working working = WorkingCases.Solve(WorkingCases.OwnDemand).Working;
        OperatingResult plain = Wren.System().Solve(Wren.At(5000, 0.4));
        Assert.Equal(plain.Demand.FromPower.KilogramsPerSecond, Number(working.Find("ṁ_1")!), 1e-6);
        Assert.Equal(Term(plain.Demand.FromPower.GramsPerSecond), working.Find("ṁ_1")!.Readable);
        Assert.Equal(1.25 * plain.Demand.MassFlow.KilogramsPerSecond, Number(working.Find("ṁ_f")!), 1e-6);
        Assert.Equal(WorkingSource.Table, working.Find("ṁ_f")!.Kind);
        Assert.Equal(WorkingSource.Equation, plain.Working.Find("ṁ_f")!.Kind);

        static string Term(double grams) => FormattableString.Invariant($"{grams:0.0} g/s");
    }

    /// <summary>Fuel or a second stream that evaporates cools the charge: that temperature has a line where something does, and what evaporates is given.</summary>
    [Fact]
    public void Charge_InWhichSomethingEvaporates_HasALineForIt()
    {
        string[] Lines(string name)
        {
            Working working = WorkingCases.Solve(name).Working;
            return [.. working.Given.Concat(working.Steps).Select(step => step.Symbol).Intersect(["T_4", "x_e", "h_v", "x_es", "h_s"]).OrderBy(symbol => symbol, StringComparer.Ordinal)];
        }

        Assert.Equal([], Lines("four-stroke, one injection, no lines"));
        Assert.Equal(["T_4", "h_v", "x_e"], Lines(WorkingCases.Evaporating));
        Assert.Equal(["T_4", "h_s", "x_es"], Lines(WorkingCases.TakenBack));
        OperatingResult result = WorkingCases.Solve(WorkingCases.Evaporating);
        Assert.Equal(result.Demand.EvaporatedTemperature.Kelvins, Number(result.Working.Find("T_4")!), 5e-3);
        Assert.True(result.Demand.EvaporatedTemperature < result.Demand.ChargeTemperature);
    }

    /// <summary>A tenth of the main fuel is taken back for a second stream: 0.9 of the demand is injected.</summary>
    [Fact]
    public void MainFuel_ThatIsTakenBack_IsNotInjected()
    {
        Working working = WorkingCases.Solve(WorkingCases.TakenBack).Working;
        Assert.Equal("ṁ_f/ρ · (1 − x_tb)", working.Find("Q_f")!.Equation);
        Assert.Equal(0.9 * Number(working.Find("ṁ_f")!) / Number(working.Find("ρ")!), Number(working.Find("Q_f")!), 1e-9);
        Assert.Equal("ṁ_f/ρ", Wren.System().Solve(Wren.At(5000, 0.4)).Working.Find("Q_f")!.Equation);
    }

    /// <summary>Along a table from 0.95 at 800 rev/min to 0.8 at 7,200 lambda is 0.95 − 0.15 · 4,200/6,400 at 5,000; the cooler's effectiveness 0.8 − 0.2 · 4,200/6,400.</summary>
    [Fact]
    public void Tables_BySpeed_AreReadAtTheSpeed()
    {
        Working table = WorkingCases.Solve(WorkingCases.BySpeed).Working;
        Assert.Equal(0.95 - (0.15 * 4200 / 6400), Number(table.Find("λ")!), 1e-5);
        Assert.Equal(0.8 - (0.2 * 4200 / 6400), Number(table.Find("ε")!), 1e-9);
        Assert.All(new[] { "λ", "ε", "η_c" }, symbol => Assert.Equal((WorkingSource.Table, "table by speed, at 5,000 rev/min"), (table.Find(symbol)!.Kind, table.Find(symbol)!.Source.Split(';')[0])));
        Working plain = Wren.System().Solve(Wren.At(5000, 0.4)).Working;
        Assert.All(new[] { ("λ", "consumption"), ("ε", "induction"), ("η_c", "induction") }, given => Assert.Equal(given.Item2, plain.Given.Single(step => step.Symbol == given.Item1).Source));
    }

    /// <summary>A consumption that was stated on another fuel says so.</summary>
    [Fact]
    public void Consumption_OnAnotherFuel_SaysWhatItWasConvertedFrom()
    {
        Assert.Equal("315 g/kWh on petrol, converted by heating value", WorkingCases.Solve(WorkingCases.Converted).Working.Find("b")!.Source);
        Assert.Equal("consumption", Wren.System().Solve(Wren.At(5000, 0.4)).Working.Find("b")!.Source);
    }

    private static double Number(WorkingStep step)
    {
        string[] parts = step.Value.Split(' ')[0].Replace("−", "-", StringComparison.Ordinal).Split("·10^");
        return double.Parse(parts[0], CultureInfo.InvariantCulture) * (parts.Length > 1 ? Math.Pow(10, double.Parse(parts[1], CultureInfo.InvariantCulture)) : 1);
    }
}
