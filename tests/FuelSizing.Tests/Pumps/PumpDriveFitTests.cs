using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>
/// Kind and winding from two curves, against pumps that are simulated from their definitions (<see cref="SimulatedPump"/>). No published pair of curves
/// of one fuel pump with its winding was found.
/// </summary>
public class PumpDriveFitTests
{
    private static readonly Ratio OnePercent = Ratio.FromPercent(1);

    /// <summary>Readings without an error: the winding itself, and the other kind is told from it.</summary>
    [Fact]
    public void Fit_OfExactReadings_FindsKindAndWinding() => SimulatedPump.Any.Sample(
        simulated =>
        {
            PumpDriveFit fit = PumpDriveFit.Of(simulated.CurveAt(14.4), simulated.CurveAt(11.6), Ratio.FromPercent(0.5), Ratio.FromPercent(0.5));
            PumpKindFit own = simulated.Kind == PumpKind.Turbine ? fit.Turbine : fit.Displacement!;
            Assert.True(own.Fits);
            Assert.Equal(simulated.Ohms, own.Winding.Ohms, 2e-3);
            Assert.InRange(simulated.Ohms, own.MinimumWinding?.Ohms ?? 0, own.MaximumWinding?.Ohms ?? 9);
            Assert.Equal(simulated.Kind, fit.Drive?.Kind);
        },
        iter: 100);

