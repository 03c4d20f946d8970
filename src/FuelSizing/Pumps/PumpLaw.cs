using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>What a pump delivers and draws, by a law of your own: a fit to bench points, or a model of its motor and hydraulics.</summary>
/// <remarks>
/// <para>It must be pure: the same rise and voltage give the same figures. <see cref="PumpLaw.Tabulated"/> makes a <see cref="Pump"/> of it, which solver, wiring, converters, files and
/// diagnosis then take like any measured one; past the voltages that the law covers the pump's own bounds hold.</para>
/// <para><c>ConformanceKit.Of(IPumpLaw)</c> tries it: flow never grows with the rise nor falls with the voltage, the current is there, and nothing jumps.</para>
/// </remarks>
/// <example>
/// <code>
/// sealed record StraightPump : IPumpLaw
/// {
///     public string Name => "straight pump";
///
///     public ElectricPotential MinimumVoltage => ElectricPotential.FromVolts(9);
///
///     public ElectricPotential MaximumVoltage => ElectricPotential.FromVolts(15);
///
///     public Pressure MaximumRise(ElectricPotential voltage) => Pressure.FromKilopascals(750) * Squared(voltage);
///
///     public VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage) =>
///         VolumeFlow.FromLitersPerHour(210) * (voltage.Volts / 13.5) * (1 - (rise / MaximumRise(voltage)));
///
///     public ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage) =>
///         ElectricCurrent.FromAmperes((4 * voltage.Volts / 13.5) + (0.008 * rise.Kilopascals));
///
///     private static double Squared(ElectricPotential voltage) => voltage.Volts / 13.5 * (voltage.Volts / 13.5);
/// }
/// </code>
/// </example>
public interface IPumpLaw
{
    /// <summary>The name shown in results; 1 to 80 characters.</summary>
    string Name { get; }

    /// <summary>Lowest voltage at its terminals that the law covers, from 5 V on.</summary>
    ElectricPotential MinimumVoltage { get; }

    /// <summary>Highest voltage that it covers, up to 30 V.</summary>
    ElectricPotential MaximumVoltage { get; }

    /// <summary>The highest pressure rise that it covers at a voltage: that at which nothing is delivered, or where its data ends.</summary>
    /// <param name="voltage">From the lowest to the highest.</param>
    /// <returns>The rise, up to 2,000 kPa.</returns>
    Pressure MaximumRise(ElectricPotential voltage);

    /// <summary>Delivered flow.</summary>
    /// <param name="rise">0 kPa to <see cref="MaximumRise"/>.</param>
    /// <param name="voltage">From the lowest to the highest.</param>
    /// <returns>The flow, 0 to 3,000 L/h.</returns>
    VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage);

    /// <summary>Current drawn.</summary>
    /// <param name="rise">0 kPa to <see cref="MaximumRise"/>.</param>
    /// <param name="voltage">From the lowest to the highest.</param>
    /// <returns>The current, 0.1 to 100 A; none at any place where it is not known.</returns>
    ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage);
}

/// <summary>Reads a law of your own into curves.</summary>
public static class PumpLaw
{
    // As many curves as a pump may have, and points enough that a smooth law between them is met to the tolerance.
    private const int Voltages = 17;
    private const int Rises = 41;

    /// <summary>By how much the curves may miss the law between their points, of the flow against no pressure and of the highest current: 0.5 %.</summary>
    public static Ratio Tolerance { get; } = Ratio.FromPercent(0.5);

