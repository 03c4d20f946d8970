using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>A second stream of fuel: what it sprays, and the mixture with it and without it.</summary>
public sealed record SecondStreamData : PartlyKnownData
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>True where it flows.</summary>
    public required bool Acts { get; init; }

    /// <summary>The share of the whole stream that flows.</summary>
    public required double FlowingShare { get; init; }

    /// <summary>At the nozzles while the whole stream flows.</summary>
    public required double? NozzleGaugePascals { get; init; }

    /// <summary>Across the nozzles.</summary>
    public required double? NozzleDifferentialPascals { get; init; }

    /// <summary>Liquid that is sprayed.</summary>
    public required double? FlowCubicMetersPerSecond { get; init; }

    /// <summary>Lower bound of it.</summary>
    public required double? MinimumFlowCubicMetersPerSecond { get; init; }

    /// <summary>Upper bound of it.</summary>
    public required double? MaximumFlowCubicMetersPerSecond { get; init; }

    /// <summary>The same by mass.</summary>
    public required double? LiquidKilogramsPerSecond { get; init; }

    /// <summary>The fuel in it.</summary>
    public required double? FuelKilogramsPerSecond { get; init; }

    /// <summary>Main fuel that is injected with it.</summary>
    public required double? MainFuelKilogramsPerSecond { get; init; }

    /// <summary>Share of main fuel that the controller takes back here.</summary>
    public required double TakenBackShare { get; init; }

    /// <summary>Its share of the mass of all fuel, water not counted.</summary>
    public required double? FuelMassShare { get; init; }

    /// <summary>Its share of the heat of both fuels.</summary>
    public required double? HeatShare { get; init; }

    /// <summary>Heat that the stated share takes from the charge as it evaporates.</summary>
    public required double? EvaporationWatts { get; init; }

    /// <summary>What the air of the engine grows by as that evaporates, as a share of it.</summary>
    public required double AirGainShare { get; init; }

    /// <summary>Lambda with both streams.</summary>
    public required double? Lambda { get; init; }

    /// <summary>The richest that it can be.</summary>
    public required double? MinimumLambda { get; init; }

    /// <summary>The leanest that it can be while the stream flows.</summary>
    public required double? MaximumLambda { get; init; }

    /// <summary>The leanest that it is if the stream stops and the main fuel stays as it is.</summary>
    public required double? LambdaIfStopped { get; init; }

    /// <summary>The least that the pump delivers against the pressure that is held.</summary>
    public required double? MinimumPumpFlowCubicMetersPerSecond { get; init; }

    /// <summary>Time in which a full tank is emptied at this flow, at the least.</summary>
    public required double? MinimumTankSeconds { get; init; }

    /// <summary>Flow and mixture in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static SecondStreamData Of(SecondStreamResult stream)
    {
        Gaps gaps = new();
        Statement reason = stream.Acts
            ? Statement.Of("data.stream-not-known", $"data of the second stream's pump or nozzles, or of the main fuel's injection, does not cover this point")
            : Statement.Of("data.stream-off", $"the second stream does not flow here");
        Statement noFuel = Statement.Of("data.no-fuel", $"no fuel is delivered, so that lambda has no bound");
        return new()
        {
            Name = stream.Stream.Name,
            Acts = stream.Acts,
            FlowingShare = stream.Share.DecimalFractions,
            NozzleGaugePascals = gaps.Figure(nameof(NozzleGaugePascals), stream.NozzleGauge?.Pascals, reason),
            NozzleDifferentialPascals = gaps.Figure(nameof(NozzleDifferentialPascals), stream.NozzleDifferential?.Pascals, reason),
            FlowCubicMetersPerSecond = gaps.Figure(nameof(FlowCubicMetersPerSecond), stream.Flow?.CubicMetersPerSecond, reason),
            MinimumFlowCubicMetersPerSecond = gaps.Figure(nameof(MinimumFlowCubicMetersPerSecond), stream.MinimumFlow.CubicMetersPerSecond, reason),
            MaximumFlowCubicMetersPerSecond = gaps.Figure(nameof(MaximumFlowCubicMetersPerSecond), stream.MaximumFlow?.CubicMetersPerSecond, reason),
            LiquidKilogramsPerSecond = gaps.Figure(nameof(LiquidKilogramsPerSecond), stream.LiquidMassFlow?.KilogramsPerSecond, reason),
            FuelKilogramsPerSecond = gaps.Figure(nameof(FuelKilogramsPerSecond), stream.FuelMassFlow?.KilogramsPerSecond, reason),
            MainFuelKilogramsPerSecond = gaps.Figure(nameof(MainFuelKilogramsPerSecond), stream.MainFuelMassFlow?.KilogramsPerSecond, reason),
            TakenBackShare = stream.TakenBack.DecimalFractions,
            FuelMassShare = gaps.Figure(nameof(FuelMassShare), stream.ShareOfFuel?.DecimalFractions, reason),
            HeatShare = gaps.Figure(nameof(HeatShare), stream.ShareOfHeat?.DecimalFractions, reason),
            EvaporationWatts = gaps.Figure(nameof(EvaporationWatts), (double?)stream.EvaporationHeat?.Watts, reason),
            AirGainShare = stream.AirGain.DecimalFractions,
            Lambda = gaps.Figure(nameof(Lambda), stream.Lambda, reason, noFuel),
            MinimumLambda = gaps.Figure(nameof(MinimumLambda), stream.MinimumLambda, reason, noFuel),
            MaximumLambda = gaps.Figure(nameof(MaximumLambda), stream.MaximumLambda, reason, noFuel),
            LambdaIfStopped = gaps.Figure(nameof(LambdaIfStopped), stream.LambdaIfStopped, reason, noFuel),
            MinimumPumpFlowCubicMetersPerSecond = gaps.Figure(
                nameof(MinimumPumpFlowCubicMetersPerSecond),
                stream.MinimumPumpFlow?.CubicMetersPerSecond,
                Statement.Of("data.no-stream-pump", $"no pump of the second stream or no pressure that it is held at is given, or its data does not cover that")),
            MinimumTankSeconds = gaps.Figure(
                nameof(MinimumTankSeconds),
                stream.MinimumTankDuration?.Seconds,
                Statement.Of("data.no-tank-duration", $"no tank of the second stream is given, nothing flows, or its flow has no upper bound")),
            Text = StatementData.Of(stream.Text),
            NotKnown = gaps.Found,
        };
    }
}