    /// <summary>
    /// Benches with readings 1 % off: the interval holds the winding in 95 of 100, here within three counting errors of 300 (of 4,000 it was 95.5 %), and the true
    /// kind is excluded in 1 of 100.
    /// </summary>
    [Fact]
    public void Interval_OverManyBenches_HoldsTheWindingAsOftenAsStated()
    {
        Random random = new(4711);
        (int held, int kept, int benches) = (0, 0, 300);
        for (int bench = 0; bench < benches; bench++)
        {
            SimulatedPump pump = bench % 2 == 0
                ? new SimulatedDisplacement(120 + (bench % 7 * 20), 0.12 + (bench % 5 * 0.04), 0.5, 2.5, 1.6)
                : new SimulatedTurbine(120 + (bench % 7 * 20), 0.1 + (bench % 5 * 0.03), 700, 4, 1);
            PumpDriveFit fit = PumpDriveFit.Of(Read(pump, 10.9), Read(pump, 14.6), OnePercent, OnePercent);
            PumpKindFit own = pump.Kind == PumpKind.Turbine ? fit.Turbine : fit.Displacement!;
            held += pump.Ohms >= (own.MinimumWinding?.Ohms ?? 0) && pump.Ohms <= (own.MaximumWinding?.Ohms ?? 9) ? 1 : 0;
            kept += own.Fits ? 1 : 0;
        }

        Assert.InRange(held / (double)benches, 0.912, 0.988);
        Assert.InRange(kept / (double)benches, 0.97, 1);

        PumpCurve Read(SimulatedPump pump, double volts)
        {
            (double Rise, double Flow, double Current)[] points = [.. pump.At(volts)];
            (double free, double most) = (points[0].Flow, points.Max(point => point.Current));
            double[] flows = [.. points.Select(point => Math.Max(0, point.Flow + (0.01 * free * Normal())))];
            double[] falling = [.. flows.Select((_, at) => flows.Skip(at).Max())];
            return PumpCurve.WithCurrent("bench", Wren.Volt(volts), [.. points.Select((point, at) => (
                Pressure.FromPascals(point.Rise),
                VolumeFlow.FromLitersPerHour(falling[at]),
                ElectricCurrent.FromAmperes(point.Current + (0.01 * most * Normal()))))]);
        }

        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    /// <summary>Two readings of one flow are a curve that falls too little to see, and no fault.</summary>
    [Fact]
    public void Fit_OfReadingsThatAreEqual_IsMade()
    {
        PumpCurve Equal(double volts, double more) => PumpCurve.WithCurrent(
            "equal",
            Wren.Volt(volts),
            [.. new[] { (0, 125.3), (120, 125.3), (240, 97.1), (360, 97.1) }.Select((point, at) => (
                Wren.Kpa(point.Item1), VolumeFlow.FromLitersPerHour(point.Item2 + more), ElectricCurrent.FromAmperes(3 + at)))]);
        Assert.True(PumpDriveFit.Of(Equal(11, 0), Equal(14, 34.6), OnePercent, OnePercent).Displacement!.Fits);
    }

    /// <summary>Rough readings at voltages near to each other leave both kinds; two pumps are neither.</summary>
    [Fact]
    public void Fit_OfPoorOrMixedCurves_SaysSo()
    {
        SimulatedPump turbine = new SimulatedTurbine(150, 0.15, 640, 4, 0.2);
        PumpDriveFit poor = PumpDriveFit.Of(Plain(turbine, 13), turbine.CurveAt(12.1), Ratio.FromPercent(15), Ratio.FromPercent(15));
        Assert.True(poor.Turbine.Fits && poor.Displacement!.Fits);
        Assert.Null(poor.Drive);
        Assert.Equal("pump-drive-fit.both", poor.Text.Code);

        PumpDriveFit mixed = PumpDriveFit.Of(
            turbine.CurveAt(11), new SimulatedTurbine(300, 0.15, 640, 4, 0.2).CurveAt(14), OnePercent, OnePercent);
        Assert.Null(mixed.Drive);
        Assert.Equal("pump-drive-fit.neither", mixed.Text.Code);
    }

    [Fact]
    public void Fit_OfWhatSaysNothing_IsRefused()
    {
        SimulatedPump pump = new SimulatedDisplacement(150, 0.2, 0.5, 2.5, 1.6);
        Refused.OutOfRange("other", () => PumpDriveFit.Of(pump.CurveAt(13), pump.CurveAt(13.5), OnePercent, OnePercent));
        Refused.OutOfRange("flowAccuracy", () => PumpDriveFit.Of(pump.CurveAt(11), pump.CurveAt(13.5), Ratio.FromPercent(0.05), OnePercent));
        Assert.Contains("has no current", Assert.Throws<ArgumentException>(() => PumpDriveFit.Of(Plain(pump, 11), pump.CurveAt(13.5), OnePercent, OnePercent)).Message, StringComparison.Ordinal);
        PumpCurve far = PumpCurve.At("far", Wren.Volt(14), (Wren.Kpa(450), VolumeFlow.FromLitersPerHour(50)), (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(10)));
        Assert.Contains("share 1 pressures", Assert.Throws<ArgumentException>(() => PumpDriveFit.Of(pump.CurveAt(11), far, OnePercent, OnePercent)).Message, StringComparison.Ordinal);
    }

    /// <summary>A curve that begins at 150 kPa says nothing of what is displaced against no pressure.</summary>
    [Fact]
    public void Fit_OfACurveThatBeginsLate_TriesTurbinesAlone()
    {
        SimulatedPump turbine = new SimulatedTurbine(150, 0.15, 900, 4, 1);
        PumpCurve Late(double volts) => PumpCurve.WithCurrent("late", Wren.Volt(volts), [.. turbine.At(volts).Where(point => point.Rise > 90e3).Select(point => (
            Pressure.FromPascals(point.Rise), VolumeFlow.FromLitersPerHour(point.Flow), ElectricCurrent.FromAmperes(point.Current)))]);
        PumpDriveFit fit = PumpDriveFit.Of(Late(11.5), Late(14), OnePercent, OnePercent);
        Assert.Null(fit.Displacement);
        Assert.True(fit.Turbine.Fits);
        Assert.Equal(0.15, fit.Turbine.Winding.Ohms, 2e-3);
        Assert.Equal("pump-drive-fit.turbine-untried", fit.Text.Code);
    }

    private static PumpCurve Plain(SimulatedPump pump, double volts) => PumpCurve.At(
        "plain", Wren.Volt(volts), [.. pump.At(volts).Select(point => (Pressure.FromPascals(point.Rise), VolumeFlow.FromLitersPerHour(point.Flow)))]);
}
