using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Lines;

/// <summary>How far the fuel at the pump's inlet is from boiling.</summary>
/// <remarks>
/// Below zero the fuel boils in the line or at the inlet and the pump loses flow. A pump needs some margin of its own over
/// zero; take it from the pump's maker.
/// </remarks>
public sealed class SuctionMargin
{
    private SuctionMargin(Pressure inletAbsolute, Pressure vapourPressure, Pressure margin, bool isEstimate) =>
        (InletAbsolute, VapourPressure, Margin, IsEstimate) = (inletAbsolute, vapourPressure, margin, isEstimate);

    /// <summary>Absolute pressure at the pump's inlet.</summary>
    public Pressure InletAbsolute { get; }

    /// <summary>The fuel's vapour pressure at its temperature, absolute.</summary>
    public Pressure VapourPressure { get; }

    /// <summary>Net positive suction pressure: inlet pressure less vapour pressure.</summary>
    public Pressure Margin { get; }

    /// <summary>True if the vapour pressure is an estimate (<see cref="Fuel.IsVapourPressureEstimatedAt"/>).</summary>
    public bool IsEstimate { get; }

    /// <summary>True if the fuel boils before it is in the pump.</summary>
    public bool Boils => Margin <= Pressure.Zero;

    /// <summary>The margin: p_tank + ρ g h − Δp − p_v.</summary>
    /// <param name="tankAbsolute">Absolute pressure over the fuel in the tank, 40 to 130 kPa: ambient in a vented one.</param>
    /// <param name="fuelAboveInlet">
    /// h, height of the fuel's surface over the pump's inlet, −2 to 2 m; below zero where the pump sits higher. Take the
    /// lowest level at which the car is driven.
    /// </param>
    /// <param name="suctionLoss">
    /// Δp lost between tank and inlet by flow, 0 to 200 kPa: <see cref="LineLoss.Friction"/> of the suction line, and the
    /// strainer. Height is in h.
    /// </param>
    /// <param name="fuel">It must have a vapour pressure.</param>
    /// <param name="temperature">Of the fuel, −30 to 80 °C; return-style systems warm the tank.</param>
    /// <returns>The margin.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no vapour pressure.</exception>
    public static SuctionMargin Of(
        Pressure tankAbsolute, Length fuelAboveInlet, Pressure suctionLoss, Fuel fuel, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        Guard.Between(
            tankAbsolute,
            Pressure.FromKilopascals(40),
            Pressure.FromKilopascals(130),
            "Give the absolute pressure over the fuel, the barometer's reading for a vented tank.",
            nameof(tankAbsolute));
        Guard.Between(
            fuelAboveInlet,
            Length.FromMeters(-2),
            Length.FromMeters(2),
            "Give the height of the fuel's surface over the pump's inlet.",
            nameof(fuelAboveInlet));
        Guard.Between(
            suctionLoss,
            Pressure.FromKilopascals(0),
            Pressure.FromKilopascals(200),
            "Give what flow costs between tank and inlet, height apart.",
            nameof(suctionLoss));
        double kelvins = Fuel.WithinRange(temperature, nameof(temperature)).Kelvins;
        Real vapour = fuel.VapourPressureAtKelvins(kelvins);
        Real inlet = Suction.InletPressure<Real>(
            tankAbsolute.Pascals,
            PipeFlow.Column<Real>(fuel.DensityAtKelvins(kelvins), fuelAboveInlet.Meters),
            suctionLoss.Pascals);
        return new(
            Pressure.FromPascals(inlet.Value),
            Pressure.FromPascals(vapour.Value),
            Pressure.FromPascals(Suction.NetPositive(inlet, vapour).Value),
            fuel.IsVapourPressureEstimatedAt(temperature));
    }

    /// <summary>Margin, inlet and vapour pressure.</summary>
    /// <returns>For instance <c>34.2 kPa: inlet 96.5 kPa absolute, vapour pressure 62.3 kPa</c>.</returns>
    public override string ToString() =>
        $"{Readable.PressureLoss(Margin)}: inlet {Readable.PressureLoss(InletAbsolute)} absolute, vapour pressure {Readable.PressureLoss(VapourPressure)}";
}
