using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The smallest blade fuse that carries a pump's current and still protects its wire.</summary>
/// <remarks>
/// Two rules, both kept or no fuse named. The steady current is no more than 80 % of the rating: common practice, no
/// source, and the reverse of the building code's 125 % for continuous loads. The rating is no more than the conductor's
/// <see cref="Ampacity"/>; 33 CFR 183.455 would allow half as much again. The fuse stands at the source of the feed. Fuses
/// in hot places carry less than their rating: see the maker's curve. It replaces neither local codes nor a licensed
/// practitioner.
/// </remarks>
public sealed class FuseChoice : IReadable
{
    private static readonly double[] _ratings = [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40];

    private FuseChoice(ElectricCurrent? rating, Ratio? load, Ampacity ampacity, Statement text) =>
        (Rating, Load, Ampacity, Text) = (rating, load, ampacity, text);

    /// <summary>Standard ratings of blade fuses: 2 to 40 A (ISO 8820-3, type C; from memory).</summary>
    public static IReadOnlyList<ElectricCurrent> StandardRatings { get; } =
        Array.ConvertAll(_ratings, amperes => ElectricCurrent.FromAmperes(amperes));

    /// <summary>Highest steady load as a share of the rating, 80 %: common practice, no source.</summary>
    public static Ratio MaximumLoad { get; } = Ratio.FromPercent(80);

    /// <summary>The rating, if a fuse keeps both rules.</summary>
    public ElectricCurrent? Rating { get; }

    /// <summary>The steady current as a share of the rating.</summary>
    public Ratio? Load { get; }

    /// <summary>The wire's ampacity.</summary>
    public Ampacity Ampacity { get; }

    /// <summary>The choice, or why there is none and what to change.</summary>
    public Statement Text { get; }

    /// <summary>The smallest blade fuse that carries the load, if the conductor's ampacity is no less than the fuse's rating.</summary>
    /// <param name="current">The motor's highest steady current, over 0 to 200 A.</param>
    /// <param name="conductor">The thinnest wire that the fuse protects.</param>
    /// <param name="insulationRating">Temperature rating of its insulation, 0 to 300 °C.</param>
    /// <param name="ambient">Hottest surroundings along the run, −40 to 200 °C.</param>
    /// <param name="bundled">Current-carrying conductors in the bundle, sheath or conduit, this one and returns included, 1 to 1,000.</param>
    /// <returns>The fuse, or the reason why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static FuseChoice For(
        ElectricCurrent current, Conductor conductor, Temperature insulationRating, Temperature ambient, int bundled = 1)
    {
        double load = Guard.Above(
            current,
            ElectricCurrent.Zero,
            ElectricCurrent.FromAmperes(200),
            "Give the motor's highest steady current.",
            nameof(current)).Amperes;
        Ampacity ampacity = Ampacity.Of(conductor, insulationRating, ambient, bundled);
        double needed = load / MaximumLoad.DecimalFractions;
        if (!Carries(_ratings[^1], needed))
        {
            return new(
                null,
                null,
                ampacity,
                Statement.Of(
                    "fuse.too-large",
                    $"None: {current} needs a fuse of {ElectricCurrent.FromAmperes(needed):current:up} or more, and blade fuses are covered to {StandardRatings[^1]}; give each pump its own feed and fuse."));
        }

        ElectricCurrent rating = StandardRatings.First(standard => Carries(standard.Amperes, needed));
        if (ampacity.Current is not { } allowed)
        {
            return new(null, null, ampacity, Statement.Of(
                "fuse.wire-not-judged", $"None: {rating} would carry the load, but the wire cannot be judged. {ampacity}"));
        }

        if (rating > allowed)
        {
            return new(
                null,
                null,
                ampacity,
                Statement.Of(
                    "fuse.wire-unprotected",
                    $"None: {current} needs a fuse of {rating.ApartFrom(allowed):current}, which does not protect {conductor} ({allowed.ApartFrom(rating):current}); {Thicker(rating, insulationRating, ambient, bundled)}."));
        }

        Ratio share = Ratio.FromDecimalFractions(load / rating.Amperes);
        return new(
            rating,
            share,
            ampacity,
            Statement.Of("fuse.found", $"{rating}: {current} is {share} of it, and the ampacity of {conductor} is {allowed}."));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The choice, or why there is none.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>A load of exactly 80 % is allowed, whichever way its last bit rounds.</summary>
    private static bool Carries(double rating, double needed) => rating >= needed - 1e-9;

    private static Statement Thicker(ElectricCurrent rating, Temperature insulationRating, Temperature ambient, int bundled)
    {
        foreach ((Conductor conductor, _) in AmpacityTable.Rows)
        {
            if (Ampacity.Of(conductor, insulationRating, ambient, bundled).Current >= rating)
            {
                return Statement.Of("fuse.thicker-wire", $"with the same insulation it takes {conductor}");
            }
        }

        return Statement.Of("fuse.better-insulation", $"take insulation for a higher temperature, or route the wiring away from heat");
    }
}
