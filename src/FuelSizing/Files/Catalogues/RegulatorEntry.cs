using FuelSizing.Regulators;
using FuelSizing.Selection;

namespace FuelSizing.Files;

/// <summary>A regulator of a catalogue.</summary>
internal sealed class RegulatorEntry
{
    private readonly EntryReader _reader;
    private readonly decimal? _cost;

    /// <summary>Reads its fields.</summary>
    public RegulatorEntry(EntryReader reader)
    {
        _reader = reader;
        Name = reader.Name();
        _cost = reader.Cost();
        string kind = RegulatorFields.KindOf(reader);
        Behind = kind == RegulatorFields.RisingRateKind ? reader.Text(RegulatorFields.Behind) : null;
        Alone = RegulatorFields.Alone(reader, kind, Behind is not null);
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
            Wrong($"was \"{ProblemList.Shown(Behind)}\", which is not in the list. Name a regulator of it.");
            return null;
        }

        if (first.Behind is not null)
        {
            Wrong($"was \"{ProblemList.Shown(Behind)}\", which sits behind another itself. Name a base regulator.");
            return null;
        }

        return Alone is RisingRate unit && first.Alone is { } basic
            ? Listed(RegulatorSeries.Of(basic, unit))
            : null;
    }

    private Candidate<PressureRegulator>? Listed(PressureRegulator? regulator) =>
        regulator is null ? null : Candidate.Of(Name, regulator, _cost);

    private void Wrong(string message) =>
        _reader.Wrong(RegulatorFields.Behind, _reader.LineOf(RegulatorFields.Behind), message);
}
