using System.Globalization;
using FuelSizing.Checks;
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
    public static void Write(Derivation to, IReadOnlyList<Margin> margins)
    {
        for (int check = 0; check < margins.Count; check++)
        {
            Write(to, margins[check], (check + 1).ToString(CultureInfo.InvariantCulture));
        }
    }

    private static void Write(Derivation to, Margin margin, string mark)
    {
        string name = $"margin of {margin.Part.Name}";
        string symbol = Derivation.Marked("e_m", mark);
        string finding = margin.Finding.In(to.Style);
        if (margin.Share is not { } share)
        {
            to.NotKnown(name, symbol, finding);
            return;
        }

        (double used, double allowed) = (margin.Reading.Used.Value, margin.Reading.Allowed.Value);
        bool atMost = margin.Direction == LimitDirection.AtMost;
        double written = atMost ? Reserve.Of<Real>(allowed, used).Value : Reserve.Of<Real>(used, allowed).Value;
        string readable = to.Style.Change(Ratio.FromDecimalFractions(share));
        if (!(Math.Abs(written - share) <= Same * (1 + Math.Abs(share))) || margin.Used is not { } quantity)
        {
            to.Table(name, symbol, share, "1", readable, $"{finding}; the bound that decides is not the figure shown");
            return;
        }

        // A figure of falling boost belongs to another state of the pumps than the lines above.
        bool isOfThese = !margin.IsFalling;
        string unit = UnitOf(quantity);
        Traced one = Figure(used, $"what is used of {margin.Part.Name}", "u_m");
        Traced other = Figure(allowed, $"limit of {margin.Part.Name}", "l_m");
        Traced left = atMost ? Reserve.Of(other, one) : Reserve.Of(one, other);
        to.Step(name, symbol, left, "1", readable, atMost ? "limit ÷ figure, less one" : "figure ÷ limit, less one");

        Traced Figure(double value, string called, string letter) => (isOfThese ? to.Written(value, unit) : null)
            ?? to.Table(called, Derivation.Marked(letter, mark), value, unit, margin.Check.Figure.Text(value, to.Style), finding, intermediate: true);
    }

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
