using System.Collections.Frozen;
using FuelSizing.Checks;
using FuelSizing.Pumps;

namespace FuelSizing.Files;

/// <summary>The fields of a pump, or of pumps in series and in parallel, in any nesting.</summary>
internal static class PumpAssemblyFields
{
    private const string Series = "series";
    private const string Parallel = "parallel";

    private static readonly Words<SeriesBypass> Bypasses =
        new((SeriesBypass.CheckValve, "check-valve"), (SeriesBypass.None, "none"));

    private static readonly FrozenDictionary<string, string> Fields =
        new Dictionary<string, string> { ["stages"] = Series, ["branches"] = Parallel }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static PumpAssembly? Read(EntryReader reader)
    {
        if (reader.Has(Series))
        {
            SeriesBypass bypass = Bypasses.Read(reader, "bypass");
            PumpAssembly?[] stages = Members(reader, Series);
            return reader.Make(() => PumpSeries.Of(bypass, stages!), Fields);
        }

        if (reader.Has(Parallel))
        {
            PumpAssembly?[] branches = Members(reader, Parallel);
            return reader.Make(() => PumpParallel.Of(branches!), Fields);
        }

        return PumpFields.Read(reader, reader.OptionalPart("feed") is { } feed ? FeedFields.Read(feed) : null);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, PumpAssembly assembly)
    {
        switch (assembly)
        {
            case PumpSeries series:
                fields.Text("bypass", Bypasses.Of(series.Bypass));
                fields.List(Series, series.Stages, Write);
                break;
            case PumpParallel parallel:
                fields.List(Parallel, parallel.Branches, Write);
                break;
            case Pump pump:
                PumpFields.Write(fields, pump);
                if (pump.Feed is { } feed)
                {
                    fields.Part("feed", part => FeedFields.Write(part, feed));
                }

                break;
        }
    }

    private static PumpAssembly?[] Members(EntryReader reader, string list) =>
        [.. reader.Rows(list, "Give two pumps or more.").Select(Read)];
}
