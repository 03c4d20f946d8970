using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>A display unit for each kind of figure.</summary>
/// <remarks>
/// Change one with <c>FigureUnits.Metric with { Pressure = … }</c>. A quantity may have several kinds of figure: boost is a pressure, but is written
/// in bar where rail pressure is written in kPa. Injectors' flows stay in mL/min, bores in mm, wires in mm², voltages in V in both sets, as data
/// sheets state them.
/// </remarks>
public sealed record FigureUnits
{
    private static readonly DisplayUnit<Power> Watts = new("W", "N0", p => (double)p.Watts, v => UnitsNet.Power.FromWatts(v));
    private static readonly DisplayUnit<Pressure> Kilopascals = new("kPa", "N0", p => p.Kilopascals, v => UnitsNet.Pressure.FromKilopascals(v));
    private static readonly DisplayUnit<Pressure> Psi =
        new("psi", "N1", p => p.PoundsForcePerSquareInch, v => UnitsNet.Pressure.FromPoundsForcePerSquareInch(v));
    private static readonly DisplayUnit<MassFlow> GramsPerSecond = new("g/s", "N1", m => m.GramsPerSecond, v => UnitsNet.MassFlow.FromGramsPerSecond(v));
    private static readonly DisplayUnit<Ratio> Percent = new("%", "N0", r => r.Percent, v => Ratio.FromPercent(v));

    private FigureUnits()
    {
    }

    /// <summary>kPa and bar, L/h, g/s, kW, °C, kg/m³, g/kWh, m.</summary>
    public static FigureUnits Metric { get; } = new();

    /// <summary>psi, US gal/h, lb/h, hp, °F, lb/ft³, lb/(hp·h), ft.</summary>
    public static FigureUnits UsCustomary { get; } = new()
    {
        Pressure = Psi,
        Boost = Psi,
        PressureLoss = Psi.With("#,##0.00"),
        PressureChange = Psi.With("+#,##0.00;−#,##0.00;0.00"),
        PressureOffset = Psi.With("+#,##0.0;−#,##0.0;0.0"),
        PumpFlow = new("US gal/h", "N1", q => q.UsGallonsPerHour, v => VolumeFlow.FromUsGallonsPerHour(v)),
        MassFlow = new("lb/h", "N0", m => m.PoundsPerHour, v => UnitsNet.MassFlow.FromPoundsPerHour(v)),
        Power = new("hp", "N0", p => (double)p.MechanicalHorsepower, v => UnitsNet.Power.FromMechanicalHorsepower(v), UnderOneKilowatt),
        Temperature = new("°F", "N0", t => t.DegreesFahrenheit, v => UnitsNet.Temperature.FromDegreesFahrenheit(v)),
        Density = new("lb/ft³", "N2", d => d.PoundsPerCubicFoot, v => UnitsNet.Density.FromPoundsPerCubicFoot(v)),
        GasDensity = new("lb/ft³", "N4", d => d.PoundsPerCubicFoot, v => UnitsNet.Density.FromPoundsPerCubicFoot(v)),
        HeatingValue = new("Btu/lb", "N0", e => e.BtuPerPound, v => SpecificEnergy.FromBtuPerPound(v)),
        Consumption = new(
            "lb/(hp·h)", "N3", b => b.PoundsPerMechanicalHorsepowerHour, v => BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(v)),
        ConsumptionEstimate = new(
            "lb/(hp·h)", "N3", b => b.PoundsPerMechanicalHorsepowerHour, v => BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(v)),
        Length = new("ft", "N1", l => l.Feet, v => UnitsNet.Length.FromFeet(v)),
        Velocity = new("ft/s", "N2", s => s.FeetPerSecond, v => UnitsNet.Speed.FromFeetPerSecond(v)),
        Torque = new("lbf·ft", "N0", t => t.PoundForceFeet, v => UnitsNet.Torque.FromPoundForceFeet(v)),
        Expansion = new("1/°F", "N5", e => e.PerDegreeFahrenheit, v => CoefficientOfThermalExpansion.FromPerDegreeFahrenheit(v)),
    };

