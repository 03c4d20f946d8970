using System.Collections.Frozen;
using FuelSizing.Pressure;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Catalogues;

using Pressure = UnitsNet.Pressure;

/// <summary>A regulator of a catalogue.</summary>
internal sealed class RegulatorEntry
{
    private const string Fixed = "fixed";
    private const string ManifoldReferenced = "manifold-referenced";
    private const string RisingRate = "rising-rate";
    private const string Electronic = "electronic";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["gauge"] = "base",
        ["basePressure"] = "base",
        ["gain"] = "gain",
        ["onset"] = "onset",
        ["ceiling"] = "ceiling",
        ["minimumReturnFlow"] = "minimum_return_flow",
        ["lowestVoltage"] = "lowest_voltage",
    }.ToFrozenDictionary();

    private readonly Entry _entry;
    private readonly EntryReader _reader;
    private readonly decimal? _cost;

    /// <summary>Reads its fields.</summary>
    public RegulatorEntry(Entry entry, ProblemList problems)
    {
        _entry = entry;
        _reader = new(entry, problems);
        Name = _reader.Name();
        string kind = _reader.Word("kind", required: true, Fixed, ManifoldReferenced, RisingRate, Electronic);
        Behind = kind == RisingRate ? _reader.Text("behind") : null;
        Pressure basePressure = kind == RisingRate && Behind is not null
            ? _reader.Optional("base", Measures.Pressure) ?? Pressure.Zero
            : _reader.Required("base", Measures.Pressure);
        _cost = _reader.Cost();
        Alone = kind switch
        {
            Electronic => OfElectronic(basePressure),
            RisingRate => OfRisingRate(basePressure, _reader.Optional("minimum_return_flow", Measures.Flow)),
            ManifoldReferenced => OfManifoldReferenced(basePressure, _reader.Optional("minimum_return_flow", Measures.Flow)),
            _ => OfFixed(basePressure, _reader.Optional("minimum_return_flow", Measures.Flow)),
        };
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>The regulator behind which a rising-rate unit sits on the return line; none if it stands alone.</summary>
    public string? Behind { get; }

    /// <summary>The regulator by itself; none if anything is wrong.</summary>
    public PressureRegulator? Alone { get; }

    /// <summary>The regulator with what it sits behind; none if anything is wrong.</summary>
    /// <param name="others">All regulators of the list.</param>
    public Candidate<PressureRegulator>? Among(IReadOnlyList<RegulatorEntry> others)
    {
        if (Behind is null)
        {
            return Listed(Alone);
        }

        if (others.FirstOrDefault(other => other.Name == Behind) is not { } first)
        {
            _reader.Wrong("behind", _reader.LineOf("behind"), $"was \"{ProblemList.Shown(Behind)}\", which is not in the list. Name a regulator of it.");
            return null;
        }

        if (first.Behind is not null)
        {
            _reader.Wrong("behind", _reader.LineOf("behind"), $"was \"{ProblemList.Shown(Behind)}\", which sits behind another itself. Name a base regulator.");
            return null;
        }

        return Alone is RisingRate unit && first.Alone is { } basic
            ? Listed(RegulatorSeries.Of(basic, unit))
            : null;
    }

    private Candidate<PressureRegulator>? Listed(PressureRegulator? regulator) =>
        regulator is null
            ? null
            : _reader.Make(() => Candidate.Of(Name, regulator, _cost), Fields);

    private PressureRegulator? OfFixed(Pressure gauge, VolumeFlow? minimum) =>
        _reader.Make<PressureRegulator>(() => FuelSizing.Pressure.Fixed.At(gauge, minimum), Fields);

    private PressureRegulator? OfManifoldReferenced(Pressure basePressure, VolumeFlow? minimum) =>
        _reader.Make<PressureRegulator>(() => FuelSizing.Pressure.ManifoldReferenced.From(basePressure, minimum), Fields);

    private PressureRegulator? OfRisingRate(Pressure basePressure, VolumeFlow? minimum)
    {
        double? gain = _reader.Number("gain", "6");
        Pressure onset = _reader.Required("onset", Measures.Pressure);
        Pressure? ceiling = _reader.Optional("ceiling", Measures.Pressure);
        if (_entry.Fields["gain"] is null)
        {
            _reader.Wrong("gain", _entry.Line, "is missing. Give the rise of rail pressure for each 1 of boost.");
        }

        return _reader.Make<PressureRegulator>(
            () => FuelSizing.Pressure.RisingRate.From(basePressure, gain!.Value, onset, ceiling, minimum), Fields);
    }

    private PressureRegulator? OfElectronic(Pressure basePressure)
    {
        bool follows = _reader.Word("follows_manifold", required: true, "false", "true") == "true";
        ElectricPotential lowest = _reader.Required("lowest_voltage", Measures.Voltage);
        return _reader.Make<PressureRegulator>(
            () => ElectronicReturnless.Holding(basePressure, follows, lowest), Fields);
    }
}
