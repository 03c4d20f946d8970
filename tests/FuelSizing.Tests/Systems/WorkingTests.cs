using System.Globalization;
using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Pressure;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>A working is written by the equations themselves: its lines, reckoned by hand, give the result.</summary>
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
        Gen.OneOfConst(Fuel.Petrol, Fuel.E85))
        .Select((regulator, injector, pump, induction, fuel) => FuelSystem.Return(
            Wren.Demand(FuelConsumption.Of(fuel, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(fuel == Fuel.Petrol ? 315 : 440)), induction),
            InjectorSet.Of(Wren.InjectorOf(injector), 4),
            regulator,
            Pump.By(Wren.PumpOf(pump))));

    [Fact]
    public void EveryStep_ReckonedByHandFromWhatItWrites_GivesItsValue() =>
        // Not where the compressor only just works: of a difference of two temperatures five figures leave none.
        Gen.Select(SomeSystem, Gen.Double[1000, 7200], Gen.OneOf(Gen.Double[-0.5, -0.06], Gen.Double[0.15, 0.9])).Sample(
            (system, rpm, boost) =>
            {
                Working working = system.Solve(Wren.At(rpm, boost)).Working;
                Dictionary<string, double> known = [];
                foreach (WorkingStep given in working.Given)
                {
                    known.Add(given.Symbol, Number(given.Value));
                }

                foreach (WorkingStep step in working.Steps)
                {
                    double value = Number(step.Value);

                    // Five figures are written of every number; differences of near ones lose some of them.
                    double fromSymbols = Hand.Reckon(step.Equation!, known);
                    Assert.True(Near(fromSymbols, value, 2e-3), $"{step}: {fromSymbols}");
                    Assert.True(Near(Hand.Reckon(step.Numbers!), value, 2e-3), $"{step}");
                    known.Add(step.Symbol, value);
                }
            },
            iter: 300);

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

        Assert.Contains("manifold pressure, absolute: p = p_0 + p_b = 94322 + 50000 = 1.4432·10^5 Pa (144 kPa)  [definition]", text, StringComparison.Ordinal);
        Assert.Contains("r = max(1; (p + Δp_c)/p_0)", text, StringComparison.Ordinal);
        Assert.Contains("T_2 = T_0 · (1 + (r^0.28571 − 1)/η_c)", text, StringComparison.Ordinal);
        Assert.Contains("Q_s = Q_r · √(max(0; Δp)/Δp_r · ρ_r/ρ)", text, StringComparison.Ordinal);
        Assert.Contains("t = t_d + Q_f/4 · T/Q_s", text, StringComparison.Ordinal);
        Assert.Contains("[orifice equation, taken against the rated point]", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Working_OfASaggingRail_GoesOnFromWhatTheSearchFound()
    {
        OperatingResult result = Wren.System(pump: 0.5).Solve(Wren.At(6500, 0.6));
        Assert.Equal(RailState.Sagging, result.RailState);
        WorkingStep rail = Assert.Single(result.Working.Given, step => step.Symbol == "p_r");
        Assert.Equal("circuit: Sagging", rail.Source);
        Assert.Contains(result.Working.Steps, step => step.Equation == "p_r + p_0 − p");
    }

    private static bool Near(double left, double right, double within) =>
        left == right || Math.Abs(left - right) <= within * Math.Max(Math.Abs(left), Math.Abs(right));

    private static double Number(string value) => Hand.Reckon(value.Split(' ')[0]);

    /// <summary>Reckons a line as a reader would: an independent reader of the written form.</summary>
    private sealed class Hand
    {
        private readonly string _text;
        private readonly IReadOnlyDictionary<string, double> _known;
        private int _at;

        private Hand(string text, IReadOnlyDictionary<string, double> known) =>
            (_text, _known) = (text.Replace(" ", string.Empty, StringComparison.Ordinal), known);

        public static double Reckon(string text, IReadOnlyDictionary<string, double>? known = null)
        {
            Hand hand = new(text, known ?? new Dictionary<string, double>());
            double value = hand.Sum();
            Assert.True(hand._at == hand._text.Length, $"{text}: cannot be read from place {hand._at}");
            return value;
        }

        private double Sum()
        {
            double sum = Product();
            while (true)
            {
                if (Take('+'))
                {
                    sum += Product();
                }
                else if (Take('−'))
                {
                    sum -= Product();
                }
                else
                {
                    return sum;
                }
            }
        }

        private double Product()
        {
            double product = Power();
            while (true)
            {
                if (Take('·'))
                {
                    product *= Power();
                }
                else if (Take('/'))
                {
                    product /= Power();
                }
                else
                {
                    return product;
                }
            }
        }

        private double Power()
        {
            double root = Whole();
            return Take('^') ? Math.Pow(root, Whole()) : root;
        }

        private double Whole()
        {
            if (Take('−'))
            {
                return -Whole();
            }

            if (Take('√'))
            {
                return Math.Sqrt(Whole());
            }

            if (Take('('))
            {
                double inner = Sum();
                Assert.True(Take(')'));
                return inner;
            }

            int start = _at;
            while (_at < _text.Length && "+−·/^();".IndexOf(_text[_at], StringComparison.Ordinal) < 0)
            {
                _at++;
            }

            string word = _text[start.._at];
            if (word is "min" or "max" or "exp" or "ln")
            {
                Assert.True(Take('('));
                double first = Sum();
                double value = word switch
                {
                    "exp" => Math.Exp(first),
                    "ln" => Math.Log(first),
                    _ => Second(word, first),
                };
                Assert.True(Take(')'));
                return value;
            }

            return word == "∞" ? double.PositiveInfinity
                : _known.TryGetValue(word, out double known) ? known
                : double.Parse(word, CultureInfo.InvariantCulture);
        }

        private double Second(string word, double first)
        {
            Assert.True(Take(';'));
            return word == "min" ? Math.Min(first, Sum()) : Math.Max(first, Sum());
        }

        private bool Take(char letter)
        {
            bool there = _at < _text.Length && _text[_at] == letter;
            _at += there ? 1 : 0;
            return there;
        }
    }
}
