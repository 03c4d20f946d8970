namespace FuelSizing.Systems;

/// <summary>How one part stands at one point, in numbers; <see cref="Margin"/> puts it in words.</summary>
/// <param name="Part">Which part.</param>
/// <param name="Outcome">Whether its limit is kept.</param>
/// <param name="Reserve">How much more it could take, as a share; null where there is nothing to compare or to say.</param>
internal readonly record struct Check(Part Part, Outcome Outcome, double? Reserve)
{
    /// <summary>A check that holds while its reserve is not negative, or where there is nothing to compare.</summary>
    public static Check Of(Part part, double? reserve) =>
        new(part, reserve is null or >= 0 ? Outcome.Holds : Outcome.Fails, reserve);

    /// <summary>A check that the data does not allow.</summary>
    public static Check CannotSay(Part part) => new(part, Outcome.CannotSay, null);
}
