using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>An injector as it was measured on the bench, as a description that a fuel system takes.</summary>
/// <remarks>
/// Its flow is the slope of the line, by which pulses are calculated, and not a flow held open, which may differ from it by some per cent. Its dead times are the time offsets, its minimum
/// linear pulse the shortest that was seen to be linear. The figures are those of the fits; how sure they are, the fits say.
/// </remarks>
public static class MeasuredInjector
{
    // Of the voltages of a car's supply; common practice, no source.
    private static readonly ElectricPotential Running = ElectricPotential.FromVolts(14);

    /// <summary>Describes an injector by its fits.</summary>
    /// <param name="fits">
    /// Of one injector on one test fluid, at two voltages or more, each at the same differential pressures: dead times go with both. In any order.
    /// </param>
    /// <param name="ratedDifferential">One of the differential pressures: that at which the flow is stated.</param>
    /// <param name="maximumDifferential">Against which it was seen to open.</param>
    /// <returns>The injector: flow and minimum linear pulse of the fit at the rated differential and the voltage nearest to 14 V (common practice, no source).</returns>
    /// <exception cref="ArgumentException">
    /// The fits are of several injectors or fluids, of one voltage, or not of every voltage at every pressure; none is at the rated differential; or one has no linear flow range.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside what an injector may have.</exception>
    public static Injector Of(IReadOnlyList<PulseFit> fits, Pressure ratedDifferential, Pressure maximumDifferential)
    {
        ArgumentNullException.ThrowIfNull(fits);
        Guard.Count(fits.Count, 2, 1000, "Weigh at two voltages or more: dead time goes with voltage.", nameof(fits));
        foreach (PulseFit fit in fits)
        {
            ArgumentNullException.ThrowIfNull(fit, nameof(fits));
            if (fit.Test.Name != fits[0].Test.Name || !fit.Test.Fluid.Equals(fits[0].Test.Fluid))
            {
                throw new ArgumentException(
                    $"{nameof(fits)} are of {fits[0].Test} and of {fit.Test}. Give those of one injector on one test fluid.", nameof(fits));
            }

            if (fit.LinearFrom is null)
            {
                throw new ArgumentException($"{nameof(fits)}: at {fit.Test.Voltage.Volts:0.0} V no pulse of {fit.Test.Name} is linear. Weigh at longer pulses.", nameof(fits));
            }
        }

        Guard.Between(ratedDifferential, PulseTest.MinimumDifferential, PulseTest.MaximumDifferential, "Give one of the differential pressures of the tests.", nameof(ratedDifferential));
        ElectricPotential[] voltages = [.. fits.Select(fit => fit.Test.Voltage).DistinctBy(voltage => voltage.Volts).Order()];
        Pressure[] differentials = [.. fits.Select(fit => fit.Test.Differential).DistinctBy(pressure => pressure.Pascals).Order()];
        PulseFit[][] rows = [.. differentials.Select(pressure => voltages.Select(voltage => Single(fits, pressure, voltage)).ToArray())];
        int rated = Array.FindIndex(differentials, pressure => pressure.Equals(ratedDifferential, Pressure.FromPascals(1)));
        if (rated < 0)
        {
            throw new ArgumentException(
                $"{nameof(ratedDifferential)} is {Readable.Of(ratedDifferential)}, at which nothing was weighed. Give one of {string.Join(", ", differentials.Select(pressure => Readable.Of(pressure)))}.",
                nameof(ratedDifferential));
        }

        if (voltages.Length < 2)
        {
            throw new ArgumentException($"{nameof(fits)} are all at {Readable.Of(voltages[0])}. Weigh at another voltage too: dead time goes with it.", nameof(fits));
        }

        int at = Array.IndexOf(voltages, voltages.MinBy(voltage => Math.Abs(voltage.Volts - Running.Volts)));
        PulseFit running = rows[rated][at];
        Injector injector = Injector.Of(
            running.Test.Name,
            running.Slope,
            differentials[rated],
            running.Test.Fluid,
            differentials.Length == 1
                ? DeadTimeTable.ByVoltage([.. rows[0].Select(fit => (fit.Test.Voltage, fit.TimeOffset))])
                : DeadTimeTable.Of(voltages, differentials, [.. rows.Select(row => row.Select(fit => fit.TimeOffset).ToArray())]),
            running.LinearFrom!.Value,
            maximumDifferential,
            running.Test.Voltage);
        return differentials.Length == 1
            ? injector
            : injector.WithMeasuredFlows([.. rows.Where((_, row) => row != rated).Select(row => (row[at].Test.Differential, row[at].Slope))]);
    }

    private static PulseFit Single(IReadOnlyList<PulseFit> fits, Pressure differential, ElectricPotential voltage)
    {
        PulseFit[] there = [.. fits.Where(fit => fit.Test.Differential.Pascals.Equals(differential.Pascals) && fit.Test.Voltage.Volts.Equals(voltage.Volts))];
        return there.Length == 1
            ? there[0]
            : throw new ArgumentException(
                $"{nameof(fits)} has {there.Length} tests at {Readable.Of(differential)} and {Readable.Of(voltage)}. Give one of every voltage at every pressure.", nameof(fits));
    }
}
