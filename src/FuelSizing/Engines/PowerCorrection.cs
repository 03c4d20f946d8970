using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>
/// Full-load power of a spark-ignition engine as a standard calculates it for its reference air, from that measured in other air.
/// </summary>
/// <remarks>
/// <para>ISO 1585: α_a = (99 kPa/p_d)^1.2 (T/298 K)^0.6. SAE J1349 (June 1990): CF = 1.18 (99 kPa/p_d) √(T/298 K) − 0.18.
/// Corrected power = factor × measured power; torque likewise. p_d is the barometer's pressure less that of the air's water
/// vapour; T is the air's temperature at the engine's inlet.</para>
/// <para>Valid range: ISO 1585: T 288 to 308 K, p_d 80 to 110 kPa, factor 0.93 to 1.07. SAE J1349: 15 to 35 °C, p_d 90 to
/// 105 kPa, factor 0.93 to 1.07 (both standards' ranges from memory). Outside of it the factor is still given, and <see cref="Outside"/> says
/// what is out.</para>
/// <para>Boosted engines: both factors are meant for naturally aspirated and boosted spark-ignition engines. Where a system
/// compensates for temperature and altitude, the factor would correct twice and is 1: UN Regulation 85, whose factor is that of
/// ISO 1585, as amended after working paper GRPE-70-02 (2014). Of SAE J1349, from memory: it likewise leaves engines whose
/// boost control is absolute uncorrected for the barometer.</para>
/// <para>Out of scope: compression-ignition engines, for which ISO 1585 has a further engine factor.</para>
/// </remarks>
public sealed class PowerCorrection : IReadable
{
    private PowerCorrection(
        PowerStandard standard, Atmosphere atmosphere, Ratio relativeHumidity, BoostControl boostControl, double vapour, double dry)
    {
        (Standard, Atmosphere, RelativeHumidity, BoostControl) = (standard, atmosphere, relativeHumidity, boostControl);
        (VapourPressure, DryPressure) = (Pressure.FromPascals(vapour), Pressure.FromPascals(dry));
        Factor = (boostControl, standard) switch
        {
            (BoostControl.CompensatesForAmbient, _) => 1,
            (_, PowerStandard.Iso1585) => (double)PowerCorrectionFactor.Iso1585<Real>(dry, atmosphere.Kelvins),
            _ => (double)PowerCorrectionFactor.SaeJ1349<Real>(dry, atmosphere.Kelvins),
        };
        Outside = [.. FindOutside(standard, atmosphere.Kelvins, dry, Factor)];
    }

    /// <summary>The standard.</summary>
    public PowerStandard Standard { get; }

    /// <summary>The air at the engine's inlet.</summary>
    public Atmosphere Atmosphere { get; }

    /// <summary>Of that air.</summary>
    public Ratio RelativeHumidity { get; }

    /// <summary>Whether something already compensates for the air.</summary>
    public BoostControl BoostControl { get; }

    /// <summary>Of the water in the air: p_v = φ · 611.2 Pa · exp(17.62 t/(243.12 + t)), t in °C (WMO-No. 8, 2008).</summary>
    public Pressure VapourPressure { get; }

    /// <summary>Of the air without its water.</summary>
    public Pressure DryPressure { get; }

    /// <summary>What measured power and torque are multiplied by.</summary>
    public double Factor { get; }

    /// <summary>What lies outside the standard's range, in words; none where the standard holds.</summary>
    public IReadOnlyList<Statement> Outside { get; }

    /// <summary>Whether the standard holds in this air; if not, the factor is an estimate and not the standard's.</summary>
    public bool IsWithinStandard => Outside.Count == 0;

