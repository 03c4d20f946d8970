using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes how far the mixture of a point is from its target: both sides, and the deviation between them.</summary>
internal static class MixtureDeviation
{
    /// <summary>The working of a point, with those lines.</summary>
    public static Working Of(OperatingResult result, TextStyle style, string subject) => WorkingWriter.Of(result, result.Margins, style, subject, to =>
    {
        if (to.Find("λ_e") is not { Si: { } lambda } engine)
        {
            return ["λ_e"];
        }

        double target = result.Mixture.TargetLambda;
        Traced left = to.Step("left side, lambda that the engine gets", "E_L", Traced.Given("λ_e", lambda), "1", engine.Readable, "where the target is met both sides are equal");
        Traced right = to.Step("right side, target lambda", "E_R", Traced.Given("λ", target), "1", style.Number(target), "where the target is met both sides are equal");
        Traced off = (left / right) - 1;
        to.Step("deviation of lambda from its target", "e_λ", off, "1", style.Change(Ratio.FromDecimalFractions(off.Value)), "definition");
        return ["p_r", "λ_e", "E_L", "E_R", "e_λ"];
    });
}
