using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Tests.Lines;

public class LineTests
{
    private static readonly Temperature Warm = Temperature.FromDegreesCelsius(30);

    private static readonly Gen<VolumeFlow> Flow = Gen.Double[0.1, 1000].Select(flow => VolumeFlow.FromLitersPerHour(flow));

    private static readonly Gen<Length> Bore = Gen.Double[3, 20].Select(bore => Length.FromMillimeters(bore));

    private static readonly Gen<Fuel> AnyFuel = Gen.Double[0, 100].Select(
        share => FuelBlend.EthanolInPetrol(Ratio.FromPercent(share)));

    [Fact]
    public void PressureLoss_AtRest_IsElevationAlone()
    {
        LineLoss loss = Of(8, rise: 0.5).PressureLoss(VolumeFlow.Zero, Fuel.Petrol, Warm);
        Assert.Equal(FlowRegime.Still, loss.Regime);
        Assert.Null(loss.FrictionFactor);
        Assert.Equal(0, loss.Friction.Pascals);
        Assert.Equal(Fuel.Petrol.DensityAt(Warm).KilogramsPerCubicMeter * 9.80665 * 0.5, loss.Total.Pascals, 9);
    }

    [Theory]
    [InlineData(5, FlowRegime.Laminar)]
    [InlineData(40, FlowRegime.Transitional)]
    [InlineData(150, FlowRegime.Turbulent)]
    public void PressureLoss_OfAnEightMillimetreTube_NamesTheRegime(double litersPerHour, FlowRegime regime)
    {
        LineLoss loss = Of(8).PressureLoss(VolumeFlow.FromLitersPerHour(litersPerHour), Fuel.Petrol, Warm);
        Assert.Equal(regime, loss.Regime);
    }

    [Fact]
    public void PressureLoss_ByItsOwnIntermediates_IsDarcyWeisbach() =>
        Gen.Select(Flow, Bore, AnyFuel).Sample((flow, bore, fuel) =>
        {
            Line line = Line.Of(
                "l",
                bore,
                Length.FromMeters(4),
                Roughness.RubberHose,
                [Fitting.Elbow90.Times(2), Fitting.Of("valve", 2.5)],
                Length.FromMeters(-0.3));
            LineLoss loss = line.PressureLoss(flow, fuel, Warm);
            double head = loss.Density.KilogramsPerCubicMeter * Math.Pow(loss.Velocity.MetersPerSecond, 2) / 2;
            Close(loss.FrictionFactor!.Value * 4 / bore.Meters * head, loss.Straight.Pascals);
            Close(line.LossCoefficient * head, loss.Fittings.Pascals);
            Close((2 * Fitting.Elbow90.LossCoefficientIn(bore)) + 2.5, line.LossCoefficient);
            Close(loss.Straight.Pascals + loss.Fittings.Pascals + loss.Elevation.Pascals, loss.Total.Pascals);
            Close(
                loss.Velocity.MetersPerSecond * bore.Meters / fuel.KinematicViscosityAt(Warm).SquareMetersPerSecond,
                loss.ReynoldsNumber);
        });

    [Fact]
    public void PressureLoss_WithMoreFlow_StrictlyGrows() =>
        Gen.Select(Flow, Gen.Double[1e-6, 0.5], Bore, AnyFuel).Sample((flow, more, bore, fuel) =>
            Of(bore.Millimeters).PressureLoss(flow * (1 + more), fuel, Warm).Total
                > Of(bore.Millimeters).PressureLoss(flow, fuel, Warm).Total);

    [Fact]
    public void PressureLoss_WithMoreBore_NeverGrows() =>
        Gen.Select(Flow, Bore, Gen.Double[1e-3, 5], AnyFuel).Sample((flow, bore, more, fuel) =>
            Of(bore.Millimeters + more).PressureLoss(flow, fuel, Warm).Total
                <= Of(bore.Millimeters).PressureLoss(flow, fuel, Warm).Total);

    [Fact]
    public void PressureLoss_OfTwiceTheLine_IsTwice() =>
        Gen.Select(Flow, Bore, AnyFuel).Sample((flow, bore, fuel) =>
        {
            Line once = Line.Of("l", bore, Length.FromMeters(2), Roughness.DrawnTube, [Fitting.Bend90]);
            Line twice = Line.Of("l", bore, Length.FromMeters(4), Roughness.DrawnTube, [Fitting.Bend90.Times(2)]);
            Close(
                2 * once.PressureLoss(flow, fuel, Warm).Total.Pascals, twice.PressureLoss(flow, fuel, Warm).Total.Pascals);
        });

    /// <summary>At one Reynolds number and one relative roughness the loss scales with ρ ν² L/D³.</summary>
    [Fact]
    public void Loss_OfAScaledLine_FollowsReynoldsLaw() =>
        Gen.Select(Gen.Double[1e-6, 1e-3], Gen.Double[1.1, 5], Gen.Double[0.5, 2]).Sample((flow, bigger, thicker) =>
        {
            double small = PipeLoss.Evaluate<Real>(new(0.006, 2, 0.001, 3), flow, 740, 0.5e-6).FrictionLoss;
            double large = PipeLoss.Evaluate<Real>(
                new(0.006 * bigger, 2 * bigger, 0.001, 3), flow * bigger * thicker, 740, 0.5e-6 * thicker).FrictionLoss;
            double expected = small * thicker * thicker / (bigger * bigger);
            Assert.InRange(large, expected * (1 - 1e-11), expected * (1 + 1e-11));
        });

