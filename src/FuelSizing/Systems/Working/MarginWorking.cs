using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes how each margin came about: what is used, what is allowed, and what is left as a share.</summary>
internal static class MarginWorking
{
    // A reading by two bounds may show the one and be judged by the other.
    private const double Same = 1e-9;

    /// <summary>Writes the lines, a check after the other.</summary>
    public static void Write(Derivation to, SolvedPoint result, IReadOnlyList<Margin> margins)
    {
        for (int check = 0; check < margins.Count; check++)
        {
            Write(to, result, margins[check], (check + 1).ToString(CultureInfo.InvariantCulture));
        }
    }

    private static void Write(Derivation to, SolvedPoint result, Margin margin, string mark)
    {
        string name = $"margin of {margin.Part.Name}";
        string symbol = Derivation.Marked("e_m", mark);
        string finding = margin.Finding.In(to.Style);
        if (margin.Share is not { } share)
        {
            to.NotKnown(name, symbol, finding);
            return;
        }

        string readable = to.Style.Change(Ratio.FromDecimalFractions(share));
        if (OfInjectors(to, result, margin, share) is { } byCapacity)
        {
            to.Step(name, symbol, byCapacity, "1", readable, "fuel that may be injected ÷ fuel that is, less one");
            return;
        }

        (double used, double allowed) = (margin.Reading.Used.Value, margin.Reading.Allowed.Value);
        bool atMost = margin.Direction == LimitDirection.AtMost;
        if (!IsSame(atMost ? Reserve.Of<Real>(allowed, used).Value : Reserve.Of<Real>(used, allowed).Value, share) || margin.Used is not { } quantity)
        {
            to.Table(name, symbol, share, "1", readable, $"{finding}; judged by another figure than the one shown");
            return;
        }

        // A figure of falling boost belongs to another state of the pumps than the lines above.
        (string[] ofUsed, string[] ofAllowed) = margin.IsFalling ? ([], []) : SymbolsOf(margin.Part);
        Traced one = Figure(used, $"what is used of {margin.Part.Name}", "u_m", ofUsed);
        Traced other = Figure(allowed, $"limit of {margin.Part.Name}", "l_m", ofAllowed);
        Traced left = atMost ? Reserve.Of(other, one) : Reserve.Of(one, other);
        to.Step(name, symbol, left, "1", readable, atMost ? "limit ÷ figure, less one" : "figure ÷ limit, less one");

        Traced Figure(double value, string called, string letter, string[] symbols) => to.Written(value, symbols)
            ?? to.Table(called, Derivation.Marked(letter, mark), value, UnitOf(quantity), margin.Check.Figure.Text(value, to.Style), finding, intermediate: true);
    }

    /// <summary>
    /// The margin of a set of injectors, which is shown by its duty cycle and judged by the fuel that it passes at the limit of that, with the rail as set; none of other checks.
    /// </summary>
    private static Traced? OfInjectors(Derivation to, SolvedPoint result, Margin margin, double share)
    {
        bool second = margin.Part == Part.SecondaryInjectors;
        if ((!second && margin.Part != Part.Injectors) || margin.IsFalling
            || (second ? result.Judged.Secondary?.Injection : result.Judged) is not { Capacity: { } capacity, DeadTime: { } seconds } judged
            || !IsSame(Reserve.Of<Real>(capacity, judged.Injected).Value, share)
            || to.Written(judged.Injected, "Q_f", "Q_f1", "Q_f2") is not { } injected)
        {
            return null;
        }

        string mark = second ? "2" : string.Empty;
        string name = $"fuel that the injectors pass at the limit of the duty cycle{(second ? ", secondary set" : string.Empty)}";
        string symbol = Derivation.Marked("Q_cap", mark);
        string readable = to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(capacity));
        int count = (second ? result.Parts.StagedInjectors!.Secondary : result.Parts.Injectors).Count;
        Ratio limit = result.Parts.Limits.DutyCycle;

        // Where the rail sags, flow and dead time above are those of the sagging rail.
        Traced most = to.Written(judged.StaticFlow, Derivation.Marked("Q_s", mark)) is { } flow && to.Written(seconds, Derivation.Marked("t_d", mark)) is { } dead
            ? to.Step(
                name,
                symbol,
                InjectorFlow.Capacity(
                    flow,
                    Traced.Given(Derivation.Marked("N", mark), count),
                    Traced.Given(Derivation.Marked("t_c", mark), judged.AvailableTime),
                    to.Given($"limit of the duty cycle{(second ? ", secondary set" : string.Empty)}", Derivation.Marked("D_max", mark), limit.DecimalFractions, "1", to.Style.DutyCycle(limit), "limits"),
                    dead),
                "m³/s",
                readable,
                "static flow, for that duty cycle less the dead time", law: "InjectorFlow.Capacity")
            : to.Table(name, symbol, capacity, "m³/s", readable, "by static flow and dead time with the rail at its set pressure");
        return Reserve.Of(most, injected);
    }

    private static bool IsSame(double written, double share) => Math.Abs(written - share) <= Same * (1 + Math.Abs(share));

    /// <summary>By which symbols the lines above have what a check uses, and what it allows.</summary>
    private static (string[] Used, string[] Allowed) SymbolsOf(Part part) =>
        part == Part.OpeningPressure || part == Part.SecondaryOpeningPressure ? (["Δp"], [])
        : part == Part.Pump ? (["Q_f"], [])
        : part == Part.Filter ? (["Q_p", "Q_f"], [])
        : part == Part.PressureRating ? (["p_po", "p_r"], [])
        : part == Part.ReturnLine ? (["Δp_ret"], ["p_s"])
        : part == Part.Mixture || part == Part.RichMixture ? (["λ_e"], [])
        : part == Part.Wire || part == Part.Fuse || part == Part.Relay ? (["I"], [])
        : ([], []);

    private static string UnitOf(IQuantity quantity) => quantity switch
    {
        Pressure => "Pa",
        VolumeFlow => "m³/s",
        MassFlow => "kg/s",
        Duration => "s",
        ElectricCurrent => "A",
        ElectricPotential => "V",
        RotationalSpeed => "rev/s",
        Length => "m",
        Temperature => "K",
        _ => "1",
    };
}
