namespace FuelSizing.Files;

/// <summary>Further fields that a field holds: one set of them, or a list of sets.</summary>
/// <param name="Line">Where it begins, from 1.</param>
/// <param name="IsOne">True for one set by itself, false for a list.</param>
/// <param name="Rows">The sets, in their order.</param>
internal sealed record EntryList(int Line, bool IsOne, List<EntryFields> Rows);