    [Fact]
    public void LossPascals_ForTheSolver_IsTheTypedLossAndOdd() =>
        Gen.Select(Flow, Bore, AnyFuel).Sample((flow, bore, fuel) =>
        {
            Line line = Of(bore.Millimeters, rise: 0.2);
            LineLoss typed = line.PressureLoss(flow, fuel, Warm);
            double density = typed.Density.KilogramsPerCubicMeter;
            double viscosity = typed.KinematicViscosity.SquareMetersPerSecond;
            double loss = line.LossPascals(flow.CubicMetersPerSecond, density, viscosity);
            Close(typed.Friction.Pascals, loss);
            Close(typed.Elevation.Pascals, line.ElevationPascals(density));
            return loss == -line.LossPascals(-flow.CubicMetersPerSecond, density, viscosity);
        });

    [Fact]
    public void LossPascals_ForTheSolver_AllocatesNothing()
    {
        Line line = Of(8);
        double sum = line.LossPascals(1e-5, 740, 0.5e-6);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            sum += line.LossPascals(1e-5, 740, 0.5e-6);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(sum > 0);
    }

    /// <summary>
    /// Laminar up to Re 2,040, fully turbulent from 4,000, and the two named between (see the documentation of
    /// <see cref="FlowRegime"/>).
    /// </summary>
    [Theory]
    [InlineData(0, FlowRegime.Still)]
    [InlineData(1e-6, FlowRegime.Laminar)]
    [InlineData(2040, FlowRegime.Laminar)]
    [InlineData(2040.001, FlowRegime.Transitional)]
    [InlineData(3999.999, FlowRegime.Transitional)]
    [InlineData(4000, FlowRegime.Turbulent)]
    public void Regime_AtTheEndsOfEach_IsNamedAsWritten(double reynolds, FlowRegime regime)
    {
        Line line = Line.Of("l", Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube);
        LineLoss loss = new(line, VolumeFlow.Zero, new PipeState<Real>(0, reynolds, 64, 0, 0, 0), 0, 740, 6e-7);
        Assert.Equal(regime, loss.Regime);
        Assert.Equal(regime == FlowRegime.Still, loss.FrictionFactor is null);
    }

    [Fact]
    public void Roughness_UpToATwentiethOfTheBore_IsTaken()
    {
        Line Of(double micrometres) => Line.Of(
            "l", Length.FromMillimeters(8), Length.FromMeters(1), Length.FromMicrometers(micrometres));
        Assert.Equal(400, Of(400).Roughness.Micrometers, 9);
        Assert.Equal("roughness", Assert.Throws<ArgumentOutOfRangeException>(() => Of(400.1)).ParamName);
    }

    [Fact]
    public void Line_WithoutFittingsOrRise_IsStraightAndLevel()
    {
        Line line = Line.Of("l", Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube);
        Assert.Empty(line.Fittings);
        Assert.Equal((0.0, Length.Zero), (line.LossCoefficient, line.Rise));
        Assert.Equal(0, line.PressureLoss(VolumeFlow.FromLitersPerHour(100), Fuel.Petrol, Warm).Elevation.Pascals);
        Assert.Equal(
            "fittings",
            Assert.Throws<ArgumentNullException>(() => Line.Of(
                "l", Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube, [Fitting.Exit, null!])).ParamName);
    }

    [Fact]
    public void WithBore_OfALine_KeepsTheRestAndARoughnessThatFits()
    {
        Line line = Line.Of(
            "l",
            Length.FromMillimeters(10),
            Length.FromMeters(3),
            Length.FromMillimeters(0.2),
            [Fitting.Of("valve", 2.5)],
            Length.FromMeters(0.4));
        Assert.Equal(0.2, line.WithBore(Length.FromMillimeters(8)).Roughness.Millimeters, 12);
        Line narrow = line.WithBore(Length.FromMillimeters(2));
        Assert.Equal(0.1, narrow.Roughness.Millimeters, 12);
        Assert.Equal(
            ("l", Length.FromMeters(3), 2.5, Length.FromMeters(0.4)),
            (narrow.Name, narrow.Length, narrow.LossCoefficient, narrow.Rise));
    }


    [Fact]
    public void PressureLoss_OfAFuelWithoutViscosity_IsRefusedWithARemedy()
    {
        Fuel bare = Fuel.Of(
            "race fuel",
            Fuel.Petrol.Composition,
            Fuel.Petrol.LowerHeatingValue,
            Fuel.Petrol.DensityAt15C,
            Fuel.Petrol.ExpansionAt15C);
        InvalidOperationException error = Assert.Throws<InvalidOperationException>(
            () => Of(8).PressureLoss(VolumeFlow.FromLitersPerHour(100), bare, Warm));
        Assert.Equal("race fuel has no viscosity. Give it by WithViscosity.", error.Message);
    }

    [Fact]
    public void Line_OfNonsense_IsRefusedByName()
    {
        Refused.Missing("fuel", () => Of(8).PressureLoss(VolumeFlow.FromLitersPerHour(100), null!, Warm));
        Refused.OutOfRange("flow", () => Of(8).PressureLoss(VolumeFlow.FromLitersPerHour(-0.1), Fuel.Petrol, Warm));
        Refused.OutOfRange("flow", () => Of(8).PressureLoss(VolumeFlow.FromLitersPerHour(10_001), Fuel.Petrol, Warm));
        Refused.Missing("name", () => Line.Of(null!, Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube));
    }


    private static Line Of(double millimetres, double rise = 0) =>
        Line.Of(
            "l",
            Length.FromMillimeters(millimetres),
            Length.FromMeters(4),
            Roughness.DrawnTube,
            [Fitting.Entrance, Fitting.Bend90.Times(4)],
            Length.FromMeters(rise));

    private static void Close(double expected, double actual) =>
        Assert.True(Math.Abs(actual - expected) <= 1e-11 * Math.Abs(expected), $"{expected:R} expected, {actual:R} got");
}
