using System.Collections.Frozen;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>One kind of figure by its name, so that a statement can hold a quantity and say later in which unit to write it.</summary>
internal abstract class FigureKind(string name)
{
    private static readonly FigureKind[] InOrder =
    [
        new Of<Pressure>("pressure", units => units.Pressure),
        new Of<Pressure>("boost", units => units.Boost),
        new Of<Pressure>("pressure-loss", units => units.PressureLoss),
        new Of<Pressure>("pressure-change", units => units.PressureChange),
        new Of<Pressure>("pressure-offset", units => units.PressureOffset),
        new Of<VolumeFlow>("pump-flow", units => units.PumpFlow),
        new Of<VolumeFlow>("injector-flow", units => units.InjectorFlow),
        new Of<MassFlow>("mass-flow", units => units.MassFlow),
        new Of<Mass>("mass", units => units.Mass),
        new Of<Power>("power", units => units.Power),
        new Of<Power>("heat", units => units.Heat),
        new Of<Power>("wire-heat", units => units.WireHeat),
        new Of<LinearPowerDensity>("heat-per-length", units => units.HeatPerLength),
        new Of<Temperature>("temperature", units => units.Temperature),
        new Of<Density>("density", units => units.Density),
        new Of<Density>("gas-density", units => units.GasDensity),
        new Of<SpecificEnergy>("heating-value", units => units.HeatingValue),
        new Of<BrakeSpecificFuelConsumption>("consumption", units => units.Consumption),
        new Of<BrakeSpecificFuelConsumption>("consumption-estimate", units => units.ConsumptionEstimate),
        new Of<Length>("length", units => units.Length),
        new Of<Length>("bore", units => units.Bore),
        new Of<RotationalSpeed>("speed", units => units.Speed),
        new Of<Duration>("pulse", units => units.Pulse),
        new Of<Duration>("pulse-change", units => units.PulseChange),
        new Of<Duration>("time", units => units.Time),
        new Of<Ratio>("share", units => units.Share),
        new Of<Ratio>("duty-cycle", units => units.DutyCycle),
        new Of<Ratio>("chance", units => units.Chance),
        new Of<Ratio>("change", units => units.Change),
        new Of<ElectricPotential>("voltage", units => units.Voltage),
        new Of<ElectricPotential>("voltage-drop", units => units.VoltageDrop),
        new Of<ElectricCurrent>("current", units => units.Current),
        new Of<ElectricResistance>("resistance", units => units.Resistance),
        new Of<Area>("area", units => units.Area),
        new Of<Volume>("displacement", units => units.Displacement),
        new Of<Speed>("velocity", units => units.Velocity),
        new Of<Torque>("torque", units => units.Torque),
        new Of<DynamicViscosity>("dynamic-viscosity", units => units.DynamicViscosity),
        new Of<KinematicViscosity>("kinematic-viscosity", units => units.KinematicViscosity),
        new Of<ElectricResistivity>("resistivity", units => units.Resistivity),
        new Of<CoefficientOfThermalExpansion>("expansion", units => units.Expansion),
    ];

    private static readonly FrozenDictionary<string, FigureKind> ByName = InOrder.ToFrozenDictionary(kind => kind.Name);

    private static readonly FrozenDictionary<Type, FigureKind> First = InOrder.DistinctBy(kind => kind.Quantity).ToFrozenDictionary(kind => kind.Quantity);

    /// <summary>Its name, for instance <c>pump-flow</c>.</summary>
    public string Name { get; } = name;

    /// <summary>The type of quantity that it writes.</summary>
    public abstract Type Quantity { get; }

    /// <summary>A kind by its name; it must write that type of quantity.</summary>
    public static FigureKind Named(string name, Type quantity)
    {
        ArgumentNullException.ThrowIfNull(name);
        return ByName.TryGetValue(name, out FigureKind? kind) && kind.Quantity == quantity
            ? kind
            : throw new ArgumentException(
                $"kind was \"{name}\"; {quantity.Name} is written as {string.Join(", ", InOrder.Where(one => one.Quantity == quantity).Select(one => one.Name))}.",
                nameof(name));
    }

    /// <summary>The kind of a quantity that names none: the first of its type.</summary>
    public static FigureKind DefaultOf(Type quantity) => First[quantity];

    /// <summary>Number and unit.</summary>
    public abstract string Text(object figure, TextStyle style, FigureRounding? rounding = null);

    /// <summary>The number that two figures are compared by: metric, to twelve figures, so that 2.3 bar is 230 kPa.</summary>
    public abstract double Compared(object figure);

    private sealed class Of<T>(string name, Func<FigureUnits, DisplayUnit<T>> unit) : FigureKind(name)
        where T : struct, IQuantity
    {
        public override Type Quantity => typeof(T);

        public override string Text(object figure, TextStyle style, FigureRounding? rounding) => style.Text(unit(style.Units), (T)figure, rounding);

        public override double Compared(object figure)
        {
            double value = unit(FigureUnits.Metric).ValueOf((T)figure);
            if (value == 0 || !double.IsFinite(value))
            {
                return value;
            }

            double scale = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))) - 11);
            return Math.Round(value / scale) * scale;
        }
    }
}
