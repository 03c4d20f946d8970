using System.Globalization;
using System.Reflection;
using System.Text;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;

namespace FuelSizing.Tests.Equations;

/// <summary>The pages of equations and symbols, made from the equations' documentation and from their own traces.</summary>
internal static class EquationPages
{
    private const int LongestTrace = 160;

    /// <summary>Subjects in the order of a calculation, and the classes of each.</summary>
    private static readonly (string Subject, string[] Classes)[] Subjects =
    [
        ("Air and engine", [nameof(StandardAir), nameof(HumidAir), nameof(PowerCorrectionFactor), nameof(Compression), nameof(CentrifugalCompressor), nameof(DisplacementCompressor), nameof(ChargeCooling), nameof(EngineAir), nameof(EnginePower), nameof(EngineFriction), nameof(BoostedPower)]),
        ("Fuel", [nameof(Combustion), nameof(FuelDemandFlow), nameof(FuelDensity), nameof(FuelMixing), nameof(TwoFuels), nameof(LiquidViscosity), nameof(VapourPressure), nameof(InverseTemperature), nameof(LumpedHeat)]),
        ("Injectors and rail", [nameof(RailPressure), nameof(InjectorFlow), nameof(InjectorMatching), nameof(DeliveredFuel), nameof(BoostedMixture), nameof(StagedFlow)]),
        ("Pumps", [nameof(PumpDuty), nameof(CircuitPressure), nameof(PumpMotor), nameof(PumpScaling), nameof(DisplacementPumpFlow), nameof(PumpHeat), nameof(Suction), nameof(SurgeTankVolume)]),
        ("Lines", [nameof(PipeFlow), nameof(PipeFriction), nameof(ColebrookWhite), nameof(FittingLoss), nameof(FilterLoss), nameof(CheckValveLoss)]),
        ("Wiring", [nameof(AmericanWireGauge), nameof(RoundWire), nameof(WireResistance), nameof(VoltageDrop), nameof(VoltageConversion), nameof(CurrentRating)]),
    ];

    /// <summary>The classes that have a place on the page.</summary>
    public static IEnumerable<string> Classes => Subjects.SelectMany(subject => subject.Classes);

    /// <summary>The handbook: every equation by subject.</summary>
    public static string Equations()
    {
        StringBuilder page = new(
            """
            # Equations

            Every physical law of the library, once, as `FuelSizing.Equations` computes it: a public static function on SI numbers. The library's
            parts call the same functions; call them yourself with plain numbers:

            ```cs
            using FuelSizing.Equations;
            using FuelSizing.Numerics;

            double flow = InjectorFlow.Static<Real>(ratedFlow: 6e-6, ratedDifferential: 300e3, testFluidDensity: 683.8, differential: 400e3, fuelDensity: 740);
            ```

            The functions check nothing: outside the range that an equation states its result is a number without meaning. The types of the
            library, which take quantities with units, check everything.

            This page is made from the documentation of the code. The tests run every example and compare its result with the one shown here;
            they evaluate every formula as it is written here and compare it with the code; they check dimensions. *As computed* is the trace of
            the code itself, constants put in. *How it was obtained* is its class in the [register of sources](validation.md).
            [Symbols](symbols.md) lists every symbol once.


            """);
        foreach ((string subject, string[] classes) in Subjects)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {subject}\n")
                .AppendJoin(string.Empty, Of(classes).Select(equation => $"  - [{equation.Name}](#{Anchors.OfEquation(equation.Name)}): `{equation.Formula.Split(" with ")[0]}`\n"));
        }

