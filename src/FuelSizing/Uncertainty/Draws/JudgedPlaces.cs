using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Where an uncertain system is judged: at an operating point, or at speeds along a boost line.</summary>
/// <remarks>The boost of a line is that of the drawn engine in the drawn air: a belt-driven compressor makes more of cold air.</remarks>
internal sealed class JudgedPlaces
{
    // Evenly spaced along a line, besides every speed at which something about the nominal system has a kink.
    private const int EvenSpeeds = 25;

    private readonly OperatingPoint? _point;
    private readonly RotationalSpeed[] _speeds;
    private readonly Conditions _conditions;

    private JudgedPlaces(OperatingPoint? point, BoostLine? line, RotationalSpeed[] speeds, Conditions conditions, Statement text) =>
        (_point, Line, _speeds, _conditions, Text) = (point, line, speeds, conditions, text);

    /// <summary>The line; none at a point.</summary>
    public BoostLine? Line { get; }

    /// <summary>For instance <c>at 6,000 rev/min, 0.50 bar</c>.</summary>
    public Statement Text { get; }

    /// <summary>How many.</summary>
    public int Count => _speeds.Length;

    /// <summary>One point.</summary>
    public static JudgedPlaces At(OperatingPoint point) =>
        new(point, null, [point.Speed], point.Conditions, Statement.Of("place.point", $"at {point}"));

    /// <summary>A boost line from one speed to another.</summary>
    public static JudgedPlaces Along(
        FuelSystem system, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions conditions)
    {
        (double from, double to) = (slowest.RevolutionsPerSecond, fastest.RevolutionsPerSecond);
        double[] speeds =
        [
            .. Enumerable.Range(1, EvenSpeeds - 2).Select(step => from + ((to - from) * step / (EvenSpeeds - 1)))
                .Concat(LineKnots.Of(system, line, conditions, from, to))
                .Distinct()
                .Order(),
        ];
        return new(
            null,
            line,
            [slowest, .. speeds.Select(speed => RotationalSpeed.FromRevolutionsPerSecond(speed)), fastest],
            conditions,
            Statement.Of("place.line", $"along the boost line from {slowest} to {fastest}"));
    }

    /// <summary>The points on a drawn engine.</summary>
    public OperatingPoint[] Of(FuelDemandModel drawn, in Perturbation draw)
    {
        Conditions conditions = draw.Of(_conditions);
        OperatingPoint[] points = new OperatingPoint[_speeds.Length];
        for (int place = 0; place < points.Length; place++)
        {
            Pressure boost = _point?.Boost ?? Line!.At(_speeds[place], drawn, conditions.Atmosphere);
            points[place] = OperatingPoint.At(_speeds[place], draw.Of(boost), conditions);
        }

        return points;
    }
}