    /// <summary>Works out the factor.</summary>
    /// <param name="standard">Which one.</param>
    /// <param name="atmosphere">The air at the engine's inlet while it was measured.</param>
    /// <param name="relativeHumidity">Of that air, 0 to 100 %.</param>
    /// <param name="boostControl">Whether something already compensates for the air; nothing, if not given.</param>
    /// <returns>The factor, and whether the standard holds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PowerCorrection By(
        PowerStandard standard,
        Atmosphere atmosphere,
        Ratio relativeHumidity,
        BoostControl boostControl = BoostControl.FollowsAir)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        double humidity = Guard.Between(
            relativeHumidity, Ratio.Zero, Ratio.FromPercent(100), "Give the relative humidity of the inlet air.", nameof(relativeHumidity))
            .DecimalFractions;
        double vapour = (double)HumidAir.PartialPressure<Real>(humidity, atmosphere.Kelvins);
        return new(
            Guard.Member(standard, "Name the standard.", nameof(standard)),
            atmosphere,
            relativeHumidity,
            Guard.Member(boostControl, "Say whether boost follows ambient pressure.", nameof(boostControl)),
            vapour,
            (double)HumidAir.DryPressure<Real>(atmosphere.Pascals, vapour));
    }

    /// <summary>Power in the standard's reference air.</summary>
    /// <param name="measured">Full-load power as measured, 0 to 3,000 kW.</param>
    /// <returns>Factor × measured power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The power is outside its range.</exception>
    public Power CorrectedPower(Power measured) => Power.FromWatts(
        Factor * (double)Drivetrain.Within(measured, nameof(measured)).Watts);

    /// <summary>Torque in the standard's reference air.</summary>
    /// <param name="measured">Full-load torque as measured, 0 to 20,000 N·m.</param>
    /// <returns>Factor × measured torque.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The torque is outside its range.</exception>
    public Torque CorrectedTorque(Torque measured) => Torque.FromNewtonMeters(
        Factor * Guard.Between(
            measured,
            Torque.Zero,
            Torque.FromNewtonMeters(20_000),
            "Give the torque of the whole engine, or that at the wheels.",
            nameof(measured)).NewtonMeters);

    /// <summary>The correction in words, for instance <c>ISO 1585: factor 1.024</c>.</summary>
    /// <returns>Standard, factor, and what is out of its range.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>The correction, as a code with its figures.</summary>
    public Statement Text => IsWithinStandard
        ? Statement.Of("power-correction.within", $"{StandardName}: factor {Factor:0.000}")
        : Statement.Of("power-correction.outside", $"{StandardName}: factor {Factor:0.000}, but {Outside:;}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    private string StandardName => Standard == PowerStandard.Iso1585 ? "ISO 1585" : "SAE J1349";

    /// <summary>The ends of each standard's range, from memory.</summary>
    private static IEnumerable<Statement> FindOutside(PowerStandard standard, double kelvins, double dry, double factor)
    {
        (double cold, double hot, double thin, double dense) = standard == PowerStandard.Iso1585
            ? (288.0, 308.0, 80e3, 110e3)
            : (288.15, 308.15, 90e3, 105e3);
        if (kelvins < cold || kelvins > hot)
        {
            yield return Statement.Of(
                "power-correction.air-temperature",
                $"the air is at {Temperature.FromKelvins(kelvins)}, and the standard's range is {Temperature.FromKelvins(cold)} to {Temperature.FromKelvins(hot)}");
        }

        if (dry < thin || dry > dense)
        {
            yield return Statement.Of(
                "power-correction.dry-air",
                $"the dry air has {Pressure.FromPascals(dry):pressure-loss}, and the standard's range is {Pressure.FromPascals(thin)} to {Pressure.FromPascals(dense)}");
        }

        if (factor is < 0.93 or > 1.07)
        {
            yield return Statement.Of(
                "power-correction.factor", $"the factor is {factor:0.000}, and the standard's range is {0.93:0.00} to {1.07:0.00}");
        }
    }
}

/// <summary>By which standard measured power is turned into that in reference air.</summary>
public enum PowerStandard
{
    /// <summary>ISO 1585, Road vehicles: engine test code, net power; its factor of spark-ignition engines.</summary>
    Iso1585,

    /// <summary>SAE J1349, Engine power test code; its factor of spark-ignition engines, June 1990.</summary>
    SaeJ1349,
}

/// <summary>Whether something already compensates for thin or warm air, so that a correction would count it twice.</summary>
public enum BoostControl
{
    /// <summary>Nothing does: no boost, or boost that falls with the barometer (a gauge spring, a belt-driven blower).</summary>
    FollowsAir,

    /// <summary>A controller holds absolute manifold pressure, or charge, whatever the ambient air.</summary>
    CompensatesForAmbient,
}
