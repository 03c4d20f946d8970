namespace FuelSizing.Fuzz;

/// <summary>What a reader answered to one input.</summary>
/// <param name="Accepted">Whether it was read; else it was refused as documented.</param>
/// <param name="Kinds">What the answer said, one text for each kind of answer, without the input's own words and numbers.</param>
internal readonly record struct Reading(bool Accepted, IReadOnlyList<string> Kinds);
