using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;

namespace FuelSizing.Tests.Lines;

/// <summary>Worked examples of pipe pressure loss from handbooks.</summary>
public class PipeLossTests
{
    private const double Foot = 0.3048;

    private const double Gravity = 9.80665;

    // The book rounds the velocity to 6.4 m/s, and reads the friction factor from the Moody chart.
    [Fact(DisplayName = "Oil in a cast-iron pipe, velocity, friction and head loss; White")]
    public void Oil_InACastIronPipe_LosesWhites117Metres()
    {
        PipeState<Real> state = PipeLoss.Evaluate<Real>(new(0.2, 500, 0.26e-3 / 0.2, 0), 0.2, 900, 1e-5);
        Source source = Works.White67;
        Published.Value(source, 6.4, state.Velocity, 0.006);
        Published.Value(source, 128_000, state.Reynolds, 0.006);
        Published.Value(source, 0.0225, PipeFriction.Factor(state.FrictionNumber, state.Reynolds), 0.011);
        Published.Value(source.At("head"), 117, state.StraightLoss / (900 * Gravity), 0.005);

        // The pipe descends by nearly as much as it loses, which enlarges the rounding.
        double descent = PipeFlow.Column<Real>(900, -500 * Math.Sin(10 * Math.PI / 180));
        Published.Value(source.At("pressure"), 265e3, state.StraightLoss + descent, 0.02);
    }

    // The book reads f = 0.0230 from its chart; Colebrook–White gives 1.3 % less.
    [Fact(DisplayName = "Oil in a 2 in pipe, friction and pressure drop; Crane")]
    public void Oil_InATwoInchPipe_LosesCranes66500Pascals()
    {
        const double bore = 0.05248;
        PipeState<Real> state = PipeLoss.Evaluate<Real>(
            new(bore, 100 * Foot, 0.0018 * 0.0254 / bore, 0), 2 * 3.785411784e-3, 0.815 * 999.0, 2.7e-6);
        Source source = Works.Crane713;
        Published.Value(source, 0.0230, PipeFriction.Factor(state.FrictionNumber, state.Reynolds), 0.015);
        Published.Value(source, 66_500, state.StraightLoss, 0.015);
        Published.Value(
            source.At("as solved with Colebrook–White in CalebBell/fluids"),
            0.022702157,
            PipeFriction.Factor(state.FrictionNumber, state.Reynolds),
            2e-4);
        Published.Value(source.At("as solved in CalebBell/fluids"), 65_759, state.StraightLoss, 2e-3);
    }

    [Fact(DisplayName = "Pressure drop of a smooth pipe; independent program")]
    public void Loss_InASmoothPipe_IsThatOfAnIndependentProgram() =>
        Published.Value(
            Works.FluidsTests.At("one_phase_dP(m=10 kg/s, rho=1000, mu=1e-5, D=0.1 m, L=1 m)"),
            63.43447321097365,
            PipeLoss.Evaluate<Real>(new(0.1, 1, 0, 0), 0.01, 1000, 1e-8).StraightLoss,
            1e-12);

    /// <summary>Hagen–Poiseuille, Δp = 128 μ L Q/(π D⁴): the laminar loss without any friction factor.</summary>
    [Fact(DisplayName = "Pressure drop in laminar flow; Hagen–Poiseuille")]
    public void Loss_InLaminarFlow_IsHagenPoiseuilles()
    {
        const double flow = 4e-6;
        PipeState<Real> state = PipeLoss.Evaluate<Real>(new(0.006, 3, 0.001, 0), flow, 789, 1.5e-6);
        Assert.InRange((double)state.Reynolds, 1, 2000);
        Published.Value(
            Works.HagenPoiseuille,
            128 * 789 * 1.5e-6 * 3 * flow / (Math.PI * Math.Pow(0.006, 4)),
            state.StraightLoss,
            1e-13);
    }
}
