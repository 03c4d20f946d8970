using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes the mixture that the engine gets from a described controller: its pulse, what that delivers, and lambda.</summary>
internal static class MixtureWorking
{
    // A pulse that is further off is not made of one static flow and one dead time.
    private const double SamePulse = 1e-9;

    /// <summary>Writes the lines; none where the controller is assumed to command whatever is needed, or where two sets of injectors share the fuel.</summary>
    public static void Write(Derivation to, SolvedPoint result, in MixturePoint<Traced> at)
    {
        SolvedMixture mixture = result.SolvedMixture;
        EngineController controller = result.Parts.Controller;
        if (controller.IsIdeal || result.Parts.StagedInjectors is not null)
        {
            return;
        }

        const string Engine = "lambda that the engine gets";
        if (double.IsNaN(mixture.Delivered) || !(mixture.Delivered > 0))
        {
            to.NotKnown(Engine, "λ_e", mixture.Delivered == 0 ? "no fuel is delivered" : "pulse, dead time, injector or pumps are not known there");
            return;
        }

        InjectorSet set = result.Parts.Injectors;
        Injector injector = set.Injector;
        Traced count = Traced.Given("N", set.Count);
        Traced cycle = Traced.Given("t_c", mixture.AvailableTime);
        Traced pulse = Pulse(to, mixture, controller, injector, count, cycle, at.Density);
        if (mixture.State.State == RailState.Starved)
        {
            to.Table("fuel that is delivered", "Q_d", mixture.Delivered, "m³/s", Flow(mixture.Delivered), "what the pumps still pass to a rail without pressure");
        }
        else
        {
            Traced rail = to.Table("rail pressure with that fuel injected", "p_rd", mixture.Rail, "Pa", to.Style.Of(Pressure.FromPascals(mixture.Rail)), "gauge; the circuit solved with the fuel that is delivered");
            Traced across = to.Step("pressure across the injector then", "Δp_d", RailPressure.Differential(rail, at.Ambient, at.Manifold), "Pa", to.Style.Of(Pressure.FromPascals(mixture.Differential)), "definition", law: "RailPressure.Differential");
            double passed = injector.StaticAt(mixture.Differential, at.Density.Value);
            Traced flow = to.Table("static flow of one injector then", "Q_sd", passed, "m³/s", to.Style.InjectorFlow(VolumeFlow.FromCubicMetersPerSecond(passed)), $"{injector.Name} at {to.Style.Of(Pressure.FromPascals(across.Value))}, as for Q_s");
            Traced dead = to.Table("dead time then", "t_dd", mixture.DeadTime, "s", to.Style.Of(Duration.FromSeconds(mixture.DeadTime)), $"dead-time table of {injector.Name}, as for t_d");
            Traced open = to.Step("effective open time", "t_o", DeliveredFuel.OpenTime(pulse, dead, cycle), "s", to.Style.Of(Duration.FromSeconds(mixture.OpenTime)), "definition", law: "DeliveredFuel.OpenTime");
            to.Step("fuel that is delivered", "Q_d", DeliveredFuel.Flow(flow, count, open, cycle), "m³/s", Flow(mixture.Delivered), "static flow for the open time of each cycle", law: "DeliveredFuel.Flow");
        }

        to.Step(
            Engine,
            "λ_e",
            DeliveredFuel.Lambda(Traced.Given("λ", result.Mixture.TargetLambda), at.Injected, Traced.Given("Q_d", mixture.Delivered)),
            "1",
            to.Style.Number(mixture.Lambda),
            "the target, by the fuel that is needed for it and the fuel that is delivered", law: "DeliveredFuel.Lambda");

        string Flow(double value) => to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(value));
    }

    private static Traced Pulse(Derivation to, in SolvedMixture mixture, EngineController controller, Injector injector, Traced count, Traced cycle, Traced density)
    {
        PulseCommanded command = mixture.Command;
        const string Name = "pulse that the controller commands";
        string readable = to.Style.Of(Duration.FromSeconds(command.Pulse));
        string text = controller.Text.In(to.Style);
        double assumed = controller is CalculatingController { Data.HasEthanolSensor: false } calculating ? calculating.AssumedDensity : density.Value;
        double made = double.IsNaN(mixture.Wanted.Fuel) || double.IsNaN(command.StaticFlow)
            ? double.NaN
            : InjectorFlow.Pulse<Real>(command.DeadTime, mixture.Wanted.Fuel * mixture.Trim / assumed, count.Value, cycle.Value, command.StaticFlow).Value;
        if (command.IsLimited || !(Math.Abs(made - command.Pulse) <= SamePulse * command.Pulse))
        {
            return to.Table(Name, "t_k", command.Pulse, "s", readable, command.IsLimited ? $"{text}; cut off at its greatest duty cycle" : text);
        }

        Traced wanted = to.Table("fuel that the controller means to inject", "ṁ_w", mixture.Wanted.Fuel, "kg/s", to.Style.Of(MassFlow.FromKilogramsPerSecond(mixture.Wanted.Fuel)), text);
        if (mixture.Trim != 1)
        {
            wanted *= to.Table("factor of its lambda sensor", "y_k", mixture.Trim, "1", to.Style.Number(mixture.Trim), "closed loop, within its authority");
        }

        const string Believed = "in the controller's data";
        Traced volume = FuelDemandFlow.Volume(
            wanted,
            assumed == density.Value ? density : to.Given("density of the fuel that the controller assumes", "ρ_k", assumed, "kg/m³", to.Style.Of(Density.FromKilogramsPerCubicMeter(assumed)), Believed));
        Traced flow = to.Table("static flow that the controller assumes", "Q_sk", command.StaticFlow, "m³/s", to.Style.InjectorFlow(VolumeFlow.FromCubicMetersPerSecond(command.StaticFlow)), Believed);
        Traced dead = to.Table("dead time that the controller assumes", "t_dk", command.DeadTime, "s", to.Style.Of(Duration.FromSeconds(command.DeadTime)), Believed);
        return to.Step(Name, "t_k", InjectorFlow.Pulse(dead, volume, count, cycle, flow), "s", readable, text, law: "InjectorFlow.Pulse");
    }
}

/// <summary>What the mixture of a point follows from, with symbols of lines above.</summary>
internal readonly record struct MixturePoint<T>(T Injected, T Density, T Ambient, T Manifold);
