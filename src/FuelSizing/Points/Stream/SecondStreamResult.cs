using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>A second stream at one operating point: what it sprays, its share of fuel and heat, and the mixture with it and without it.</summary>
/// <remarks>Where its pump's or nozzles' data ends, or its density is not measured, figures have a lower and an upper bound; figures without are as results show them.</remarks>
public sealed class SecondStreamResult : IReadable
{
    private readonly SolvedStream _solved;
    private readonly StreamMixture _both;
    private readonly double _mainMass;
    private readonly double _mainHeat;

    internal SecondStreamResult(SystemParts parts, PointStream stream, in SolvedMixture mixture)
    {
        _solved = stream.Solved;
        _both = StreamMixture.Of(parts, stream, mixture);
        _mainMass = mixture.Delivered * stream.Alone.Density;
        _mainHeat = parts.Demand.Consumption.Fuel.LowerHeatingValue.JoulesPerKilogram;
        TakenBack = Ratio.FromDecimalFractions(stream.Alone.TakenBack);
        AirGain = Ratio.FromDecimalFractions(stream.AirGain - 1);
    }

    /// <summary>What was solved.</summary>
    public SecondStream Stream => _solved.Stream;

    /// <summary>True where it flows.</summary>
    public bool Acts => _solved.Acts;

    /// <summary>The share of the whole stream that flows.</summary>
    public Ratio Share => Ratio.FromDecimalFractions(_solved.Share);

    /// <summary>Gauge pressure at the nozzles while the whole stream flows; none where it does not flow, or the pump's data does not cover it.</summary>
    public Pressure? NozzleGauge => Known(_solved.Pressure) is { } gauge ? Pressure.FromPascals(gauge) : null;

    /// <summary>Across the nozzles: pressure at them less that in what they spray into; none where it is not known.</summary>
    public Pressure? NozzleDifferential => Known(_solved.Pressure) is { } gauge ? Pressure.FromPascals(gauge - _solved.BackPressure) : null;

    /// <summary>Liquid that is sprayed; none where it is not known.</summary>
    public VolumeFlow? Flow => Volume(_solved.Flow);

    /// <summary>Lower bound of it.</summary>
    public VolumeFlow MinimumFlow => VolumeFlow.FromCubicMetersPerSecond(_solved.MinimumFlow);

    /// <summary>Upper bound of it; none where it is not known.</summary>
    public VolumeFlow? MaximumFlow => Volume(_solved.MaximumFlow);

    /// <summary>The same by mass; none where it is not known.</summary>
    public MassFlow? LiquidMassFlow => Mass(_solved.MassFlow);

    /// <summary>The fuel in it; none where it is not known.</summary>
    public MassFlow? FuelMassFlow => Mass(_solved.MassFlow * Stream.Fluid.MassShare);

    /// <summary>Main fuel that is injected beside it; none where it is not known.</summary>
    public MassFlow? MainFuelMassFlow => Mass(_mainMass);

    /// <summary>Share of main fuel that the controller takes back here.</summary>
    public Ratio TakenBack { get; }

    /// <summary>Its share of the mass of all fuel, water not counted; none where that is not known.</summary>
    public Ratio? ShareOfFuel => Known(_solved.MassFlow * Stream.Fluid.MassShare) is { } own && own + _mainMass > 0 ? Ratio.FromDecimalFractions(own / (own + _mainMass)) : null;

    /// <summary>Its share of the heat of both fuels, by lower heating value; none where that is not known.</summary>
    public Ratio? ShareOfHeat => Known(TwoFuels.HeatShare<Real>(_mainHeat, _mainMass, Stream.Fluid.HeatingValue, _solved.MassFlow)) is { } share
        ? Ratio.FromDecimalFractions(share)
        : null;

    /// <summary>Heat that the stated share takes from the charge as it evaporates; none where it is not known.</summary>
    public Power? EvaporationHeat => Stream.EvaporatedShare > Ratio.Zero && Known(_solved.MassFlow) is { } flow
        ? Power.FromWatts(Stream.EvaporatedShare.DecimalFractions * Stream.Fluid.HeatOfVaporisation!.Value.JoulesPerKilogram * flow)
        : Stream.EvaporatedShare > Ratio.Zero ? null : Power.Zero;

    /// <summary>What the air of the engine grows by as that evaporates, as a share of it: with the most that can be sprayed.</summary>
    public Ratio AirGain { get; }

    /// <summary>Lambda with both streams; none where it is not known.</summary>
    public double? Lambda => Known(_both.Lambda);

    /// <summary>The richest that it can be: the most that can be sprayed, and no evaporation that draws more air.</summary>
    public double? MinimumLambda => Known(_both.Richest);

    /// <summary>The leanest that it can be while the stream flows: the least that can be sprayed, and the evaporation that is stated.</summary>
    public double? MaximumLambda => Known(_both.Leanest);

    /// <summary>The leanest that it is if the stream stops and the main fuel stays as it is; none where it is not known.</summary>
    public double? LambdaIfStopped => Known(_both.Stopped);

    /// <summary>The least that the pump delivers against the pressure that is held; none without a pump or such a pressure, or where its data does not cover that.</summary>
    public VolumeFlow? MinimumPumpFlow => Volume(_solved.MinimumDelivered);

    /// <summary>Time in which a full tank is emptied at this flow, at the least; none without a tank, where nothing flows, or where the flow has no upper bound.</summary>
    public Duration? MinimumTankDuration => Stream.UsableVolume is { } tank && Known(_solved.MaximumFlow) is > 0 and { } flow
        ? Duration.FromSeconds(SurgeTankVolume.TimeToEmpty<Real>(tank.CubicMeters, flow).Value)
        : null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Flow, mixture with it and without it, as a code with its figures.</summary>
    public Statement Text => (Acts, Flow, Lambda, LambdaIfStopped) switch
    {
        (false, _, _, _) => Statement.Of("stream.off", $"{Stream.Name} does not flow: it begins at {Stream.Begin:boost}"),
        (_, { } flow, { } lambda, { } stopped) => Statement.Of(
            "stream.flows", $"{Stream.Name} sprays {flow:injector-flow}: lambda {lambda:0.000} with it, {stopped:0.000} if it stops"),
        (_, { } flow, _, _) => Statement.Of("stream.mixture-unknown", $"{Stream.Name} sprays {flow:injector-flow}; lambda with it cannot be said"),
        _ => Statement.Of("stream.unknown", $"what {Stream.Name} sprays cannot be said: data of its pump or nozzles does not cover this point"),
    };

    /// <summary>Flow, mixture with it and without it.</summary>
    /// <returns>For instance <c>methanol sprays 398 mL/min: lambda 0.742 with it, 0.820 if it stops</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static double? Known(double value) => double.IsNaN(value) ? null : value;

    private static VolumeFlow? Volume(double flow) => Known(flow) is { } known ? VolumeFlow.FromCubicMetersPerSecond(known) : null;

    private static MassFlow? Mass(double flow) => Known(flow) is { } known ? MassFlow.FromKilogramsPerSecond(known) : null;
}