        foreach ((string subject, string[] classes) in Subjects)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {subject}\n");
            foreach (EquationText equation in Of(classes))
            {
                Write(page, equation);
            }
        }

        return page.ToString();
    }

    /// <summary>Every symbol once.</summary>
    public static string Symbols()
    {
        StringBuilder page = new(
            """
            # Symbols

            One symbol, one meaning, in the [equations](equations.md), of which this page is made, in workings, in tables and in the
            [glossary](glossary.md). Pressures say whether they are absolute, gauge or a difference
            ([which pressure do I mean?](pressures.md)). Unit 1 is a plain number; *any* is the unit of what is put in. Where a working has
            several parts of a kind, the number of the part follows: `d_2` and `Δp_f,2` are bore and pressure drop of part 2, counted from the
            tank along the flow; `G_2` is the gain of the second regulator.

            | symbol | meaning | unit | used in |
            | --- | --- | --- | --- |

            """);
        ILookup<string, (Symbol Symbol, string Use)> all = Used().ToLookup(use => use.Symbol.Name);
        foreach (IGrouping<string, (Symbol Symbol, string Use)> symbol in InOrder(all, group => group.Key))
        {
            Symbol first = symbol.First().Symbol;
            page.Append(CultureInfo.InvariantCulture, $"| `{first.Name}` | {first.Meaning} | {first.Unit} | ")
                .AppendJoin(", ", symbol.Select(use => use.Use).Distinct().Select(use => $"[{use}](equations.md#{Anchors.OfEquation(use)})"))
                .Append(" |\n");
        }

        page.Append(
            """

            ## Further symbols

            Quantities that workings, tables and the glossary show, and that stand in none of the equations.

            | symbol | meaning | unit |
            | --- | --- | --- |

            """);
        foreach (Symbol symbol in InOrder(FurtherSymbols.All, symbol => symbol.Name))
        {
            page.Append(CultureInfo.InvariantCulture, $"| `{symbol.Name}` | {symbol.Meaning} | {symbol.Unit} |\n");
        }

        return page.ToString();
    }

    private static IOrderedEnumerable<T> InOrder<T>(IEnumerable<T> symbols, Func<T, string> name) => symbols
        .OrderBy(symbol => IsGreek(name(symbol)))
        .ThenBy(symbol => name(symbol).TrimStart('Δ'), StringComparer.OrdinalIgnoreCase)
        .ThenBy(name, StringComparer.Ordinal);

    /// <summary>Every symbol of every equation and shared constant, with the equation that uses it.</summary>
    public static IEnumerable<(Symbol Symbol, string Use)> Used() =>
        from equation in Of([.. Classes])
        from symbol in equation.Arguments.Append(equation.Result).Concat(ConstantsOf(equation).Select(constant => constant.Symbol))
        select (symbol, equation.Name);

    private static IEnumerable<EquationText> Of(string[] classes) =>
        classes.SelectMany(name => EquationText.All.Where(equation => equation.Class == name));

    private static IEnumerable<(Symbol Symbol, double Value, string Source)> ConstantsOf(EquationText equation)
    {
        IReadOnlySet<string> there = new Formula(equation.Formula).Symbols;
        return EquationText.Constants.Where(constant => there.Contains(constant.Symbol.Name));
    }

    private static void Write(StringBuilder page, EquationText equation)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {equation.Name.Replace('.', ' ')}\n\n{equation.Summary}\n\n`{equation.Formula}`\n\n")
            .Append("| symbol | unit | meaning | in the call |\n| --- | --- | --- | --- |\n");
        foreach (Symbol symbol in equation.Arguments.Prepend(equation.Result))
        {
            string detail = symbol.Detail.Length > 0 ? $"; {symbol.Detail}" : string.Empty;
            page.Append(CultureInfo.InvariantCulture, $"| `{symbol.Name}` | {symbol.Unit} | {symbol.Meaning}{detail} | {symbol.Argument} |\n");
        }

        foreach ((Symbol symbol, double value, string source) in ConstantsOf(equation))
        {
            page.Append(CultureInfo.InvariantCulture, $"| `{symbol.Name}` | {symbol.Unit} | {symbol.Meaning}: {value:G10} ([{source.TrimEnd('.')}](validation.md#{Anchors.OfConstant(symbol.Argument)})) | constant |\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"\nRange: {equation.Range}\n\nOutside: {equation.Outside}\n\n```cs\n{equation.Example}\n```\n\n");
        if (Trace(equation) is { Length: <= LongestTrace } trace)
        {
            page.Append(CultureInfo.InvariantCulture, $"As computed: `{equation.Result.Name} = {trace}`\n\n");
        }

        (string begins, Obtained obtained) = Constants.EquationSources.First(row => equation.Source.StartsWith(row.Begins, StringComparison.Ordinal));
        page.Append(CultureInfo.InvariantCulture, $"Source: {equation.Source}\n\nHow it was obtained: [{Source.Word(obtained)}](validation.md#{Anchors.OfEquationSource(begins)}).\n");
    }

    /// <summary>The equation as its own code writes it; none for lists, nor where the code takes one of several branches.</summary>
    private static string? Trace(EquationText equation)
    {
        if (equation.Formula.Contains('Σ', StringComparison.Ordinal) || equation.Formula.Contains(" if ", StringComparison.Ordinal))
        {
            return null;
        }

        EquationForm form = EquationForms.All.Single(form => form.Name == equation.Name);
        MethodInfo method = typeof(InjectorFlow).Assembly.GetType($"{typeof(InjectorFlow).Namespace}.{equation.Class}")!
            .GetMethod(equation.Function)!.MakeGenericMethod(typeof(Traced));
        object[] given =
        [
            .. method.GetParameters().Select((parameter, place) =>
            {
                Argument argument = form.Arguments[place];
                Traced number = Traced.Given(equation.Arguments[place].Name, (argument.Minimum + argument.Maximum) / 2);
                return parameter.ParameterType == typeof(Traced) ? (object)number : new Divisor<Traced>(number);
            }),
        ];
        Traced result = method.Invoke(null, given) is var found && found is Divisor<Traced> divisor ? divisor.Value : (Traced)found!;
        return result.Term!.InSymbols();
    }

    private static bool IsGreek(string symbol) => symbol.TrimStart('Δ')[0] is >= 'Ͱ' and <= 'Ͽ';
}