    /// <summary>Rail pressure and everything of its size; kind <c>pressure</c>.</summary>
    public DisplayUnit<Pressure> Pressure { get; init => field = Given(value); } = Kilopascals;

    /// <summary>Boost; kind <c>boost</c>.</summary>
    public DisplayUnit<Pressure> Boost { get; init => field = Given(value); } = new("bar", "N2", p => p.Bars, v => UnitsNet.Pressure.FromBars(v));

    /// <summary>A pressure lost in a line; kind <c>pressure-loss</c>.</summary>
    public DisplayUnit<Pressure> PressureLoss { get; init => field = Given(value); } = Kilopascals.With("#,##0.0");

    /// <summary>A pressure gained or lost, with its sign; kind <c>pressure-change</c>.</summary>
    public DisplayUnit<Pressure> PressureChange { get; init => field = Given(value); } = Kilopascals.With("+#,##0.0;−#,##0.0;0.0");

    /// <summary>By how much a reading or a setting is off, with its sign; kind <c>pressure-offset</c>.</summary>
    public DisplayUnit<Pressure> PressureOffset { get; init => field = Given(value); } = Kilopascals.With("+#,##0;−#,##0;0");

    /// <summary>A pump's or a line's flow; kind <c>pump-flow</c>.</summary>
    public DisplayUnit<VolumeFlow> PumpFlow { get; init => field = Given(value); } =
        new("L/h", "N0", q => q.LitersPerHour, v => VolumeFlow.FromLitersPerHour(v));

    /// <summary>An injector's flow; kind <c>injector-flow</c>.</summary>
    public DisplayUnit<VolumeFlow> InjectorFlow { get; init => field = Given(value); } =
        new("mL/min", "N0", q => q.MillilitersPerMinute, v => VolumeFlow.FromMillilitersPerMinute(v));

    /// <summary>Air or fuel by mass; kind <c>mass-flow</c>.</summary>
    public DisplayUnit<MassFlow> MassFlow { get; init => field = Given(value); } = new(
        "g/s",
        "N1",
        m => m.GramsPerSecond,
        v => UnitsNet.MassFlow.FromGramsPerSecond(v),
        m => Math.Abs(m.GramsPerSecond) < 10 ? GramsPerSecond.With("N2") : null);

    /// <summary>A mass on a scale; kind <c>mass</c>.</summary>
    public DisplayUnit<Mass> Mass { get; init => field = Given(value); } = new("g", "N2", m => m.Grams, v => UnitsNet.Mass.FromGrams(v));

    /// <summary>An engine's power, in W under 1 kW; kind <c>power</c>.</summary>
    public DisplayUnit<Power> Power { get; init => field = Given(value); } =
        new("kW", "N0", p => (double)p.Kilowatts, v => UnitsNet.Power.FromKilowatts(v), UnderOneKilowatt);

    /// <summary>Heat into the tank; kind <c>heat</c>.</summary>
    public DisplayUnit<Power> Heat { get; init => field = Given(value); } = Watts;

    /// <summary>Heat in a wire; kind <c>wire-heat</c>.</summary>
    public DisplayUnit<Power> WireHeat { get; init => field = Given(value); } = Watts.With("N1");

    /// <summary>Heat along a wire; kind <c>heat-per-length</c>.</summary>
    public DisplayUnit<LinearPowerDensity> HeatPerLength { get; init => field = Given(value); } =
        new("W/m", "N1", h => (double)h.WattsPerMeter, v => LinearPowerDensity.FromWattsPerMeter(v));

    /// <summary>Temperature; kind <c>temperature</c>.</summary>
    public DisplayUnit<Temperature> Temperature { get; init => field = Given(value); } =
        new("°C", "N0", t => t.DegreesCelsius, v => UnitsNet.Temperature.FromDegreesCelsius(v));

    /// <summary>A liquid's density; kind <c>density</c>.</summary>
    public DisplayUnit<Density> Density { get; init => field = Given(value); } =
        new("kg/m³", "N0", d => d.KilogramsPerCubicMeter, v => UnitsNet.Density.FromKilogramsPerCubicMeter(v));

