using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>What the engine asks for at a point, whatever parts bring it.</summary>
/// <param name="Point">Where.</param>
/// <param name="Chain">Every step from boost to fuel.</param>
/// <param name="Basis">Which of the two estimates counts.</param>
/// <param name="Density">Of the fuel, kg/m³.</param>
/// <param name="KinematicViscosity">Of the fuel, m²/s; zero where there are no lines.</param>
/// <param name="Injected">Of the main fuel into the whole engine, m³/s: what it needs, less what is taken back for a second stream.</param>
/// <param name="Required">Of the main fuel, as if it had to feed the engine alone, m³/s.</param>
internal readonly record struct PointDemand(
    PointPlace Point,
    DemandState<Real> Chain,
    DemandBasis Basis,
    double Density,
    double KinematicViscosity,
    double Injected,
    double Required)
{
    /// <summary>Share of the main fuel that the controller takes back for a second stream.</summary>
    public double TakenBack { get; init; }

    /// <summary>The second stream there; none where there is none, or where its evaporation in the charge is left out.</summary>
    public PointStream? Stream { get; init; }

    /// <summary>The same without the second stream's evaporation in the charge, as where it has stopped; what is taken back stays so.</summary>
    public PointDemand Alone => Stream?.Alone ?? this;

    /// <summary>The same with quantities, made when it is asked for.</summary>
    public FuelDemand Demand => new(Chain, Basis);

    /// <summary>The same with the main fuel that its chain asks for, less the share that is taken back.</summary>
    public PointDemand Feeding(double takenBack)
    {
        double required = FuelDemandFlow.Volume<Real>(FuelDemand.Chosen(Chain, Basis), Density);
        return this with { Required = required, Injected = required * (1 - takenBack), TakenBack = takenBack };
    }

    /// <summary>The same with a second stream: with the most of it that can evaporate in the charge, where a share is stated.</summary>
    public PointDemand With(SolvedStream solved)
    {
        double share = solved.Stream.EvaporatedShare.DecimalFractions;
        if (!solved.Acts || !(share > 0))
        {
            return this with { Stream = new(this, solved, 1) };
        }

        DemandState<Real> cooled = DemandChain.AlsoCooled<Real>(
            Chain, share, solved.Stream.Fluid.HeatOfVaporisation!.Value.JoulesPerKilogram, solved.MaximumMassFlow);
        return (this with { Chain = cooled }).Feeding(TakenBack) with { Stream = new(this, solved, cooled.AirMassFlow / Chain.AirMassFlow) };
    }
}

/// <summary>A second stream at an operating point.</summary>
/// <param name="alone">The demand as where it has stopped.</param>
/// <param name="solved">Its pump and nozzles.</param>
/// <param name="airGain">Air with its evaporation ÷ air without.</param>
internal sealed class PointStream(in PointDemand alone, SolvedStream solved, double airGain)
{
    /// <summary>The demand as where it has stopped: without its evaporation in the charge.</summary>
    public PointDemand Alone { get; } = alone;

    /// <summary>Its pump and nozzles.</summary>
    public SolvedStream Solved { get; } = solved;

    /// <summary>Air with its evaporation ÷ air without.</summary>
    public double AirGain { get; } = airGain;
}
