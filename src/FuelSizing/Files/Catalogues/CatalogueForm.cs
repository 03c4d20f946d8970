using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;

namespace FuelSizing.Files;

/// <summary>The lists of a catalogue: parts as a setup has them, each with its cost, and regulators with a name.</summary>
internal static class CatalogueForm
{
    private static readonly CostField Cost = new() { Optional = true };

    private static readonly NameField Name = new("the name shown in results, once in its list");

    private static readonly TextField InSeriesWith =
        new(RegulatorForm.InSeriesWith, "regulator M", "name of the base regulator that the unit is in series with, on the return line") { Arguments = [] };

    /// <summary>An injector of the list.</summary>
    public static RecordForm<Candidate<Injector>> Injector { get; } = Listed(InjectorForm.Form);

    /// <summary>A pump of the list.</summary>
    public static RecordForm<Candidate<Pump>> Pump { get; } = Listed(PumpForm.Form);

    /// <summary>A regulator of the list, a unit without what it is in series with.</summary>
    public static ChoiceForm<ListedRegulator> Regulator { get; } = new(
        "regulator",
        "a regulator",
        Named(RegulatorForm.FixedKind),
        Named(RegulatorForm.ManifoldReferencedKind),
        Named(RegulatorForm.RisingRateUnit, InSeriesWith),
        Named(RegulatorForm.RisingRateAlone),
        Named(RegulatorForm.ElectronicKind));

    /// <summary>The form of its JSON file; parts of several files are read together, list by list.</summary>
    public static FileForm<ListedParts> File { get; } = new(
        "catalogue",
        "Lists of parts to choose from; see catalogues.md.",
        new("catalogue", "a catalogue", _ => null)
        {
            { new ListField<Candidate<Injector>>("injectors", () => Injector, "injectors to choose from") { Optional = true }, parts => parts.Injectors },
            { new ListField<Candidate<Pump>>("pumps", () => Pump, "pumps to choose from") { Optional = true }, parts => parts.Pumps },
            { new ListField<ListedRegulator>("regulators", () => Regulator, "regulators to choose from") { Optional = true }, parts => parts.Regulators },
        });

    private static RecordForm<Candidate<T>> Listed<T>(RecordForm<T> form)
        where T : class => new(
            form.Name,
            form.Title,
            values => form.Make(values) is { } part ? Candidate.Of(values.Required((Field<string>)form.Fields.OfType<NameField>().Single()), part, values.Optional(Cost)) : null)
        {
            { form, candidate => candidate.Part },
            { Cost, candidate => candidate.Cost },
        };

    private static Variant<ListedRegulator> Named<T>(RecordForm<T> form, TextField? inSeriesWith = null)
        where T : PressureRegulator
    {
        RecordForm<ListedRegulator> listed = new(
            form.Name,
            form.Title,
            values => form.Make(values) is { } regulator
                ? new(
                    values.Reader,
                    values.Required(Name),
                    values.Optional(Cost),
                    regulator,
                    inSeriesWith is null ? null : values.Required(inSeriesWith))
                : null)
        {
            { Name, regulator => regulator.Name },
            { form, regulator => (T)regulator.Alone },
        };
        if (inSeriesWith is not null)
        {
            listed.Add(inSeriesWith, regulator => regulator.InSeriesWith);
        }

        listed.Add(Cost, regulator => regulator.Cost);
        return Variant<ListedRegulator>.Of(listed, regulator => regulator.Alone is T && regulator.InSeriesWith is null == inSeriesWith is null, inSeriesWith);
    }
}

/// <summary>The parts of one JSON file.</summary>
/// <param name="Injectors">Injectors.</param>
/// <param name="Pumps">Pumps.</param>
/// <param name="Regulators">Regulators.</param>
internal sealed record ListedParts(
    IReadOnlyList<Candidate<Injector>> Injectors, IReadOnlyList<Candidate<Pump>> Pumps, IReadOnlyList<ListedRegulator> Regulators);

/// <summary>A regulator of a catalogue's list.</summary>
/// <param name="Reader">Keeps problems.</param>
/// <param name="Name">Its name.</param>
/// <param name="Cost">What it costs, where that is known.</param>
/// <param name="Alone">The regulator by itself.</param>
/// <param name="InSeriesWith">The base regulator that a rising-rate unit is in series with; none if it stands alone.</param>
internal sealed record ListedRegulator(EntryReader Reader, string Name, decimal? Cost, PressureRegulator Alone, string? InSeriesWith)
{
    /// <summary>The regulator with what it is in series with; none if anything is wrong.</summary>
    /// <param name="others">All regulators of the list that could be read.</param>
    /// <param name="names">The names of all.</param>
    public Candidate<PressureRegulator>? Among(IReadOnlyList<ListedRegulator> others, IReadOnlySet<string> names)
    {
        if (InSeriesWith is null)
        {
            return Candidate.Of(Name, Alone, Cost);
        }

        if (!names.Contains(InSeriesWith))
        {
            Wrong(Statement.Of("file.regulator-not-listed", $"was \"{ProblemList.Shown(InSeriesWith)}\", which is not in the list. Name a regulator of it."));
            return null;
        }

        // One of the list that could not be read has its own problems, and needs no further one here.
        ListedRegulator? first = others.FirstOrDefault(other => other.Name == InSeriesWith);
        if (first?.InSeriesWith is not null)
        {
            Wrong(Statement.Of("file.regulator-in-series", $"was \"{ProblemList.Shown(InSeriesWith)}\", which is in series with another itself. Name a base regulator."));
            return null;
        }

        return first is null ? null : Candidate.Of<PressureRegulator>(Name, RegulatorSeries.Of(first.Alone, (RisingRate)Alone), Cost);
    }

    private void Wrong(Statement reason) =>
        Reader.Wrong(RegulatorForm.InSeriesWith, Reader.LineOf(RegulatorForm.InSeriesWith), reason);
}
