using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using MathNet.Numerics.RootFinding;

namespace FuelSizing.Tests.Lines;

public class PipeFrictionTests
{
    private static readonly Gen<double> Roughness =
        Gen.OneOf(Gen.Const(0.0), Gen.Double[-7, Math.Log10(0.05)].Select(power => Math.Pow(10, power)));

    /// <summary>The equation as it is written, solved by another method in another variable.</summary>
    [Fact(DisplayName = "Turbulent friction factor over the Moody chart; root of Colebrook–White")]
    public void TurbulentFriction_OverTheWholeChart_IsTheRootOfColebrookWhite() =>
        Gen.Select(Gen.Double[Math.Log(4e3), Math.Log(1e8)].Select(Math.Exp), Roughness).Sample((reynolds, roughness) =>
            Published.Value(
                "Colebrook–White equation, root by MathNet.Numerics (Brent)",
                Root(reynolds, roughness),
                Friction(reynolds, roughness),
                1e-12));

    [Theory(DisplayName = "Turbulent friction factor at check points; independent program")]
    [InlineData(1e5, 1e-4, 0.0185138660774716)]
    [InlineData(1e5, 0, 0.01798977308427384)]
    public void TurbulentFriction_AtACheckPoint_IsThatOfAnIndependentProgram(
        double reynolds, double roughness, double factor) =>
        Published.Value(
            "CalebBell/fluids, tests/test_friction.py, Colebrook", factor, Friction(reynolds, roughness), 1e-13);

    /// <summary>That program writes von Kármán's limit with 3.71 where Colebrook and White have 3.7.</summary>
    [Fact(DisplayName = "Friction factor of a fully rough pipe; independent program")]
    public void FullyRough_AtACheckPoint_IsThatOfAnIndependentProgram() =>
        Published.Value(
            "CalebBell/fluids, tests/test_friction.py, von Kármán",
            0.01197365149564789,
            ColebrookWhite.FullyRough<Real>(1e-4 * 3.7 / 3.71),
            1e-13);

    [Fact(DisplayName = "Friction factor at very high Reynolds number; fully rough limit")]
    public void TurbulentFriction_AtAnImmenseReynoldsNumber_IsThatOfAFullyRoughWall() =>
        Gen.Double[1e-3, 0.05].Sample(roughness =>
            Published.Value(
                "limit of the Colebrook–White equation",
                ColebrookWhite.FullyRough<Real>(roughness),
                Friction(1e13, roughness),
                1e-8));

    [Fact]
    public void LaminarFriction_IsExactly64OverReynolds() =>
        Gen.Select(Gen.Double[1e-6, PipeFriction.TurbulenceOnset], Roughness).Sample((reynolds, roughness) =>
            PipeFriction.Number<Real>(reynolds, roughness) == 64.0
            && Friction(reynolds, roughness) == 64 / reynolds);

    // Measured points scatter by 3 to 5 % below Re 700, and by up to 9 % between there and transition.
    [Theory(DisplayName = "Friction factor of a smooth pipe, measured; McKeon et al.")]
    [InlineData(11.21, 5.537, 0.05)]
    [InlineData(29.28, 2.329, 0.07)]
    [InlineData(57.73, 1.173, 0.06)]
    [InlineData(86.05, 0.7826, 0.06)]
    [InlineData(135.3, 0.4815, 0.05)]
    [InlineData(179.4, 0.3655, 0.05)]
    [InlineData(228, 0.2884, 0.05)]
    [InlineData(315.2, 0.2077, 0.05)]
    [InlineData(402.9, 0.1656, 0.05)]
    [InlineData(522.5, 0.1245, 0.05)]
    [InlineData(671.8, 0.09917, 0.05)]
    [InlineData(891, 0.07722, 0.1)]
    [InlineData(1197, 0.0588, 0.1)]
    [InlineData(1390, 0.04815, 0.1)]

    // Where the flow is intermittent the measured points themselves jump by a third; a blend can only run between them.
    [InlineData(1994, 0.03739, 0.25)]
    [InlineData(2554, 0.03091, 0.25)]
    [InlineData(2903, 0.03182, 0.25)]
    [InlineData(2955, 0.03363, 0.25)]
    [InlineData(2997, 0.035, 0.25)]
    [InlineData(3080, 0.04285, 0.25)]
    [InlineData(3980, 0.03995, 0.03)]

    // Colebrook–White's smooth limit lies 1 to 4 % under these measurements.
    [InlineData(5959, 0.0361, 0.03)]
    [InlineData(10_900, 0.03088, 0.03)]
    [InlineData(18_990, 0.0267, 0.03)]
    [InlineData(40_850, 0.02086, 0.05)]
    [InlineData(84_760, 0.01805, 0.04)]
    [InlineData(176_000, 0.01594, 0.03)]
    [InlineData(298_200, 0.01462, 0.03)]
    [InlineData(587_500, 0.01313, 0.03)]
    [InlineData(1.05e6, 0.01198, 0.04)]
    public void Friction_OfASmoothPipe_IsNearTheMeasured(double reynolds, double factor, double within) =>
        Published.Value(
            "McKeon, Swanson, Zagarola, Donnelly, Smits, J. Fluid Mech. 511 (2004) 41",
            factor,
            Friction(reynolds, 0),
            within);

    /// <summary>Growing friction number means that the loss grows with the flow by more than its own proportion.</summary>
    [Fact]
    public void FrictionNumber_WithRisingReynoldsNumber_NeverFalls() =>
        Gen.Select(Gen.Double[1000, 6000], Gen.Double[1e-3, 100], Roughness).Sample((reynolds, step, roughness) =>
            PipeFriction.Number<Real>(reynolds + step, roughness) >= PipeFriction.Number<Real>(reynolds, roughness));

    [Theory]
    [InlineData(PipeFriction.TurbulenceOnset)]
    [InlineData(PipeFriction.TurbulenceComplete)]
    public void FrictionNumber_AtTheEndsOfTransition_HasNeitherJumpNorKink(double end) =>
        Roughness.Sample(roughness =>
        {
            const double step = 1e-3;
            double before = PipeFriction.Number<Real>(end - step, roughness);
            double at = PipeFriction.Number<Real>(end, roughness);
            double after = PipeFriction.Number<Real>(end + step, roughness);
            return Math.Abs(after - before) < 1e-6 * at
                && Math.Abs(after - at - (at - before)) < 1e-9 * at;
        });

    [Fact]
    public void Friction_OfARougherWall_IsNeverLess() =>
        Gen.Select(Gen.Double[1000, 1e7], Gen.Double[0, 0.04], Gen.Double[0, 0.01]).Sample((reynolds, roughness, more) =>
            Friction(reynolds, roughness + more) >= Friction(reynolds, roughness) * (1 - 1e-14));

    private static double Friction(double reynolds, double roughness) =>
        PipeFriction.Factor<Real>(PipeFriction.Number<Real>(reynolds, roughness), reynolds);

    private static double Root(double reynolds, double roughness)
    {
        double x = Brent.FindRoot(
            x => x + (2 * Math.Log10((roughness / 3.7) + (2.51 * x / reynolds))), 1, 60, 1e-14, 200);
        return 1 / (x * x);
    }
}
