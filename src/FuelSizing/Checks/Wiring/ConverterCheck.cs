using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A pump's voltage converter: the current that the motor asks for at full voltage against what converter and feed can give.</summary>
internal sealed class ConverterCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.Converter;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Current asked of the converter", LimitDirection.AtMost, si => ElectricCurrent.FromAmperes(si), units => units.Current);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts)
    {
        VoltageConverter[] converters = [.. parts.Pump.Pumps.Select(pump => pump.Converter).OfType<VoltageConverter>()];
        VoltageConverter? open = Array.Find(converters, converter => converter.MaximumCurrent is null);
        return converters.Length == 0 ? Applicability.NotApplicable
            : open is null ? Applicability.Judged
            : Applicability.JudgedInPart(Statement.Of("converter.no-limit", $"no maximum current given of {open.Name}"));
    }

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtMost<T>(at.Minimum.ConverterCurrent, at.Maximum.ConverterCurrent, at.ConverterLimit);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        if (!circuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        if (circuit.HeaviestLoadedConverter < 0)
        {
            return Statement.Of("converter.idle", $"bypassed or switched off");
        }

        Pump pump = circuit.Pumps[circuit.HeaviestLoadedConverter].Pump;
        VoltageConverter converter = pump.Converter!;
        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.CurrentNotDecided(circuit.ConvertedOf(circuit.HeaviestLoadedConverter), reading.Allowed);
        }

        ElectricCurrent used = ElectricCurrent.FromAmperes(reading.Used.Value);
        if (double.IsPositiveInfinity(reading.Allowed))
        {
            return Statement.Of("converter.without-limit", $"{converter.Name} gives {pump.Name} {used}; what it can give is not known");
        }

        ElectricCurrent allowed = ElectricCurrent.FromAmperes(reading.Allowed.Value);
        return outcome == Outcome.Holds
            ? Statement.Of("converter.within", $"{converter.Name} gives {pump.Name} {used} of at most {allowed}")
            : converter.LimitAmperes > reading.Allowed.Value * (1 + 1e-9)
                ? Statement.Of(
                    "converter.feed-too-weak",
                    $"{pump.Name} asks {converter.Name} for {used.ApartFrom(allowed):current}, and its feed passes on {allowed.ApartFrom(used):current} at most: its voltage falls")
                : Statement.Of(
                    "converter.over",
                    $"{pump.Name} asks {converter.Name} for {used.ApartFrom(allowed):current} of at most {allowed.ApartFrom(used):current}: its voltage falls, or it switches off");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        ElectricCurrent most = ElectricCurrent.FromAmperes(task.Points.Max(Asked));
        return Remedy.Of(
            Part,
            most,
            Statement.Of(
                "converter.larger",
                $"A converter that gives at least {most:current:up} at its full voltage, and a feed that passes on the power; or a lower voltage."));
    }

    private static double Asked(SolvedPoint point)
    {
        SolvedCircuit circuit = point.SolvedCircuit;
        return Enumerable.Range(0, circuit.Pumps.Length).Select(pump => circuit.ConvertedOf(pump).Maximum).Where(double.IsFinite).DefaultIfEmpty(0).Max();
    }
}