    /// <summary>A gas's density; kind <c>gas-density</c>.</summary>
    public DisplayUnit<Density> GasDensity { get; init => field = Given(value); } =
        new("kg/m³", "N3", d => d.KilogramsPerCubicMeter, v => UnitsNet.Density.FromKilogramsPerCubicMeter(v));

    /// <summary>Heating value; kind <c>heating-value</c>.</summary>
    public DisplayUnit<SpecificEnergy> HeatingValue { get; init => field = Given(value); } =
        new("MJ/kg", "N1", e => e.MegajoulesPerKilogram, v => SpecificEnergy.FromMegajoulesPerKilogram(v));

    /// <summary>Specific fuel consumption; kind <c>consumption</c>.</summary>
    public DisplayUnit<BrakeSpecificFuelConsumption> Consumption { get; init => field = Given(value); } =
        new("g/kWh", "N0", b => b.GramsPerKiloWattHour, v => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(v));

    /// <summary>Specific fuel consumption as a log gives it, with one more figure; kind <c>consumption-estimate</c>.</summary>
    public DisplayUnit<BrakeSpecificFuelConsumption> ConsumptionEstimate { get; init => field = Given(value); } =
        new("g/kWh", "N1", b => b.GramsPerKiloWattHour, v => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(v));

    /// <summary>A length of line or wire; kind <c>length</c>.</summary>
    public DisplayUnit<Length> Length { get; init => field = Given(value); } = new("m", "N1", l => l.Meters, v => UnitsNet.Length.FromMeters(v));

    /// <summary>A bore, a diameter or a roughness; kind <c>bore</c>.</summary>
    public DisplayUnit<Length> Bore { get; init => field = Given(value); } = new("mm", "N1", l => l.Millimeters, v => UnitsNet.Length.FromMillimeters(v));

    /// <summary>Engine speed; kind <c>speed</c>.</summary>
    public DisplayUnit<RotationalSpeed> Speed { get; init => field = Given(value); } =
        new("rev/min", "N0", n => n.RevolutionsPerMinute, v => RotationalSpeed.FromRevolutionsPerMinute(v));

    /// <summary>A pulse or dead time; kind <c>pulse</c>.</summary>
    public DisplayUnit<Duration> Pulse { get; init => field = Given(value); } = new("ms", "N2", t => t.Milliseconds, v => Duration.FromMilliseconds(v));

    /// <summary>A change of dead time, with its sign; kind <c>pulse-change</c>.</summary>
    public DisplayUnit<Duration> PulseChange { get; init => field = Given(value); } =
        new("ms", "+#,##0.00;−#,##0.00;0.00", t => t.Milliseconds, v => Duration.FromMilliseconds(v));

    /// <summary>A length of time in a log; kind <c>time</c>.</summary>
    public DisplayUnit<Duration> Time { get; init => field = Given(value); } = new("s", "N2", t => t.Seconds, v => Duration.FromSeconds(v));

    /// <summary>A share; kind <c>share</c>.</summary>
    public DisplayUnit<Ratio> Share { get; init => field = Given(value); } = Percent;

    /// <summary>A duty cycle; kind <c>duty-cycle</c>.</summary>
    public DisplayUnit<Ratio> DutyCycle { get; init => field = Given(value); } = Percent.With("N1");

    /// <summary>
    /// A probability, with two figures within 1 % of either end, and as many as tell it from the end; kind <c>chance</c>.
    /// </summary>
    public DisplayUnit<Ratio> Chance { get; init => field = Given(value); } = new(
        "%",
        "N1",
        r => r.Percent,
        v => Ratio.FromPercent(v),
        r => Math.Min(r.Percent, 100 - r.Percent) is > LastBit and < 1 ? NearTheEnds(Math.Min(r.Percent, 100 - r.Percent)) : null);

    /// <summary>A change or reserve with its sign; kind <c>change</c>.</summary>
    public DisplayUnit<Ratio> Change { get; init => field = Given(value); } = Percent.With("+#,##0;−#,##0;0");

    /// <summary>A voltage; kind <c>voltage</c>.</summary>
    public DisplayUnit<ElectricPotential> Voltage { get; init => field = Given(value); } =
        new("V", "N1", u => u.Volts, v => ElectricPotential.FromVolts(v));