    /// <summary>A pump by a law: its curves at 17 voltages and 41 rises each, which between them are looked at again.</summary>
    /// <param name="law">What it delivers and draws.</param>
    /// <returns>The pump, as new, without wiring: give it a feed, a relief valve or a condition by <see cref="Pump.Of(IReadOnlyList{PumpCurve}, Pressure?, Ratio?, Electrical.Feed?, PumpDrive?)"/> of its <see cref="Pump.Curves"/>.</returns>
    /// <exception cref="ArgumentException">The name is blank, current is given at one place and not at another, or the law is not met to <see cref="Tolerance"/> between the points: it has a kink.</exception>
    /// <exception cref="ArgumentOutOfRangeException">What it gives is outside its range, or flow grows with the rise or falls with the voltage.</exception>
    /// <example>
    /// <code>
    /// Pump pump = PumpLaw.Tabulated(new Level());
    /// Console.WriteLine(pump.CurveAt(ElectricPotential.FromVolts(13.5))[0].Flow);
    ///
    /// sealed record Level : IPumpLaw
    /// {
    ///     public string Name => "pump by a law";
    ///     public ElectricPotential MinimumVoltage => ElectricPotential.FromVolts(10);
    ///     public ElectricPotential MaximumVoltage => ElectricPotential.FromVolts(15);
    ///     public Pressure MaximumRise(ElectricPotential voltage) => Pressure.FromKilopascals(4) * voltage.Volts * voltage.Volts;
    ///     public VolumeFlow FlowAt(Pressure rise, ElectricPotential voltage) => VolumeFlow.FromLitersPerHour(14) * voltage.Volts * (1 - (rise / MaximumRise(voltage)));
    ///     public ElectricCurrent? CurrentAt(Pressure rise, ElectricPotential voltage) => null;
    /// }
    /// </code>
    /// </example>
    public static Pump Tabulated(IPumpLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        PumpCurve.WithinVoltage(law.MinimumVoltage, nameof(law));
        Guard.Between(
            law.MaximumVoltage,
            law.MinimumVoltage + ElectricPotential.FromVolts(0.5),
            ElectricPotential.FromVolts(30),
            "Give a range of voltages; a pump that is known at one voltage only is a PumpCurve.",
            nameof(law));
        Pump pump = Pump.Of([.. Enumerable.Range(0, Voltages).Select(place => CurveAt(law, At(law, place, Voltages - 1)))]);
        Meets(law, pump);
        return pump;
    }

    private static ElectricPotential At(IPumpLaw law, double place, double last) =>
        law.MinimumVoltage + ((law.MaximumVoltage - law.MinimumVoltage) * (place / last));

    private static PumpCurve CurveAt(IPumpLaw law, ElectricPotential voltage)
    {
        (Pressure Rise, VolumeFlow Flow, ElectricCurrent? Current)[] points = [.. Enumerable.Range(0, Rises)
            .Select(place => law.MaximumRise(voltage) * (place / (Rises - 1.0)))
            .Select(rise => (rise, law.FlowAt(rise, voltage), law.CurrentAt(rise, voltage)))];
        int known = points.Count(point => point.Current is not null);
        return known == 0 ? PumpCurve.At(law.Name, voltage, Array.ConvertAll(points, point => (point.Rise, point.Flow)))
            : known == Rises ? PumpCurve.WithCurrent(law.Name, voltage, Array.ConvertAll(points, point => (point.Rise, point.Flow, point.Current!.Value)))
            : throw new ArgumentException(
                $"law ({law.Name}) gave a current at {known} of {Rises} rises at {Readable.Of(voltage)}; give it at all or at none.", nameof(law));
    }

    /// <summary>Refuses a law that has something between the points that the curves do not.</summary>
    private static void Meets(IPumpLaw law, Pump pump)
    {
        double tolerance = Tolerance.DecimalFractions;
        for (int place = 0; place < (2 * Voltages) - 1; place++)
        {
            ElectricPotential voltage = At(law, place, 2 * (Voltages - 1));
            Pressure most = law.MaximumRise(voltage);
            double free = law.FlowAt(Pressure.Zero, voltage).CubicMetersPerSecond;
            double draws = pump.Curves[^1].MaximumCurrent;

            // The very end, where a curve between two voltages may stop a little earlier or later, apart.
            for (int between = 0; between < Rises - 1; between++)
            {
                Pressure rise = most * ((between + 0.5) / (Rises - 1));
                double flow = pump.FlowAtMotor(rise.Pascals, voltage.Volts, PumpReading.Estimate);
                double current = pump.CurrentAtMotor(rise.Pascals, voltage.Volts) ?? 0;
                VolumeFlow own = law.FlowAt(rise, voltage);
                ElectricCurrent? drawn = law.CurrentAt(rise, voltage);
                if (!(Math.Abs(flow - (Real)own.CubicMetersPerSecond) <= tolerance * free) || !(Math.Abs(current - (Real)(drawn?.Amperes ?? 0)) <= tolerance * draws))
                {
                    throw new ArgumentException(
                        $"law ({law.Name}) is not smooth: at {Readable.Of(voltage)} and {Readable.Of(rise)} it gives {Readable.PumpFlow(own)}{(drawn is { } amperes ? $" and {Readable.Of(amperes)}" : string.Empty)}, and curves through its points beside that {Readable.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow))}{(drawn is null ? string.Empty : $" and {Readable.Of(ElectricCurrent.FromAmperes(current))}")}. Leave a relief valve out of the law and give it to Pump.Of, or describe the pump by PumpCurve at the places that matter.",
                        nameof(law));
                }
            }
        }
    }
}
