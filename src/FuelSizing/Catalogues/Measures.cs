using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Catalogues;

using Pressure = UnitsNet.Pressure;
using Units = UnitsNet.Units;

/// <summary>The quantities that catalogues give.</summary>
internal static class Measures
{
    public static readonly Measure<VolumeFlow> Flow = Of<VolumeFlow, Units.VolumeFlowUnit>("360 mL/min", VolumeFlow.From);

    public static readonly Measure<Pressure> Pressure = Of<Pressure, Units.PressureUnit>("300 kPa", UnitsNet.Pressure.From);

    public static readonly Measure<Duration> Time = Of<Duration, Units.DurationUnit>("1.2 ms", Duration.From);

    public static readonly Measure<ElectricPotential> Voltage =
        Of<ElectricPotential, Units.ElectricPotentialUnit>("13.5 V", ElectricPotential.From);

    public static readonly Measure<ElectricCurrent> Current =
        Of<ElectricCurrent, Units.ElectricCurrentUnit>("8 A", ElectricCurrent.From);

    public static readonly Measure<Density> Density = Of<Density, Units.DensityUnit>("684 kg/m³", UnitsNet.Density.From);

    public static readonly Measure<Ratio> Share = Of<Ratio, Units.RatioUnit>("95 %", Ratio.From);

    private static Measure<T> Of<T, TUnit>(string example, Func<QuantityValue, TUnit, T> from)
        where T : struct
        where TUnit : struct, Enum =>
        new(example, (value, text) => UnitText.TryParse(text, out TUnit unit) ? from(value, unit) : null);
}