    /// <summary>A voltage lost in wiring; kind <c>voltage-drop</c>.</summary>
    public DisplayUnit<ElectricPotential> VoltageDrop { get; init => field = Given(value); } =
        new("V", "N2", u => u.Volts, v => ElectricPotential.FromVolts(v));

    /// <summary>A current; kind <c>current</c>.</summary>
    public DisplayUnit<ElectricCurrent> Current { get; init => field = Given(value); } =
        new("A", "N1", i => i.Amperes, v => ElectricCurrent.FromAmperes(v));

    /// <summary>A resistance of wire or contacts; kind <c>resistance</c>.</summary>
    public DisplayUnit<ElectricResistance> Resistance { get; init => field = Given(value); } =
        new("mΩ", "N1", r => r.Milliohms, v => ElectricResistance.FromMilliohms(v));

    /// <summary>A conductor's area; kind <c>area</c>.</summary>
    public DisplayUnit<Area> Area { get; init => field = Given(value); } =
        new("mm²", "0.##", a => a.SquareMillimeters, v => UnitsNet.Area.FromSquareMillimeters(v));

    /// <summary>An engine's displacement; kind <c>displacement</c>.</summary>
    public DisplayUnit<Volume> Displacement { get; init => field = Given(value); } = new("L", "N2", v => v.Liters, v => Volume.FromLiters(v));

    /// <summary>A mean velocity in a line; kind <c>velocity</c>.</summary>
    public DisplayUnit<Speed> Velocity { get; init => field = Given(value); } =
        new("m/s", "N2", s => s.MetersPerSecond, v => UnitsNet.Speed.FromMetersPerSecond(v));

    /// <summary>A torque; kind <c>torque</c>.</summary>
    public DisplayUnit<Torque> Torque { get; init => field = Given(value); } = new("N·m", "N0", t => t.NewtonMeters, v => UnitsNet.Torque.FromNewtonMeters(v));

    /// <summary>A dynamic viscosity; kind <c>dynamic-viscosity</c>.</summary>
    public DisplayUnit<DynamicViscosity> DynamicViscosity { get; init => field = Given(value); } =
        new("mPa·s", "N2", n => n.MillipascalSeconds, v => UnitsNet.DynamicViscosity.FromMillipascalSeconds(v));

    /// <summary>A kinematic viscosity; kind <c>kinematic-viscosity</c>.</summary>
    public DisplayUnit<KinematicViscosity> KinematicViscosity { get; init => field = Given(value); } =
        new("mm²/s", "N2", n => n.SquareMetersPerSecond * 1e6, v => UnitsNet.KinematicViscosity.FromSquareMetersPerSecond(v / 1e6));

    /// <summary>A metal's resistivity; kind <c>resistivity</c>.</summary>
    public DisplayUnit<ElectricResistivity> Resistivity { get; init => field = Given(value); } =
        new("nΩ·m", "N1", r => r.NanoohmMeters, v => ElectricResistivity.FromNanoohmMeters(v));

    /// <summary>A liquid's thermal expansion; kind <c>expansion</c>.</summary>
    public DisplayUnit<CoefficientOfThermalExpansion> Expansion { get; init => field = Given(value); } =
        new("1/K", "N5", e => e.PerKelvin, v => CoefficientOfThermalExpansion.FromPerKelvin(v));

    /// <summary>The units that most figures are written in.</summary>
    /// <returns>For instance <c>kPa, L/h, kW, °C</c>.</returns>
    public override string ToString() => $"{Pressure}, {PumpFlow}, {Power}, {Temperature}";

    // Of a share computed from a count nothing smaller is meant.
    private const double LastBit = 1e-8;

    // 99.998 % of samples are not all of them, and must not be written as 100.00 %.
    private static DisplayUnit<Ratio> NearTheEnds(double left) =>
        Percent.With($"N{Math.Clamp((int)Math.Floor(-Math.Log10(2 * left)) + 1, 2, 9)}");

    private static DisplayUnit<Power>? UnderOneKilowatt(Power power) => Math.Abs((double)power.Kilowatts) < 1 ? Watts : null;

    private static DisplayUnit<T> Given<T>(DisplayUnit<T> unit)
        where T : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit;
    }
}
